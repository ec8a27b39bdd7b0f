package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** What the eye is shown while a hand drags, against what laying flat gives. */
class FollowerTest {
    private static final Resistance METAL = new Resistance(69_000, 42, 127, 0.24, 0.65);

    private static FlattenOptions costs(TriMesh mesh, double shrinking) {
        double[] stretch = new double[mesh.triangleCount()], shrink = stretch.clone();
        Arrays.fill(stretch, 1);
        Arrays.fill(shrink, shrinking);
        return FlattenOptions.DEFAULT.withTolerance(1e-6).withWork(LeastWork.of(METAL, stretch, shrink));
    }

    private static double largestGap(FlatMap a, FlatMap b) {
        int n = a.form().vertexCount();
        double gap = 0;
        for (int v = 0; v < n; v++) for (int w : new int[] {0, n / 2, n - 1}) gap = Math.max(gap, Math.abs(distance(a, v, w) - distance(b, v, w)));
        return gap;
    }

    private static double distance(FlatMap map, int v, int w) {
        return Math.hypot(map.u(v) - map.u(w), map.v(v) - map.v(w));
    }

    private static Follower after(TriMesh mesh, FlattenOptions options) {
        Flattener flattener = Flattener.of(mesh, Progress.NONE);
        return flattener.follower(flattener.flatten(options, Progress.NONE).map(), options);
    }

    @Test void sameQuestionKeepsTheLayout() {
        for (TriMesh mesh : new TriMesh[] {Grids.mudguard(20), Grids.mudguard(72), Grids.scannedMudguard(72, 3)}) {
            for (FlattenOptions options : new FlattenOptions[] {FlattenOptions.DEFAULT, costs(mesh, 1)}) {
                Flattener flattener = Flattener.of(mesh, Progress.NONE);
                FlatMap found = flattener.flatten(options, Progress.NONE).map();
                Follower follower = flattener.follower(found, options);
                assertEquals(mesh.triangleCount() > 10_000, follower.roughly());
                double gap = largestGap(found, follower.to(mesh, options, Progress.NONE));
                assertTrue(gap < 0.2, gap + " mm of " + found.size()[0]);
            }
        }
    }

    /** A panel of 10,400 triangles, 800 mm long, dearer and dearer to shrink: within a quarter of the way and a millimetre of what laying flat gives. */
    @Test void agreesWithSlowRouteNearly() {
        for (TriMesh mesh : new TriMesh[] {Grids.mudguard(72), Grids.scannedMudguard(72, 3)}) {
            Follower follower = after(mesh, costs(mesh, 1));
            FlatMap first = Flattener.flatten(mesh, costs(mesh, 1), Progress.NONE).map();
            for (double dear : new double[] {1.2, 2, 1.1}) {
                FlatMap meant = Flattener.flatten(mesh, costs(mesh, dear), Progress.NONE).map(), shown = shown(follower, mesh, dear);
                double moved = largestGap(first, meant), off = largestGap(meant, shown);
                assertTrue(off < 0.25 * moved + 1, dear + " times: " + off + " mm off where " + moved + " mm moved");
            }
        }
    }

    /** As it is once the hand rests. */
    private static FlatMap shown(Follower follower, TriMesh mesh, double dear) {
        FlatMap shown = follower.to(mesh, costs(mesh, dear), Progress.NONE);
        for (int i = 0; i < 5 && !follower.arrived(); i++) shown = follower.to(mesh, costs(mesh, dear), Progress.NONE);
        return shown;
    }

    /** A tube's arc of radius r, laid flat, is as wide as its angle times r, whatever it was before: 10,400 and 800 triangles. */
    @Test void aMovedFormMatchesClosedForm() {
        for (int n : new int[] {72, 20}) {
            Follower follower = after(arc(n, 200), FlattenOptions.DEFAULT);
            for (double r : new double[] {199.5, 190, 210}) {
                FlatMap shown = follower.to(arc(n, r), FlattenOptions.DEFAULT, Progress.NONE);
                double chords = n * 2 * r * Math.sin(1.5 / n / 2);
                assertEquals(chords, distance(shown, 0, n * (n + 1)), 0.01);
                assertEquals(300, distance(shown, 0, n), 0.01);
            }
        }
    }

    /** 1.5 rad of a tube, 300 mm long. */
    private static TriMesh arc(int n, double r) {
        return Grids.of(n, n, (u, v) -> new double[] {r * Math.sin(1.5 * u), 300 * v, r * Math.cos(1.5 * u)});
    }

    @Test void turnsNoTriangleOver() {
        TriMesh mesh = Grids.bumpy(72);
        Follower follower = after(mesh, costs(mesh, 1));
        for (double dear : new double[] {1e4, 1e-4, 30}) {
            FlatMap shown = shown(follower, mesh, dear);
            for (int t = 0; t < mesh.triangleCount(); t++) assertTrue(shown.area(t) > 0, dear + " times, triangle " + t);
        }
        assertFalse(after(Grids.bumpy(10), FlattenOptions.DEFAULT).roughly());
    }

    @Test void refusesAnotherMesh() {
        Follower follower = after(Grids.mudguard(10), FlattenOptions.DEFAULT);
        assertThrows(IllegalArgumentException.class, () -> follower.to(Grids.mudguard(11), FlattenOptions.DEFAULT, Progress.NONE));
    }
}
