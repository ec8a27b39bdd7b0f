package blankwright.sparse;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/**
 * Largest eigenvalues θ and their vectors of A x = θ K x, K symmetric positive definite, A symmetric and of any sign.
 *
 * <p>Buckling, (K + λ G) x = 0 with the least λ above 0, is this with A = -G and θ = 1/λ: only K is ever factorized, so nothing indefinite
 * is.
 * <p>Lanczos on K⁻¹A, which is symmetric in the inner product of K, each new vector made orthogonal to all kept ones; when the basis is
 * full it is cut back to the best vectors found and goes on from there. A vector found before the others of a multiple eigenvalue can hide
 * them, so after convergence a second start, orthogonal to all that was found, looks for what was missed until it finds nothing above the
 * last one wanted.
 * <p>K⁻¹A is applied once a step. The start vectors come from a fixed seed: same input, same bits.
 * <p>Error: θ relative about the square of {@link #residual} over the gap to its neighbours; vectors about the residual over the gap.
 * <p>Source: Ericsson and Ruhe, "The spectral transformation Lanczos method for the numerical solution of large sparse generalized
 * symmetric eigenvalue problems", 1980, docs/sources.md [ER80]; cutting back: Wu and Simon, "Thick-restart Lanczos method for large
 * symmetric eigenvalue problems", 2000, [WS00].
 */
public final class Eigenpairs {
    /** Writes into {@code to} what it makes of {@code from}; leaves {@code from} alone. */
    @FunctionalInterface
    public interface Action {
        void apply(double[] from, double[] to);
    }

    /**
     * When to stop.
     *
     * @param wanted pairs, at least 1
     * @param basis vectors kept at most; each takes two arrays of the length of the unknowns
     * @param tolerance of the residual, relative to θ, in the norm of K⁻¹
     * @param steps at most, over all restarts
     * @param multiple whether to look again for the others of a multiple eigenvalue
     */
    public record Limits(int wanted, int basis, double tolerance, int steps, boolean multiple) {
        public static final Limits DEFAULT = new Limits(4, 48, 1e-7, 400, true);

        public Limits {
            if (wanted < 1) throw new IllegalArgumentException(wanted + " pairs wanted: at least 1");
            if (basis < wanted + 4)
                throw new IllegalArgumentException("a basis of " + basis + " for " + wanted + " pairs: at least 4 more");
            if (!(tolerance > 0)) throw new IllegalArgumentException("tolerance " + tolerance + ": must be above 0");
        }

        public Limits withWanted(int pairs) {
            return new Limits(pairs, Math.max(basis, 2 * pairs + 8), tolerance, steps, multiple);
        }

        public Limits withTolerance(double relative) {
            return new Limits(wanted, basis, relative, steps, multiple);
        }

        public Limits withMultiple(boolean look) {
            return new Limits(wanted, basis, tolerance, steps, look);
        }
    }

    private static final int CHUNK = 1 << 12;           // numbers of each vector that stay in cache while all vectors pass by

    private final int n;
    private final Action a;
    private final Action inverse;
    private final Limits limits;
    private final BooleanSupplier cancelled;

    private final double[][] q;             // basis, orthonormal in K; the first `locked` are found, the rest of this run's
    private final double[][] kq;            // K times each
    private final double[][] t;             // projection of K⁻¹A on the basis
    private int steps;

    private double[] value = {};
    private double[][] vector = {};
    private double[] residual = {};
    private boolean converged;

    private Eigenpairs(int n, Action a, Action inverse, Limits limits, BooleanSupplier cancelled) {
        this.n = n;
        this.a = a;
        this.inverse = inverse;
        this.limits = limits;
        this.cancelled = cancelled;
        int room = limits.basis + limits.wanted + 1;
        q = new double[room][];
        kq = new double[room][];
        t = new double[room][room];
    }

    /**
     * @param n unknowns
     * @param a product with A; where unknowns are held it must neither read nor write them
     * @param inverse solves K x = b
     * @param cancelled asked at each step
     * @throws CancellationException once {@code cancelled} says so
     */
    public static Eigenpairs largest(int n, Action a, Action inverse, Limits limits, BooleanSupplier cancelled) {
        Eigenpairs pairs = new Eigenpairs(n, a, inverse, limits, cancelled);
        pairs.find();
        return pairs;
    }

    /** How many pairs with θ above 0 there are here: those wanted, or fewer where A has fewer. */
    public int count() {
        return value.length;
    }

    /** θ of pair i, largest first, above 0. */
    public double value(int i) {
        return value[i];
    }

    /** A copy of vector i, scaled to xᵀKx = 1; its sign is whatever came out. */
    public double[] vector(int i) {
        return vector[i].clone();
    }

    /** |A x - θ K x| in the norm of K⁻¹, over θ. */
    public double residual(int i) {
        return residual[i];
    }

    /** Whether all pairs given are within the tolerance. */
    public boolean converged() {
        return converged;
    }

    /** How often K⁻¹A was applied. */
    public int steps() {
        return steps;
    }

