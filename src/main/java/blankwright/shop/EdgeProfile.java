package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.Arrays;
import java.util.Optional;

/**
 * The section of the skin square to a rim, from the middle of a rim edge inwards, and the fold in it where the edge is turned.
 *
 * <p>The section lies in the plane square to the rim edge and is followed from triangle to triangle. A fold is its sharpest turn with all
 * turns to the same side on from there that follow each other within {@link #WIDEST_BEND} of radius. It counts where it turns by
 * {@link #LEAST_TURN} or more, the strip between it and the edge is {@link #NARROWEST} or wider and nearly straight, and the skin beyond it
 * is wider than the strip and does not turn back or go on turning: steps, beads and rolled edges are none, and a fold is that of the edge
 * nearer to it.
 */
final class EdgeProfile {
    /** mm from the edge along the skin to where a fold is looked for; hands turn no wider flange in one go. From memory. */
    static final double FARTHEST = 100;
    /** Inside radius above which a bend is rolled rather than turned, mm; from memory. */
    static final double WIDEST_BEND = 25;
    /** mm: less cannot be gripped or tipped (3/16 in); from memory. */
    static final double NARROWEST = 4;
    static final double LEAST_TURN = Math.toRadians(25);
    private static final double NO_TURN = Math.toRadians(0.5);          // noise of triangles
    private static final double STRAIGHT = Math.toRadians(20);          // of the strip from the edge to the fold, all turns together
    private static final int MOST_PIECES = 5_000;                       // of a section: none runs in circles
    private static final double GOES_ON = 1 / 3.0;              // of the fold, by which the skin beyond it may turn within as much length

    private final FlatMap map;
    private final EdgeTable edges;
    private final double[] axis;                // unit, along the rim edge, metal on its left hand
    private double[] point = new double[48];    // 3 each, mm
    private double[] flat = new double[32];     // 2 each, mm: the same on the blank
    private int[] triangle = new int[16];       // crossed from point i to point i + 1
    private int count;

    /**
     * A fold.
     *
     * @param turn rad, above 0 where the outside face is hollow at it, below where it bulges
     * @param toBend along the skin of the form from the edge to where the bend begins, {@code toWeb} to where it ends, mm
     * @param plan from the edge to where the bend ends, along the skin beyond it, mm; below 0 where the flange is turned back over it
     * @param onBlank from the edge to the middle of the bend on the blank, mm
     * @param middle of the bend on the form, 3, mm
     * @param middleOnBlank 2, mm
     * @param web unit normal of the skin beyond the bend, outside, 3
     */
    record Fold(double turn, double toBend, double toWeb, double plan, double onBlank, double[] middle, double[] middleOnBlank,
            double[] web) { }

    private EdgeProfile(FlatMap map, EdgeTable edges, double[] axis) {
        this.map = map;
        this.edges = edges;
        this.axis = axis;
    }

    /** @param half rim half-edge, 3 t + k */
    static Optional<Fold> fold(FlatMap map, EdgeTable edges, int half) {
        TriMesh form = map.form();
        int a = form.corner(half / 3, half % 3), b = form.corner(half / 3, (half % 3 + 1) % 3);
        double length = form.distance(a, b);
        if (!(length > 0)) return Optional.empty();
        EdgeProfile profile = new EdgeProfile(map, edges, new double[] {(form.x(b) - form.x(a)) / length, (form.y(b) - form.y(a)) / length,
            (form.z(b) - form.z(a)) / length});
        profile.follow(half);
        return profile.fold();
    }

    private void follow(int half) {
        TriMesh form = map.form();
        int a = form.corner(half / 3, half % 3), b = form.corner(half / 3, (half % 3 + 1) % 3);
        double at = (height(a) + height(b)) / 2, way = 0;
        add(a, b, 0.5);
        for (int h = half; h >= 0 && way < FARTHEST && count < MOST_PIECES; ) {
            int t = h / 3, k = h % 3, apex = form.corner(t, (k + 2) % 3);
            if (!(form.area(t) > 0)) return;
            boolean sameAsStart = height(apex) > at == height(form.corner(t, k)) > at;
            int out = sameAsStart ? (k + 1) % 3 : (k + 2) % 3, v = form.corner(t, out), w = form.corner(t, (out + 1) % 3);
            double hv = height(v) - at, hw = height(w) - at;
            triangle[count - 1] = t;
            add(v, w, hv == hw ? 0.5 : Math.min(1, Math.max(0, hv / (hv - hw))));
            way += distance(count - 2);
            h = edges.twin(3 * t + out);
        }
    }

    private double height(int v) {
        TriMesh form = map.form();
        return axis[0] * form.x(v) + axis[1] * form.y(v) + axis[2] * form.z(v);
    }

