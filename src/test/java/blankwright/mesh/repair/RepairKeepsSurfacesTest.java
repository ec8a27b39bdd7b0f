package blankwright.mesh.repair;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Whatever goes in, a surface comes out; what was one already comes out as it was. */
class RepairKeepsSurfacesTest {
    private static Repaired of(TriMesh mesh) {
        return of(mesh.positions(), mesh.corners());
    }

    private static Repaired of(double[] xyz, int... tri) {
        Repaired result = Repair.of(xyz, tri, Progress.NONE);
        checkSurface(result.mesh());
        checkSettled(result.mesh());
        return result;
    }

    private static void checkSurface(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        boolean[] used = new boolean[mesh.vertexCount()];
        int[] fans = new int[mesh.vertexCount()];
        boolean[] seen = new boolean[3 * mesh.triangleCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            assertTrue(mesh.area(t) > 0, "triangle " + t);
            for (int k = 0; k < 3; k++) {
                used[mesh.corner(t, k)] = true;
                if (!seen[3 * t + k]) {
                    fans[mesh.corner(t, k)]++;
                    walkFan(edges, 3 * t + k, seen);
                }
            }
        }
        for (int v = 0; v < used.length; v++) {
            assertTrue(used[v], "vertex " + v);
            assertEquals(1, fans[v], "fans at vertex " + v);
        }
    }

    /** Corner 3t+k is seen with all others reached across edges round its vertex. */
    private static void walkFan(EdgeTable edges, int corner, boolean[] seen) {
        int c = corner;
        while (c >= 0 && !seen[c]) {
            seen[c] = true;
            c = edges.twin(before(c));                  // the half-edge into the vertex is c-1; its twin leaves it
        }
        c = corner;
        while (true) {
            int g = edges.twin(c);
            if (g < 0) return;
            c = g % 3 == 2 ? g - 2 : g + 1;
            if (seen[c]) return;
            seen[c] = true;
        }
    }

    private static int before(int half) {
        return half % 3 == 0 ? half + 2 : half - 1;
    }

    private static void checkSettled(TriMesh mesh) {
        Repaired again = Repair.of(mesh.positions(), mesh.corners(), Progress.NONE);
        assertArrayEquals(mesh.corners(), again.mesh().corners());
        assertArrayEquals(mesh.positions(), again.mesh().positions(), 0);
        assertTrue(again.findings().stream().allMatch(f -> f.kind() == Kind.SLIVERS), again.findings().toString());
    }

    private static Map<Kind, Long> counts(Repaired result) {
        return result.findings().stream().collect(Collectors.toMap(f -> f.kind(), f -> f.count(), Long::sum, TreeMap::new));
    }

    /** Each triangle with corners of its own, as STL has them. */
    private static TriMesh loose(TriMesh mesh) {
        double[] xyz = new double[9 * mesh.triangleCount()];
        int[] tri = new int[3 * mesh.triangleCount()];
        for (int i = 0; i < tri.length; i++) {
            int v = mesh.corner(i / 3, i % 3);
            xyz[3 * i] = mesh.x(v);
            xyz[3 * i + 1] = mesh.y(v);
            xyz[3 * i + 2] = mesh.z(v);
            tri[i] = i;
        }
        return TriMesh.of(xyz, tri);
    }

    @Test
    void soundSurfacesComeOutAsTheyWere() {
        for (TriMesh mesh : List.of(Forms.tetrahedron(), Forms.cube(3), Forms.sphere(300, 3), Forms.torus(90, 30, 40, 24), Forms.tube(50, 200, 24, 7),
                Forms.plate(300, 200, 9, 5), Forms.cells(Forms.randomCells(7, 0.4, 5)))) {
            Repaired result = of(mesh);
            assertEquals(List.of(), result.findings());
            assertArrayEquals(mesh.corners(), result.mesh().corners());
            assertArrayEquals(mesh.positions(), result.mesh().positions(), 0);
        }
    }

