package blankwright.picture;

import blankwright.shop.Amounts;
import blankwright.shop.Instruction;
import blankwright.shop.SeamEdges;
import blankwright.shop.TapeLine;
import blankwright.shop.Zone;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Draws the pieces as they lie on the sheet. */
final class BlankPicture {
    private static final double ARROW_SPACING = 17;     // mm on paper
    private static final double DENSE = 5;              // mm on paper, to look for the first arrows of a zone
    private static final int FIRST = 5;
    private static final double SHORTEST_LINE = 7;      // mm on paper; shorter contour lines are specks

    private final Canvas canvas;
    private final StrainScale scale;
    private final List<MapPiece> pieces;
    private final List<WorkField> fields;
    private final Rectangle2D room = Frame.room();
    private final OnSheet place;
    private final double perMm;

    BlankPicture(Canvas canvas, StrainScale scale, List<MapPiece> pieces, List<WorkField> fields) {
        this.canvas = canvas;
        this.scale = scale;
        this.pieces = pieces;
        this.fields = fields;
        place = new OnSheet(pieces.stream().map(MapPiece::map).toList(), room);
        perMm = place.perMm();
    }

    void draw(Caption caption) {
        for (WorkField field : fields) place.paint(canvas, field.flat(), field.amounts(), field.corners(), Tints.of(scale));
        for (WorkField field : fields) jumps(field);
        List<ContourLines.Line> lines = new ArrayList<>();
        List<Path2D> contours = new ArrayList<>();
        for (WorkField field : fields) {
            double[] uv = field.flat();
            for (ContourLines.Line line : ContourLines.of(field.corners(), field.amounts(), scale.boundaries())) {
                Path2D path = place.path(line, uv);
                if (Contours.length(path) < SHORTEST_LINE) continue;
                canvas.line(path, Canvas.INK, Math.abs(line.value()) <= scale.neutral() ? 0.14 : 0.26);
                lines.add(line);
                contours.add(path);
            }
        }
        for (MapPiece piece : pieces) marks(piece);
        for (MapPiece piece : pieces) zoneLines(piece);
        for (MapPiece piece : pieces) canvas.line(rim(piece), Canvas.INK, 0.55);      // over a zone's line that runs beside it
        for (MapPiece piece : pieces) zoneNumbers(piece);
        for (MapPiece piece : pieces) seamMarks(piece);
        for (MapPiece piece : pieces) zoneWords(piece);
        for (MapPiece piece : pieces) markNames(piece);
        for (int i = 0; i < fields.size(); i++) firstArrows(fields.get(i), pieces.get(i));
        Contours.Crowd crowd = new Contours.Crowd();
        for (int i = 0; i < lines.size(); i++) crowd.add(contours.get(i), lines.get(i).value());
        for (MapPiece piece : pieces) crowd.add(rim(piece), Double.NaN);
        for (int i = 0; i < lines.size(); i++) {
            double value = lines.get(i).value();
            if (Math.abs(value) > scale.neutral()) Contours.number(canvas, contours.get(i), value, Contours.strain(value), room, 80, crowd);
        }
        for (WorkField field : fields) for (Samples.Sample s : Samples.spread(field, ARROW_SPACING / perMm)) arrow(s);
        List<String> notes = new ArrayList<>(caption.notes());
        notes.add(place.size());
        new Frame(canvas, scale).draw(new Caption(caption.name(), notes, caption.warnings()), "work map on the blank, outside face up", pieces, perMm);
    }

    private double x(double u, double v) {
        return place.x(u, v);
    }

    private double y(double u, double v) {
        return place.y(u, v);
    }

    private void jumps(WorkField field) {
        Path2D path = new Path2D.Double();
        int[] jump = field.jumps();
        for (int i = 0; i < jump.length; i += 2) {
            path.moveTo(x(field.u(jump[i]), field.v(jump[i])), y(field.u(jump[i]), field.v(jump[i])));
            path.lineTo(x(field.u(jump[i + 1]), field.v(jump[i + 1])), y(field.u(jump[i + 1]), field.v(jump[i + 1])));
        }
        canvas.line(path, Canvas.INK, 0.26);
    }