    private void add(int v, int w, double share) {
        if (count == triangle.length) {
            triangle = Arrays.copyOf(triangle, 2 * count);
            point = Arrays.copyOf(point, 6 * count);
            flat = Arrays.copyOf(flat, 4 * count);
        }
        TriMesh form = map.form();
        point[3 * count] = form.x(v) + share * (form.x(w) - form.x(v));
        point[3 * count + 1] = form.y(v) + share * (form.y(w) - form.y(v));
        point[3 * count + 2] = form.z(v) + share * (form.z(w) - form.z(v));
        flat[2 * count] = map.u(v) + share * (map.u(w) - map.u(v));
        flat[2 * count + 1] = map.v(v) + share * (map.v(w) - map.v(v));
        count++;
    }

    /** From point i to the next, mm. */
    private double distance(int i) {
        double[] d = piece(i);
        return Math.hypot(Math.hypot(d[0], d[1]), d[2]);
    }

    private Optional<Fold> fold() {
        double[] at = new double[count], turn = new double[count];
        for (int i = 1; i < count; i++) at[i] = at[i - 1] + distance(i - 1);
        for (int i = 1; i < count - 1; i++) turn[i] = turn(i);
        int sharpest = 0;
        for (int i = 1; i < count - 1; i++) if (at[i] >= NARROWEST && Math.abs(turn[i]) > Math.abs(turn[sharpest])) sharpest = i;
        if (sharpest == 0) return Optional.empty();
        int first = end(at, turn, sharpest, -1), last = end(at, turn, sharpest, 1);
        double sum = sum(turn, first, last), strip = sum(turn, 1, first - 1), room = Math.max(NARROWEST, at[last]);
        int beyond = last;
        while (beyond + 1 < count && at[beyond + 1] <= at[last] + room) beyond++;
        boolean folded = Math.abs(sum) >= LEAST_TURN && at[first] >= NARROWEST && Math.abs(strip) <= STRAIGHT
                && at[count - 1] - at[last] > at[first] && Math.abs(sum(turn, last + 1, beyond)) <= GOES_ON * Math.abs(sum);
        return folded ? Optional.of(measured(at, first, last, sum)) : Optional.empty();
    }

    /** Angle from the piece before point i to the one after it, rad, about the rim edge: above 0 towards the outside. */
    private double turn(int i) {
        double[] d = piece(i - 1), e = piece(i);
        double cx = d[1] * e[2] - d[2] * e[1], cy = d[2] * e[0] - d[0] * e[2], cz = d[0] * e[1] - d[1] * e[0];
        return Math.atan2(axis[0] * cx + axis[1] * cy + axis[2] * cz, d[0] * e[0] + d[1] * e[1] + d[2] * e[2]);
    }

    private double[] piece(int i) {
        return new double[] {point[3 * i + 3] - point[3 * i], point[3 * i + 4] - point[3 * i + 1], point[3 * i + 5] - point[3 * i + 2]};
    }

    /** The last of the turns that follow each other closely from one on, going one way. */
    private static int end(double[] at, double[] turn, int from, int step) {
        int end = from;
        for (int i = from + step; i > 0 && i < turn.length - 1; i += step) {
            if (Math.abs(turn[i]) < NO_TURN) continue;
            if (turn[i] > 0 != turn[from] > 0 || Math.abs(at[i] - at[end]) > WIDEST_BEND * Math.abs(turn[i])) break;
            end = i;
        }
        return end;
    }

    private static double sum(double[] turn, int from, int to) {
        double sum = 0;
        for (int i = from; i <= to; i++) sum += turn[i];
        return sum;
    }

    private Fold measured(double[] at, int first, int last, double turn) {
        double half = (at[first] + at[last]) / 2;
        int i = first;
        while (i < last && at[i + 1] < half) i++;
        double share = last > first ? (half - at[i]) / (at[i + 1] - at[i]) : 0;
        double[] middle = new double[3], blank = new double[2];
        for (int k = 0; k < 3; k++) middle[k] = point[3 * i + k] + (share > 0 ? share * (point[3 * i + 3 + k] - point[3 * i + k]) : 0);
        for (int k = 0; k < 2; k++) blank[k] = flat[2 * i + k] + (share > 0 ? share * (flat[2 * i + 2 + k] - flat[2 * i + k]) : 0);
        double[] on = piece(last);
        double length = Math.sqrt(on[0] * on[0] + on[1] * on[1] + on[2] * on[2]), plan = 0;
        for (int k = 0; k < 3; k++) plan += on[k] / length * (point[3 * last + k] - point[k]);
        return new Fold(turn, at[first], at[last], plan, Math.hypot(blank[0] - flat[0], blank[1] - flat[1]), middle, blank,
                map.form().normal(triangle[last]));
    }
}