    /** Three loose triangles on one edge behind a vertex of none, then a crack and a pinch: whatever went before, places are told as the file has them. */
    @Test
    void findingsNameVerticesAsGiven() {
        double[] wings = {9, 9, 9, 0, 0, 0, 0, 0, 4, 3, 0, 2, 0, 0, 4, 0, 0, 0, -3, 0, 2, 0, 0, 0, 0, 0, 4, 0, 3, 2};
        String text = of(wings, 1, 2, 3, 4, 5, 6, 7, 8, 9).findings().toString();
        assertTrue(text.contains("the first are 4 and 2"), text);
        assertTrue(text.contains("edge 1-2 carries 3 triangles"), text);
        double[] crack = {9, 9, 9, 0, 0, 0, 4, 0, 0, 2, 3, 0, 0, 0, 0, 2, 0, 0, 2, -3, 0, 2, 0, 0, 4, 0, 0, 2, -3, 0};
        text = of(crack, 1, 2, 3, 4, 6, 5, 7, 9, 8).findings().toString();
        assertTrue(text.contains("the first is 1-2"), text);
        double[] pinch = {9, 9, 9, 1, 0, 0, 1, 1, 0, 0, 0, 0, -1, 0, 0, -1, -1, 0, 0, 0, 0};
        text = of(pinch, 1, 2, 3, 4, 5, 6).findings().toString();
        assertTrue(text.contains("the first is vertex 3"), text);
    }

    @Test
    void looseTrianglesGiveBackEulerNumberAndArea() {
        for (TriMesh mesh : List.of(Forms.cube(3), Forms.sphere(300, 3), Forms.torus(90, 30, 40, 24), Forms.tube(50, 200, 24, 7))) {
            Repaired result = of(loose(mesh));
            assertEquals(Forms.euler(mesh), Forms.euler(result.mesh()));
            assertEquals(mesh.area(), result.mesh().area(), 0);
            assertEquals(mesh.vertexCount(), result.mesh().vertexCount());
            assertEquals(Map.of(Kind.WELDED_VERTICES, 3L * mesh.triangleCount() - mesh.vertexCount()), counts(result));
        }
    }

    /** Corners moved apart by a third of the tolerance close again; a real gap of ten times the tolerance stays. */
    @Test
    void cracksCloseWithinTheToleranceOnly() {
        TriMesh mesh = Forms.sphere(300, 3);
        double diagonal = 600 * Math.sqrt(3);
        for (double gap : new double[] {0.3e-6, 10e-6}) {
            double[] xyz = loose(mesh).positions();
            SplittableRandom random = new SplittableRandom(4);
            for (int i = 0; i < xyz.length; i++) xyz[i] += gap * diagonal / Math.sqrt(3) * (random.nextDouble() - 0.5);
            TriMesh result = of(xyz, loose(mesh).corners()).mesh();
            assertEquals(mesh.triangleCount(), result.triangleCount());
            assertEquals(gap < 1e-6, result.vertexCount() == mesh.vertexCount());
            if (gap < 1e-6) assertEquals(2, Forms.euler(result));
        }
    }

    /** A fine corner of a panel, triangles smaller than the tolerance, is no crack and stays as it is. */
    @Test
    void shortEdgesAreNotCollapsed() {
        TriMesh fine = Forms.plate(1e-4, 1e-4, 6, 6);
        double[] xyz = Arrays.copyOf(fine.positions(), 3 * (fine.vertexCount() + 1));
        int n = fine.vertexCount();
        xyz[3 * n] = -900;
        int[] tri = Arrays.copyOf(fine.corners(), 3 * (fine.triangleCount() + 1));
        int at = 3 * fine.triangleCount();
        tri[at] = n;
        tri[at + 1] = fine.corner(0, 1);
        tri[at + 2] = fine.corner(0, 0);
        Repaired result = of(xyz, tri);
        assertTrue(result.mesh().triangleCount() >= fine.triangleCount() / 2, result.findings().toString());
    }

