package blankwright.sparse;

import blankwright.num.Crew;
import java.util.Arrays;

/**
 * A symmetric positive matrix of 2x2 blocks, one row of blocks a node, with the sweeps a multigrid cycle is made of.
 *
 * <p>Rows are cut into the same few chunks on any machine; a sweep goes through each chunk in order and takes what lies outside the chunk
 * as it was before, so that chunks run side by side and the bits do not depend on the number of threads. Half the absolute sum of what a
 * row has in other chunks guards its diagonal in sweeps, written D: with that a sweep never makes the error larger. The pattern is found
 * once, {@link #fill} may be called often.
 * <p>Source: Baker, Falgout, Kolev and Yang, "Multigrid smoothers for ultraparallel computing", 2011; Eisenstat, "Efficient Implementation of a
 * Class of Preconditioned Conjugate Gradient Methods", 1981, for {@link #onward}; docs/sources.md [BFKY11], [E81].
 */
public final class BlockRows {
    private static final int CHUNKS = 16;
    private static final int LEAST = 1024;                // rows of a chunk

    /** Of each corner in an element's packed triangle: its own xx, xy and yy, then row by row its block with the next corner and the next but one. */
    private static final int[] WHERE = {0, 1, 2, 3, 6, 4, 7, 10, 15, 11, 16, 5, 8, 9, 12, 17, 13, 18, 3, 4, 6, 7, 14, 19, 20, 10, 11, 15, 16, 12, 13, 17, 18};

    private final int n;
    private final int[] tri;
    private final int size;                               // rows of a chunk
    private final int[] start;                            // row v: its blocks off the diagonal are start[v] .. start[v+1]-1
    private final int[] outer, upper;                     // within a row: after those to earlier rows of its chunk first to another chunk, first to a later row
    private final int[] column;
    private final double[] block;                         // 4 a block, row by row
    private final double[] diagonal, inverse;             // 3 a row: xx, xy, yy; inverse is that of the guarded diagonal
    private final double[] beyond;                        // row v: its guard
    private final int[] cornerStart, cornerOf;            // row v: corners 3e+k that stand there
    private final int[] place;                            // corner p of cornerOf: blocks of the next and the next but one corner
    private double[] elementOf = {};                      // 21 an element, while filling

    /**
     * @param nodes how many
     * @param tri 3 nodes per element
     */
    public BlockRows(int nodes, int[] tri) {
        n = nodes;
        this.tri = tri;
        size = Math.max(LEAST, (n + CHUNKS - 1) / CHUNKS);
        cornerStart = new int[n + 1];
        for (int v : tri) cornerStart[v + 1]++;
        for (int v = 0; v < n; v++) cornerStart[v + 1] += cornerStart[v];
        cornerOf = new int[tri.length];
        int[] at = Arrays.copyOf(cornerStart, n);
        for (int c = 0; c < tri.length; c++) cornerOf[at[tri[c]]++] = c;
        start = new int[n + 1];
        outer = new int[n];
        upper = new int[n];
        place = new int[2 * tri.length];
        overChunks((from, to) -> {
            int[] near = new int[16];
            for (int v = from; v < to; v++) {
                near = neighbours(v, near);
                start[v + 1] = count(near);
            }
        });
        for (int v = 0; v < n; v++) start[v + 1] += start[v];
        column = new int[start[n]];
        overChunks((from, to) -> {
            int[] near = new int[16];
            for (int v = from; v < to; v++) {
                near = neighbours(v, near);
                int high = Math.min(n, v / size * size + size), low = v / size * size, p = start[v], m = count(near);
                for (int i = 0; i < m; i++) if (near[i] >= low && near[i] < v) column[p++] = near[i];
                outer[v] = p;
                for (int i = 0; i < m; i++) if (near[i] < low || near[i] >= high) column[p++] = near[i];
                upper[v] = p;
                for (int i = 0; i < m; i++) if (near[i] > v && near[i] < high) column[p++] = near[i];
                for (int c = cornerStart[v]; c < cornerStart[v + 1]; c++) {
                    int e = cornerOf[c] / 3, k = cornerOf[c] % 3;
                    place[2 * c] = find(v, tri[3 * e + (k + 1) % 3]);
                    place[2 * c + 1] = find(v, tri[3 * e + (k + 2) % 3]);
                }
            }
        });
        block = new double[4 * column.length];
        diagonal = new double[3 * n];
        inverse = new double[3 * n];
        beyond = new double[n];
    }

    private int find(int v, int w) {
        for (int p = start[v]; p < start[v + 1]; p++) if (column[p] == w) return p;
        throw new AssertionError(v + " and " + w);
    }

