package blankwright.picture;

import blankwright.shop.Amounts;
import blankwright.shop.Zone;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * What both work maps have round the picture itself: a heading, the key to colours and arrows, the list of zones, scale bars, cautions.
 *
 * <p>Landscape A4, mm from the upper left corner.
 */
final class Frame {
    static final double WIDTH = 297, HEIGHT = 210;
    static final double MARGIN = 7, COLUMN = 69, KEY = 173;
    private static final double CAUTIONS = 28, HEADING = 17.5;
    private static final int MOST_ROWS = 14, FEWER_ROWS = 10;
    private static final double ROW = 9.4;
    /** What stands on every picture of a blank that is not the blank. */
    static final String NO_BLANK = "Not true size, do not cut from it: cut from blank.*";

    private final Canvas canvas;
    private final StrainScale scale;

    Frame(Canvas canvas, StrainScale scale) {
        this.canvas = canvas;
        this.scale = scale;
    }

    /** Where the picture itself goes. */
    static Rectangle2D room() {
        return new Rectangle2D.Double(MARGIN, HEADING + 1.5, WIDTH - 2 * MARGIN - COLUMN - 3, KEY - HEADING - 3);
    }

    /** @param what which of the two maps this is; @param perMm paper mm per mm of metal */
    void draw(Caption caption, String what, List<MapPiece> pieces, double perMm) {
        heading(caption, what);
        key();
        bars(perMm);
        zones(pieces, caption.warnings().isEmpty() ? MOST_ROWS : FEWER_ROWS);
        warnings(caption.warnings());
        cautions();
    }

    void heading(Caption caption, String what) {
        double left = MARGIN;
        String name = shortened(caption.name(), 5, 110);
        canvas.words(name, left, 13.6, 5, Canvas.INK);
        canvas.words(what, left + Canvas.wide(name, 5) + 5, 13.6, 3, Canvas.INK);
        String notes = String.join("   ", caption.notes());
        double free = WIDTH - 2 * MARGIN - Canvas.wide(name, 5) - Canvas.wide(what, 3) - 12;
        double tall = Math.min(2.8, 2.8 * free / Math.max(free, Canvas.wide(notes, 2.8)));
        if (!notes.isBlank()) canvas.wordsEndingAt(notes, WIDTH - MARGIN, 13.6, tall, Canvas.INK);
        canvas.segment(left, HEADING - 1, WIDTH - MARGIN, HEADING - 1, Canvas.INK, 0.5);
    }

    /** Above the key. */
    void keyLine() {
        canvas.segment(MARGIN, KEY, WIDTH - MARGIN - COLUMN - 3, KEY, Canvas.INK, 0.25);
    }

    private void key() {
        double x0 = MARGIN, top = KEY + 7, box = 13.4, high = 9, end = x0 + StrainScale.CLASSES * box;
        keyLine();
        canvas.words("SHRINK: make it shorter", x0, top - 1.6, 2.9, Canvas.INK);
        canvas.wordsCentred("leave", x0 + box * StrainScale.CLASSES / 2, top - 1.6, 2.9, Canvas.INK);
        canvas.wordsEndingAt("STRETCH: make it longer", end, top - 1.6, 2.9, Canvas.INK);
        for (int c = 0; c < StrainScale.CLASSES; c++) {
            double x = x0 + c * box;
            canvas.box(x, top, box, high, StrainScale.colour(c), Canvas.INK, 0.2);
            int amount = Math.abs(c - StrainScale.CLASSES / 2);
            if (amount > 0) Arrows.draw(canvas, x + box / 2, top + high / 2, 1, 0, 4 + 1.3 * amount, c < 5, 0.45);
        }
        for (int i = 0; i < StrainScale.CLASSES - 1; i++) {
            double b = scale.boundary(i);
            canvas.wordsCentred((b > 0 ? "+" : "") + Amounts.perHundred(b), x0 + (i + 1) * box, top + high + 3.4, 2.4, Canvas.INK);
        }
        canvas.words(scale.clampsLow() ? "> " + Amounts.perHundred(-scale.limit()) : Amounts.perHundred(-scale.limit()), x0, top + high + 3.4, 2.4, Canvas.INK);
        canvas.wordsEndingAt((scale.clampsHigh() ? "> +" : "+") + Amounts.perHundred(scale.limit()), end, top + high + 3.4, 2.4, Canvas.INK);
        double line = top + high + 7.6;
        String[] lines = {"Numbers: mm to take in (-) or let out (+) on every 100 mm along the arrows; the same as percent.",
                "Arrows meeting = shrink, parting = stretch; bigger = more. Where two ways need work, the larger is shown."};
        for (int i = 0; i < 2; i++) canvas.words(lines[i], x0, line + 3.7 * i, fitting(lines[1], 2.3, 11 * box + 3), Canvas.INK);
    }

