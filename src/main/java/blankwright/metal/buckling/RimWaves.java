package blankwright.metal.buckling;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How often a mode goes in and out along each rim, and the tucks that follow.
 *
 * <p>Along a rim the mode's displacement normal to the form rises and falls; a crest is a stretch of one sign that rises above
 * {@link #COUNTS} of the largest on that rim. Two crests, one out and one in, make a wave. Where the metal along an outward crest and half
 * of the inward ones beside it must be shrunk, the excess goes into a tuck on the crest; into several beside each other where one round
 * could not hold it and there is room. Outward is the side to which the largest crest goes: a mode has no sign of its own.
 * <p>The first mode shows where the metal gives way first, which may be one of two edges that are alike. So once it asks for tucks, what else of
 * the rims must be shrunk by {@link #FOLLOWS} or more gets them too, as wide and as deep as its own.
 * <p>Trade numbers, from memory, for the builder to overwrite: a tuck is 13 to 19 mm wide at the base and leans 45 degrees at most, so
 * holds 0.41 of its base; half of that stays when it is beaten down; tucks stand 25 mm apart or more; no deeper than 75 mm. A wave longer than
 * 400 mm is no ruffle to be tucked: the panel swings as a whole.
 */
public final class RimWaves {
    static final double COUNTS = 0.2;
    static final double LEAST_BASE = 12.7, LARGEST_BASE = 19, SPACING = 25, DEEPEST = 75, LONGEST = 400;
    /** Share a rim must lose for tucks where the mode does not reach; below, a few passes of a shrinker do. From memory. */
    static final double FOLLOWS = 0.02;
    static final double HOLDS = 1 / Math.cos(Math.PI / 4) - 1, KEPT = 0.5;
    private static final double FAINT = 0.02;           // of the largest on a rim: a run between two places where the mode is less is one
    private static final double FADED = 0.2;            // of the crest: where a tuck ends inwards

    /** A crest at place i of the rim; the mode has its sign from place {@code from} on, {@code count} places round the rim. */
    private record Crest(int from, int count, int at, boolean out) {
        int end(int n) {
            return (from + count) % n;
        }
    }

    /**
     * One rim: n places, and the edge from each to the next.
     *
     * @param at n + 1, mm from the first place
     * @param shrink what each edge must lose, mm
     * @param seen edges that the mode has spoken for
     */
    private record Rim(int number, int[] loop, double[] at, double[] shrink, boolean[] seen) {
        int places() {
            return loop.length;
        }

        /** Length of so many edges, from place {@code from} on. */
        double length(int from, int count) {
            double sum = 0;
            for (int j = 0; j < count; j++) sum += at[(from + j) % places() + 1] - at[(from + j) % places()];
            return sum;
        }

        double takeIn(int from, int count) {
            double sum = 0;
            for (int j = 0; j < count; j++) sum += shrink[(from + j) % places()];
            return sum;
        }

        int nearest(double place) {
            int nearest = 0;
            for (int j = 0; j < places(); j++) if (Math.abs(at[j] - place) < Math.abs(at[nearest] - place)) nearest = j;
            return nearest;
        }
    }

    private final TriMesh form;
    private final EdgeTable edges;
    private final RimLoops rims;
    private final Map<Long, Integer> rimEdge = new HashMap<>();     // ends of a rim edge -> its half-edge
    private final double[] rise;            // per vertex: mode along the normal
    private final double[] strain;
    private final int[] waves;
    private final List<Tuck> tucks = new ArrayList<>();

    private RimWaves(TriMesh form, double[] mode, double[] strain) {
        this.form = form;
        this.strain = strain;
        edges = EdgeTable.of(form);
        rims = RimLoops.of(form, edges);
        for (int h = 0; h < 3 * form.triangleCount(); h++)
            if (edges.twin(h) < 0) rimEdge.put(key(form.corner(h / 3, h % 3), form.corner(h / 3, (h + 1) % 3)), h);
        waves = new int[rims.count()];
        rise = new double[form.vertexCount()];
        double[] normal = VertexNormals.of(form);
        for (int i = 0; i < normal.length; i++) rise[i / 3] += mode[i] * normal[i];
    }

    /**
     * @param mode 3 per vertex, as {@link Buckling.Mode#displacement}
     * @param strain 3 per triangle: forming strain blank to form in the triangle's frame, as for {@link UnworkedForce}
     */
    public static RimWaves of(TriMesh form, double[] mode, double[] strain) {
        if (mode.length != 3 * form.vertexCount())
            throw new IllegalArgumentException(mode.length / 3 + " displacements for " + form.vertexCount() + " vertices");
        if (strain.length != 3 * form.triangleCount())
            throw new IllegalArgumentException(strain.length / 3 + " strains for " + form.triangleCount() + " triangles");
        RimWaves waves = new RimWaves(form, mode, strain);
        double most = 0;
        for (double w : waves.rise) most = Math.max(most, Math.abs(w));
        List<Rim> all = new ArrayList<>();
        for (int rim = 0; rim < waves.rims.count(); rim++) all.add(waves.rim(rim));
        for (Rim rim : all) waves.along(rim, most);
        waves.follow(all);
        waves.tucks.sort(Comparator.comparingInt(Tuck::rim).thenComparingDouble(Tuck::place));
        return waves;
    }

    /** Whole waves along each rim, as {@link RimLoops} counts them; 0 where the mode does not reach it. */
    public int[] waves() {
        return waves.clone();
    }

    /** Rim by rim, each in order along it. */
    public List<Tuck> tucks() {
        return List.copyOf(tucks);
    }

    private Rim rim(int number) {
        int[] loop = rims.loop(number);
        int n = loop.length;
        double[] at = new double[n + 1], shrink = new double[n];
        for (int i = 0; i < n; i++) {
            at[i + 1] = at[i] + form.distance(loop[i], loop[(i + 1) % n]);
            shrink[i] = take(loop[i], loop[(i + 1) % n]);
        }
        return new Rim(number, loop, at, shrink, new boolean[n]);
    }

    private void along(Rim rim, double most) {
        int[] loop = rim.loop();
        int n = loop.length;
        double largest = 0;
        boolean outer = true;
        for (int v : loop)
            if (Math.abs(rise[v]) > largest) {
                largest = Math.abs(rise[v]);
                outer = rise[v] > 0;
            }
        if (!(largest > COUNTS * most)) return;
        List<Crest> crests = crests(loop, largest);
        waves[rim.number()] = (crests.size() + 1) / 2;
        for (int i = 0; i < crests.size(); i++) {
            Crest crest = crests.get(i), after = crests.get((i + 1) % crests.size());
            Crest before = crests.get((i + crests.size() - 1) % crests.size());
            if (crest.out() != outer) continue;
            int from = crests.size() > 1 && meet(before, crest, n) ? before.at() : crest.from();
            int to = crests.size() > 1 && meet(crest, after, n) ? after.at() : crest.end(n);
            int count = to > from ? to - from : to - from + n;
            for (int j = 0; j < count; j++) rim.seen()[(from + j) % n] = true;
            if (rim.length(from, count) > LONGEST) continue;
            double base = Math.min(LARGEST_BASE, Math.max(LEAST_BASE, rim.length(crest.from(), crest.count())));
            place(rim, from, count, rim.at()[crest.at()], base, depth(loop[crest.at()], loop[(crest.at() + 1) % n]));
        }
    }

    /** Tucks where the mode has not spoken, like those where it has. */
    private void follow(List<Rim> all) {
        if (tucks.isEmpty()) return;
        double base = tucks.stream().mapToDouble(Tuck::base).average().orElseThrow();
        double depth = tucks.stream().mapToDouble(Tuck::depth).average().orElseThrow();
        for (Rim rim : all) {
            int n = rim.places(), begin = 0;
            while (begin < n && follows(rim, begin)) begin++;
            for (int i = 0; i < n; ) {
                int from = (begin + i) % n, count = 0;
                while (i + count < n && follows(rim, (from + count) % n)) count++;
                i += Math.max(1, count);
                int parts = (int) Math.ceil(rim.length(from, count) / (LONGEST / 2));
                for (int p = 0; p < parts; p++) {
                    int first = count * p / parts, edges = count * (p + 1) / parts - first, start = (from + first) % n;
                    if (rim.takeIn(start, edges) >= base * HOLDS * KEPT / 2)
                        place(rim, start, edges, rim.at()[start] + rim.length(start, edges) / 2, base, depth);
                }
            }
        }
    }

    /** Whether the mode has not spoken for this edge, and {@link #SPACING} of the rim about it must lose enough. */
    private static boolean follows(Rim rim, int edge) {
        int n = rim.places(), from = edge, count = 1;
        for (boolean back = true; count < n && rim.length(from, count) < SPACING; back = !back) {
            if (back) from = (from + n - 1) % n;
            count++;
        }
        return !rim.seen()[edge] && rim.takeIn(from, count) >= FOLLOWS * rim.length(from, count);
    }

    /** Whether no more lies between them than a mode needs to pass through zero. */
    private static boolean meet(Crest one, Crest next, int n) {
        int gap = (next.from() - one.end(n) + n) % n;
        return gap <= 1 + (one.count() + next.count()) / 20;
    }

    /** In order round the rim. */
    private List<Crest> crests(int[] loop, double largest) {
        int n = loop.length, begin = 0;
        double faint = FAINT * largest;
        while (begin < n && sign(loop, begin, faint) != 0 && sign(loop, begin, 0) == sign(loop, (begin + n - 1) % n, 0)) begin++;
        List<Crest> crests = new ArrayList<>();
        for (int i = 0; i < n; ) {                                          // runs of one sign that do not fade away
            int first = begin + i, sign = sign(loop, first % n, faint), count = 1, at = first % n;
            while (i + count < n && sign(loop, (first + count) % n, faint) == sign) {
                int here = (first + count++) % n;
                if (Math.abs(rise[loop[here]]) > Math.abs(rise[loop[at]])) at = here;
            }
            if (sign != 0 && Math.abs(rise[loop[at]]) > COUNTS * largest) crests.add(new Crest(first % n, count, at, sign > 0));
            i += count;
        }
        return crests;
    }

    private int sign(int[] loop, int i, double faint) {
        double w = rise[loop[i]];
        return w > faint ? 1 : w < -faint ? -1 : 0;
    }

    /** Tucks as near to {@code middle} as there is room, for what so many edges must lose, from place {@code from} on. */
    private void place(Rim rim, int from, int count, double middle, double base, double depth) {
        double takeIn = rim.takeIn(from, count), length = rim.length(from, count), whole = rim.at()[rim.places()];
        if (!(takeIn > 0)) return;
        double kept = base * HOLDS * KEPT;
        int room = Math.max(1, (int) (length / SPACING)), beside = (int) Math.min(room, Math.max(1, Math.ceil(takeIn / kept)));
        int rounds = (int) Math.max(1, Math.ceil(takeIn / (beside * kept)));
        double slack = Math.max(0, (length / beside - SPACING) / 2), half = length / 2;     // so that neighbours of the next part keep their distance
        double centre = half + Math.max(-slack, Math.min(slack, ((middle - rim.at()[from]) % whole + whole) % whole - half));
        for (int i = 0; i < beside; i++) {
            double place = (rim.at()[from] + centre + (i - (beside - 1) / 2.0) * length / beside) % whole;
            tucks.add(new Tuck(rim.number(), rim.loop()[rim.nearest(place)], place, base, depth, takeIn / beside, rounds));
        }
    }

    /**
     * What the rim edge from v to w must lose from blank to form, mm, below 0 where it must gain: length on the blank less length on the
     * form.
     */
    private double take(int v, int w) {
        int half = rimEdge.get(key(v, w)), t = half / 3, k = half % 3, j = (k + 1) % 3;
        Facet f = new Facet().of(form, t);
        if (f.empty) return 0;
        double dx = f.x[j] - f.x[k], dy = f.y[j] - f.y[k], l = Math.sqrt(dx * dx + dy * dy), c = dx / l, s = dy / l;
        double along = c * c * strain[3 * t] + s * s * strain[3 * t + 1] + 2 * s * c * strain[3 * t + 2];
        return l * Math.expm1(-along);
    }

    /** Straight in from the middle of the rim edge v-w, to where the mode has faded. */
    private double depth(int v, int w) {
        int half = rimEdge.get(key(v, w)), t = half / 3, k = half % 3, j = (k + 1) % 3;
        Facet f = new Facet().of(form, t);
        if (f.empty) return 0;
        double ex = f.x[j] - f.x[k], ey = f.y[j] - f.y[k], l = Math.sqrt(ex * ex + ey * ey), crest = rise[v];
        return new Track(form, edges).from(t, k, (f.x[j] + f.x[k]) / 2, (f.y[j] + f.y[k]) / 2, -ey / l, ex / l, DEEPEST,
                (s, edge, along, length) -> {
                    double here = (1 - along) * rise[form.corner(s, edge)] + along * rise[form.corner(s, (edge + 1) % 3)];
                    return here / crest > FADED;
                }).length();
    }

    private long key(int v, int w) {
        return (long) v * form.vertexCount() + w;
    }
}
