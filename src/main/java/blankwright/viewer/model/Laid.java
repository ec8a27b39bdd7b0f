package blankwright.viewer.model;

import blankwright.drawing.Drawing;
import blankwright.job.Packet;
import blankwright.job.Piece;
import blankwright.job.Result;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.query.SkinPoint;
import blankwright.picture.PressedPicture;
import blankwright.picture.Tints;
import blankwright.picture.WorkMap;
import blankwright.project.Recipe;
import blankwright.project.Scales;
import blankwright.shop.DrawnTape;
import blankwright.shop.Judge;
import blankwright.shop.PanelFrame;
import blankwright.shop.TapeLine;
import blankwright.shop.Tapes;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/** A finished run ready for the screen. Immutable; made on a thread of its own, since large panels take their time. */
public final class Laid {
    private final Result result;
    private final Drawing drawing;
    private final Ink ink;
    private final WorkMap workMap;
    private final Tapes tapes;
    private final Map<DrawnTape, Optional<TapeLine>> lines = new ConcurrentHashMap<>();     // asked for at each drawing
    private final List<Skin> skins = new ArrayList<>();
    private List<List<Corner>> rims;              // once they are asked for
    private final Map<MapKind, Tints> usual = new EnumMap<>(MapKind.class);
    private final Map<MapKind, List<Contour>> contours = new EnumMap<>(MapKind.class);

    private Laid(Result result) {
        this.result = result;
        drawing = Packet.drawing(result.with(result.recipe().withTapes(List.of())));
        ink = Ink.of(drawing);
        workMap = Packet.workMap(result.with(result.recipe().withScales(Scales.USUAL)));
        Recipe recipe = result.recipe();
        Optional<Judge> judge = recipe.thickness().isPresent() ? recipe.metal().map(m -> m.judge(recipe.thickness().getAsDouble()))
                : Optional.empty();
        for (int i = 0; i < result.pieces().size(); i++) skins.add(Skin.of(result.pieces().get(i), workMap.fields().get(i), judge));
        tapes = Tapes.on(skins.stream().map(Skin::map).toList());
        usual.put(MapKind.WORK, Tints.of(workMap.scale()));
        double thinnest = 1, thickest = 1, roundest = 0;
        for (Skin skin : skins) {
            Painting left = skin.painting(MapKind.THICKNESS), crown = skin.painting(MapKind.CURVATURE);
            for (int v = 0; v < left.vertexCount(); v++) {
                thinnest = Math.min(thinnest, left.value(v));
                thickest = Math.max(thickest, left.value(v));
                roundest = Math.max(roundest, Math.abs(crown.value(v)));
            }
        }
        usual.put(MapKind.THICKNESS, Tints.thickness(thinnest, thickest));
        usual.put(MapKind.CURVATURE, Tints.bothWays(Math.max(0.1, rounded(roundest))));
        if (judge.isPresent()) usual.put(MapKind.LIMIT, Tints.upTo(1));
        if (skins.stream().allMatch(skin -> skin.painting(MapKind.BUCKLING) != null)) usual.put(MapKind.BUCKLING,
                Tints.upTo(PressedPicture.END));
        for (MapKind kind : usual.keySet()) contours.put(kind, Contour.of(skins, kind, usual.get(kind)));
    }

    public static Laid of(Result result) {
        return new Laid(result);
    }

    /** Up to two digits. */
    private static double rounded(double x) {
        if (!(x > 0)) return 0;
        double step = Math.pow(10, Math.floor(Math.log10(x)) - 1);
        return Math.ceil(x / step) * step;
    }

    public Result result() {
        return result;
    }

    /** The blank as the files hold it, without tapes laid by hand: those come and go while it stays. */
    public Drawing drawing() {
        return drawing;
    }

    /** Its strokes. */
    public Ink ink() {
        return ink;
    }

    public List<Skin> skins() {
        return List.copyOf(skins);
    }

