package blankwright.picture;

import blankwright.mesh.FlatMap;
import blankwright.shop.Spot;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * One number for every place of the blank, in colours from one end of a scale to the other, with lines of equal numbers.
 *
 * <p>Landscape A4 at 300 elements an inch, in the same frame as the work map.
 */
final class FieldPicture {
    private static final double PER_MM = 300 / 25.4, BOX = 13.4, SHORTEST_LINE = 7;

    /**
     * What the numbers are called.
     *
     * @param heading behind the panel's name
     * @param low word at the low end of the key, @param high at the other
     * @param numbers sentence below the key
     * @param number how a number is written, on the lines and in the key
     * @param contours numbers at which a line is drawn
     * @param facts beside the picture: what, and how much
     * @param lines below the facts
     */
    record Legend(String heading, String low, String high, String numbers, DoubleFunction<String> number, double[] contours, List<String[]> facts, List<String> lines) { }

    /** One piece; values one per vertex. */
    record Piece(FlatMap map, double[] values) { }

    /** A place pointed at. */
    record Mark(String words, Spot at) { }

    private final Canvas canvas = new Canvas(Frame.WIDTH, Frame.HEIGHT, PER_MM);
    private final Frame frame = new Frame(canvas, null);
    private final Rectangle2D room = Frame.room();
    private final Legend legend;
    private final Tints tints;
    private final List<Piece> pieces;
    private final OnSheet place;

    private FieldPicture(Legend legend, Tints tints, List<Piece> pieces) {
        this.legend = legend;
        this.tints = tints;
        this.pieces = pieces;
        place = new OnSheet(pieces.stream().map(Piece::map).toList(), room);
    }

    /** @param pieces at least one, as they lie on the sheet without covering each other */
    static Canvas drawn(Caption caption, Legend legend, Tints tints, List<Piece> pieces, List<Mark> marks) {
        FieldPicture picture = new FieldPicture(legend, tints, List.copyOf(pieces));
        picture.draw(caption, marks);
        return picture.canvas;
    }

    private void draw(Caption caption, List<Mark> marks) {
        List<ContourLines.Line> lines = new ArrayList<>();
        List<Path2D> paths = new ArrayList<>();
        Contours.Crowd crowd = new Contours.Crowd();
        for (Piece piece : pieces) {
            int[] tri = piece.map().form().corners();
            double[] uv = piece.map().positions();
            place.paint(canvas, uv, piece.values(), tri, tints);
            for (ContourLines.Line line : ContourLines.of(tri, piece.values(), legend.contours())) {
                Path2D path = place.path(line, uv);
                if (Contours.length(path) < SHORTEST_LINE) continue;
                canvas.line(path, Canvas.INK, 0.2);
                lines.add(line);
                paths.add(path);
                crowd.add(path, line.value());
            }
        }
        for (Piece piece : pieces) {
            Path2D rim = place.rim(piece.map());
            canvas.line(rim, Canvas.INK, 0.55);
            crowd.add(rim, Double.NaN);
        }
        for (Mark mark : marks) mark(mark);
        for (int i = 0; i < lines.size(); i++)
            Contours.number(canvas, paths.get(i), lines.get(i).value(), legend.number().apply(lines.get(i).value()), room, 80, crowd);
        List<String> notes = new ArrayList<>(caption.notes());
        notes.add(place.size());
        frame.heading(new Caption(caption.name(), notes), legend.heading());
        key();
        frame.bars(place.perMm());
        facts();
        frame.warnings(caption.warnings());
        frame.cautions();
    }

    private void mark(Mark mark) {
        double x = place.x(mark.at().u(), mark.at().v()), y = place.y(mark.at().u(), mark.at().v()), tall = 2.9, wide = Canvas.wide(mark.words(), tall);
        Point2D at = Callout.aside(canvas, x, y, wide + 1, tall + 1, room);
        if (at == null) return;
        double w = (wide + 1) / 2, h = (tall + 1) / 2;
        Callout.leader(canvas, x, y, Math.max(at.getX() - w, Math.min(x, at.getX() + w)), Math.max(at.getY() - h, Math.min(y, at.getY() + h)));
        canvas.take(at.getX(), at.getY(), wide + 1, tall + 1);
        canvas.wordsOver(mark.words(), at.getX(), at.getY(), tall, Canvas.INK);
    }

    private void key() {
        double x0 = Frame.MARGIN, top = Frame.KEY + 7, high = 9, end = x0 + tints.classes() * BOX;
        frame.keyLine();
        canvas.words(legend.low(), x0, top - 1.6, 2.9, Canvas.INK);
        canvas.wordsEndingAt(legend.high(), end, top - 1.6, 2.9, Canvas.INK);
        for (int c = 0; c < tints.classes(); c++) canvas.box(x0 + c * BOX, top, BOX, high, tints.colour(c), Canvas.INK, 0.2);
        for (int i = 0; i < tints.classes() - 1; i++)
            canvas.wordsCentred(legend.number().apply(tints.boundary(i)), x0 + (i + 1) * BOX, top + high + 3.4, 2.4, Canvas.INK);
        canvas.words(legend.number().apply(tints.low()), x0, top + high + 3.4, 2.4, Canvas.INK);
        canvas.wordsEndingAt(legend.number().apply(tints.high()), end, top + high + 3.4, 2.4, Canvas.INK);
        canvas.words(legend.numbers(), x0, top + high + 7.6, 2.3, Canvas.INK);
    }

    private void facts() {
        double x = Frame.WIDTH - Frame.MARGIN - Frame.COLUMN, y = room.getY() + 5;
        double aside = legend.facts().stream().mapToDouble(f -> Canvas.wide(f[0], 2.9) + 2.5).max().orElse(0);
        for (String[] fact : legend.facts()) {
            canvas.words(fact[0], x, y, 2.9, Canvas.INK);
            canvas.words(fact[1], x + aside, y, Frame.fitting(fact[1], 2.9, Frame.COLUMN - aside), Canvas.INK);
            y += 5.2;
        }
        for (String line : legend.lines()) {
            canvas.words(line, x, y + 2, Frame.fitting(line, 2.5, Frame.COLUMN), Canvas.INK);
            y += 4.2;
        }
    }
}
