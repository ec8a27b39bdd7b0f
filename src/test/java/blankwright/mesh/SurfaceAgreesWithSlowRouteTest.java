package blankwright.mesh;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The tables of a surface against a search by names of vertices; lengths and areas against plain formulas. */
class SurfaceAgreesWithSlowRouteTest {
    private static List<TriMesh> forms() {
        return List.of(Forms.tetrahedron(), Forms.cube(3), Forms.plate(300, 200, 7, 5), Forms.tube(50, 200, 12, 5), Forms.torus(90, 30, 14, 9),
                Forms.renumbered(Forms.torus(90, 30, 14, 9), 4), Forms.holed(Forms.plate(300, 200, 30, 20), 31, new double[] {90, 90, 0},
                        new double[] {200, 100, 0}), TriMesh.of(new double[9], new int[0]));
    }

    @Test
    void neighboursAreThoseWhoNameTheSameTwoVertices() {
        for (TriMesh mesh : forms()) {
            EdgeTable edges = EdgeTable.of(mesh);
            Map<List<Integer>, Integer> halfFrom = new HashMap<>();
            for (int h = 0; h < 3 * mesh.triangleCount(); h++)
                halfFrom.put(List.of(mesh.corner(h / 3, h % 3), mesh.corner(h / 3, (h + 1) % 3)), h);
            Set<Set<Integer>> pairs = new HashSet<>();
            for (Map.Entry<List<Integer>, Integer> half : halfFrom.entrySet()) {
                int h = half.getValue(), a = half.getKey().get(0), b = half.getKey().get(1), e = edges.edgeOf(h / 3, h % 3);
                int back = halfFrom.getOrDefault(List.of(b, a), -1);
                pairs.add(Set.of(a, b));
                assertEquals(back, edges.twin(h));
                assertEquals(back < 0 ? -1 : back / 3, edges.neighbour(h / 3, h % 3));
                assertEquals(Set.of(a, b), Set.of(edges.from(e), edges.to(e)));
                int left = halfFrom.get(List.of(edges.from(e), edges.to(e)));
                assertEquals(left / 3, edges.left(e));
                assertEquals(halfFrom.getOrDefault(List.of(edges.to(e), edges.from(e)), -3) / 3, edges.right(e));
                assertEquals(Math.sqrt(square(mesh, a, b)), edges.length(e), 1e-12);
            }
            assertEquals(pairs.size(), edges.edgeCount());
        }
    }

    private static double square(TriMesh mesh, int a, int b) {
        return Math.pow(mesh.x(a) - mesh.x(b), 2) + Math.pow(mesh.y(a) - mesh.y(b), 2) + Math.pow(mesh.z(a) - mesh.z(b), 2);
    }

    @Test
    void rimsHoldEachFreeEdgeOnceWithTheMetalOnTheLeft() {
        for (TriMesh mesh : forms()) {
            EdgeTable edges = EdgeTable.of(mesh);
            Set<List<Integer>> free = new HashSet<>();
            for (int e = 0; e < edges.edgeCount(); e++) if (edges.right(e) < 0) free.add(List.of(edges.from(e), edges.to(e)));
            RimLoops rims = RimLoops.of(mesh, edges);
            double most = 0;
            for (int i = 0; i < rims.count(); i++) {
                int[] loop = rims.loop(i);
                double length = 0;
                for (int j = 0; j < loop.length; j++) {
                    assertTrue(free.remove(List.of(loop[j], loop[(j + 1) % loop.length])));
                    length += Math.sqrt(square(mesh, loop[j], loop[(j + 1) % loop.length]));
                }
                assertEquals(length, rims.length(mesh, i), 1e-9);
                most = Math.max(most, length);
            }
            assertEquals(Set.of(), free);
            if (rims.count() == 0) assertEquals(-1, rims.longest(mesh));
            else assertEquals(most, rims.length(mesh, rims.longest(mesh)), 1e-9);
        }
    }

    @Test
    void rimsThatTouchInAVertexStayApart() {
        TriMesh bow = TriMesh.of(new double[] {0, 0, 0, 1, 0, 0, 1, 1, 0, -1, 0, 0, -1, -1, 0}, new int[] {0, 1, 2, 0, 3, 4});
        RimLoops rims = RimLoops.of(bow, EdgeTable.of(bow));
        assertEquals(2, rims.count());
        assertArrayEquals(new int[] {0, 1, 2}, rims.loop(0));
        assertArrayEquals(new int[] {0, 3, 4}, rims.loop(1));
    }

    private static String refused(int... tri) {
        TriMesh mesh = TriMesh.of(new double[15], tri);
        return assertThrows(IllegalArgumentException.class, () -> EdgeTable.of(mesh)).getMessage();
    }

    @Test
    void refusesWhatIsNoSurface() {
        assertEquals("edge 1-0 of triangle 2 carries three triangles", refused(0, 1, 2, 1, 0, 3, 1, 0, 4));
        assertEquals("edge 0-1 of triangle 1 runs the same way in triangle 0", refused(0, 1, 2, 0, 1, 3));
        assertEquals("triangle 1 names vertex 3 twice", refused(0, 1, 2, 4, 3, 3));
    }

