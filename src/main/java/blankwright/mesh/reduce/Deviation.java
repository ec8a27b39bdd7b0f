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
 * <p>Samples of the given surface are its vertices, of the thinned one its vertices, the quarters of its edges, and four places inside each
 * triangle: it has far fewer, and its triangles are the larger.
 */
final class Deviation {
    private static final int CHUNK = 1024;

    private Deviation() { }

    /** Largest distance of a vertex of {@code given} from {@code thinned}, mm. */
    static double ofGiven(TriMesh given, TriMesh thinned, Progress progress) {
        NearestPoint skin = NearestPoint.on(thinned);
        return largest(given.vertexCount(), progress, v -> off(thinned, skin, given.x(v), given.y(v), given.z(v)));
    }

    /** Largest distance of a vertex, a quarter of an edge or a place inside a triangle of {@code thinned} from {@code given}, mm. */
    static double ofThinned(TriMesh given, TriMesh thinned, Progress progress) {
        NearestPoint skin = NearestPoint.on(given);
        EdgeTable edges = EdgeTable.of(thinned);
        double vertices = largest(thinned.vertexCount(), progress, v -> off(given, skin, thinned.x(v), thinned.y(v), thinned.z(v)));
        double quarters = largest(edges.edgeCount(), progress, e -> {
            int a = edges.from(e), b = edges.to(e);
            double most = 0;
            for (int k = 1; k < 4; k++) most = Math.max(most, off(given, skin, thinned, a, b, b, (4 - k) / 4.0, k / 4.0, 0));
            return most;
        });
        return Math.max(Math.max(vertices, quarters), largest(thinned.triangleCount(), progress, t -> {
            int a = thinned.corner(t, 0), b = thinned.corner(t, 1), c = thinned.corner(t, 2);
            double most = off(given, skin, thinned, a, b, c, 1 / 3.0, 1 / 3.0, 1 / 3.0);
            most = Math.max(most, off(given, skin, thinned, a, b, c, 0.5, 0.25, 0.25));
            most = Math.max(most, off(given, skin, thinned, a, b, c, 0.25, 0.5, 0.25));
            return Math.max(most, off(given, skin, thinned, a, b, c, 0.25, 0.25, 0.5));
        }));
    }

    /** From the weighted mean of three vertices of the thinned surface. */
    private static double off(TriMesh given, NearestPoint skin, TriMesh thinned, int a, int b, int c, double wa, double wb, double wc) {
        return off(given, skin, wa * thinned.x(a) + wb * thinned.x(b) + wc * thinned.x(c),
                wa * thinned.y(a) + wb * thinned.y(b) + wc * thinned.y(c), wa * thinned.z(a) + wb * thinned.z(b) + wc * thinned.z(c));
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