    public List<TriMesh> forms() {
        return skins.stream().map(s -> s.map().form()).toList();
    }

    /** Axes of the largest piece. */
    public PanelFrame frame() {
        return result.pieces().get(0).stations().frame();
    }

    /** {u0, v0, u1, v1} round all pieces, mm. */
    public double[] box() {
        double[] box = skins.get(0).map().box();
        for (Skin skin : skins) {
            double[] b = skin.map().box();
            for (int k = 0; k < 2; k++) {
                box[k] = Math.min(box[k], b[k]);
                box[k + 2] = Math.max(box[k + 2], b[k + 2]);
            }
        }
        return box;
    }

    /** Whether a map can be shown: that of the forming limit needs the metal. */
    public boolean has(MapKind kind) {
        return usual.containsKey(kind);
    }

    /** Colours and limits of a map: the usual ones, or as a hand has set the end. */
    public Tints tints(MapKind kind, OptionalDouble end) {
        if (end.isEmpty()) return usual.get(kind);
        return switch (kind) {
            case WORK -> Tints.of(workMap.scale().withLimit(end.getAsDouble()));
            case THICKNESS -> usual.get(kind).from(end);
            case CURVATURE -> Tints.bothWays(end.getAsDouble());
            case LIMIT, BUCKLING -> Tints.upTo(end.getAsDouble());
        };
    }

    /** Lines of equal number at the boundaries of the colours. */
    public List<Contour> contours(MapKind kind, Tints tints) {
        return tints.equals(usual.get(kind)) ? contours.get(kind) : Contour.of(skins, kind, tints);
    }

    public Numbers numbers(Place place) {
        return skins.get(place.piece()).numbers(place.at());
    }

    /** Where a place lies on the blank, mm: {u, v}. */
    public double[] onBlank(Place place) {
        return place.at().on(skins.get(place.piece()).map());
    }

    /** The number of a map at a place. */
    public double value(MapKind kind, Place place) {
        return skins.get(place.piece()).value(kind, place.at());
    }

