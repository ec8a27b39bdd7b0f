package blankwright.picture;

import blankwright.num.Lengths;
import blankwright.shop.SheetThickness;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * How thick the metal is after forming, on the blank: dark where it is thin, light where it is thick, so that a grey print reads the same.
 *
 * <p>Landscape A4 at 300 elements an inch. Colours and their limits are those of the map on screen, see {@link Tints#thickness}; numbers are mm.
 */
public final class ThicknessPicture {
    private static final double PER_MM = 300 / 25.4, BOX = 13.4, SHORTEST_LINE = 7;

    private final Canvas canvas = new Canvas(Frame.WIDTH, Frame.HEIGHT, PER_MM);
    private final Frame frame = new Frame(canvas, null);
    private final Rectangle2D room = Frame.room();
    private final List<ThicknessPiece> pieces;
    private final double sheet;
    private final SheetThickness.Place thinnest, thickest;
    private final Tints tints;
    private final OnSheet place;

    private ThicknessPicture(List<ThicknessPiece> pieces, OptionalDouble thinEnd) {
        this.pieces = pieces;
        sheet = pieces.get(0).thickness().sheet();
        Comparator<SheetThickness.Place> thinner = Comparator.comparingDouble(SheetThickness.Place::mm);
        thinnest = pieces.stream().map(p -> p.thickness().thinnest()).min(thinner).orElseThrow();
        thickest = pieces.stream().map(p -> p.thickness().thickest()).max(thinner).orElseThrow();
        tints = Tints.thickness(thinnest.mm() / sheet, thickest.mm() / sheet).from(thinEnd);
        place = new OnSheet(pieces.stream().map(ThicknessPiece::map).toList(), room);
    }

    /**
     * @param thinEnd where the colours end at the thin side, as a share of the sheet; empty where the thinnest place decides
     * @param pieces at least one, all of one sheet, as they lie on it without covering each other
     */
    public static Picture of(Caption caption, OptionalDouble thinEnd, List<ThicknessPiece> pieces) {
        return drawn(caption, thinEnd, pieces).picture();
    }

    static Canvas drawn(Caption caption, OptionalDouble thinEnd, List<ThicknessPiece> pieces) {
        if (pieces.isEmpty()) throw new IllegalArgumentException("a map of thickness of no piece");
        ThicknessPicture picture = new ThicknessPicture(List.copyOf(pieces), thinEnd);
        picture.draw(caption);
        return picture.canvas;
    }

    private void draw(Caption caption) {
        List<ContourLines.Line> lines = new ArrayList<>();
        List<Path2D> paths = new ArrayList<>();
        Contours.Crowd crowd = new Contours.Crowd();
        for (ThicknessPiece piece : pieces) {
            int[] tri = piece.map().form().corners();
            double[] uv = piece.map().positions(), left = piece.thickness().atVertices();
            for (int v = 0; v < left.length; v++) left[v] /= sheet;
            place.paint(canvas, uv, left, tri, tints);
            for (ContourLines.Line line : ContourLines.of(tri, left, tints.boundaries())) {
                Path2D path = place.path(line, uv);
                if (Contours.length(path) < SHORTEST_LINE) continue;
                canvas.line(path, Canvas.INK, 0.2);
                lines.add(line);
                paths.add(path);
                crowd.add(path, line.value());
            }
        }
        for (ThicknessPiece piece : pieces) {
            Path2D rim = place.rim(piece.map());
            canvas.line(rim, Canvas.INK, 0.55);
            crowd.add(rim, Double.NaN);
        }
        mark("thinnest " + Lengths.mm(thinnest.mm(), 2), thinnest);
        mark("thickest " + Lengths.mm(thickest.mm(), 2), thickest);
        for (int i = 0; i < lines.size(); i++) Contours.number(canvas, paths.get(i), lines.get(i).value(), number(lines.get(i).value()), room, 80, crowd);
        frame.heading(new Caption(caption.name(), notes(caption)), "thickness after forming, on the blank, outside face up");
        key();
        frame.bars(place.perMm());
        facts();
        frame.cautions();
    }

    private List<String> notes(Caption caption) {
        List<String> notes = new ArrayList<>(caption.notes());
        notes.add(place.size());
        return notes;
    }

    private void mark(String words, SheetThickness.Place spot) {
        double x = place.x(spot.at().u(), spot.at().v()), y = place.y(spot.at().u(), spot.at().v()), tall = 2.9, wide = Canvas.wide(words, tall);
        Point2D at = Callout.aside(canvas, x, y, wide + 1, tall + 1, room);
        if (at == null) return;
        double w = (wide + 1) / 2, h = (tall + 1) / 2;
        Callout.leader(canvas, x, y, Math.max(at.getX() - w, Math.min(x, at.getX() + w)), Math.max(at.getY() - h, Math.min(y, at.getY() + h)));
        canvas.take(at.getX(), at.getY(), wide + 1, tall + 1);
        canvas.wordsOver(words, at.getX(), at.getY(), tall, Canvas.INK);
    }

    /** mm of a share of the sheet, to a hundredth where that tells the classes apart, else to a thousandth. */
    private String number(double share) {
        boolean coarse = sheet * (tints.high() - tints.low()) / tints.classes() >= 0.01;
        return String.format(Locale.ROOT, coarse ? "%.2f" : "%.3f", sheet * share);
    }

    private void key() {
        double x0 = Frame.MARGIN, top = Frame.KEY + 7, high = 9, end = x0 + tints.classes() * BOX;
        frame.keyLine();
        canvas.words("THIN", x0, top - 1.6, 2.9, Canvas.INK);
        canvas.wordsEndingAt("THICK", end, top - 1.6, 2.9, Canvas.INK);
        for (int c = 0; c < tints.classes(); c++) canvas.box(x0 + c * BOX, top, BOX, high, tints.colour(c), Canvas.INK, 0.2);
        for (int i = 0; i < tints.classes() - 1; i++) canvas.wordsCentred(number(tints.boundary(i)), x0 + (i + 1) * BOX, top + high + 3.4, 2.4, Canvas.INK);
        canvas.words(number(tints.low()), x0, top + high + 3.4, 2.4, Canvas.INK);
        canvas.wordsEndingAt(number(tints.high()), end, top + high + 3.4, 2.4, Canvas.INK);
        canvas.words("Numbers: mm of metal left or gathered when the panel has its shape.", x0, top + high + 7.6, 2.3, Canvas.INK);
    }

    private void facts() {
        double x = Frame.WIDTH - Frame.MARGIN - Frame.COLUMN, y = room.getY() + 5;
        y = fact(x, y, "sheet", Lengths.mm(sheet, 2) + " (" + Lengths.inches(sheet, 3) + ")");
        y = fact(x, y, "thinnest", changed(thinnest));
        y = fact(x, y, "thickest", changed(thickest));
        for (String line : new String[] {"Worked out from volume kept: what is", "stretched thins, what is shrunk thickens.",
            "Hammer marks and filing take more of it.", "Measure thin places after each round."}) {
            canvas.words(line, x, y + 2, 2.5, Canvas.INK);
            y += 4.2;
        }
    }

    private double fact(double x, double y, String what, String words) {
        canvas.words(what, x, y, 2.9, Canvas.INK);
        canvas.words(words, x + 17, y, 2.9, Canvas.INK);
        return y + 5.2;
    }

    private String changed(SheetThickness.Place spot) {
        double share = spot.mm() / sheet - 1;
        return Lengths.mm(spot.mm(), 2) + String.format(Locale.ROOT, ", %.1f %% %s", 100 * Math.abs(share), share < 0 ? "gone" : "gained");
    }
}
