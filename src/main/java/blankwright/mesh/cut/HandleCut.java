package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Edges that open every handle of a surface: a short system of loops through one root, or hanging on the rims that are open already.
 *
 * <ol><li>Shortest paths from the root (open rims, or one vertex) to all vertices: a tree.
 * <li>Across the other edges a tree of faces, taking edges first whose loop through the root is long. Rims that are to stay whole count
 * as faces, and edges at them as very long.
 * <li>What lies in neither tree closes the loops; with its paths to the root it is the cut, after dead ends are taken off.
 * <li>A rim that no cut could go round is opened too, and all is done again.
 * <li>The loops hang on one root or rim by long ways; {@link ShorterHandleCut} takes them out.</ol>
 * Source: Erickson and Whittlesey, "Greedy Optimal Homotopy and Homology Generators", 2005; docs/sources.md [EW05].
 */
final class HandleCut {
    private static final int ROUNDS = 3;        // then every rim is opened: always enough, seldom needed

    private final TriMesh mesh;
    private final EdgeTable edges;
    private final EdgeStars stars;
    private final RimLoops rims;
    private final int[] rimOf;                  // vertex -> rim, or -1
    private final double[] cost;
    private final double detour;

    HandleCut(TriMesh mesh, EdgeTable edges, EdgeStars stars, RimLoops rims, int[] rimOf, double[] cost, double detour) {
        this.mesh = mesh;
        this.edges = edges;
        this.stars = stars;
        this.rims = rims;
        this.rimOf = rimOf;
        this.cost = cost;
        this.detour = detour;
    }

    /** @param open rims the cut may use, changed where it had to use more; @param root where to start if there is none */
    List<int[]> paths(boolean[] open, int root) {
        for (int round = 1; ; round++) {
            if (round == ROUNDS) Arrays.fill(open, true);
            boolean[] cut = cut(open, root);
            boolean wider = false;
            for (int e = 0; e < cut.length; e++) {
                if (!cut[e]) continue;
                for (int v : new int[] {edges.from(e), edges.to(e)}) {
                    if (rimOf[v] < 0 || open[rimOf[v]]) continue;
                    open[rimOf[v]] = true;
                    wider = true;
                }
            }
            if (!wider) return chains(new ShorterHandleCut(mesh, edges, stars, rimOf, walkingCost(open), open, this).of(cut), open);
        }
    }

    private boolean[] cut(boolean[] open, int root) {
        double[] walk = walkingCost(open);
        Wavefront front = new Wavefront(mesh, stars, walk);
        if (rims.count() == 0) front.start(root);
        for (int v = 0; v < rimOf.length; v++) if (onOpen(v, open)) front.start(v);
        front.run();
        boolean[] tree = new boolean[edges.edgeCount()];
        for (int v = 0; v < mesh.vertexCount(); v++) {
            if (front.distance(v) < Double.POSITIVE_INFINITY && front.before(v) >= 0) tree[stars.between(v, front.before(v))] = true;
        }
        boolean[] cut = closing(front, walk, tree, open);
        for (int e = 0; e < tree.length; e++) {
            if (cut[e] && !tree[e]) {
                markWay(front, edges.from(e), cut);
                markWay(front, edges.to(e), cut);
            }
        }
        prune(cut, open);
        return cut;
    }

    private double[] walkingCost(boolean[] open) {
        double[] walk = cost.clone();
        for (int e = 0; e < walk.length; e++) {
            int a = rimOf[edges.from(e)], b = rimOf[edges.to(e)];
            if (a >= 0 && !open[a] || b >= 0 && !open[b]) walk[e] += detour;
            else if (edges.right(e) < 0) walk[e] = Double.POSITIVE_INFINITY;
        }
        return walk;
    }

    /** Edges in neither tree. */
    private boolean[] closing(Wavefront front, double[] walk, boolean[] tree, boolean[] open) {
        int count = 0;
        int[] order = new int[edges.edgeCount()];
        double[] round = new double[order.length];
        for (int e = 0; e < order.length; e++) {
            round[e] = front.distance(edges.from(e)) + front.distance(edges.to(e)) + walk[e];
            boolean openRim = edges.right(e) < 0 && open[rimOf[edges.from(e)]];
            if (!tree[e] && !openRim) order[count++] = e;
        }
        order = sortedLongestFirst(Arrays.copyOf(order, count), round);
        int[] group = new int[mesh.triangleCount() + rims.count()];
        for (int i = 0; i < group.length; i++) group[i] = i;
        boolean[] closing = new boolean[edges.edgeCount()];
        for (int e : order) {
            int one = find(group, edges.left(e));
            int other = find(group, edges.right(e) >= 0 ? edges.right(e) : mesh.triangleCount() + rimOf[edges.from(e)]);
            if (one == other) closing[e] = true;
            else group[Math.max(one, other)] = Math.min(one, other);
        }
        return closing;
    }

