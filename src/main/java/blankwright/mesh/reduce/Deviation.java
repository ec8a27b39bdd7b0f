package blankwright.mesh.reduce;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.NearestPoint;
import blankwright.mesh.query.SkinPoint;
import blankwright.num.Progress;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;

/**
 * How far apart two surfaces are: the larger of the distances of each one's samples from the other.
 *
 * <p>Samples of the given surface are its vertices, of the thinned one its vertices, the middles of its edges and of its triangles: it has
 * far fewer, and its triangles are the larger.
 */
final class Deviation {
    private static final int CHUNK = 1024;

    private Deviation() { }

    /** Largest distance of a vertex of {@code given} from {@code thinned}, mm. */
    static double ofGiven(TriMesh given, TriMesh thinned, Progress progress) {
        NearestPoint skin = NearestPoint.on(thinned);
        return largest(given.vertexCount(), progress, v -> off(thinned, skin, given.x(v), given.y(v), given.z(v)));
    }

    /** Largest distance of a vertex, an edge's middle or a triangle's middle of {@code thinned} from {@code given}, mm. */
    static double ofThinned(TriMesh given, TriMesh thinned, Progress progress) {
        NearestPoint skin = NearestPoint.on(given);
        EdgeTable edges = EdgeTable.of(thinned);
        double vertices = largest(thinned.vertexCount(), progress, v -> off(given, skin, thinned.x(v), thinned.y(v), thinned.z(v)));
        double middles = largest(edges.edgeCount(), progress, e -> off(given, skin, thinned, 0.5, edges.from(e), edges.to(e)));
        return Math.max(Math.max(vertices, middles), largest(thinned.triangleCount(), progress,
                t -> off(given, skin, thinned, 1 / 3.0, thinned.corner(t, 0), thinned.corner(t, 1), thinned.corner(t, 2))));
    }

    /** From the weighted sum of vertices of the thinned surface. */
    private static double off(TriMesh given, NearestPoint skin, TriMesh thinned, double weight, int... vertices) {
        double x = 0, y = 0, z = 0;
        for (int v : vertices) {
            x += weight * thinned.x(v);
            y += weight * thinned.y(v);
            z += weight * thinned.z(v);
        }
        return off(given, skin, x, y, z);
    }

    private static double off(TriMesh mesh, NearestPoint skin, double x, double y, double z) {
        SkinPoint at = skin.to(x, y, z);
        double[] p = at.on(mesh);
        return Math.sqrt((p[0] - x) * (p[0] - x) + (p[1] - y) * (p[1] - y) + (p[2] - z) * (p[2] - z));
    }

    private static double largest(int count, Progress progress, java.util.function.IntToDoubleFunction of) {
        return IntStream.range(0, (count + CHUNK - 1) / CHUNK).parallel().mapToDouble(c -> {
            if (progress.cancelled()) throw new CancellationException("measuring what was thinned out");
            double most = 0;
            for (int i = c * CHUNK; i < Math.min(count, (c + 1) * CHUNK); i++) most = Math.max(most, of.applyAsDouble(i));
            return most;
        }).max().orElse(0);
    }
}