    /** Different neighbours of v, ended by -1. */
    private int[] neighbours(int v, int[] near) {
        int m = 0;
        if (near.length < 2 * (cornerStart[v + 1] - cornerStart[v]) + 1) near = new int[4 * (cornerStart[v + 1] - cornerStart[v]) + 1];
        for (int c = cornerStart[v]; c < cornerStart[v + 1]; c++) {
            int e = cornerOf[c] / 3, k = cornerOf[c] % 3;
            for (int j = 1; j < 3; j++) {
                int w = tri[3 * e + (k + j) % 3], i = 0;
                while (i < m && near[i] != w) i++;
                if (i == m) near[m++] = w;
            }
        }
        near[m] = -1;
        return near;
    }

    private static int count(int[] near) {
        int m = 0;
        while (near[m] >= 0) m++;
        return m;
    }

    /** Work on rows from..to-1. */
    interface Work {
        void on(int from, int to);
    }

    void overChunks(Work work) {
        Crew.each((n + size - 1) / size, c -> work.on(c * size, Math.min(n, (c + 1) * size)));
    }

    public int rows() {
        return n;
    }

    /** Sums the elements, {@code shift} added on the diagonal; false where a block of the diagonal is not positive. */
    public boolean fill(Elements elements, double shift) {
        int m = tri.length / 3;
        if (elementOf.length == 0) elementOf = new double[21 * m];
        int piece = Math.max(LEAST, (m + CHUNKS - 1) / CHUNKS);
        Crew.each((m + piece - 1) / piece, c -> {
            double[] one = new double[21];
            for (int e = c * piece; e < Math.min(m, (c + 1) * piece); e++) {
                elements.lowerTriangle(e, one);
                System.arraycopy(one, 0, elementOf, 21 * e, 21);
            }
        });
        boolean[] bad = new boolean[n / size + 1];
        overChunks((from, to) -> {
            for (int v = from; v < to; v++) if (!sum(v, shift)) bad[v / size] = true;
        });
        for (boolean b : bad) if (b) return false;
        return true;
    }

    private boolean sum(int v, double shift) {
        Arrays.fill(block, 4 * start[v], 4 * start[v + 1], 0);
        double xx = shift, xy = 0, yy = shift;
        for (int c = cornerStart[v]; c < cornerStart[v + 1]; c++) {
            int e = cornerOf[c] / 3, k = cornerOf[c] - 3 * e, at = 21 * e, from = 11 * k;
            xx += elementOf[at + WHERE[from]];
            xy += elementOf[at + WHERE[from + 1]];
            yy += elementOf[at + WHERE[from + 2]];
            for (int j = 0; j < 2; j++) {
                int p = 4 * place[2 * c + j], w = from + 3 + 4 * j;
                block[p] += elementOf[at + WHERE[w]];
                block[p + 1] += elementOf[at + WHERE[w + 1]];
                block[p + 2] += elementOf[at + WHERE[w + 2]];
                block[p + 3] += elementOf[at + WHERE[w + 3]];
            }
        }
        diagonal[3 * v] = xx;
        diagonal[3 * v + 1] = xy;
        diagonal[3 * v + 2] = yy;
        double guard = 0;
        for (int p = 4 * outer[v]; p < 4 * upper[v]; p++) guard += Math.abs(block[p]);
        guard /= 2;
        double gx = xx + guard, gy = yy + guard, det = gx * gy - xy * xy;
        inverse[3 * v] = gy / det;
        inverse[3 * v + 1] = -xy / det;
        inverse[3 * v + 2] = gx / det;
        beyond[v] = guard;
        return xx > 0 && det > 0;
    }

    /** y = A x. */
    public void multiply(double[] x, double[] y) {
        overChunks((from, to) -> {
            for (int v = from; v < to; v++) {
                double s = x[2 * v], t = x[2 * v + 1];
                double a = diagonal[3 * v] * s + diagonal[3 * v + 1] * t, b = diagonal[3 * v + 1] * s + diagonal[3 * v + 2] * t;
                for (int p = start[v]; p < start[v + 1]; p++) {
                    s = x[2 * column[p]];
                    t = x[2 * column[p] + 1];
                    a += block[4 * p] * s + block[4 * p + 1] * t;
                    b += block[4 * p + 2] * s + block[4 * p + 3] * t;
                }
                y[2 * v] = a;
                y[2 * v + 1] = b;
            }
        });
    }

