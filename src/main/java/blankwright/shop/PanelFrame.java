package blankwright.shop;

import blankwright.mesh.TriMesh;
import blankwright.num.SymmetricEigen3;

/**
 * The axes of a panel, found from its shape alone: where its centre line runs and which way is up.
 *
 * <ol>
 * <li>The origin is the centroid of the area.
 * <li>Up is the mean normal, weighted by area; for a skin so closed that this vanishes, the direction in which its area lies closest
 *     together.
 * <li>Along is the direction, at right angles to up, in which the area reaches farthest (second moments). Where the panel is symmetric
 *     about the other direction and not about this one (odd third moments below 0.1 % of their scale), along is the other one, so that
 *     the centre line of a symmetric panel lies in its plane of symmetry.
 * <li>Where no direction is the longest (second moments the same within 0.1 %: round, square), threefold, then fourfold moments decide:
 *     along runs through a corner of a triangle and along the sides of a square; where they too are all the same, towards the vertex
 *     farthest out, of several the one with largest x, then y, then z.
 * <li>Along points where the panel tapers farther out (third moment), else towards positive x, y or z, whichever it is nearest to.
 * </ol>
 *
 * <p>Renumbered input gives the same axes to rounding; turned or mirrored input the same axes of the panel, though along may point the
 * other way on a panel whose ends are alike.
 */
public final class PanelFrame {
    private static final double SAME = 1e-3;

    private final double[] origin = new double[3];
    private double[] along;
    private double[] up;
    private double[] across;
    private final TriMesh form;
    private double area;

    private PanelFrame(TriMesh form) {
        this.form = form;
    }

    /** A mesh without area has its axes along x, y and z. */
    public static PanelFrame of(TriMesh form) {
        PanelFrame frame = new PanelFrame(form);
        frame.find();
        return frame;
    }

    /** Coordinate k of the centroid, mm. */
    public double origin(int k) {
        return origin[k];
    }

    /** Coordinate k of the unit vector along the centre line. */
    public double along(int k) {
        return along[k];
    }

    /** Coordinate k of the unit vector out of the outer skin. */
    public double up(int k) {
        return up[k];
    }

    /** Coordinate k of up x along, square to the plane of the centre line. */
    public double across(int k) {
        return across[k];
    }

    /** How far vertex v lies along the centre line from the centroid, mm. */
    public double alongOf(int v) {
        return dot(along, form.x(v) - origin[0], form.y(v) - origin[1], form.z(v) - origin[2]);
    }

    private void find() {
        double[] normal = new double[3], first = new double[3];
        for (int t = 0; t < form.triangleCount(); t++) {
            double a = form.area(t);
            double[] n = form.normal(t);
            area += a;
            for (int k = 0; k < 3; k++) {
                normal[k] += a * n[k];
                for (int c = 0; c < 3; c++) first[k] += a / 3 * coordinate(form.corner(t, c), k);
            }
        }
        if (!(area > 0)) {
            along = new double[] {1, 0, 0};
            up = new double[] {0, 0, 1};
            across = new double[] {0, 1, 0};
            return;
        }
        for (int k = 0; k < 3; k++) origin[k] = first[k] / area;
        double length = Math.sqrt(dot(normal, normal[0], normal[1], normal[2]));
        up = length > SAME * area ? scaled(normal, 1 / length) : flattest();
        choose();
        across = cross(up, along);
    }

    private void choose() {
        int least = 0;
        for (int k = 1; k < 3; k++) if (Math.abs(up[k]) < Math.abs(up[least]) - SAME) least = k;
        double[] flat = scaled(up, -up[least]);         // the coordinate axis farthest from up, less its part along up
        flat[least] += 1;
        double[] e = scaled(flat, 1 / Math.sqrt(dot(flat, flat[0], flat[1], flat[2])));
        double[] f = cross(up, e);
        double[] m = new double[9];     // integrals of (x+iy)^2, ^3, ^4 (re, im) and r^2, r^3, r^4
        eachPoint((w, x, y, z) -> {
            double p = dot(e, x, y, z), q = dot(f, x, y, z), re = p * p - q * q, im = 2 * p * q, rr = p * p + q * q;
            m[0] += w * re;
            m[1] += w * im;
            m[2] += w * (re * p - im * q);
            m[3] += w * (re * q + im * p);
            m[4] += w * (re * re - im * im);
            m[5] += w * 2 * re * im;
            m[6] += w * rr;
            m[7] += w * rr * Math.sqrt(rr);
            m[8] += w * rr * rr;
        });
        double angle;
        if (Math.hypot(m[0], m[1]) > SAME * m[6]) angle = Math.atan2(m[1], m[0]) / 2;
        else if (Math.hypot(m[2], m[3]) > SAME * m[7]) angle = Math.atan2(m[3], m[2]) / 3;
        else if (Math.hypot(m[4], m[5]) > SAME * m[8]) angle = (Math.atan2(m[5], m[4]) + Math.PI) / 4;
        else angle = farthest(e, f);
        double[] a = new double[3];
        for (int k = 0; k < 3; k++) a[k] = Math.cos(angle) * e[k] + Math.sin(angle) * f[k];
        double[] b = cross(up, a);
        if (!symmetric(a, b) && symmetric(b, a)) a = b;
        along = pointed(a);
    }

