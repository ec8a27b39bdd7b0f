package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;

/** The six motions of a shell as a whole, orthonormal as vectors of six unknowns a vertex. */
final class RigidMotions {
    private final double[][] motion = new double[6][];

    RigidMotions(TriMesh mesh) {
        int n = mesh.vertexCount();
        double[] centre = new double[3];
        for (int v = 0; v < n; v++) {
            centre[0] += mesh.x(v) / n;
            centre[1] += mesh.y(v) / n;
            centre[2] += mesh.z(v) / n;
        }
        for (int m = 0; m < 6; m++) {
            double[] x = new double[6 * n];
            for (int v = 0; v < n; v++) {
                if (m < 3) {
                    x[6 * v + m] = 1;
                    continue;
                }
                double[] p = {mesh.x(v) - centre[0], mesh.y(v) - centre[1], mesh.z(v) - centre[2]};
                int i = m - 3, j = (i + 1) % 3, k = (i + 2) % 3;    // a turn about axis i moves k by +p_j and j by -p_k
                x[6 * v + k] = p[j];
                x[6 * v + j] = -p[k];
                x[6 * v + m] = 1;
            }
            motion[m] = x;
            for (int pass = 0; pass < 2; pass++) for (int e = 0; e < m; e++) remove(x, motion[e]);
            double length = Math.sqrt(dot(x, x));
            for (int i = 0; i < x.length; i++) x[i] /= length;
        }
    }

    /** Leaves of x what moves no part of it as a whole. */
    void remove(double[] x) {
        for (double[] m : motion) remove(x, m);
    }

    private static void remove(double[] x, double[] m) {
        double c = dot(x, m);
        for (int i = 0; i < x.length; i++) x[i] -= c * m[i];
    }

    private static double dot(double[] x, double[] y) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) sum += x[i] * y[i];
        return sum;
    }
}
