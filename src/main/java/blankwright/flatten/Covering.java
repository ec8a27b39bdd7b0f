package blankwright.flatten;

import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * One place where a layout covers itself: the two stretches of rim that cross there, and the way to part them.
 *
 * <ol><li>Sides of the rims that meet the place; sides that follow each other, with short gaps, are one stretch.
 * <li>The two longest stretches. Of more than two the others wait until these are parted.
 * <li>The integral of a stretch's outward normal is its chord turned by a right angle: how fast the covered area grows when it moves. The
 * first stretch is to move against its own and along the other's, relative to the other.</ol>
 */
public final class Covering {
    private final int loop, otherLoop;
    private final int[] first, second;      // vertices in rim order
    private final double du, dv;

    private Covering(int loop, int[] first, int otherLoop, int[] second, double du, double dv) {
        this.loop = loop;
        this.first = first;
        this.otherLoop = otherLoop;
        this.second = second;
        this.du = du;
        this.dv = dv;
    }

    /** Sides from..from+count-1 of one loop, cyclic. */
    private record Run(int loop, int from, int count, double length) { }

    /**
     * @param rims of the form
     * @param places rings round the places where the layout covers itself, x, y, x, y, ... in mm
     * @return in the order of the places; those at which no two stretches are found are left out
     */
    public static List<Covering> of(FlatMap map, RimLoops rims, List<double[]> places) {
        List<Covering> all = new ArrayList<>();
        for (double[] place : places) {
            List<Run> runs = new ArrayList<>();
            for (int i = 0; i < rims.count(); i++) runs(map, rims.loop(i), i, place, runs);
            if (runs.size() < 2) continue;
            runs.sort(Comparator.comparingDouble(Run::length).reversed().thenComparingInt(Run::loop).thenComparingInt(Run::from));
            int[] one = vertices(rims.loop(runs.get(0).loop()), runs.get(0)), other = vertices(rims.loop(runs.get(1).loop()), runs.get(1));
            double[] f = outward(map, one), g = outward(map, other);
            double u = g[0] - f[0], v = g[1] - f[1], length = Math.hypot(u, v);
            if (length > 1e-6) all.add(new Covering(runs.get(0).loop(), one, runs.get(1).loop(), other, u / length, v / length));
        }
        return all;
    }

    private static void runs(FlatMap map, int[] loop, int number, double[] place, List<Run> runs) {
        int n = loop.length;
        boolean[] meets = new boolean[n];
        double[] length = new double[n];
        int start = -1;
        double around = 0;
        for (int k = 0; k < place.length; k += 2)
            around += Math.hypot(place[(k + 2) % place.length] - place[k], place[(k + 3) % place.length] - place[k + 1]);
        for (int i = 0; i < n; i++) {
            int a = loop[i], b = loop[(i + 1) % n];
            length[i] = Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a));
            meets[i] = meets(place, map.u(a), map.v(a), map.u(b), map.v(b));
            if (!meets[i]) start = i;
        }
        if (start < 0) {                                    // the whole loop lies within
            runs.add(new Run(number, 0, n, Arrays.stream(length).sum()));
            return;
        }
        int from = -1, last = -1;
        double in = 0, gap = 0;
        for (int k = 1; k <= n; k++) {
            int i = (start + k) % n;
            if (meets[i]) {
                if (from < 0) from = start + k;
                last = start + k;
                in += length[i];
                gap = 0;
            } else if (from >= 0) {
                gap += length[i];
                if (gap > around / 4 || k == n) {
                    runs.add(new Run(number, from % n, last - from + 1, in));
                    from = -1;
                    in = gap = 0;
                }
            }
        }
    }

    /** Whether a side comes within {@value #NEAR} mm of the inside of a ring. */
    private static boolean meets(double[] ring, double ax, double ay, double bx, double by) {
        boolean in = false;
        for (int k = 0; k < ring.length; k += 2) {
            double cx = ring[k], cy = ring[k + 1], dx = ring[(k + 2) % ring.length], dy = ring[(k + 3) % ring.length];
            if (cy > ay != dy > ay && ax < cx + (ay - cy) / (dy - cy) * (dx - cx)) in = !in;
            if (Math.max(ax, bx) < Math.min(cx, dx) - NEAR || Math.min(ax, bx) > Math.max(cx, dx) + NEAR
                    || Math.max(ay, by) < Math.min(cy, dy) - NEAR || Math.min(ay, by) > Math.max(cy, dy) + NEAR) continue;
            double p = cross(ax, ay, bx, by, cx, cy), q = cross(ax, ay, bx, by, dx, dy), r = cross(cx, cy, dx, dy, ax, ay), s = cross(cx, cy, dx, dy, bx, by);
            if (p * q <= 0 && r * s <= 0 || away(ax, ay, cx, cy, dx, dy) <= NEAR || away(bx, by, cx, cy, dx, dy) <= NEAR
                    || away(cx, cy, ax, ay, bx, by) <= NEAR) return true;
        }
        return in;
    }

    private static final double NEAR = 1e-3;        // mm; what judges the places makes points within 1e-4 mm one

    private static double cross(double ax, double ay, double bx, double by, double px, double py) {
        return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
    }

    private static double away(double px, double py, double ax, double ay, double bx, double by) {
        double dx = bx - ax, dy = by - ay, l = dx * dx + dy * dy;
        double t = l > 0 ? Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / l)) : 0;
        return Math.hypot(px - ax - t * dx, py - ay - t * dy);
    }

    private static int[] vertices(int[] loop, Run run) {
        int[] at = new int[Math.min(loop.length, run.count() + 1)];
        for (int i = 0; i < at.length; i++) at[i] = loop[(run.from() + i) % loop.length];
        return at;
    }

    /** Unit vector out of the metal, on the whole; zeros where the ends coincide. The metal is on the left. */
    private static double[] outward(FlatMap map, int[] stretch) {
        int a = stretch[0], b = stretch[stretch.length - 1];
        double u = map.v(b) - map.v(a), v = map.u(a) - map.u(b), length = Math.hypot(u, v);
        return length > 0 ? new double[] {u / length, v / length} : new double[2];
    }

    /** Number of the rim loop of {@link #first}. */
    public int loop() {
        return loop;
    }

    /** Number of the rim loop of {@link #second}. */
    public int otherLoop() {
        return otherLoop;
    }

    /** Vertices of the first stretch in rim order; a copy. */
    public int[] first() {
        return first.clone();
    }

    /** Vertices of the second stretch in rim order; a copy. */
    public int[] second() {
        return second.clone();
    }

    /** Along u: with {@link #dv} the unit direction in which the first stretch must move relative to the second. */
    double du() {
        return du;
    }

    double dv() {
        return dv;
    }
}
