package blankwright.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Lines and arcs in place of a polygon's many short sides, nowhere further from it than a tolerance, counted both ways.
 *
 * <ol>
 * <li>A ring all of whose vertices lie about one circle becomes that circle, as two half circles.
 * <li>Else joints are chosen among the vertices: from each the longest line or arc that stays within the tolerance. Corners are always joints.
 * <li>Pieces that cross or touch another piece, of their own ring or of another, fall back to the sides they stood for.
 * </ol>
 *
 * <p>Why the distance holds both ways: the sides run from one end of their piece to the other, so they pass every place along it (intermediate
 * values); there the piece is as near to them as they to it. Sides are measured at their ends and where they come nearest an arc's centre.
 */
public final class RimFit {
    /** A vertex turning this much (rad), and {@link #MORE} times as much as both its neighbours, is a corner. */
    private static final double TURN = Math.toRadians(15);
    private static final double MORE = 3;

    private final double[] xy;             // the ring from its start on, the first vertex repeated at the end; or an open path
    private final boolean closed;
    private final double tolerance;
    private int[] joint;                   // ascending vertex numbers, from 0 to the last; null where the whole is a circle
    private double[] bulge;                // one per piece
    private Curve circle;

    private RimFit(double[] xy, boolean closed, double tolerance) {
        this.xy = xy;
        this.closed = closed;
        this.tolerance = tolerance;
    }

    /** One closed ring, without others it could cross. */
    public static Curve of(double[] ring, double tolerance) {
        return of(List.of(ring), tolerance).get(0);
    }

    /**
     * Rings in, rings out, in the same order and direction.
     *
     * @param rings vertices x, y, x, y, ... in mm, the first not repeated at the end; at least 2 different ones
     * @param tolerance mm, above 0
     */
    public static List<Curve> of(List<double[]> rings, double tolerance) {
        List<RimFit> fits = new ArrayList<>();
        for (double[] ring : rings) fits.add(ring(ring, tolerance));
        while (mend(fits)) { }                                     // every round turns at least one piece into sides
        return fits.stream().map(RimFit::curve).toList();
    }

    /** An open path; both ends stay. At least 2 different vertices. */
    public static Curve path(double[] path, double tolerance) {
        RimFit fit = new RimFit(distinct(path, false), false, checked(tolerance));
        fit.pieces(corners(fit.xy, false));
        while (mend(List.of(fit))) { }
        return fit.curve();
    }

    private static RimFit ring(double[] ring, double tolerance) {
        double[] open = distinct(ring, true);
        boolean[] corner = corners(open, true);
        int start = firstOf(corner);
        RimFit fit = new RimFit(fromThere(open, Math.max(0, start)), true, checked(tolerance));
        if (start < 0) {
            fit.circle = fit.wholeCircle();
            if (fit.circle != null) return fit;
            fit.pieces(new boolean[open.length / 2 + 1]);
            int second = fit.joint[1];                             // nothing is special about where the ring began: begin at a joint
            fit = new RimFit(fromThere(open, second == open.length / 2 ? 0 : second), true, tolerance);
        }
        fit.pieces(corners(fit.xy, true));
        return fit;
    }

    private static double checked(double tolerance) {
        if (!(tolerance > 0) || Double.isInfinite(tolerance)) throw new IllegalArgumentException("tolerance " + tolerance + " mm: must be above 0");
        return tolerance;
    }

    // ---- vertices

    private static double[] distinct(double[] xy, boolean closed) {
        double[] out = new double[xy.length];
        int n = 0;
        for (int i = 0; i + 1 < xy.length; i += 2) {
            if (!Double.isFinite(xy[i]) || !Double.isFinite(xy[i + 1]))
                throw new IllegalArgumentException("vertex " + i / 2 + " of a rim is at " + xy[i] + ", " + xy[i + 1]);
            if (n > 0 && out[n - 2] == xy[i] && out[n - 1] == xy[i + 1]) continue;
            out[n++] = xy[i];
            out[n++] = xy[i + 1];
        }
        while (closed && n > 4 && out[0] == out[n - 2] && out[1] == out[n - 1]) n -= 2;
        if (n < 4) throw new IllegalArgumentException("a rim with " + n / 2 + " different vertices has no outline");
        return Arrays.copyOf(out, n);
    }

