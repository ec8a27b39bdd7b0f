package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.Arrays;

/**
 * The longest line through a zone that follows the direction of its strain.
 *
 * <p>From a place the line runs both ways, straight within each triangle, until it leaves the zone, meets a rim or a triangle turned over,
 * or comes alongside an older part of itself; round a ring it ends abreast of where it began. In a triangle whose strain prefers its
 * direction by a (0..1) the line runs along a·p + (1 - a)·v with p the direction of the strain and v the one it came with, so that it goes
 * straight on where the strain prefers none.
 * <p>Source: Weinstein, Kindlmann and Lundberg, "Tensorlines: Advection-Diffusion Based Propagation through Diffusion Tensor Fields", IEEE
 * Visualization 1999, docs/sources.md [WKL99]: the same blend, for another tensor.
 */
final class ZoneLine {
    private static final double LONGER = 1 + 1e-9;      // what is longer by less is the same line from another place
    private static final int STUCK = 16;                // steps without length after which a line ends: round one vertex

    private final FlatMap map;
    private final TriMesh form;
    private final EdgeTable edges;
    private final int[] zoneOf;
    private final int zone;
    private final SmoothStrain strain;
    private final boolean larger;
    private final double angle;
    private final int stepLimit;
    private final double noLength;
    private final Trail trail;
    private final Way forward = new Way();
    private final Way backward = new Way();
    private double[] bestUv = new double[0];
    private double[] bestXyz = new double[0];
    private double best = -1;

    /**
     * @param box of the zone on the blank: lowest u and v, highest u and v, mm
     * @param larger follow the larger principal strain, else the smaller
     * @param angle direction to start in where there is no other, rad
     */
    ZoneLine(FlatMap map, EdgeTable edges, int[] zoneOf, int zone, double[] box, SmoothStrain strain, boolean larger,
            double angle) {
        this.map = map;
        this.form = map.form();
        this.edges = edges;
        this.zoneOf = zoneOf;
        this.zone = zone;
        this.strain = strain;
        this.larger = larger;
        this.angle = angle;
        trail = new Trail(box);
        double[] size = map.size();
        noLength = 1e-12 * (size[0] + size[1]);
        stepLimit = 64 + 8 * (int) Math.sqrt(zoneOf.length) * 8;
    }

    /** Draws the line through (u, v) in triangle t and keeps it if it is longer than those before. */
    void from(int t, double u, double v) {
        if (map.area(t) <= 0) {
            if (bestUv.length == 0) spot(t, u, v);
            return;
        }
        double cu = Math.cos(angle), cv = Math.sin(angle);
        double local = strain.direction1(t) + (larger ? 0 : Math.PI / 2);
        double pu = Math.cos(local), pv = Math.sin(local), a = strain.preference(t), sign = pu * cu + pv * cv < 0 ? -1 : 1;
        double du = a * sign * pu + (1 - a) * cu, dv = a * sign * pv + (1 - a) * cv, d = Math.sqrt(du * du + dv * dv);
        trail.begin();
        boolean closed = forward.run(t, u, v, du / d, dv / d, 1);
        if (closed) backward.n = 1;
        else backward.run(t, u, v, -du / d, -dv / d, -1);
        double length = forward.length + (closed ? 0 : backward.length);
        if (length > best * LONGER) keep(length);
    }

    /** A line of one point, for a zone that offers no way. */
    private void spot(int t, double u, double v) {
        double[] w = Barycentre.of(map, t, u, v);
        bestUv = new double[] {u, v};
        bestXyz = new double[3];
        for (int k = 0; k < 3; k++) {
            int c = form.corner(t, k);
            bestXyz[0] += w[k] * form.x(c);
            bestXyz[1] += w[k] * form.y(c);
            bestXyz[2] += w[k] * form.z(c);
        }
    }

    TapeLine longest(String name) {
        return TapeLine.of(name, bestUv, bestXyz);
    }

    private void keep(double length) {
        best = length;
        int n = forward.n + backward.n - 1, at = 0;
        bestUv = new double[2 * n];
        bestXyz = new double[3 * n];
        for (int i = backward.n - 1; i > 0; i--) at = copy(backward, i, at);
        for (int i = 0; i < forward.n; i++) at = copy(forward, i, at);
    }

