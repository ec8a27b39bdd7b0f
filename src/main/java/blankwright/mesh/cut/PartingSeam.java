package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.ShortestPath;
import blankwright.mesh.query.Wavefront;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The shortest seam across a disk, holes allowed, that parts two stretches of its outer rim.
 *
 * <p>The two stretches leave two arcs of the rim; every way across that parts the stretches runs from one arc to the other, so the shortest
 * such way is one shortest path between two sets of vertices. It may run along holes, where nothing is left to cut. Of ways that are nearly
 * as short the one midway between the stretches is taken: an edge near one of them costs up to {@value #MIDWAY} of its length more.
 */
public final class PartingSeam {
    private static final double MIDWAY = 0.02;

    private PartingSeam() { }

    /**
     * @param loop the outer rim in order
     * @param first vertices of the loop that follow each other; likewise {@code second}; neither meets the other
     * @return the cuts, one or, where it crosses holes, more, each a path of vertices with two or more; empty where the stretches leave no
     *     arc on one side or no way leads across
     */
    public static Optional<List<int[]>> between(TriMesh disk, int[] loop, int[] first, int[] second) {
        EdgeTable edges = EdgeTable.of(disk);
        EdgeStars stars = EdgeStars.of(disk, edges);
        int n = disk.vertexCount();
        int[] stretch = new int[n];                         // 1 and 2 on the stretches, 3 elsewhere on the loop
        for (int v : loop) stretch[v] = 3;
        for (int v : first) stretch[v] = 1;
        for (int v : second) stretch[v] = 2;
        List<int[]> arcs = arcs(loop, stretch);
        if (arcs.size() != 2) return Optional.empty();
        double[] near = Wavefront.distances(disk, edges, stars, first), far = Wavefront.distances(disk, edges, stars, second);
        Optional<ShortestPath> path = ShortestPath.between(disk, edges, e -> {
            int a = edges.from(e), b = edges.to(e);
            boolean rim = edges.right(e) < 0;
            if (rim && stretch[a] > 0 || held(stretch[a]) || held(stretch[b])) return Double.POSITIVE_INFINITY;
            double one = near[a] + near[b], other = far[a] + far[b];
            double aside = one + other > 0 ? Math.abs(one - other) / (one + other) : 0;
            return rim ? 0 : edges.length(e) * (1 + MIDWAY * aside);
        }, arcs.get(0), arcs.get(1));
        return path.map(p -> inMetal(p.vertices(), edges, stars));
    }

    private static boolean held(int stretch) {
        return stretch == 1 || stretch == 2;
    }

    /** The parts of the loop on neither stretch. */
    private static List<int[]> arcs(int[] loop, int[] stretch) {
        int n = loop.length, start = 0;
        while (start < n && !held(stretch[loop[start]])) start++;
        List<int[]> arcs = new ArrayList<>();
        int[] arc = new int[n];
        int length = 0;
        for (int k = 1; k <= n && start < n; k++) {
            int v = loop[(start + k) % n];
            if (!held(stretch[v])) {
                arc[length++] = v;
            } else if (length > 0) {
                arcs.add(Arrays.copyOf(arc, length));
                length = 0;
            }
        }
        return arcs;
    }

    /** The parts of a path that lie in the metal. */
    private static List<int[]> inMetal(int[] path, EdgeTable edges, EdgeStars stars) {
        List<int[]> parts = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= path.length; i++) {
            if (i < path.length && edges.right(stars.between(path[i - 1], path[i])) >= 0) continue;
            if (i - 1 > from) parts.add(Arrays.copyOfRange(path, from, i));
            from = i;
        }
        return parts;
    }
}
