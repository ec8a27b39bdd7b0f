package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The line through a zone that tells its work: one that follows the direction of its strain, long, and of the long ones that changes most.
 *
 * <p>Of the lines drawn, those not shorter than {@link #LONG} of the longest are long. A turned flange and the skin round it can be one
 * zone; there the longest line may run along the skin, which is let out by 4 mm, while one only a little shorter runs along the edge of the
 * flange, which is let out by 17 mm. Where a zone is to be left the longest is taken.
 * <p>From a place the line runs both ways, straight within each triangle, until it leaves the zone, meets a rim or a triangle turned over,
 * or comes alongside an older part of itself; round a ring it ends abreast of where it began. In a triangle whose strain prefers its
 * direction by a (0..1) the line runs along a·p + (1 - a)·v with p the direction of the strain and v the one it came with, so that it goes
 * straight on where the strain prefers none. Where it would graze a rim, by 15 degrees or less, it turns beside it: along an edge that must
 * be worked all lines would otherwise end after a few facets.
 * <p>Source: Weinstein, Kindlmann and Lundberg, "Tensorlines: Advection-Diffusion Based Propagation through Diffusion Tensor Fields", IEEE
 * Visualization 1999, docs/sources.md [WKL99]: the same blend, for another tensor.
 */
final class ZoneLine {
    private static final double LONG = 2.0 / 3;
    private static final double SAME = 1e-9;            // of the longest: what differs by less is the same line from another place
    private static final double GRAZING = Math.cos(Math.toRadians(15));
    private static final int STUCK = 16;                // steps without length after which a line ends: round one vertex

    private final FlatMap map;
    private final TriMesh form;
    private final EdgeTable edges;
    private final int[] zoneOf;
    private final int zone;
    private final SmoothStrain strain;
    private final boolean larger;
    private final double sense;
    private final double angle;
    private final int stepLimit;
    private final double noLength;
    private final Trail trail;
    private final Way forward = new Way();
    private final Way backward = new Way();
    private final List<Start> starts = new ArrayList<>();
    private Start spot;

    /** A place a line was drawn from, and what came of it, mm. */
    private record Start(int triangle, double u, double v, double length, double change) { }

    /**
     * @param box of the zone on the blank: lowest u and v, highest u and v, mm
     * @param larger follow the larger principal strain, else the smaller
     * @param sense 1 where the line is to be let out, -1 where it is to be taken in, 0 where it is to be left
     * @param angle direction to start in where there is no other, rad
     */
    ZoneLine(FlatMap map, EdgeTable edges, int[] zoneOf, int zone, double[] box, SmoothStrain strain, boolean larger,
            double sense, double angle) {
        this.map = map;
        this.form = map.form();
        this.edges = edges;
        this.zoneOf = zoneOf;
        this.zone = zone;
        this.strain = strain;
        this.larger = larger;
        this.sense = sense;
        this.angle = angle;
        trail = new Trail(box);
        double[] size = map.size();
        noLength = 1e-12 * (size[0] + size[1]);
        stepLimit = 64 + 8 * (int) Math.sqrt(zoneOf.length) * 8;
    }

    /** Draws the line through (u, v) in triangle t and remembers what came of it. */
    void from(int t, double u, double v) {
        if (map.area(t) <= 0) {
            if (spot == null) spot = new Start(t, u, v, 0, 0);
            return;
        }
        TapeLine line = drawn(t, u, v);
        starts.add(new Start(t, u, v, line.blankLength(), line.change()));
    }

    private TapeLine drawn(int t, double u, double v) {
        double cu = Math.cos(angle), cv = Math.sin(angle);
        double local = strain.direction1(t) + (larger ? 0 : Math.PI / 2);
        double pu = Math.cos(local), pv = Math.sin(local), a = strain.preference(t), sign = pu * cu + pv * cv < 0 ? -1 : 1;
        double du = a * sign * pu + (1 - a) * cu, dv = a * sign * pv + (1 - a) * cv, d = Math.sqrt(du * du + dv * dv);
        trail.begin();
        boolean closed = forward.run(t, u, v, du / d, dv / d, 1);
        if (closed) backward.n = 1;
        else backward.run(t, u, v, -du / d, -dv / d, -1);
        int n = forward.n + backward.n - 1, at = 0;
        double[] uv = new double[2 * n], xyz = new double[3 * n];
        for (int i = backward.n - 1; i > 0; i--) backward.copy(i, uv, xyz, at++);
        for (int i = 0; i < forward.n; i++) forward.copy(i, uv, xyz, at++);
        int kept = onceRound(uv, xyz);
        return TapeLine.of("zone " + (zone + 1), Arrays.copyOf(uv, 2 * kept), Arrays.copyOf(xyz, 3 * kept));
    }

    /**
     * How many points of the line to keep: up to where it passes abreast of its first, heading the same way after turning right round; the
     * last of them is moved there.
     */
    private static int onceRound(double[] uv, double[] xyz) {
        double hu = 0, hv = 0, lastU = 0, lastV = 0, turned = 0;
        for (int i = 1; i < uv.length / 2; i++) {
            double du = uv[2 * i] - uv[2 * i - 2], dv = uv[2 * i + 1] - uv[2 * i - 1];
            if (du == 0 && dv == 0) continue;
            if (hu == 0 && hv == 0) {
                hu = du;
                hv = dv;
            } else turned += Math.atan2(lastU * dv - lastV * du, lastU * du + lastV * dv);
            lastU = du;
            lastV = dv;
            double there = (uv[2 * i] - uv[0]) * hu + (uv[2 * i + 1] - uv[1]) * hv, here = there - du * hu - dv * hv;
            if (Math.abs(turned) < Math.PI || here >= 0 || there < 0) continue;
            double f = here / (here - there);
            for (int k = 0; k < 2; k++) uv[2 * i + k] = uv[2 * i - 2 + k] + f * (uv[2 * i + k] - uv[2 * i - 2 + k]);
            for (int k = 0; k < 3; k++) xyz[3 * i + k] = xyz[3 * i - 3 + k] + f * (xyz[3 * i + k] - xyz[3 * i - 3 + k]);
            return i + 1;
        }
        return uv.length / 2;
    }

    /** The line that was asked for; one of a single point in a zone that offers no way. */
    TapeLine line() {
        if (starts.isEmpty()) {
            int[] triangle = {spot.triangle()};
            return TapeLine.of("zone " + (zone + 1), map, triangle, Barycentre.of(map, triangle[0], spot.u(), spot.v()));
        }
        double longest = 0;
        for (Start start : starts) longest = Math.max(longest, start.length());
        Start best = null;
        for (Start start : starts) {
            if (start.length() >= LONG * longest && (best == null || worth(start) > worth(best) + SAME * longest)) best = start;
        }
        return drawn(best.triangle(), best.u(), best.v());
    }

    private double worth(Start start) {
        return sense == 0 ? start.length() : sense * start.change();
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
                if (exit >= 0 && edges.twin(3 * t + exit) < 0 && alongside(t, exit)) exit = exit(t, entry, u, v);
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
                double here = (u - startU) * startDu + (v - startV) * startDv;
                double there = (nextU - startU) * startDu + (nextV - startV) * startDv;
                if (closing && here < 0 && there >= 0) {
                    shorten(here / (here - there));
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

        /** Turns beside edge k of triangle t, if that takes no more than {@link #GRAZING}; whether it did. */
        private boolean alongside(int t, int k) {
            int a = form.corner(t, k), b = form.corner(t, (k + 1) % 3);
            double eu = map.u(b) - map.u(a), ev = map.v(b) - map.v(a), e = Math.sqrt(eu * eu + ev * ev), cos = (du * eu + dv * ev) / e;
            if (!(Math.abs(cos) >= GRAZING)) return false;
            du = cos < 0 ? -eu / e : eu / e;
            dv = cos < 0 ? -ev / e : ev / e;
            return true;
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

        void copy(int i, double[] toUv, double[] toXyz, int at) {
            System.arraycopy(uv, 2 * i, toUv, 2 * at, 2);
            System.arraycopy(xyz, 3 * i, toXyz, 3 * at, 3);
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