    private void find() {
        Random random = new Random(1);
        int found = 0;
        converged = true;
        while (true) {
            double last = found < limits.wanted ? 0 : t[limits.wanted - 1][limits.wanted - 1];
            int more = run(random, found, last);
            if (more == 0) break;
            found += more;
            sortFound(found);
            found = Math.min(found, limits.wanted);
            if (!converged || !limits.multiple) break;
        }
        value = new double[found];
        vector = new double[found][];
        residual = new double[found];
        for (int i = 0; i < found; i++) {
            value[i] = t[i][i];
            vector[i] = q[i];
            residual[i] = residualOf(i);
        }
    }

    /**
     * One run from a fresh start orthogonal to the first {@code locked} vectors, which are found already. Leaves what it finds above
     * {@code floor} behind them and says how many.
     */
    private int run(Random random, int locked, double floor) {
        double[] ritz = {};
        double[] r = new double[n], kr = new double[n];
        for (int i = 0; i < n; i++) r[i] = random.nextGaussian();
        a.apply(r, kr);
        inverse.apply(kr, r);
        double size = orthogonalize(r, kr, locked, null);
        int size0 = locked, m = locked, room = limits.basis + limits.wanted;
        double beta = size;
        for (int i = locked; i < t.length; i++) Arrays.fill(t[i], 0);
        double scale = 0;
        while (true) {
            if (!(beta > 1e-13 * scale) || beta == 0) break;                   // an invariant subspace: nothing further to find from this start
            store(m, r, kr, 1 / beta);
            if (cancelled.getAsBoolean()) throw new CancellationException();
            a.apply(q[m], kr);
            inverse.apply(kr, r);
            steps++;
            double[] row = new double[m + 1];
            beta = orthogonalize(r, kr, m + 1, row);
            for (int i = locked; i <= m; i++) t[m][i] = t[i][m] = row[i];
            m++;
            for (double x : row) scale = Math.max(scale, Math.abs(x));
            int inRun = m - locked;
            boolean full = m == room, stop = steps >= limits.steps;
            if (!full && !stop && inRun % 4 != 0 && beta > 1e-13 * scale) continue;
            double[][] s = new double[inRun][inRun];
            ritz = symmetricEigen(locked, m, s);
            int want = Math.max(1, Math.min(limits.wanted - (floor > 0 ? limits.wanted - 1 : locked), inRun));
            int good = 0;
            while (good < want && Math.abs(beta * s[good][inRun - 1]) <= limits.tolerance * Math.abs(ritz[good])) good++;
            boolean spent = !(beta > 1e-13 * scale);
            boolean hopeless = good == 0 && floor > 0 && inRun > 8 && ritz[0] + Math.abs(beta * s[0][inRun - 1]) < floor
                    && Math.abs(beta * s[0][inRun - 1]) < 0.1 * Math.abs(ritz[0]);
            if (good == want || spent || stop || hopeless) {
                if (stop && good < want && !spent) converged = false;
                return keepBest(locked, m, ritz, s, want, floor);
            }
            if (full) {
                int keep = Math.min(inRun - 3, want + (inRun - want) / 3);
                rotate(locked, m, s, keep);
                for (int i = locked; i < t.length; i++) Arrays.fill(t[i], 0);
                for (int i = 0; i < keep; i++) t[locked + i][locked + i] = ritz[i];
                m = locked + keep;
            }
        }
        if (m == size0) return 0;
        double[][] s = new double[m - locked][m - locked];
        ritz = symmetricEigen(locked, m, s);
        return keepBest(locked, m, ritz, s, Math.min(m - locked, limits.wanted), floor);
    }

    private int keepBest(int locked, int m, double[] ritz, double[][] s, int want, double floor) {
        int keep = 0;
        while (keep < want && keep < ritz.length && ritz[keep] > Math.max(0, floor * (1 + 1e-9))) keep++;
        rotate(locked, m, s, keep);
        for (int i = 0; i < keep; i++) {
            Arrays.fill(t[locked + i], 0);
            t[locked + i][locked + i] = ritz[i];
        }
        return keep;
    }

    /** Largest first, by exchanging vectors; only the wanted ones are kept. */
    private void sortFound(int found) {
        for (int i = 0; i < found; i++)
            for (int j = i + 1; j < found; j++)
                if (t[j][j] > t[i][i]) {
                    double x = t[i][i];
                    t[i][i] = t[j][j];
                    t[j][j] = x;
                    double[] v = q[i];
                    q[i] = q[j];
                    q[j] = v;
                    v = kq[i];
                    kq[i] = kq[j];
                    kq[j] = v;
                }
    }

    private void store(int m, double[] r, double[] kr, double factor) {
        if (q[m] == null) {
            q[m] = new double[n];
            kq[m] = new double[n];
        }
        for (int i = 0; i < n; i++) {
            q[m][i] = r[i] * factor;
            kq[m][i] = kr[i] * factor;
        }
    }