    void bars(double perMm) {
        double left = MARGIN + StrainScale.CLASSES * 13.4 + 9, right = WIDTH - MARGIN - COLUMN - 5, most = right - left;
        double mm = barLength(perMm, most, 100, 1);
        double inches = barLength(perMm * 25.4, most, 4, 0.25);
        bar(left, KEY + 9, mm * perMm, trimmed(mm) + " mm");
        bar(left, KEY + 19, inches * 25.4 * perMm, inchWord(inches));
    }

    /** The usual length where it can be seen and fits, otherwise the largest round one that fits. */
    private static double barLength(double perUnit, double most, double usual, double least) {
        if (usual * perUnit <= most && usual * perUnit >= 8) return usual;
        double best = least;
        for (double decade = least; decade <= 1e5; decade *= 10) {
            for (double times : new double[] {1, 2, 4}) {
                if (decade * times * perUnit <= most) best = decade * times;
            }
        }
        return best;
    }

    private void bar(double x, double y, double length, String words) {
        for (int i = 0; i < 4; i++) {
            canvas.box(x + i * length / 4, y, length / 4, 2, i % 2 == 0 ? Canvas.INK : Canvas.PAPER, Canvas.INK, 0.2);
        }
        canvas.words(words, x, y + 5.6, 2.6, Canvas.INK);
    }

    private static String trimmed(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }

    private static String inchWord(double inches) {
        return Amounts.fraction(inches) + " in";
    }

    private record Row(MapPiece piece, Zone zone) {
        double change() {
            return zone.line().change();
        }
    }

    private void zones(List<MapPiece> pieces, int most) {
        double x = WIDTH - MARGIN - COLUMN, y = HEADING + 5.5;
        List<Row> rows = new ArrayList<>();
        for (MapPiece piece : pieces) {
            for (Zone zone : piece.worked()) rows.add(new Row(piece, zone));
        }
        if (rows.isEmpty()) {
            canvas.words("Bending only", x, y + 2, 4.6, Canvas.INK);
            canvas.words("No place needs shrinking or stretching:", x, y + 8, 2.6, Canvas.INK);
            canvas.words("roll it or fold it, do not hammer it.", x, y + 12, 2.6, Canvas.INK);
            return;
        }
        rows.sort(Comparator.comparingDouble(r -> -Math.abs(r.change())));
        int shown = Math.min(most, rows.size());
        canvas.words("Zones, the most work first", x, y, 3.2, Canvas.INK);
        y += 3.2;
        for (Row row : rows.subList(0, shown)) {
            row(x, y, row);
            y += ROW;
        }
        if (shown < rows.size()) canvas.words("and " + (rows.size() - shown) + " smaller ones: see work.csv", x, y + 3, 2.3, Canvas.INK);
    }

    private void row(double x, double y, Row row) {
        Zone zone = row.zone();
        number(canvas, row.piece().label(zone), x + 3.2, y + 3.6);
        double room = COLUMN - 8;
        String first = zone.instruction().word() + "  " + Amounts.change(row.change()) + " over " + Amounts.length(zone.line().blankLength());
        canvas.words(first, x + 8, y + 3.5, fitting(first, 2.9, room), Canvas.INK);
        String second = Amounts.changeInInches(row.change()) + ", most " + Amounts.percent(zone.largestStrain()) + " %, "
                + zone.verdict().words();
        canvas.words(second, x + 8, y + 7, fitting(second, 2.2, room), Canvas.INK);
        canvas.segment(x, y + 8.6, x + COLUMN, y + 8.6, Canvas.FAINT, 0.12);
    }

