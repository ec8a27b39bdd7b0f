package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;
import java.util.Arrays;
import java.util.List;

/**
 * A mesh opened along edges: the same triangles in the same order, vertices doubled where the metal no longer hangs together.
 *
 * <p>Any set of edges will do: paths, loops, trees; rim edges among them change nothing, and neither does a single edge inside, whose ends
 * stay whole. A vertex keeps its number in the fan of triangles that comes first; the others get new numbers at the end. Vertices where
 * two fans only touch come apart as well.
 */
public final class Cut {
    private final TriMesh mesh;
    private final int[] vertexOf;
    private final int originalVertices;

    private Cut(TriMesh mesh, int[] vertexOf, int originalVertices) {
        this.mesh = mesh;
        this.vertexOf = vertexOf;
        this.originalVertices = originalVertices;
    }

    /** @param paths vertices in order; throws IllegalArgumentException naming the first two that no edge joins */
    public static Cut along(TriMesh mesh, List<int[]> paths) {
        EdgeTable edges = EdgeTable.of(mesh);
        return along(mesh, edges, EdgeStars.of(mesh, edges), paths);
    }

    static Cut along(TriMesh mesh, EdgeTable edges, EdgeStars stars, List<int[]> paths) {
        boolean[] open = new boolean[edges.edgeCount()];
        for (int[] path : paths) {
            for (int i = 1; i < path.length; i++) {
                int e = stars.between(path[i - 1], path[i]);
                if (e < 0) throw new IllegalArgumentException("no edge joins vertices " + path[i - 1] + " and " + path[i] + " of the path");
                open[e] = true;
            }
        }
        return along(mesh, edges, open);
    }

    /** @param open per edge: whether to cut it */
    public static Cut along(TriMesh mesh, EdgeTable edges, boolean[] open) {
        int halves = 3 * mesh.triangleCount(), n = mesh.vertexCount();
        int[] tri = new int[halves];
        Arrays.fill(tri, -1);
        boolean[] taken = new boolean[n];
        int[] vertexOf = new int[n];
        for (int v = 0; v < n; v++) vertexOf[v] = v;
        int count = n;
        for (int h = 0; h < halves; h++) {
            if (tri[h] >= 0) continue;
            int v = mesh.corner(h / 3, h % 3), number = v;
            if (taken[v]) {
                number = count++;
                if (number == vertexOf.length) vertexOf = Arrays.copyOf(vertexOf, number + number / 8 + 16);
                vertexOf[number] = v;
            }
            taken[v] = true;
            for (int g = h; g >= 0 && tri[g] < 0; g = turnedLeft(edges, open, g)) tri[g] = number;
            for (int g = turnedRight(edges, open, h); g >= 0 && tri[g] < 0; g = turnedRight(edges, open, g)) tri[g] = number;
        }
        vertexOf = Arrays.copyOf(vertexOf, count);
        double[] xyz = new double[3 * count];
        for (int v = 0; v < count; v++) {
            xyz[3 * v] = mesh.x(vertexOf[v]);
            xyz[3 * v + 1] = mesh.y(vertexOf[v]);
            xyz[3 * v + 2] = mesh.z(vertexOf[v]);
        }
        return new Cut(TriMesh.of(xyz, tri), vertexOf, n);
    }

    /** Next half-edge from the same vertex across the edge that ends there, or -1 at a rim or cut. */
    private static int turnedLeft(EdgeTable edges, boolean[] open, int h) {
        int in = h % 3 == 0 ? h + 2 : h - 1;
        return open[edges.edgeOf(in / 3, in % 3)] ? -1 : edges.twin(in);
    }

    /** Next half-edge from the same vertex across the edge that starts there, or -1 at a rim or cut. */
    private static int turnedRight(EdgeTable edges, boolean[] open, int h) {
        if (open[edges.edgeOf(h / 3, h % 3)] || edges.twin(h) < 0) return -1;
        int back = edges.twin(h);
        return back % 3 == 2 ? back - 2 : back + 1;
    }

    public TriMesh mesh() {
        return mesh;
    }

    /** Original vertex of each vertex of the opened mesh; a copy. */
    public int[] vertexOf() {
        return vertexOf.clone();
    }

    public int vertexOf(int v) {
        return vertexOf[v];
    }

    /** The mesh before it was opened, every number as it was. */
    public TriMesh sewn() {
        int[] tri = mesh.corners();
        for (int i = 0; i < tri.length; i++) tri[i] = vertexOf[tri[i]];
        return TriMesh.of(Arrays.copyOf(mesh.positions(), 3 * originalVertices), tri);
    }
}
