package blankwright.sparse;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.ejml.simple.SimpleEVD;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;

/** The dense route is EJML's: K = LLᵀ, all eigenvalues of L⁻¹AL⁻ᵀ. */
class EigenpairsAgreesWithDenseRouteTest {
    private static final Eigenpairs.Limits LIMITS = Eigenpairs.Limits.DEFAULT.withTolerance(1e-9);

    /** A x = θ K x on one mesh. */
    private record Problem(SparseSolverContract.TestMesh mesh, int d, Elements k, Elements a) {
        int n() {
            return d * mesh.nodes();
        }

        Eigenpairs largest(Eigenpairs.Limits limits) {
            Cholesky solver = new Cholesky(mesh.nodes(), mesh.tri(), mesh.xyz(), d);
            assertTrue(solver.factor(k, 0, () -> false));
            return Eigenpairs.largest(n(), (from, to) -> System.arraycopy(SparseSolverContract.times(mesh, d, a, 0, from), 0, to, 0, n()),
                    solver::solve, limits, () -> false);
        }

        private SimpleMatrix dense(Elements elements) {
            SimpleMatrix m = new SimpleMatrix(n(), n());
            for (int j = 0; j < n(); j++) {
                double[] unit = new double[n()];
                unit[j] = 1;
                double[] column = SparseSolverContract.times(mesh, d, elements, 0, unit);
                for (int i = 0; i < n(); i++) m.set(i, j, column[i]);
            }
            return m;
        }

        /** Largest first. */
        double[] all() {
            org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM cholesky =
                    new org.ejml.dense.row.decomposition.chol.CholeskyDecompositionInner_DDRM(true);
            assertTrue(cholesky.decompose(dense(k).getDDRM()));
            SimpleMatrix inverse = SimpleMatrix.wrap(cholesky.getT(null)).invert();
            SimpleMatrix c = inverse.mult(dense(a)).mult(inverse.transpose());
            SimpleEVD<SimpleMatrix> values = c.plus(c.transpose()).divide(2).eig();
            double[] all = new double[n()];
            for (int i = 0; i < n(); i++) all[i] = -values.getEigenvalue(i).getReal();
            Arrays.sort(all);
            for (int i = 0; i < n(); i++) all[i] = -all[i];
            return all;
        }

        void pairsAreTrue(Eigenpairs pairs) {
            for (int i = 0; i < pairs.count(); i++) {
                double[] x = pairs.vector(i);
                double[] ax = SparseSolverContract.times(mesh, d, a, 0, x), kx = SparseSolverContract.times(mesh, d, k, 0, x);
                double energy = 0, worst = 0, largest = 0;
                for (int j = 0; j < n(); j++) {
                    energy += x[j] * kx[j];
                    worst = Math.max(worst, Math.abs(ax[j] - pairs.value(i) * kx[j]));
                    largest = Math.max(largest, Math.abs(ax[j]));
                }
                assertEquals(1, energy, 1e-10);
                assertTrue(worst < 1e-6 * largest, "pair " + i + ": " + worst / largest);
                assertTrue(pairs.residual(i) < 1e-8, "residual " + pairs.residual(i));
            }
        }
    }

    /** Symmetric elements of any sign. */
    private static Elements anySign(int count, int d, long seed) {
        Elements one = SparseSolverContract.random(count, d, seed), two = SparseSolverContract.random(count, d, seed + 1);
        return (e, out) -> {
            double[] minus = new double[out.length];
            one.lowerTriangle(e, out);
            two.lowerTriangle(e, minus);
            for (int i = 0; i < out.length; i++) out[i] -= minus[i];
        };
    }

    private static Problem problem(int nx, int ny, int d) {
        SparseSolverContract.TestMesh mesh = SparseSolverContract.TestMesh.grid(nx, ny, new Random(5));
        int count = mesh.tri().length / 3;
        return new Problem(mesh, d, SparseSolverContract.random(count, d, 7), anySign(count, d, 11));
    }

