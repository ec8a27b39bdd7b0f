package blankwright.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Discrete Gauss-Bonnet and the exact defects of regular bodies; values by hand from the angles of a regular triangle and a square. */
class AngleDefectKeepsGaussBonnetTest {
    private static AngleDefect of(TriMesh mesh) {
        return AngleDefect.of(mesh, EdgeTable.of(mesh));
    }

    private static void each(double expected, int count, TriMesh mesh) {
        AngleDefect defect = of(mesh);
        assertEquals(count, mesh.vertexCount());
        for (int v = 0; v < count; v++) {
            assertEquals(expected, defect.defect(v), 1e-14);
            assertFalse(defect.onRim(v));
        }
        assertEquals(4 * Math.PI, defect.sum(), 1e-13);
    }

    @Test
    void regularBodiesHaveTheirExactDefects() {
        each(Math.PI, 4, Forms.tetrahedron());
        each(Math.PI / 2, 8, Forms.cube(1));
        each(Math.PI / 3, 12, Forms.icosahedron());
        each(2 * Math.PI / 3, 6, Forms.octahedron());
    }

    @Test
    void closedSkinsGiveTwoPiTimesEuler() {
        assertEquals(4 * Math.PI, of(Forms.sphere(100, 4)).sum(), 1e-10);
        assertEquals(0, of(Forms.torus(90, 30, 40, 24)).sum(), 1e-10);
        TriMesh random = Forms.cells(Forms.randomCells(9, 0.4, 5));
        assertEquals(2 * Math.PI * Forms.euler(random), of(random).sum(), 1e-8);
    }

    @Test
    void aDiskTurnsOnceAndAnAnnulusNotAtAll() {
        AngleDefect plate = of(Forms.plate(300, 200, 12, 9));
        assertEquals(2 * Math.PI, plate.rimTurning(), 1e-11);
        assertEquals(0, plate.inside(), 1e-11);
        TriMesh ring = Forms.turned(36, 4, w -> new double[] {100 - 50 * w, 0});
        assertEquals(0, of(ring).sum(), 1e-11);
        RimLoops rims = RimLoops.of(ring, EdgeTable.of(ring));
        assertEquals(2 * Math.PI, of(ring).turning(rims.loop(rims.longest(ring))), 1e-11);
        assertEquals(-2 * Math.PI, of(ring).turning(rims.loop(1 - rims.longest(ring))), 1e-11);
    }

    /** Closed form: area and curvature of a cap of half angle c are 2π(1 - cos c); its rim turns 2π cos c. A rim vertex also holds half a row of the cap: first order. */
    @Test
    void aCapConvergesToItsRimTurningAtOrderOne() {
        double c = Math.toRadians(50), before = 0;
        for (int n = 8; n <= 64; n *= 2) {
            int steps = n;
            TriMesh cap = Forms.turned(4 * n, n, w -> new double[] {100 * Math.sin(c * (1 - w * 0.9)), 100 * Math.cos(c * (1 - w * 0.9))});
            AngleDefect defect = of(cap);
            RimLoops rims = RimLoops.of(cap, EdgeTable.of(cap));
            double off = Math.abs(defect.turning(rims.loop(rims.longest(cap))) - 2 * Math.PI * Math.cos(c));
            assertEquals(0, defect.sum(), 1e-9);
            if (before > 0) assertTrue(off < before / 1.7, steps + ": " + off + " after " + before);
            before = off;
        }
    }

    @Test
    void twoRimsTouchingInOneVertexKeepTheSum() {
        TriMesh bow = TriMesh.of(new double[] {0, 0, 0, 1, 0, 0, 1, 1, 0, -1, 0, 0, -1, -1, 0, 5, 5, 5}, new int[] {0, 1, 2, 0, 3, 4});
        assertEquals(2 * Math.PI * Forms.euler(bow), of(bow).sum(), 1e-14);
        assertEquals(0, of(bow).defect(5));
    }
}