    /** The ring from vertex {@code start} on, with that vertex once more at the end. */
    private static double[] fromThere(double[] open, int start) {
        double[] out = new double[open.length + 2];
        for (int i = 0; i < out.length; i++) out[i] = open[(2 * start + i) % open.length];
        return out;
    }

    /** Marks the corners of a path; of a ring given open or with its first vertex repeated. */
    private static boolean[] corners(double[] xy, boolean closed) {
        int n = xy.length / 2;
        boolean repeated = closed && xy[0] == xy[2 * n - 2] && xy[1] == xy[2 * n - 1];
        int m = repeated ? n - 1 : n;                             // different vertices
        double[] turn = new double[m];
        for (int i = closed ? 0 : 1; i < (closed ? m : m - 1); i++) {
            int a = (i + m - 1) % m, b = (i + 1) % m;
            double ux = xy[2 * i] - xy[2 * a], uy = xy[2 * i + 1] - xy[2 * a + 1], vx = xy[2 * b] - xy[2 * i], vy = xy[2 * b + 1] - xy[2 * i + 1];
            turn[i] = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
        }
        boolean[] corner = new boolean[n];
        for (int i = 0; i < m; i++) {
            double beside = Math.max(turn[(i + m - 1) % m], turn[(i + 1) % m]);
            corner[i] = turn[i] > TURN && turn[i] > MORE * beside || turn[i] > Math.PI / 3;
        }
        if (repeated) corner[m] = corner[0];
        return corner;
    }

    private static int firstOf(boolean[] marks) {
        for (int i = 0; i < marks.length; i++) if (marks[i]) return i;
        return -1;
    }

    // ---- pieces

    private void pieces(boolean[] corner) {
        int last = xy.length / 2 - 1, n = 0, guess = 8;
        int[] joints = new int[16];
        double[] bulges = new double[16];
        for (int i = 0; i < last;) {
            int limit = i + 1;
            while (limit < last && !corner[limit]) limit++;
            while (i < limit) {
                int line = longest(i, limit, guess, false), arc = longest(i, limit, guess, true);
                boolean isArc = arc > line && arc - i >= 3;
                if (n + 2 > joints.length) {
                    joints = Arrays.copyOf(joints, 2 * n + 2);
                    bulges = Arrays.copyOf(bulges, 2 * n + 2);
                }
                joints[n] = i;
                bulges[n++] = isArc ? arcThrough(i, arc) : 0;
                guess = Math.max(2, (isArc ? arc : line) - i);
                i = isArc ? arc : line;
            }
        }
        joints[n] = last;
        joint = Arrays.copyOf(joints, n + 1);
        bulge = Arrays.copyOf(bulges, n);
    }

    /** The farthest vertex found, by doubling and halving, that one line or arc from vertex i reaches; at least i + 1. */
    private int longest(int i, int limit, int guess, boolean arc) {
        int good = i + 1, step = Math.max(2, guess), bad = limit + 1;
        for (int j = Math.min(limit, i + step); ; j = Math.min(limit, i + (step *= 2))) {
            if (!fits(i, j, arc)) {
                bad = j;
                break;
            }
            good = j;
            if (j == limit) return limit;
        }
        while (bad - good > 1) {
            int middle = (good + bad) >>> 1;
            if (fits(i, middle, arc)) good = middle;
            else bad = middle;
        }
        return good;
    }

    private boolean fits(int i, int j, boolean arc) {
        if (j == i + 1) return true;
        if (xy[2 * i] == xy[2 * j] && xy[2 * i + 1] == xy[2 * j + 1]) return false;
        return arc ? arcFits(i, j, arcThrough(i, j)) : lineFits(i, j);
    }

    private boolean lineFits(int i, int j) {
        double ax = xy[2 * i], ay = xy[2 * i + 1], dx = xy[2 * j] - ax, dy = xy[2 * j + 1] - ay, length = Math.hypot(dx, dy), far = 0;
        dx /= length;
        dy /= length;
        for (int k = i + 1; k < j; k++) {
            double px = xy[2 * k] - ax, py = xy[2 * k + 1] - ay, along = px * dx + py * dy, off = px * dy - py * dx;
            double beyond = Math.max(0, Math.max(-along, along - length));
            if (off * off + beyond * beyond > tolerance * tolerance || along < far - tolerance) return false;
            far = Math.max(far, along);
        }
        return true;
    }

