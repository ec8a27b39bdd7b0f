package blankwright.mesh.query;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;

/** The edges that meet in each vertex. The i-th edge of all is one end of one edge: i runs from {@code start(v)} to {@code start(v + 1)}. */
public final class EdgeStars {
    private final int[] start;      // vertex v: slots start[v] .. start[v+1]-1
    private final int[] edge;
    private final int[] far;        // vertex at the other end

    private EdgeStars(int[] start, int[] edge, int[] far) {
        this.start = start;
        this.edge = edge;
        this.far = far;
    }

    public static EdgeStars of(TriMesh mesh, EdgeTable edges) {
        int n = mesh.vertexCount(), m = edges.edgeCount();
        int[] start = new int[n + 1];
        for (int e = 0; e < m; e++) {
            start[edges.from(e) + 1]++;
            start[edges.to(e) + 1]++;
        }
        for (int v = 0; v < n; v++) start[v + 1] += start[v];
        int[] next = start.clone();
        int[] edge = new int[2 * m], far = new int[2 * m];
        for (int e = 0; e < m; e++) {
            int a = edges.from(e), b = edges.to(e);
            edge[next[a]] = e;
            far[next[a]++] = b;
            edge[next[b]] = e;
            far[next[b]++] = a;
        }
        return new EdgeStars(start, edge, far);
    }

    public int vertexCount() {
        return start.length - 1;
    }

    /** First slot of vertex v; {@code start(v + 1)} is one past its last. */
    public int start(int v) {
        return start[v];
    }

    /** Edge in a slot. */
    public int edge(int slot) {
        return edge[slot];
    }

    /** Vertex at the other end of the edge in a slot. */
    public int far(int slot) {
        return far[slot];
    }

    /** Edge from v to w, or -1. */
    public int between(int v, int w) {
        for (int i = start[v]; i < start[v + 1]; i++) if (far[i] == w) return edge[i];
        return -1;
    }
}
