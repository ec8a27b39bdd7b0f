package blankwright.viewer.model;

import blankwright.mesh.TriMesh;
import blankwright.shop.PanelFrame;
import java.util.List;

/**
 * Where the eye stands: it looks at a place, from a direction, and sees a certain height there. Immutable.
 *
 * <p>The eye goes round the panel's own up: yaw 0 looks from the end its centre line points to, pitch 90° from above. The picture is in
 * perspective of {@link #FIELD}; the plane through the place looked at shows at the same size everywhere. Screen: pixels from the middle of
 * the pane, x right, y down.
 */
public final class Orbit {
    /** Angle of view from top to bottom, rad: narrow, so that far and near compare. */
    public static final double FIELD = Math.toRadians(22);
    private static final double NEAREST = 0.5, FARTHEST = 1e6;      // mm seen from top to bottom

    private final double[] along, across, up;
    private final double[] target;
    private final double yaw, pitch, span;

    private Orbit(double[] along, double[] across, double[] up, double[] target, double yaw, double pitch, double span) {
        this.along = along;
        this.across = across;
        this.up = up;
        this.target = target;
        this.yaw = yaw;
        this.pitch = Math.max(-Math.PI / 2, Math.min(Math.PI / 2, pitch));
        this.span = Math.max(NEAREST, Math.min(FARTHEST, span));
    }

    /** Looking at the panel's centroid from a corner, outside. */
    public static Orbit round(PanelFrame frame) {
        double[] along = new double[3], across = new double[3], up = new double[3], at = new double[3];
        for (int k = 0; k < 3; k++) {
            along[k] = frame.along(k);
            across[k] = frame.across(k);
            up[k] = frame.up(k);
            at[k] = frame.origin(k);
        }
        return new Orbit(along, across, up, at, Math.toRadians(300), Math.toRadians(35), 500);
    }

    /** From the place looked at to the eye, unit. */
    public double[] towards() {
        double c = Math.cos(pitch), s = Math.sin(pitch);
        return mixed(c * Math.cos(yaw), c * Math.sin(yaw), s);
    }

    /** To the right on the screen, unit. */
    public double[] right() {
        return mixed(-Math.sin(yaw), Math.cos(yaw), 0);
    }

    /** Upwards on the screen, unit. */
    public double[] upward() {
        double c = Math.cos(pitch), s = Math.sin(pitch);
        return mixed(-s * Math.cos(yaw), -s * Math.sin(yaw), c);
    }

    private double[] mixed(double a, double b, double c) {
        double[] v = new double[3];
        for (int k = 0; k < 3; k++) v[k] = a * along[k] + b * across[k] + c * up[k];
        return v;
    }

    /** Coordinate k of the place looked at, mm. */
    public double target(int k) {
        return target[k];
    }

    /** mm seen from top to bottom at the place looked at. */
    public double span() {
        return span;
    }

    public double yaw() {
        return yaw;
    }

    public double pitch() {
        return pitch;
    }

    /** From the eye to the place looked at, mm. */
    public double distance() {
        return span / 2 / Math.tan(FIELD / 2);
    }

    /** Turned by so much, rad; never over the top. */
    public Orbit turned(double byYaw, double byPitch) {
        return new Orbit(along, across, up, target, yaw + byYaw, pitch + byPitch, span);
    }

    /** Moved so that what lay in the middle lies (dx, dy) from it, in a pane of the given height. */
    public Orbit moved(double dx, double dy, double paneHeight) {
        return lookingAt(onPlane(-dx, -dy, paneHeight));
    }

    /** Seen {@code factor} times smaller, what lies at (x, y) staying there. */
    public Orbit zoomed(double factor, double x, double y, double paneHeight) {
        double[] held = onPlane(x, y, paneHeight), at = new double[3];
        double there = Math.max(NEAREST, Math.min(FARTHEST, span * factor)), f = there / span;
        for (int k = 0; k < 3; k++) at[k] = held[k] + f * (target[k] - held[k]);
        return new Orbit(along, across, up, at, yaw, pitch, there);
    }

    public Orbit lookingAt(double... place) {
        return new Orbit(along, across, up, place.clone(), yaw, pitch, span);
    }

    public Orbit from(Side side) {
        return new Orbit(along, across, up, target, side.yaw(), side.pitch(), span);
    }

    /** Square to the skin at a place with that unit normal. */
    public Orbit squareTo(double[] place, double[] normal) {
        double a = dot(normal, along), b = dot(normal, across), c = dot(normal, up);
        double turn = Math.hypot(a, b) < 1e-6 ? yaw : Math.atan2(b, a);
        return new Orbit(along, across, up, place.clone(), turn, Math.atan2(c, Math.hypot(a, b)), span);
    }

    /** With everything in the pane, a little room round it. */
    public Orbit fitting(List<TriMesh> forms, double paneWidth, double paneHeight) {
        double[] r = right(), u = upward(), t = towards();
        double[] low = {1e300, 1e300, 1e300}, high = {-1e300, -1e300, -1e300};
        for (TriMesh form : forms) {
            for (int v = 0; v < form.vertexCount(); v++) {
                double[] p = {form.x(v), form.y(v), form.z(v)};
                double[] seen = {dot(p, r), dot(p, u), dot(p, t)};
                for (int k = 0; k < 3; k++) {
                    low[k] = Math.min(low[k], seen[k]);
                    high[k] = Math.max(high[k], seen[k]);
                }
            }
        }
        if (!(high[0] >= low[0])) return this;
        double[] at = new double[3];
        for (int k = 0; k < 3; k++) for (int c = 0; c < 3; c++) at[k] += (low[c] + high[c]) / 2 * (c == 0 ? r : c == 1 ? u : t)[k];
        double tall = Math.max(high[1] - low[1], (high[0] - low[0]) * paneHeight / paneWidth);
        double nearer = (high[2] - low[2]) / 2 * 2 * Math.tan(FIELD / 2);       // what stands nearer looks larger
        return new Orbit(along, across, up, at, yaw, pitch, Math.max(1, 1.12 * tall + nearer));
    }

    /** The place of the plane looked at that shows at (x, y). */
    public double[] onPlane(double x, double y, double paneHeight) {
        double mm = span / paneHeight;
        double[] r = right(), u = upward(), p = target.clone();
        for (int k = 0; k < 3; k++) p[k] += mm * (x * r[k] - y * u[k]);
        return p;
    }

    /** Where a place shows: {x, y, scale in pixels for each mm}; scale 0 where it lies behind the eye. */
    public double[] seen(double x, double y, double z, double paneHeight) {
        double[] p = {x - target[0], y - target[1], z - target[2]};
        double depth = distance() - dot(p, towards());
        if (!(depth > 0)) return new double[3];
        double scale = paneHeight / span * distance() / depth;
        return new double[] {dot(p, right()) * scale, -dot(p, upward()) * scale, scale};
    }

    private static double dot(double[] p, double[] q) {
        return p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
    }
}
