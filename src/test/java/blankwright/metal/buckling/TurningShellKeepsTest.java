package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Elements;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Forces and stiffness of one energy, which a turn of the whole does not raise. */
class TurningShellKeepsTest {
    private static final Sheet SHEET = Sheet.elastic(70_000, 0.3, 1);

    private static TriMesh bent() {
        TriMesh flat = Plates.rectangle(60, 40, 3, 2);
        double[] xyz = flat.positions();
        for (int v = 0; v < flat.vertexCount(); v++) xyz[3 * v + 2] = xyz[3 * v] * xyz[3 * v] / 200 + xyz[3 * v + 1] / 10;
        return flat.withPositions(xyz);
    }

    private static double[] random(int n, double size, long seed) {
        Random random = new Random(seed);
        return random.doubles(n, -size, size).toArray();
    }

    private static double[] times(TriMesh mesh, Elements elements, double[] x) {
        double[] y = new double[x.length], k = new double[171];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            elements.lowerTriangle(t, k);
            for (int i = 0, s = 0; i < 18; i++)
                for (int j = 0; j <= i; j++, s++) {
                    int a = 6 * mesh.corner(t, i / 6) + i % 6, b = 6 * mesh.corner(t, j / 6) + j % 6;
                    y[a] += k[s] * x[b];
                    if (i != j) y[b] += k[s] * x[a];
                }
        }
        return y;
    }

    @Test
    void stiffnessMatchesFiniteDifferenceOfTheForces() {
        TriMesh mesh = bent();
        int n = 6 * mesh.vertexCount();
        TurningShell shell = new TurningShell(mesh, SHEET, new boolean[n]);
        double[] at = random(n, 0.3, 1), along = random(n, 1, 2), more = at.clone(), less = at.clone();
        double h = 1e-5;
        for (int i = 0; i < n; i++) {
            more[i] += h * along[i];
            less[i] -= h * along[i];
        }
        double[] k = times(mesh, shell.stiffness(at), along), up = shell.forces(more), down = shell.forces(less);
        double size = 0;
        for (double x : k) size = Math.max(size, Math.abs(x));
        for (int i = 0; i < n; i++) assertEquals((up[i] - down[i]) / (2 * h), k[i], 1e-7 * size);
    }

    @Test
    void atRestItIsTheStiffnessOfTheShell() {
        TriMesh mesh = bent();
        int n = 6 * mesh.vertexCount();
        ShellStiffness rest = new ShellStiffness(mesh, Moduli.elastic(SHEET), SHEET.poisson(), SHEET.thickness(), new boolean[n]);
        double[] along = random(n, 1, 3), k = times(mesh, new TurningShell(mesh, SHEET, new boolean[n]).stiffness(new double[n]), along);
        double[] other = times(mesh, rest, along);
        for (int i = 0; i < n; i++) assertEquals(other[i], k[i], 1e-9 * Math.abs(other[i]) + 1e-6);
    }

    /** A plate turned by 30 degrees about an axis in its plane; small turns would stretch it by 13 %. */
    @Test
    void aTurnOfTheWholeStrainsNothing() {
        TriMesh plate = Plates.rectangle(60, 40, 3, 2);
        double[] turned = new double[6 * plate.vertexCount()];
        double angle = Math.toRadians(30);
        for (int v = 0; v < plate.vertexCount(); v++) {
            turned[6 * v + 1] = (Math.cos(angle) - 1) * plate.y(v);
            turned[6 * v + 2] = Math.sin(angle) * plate.y(v);
            turned[6 * v + 3] = Math.sin(angle);
        }
        for (double f : new TurningShell(plate, SHEET, new boolean[turned.length]).forces(turned)) assertEquals(0, f, 1e-6);
    }
}