    @Test
    void mixedDirectionsFollowMostOfTheArea() {
        TriMesh mesh = Forms.sphere(300, 3);
        int[] tri = mesh.corners();
        SplittableRandom random = new SplittableRandom(11);
        long turned = 0;
        for (int t = 0; t < tri.length; t += 3) {
            if (random.nextInt(3) > 0) continue;
            turned++;
            int c = tri[t];
            tri[t] = tri[t + 1];
            tri[t + 1] = c;
        }
        Repaired result = of(mesh.positions(), tri);
        assertEquals(Map.of(Kind.TURNED_TRIANGLES, turned), counts(result));
        for (int t = 0; t < mesh.triangleCount(); t++) assertArrayEquals(mesh.normal(t), result.mesh().normal(t), 1e-14);
    }

    @Test
    void mirroredInMirroredOut() {
        TriMesh mesh = loose(Forms.tube(50, 200, 24, 7));
        TriMesh there = of(Forms.mirrored(mesh)).mesh(), here = Forms.mirrored(of(mesh).mesh());
        assertEquals(here.area(), there.area(), 1e-9);
        for (int t = 0; t < here.triangleCount(); t++) assertArrayEquals(here.normal(t), there.normal(t), 1e-14);
    }

    @Test
    void twiceTheSameTriangleIsOnce() {
        double[] xyz = {0, 0, 0, 10, 0, 0, 0, 10, 0, 10, 10, 0, 5, 5, 5};
        Repaired result = of(xyz, 0, 1, 2, 1, 3, 2, 2, 1, 0, 1, 2, 0, 3, 1, 2, 1, 1, 3);
        assertEquals(2, result.mesh().triangleCount());
        assertEquals(Map.of(Kind.DUPLICATE_TRIANGLES, 3L, Kind.DEGENERATE_TRIANGLES, 1L, Kind.UNUSED_VERTICES, 1L), counts(result));
    }

    /** A rib on a flat skin: the skin stays whole, the rib comes off. */
    @Test
    void ribsArePartedFromTheSkin() {
        double[] xyz = {0, 0, 0, 10, 0, 0, 5, 8, 0, 5, -8, 0, 5, 0, 7};
        for (int[] tri : new int[][] {{0, 1, 2, 1, 0, 3, 0, 1, 4}, {0, 1, 4, 0, 1, 2, 1, 0, 3}, {1, 0, 2, 1, 0, 3, 1, 0, 4}}) {
            Repaired result = of(xyz, tri);
            assertEquals(1L, counts(result).get(Kind.NON_MANIFOLD_EDGES));
            assertTrue(result.findings().toString().contains("edge 0-1 carries 3 triangles")
                    || result.findings().toString().contains("edge 1-0 carries 3 triangles"), result.findings().toString());
            List<Component> parts = Components.of(result.mesh());
            assertEquals(List.of(2, 1), parts.stream().map(p -> p.mesh().triangleCount()).toList());
            assertEquals(80, parts.get(0).area(), 1e-12);
        }
    }

    @Test
    void bowTiesArePartedAtTheKnot() {
        Repaired result = of(new double[] {0, 0, 0, 10, 0, 0, 0, 10, 0, -10, 0, 0, 0, -10, 0}, 0, 1, 2, 0, 3, 4);
        assertEquals(Map.of(Kind.NON_MANIFOLD_VERTICES, 1L), counts(result));
        assertEquals(6, result.mesh().vertexCount());
        assertEquals(2, Components.of(result.mesh()).size());
    }