    /** Whether the plane of a and up halves the panel, by the moments that are odd in b. */
    private boolean symmetric(double[] a, double[] b) {
        double[] odd = new double[6];
        eachPoint((w, x, y, z) -> {
            double p = dot(a, x, y, z), q = dot(b, x, y, z), r = dot(up, x, y, z);
            odd[0] += w * q * q * q;
            odd[1] += w * p * p * q;
            odd[2] += w * q * r * r;
            odd[3] += w * p * q * r;
            odd[4] += w * (p * p + q * q + r * r);
            odd[5] += w * q * r;
        });
        double radius = Math.sqrt(odd[4] / area), scale = area * radius * radius * radius;
        double most = Math.abs(odd[5]) * radius;
        for (int k = 0; k < 4; k++) most = Math.max(most, Math.abs(odd[k]));
        return most <= SAME * scale;
    }

    private double[] pointed(double[] a) {
        double[] m = new double[2];
        eachPoint((w, x, y, z) -> {
            double p = dot(a, x, y, z);
            m[0] += w * p * p * p;
            m[1] += w * Math.abs(p * p * p);
        });
        double sign = m[0];
        if (Math.abs(m[0]) <= SAME * m[1]) sign = a[mostAlong(a)];
        return scaled(a, sign < 0 ? -1 : 1);
    }

    private double farthest(double[] e, double[] f) {
        int best = -1;
        double most = -1;
        for (int v = 0; v < form.vertexCount(); v++) {
            double x = form.x(v) - origin[0], y = form.y(v) - origin[1], z = form.z(v) - origin[2];
            double far = Math.hypot(dot(e, x, y, z), dot(f, x, y, z));
            if (best < 0 || far > most * (1 + 1e-9) || far > most * (1 - 1e-9) && ahead(v, best, 1e-9 * most)) {
                most = Math.max(most, far);
                best = v;
            }
        }
        double x = form.x(best) - origin[0], y = form.y(best) - origin[1], z = form.z(best) - origin[2];
        return Math.atan2(dot(f, x, y, z), dot(e, x, y, z));
    }

    private boolean ahead(int v, int w, double near) {
        for (int k = 0; k < 3; k++) {
            double d = coordinate(v, k) - coordinate(w, k);
            if (Math.abs(d) > near) return d > 0;
        }
        return false;
    }

    /** Axis of the smallest second moment, pointing to the positive side of the coordinate axis it is nearest to. */
    private double[] flattest() {
        double[] c = new double[6];
        eachPoint((w, x, y, z) -> {
            c[0] += w * x * x;
            c[1] += w * x * y;
            c[2] += w * x * z;
            c[3] += w * y * y;
            c[4] += w * y * z;
            c[5] += w * z * z;
        });
        SymmetricEigen3 moments = new SymmetricEigen3(c[0], c[1], c[2], c[3], c[4], c[5]);
        double[] axis = {moments.vector(2, 0), moments.vector(2, 1), moments.vector(2, 2)};
        return scaled(axis, axis[mostAlong(axis)] < 0 ? -1 : 1);
    }

    /** The coordinate axis a direction is nearest to, the first of equals. */
    private static int mostAlong(double[] a) {
        int most = 0;
        for (int k = 1; k < 3; k++) if (Math.abs(a[k]) > Math.abs(a[most]) + SAME) most = k;
        return most;
    }

    private interface Mass {
        void at(double weight, double x, double y, double z);
    }

    /**
     * Four points per triangle whose weighted sums are the integrals of all polynomials up to the third degree (Strang and Fix 1973,
     * [SF73]).
     */
    private void eachPoint(Mass mass) {
        double[] p = new double[9];
        for (int t = 0; t < form.triangleCount(); t++) {
            double a = form.area(t);
            if (!(a > 0)) continue;
            for (int c = 0; c < 3; c++) for (int k = 0; k < 3; k++) p[3 * c + k] = coordinate(form.corner(t, c), k) - origin[k];
            double x = p[0] + p[3] + p[6], y = p[1] + p[4] + p[7], z = p[2] + p[5] + p[8];
            mass.at(-27.0 / 48 * a, x / 3, y / 3, z / 3);
            for (int c = 0; c < 9; c += 3) mass.at(25.0 / 48 * a, 0.2 * x + 0.4 * p[c], 0.2 * y + 0.4 * p[c + 1], 0.2 * z + 0.4 * p[c + 2]);
        }
    }

    private double coordinate(int v, int k) {
        return k == 0 ? form.x(v) : k == 1 ? form.y(v) : form.z(v);
    }

    private static double dot(double[] a, double x, double y, double z) {
        return a[0] * x + a[1] * y + a[2] * z;
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double[] scaled(double[] a, double factor) {
        return new double[] {factor * a[0], factor * a[1], factor * a[2]};
    }
}
