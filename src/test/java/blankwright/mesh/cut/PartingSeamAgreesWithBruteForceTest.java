package blankwright.mesh.cut;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Strips;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.ShortestPath;
import blankwright.mesh.repair.Component;
import blankwright.mesh.repair.Components;
import blankwright.num.Progress;
import blankwright.outline.Overlap;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PartingSeamAgreesWithBruteForceTest {
    private static int[] run(int[] loop, int from, int count) {
        int[] run = new int[count];
        for (int i = 0; i < count; i++) run[i] = loop[(from + i) % loop.length];
        return run;
    }

    private static double length(TriMesh mesh, List<int[]> paths) {
        double sum = 0;
        for (int[] path : paths) for (int i = 1; i < path.length; i++) sum += mesh.distance(path[i - 1], path[i]);
        return sum;
    }

    private static boolean partedBy(TriMesh mesh, List<int[]> paths, int[] first, int[] second) {
        Cut cut = Cut.along(mesh, paths);
        for (Component part : Components.of(cut.mesh())) {
            boolean one = false, other = false;
            for (int v = 0; v < part.mesh().vertexCount(); v++) {
                int of = cut.vertexOf(part.vertexOf(v));
                one |= Arrays.stream(first).anyMatch(w -> w == of);
                other |= Arrays.stream(second).anyMatch(w -> w == of);
            }
            if (one && other) return false;
        }
        return true;
    }

    /** No shortest path between any two rim vertices that parts two random stretches is shorter by more than the midway share. */
    @Test
    void noShorterPathPartsTheStretches() {
        Random random = new Random(7);
        TriMesh plate = Forms.plate(300, 200, 12, 8), holed = Forms.holed(Forms.plate(300, 200, 15, 10), 30, new double[] {150, 100, 0});
        for (TriMesh mesh : new TriMesh[] {plate, holed, Forms.renumbered(plate, 3)}) {
            EdgeTable edges = EdgeTable.of(mesh);
            RimLoops rims = RimLoops.of(mesh, edges);
            int[] loop = rims.loop(rims.longest(mesh));
            for (int trial = 0; trial < 4; trial++) {
                int n = loop.length, at = random.nextInt(n);
                int[] first = run(loop, at, 2 + random.nextInt(n / 4)), second = run(loop, at + n / 2, 2 + random.nextInt(n / 4));
                List<int[]> seam = PartingSeam.between(mesh, loop, first, second).orElseThrow();
                assertTrue(partedBy(mesh, seam, first, second));
                double best = Double.POSITIVE_INFINITY;
                for (int a : loop) {
                    for (int b : loop) {
                        if (a >= b) continue;
                        Optional<ShortestPath> path = ShortestPath.between(mesh, edges, e -> edges.right(e) < 0 ? Double.POSITIVE_INFINITY : edges.length(e),
                                new int[] {a}, new int[] {b});
                        if (path.isPresent() && path.get().length() < best && touchesNone(path.get().vertices(), first, second)
                                && partedBy(mesh, List.of(path.get().vertices()), first, second)) best = path.get().length();
                    }
                }
                assertTrue(length(mesh, seam) <= best * 1.02 + 1e-9, length(mesh, seam) + " mm, but " + best + " would do");
                if (mesh != holed) assertTrue(length(mesh, seam) >= best - 1e-9);
            }
        }
    }

    private static boolean touchesNone(int[] path, int[] first, int[] second) {
        return Arrays.stream(path).noneMatch(v -> Arrays.stream(first).anyMatch(w -> w == v) || Arrays.stream(second).anyMatch(w -> w == v));
    }

    /** A hole in the way spares metal: two cuts with the hole between. */
    @Test
    void aHoleOnTheWayIsNotCut() {
        TriMesh mesh = Forms.holed(Forms.plate(300, 100, 30, 10), 25, new double[] {150, 50, 0});
        RimLoops rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        int[] loop = rims.loop(rims.longest(mesh));
        int[] left = Arrays.stream(loop).filter(v -> mesh.x(v) == 0).toArray(), right = Arrays.stream(loop).filter(v -> mesh.x(v) == 300).toArray();
        List<int[]> seam = PartingSeam.between(mesh, loop, left, right).orElseThrow();
        assertEquals(2, seam.size());
        assertTrue(length(mesh, seam) < 70, length(mesh, seam) + " mm");
        assertTrue(partedBy(mesh, seam, left, right));
    }

    /**
     * A strip of 470 degrees is flat already, so the parts of its blank are the blanks of its parts: of all shortest paths between two rim
     * vertices none that is shorter than the seam, but for the midway share, leaves parts that do not cover themselves.
     */
    @Test
    void noShorterSeamCuresAStrip() {
        TriMesh strip = Strips.ring(470, 80, 120, 36, 2);
        EdgeTable edges = EdgeTable.of(strip);
        FlatMap map = Flattener.flatten(strip, FlattenOptions.DEFAULT, Progress.NONE).map();
        RimLoops rims = RimLoops.of(strip, edges);
        var covering = blankwright.flatten.Covering.of(map, rims, Strips.places(map)).get(0);
        List<int[]> seam = PartingSeam.between(strip, rims.loop(0), covering.first(), covering.second()).orElseThrow();
        assertTrue(cures(map, seam), "the seam itself");
        int[] loop = rims.loop(0);
        for (int a : loop) {
            for (int b : loop) {
                if (a >= b) continue;
                Optional<ShortestPath> path = ShortestPath.between(strip, edges, e -> edges.right(e) < 0 ? Double.POSITIVE_INFINITY : edges.length(e),
                        new int[] {a}, new int[] {b});
                if (path.isEmpty() || path.get().length() > length(strip, seam) / 1.02 - 1e-9) continue;
                assertTrue(!cures(map, List.of(path.get().vertices())), path.get().length() + " mm from " + a + " to " + b + " would do");
            }
        }
    }

    private static boolean cures(FlatMap map, List<int[]> seam) {
        Cut cut = Cut.along(map.form(), seam);
        for (Component part : Components.of(cut.mesh())) {
            double[] uv = new double[2 * part.mesh().vertexCount()];
            for (int v = 0; v < uv.length / 2; v++) {
                uv[2 * v] = map.u(cut.vertexOf(part.vertexOf(v)));
                uv[2 * v + 1] = map.v(cut.vertexOf(part.vertexOf(v)));
            }
            if (!Overlap.of(Strips.rings(FlatMap.of(part.mesh(), uv))).isEmpty()) return false;
        }
        return true;
    }
}
