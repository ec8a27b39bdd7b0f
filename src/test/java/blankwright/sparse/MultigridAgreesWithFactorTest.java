package blankwright.sparse;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

/** A square plate of plane triangles, held by a spring at every node; its coarser mesh has every other row and column. */
class MultigridAgreesWithFactorTest {
    private static final int N = 48;                      // cells a side, even

    private final int[] fine = grid(N), coarse = grid(N / 2);
    private final Elements stiff = plate(fine), stiffCoarse = plate(coarse);
    private final double[] load = new Random(7).doubles(2 * (N + 1) * (N + 1), -1, 1).toArray();

    private static int[] grid(int n) {
        int[] tri = new int[6 * n * n];
        for (int i = 0, c = 0; i < n; i++)
            for (int j = 0; j < n; j++) {
                int v = i * (n + 1) + j;
                for (int w : new int[] {v, v + n + 1, v + n + 2, v, v + n + 2, v + 1}) tri[c++] = w;
            }
        return tri;
    }

    /** |sym grad u|² of right-angled triangles; by stretch along rows and columns and shear, each a row of b, scaled a little at random. */
    private static Elements plate(int[] tri) {
        double[] weight = new Random(5).doubles(tri.length / 3, 0.8, 1.2).toArray();
        double[][] first = {{-1, 0, 1, 0, 0, 0}, {0, 0, 0, -1, 0, 1}, {0, -0.7, -0.7, 0.7, 0.7, 0}};
        double[][] second = {{0, 0, 1, 0, -1, 0}, {0, -1, 0, 0, 0, 1}, {-0.7, 0, 0, 0.7, 0.7, -0.7}};
        return (e, out) -> {
            double[][] b = e % 2 == 0 ? first : second;
            for (int i = 0, s = 0; i < 6; i++)
                for (int j = 0; j <= i; j++, s++) out[s] = weight[e] * (b[0][i] * b[0][j] + b[1][i] * b[1][j] + b[2][i] * b[2][j]);
        };
    }

    /** From n cells a side to half as many. */
    private static Transfer halving(int cells) {
        int n = cells / 2, m = cells + 1;
        int[] parent = new int[3 * m * m];
        double[] weight = new double[3 * m * m];
        for (int i = 0; i < m; i++)
            for (int j = 0; j < m; j++) {
                int v = 3 * (i * m + j), a = i / 2 * (n + 1) + j / 2, b = (i + 1) / 2 * (n + 1) + (j + 1) / 2;
                parent[v] = a;
                parent[v + 1] = b;
                weight[v] = weight[v + 1] = 0.5;
            }
        return new Transfer((n + 1) * (n + 1), parent, weight);
    }

    private Multigrid multigrid() {
        double[] places = new double[3 * (N / 2 + 1) * (N / 2 + 1)];
        for (int v = 0; v < places.length / 3; v++) {
            places[3 * v] = v / (N / 2 + 1);
            places[3 * v + 1] = v % (N / 2 + 1);
        }
        Multigrid solver = new Multigrid(List.of(new BlockRows((N + 1) * (N + 1), fine)), List.of(halving(N)),
                new Cholesky(places.length / 3, coarse, places, 2));
        assertTrue(solver.fill(List.of(stiff, stiffCoarse), new double[] {0.01, 0.04}, List.of(), () -> false));
        return solver;
    }

    private double[] byFactor() {
        double[] places = new double[3 * (N + 1) * (N + 1)];
        for (int v = 0; v < places.length / 3; v++) {
            places[3 * v] = v / (N + 1);
            places[3 * v + 1] = v % (N + 1);
        }
        Cholesky solver = new Cholesky(places.length / 3, fine, places, 2);
        assertTrue(solver.factor(stiff, 0.01, () -> false));
        double[] x = new double[load.length];
        solver.solve(load, x);
        return x;
    }

    @Test void toElevenDigits() {
        double[] x = new double[load.length], truth = byFactor();
        Multigrid solver = multigrid();
        double left = solver.solve(load, x, 1e-13, 0, 80, () -> false);
        assertTrue(left <= 1e-13, "left " + left);
        assertArrayEquals(truth, x, 1e-11);
        assertTrue(solver.iterations() < 40, solver.iterations() + " iterations: a cycle should take a good half off");
    }

    @Test void multipliesAsTheElementsDo() {
        BlockRows rows = new BlockRows((N + 1) * (N + 1), fine);
        assertTrue(rows.fill(stiff, 0.01));
        double[] y = new double[load.length], slow = new double[load.length], block = new double[21];
        rows.multiply(load, y);
        for (int i = 0; i < slow.length; i++) slow[i] = 0.01 * load[i];
        for (int e = 0; e < fine.length / 3; e++) {
            stiff.lowerTriangle(e, block);
            for (int i = 0, s = 0; i < 6; i++)
                for (int j = 0; j <= i; j++, s++) {
                    int r = 2 * fine[3 * e + i / 2] + i % 2, c = 2 * fine[3 * e + j / 2] + j % 2;
                    slow[r] += block[s] * load[c];
                    if (i != j) slow[c] += block[s] * load[r];
                }
        }
        assertArrayEquals(slow, y, 1e-12);
    }

