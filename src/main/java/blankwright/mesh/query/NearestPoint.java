package blankwright.mesh.query;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.concurrent.ForkJoinTask;

/**
 * Finds the place on the skin nearest to a point in space, by a tree of boxes round the triangles. Build once, ask often, from any thread.
 *
 * <p>Of places equally near the one in the lowest triangle is given. Nearest point of one triangle: Ericson, "Real-Time Collision
 * Detection", 2005, section 5.1.5; docs/sources.md [E05].
 */
public final class NearestPoint {
    private static final int LEAF = 4;
    private static final int FORK = 20_000;     // triangles from which both halves are built at once

    private final TriMesh mesh;
    private final int[] order;      // triangles; a node holds a run of them, split in the middle
    private final double[] box;     // node i: low x, y, z, high x, y, z; children 2i+1 and 2i+2

    private NearestPoint(TriMesh mesh) {
        this.mesh = mesh;
        int count = mesh.triangleCount();
        order = new int[count];
        for (int t = 0; t < count; t++) order[t] = t;
        int nodes = 1;
        for (int run = count; run > LEAF; run = (run + 1) / 2) nodes = 2 * nodes + 1;
        box = new double[6 * nodes];
        double[] middle = new double[3 * count];
        for (int t = 0; t < count; t++)
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                middle[3 * t] += mesh.x(v);
                middle[3 * t + 1] += mesh.y(v);
                middle[3 * t + 2] += mesh.z(v);
            }
        build(0, 0, count, middle);
    }

    /** @throws IllegalArgumentException without triangles */
    public static NearestPoint on(TriMesh mesh) {
        if (mesh.triangleCount() == 0) throw new IllegalArgumentException("a surface without triangles");
        return new NearestPoint(mesh);
    }

    /** Nearest places on the blank, to carry a mark back to the form: ask {@link #to(double, double, double)} with (u, v, 0). */
    public static NearestPoint on(FlatMap map) {
        double[] uv = map.positions(), xyz = new double[uv.length / 2 * 3];
        for (int i = 0; i < uv.length / 2; i++) {
            xyz[3 * i] = uv[2 * i];
            xyz[3 * i + 1] = uv[2 * i + 1];
        }
        return on(map.form().withPositions(xyz));
    }

    /** Place nearest to (x, y, z), mm, finite. */
    public SkinPoint to(double x, double y, double z) {
        if (!Double.isFinite(x + y + z)) throw new IllegalArgumentException("point (" + x + ", " + y + ", " + z + ")");
        double[] best = {Double.POSITIVE_INFINITY, -1, 0, 0, 0};        // squared distance, triangle, weights
        search(0, 0, order.length, new double[] {x, y, z}, best, -1);
        return new SkinPoint((int) best[1], best[2], best[3], best[4]);
    }

    /**
     * Squared distance of (x, y, z), mm, finite, from the nearest place, mm²; or, sooner found, from any place that is no farther than
     * {@code enough}, mm².
     */
    public double distance2(double x, double y, double z, double enough) {
        double[] best = {Double.POSITIVE_INFINITY, -1, 0, 0, 0};
        search(0, 0, order.length, new double[] {x, y, z}, best, enough);
        return best[0];
    }

    /** Halves the run along the longest side of the box round its middles, and draws the box round what it holds. */
    private void build(int node, int low, int high, double[] middle) {
        double[] lo = {1e300, 1e300, 1e300}, hi = {-1e300, -1e300, -1e300};
        if (high - low <= LEAF) {
            for (int i = low; i < high; i++)
                for (int k = 0; k < 3; k++) {
                    int v = mesh.corner(order[i], k);
                    grow(lo, hi, mesh.x(v), mesh.y(v), mesh.z(v));
                }
            System.arraycopy(lo, 0, box, 6 * node, 3);
            System.arraycopy(hi, 0, box, 6 * node + 3, 3);
            return;
        }
        for (int i = low; i < high; i++) grow(lo, hi, middle[3 * order[i]], middle[3 * order[i] + 1], middle[3 * order[i] + 2]);
        int axis = 0;
        for (int k = 1; k < 3; k++) if (hi[k] - lo[k] > hi[axis] - lo[axis]) axis = k;
        int half = low + (high - low + 1) / 2;
        select(low, high - 1, half, axis, middle);
        if (high - low < FORK) {
            build(2 * node + 1, low, half, middle);
            build(2 * node + 2, half, high, middle);
        } else {
            ForkJoinTask<?> left = ForkJoinTask.adapt(() -> build(2 * node + 1, low, half, middle)).fork();
            build(2 * node + 2, half, high, middle);
            left.join();
        }
        for (int k = 0, one = 6 * (2 * node + 1), two = one + 6; k < 3; k++) {
            box[6 * node + k] = Math.min(box[one + k], box[two + k]);
            box[6 * node + 3 + k] = Math.max(box[one + 3 + k], box[two + 3 + k]);
        }
    }

    private static void grow(double[] lo, double[] hi, double x, double y, double z) {
        lo[0] = Math.min(lo[0], x);
        lo[1] = Math.min(lo[1], y);
        lo[2] = Math.min(lo[2], z);
        hi[0] = Math.max(hi[0], x);
        hi[1] = Math.max(hi[1], y);
        hi[2] = Math.max(hi[2], z);
    }

    /** Brings the triangles before place {@code nth} along the axis to the front (Hoare's selection, middle pivot). */
    private void select(int low, int high, int nth, int axis, double[] middle) {
        while (low < high) {
            double pivot = middle[3 * order[(low + high) >>> 1] + axis];
            int i = low, j = high;
            while (i <= j) {
                while (middle[3 * order[i] + axis] < pivot) i++;
                while (middle[3 * order[j] + axis] > pivot) j--;
                if (i <= j) {
                    int keep = order[i];
                    order[i++] = order[j];
                    order[j--] = keep;
                }
            }
            if (nth <= j) high = j;
            else if (nth >= i) low = i;
            else return;
        }
    }

    /** Until the best is no farther than {@code enough}, squared, or none can be nearer. */
    private void search(int node, int low, int high, double[] p, double[] best, double enough) {
        if (best[0] <= enough) return;
        if (high - low <= LEAF) {
            for (int i = low; i < high; i++) ask(order[i], p, best);
            return;
        }
        int half = low + (high - low + 1) / 2;
        double left = toBox(2 * node + 1, p), right = toBox(2 * node + 2, p);
        if (left <= right) {
            if (left <= best[0]) search(2 * node + 1, low, half, p, best, enough);
            if (right <= best[0]) search(2 * node + 2, half, high, p, best, enough);
        } else {
            if (right <= best[0]) search(2 * node + 2, half, high, p, best, enough);
            if (left <= best[0]) search(2 * node + 1, low, half, p, best, enough);
        }
    }

    private double toBox(int node, double[] p) {
        double sum = 0;
        for (int k = 0; k < 3; k++) {
            double off = Math.max(0, Math.max(box[6 * node + k] - p[k], p[k] - box[6 * node + 3 + k]));
            sum += off * off;
        }
        return sum;
    }

    private void ask(int t, double[] p, double[] best) {
        double[] w = weights(mesh, t, p);
        double[] q = new SkinPoint(t, w[0], w[1], w[2]).on(mesh);
        double off = (q[0] - p[0]) * (q[0] - p[0]) + (q[1] - p[1]) * (q[1] - p[1]) + (q[2] - p[2]) * (q[2] - p[2]);
        if (off > best[0] || off == best[0] && t > best[1]) return;
        best[0] = off;
        best[1] = t;
        System.arraycopy(w, 0, best, 2, 3);
    }

    /** Weights of the point of triangle t nearest to p: a corner, a point of a side that has a length, or the foot inside. */
    static double[] weights(TriMesh mesh, int t, double[] p) {
        int a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
        double[] ab = from(mesh, a, b), ac = from(mesh, a, c);
        double[] ap = {p[0] - mesh.x(a), p[1] - mesh.y(a), p[2] - mesh.z(a)};
        double d1 = dot(ab, ap), d2 = dot(ac, ap);
        if (d1 <= 0 && d2 <= 0) return new double[] {1, 0, 0};
        double[] bp = {p[0] - mesh.x(b), p[1] - mesh.y(b), p[2] - mesh.z(b)};
        double d3 = dot(ab, bp), d4 = dot(ac, bp);
        if (d3 >= 0 && d4 <= d3) return new double[] {0, 1, 0};
        double vc = d1 * d4 - d3 * d2;
        if (vc <= 0 && d1 >= 0 && d3 <= 0 && d1 > d3) return new double[] {1 - d1 / (d1 - d3), d1 / (d1 - d3), 0};
        double[] cp = {p[0] - mesh.x(c), p[1] - mesh.y(c), p[2] - mesh.z(c)};
        double d5 = dot(ab, cp), d6 = dot(ac, cp);
        if (d6 >= 0 && d5 <= d6) return new double[] {0, 0, 1};
        double vb = d5 * d2 - d1 * d6;
        if (vb <= 0 && d2 >= 0 && d6 <= 0 && d2 > d6) return new double[] {1 - d2 / (d2 - d6), 0, d2 / (d2 - d6)};
        double va = d3 * d6 - d5 * d4;
        if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
            double w = (d4 - d3) / (d4 - d3 + (d5 - d6));
            return new double[] {0, 1 - w, w};
        }
        double v = vb / (va + vb + vc), w = vc / (va + vb + vc);
        return new double[] {1 - v - w, v, w};
    }

    private static double[] from(TriMesh mesh, int v, int w) {
        return new double[] {mesh.x(w) - mesh.x(v), mesh.y(w) - mesh.y(v), mesh.z(w) - mesh.z(v)};
    }

    private static double dot(double[] p, double[] q) {
        return p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
    }
}
