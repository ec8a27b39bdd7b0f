package blankwright.metal.buckling;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Will a low crown, once made and held all round its edge, pop in and out?
 *
 * <p>Computed, where the mesh is fine enough for it ({@link #computed}): the panel itself under an even pressure against its crown, by
 * {@link PressedPanel}, once with its edge clamped, once free to turn; a fastened edge lies between the two, and the weaker counts.
 * <p>By formula else: the panel is taken as a shallow cap, radius R from its mean curvature, half-span a from the place farthest from its
 * edges, both from the form. λ = (12 (1 - ν²))^¼ a/√(R t). Below about 3.3 a cap clamped round its edge bends in without a snap (Budiansky
 * 1959); above, it snaps at a share 0.14 + 3.2/λ² of the perfect sphere's pressure 2 E t²/(R² √(3 (1 - ν²))), which bounds tests from below
 * (NASA SP-8032, 1969). Both from memory, docs/sources.md [B59], [NASA69].
 * <p>That is for metal without stress of its own. What most often makes a panel oil-can is an edge a little too short for its middle: the
 * whole crown is only 8 h²/(3 c) of extra length along a line c long, h high; that length is given too.
 */
public final class OilCan {
    /** Below it a cap held round its edge does not snap. */
    public static final double LEAST_PARAMETER = 3.3;
    /** Half-span over radius up to which the formulas of shallow caps hold: a rise of an eighth of the span. */
    private static final double SHALLOW = 0.5;
    /** Push of a hand, N: planning value, from memory. */
    public static final double HAND = 150;
    /** Push up to which a snap is looked for, N: ten hands. */
    public static final double MOST = 10 * HAND;
    /** Linear pressures up to which it is looked for: no crown snaps beyond its own. */
    private static final double MOST_LINEAR = 1.2;
    /** Share of the linear pressure below which nothing snaps: low caps and arches were found to at 0.28 and more. */
    private static final double LEAST_LINEAR = 0.15;
    /** Rise over thickness below which there is no crown to lose. */
    private static final double FLAT = 0.05;
    /** Edges of triangles over √(R t), about a quarter of a half-wave: up to there the pressure comes within about 5 %. */
    private static final double FINE = 0.5;
    /** Edges over the half-span. */
    private static final double FINE_OF_SPAN = 0.2;
    private static final Eigenpairs.Limits LOWEST = Eigenpairs.Limits.DEFAULT.withWanted(1).withTolerance(1e-3).withMultiple(false);

    /** How an edge is held: its places stay where they are. */
    public enum Edge {
        /** And do not turn: a flange, a bead, a frame that does not twist. */
        CLAMPED("clamped"),
        /** But turn: rivets, a hem, a strip of rubber. */
        TURNING("free to turn");

        private final String words;

        Edge(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * What was computed for one way of holding the edge, pressures spread over the circle of the half-span.
     *
     * @param linear N by linear buckling, too much for low crowns
     * @param snap N at which it snaps; +∞ where it does not
     * @param soft no snap because the crown goes under without one
     */
    public record Held(Edge edge, double linear, double snap, boolean soft) { }

    /** In the builder's words. */
    public enum Verdict {
        /** No crown to lose: flat, or saddle-shaped. */
        NO_CROWN("no crown"),
        /** Bowed one way only, for which there is no formula, and the mesh is too coarse to compute it. */
        UNKNOWN("not known, since it is bowed one way only"),
        /** Gives under a push and comes back, without a snap. */
        SOFT("soft, does not snap"),
        /** Snaps under a hand. */
        SNAPS("oil-cans under a hand"),
        /** No shallow cap any more: half-span over half the radius. */
        HIGH_CROWN("crown high enough not to oil-can"),
        /** Would take more than a hand. */
        STANDS("stands a push by hand");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    private final double radius;
    private final double halfSpan;
    private final double parameter;
    private final double pressure, byFormula;
    private final Verdict verdict;
    private final List<Held> held;
    private final double triangle;          // mean edge that is fine enough, mm

    private OilCan(double radius, double halfSpan, double parameter, double pressure, double byFormula, Verdict verdict, List<Held> held,
                   double triangle) {
        this.radius = radius;
        this.halfSpan = halfSpan;
        this.parameter = parameter;
        this.pressure = pressure;
        this.byFormula = byFormula;
        this.verdict = verdict;
        this.held = List.copyOf(held);
        this.triangle = triangle;
    }

    /**
     * @param gaussian mean Gaussian curvature of the panel, 1/mm²: whole curvature over area
     * @param form held round all its rims
     * @param rim vertices of all rims
     */
    public static Optional<OilCan> of(TriMesh form, double gaussian, boolean[] rim, Sheet sheet) {
        double a = halfSpan(form, rim);
        if (!(a > 0)) return Optional.empty();
        if (!(gaussian > 0)) return Optional.of(new OilCan(Double.POSITIVE_INFINITY, a, 0, 0, 0, Verdict.NO_CROWN, List.of(), 0));
        return Optional.of(of(1 / Math.sqrt(gaussian), a, sheet));
    }

    /** Of a cap of radius R, mm, over a circle of radius a, mm. */
    static OilCan of(double radius, double halfSpan, Sheet sheet) {
        double t = sheet.thickness(), v = sheet.poisson();
        double parameter = Math.pow(12 * (1 - v * v), 0.25) * halfSpan / Math.sqrt(radius * t);
        double perfect = 2 * sheet.youngs() * t * t / (radius * radius * Math.sqrt(3 * (1 - v * v)));
        double pressure = perfect * Math.min(1, 0.14 + 3.2 / (parameter * parameter));
        double push = pressure * Math.PI * halfSpan * halfSpan;
        Verdict verdict = halfSpan > SHALLOW * radius ? Verdict.HIGH_CROWN : parameter < LEAST_PARAMETER ? Verdict.SOFT : push < HAND ? Verdict.SNAPS : Verdict.STANDS;
        return new OilCan(radius, halfSpan, parameter, pressure, pressure, verdict, List.of(), 0);
    }

    /**
     * The same with what can be computed on the panel itself; as it was where the crown is too high for the question, where there is none,
     * or where the mesh is too coarse, which {@link #fineEnough} then tells.
     *
     * @param panel the form, or a coarser mesh of it
     * @param rim its vertices of all rims
     */
    public OilCan computed(TriMesh panel, boolean[] rim, Sheet sheet, BooleanSupplier cancelled) {
        if (verdict == Verdict.HIGH_CROWN) return this;
        double[] bent = bent(panel);
        double mean = length(bent) / panel.area(), fine = fine(mean, sheet);
        if (mean * halfSpan * halfSpan / 4 < FLAT * sheet.thickness())
            return new OilCan(radius, halfSpan, parameter, pressure, byFormula, Verdict.NO_CROWN, List.of(), 0);
        if (panel.triangleCount() < evenly(panel.area(), fine))
            return new OilCan(radius, halfSpan, parameter, pressure, byFormula, verdict == Verdict.NO_CROWN ? Verdict.UNKNOWN : verdict, List.of(),
                    fine);
        double[] inward = new double[panel.triangleCount()];
        double side = 0;
        for (int t = 0; t < inward.length; t++) {
            double[] n = panel.normal(t);
            side += panel.area(t) * (n[0] * bent[0] + n[1] * bent[1] + n[2] * bent[2]);
        }
        Arrays.fill(inward, side > 0 ? -1 : 1);
        List<Held> answers = new ArrayList<>();
        for (Edge edge : Edge.values()) {
            boolean[] held = new boolean[6 * rim.length];
            for (int i = 0; i < held.length; i++) held[i] = rim[i / 6] && (edge == Edge.CLAMPED || i % 6 < 3);
            PressedPanel pressed = new PressedPanel(panel, sheet, held, inward, cancelled);
            List<Buckling.Mode> modes = pressed.linear(LOWEST);
            double circle = Math.PI * halfSpan * halfSpan;
            double linear = modes.isEmpty() ? Double.POSITIVE_INFINITY : circle * modes.get(0).loadFactor();
            double snap = LEAST_LINEAR * linear > MOST ? Double.POSITIVE_INFINITY : circle
                    * pressed.snap(Math.min(linear, MOST) / circle, Math.min(MOST_LINEAR * linear, MOST) / circle).orElse(Double.POSITIVE_INFINITY);
            answers.add(new Held(edge, linear, snap, Double.isInfinite(snap) && MOST_LINEAR * linear < MOST));
        }
        double least = answers.stream().mapToDouble(Held::snap).min().orElseThrow();
        boolean soft = answers.stream().anyMatch(Held::soft);
        Verdict found = least < HAND ? Verdict.SNAPS : soft && Double.isInfinite(least) ? Verdict.SOFT : Verdict.STANDS;
        return new OilCan(radius, halfSpan, parameter, least / (Math.PI * halfSpan * halfSpan), byFormula, found, answers, 0);
    }

    /** How many triangles of one size {@link #computed} asks at least for this form. */
    public int triangles(TriMesh form, Sheet sheet) {
        return evenly(form.area(), fine(length(bent(form)) / form.area(), sheet));
    }

    /** Edges of triangles, mm, that are short enough for a panel of so much curvature both ways together, 1/mm. */
    private double fine(double mean, Sheet sheet) {
        double tightest = Math.min(radius, Math.sqrt(2) / mean);           // 0.7 R of a cap, 1.4 R of a sheet bowed one way
        return Math.min(FINE * Math.sqrt(tightest * sheet.thickness()), FINE_OF_SPAN * halfSpan);
    }

    /** Triangles with equal sides that cover so much, rounded up. */
    private static int evenly(double area, double side) {
        return (int) Math.min(Integer.MAX_VALUE, Math.ceil(area * 4 / (Math.sqrt(3) * side * side)));
    }

    private static double length(double[] v) {
        return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    }

    /** What was computed, one for each way of holding; empty where the answer is the formula's. */
    public List<Held> held() {
        return held;
    }

    /** Edges of triangles, mm, from which it could have been computed; 0 where it was, or need not be. */
    public double fineEnough() {
        return triangle;
    }

    public Verdict verdict() {
        return verdict;
    }

    /** Of the cap that stands for the panel, mm; +∞ without crown. */
    public double radius() {
        return radius;
    }

    /** Distance from the middle to the nearest edge, mm. */
    public double halfSpan() {
        return halfSpan;
    }

    /** Rise of the cap over that span, mm. */
    public double crown() {
        return Double.isInfinite(radius) ? 0 : halfSpan * halfSpan / (2 * radius);
    }

    /** λ, no unit. */
    public double parameter() {
        return parameter;
    }

    /** At which it snaps, spread evenly, MPa: the weaker of those computed, or that of the formula; +∞ where it does not. */
    public double pressure() {
        return pressure;
    }

    /** That pressure over the circle of the half-span, N. */
    public double push() {
        return pressure * Math.PI * halfSpan * halfSpan;
    }

    /** What the formula for caps says, N: a bound from below of tests on caps that were not perfect; 0 where it does not apply. */
    public double formulaPush() {
        return parameter < LEAST_PARAMETER ? 0 : byFormula * Math.PI * halfSpan * halfSpan;
    }

    /** Extra length of a line over the crown against a straight one, mm: an edge drawn in by that much more, or less, loses the crown. */
    public double spareLength() {
        return Double.isInfinite(radius) ? 0 : 8 * crown() * crown() / (3 * 2 * halfSpan);
    }

    /**
     * The sum of the normals times twice the mean curvature over the panel, mm, which is the sum along its rims of what points away from the
     * panel along its own surface, square to the rim: it points against the crown.
     */
    private static double[] bent(TriMesh panel) {
        EdgeTable edges = EdgeTable.of(panel);
        double[] sum = new double[3];
        for (int t = 0; t < panel.triangleCount(); t++) {
            double[] n = panel.normal(t);
            for (int k = 0; k < 3; k++) {
                if (edges.neighbour(t, k) >= 0) continue;
                int a = panel.corner(t, k), b = panel.corner(t, (k + 1) % 3);
                double x = panel.x(b) - panel.x(a), y = panel.y(b) - panel.y(a), z = panel.z(b) - panel.z(a);
                sum[0] += y * n[2] - z * n[1];
                sum[1] += z * n[0] - x * n[2];
                sum[2] += x * n[1] - y * n[0];
            }
        }
        return sum;
    }

    private static double halfSpan(TriMesh form, boolean[] rim) {
        int count = 0;
        for (boolean r : rim) if (r) count++;
        int[] on = new int[count];
        for (int v = 0, i = 0; v < rim.length; v++) if (rim[v]) on[i++] = v;
        double most = 0;
        for (int v = 0; v < rim.length; v++) {
            if (rim[v]) continue;
            double least = Double.POSITIVE_INFINITY;
            for (int w : on) {
                double dx = form.x(v) - form.x(w), dy = form.y(v) - form.y(w), dz = form.z(v) - form.z(w);
                least = Math.min(least, dx * dx + dy * dy + dz * dz);
                if (least <= most) break;
            }
            if (least < Double.POSITIVE_INFINITY) most = Math.max(most, least);
        }
        return Math.sqrt(most);
    }
}
