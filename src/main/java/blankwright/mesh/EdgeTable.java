package blankwright.mesh;

import java.util.Arrays;

/**
 * Which triangles meet along which edge of a surface: at most two, running opposite ways.
 *
 * <p>Half-edge 3t+k runs from corner k to corner k+1 of triangle t. Edges are numbered by their first half-edge, in triangle order,
 * so the numbering depends on nothing but the input.
 */
public final class EdgeTable {
    private final int[] twin;       // half-edge -> opposite half-edge, or -1 at a rim
    private final int[] edge;       // half-edge -> edge
    private final int[] first;      // edge -> its lower half-edge
    private final TriMesh mesh;

    private EdgeTable(TriMesh mesh, int[] twin, int[] edge, int[] first) {
        this.mesh = mesh;
        this.twin = twin;
        this.edge = edge;
        this.first = first;
    }

    /** @throws IllegalArgumentException naming an edge that carries three triangles, or two running the same way, or a triangle with one vertex twice */
    public static EdgeTable of(TriMesh mesh) {
        int halves = 3 * mesh.triangleCount();
        int[] twin = new int[halves];
        Arrays.fill(twin, -1);
        int[] halvesAt = new int[mesh.vertexCount()];
        for (int h = 0; h < halves; h++) halvesAt[tail(mesh, h)]++;
        int[] newest = new int[mesh.vertexCount()], older = new int[halves];   // first half-edges of the edges kept at a vertex
        Arrays.fill(newest, -1);
        for (int h = 0; h < halves; h++) {
            int a = tail(mesh, h), b = head(mesh, h);
            if (a == b) throw new IllegalArgumentException("triangle " + h / 3 + " names vertex " + a + " twice");
            int keeper = halvesAt[a] < halvesAt[b] || halvesAt[a] == halvesAt[b] && a < b ? a : b;   // the end with fewer: no hub is searched
            int g = newest[keeper];
            while (g >= 0 && !joins(mesh, g, a, b)) g = older[g];
            if (g < 0) {
                older[h] = newest[keeper];
                newest[keeper] = h;
                continue;
            }
            if (tail(mesh, g) == a || twin[g] >= 0)
                throw new IllegalArgumentException("edge " + a + "-" + b + " of triangle " + h / 3
                        + (twin[g] >= 0 ? " carries three triangles" : " runs the same way in triangle " + g / 3));
            twin[g] = h;
            twin[h] = g;
        }
        int[] edge = new int[halves];
        int[] first = new int[halves];
        int count = 0;
        for (int h = 0; h < halves; h++) {
            if (twin[h] >= 0 && twin[h] < h) {
                edge[h] = edge[twin[h]];
            } else {
                edge[h] = count;
                first[count++] = h;
            }
        }
        return new EdgeTable(mesh, twin, edge, Arrays.copyOf(first, count));
    }

    public int edgeCount() {
        return first.length;
    }

    /** Edge that runs from corner k to corner k+1 of triangle t. */
    public int edgeOf(int t, int k) {
        return edge[3 * t + k];
    }

    /** First vertex of edge e, in the direction of {@link #left}. */
    public int from(int e) {
        return tail(mesh, first[e]);
    }

    public int to(int e) {
        return head(mesh, first[e]);
    }

    /** Triangle in which edge e runs from {@link #from} to {@link #to}. */
    public int left(int e) {
        return first[e] / 3;
    }

    /** The other triangle, or -1 at a rim. */
    public int right(int e) {
        int h = twin[first[e]];
        return h < 0 ? -1 : h / 3;
    }

    /** Triangle across the edge from corner k to corner k+1 of triangle t, or -1 at a rim. */
    public int neighbour(int t, int k) {
        int h = twin[3 * t + k];
        return h < 0 ? -1 : h / 3;
    }

    /** Opposite half-edge of 3t+k, or -1 at a rim. */
    public int twin(int half) {
        return twin[half];
    }

    public double length(int e) {
        return mesh.distance(from(e), to(e));
    }

    private static boolean joins(TriMesh mesh, int h, int a, int b) {
        int c = tail(mesh, h), d = head(mesh, h);
        return c == a && d == b || c == b && d == a;
    }

    private static int tail(TriMesh mesh, int h) {
        return mesh.corner(h / 3, h % 3);
    }

    private static int head(TriMesh mesh, int h) {
        return mesh.corner(h / 3, (h + 1) % 3);
    }
}