    /** A strip of 2n triangles with a half twist has one rim and Euler number 0; cut open it is a disk. */
    @Test
    void oneSidedStripsAreCutOpenIntoDisks() {
        int n = 40;
        double[] xyz = new double[6 * n];
        int[] tri = new int[6 * n];
        for (int i = 0; i < n; i++) {
            double a = 2 * Math.PI * i / n;
            for (int s = 0; s < 2; s++) {
                double w = (s == 0 ? -15 : 15);
                xyz[6 * i + 3 * s] = (100 + w * Math.cos(a / 2)) * Math.cos(a);
                xyz[6 * i + 3 * s + 1] = (100 + w * Math.cos(a / 2)) * Math.sin(a);
                xyz[6 * i + 3 * s + 2] = w * Math.sin(a / 2);
            }
            int p = 2 * i, q = 2 * i + 1, r = i + 1 < n ? p + 2 : 1, s = i + 1 < n ? q + 2 : 0;
            int[] two = {p, r, q, q, r, s};
            System.arraycopy(two, 0, tri, 6 * i, 6);
        }
        Repaired result = of(xyz, tri);
        assertEquals(1L, counts(result).get(Kind.ONE_SIDED_STRIP));
        assertEquals(2 * n, result.mesh().triangleCount());
        assertEquals(1, Forms.euler(result.mesh()));
        assertEquals(1, RimLoops.of(result.mesh(), EdgeTable.of(result.mesh())).count());
    }

    /** Corners on a neighbour's edge, filled by triangles without height as some writers do: the neighbour is cut, no slit is left. */
    @Test
    void flatTrianglesLeaveNoSlit() {
        double[] xyz = {0, 0, 0, 90, 0, 0, 45, 60, 0, 30, 0, 0, 60, 0, 0, 45, -60, 0};
        Repaired result = of(xyz, 0, 1, 2, 0, 3, 4, 0, 4, 1, 3, 0, 5, 4, 3, 5, 1, 4, 5);
        assertEquals(2L, counts(result).get(Kind.DEGENERATE_TRIANGLES));
        assertEquals(6, result.mesh().triangleCount());
        assertEquals(90 * 120 / 2.0, result.mesh().area(), 1e-9);
        assertEquals(4, RimLoops.of(result.mesh(), EdgeTable.of(result.mesh())).loop(0).length);
        assertEquals(1, RimLoops.of(result.mesh(), EdgeTable.of(result.mesh())).count());
    }

    /** Two plates side by side, 6 cells along the seam on one and 2 on the other: one plate, no slit; a plate that only touches stays apart. */
    @Test
    void seamsOfUnequalStepsAreClosed() {
        TriMesh fine = Forms.plate(40, 60, 3, 6), coarse = Forms.plate(30, 60, 2, 2);
        for (double shift : new double[] {40, 40.00001, 40.01}) {
            Repaired result = of(sideBySide(fine, coarse, shift, 0));
            boolean closes = shift < 40.001;
            assertEquals(closes ? 1 : 2, Components.of(result.mesh()).size());
            assertEquals(60 * 70, result.mesh().area(), 1e-3);
            if (!closes) continue;
            assertEquals(2L, counts(result).get(Kind.T_JUNCTIONS));
            assertEquals(fine.triangleCount() + coarse.triangleCount() + 4, result.mesh().triangleCount());
            assertEquals(1, RimLoops.of(result.mesh(), EdgeTable.of(result.mesh())).count());
            assertEquals(1, Forms.euler(result.mesh()));
        }
        assertEquals(2, Components.of(of(sideBySide(fine, coarse, 40, 57)).mesh()).size());
    }

    private static TriMesh sideBySide(TriMesh left, TriMesh right, double dx, double dy) {
        int n = left.vertexCount();
        double[] xyz = Arrays.copyOf(left.positions(), 3 * (n + right.vertexCount()));
        for (int v = 0; v < right.vertexCount(); v++) {
            xyz[3 * (n + v)] = right.x(v) + dx;
            xyz[3 * (n + v) + 1] = right.y(v) + dy;
            xyz[3 * (n + v) + 2] = right.z(v);
        }
        int[] tri = Arrays.copyOf(left.corners(), 3 * (left.triangleCount() + right.triangleCount()));
        for (int i = 0; i < 3 * right.triangleCount(); i++) tri[3 * left.triangleCount() + i] = n + right.corner(i / 3, i % 3);
        return TriMesh.of(xyz, tri);
    }

