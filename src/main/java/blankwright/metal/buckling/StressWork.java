package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Geometric stiffness of a membrane force: the force times half the squares of the slopes it does work on, as a product with a vector.
 *
 * <p>Out of a triangle's plane the slopes are those of {@link Bending}, at the middles of the edges; in its plane they are those of
 * straight lines between the corners. A rigid turn has its true slopes in both.
 * <p>The same bits on any number of threads: each triangle by itself, each vertex over its triangles in their order. Not for use by
 * two threads at once.
 */
final class StressWork {
    private static final int CHUNK = 1 << 11;

    private final TriMesh mesh;
    private final double[] force;       // 3 per triangle: Nxx, Nyy, Nxy in its own frame, N/mm, tension positive
    private final ShellStiffness shell;
    private final double[] part;        // 6 per corner: what its triangle puts on it
    private final int[] start, corner;  // corners of vertex v: corner[start[v] .. start[v + 1] - 1]

    StressWork(TriMesh mesh, double[] force, ShellStiffness shell) {
        this.mesh = mesh;
        this.force = force;
        this.shell = shell;
        part = new double[18 * mesh.triangleCount()];
        start = new int[mesh.vertexCount() + 1];
        corner = new int[3 * mesh.triangleCount()];
        for (int c = 0; c < corner.length; c++) start[mesh.corner(c / 3, c % 3) + 1]++;
        for (int v = 0; v < mesh.vertexCount(); v++) start[v + 1] += start[v];
        int[] fill = start.clone();
        for (int c = 0; c < corner.length; c++) corner[fill[mesh.corner(c / 3, c % 3)]++] = c;
    }

    /** to = -G from: positive where the force, being compression, gives way. Held unknowns are neither read nor written. */
    void timesMinus(double[] from, double[] to) {
        IntStream.range(0, (mesh.triangleCount() + CHUNK - 1) / CHUNK).parallel().forEach(c -> {
            Scratch scratch = new Scratch();
            for (int t = c * CHUNK; t < Math.min(mesh.triangleCount(), (c + 1) * CHUNK); t++) triangle(t, from, scratch);
        });
        IntStream.range(0, (mesh.vertexCount() + CHUNK - 1) / CHUNK).parallel().forEach(c -> {
            for (int v = c * CHUNK; v < Math.min(mesh.vertexCount(), (c + 1) * CHUNK); v++)
                for (int i = 0; i < 6; i++) {
                    double sum = 0;
                    for (int p = start[v]; p < start[v + 1]; p++) sum += part[6 * corner[p] + i];
                    to[6 * v + i] = shell.held(6 * v + i) ? 0 : -sum;
                }
        });
    }

    private static final class Scratch {
        private final Facet f = new Facet();
        private final double[][][] p = new double[3][2][9];
        private final double[] at = new double[6], u = new double[9], w = new double[9];
        private final double[] g = new double[6], fu = new double[9], fw = new double[9];
    }

    /** Writes what triangle t puts on its corners into {@code part}. */
    private void triangle(int t, double[] from, Scratch s) {
        Facet f = s.f.of(mesh, t);
        if (f.empty) {
            Arrays.fill(part, 18 * t, 18 * t + 18, 0);
            return;
        }
        double[] axis = f.axis;
        for (int k = 0; k < 3; k++) {
            int v = 6 * mesh.corner(t, k);
            for (int i = 0; i < 6; i++) s.at[i] = shell.held(v + i) ? 0 : from[v + i];
            for (int a = 0; a < 3; a++) s.u[3 * a + k] = axis[3 * a] * s.at[0] + axis[3 * a + 1] * s.at[1] + axis[3 * a + 2] * s.at[2];
            s.w[3 * k] = s.u[6 + k];
            for (int a = 0; a < 2; a++) s.w[3 * k + 1 + a] = axis[3 * a] * s.at[3] + axis[3 * a + 1] * s.at[4] + axis[3 * a + 2] * s.at[5];
        }
        double nx = force[3 * t], ny = force[3 * t + 1], nxy = force[3 * t + 2];
        f.gradients(s.g);
        for (int a = 0; a < 2; a++) {
            double px = s.g[0] * s.u[3 * a] + s.g[2] * s.u[3 * a + 1] + s.g[4] * s.u[3 * a + 2];
            double py = s.g[1] * s.u[3 * a] + s.g[3] * s.u[3 * a + 1] + s.g[5] * s.u[3 * a + 2];
            double qx = f.area * (nx * px + nxy * py), qy = f.area * (nxy * px + ny * py);
            for (int k = 0; k < 3; k++) s.fu[3 * a + k] = s.g[2 * k] * qx + s.g[2 * k + 1] * qy;
        }
        Bending.slopes(f, s.p);
        Arrays.fill(s.fw, 0);
        double weight = f.area / 3;
        for (int m = 0; m < 3; m++) {
            double px = 0, py = 0;
            for (int c = 0; c < 9; c++) {
                px += s.p[m][0][c] * s.w[c];
                py += s.p[m][1][c] * s.w[c];
            }
            double qx = weight * (nx * px + nxy * py), qy = weight * (nxy * px + ny * py);
            for (int c = 0; c < 9; c++) s.fw[c] += s.p[m][0][c] * qx + s.p[m][1][c] * qy;
        }
        for (int k = 0; k < 3; k++)
            for (int i = 0; i < 3; i++) {
                part[18 * t + 6 * k + i] = axis[i] * s.fu[k] + axis[3 + i] * s.fu[3 + k] + axis[6 + i] * s.fw[3 * k];
                part[18 * t + 6 * k + 3 + i] = axis[i] * s.fw[3 * k + 1] + axis[3 + i] * s.fw[3 * k + 2];
            }
    }
}
