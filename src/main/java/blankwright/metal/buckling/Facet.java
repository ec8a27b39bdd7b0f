package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;

/**
 * One flat triangle in a frame of its own: first axis along its first edge, third along its normal, origin in its first corner.
 *
 * <p>A triangle without area (twice its area below 1e-13 of its longest side squared) is {@link #empty}: it carries nothing.
 */
final class Facet {
    private static final double NO_AREA = 1e-13;

    final double[] axis = new double[9];    // the three axes, one after the other, unit
    final double[] x = new double[3];       // corners, mm
    final double[] y = new double[3];
    double area;                            // mm²
    boolean empty;

    Facet of(TriMesh mesh, int t) {
        int a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
        double ex = mesh.x(b) - mesh.x(a), ey = mesh.y(b) - mesh.y(a), ez = mesh.z(b) - mesh.z(a);
        double fx = mesh.x(c) - mesh.x(a), fy = mesh.y(c) - mesh.y(a), fz = mesh.z(c) - mesh.z(a);
        double nx = ey * fz - ez * fy, ny = ez * fx - ex * fz, nz = ex * fy - ey * fx;
        double ee = ex * ex + ey * ey + ez * ez, ff = fx * fx + fy * fy + fz * fz, ef = ex * fx + ey * fy + ez * fz;
        double twice = Math.sqrt(nx * nx + ny * ny + nz * nz), length = Math.sqrt(ee);
        area = twice / 2;
        empty = !(twice > NO_AREA * Math.max(Math.max(ee, ff), ee + ff - 2 * ef));
        if (empty) return this;
        axis[0] = ex / length;
        axis[1] = ey / length;
        axis[2] = ez / length;
        axis[6] = nx / twice;
        axis[7] = ny / twice;
        axis[8] = nz / twice;
        axis[3] = axis[7] * axis[2] - axis[8] * axis[1];
        axis[4] = axis[8] * axis[0] - axis[6] * axis[2];
        axis[5] = axis[6] * axis[1] - axis[7] * axis[0];
        x[1] = length;
        x[2] = ef / length;
        y[2] = twice / length;
        return this;
    }

    /** Gradients of the three barycentric coordinates: {x0, y0, x1, y1, x2, y2}, 1/mm. */
    void gradients(double[] g) {
        for (int k = 0; k < 3; k++) {
            int i = (k + 1) % 3, j = (k + 2) % 3;
            g[2 * k] = (y[i] - y[j]) / (2 * area);
            g[2 * k + 1] = (x[j] - x[i]) / (2 * area);
        }
    }
}