    /** The place at (u, v) of the sheet, or within {@code reach} mm beside a piece. */
    public Optional<Place> onBlank(double u, double v, double reach) {
        Optional<Place> best = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < skins.size(); i++) {
            Optional<SkinPoint> there = skins.get(i).onBlank(u, v, reach);
            if (there.isEmpty()) continue;
            double[] at = there.get().on(skins.get(i).map());
            double off = Math.hypot(at[0] - u, at[1] - v);
            if (off >= least) continue;
            least = off;
            best = Optional.of(new Place(i, there.get()));
        }
        return best;
    }

    /** The place of the form nearest to a point in space. */
    public Place onForm(double x, double y, double z) {
        Tapes.Place nearest = tapes.nearest(x, y, z);
        return new Place(nearest.piece(), nearest.at());
    }

    /** A tape between two places, to a thousandth of a millimetre, so that a recipe can be read. */
    public DrawnTape between(Place from, Place to, boolean onBlank) {
        double[] p = numbers(from).form(), q = numbers(to).form();
        return new DrawnTape(tidy(p[0]), tidy(p[1]), tidy(p[2]), tidy(q[0]), tidy(q[1]), tidy(q[2]), onBlank);
    }

    static double tidy(double mm) {
        return Math.round(mm * 1000) / 1000.0;
    }

    /** The line of a tape on both, with its lengths; empty where its ends lie on two pieces, at one place, or with a hole between. */
    public Optional<TapeLine> line(DrawnTape tape) {
        return lines.computeIfAbsent(tape, t -> tapes.lay("tape", t).map(Tapes.Laid::line));
    }

    /** The corner of a rim nearest to a place, where it lies within {@code reach} mm of it, else the place itself: 3 on the form, mm. */
    double[] toRim(Place place, double reach) {
        double[] at = numbers(place).form(), best = at;
        double least = reach;
        for (Corner corner : rims().get(place.piece())) {
            double off = Math.hypot(Math.hypot(corner.at[0] - at[0], corner.at[1] - at[1]), corner.at[2] - at[2]);
            if (off > least) continue;
            least = off;
            best = corner.at;
        }
        return best;
    }

    /** The corner of a rim, no seam, seen nearest to a point of the picture, x and y from its middle, within {@code far} px: 3 on the form, mm. */
    public Optional<double[]> rimSeen(Orbit orbit, double x, double y, double height, double far) {
        double[] best = null;
        double least = far;
        for (List<Corner> corners : rims()) {
            for (Corner corner : corners) {
                double[] seen = orbit.seen(corner.at[0], corner.at[1], corner.at[2], height);
                double off = Math.hypot(seen[0] - x, seen[1] - y);
                if (corner.cut || seen[2] <= 0 || off > least) continue;
                least = off;
                best = corner.at;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * A corner of a rim.
     *
     * @param at mm on the form
     * @param cut true where it is one only by a seam
     */
    private record Corner(double[] at, boolean cut) { }

    /** Of each piece. */
    private synchronized List<List<Corner>> rims() {
        if (rims != null) return rims;
        List<List<Corner>> all = new ArrayList<>();
        for (Skin skin : skins) {
            TriMesh form = skin.map().form();
            boolean[] cut = new boolean[form.vertexCount()];
            for (Seam seam : skin.piece().seams()) {
                for (int i = 1; i < seam.edgeCount(); i++) {            // its ends lie on rims, or are where it stops
                    if (seam.left(i, 0) >= 0) cut[seam.left(i, 0)] = true;
                    if (seam.right(i, 0) >= 0) cut[seam.right(i, 0)] = true;
                }
            }
            List<Corner> corners = new ArrayList<>();
            RimLoops loops = RimLoops.of(form, EdgeTable.of(form));
            for (int i = 0; i < loops.count(); i++)
                for (int v : loops.loop(i)) corners.add(new Corner(new double[] {form.x(v), form.y(v), form.z(v)}, cut[v]));
            all.add(corners);
        }
        rims = all;
        return rims;
    }

    /** The line round a zone, evened out, or round a flange. */
    public Border border(WorkRow row) {
        Skin skin = skins.get(row.piece());
        return row instanceof FlangeRow turned ? Border.of(skin, turned.flange()) : Border.of(skin, ((ZoneRow) row).zone());
    }

    /** Whether it is one of those of this result. */
    public boolean has(WorkRow row) {
        if (row == null || row.piece() >= skins.size()) return false;
        Piece piece = skins.get(row.piece()).piece();
        return row instanceof FlangeRow turned ? piece.flanges().contains(turned.flange()) : piece.zones().list().contains(((ZoneRow) row).zone());
    }

    /** Where its name stands: a zone's in its middle, a flange's on its line. */
    public Place placeOf(WorkRow row) {
        if (row instanceof ZoneRow zone) return nearest(row.piece(), zone.zone().label().u(), zone.zone().label().v());
        double[] line = ((FlangeRow) row).flange().line();
        int middle = line.length / 4 * 2;
        return nearest(row.piece(), line[middle], line[middle + 1]);
    }

    /** From where it is best seen: out of the skin at a zone's number, of a flange along its whole line; unit, 3. */
    public double[] facing(WorkRow row) {
        if (!(row instanceof FlangeRow turned)) return numbers(placeOf(row)).normal();
        double[] line = turned.flange().line(), sum = new double[3];
        for (int i = 0; i < line.length; i += 2) {
            double[] normal = numbers(nearest(row.piece(), line[i], line[i + 1])).normal();
            for (int k = 0; k < 3; k++) sum[k] += normal[k];
        }
        double length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
        if (length < 1e-6 * line.length) return numbers(placeOf(row)).normal();          // turned in all directions alike
        return new double[] {sum[0] / length, sum[1] / length, sum[2] / length};
    }

    private Place nearest(int piece, double u, double v) {
        return new Place(piece, skins.get(piece).nearest(u, v));
    }
}