    /**
     * Bulge of the arc from vertex i to j that misses the vertices between by the least squares, to first order. Through a point p the bulge is
     * -a×b / (|a||b| - a·b), a and b the ways from p to both ends (inscribed angle); p moves by about 4t(1-t) of what the arc's rise moves.
     */
    private double arcThrough(int i, int j) {
        double ax = xy[2 * i], ay = xy[2 * i + 1], bx = xy[2 * j], by = xy[2 * j + 1], dx = bx - ax, dy = by - ay, sum = 0, weights = 0;
        for (int k = i + 1; k < j; k++) {
            double px = xy[2 * k], py = xy[2 * k + 1], ux = ax - px, uy = ay - py, vx = bx - px, vy = by - py;
            double a = Math.sqrt(ux * ux + uy * uy), b = Math.sqrt(vx * vx + vy * vy), dot = ux * vx + uy * vy, cross = ux * vy - uy * vx;
            double through = a * b - dot;
            if (!(through > 0)) continue;
            double t = a / (a + b), w = 16 * t * t * (1 - t) * (1 - t);
            sum += w * (-cross / through);
            weights += w;
        }
        return weights > 0 ? sum / weights : 0;
    }

    private boolean arcFits(int i, int j, double bulge) {
        if (Math.abs(bulge) > 1 || Math.abs(bulge) < 1e-9) return false;
        double ax = xy[2 * i], ay = xy[2 * i + 1], bx = xy[2 * j], by = xy[2 * j + 1], dx = bx - ax, dy = by - ay;
        double toCentre = (1 - bulge * bulge) / (4 * bulge), cx = (ax + bx) / 2 - dy * toCentre, cy = (ay + by) / 2 + dx * toCentre;
        double r = Math.hypot(dx, dy) * (1 + bulge * bulge) / (4 * Math.abs(bulge)), way = Math.signum(bulge);
        double sx = ax - cx, sy = ay - cy, ex = bx - cx, ey = by - cy;
        for (int k = i; k < j; k++) {
            double px = xy[2 * k] - cx, py = xy[2 * k + 1] - cy, qx = xy[2 * k + 2] - cx, qy = xy[2 * k + 3] - cy;
            if (way * (px * qy - py * qx) < -tolerance * r) return false;                                  // runs back
            if (k > i && !within(px, py, sx, sy, ex, ey, r, way)) return false;
            double ux = qx - px, uy = qy - py, foot = -(px * ux + py * uy), side = ux * ux + uy * uy;
            if (foot > 0 && foot < side && r - Math.abs(px * uy - py * ux) / Math.sqrt(side) > tolerance) return false;
        }
        return true;
    }

    /** True where the point, seen from the centre, is within the tolerance of the arc from s to e, which sweeps half a circle at most. */
    private boolean within(double px, double py, double sx, double sy, double ex, double ey, double r, double way) {
        if (Math.abs(Math.sqrt(px * px + py * py) - r) > tolerance) return false;
        boolean before = way * (sx * py - sy * px) < 0, after = way * (px * ey - py * ex) < 0;
        if (before || after) return Math.min(Math.hypot(px - sx, py - sy), Math.hypot(px - ex, py - ey)) <= tolerance;
        return true;
    }

    // ---- a whole circle

