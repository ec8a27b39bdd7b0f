package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import java.util.Optional;

/**
 * Will a low crown, once made and held all round its edge, pop in and out?
 *
 * <p>The panel is taken as a shallow cap: radius R from its mean curvature, half-span a from the place farthest from its edges, both from
 * the form. λ = (12 (1 - ν²))^¼ a/√(R t). Below about 3.3 a cap clamped round its edge bends in without a snap (Budiansky 1959); above, it
 * snaps at a share 0.14 + 3.2/λ² of the perfect sphere's pressure 2 E t²/(R² √(3 (1 - ν²))), which bounds tests from below (NASA SP-8032,
 * 1969). Both from memory, docs/sources.md [B59], [NASA69].
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

    /** In the builder's words. */
    public enum Verdict {
        /** No crown to lose: flat, or saddle-shaped. */
        NO_CROWN("no crown"),
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
    private final double pressure;
    private final Verdict verdict;

    private OilCan(double radius, double halfSpan, double parameter, double pressure, Verdict verdict) {
        this.radius = radius;
        this.halfSpan = halfSpan;
        this.parameter = parameter;
        this.pressure = pressure;
        this.verdict = verdict;
    }

    /**
     * @param gaussian mean Gaussian curvature of the panel, 1/mm²: whole curvature over area
     * @param form held round all its rims
     * @param rim vertices of all rims
     */
    public static Optional<OilCan> of(TriMesh form, double gaussian, boolean[] rim, Sheet sheet) {
        double a = halfSpan(form, rim);
        if (!(a > 0)) return Optional.empty();
        if (!(gaussian > 0)) return Optional.of(new OilCan(Double.POSITIVE_INFINITY, a, 0, 0, Verdict.NO_CROWN));
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
        return new OilCan(radius, halfSpan, parameter, pressure, verdict);
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

    /** At which it snaps, spread evenly, MPa. */
    public double pressure() {
        return pressure;
    }

    /** That pressure over the circle of the half-span, N. */
    public double push() {
        return pressure * Math.PI * halfSpan * halfSpan;
    }

    /** Extra length of a line over the crown against a straight one, mm: an edge drawn in by that much more, or less, loses the crown. */
    public double spareLength() {
        return Double.isInfinite(radius) ? 0 : 8 * crown() * crown() / (3 * 2 * halfSpan);
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
