package blankwright.mesh;

/** The triangles of a form laid in the plane, mm: the flat pattern seen with the outer skin up. Judges nothing. */
public final class FlatMap {
    private final TriMesh form;
    private final double[] uv;      // vertex v: uv[2v..2v+1], mm

    private FlatMap(TriMesh form, double[] uv) {
        this.form = form;
        this.uv = uv;
    }

    /** Copies {@code uv}, 2 per vertex of the form, mm; throws IllegalArgumentException where the count is wrong or one is not finite. */
    public static FlatMap of(TriMesh form, double[] uv) {
        if (uv.length != 2 * form.vertexCount())
            throw new IllegalArgumentException(uv.length / 2 + " flat positions for " + form.vertexCount() + " vertices");
        for (int i = 0; i < uv.length; i++) {
            if (!Double.isFinite(uv[i])) throw new IllegalArgumentException("flat position of vertex " + i / 2 + " is " + uv[i]);
        }
        return new FlatMap(form, uv.clone());
    }

    public TriMesh form() {
        return form;
    }

    public double u(int v) {
        return uv[2 * v];
    }

    public double v(int vertex) {
        return uv[2 * vertex + 1];
    }

    /** Places in the plane of the vertices in turn, 2 numbers each, mm. */
    public double[] places(int[] vertices) {
        double[] places = new double[2 * vertices.length];
        for (int i = 0; i < vertices.length; i++) {
            places[2 * i] = u(vertices[i]);
            places[2 * i + 1] = v(vertices[i]);
        }
        return places;
    }

    /** A copy, 2 per vertex, mm. */
    public double[] positions() {
        return uv.clone();
    }

    /** Same triangles on the sheet turned by {@code angle} rad about the origin, then moved by (du, dv) mm. */
    public FlatMap moved(double angle, double du, double dv) {
        double c = Math.cos(angle), s = Math.sin(angle);
        double[] there = new double[uv.length];
        for (int i = 0; i < uv.length; i += 2) {
            there[i] = c * uv[i] - s * uv[i + 1] + du;
            there[i + 1] = s * uv[i] + c * uv[i + 1] + dv;
        }
        return new FlatMap(form, there);
    }

    /** Signed area of triangle t in the plane, mm²; negative where it is turned over. */
    public double area(int t) {
        int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
        return ((u(b) - u(a)) * (v(c) - v(a)) - (u(c) - u(a)) * (v(b) - v(a))) / 2;
    }

    /** Signed area of all triangles, mm². */
    public double area() {
        double sum = 0;
        for (int t = 0; t < form.triangleCount(); t++) sum += area(t);
        return sum;
    }

    /** Length of the box of all flat positions along u and v, mm. */
    public double[] size() {
        double[] box = box();
        return new double[] {box[2] - box[0], box[3] - box[1]};
    }

    /** {lowest u, lowest v, highest u, highest v}, mm; zeros without vertices. */
    public double[] box() {
        if (uv.length == 0) return new double[4];
        double[] box = {uv[0], uv[1], uv[0], uv[1]};
        for (int i = 0; i < uv.length; i += 2) {
            box[0] = Math.min(box[0], uv[i]);
            box[1] = Math.min(box[1], uv[i + 1]);
            box[2] = Math.max(box[2], uv[i]);
            box[3] = Math.max(box[3], uv[i + 1]);
        }
        return box;
    }
}