    private int copy(Way way, int i, int at) {
        System.arraycopy(way.uv, 2 * i, bestUv, 2 * at, 2);
        System.arraycopy(way.xyz, 3 * i, bestXyz, 3 * at, 3);
        return at + 1;
    }

    /** One of the two halves of a line. */
    private final class Way {
        private double[] uv = new double[128];
        private double[] xyz = new double[192];
        private int n;
        private double length;      // on the blank, mm
        private double du;          // where it is heading, unit vector
        private double dv;

        /**
         * Runs from (u, v) in triangle t along the unit vector (startDu, startDv); true where it came round and passed its beginning.
         *
         * @param sense 1 for the first half of a line, -1 for the second, which sees the trail of the first
         */
        boolean run(int t, double u, double v, double startDu, double startDv, int sense) {
            double startU = u, startV = v;
            boolean closing = false;
            int entry = -1, still = 0;
            du = startDu;
            dv = startDv;
            n = 0;
            length = 0;
            double[] w = Barycentre.of(map, t, u, v);
            int p = form.corner(t, 0), q = form.corner(t, 1), r = form.corner(t, 2);
            add(u, v, w[0] * form.x(p) + w[1] * form.x(q) + w[2] * form.x(r), w[0] * form.y(p) + w[1] * form.y(q) + w[2] * form.y(r),
                    w[0] * form.z(p) + w[1] * form.z(q) + w[2] * form.z(r));
            for (int step = 0; step < stepLimit; step++) {
                int exit = exit(t, entry, u, v);
                if (exit < 0) return false;
                int a = form.corner(t, exit), b = form.corner(t, (exit + 1) % 3);
                double eu = map.u(b) - map.u(a), ev = map.v(b) - map.v(a);
                double f = crossing(a, eu, ev, u, v);
                double nextU = map.u(a) + f * eu, nextV = map.v(a) + f * ev;
                add(nextU, nextV, form.x(a) + f * (form.x(b) - form.x(a)), form.y(a) + f * (form.y(b) - form.y(a)),
                        form.z(a) + f * (form.z(b) - form.z(a)));
                double leg = leg(), met = trail.meets(this, leg, sense);
                if (met < 1) {
                    closing = sense > 0 && trail.metAt < Trail.CLOSE * trail.cell && du * startDu + dv * startDv > 0.5;
                    if (!closing) {
                        shorten(met);
                        length += leg();
                        return false;
                    }
                }
                double before = (u - startU) * startDu + (v - startV) * startDv;
                double after = (nextU - startU) * startDu + (nextV - startV) * startDv;
                if (closing && before < 0 && after >= 0) {
                    shorten(before / (before - after));
                    length += leg();
                    return true;
                }
                still = leg > noLength ? 0 : still + 1;
                length += leg;
                if (still > STUCK) return false;
                int half = edges.twin(3 * t + exit);
                if (half < 0 || zoneOf[half / 3] != zone || map.area(half / 3) <= 0) return false;
                t = half / 3;
                entry = half % 3;
                u = nextU;
                v = nextV;
                double local = strain.direction1(t) + (larger ? 0 : Math.PI / 2), pu = Math.cos(local), pv = Math.sin(local);
                double share = strain.preference(t), sign = pu * du + pv * dv < 0 ? -1 : 1;
                double mu = share * sign * pu + (1 - share) * du, mv = share * sign * pv + (1 - share) * dv;
                double m = Math.sqrt(mu * mu + mv * mv);
                if (!(m > 0)) continue;
                mu /= m;
                mv /= m;
                if (mu * ev - mv * eu <= 0) continue;       // would turn back over the edge it came by: straight on
                du = mu;
                dv = mv;
            }
            return false;
        }

