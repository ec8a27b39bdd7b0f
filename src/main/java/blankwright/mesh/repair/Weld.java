package blankwright.mesh.repair;

import java.util.Arrays;

/** Which vertices stand in the same place: exactly, or within a tolerance along open edges. */
final class Weld {
    private Weld() { }

    /** For each vertex the lowest one with the same coordinates (0 and -0 are the same); vertices not {@code used} stay alone. */
    static int[] exact(double[] xyz, boolean[] used) {
        int n = xyz.length / 3;
        int mask = mask(n);
        int[] slot = new int[mask + 1];
        Arrays.fill(slot, -1);
        int[] first = new int[n];
        for (int v = 0; v < n; v++) {
            first[v] = v;
            if (!used[v]) continue;
            int at = hash(Double.doubleToLongBits(xyz[3 * v] + 0.0), Double.doubleToLongBits(xyz[3 * v + 1] + 0.0),
                    Double.doubleToLongBits(xyz[3 * v + 2] + 0.0)) & mask;
            while (slot[at] >= 0 && !same(xyz, slot[at], v)) at = (at + 1) & mask;
            if (slot[at] < 0) slot[at] = v;
            else first[v] = slot[at];
        }
        return first;
    }

    private static boolean same(double[] xyz, int v, int w) {
        return xyz[3 * v] == xyz[3 * w] && xyz[3 * v + 1] == xyz[3 * w + 1] && xyz[3 * v + 2] == xyz[3 * w + 2];
    }

    /**
     * For each vertex the lowest candidate at most {@code tolerance} away that it may become without a triangle losing a corner, else
     * itself. A grid of cells eight times as wide, so that few vertices look into two; at most 64 vertices of a cell are looked at.
     *
     * @param candidate vertices on open edges
     */
    static int[] near(double[] xyz, int[] tri, int corners, boolean[] candidate, double tolerance) {
        int n = xyz.length / 3;
        int[] to = new int[n];
        int many = 0;
        for (int v = 0; v < n; v++) {
            to[v] = v;
            if (candidate[v]) many++;
        }
        if (many == 0 || !(tolerance > 0)) return to;
        int[] cornerOf = new int[corners];          // corners by vertex, candidates only
        int[] from = cornersByVertex(n, tri, corners, candidate, cornerOf);
        int mask = mask(many);
        int[] slot = new int[mask + 1];             // hash of cell -> last kept vertex in it
        Arrays.fill(slot, -1);
        int[] before = new int[n];                  // kept vertex -> the one before it in the same slot
        double cell = 8 * tolerance;
        for (int v = 0; v < n; v++) {
            if (!candidate[v]) continue;
            double x = xyz[3 * v], y = xyz[3 * v + 1], z = xyz[3 * v + 2];
            int best = -1;
            for (long cx = cellOf(x - tolerance, cell); cx <= cellOf(x + tolerance, cell); cx++) {
                for (long cy = cellOf(y - tolerance, cell); cy <= cellOf(y + tolerance, cell); cy++) {
                    for (long cz = cellOf(z - tolerance, cell); cz <= cellOf(z + tolerance, cell); cz++) {
                        int looked = 0;
                        for (int w = slot[hash(cx, cy, cz) & mask]; w >= 0 && looked < 64; w = before[w], looked++) {
                            if ((best < 0 || w < best) && within(xyz, v, w, tolerance) && !sharesTriangle(v, w, tri, from, cornerOf, to)) best = w;
                        }
                    }
                }
            }
            if (best >= 0) {
                to[v] = best;
                continue;
            }
            int at = hash(cellOf(x, cell), cellOf(y, cell), cellOf(z, cell)) & mask;
            before[v] = slot[at];
            slot[at] = v;
        }
        return to;
    }

    /** Number of the cell along one axis; far outside of what a whole number holds all cells are one. */
    static long cellOf(double x, double cell) {
        return (long) Math.max(-4e18, Math.min(4e18, Math.floor(x / cell)));
    }

    private static int[] cornersByVertex(int n, int[] tri, int corners, boolean[] candidate, int[] cornerOf) {
        int[] from = new int[n + 1];
        for (int h = 0; h < corners; h++) if (candidate[tri[h]]) from[tri[h] + 1]++;
        for (int v = 0; v < n; v++) from[v + 1] += from[v];
        int[] at = Arrays.copyOf(from, n);
        for (int h = 0; h < corners; h++) if (candidate[tri[h]]) cornerOf[at[tri[h]]++] = h;
        return from;
    }

    private static boolean within(double[] xyz, int v, int w, double tolerance) {
        double x = xyz[3 * v] - xyz[3 * w], y = xyz[3 * v + 1] - xyz[3 * w + 1], z = xyz[3 * v + 2] - xyz[3 * w + 2];
        return x * x + y * y + z * z <= tolerance * tolerance;
    }

    /** A triangle of v already has w, or a vertex that became w. */
    private static boolean sharesTriangle(int v, int w, int[] tri, int[] from, int[] cornerOf, int[] to) {
        for (int i = from[v]; i < from[v + 1]; i++) {
            int t = cornerOf[i] / 3;
            for (int k = 0; k < 3; k++) if (to[tri[3 * t + k]] == w) return true;
        }
        return false;
    }

    static int mask(int entries) {
        return Integer.highestOneBit(Math.max(8, Math.min(entries, 1 << 28))) * 4 - 1;
    }

    static int hash(long a, long b, long c) {
        long h = a * 0x9E3779B97F4A7C15L;
        h = (h ^ h >>> 32) + b * 0xC2B2AE3D27D4EB4FL;
        h = (h ^ h >>> 29) * 0x9E3779B97F4A7C15L + c * 0x165667B19E3779F9L;
        h = (h ^ h >>> 32) * 0xD6E8FEB86659FD93L;
        return (int) (h ^ h >>> 32);
    }
}
