package blankwright.mesh.query;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import java.util.Optional;

/** The cheapest way along edges from one set of vertices to another. Of equally cheap ways the one {@link Wavefront} prefers. */
public final class ShortestPath {
    private final int[] vertices;
    private final double length;
    private final double cost;

    private ShortestPath(int[] vertices, double length, double cost) {
        this.vertices = vertices;
        this.length = length;
        this.cost = cost;
    }

    /** By plain length. */
    public static Optional<ShortestPath> between(TriMesh mesh, EdgeTable edges, int[] from, int[] to) {
        return between(mesh, edges, EdgeCost.length(edges), from, to);
    }

    /** Empty where no way leads from {@code from} to {@code to}; a single vertex where the sets share one. */
    public static Optional<ShortestPath> between(TriMesh mesh, EdgeTable edges, EdgeCost cost, int[] from, int[] to) {
        boolean[] wanted = new boolean[mesh.vertexCount()];
        for (int v : to) wanted[v] = true;
        Wavefront front = new Wavefront(mesh, EdgeStars.of(mesh, edges), Wavefront.costs(edges.edgeCount(), cost));
        for (int v : from) front.start(v);
        for (int v = front.next(); v >= 0; v = front.next()) {
            if (wanted[v]) return Optional.of(of(mesh, front.pathTo(v), front.distance(v)));
        }
        return Optional.empty();
    }

    private static ShortestPath of(TriMesh mesh, int[] path, double cost) {
        double length = 0;
        for (int i = 1; i < path.length; i++) length += mesh.distance(path[i - 1], path[i]);
        return new ShortestPath(path, length, cost);
    }

    /** A copy, in order from the first set to the second. */
    public int[] vertices() {
        return vertices.clone();
    }

    /** mm. */
    public double length() {
        return length;
    }

    /** Sum of the edge costs. */
    public double cost() {
        return cost;
    }
}
