package blankwright.shape;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.Optional;

/** A panel's triangles with the parameters of each vertex, and their exact flat shape where these flat facets have one. */
public final class Sample {
    private final TriMesh mesh;
    private final double[] uv;
    private final double[] flat;    // null where unknown

    Sample(TriMesh mesh, double[] uv, double[] flat) {
        this.mesh = mesh;
        this.uv = uv;
        this.flat = flat;
    }

    public TriMesh mesh() {
        return mesh;
    }

    /** First parameter of vertex v; what it means the panel says. */
    public double u(int v) {
        return uv[2 * v];
    }

    /** Second parameter of a vertex. */
    public double v(int vertex) {
        return uv[2 * vertex + 1];
    }

    /**
     * These very triangles laid flat without any strain; there where their facets are those of a prism or pyramid opened on one side.
     * Differs from the {@link Development} of the smooth panel by chord against arc.
     */
    public Optional<FlatMap> unrolled() {
        return flat == null ? Optional.empty() : Optional.of(FlatMap.of(mesh, flat));
    }

    /** The vertices where the smooth panel's development puts them, which differs from the facets' by chord against arc. */
    public FlatMap laid(Development development) {
        double[] there = new double[uv.length];
        for (int v = 0; v < mesh.vertexCount(); v++) {
            double[] p = development.at(u(v), v(v));
            there[2 * v] = p[0];
            there[2 * v + 1] = p[1];
        }
        return FlatMap.of(mesh, there);
    }

    Sample with(double[] exactFlat) {
        return new Sample(mesh, uv, exactFlat);
    }
}
