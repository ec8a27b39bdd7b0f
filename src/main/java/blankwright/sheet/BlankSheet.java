package blankwright.sheet;

import blankwright.drawing.Drawing;
import blankwright.drawing.Entity;
import blankwright.drawing.Layer;
import blankwright.drawing.Lettering;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;
import blankwright.outline.Overlap;
import blankwright.outline.Region;
import blankwright.outline.RimFit;
import blankwright.shop.Amounts;
import blankwright.shop.Flange;
import blankwright.shop.Fold;
import blankwright.shop.Instruction;
import blankwright.shop.RollMark;
import blankwright.shop.Ruling;
import blankwright.shop.SeamEdges;
import blankwright.shop.TapeLine;
import blankwright.shop.Zone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The blank at true size, outside face up: what is cut, trimmed, marked, shrunk and stretched, each on its layer.
 *
 * <ul>
 * <li>CUT: the outline and the holes; where an allowance is asked, that much outside them, and TRIM is the finished edge.
 * <li>MARK: centre line, station lines and tapes laid by hand with a tick at each end, seam marks: ticks that meet again when the seam is closed, the
 *     rulings of rolled areas, the middle of the bend of turned flanges and of folds, both sides of each tuck
 *     from the cut to its tip.
 * <li>SHRINK, STRETCH: borders of zones, each drawn once (between both kinds: on SHRINK), the line each zone is measured along where that is not
 *     the edge itself, arrows:
 *     pointing at each other = shrink, parting = stretch.
 * <li>TEXT: names and amounts. Beside an arrow stands the work there in mm per 100 mm. The facts of the sheet stand below all pieces, clear of
 *     them.
 * </ul>
 * <p>Curves lie within {@link #TOLERANCE} of the edges of the flat triangles; an allowance adds as much again. Zone borders are evened out.
 */
public final class BlankSheet {
    /** Of cut, trim and marked lines, mm. */
    public static final double TOLERANCE = 0.05;
    private static final double EDGE = 1;           // mm from the finished edge within which a line to measure along is the edge itself
    private static final int PLACES = 24;           // along a fold, where its name may stand
    private static final double CORNER = 1.5;       // allowances from the finished edge to the cut, measured slantwise at a corner

    private final SheetNotes notes;
    private final List<BlankPiece> pieces;
    private final double allowance;
    private final List<Entity> out = new ArrayList<>();
    private final Map<BlankPiece, List<double[]>> known = new IdentityHashMap<>();     // the rims of each piece
    private final Map<BlankPiece, Region> cuts = new IdentityHashMap<>();               // what is cut of each
    private final Lettered letters = new Lettered(out);

    private BlankSheet(SheetNotes notes, List<BlankPiece> pieces, double allowance) {
        this.notes = notes;
        this.pieces = pieces;
        this.allowance = allowance;
    }

    /** Height of lettering on a piece, mm: read at arm's length on a panel, still within a narrow strip. */
    private static double high(BlankPiece piece) {
        double[] size = piece.map().size();
        return Math.max(1.2, Math.min(6, Math.min(Math.max(size[0], size[1]) / 90, Math.min(size[0], size[1]) / 7)));
    }

    /** Length of an arrow on a piece, mm. */
    private static double arrowLength(BlankPiece piece) {
        double[] size = piece.map().size();
        return Math.max(4, Math.min(30, Math.min(Math.max(size[0], size[1]) / 22, Math.min(size[0], size[1]) / 3)));
    }

    /**
     * @param pieces at least one, as they lie on the sheet
     * @param allowance metal left on beyond the finished edge, mm, 0 or above; pieces must lie farther apart than twice as much. A piece that
     *        covers itself gets none, and its lettering says so.
     */
    public static Drawing of(SheetNotes notes, List<BlankPiece> pieces, double allowance) {
        if (pieces.isEmpty()) throw new IllegalArgumentException("a sheet of no piece");
        if (!(allowance >= 0) || Double.isInfinite(allowance)) throw new IllegalArgumentException("allowance " + allowance + " mm: must be 0 or more");
        return new BlankSheet(notes, List.copyOf(pieces), allowance).drawing();
    }

    private Drawing drawing() {
        Box all = null;
        List<String> refused = new ArrayList<>();
        for (BlankPiece piece : pieces) {
            Box box = edges(piece, refused);
            all = all == null ? box : all.with(box);
        }
        for (BlankPiece piece : pieces) {
            marks(piece);
            seams(piece);
            tucks(piece);
            flanges(piece);
            folds(piece);
            rulings(piece);
            borders(piece);
            zoneNumbers(piece);
        }
        for (BlankPiece piece : pieces) {
            zoneLines(piece);
            rollWords(piece);
            arrows(piece);
            names(piece);
        }
        facts(all, refused);
        return Drawing.of(notes.name(), out);
    }

    /** The edge lines of a piece; returns the box of what is cut. */
    private Box edges(BlankPiece piece, List<String> refused) {
        List<double[]> rings = rings(piece.map());
        known.put(piece, rings);
        Region net = Region.ofRims(rings, TOLERANCE);
        Region cut = net;
        if (allowance > 0) {
            if (Overlap.of(rings).isEmpty()) cut = net.grown(allowance, TOLERANCE);
            else refused.add(piece.name());
        }
        cuts.put(piece, cut);
        for (Curve curve : cut.curves()) out.add(new Entity.Polyline(Layer.CUT, curve));
        if (cut != net) for (Curve curve : net.curves()) out.add(new Entity.Polyline(Layer.TRIM, curve));
        return cut.box();
    }

    private static List<double[]> rings(FlatMap map) {
        RimLoops rims = RimLoops.of(map.form(), EdgeTable.of(map.form()));
        List<double[]> rings = new ArrayList<>();
        for (int i = 0; i < rims.count(); i++) rings.add(map.places(rims.loop(i)));
        return rings;
    }

    // ---- marks

    private void marks(BlankPiece piece) {
        for (TapeLine line : piece.centreLine()) marked(piece, line, Layer.MARK);
        for (TapeLine line : piece.stations()) marked(piece, line, Layer.MARK);
        for (TapeLine line : piece.tapes()) marked(piece, line, Layer.MARK);
        for (TapeLine line : piece.tapes()) ends(piece, line);
        for (TapeLine line : piece.centreLine()) ends(piece, line);
        for (TapeLine line : piece.stations()) ends(piece, line);
    }

    /** The line with a short tick across it near each end, which outlasts a filed edge. */
    private void marked(BlankPiece piece, TapeLine line, Layer layer) {
        if (!(line.blankLength() > 4 * TOLERANCE)) return;
        out.add(new Entity.Polyline(layer, RimFit.path(line.onBlank(), TOLERANCE)));
        double high = high(piece), in = Math.min(high / 2, line.blankLength() / 4), half = high / 3;
        for (boolean fromEnd : new boolean[] {false, true}) {
            double[] at = along(line, fromEnd ? line.blankLength() - in : in);
            out.add(new Entity.Line(layer, at[0] - half * at[3], at[1] + half * at[2], at[0] + half * at[3], at[1] - half * at[2]));
        }
    }

    /** Writes a line's name beside both of its ends, in the metal; a short line's once, beside its middle. */
    private void ends(BlankPiece piece, TapeLine line) {
        double high = high(piece), wide = Lettering.width(line.name(), high);
        double[] middle = along(line, line.blankLength() / 2);
        boolean isShort = line.blankLength() < 2 * (Math.abs(middle[2]) * wide + 3 * high);
        for (boolean fromEnd : isShort ? new boolean[] {false} : new boolean[] {false, true}) {
            List<double[]> places = new ArrayList<>();
            for (int k = 0; k < 8; k++) {
                double in = isShort ? line.blankLength() / 2 : (1.5 + 1.6 * (k / 2)) * high, side = k % 2 == 0 ? 1 : -1;
                double[] at = along(line, fromEnd ? line.blankLength() - in : in);
                double du = Math.abs(at[2]), dv = Math.abs(at[3]);      // a steep line has its name beside it, a level one above or below
                at = along(line, Math.max(0, Math.min(line.blankLength(), fromEnd ? line.blankLength() - in - du * wide / 2 : in + du * wide / 2)));
                places.add(dv > du ? new double[] {at[0] + side * (wide / 2 + 0.6 * high), at[1]} : new double[] {at[0], at[1] + side * high});
            }
            letters.firstFree(line.name(), high, inMetal(piece, line.name(), high, places));
        }
    }

    /** {u, v, du, dv}: the point that far along on the blank and the unit direction there. */
    private static double[] along(TapeLine line, double distance) {
        double sum = 0;
        for (int i = 1; i < line.pointCount(); i++) {
            double du = line.u(i) - line.u(i - 1), dv = line.v(i) - line.v(i - 1), part = Math.hypot(du, dv);
            if (part > 0 && (sum + part >= distance || i == line.pointCount() - 1)) {
                double w = Math.min(1, (distance - sum) / part);
                return new double[] {line.u(i - 1) + w * du, line.v(i - 1) + w * dv, du / part, dv / part};
            }
            sum += part;
        }
        return new double[] {line.u(0), line.v(0), 1, 0};
    }

    /** Ticks into the metal on both edges of a seam, numbered alike, where the edges meet again. */
    private void seams(BlankPiece piece) {
        for (SeamEdges seam : piece.seams()) {
            for (SeamEdges.Mark mark : seam.marks()) {
                for (boolean left : new boolean[] {true, false})
                    if (seam.has(mark, left)) seamMark(piece, seam.onBlank(piece.map(), mark, left), mark.name());
            }
        }
    }

    private void seamMark(BlankPiece piece, double[] at, String name) {
        double high = high(piece), u = at[0], v = at[1], nu = at[2], nv = at[3];
        if (nu == 0 && nv == 0) return;
        out.add(new Entity.Line(Layer.MARK, u, v, u + 1.5 * high * nu, v + 1.5 * high * nv));
        for (double tall : new double[] {high, 0.7 * high, 0.5 * high}) {
            double wide = Lettering.width(name, tall), in = 0.5 * high + 1.5 * tall + wide / 2 * Math.abs(nu) + tall / 2 * Math.abs(nv);
            List<double[]> places = new ArrayList<>();
            for (int k = 0; k < 5; k++)
                for (int aside : new int[] {0, 1, -1})
                    places.add(new double[] {u + (in + k * tall) * nu - 1.5 * aside * tall * nv, v + (in + k * tall) * nv + 1.5 * aside * tall * nu});
            if (letters.firstFree(name, tall, inMetal(piece, name, tall, places))) return;
        }
        double tall = 0.5 * high;                               // over other words: a mark without its name says nothing
        letters.line(name, u + 4 * tall * nu - Lettering.width(name, tall) / 2, v + 4 * tall * nv - tall / 2, tall);
    }

    // ---- tucks

    private void tucks(BlankPiece piece) {
        if (piece.tucks().isEmpty()) return;
        RimLoops rims = RimLoops.of(piece.map().form(), EdgeTable.of(piece.map().form()));
        Region cut = cuts.get(piece);
        for (TuckMark tuck : piece.tucks()) {
            Optional<TuckSides> sides = TuckSides.of(piece.map(), rims.loop(tuck.rim()), tuck, (u, v) -> contains(piece, u, v), cut::contains,
                    CORNER * allowance);
            if (sides.isEmpty()) continue;
            out.add(new Entity.Polyline(Layer.MARK, Curve.path(sides.get().path())));
            tuckName(piece, tuck, sides.get());
        }
    }

    /** Between its sides where there is room, else beyond its tip. */
    private void tuckName(BlankPiece piece, TuckMark tuck, TuckSides sides) {
        double most = Math.min(0.6 * high(piece), tuck.base() / 2 / Lettering.width(tuck.name(), 1));
        for (double tall : new double[] {most, 0.7 * most}) {
            List<double[]> places = new ArrayList<>();
            for (double share : new double[] {0.25, 0.35, 0.15}) places.add(sides.in(share * sides.depth()));
            double half = Lettering.width(tuck.name(), tall) / 2 * Math.abs(sides.inU()) + tall / 2 * Math.abs(sides.inV());
            for (int k = 0; k < 4; k++) places.add(sides.in(sides.depth() + half + (0.4 + 1.5 * k) * tall));
            if (letters.firstFree(tuck.name(), tall, inMetal(piece, tuck.name(), tall, places))) return;
        }
    }

    // ---- turning

    private void flanges(BlankPiece piece) {
        for (int i = 0; i < piece.flanges().size(); i++) {
            Flange flange = piece.flanges().get(i);
            double[] line = flange.line();
            out.add(new Entity.Polyline(Layer.MARK, flange.whole() ? RimFit.of(line, TOLERANCE) : RimFit.path(line, TOLERANCE)));
            beside(piece, line, piece.name() + flange.words(i + 1));
        }
    }

    /** As flanges are, with places for the name all along the line. */
    private void folds(BlankPiece piece) {
        for (int i = 0; i < piece.folds().size(); i++) {
            Fold fold = piece.folds().get(i);
            out.add(new Entity.Line(Layer.MARK, fold.u1(), fold.v1(), fold.u2(), fold.v2()));
            double[] line = new double[2 * (PLACES + 1)];
            for (int k = 0; k <= PLACES; k++) {
                line[2 * k] = fold.u1() + (fold.u2() - fold.u1()) * k / PLACES;
                line[2 * k + 1] = fold.v1() + (fold.v2() - fold.v1()) * k / PLACES;
            }
            beside(piece, line, piece.name() + fold.words(i + 1));
        }
    }

    /** Words close to a line, off it, where there is room. */
    private void beside(BlankPiece piece, double[] line, String words) {
        double high = 0.85 * high(piece), wide = Lettering.width(words, high);
        List<double[]> places = new ArrayList<>();
        for (int p = 0; p < line.length; p += 2)
            for (double away : new double[] {1.2 * high, wide / 2 + 0.6 * high})
                for (int[] side : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}})
                    places.add(new double[] {line[p] + side[0] * away, line[p + 1] + side[1] * away});
        letters.firstFree(words, high, inMetal(piece, words, high, places).stream().filter(p -> clear(line, p, wide, high)).toList());
    }

    /** Whether no point of a line lies under words with their middle there. */
    private static boolean clear(double[] line, double[] middle, double wide, double high) {
        for (int i = 0; i < line.length; i += 2)
            if (Math.abs(line[i] - middle[0]) < wide / 2 + 0.3 * high && Math.abs(line[i + 1] - middle[1]) < 0.8 * high) return false;
        return true;
    }

    // ---- rolling

    /** Straight, whole: a ruling is laid parallel to the roll. One that runs beside the edge is the edge. */
    private void rulings(BlankPiece piece) {
        for (RollMark roll : piece.rolls()) {
            Ruling r = roll.ruling();
            if (r.length() > 4 * TOLERANCE && !isEdge(piece, r)) out.add(new Entity.Line(Layer.MARK, r.u1(), r.v1(), r.u2(), r.v2()));
        }
    }

    /** Where rolling begins at a straight rim. */
    private boolean isEdge(BlankPiece piece, Ruling r) {
        for (double f : new double[] {0.1, 0.3, 0.5, 0.7, 0.9})
            if (!besideEdge(piece, r.u1() + f * (r.u2() - r.u1()), r.v1() + f * (r.v2() - r.v1()))) return false;
        return true;
    }

    /** Name and radii beside the middle of each ruling, or where it is rolled as a cone the radii beside both ends. */
    private void rollWords(BlankPiece piece) {
        double high = 0.85 * high(piece);
        for (RollMark roll : piece.rolls()) {
            Ruling r = roll.ruling();
            String name = piece.name() + roll.name() + (isEdge(piece, r) ? " (edge)" : "");
            if (roll.even()) {
                beside(piece, r, name + "  " + roll.middle(), 0.5, high);
            } else {
                beside(piece, r, name, 0.5, high);
                beside(piece, r, roll.first(), 0.08, high);
                beside(piece, r, roll.second(), 0.92, high);
            }
        }
    }

    /** Level words on one side or the other of a ruling, as near as may be to a share of its length from its first end. */
    private void beside(BlankPiece piece, Ruling r, String words, double share, double tall) {
        double length = r.length();
        if (!(length > 0)) return;
        double du = (r.u2() - r.u1()) / length, dv = (r.v2() - r.v1()) / length, wide = Lettering.width(words, tall);
        double off = 0.5 * tall + Math.abs(dv) * wide / 2 + Math.abs(du) * tall / 2;
        double step = Math.max(1.7 * tall, length / 24), there = share * length;
        List<double[]> places = new ArrayList<>();
        for (double away : new double[] {off, -off, off + 1.6 * tall, -off - 1.6 * tall, off + 3.2 * tall, -off - 3.2 * tall}) {
            for (int k = 0; k < 12; k++) {
                double at = there + (share < 0.5 ? k : share > 0.5 ? -k : k % 2 == 0 ? k / 2 : -(k + 1) / 2) * step;
                if (at >= 0 && at <= length) places.add(new double[] {r.u1() + at * du - away * dv, r.v1() + at * dv + away * du});
            }
        }
        letters.firstFree(words, tall, inMetal(piece, words, tall, places));
    }

    // ---- work

    private void borders(BlankPiece piece) {
        for (ZoneBorders.Border border : ZoneBorders.of(piece.map(), piece.zones())) {
            Layer layer = border.shrink() ? Layer.SHRINK : Layer.STRETCH;
            out.add(new Entity.Polyline(layer, border.closed() ? RimFit.of(border.uv(), TOLERANCE) : RimFit.path(border.uv(), TOLERANCE)));
        }
    }

    /** What is to be done in each zone, in full where there is room, else its number alone. */
    private void zoneNumbers(BlankPiece piece) {
        double high = high(piece);
        for (Zone zone : piece.worked()) {
            String number = piece.label(zone);
            String words = number + " " + zone.instruction().word() + " " + Amounts.change(zone.line().change()) + " over "
                    + Amounts.length(zone.line().blankLength());
            List<double[]> places = Lettered.round(zone.label().u(), zone.label().v(), high, 12 * high);
            if (!letters.firstFree(words, high, inMetal(piece, words, high, places))) letters.firstFree(number, high, places);
        }
    }

    /** Those of the places at which the words lie wholly on the piece. */
    private List<double[]> inMetal(BlankPiece piece, String words, double tall, List<double[]> places) {
        double wide = Lettering.width(words, tall);
        return places.stream().filter(p -> onMetal(piece, p[0], p[1], wide, tall)).toList();
    }

    /** Whether the corners and the middle of a box lie on the piece. */
    private boolean onMetal(BlankPiece piece, double u, double v, double w, double h) {
        return contains(piece, u, v) && contains(piece, u - w / 2, v - h / 2) && contains(piece, u + w / 2, v - h / 2)
                && contains(piece, u - w / 2, v + h / 2) && contains(piece, u + w / 2, v + h / 2);
    }

    /** Counted by the rims of the piece, holes left out. */
    private boolean contains(BlankPiece piece, double u, double v) {
        boolean in = false;
        for (double[] ring : known.get(piece)) {
            for (int i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
                if (ring[i + 1] > v != ring[j + 1] > v
                        && u < ring[i] + (v - ring[i + 1]) / (ring[j + 1] - ring[i + 1]) * (ring[j] - ring[i])) in = !in;
            }
        }
        return in;
    }

    private void zoneLines(BlankPiece piece) {
        for (Zone zone : piece.worked()) {
            TapeLine line = zone.line();
            int from = 0;
            for (int i = 0; i <= line.pointCount(); i++) {
                if (i < line.pointCount() && !besideEdge(piece, line.u(i), line.v(i))) continue;
                if (i - from > 1) marked(piece, line.part(from, i), layer(zone));
                from = i + 1;
            }
        }
    }

    /** Where a zone's line runs beside the finished edge the edge is what the tape is laid on; nothing is marked along a cut. */
    private boolean besideEdge(BlankPiece piece, double u, double v) {
        for (double[] ring : known.get(piece)) {
            for (int i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
                double du = ring[i] - ring[j], dv = ring[i + 1] - ring[j + 1], pu = u - ring[j], pv = v - ring[j + 1], dd = du * du + dv * dv;
                double f = dd > 0 ? Math.max(0, Math.min(1, (pu * du + pv * dv) / dd)) : 0;
                if (Math.hypot(pu - f * du, pv - f * dv) < EDGE) return true;
            }
        }
        return false;
    }

    private static Layer layer(Zone zone) {
        return zone.instruction() == Instruction.SHRINK ? Layer.SHRINK : Layer.STRETCH;
    }

    /** The name of the panel and of the piece in the metal itself: the one thing that must not be lost once it is cut. */
    private void names(BlankPiece piece) {
        String words = (piece.name().isEmpty() ? "" : piece.name() + "  ") + notes.name() + ", outside face up";
        double[] box = piece.map().box();
        double high = high(piece), u = (box[0] + box[2]) / 2, v = (box[1] + box[3]) / 2;
        for (double tall : new double[] {1.3 * high, high, 0.7 * high}) {
            List<double[]> places = Lettered.round(u, v, tall, Math.max(box[2] - box[0], box[3] - box[1]) / 2);
            if (letters.firstFree(words, tall, inMetal(piece, words, tall, places))) return;
        }
    }

    /** Arrows on a staggered grid in each zone, at least one, each with its amount. */
    private void arrows(BlankPiece piece) {
        FlatMap map = piece.map();
        TriMesh form = map.form();
        double longest = Math.max(map.size()[0], map.size()[1]), spacing = Math.max(3 * arrowLength(piece), longest / 40), row = spacing * Math.sqrt(0.75);
        Map<Long, Integer> cell = new HashMap<>();              // the triangle whose middle lies nearest to each place of the grid
        Map<Long, Double> near = new HashMap<>();
        for (int t = 0; t < form.triangleCount(); t++) {
            if (piece.zones().at(t).instruction() == Instruction.LEAVE) continue;
            double[] m = middle(map, t);
            long j = Math.round(m[1] / row), i = Math.round(m[0] / spacing - Math.floorMod(j, 2) / 2.0);
            double away = Math.hypot(m[0] - (i + Math.floorMod(j, 2) / 2.0) * spacing, m[1] - j * row);
            long key = j << 32 ^ i & 0xFFFFFFFFL;
            if (away > spacing / 4 || away >= near.getOrDefault(key, Double.POSITIVE_INFINITY)) continue;
            near.put(key, away);
            cell.put(key, t);
        }
        boolean[] marked = new boolean[piece.zones().list().size() + 1];
        for (int t : cell.values().stream().sorted(Comparator.naturalOrder()).toList()) {
            if (arrow(piece, t, false)) marked[piece.zones().zoneOf(t)] = true;
        }
        for (Zone zone : piece.worked()) {
            if (!marked[zone.number()]) arrow(piece, zone.label().triangle(), true);
        }
    }

    private static double[] middle(FlatMap map, int t) {
        int a = map.form().corner(t, 0), b = map.form().corner(t, 1), c = map.form().corner(t, 2);
        return new double[] {(map.u(a) + map.u(b) + map.u(c)) / 3, (map.v(a) + map.v(b) + map.v(c)) / 3};
    }

    /** The arrow in the middle of triangle t in the direction of its zone's work; not drawn where the work there has the other sign. */
    private boolean arrow(BlankPiece piece, int t, boolean always) {
        Zone zone = piece.zones().at(t);
        double high = high(piece), arrowLength = arrowLength(piece);
        boolean shrink = zone.instruction() == Instruction.SHRINK;
        int v = piece.map().form().corner(t, 0);
        double amount = piece.strain().dominant(v);
        if (amount < 0 != shrink && !always) return false;
        if (amount < 0 != shrink) amount = zone.meanStrain();       // a small area of the other kind that went to this zone
        double angle = piece.strain().directionOnBlank(v) + (shrink ? Math.PI / 2 : 0), du = Math.cos(angle), dv = Math.sin(angle);
        double[] m = middle(piece.map(), t);
        String words = (amount > 0 ? "+" : "") + Amounts.perHundred(Math.rint(amount * 1e3) / 1e3);
        double w = arrowLength * Math.abs(du) + arrowLength / 6, h = arrowLength * Math.abs(dv) + arrowLength / 6;
        double reach = 0.6 * arrowLength;
        boolean fits = contains(piece, m[0] - reach * du, m[1] - reach * dv) && contains(piece, m[0] + reach * du, m[1] + reach * dv);
        if (!always && (words.equals("0") || !fits || !letters.isFree(m[0], m[1], 0.7 * w, 0.7 * h))) return false;
        double half = arrowLength / 2, head = arrowLength / 7, gap = arrowLength / 16;
        Layer layer = layer(zone);
        for (int side = -1; side <= 1; side += 2) {
            double eu = side * du, ev = side * dv, tip = shrink ? gap : half, tail = shrink ? half : 0, base = shrink ? gap + head : half - head;
            if (shrink) out.add(new Entity.Line(layer, m[0] + tail * eu, m[1] + tail * ev, m[0] + tip * eu, m[1] + tip * ev));
            out.add(new Entity.Polyline(layer, Curve.path(m[0] + base * eu - head / 2 * ev, m[1] + base * ev + head / 2 * eu,
                    m[0] + tip * eu, m[1] + tip * ev, m[0] + base * eu + head / 2 * ev, m[1] + base * ev - head / 2 * eu)));
        }
        if (!shrink) out.add(new Entity.Line(layer, m[0] - half * du, m[1] - half * dv, m[0] + half * du, m[1] + half * dv));
        double small = 0.7 * high, off = small + 0.5 * head + Lettering.width(words, small) / 2 * Math.abs(dv);
        letters.firstFree(words, small, inMetal(piece, words, small,
                List.of(new double[] {m[0] - off * dv, m[1] + off * du}, new double[] {m[0] + off * dv, m[1] - off * du})));
        letters.keepClear(m[0], m[1], 0.7 * w, 0.7 * h);
        return true;
    }

    // ---- facts

    /** Below everything that is cut. */
    private void facts(Box all, List<String> refused) {
        List<String> lines = new ArrayList<>();
        lines.add(notes.name());
        lines.add("outside face up");
        lines.addAll(notes.lines());
        lines.add(allowance > 0 ? "CUT is " + Amounts.length(allowance) + " outside the finished edge TRIM" : "CUT is the finished edge, no allowance");
        for (String name : refused) lines.add((name.isEmpty() ? "The blank" : "Piece " + name) + " covers itself: no allowance drawn");
        lines.add("numbers at arrows: mm on every 100 mm, - take in, + let out");
        if (pieces.stream().anyMatch(p -> !p.seams().isEmpty())) lines.add("seam: marks of the same name, such as "
                + pieces.stream().flatMap(p -> p.seams().stream()).findFirst().orElseThrow().name() + "-1, meet again");
        if (pieces.stream().anyMatch(p -> !p.tucks().isEmpty()))
            lines.add("T7: tuck 7 of tucks.csv, raised between its two lines; sizes from memory");
        for (BlankPiece piece : pieces) {
            for (RollMark roll : piece.rolls())
                if (roll.isStart()) lines.add(piece.name() + roll.roll() + ": the outside face " + roll.outside() + "; lay its lines parallel to the roll");
        }
        if (pieces.stream().anyMatch(p -> !p.flanges().isEmpty()))
            lines.add("flange: turned about its line; down is away from the outside face");
        if (pieces.stream().anyMatch(p -> !p.folds().isEmpty()))
            lines.add("fold: folded about its line, the middle of the bend; down is away from the outside face");
        pieces.stream().flatMap(p -> p.rolls().stream()).findFirst().ifPresent(roll -> lines.add(roll.key()));
        for (BlankPiece piece : pieces) {
            String name = piece.name().isEmpty() ? "" : piece.name() + " ";
            if (!piece.centreLine().isEmpty()) lines.add(check(name + "centre line", piece.centreLine().get(0)));
            for (TapeLine tape : piece.tapes()) lines.add(check("tape " + tape.name(), tape));
        }
        double high = Math.max(1.2, Math.min(6, Math.max(all.width(), all.height()) / 90)), v = all.y0() - 3 * high;
        for (String line : lines) {
            letters.line(line, all.x0(), v, high);
            v -= 1.9 * high;
        }
    }

    private static String check(String name, TapeLine line) {
        return "check length " + name + ": flat " + exact(line.blankLength()) + ", formed " + exact(line.formLength());
    }

    private static String exact(double mm) {
        return String.format(java.util.Locale.ROOT, "%.1f mm", mm);
    }
}
