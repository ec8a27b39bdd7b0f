package blankwright.mesh.reduce;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * The vertices still there, in blocks of neighbours: boxes got by halving, so that work on different blocks need not touch.
 *
 * <p>A collapse writes to the triangles round its two vertices and reads those round their neighbours. Where all these vertices are of one
 * block, no other block's collapse writes there. The blocks depend on places and numbers only, not on threads.
 */
final class Blocks {
    private static final int LEAST = 16384;         // vertices of a block when it is made
    private static final int DEEPEST = 8;           // halvings
    private static final int SAMPLES = 256;         // for each block, from which the halves are found

    private final Fans fans;
    private final double[] xyz;
    private final short[] blockOf;
    private int[][] alive;          // of each block, lowest first
    private int made = Integer.MAX_VALUE;           // vertices when the blocks were made

    Blocks(Fans fans, double[] xyz) {
        this.fans = fans;
        this.xyz = xyz;
        blockOf = new short[fans.way.length];
        alive = new int[][] {IntStream.range(0, blockOf.length).toArray()};
    }

    int count() {
        return alive.length;
    }

    /** Of this block, those that were there at the last {@link #renew}. */
    int[] alive(int block) {
        return alive[block];
    }

    int size() {
        return Arrays.stream(alive).mapToInt(v -> v.length).sum();
    }

    /** Leaves out the vertices that went; makes new blocks where half of them did. */
    void renew() {
        IntStream.range(0, alive.length).parallel().forEach(b -> alive[b] = Arrays.stream(alive[b]).filter(v -> fans.way[v] >= 0).toArray());
        int size = size();
        if (size > made / 2) return;
        made = size;
        if (alive.length == 1 && size < 2 * LEAST) return;
        int[] all = Arrays.stream(alive).flatMapToInt(Arrays::stream).sorted().toArray();
        int depth = Math.max(0, Math.min(DEEPEST, 31 - Integer.numberOfLeadingZeros(Math.max(1, size / LEAST))));
        Halving halving = new Halving(depth);
        int step = Math.max(1, size / (SAMPLES << depth));
        halving.split(1, IntStream.range(0, size / step).mapToObj(i -> all[i * step]).toArray(Integer[]::new));
        Arrays.stream(all).parallel().forEach(v -> blockOf[v] = (short) halving.blockOf(v));
        int[] from = new int[1 << depth];
        for (int v : all) from[blockOf[v]]++;
        alive = new int[1 << depth][];
        for (int b = 0; b < alive.length; b++) alive[b] = new int[from[b]];
        Arrays.fill(from, 0);
        for (int v : all) alive[blockOf[v]][from[blockOf[v]]++] = v;
    }

    /** Whether v and all its neighbours are of this block. */
    boolean holds(int block, int v) {
        if (blockOf[v] != block) return false;
        for (int h = fans.way[v]; h >= 0; h = fans.left(h, v))
            if (blockOf[fans.tri[Fans.next(h)]] != block || blockOf[fans.tri[Fans.before(h)]] != block) return false;
        return true;
    }

    /** Planes across the longest side of what is to be halved; node 1 is all, 2i and 2i + 1 the halves of i. */
    private final class Halving {
        final int depth;
        final int[] axis;
        final double[] at;

        Halving(int depth) {
            this.depth = depth;
            axis = new int[1 << depth];
            at = new double[1 << depth];
        }

        void split(int node, Integer[] sample) {
            if (node >= at.length || sample.length == 0) return;
            double longest = -1;
            for (int k = 0; k < 3; k++) {
                double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY;
                for (int v : sample) {
                    low = Math.min(low, xyz[3 * v + k]);
                    high = Math.max(high, xyz[3 * v + k]);
                }
                if (!(high - low > longest)) continue;
                longest = high - low;
                axis[node] = k;
            }
            Arrays.sort(sample, Comparator.comparingDouble(v -> xyz[3 * v + axis[node]]));
            int half = sample.length / 2;
            at[node] = xyz[3 * sample[half] + axis[node]];
            split(2 * node, Arrays.copyOf(sample, half));
            split(2 * node + 1, Arrays.copyOfRange(sample, half, sample.length));
        }

        int blockOf(int v) {
            int node = 1;
            while (node < at.length) node = 2 * node + (xyz[3 * v + axis[node]] < at[node] ? 0 : 1);
            return node - at.length;
        }
    }
}
