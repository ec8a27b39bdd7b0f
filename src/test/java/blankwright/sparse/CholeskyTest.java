package blankwright.sparse;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;

/** Our own solver against the contract. */
final class CholeskyTest extends SparseSolverContract {
    @Override double[] solve(TestMesh mesh, int unknowns, Elements elements, double shift, double[] b) {
        Cholesky solver = new Cholesky(mesh.nodes(), mesh.tri(), mesh.xyz(), unknowns);
        double[] x = new double[b.length];
        if (!solver.factor(elements, shift, () -> false)) return null;
        solver.solve(b, x);
        return x;
    }

    @Test
    void factorsAgainWithOtherNumbersAndAfterAFailure() {
        TestMesh mesh = TestMesh.grid(30, 30, new Random(5));
        Cholesky solver = new Cholesky(mesh.nodes(), mesh.tri(), mesh.xyz(), 2);
        Elements one = random(mesh.tri().length / 3, 2, 1), two = random(mesh.tri().length / 3, 2, 2);
        double[] known = randomVector(2 * mesh.nodes(), 3), x = new double[known.length];
        assertTrue(solver.factor(one, 0, () -> false));
        assertFalse(solver.factor((e, out) -> { }, 0, () -> false), "nothing on the diagonal");
        assertTrue(solver.factor(two, 0, () -> false));
        solver.solve(times(mesh, 2, two, 0, known), x);
        assertArrayEquals(known, x, 1e-8);
    }

    @Test
    void stopsWhenCancelled() {
        TestMesh mesh = TestMesh.grid(100, 100, new Random(5));
        Cholesky solver = new Cholesky(mesh.nodes(), mesh.tri(), mesh.xyz(), 2);
        Elements one = random(mesh.tri().length / 3, 2, 1);
        assertThrows(CancellationException.class, () -> solver.factor(one, 0, () -> true));
    }

    @Test
    void residualStaysAtRoundingOnALargeGrid() {
        TestMesh mesh = TestMesh.grid(150, 150, new Random(5));
        Elements elements = random(mesh.tri().length / 3, 2, 7);
        double[] known = randomVector(2 * mesh.nodes(), 8), b = times(mesh, 2, elements, 0, known);
        double[] again = times(mesh, 2, elements, 0, solve(mesh, 2, elements, 0, b));
        double worst = 0, largest = 0;
        for (int i = 0; i < b.length; i++) {
            worst = Math.max(worst, Math.abs(again[i] - b[i]));
            largest = Math.max(largest, Math.abs(b[i]));
        }
        assertTrue(worst < 1e-14 * largest, "residual " + worst / largest);
    }

    /** What the order is for: numbers in the factor grow like n log n, not like n². */
    @Test
    void fillsInLittleAlsoWhereThePlacesTellNothing() {
        TestMesh grid = TestMesh.grid(120, 120, new Random(5));
        double[] shuffled = grid.xyz().clone();
        Random random = new Random(6);
        for (int v = grid.nodes() - 1; v > 0; v--)
            for (int k = 0, w = random.nextInt(v + 1); k < 3; k++) {
                double keep = shuffled[3 * v + k];
                shuffled[3 * v + k] = shuffled[3 * w + k];
                shuffled[3 * w + k] = keep;
            }
        long good = size(grid), any = size(new TestMesh(shuffled, grid.tri())), heaped = size(grid.heaped());
        double n = grid.nodes(), nested = 4 * 31.0 / 8 * n * Math.log(n) / Math.log(2);     // [G73], from memory: 31/4 k² log2 k on a k x k grid
        assertTrue(good < nested, good + " against " + nested);
        assertTrue(any < 3 * good, any + " against " + good);
        assertTrue(heaped < 3 * good, heaped + " against " + good);
    }

    @Test
    void agreesWithTheLibrary() {
        TestMesh mesh = TestMesh.grid(40, 25, new Random(5));
        Elements elements = random(mesh.tri().length / 3, 2, 7);
        double[] b = randomVector(2 * mesh.nodes(), 9);
        assertArrayEquals(LibrarySolver.solve(mesh, 2, elements, 0.01, b), solve(mesh, 2, elements, 0.01, b), 1e-10);
    }

    private static long size(TestMesh mesh) {
        return new Cholesky(mesh.nodes(), mesh.tri(), mesh.xyz(), 2).factorSize();
    }

    @Test
    void findsTheSolutionOfALargeSystemWhosePlacesTellNothing() {
        TestMesh grid = TestMesh.grid(60, 60, new Random(5));
        TestMesh mesh = new TestMesh(randomVector(3 * grid.nodes(), 4), grid.tri());
        Elements elements = random(mesh.tri().length / 3, 2, 7);
        double[] known = randomVector(2 * mesh.nodes(), 8);
        assertArrayEquals(known, solve(mesh, 2, elements, 0, times(mesh, 2, elements, 0, known)), 1e-8);
    }
}
