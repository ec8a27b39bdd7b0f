package blankwright.sparse;

import blankwright.num.SymmetricEigen3;
import java.util.Arrays;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.RecursiveAction;

/**
 * Orders the nodes of a triangle mesh so that elimination fills in little: nested dissection by where the nodes are.
 *
 * <p>A set of nodes is split at the median along one of its principal axes (large sets also try the diagonals between them); the smaller of
 * the two boundary sets is the separator; the axis with the smallest separator wins. Where that is still large, the places say little about
 * who is whose neighbour (a file whose vertices were shuffled), and the nodes are split in the order of a walk along the elements. The two
 * sides go on in the same way, down to leaves.
 * The result is a tree of parts: a part's nodes are eliminated after all nodes below it.
 * <p>Deterministic, whatever the number of threads. Cost: n log n.
 * <p>Source: George, "Nested dissection of a regular finite element mesh", 1973, docs/sources.md [G73]; splitting by coordinates as in
 * Heath and Raghavan, "A Cartesian parallel nested dissection algorithm", 1995, [HR95].
 */
public final class Dissection {
    private static final int LEAF = 12;             // nodes; 8 to 16 measured alike
    private static final int DIAGONALS_ABOVE = 2000;
    private static final int FORK_ABOVE = 4000;
    private static final int POOR = 4;              // separator over the root of the nodes; a square grid has 1, two layers 2

    private final int[] start;      // node -> its neighbours neighbour[start[v]] .. neighbour[start[v + 1] - 1]
    private final int[] neighbour;
    private final double[] xyz;
    private final int[] order;      // nodes; a subtree is a stretch of it, its separator last
    private final int[] mark;       // node -> 2 * set + side while that set is being split
    private final Part root;

    /** A node of the tree: own nodes are order[from..to-1]; those below it stand before {@code from}. */
    static final class Part {
        final int from, to;
        final Part left, right;     // null for a leaf

        Part(int from, int to, Part left, Part right) {
            this.from = from;
            this.to = to;
            this.left = left;
            this.right = right;
        }
    }

    private Dissection(int[] start, int[] neighbour, double[] xyz) {
        int n = start.length - 1;
        this.start = start;
        this.neighbour = neighbour;
        this.xyz = xyz;
        order = new int[n];
        for (int i = 0; i < n; i++) order[i] = i;
        mark = new int[n];
        Split whole = new Split(0, n, 1);
        ForkJoinPool.commonPool().invoke(whole);
        root = whole.part;
    }

    /**
     * @param start neighbours of node v are neighbour[start[v] .. start[v+1]-1]; length n + 1
     * @param xyz places of the nodes, 3 per node, any unit
     */
    public static Dissection of(int[] start, int[] neighbour, double[] xyz) {
        return new Dissection(start, neighbour, xyz);
    }

    /** Nodes in order of elimination; not a copy. */
    int[] order() {
        return order;
    }

    Part root() {
        return root;
    }

    private final class Split extends RecursiveAction {
        private static final long serialVersionUID = 1;
        private final int from, to, set;
        private transient Part part;

        Split(int from, int to, int set) {
            this.from = from;
            this.to = to;
            this.set = set;
        }

        @Override protected void compute() {
            part = split();
        }

        private Part split() {
            int n = to - from;
            if (n <= LEAF || set >= 1 << 28) return new Part(from, to, null, null);
            int[] best = null;
            int bestSize = Integer.MAX_VALUE;
            double[] key = new double[n];
            for (double[] axis : axes()) {
                int[] nodes = Arrays.copyOfRange(order, from, to);
                for (int i = 0; i < n; i++) {
                    int v = 3 * nodes[i];
                    key[i] = axis[0] * xyz[v] + axis[1] * xyz[v + 1] + axis[2] * xyz[v + 2];
                }
                select(key, nodes, n / 2);
                int size = separator(nodes);
                if (size < bestSize) {
                    bestSize = size;
                    best = nodes;
                }
            }
            if ((long) bestSize * bestSize > (long) POOR * POOR * n) {
                int[] walked = walk(best);
                if (separator(walked) < bestSize) best = walked;
            }
            int[] ends = arrange(best);
            Split left = new Split(from, ends[0], 2 * set), right = new Split(ends[0], ends[1], 2 * set + 1);
            if (n > FORK_ABOVE) {
                invokeAll(left, right);
            } else {
                left.compute();
                right.compute();
            }
            return new Part(ends[1], to, left.part, right.part);
        }

        /** Nodes that leave if the first half is parted from the second. */
        private int separator(int[] nodes) {
            int[] sides = counts(border(nodes));
            return Math.min(sides[0], sides[1]);
        }

        /** How many of the first and of the second half are marked. */
        private int[] counts(boolean[] border) {
            int[] sides = new int[2];
            for (int i = 0; i < border.length; i++) if (border[i]) sides[i < border.length / 2 ? 0 : 1]++;
            return sides;
        }

