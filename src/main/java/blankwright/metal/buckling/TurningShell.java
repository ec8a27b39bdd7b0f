package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Elements;
import java.util.stream.IntStream;

/**
 * A thin elastic shell of flat triangles that may turn while they are displaced: its forces and its stiffness there.
 *
 * <p>To the strain of {@link Membrane} each triangle adds half the products of its slopes, E = sym ∇u + ½ (∇u·∇u + ∇v·∇v + ∇w·∇w): those
 * of {@link Bending} at the middles of the edges out of its plane, those of straight lines in it. A turn of a whole triangle by any angle
 * strains nothing. Bending stays linear, so changes of slope within a triangle must be small against 1: von Kármán's plate on each facet.
 * <p>At rest the stiffness is that of {@link ShellStiffness}, and its change along a small displacement the one of {@link StressWork}.
 * <p>Source: any text on shallow shells, e.g. Timoshenko and Gere, 1961, docs/sources.md [TG61].
 */
final class TurningShell {
    private static final int CHUNK = 1 << 8;
    private static final int GRADIENTS = 5;             // of u, of v, of w at three places
    private static final double[] SHARE = {1, 1, 1.0 / 3, 1.0 / 3, 1.0 / 3};

    private final TriMesh mesh;
    private final ShellStiffness atRest;
    private final double[] moduli = new double[6];      // times thickness, N/mm

    TurningShell(TriMesh mesh, Sheet sheet, boolean[] held) {
        this.mesh = mesh;
        Moduli elastic = Moduli.elastic(sheet);
        atRest = new ShellStiffness(mesh, elastic, sheet.poisson(), sheet.thickness(), held);
        elastic.of(0, sheet.thickness(), moduli);
    }

    boolean held(int unknown) {
        return atRest.held(unknown);
    }

    /** One triangle at a displacement: strain, force, and how both change with its 18 unknowns. */
    private final class Local {
        private final Facet f = new Facet();
        private final double[] d = new double[18];
        private final double[][] linear = new double[3][18];                   // strain exx, eyy, gxy at rest
        private final double[][] change = new double[3][18];                   // the same there
        private final double[][][] gradient = new double[GRADIENTS][2][18];
        private final double[] force = new double[3], forceAtRest = new double[3];
        private final double[][] strain = new double[3][9];
        private final double[][][] slope = new double[3][2][9];
        private final double[] g = new double[6];

        /** False where the triangle has no area. */
        boolean at(int t, double[] displacement) {
            if (f.of(mesh, t).empty) return false;
            for (int k = 0; k < 3; k++) System.arraycopy(displacement, 6 * mesh.corner(t, k), d, 6 * k, 6);
            rows();
            double[] e = new double[3];
            for (int i = 0; i < 3; i++) e[i] = dot(linear[i], d);
            stress(e, forceAtRest);
            for (int i = 0; i < 3; i++) System.arraycopy(linear[i], 0, change[i], 0, 18);
            for (int p = 0; p < GRADIENTS; p++) {
                double gx = dot(gradient[p][0], d), gy = dot(gradient[p][1], d), share = SHARE[p];
                e[0] += share * gx * gx / 2;
                e[1] += share * gy * gy / 2;
                e[2] += share * gx * gy;
                for (int i = 0; i < 18; i++) {
                    change[0][i] += share * gx * gradient[p][0][i];
                    change[1][i] += share * gy * gradient[p][1][i];
                    change[2][i] += share * (gx * gradient[p][1][i] + gy * gradient[p][0][i]);
                }
            }
            stress(e, force);
            return true;
        }

        private void rows() {
            double[] axis = f.axis;
            Membrane.meanStrain(f, strain);
            Bending.slopes(f, slope);
            f.gradients(g);
            for (int k = 0; k < 3; k++)
                for (int i = 0; i < 3; i++) {
                    for (int r = 0; r < 3; r++) {
                        linear[r][6 * k + i] = strain[r][3 * k] * axis[i] + strain[r][3 * k + 1] * axis[3 + i];
                        linear[r][6 * k + 3 + i] = strain[r][3 * k + 2] * axis[6 + i];
                    }
                    for (int a = 0; a < 2; a++) {
                        gradient[0][a][6 * k + i] = g[2 * k + a] * axis[i];
                        gradient[1][a][6 * k + i] = g[2 * k + a] * axis[3 + i];
                        for (int m = 0; m < 3; m++) {
                            double[] s = slope[m][a];
                            gradient[2 + m][a][6 * k + i] = s[3 * k] * axis[6 + i];
                            gradient[2 + m][a][6 * k + 3 + i] = s[3 * k + 1] * axis[i] + s[3 * k + 2] * axis[3 + i];
                        }
                    }
                }
        }

