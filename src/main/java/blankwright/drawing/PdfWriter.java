package blankwright.drawing;

import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * A drawing as PDF at true size, tiled on paper, behind a first page with the map of the sheets and check squares.
 *
 * <p>All is vector outlines, lettering too. The document carries no date and asks viewers not to scale it in print. Positions are rounded to 1e-4 mm.
 */
public final class PdfWriter {
    private static final int BLACK = 0x000000, GREY = 0x606060;
    private static final double POINTS = 72 / 25.4;
    private static final double INCH4 = 101.6;
    private static final double LONG_CHECK = 230;                                                 // corner to corner over both squares, mm
    private static final double GAP = Math.sqrt(LONG_CHECK * LONG_CHECK - INCH4 * INCH4) - 100 - INCH4;   // what makes it so, 4.74 mm

    private final Drawing drawing;
    private final Cover cover;
    private final Paper paper;
    private final Tiling tiling;
    private final List<Drawn> drawn = new ArrayList<>();

    /** An entity with what tells quickly whether a window shows it; {@code ends}: length of a polyline before each segment, mm. */
    private record Drawn(Entity entity, Box box, Box[] segments, double[] ends) {
        static Drawn of(Entity entity) {
            if (!(entity instanceof Entity.Polyline polyline)) return new Drawn(entity, entity.box(), null, null);
            Curve curve = polyline.curve();
            Box[] segments = new Box[curve.segmentCount()];
            double[] ends = new double[curve.segmentCount() + 1];
            for (int i = 0; i < segments.length; i++) {
                segments[i] = curve.box(i);
                ends[i + 1] = ends[i] + curve.length(i);
            }
            return new Drawn(entity, entity.box(), segments, ends);
        }
    }

    private PdfWriter(Drawing drawing, Cover cover, Paper paper) {
        this.drawing = drawing;
        this.cover = cover;
        this.paper = paper;
        this.tiling = Tiling.of(drawing, paper);
        for (Entity entity : drawing.entities()) drawn.add(Drawn.of(entity));
    }

    /**
     * Writes all of it and flushes, without closing {@code to}.
     *
     * @throws IllegalArgumentException when the drawing would take over 4000 sheets
     */
    public static void write(Drawing drawing, Cover cover, Paper paper, OutputStream to) throws IOException {
        new PdfWriter(drawing, cover, paper).write(to);
    }

    private void write(OutputStream to) throws IOException {
        try (PDDocument document = new PDDocument()) {
            document.setDocumentId(1L);                                   // else the clock goes into the file
            document.getDocumentInformation().setTitle(drawing.title());
            add(document, paper.width(), paper.height(), first());
            for (int row = 0; row < tiling.rows(); row++) {
                for (int column = 0; column < tiling.columns(); column++) {
                    if (tiling.isPrinted(row, column)) add(document, tiling.pageWidth(), tiling.pageHeight(), tile(row, column));
                }
            }
            PDViewerPreferences preferences = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
            preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
            document.getDocumentCatalog().setViewerPreferences(preferences);
            document.save(to);
        }
        to.flush();
    }

    private static void add(PDDocument document, double width, double height, PdfPage content) throws IOException {
        PDPage page = new PDPage(new PDRectangle((float) (width * POINTS), (float) (height * POINTS)));
        page.setContents(new PDStream(document, new ByteArrayInputStream(content.bytes()), COSName.FLATE_DECODE));
        document.addPage(page);
    }

    // ---- the first page

    private PdfPage first() {
        PdfPage page = new PdfPage();
        double left = Tiling.MARGIN, right = paper.width() - Tiling.MARGIN, top = paper.height() - Tiling.MARGIN, bottom = Tiling.MARGIN;
        Box inch = new Box(left, bottom, left + INCH4, bottom + INCH4);
        Box metric = new Box(left, inch.y1() + GAP, left + 100, inch.y1() + GAP + 100);
        Box column = new Box(inch.x1() + 8, bottom, right, metric.y1());

        page.pen(BLACK, 0.25, 0);
        heading(page, new Box(left, metric.y1() + 7, right, top));
        square(page, metric, "100 mm", List.of("Print at 100 %: no “fit to page”, no scaling.",
                "Then measure both squares with a steel rule, across and up. This one is 100 mm each way, the lower one 4 in (101.6 mm).",
                "Corner A to corner B is " + (int) LONG_CHECK + " mm.",
                "If any of these is off, do not cut from this print. Paper grows and shrinks with damp: measure again on the day you cut."));
        square(page, inch, "4 in", cover.cautions());
        page.text("A", metric.x0() + 2, metric.y1() - 2, 4, Anchor.LEFT_TOP);
        page.text("B", inch.x1() - 2, inch.y0() + 2, 4, Anchor.RIGHT_BASE);
        double below = map(page, new Box(column.x0(), column.y1() - 105, column.x1(), column.y1()));
        below = key(page, column.x0(), below - 8);
        page.pen(BLACK, 0.25, 0);
        page.paragraphs(taping(), new Box(column.x0(), column.y0(), column.x1(), below - 5), 2.8);
        return page;
    }