    @Test
    void findsTheLargestOfAMatrixOfAnySign() {
        for (int[] size : new int[][] {{1, 1, 1}, {1, 1, 2}, {3, 3, 2}, {6, 6, 6}, {12, 8, 3}}) {
            Problem problem = problem(size[0], size[1], size[2]);
            double[] all = problem.all();
            Eigenpairs pairs = problem.largest(LIMITS);
            long positive = Arrays.stream(all).filter(v -> v > 0).count();
            assertEquals(Math.min(4, positive), pairs.count(), Arrays.toString(size));
            for (int i = 0; i < pairs.count(); i++) assertEquals(all[i], pairs.value(i), 1e-9 * all[0], Arrays.toString(size) + " " + i);
            problem.pairsAreTrue(pairs);
            assertTrue(pairs.converged());
        }
    }

    @Test
    void goesOnThroughRestarts() {
        Problem problem = problem(14, 12, 3);
        Eigenpairs.Limits tight = new Eigenpairs.Limits(8, 14, 1e-9, 2000, true);
        Eigenpairs pairs = problem.largest(tight);
        double[] all = problem.all();
        assertEquals(8, pairs.count());
        for (int i = 0; i < 8; i++) assertEquals(all[i], pairs.value(i), 1e-9 * all[0]);
        problem.pairsAreTrue(pairs);
        assertTrue(pairs.steps() > 30, "restarted: " + pairs.steps() + " steps with a basis of 14");
    }

    /** Two sheets apart, the same numbers on both: every eigenvalue twice, and one start sees each but once. */
    @Test
    void findsBothOfADoubleEigenvalue() {
        SparseSolverContract.TestMesh one = SparseSolverContract.TestMesh.grid(5, 4, new Random(5));
        int nodes = one.nodes(), count = one.tri().length / 3;
        double[] xyz = Arrays.copyOf(one.xyz(), 2 * one.xyz().length);
        int[] tri = Arrays.copyOf(one.tri(), 2 * one.tri().length);
        for (int i = 0; i < one.xyz().length; i++) xyz[one.xyz().length + i] = one.xyz()[i] + 50;
        for (int i = 0; i < one.tri().length; i++) tri[one.tri().length + i] = one.tri()[i] + nodes;
        Elements k = SparseSolverContract.random(count, 2, 7), a = anySign(count, 2, 11);
        Problem twice = new Problem(new SparseSolverContract.TestMesh(xyz, tri), 2, (e, out) -> k.lowerTriangle(e % count, out),
                (e, out) -> a.lowerTriangle(e % count, out));
        double[] all = twice.all();
        assertEquals(all[0], all[1], 1e-12 * all[0]);
        Eigenpairs pairs = twice.largest(LIMITS);
        assertEquals(4, pairs.count());
        for (int i = 0; i < 4; i++) assertEquals(all[i], pairs.value(i), 1e-9 * all[0], "number " + i);
        twice.pairsAreTrue(pairs);
    }

    @Test
    void findsNoneWhereNoneIsPositive() {
        Problem problem = problem(4, 4, 2);
        Problem below = new Problem(problem.mesh(), 2, problem.k(), (e, out) -> {
            problem.k().lowerTriangle(e, out);
            for (int i = 0; i < out.length; i++) out[i] = -out[i];
        });
        assertEquals(0, below.largest(LIMITS).count());
        Problem nothing = new Problem(problem.mesh(), 2, problem.k(), (e, out) -> Arrays.fill(out, 0));
        assertEquals(0, nothing.largest(LIMITS).count());
    }

    @Test
    void keepsItsBitsAndSaysWhenItDidNotFinish() {
        Problem problem = problem(10, 10, 3);
        assertArrayEquals(problem.largest(LIMITS).vector(0), problem.largest(LIMITS).vector(0));
        Eigenpairs few = problem.largest(new Eigenpairs.Limits(4, 48, 1e-12, 8, true));
        assertTrue(!few.converged() && few.steps() <= 8);
        assertThrows(CancellationException.class, () -> Eigenpairs.largest(3, (x, y) -> System.arraycopy(x, 0, y, 0, 3),
                (x, y) -> System.arraycopy(x, 0, y, 0, 3), LIMITS, () -> true));
        assertThrows(IllegalArgumentException.class, () -> new Eigenpairs.Limits(0, 48, 1e-7, 400, true));
        assertThrows(IllegalArgumentException.class, () -> new Eigenpairs.Limits(4, 5, 1e-7, 400, true));
    }
}
