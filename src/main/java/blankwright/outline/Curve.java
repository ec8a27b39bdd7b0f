package blankwright.outline;

import java.util.Arrays;

/**
 * A run of straight lines and circular arcs, open or closed, mm, y up.
 *
 * <p>Segment i goes from vertex i to vertex i+1 (a closed curve: from the last to the first as well). Its bulge is tan(sweep/4): 0 a straight
 * line, 1 half a circle turning left, -1 half a circle turning right.
 */
public final class Curve {
    private final double[] xy;        // vertex i: xy[2i..2i+1], mm
    private final double[] bulge;     // one per segment
    private final boolean closed;

    /** An arc by its centre; angles in rad from the x axis, {@code sweep} positive to the left. */
    public record CentreForm(double cx, double cy, double radius, double start, double sweep) {
        public double x(double share) {
            return cx + radius * Math.cos(start + share * sweep);
        }

        public double y(double share) {
            return cy + radius * Math.sin(start + share * sweep);
        }
    }

    /** An upright box, mm. */
    public record Box(double x0, double y0, double x1, double y1) {
        public double width() {
            return x1 - x0;
        }

        public double height() {
            return y1 - y0;
        }

        public Box grown(double by) {
            return new Box(x0 - by, y0 - by, x1 + by, y1 + by);
        }

        public Box with(Box other) {
            return new Box(Math.min(x0, other.x0), Math.min(y0, other.y0), Math.max(x1, other.x1), Math.max(y1, other.y1));
        }

        public boolean meets(Box other) {
            return x0 <= other.x1 && other.x0 <= x1 && y0 <= other.y1 && other.y0 <= y1;
        }
    }

    private Curve(double[] xy, double[] bulge, boolean closed) {
        this.xy = xy;
        this.bulge = bulge;
        this.closed = closed;
    }

    /**
     * Copies both arrays.
     *
     * @param xy vertices, at least 2; a closed curve does not repeat its first
     * @param bulge one per segment: as many as vertices when closed, one fewer when open
     * @throws IllegalArgumentException when a count is wrong or a number is not finite, naming the first such
     */
    public static Curve of(double[] xy, double[] bulge, boolean closed) {
        int n = xy.length / 2;
        if (xy.length % 2 != 0 || n < 2) throw new IllegalArgumentException(xy.length + " numbers: a curve has at least 2 vertices of 2");
        if (bulge.length != (closed ? n : n - 1))
            throw new IllegalArgumentException(bulge.length + " bulges for " + n + " vertices of " + (closed ? "a closed" : "an open") + " curve");
        for (int i = 0; i < xy.length; i++) {
            if (!Double.isFinite(xy[i])) throw new IllegalArgumentException("vertex " + i / 2 + " of a curve is at " + xy[i]);
        }
        for (int i = 0; i < bulge.length; i++) {
            if (!Double.isFinite(bulge[i])) throw new IllegalArgumentException("bulge " + i + " of a curve is " + bulge[i]);
        }
        return new Curve(xy.clone(), bulge.clone(), closed);
    }

    /** Closed, straight between the vertices x, y, x, y, ... */
    public static Curve polygon(double... xy) {
        return of(xy, new double[xy.length / 2], true);
    }

    /** Open, straight between the vertices x, y, x, y, ... */
    public static Curve path(double... xy) {
        return of(xy, new double[Math.max(0, xy.length / 2 - 1)], false);
    }

    /** Two half circles turning left, from the rightmost point on. */
    public static Curve circle(double cx, double cy, double radius) {
        return of(new double[] {cx + radius, cy, cx - radius, cy}, new double[] {1, 1}, true);
    }

    /** One open arc, or two when it sweeps more than a half circle; |sweep| below 2π rad. */
    public static Curve arc(double cx, double cy, double radius, double start, double sweep) {
        CentreForm arc = new CentreForm(cx, cy, radius, start, sweep);
        if (Math.abs(sweep) <= Math.PI)
            return of(new double[] {arc.x(0), arc.y(0), arc.x(1), arc.y(1)}, new double[] {Math.tan(sweep / 4)}, false);
        double b = Math.tan(sweep / 8);
        return of(new double[] {arc.x(0), arc.y(0), arc.x(0.5), arc.y(0.5), arc.x(1), arc.y(1)}, new double[] {b, b}, false);
    }

    public boolean isClosed() {
        return closed;
    }

    public int vertexCount() {
        return xy.length / 2;
    }

    public int segmentCount() {
        return bulge.length;
    }

