package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)     // a loop without end is a failure, not a wait
class CoarserKeepsTest {
    private static Coarser coarser(TriMesh mesh) {
        return Coarser.of(mesh, EdgeTable.of(mesh), Progress.NONE);
    }

    private static int euler(TriMesh mesh) {
        return mesh.vertexCount() - EdgeTable.of(mesh).edgeCount() + mesh.triangleCount();
    }

    /** A flat square of 2 n² triangles with square windows cut out, the vertices on no rim shaken, so that rows are not straight. */
    private static TriMesh plate(int n, boolean windows) {
        Random random = new Random(11);
        double[] xyz = new double[3 * (n + 1) * (n + 1)];
        for (int i = 0; i <= n; i++)
            for (int j = 0; j <= n; j++) {
                boolean window = i % 12 >= 5 && i % 12 <= 8 && j % 12 >= 5 && j % 12 <= 8;
                boolean inner = i > 0 && i < n && j > 0 && j < n && !window;
                xyz[3 * (i * (n + 1) + j)] = i + (inner ? 0.5 * (random.nextDouble() - 0.5) : 0);
                xyz[3 * (i * (n + 1) + j) + 1] = j + (inner ? 0.5 * (random.nextDouble() - 0.5) : 0);
            }
        List<Integer> tri = new ArrayList<>();
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++) {
                if (windows && i % 12 >= 5 && i % 12 < 8 && j % 12 >= 5 && j % 12 < 8) continue;
                int v = i * (n + 1) + j;
                tri.addAll(List.of(v, v + n + 1, v + n + 2, v, v + n + 2, v + 1));
            }
        return compact(xyz, tri.stream().mapToInt(Integer::intValue).toArray());
    }

    private static TriMesh compact(double[] xyz, int[] tri) {
        int[] used = Arrays.stream(tri).distinct().sorted().toArray();
        double[] kept = new double[3 * used.length];
        for (int v = 0; v < used.length; v++) System.arraycopy(xyz, 3 * used[v], kept, 3 * v, 3);
        return TriMesh.of(kept, Arrays.stream(tri).map(v -> Arrays.binarySearch(used, v)).toArray());
    }

    @Test void aThirdOfTheVerticesStay() {
        TriMesh fine = Grids.mudguard(60);
        TriMesh coarse = coarser(fine).mesh();
        assertTrue(coarse.vertexCount() <= 0.3 * fine.vertexCount(), coarse.vertexCount() + " of " + fine.vertexCount());
        assertTrue(coarse.vertexCount() >= 0.15 * fine.vertexCount(), coarse.vertexCount() + " of " + fine.vertexCount());
    }

    @Test void eulerNumberAndRimsOfAPlateWithWindows() {
        TriMesh fine = plate(60, true);
        TriMesh coarse = coarser(fine).mesh();
        assertEquals(euler(fine), euler(coarse));
        assertEquals(26, RimLoops.of(coarse, EdgeTable.of(coarse)).count(), "25 windows and the rim");
        assertEquals(fine.area(), coarse.area(), 1e-9 * fine.area(), "windows keep their corners");
        assertTrue(coarse.vertexCount() < 0.45 * fine.vertexCount(), coarse.vertexCount() + " of " + fine.vertexCount());
    }

    @Test void everyFieldThatIsLinearInThePlane() {
        TriMesh fine = plate(40, true);
        Coarser c = coarser(fine);
        for (int v = 0; v < fine.vertexCount(); v++) {
            double sum = 0, x = 0, y = 0;
            for (int k = 0; k < 3; k++) {
                int p = c.parents()[3 * v + k];
                double w = c.weights()[3 * v + k];
                assertTrue(w > -1e-9, "vertex " + v + " lies outside its triangle by " + w);
                sum += w;
                x += w * c.mesh().x(p);
                y += w * c.mesh().y(p);
            }
            assertEquals(1, sum, 1e-12);
            assertEquals(fine.x(v), x, 1e-9);
            assertEquals(fine.y(v), y, 1e-9);
        }
    }

    @Test void noTriangleOfAPlateTurnedOver() {
        TriMesh coarse = coarser(plate(50, true)).mesh();
        for (int t = 0; t < coarse.triangleCount(); t++) assertTrue(coarse.normal(t)[2] > 0.99, "triangle " + t);
    }

    @Test void verticesThatStayWhereTheyAre() {
        TriMesh fine = Grids.mudguard(40);
        Coarser c = coarser(fine);
        double[] layout = new Random(3).doubles(2 * fine.vertexCount()).toArray();
        double[] carried = c.carried(layout);
        int stayed = 0;
        for (int v = 0; v < fine.vertexCount(); v++) {
            if (c.weights()[3 * v] != 1) continue;
            int p = c.parents()[3 * v];
            assertEquals(fine.x(v), c.mesh().x(p), 0);
            assertEquals(fine.z(v), c.mesh().z(p), 0);
            assertArrayEquals(new double[] {layout[2 * v], layout[2 * v + 1]}, new double[] {carried[2 * p], carried[2 * p + 1]});
            stayed++;
        }
        assertEquals(c.mesh().vertexCount(), stayed);
    }

    @Test void everyFineTriangleLiesInOneThatSharesItsPlace() {
        TriMesh fine = plate(40, false);
        Coarser c = coarser(fine);
        for (int t = 0; t < fine.triangleCount(); t++) {
            int big = c.triangleOf()[t];
            double x = 0, y = 0, cx = 0, cy = 0, reach = 0;
            for (int k = 0; k < 3; k++) {
                x += fine.x(fine.corner(t, k)) / 3;
                y += fine.y(fine.corner(t, k)) / 3;
                cx += c.mesh().x(c.mesh().corner(big, k)) / 3;
                cy += c.mesh().y(c.mesh().corner(big, k)) / 3;
                reach = Math.max(reach, c.mesh().distance(c.mesh().corner(big, k), c.mesh().corner(big, (k + 1) % 3)));
            }
            assertTrue(Math.hypot(x - cx, y - cy) < reach + 2, "triangle " + t + " is given to one " + Math.hypot(x - cx, y - cy) + " away");
        }
    }
}