        private void stress(double[] e, double[] to) {
            double[] c = moduli;
            to[0] = c[0] * e[0] + c[1] * e[1] + c[2] * e[2];
            to[1] = c[1] * e[0] + c[3] * e[1] + c[4] * e[2];
            to[2] = c[2] * e[0] + c[4] * e[1] + c[5] * e[2];
        }

        /** Stiffness, 18x18, blocks on and below the diagonal. */
        double stiffness(int t, double[][] k) {
            double diagonal = atRest.element(t, f, k);
            double[] sx = new double[18], rest = new double[18], column = new double[3], atFirst = new double[3];
            for (int j = 0; j < 18; j++) {
                stress(new double[] {change[0][j], change[1][j], change[2][j]}, column);
                stress(new double[] {linear[0][j], linear[1][j], linear[2][j]}, atFirst);
                for (int i = j; i < 18; i++)
                    k[i][j] += f.area * (change[0][i] * column[0] + change[1][i] * column[1] + change[2][i] * column[2]
                            - linear[0][i] * atFirst[0] - linear[1][i] * atFirst[1] - linear[2][i] * atFirst[2]);
            }
            for (int p = 0; p < GRADIENTS; p++) {
                double[] x = gradient[p][0], y = gradient[p][1];
                for (int j = 0; j < 18; j++) {
                    sx[j] = f.area * SHARE[p] * (force[0] * x[j] + force[2] * y[j]);
                    rest[j] = f.area * SHARE[p] * (force[2] * x[j] + force[1] * y[j]);
                }
                for (int i = 0; i < 18; i++) for (int j = 0; j <= i; j++) k[i][j] += x[i] * sx[j] + y[i] * rest[j];
            }
            return diagonal;
        }

        /** What the triangle puts on its corners, N and N mm. */
        void forces(int t, double[][] k, double[] to) {
            atRest.element(t, f, k);
            for (int i = 0; i < 18; i++) {
                double sum = 0;
                for (int j = 0; j < 18; j++) sum += (i >= j ? k[i][j] : k[j][i]) * d[j];
                for (int r = 0; r < 3; r++) sum += f.area * (change[r][i] * force[r] - linear[r][i] * forceAtRest[r]);
                to[i] = sum;
            }
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < 18; i++) sum += a[i] * b[i];
        return sum;
    }

    /** Stiffness against a further small displacement, at {@code displacement}, 6 per vertex, which must not change meanwhile. */
    Elements stiffness(double[] displacement) {
        return (t, out) -> {
            Local local = new Local();
            double[][] k = new double[18][18];
            double diagonal = local.at(t, displacement) ? local.stiffness(t, k) : atRest.element(t, local.f, k);
            atRest.pack(t, k, diagonal, out);
        };
    }

    /** What the shell puts up against {@code displacement}: 6 per vertex, N and N mm; 0 where held. */
    double[] forces(double[] displacement) {
        double[] part = new double[18 * mesh.triangleCount()], whole = new double[displacement.length];
        IntStream.range(0, (mesh.triangleCount() + CHUNK - 1) / CHUNK).parallel().forEach(c -> {
            Local local = new Local();
            double[] to = new double[18];
            for (int t = c * CHUNK; t < Math.min(mesh.triangleCount(), (c + 1) * CHUNK); t++) {
                if (!local.at(t, displacement)) continue;
                local.forces(t, new double[18][18], to);
                System.arraycopy(to, 0, part, 18 * t, 18);
            }
        });
        for (int t = 0; t < mesh.triangleCount(); t++)
            for (int i = 0; i < 18; i++) whole[6 * mesh.corner(t, i / 6) + i % 6] += part[18 * t + i];
        for (int i = 0; i < whole.length; i++) if (atRest.held(i)) whole[i] = 0;
        return whole;
    }

    /** Membrane force there: 3 per triangle, Nxx, Nyy, Nxy in its own frame, N/mm; of slopes squared nothing where {@code small}. */
    double[] membrane(double[] displacement, boolean small) {
        double[] force = new double[3 * mesh.triangleCount()];
        Local local = new Local();
        for (int t = 0; t < mesh.triangleCount(); t++)
            if (local.at(t, displacement)) System.arraycopy(small ? local.forceAtRest : local.force, 0, force, 3 * t, 3);
        return force;
    }
}
