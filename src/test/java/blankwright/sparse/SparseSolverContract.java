package blankwright.sparse;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What every solver of element systems must do; b is made from a known x, so nothing here shares code with a solver. */
abstract class SparseSolverContract {
    /** Solves, or returns null where the matrix is not positive definite. */
    abstract double[] solve(TestMesh mesh, int unknowns, Elements elements, double shift, double[] b);

    /** Nodes with places and triangles over them. */
    record TestMesh(double[] xyz, int[] tri) {
        int nodes() {
            return xyz.length / 3;
        }

        static TestMesh grid(int nx, int ny, Random random) {
            double[] xyz = new double[3 * (nx + 1) * (ny + 1)];
            int[] tri = new int[6 * nx * ny];
            for (int i = 0, p = 0; i <= nx; i++)
                for (int j = 0; j <= ny; j++) {
                    xyz[p++] = i + 0.3 * random.nextDouble();
                    xyz[p++] = j + 0.3 * random.nextDouble();
                    xyz[p++] = random.nextDouble();
                }
            for (int i = 0, p = 0; i < nx; i++)
                for (int j = 0; j < ny; j++) {
                    int a = i * (ny + 1) + j, b = a + ny + 1, c = b + 1, d = a + 1;
                    for (int v : new int[] {a, b, c, a, c, d}) tri[p++] = v;
                }
            return new TestMesh(xyz, tri);
        }

        /** One node joined to all others: the worst case of a pattern. */
        static TestMesh wheel(int spokes) {
            double[] xyz = new double[3 * (spokes + 1)];
            int[] tri = new int[3 * spokes];
            for (int i = 0; i < spokes; i++) {
                xyz[3 * i + 3] = Math.cos(2 * Math.PI * i / spokes);
                xyz[3 * i + 4] = Math.sin(2 * Math.PI * i / spokes);
                tri[3 * i + 1] = i + 1;
                tri[3 * i + 2] = 1 + (i + 1) % spokes;
            }
            return new TestMesh(xyz, tri);
        }

        /** All nodes in one place: coordinates tell nothing about the order. */
        TestMesh heaped() {
            return new TestMesh(new double[xyz.length], tri);
        }
    }

    /** Random symmetric positive elements: G Gᵀ, a little on the diagonal. */
    static Elements random(int count, int unknowns, long seed) {
        int n = 3 * unknowns;
        double[][] block = new double[count][n * (n + 1) / 2];
        Random random = new Random(seed);
        for (double[] b : block) {
            double[][] g = new double[n][n];
            for (double[] row : g) for (int j = 0; j < n; j++) row[j] = random.nextGaussian();
            for (int i = 0, s = 0; i < n; i++)
                for (int j = 0; j <= i; j++, s++) {
                    for (int k = 0; k < n; k++) b[s] += g[i][k] * g[j][k];
                    if (i == j) b[s] += 0.1;
                }
        }
        return (e, out) -> System.arraycopy(block[e], 0, out, 0, out.length);
    }

    /** y = (sum of elements + shift) x, by the definition. */
    static double[] times(TestMesh mesh, int d, Elements elements, double shift, double[] x) {
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) y[i] = shift * x[i];
        double[] block = new double[3 * d * (3 * d + 1) / 2];
        for (int e = 0; e < mesh.tri().length / 3; e++) {
            elements.lowerTriangle(e, block);
            for (int i = 0, s = 0; i < 3 * d; i++)
                for (int j = 0; j <= i; j++, s++) {
                    int r = mesh.tri()[3 * e + i / d] * d + i % d, c = mesh.tri()[3 * e + j / d] * d + j % d;
                    y[r] += block[s] * x[c];
                    if (i != j) y[c] += block[s] * x[r];
                }
        }
        return y;
    }

    static double[] randomVector(int n, long seed) {
        Random random = new Random(seed);
        double[] x = new double[n];
        for (int i = 0; i < n; i++) x[i] = random.nextGaussian();
        return x;
    }

    private void findsTheKnownSolution(TestMesh mesh, int d, double shift) {
        Elements elements = random(mesh.tri().length / 3, d, 7);
        double[] known = randomVector(mesh.nodes() * d, 8);
        double[] x = solve(mesh, d, elements, shift, times(mesh, d, elements, shift, known));
        assertArrayEquals(known, x, 1e-8, "condition number of these systems is below 1e5");
    }

    @ParameterizedTest
    @CsvSource({"1,1,1,0", "1,1,2,0", "3,2,3,0.5", "20,30,1,0", "20,30,2,0", "9,9,6,0", "60,40,2,1e-9", "200,3,2,0"})
    void findsTheSolutionTheRightHandSideWasMadeFrom(int nx, int ny, int unknowns, double shift) {
        findsTheKnownSolution(TestMesh.grid(nx, ny, new Random(5)), unknowns, shift);
    }

    @Test
    void findsItWithAHubAndWithoutPlaces() {
        findsTheKnownSolution(TestMesh.wheel(500), 2, 0);
        findsTheKnownSolution(TestMesh.grid(15, 15, new Random(5)).heaped(), 2, 0);
    }

    @Test
    void saysSoWhenTheMatrixIsNotPositive() {
        TestMesh mesh = TestMesh.grid(8, 8, new Random(5));
        Elements good = random(mesh.tri().length / 3, 2, 7);
        Elements bad = (e, out) -> {
            good.lowerTriangle(e, out);
            if (e == 70) out[5] -= 1e4;
        };
        Elements undefined = (e, out) -> {
            good.lowerTriangle(e, out);
            if (e == 70) out[4] = Double.NaN;
        };
        double[] b = new double[2 * mesh.nodes()];
        assertFalse(solve(mesh, 2, bad, 0, b) != null, "a negative pivot");
        assertFalse(solve(mesh, 2, undefined, 0, b) != null, "not a number");
    }
}
