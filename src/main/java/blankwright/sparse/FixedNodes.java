package blankwright.sparse;

import java.util.Arrays;

/**
 * A system in which some nodes' unknowns are given: their rows and columns are taken out, a positive number put on their diagonal, and
 * what they pull on the others moved to the right-hand side.
 */
public final class FixedNodes implements Elements {
    private final Elements elements;
    private final int[] tri;
    private final int d;
    private final boolean[] fixed;

    /**
     * @param tri 3 nodes per element
     * @param unknowns a node has
     * @param fixed one entry per node; copied
     */
    public FixedNodes(Elements elements, int[] tri, int unknowns, boolean[] fixed) {
        this.elements = elements;
        this.tri = tri;
        d = unknowns;
        this.fixed = fixed.clone();
    }

    @Override public void lowerTriangle(int e, double[] out) {
        elements.lowerTriangle(e, out);
        for (int i = 0, s = 0; i < 3 * d; i++)
            for (int j = 0; j <= i; j++, s++) {
                if (i == j && fixed[tri[3 * e + i / d]]) out[s] = Math.max(out[s], Double.MIN_NORMAL);
                else if (fixed[tri[3 * e + i / d]] || fixed[tri[3 * e + j / d]]) out[s] = 0;
            }
    }

    /** Solves for the free unknowns; on entry {@code x} holds the values of fixed nodes, on exit all values. */
    public void solve(Cholesky factored, double[] x) {
        double[] b = new double[x.length];
        double[] block = new double[3 * d * (3 * d + 1) / 2];
        for (int e = 0; e < tri.length / 3; e++) {
            if (!fixed[tri[3 * e]] && !fixed[tri[3 * e + 1]] && !fixed[tri[3 * e + 2]]) continue;
            elements.lowerTriangle(e, block);
            for (int i = 0, s = 0; i < 3 * d; i++)
                for (int j = 0; j <= i; j++, s++) {
                    int r = tri[3 * e + i / d], c = tri[3 * e + j / d];
                    if (fixed[c] && !fixed[r]) b[r * d + i % d] -= block[s] * x[c * d + j % d];
                    if (fixed[r] && !fixed[c]) b[c * d + j % d] -= block[s] * x[r * d + i % d];
                }
        }
        double[] given = Arrays.copyOf(x, x.length);
        factored.solve(b, x);
        for (int v = 0; v < fixed.length; v++)
            if (fixed[v]) System.arraycopy(given, v * d, x, v * d, d);
    }
}
