package blankwright.mesh.query;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class EdgeCostTest {
    /** A ball has the curvature of a ball of its area, once: least + (1 - least) / 2. Plates and tubes have none. */
    @Test
    void curvatureMatchesClosedForm() {
        TriMesh ball = Forms.sphere(70, 4);
        EdgeTable edges = EdgeTable.of(ball);
        EdgeCost cost = EdgeCost.curvedFirst(ball, edges, 0.4);
        for (int e = 0; e < edges.edgeCount(); e++) assertEquals(0.7, cost.of(e) / edges.length(e), 0.01);
        for (TriMesh flat : new TriMesh[] {Forms.plate(300, 200, 30, 20), Forms.tube(50, 200, 48, 20)}) {
            EdgeTable there = EdgeTable.of(flat);
            EdgeCost plain = EdgeCost.curvedFirst(flat, there, 0.4);
            for (int e = 0; e < there.edgeCount(); e++) assertEquals(there.length(e), plain.of(e), 1e-9);
        }
    }

    /** A torus, ring R and tube r, has cos q / (r (R + r cos q)), and 4 pi² R r of area: per 4 pi of a ball's pi R r cos q / (r (R + r cos q)). */
    @Test
    void aTorusIsCheapInsideAndOutside() {
        TriMesh torus = Forms.torus(90, 30, 240, 96);
        EdgeTable edges = EdgeTable.of(torus);
        EdgeCost cost = EdgeCost.curvedFirst(torus, edges, 0);
        for (int e = 0; e < edges.edgeCount(); e++) {
            double r = Math.hypot(torus.x(edges.from(e)), torus.y(edges.from(e))) - 90, z = torus.z(edges.from(e));
            double cos = r / 30, q = Math.abs(Math.PI * 90 * 30 * cos / (30 * (90 + 30 * cos)));
            if (torus.z(edges.to(e)) == z) assertEquals(1 / (1 + q), cost.of(e) / edges.length(e), 0.05, "at " + r + ", " + z);
        }
    }

    @Test
    void aSeamCostsBetweenItsLeastAndItsLength() {
        for (TriMesh mesh : new TriMesh[] {Forms.cube(10), Forms.sphere(100, 3), Forms.plate(300, 200, 30, 20), Forms.torus(90, 30, 60, 24)}) {
            EdgeTable edges = EdgeTable.of(mesh);
            EdgeCost cost = EdgeCost.seam(mesh, edges);
            for (int e = 0; e < edges.edgeCount(); e++) {
                double share = cost.of(e) / edges.length(e);
                assertTrue(share >= 0.16 - 1e-6 && share <= 1 + 1e-6, share + " of its length");
            }
        }
        assertThrows(IllegalArgumentException.class, () -> EdgeCost.curvedFirst(Forms.cube(2), EdgeTable.of(Forms.cube(2)), 1.5));
    }
}
