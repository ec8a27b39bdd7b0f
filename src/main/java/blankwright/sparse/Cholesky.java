package blankwright.sparse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.RecursiveAction;
import java.util.function.BooleanSupplier;

/**
 * Factors a symmetric positive definite sum of elements, A = LᵀL in the order of elimination reversed, and solves with it.
 *
 * <p>Multifrontal: each front is a small dense matrix, assembled from its elements and from what its children left over, its own nodes
 * eliminated, the rest handed up. A front is an array of separate rows, row i holding columns 0..i, eliminated from the last row down, so
 * that every inner loop runs along whole rows; four rows are subtracted at a time, which is the form the Java compiler turns into vector
 * instructions.
 * <p>The pattern is found once; {@link #factor} may be called often with other numbers. The bits of a result do not depend on the number
 * of threads: every sum has one fixed order. Not for use by two threads at once.
 * <p>Error: backward stable; residual below 1e-14 of the right-hand side on 45 000 unknowns (CholeskyTest).
 * <p>Source: Duff and Reid, "The multifrontal solution of indefinite sparse symmetric linear equations", 1983; docs/sources.md [DR83].
 */
public final class Cholesky {
    private static final int PANEL = 32;                  // pivots whose rows stay in cache while all other rows are updated
    private static final long FORK_ABOVE = 500_000;       // multiplications (one unknown a node) below which a subtree is one task
    private static final long PASS_ABOVE = 20_000_000;    // the same for solving, which does little with each number
    private static final long SPLIT_ABOVE = 1_000_000;    // multiply-adds of one trailing update above which its rows are shared out

    private final Fronts fronts;
    private final int d;                                  // unknowns a node
    private final double[][][] factor;                    // front -> its pivot rows, in list order
    private final double[][][] leftover;                  // front -> rows handed to the parent, null once taken
    private final double[][] carried;                     // front -> what its pivots take from the unknowns above, while solving
    private final int longestList;
    private volatile boolean failed;                      // a pivot was not positive, or nobody wants the result
    private volatile boolean unwanted;

    private Elements elements;
    private double shift;
    private BooleanSupplier cancelled;

    /**
     * @param nodes how many
     * @param tri 3 nodes per element
     * @param xyz 3 per node: places, used only to find a good order
     * @param unknowns a node has, e.g. 2 for a flat position
     */
    public Cholesky(int nodes, int[] tri, double[] xyz, int unknowns) {
        fronts = new Fronts(nodes, tri, Dissection.of(Adjacency.start(nodes, tri), Adjacency.of(nodes, tri), xyz));
        d = unknowns;
        factor = new double[fronts.count][][];
        leftover = new double[fronts.count][][];
        carried = new double[fronts.count][];
        longestList = Arrays.stream(fronts.list).mapToInt(l -> l.length).max().orElse(0);
    }

    /** Numbers in the factor, for judging memory. */
    public long factorSize() {
        long sum = 0;
        for (int f = 0; f < fronts.count; f++) {
            long m = (long) fronts.list[f].length * d, b = m - (long) fronts.pivots[f] * d;
            sum += (m * (m + 1) - b * (b + 1)) / 2;
        }
        return sum;
    }

    /**
     * Factors the sum of the elements plus {@code shift} on the diagonal, in place of any factor held before.
     *
     * @param cancelled asked before each large front
     * @return whether all pivots were positive; if not, the factor is unusable
     * @throws CancellationException once {@code cancelled} says so
     */
    public boolean factor(Elements elements, double shift, BooleanSupplier cancelled) {
        this.elements = elements;
        this.shift = shift;
        this.cancelled = cancelled;
        failed = unwanted = false;
        for (int f = 0; f < fronts.count; f++) {
            if (fronts.parent[f] < 0) ForkJoinPool.commonPool().invoke(new Subtree(f));
        }
        Arrays.fill(leftover, null);
        this.elements = null;
        if (unwanted) throw new CancellationException();
        return !failed;
    }

    private final class Subtree extends RecursiveAction {
        private static final long serialVersionUID = 1;
        private final int front;

        Subtree(int front) {
            this.front = front;
        }

        @Override protected void compute() {
            if (failed) return;
            if (fronts.work[front] * d * d * d < FORK_ABOVE) {
                eliminateBelow(front, new double[3 * d * (3 * d + 1) / 2]);
                return;
            }
            if (cancelled.getAsBoolean()) {
                failed = unwanted = true;
                return;
            }
            int n = 0;
            for (int c = fronts.firstChild[front]; c >= 0; c = fronts.nextSibling[c]) n++;
            Subtree[] below = new Subtree[n];
            n = 0;
            for (int c = fronts.firstChild[front]; c >= 0; c = fronts.nextSibling[c]) below[n++] = new Subtree(c);
            invokeAll(below);
            if (!failed) eliminate(front, new double[3 * d * (3 * d + 1) / 2]);
        }
    }