    /** Vertex i, mm; i = vertexCount() is the first again. */
    public double x(int i) {
        return xy[2 * (i % (xy.length / 2))];
    }

    public double y(int i) {
        return xy[2 * (i % (xy.length / 2)) + 1];
    }

    public double bulge(int segment) {
        return bulge[segment];
    }

    public boolean isArc(int segment) {
        return bulge[segment] != 0 && chord(segment) > 0;
    }

    /** Segment i by its centre; IllegalArgumentException where it is straight. */
    public CentreForm centreForm(int i) {
        if (!isArc(i)) throw new IllegalArgumentException("segment " + i + " is straight");
        double b = bulge[i], dx = x(i + 1) - x(i), dy = y(i + 1) - y(i);
        double toCentre = (1 - b * b) / (4 * b);                       // along the left normal, in chords
        double cx = (x(i) + x(i + 1)) / 2 - dy * toCentre, cy = (y(i) + y(i + 1)) / 2 + dx * toCentre;
        double radius = Math.hypot(dx, dy) * (1 + b * b) / (4 * Math.abs(b));
        return new CentreForm(cx, cy, radius, Math.atan2(y(i) - cy, x(i) - cx), 4 * Math.atan(b));
    }

    /** Length along the curve, mm. */
    public double length() {
        double sum = 0;
        for (int i = 0; i < bulge.length; i++) sum += length(i);
        return sum;
    }

    /** Length of segment i, mm. */
    public double length(int i) {
        double chord = chord(i), half = 2 * Math.atan(Math.abs(bulge[i]));
        return half < 1e-4 ? chord * (1 + half * half / 6) : chord * half / Math.sin(half);
    }

    /** Area within, mm²: positive when the curve turns left round it. 0 for an open curve. */
    public double area() {
        if (!closed) return 0;
        double twice = 0, x0 = xy[0], y0 = xy[1], caps = 0;
        for (int i = 0; i < bulge.length; i++) {
            twice += (x(i) - x0) * (y(i + 1) - y0) - (x(i + 1) - x0) * (y(i) - y0);
            caps += capArea(chord(i), 4 * Math.atan(bulge[i]));
        }
        return twice / 2 + caps;
    }

    /** Area between an arc of sweep s and its chord c, c²/8 · (s - sin s) / sin²(s/2); by its series where s is small. */
    private static double capArea(double c, double s) {
        if (Math.abs(s) < 1e-2) return c * c * s / 12 * (1 + s * s / 30);
        double sine = Math.sin(s / 2);
        return c * c / 8 * (s - Math.sin(s)) / (sine * sine);
    }

    /** True where (px, py) lies within, counted even-odd; false for an open curve. On the curve either answer may come. */
    public boolean contains(double px, double py) {
        if (!closed) return false;
        boolean in = false;
        for (int i = 0; i < bulge.length; i++) {
            double ax = x(i), ay = y(i), bx = x(i + 1), by = y(i + 1);
            if (ay > py != by > py && px < ax + (py - ay) / (by - ay) * (bx - ax)) in = !in;
            if (isArc(i) && withinCap(i, px, py)) in = !in;
        }
        return in;
    }

    private boolean withinCap(int i, double px, double py) {
        double dx = x(i + 1) - x(i), dy = y(i + 1) - y(i), side = dx * (py - y(i)) - dy * (px - x(i));     // positive: left of the chord
        if (side == 0) side = dy != 0 ? -dy : dx;                     // on the chord: a hair to its right, as the count of crossings has it
        if (bulge[i] > 0 ? side > 0 : side < 0) return false;         // an arc turning left lies right of its chord
        CentreForm arc = centreForm(i);
        return Math.hypot(px - arc.cx(), py - arc.cy()) < arc.radius();
    }

