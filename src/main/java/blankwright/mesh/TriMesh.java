package blankwright.mesh;

/**
 * Triangles in space, immutable. What belongs to a mesh (a field, a seam) lies beside it in arrays of its own.
 *
 * <p>Any triangles are allowed here, also degenerate or non-manifold ones; {@link EdgeTable} is the door that asks for a surface.
 */
public final class TriMesh {
    private final double[] xyz;   // vertex v: xyz[3v..3v+2], mm
    private final int[] tri;      // triangle t: tri[3t..3t+2], counter-clockwise seen from the outer skin

    private TriMesh(double[] xyz, int[] tri) {
        this.xyz = xyz;
        this.tri = tri;
    }

    /**
     * Copies both arrays.
     *
     * @param xyz 3 per vertex, mm, finite
     * @param tri 3 per triangle, indices of vertices
     * @throws IllegalArgumentException naming the first corner out of range or the first vertex that is not finite
     */
    public static TriMesh of(double[] xyz, int[] tri) {
        if (xyz.length % 3 != 0) throw new IllegalArgumentException(xyz.length + " coordinates: must be 3 per vertex");
        if (tri.length % 3 != 0) throw new IllegalArgumentException(tri.length + " corners: must be 3 per triangle");
        int n = xyz.length / 3;
        for (int i = 0; i < tri.length; i++) {
            if (tri[i] < 0 || tri[i] >= n)
                throw new IllegalArgumentException("triangle " + i / 3 + " names vertex " + tri[i] + ": there are " + n);
        }
        for (int i = 0; i < xyz.length; i++) {
            if (!Double.isFinite(xyz[i])) throw new IllegalArgumentException("vertex " + i / 3 + " has coordinate " + xyz[i]);
        }
        return new TriMesh(xyz.clone(), tri.clone());
    }

    /** Same triangles, elsewhere; {@code moved} is 3 per vertex, mm. */
    public TriMesh withPositions(double[] moved) {
        if (moved.length != xyz.length)
            throw new IllegalArgumentException(moved.length / 3 + " positions for " + vertexCount() + " vertices");
        return of(moved, tri);
    }

    public int vertexCount() {
        return xyz.length / 3;
    }

    public int triangleCount() {
        return tri.length / 3;
    }

    /** Vertex at corner k = 0, 1, 2 of triangle t. */
    public int corner(int t, int k) {
        return tri[3 * t + k];
    }

    public double x(int v) {
        return xyz[3 * v];
    }

    public double y(int v) {
        return xyz[3 * v + 1];
    }

    public double z(int v) {
        return xyz[3 * v + 2];
    }

    /** A copy, 3 per vertex, mm. */
    public double[] positions() {
        return xyz.clone();
    }

    /** A copy, 3 per triangle. */
    public int[] corners() {
        return tri.clone();
    }

    /** Distance of two vertices, mm. */
    public double distance(int v, int w) {
        double dx = x(v) - x(w), dy = y(v) - y(w), dz = z(v) - z(w);
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    /** Area of triangle t, mm², by a cross product: relative error about 1e-16 times the aspect ratio. */
    public double area(int t) {
        double[] n = crossed(t);
        return Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]) / 2;
    }

    /** Area of all triangles, mm², summed in order. */
    public double area() {
        double sum = 0;
        for (int t = 0; t < triangleCount(); t++) sum += area(t);
        return sum;
    }

    /** Unit normal of triangle t pointing out of the outer skin, 3 numbers; zeros where the triangle has no area. */
    public double[] normal(int t) {
        double[] n = crossed(t);
        double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
        if (length > 0) for (int k = 0; k < 3; k++) n[k] /= length;
        return n;
    }

    /** Interior angle at corner k of triangle t, rad, 0..π; 0 where an adjoining edge has no length. */
    public double angle(int t, int k) {
        int a = corner(t, k), b = corner(t, (k + 1) % 3), c = corner(t, (k + 2) % 3);
        double ux = x(b) - x(a), uy = y(b) - y(a), uz = z(b) - z(a);
        double vx = x(c) - x(a), vy = y(c) - y(a), vz = z(c) - z(a);
        double cx = uy * vz - uz * vy, cy = uz * vx - ux * vz, cz = ux * vy - uy * vx;
        return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ux * vx + uy * vy + uz * vz);
    }

    /** Sides of the axis-parallel box round all vertices, mm: {dx, dy, dz}; zeros without vertices. */
    public double[] size() {
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (int i = 0; i < xyz.length; i++) {
            low[i % 3] = Math.min(low[i % 3], xyz[i]);
            high[i % 3] = Math.max(high[i % 3], xyz[i]);
        }
        if (xyz.length == 0) return new double[3];
        return new double[] {high[0] - low[0], high[1] - low[1], high[2] - low[2]};
    }

    private double[] crossed(int t) {
        int a = corner(t, 0), b = corner(t, 1), c = corner(t, 2);
        double ux = x(b) - x(a), uy = y(b) - y(a), uz = z(b) - z(a);
        double vx = x(c) - x(a), vy = y(c) - y(a), vz = z(c) - z(a);
        return new double[] {uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx};
    }
}
