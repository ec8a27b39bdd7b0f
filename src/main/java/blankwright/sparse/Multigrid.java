package blankwright.sparse;

import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.List;

/**
 * Solves A x = b, a sum of elements on a mesh, by conjugate gradients with one multigrid cycle over coarser meshes as preconditioner.
 *
 * <p>A cycle: a forward Gauss-Seidel sweep, the rest solved on the coarser mesh, a backward sweep; on the coarsest mesh a factor. The coarser
 * matrices are those of the coarser meshes themselves, so that every level is filled the same way. Cost in proportion to the unknowns where
 * the levels shrink by a constant share. Same bits on any number of threads. Not for use by two threads at once.
 * <p>Source: Brandt, "Multi-level adaptive solutions to boundary-value problems", 1977; Hestenes and Stiefel 1952; docs/sources.md [B77], [HS52].
 */
public final class Multigrid {
    private final List<BlockRows> rows;                   // finest first
    private final List<Transfer> transfers;               // from each of them to the next coarser
    private final Cholesky coarsest;
    private final double[][] b, y, x, r;                  // of each level: what is to be solved for, the answer, that before the last sweep, what is left of b
    private List<double[]> free = List.of();
    private int iterations;

    /**
     * @param rows of each level but the coarsest, finest first
     * @param transfers of each of them to the next coarser
     * @param coarsest solver of the coarsest level, 2 unknowns a node
     */
    public Multigrid(List<BlockRows> rows, List<Transfer> transfers, Cholesky coarsest) {
        this.rows = rows;
        this.transfers = transfers;
        this.coarsest = coarsest;
        int n = rows.size();
        b = new double[n + 1][];
        y = new double[n + 1][];
        x = new double[n][];
        r = new double[n][];
        for (int l = 0; l < n; l++) {
            x[l] = new double[2 * rows.get(l).rows()];
            r[l] = new double[2 * rows.get(l).rows()];
            b[l + 1] = new double[2 * transfers.get(l).coarse()];
            y[l + 1] = new double[2 * transfers.get(l).coarse()];
        }
    }

    /**
     * Fills all levels.
     *
     * @param elements of each level, finest first
     * @param shift added on the diagonal of each
     * @param free orthonormal vectors of the coarsest level that its matrix hardly resists, as rigid motions: kept out of what comes from
     *             there, for rounding and the coarser shape would bring them in magnified
     * @return false where a matrix is not positive
     */
    public boolean fill(List<Elements> elements, double[] shift, List<double[]> free, BooleanSupplier cancelled) {
        this.free = free;
        for (int l = 0; l < rows.size(); l++) {
            if (cancelled.getAsBoolean()) throw new CancellationException();
            if (!rows.get(l).fill(elements.get(l), shift[l])) return false;
        }
        return coarsest.factor(elements.get(rows.size()), shift[rows.size()], cancelled);
    }

    public int iterations() {
        return iterations;
    }

    /**
     * Solves until the residual, measured by the preconditioner, has fallen to {@code tolerance} of what it was, or its square to {@code worth},
     * but for one iteration at least.
     *
     * @param out the last iterate; for a right-hand side that is not zero it points downhill, bᵀ out > 0
     * @return what is left of the residual, relative, after {@code limit} iterations at most; 0 where its square is below {@code worth}; +∞
     *         where the matrix shows itself not positive
     */
    public double solve(double[] b, double[] out, double tolerance, double worth, int limit, BooleanSupplier cancelled) {
        BlockRows a = rows.get(0);
        double[] left = b.clone(), z = new double[b.length], p = new double[b.length], q = new double[b.length];
        Arrays.fill(out, 0);
        double first = 0, before = 0;
        for (iterations = 0; ; iterations++) {
            if (cancelled.getAsBoolean()) throw new CancellationException();
            double now = cycle(left, z);
            if (iterations == 0) first = now;
            if (!(now >= 0 && now < Double.POSITIVE_INFINITY)) return Double.POSITIVE_INFINITY;
            if (now == 0 || iterations > 0 && now <= worth) return 0;
            if (iterations == limit || now <= tolerance * tolerance * first) return Math.sqrt(now / first);
            double beta = iterations == 0 ? 0 : now / before;
            before = now;
            double curvature = a.onward(left, x[0], z, beta, p, q);
            if (!(curvature > 0)) return Double.POSITIVE_INFINITY;
            double alpha = now / curvature;
            a.overChunks((from, to) -> {
                for (int i = 2 * from; i < 2 * to; i++) {
                    out[i] += alpha * p[i];
                    left[i] -= alpha * q[i];
                }
            });
        }
    }

    /** One cycle from zero: z is about A⁻¹ b, by a matrix that is symmetric, as conjugate gradients need it. Returns b·z. */
    double cycle(double[] b, double[] z) {
        return cycle(0, b, z);
    }

    private double cycle(int level, double[] b, double[] z) {
        BlockRows a = rows.get(level);
        a.forward(b, x[level]);
        a.leftByForward(x[level], r[level]);
        transfers.get(level).down(r[level], this.b[level + 1]);
        if (level + 1 < rows.size()) cycle(level + 1, this.b[level + 1], y[level + 1]);
        else byFactor(this.b[level + 1], y[level + 1]);
        transfers.get(level).up(y[level + 1], x[level]);
        return a.backward(b, x[level], z);
    }

    private void byFactor(double[] b, double[] z) {
        withoutFree(b);
        coarsest.solve(b, z);
        withoutFree(z);
    }

    private void withoutFree(double[] b) {
        for (double[] f : free) {
            double part = 0;
            for (int i = 0; i < b.length; i++) part += f[i] * b[i];
            for (int i = 0; i < b.length; i++) b[i] -= part * f[i];
        }
    }
}
