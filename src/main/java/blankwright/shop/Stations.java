package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.PlaneSection;
import blankwright.mesh.query.SkinPoint;
import blankwright.num.Sentence;
import blankwright.num.Unfit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The centre line of a piece and station lines square to it, cut on the form by planes and carried to the blank.
 *
 * <p>The plane of the centre line holds the centroid, up and along of the {@link PanelFrame}. Station planes stand square to along at every
 * multiple of the spacing from the centroid, both ways, where they meet the form farther than a fiftieth of the spacing from its ends. On
 * the blank the lines are curves where the form is not developable; each knows its length on both.
 */
public final class Stations {
    /** Where nothing is asked, mm. */
    public static final double SPACING = 100;
    private static final double END = 0.02;

    /**
     * The lines of one station.
     *
     * @param at distance of its plane from the centroid along the centre line, mm, either sign
     * @param label {@code 0}, {@code +100}, {@code -100}: the distance in mm
     * @param lines as many as the plane leaves on the form, longest first
     */
    public record Station(double at, String label, List<TapeLine> lines) { }

    private final PanelFrame frame;
    private final List<TapeLine> centreLine;
    private final List<Station> stations;

    private Stations(PanelFrame frame, List<TapeLine> centreLine, List<Station> stations) {
        this.frame = frame;
        this.centreLine = centreLine;
        this.stations = stations;
    }

    /** Every {@link #SPACING}. */
    public static Stations of(FlatMap map) {
        return of(map, SPACING);
    }

    /**
     * @param spacing mm, above 0; no more than a thousand stations fit a piece, else IllegalArgumentException says how wide they must be
     */
    public static Stations of(FlatMap map, double spacing) {
        if (!(spacing > 0)) throw new Unfit("station spacing %s: must be above 0", Sentence.typed(spacing));
        TriMesh form = map.form();
        EdgeTable edges = EdgeTable.of(form);
        PanelFrame frame = PanelFrame.of(form);
        double low = 0, high = 0;
        for (int v = 0; v < form.vertexCount(); v++) {
            low = Math.min(low, frame.alongOf(v));
            high = Math.max(high, frame.alongOf(v));
        }
        if (high - low > 1000 * spacing)
            throw new Unfit("station spacing %s: must be at least %s for a piece %s long", Sentence.typed(spacing),
                    Sentence.typed(Math.ceil((high - low) / 1000)), Sentence.length(high - low, 0));
        double end = END * Math.min(spacing, high - low);
        List<Station> stations = new ArrayList<>();
        for (int k = (int) Math.ceil((low + end) / spacing); k <= (high - end) / spacing; k++) {
            String label = k == 0 ? "0" : (k > 0 ? "+" : "-") + length(Math.abs(k) * spacing);
            List<TapeLine> lines = section(map, edges, frame, k * spacing, false, "station " + label);
            if (!lines.isEmpty()) stations.add(new Station(k * spacing, label, lines));
        }
        return new Stations(frame, section(map, edges, frame, 0, true, "centre line"), List.copyOf(stations));
    }

    /** The axes the lines were found by. */
    public PanelFrame frame() {
        return frame;
    }

    /** The centre line, in as many parts as holes leave, longest first. */
    public List<TapeLine> centreLine() {
        return centreLine;
    }

    /** From the lowest to the highest along the centre line. */
    public List<Station> stations() {
        return stations;
    }

    private static String length(double mm) {
        return mm == Math.rint(mm) ? Long.toString((long) mm) : String.format(java.util.Locale.ROOT, "%.1f", mm);
    }

    /** Cuts by the plane of the centre line, or by one square to it at a distance from the centroid. */
    private static List<TapeLine> section(FlatMap map, EdgeTable edges, PanelFrame frame, double at, boolean centre, String name) {
        double[] point = new double[3], normal = new double[3];
        for (int k = 0; k < 3; k++) {
            point[k] = frame.origin(k) + at * frame.along(k);
            normal[k] = centre ? frame.across(k) : frame.along(k);
        }
        List<TapeLine> lines = new ArrayList<>();
        for (PlaneSection.Chain chain : PlaneSection.of(map.form(), edges, point, normal).chains()) {
            List<SkinPoint> points = chain.points();
            int[] triangle = new int[points.size()];
            double[] weight = new double[3 * points.size()];
            for (int i = 0; i < triangle.length; i++) {
                SkinPoint p = points.get(i);
                triangle[i] = p.triangle();
                weight[3 * i] = p.a();
                weight[3 * i + 1] = p.b();
                weight[3 * i + 2] = p.c();
            }
            lines.add(TapeLine.of(name, map, triangle, weight));
        }
        lines.sort(Comparator.comparingDouble(TapeLine::blankLength).reversed());
        return List.copyOf(lines);
    }
}