    private void eliminateBelow(int f, double[] scratch) {
        for (int c = fronts.firstChild[f]; c >= 0; c = fronts.nextSibling[c]) eliminateBelow(c, scratch);
        if (!failed) eliminate(f, scratch);
    }

    private void eliminate(int f, double[] scratch) {
        int m = fronts.list[f].length * d, rest = m - fronts.pivots[f] * d;
        double[][] row = new double[m][];
        for (int i = 0; i < rest; i++) row[i] = new double[i + 1];
        double[][] own = factor[f];
        if (own == null) {
            own = new double[m - rest][];
            for (int i = rest; i < m; i++) own[i - rest] = new double[i + 1];
            factor[f] = own;
        } else {
            for (double[] r : own) Arrays.fill(r, 0);
        }
        System.arraycopy(own, 0, row, rest, m - rest);
        addElements(f, row, scratch);
        for (int c = fronts.firstChild[f]; c >= 0; c = fronts.nextSibling[c]) addLeftover(c, row);
        for (int i = rest; i < m; i++) row[i][i] += shift;
        for (int high = m; high > rest; high -= PANEL) {
            int low = Math.max(rest, high - PANEL);
            for (int p = high - 1; p >= low; p--) {
                subtract(row, p, p + 1, high);
                double pivot = row[p][p];
                if (!(pivot > 0) || pivot == Double.POSITIVE_INFINITY) {
                    failed = true;
                    return;
                }
                double scale = 1 / Math.sqrt(pivot);
                double[] r = row[p];
                for (int j = 0; j <= p; j++) r[j] *= scale;
            }
            update(row, low, high);
        }
        leftover[f] = rest == 0 ? null : row;
    }

    /** Subtracts the pivot rows low..high-1 from all rows above them, shared out if that is much work. */
    private static void update(double[][] row, int low, int high) {
        if ((long) low * low / 2 * (high - low) < SPLIT_ABOVE) {
            for (int i = 0; i < low; i++) subtract(row, i, low, high);
            return;
        }
        new Trailing(row, low, high, 0, low).invoke();
    }

    private static final class Trailing extends RecursiveAction {
        private static final long serialVersionUID = 1;
        private final transient double[][] row;
        private final int low, high, from, to;

        Trailing(double[][] row, int low, int high, int from, int to) {
            this.row = row;
            this.low = low;
            this.high = high;
            this.from = from;
            this.to = to;
        }

        @Override protected void compute() {
            long cost = ((long) to * to - (long) from * from) / 2 * (high - low);
            if (cost < SPLIT_ABOVE / 2 || to - from < 2) {
                for (int i = from; i < to; i++) subtract(row, i, low, high);
                return;
            }
            int middle = Math.min(to - 1, Math.max(from + 1, (int) Math.sqrt(((double) from * from + (double) to * to) / 2)));
            invokeAll(new Trailing(row, low, high, from, middle), new Trailing(row, low, high, middle, to));
        }
    }

    /** row i -= sum over q = low..high-1 of row[q][i] row q, four at a time from the last. */
    private static void subtract(double[][] row, int i, int low, int high) {
        double[] r = row[i];
        int q = high - 1;
        for (; q >= low + 3; q -= 4)
            subtract4(r, row[q], row[q - 1], row[q - 2], row[q - 3], row[q][i], row[q - 1][i], row[q - 2][i], row[q - 3][i], i + 1);
        for (; q >= low; q--) subtract1(r, row[q], row[q][i], i + 1);
    }

    private static void subtract4(double[] r, double[] a, double[] b, double[] c, double[] e,
                                  double fa, double fb, double fc, double fe, int n) {
        for (int j = 0; j < n; j++) r[j] -= fa * a[j] + fb * b[j] + (fc * c[j] + fe * e[j]);
    }

    private static void subtract1(double[] r, double[] a, double fa, int n) {
        for (int j = 0; j < n; j++) r[j] -= fa * a[j];
    }

    private void addElements(int f, double[][] row, double[] scratch) {
        int[] at = new int[3 * d];
        for (int p = fronts.firstElement[f]; p < fronts.firstElement[f + 1]; p++) {
            elements.lowerTriangle(fronts.element[p], scratch);
            for (int k = 0; k < 3; k++)
                for (int u = 0; u < d; u++) at[k * d + u] = fronts.corner[3 * p + k] * d + u;
            for (int i = 0, s = 0; i < 3 * d; i++)
                for (int j = 0; j <= i; j++, s++) {
                    int r = at[i], c = at[j];
                    if (r >= c) row[r][c] += scratch[s];
                    else row[c][r] += scratch[s];
                }
        }
    }