    /** The circle of least squares (algebraic, from the centre of the vertices) where it is near enough all round; else null. */
    private Curve wholeCircle() {
        int n = xy.length / 2 - 1;
        if (n < 6) return null;
        double mx = 0, my = 0;
        for (int i = 0; i < n; i++) {
            mx += xy[2 * i] / n;
            my += xy[2 * i + 1] / n;
        }
        double uu = 0, uv = 0, vv = 0, uw = 0, vw = 0, ww = 0;
        for (int i = 0; i < n; i++) {
            double u = xy[2 * i] - mx, v = xy[2 * i + 1] - my, w = u * u + v * v;
            uu += u * u;
            uv += u * v;
            vv += v * v;
            uw += u * w;
            vw += v * w;
            ww += w;
        }
        double det = uu * vv - uv * uv;
        if (!(det > 1e-6 * (uu + vv) * (uu + vv))) return null;
        double a = (uw * vv - vw * uv) / det / 2, b = (vw * uu - uw * uv) / det / 2, r = Math.sqrt(a * a + b * b + ww / n);
        double cx = mx + a, cy = my + b, turned = 0;
        for (int i = 0; i < n; i++) {
            double px = xy[2 * i] - cx, py = xy[2 * i + 1] - cy, qx = xy[2 * i + 2] - cx, qy = xy[2 * i + 3] - cy;
            if (Math.abs(Math.hypot(px, py) - r) > tolerance) return null;
            double ux = qx - px, uy = qy - py, foot = -(px * ux + py * uy), side = ux * ux + uy * uy;
            if (foot > 0 && foot < side && r - Math.abs(px * uy - py * ux) / Math.sqrt(side) > tolerance) return null;
            turned += Math.atan2(px * qy - py * qx, px * qx + py * qy);
        }
        if (Math.abs(Math.abs(turned) - 2 * Math.PI) > 0.1) return null;
        Curve circle = Curve.circle(cx, cy, r);
        return turned > 0 ? circle : circle.reversed();
    }

    // ---- crossings

    private record Piece(RimFit fit, int number, Crossing.Part part) {
        boolean isSide() {
            return fit.circle == null && fit.joint[number + 1] - fit.joint[number] == 1;
        }
    }

    /** Turns every piece that meets another, and is more than one side, back into its sides; true when there was one. */
    private static boolean mend(List<RimFit> fits) {
        STRtree tree = new STRtree();
        List<Piece> pieces = new ArrayList<>();
        for (RimFit fit : fits) {
            Curve curve = fit.curve();
            for (int i = 0; i < curve.segmentCount(); i++) pieces.add(new Piece(fit, i, Crossing.part(curve, i)));
        }
        if (pieces.stream().allMatch(Piece::isSide)) return false;
        for (int i = 0; i < pieces.size(); i++) tree.insert(envelope(pieces.get(i).part().box()), i);
        boolean[] bad = new boolean[pieces.size()];
        boolean any = false;
        for (int i = 0; i < pieces.size(); i++) {
            Piece a = pieces.get(i);
            for (Object found : tree.query(envelope(a.part().box()))) {
                int j = (Integer) found;
                Piece b = pieces.get(j);
                if (j <= i || a.isSide() && b.isSide() || !Crossing.meet(a.part(), b.part())) continue;
                if (!a.isSide()) bad[i] = any = true;
                if (!b.isSide()) bad[j] = any = true;
            }
        }
        for (int first = 0; any && first < pieces.size();) {
            RimFit fit = pieces.get(first).fit();
            int count = fit.curve().segmentCount();
            fit.sides(Arrays.copyOfRange(bad, first, first + count));
            first += count;
        }
        return any;
    }

    private static Envelope envelope(Curve.Box box) {
        return new Envelope(box.x0(), box.x1(), box.y0(), box.y1());
    }

    private void sides(boolean[] which) {
        if (circle != null) {
            if (which[0] || which[1]) {
                circle = null;
                pieces(new boolean[xy.length / 2]);
            }
            return;
        }
        int[] joints = new int[xy.length / 2];
        double[] bulges = new double[xy.length / 2];
        int n = 0;
        for (int p = 0; p < which.length; p++) {
            joints[n] = joint[p];
            bulges[n++] = which[p] ? 0 : bulge[p];
            for (int k = joint[p] + 1; which[p] && k < joint[p + 1]; k++) joints[n++] = k;
        }
        joints[n] = joint[which.length];
        joint = Arrays.copyOf(joints, n + 1);
        bulge = Arrays.copyOf(bulges, n);
    }

    private Curve curve() {
        if (circle != null) return circle;
        int n = closed ? joint.length - 1 : joint.length;
        if (closed && n < 2) throw new AssertionError("a ring of one piece");
        double[] at = new double[2 * n];
        for (int i = 0; i < n; i++) {
            at[2 * i] = xy[2 * joint[i]];
            at[2 * i + 1] = xy[2 * joint[i] + 1];
        }
        return Curve.of(at, bulge, closed);
    }
}
