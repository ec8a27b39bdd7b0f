package blankwright.mesh.reduce;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What thinning out must not change, on friendly and on hostile meshes; distances by asking every triangle. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)     // a loop without end is a failure, not a wait
class ReduceKeepsTest {
    @Test
    void theDeviationItTellsIsThatOfEverySampleAskedOneByOne() {
        for (int seed = 0; seed < 4; seed++) {
            TriMesh given = bumps(14, 0.3, seed);
            Reduced reduced = Reduce.of(given, 0.4, 0, Progress.NONE);
            assertTrue(reduced.mesh().triangleCount() < 0.8 * given.triangleCount(), reduced.mesh().triangleCount() + "");
            double there = Far.most(given, reduced.mesh(), 8), back = Far.most(reduced.mesh(), given, 16);
            for (int t = 0; t < reduced.mesh().triangleCount(); t++) back = Math.max(back, Far.from(given, Forms.middle(reduced.mesh(), t)));
            for (int t = 0; t < given.triangleCount(); t++) there = Math.max(there, Far.from(reduced.mesh(), Forms.middle(given, t)));
            assertEquals(Math.max(there, back), reduced.deviation(), 1e-12);
            double dense = Math.max(Far.most(given, reduced.mesh(), 23), Far.most(reduced.mesh(), given, 41));
            assertTrue(dense <= 1.05 * reduced.deviation(), dense + " between the samples, " + reduced.deviation() + " at them");
        }
    }

    @Test
    void topologyRimsAndDirectionStayOnAllKindsOfForms() {
        TriMesh plate = Forms.plate(100, 100, 50, 50);
        keeps(Forms.holed(plate, 12, new double[] {30, 30, 0}, new double[] {70, 60, 0}), 0.5);
        keeps(Forms.tube(30, 80, 60, 40), 0.2);
        keeps(Forms.torus(60, 20, 90, 50), 0.5);
        keeps(Forms.sphere(50, 4), 0.5);
        keeps(Forms.cube(6), 0.01);
        keeps(Forms.tetrahedron(), 10);
        keeps(Forms.octahedron(), 10);
        keeps(Forms.plate(1, 1, 1, 1), 10);
        for (int seed = 1; seed < 6; seed++)
            for (TriMesh part : Forms.parts(Forms.cells(Forms.randomCells(6, 0.4, seed)))) keeps(part, 0.3);
    }

    @Test
    void noiseSliversAndHubsAreBorne() {
        for (int seed = 0; seed < 3; seed++) {
            keeps(bumps(30, 1.5, seed), 0.5);
            keeps(Forms.renumbered(bumps(40, 0.05, seed), seed), 0.2);
            keeps(squeezed(seed), 0.3);
        }
        keeps(hub(3000), 0.05);
    }