    /** x = (D + L)⁻¹ b, L within chunks. */
    void forward(double[] b, double[] x) {
        overChunks((from, to) -> {
            for (int v = from; v < to; v++) {
                double c = b[2 * v], d = b[2 * v + 1];
                for (int p = start[v]; p < outer[v]; p++) {
                    double s = x[2 * column[p]], t = x[2 * column[p] + 1];
                    c -= block[4 * p] * s + block[4 * p + 1] * t;
                    d -= block[4 * p + 2] * s + block[4 * p + 3] * t;
                }
                x[2 * v] = inverse[3 * v] * c + inverse[3 * v + 1] * d;
                x[2 * v + 1] = inverse[3 * v + 1] * c + inverse[3 * v + 2] * d;
            }
        });
    }

    /** r = b - A x where x = (D + L)⁻¹ b: what the forward sweep left, guard x - (outer + U) x. */
    void leftByForward(double[] x, double[] r) {
        overChunks((from, to) -> {
            for (int v = from; v < to; v++) {
                double a = beyond[v] * x[2 * v], b = beyond[v] * x[2 * v + 1];
                for (int p = outer[v]; p < start[v + 1]; p++) {
                    double s = x[2 * column[p]], t = x[2 * column[p] + 1];
                    a -= block[4 * p] * s + block[4 * p + 1] * t;
                    b -= block[4 * p + 2] * s + block[4 * p + 3] * t;
                }
                r[2 * v] = a;
                r[2 * v + 1] = b;
            }
        });
    }

    /** y = x + (D + U)⁻¹ (b - A x), U within chunks. Returns b·y. */
    double backward(double[] b, double[] x, double[] y) {
        return sumOverChunks((from, to) -> {
            double sum = 0;
            for (int v = to - 1; v >= from; v--) {
                double s = x[2 * v], t = x[2 * v + 1];
                double c = b[2 * v] - diagonal[3 * v] * s - diagonal[3 * v + 1] * t, d = b[2 * v + 1] - diagonal[3 * v + 1] * s - diagonal[3 * v + 2] * t;
                for (int p = start[v]; p < upper[v]; p++) {
                    s = x[2 * column[p]];
                    t = x[2 * column[p] + 1];
                    c -= block[4 * p] * s + block[4 * p + 1] * t;
                    d -= block[4 * p + 2] * s + block[4 * p + 3] * t;
                }
                for (int p = upper[v]; p < start[v + 1]; p++) {
                    s = y[2 * column[p]];
                    t = y[2 * column[p] + 1];
                    c -= block[4 * p] * s + block[4 * p + 1] * t;
                    d -= block[4 * p + 2] * s + block[4 * p + 3] * t;
                }
                s = x[2 * v] + inverse[3 * v] * c + inverse[3 * v + 1] * d;
                t = x[2 * v + 1] + inverse[3 * v + 1] * c + inverse[3 * v + 2] * d;
                y[2 * v] = s;
                y[2 * v + 1] = t;
                sum += b[2 * v] * s + b[2 * v + 1] * t;
            }
            return sum;
        });
    }

    /**
     * p = y + beta p and q = A p, where q = A p before and y is what {@link #backward} made of x. Not by a whole product, for a backward sweep
     * leaves A y = b + (L + outer - guard) (y - x). Returns p·q.
     */
    double onward(double[] b, double[] x, double[] y, double beta, double[] p, double[] q) {
        return sumOverChunks((from, to) -> {
            double sum = 0;
            for (int v = from; v < to; v++) {
                double s = y[2 * v], t = y[2 * v + 1];
                double c = b[2 * v] - beyond[v] * (s - x[2 * v]), d = b[2 * v + 1] - beyond[v] * (t - x[2 * v + 1]);
                double pu = s + beta * p[2 * v], pv = t + beta * p[2 * v + 1];
                for (int i = start[v]; i < upper[v]; i++) {
                    int w = 2 * column[i];
                    s = y[w] - x[w];
                    t = y[w + 1] - x[w + 1];
                    c += block[4 * i] * s + block[4 * i + 1] * t;
                    d += block[4 * i + 2] * s + block[4 * i + 3] * t;
                }
                double qu = c + beta * q[2 * v], qv = d + beta * q[2 * v + 1];
                p[2 * v] = pu;
                p[2 * v + 1] = pv;
                q[2 * v] = qu;
                q[2 * v + 1] = qv;
                sum += pu * qu + pv * qv;
            }
            return sum;
        });
    }

    /** Work on rows from..to-1 that gives a share of a sum. */
    private interface Share {
        double of(int from, int to);
    }

    private double sumOverChunks(Share share) {
        double[] shares = new double[(n + size - 1) / size];
        overChunks((from, to) -> shares[from / size] = share.of(from, to));
        double sum = 0;
        for (double s : shares) sum += s;
        return sum;
    }
}
