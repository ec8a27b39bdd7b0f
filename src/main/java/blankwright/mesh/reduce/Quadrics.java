package blankwright.mesh.reduce;

import blankwright.mesh.TriMesh;

/**
 * Per vertex the sum of squared distances from the planes of the triangles round it, each weighted with its area: E(x) = xᵀAx + 2bᵀx + c,
 * mm⁴, as ten numbers {axx, axy, axz, ayy, ayz, azz, bx, by, bz, c}. At a rim the plane through the rim edge square to its triangle counts
 * too, with the square of the edge's length.
 *
 * <p>Coordinates are taken from the first vertex, so that a panel far from the origin loses nothing.
 * <p>Source: Garland and Heckbert 1997 [GH97]; the weights are those of their boundary constraints.
 */
final class Quadrics {
    static final int SIZE = 10;
    /** Pull to the middle of the edge, of the mean stiffness: decides where flat ground leaves the place open. */
    private static final double PULL = 1e-3;

    private final double[] q;       // SIZE per vertex
    private final double[] origin;

    Quadrics(TriMesh mesh, Fans fans) {
        q = new double[SIZE * mesh.vertexCount()];
        origin = new double[] {mesh.x(0), mesh.y(0), mesh.z(0)};
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            int a = mesh.corner(t, 0);
            double area = mesh.area(t);
            for (int k = 0; k < 3; k++) plane(mesh.corner(t, k), n[0], n[1], n[2], mesh, a, area);
            for (int k = 0; k < 3; k++) {
                if (fans.twin[3 * t + k] >= 0) continue;
                int v = mesh.corner(t, k), w = mesh.corner(t, (k + 1) % 3);
                double x = mesh.x(w) - mesh.x(v), y = mesh.y(w) - mesh.y(v), z = mesh.z(w) - mesh.z(v), l = mesh.distance(v, w);
                if (!(l > 0)) continue;
                double mx = (y * n[2] - z * n[1]) / l, my = (z * n[0] - x * n[2]) / l, mz = (x * n[1] - y * n[0]) / l;
                plane(v, mx, my, mz, mesh, v, l * l);
                plane(w, mx, my, mz, mesh, v, l * l);
            }
        }
    }

    /** Adds the plane with unit normal (x, y, z) through vertex p to that of v. */
    private void plane(int v, double x, double y, double z, TriMesh mesh, int p, double weight) {
        double d = -(x * (mesh.x(p) - origin[0]) + y * (mesh.y(p) - origin[1]) + z * (mesh.z(p) - origin[2]));
        int i = SIZE * v;
        q[i] += weight * x * x;
        q[i + 1] += weight * x * y;
        q[i + 2] += weight * x * z;
        q[i + 3] += weight * y * y;
        q[i + 4] += weight * y * z;
        q[i + 5] += weight * z * z;
        q[i + 6] += weight * x * d;
        q[i + 7] += weight * y * d;
        q[i + 8] += weight * z * d;
        q[i + 9] += weight * d * d;
    }

    /** Those of v and w together. */
    void sum(int v, int w, double[] into) {
        for (int i = 0; i < SIZE; i++) into[i] = q[SIZE * v + i] + q[SIZE * w + i];
    }

    /** Vertex {@code keep} takes those of {@code gone} over. */
    void merge(int keep, int gone) {
        for (int i = 0; i < SIZE; i++) q[SIZE * keep + i] += q[SIZE * gone + i];
    }

    /** Of the planes together, mm². */
    static double weight(double[] s) {
        return s[0] + s[3] + s[5];
    }

    /** E at a place, mm⁴; rounding never makes it negative. */
    double at(double[] s, double px, double py, double pz) {
        double x = px - origin[0], y = py - origin[1], z = pz - origin[2];
        return Math.max(0, x * (s[0] * x + 2 * (s[1] * y + s[2] * z + s[6])) + y * (s[3] * y + 2 * (s[4] * z + s[7]))
                + z * (s[5] * z + 2 * s[8]) + s[9]);
    }

    /** The place where E is least, drawn a little to {@code place}, which it replaces. */
    void least(double[] s, double[] place) {
        double pull = PULL / 3 * weight(s);
        double x = place[0] - origin[0], y = place[1] - origin[1], z = place[2] - origin[2];
        double a = s[0] + pull, b = s[1], c = s[2], e = s[3] + pull, f = s[4], i = s[5] + pull;
        double rx = -(s[0] * x + s[1] * y + s[2] * z + s[6]), ry = -(s[1] * x + s[3] * y + s[4] * z + s[7]);
        double rz = -(s[2] * x + s[4] * y + s[5] * z + s[8]);
        double c00 = e * i - f * f, c01 = c * f - b * i, c02 = b * f - c * e;
        double det = a * c00 + b * c01 + c * c02;
        if (!(det > 0)) return;
        place[0] += (c00 * rx + c01 * ry + c02 * rz) / det;
        place[1] += (c01 * rx + (a * i - c * c) * ry + (b * c - a * f) * rz) / det;
        place[2] += (c02 * rx + (b * c - a * f) * ry + (a * e - b * b) * rz) / det;
    }
}
