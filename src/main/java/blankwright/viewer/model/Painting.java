package blankwright.viewer.model;

import blankwright.mesh.FlatMap;
import blankwright.picture.WorkField;

/** A piece ready to be coloured: its triangles on form and blank with a number at each vertex, linear between. */
public final class Painting {
    private final double[] xyz, uv, value;
    private final int[] tri, from;

    private Painting(double[] xyz, double[] uv, double[] value, int[] tri, int[] from) {
        this.xyz = xyz;
        this.uv = uv;
        this.value = value;
        this.tri = tri;
        this.from = from;
    }

    static Painting of(WorkField field) {
        int n = field.vertexCount();
        double[] xyz = new double[3 * n], uv = new double[2 * n];
        for (int v = 0; v < n; v++) {
            xyz[3 * v] = field.x(v);
            xyz[3 * v + 1] = field.y(v);
            xyz[3 * v + 2] = field.z(v);
            uv[2 * v] = field.u(v);
            uv[2 * v + 1] = field.v(v);
        }
        int[] from = new int[field.triangleCount()];
        for (int t = 0; t < from.length; t++) from[t] = field.partOf(t);
        return new Painting(xyz, uv, field.amounts(), field.corners(), from);
    }

    /** @param value one for each vertex of the form */
    static Painting of(FlatMap map, double[] value) {
        int[] from = new int[map.form().triangleCount()];
        for (int t = 0; t < from.length; t++) from[t] = t;
        return new Painting(map.form().positions(), map.positions(), value.clone(), map.form().corners(), from);
    }

    public int vertexCount() {
        return value.length;
    }

    public int triangleCount() {
        return from.length;
    }

    /** Coordinate k of vertex v on the form, mm. */
    public double form(int v, int k) {
        return xyz[3 * v + k];
    }

    public double u(int v) {
        return uv[2 * v];
    }

    public double v(int vertex) {
        return uv[2 * vertex + 1];
    }

    public double value(int v) {
        return value[v];
    }

    /** Vertex at corner k of triangle t. */
    public int corner(int t, int k) {
        return tri[3 * t + k];
    }

    /** Triangle of the form that triangle t is all or part of. */
    public int partOf(int t) {
        return from[t];
    }

    /** The array itself, one for each vertex; not to be written. */
    double[] values() {
        return value;
    }

    /** The array itself, three for each triangle; not to be written. */
    int[] corners() {
        return tri;
    }

    /** The array itself, two for each vertex; not to be written. */
    double[] flat() {
        return uv;
    }
}
