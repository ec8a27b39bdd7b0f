package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * What the elements must do by mechanics alone: no energy in moving as a whole, the true energy of constant strain and constant curvature.
 */
class ShellStiffnessKeepsTest {
    private static final double NU = 0.33, T = 1.3;
    private static final Sheet SHEET = Sheet.elastic(Plates.E, NU, T);

    /** Gives the six unknowns at a place. */
    private interface Field {
        double[] at(double x, double y, double z);
    }

    private static double energy(TriMesh mesh, Field field) {
        double[] x = vector(mesh, field);
        ShellStiffness k = new ShellStiffness(mesh, Moduli.elastic(SHEET), NU, T, new boolean[x.length]);
        double[] out = new double[171];
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            k.lowerTriangle(t, out);
            for (int i = 0, s = 0; i < 18; i++)
                for (int j = 0; j <= i; j++, s++)
                    sum += (i == j ? 0.5 : 1) * out[s] * x[6 * mesh.corner(t, i / 6) + i % 6] * x[6 * mesh.corner(t, j / 6) + j % 6];
        }
        return sum;
    }

    private static double[] vector(TriMesh mesh, Field field) {
        double[] x = new double[6 * mesh.vertexCount()];
        for (int v = 0; v < mesh.vertexCount(); v++)
            System.arraycopy(field.at(mesh.x(v), mesh.y(v), mesh.z(v)), 0, x, 6 * v, 6);
        return x;
    }

    /** A plate 60 by 40 with its inner vertices out of line. */
    private static TriMesh ragged() {
        TriMesh even = Plates.rectangle(60, 40, 6, 5);
        double[] xyz = even.positions();
        Random random = new Random(3);
        for (int v = 0; v < even.vertexCount(); v++) {
            boolean rim = even.x(v) < 1 || even.x(v) > 59 || even.y(v) < 1 || even.y(v) > 39;
            for (int k = 0; k < 2; k++) if (!rim) xyz[3 * v + k] += 4 * random.nextDouble() - 2;
        }
        return even.withPositions(xyz);
    }

    private static TriMesh crumpled() {
        TriMesh mesh = ragged();
        double[] xyz = mesh.positions();
        Random random = new Random(4);
        for (int i = 2; i < xyz.length; i += 3) xyz[i] = 5 * random.nextDouble();
        return mesh.withPositions(xyz);
    }

    @Test
    void noEnergyInMovingAsAWhole() {
        double scale = Plates.E * T;
        for (TriMesh mesh : new TriMesh[] {ragged(), crumpled()}) {
            assertEquals(0, energy(mesh, (x, y, z) -> new double[] {1, -2, 3, 0, 0, 0}), 1e-9 * scale);
            double a = 0.3, b = -0.2, c = 0.5;          // a turn (a, b, c) about the origin
            assertEquals(0, energy(mesh, (x, y, z) -> new double[] {b * z - c * y, c * x - a * z, a * y - b * x, a, b, c}),
                    1e-9 * scale * 3600);
        }
    }

    @Test
    void constantStrainAndCurvatureHaveTheirEnergy() {
        TriMesh mesh = ragged();
        double area = 2400, p = Plates.E * T / (1 - NU * NU), d = SHEET.bendingStiffness();
        double ex = 3e-3, ey = -1e-3, g = 2e-3;         // u = ex x + g y / 2, v = ey y + g x / 2: no turn
        assertEquals(area / 2 * p * (ex * ex + ey * ey + 2 * NU * ex * ey + (1 - NU) / 2 * g * g),
                energy(mesh, (x, y, z) -> new double[] {ex * x + g * y / 2, ey * y + g * x / 2, 0, 0, 0, 0}), 1e-9 * area * p * 1e-6);
        double kx = 2e-3, ky = -3e-3, kxy = 1e-3;       // w = (kx x² + ky y² + 2 kxy x y) / 2
        assertEquals(area / 2 * d * (kx * kx + ky * ky + 2 * NU * kx * ky + (1 - NU) / 2 * 4 * kxy * kxy),
                energy(mesh, (x, y, z) -> new double[] {0, 0, (kx * x * x + ky * y * y + 2 * kxy * x * y) / 2,
                        ky * y + kxy * x, -kx * x - kxy * y, 0}),
                1e-9 * area * d * 1e-6);
    }

    /** A strip bent in its own plane keeps its stiffness however long its triangles: what three-node membranes without rotations do not. */
    @Test
    void bendingInItsOwnPlaneDoesNotLock() {
        for (double length : new double[] {10, 40, 160}) {
            TriMesh mesh = Plates.rectangle(4 * length, 10, 4, 1);
            double kappa = 1e-4;                        // u = -k x y, v = k x²/2 + nu k y²/2, turn k x; y from the middle; stress along x
            double true0 = Plates.E * T * 10 * 10 * 10 / 12 * kappa * kappa / 2 * 4 * length;
            double found = energy(mesh, (x, y, z) -> {
                double h = y - 5;
                return new double[] {-kappa * x * h, kappa * x * x / 2 + NU * kappa * h * h / 2, 0, 0, 0, kappa * x};
            });
            assertEquals(true0, found, 1e-6 * true0, "length " + length);
        }
    }

    @Test
    void aTriangleWithoutAreaCarriesNothing() {
        TriMesh flat = TriMesh.of(new double[] {0, 0, 0, 1, 0, 0, 2, 0, 0}, new int[] {0, 1, 2});
        ShellStiffness k = new ShellStiffness(flat, Moduli.elastic(SHEET), NU, T, new boolean[18]);
        double[] out = new double[171];
        k.lowerTriangle(0, out);
        for (int i = 0, s = 0; i < 18; i++) for (int j = 0; j <= i; j++, s++) assertTrue(i == j ? out[s] > 0 : out[s] == 0);
    }

    /** A product with G: symmetric, and a turn under a force in equilibrium does no work. */
    @Test
    void stressWorkIsSymmetricAndBlindToTheWhole() {
        TriMesh mesh = ragged();
        double[] force = Plates.force(mesh, -3, 2, 1.5);
        ShellStiffness shell = new ShellStiffness(mesh, Moduli.elastic(SHEET), NU, T, new boolean[6 * mesh.vertexCount()]);
        StressWork work = new StressWork(mesh, force, shell);
        Random random = new Random(5);
        double[] a = random.doubles(6L * mesh.vertexCount()).toArray(), b = random.doubles(a.length).toArray();
        double[] ga = new double[a.length], gb = new double[a.length];
        work.timesMinus(a, ga);
        work.timesMinus(b, gb);
        double ab = 0, ba = 0;
        for (int i = 0; i < a.length; i++) {
            ab += a[i] * gb[i];
            ba += b[i] * ga[i];
        }
        assertEquals(ab, ba, 1e-9 * Math.abs(ab));
        double[] x = vector(mesh, (px, py, pz) -> new double[] {0, 0, 0.2 * px + 0.1 * py, 0.1, -0.2, 0});
        work.timesMinus(x, ga);
        double sum = 0;
        for (int i = 0; i < x.length; i++) sum += x[i] * ga[i];
        assertEquals(-2400 * (-3 * 0.04 + 2 * 0.01 + 2 * 1.5 * 0.02), sum, 1e-9, "the force times the squares of the slopes");
    }
}
