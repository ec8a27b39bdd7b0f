package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;

/**
 * Geometric stiffness of a membrane force: the force times half the squares of the slopes it does work on, as a product with a vector.
 *
 * <p>Out of a triangle's plane the slopes are those of {@link Bending}, at the middles of the edges; in its plane they are those of
 * straight lines between the corners. A rigid turn has its true slopes in both.
 */
final class StressWork {
    private final TriMesh mesh;
    private final double[] force;       // 3 per triangle: Nxx, Nyy, Nxy in its own frame, N/mm, tension positive
    private final ShellStiffness shell;

    StressWork(TriMesh mesh, double[] force, ShellStiffness shell) {
        this.mesh = mesh;
        this.force = force;
        this.shell = shell;
    }

    /** to = -G from: positive where the force, being compression, gives way. Held unknowns are neither read nor written. */
    void timesMinus(double[] from, double[] to) {
        java.util.Arrays.fill(to, 0);
        Facet f = new Facet();
        double[][][] p = new double[3][2][9];
        double[] at = new double[6], u = new double[9], w = new double[9], g = new double[6], fu = new double[9], fw = new double[9];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (f.of(mesh, t).empty) continue;
            for (int k = 0; k < 3; k++) {
                int v = 6 * mesh.corner(t, k);
                for (int i = 0; i < 6; i++) at[i] = shell.held(v + i) ? 0 : from[v + i];
                for (int a = 0; a < 3; a++) u[3 * a + k] = f.axis[3 * a] * at[0] + f.axis[3 * a + 1] * at[1] + f.axis[3 * a + 2] * at[2];
                w[3 * k] = u[6 + k];
                for (int a = 0; a < 2; a++)
                    w[3 * k + 1 + a] = f.axis[3 * a] * at[3] + f.axis[3 * a + 1] * at[4] + f.axis[3 * a + 2] * at[5];
            }
            double nx = force[3 * t], ny = force[3 * t + 1], nxy = force[3 * t + 2];
            f.gradients(g);
            for (int a = 0; a < 2; a++) {
                double px = g[0] * u[3 * a] + g[2] * u[3 * a + 1] + g[4] * u[3 * a + 2];
                double py = g[1] * u[3 * a] + g[3] * u[3 * a + 1] + g[5] * u[3 * a + 2];
                double qx = f.area * (nx * px + nxy * py), qy = f.area * (nxy * px + ny * py);
                for (int k = 0; k < 3; k++) fu[3 * a + k] = g[2 * k] * qx + g[2 * k + 1] * qy;
            }
            Bending.slopes(f, p);
            java.util.Arrays.fill(fw, 0);
            double weight = f.area / 3;
            for (int m = 0; m < 3; m++) {
                double px = 0, py = 0;
                for (int c = 0; c < 9; c++) {
                    px += p[m][0][c] * w[c];
                    py += p[m][1][c] * w[c];
                }
                double qx = weight * (nx * px + nxy * py), qy = weight * (nxy * px + ny * py);
                for (int c = 0; c < 9; c++) fw[c] += p[m][0][c] * qx + p[m][1][c] * qy;
            }
            for (int k = 0; k < 3; k++) {
                int v = 6 * mesh.corner(t, k);
                for (int i = 0; i < 3; i++) {
                    to[v + i] -= f.axis[i] * fu[k] + f.axis[3 + i] * fu[3 + k] + f.axis[6 + i] * fw[3 * k];
                    to[v + 3 + i] -= f.axis[i] * fw[3 * k + 1] + f.axis[3 + i] * fw[3 * k + 2];
                }
            }
        }
        for (int i = 0; i < to.length; i++) if (shell.held(i)) to[i] = 0;
    }
}
