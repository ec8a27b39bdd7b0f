package blankwright.metal.buckling;

/**
 * The discrete Kirchhoff triangle: a thin plate whose slopes vary quadratically over the triangle.
 *
 * <p>A node has w (mm, along the normal) and the rotations about the first and second axis (rad). The slope p = grad w is given at the
 * corners by the rotations; at the middle of an edge its part along the edge is that of the cubic through both ends, its part across the
 * edge the mean of both ends. Curvatures are linear, so the rule with the three middles of the edges integrates their energy exactly. The
 * same slopes, at the same three places, give the work of a membrane force ({@link #slopes}).
 * <p>Error: eigenvalues of second order in the edge length (docs/theory/buckling.md).
 * <p>Source: Batoz, Bathe and Ho, "A study of three-node triangular plate bending elements", 1980, docs/sources.md [BBH80].
 */
final class Bending {
    private Bending() { }

    /**
     * Slopes at the middle of edge k (corner k to k+1) from the nine unknowns w, θx, θy of each corner.
     *
     * @param p [k][0 = along x, 1 = along y][9]; overwritten
     */
    static void slopes(Facet f, double[][][] p) {
        for (int k = 0; k < 3; k++) {
            int i = k, j = (k + 1) % 3;
            double dx = f.x[j] - f.x[i], dy = f.y[j] - f.y[i], l = Math.sqrt(dx * dx + dy * dy), c = dx / l, s = dy / l;
            for (int a = 0; a < 2; a++) {
                double[] row = p[k][a];
                java.util.Arrays.fill(row, 0);
                double along = a == 0 ? c : s, across = a == 0 ? -s : c;       // n = (-s, c)
                row[3 * i] = -1.5 / l * along;
                row[3 * j] = 1.5 / l * along;
                for (int v : new int[] {i, j}) {                               // grad w = (-θy, θx)
                    row[3 * v + 1] = -0.25 * s * along + 0.5 * c * across;
                    row[3 * v + 2] = 0.25 * c * along + 0.5 * s * across;
                }
            }
        }
    }

    /**
     * Adds the stiffness, N mm in unknowns of mm and rad, to the lower triangle of {@code k} (9x9).
     *
     * @param d bending moduli C11 C12 C13 C22 C23 C33 times thickness cubed over 12, N mm
     */
    static void addStiffness(Facet f, double[] d, double[][] k) {
        double[][][] p = new double[3][2][9];
        slopes(f, p);
        double[] g = new double[6];
        f.gradients(g);
        double[][] b = new double[3][9];
        double[][] db = new double[3][9];
        double weight = f.area / 3;
        for (int m = 0; m < 3; m++) {                       // at the middle of edge m: its ends have 1/2, the other corner 0
            int i = m, j = (m + 1) % 3, o = (m + 2) % 3;
            for (double[] row : b) java.util.Arrays.fill(row, 0);
            // corners: 4 L - 1 times grad L; corner slopes are (-θy, θx)
            for (int v = 0; v < 3; v++) {
                double factor = v == o ? -1 : 1, gx = factor * g[2 * v], gy = factor * g[2 * v + 1];
                b[0][3 * v + 2] -= gx;
                b[1][3 * v + 1] += gy;
                b[2][3 * v + 1] += gx;
                b[2][3 * v + 2] -= gy;
            }
            // middles: 4 (L grad L' + L' grad L)
            addMiddle(b, p[m], 2 * (g[2 * i] + g[2 * j]), 2 * (g[2 * i + 1] + g[2 * j + 1]));
            addMiddle(b, p[j], 2 * g[2 * o], 2 * g[2 * o + 1]);                 // edge j-o: only L_j is not 0 here
            addMiddle(b, p[o], 2 * g[2 * o], 2 * g[2 * o + 1]);                 // edge o-i
            for (int c = 0; c < 9; c++) {
                db[0][c] = weight * (d[0] * b[0][c] + d[1] * b[1][c] + d[2] * b[2][c]);
                db[1][c] = weight * (d[1] * b[0][c] + d[3] * b[1][c] + d[4] * b[2][c]);
                db[2][c] = weight * (d[2] * b[0][c] + d[4] * b[1][c] + d[5] * b[2][c]);
            }
            for (int r = 0; r < 9; r++)
                for (int c = 0; c <= r; c++) k[r][c] += b[0][r] * db[0][c] + b[1][r] * db[1][c] + b[2][r] * db[2][c];
        }
    }

    private static void addMiddle(double[][] b, double[][] p, double gx, double gy) {
        for (int c = 0; c < 9; c++) {
            b[0][c] += gx * p[0][c];
            b[1][c] += gy * p[1][c];
            b[2][c] += gy * p[0][c] + gx * p[1][c];
        }
    }
}