    private void heading(PdfPage page, Box box) {
        double large = Math.min(9, 9 * box.width() / Lettering.width(cover.name() + " ", 9));
        page.text(cover.name(), box.x0(), box.y1(), large, Anchor.LEFT_TOP);
        List<String> lines = new ArrayList<>(List.of(drawing.title()));
        lines.addAll(cover.facts());
        double pitch = Math.min(6.5, (box.y1() - large - 4 - box.y0()) / lines.size()), height = 0.55 * pitch;
        for (int i = 0; i < lines.size(); i++) page.text(lines.get(i), box.x0(), box.y1() - large - 4 - i * pitch, height, Anchor.LEFT_TOP);
    }

    private static void square(PdfPage page, Box box, String size, List<String> words) {
        page.rectangle(box);
        double middle = (box.x0() + box.x1()) / 2, half = (box.y0() + box.y1()) / 2;
        page.text(size, middle, box.y0() + 3, 4, Anchor.CENTRE_BASE);
        page.text(size, box.x0() + 3, half, 4, Math.PI / 2, Anchor.CENTRE_TOP);
        page.paragraphs(words, new Box(box.x0() + 11, box.y0() + 11, box.x1() - 5, box.y1() - 9), 3.2);
    }

    /** The sheets in small, as they lie when taped; gives the lower edge of what it drew. */
    private double map(PdfPage page, Box room) {
        double width = tiling.columns() * tiling.cellWidth(), height = tiling.rows() * tiling.cellHeight();
        double scale = Math.min(room.width() / width, (room.height() - 7) / height);
        String words = tiling.sheets() == 1 ? "1 sheet" : tiling.sheets() + " sheets, lying like this:";
        page.text(words, room.x0(), room.y1(), 3.2, Anchor.LEFT_TOP);
        double x = room.x0(), y = room.y1() - 7;
        Box corner = tiling.cell(0, 0);
        page.pen(BLACK, 0.35, 0);
        for (Entity entity : drawing.entities()) {
            if (entity.layer() == Layer.CUT && entity instanceof Entity.Polyline polyline) small(page, polyline.curve(), x, y, corner, scale);
            if (entity.layer() == Layer.CUT && entity instanceof Entity.Circle c) small(page, Curve.circle(c.cx(), c.cy(), c.radius()), x, y, corner, scale);
        }
        double letters = Math.min(5, 0.22 * scale * Math.min(tiling.cellWidth(), tiling.cellHeight()));
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                double x0 = x + column * tiling.cellWidth() * scale, y1 = y - row * tiling.cellHeight() * scale;
                Box cell = new Box(x0, y1 - tiling.cellHeight() * scale, x0 + tiling.cellWidth() * scale, y1);
                double cx = (cell.x0() + cell.x1()) / 2, cy = (cell.y0() + cell.y1()) / 2;
                if (tiling.isPrinted(row, column)) {
                    page.pen(BLACK, 0.15, 0);
                    page.text(Tiling.label(row, column), cell.x0() + 0.3 * letters, cell.y1() - 0.3 * letters, letters, Anchor.LEFT_TOP);
                } else {
                    page.pen(GREY, 0.15, 0, 0.8, 0.8);
                    page.text("none", cx, cy, 0.6 * letters, Anchor.CENTRE);
                }
                page.rectangle(cell);
            }
        }
        return y - height * scale;
    }

    private static void small(PdfPage page, Curve curve, double x, double y, Box corner, double scale) {
        double[] p = curve.flattened(0.1 / scale);
        double lastX = Double.NaN, lastY = Double.NaN;
        int n = p.length / 2, count = curve.isClosed() ? n + 1 : n;
        for (int i = 0; i < count; i++) {
            double px = x + (p[2 * (i % n)] - corner.x0()) * scale, py = y + (p[2 * (i % n) + 1] - corner.y1()) * scale;
            if (i == 0) page.moveTo(px, py);
            else if (i == count - 1 || Math.hypot(px - lastX, py - lastY) > 0.2) page.lineTo(px, py);
            else continue;
            lastX = px;
            lastY = py;
        }
        page.stroke();
    }

    /** One sample of each kind of line in the drawing; gives the lower edge of what it drew. */
    private double key(PdfPage page, double x, double y) {
        Set<Layer> used = EnumSet.noneOf(Layer.class);
        for (Entity entity : drawing.entities()) if (entity.layer() != Layer.TEXT && !(entity instanceof Entity.Text)) used.add(entity.layer());
        for (Layer layer : used) {
            page.pen(layer.rgb(), layer.width(), 0, layer.dashes());
            page.line(x, y, x + 24, y);
            page.pen(BLACK, 0.25, 0);
            page.text(layer.words(), x + 28, y, 3, Anchor.LEFT_MIDDLE);
            y -= 6;
        }
        return y;
    }

    private List<String> taping() {
        List<String> words = new ArrayList<>();
        if (tiling.sheets() > 1) {
            double[] d = tiling.longestDiagonal();
            words.add("Cut each sheet along its dashed lines, left and top. Lay it on its neighbour so that the crosses meet, and tape.");
            words.add("Check the taped sheets: from the cross marked P to the cross marked Q is "
                    + Decimals.text(Math.hypot(d[2] - d[0], d[3] - d[1]), 1) + " mm.");
        }
        words.add("Every sheet carries a 50 mm bar: measure it too.");
        return words;
    }

    // ---- the sheets

    private PdfPage tile(int row, int column) {
        PdfPage page = new PdfPage();
        Box window = tiling.window(row, column), cell = tiling.cell(row, column);
        double dx = Tiling.MARGIN - window.x0(), dy = Tiling.MARGIN + Tiling.FOOT - window.y0();
        page.clip(new Box(Tiling.MARGIN, Tiling.MARGIN + Tiling.FOOT, Tiling.MARGIN + window.width(), Tiling.MARGIN + Tiling.FOOT + window.height()), dx, dy);
        marks(page, row, column, cell, window);                   // below the drawing, so that no mark hides a line
        for (Drawn it : drawn) {
            if (it.box().grown(1).meets(window)) draw(page, it, window);
        }
        page.unclip();
        foot(page, row, column);
        return page;
    }

    private static void draw(PdfPage page, Drawn drawn, Box window) {
        Entity entity = drawn.entity();
        Layer layer = entity.layer();
        if (entity instanceof Entity.Polyline) {
            polyline(page, drawn, window.grown(1));
            return;
        }
        page.pen(layer.rgb(), layer.width(), 0, layer.dashes());
        if (entity instanceof Entity.Line line) {
            page.line(line.x0(), line.y0(), line.x1(), line.y1());
        } else if (entity instanceof Entity.Text text) {
            page.text(text.text(), text.x(), text.y(), text.height(), text.angle(), text.anchor());
        } else {
            Curve.CentreForm form = entity instanceof Entity.Arc arc ? arc.centreForm() : whole((Entity.Circle) entity);
            page.moveTo(form.x(0), form.y(0));
            page.arcTo(form);
            if (entity instanceof Entity.Circle) page.close();
            page.stroke();
        }
    }

    private static Curve.CentreForm whole(Entity.Circle circle) {
        return new Curve.CentreForm(circle.cx(), circle.cy(), circle.radius(), 0, 2 * Math.PI);
    }

    /** The runs of segments the window shows, each with the dashes begun where the whole line would have them. */
    private static void polyline(PdfPage page, Drawn drawn, Box window) {
        Curve curve = ((Entity.Polyline) drawn.entity()).curve();
        Layer layer = drawn.entity().layer();
        double period = 0;
        for (double dash : layer.dashes()) period += dash;
        int n = curve.segmentCount();
        for (int i = 0; i < n; i++) {
            if (!drawn.segments()[i].meets(window)) continue;
            page.pen(layer.rgb(), layer.width(), period == 0 ? 0 : drawn.ends()[i] % period, layer.dashes());
            page.moveTo(curve.x(i), curve.y(i));
            int from = i;
            for (; i < n && drawn.segments()[i].meets(window); i++) {
                if (curve.isArc(i)) page.arcTo(curve.centreForm(i));
                else page.lineTo(curve.x(i + 1), curve.y(i + 1));
            }
            if (curve.isClosed() && from == 0 && i == n) page.close();
            page.stroke();
        }
    }

    /** Crosses at the corners of the cell, lines to cut along, and which sheet lies beyond. */
    private void marks(PdfPage page, int row, int column, Box cell, Box window) {
        double half = Tiling.OVERLAP / 2, cx = (cell.x0() + cell.x1()) / 2, cy = (cell.y0() + cell.y1()) / 2;
        if (tiling.isPrinted(row, column - 1)) {
            page.pen(GREY, 0.18, 0, 3, 2);
            page.line(cell.x0(), window.y0(), cell.x0(), window.y1());
            page.pen(GREY, 0.18, 0);
            page.text("cut here, lay on " + Tiling.label(row, column - 1), cell.x0() - half / 2, cy, 2.2, Math.PI / 2, Anchor.CENTRE);
        }
        if (tiling.isPrinted(row - 1, column)) {
            page.pen(GREY, 0.18, 0, 3, 2);
            page.line(window.x0(), cell.y1(), window.x1(), cell.y1());
            page.pen(GREY, 0.18, 0);
            page.text("cut here, lay on " + Tiling.label(row - 1, column), cx, cell.y1() + half / 2, 2.2, Anchor.CENTRE);
        }
        page.pen(GREY, 0.18, 0);
        if (tiling.isPrinted(row, column + 1)) page.text("under " + Tiling.label(row, column + 1), cell.x1() + half / 2, cy, 2.2, Math.PI / 2, Anchor.CENTRE);
        if (tiling.isPrinted(row + 1, column)) page.text("under " + Tiling.label(row + 1, column), cx, cell.y0() - half / 2, 2.2, Anchor.CENTRE);
        page.pen(BLACK, 0.18, 0);
        double[] check = tiling.longestDiagonal();
        for (double x : new double[] {cell.x0(), cell.x1()}) {
            for (double y : new double[] {cell.y0(), cell.y1()}) {
                page.line(x - half + 0.5, y, x + half - 0.5, y);
                page.line(x, y - half + 0.5, x, y + half - 0.5);
                if (tiling.sheets() == 1) continue;
                double tx = x + (x < cx ? 1.5 : -1.5), ty = y + (y < cy ? 1.5 : -1.5);
                Anchor anchor = x < cx ? (y < cy ? Anchor.LEFT_BASE : Anchor.LEFT_TOP) : (y < cy ? Anchor.RIGHT_BASE : Anchor.RIGHT_TOP);
                if (near(x, y, check[0], check[1])) page.text("P", tx, ty, 4, anchor);
                if (near(x, y, check[2], check[3])) page.text("Q", tx, ty, 4, anchor);
            }
        }
    }

    private static boolean near(double x, double y, double px, double py) {
        return Math.hypot(x - px, y - py) < 1e-6;
    }

    /** The sheet's label and a bar to measure, in the strip below the window that the next sheet covers. */
    private void foot(PdfPage page, int row, int column) {
        double left = Tiling.MARGIN, right = tiling.pageWidth() - Tiling.MARGIN, y = Tiling.MARGIN;
        String label = Tiling.label(row, column);
        page.pen(BLACK, 0.25, 0);
        page.text(label, left, y, 7, Anchor.LEFT_BASE);
        double x = left + Lettering.width(label, 7) + 4, room = right - 56 - x;
        List<String> words = new ArrayList<>(List.of(cover.name()));
        words.addAll(cover.facts().subList(0, Math.min(2, cover.facts().size())));
        fitting(page, String.join(" · ", words), x, y + 4.4, room);
        fitting(page, "row " + (row + 1) + " of " + tiling.rows() + ", column " + (column + 1) + " of " + tiling.columns()
                + " · print at 100 %, no fit to page", x, y, room);
        page.line(right - 50, y + 1, right, y + 1);
        for (int tick = 0; tick <= 50; tick += 10) page.line(right - tick, y + 1, right - tick, y + (tick % 50 == 0 ? 5 : 3));
        page.text("50 mm", right - 25, y + 4.2, 2.6, Anchor.CENTRE_BASE);
    }

    private static void fitting(PdfPage page, String text, double x, double y, double room) {
        page.text(text, x, y, Math.min(2.6, 2.6 * room / Lettering.width(text, 2.6)), Anchor.LEFT_BASE);
    }
}