    @Test void whatASweepLeavesIsTheResidual() {
        BlockRows rows = new BlockRows((N + 1) * (N + 1), fine);
        assertTrue(rows.fill(stiff, 0.01));
        double[] x = new double[load.length], left = new double[load.length], product = new double[load.length];
        rows.forward(load, x);
        rows.leftByForward(x, left);
        rows.multiply(x, product);
        for (int i = 0; i < left.length; i++) left[i] += product[i];
        assertArrayEquals(load, left, 1e-12);
    }

    @Test void aSweepBackFromWhereverSolvesTheLaterRowsAndTellsTheProduct() {
        BlockRows rows = new BlockRows((N + 1) * (N + 1), fine);
        assertTrue(rows.fill(stiff, 0.01));
        int n = load.length;
        double[] x = new Random(3).doubles(n, -1, 1).toArray(), y = new double[n], p = new Random(4).doubles(n, -1, 1).toArray(), q = new double[n];
        double[] before = p.clone(), product = new double[n];
        rows.multiply(p, q);
        double by = rows.backward(load, x, y), pq = rows.onward(load, x, y, 0.7, p, q), b = 0, c = 0;
        rows.multiply(p, product);
        for (int i = 0; i < n; i++) {
            b += load[i] * y[i];
            c += p[i] * product[i];
            assertEquals(y[i] + 0.7 * before[i], p[i], 1e-15 * n);
        }
        assertArrayEquals(product, q, 1e-12);
        assertEquals(b, by, 1e-9);
        assertEquals(c, pq, 1e-9);
        double[] again = new double[n];
        rows.backward(load, y, again);                    // what solves its row but for the earlier ones does so once more, only nearer
        double first = 0, second = 0;
        for (int i = 0; i < n; i++) {
            first += Math.pow(y[i] - x[i], 2);
            second += Math.pow(again[i] - y[i], 2);
        }
        assertTrue(second < first / 2, "the second sweep moves as far as the first: " + first + ", " + second);
    }

    @Test void upAndDownAreTransposes() {
        Transfer halving = halving(N);
        double[] c = new Random(1).doubles(2 * halving.coarse()).toArray(), f = new double[load.length], down = new double[c.length];
        halving.up(c, f);
        halving.down(load, down);
        double a = 0, b = 0;
        for (int i = 0; i < f.length; i++) a += f[i] * load[i];
        for (int i = 0; i < c.length; i++) b += c[i] * down[i];
        assertEquals(a, b, 1e-10);
    }

    @Test void aCycleOverThreeMeshesIsSymmetricAndTakesAGoodHalfOff() {
        int[] coarsest = grid(N / 4);
        double[] places = new double[3 * (N / 4 + 1) * (N / 4 + 1)];
        for (int v = 0; v < places.length / 3; v++) {
            places[3 * v] = v / (N / 4 + 1);
            places[3 * v + 1] = v % (N / 4 + 1);
        }
        Multigrid solver = new Multigrid(List.of(new BlockRows((N + 1) * (N + 1), fine), new BlockRows((N / 2 + 1) * (N / 2 + 1), coarse)),
                List.of(halving(N), halving(N / 2)), new Cholesky(places.length / 3, coarsest, places, 2));
        assertTrue(solver.fill(List.of(stiff, stiffCoarse, plate(coarsest)), new double[] {0.01, 0.04, 0.16}, List.of(), () -> false));
        double[] other = new Random(8).doubles(load.length, -1, 1).toArray(), ofLoad = new double[load.length], ofOther = new double[load.length];
        solver.cycle(load, ofLoad);
        solver.cycle(other, ofOther);
        double a = 0, b = 0;
        for (int i = 0; i < load.length; i++) {
            a += other[i] * ofLoad[i];
            b += load[i] * ofOther[i];
        }
        assertEquals(a, b, 1e-10 * Math.abs(a));
        double[] x = new double[load.length];
        assertTrue(solver.solve(load, x, 1e-13, 0, 40, () -> false) <= 1e-13);
        assertArrayEquals(byFactor(), x, 1e-11);
    }

    @Test void sameBitsOnOneAndManyThreads() throws Exception {
        double[] one = new double[load.length], many = new double[load.length];
        new ForkJoinPool(1).submit(() -> multigrid().solve(load, one, 1e-6, 0, 50, () -> false)).get();
        new ForkJoinPool(8).submit(() -> multigrid().solve(load, many, 1e-6, 0, 50, () -> false)).get();
        assertArrayEquals(one, many, 0);
    }

    @Test void aMatrixThatIsNotPositiveIsSaidToBeSo() {
        BlockRows rows = new BlockRows((N + 1) * (N + 1), fine);
        Elements negative = (e, out) -> {
            stiff.lowerTriangle(e, out);
            for (int s = 0; s < out.length; s++) out[s] = -out[s];
        };
        assertTrue(!rows.fill(negative, 0.01));
    }
}
