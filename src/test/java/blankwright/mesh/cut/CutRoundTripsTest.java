package blankwright.mesh.cut;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Cut along any edges, sewn up again: the same mesh, number for number. */
class CutRoundTripsTest {
    private static void sewsUp(TriMesh mesh, Cut cut) {
        assertArrayEquals(mesh.corners(), cut.sewn().corners());
        assertArrayEquals(mesh.positions(), cut.sewn().positions());
        assertEquals(mesh.triangleCount(), cut.mesh().triangleCount());
        int[] vertexOf = cut.vertexOf();
        for (int t = 0; t < mesh.triangleCount(); t++)
            for (int k = 0; k < 3; k++) assertEquals(mesh.corner(t, k), vertexOf[cut.mesh().corner(t, k)]);
    }

    @Test
    void anyEdgesOfAnyForm() {
        Random random = new Random(6);
        TriMesh[] forms = {Forms.torus(90, 30, 20, 10), Forms.plate(30, 20, 12, 9), Forms.cells(Forms.randomCells(6, 0.4, 1))};
        for (int i = 0; i < 60; i++) {
            TriMesh mesh = forms[i % 3];
            EdgeTable edges = EdgeTable.of(mesh);
            boolean[] open = new boolean[edges.edgeCount()];
            double share = (i + 1) / 61.0;
            for (int e = 0; e < open.length; e++) open[e] = random.nextDouble() < share;
            Cut cut = Cut.along(mesh, edges, open);
            sewsUp(mesh, cut);
            if (i == 59) assertTrue(cut.mesh().vertexCount() > 2 * mesh.triangleCount());
        }
        TriMesh mesh = forms[0];
        boolean[] all = new boolean[EdgeTable.of(mesh).edgeCount()];
        Arrays.fill(all, true);
        assertEquals(3 * mesh.triangleCount(), Cut.along(mesh, EdgeTable.of(mesh), all).mesh().vertexCount());
    }

    @Test
    void aPathInsideMakesAHoleAndALoopLetsAPieceFallOut() {
        TriMesh plate = Forms.plate(8, 8, 8, 8);                            // vertex (i, j) is 9j + i
        Cut slit = Cut.along(plate, List.of(new int[] {9 * 4 + 2, 9 * 4 + 3, 9 * 4 + 4, 9 * 4 + 5}));
        assertEquals(2, slit.mesh().vertexCount() - plate.vertexCount());
        assertEquals(2, RimLoops.of(slit.mesh(), EdgeTable.of(slit.mesh())).count());
        assertEquals(1, Forms.parts(slit.mesh()).size());
        List<int[]> square = new ArrayList<>();
        square.add(new int[] {20, 21, 22, 23, 32, 41, 50, 49, 48, 47, 38, 29, 20});
        Cut loop = Cut.along(plate, square);
        assertEquals(2, Forms.parts(loop.mesh()).size());
        sewsUp(plate, slit);
        sewsUp(plate, loop);
    }

    @Test
    void oneEdgeInsideOrARimEdgeChangesNothing() {
        TriMesh plate = Forms.plate(8, 8, 8, 8);
        assertArrayEquals(plate.corners(), Cut.along(plate, List.of(new int[] {30, 31}, new int[] {0, 1, 2})).mesh().corners());
        assertEquals("no edge joins vertices 0 and 5 of the path",
                assertThrows(IllegalArgumentException.class, () -> Cut.along(plate, List.of(new int[] {0, 5}))).getMessage());
    }

    @Test
    void bothSidesOfASeamLieOnTheirSide() {
        TriMesh tube = Forms.tube(50, 200, 24, 10);
        Seam seam = CutToDisk.of(tube, blankwright.num.Progress.NONE).seams().get(0);
        TriMesh open = CutToDisk.of(tube, blankwright.num.Progress.NONE).mesh();
        EdgeTable edges = EdgeTable.of(open);
        for (int i = 0; i < seam.edgeCount(); i++) {
            assertTrue(runs(open, edges, seam.left(i, 0), seam.left(i, 1)), "metal on the left");
            assertTrue(runs(open, edges, seam.right(i, 1), seam.right(i, 0)), "metal on the right");
        }
    }

    private static boolean runs(TriMesh mesh, EdgeTable edges, int v, int w) {
        for (int e = 0; e < edges.edgeCount(); e++) if (edges.right(e) < 0 && edges.from(e) == v && edges.to(e) == w) return true;
        return false;
    }
}