        /** Edge of t that the ray from (u, v) meets first, other than the one it came by; -1 where it meets none. */
        private int exit(int t, int entry, double u, double v) {
            int exit = -1;
            double nearest = Double.POSITIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
                if (k == entry) continue;
                int a = form.corner(t, k), b = form.corner(t, (k + 1) % 3);
                double nu = map.v(b) - map.v(a), nv = map.u(a) - map.u(b), out = du * nu + dv * nv;      // normal pointing out
                if (!(out > 0)) continue;
                double far = Math.max(0, ((map.u(a) - u) * nu + (map.v(a) - v) * nv) / out);
                if (far < nearest) {
                    nearest = far;
                    exit = k;
                }
            }
            return exit;
        }

        private double crossing(int a, double eu, double ev, double u, double v) {
            double det = eu * dv - ev * du;
            double f = ((u - map.u(a)) * dv - (v - map.v(a)) * du) / det;
            return f >= 0 ? Math.min(f, 1) : 0;                                       // NaN lands on the first end
        }

        private void add(double u, double v, double x, double y, double z) {
            if (2 * n == uv.length) {
                uv = Arrays.copyOf(uv, 4 * n);
                xyz = Arrays.copyOf(xyz, 6 * n);
            }
            uv[2 * n] = u;
            uv[2 * n + 1] = v;
            xyz[3 * n] = x;
            xyz[3 * n + 1] = y;
            xyz[3 * n + 2] = z;
            n++;
        }

        /** Of the last leg on the blank, mm. */
        private double leg() {
            double du = uv[2 * n - 2] - uv[2 * n - 4], dv = uv[2 * n - 1] - uv[2 * n - 3];
            return Math.sqrt(du * du + dv * dv);
        }

        /** Ends the last leg at fraction f. */
        private void shorten(double f) {
            for (int k = 2; k > 0; k--) uv[2 * n - k] = uv[2 * n - k - 2] + f * (uv[2 * n - k] - uv[2 * n - k - 2]);
            for (int k = 3; k > 0; k--) xyz[3 * n - k] = xyz[3 * n - k - 3] + f * (xyz[3 * n - k] - xyz[3 * n - k - 3]);
        }
    }

    /** Where the line in hand has been, on a grid over the zone: what comes within two cells of an older part of itself has come round. */
    private static final class Trail {
        private static final int CELLS = 64;        // along the longer side of the zone's box
        private static final int OLDER = 8;         // cells of way between two parts that are not neighbours
        private static final double CLOSE = 3;      // cells of way from the beginning within which a line closes on it

        private final double u0;
        private final double v0;
        private final double cell;
        private final int[] line = new int[CELLS * CELLS];
        private final double[] at = new double[CELLS * CELLS];      // way from the beginning where the line first came there, signed, mm
        private int now;
        private double metAt;

        Trail(double[] box) {
            u0 = box[0];
            v0 = box[1];
            cell = Math.max(Math.max(box[2] - box[0], box[3] - box[1]) / (CELLS - 1), Double.MIN_NORMAL);
        }

        void begin() {
            now++;
        }

        /** Fraction of a way's last leg at which it meets an older part of the line, and metAt says where; 1 where it does not. */
        double meets(Way way, double leg, int sense) {
            int samples = 1 + (int) Math.min(4 * CELLS, 2 * leg / cell);
            int from = 2 * way.n - 4;
            for (int i = 1; i <= samples; i++) {
                double f = (double) i / samples, here = sense * (way.length + f * leg);
                int p = index(way.uv[from] + f * (way.uv[from + 2] - way.uv[from]), u0);
                int q = index(way.uv[from + 1] + f * (way.uv[from + 3] - way.uv[from + 1]), v0);
                for (int j = Math.max(0, q - 1); j <= Math.min(CELLS - 1, q + 1); j++) {
                    for (int k = Math.max(0, p - 1); k <= Math.min(CELLS - 1, p + 1); k++) {
                        int c = CELLS * j + k;
                        if (line[c] != now || Math.abs(at[c] - here) < OLDER * cell) continue;
                        metAt = Math.abs(at[c]);
                        return f < 1 ? f : Math.nextDown(1.0);
                    }
                }
                int c = CELLS * q + p;
                if (line[c] != now) {
                    line[c] = now;
                    at[c] = here;
                }
            }
            return 1;
        }

        private int index(double x, double low) {
            return (int) Math.max(0, Math.min(CELLS - 1, (x - low) / cell));
        }
    }
}
