package blankwright.mesh.reduce;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Thinned surfaces against figures whose answer we can write down. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)     // a loop without end is a failure, not a wait
class ReduceMatchesClosedFormTest {
    @Test
    void aFlatPanelComesDownToAHandfulAndKeepsItsAreaAndRim() {
        TriMesh plate = Forms.turnedBy(Forms.plate(120, 80, 60, 40), 0.3, 0.7, 4000, -900, 20);
        Reduced reduced = Reduce.of(plate, 0.01, 0, Progress.NONE);
        assertTrue(reduced.mesh().triangleCount() <= 8, reduced.mesh().triangleCount() + " of " + plate.triangleCount());
        assertEquals(0, reduced.deviation(), 1e-9);
        assertEquals(120 * 80, reduced.mesh().area(), 1e-6);
        assertEquals(2 * (120 + 80), rim(reduced.mesh(), 0), 1e-9);
    }

    @Test
    void aBendKeepsItsEdgeAndBothItsFlats() {
        TriMesh bent = Forms.grid(40, 40, false, false, (u, v) -> u < 0.5 ? new double[] {60 * u, 50 * v, 0} : new double[] {30, 50 * v, 60 * (u - 0.5)});
        Reduced reduced = Reduce.of(bent, 0.01, 0, Progress.NONE);
        assertTrue(reduced.mesh().triangleCount() <= 24, reduced.mesh().triangleCount() + " triangles");
        assertEquals(0, reduced.deviation(), 1e-6);
        assertEquals(60 * 50, reduced.mesh().area(), 1e-3);
    }

    /**
     * On a ball of radius R triangles with all sides L = sqrt(6 R e) and corners on it lie at most e below: N = A / (1.5 sqrt(3) R e) of them
     * cover an area A (L. Fejes Tóth, "Lagerungen in der Ebene, auf der Kugel und im Raum", 1953; from memory). Corners may lie off the ball
     * by as much, which halves the number; triangles that are not all alike need more.
     */
    @Test
    void aCapNeedsAboutAsManyTrianglesAsItsCurvatureAsksFor() {
        double radius = 300, half = Math.toRadians(40), area = 2 * Math.PI * radius * radius * (1 - Math.cos(half));
        TriMesh cap = cap(radius, half, 120);
        double own = radius * (1 - Math.cos(half / 120));
        for (double within : new double[] {0.05, 0.2}) {
            Reduced reduced = Reduce.of(cap, within, 0, Progress.NONE);
            double ideal = area / (1.5 * Math.sqrt(3) * radius * within);
            int count = reduced.mesh().triangleCount();
            assertTrue(count > 0.4 * ideal && count < 5 * ideal, count + " triangles, " + ideal + " would do");
            double off = 0;
            for (int t = 0; t < count; t++) {
                double[] p = Forms.middle(reduced.mesh(), t);
                off = Math.max(off, Math.abs(Math.sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]) - radius));
            }
            assertTrue(off <= reduced.deviation() + own, off + " off the ball, " + reduced.deviation() + " off the given mesh");
            assertTrue(reduced.deviation() <= within, reduced.deviation() + "");
            assertTrue(reduced.deviation() > 0.75 * within, reduced.deviation() + " of " + within + ": more could have gone");
            assertEquals(2 * Math.PI * radius * Math.sin(half), rim(reduced.mesh(), 0), 1e-3 * radius);
            assertEquals(area, reduced.mesh().area(), 3e-3 * area);
        }
    }

    /** Of a round hole of radius r a chord that stays within e spans 2 acos(1 - e / r): the rim keeps at least so many corners, and its length. */
    @Test
    void holesKeepTheirRims() {
        double r = 20;
        TriMesh ring = Forms.grid(240, 30, true, false, (u, v) -> {
            double q = r + 40 * v;
            return new double[] {q * Math.cos(2 * Math.PI * u), -q * Math.sin(2 * Math.PI * u), 0};
        });
        Reduced reduced = Reduce.of(ring, 0.1, 0, Progress.NONE);
        TriMesh mesh = reduced.mesh();
        RimLoops rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        assertEquals(2, rims.count());
        assertEquals(0, Forms.euler(mesh));
        for (int i = 0; i < 2; i++) {
            int[] loop = rims.loop(i);
            double q = Math.hypot(mesh.x(loop[0]), mesh.y(loop[0]));
            assertTrue(loop.length >= Math.PI / Math.acos(1 - 0.1 / q), loop.length + " corners at radius " + q);
            for (int v : loop) assertEquals(q, Math.hypot(mesh.x(v), mesh.y(v)), 1e-9);
            assertEquals(2 * Math.PI * q, rims.length(mesh, i), 2 * Math.PI * q * 0.1 / q);
        }
        assertTrue(mesh.triangleCount() < 400, mesh.triangleCount() + "");
    }

    private static double rim(TriMesh mesh, int i) {
        return RimLoops.of(mesh, EdgeTable.of(mesh)).length(mesh, i);
    }

    /** Rings of 6, 12, 18 ... vertices on a ball. */
    static TriMesh cap(double radius, double half, int rings) {
        TriMesh flat = hexagon(rings);
        double[] xyz = flat.positions();
        for (int i = 0; i < xyz.length; i += 3) {
            double r = Math.hypot(xyz[i], xyz[i + 1]), c = half * r, s = r > 0 ? radius * Math.sin(c) / r : 0;
            xyz[i] *= s;
            xyz[i + 1] *= s;
            xyz[i + 2] = radius * Math.cos(c);
        }
        return flat.withPositions(xyz);
    }

    /** A disk of radius 1 in rings. */
    private static TriMesh hexagon(int rings) {
        double[] xyz = new double[3 * (1 + 3 * rings * (rings + 1))];
        int[] tri = new int[18 * rings * rings];
        for (int r = 1, v = 1; r <= rings; r++)
            for (int k = 0; k < 6 * r; k++, v++) {
                xyz[3 * v] = Math.cos(Math.PI * k / (3 * r)) * r / rings;
                xyz[3 * v + 1] = Math.sin(Math.PI * k / (3 * r)) * r / rings;
            }
        int p = 0;
        for (int r = 1; r <= rings; r++) {
            int out = 1 + 3 * r * (r - 1), in = r == 1 ? 0 : 1 + 3 * (r - 1) * (r - 2), many = Math.max(1, 6 * (r - 1));
            for (int i = 0; i < 6 * r; i++) {
                int k = i % r, o = out + i, next = out + (i + 1) % (6 * r), under = in + (i / r * (r - 1) + k) % many;
                for (int w : new int[] {o, next, under}) tri[p++] = w;
                if (k == r - 1) continue;
                for (int w : new int[] {next, in + (i / r * (r - 1) + k + 1) % many, under}) tri[p++] = w;
            }
        }
        return TriMesh.of(xyz, tri);
    }
}
