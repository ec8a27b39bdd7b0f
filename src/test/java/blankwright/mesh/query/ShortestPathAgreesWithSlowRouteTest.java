package blankwright.mesh.query;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ShortestPathAgreesWithSlowRouteTest {
    /** All pairs, Floyd 1962. */
    private static double[][] floyd(TriMesh mesh, double[] cost) {
        EdgeTable edges = EdgeTable.of(mesh);
        int n = mesh.vertexCount();
        double[][] d = new double[n][n];
        for (int i = 0; i < n; i++) {
            Arrays.fill(d[i], Double.POSITIVE_INFINITY);
            d[i][i] = 0;
        }
        for (int e = 0; e < edges.edgeCount(); e++) d[edges.from(e)][edges.to(e)] = d[edges.to(e)][edges.from(e)] = cost[e];
        for (int k = 0; k < n; k++)
            for (int i = 0; i < n; i++) for (int j = 0; j < n; j++) d[i][j] = Math.min(d[i][j], d[i][k] + d[k][j]);
        return d;
    }

    @Test
    void distancesAreTheSameAlsoFromManyToManyAndWhileStartsAreAdded() {
        Random random = new Random(4);
        for (TriMesh mesh : new TriMesh[] {Forms.sphere(100, 2), Forms.plate(300, 200, 10, 8), Forms.cells(Forms.randomCells(3, 0.5, 3))}) {
            EdgeTable edges = EdgeTable.of(mesh);
            double[] cost = new double[edges.edgeCount()];
            for (int e = 0; e < cost.length; e++) cost[e] = e % 17 == 0 ? Double.POSITIVE_INFINITY : edges.length(e) * random.nextDouble();
            double[][] slow = floyd(mesh, cost);
            int n = mesh.vertexCount();
            for (int i = 0; i < 40; i++) {
                int[] from = {random.nextInt(n), random.nextInt(n), random.nextInt(n)}, to = {random.nextInt(n), random.nextInt(n)};
                double best = Double.POSITIVE_INFINITY;
                for (int a : from) for (int b : to) best = Math.min(best, slow[a][b]);
                var path = ShortestPath.between(mesh, edges, e -> cost[e], from, to);
                assertEquals(best < Double.POSITIVE_INFINITY, path.isPresent());
                if (path.isPresent()) {
                    assertEquals(best, path.get().cost(), 1e-12 * (1 + best));
                    assertWalks(mesh, edges, cost, path.get());
                }
                Wavefront front = new Wavefront(mesh, EdgeStars.of(mesh, edges), cost);
                for (int a : from) {
                    front.start(a);
                    for (int step = random.nextInt(n); step > 0; step--) front.next();
                }
                front.run();
                for (int v = 0; v < n; v++) {
                    double nearest = Math.min(slow[from[0]][v], Math.min(slow[from[1]][v], slow[from[2]][v]));
                    assertEquals(nearest, front.distance(v), 1e-12 * (1 + Math.min(nearest, 1e9)));
                }
                front.clear();
                front.start(to[0]);
                front.run();
                for (int v = 0; v < n; v++) assertEquals(slow[to[0]][v], front.distance(v), 1e-12 * (1 + Math.min(slow[to[0]][v], 1e9)));
            }
        }
    }

    private static void assertWalks(TriMesh mesh, EdgeTable edges, double[] cost, ShortestPath path) {
        EdgeStars stars = EdgeStars.of(mesh, edges);
        int[] v = path.vertices();
        double sum = 0, length = 0;
        for (int i = 1; i < v.length; i++) {
            sum += cost[stars.between(v[i - 1], v[i])];
            length += mesh.distance(v[i - 1], v[i]);
        }
        assertEquals(sum, path.cost(), 1e-12 * (1 + sum));
        assertEquals(length, path.length(), 1e-12 * (1 + length));
    }

    @Test
    void manyEquallyShortWaysGiveTheSamePlacesHoweverNumbered() {
        TriMesh plate = Forms.plate(160, 160, 16, 16);
        double[] expected = null;
        for (int seed = 0; seed < 20; seed++) {
            TriMesh mesh = Forms.renumbered(plate, seed);
            int a = at(mesh, 0, 40), b = at(mesh, 160, 120);
            int[] path = ShortestPath.between(mesh, EdgeTable.of(mesh), new int[] {a}, new int[] {b}).orElseThrow().vertices();
            double[] places = Arrays.stream(path).mapToDouble(v -> 1000 * mesh.x(v) + mesh.y(v)).toArray();
            if (expected == null) expected = places;
            assertArrayEquals(expected, places);
        }
    }

    private static int at(TriMesh mesh, double x, double y) {
        for (int v = 0; v < mesh.vertexCount(); v++) if (mesh.x(v) == x && mesh.y(v) == y) return v;
        throw new AssertionError();
    }

    @Test
    void sharpEdgesAreCheaper() {
        TriMesh cube = Forms.cube(4);
        EdgeTable edges = EdgeTable.of(cube);
        EdgeCost cost = EdgeCost.sharpFirst(cube, edges, 0.25);
        for (int e = 0; e < edges.edgeCount(); e++) {
            boolean sharp = Math.abs(cube.normal(edges.left(e))[0] - cube.normal(edges.right(e))[0]) > 0.5
                    || Math.abs(cube.normal(edges.left(e))[1] - cube.normal(edges.right(e))[1]) > 0.5;
            assertEquals(edges.length(e) * (sharp ? 0.25 : 1), cost.of(e), 1e-15);
        }
        assertTrue(edges.edgeCount() > 0);
        assertThrows(IllegalArgumentException.class, () -> EdgeCost.sharpFirst(cube, edges, 2));
        assertThrows(IllegalArgumentException.class, () -> Wavefront.costs(3, e -> -1));
    }
}