    private Path2D path(TapeLine line) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < line.pointCount(); i++) {
            if (i == 0) path.moveTo(x(line.u(i), line.v(i)), y(line.u(i), line.v(i)));
            else path.lineTo(x(line.u(i), line.v(i)), y(line.u(i), line.v(i)));
        }
        return path;
    }

    private Path2D rim(MapPiece piece) {
        return place.rim(piece.map());
    }

    private void marks(MapPiece piece) {
        for (TapeLine mark : piece.marks()) canvas.dashed(path(mark), 0x444444, 0.16, 2.4f, 0.7f);
    }

    /** A tick into the metal and its name on both edges of a seam, the name beyond the edge where there is room, else within. */
    private void seamMarks(MapPiece piece) {
        double tall = 2.3;
        for (SeamEdges seam : piece.seams()) {
            for (SeamEdges.Mark mark : seam.marks()) {
                for (boolean left : new boolean[] {true, false}) {
                    if (!seam.has(mark, left)) continue;
                    double[] at = seam.onBlank(piece.map(), mark, left);
                    double x = x(at[0], at[1]), y = y(at[0], at[1]);
                    double nx = x(at[0] + at[2], at[1] + at[3]) - x, ny = y(at[0] + at[2], at[1] + at[3]) - y;
                    double length = Math.hypot(nx, ny);
                    if (!(length > 0)) continue;
                    nx /= length;
                    ny /= length;
                    canvas.segment(x, y, x + 2.2 * nx, y + 2.2 * ny, Canvas.INK, 0.4);
                    double wide = Canvas.wide(mark.name(), tall), off = 1.2 + Math.abs(nx) * wide / 2 + Math.abs(ny) * tall / 2;
                    for (double away : new double[] {-off, -off - 2, off + 2.2, off + 4.2}) {
                        if (!canvas.free(x + away * nx, y + away * ny, wide, tall, room)) continue;
                        canvas.take(x + away * nx, y + away * ny, wide, tall);
                        canvas.wordsOver(mark.name(), x + away * nx, y + away * ny, tall, Canvas.INK);
                        break;
                    }
                }
            }
        }
    }

    /** Names of the marked lines just beyond both of their ends, where there is room. */
    private void markNames(MapPiece piece) {
        double tall = 2.3;
        for (TapeLine mark : piece.marks()) {
            int last = mark.pointCount() - 1;
            if (last < 1 || mark.name().isBlank()) continue;
            for (int end = 0; end < 2; end++) {
                int at = end == 0 ? 0 : last, before = end == 0 ? 1 : last - 1;
                double x = x(mark.u(at), mark.v(at)), y = y(mark.u(at), mark.v(at));
                double dx = x - x(mark.u(before), mark.v(before)), dy = y - y(mark.u(before), mark.v(before)), length = Math.hypot(dx, dy);
                if (!(length > 0)) continue;
                double wide = Canvas.wide(mark.name(), tall);
                double out = 1.4 + Math.abs(dx / length) * wide / 2 + Math.abs(dy / length) * tall / 2;
                double tx = x + out * dx / length, ty = y + out * dy / length;
                for (int k = 0; k < 6 && canvas.covered(tx, ty, wide + 1, tall + 0.6) > 0; k++) {
                    tx += 1.5 * dx / length;
                    ty += 1.5 * dy / length;
                }
                if (canvas.covered(tx, ty, wide + 1, tall + 0.6) > 0 || !canvas.free(tx, ty, wide, tall, room)) continue;
                canvas.take(tx, ty, wide, tall);
                canvas.wordsOver(mark.name(), tx, ty, tall, 0x333333);
            }
        }
    }

    /** The line a zone's take-in is measured along, with a bar at each end. */
    private void zoneLines(MapPiece piece) {
        for (Zone zone : piece.worked()) {
            TapeLine line = zone.line();
            if (line.pointCount() < 2 || line.blankLength() * perMm < 4) continue;
            canvas.line(path(line), Canvas.PAPER, 0.9);
            canvas.dashed(path(line), Canvas.INK, 0.4, 3f, 0.9f, 0.6f, 0.9f);
            for (int end = 0; end < 2; end++) {
                int at = end == 0 ? 0 : line.pointCount() - 1, before = end == 0 ? 1 : line.pointCount() - 2;
                double x = x(line.u(at), line.v(at)), y = y(line.u(at), line.v(at));
                double dx = x - x(line.u(before), line.v(before)), dy = y - y(line.u(before), line.v(before)), length = Math.hypot(dx, dy);
                if (length > 0) canvas.segment(x - 1.5 * dy / length, y + 1.5 * dx / length, x + 1.5 * dy / length, y - 1.5 * dx / length,
                        Canvas.INK, 0.5);
            }
        }
    }

    private void zoneNumbers(MapPiece piece) {
        for (Zone zone : piece.worked()) {
            double x = x(zone.label().u(), zone.label().v()), y = y(zone.label().u(), zone.label().v());
            Point2D at = Callout.place(canvas, x, y, 6, 6, 0, room);
            if (at == null) continue;
            if (at.distance(x, y) > 1) Callout.leader(canvas, x, y, at.getX(), at.getY());
            Frame.number(canvas, piece.label(zone), at.getX(), at.getY());
            canvas.take(at.getX(), at.getY(), 6, 6);
        }
    }

    private void zoneWords(MapPiece piece) {
        for (Zone zone : piece.worked()) {
            double x = x(zone.label().u(), zone.label().v()), y = y(zone.label().u(), zone.label().v());
            Callout.words(canvas, piece.label(zone) + "  " + zone.instruction().word() + " " + Amounts.change(zone.line().change()),
                    "over " + Amounts.length(zone.line().blankLength()), zone.instruction() == Instruction.SHRINK, x, y, room);
        }
    }

    /** A few arrows in each zone, where the work is most, before the numbers of the lines take the room. */
    private void firstArrows(WorkField field, MapPiece piece) {
        List<List<Samples.Sample>> inZone = new ArrayList<>();
        for (int i = 0; i <= piece.zones().list().size(); i++) inZone.add(new ArrayList<>());
        for (Samples.Sample s : Samples.spread(field, DENSE / perMm)) inZone.get(piece.zones().zoneOf(s.triangle())).add(s);
        for (Zone zone : piece.worked()) {
            List<Samples.Sample> here = inZone.get(zone.number());
            Samples.Sample middle = Samples.at(field, zone.label().triangle(), zone.label().u(), zone.label().v());
            if (middle != null) here.add(middle);
            here.sort(Comparator.comparingDouble(s -> -Math.abs(s.amount())));
            List<Samples.Sample> placed = new ArrayList<>();
            for (Samples.Sample s : here) {
                boolean shrink = zone.instruction() == Instruction.SHRINK;
                if (placed.size() == FIRST || s.amount() < 0 != shrink) continue;
                if (placed.stream().anyMatch(p -> perMm * Math.hypot(p.u() - s.u(), p.v() - s.v()) < 1.6 * ARROW_SPACING)) continue;
                if (arrow(s)) placed.add(s);
            }
        }
    }

    private boolean arrow(Samples.Sample s) {
        if (Math.abs(s.amount()) < scale.neutral()) return false;
        double x = x(s.u(), s.v()), y = y(s.u(), s.v());
        double dx = place.turned() ? -s.dv() : s.du(), dy = place.turned() ? -s.du() : -s.dv();
        double length = 5 + 6.5 * Math.min(1, Math.abs(s.amount()) / scale.limit());
        double w = Math.max(2, Math.abs(dx) * length), h = Math.max(2, Math.abs(dy) * length);
        if (!canvas.free(x, y, w * 0.8, h * 0.8, room)) return false;
        canvas.take(x, y, w * 0.8, h * 0.8);
        Arrows.draw(canvas, x, y, dx, dy, length, s.amount() < 0, 0.4);
        return true;
    }
}
