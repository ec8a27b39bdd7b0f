package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.PlaneSection;
import blankwright.mesh.query.SkinPoint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A line across a panel from edge to edge whose rise over its chord is the crown.
 *
 * <p>A line that gains or loses length between ends that stay where they are keeps its shape and changes its rise: every offset from the
 * chord grows by one factor. For a low crown h over a chord c that is a change of 3c/(16h) times the change of length, because the arc is longer
 * than its chord by 8h²/(3c): low crowns lose much by little.
 */
public final class CrownLine {
    private static final double STRAIGHT = 1e-3;            // rise over chord below which a line has no crown

    private final String name;
    private final List<SkinPoint> points;

    private CrownLine(String name, List<SkinPoint> points) {
        this.name = name;
        this.points = points;
    }

    /** The lines through the middle of a piece that have a crown, along it and across it; none where it has none. */
    public static List<CrownLine> of(TriMesh form, PanelFrame frame) {
        EdgeTable edges = EdgeTable.of(form);
        double[] middle = {frame.origin(0), frame.origin(1), frame.origin(2)};
        double[] along = {frame.along(0), frame.along(1), frame.along(2)}, across = {frame.across(0), frame.across(1), frame.across(2)};
        List<CrownLine> lines = new ArrayList<>();
        longest(form, edges, middle, across).ifPresent(chain -> lines.add(new CrownLine("along the middle", chain)));
        longest(form, edges, middle, along).ifPresent(chain -> lines.add(new CrownLine("across the middle", chain)));
        lines.removeIf(line -> !(line.rise(form) > STRAIGHT * line.chord(form) && line.rise(form) < line.chord(form)));    // else it runs round a tube
        return List.copyOf(lines);
    }

    private static Optional<List<SkinPoint>> longest(TriMesh form, EdgeTable edges, double[] point, double[] normal) {
        return PlaneSection.of(form, edges, point, normal).chains().stream().filter(chain -> !chain.closed())
                .max(Comparator.comparingDouble(chain -> chain.length(form))).map(PlaneSection.Chain::points);
    }

    public String name() {
        return name;
    }

    /** Straight from end to end, mm. */
    public double chord(TriMesh form) {
        double[] a = points.get(0).on(form), b = points.get(points.size() - 1).on(form);
        return Math.hypot(Math.hypot(b[0] - a[0], b[1] - a[1]), b[2] - a[2]);
    }

    /** Farthest that the line gets from its chord, mm: of any form with the same triangles. */
    public double rise(TriMesh form) {
        double most = 0;
        for (double[] p : profile(form)) most = Math.max(most, Math.abs(p[1]));
        return most;
    }

    /** mm, on a blank with the same triangles. */
    public double length(FlatMap map) {
        double sum = 0;
        double[] before = points.get(0).on(map);
        for (SkinPoint point : points) {
            double[] here = point.on(map);
            sum += Math.hypot(here[0] - before[0], here[1] - before[1]);
            before = here;
        }
        return sum;
    }

    /** What the rise changes by when the line on the form becomes longer by so much, ends held, mm; the whole rise where none is left. */
    public double riseChange(TriMesh form, double longer) {
        List<double[]> profile = profile(form);
        double wanted = length(profile, 1) + longer;
        if (wanted <= length(profile, 0)) return -rise(form);
        double low = 0, high = 1;
        while (length(profile, high) < wanted) high *= 2;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if (length(profile, middle) < wanted) low = middle;
            else high = middle;
        }
        return ((low + high) / 2 - 1) * rise(form);
    }

    /** Of the line with its offsets from the chord times a factor. */
    private static double length(List<double[]> profile, double factor) {
        double sum = 0;
        for (int i = 1; i < profile.size(); i++) {
            double[] a = profile.get(i - 1), b = profile.get(i);
            sum += Math.hypot(b[0] - a[0], factor * Math.hypot(b[1] - a[1], b[2] - a[2]));
        }
        return sum;
    }

    /** Of each point: along the chord, and two offsets from it, the first towards the farthest point. */
    private List<double[]> profile(TriMesh form) {
        double[] a = points.get(0).on(form), b = points.get(points.size() - 1).on(form);
        double[] e = unit(new double[] {b[0] - a[0], b[1] - a[1], b[2] - a[2]});
        double[] up = new double[3];
        for (SkinPoint point : points) {
            double[] p = point.on(form), off = less(less(p, a, 1), e, dot(less(p, a, 1), e));
            if (dot(off, off) > dot(up, up)) up = off;
        }
        up = unit(up);
        double[] side = {e[1] * up[2] - e[2] * up[1], e[2] * up[0] - e[0] * up[2], e[0] * up[1] - e[1] * up[0]};
        List<double[]> profile = new ArrayList<>();
        for (SkinPoint point : points) {
            double[] p = less(point.on(form), a, 1);
            profile.add(new double[] {dot(p, e), dot(p, up), dot(p, side)});
        }
        return profile;
    }

    private static double[] less(double[] p, double[] q, double times) {
        return new double[] {p[0] - times * q[0], p[1] - times * q[1], p[2] - times * q[2]};
    }

    private static double dot(double[] p, double[] q) {
        return p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
    }

    private static double[] unit(double[] p) {
        double length = Math.sqrt(dot(p, p));
        return length > 0 ? new double[] {p[0] / length, p[1] / length, p[2] / length} : p;
    }
}