    @Test
    void aSheetOverTheGroundFacesUpAllOver() {
        TriMesh given = bumps(60, 0.05, 7);
        TriMesh mesh = Reduce.of(given, 0.3, 0, Progress.NONE).mesh();
        assertTrue(mesh.triangleCount() < given.triangleCount() / 2);
        double[] flat = mesh.positions();
        for (int i = 2; i < flat.length; i += 3) flat[i] = 0;
        TriMesh shadow = mesh.withPositions(flat);
        double area = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            assertTrue(mesh.normal(t)[2] > 0, "triangle " + t);
            area += shadow.area(t);
        }
        assertEquals(60 * 60, area, 1e-9 * 3600);
    }

    @Test
    void itStopsAtTheNumberAsked() {
        TriMesh given = bumps(60, 0.02, 3);
        assertEquals(3000, Reduce.of(given, 5, 3000, Progress.NONE).mesh().triangleCount(), 1);
        assertEquals(given.triangleCount(), Reduce.of(given, 5, 1_000_000, Progress.NONE).mesh().triangleCount());
    }

    @Test
    void theBitsAreTheSameOnAnyNumberOfThreads() throws Exception {
        TriMesh given = bumps(120, 0.05, 5);
        Reduced one = on(1, given);
        for (int threads : new int[] {2, 8}) {
            Reduced more = on(threads, given);
            assertArrayEquals(one.mesh().positions(), more.mesh().positions());
            assertArrayEquals(one.mesh().corners(), more.mesh().corners());
            assertEquals(one.deviation(), more.deviation());
        }
    }

    /** Large enough for several blocks, in whatever order its vertices are. */
    @Test
    void largeFormsKeepAllThatWhicheverCoreThinsThemOut() throws Exception {
        TriMesh given = Forms.renumbered(bumps(260, 0.03, 5), 5);
        assertTrue(given.vertexCount() > 4 * 16384);
        keeps(given, 0.3);
        Reduced one = on(1, given);
        for (int threads : new int[] {2, 8}) {
            Reduced more = on(threads, given);
            assertArrayEquals(one.mesh().positions(), more.mesh().positions());
            assertArrayEquals(one.mesh().corners(), more.mesh().corners());
        }
        assertEquals(90_000, Reduce.of(given, 5, 90_000, Progress.NONE).mesh().triangleCount(), 1);
        assertEquals(20_000, Reduce.of(given, 5, 20_000, Progress.NONE).mesh().triangleCount(), 1);
    }

    @Test
    void refusesWhatIsNoSurface() {
        TriMesh pinched = TriMesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, -1, 0, 0, 0, -1, 0}, new int[] {0, 1, 2, 0, 3, 4});
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Reduce.of(pinched, 1, 0, Progress.NONE)).getMessage().contains("vertex 0"));
        assertThrows(IllegalArgumentException.class, () -> Reduce.of(Forms.octahedron(), 0, 0, Progress.NONE));
    }

    private static Reduced on(int threads, TriMesh given) throws Exception {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            return pool.submit(() -> Reduce.of(given, 0.3, 0, Progress.NONE)).get();
        } finally {
            pool.shutdown();
        }
    }

    private static void keeps(TriMesh given, double within) {
        Reduced reduced = Reduce.of(given, within, 0, Progress.NONE);
        TriMesh mesh = reduced.mesh();
        EdgeTable edges = EdgeTable.of(mesh);
        assertEquals(Forms.euler(given), Forms.euler(mesh));
        new Fans(mesh, edges);                                          // one fan at each vertex
        assertTrue(reduced.deviation() <= within, reduced.deviation() + " beyond " + within);
        for (int v = 0; v < given.vertexCount(); v += 1 + given.vertexCount() / 300)
            assertTrue(Far.from(mesh, given.x(v), given.y(v), given.z(v)) <= within * (1 + 1e-9), "vertex " + v);
        assertTrue(slimmest(mesh) >= Math.min(Trial.SLIM, slimmest(given)) * (1 - 1e-9), slimmest(mesh) + " from " + slimmest(given));
        RimLoops before = RimLoops.of(given, EdgeTable.of(given)), after = RimLoops.of(mesh, edges);
        assertEquals(before.count(), after.count());
        for (int i = 0; i < before.count(); i++) {
            int near = -1;
            double best = Double.POSITIVE_INFINITY;
            for (int j = 0; j < after.count(); j++) {
                double far = farthest(given, before.loop(i), mesh, after.loop(j));
                if (far < best) {
                    best = far;
                    near = j;
                }
            }
            assertTrue(best <= within * (1 + 1e-9), "rim " + i + " is " + best + " off");
            assertTrue(after.length(mesh, near) <= before.length(given, i) * (1 + 1e-12));
        }
    }

    /** Largest distance of the vertices of one rim from the other. */
    private static double farthest(TriMesh given, int[] rim, TriMesh mesh, int[] thinned) {
        double most = 0;
        for (int v : rim) {
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < thinned.length; i++) {
                int a = thinned[i], b = thinned[(i + 1) % thinned.length];
                least = Math.min(least, Far.fromSide(new double[] {mesh.x(a), mesh.y(a), mesh.z(a)}, new double[] {mesh.x(b), mesh.y(b), mesh.z(b)},
                        new double[] {given.x(v), given.y(v), given.z(v)}));
            }
            most = Math.max(most, least);
        }
        return most;
    }

    private static double slimmest(TriMesh mesh) {
        double least = 1;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double longest = 0;
            for (int k = 0; k < 3; k++) longest = Math.max(longest, mesh.distance(mesh.corner(t, k), mesh.corner(t, (k + 1) % 3)));
            least = Math.min(least, 2 * mesh.area(t) / (longest * longest));
        }
        return least;
    }

    /** A square of n by n mm, one cell each, with waves and noise. */
    private static TriMesh bumps(int n, double noise, long seed) {
        Random random = new Random(seed);
        return Forms.grid(n, n, false, false, (u, v) ->
                new double[] {n * u, n * v, 2 * Math.sin(5 * u) * Math.cos(4 * v) + noise * random.nextGaussian()});
    }

    /** Cells a ten-thousandth as wide as high beside ordinary ones, and some without any width. */
    private static TriMesh squeezed(long seed) {
        Random random = new Random(seed);
        double[] at = new double[31];
        for (int i = 1; i < at.length; i++) at[i] = at[i - 1] + (random.nextInt(4) == 0 ? 1e-4 : random.nextInt(9) == 0 ? 0 : 1);
        return Forms.grid(30, 30, false, false, (u, v) -> new double[] {at[(int) Math.round(30 * u)], 30 * v, Math.sin(v + 0.1 * u)});
    }

    /** A flat cone with all its triangles at one vertex. */
    private static TriMesh hub(int n) {
        double[] xyz = new double[3 * (n + 1)];
        int[] tri = new int[3 * n];
        xyz[2] = 5;
        for (int i = 0; i < n; i++) {
            xyz[3 * i + 3] = 100 * Math.cos(2 * Math.PI * i / n);
            xyz[3 * i + 4] = 100 * Math.sin(2 * Math.PI * i / n);
            tri[3 * i + 1] = i + 1;
            tri[3 * i + 2] = (i + 1) % n + 1;
        }
        return TriMesh.of(xyz, tri);
    }
}