    /** Heron's formula and the law of cosines, from lengths alone. */
    @Test
    void areasAndAnglesFollowFromTheLengths() {
        Random random = new Random(5);
        for (int i = 0; i < 1000; i++) {
            double[] xyz = random.doubles(9, -100, 100).toArray();
            TriMesh one = TriMesh.of(xyz, new int[] {0, 1, 2});
            double a = Math.sqrt(square(one, 1, 2)), b = Math.sqrt(square(one, 2, 0)), c = Math.sqrt(square(one, 0, 1)), s = (a + b + c) / 2;
            assertEquals(Math.sqrt(s * (s - a) * (s - b) * (s - c)), one.area(0), 1e-6);
            assertEquals((b * b + c * c - a * a) / (2 * b * c), Math.cos(one.angle(0, 0)), 1e-11);
            assertEquals((c * c + a * a - b * b) / (2 * c * a), Math.cos(one.angle(0, 1)), 1e-11);
            double[] n = one.normal(0);
            for (int v = 1; v < 3; v++)
                assertEquals(0, n[0] * (one.x(v) - one.x(0)) + n[1] * (one.y(v) - one.y(0)) + n[2] * (one.z(v) - one.z(0)), 1e-12 * 400);
            assertEquals(1, n[0] * n[0] + n[1] * n[1] + n[2] * n[2], 1e-14);
        }
        TriMesh plate = Forms.plate(300, 200, 7, 5);
        assertEquals(60_000, plate.area(), 1e-9);
        assertArrayEquals(new double[] {0, 0, 1}, plate.normal(3), 1e-300);
        assertArrayEquals(new double[] {300, 200, 0}, plate.size());
    }

    @Test
    void trianglesWithoutAreaHaveNoNormalAndNothingIsNaN() {
        TriMesh flat = TriMesh.of(new double[] {1, 2, 3, 1, 2, 3, 4, 4, 4}, new int[] {0, 1, 2});
        assertEquals(0, flat.area(0));
        assertArrayEquals(new double[3], flat.normal(0));
        for (int k = 0; k < 3; k++) assertEquals(0, flat.angle(0, k));
        assertArrayEquals(new double[3], TriMesh.of(new double[0], new int[0]).size());
    }

    @Test
    void meshesRefuseCornersOutOfRangeAndPlacesThatAreNone() {
        assertEquals("triangle 1 names vertex 3: there are 3", assertThrows(IllegalArgumentException.class,
                () -> TriMesh.of(new double[9], new int[] {0, 1, 2, 2, 3, 0})).getMessage());
        assertEquals("vertex 2 has coordinate NaN", assertThrows(IllegalArgumentException.class,
                () -> TriMesh.of(new double[] {0, 0, 0, 0, 0, 0, 0, Double.NaN, 0}, new int[] {0, 1, 2})).getMessage());
        assertThrows(IllegalArgumentException.class, () -> TriMesh.of(new double[8], new int[0]));
        assertThrows(IllegalArgumentException.class, () -> TriMesh.of(new double[9], new int[] {0, 1}));
        assertThrows(IllegalArgumentException.class, () -> Forms.tetrahedron().withPositions(new double[9]));
    }

    @Test
    void whatIsHandedInAndOutIsACopy() {
        double[] xyz = {0, 0, 0, 1, 0, 0, 0, 1, 0}, uv = {0, 0, 1, 0, 0, 1};
        int[] tri = {0, 1, 2};
        TriMesh mesh = TriMesh.of(xyz, tri);
        FlatMap map = FlatMap.of(mesh, uv);
        xyz[0] = mesh.positions()[0] = 7;
        tri[0] = mesh.corners()[0] = 2;
        uv[0] = map.positions()[0] = 7;
        assertEquals(0, mesh.x(0));
        assertEquals(0, mesh.corner(0, 0));
        assertEquals(0, map.u(0));
    }

    @Test
    void aBlankTurnedOnTheSheetKeepsItsAreaAndSense() {
        TriMesh plate = Forms.plate(300, 200, 7, 5);
        double[] uv = new double[2 * plate.vertexCount()];
        for (int v = 0; v < plate.vertexCount(); v++) {
            uv[2 * v] = plate.x(v);
            uv[2 * v + 1] = plate.y(v);
        }
        FlatMap map = FlatMap.of(plate, uv), moved = map.moved(Math.PI / 2, 11, -3);
        assertEquals(60_000, map.area(), 1e-9);
        assertEquals(60_000, moved.area(), 1e-7);
        assertArrayEquals(new double[] {-189, -3, 11, 297}, moved.box(), 1e-12);         // (x, y) goes to (11 - y, x - 3)
        assertArrayEquals(new double[] {200, 300}, moved.size(), 1e-12);
        for (int i = 1; i < uv.length; i += 2) uv[i] = -uv[i];
        assertTrue(FlatMap.of(plate, uv).area(0) < 0, "turned over");
        assertThrows(IllegalArgumentException.class, () -> FlatMap.of(plate, new double[4]));
        uv[5] = Double.POSITIVE_INFINITY;
        assertEquals("flat position of vertex 2 is Infinity", assertThrows(IllegalArgumentException.class, () -> FlatMap.of(plate, uv)).getMessage());
    }
}
