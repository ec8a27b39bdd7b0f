package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.StretchEnergy;
import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Cut;
import blankwright.num.Orientation;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a flattening must keep, whatever the panel: orientation, symmetry, stationarity, bits. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)     // a loop without end is a failure, not a wait
class FlattenerKeepsTest {
    private static Outcome flatten(TriMesh mesh) {
        return Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
    }

    private static FlatMap flat(TriMesh mesh) {
        return assertInstanceOf(Outcome.Converged.class, flatten(mesh)).map();
    }

    private static double distance(FlatMap map, int a, int b) {
        return Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a));
    }

    private static TriMesh panel() {
        return Grids.shaken(Grids.mudguard(14), 3, 5);
    }

    /** The distances of some vertices from each other say the blank up to where it lies, and nothing of which side is up. */
    private static double[] distances(FlatMap map, int[] vertexOf) {
        Random random = new Random(6);
        double[] out = new double[400];
        for (int i = 0; i < out.length; i++)
            out[i] = distance(map, vertexOf[random.nextInt(vertexOf.length)], vertexOf[random.nextInt(vertexOf.length)]);
        return out;
    }

    private static int[] identity(int n) {
        int[] same = new int[n];
        for (int i = 0; i < n; i++) same[i] = i;
        return same;
    }

    @Test
    void turnedAndMovedInTheSameBlankOut() {
        TriMesh mesh = panel();
        double[] xyz = mesh.positions(), there = xyz.clone();
        double c = Math.cos(1.1), s = Math.sin(1.1);
        for (int i = 0; i < xyz.length; i += 3) {
            double x = c * xyz[i] - s * xyz[i + 1], y = s * xyz[i] + c * xyz[i + 1];
            there[i] = x + 500;
            there[i + 1] = c * y - s * xyz[i + 2] - 300;
            there[i + 2] = s * y + c * xyz[i + 2];
        }
        int[] all = identity(mesh.vertexCount());
        assertArrayEquals(distances(flat(mesh), all), distances(flat(mesh.withPositions(there)), all), 1e-5);
    }

    @Test
    void mirroredInTheMirrorImageOut() {
        TriMesh mesh = panel();
        double[] xyz = mesh.positions();
        int[] tri = mesh.corners();
        for (int i = 0; i < xyz.length; i += 3) xyz[i] = -xyz[i];
        for (int t = 0; t < tri.length; t += 3) {
            int b = tri[t + 1];
            tri[t + 1] = tri[t + 2];
            tri[t + 2] = b;
        }
        FlatMap one = flat(mesh), two = flat(TriMesh.of(xyz, tri));
        int[] all = identity(mesh.vertexCount());
        assertArrayEquals(distances(one, all), distances(two, all), 1e-5);
        assertTrue(one.area() > 0 && two.area() > 0, "outer skin up in both");
    }

    @Test
    void tenTimesLargerInTenTimesLargerOut() {
        TriMesh mesh = panel();
        double[] larger = Arrays.stream(mesh.positions()).map(x -> 10 * x).toArray();
        int[] all = identity(mesh.vertexCount());
        double[] expected = Arrays.stream(distances(flat(mesh), all)).map(x -> 10 * x).toArray();
        assertArrayEquals(expected, distances(flat(mesh.withPositions(larger)), all), 1e-4);
    }

    @Test
    void renumberedInTheSameBlankOut() {
        TriMesh mesh = panel();
        int n = mesh.vertexCount();
        int[] to = identity(n);
        Random random = new Random(9);
        for (int i = n - 1; i > 0; i--) {
            int j = random.nextInt(i + 1), swap = to[i];
            to[i] = to[j];
            to[j] = swap;
        }
        double[] xyz = new double[3 * n];
        for (int v = 0; v < n; v++) System.arraycopy(mesh.positions(), 3 * v, xyz, 3 * to[v], 3);
        int[] tri = mesh.corners(), shuffled = new int[tri.length];
        for (int t = 0, m = tri.length / 3; t < m; t++)
            for (int k = 0; k < 3; k++) shuffled[3 * ((t * 37 + 11) % m) + (k + t) % 3] = to[tri[3 * t + k]];
        assertArrayEquals(distances(flat(mesh), identity(n)), distances(flat(TriMesh.of(xyz, shuffled)), to), 1e-5);
    }

    /** At a minimum no small change helps: energies by a formula of our own here, |J|² + |J|²/det², from lengths and areas. */
    @Test
    void noRandomChangeOfTheResultLowersTheEnergy() {
        TriMesh mesh = panel();
        FlatMap map = flat(mesh);
        double least = energy(map);
        Random random = new Random(10);
        for (int i = 0; i < 200; i++) {
            double[] uv = map.positions();
            double amount = Math.pow(10, -4 + 3 * random.nextDouble());
            if (i % 2 == 0) for (int k = 0; k < uv.length; k++) uv[k] += amount * random.nextGaussian();
            else uv[random.nextInt(uv.length)] += 10 * amount;
            assertTrue(energy(FlatMap.of(mesh, uv)) >= least * (1 - 1e-12), "amount " + amount);
        }
    }

    private static double energy(FlatMap map) {
        TriMesh form = map.form();
        double sum = 0;
        for (int t = 0; t < form.triangleCount(); t++) {
            double cotangents = 0, area = form.area(t), flat = map.area(t);
            if (!(flat > 0)) return Double.POSITIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
                int a = form.corner(t, (k + 1) % 3), b = form.corner(t, (k + 2) % 3);
                cotangents += Math.pow(distance(map, a, b), 2) / Math.tan(form.angle(t, k)) / 2;     // Dirichlet energy of the triangle
            }
            sum += cotangents * (1 + area * area / (flat * flat));
        }
        return sum / form.area();
    }

    @Test
    void reportsTheEnergyItReached() {
        Outcome outcome = flatten(panel());
        assertEquals(energy(outcome.map()), outcome.energy(), 1e-11);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.7, 0.9, 1.2, 1.6, 2.5})
    void noTriangleIsTurnedOverHoweverRoughTheMesh(double cells) {
        TriMesh rough = Grids.shaken(Grids.mudguard(40), cells * 864.0 / 40 / 4, 77);
        Outcome outcome = flatten(rough);
        assertInstanceOf(Outcome.Converged.class, outcome, outcome + " after " + outcome.steps() + " from " + outcome.start());
        for (int t = 0; t < rough.triangleCount(); t++) assertTrue(outcome.map().area(t) > 0);
    }

    @Test
    void holesStayFreeRims() {
        TriMesh grid = Grids.cap(40, 12);
        int[] tri = grid.corners(), kept = new int[tri.length];
        int n = 0;
        for (int t = 0; t < tri.length; t += 3) {
            int ring = (int) Math.round((tri[t] + tri[t + 1] + tri[t + 2]) / 3.0);
            if (ring < 40 || ring > 200 && ring < 206) continue;
            for (int k = 0; k < 3; k++) kept[n++] = tri[t + k];
        }
        TriMesh holed = compact(grid.positions(), Arrays.copyOf(kept, n));
        FlatMap map = flat(holed);
        for (int t = 0; t < holed.triangleCount(); t++) assertTrue(map.area(t) > 0);
        assertTrue(energy(map) < energy(flat(grid)), "a hole in the middle gives the rest more freedom");
    }

    private static TriMesh compact(double[] xyz, int[] tri) {
        int[] at = new int[xyz.length / 3];
        Arrays.fill(at, -1);
        double[] used = new double[xyz.length];
        int n = 0;
        int[] renamed = tri.clone();
        for (int i = 0; i < tri.length; i++) {
            if (at[tri[i]] < 0) {
                System.arraycopy(xyz, 3 * tri[i], used, 3 * n, 3);
                at[tri[i]] = n++;
            }
            renamed[i] = at[tri[i]];
        }
        return TriMesh.of(Arrays.copyOf(used, 3 * n), renamed);
    }

    /** Tutte 1963, Floater 2003: the start that cannot turn a triangle over, also round holes of all sizes. */
    @Test
    void circleStartHasNoTriangleTurnedOverAlsoWithHoles() {
        TriMesh form = Forms.holed(Grids.shaken(Grids.mudguard(30), 40, 8), 45, new double[] {425, 0, 0}, new double[] {400, 140, 0},
                new double[] {400, -140, 0});
        TriMesh rough = Cut.along(form, List.of()).mesh();                    // holes that touched are parted
        assertEquals(1, Forms.parts(rough).size());
        RimLoops rims = RimLoops.of(rough, EdgeTable.of(rough));
        assertTrue(rims.count() > 3, rims.count() + " rims");
        double[] uv = CircleMap.of(rough, rims, rims.longest(rough), () -> false);
        FlatMap map = FlatMap.of(rough, uv);
        for (int t = 0; t < rough.triangleCount(); t++) assertTrue(map.area(t) > 0);
    }

    /** Forms that the plain circle start makes a dot of: whatever the springs, nothing is turned over, and the energy is far lower. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 20, 60})
    void springsRenewedTurnNoTriangleOverAndSpreadATubeClosedAtOneEnd(double radii) {
        TriMesh tube = Grids.of(20, 60, (u, v) -> {
            double d = v * (radii + 1) + 0.02, r = Math.min(1, d), z = Math.max(0, d - 1);
            return new double[] {r * Math.sin(2 * Math.PI * u), r * Math.cos(2 * Math.PI * u), -z};
        });
        TriMesh whole = sewnAlongTheFirstSide(tube, 20, 60);
        RimLoops rims = RimLoops.of(whole, EdgeTable.of(whole));
        Distortion form = new Distortion(whole);
        SymmetricDirichlet even = new SymmetricDirichlet();
        double[] plain = CircleMap.of(whole, rims, rims.longest(whole), () -> false);
        double[] evened = CircleMap.evened(whole, rims, rims.longest(whole), form, even, () -> false);
        FlatMap map = FlatMap.of(whole, evened);
        for (int t = 0; t < whole.triangleCount(); t++) assertTrue(map.area(t) > 0);
        form.scaleBest(plain);
        assertTrue(form.value(even, evened) < 0.5 * form.value(even, plain) || form.value(even, evened) < 12);
        assertInstanceOf(Outcome.Converged.class, flatten(whole));
    }

    /** Joins the last column of a grid of (n + 1) x (m + 1) vertices to the first; the small rim where it begins is a hole. */
    private static TriMesh sewnAlongTheFirstSide(TriMesh grid, int n, int m) {
        int[] tri = grid.corners();
        for (int i = 0; i < tri.length; i++) if (tri[i] >= n * (m + 1)) tri[i] -= n * (m + 1);
        return TriMesh.of(Arrays.copyOf(grid.positions(), 3 * n * (m + 1)), tri);
    }

    /** A row of triangles of which the height goes to nothing across a bowed sheet: of no weight, and no harm to the rest. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 1e-7, 1e-10, 1e-13, 0})
    void sliversDoNoHarm(double height) {
        Outcome plain = flatten(Grids.of(20, 20, (u, v) -> bowed(u, v)));
        Outcome outcome = flatten(Grids.of(20, 21, (u, v) -> {
            int j = (int) Math.round(21 * v);
            return bowed(u, j <= 10 ? j / 20.0 : j == 11 ? 0.5 + height / 20 : (j - 1) / 20.0);
        }));
        assertInstanceOf(Outcome.Converged.class, outcome);
        assertEquals(plain.energy() - 4, outcome.energy() - 4, 1e-2 * (plain.energy() - 4));
        assertEquals(plain.map().area(), outcome.map().area(), 1e-4 * plain.map().area());
    }

    private static double[] bowed(double x, double y) {
        return new double[] {100 * x, 100 * y, 10 * Math.sin(3 * x) * Math.cos(2 * y)};
    }

    @Test
    void circleStartReachesTheSameOptimumAsTheConformalOne() {
        TriMesh mesh = panel();
        RimLoops rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        double[] uv = CircleMap.of(mesh, rims, 0, () -> false);
        Distortion form = new Distortion(mesh);
        Cholesky solver = new Cholesky(mesh.vertexCount(), mesh.corners(), mesh.positions(), 2);
        Descent descent = new Descent(form, new FactorNewton(form, solver, new SymmetricDirichlet(), Progress.NONE), new SymmetricDirichlet(), FlattenOptions.DEFAULT, Progress.NONE);
        assertEquals(Descent.End.CONVERGED, descent.run(uv, layout -> true));
        assertEquals(flatten(mesh).energy(), descent.value(), 1e-9);
    }

    @Test
    void convergedIsSaidOnlyWhenItIs() {
        Outcome outcome = Flattener.flatten(panel(), FlattenOptions.DEFAULT.withStepLimit(1), Progress.NONE);
        Outcome.Stopped stopped = assertInstanceOf(Outcome.Stopped.class, outcome);
        assertEquals(Outcome.Reason.STEP_LIMIT, stopped.reason());
    }

    /** Layouts whose area is above 0 by the exact sign, yet below it or none once rounded: no energy, so no descent, and never "converged". */
    @Test
    void convergedIsNotSaidOfALayoutWithoutEnergy() {
        TriMesh one = TriMesh.of(new double[] {0, 0, 0, 1.1, 0.1, 0.3, 0.4, 0.9, 0.2}, new int[] {0, 1, 2});
        Distortion form = new Distortion(one);
        Cholesky solver = new Cholesky(3, one.corners(), one.positions(), 2);
        StretchEnergy energy = new SymmetricDirichlet();
        Random random = new Random(4);
        int seen = 0;
        for (int i = 0; i < 20_000; i++) {
            double a = random.nextDouble(), b = random.nextDouble(), s = random.nextDouble();
            double[] uv = {0, 0, a, b, s * a, Math.nextUp(s * b)};
            if (Orientation.sign(uv[0], uv[1], uv[2], uv[3], uv[4], uv[5]) <= 0 || form.value(energy, uv) < Double.POSITIVE_INFINITY) continue;
            seen++;
            assertEquals(Descent.End.NO_DESCENT, new Descent(form, new FactorNewton(form, solver, energy, Progress.NONE), energy, FlattenOptions.DEFAULT, Progress.NONE).run(uv, l -> true));
        }
        assertTrue(seen > 100, seen + " such layouts");
    }

    @Test
    void stopsWhenCancelled() {
        Progress impatient = new Progress() {
            @Override public void at(String what, double fraction) { }

            @Override public boolean cancelled() {
                return true;
            }
        };
        assertThrows(CancellationException.class, () -> Flattener.flatten(Grids.mudguard(60), FlattenOptions.DEFAULT, impatient));
    }

    @Test
    void refusesAClosedSkin() {
        TriMesh tetrahedron = TriMesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1}, new int[] {0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3});
        assertThrows(IllegalArgumentException.class, () -> flatten(tetrahedron));
    }

    @Test
    void oneTriangleIsItsOwnBlank() {
        TriMesh one = TriMesh.of(new double[] {0, 0, 0, 30, 0, 0, 0, 40, 5}, new int[] {0, 1, 2});
        FlatMap map = flat(one);
        for (int k = 0; k < 3; k++) assertEquals(one.distance(k, (k + 1) % 3), distance(map, k, (k + 1) % 3), 1e-7);
    }
}
