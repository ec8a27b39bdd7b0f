package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Shortens a cut that opens handles, path by path: without one of its paths the surface, open along the rest, is a band with two rims, and the
 * shortest way from one rim to the other opens it again.
 *
 * <p>Each exchange makes the cut cheaper and leaves it as good, so the end is a cut that no exchange of a single path makes cheaper. Paths that
 * became dead ends are taken off on the way.
 */
final class ShorterHandleCut {
    /** Triangles looked at in all: a torus of a million gets 20 exchanges, of which it needs a handful. */
    private static final long WORK = 20_000_000;
    private static final int LEAST_TRIALS = 8, MOST_TRIALS = 200;

    private final TriMesh mesh;
    private final EdgeTable edges;
    private final EdgeStars stars;
    private final int[] rimOf;          // vertex -> rim, or -1
    private final double[] walk;        // cost per edge
    private final boolean[] open;       // per rim
    private final HandleCut handles;

    ShorterHandleCut(TriMesh mesh, EdgeTable edges, EdgeStars stars, int[] rimOf, double[] walk, boolean[] open, HandleCut handles) {
        this.mesh = mesh;
        this.edges = edges;
        this.stars = stars;
        this.rimOf = rimOf;
        this.walk = walk;
        this.open = open;
        this.handles = handles;
    }

    /** @param cut per edge; not changed */
    boolean[] of(boolean[] cut) {
        long trials = Math.max(LEAST_TRIALS, Math.min(MOST_TRIALS, WORK / mesh.triangleCount()));
        boolean[] best = cut;
        for (boolean better = true; better; ) {
            better = false;
            List<int[]> chains = handles.chains(best, open);
            chains.sort(Comparator.comparingDouble((int[] chain) -> -cost(chain)).thenComparing((a, b) -> order(a[0], b[0])));
            for (int[] chain : chains) {
                if (trials-- <= 0) return best;
                boolean[] other = without(best, chain);
                if (other == null || !(cost(other) < cost(best) * (1 - 1e-9))) continue;
                best = other;
                better = true;
                break;                                      // the other paths may have changed
            }
        }
        return best;
    }

    private int order(int v, int w) {
        return v == w ? 0 : Wavefront.ahead(mesh, v, w) ? -1 : 1;
    }

    private double cost(int[] chain) {
        double sum = 0;
        for (int i = 1; i < chain.length; i++) sum += walk[stars.between(chain[i - 1], chain[i])];
        return sum;
    }

    private double cost(boolean[] cut) {
        double sum = 0;
        for (int e = 0; e < cut.length; e++) if (cut[e]) sum += walk[e];
        return sum;
    }

    /** The cut with the shortest way in place of a chain; null where what is left is no band. */
    private boolean[] without(boolean[] cut, int[] chain) {
        boolean[] rest = cut.clone();
        for (int i = 1; i < chain.length; i++) rest[stars.between(chain[i - 1], chain[i])] = false;
        handles.prune(rest, open);
        Cut opened = Cut.along(mesh, edges, rest);
        TriMesh band = opened.mesh();
        EdgeTable there = EdgeTable.of(band);
        RimLoops loops = RimLoops.of(band, there);
        int one = -1, other = -1;
        for (int i = 0; i < loops.count(); i++) {
            if (isHole(opened, loops.loop(i))) continue;
            if (one >= 0 && other >= 0) return null;
            if (one < 0) one = i;
            else other = i;
        }
        if (other < 0) return null;
        double[] cost = new double[there.edgeCount()];
        for (int t = 0; t < mesh.triangleCount(); t++)
            for (int k = 0; k < 3; k++) {
                int e = there.edgeOf(t, k);
                cost[e] = there.right(e) < 0 ? Double.POSITIVE_INFINITY : walk[edges.edgeOf(t, k)];
            }
        boolean[] wanted = new boolean[band.vertexCount()];
        for (int v : loops.loop(other)) wanted[v] = true;
        Wavefront front = new Wavefront(band, EdgeStars.of(band, there), cost);
        for (int v : loops.loop(one)) front.start(v);
        int v = front.next();
        while (v >= 0 && !wanted[v]) v = front.next();
        if (v < 0) return null;
        int[] path = Arrays.stream(front.pathTo(v)).map(opened::vertexOf).toArray();
        for (int i = 1; i < path.length; i++) rest[stars.between(path[i - 1], path[i])] = true;
        return rest;
    }

    /** Whether a loop is a rim that stays whole: it has the vertices of one, and no cut reaches those. */
    private boolean isHole(Cut opened, int[] loop) {
        int rim = rimOf[opened.vertexOf(loop[0])];
        return rim >= 0 && !open[rim];
    }
}