    private void addLeftover(int child, double[][] row) {
        double[][] from = leftover[child];
        leftover[child] = null;
        if (from == null) return;
        int[] map = fronts.inParent[child];
        for (int i = 0; i < map.length; i++)
            for (int u = 0; u < d; u++) {
                double[] source = from[i * d + u], target = row[map[i] * d + u];
                for (int j = 0; j <= i; j++) {
                    int s = j * d, t = map[j] * d, n = j < i ? d : u + 1;
                    for (int w = 0; w < n; w++) target[t + w] += source[s + w];
                }
            }
    }

    /** Solves A x = b; b and x hold d numbers a node and may be the same array. */
    public void solve(double[] b, double[] x) {
        if (b != x) System.arraycopy(b, 0, x, 0, b.length);
        for (int f = 0; f < fronts.count; f++) {
            if (fronts.parent[f] >= 0) continue;
            new Pass(f, x, true).invoke();
            new Pass(f, x, false).invoke();
        }
    }

    /** One way through a subtree: forward from the leaves up, handing each parent what its pivots take from its unknowns, or back down. */
    private final class Pass extends RecursiveAction {
        private static final long serialVersionUID = 1;
        private final int front;
        private final transient double[] x;
        private final boolean forward;

        Pass(int front, double[] x, boolean forward) {
            this.front = front;
            this.x = x;
            this.forward = forward;
        }

        @Override protected void compute() {
            double[] local = new double[longestList * d];
            if (fronts.work[front] * d * d * d < PASS_ABOVE) {
                if (forward) forwardBelow(front, x, local);
                else backBelow(front, x, local);
                return;
            }
            if (!forward) back(front, x, local);
            List<Pass> below = new ArrayList<>();
            for (int c = fronts.firstChild[front]; c >= 0; c = fronts.nextSibling[c]) below.add(new Pass(c, x, forward));
            invokeAll(below);
            if (forward) forward(front, x, local);
        }
    }

    private void forwardBelow(int f, double[] x, double[] local) {
        for (int c = fronts.firstChild[f]; c >= 0; c = fronts.nextSibling[c]) forwardBelow(c, x, local);
        forward(f, x, local);
    }

    private void backBelow(int f, double[] x, double[] local) {
        back(f, x, local);
        for (int c = fronts.firstChild[f]; c >= 0; c = fronts.nextSibling[c]) backBelow(c, x, local);
    }

    private void forward(int f, double[] x, double[] local) {
        int[] list = fronts.list[f];
        int m = list.length * d, rest = m - fronts.pivots[f] * d;
        Arrays.fill(local, 0, rest, 0);
        for (int i = rest / d; i < list.length; i++)
            for (int u = 0; u < d; u++) local[i * d + u] = x[list[i] * d + u];
        for (int c = fronts.firstChild[f]; c >= 0; c = fronts.nextSibling[c]) {
            int[] map = fronts.inParent[c];
            for (int i = 0; i < map.length; i++)
                for (int u = 0; u < d; u++) local[map[i] * d + u] += carried[c][i * d + u];
        }
        double[][] own = factor[f];
        for (int p = m - 1; p >= rest; p--) {
            double[] r = own[p - rest];
            double y = local[p] / r[p];
            local[p] = y;
            subtract1(local, r, y, p);
        }
        if (carried[f] == null) carried[f] = new double[rest];
        System.arraycopy(local, 0, carried[f], 0, rest);
        for (int i = rest / d; i < list.length; i++)
            for (int u = 0; u < d; u++) x[list[i] * d + u] = local[i * d + u];
    }

    private void back(int f, double[] x, double[] local) {
        int[] list = fronts.list[f];
        int m = list.length * d, rest = m - fronts.pivots[f] * d;
        for (int i = 0; i < list.length; i++)
            for (int u = 0; u < d; u++) local[i * d + u] = x[list[i] * d + u];
        double[][] own = factor[f];
        for (int p = rest; p < m; p++) local[p] = (local[p] - dot(own[p - rest], local, p)) / own[p - rest][p];
        for (int i = rest / d; i < list.length; i++)
            for (int u = 0; u < d; u++) x[list[i] * d + u] = local[i * d + u];
    }

    private static double dot(double[] a, double[] b, int n) {
        double one = 0, two = 0, three = 0, four = 0;       // four sums, so that additions overlap
        int j = 0;
        for (; j + 3 < n; j += 4) {
            one += a[j] * b[j];
            two += a[j + 1] * b[j + 1];
            three += a[j + 2] * b[j + 2];
            four += a[j + 3] * b[j + 3];
        }
        for (; j < n; j++) one += a[j] * b[j];
        return one + two + (three + four);
    }
}
