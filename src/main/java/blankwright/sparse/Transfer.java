package blankwright.sparse;

import blankwright.num.Crew;

/** Takes 2 numbers a node from a mesh to a coarser one and back; the two ways are transposes of each other. */
public final class Transfer {
    private static final int CHUNK = 1024;

    private final int fine, coarse;
    private final int[] parent;
    private final double[] weight;
    private final int[] start, child;                     // coarse node -> entries of parent that name it

    /**
     * @param parent 3 coarse nodes for each fine one
     * @param weight theirs; entries of weight 0 are left out
     */
    public Transfer(int coarse, int[] parent, double[] weight) {
        this.coarse = coarse;
        this.parent = parent;
        this.weight = weight;
        fine = parent.length / 3;
        start = new int[coarse + 1];
        for (int i = 0; i < parent.length; i++) if (weight[i] != 0) start[parent[i] + 1]++;
        for (int v = 0; v < coarse; v++) start[v + 1] += start[v];
        child = new int[start[coarse]];
        int[] at = java.util.Arrays.copyOf(start, coarse);
        for (int i = 0; i < parent.length; i++) if (weight[i] != 0) child[at[parent[i]]++] = i;
    }

    public int coarse() {
        return coarse;
    }

    /** Adds to each fine node the weighted mean of its parents. */
    public void up(double[] from, double[] to) {
        over(fine, v -> {
            int i = 3 * v;
            double a = weight[i], b = weight[i + 1], c = weight[i + 2];
            to[2 * v] += a * from[2 * parent[i]] + b * from[2 * parent[i + 1]] + c * from[2 * parent[i + 2]];
            to[2 * v + 1] += a * from[2 * parent[i] + 1] + b * from[2 * parent[i + 1] + 1] + c * from[2 * parent[i + 2] + 1];
        });
    }

    /** Gives each coarse node its children's numbers by weight. */
    public void down(double[] from, double[] to) {
        over(coarse, v -> {
            double x = 0, y = 0;
            for (int p = start[v]; p < start[v + 1]; p++) {
                int i = child[p];
                x += weight[i] * from[2 * (i / 3)];
                y += weight[i] * from[2 * (i / 3) + 1];
            }
            to[2 * v] = x;
            to[2 * v + 1] = y;
        });
    }

    private interface One {
        void node(int v);
    }

    private static void over(int count, One one) {
        Crew.each((count + CHUNK - 1) / CHUNK, c -> {
            for (int v = c * CHUNK; v < Math.min(count, (c + 1) * CHUNK); v++) one.node(v);
        });
    }
}
