package blankwright.mesh.repair;

import java.util.Arrays;

/**
 * Gets rid of triangles without height, and of the gap they would leave.
 *
 * <p>A triangle whose third corner lies on its longest edge stands for a corner on the neighbour's edge: the neighbour is cut there in
 * two. One whose two corners all but coincide is closed by making them one, where that leaves a surface. Passes are repeated while they
 * help; what then is left is dropped.
 */
final class FlatTriangles {
    /** Height over longest edge at and below which a triangle counts as flat: the flattening's arithmetic has nothing left there. */
    static final double FLAT = 1e-8;

    private static final int PASSES = 12;
    private static final int LONGEST_SEARCH = 2000;

    private final double[] xyz;
    private final int[] tri;
    private final int corners;
    private int mended;

    private FlatTriangles(double[] xyz, int[] tri, int corners) {
        this.xyz = xyz;
        this.tri = tri;
        this.corners = corners;
    }

    /** Works on {@code tri}; triangles to drop get first corner -1. Returns how many were mended otherwise. */
    static int remove(double[] xyz, int[] tri, int corners) {
        FlatTriangles work = new FlatTriangles(xyz, tri, corners);
        boolean helped = true;
        for (int pass = 0; helped; pass++) helped = work.pass(pass < PASSES);
        return work.mended;
    }

    /** One look at all flat triangles; true where some could be mended, so that others may be now. Else drops them. */
    private boolean pass(boolean mend) {
        int[] flat = new int[16];
        int many = 0;
        for (int t = 0; t < corners / 3; t++) {
            if (tri[3 * t] < 0) continue;
            if (tri[3 * t] == tri[3 * t + 1] || tri[3 * t + 1] == tri[3 * t + 2] || tri[3 * t + 2] == tri[3 * t]) {
                tri[3 * t] = -1;
            } else if (flat(xyz, tri[3 * t], tri[3 * t + 1], tri[3 * t + 2])) {
                if (many == flat.length) flat = Arrays.copyOf(flat, 2 * many);
                flat[many++] = t;
            }
        }
        if (many == 0) return false;
        int before = mended;
        if (mend) mend(flat, many);
        if (mended > before) return true;
        for (int i = 0; i < many; i++) tri[3 * flat[i]] = -1;
        return false;
    }

    private void mend(int[] flat, int many) {
        int[] live = new int[corners];              // the triangles not dropped, with their place
        int[] place = new int[corners / 3];
        int[] where = new int[corners / 3];
        int m = 0;
        for (int t = 0; t < corners / 3; t++) {
            if (tri[3 * t] < 0) continue;
            where[t] = m;
            place[m] = t;
            System.arraycopy(tri, 3 * t, live, 3 * m++, 3);
        }
        int n = xyz.length / 3;
        EdgeGroups edges = new EdgeGroups(n, live, 3 * m);
        int[] around = new int[n + 1];
        for (int h = 0; h < 3 * m; h++) around[live[h] + 1]++;
        for (int v = 0; v < n; v++) around[v + 1] += around[v];
        int[] triangle = new int[3 * m];
        int[] at = Arrays.copyOf(around, n);
        for (int h = 0; h < 3 * m; h++) triangle[at[live[h]]++] = h / 3;
        boolean[] touched = new boolean[m];
        for (int i = 0; i < many; i++) {
            int t = where[flat[i]];
            if (!touched[t] && (cutNeighbour(t, live, place, edges, touched) || close(t, live, place, edges, around, triangle, touched))) mended++;
        }
    }

    private boolean cutNeighbour(int t, int[] live, int[] place, EdgeGroups edges, boolean[] touched) {
        int k = longest(live, t);
        int a = live[3 * t + k], c = live[3 * t + (k + 1) % 3], b = live[3 * t + (k + 2) % 3];
        int other = edges.only(a, c, 3 * t + k);
        if (other < 0) return false;
        int s = other / 3;
        if (touched[s] || s == t) return false;
        int p = live[other], q = live[EdgeGroups.next(other)], d = live[3 * s + (other % 3 + 2) % 3];
        if (d == b || flat(xyz, p, b, d) || flat(xyz, b, q, d) || edges.has(b, d)) return false;
        set(place[s], p, b, d);
        set(place[t], b, q, d);
        touched[s] = true;
        touched[t] = true;
        touchAll(t, live, edges, touched);
        touchAll(s, live, edges, touched);
        return true;
    }

    /** Edges found in {@code edges} are of before this pass: leave neighbours of changed triangles to the next one. */
    private static void touchAll(int t, int[] live, EdgeGroups edges, boolean[] touched) {
        for (int k = 0; k < 3; k++) {
            int other = edges.only(live[3 * t + k], live[3 * t + (k + 1) % 3], 3 * t + k);
            if (other >= 0) touched[other / 3] = true;
        }
    }

