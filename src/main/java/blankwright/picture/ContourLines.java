package blankwright.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Lines along which a field given at the vertices of a triangle mesh has a round value, the field taken linear over each triangle.
 *
 * <p>A line runs with the higher side on its left hand where the triangles are counter-clockwise. Each of its points lies on an edge and
 * is given by that edge's two vertices and the share of the second. A vertex exactly at the value counts as above it.
 */
public final class ContourLines {
    /** One line at one value; its last point is its first one again where it closes. */
    public static final class Line {
        private final double value;
        private final int[] ends;           // point i lies between vertices ends[2i] and ends[2i+1]
        private final double[] share;       // of the second, 0..1

        private Line(double value, int[] ends, double[] share) {
            this.value = value;
            this.ends = ends;
            this.share = share;
        }

        public double value() {
            return value;
        }

        public int count() {
            return share.length;
        }

        public boolean closed() {
            int last = 2 * share.length - 2;
            return share.length > 2 && ends[0] == ends[last] && ends[1] == ends[last + 1];
        }

        /** Point i of an array that has {@code width} numbers per vertex, coordinate k. */
        public double at(int i, double[] perVertex, int width, int k) {
            double s = share[i];
            return (1 - s) * perVertex[width * ends[2 * i] + k] + s * perVertex[width * ends[2 * i + 1] + k];
        }

        /** Coordinate k of point i on the form, mm. */
        double form(int i, int k, WorkField field) {
            int a = ends[2 * i], b = ends[2 * i + 1];
            double p = k == 0 ? field.x(a) : k == 1 ? field.y(a) : field.z(a), q = k == 0 ? field.x(b) : k == 1 ? field.y(b) : field.z(b);
            return (1 - share[i]) * p + share[i] * q;
        }
    }

    private ContourLines() { }

    /** All lines of all values, in the order of the values, then of the triangles they begin in. */
    public static List<Line> of(int[] tri, double[] field, double... values) {
        List<Line> lines = new ArrayList<>();
        for (double value : values) one(tri, field, value, lines);
        return lines;
    }

    private static void one(int[] tri, double[] field, double value, List<Line> lines) {
        long[] entry = new long[64], exit = new long[64];           // edges by which each piece of line begins and ends
        int pieces = 0;
        for (int t = 0; t < tri.length; t += 3) {
            int a = tri[t], b = tri[t + 1], c = tri[t + 2];
            int high = (field[a] >= value ? 1 : 0) | (field[b] >= value ? 2 : 0) | (field[c] >= value ? 4 : 0);
            if (high == 0 || high == 7) continue;
            if (pieces == entry.length) {
                entry = Arrays.copyOf(entry, 2 * pieces);
                exit = Arrays.copyOf(exit, 2 * pieces);
            }
            int lone = high == 1 || high == 6 ? 0 : high == 2 || high == 5 ? 1 : 2;
            int p = tri[t + lone], q = tri[t + (lone + 1) % 3], r = tri[t + (lone + 2) % 3];
            boolean loneIsHigh = Integer.bitCount(high) == 1;
            entry[pieces] = loneIsHigh ? edge(p, q) : edge(p, r);   // with the high side on the left
            exit[pieces++] = loneIsHigh ? edge(p, r) : edge(p, q);
        }
        if (pieces == 0) return;
        Map<Long, Integer> beginning = new HashMap<>(2 * pieces), ending = new HashMap<>(2 * pieces);
        for (int i = 0; i < pieces; i++) {
            beginning.put(entry[i], i);
            ending.put(exit[i], i);
        }
        boolean[] used = new boolean[pieces];
        for (int pass = 0; pass < 2; pass++) {                      // first the lines that begin at a rim, then the closed ones
            for (int i = 0; i < pieces; i++) {
                if (used[i] || pass == 0 && ending.containsKey(entry[i])) continue;
                lines.add(follow(i, entry, exit, beginning, used, field, value));
            }
        }
    }

    private static Line follow(int first, long[] entry, long[] exit, Map<Long, Integer> beginning, boolean[] used, double[] field,
            double value) {
        long[] through = new long[16];
        int n = 0;
        through[n++] = entry[first];
        Integer i = first;
        while (i != null && !used[i]) {
            used[i] = true;
            if (n == through.length) through = Arrays.copyOf(through, 2 * n);
            through[n++] = exit[i];
            i = beginning.get(exit[i]);
        }
        int[] ends = new int[2 * n];
        double[] share = new double[n];
        for (int k = 0; k < n; k++) {
            int a = (int) (through[k] >>> 32), b = (int) through[k];
            ends[2 * k] = a;
            ends[2 * k + 1] = b;
            share[k] = (value - field[a]) / (field[b] - field[a]);
        }
        return new Line(value, ends, share);
    }

    private static long edge(int a, int b) {
        return (long) Math.min(a, b) << 32 | Math.max(a, b);
    }
}
