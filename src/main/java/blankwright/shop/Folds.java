package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the straight folds of a piece.
 *
 * <p>1. An edge is tight where it turns by {@link #SHARP}, or where the turn, spread over the lower of its two triangles, is about a radius below
 * {@link #TIGHT}. 2. Tight edges that turn to the same side and run the same way on the blank make a group, where they share a vertex, or, unless
 * one of them is sharp, a pair of triangles. 3. A group is a fold where it turns by {@link #LEAST} and more about a straight line, at least
 * {@link #SHORTEST} long, three times as long as the bend is wide, with skin on both sides,
 * and by {@link #CHANCE} times what half of all edges turn by, for on a rough scan some edges by chance make a line.
 * <p>The limits are the same as for turned flanges, from memory.
 */
final class Folds {
    private static final double SHARP = Math.toRadians(40), LEAST = Math.toRadians(25), ALIKE = Math.cos(Math.toRadians(15));
    private static final double TIGHT = 25, SHORTEST = 30, BESIDE = 4;      // mm
    private static final double STRAIGHT = 0.02;                            // of the line's length, that a sharp fold may stray
    private static final double CHANCE = 4;                                 // times the turn of the middle edge: six edges of a rough scan came to three
    private static final double NOTHING = Math.toRadians(1);                // a tight edge turns by more

    private final FlatMap map;
    private final TriMesh form;
    private final EdgeTable edges;
    private double rough;                   // turn of the middle edge, rad: what any edge may turn by chance
    private final double[] turn;            // per edge, rad, above 0 where the outside face bulges; 0 unless tight
    private final int[] group;              // edge -> another of its group, itself at last
    private final boolean[] folded;
    private final List<Fold> list = new ArrayList<>();

    private Folds(FlatMap map, EdgeTable edges) {
        this.map = map;
        this.edges = edges;
        form = map.form();
        turn = new double[edges.edgeCount()];
        group = new int[turn.length];
        folded = new boolean[turn.length];
    }

    static Folds of(FlatMap map) {
        return of(map, EdgeTable.of(map.form()));
    }

    static Folds of(FlatMap map, EdgeTable edges) {
        Folds folds = new Folds(map, edges);
        if (folds.tight()) {
            folds.join();
            folds.find();
        }
        return folds;
    }

    List<Fold> list() {
        return List.copyOf(list);
    }

    /** Whether an edge belongs to a fold, so that its turn is no part of a roll. */
    boolean folded(int e) {
        return folded[e];
    }

    private boolean tight() {
        boolean any = false;
        double[] all = new double[turn.length];
        int within = 0;
        for (int e = 0; e < turn.length; e++) {
            group[e] = e;
            int left = edges.left(e), right = edges.right(e);
            if (right < 0) continue;
            double angle = BendField.dihedral(form, edges, e), low = 2 * Math.min(form.area(left), form.area(right)) / edges.length(e);
            all[within++] = Math.abs(angle);
            if (Math.abs(angle) < NOTHING || !(Math.abs(angle) >= SHARP || low < TIGHT * Math.abs(angle))) continue;
            turn[e] = angle;
            any = true;
        }
        if (!any) return false;
        Arrays.sort(all, 0, within);
        rough = all[within / 2];
        return true;
    }

    private void join() {
        int[] at = new int[form.vertexCount()];             // a tight edge of each vertex, one more than its number
        int[] next = new int[2 * turn.length];              // from and to end of each: the next of the same vertex
        for (int e = 0; e < turn.length; e++) {
            if (turn[e] == 0) continue;
            for (int end = 0; end < 2; end++) {
                int v = end == 0 ? edges.from(e) : edges.to(e);
                for (int other = at[v]; other > 0; other = next[other - 1]) joinAlike(e, (other - 1) / 2);
                next[2 * e + end] = at[v];
                at[v] = 2 * e + end + 1;
            }
        }
        for (int e = 0; e < turn.length; e++) {
            if (turn[e] != 0 || edges.right(e) < 0) continue;
            for (int j = 0; j < 3; j++) {
                int a = edges.edgeOf(edges.left(e), j);
                for (int k = 0; k < 3 && soft(a); k++) if (soft(edges.edgeOf(edges.right(e), k))) joinAlike(a, edges.edgeOf(edges.right(e), k));
            }
        }
    }

    private boolean soft(int e) {
        return turn[e] != 0 && Math.abs(turn[e]) < SHARP;
    }

    private void joinAlike(int a, int b) {
        if (turn[a] * turn[b] <= 0) return;
        double[] p = way(a), q = way(b);
        if (Math.abs(p[0] * q[0] + p[1] * q[1]) < ALIKE) return;
        int i = first(a), j = first(b);
        group[Math.max(i, j)] = Math.min(i, j);
    }

    private int first(int e) {
        int i = e;
        while (group[i] != i) {
            group[i] = group[group[i]];
            i = group[i];
        }
        return i;
    }

    /** Unit direction of an edge on the blank. */
    private double[] way(int e) {
        double du = map.u(edges.to(e)) - map.u(edges.from(e)), dv = map.v(edges.to(e)) - map.v(edges.from(e)), d = Math.hypot(du, dv);
        return d > 0 ? new double[] {du / d, dv / d} : new double[2];
    }

    private void find() {
        List<List<Integer>> groups = new ArrayList<>();
        int[] of = new int[turn.length];
        for (int e = 0; e < turn.length; e++) {
            if (turn[e] == 0) continue;
            int f = first(e);
            if (f == e) {
                of[e] = groups.size();
                groups.add(new ArrayList<>());
            }
            groups.get(of[f]).add(e);
        }
        for (List<Integer> edgesOfOne : groups) fold(edgesOfOne);
        list.sort(Comparator.comparingDouble((Fold fold) -> -fold.length()));
    }

    private void fold(List<Integer> all) {
        double xx = 0, xy = 0, mu = 0, mv = 0, sum = 0;
        for (int e : all) {                                 // mean direction by doubled angles, and mean place, both weighted by what turns
            double[] d = way(e);
            double w = Math.abs(turn[e]) * edges.length(e);
            xx += w * (d[0] * d[0] - d[1] * d[1]);
            xy += w * 2 * d[0] * d[1];
            mu += w * (map.u(edges.from(e)) + map.u(edges.to(e))) / 2;
            mv += w * (map.v(edges.from(e)) + map.v(edges.to(e))) / 2;
            sum += w;
        }
        double angle = Math.atan2(xy, xx) / 2, c = Math.cos(angle), s = Math.sin(angle), u = mu / sum, v = mv / sum;
        double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY, left = 0, right = 0, turned = 0, strays = 0;
        for (int e : all) {
            for (int p : new int[] {edges.from(e), edges.to(e)}) {
                double along = c * (map.u(p) - u) + s * (map.v(p) - v), across = c * (map.v(p) - v) - s * (map.u(p) - u);
                low = Math.min(low, along);
                high = Math.max(high, along);
                left = Math.max(left, across);
                right = Math.max(right, -across);
            }
            double[] d = way(e);
            double straight = Math.abs(c * d[0] + s * d[1]), w = Math.abs(turn[e]) * edges.length(e);
            turned += w * straight;
            if (straight < ALIKE) strays += w;
        }
        double length = high - low, width = left + right, mean = turned / length;
        boolean sharp = all.stream().noneMatch(this::soft) || width < STRAIGHT * length && width < 1;
        if (!(length >= SHORTEST && mean >= Math.max(LEAST, CHANCE * rough) && strays < 0.1 * sum) || width > (sharp ? STRAIGHT : 1 / 3.0) * length) return;
        if (!beside(u, v, c, s, left, right)) return;
        for (int e : all) folded[e] = true;
        list.add(new Fold(u + low * c, v + low * s, u + high * c, v + high * s, mean, turn[all.get(0)] > 0, sharp ? 0 : width / mean));
    }

    /** Whether the piece goes on beyond both sides of the bend, by half its width and a little. */
    private boolean beside(double u, double v, double c, double s, double left, double right) {
        double least = 0, most = 0, on = BESIDE + (left + right) / 2;
        for (int p = 0; p < form.vertexCount(); p++) {
            double across = c * (map.v(p) - v) - s * (map.u(p) - u);
            least = Math.min(least, across);
            most = Math.max(most, across);
        }
        return most > left + on && -least > right + on;
    }
}
