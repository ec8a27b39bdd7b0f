package blankwright.mesh.reduce;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import java.util.Arrays;

/**
 * The triangles of a surface while edges are collapsed: who lies across each edge, and one way into the fan round each vertex.
 *
 * <p>Half-edge 3t+k runs from corner k to k+1. The way into the fan of a rim vertex is the rim half-edge that leaves it, so that turning
 * left from there meets every triangle; of an inner vertex it is any half-edge that leaves it.
 */
final class Fans {
    final int[] tri;            // 3 per triangle; first corner -1 once it is gone
    final int[] twin;           // opposite half-edge, -1 at a rim
    final int[] way;            // vertex -> half-edge that leaves it; -1 once it is gone
    final boolean[] rim;
    int triangles;              // still there; whoever collapses counts

    /** @throws IllegalArgumentException where the triangles round a vertex are not one fan, or none */
    Fans(TriMesh mesh, EdgeTable edges) {
        tri = mesh.corners();
        triangles = tri.length / 3;
        twin = new int[tri.length];
        int n = mesh.vertexCount();
        way = new int[n];
        rim = new boolean[n];
        int[] corners = new int[n];
        Arrays.fill(way, -1);
        for (int h = 0; h < tri.length; h++) {
            twin[h] = edges.twin(h);
            int v = tri[h];
            corners[v]++;
            if (twin[h] < 0) {
                rim[v] = true;
                way[v] = h;
            } else if (way[v] < 0) {
                way[v] = h;
            }
        }
        for (int v = 0; v < n; v++) {
            int met = 0;
            for (int h = way[v]; h >= 0 && met <= corners[v]; h = left(h, v)) met++;
            if (met != corners[v] || met == 0)
                throw new IllegalArgumentException("vertex " + v + " holds " + (met == 0 ? "no triangle" : "several fans of triangles"));
        }
    }

    static int next(int h) {
        return h % 3 == 2 ? h - 2 : h + 1;
    }

    static int before(int h) {
        return h % 3 == 0 ? h + 2 : h - 1;
    }

    /** The next half-edge that leaves v, turning left from h; -1 where the fan ends. */
    int left(int h, int v) {
        int g = twin[before(h)];
        return g == way[v] ? -1 : g;
    }

    /** The vertex before rim vertex v along its rim. */
    int rimBefore(int v) {
        int h = way[v];
        while (true) {
            int g = left(h, v);
            if (g < 0) return tri[before(h)];
            h = g;
        }
    }

    /** The vertex after rim vertex v along its rim. */
    int rimAfter(int v) {
        return tri[next(way[v])];
    }

    /**
     * Takes half-edge h with the triangles beside it away; its ends become {@code keep}, one of them. The corners opposite keep two
     * edges at least, and three where they lie inside: the caller has seen to that and to the ends having no other common neighbour.
     */
    void collapse(int h, int keep) {
        int a = tri[h], b = tri[next(h)], gone = keep == a ? b : a, g = twin[h];
        int start = rim[a] || rim[b] ? way[g < 0 || rim[b] ? b : a] : twin[before(h)];
        int n = next(h), y = twin[before(h)];
        if (start == n) start = y;
        if (g >= 0 && start == next(g)) start = twin[before(g)];
        for (int i = way[gone]; i >= 0; ) {
            int following = left(i, gone);
            tri[i] = keep;
            i = following;
        }
        close(h);
        if (g >= 0) close(g);
        way[keep] = start;
        way[gone] = -1;
        rim[keep] = rim[a] || rim[b];
    }

    /** Joins what lies across the two other edges of h's triangle. */
    private void close(int h) {
        int n = next(h), p = before(h), x = twin[n], y = twin[p], c = tri[p];
        if (x >= 0) twin[x] = y;
        if (y >= 0) twin[y] = x;
        if (way[c] == p) way[c] = x >= 0 ? x : next(y);
        tri[h / 3 * 3] = -1;
    }
}
