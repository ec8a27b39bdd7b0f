package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.Arrays;

/**
 * A line marked on the blank and followed on the form, with its length before and after.
 *
 * <p>Both are polylines of the same points; within one triangle the map is linear, so where each leg stays in one triangle both lengths are
 * those of the triangulated surface, exactly.
 */
public final class TapeLine {
    private final String name;
    private final double[] uv;      // point i: uv[2i..2i+1], mm
    private final double[] xyz;     // point i: xyz[3i..3i+2], mm
    private final double blankLength;
    private final double formLength;

    private TapeLine(String name, double[] uv, double[] xyz) {
        this.name = name;
        this.uv = uv;
        this.xyz = xyz;
        double before = 0, after = 0;
        for (int i = 1; i < uv.length / 2; i++) {
            double du = uv[2 * i] - uv[2 * i - 2], dv = uv[2 * i + 1] - uv[2 * i - 1];
            double dx = xyz[3 * i] - xyz[3 * i - 3], dy = xyz[3 * i + 1] - xyz[3 * i - 2], dz = xyz[3 * i + 2] - xyz[3 * i - 1];
            before += Math.sqrt(du * du + dv * dv);
            after += Math.sqrt(dx * dx + dy * dy + dz * dz);
        }
        blankLength = before;
        formLength = after;
    }

    /**
     * Copies both arrays.
     *
     * @param uv 2 per point on the blank, mm
     * @param xyz 3 per point on the form, mm
     * @throws IllegalArgumentException where the counts differ
     */
    public static TapeLine of(String name, double[] uv, double[] xyz) {
        if (uv.length % 2 != 0 || xyz.length % 3 != 0 || uv.length / 2 != xyz.length / 3)
            throw new IllegalArgumentException(uv.length + " flat and " + xyz.length + " space coordinates: not the same points");
        return new TapeLine(name, uv.clone(), xyz.clone());
    }

    /**
     * A line given by its points on the mesh.
     *
     * @param triangle one per point
     * @param weight 3 per point: of the corners of its triangle, sum 1
     */
    public static TapeLine of(String name, FlatMap map, int[] triangle, double[] weight) {
        if (weight.length != 3 * triangle.length)
            throw new IllegalArgumentException(weight.length + " weights for " + triangle.length + " points: must be 3 each");
        double[] uv = new double[2 * triangle.length], xyz = new double[3 * triangle.length];
        TriMesh form = map.form();
        for (int i = 0; i < triangle.length; i++) {
            for (int k = 0; k < 3; k++) {
                int v = form.corner(triangle[i], k);
                double w = weight[3 * i + k];
                uv[2 * i] += w * map.u(v);
                uv[2 * i + 1] += w * map.v(v);
                xyz[3 * i] += w * form.x(v);
                xyz[3 * i + 1] += w * form.y(v);
                xyz[3 * i + 2] += w * form.z(v);
            }
        }
        return new TapeLine(name, uv, xyz);
    }

    /** A line along edges of the mesh, through the given vertices in order. */
    public static TapeLine of(String name, FlatMap map, int[] vertices) {
        double[] uv = new double[2 * vertices.length], xyz = new double[3 * vertices.length];
        TriMesh form = map.form();
        for (int i = 0; i < vertices.length; i++) {
            uv[2 * i] = map.u(vertices[i]);
            uv[2 * i + 1] = map.v(vertices[i]);
            xyz[3 * i] = form.x(vertices[i]);
            xyz[3 * i + 1] = form.y(vertices[i]);
            xyz[3 * i + 2] = form.z(vertices[i]);
        }
        return new TapeLine(name, uv, xyz);
    }

    /** Its points {@code from} to {@code to} - 1, at least one. */
    public TapeLine part(int from, int to) {
        return new TapeLine(name, Arrays.copyOfRange(uv, 2 * from, 2 * to), Arrays.copyOfRange(xyz, 3 * from, 3 * to));
    }

    public String name() {
        return name;
    }

    public int pointCount() {
        return uv.length / 2;
    }

    /** u of point i on the blank, mm. */
    public double u(int i) {
        return uv[2 * i];
    }

    public double v(int i) {
        return uv[2 * i + 1];
    }

    /** x of point i on the form, mm. */
    public double x(int i) {
        return xyz[3 * i];
    }

    public double y(int i) {
        return xyz[3 * i + 1];
    }

    public double z(int i) {
        return xyz[3 * i + 2];
    }

    /** A copy, 2 per point, mm. */
    public double[] onBlank() {
        return uv.clone();
    }

    /** A copy, 3 per point, mm. */
    public double[] onForm() {
        return xyz.clone();
    }

    /** Length before forming, mm. */
    public double blankLength() {
        return blankLength;
    }

    /** Length after forming, mm. */
    public double formLength() {
        return formLength;
    }

    /** Form less blank, mm: positive = let-out, negative = take-in. */
    public double change() {
        return formLength - blankLength;
    }

    /** Length the line must lose, mm; 0 where it must lose none. */
    public double takeIn() {
        return Math.max(0, blankLength - formLength);
    }

    /** Length the line must gain, mm; 0 where it must gain none. */
    public double letOut() {
        return Math.max(0, formLength - blankLength);
    }
}