    /** Makes the ends of the shortest edge one, where they have no common neighbour but across the edge's own triangles. */
    private boolean close(int t, int[] live, int[] place, EdgeGroups edges, int[] around, int[] triangle, boolean[] touched) {
        int k = shortest(live, t);
        int v = live[3 * t + k], w = live[3 * t + (k + 1) % 3];
        double longest = length2(live[3 * t + (k + 1) % 3], live[3 * t + (k + 2) % 3]);
        if (!(length2(v, w) <= 1e-12 * longest)) return false;
        int low = Math.min(v, w), high = Math.max(v, w);
        if (around[v + 1] - around[v] > LONGEST_SEARCH || around[w + 1] - around[w] > LONGEST_SEARCH) return false;
        int shared = 0;
        for (int x : new int[] {v, w}) {
            for (int i = around[x]; i < around[x + 1]; i++) if (touched[triangle[i]]) return false;
        }
        for (int i = around[high]; i < around[high + 1]; i++) {
            int s = triangle[i];
            boolean both = false;
            for (int j = 0; j < 3; j++) both |= live[3 * s + j] == low;
            if (both) shared++;
        }
        int[] ring = new int[2 * (around[high + 1] - around[high])];
        int size = 0;
        for (int i = around[high]; i < around[high + 1]; i++) {
            for (int j = 0; j < 3; j++) {
                int x = live[3 * triangle[i] + j];
                if (x != high && x != low) ring[size++] = x;
            }
        }
        Arrays.sort(ring, 0, size);
        int common = 0;
        for (int i = 0; i < size; i++) if ((i == 0 || ring[i] != ring[i - 1]) && edges.has(ring[i], low)) common++;
        if (common > shared || shared > 2) return false;
        for (int x : new int[] {low, high}) {
            for (int i = around[x]; i < around[x + 1]; i++) touched[triangle[i]] = true;
        }
        for (int i = around[high]; i < around[high + 1]; i++) {
            int s = triangle[i];
            for (int j = 0; j < 3; j++) if (tri[3 * place[s] + j] == high) tri[3 * place[s] + j] = low;
        }
        return true;
    }

    private void set(int t, int a, int b, int c) {
        tri[3 * t] = a;
        tri[3 * t + 1] = b;
        tri[3 * t + 2] = c;
    }

    private int longest(int[] live, int t) {
        int best = 0;
        for (int k = 1; k < 3; k++) if (edge2(live, t, k) > edge2(live, t, best)) best = k;
        return best;
    }

    private int shortest(int[] live, int t) {
        int best = 0;
        for (int k = 1; k < 3; k++) if (edge2(live, t, k) < edge2(live, t, best)) best = k;
        return best;
    }

    private double edge2(int[] live, int t, int k) {
        return length2(live[3 * t + k], live[3 * t + (k + 1) % 3]);
    }

    private double length2(int v, int w) {
        double x = xyz[3 * v] - xyz[3 * w], y = xyz[3 * v + 1] - xyz[3 * w + 1], z = xyz[3 * v + 2] - xyz[3 * w + 2];
        return x * x + y * y + z * z;
    }

    static boolean flat(double[] xyz, int a, int b, int c) {
        return slimness(xyz, a, b, c) <= FLAT;
    }

    /**
     * Height over longest edge, 0..0.87; 0 where the triangle is smaller than the arithmetic can square. The two products of a 2x2 minor
     * are exact negatives when two corners change places, so a turned triangle gives the same number.
     */
    static double slimness(double[] xyz, int a, int b, int c) {
        double ux = xyz[3 * b] - xyz[3 * a], uy = xyz[3 * b + 1] - xyz[3 * a + 1], uz = xyz[3 * b + 2] - xyz[3 * a + 2];
        double vx = xyz[3 * c] - xyz[3 * a], vy = xyz[3 * c + 1] - xyz[3 * a + 1], vz = xyz[3 * c + 2] - xyz[3 * a + 2];
        double wx = xyz[3 * c] - xyz[3 * b], wy = xyz[3 * c + 1] - xyz[3 * b + 1], wz = xyz[3 * c + 2] - xyz[3 * b + 2];
        double nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
        double longest = Math.max(ux * ux + uy * uy + uz * uz, Math.max(vx * vx + vy * vy + vz * vz, wx * wx + wy * wy + wz * wz));
        return longest < 1e-150 ? 0 : Math.sqrt(nx * nx + ny * ny + nz * nz) / longest;
    }
}