    /**
     * Takes the first m basis vectors out of r, again where little is left after the first time; adds what was taken to {@code row}; returns
     * the length of what is left.
     */
    private double orthogonalize(double[] r, double[] kr, int m, double[] row) {
        double before = Math.sqrt(Math.max(0, dot(r, kr)));
        for (int pass = 0; ; pass++) {
            double[] c = new double[m];
            IntStream.range(0, m).parallel().forEach(j -> c[j] = dot(r, kq[j]));
            IntStream.range(0, (n + CHUNK - 1) / CHUNK).parallel().forEach(chunk -> {
                int from = chunk * CHUNK, to = Math.min(n, from + CHUNK);
                for (int j = 0; j < m; j++) {
                    subtract(r, c[j], q[j], from, to);
                    subtract(kr, c[j], kq[j], from, to);
                }
            });
            if (row != null) for (int j = 0; j < m; j++) row[j] += c[j];
            double after = Math.sqrt(Math.max(0, dot(r, kr)));
            if (pass == 2 || after > 0.5 * before) return after;
            before = after;
        }
    }

    /** Replaces basis vectors from..to-1 by their first {@code keep} combinations s. */
    private void rotate(int from, int to, double[][] s, int keep) {
        for (double[][] basis : new double[][][] {q, kq})
            IntStream.range(0, (n + CHUNK - 1) / CHUNK).parallel().forEach(chunk -> {
                double[] old = new double[to - from];
                for (int i = chunk * CHUNK; i < Math.min(n, (chunk + 1) * CHUNK); i++) {
                    for (int j = 0; j < old.length; j++) old[j] = basis[from + j][i];
                    for (int k = 0; k < keep; k++) {
                        double sum = 0;
                        for (int j = 0; j < old.length; j++) sum += s[k][j] * old[j];
                        basis[from + k][i] = sum;
                    }
                }
            });
    }

    private double residualOf(int i) {
        double[] r = new double[n], kr = new double[n];
        a.apply(q[i], kr);
        for (int j = 0; j < n; j++) kr[j] -= t[i][i] * kq[i][j];
        inverse.apply(kr, r);
        return Math.sqrt(Math.max(0, dot(r, kr))) / Math.abs(t[i][i]);
    }

    /** Eigenvalues of t[from..to-1], largest first; vectors in the rows of s. By Jacobi rotations [GVL13]. */
    private double[] symmetricEigen(int from, int to, double[][] s) {
        int m = to - from;
        double[][] b = new double[m][m], v = new double[m][m];
        for (int i = 0; i < m; i++) {
            for (int j = 0; j < m; j++) b[i][j] = t[from + i][from + j];
            v[i][i] = 1;
        }
        for (int sweep = 0; sweep < 40; sweep++) {
            double off = 0, on = 0;
            for (int i = 0; i < m; i++)
                for (int j = 0; j < m; j++) {
                    if (i == j) on += b[i][i] * b[i][i];
                    else off += b[i][j] * b[i][j];
                }
            if (off <= 1e-32 * on) break;
            for (int i = 0; i < m; i++)
                for (int j = i + 1; j < m; j++) turn(b, v, i, j);
        }
        Integer[] order = new Integer[m];
        for (int i = 0; i < m; i++) order[i] = i;
        Arrays.sort(order, (i, j) -> Double.compare(b[j][j], b[i][i]));
        double[] values = new double[m];
        for (int i = 0; i < m; i++) {
            values[i] = b[order[i]][order[i]];
            for (int j = 0; j < m; j++) s[i][j] = v[j][order[i]];
        }
        return values;
    }

    private static void turn(double[][] b, double[][] v, int i, int j) {
        if (b[i][j] == 0) return;
        double tau = (b[j][j] - b[i][i]) / (2 * b[i][j]);
        double tan = Math.copySign(1 / (Math.abs(tau) + Math.sqrt(tau * tau + 1)), tau);
        double c = 1 / Math.sqrt(tan * tan + 1), s = tan * c;
        for (double[] row : b) {
            double x = row[i], y = row[j];
            row[i] = c * x - s * y;
            row[j] = s * x + c * y;
        }
        for (int k = 0; k < b.length; k++) {
            double x = b[i][k], y = b[j][k];
            b[i][k] = c * x - s * y;
            b[j][k] = s * x + c * y;
        }
        for (double[] row : v) {
            double x = row[i], y = row[j];
            row[i] = c * x - s * y;
            row[j] = s * x + c * y;
        }
    }

    private static double dot(double[] x, double[] y) {
        double s0 = 0, s1 = 0, s2 = 0, s3 = 0;
        int i = 0;
        for (; i + 3 < x.length; i += 4) {
            s0 += x[i] * y[i];
            s1 += x[i + 1] * y[i + 1];
            s2 += x[i + 2] * y[i + 2];
            s3 += x[i + 3] * y[i + 3];
        }
        for (; i < x.length; i++) s0 += x[i] * y[i];
        return s0 + s1 + (s2 + s3);
    }

    private static void subtract(double[] y, double c, double[] x, int from, int to) {
        for (int i = from; i < to; i++) y[i] -= c * x[i];
    }
}