        /** Which nodes have a neighbour in the other half. */
        private boolean[] border(int[] nodes) {
            int n = nodes.length, half = n / 2;
            for (int i = 0; i < n; i++) mark[nodes[i]] = 2 * set + (i < half ? 0 : 1);
            boolean[] border = new boolean[n];
            for (int i = 0; i < n; i++) border[i] = touches(nodes[i], 2 * set + (i < half ? 1 : 0));
            return border;
        }

        /** The nodes as a walk along the elements meets them, nearest first, from a far end; parts that do not hang together follow one another. */
        private int[] walk(int[] nodes) {
            int[] met = nodes;
            for (int round = 0; round < 2; round++) {
                int[] order = new int[nodes.length];
                int at = 0, count = 0;
                for (int v : nodes) mark[v] = 2 * set;
                for (int i = nodes.length - 1; i >= 0; i--) {            // what was met last lies far from where the walk began
                    if (mark[met[i]] != 2 * set) continue;
                    mark[met[i]] = 2 * set + 1;
                    order[count++] = met[i];
                    for (; at < count; at++)
                        for (int p = start[order[at]]; p < start[order[at] + 1]; p++) {
                            int v = neighbour[p];
                            if (mark[v] != 2 * set) continue;
                            mark[v] = 2 * set + 1;
                            order[count++] = v;
                        }
                }
                met = order;
            }
            return met;
        }

        /** Writes low side, high side, separator into order; returns where the low and the high side end. */
        private int[] arrange(int[] nodes) {
            int n = nodes.length, half = n / 2;
            boolean[] border = border(nodes);
            int[] sides = counts(border);
            boolean lowLeaves = sides[0] <= sides[1];
            int at = from;
            for (int i = 0; i < half; i++) if (!(lowLeaves && border[i])) order[at++] = nodes[i];
            int lowEnd = at;
            for (int i = half; i < n; i++) if (lowLeaves || !border[i]) order[at++] = nodes[i];
            int highEnd = at;
            for (int i = 0; i < n; i++) if (border[i] && i < half == lowLeaves) order[at++] = nodes[i];
            return new int[] {lowEnd, highEnd};
        }

        private boolean touches(int v, int side) {
            for (int p = start[v]; p < start[v + 1]; p++) if (mark[neighbour[p]] == side) return true;
            return false;
        }

        private double[][] axes() {
            int n = to - from, stride = Math.max(1, n / 20_000);
            double x = 0, y = 0, z = 0;
            int count = 0;
            for (int i = from; i < to; i += stride, count++) {
                int v = 3 * order[i];
                x += xyz[v];
                y += xyz[v + 1];
                z += xyz[v + 2];
            }
            x /= count;
            y /= count;
            z /= count;
            double xx = 0, xy = 0, xz = 0, yy = 0, yz = 0, zz = 0;
            for (int i = from; i < to; i += stride) {
                int v = 3 * order[i];
                double dx = xyz[v] - x, dy = xyz[v + 1] - y, dz = xyz[v + 2] - z;
                xx += dx * dx;
                xy += dx * dy;
                xz += dx * dz;
                yy += dy * dy;
                yz += dy * dz;
                zz += dz * dz;
            }
            SymmetricEigen3 eigen = new SymmetricEigen3(xx, xy, xz, yy, yz, zz);
            double[] a = axis(eigen, 0), b = axis(eigen, 1);
            if (n < DIAGONALS_ABOVE) return new double[][] {a, b};
            double[] sum = new double[3], difference = new double[3];
            for (int k = 0; k < 3; k++) {
                sum[k] = a[k] + b[k];
                difference[k] = a[k] - b[k];
            }
            return new double[][] {a, b, sum, difference};
        }

        private double[] axis(SymmetricEigen3 eigen, int i) {
            return new double[] {eigen.vector(i, 0), eigen.vector(i, 1), eigen.vector(i, 2)};
        }
    }

    /** Moves the {@code count} smallest keys to the front, nodes alongside; equal keys by node number. */
    private static void select(double[] key, int[] node, int count) {
        int low = 0, high = key.length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (less(key, node, middle, low)) swap(key, node, middle, low);
            if (less(key, node, high, low)) swap(key, node, high, low);
            if (less(key, node, high, middle)) swap(key, node, high, middle);
            double pivot = key[middle];
            int pivotNode = node[middle];
            int i = low, j = high;
            while (i <= j) {
                while (key[i] < pivot || key[i] == pivot && node[i] < pivotNode) i++;
                while (key[j] > pivot || key[j] == pivot && node[j] > pivotNode) j--;
                if (i <= j) swap(key, node, i++, j--);
            }
            if (count <= j) high = j;
            else if (count >= i) low = i;
            else return;
        }
    }

    private static boolean less(double[] key, int[] node, int i, int j) {
        return key[i] < key[j] || key[i] == key[j] && node[i] < node[j];
    }

    private static void swap(double[] key, int[] node, int i, int j) {
        double k = key[i];
        key[i] = key[j];
        key[j] = k;
        int n = node[i];
        node[i] = node[j];
        node[j] = n;
    }
}