    /** A vertex split into two a hair apart, with needles between: closed again without a hole. */
    @Test
    void needlesAreClosed() {
        double e = 1e-9;
        double[] xyz = {0, 0, 0, e, 0, 0, 10, 0, 0, 0, 10, 0, -10, 0, 0, 0, -10, 0};
        Repaired result = of(xyz, 0, 1, 3, 1, 0, 5, 1, 2, 3, 0, 3, 4, 0, 4, 5, 1, 5, 2);
        assertEquals(4, result.mesh().triangleCount());
        assertEquals(5, result.mesh().vertexCount());
        assertEquals(200, result.mesh().area(), 1e-6);
        assertEquals(1, Forms.euler(result.mesh()));
    }

    /** Few vertices and many triangles: every kind of knot there is. */
    @Test
    void randomSoupsBecomeSurfaces() {
        SplittableRandom random = new SplittableRandom(2025);
        for (int round = 0; round < 3000; round++) {
            int n = 4 + random.nextInt(12), m = 1 + random.nextInt(40);
            double[] xyz = new double[3 * n];
            for (int i = 0; i < xyz.length; i++) xyz[i] = round % 3 == 0 ? random.nextInt(4) : 10 * random.nextDouble();
            if (round % 7 == 0) xyz[random.nextInt(xyz.length)] = Double.NaN;
            int[] tri = new int[3 * m];
            for (int i = 0; i < tri.length; i++) tri[i] = random.nextInt(n);
            of(xyz, tri);
        }
    }

    @Test
    void nothingUsableIsEmptyAndSaysWhy() {
        Repaired line = of(new double[] {0, 0, 0, 1, 0, 0, 2, 0, 0}, 0, 1, 2);
        assertTrue(line.isEmpty());
        assertEquals(Map.of(Kind.DEGENERATE_TRIANGLES, 1L), counts(line));
        assertTrue(of(new double[] {0, 0, 0, 1, 0, Double.NaN, 2, 0, 0}, 0, 1, 2).isEmpty());
        assertTrue(of(new double[0]).isEmpty());
        assertEquals("triangle 0 names vertex 3: there are 3",
                assertThrows(IllegalArgumentException.class, () -> of(new double[9], 0, 1, 3)).getMessage());
    }

    @Test
    void sliversAreToldAndKept() {
        Repaired result = of(new double[] {0, 0, 0, 1000, 0, 0, 500, 0.01, 0}, 0, 1, 2);
        assertEquals("1 triangle is over 10000 times as long as high, the worst 100000 times, the first is triangle 0; kept",
                result.findings().get(0).text());
    }

    @Test
    void crumbsAreLeftOutAndCounted() {
        TriMesh plate = Forms.plate(300, 200, 4, 3);
        int n = plate.vertexCount();
        double[] xyz = Arrays.copyOf(plate.positions(), 3 * n + 9);
        xyz[3 * n] = 400;
        xyz[3 * n + 3] = 405;
        xyz[3 * n + 6] = 400;
        xyz[3 * n + 7] = 5;
        int[] tri = Arrays.copyOf(plate.corners(), plate.corners().length + 3);
        for (int k = 0; k < 3; k++) tri[tri.length - 3 + k] = n + k;
        List<Component> all = Components.of(of(xyz, tri).mesh());
        assertEquals(2, all.size());
        assertEquals(n + 1, all.get(1).vertexOf(1));
        assertEquals(plate.triangleCount(), all.get(1).triangleOf(0));
        Components.Kept kept = Components.worthKeeping(all);
        assertEquals(1, kept.pieces().size());
        assertEquals("1 loose part of together 1 triangle and 12.5 mm2 is below 1/1000 of the whole area; left out", kept.findings().get(0).text());
        assertEquals(0, Components.of(TriMesh.of(new double[0], new int[0])).size());
    }
}
