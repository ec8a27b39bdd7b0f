package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeCost;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;
import java.util.Arrays;
import java.util.Optional;

/**
 * A seam lengthwise through a zone that lies far from all free edges, from rim to rim, so that its sides become free edges where they are missed most.
 *
 * <ol><li>The core: corners of the zone that lie nearly as far in as any of it, {@value #CORE} of that. Its two ends are those farthest apart.
 * <li>The way from end to end costs what a seam costs, {@link EdgeCost#seam}, and more the nearer it comes to a rim: along the middle of a strip.
 * <li>From each end it goes on to the rim, straight on rather than sideways: to the place that gains most distance from the other end for its cost.</ol>
 */
public final class ZoneSeam {
    private static final double CORE = 0.9;
    private static final double ASIDE = 3;          // beside a rim a way costs so much more, of its length
    private static final double SHORT = 1.01;       // of places equally straight ahead the nearest is taken

    private final TriMesh form;
    private final EdgeTable edges;
    private final EdgeStars stars;
    private final boolean[] onRim;
    private final double[] depth;
    private final double[] cost;

    private ZoneSeam(TriMesh form) {
        this.form = form;
        edges = EdgeTable.of(form);
        stars = EdgeStars.of(form, edges);
        onRim = new boolean[form.vertexCount()];
        for (int e = 0; e < edges.edgeCount(); e++) if (edges.right(e) < 0) onRim[edges.from(e)] = onRim[edges.to(e)] = true;
        depth = Wavefront.distances(form, edges, stars, rim());
        double deepest = Arrays.stream(depth).filter(Double::isFinite).max().orElse(0);
        EdgeCost seam = EdgeCost.seam(form, edges);
        cost = Wavefront.costs(edges.edgeCount(), e -> edges.right(e) < 0 || deepest == 0 ? Double.POSITIVE_INFINITY
                : seam.of(e) * (1 + ASIDE * (1 - (depth[edges.from(e)] + depth[edges.to(e)]) / (2 * deepest))));
    }

    /**
     * @param form connected, with at least one rim
     * @param zone triangles of it, at least one
     * @return vertices from rim to rim, on a rim at both ends only; empty where the zone has no corner inside or no way leads out of it
     */
    public static Optional<int[]> through(TriMesh form, int[] zone) {
        return new ZoneSeam(form).through(zone);
    }

    private int[] rim() {
        int count = 0;
        int[] rim = new int[onRim.length];
        for (int v = 0; v < onRim.length; v++) if (onRim[v]) rim[count++] = v;
        return Arrays.copyOf(rim, count);
    }

    private Optional<int[]> through(int[] zone) {
        double most = 0;
        for (int t : zone) for (int k = 0; k < 3; k++) most = Math.max(most, depth[form.corner(t, k)]);
        if (most == 0 || Double.isInfinite(most)) return Optional.empty();
        double least = CORE * most;
        int[] core = Arrays.stream(zone).flatMap(t -> Arrays.stream(new int[] {form.corner(t, 0), form.corner(t, 1), form.corner(t, 2)}))
                .filter(v -> depth[v] >= least).distinct().sorted().toArray();
        int a = farthest(core, core[0]), b = farthest(core, a);
        Wavefront fromA = new Wavefront(form, stars, cost);
        fromA.start(a);
        fromA.run();
        Wavefront fromB = new Wavefront(form, stars, cost);
        fromB.start(b);
        fromB.run();
        int s = ahead(fromA, b);
        int t = s < 0 ? -1 : ahead(fromB, s);
        if (t < 0 || fromA.distance(b) == Double.POSITIVE_INFINITY) return Optional.empty();
        int[] out = toRim(fromA.pathTo(s)), across = fromA.pathTo(b), on = toRim(fromB.pathTo(t));
        int[] all = new int[out.length + across.length + on.length - 2];
        for (int i = 0; i < out.length; i++) all[i] = out[out.length - 1 - i];
        System.arraycopy(across, 1, all, out.length, across.length - 1);
        System.arraycopy(on, 1, all, out.length + across.length - 1, on.length - 1);
        int[] path = withoutLoops(all);
        return path.length < 2 ? Optional.empty() : Optional.of(path);
    }

    private int farthest(int[] among, int from) {
        double[] distance = Wavefront.distances(form, edges, stars, from);
        int best = from;
        for (int v : among)
            if (distance[v] < Double.POSITIVE_INFINITY && (distance[v] > distance[best] || distance[v] == distance[best] && v != best && Wavefront.ahead(form, v, best)))
                best = v;
        return best;
    }

    /** The rim vertex reached straight on from a place that lies the other way; -1 where none is reached. */
    private int ahead(Wavefront reached, int away) {
        double[] distance = Wavefront.distances(form, edges, stars, away);
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int v = 0; v < onRim.length; v++) {
            if (!onRim[v] || v == away || reached.distance(v) == Double.POSITIVE_INFINITY) continue;
            double gain = distance[v] - SHORT * reached.distance(v);
            if (gain > most || gain == most && Wavefront.ahead(form, v, best)) {
                most = gain;
                best = v;
            }
        }
        return best;
    }

    /** Up to the first vertex on a rim. */
    private int[] toRim(int[] path) {
        int last = 0;
        while (last < path.length - 1 && !onRim[path[last]]) last++;
        return Arrays.copyOf(path, last + 1);
    }

    /** Each vertex once: what lies between two visits is left out. */
    private static int[] withoutLoops(int[] path) {
        int[] kept = new int[path.length];
        int count = 0;
        for (int v : path) {
            int at = 0;
            while (at < count && kept[at] != v) at++;
            count = at;
            kept[count++] = v;
        }
        return Arrays.copyOf(kept, count);
    }
}