    private static int find(int[] group, int i) {
        while (group[i] != i) i = group[i] = group[group[i]];
        return i;
    }

    private void markWay(Wavefront front, int v, boolean[] cut) {
        for (; front.before(v) >= 0; v = front.before(v)) {
            int e = stars.between(v, front.before(v));
            if (cut[e]) return;
            cut[e] = true;
        }
    }

    /** Takes off edges that end in the open metal. */
    void prune(boolean[] cut, boolean[] open) {
        int[] degree = degrees(cut);
        for (int s = 0; s < degree.length; s++) {
            int v = s;
            while (degree[v] == 1 && !onOpen(v, open)) {
                int next = -1;
                for (int i = stars.start(v); i < stars.start(v + 1); i++) {
                    if (cut[stars.edge(i)]) {
                        cut[stars.edge(i)] = false;
                        next = stars.far(i);
                    }
                }
                degree[v] = 0;
                degree[next]--;
                v = next;
            }
        }
    }

    private int[] degrees(boolean[] cut) {
        int[] degree = new int[mesh.vertexCount()];
        for (int e = 0; e < cut.length; e++) {
            if (cut[e]) {
                degree[edges.from(e)]++;
                degree[edges.to(e)]++;
            }
        }
        return degree;
    }

    private boolean onOpen(int v, boolean[] open) {
        return rimOf[v] >= 0 && open[rimOf[v]];
    }

    /** The cut as paths between the places where it branches or meets a rim. */
    List<int[]> chains(boolean[] cut, boolean[] open) {
        int[] degree = degrees(cut);
        boolean[] left = cut.clone();
        List<int[]> chains = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {                  // second: closed loops without any such place
            for (int v = 0; v < degree.length; v++) {
                boolean ends = degree[v] > 0 && (degree[v] != 2 || onOpen(v, open));
                if (!ends && pass == 0 || degree[v] == 0) continue;
                for (int i = stars.start(v); i < stars.start(v + 1); i++)
                    if (left[stars.edge(i)]) chains.add(chain(v, i, left, degree, open));
            }
        }
        return chains;
    }

    private int[] chain(int start, int slot, boolean[] left, int[] degree, boolean[] open) {
        int[] path = new int[16];
        path[0] = start;
        int count = 1, v = start;
        while (slot >= 0) {
            left[stars.edge(slot)] = false;
            v = stars.far(slot);
            if (count == path.length) path = Arrays.copyOf(path, 2 * count);
            path[count++] = v;
            slot = -1;
            if (degree[v] == 2 && !onOpen(v, open) && v != start)
                for (int i = stars.start(v); i < stars.start(v + 1); i++) if (left[stars.edge(i)]) slot = i;
        }
        return Arrays.copyOf(path, count);
    }

    private int[] sortedLongestFirst(int[] order, double[] key) {
        int[] from = order, to = new int[order.length];
        for (int width = 1; width < order.length; width *= 2) {
            for (int low = 0; low < order.length; low += 2 * width) {
                int middle = Math.min(low + width, order.length), high = Math.min(low + 2 * width, order.length);
                int i = low, j = middle;
                for (int k = low; k < high; k++)
                    to[k] = j >= high || i < middle && !longer(from[j], from[i], key) ? from[i++] : from[j++];
            }
            int[] keep = from;
            from = to;
            to = keep;
        }
        return from;
    }

    /** Equal lengths are told apart by place, so that numbering does not matter. */
    private boolean longer(int e, int f, double[] key) {
        if (key[e] != key[f]) return key[e] > key[f];
        int a = lower(e), b = lower(f);
        if (a != b) return Wavefront.ahead(mesh, a, b);
        return Wavefront.ahead(mesh, edges.from(e) + edges.to(e) - a, edges.from(f) + edges.to(f) - b);
    }

    private int lower(int e) {
        return Wavefront.ahead(mesh, edges.from(e), edges.to(e)) ? edges.from(e) : edges.to(e);
    }
}
