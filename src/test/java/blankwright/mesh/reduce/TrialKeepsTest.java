package blankwright.mesh.reduce;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Collapses that everything but one guard would let pass. */
class TrialKeepsTest {
    private static final double FAR = 100;          // mm: the distance stops nothing

    private static int collapsed(TriMesh mesh, int from, int to, double... place) {
        EdgeTable edges = EdgeTable.of(mesh);
        Fans fans = new Fans(mesh, edges);
        int h = 0;
        while (fans.tri[h] != from || fans.tri[Fans.next(h)] != to) h++;
        int[] before = fans.tri.clone();
        int went = new Trial(Trial.Ground.of(fans, mesh, new RimRuns(mesh, edges), FAR)).collapsed(h, Math.min(from, to), place, false);
        if (went == 0) assertArrayEquals(before, fans.tri, "refused, and done all the same");
        return went;
    }

    /** A crumb like a closed purse: with its short edge gone two triangles lay back to back on the same three corners. */
    @Test
    void aTetrahedronDoesNotFallFlat() {
        TriMesh purse = TriMesh.of(new double[] {0, 10, 0.1, 0, 10, -0.1, 10, 0, 0, -10, 0, 0}, new int[] {0, 3, 2, 1, 2, 3, 0, 2, 1, 0, 1, 3});
        assertEquals(0, collapsed(purse, 0, 1, 0, 10, 0));
    }

    /** The same purse with its back stuck to more: the corner it would lose has edges to spare, so the short edge may go. */
    @Test
    void aPurseWithOneMoreCornerLosesItsShortEdge() {
        TriMesh purse = TriMesh.of(new double[] {0, 10, 0.1, 0, 10, -0.1, 10, 0, 0, -10, 0, 0, 0, 1, 3}, new int[] {
            0, 4, 2, 0, 3, 4, 4, 3, 2, 1, 2, 3, 0, 2, 1, 0, 1, 3});
        assertEquals(2, collapsed(purse, 0, 1, 0, 10, 0));
    }

    /** A strip one triangle wide: with an edge across it gone both its halves would hang together in a point. */
    @Test
    void aNarrowStripIsNotPinched() {
        TriMesh strip = Forms.plate(6, 1, 6, 1);
        int across = -1;
        for (int v = 0; v < strip.vertexCount(); v++) if (strip.x(v) == 3 && strip.y(v) == 0) across = v;
        int other = -1;
        for (int v = 0; v < strip.vertexCount(); v++) if (strip.x(v) == 3 && strip.y(v) == 1) other = v;
        int from = leaves(strip, across, other) ? across : other, to = from == across ? other : across;
        assertEquals(0, collapsed(strip, from, to, 3, 0, 0));
    }

    private static boolean leaves(TriMesh mesh, int from, int to) {
        for (int t = 0; t < mesh.triangleCount(); t++)
            for (int k = 0; k < 3; k++) if (mesh.corner(t, k) == from && mesh.corner(t, (k + 1) % 3) == to) return true;
        return false;
    }
}