    /** Distance from (px, py) to the nearest point of the curve, mm. */
    public double distance(double px, double py) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < bulge.length; i++) least = Math.min(least, distance(i, px, py));
        return least;
    }

    private double distance(int i, double px, double py) {
        double ax = x(i), ay = y(i), dx = x(i + 1) - ax, dy = y(i + 1) - ay;
        if (isArc(i)) {
            CentreForm arc = centreForm(i);
            double angle = (Math.atan2(py - arc.cy(), px - arc.cx()) - arc.start()) * Math.signum(arc.sweep());
            angle -= 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
            if (angle <= Math.abs(arc.sweep())) return Math.abs(Math.hypot(px - arc.cx(), py - arc.cy()) - arc.radius());
            return Math.min(Math.hypot(px - ax, py - ay), Math.hypot(px - ax - dx, py - ay - dy));
        }
        double along = dx == 0 && dy == 0 ? 0 : ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy);
        along = Math.max(0, Math.min(1, along));
        return Math.hypot(px - ax - along * dx, py - ay - along * dy);
    }

    /** The smallest upright box round the curve, arcs included. */
    public Box box() {
        Box box = new Box(xy[0], xy[1], xy[0], xy[1]);
        for (int i = 0; i < bulge.length; i++) box = box.with(box(i));
        return box;
    }

    /** The smallest upright box round segment i. */
    public Box box(int i) {
        double ax = x(i), ay = y(i), bx = x(i + 1), by = y(i + 1);
        Box box = new Box(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
        return isArc(i) ? box.with(boxOf(centreForm(i))) : box;
    }

    /** The smallest upright box round an arc. */
    public static Box boxOf(CentreForm arc) {
        Box box = new Box(arc.x(0), arc.y(0), arc.x(0), arc.y(0)).with(new Box(arc.x(1), arc.y(1), arc.x(1), arc.y(1)));
        double low = Math.min(arc.start(), arc.start() + arc.sweep()), high = Math.max(arc.start(), arc.start() + arc.sweep());
        for (int quarter = (int) Math.ceil(low / (Math.PI / 2)); quarter * Math.PI / 2 < high; quarter++) {
            double x = arc.cx() + arc.radius() * new int[] {1, 0, -1, 0}[Math.floorMod(quarter, 4)];
            double y = arc.cy() + arc.radius() * new int[] {0, 1, 0, -1}[Math.floorMod(quarter, 4)];
            box = box.with(new Box(x, y, x, y));
        }
        return box;
    }

    public Curve reversed() {
        int n = vertexCount(), m = segmentCount();
        double[] back = new double[xy.length], turn = new double[m];
        for (int i = 0; i < n; i++) {
            back[2 * i] = xy[2 * (n - 1 - i)];
            back[2 * i + 1] = xy[2 * (n - 1 - i) + 1];
        }
        for (int i = 0; i < m; i++) turn[i] = -bulge[closed && i == m - 1 ? m - 1 : n - 2 - i];
        return new Curve(back, turn, closed);
    }

    /** The curve turned by {@code angle} rad about the origin, then moved by (dx, dy) mm. */
    public Curve moved(double angle, double dx, double dy) {
        double c = Math.cos(angle), s = Math.sin(angle);
        double[] there = new double[xy.length];
        for (int i = 0; i < xy.length; i += 2) {
            there[i] = c * xy[i] - s * xy[i + 1] + dx;
            there[i + 1] = s * xy[i] + c * xy[i + 1] + dy;
        }
        return of(there, bulge, closed);
    }

    /**
     * The curve as straight lines no further than {@code tolerance} mm from it: vertices x, y, x, y, ...; a closed curve's first is not repeated.
     */
    public double[] flattened(double tolerance) {
        if (!(tolerance > 0)) throw new IllegalArgumentException("tolerance " + tolerance + " mm: must be above 0");
        double[] out = new double[xy.length];
        int n = 0;
        for (int i = 0; i < bulge.length; i++) {
            int parts = isArc(i) ? parts(centreForm(i), tolerance) : 1;
            if (n + 2 * parts + 2 > out.length) out = Arrays.copyOf(out, 2 * (n + 2 * parts + 2));
            out[n++] = x(i);
            out[n++] = y(i);
            for (int k = 1; k < parts; k++) {
                CentreForm arc = centreForm(i);
                out[n++] = arc.x((double) k / parts);
                out[n++] = arc.y((double) k / parts);
            }
        }
        if (!closed) {
            if (n + 2 > out.length) out = Arrays.copyOf(out, n + 2);
            out[n++] = x(vertexCount() - 1);
            out[n++] = y(vertexCount() - 1);
        }
        return Arrays.copyOf(out, n);
    }

    private static int parts(CentreForm arc, double tolerance) {
        double step = 2 * Math.acos(Math.max(0.5, 1 - tolerance / arc.radius()));
        return (int) Math.ceil(Math.abs(arc.sweep()) / Math.max(step, 1e-4));
    }

    private double chord(int i) {
        return Math.hypot(x(i + 1) - x(i), y(i + 1) - y(i));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Curve c && closed == c.closed && Arrays.equals(xy, c.xy) && Arrays.equals(bulge, c.bulge);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(xy) + Arrays.hashCode(bulge) + (closed ? 1 : 0);
    }

    @Override
    public String toString() {
        return (closed ? "closed" : "open") + " curve of " + segmentCount() + " segments, " + length() + " mm";
    }
}
