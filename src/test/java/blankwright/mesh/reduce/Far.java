package blankwright.mesh.reduce;

import blankwright.mesh.TriMesh;

/** Distance from a surface by asking every triangle: the foot on its plane where that lies within, else its three sides. */
final class Far {
    private Far() { }

    /** From the nearest triangle, mm. */
    static double from(TriMesh mesh, double... p) {
        double best = Double.POSITIVE_INFINITY;
        for (int t = 0; t < mesh.triangleCount(); t++) best = Math.min(best, fromTriangle(at(mesh, t, 0), at(mesh, t, 1), at(mesh, t, 2), p));
        return best;
    }

    /** Largest distance of samples of one surface, a lattice of n steps along each side of each triangle, from the other. */
    static double most(TriMesh of, TriMesh from, int n) {
        double most = 0;
        for (int t = 0; t < of.triangleCount(); t++)
            for (int i = 0; i <= n; i++)
                for (int j = 0; i + j <= n; j++) {
                    double[] p = new double[3];
                    for (int k = 0; k < 3; k++)
                        p[k] = (i * at(of, t, 0)[k] + j * at(of, t, 1)[k] + (n - i - j) * at(of, t, 2)[k]) / n;
                    most = Math.max(most, from(from, p));
                }
        return most;
    }

    static double[] at(TriMesh mesh, int t, int k) {
        int v = mesh.corner(t, k);
        return new double[] {mesh.x(v), mesh.y(v), mesh.z(v)};
    }

    private static double fromTriangle(double[] a, double[] b, double[] c, double[] p) {
        double[] n = cross(minus(b, a), minus(c, a));
        double nn = dot(n, n);
        if (nn > 0 && dot(n, cross(minus(b, a), minus(p, a))) >= 0 && dot(n, cross(minus(c, b), minus(p, b))) >= 0
                && dot(n, cross(minus(a, c), minus(p, c))) >= 0) return Math.abs(dot(n, minus(p, a))) / Math.sqrt(nn);
        return Math.min(fromSide(a, b, p), Math.min(fromSide(b, c, p), fromSide(c, a, p)));
    }

    static double fromSide(double[] a, double[] b, double[] p) {
        double[] e = minus(b, a);
        double s = dot(e, e) > 0 ? Math.max(0, Math.min(1, dot(e, minus(p, a)) / dot(e, e))) : 0;
        double[] d = {a[0] + s * e[0] - p[0], a[1] + s * e[1] - p[1], a[2] + s * e[2] - p[2]};
        return Math.sqrt(dot(d, d));
    }

    private static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
