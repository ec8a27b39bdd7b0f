package blankwright.num;

/**
 * Eigenvalues and eigenvectors of a symmetric 3x3 matrix by Jacobi rotations.
 *
 * <p>Error: eigenvalues absolute, a few 1e-16 times the largest entry; vectors orthonormal to a few 1e-16.
 * <p>Source: Golub and Van Loan, Matrix Computations, section 8.5; docs/sources.md [GVL13].
 */
public final class SymmetricEigen3 {
    private final double[] value = new double[3];
    private final double[][] vector = new double[3][3];

    /** Of [xx xy xz; xy yy yz; xz yz zz], largest eigenvalue first. */
    public SymmetricEigen3(double xx, double xy, double xz, double yy, double yz, double zz) {
        double[][] a = {{xx, xy, xz}, {xy, yy, yz}, {xz, yz, zz}};
        double[][] q = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};          // columns are the vectors
        for (int sweep = 0; sweep < 30 && off(a) > 0; sweep++) {
            rotate(a, q, 0, 1);
            rotate(a, q, 0, 2);
            rotate(a, q, 1, 2);
        }
        int[] order = {0, 1, 2};
        for (int i = 0; i < 3; i++)
            for (int j = i + 1; j < 3; j++)
                if (a[order[j]][order[j]] > a[order[i]][order[i]]) {
                    int swap = order[i];
                    order[i] = order[j];
                    order[j] = swap;
                }
        for (int i = 0; i < 3; i++) {
            value[i] = a[order[i]][order[i]];
            for (int k = 0; k < 3; k++) vector[i][k] = q[k][order[i]];
        }
    }

    /** Eigenvalue i = 0, 1, 2, largest first. */
    public double value(int i) {
        return value[i];
    }

    /** Component k of the unit eigenvector i; its sign is whatever came out. */
    public double vector(int i, int k) {
        return vector[i][k];
    }

    private static double off(double[][] a) {
        double off = Math.abs(a[0][1]) + Math.abs(a[0][2]) + Math.abs(a[1][2]);
        double on = Math.abs(a[0][0]) + Math.abs(a[1][1]) + Math.abs(a[2][2]);
        return off <= 1e-17 * on ? 0 : off;
    }

    private static void rotate(double[][] a, double[][] q, int i, int j) {
        if (a[i][j] == 0) return;
        double theta = (a[j][j] - a[i][i]) / (2 * a[i][j]);
        double t = Math.copySign(1 / (Math.abs(theta) + Math.sqrt(theta * theta + 1)), theta);
        double c = 1 / Math.sqrt(t * t + 1), s = t * c;
        for (int k = 0; k < 3; k++) {
            double ki = a[k][i], kj = a[k][j];
            a[k][i] = c * ki - s * kj;
            a[k][j] = s * ki + c * kj;
        }
        for (int k = 0; k < 3; k++) {
            double ik = a[i][k], jk = a[j][k], qi = q[k][i], qj = q[k][j];
            a[i][k] = c * ik - s * jk;
            a[j][k] = s * ik + c * jk;
            q[k][i] = c * qi - s * qj;
            q[k][j] = s * qi + c * qj;
        }
        a[i][j] = a[j][i] = 0;
    }
}