    /** The number of a zone in its circle, middle at (x, y). */
    static void number(Canvas canvas, String label, double x, double y) {
        double radius = label.length() < 3 ? 2.8 : 3.3;
        canvas.disc(x, y, radius, Canvas.PAPER, Canvas.INK, 0.4);
        double tall = fitting(label, 2.9, 1.7 * radius);
        canvas.wordsCentred(label, x, y + tall / 2, tall, Canvas.INK);
    }

    /** What makes the blank unsafe to cut, framed heavily above the cautions. */
    void warnings(List<String> warnings) {
        if (warnings.isEmpty()) return;
        double tall = 2.6, step = 4, x = WIDTH - MARGIN - COLUMN;
        List<String> lines = new ArrayList<>();
        for (String warning : warnings) lines.addAll(broken(warning, tall, COLUMN - 5));
        int most = 8;
        if (lines.size() > most) {
            lines.subList(most - 1, lines.size()).clear();
            lines.add("...");
        }
        double high = 8 + step * lines.size(), y = HEIGHT - MARGIN - CAUTIONS - 2.5 - high;
        canvas.box(x, y, COLUMN, high, Canvas.PAPER, Canvas.INK, 0.9);
        canvas.words("Do not cut yet", x + 2.5, y + 5.4, 3.4, Canvas.INK);
        for (int i = 0; i < lines.size(); i++) canvas.words(lines.get(i), x + 2.5, y + 9.8 + i * step, tall, Canvas.INK);
    }

    /** Below the heading of a picture whose column is taken: that the blank must not be cut, and why, framed heavily; returns how high that is, mm. */
    double banner(List<String> warnings) {
        if (warnings.isEmpty()) return 0;
        String words = String.join(" ", warnings);
        double high = 6.5, wide = WIDTH - 2 * MARGIN;
        canvas.box(MARGIN, HEADING + 0.5, wide, high, Canvas.PAPER, Canvas.INK, 0.9);
        canvas.words(shortened(words, 2.2, wide - 4), MARGIN + 2, HEADING + 4.7, fitting(shortened(words, 2.2, wide - 4), 2.9, wide - 4), Canvas.INK);
        return high + 1.5;
    }

    /** Words in lines no wider than {@code room}; a word wider than that stands alone. */
    private static List<String> broken(String text, double tall, double room) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            if (line.length() > 0 && Canvas.wide(line + " " + word, tall) > room) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    void cautions() {
        double high = CAUTIONS, x = WIDTH - MARGIN - COLUMN, y = HEIGHT - MARGIN - high;
        canvas.box(x, y, COLUMN, high, Canvas.PAPER, Canvas.INK, 0.35);
        String[] lines = {"Cut edges are sharp: gloves and eye protection.", "No gloves at rolls, wheels, drills: they pull hands in.",
                "File edges smooth before stretching: nicks tear.", "Work in small rounds; check on the form each time.", NO_BLANK};
        canvas.words("Mind", x + 2, y + 5, 3.2, Canvas.INK);
        double tall = 2.4;
        for (String line : lines) tall = Math.min(tall, fitting(line, tall, COLUMN - 4));
        for (int i = 0; i < lines.length; i++) {
            canvas.words(lines[i], x + 2, y + 9.6 + i * 4, tall, Canvas.INK);
        }
    }

    /** The height at which words are no wider than {@code room}, at most {@code tall}. */
    static double fitting(String text, double tall, double room) {
        return Math.min(tall, tall * room / Math.max(1e-9, Canvas.wide(text, tall)));
    }

    private static String shortened(String text, double tall, double room) {
        String cut = text;
        while (cut.length() > 4 && Canvas.wide(cut, tall) > room) cut = cut.substring(0, cut.length() - 4) + "...";
        return cut;
    }

    /** {@code 812 x 530 mm (31.97 x 20.87 in)}. */
    static String size(double w, double h) {
        return String.format(Locale.ROOT, "%.0f x %.0f mm (%.1f x %.1f in)", w, h, w / 25.4, h / 25.4);
    }
}
