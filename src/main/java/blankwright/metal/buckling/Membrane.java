package blankwright.metal.buckling;

/**
 * A membrane triangle with a rotation about the normal at each corner: constant strain plus bending in its own plane, which it carries
 * without locking.
 *
 * <p>A node has u, v (mm, along the first and second axis) and the rotation about the normal (rad). Stiffness = basic + higher part. The
 * basic part alone answers constant strain (patch test); the higher part has no energy there and is tuned to give in-plane bending of a
 * rectangle of two triangles its true energy at any ratio of sides.
 * <p>Source: Felippa, "A study of optimal membrane triangles with drilling freedoms", 2003, docs/sources.md [F03b]; its optimal numbers
 * αb = 3/2, β = (1 2 1 0 1 -1 -1 -1 -2), β0 = (1 - 4ν²)/2 from memory, held by the test of in-plane bending.
 */
final class Membrane {
    private static final double ALPHA = 1.5;
    private static final double LEAST_BETA0 = 0.01;         // keeps the rotation stiff at ν = 1/2, as the source advises
    private static final double[][][] Q = {
        {{1, 2, 1}, {0, 1, -1}, {-1, -1, -2}},
        {{-2, -1, -1}, {1, 1, 2}, {-1, 0, 1}},
        {{1, -1, 0}, {-1, -2, -1}, {2, 1, 1}}};

    private Membrane() { }

    /**
     * Mean strain exx, eyy, gxy (gxy = twice the tensor's) over the triangle from the nine unknowns u, v, θ of each corner: [3][9].
     */
    static void meanStrain(Facet f, double[][] e) {
        for (int k = 0; k < 3; k++) {
            int i = (k + 2) % 3, j = (k + 1) % 3;           // before and after corner k
            double yji = f.y[j] - f.y[i], xij = f.x[i] - f.x[j];
            double yki = f.y[k] - f.y[i], yjk = f.y[j] - f.y[k], xik = f.x[i] - f.x[k], xkj = f.x[k] - f.x[j];
            double s = 1 / (2 * f.area);
            e[0][3 * k] = s * yji;
            e[0][3 * k + 1] = 0;
            e[0][3 * k + 2] = s * ALPHA / 6 * yji * (yki - yjk);
            e[1][3 * k] = 0;
            e[1][3 * k + 1] = s * xij;
            e[1][3 * k + 2] = s * ALPHA / 6 * xij * (xik - xkj);
            e[2][3 * k] = s * xij;
            e[2][3 * k + 1] = s * yji;
            e[2][3 * k + 2] = s * ALPHA / 3 * (xik * yki - xkj * yjk);
        }
    }

    /**
     * Adds the stiffness to the lower triangle of {@code k} (9x9).
     *
     * @param c membrane moduli C11 C12 C13 C22 C23 C33 times thickness, N/mm
     * @param poisson for the weight of the higher part
     */
    static void addStiffness(Facet f, double[] c, double poisson, double[][] k) {
        double[][] b = new double[3][9];
        meanStrain(f, b);
        addEnergy(f.area, c, b, k);
        double[] l2 = new double[3];                        // squared lengths of edges 2-1, 3-2, 1-3
        for (int e = 0; e < 3; e++) {
            int j = (e + 1) % 3;
            double dx = f.x[j] - f.x[e], dy = f.y[j] - f.y[e];
            l2[e] = dx * dx + dy * dy;
        }
        double[] x = f.x, y = f.y;
        double s = 1 / (4 * f.area * f.area);
        double y01 = y[0] - y[1], y12 = y[1] - y[2], y20 = y[2] - y[0], x01 = x[0] - x[1], x12 = x[1] - x[2], x20 = x[2] - x[0];
        double[][] te = {                                   // natural strains along the edges -> exx, eyy, gxy
            {-s * y12 * y20 * l2[0], -s * y20 * y01 * l2[1], -s * y01 * y12 * l2[2]},
            {-s * x12 * x20 * l2[0], -s * x20 * x01 * l2[1], -s * x01 * x12 * l2[2]},
            {s * (y12 * x20 + x12 * y20) * l2[0], s * (y20 * x01 + x20 * y01) * l2[1], s * (y01 * x12 + x01 * y12) * l2[2]}};
        double[][] theta = new double[3][9];                // rotation of each corner less that of the whole triangle
        double q = 1 / (4 * f.area);
        for (int r = 0; r < 3; r++)
            for (int v = 0; v < 3; v++) {
                int i = (v + 1) % 3, j = (v + 2) % 3;       // row of the source: x_ji, y_ji of the edge opposite corner v
                theta[r][3 * v] = q * (x[j] - x[i]);
                theta[r][3 * v + 1] = q * (y[j] - y[i]);
                theta[r][3 * v + 2] = r == v ? 1 : 0;
            }
        double beta0 = Math.max(LEAST_BETA0, (1 - 4 * poisson * poisson) / 2);
        double[][] strain = new double[3][9];
        double[][] natural = new double[3][3];
        for (int m = 0; m < 3; m++) {                       // at the middle of edge m: mean of the two corners' patterns
            for (int e = 0; e < 3; e++)
                for (int r = 0; r < 3; r++)
                    natural[e][r] = 2 * f.area / 3 * (Q[m][e][r] + Q[(m + 1) % 3][e][r]) / 2 / l2[e];
            for (int a = 0; a < 3; a++)
                for (int v = 0; v < 9; v++) {
                    double sum = 0;
                    for (int e = 0; e < 3; e++) {
                        double nt = natural[e][0] * theta[0][v] + natural[e][1] * theta[1][v] + natural[e][2] * theta[2][v];
                        sum += te[a][e] * nt;
                    }
                    strain[a][v] = sum;
                }
            addEnergy(0.75 * beta0 * f.area, c, strain, k);
        }
    }

    private static void addEnergy(double weight, double[] c, double[][] b, double[][] k) {
        for (int r = 0; r < 9; r++) {
            double s0 = weight * (c[0] * b[0][r] + c[1] * b[1][r] + c[2] * b[2][r]);
            double s1 = weight * (c[1] * b[0][r] + c[3] * b[1][r] + c[4] * b[2][r]);
            double s2 = weight * (c[2] * b[0][r] + c[4] * b[1][r] + c[5] * b[2][r]);
            for (int j = 0; j <= r; j++) k[r][j] += s0 * b[0][j] + s1 * b[1][j] + s2 * b[2][j];
        }
    }
}
