package blankwright.mesh.repair;

import java.util.Arrays;

/**
 * Closes open edges against which two or more shorter ones lie: the long edge's triangle is cut at the corners between them.
 *
 * <p>Rim vertices go into a grid as wide as the mean rim edge; each rim edge looks along itself for those within the tolerance. It is cut
 * only where the corners found and its own ends are joined by open edges all along, so that nothing merely touching is sewn on.
 */
final class Cracks {
    private static final int MOST_IN_CELL = 64;

    /** Open edges from which triangles with more than 1.5 open ones on average are taken for scattered: no surface to close, and slow. */
    private static final int SCATTERED = 10_000;

    private final double[] xyz;
    private final int[] tri;
    private final double tolerance;
    private final EdgeGroups edges;
    int[] from;             // triangle of the result -> triangle before
    int[] result;           // the triangles; those added come last
    int closed;             // edges cut
    int[] first;            // the two ends of the first

    private double cell;
    private int mask;
    private int[] slot;
    private int[] before;
    private int[] stamp;
    private int[] found = new int[16];
    private double[] along = new double[16];
    private int size;

    Cracks(double[] xyz, int[] tri, EdgeGroups edges, double tolerance) {
        this.xyz = xyz;
        this.tri = tri;
        this.tolerance = tolerance;
        this.edges = edges;
        this.result = tri;
        int[] rims = new int[edges.count()];
        int many = 0;
        double sum = 0;
        for (int e = 0; e < edges.count(); e++) {
            if (edges.size(e) != 1) continue;
            int h = edges.half(e, 0);
            rims[many++] = h;
            sum += length(tri[h], tri[EdgeGroups.next(h)]);
        }
        if (many == 0 || !(tolerance > 0) || many > SCATTERED && many > tri.length / 2) return;
        cell = Math.max(sum / many, 4 * tolerance);
        fillGrid(rims, many);
        boolean[] cut = new boolean[tri.length / 3];
        int[] grown = tri.clone(), origin = new int[0];
        int corners = tri.length;
        for (int i = 0; i < many; i++) {
            int h = rims[i], t = h / 3;
            if (cut[t] || !findAlong(h)) continue;
            cut[t] = true;
            int a = tri[h], b = tri[EdgeGroups.next(h)], c = tri[EdgeGroups.next(EdgeGroups.next(h))];
            if (closed++ == 0) first = new int[] {a, b};
            if (grown.length < corners + 3 * size) grown = Arrays.copyOf(grown, Math.max(corners + 3 * size, corners + corners / 2));
            if (origin.length < (grown.length - tri.length) / 3) origin = Arrays.copyOf(origin, (grown.length - tri.length) / 3);
            grown[EdgeGroups.next(h)] = found[0];
            for (int j = 0; j < size; j++) {
                origin[(corners - tri.length) / 3] = t;
                grown[corners++] = found[j];
                grown[corners++] = j + 1 < size ? found[j + 1] : b;
                grown[corners++] = c;
            }
        }
        if (closed == 0) return;
        result = Arrays.copyOf(grown, corners);
        from = new int[corners / 3];
        for (int t = 0; t < from.length; t++) from[t] = t < cut.length ? t : origin[t - cut.length];
    }

    private double length(int v, int w) {
        double x = xyz[3 * v] - xyz[3 * w], y = xyz[3 * v + 1] - xyz[3 * w + 1], z = xyz[3 * v + 2] - xyz[3 * w + 2];
        return Math.sqrt(x * x + y * y + z * z);
    }

    private void fillGrid(int[] rims, int many) {
        int n = xyz.length / 3;
        mask = Weld.mask(many);
        slot = new int[mask + 1];
        Arrays.fill(slot, -1);
        before = new int[n];
        stamp = new int[n];
        Arrays.fill(stamp, -2);
        for (int i = 0; i < many; i++) {
            for (int v : new int[] {tri[rims[i]], tri[EdgeGroups.next(rims[i])]}) {
                if (stamp[v] == -1) continue;
                stamp[v] = -1;
                int at = slotOf(cellOf(xyz[3 * v]), cellOf(xyz[3 * v + 1]), cellOf(xyz[3 * v + 2]));
                before[v] = slot[at];
                slot[at] = v;
            }
        }
    }

    private int slotOf(long cx, long cy, long cz) {
        return Weld.hash(cx, cy, cz) & mask;
    }

    private long cellOf(double x) {
        return Weld.cellOf(x, cell);
    }

    /** Rim vertices strictly within the edge, in order along it; true where open edges join them from end to end. */
    private boolean findAlong(int h) {
        int a = tri[h], b = tri[EdgeGroups.next(h)], c = tri[EdgeGroups.next(EdgeGroups.next(h))];
        double length = length(a, b);
        int pieces = (int) Math.max(1, Math.min(1_000_000, Math.ceil(length / cell)));
        size = 0;
        for (int s = 0; s < pieces; s++) lookRoundPiece(h, a, b, c, length, (double) s / pieces, (s + 1.0) / pieces);
        if (size == 0) return false;
        for (int i = 0; i <= size; i++) if (!edges.isOpen(i == 0 ? a : found[i - 1], i == size ? b : found[i])) return false;
        return true;
    }

    /** Looks into the cells round the piece of the edge between two fractions of it: at most two along each axis. */
    private void lookRoundPiece(int h, int a, int b, int c, double length, double begin, double end) {
        long[] low = new long[3], high = new long[3];
        for (int k = 0; k < 3; k++) {
            double along = xyz[3 * b + k] - xyz[3 * a + k], p = xyz[3 * a + k] + begin * along, q = xyz[3 * a + k] + end * along;
            low[k] = cellOf(Math.min(p, q) - tolerance);
            high[k] = cellOf(Math.max(p, q) + tolerance);
        }
        for (long cx = low[0]; cx <= high[0]; cx++) {
            for (long cy = low[1]; cy <= high[1]; cy++) {
                for (long cz = low[2]; cz <= high[2]; cz++) {
                    int looked = 0;
                    for (int v = slot[slotOf(cx, cy, cz)]; v >= 0 && looked < MOST_IN_CELL; v = before[v], looked++) {
                        if (stamp[v] == h || v == a || v == b || v == c) continue;
                        stamp[v] = h;
                        look(v, a, b, length);
                    }
                }
            }
        }
    }

    private void look(int v, int a, int b, double length) {
        double dot = 0;
        for (int k = 0; k < 3; k++) dot += (xyz[3 * v + k] - xyz[3 * a + k]) * (xyz[3 * b + k] - xyz[3 * a + k]);
        double s = dot / length;
        if (!(s > tolerance && s < length - tolerance)) return;
        double off = 0;
        for (int k = 0; k < 3; k++) {
            double d = xyz[3 * v + k] - xyz[3 * a + k] - s / length * (xyz[3 * b + k] - xyz[3 * a + k]);
            off += d * d;
        }
        if (off > tolerance * tolerance) return;
        if (size == found.length) {
            found = Arrays.copyOf(found, 2 * size);
            along = Arrays.copyOf(along, 2 * size);
        }
        int i = size++;
        for (; i > 0 && along[i - 1] > s; i--) {
            along[i] = along[i - 1];
            found[i] = found[i - 1];
        }
        along[i] = s;
        found[i] = v;
    }
}
