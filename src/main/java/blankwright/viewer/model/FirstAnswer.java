package blankwright.viewer.model;

import blankwright.drawing.Layer;
import blankwright.job.Draft;
import blankwright.mesh.FlatMap;
import blankwright.outline.Curve;
import blankwright.outline.Overlap;
import blankwright.outline.Region;
import blankwright.picture.WorkField;
import blankwright.shop.Judge;
import blankwright.shop.ZoneOptions;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A draft ready for the screen: the edges of the blank and its colours, in the place of what was laid out last until the next is. For the rest,
 * zones, lettering, numbers, there is nothing yet.
 *
 * <p>Made on a thread of its own but for maps that are asked for later; those on the screen's thread.
 */
public final class FirstAnswer {
    private static final double TOLERANCE = 0.05;       // mm, of the edges

    private final Draft draft;
    private final Laid before;
    private final Optional<Judge> judge;
    private final Map<MapKind, List<Painting>> paintings = new EnumMap<>(MapKind.class);
    private final List<Ink.Stroke> strokes = new ArrayList<>();
    private final double[] box = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};

    private FirstAnswer(Draft draft, Laid before) {
        this.draft = draft;
        this.before = before;
        var thickness = draft.recipe().thickness();
        judge = thickness.isEmpty() ? Optional.empty() : draft.recipe().metal().map(m -> m.judge(thickness.getAsDouble()));
        for (Draft.Piece piece : draft.pieces()) edges(piece);
    }

    /**
     * Empty where it follows another blank than that laid out before.
     *
     * @param kind of the map that is shown
     */
    static Optional<FirstAnswer> of(Draft draft, Laid before, MapKind kind) {
        List<Skin> skins = before.skins();
        if (!draft.coarse() && skins.size() != draft.pieces().size()) return Optional.empty();
        for (int i = 0; !draft.coarse() && i < skins.size(); i++)
            if (skins.get(i).map().form().triangleCount() != draft.pieces().get(i).map().form().triangleCount()) return Optional.empty();
        FirstAnswer answer = new FirstAnswer(draft, before);
        answer.painting(0, kind);
        return Optional.of(answer);
    }

    private void edges(Draft.Piece piece) {
        Region net = Region.ofRims(piece.rims(), TOLERANCE), cut = net;
        double trim = draft.recipe().trim().orElse(0);
        if (trim > 0 && Overlap.of(piece.rims()).isEmpty()) cut = net.grown(trim, TOLERANCE);
        for (Curve curve : cut.curves()) strokes.add(Ink.Stroke.of(Layer.CUT, curve));
        if (cut != net) for (Curve curve : net.curves()) strokes.add(Ink.Stroke.of(Layer.TRIM, curve));
        double[] around = piece.map().box();
        for (int k = 0; k < 2; k++) {
            box[k] = Math.min(box[k], around[k]);
            box[k + 2] = Math.max(box[k + 2], around[k + 2]);
        }
    }

    public Draft draft() {
        return draft;
    }

    /** Edges to be cut, and where something is left on, edges of the finished panel. */
    public List<Ink.Stroke> strokes() {
        return List.copyOf(strokes);
    }

    /** {u0, v0, u1, v1} round all pieces, mm. */
    public double[] box() {
        return box.clone();
    }

    /** Where a place lies on the blank now, mm: {u, v}; empty where the form is drawn in other triangles. */
    public Optional<double[]> onBlank(Place place) {
        return draft.coarse() ? Optional.empty() : Optional.of(place.at().on(draft.pieces().get(place.piece()).map()));
    }

    /** What stands over the picture. */
    public String words() {
        return draft.coarse() ? "A first answer in few triangles: the exact blank, its work and its lettering follow."
                : "A first answer: the exact blank, its work and its lettering follow.";
    }

    public int pieces() {
        return draft.pieces().size();
    }

    /** The colours of a piece; what a first answer does not know of stays as it was: bowl and saddle, buckling, the limit of an unknown metal. */
    public Painting painting(int piece, MapKind kind) {
        return paintings.computeIfAbsent(kind, this::painted).get(piece);
    }

    private List<Painting> painted(MapKind kind) {
        List<Painting> all = new ArrayList<>();
        for (int i = 0; i < draft.pieces().size(); i++) all.add(painted(i, kind));
        return all;
    }

    private Painting painted(int number, MapKind kind) {
        Draft.Piece piece = draft.pieces().get(number);
        FlatMap map = piece.map();
        int n = map.form().vertexCount();
        double[] values = new double[n];
        if (kind == MapKind.WORK) return Painting.of(WorkField.of(map, piece.vertices(), ZoneOptions.DEFAULT.neutral()));
        if (kind == MapKind.THICKNESS) for (int v = 0; v < n; v++) values[v] = Math.exp(piece.vertices().thicknessStrain(v));
        else if (kind == MapKind.LIMIT && judge.isPresent()) values = Skin.used(piece.vertices(), judge.get(), n);
        else if (!draft.coarse()) values = before.skins().get(number).painting(kind).values();
        else for (int v = 0; v < n; v++) values[v] = before.value(kind, before.onForm(map.form().x(v), map.form().y(v), map.form().z(v)));
        return Painting.of(map, values);
    }
}
