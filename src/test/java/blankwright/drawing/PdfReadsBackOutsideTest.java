package blankwright.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.oracle.OutsideReader;
import blankwright.outline.Curve;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** PDF pages of ours, drawn by pdftoppm at 254 dpi (10 pixels to the mm) and measured in the pixels; the files checked by qpdf and pdfinfo. */
class PdfReadsBackOutsideTest {
    private static final int PER_MM = 10;

    @TempDir
    Path dir;

    @ParameterizedTest
    @EnumSource(Paper.class)
    void theCheckSquaresAreTrue(Paper paper) throws IOException {
        Path pdf = Samples.file(dir, "plate.pdf", (d, to) -> PdfWriter.write(d, Samples.COVER, paper, to), Samples.plate());
        assertTrue(OutsideReader.run("qpdf", "--check", pdf.toString()).contains("No syntax or stream encoding errors found"));
        String info = OutsideReader.run("pdfinfo", pdf.toString());
        assertTrue(info.contains(paper == Paper.A4 ? "595.276 x 841.89 pts (A4)" : "612 x 792 pts (letter)"), info);
        assertTrue(!info.contains("Date"), info);

        BufferedImage first = page(pdf, 1);
        double upper = Math.sqrt(230 * 230 - 101.6 * 101.6) - 100;              // so that corner A to corner B is 230 mm as printed
        square(first, paper, 10, 101.6);
        square(first, paper, 10 + upper, 100);
    }

    /** Measures a square whose lower left corner lies 10 mm from the left and {@code bottom} from the lower edge, 1 mm within its far sides. */
    static void square(BufferedImage page, Paper paper, double bottom, double size) {
        List<Double> across = Pixels.lines(page, (int) ((paper.height() - bottom - size + 1) * PER_MM), true);
        assertEquals(10 * PER_MM, across.get(0), 1.5);
        assertEquals(size * PER_MM, nearest(across, (10 + size) * PER_MM) - across.get(0), 1, size + " mm across");
        List<Double> up = Pixels.lines(page, (int) ((10 + size - 1) * PER_MM), false);
        double low = nearest(up, (paper.height() - bottom) * PER_MM), high = nearest(up, (paper.height() - bottom - size) * PER_MM);
        assertEquals((paper.height() - bottom) * PER_MM, low, 2);
        assertEquals(size * PER_MM, low - high, 1, size + " mm up");
    }

    private static double nearest(List<Double> places, double to) {
        return places.stream().min((a, b) -> Double.compare(Math.abs(a - to), Math.abs(b - to))).orElseThrow();
    }

    @Test
    void aLongLineIsTrueAcrossTheTapedSheets() throws IOException {
        // Two short strokes 700 mm apart and a rule between them; each stroke is looked for on its own sheet and put where that sheet lies.
        Drawing drawing = Drawing.of("long", List.of(new Entity.Line(Layer.CUT, 100, 20, 100, 60), new Entity.Line(Layer.CUT, 800, 20, 800, 60),
                new Entity.Line(Layer.MARK, 100, 40, 800, 40), new Entity.Circle(Layer.CUT, 450, 40, 3)));
        Tiling tiling = Tiling.of(drawing, Paper.A4);
        Path pdf = Samples.file(dir, "long.pdf", (d, to) -> PdfWriter.write(d, Samples.COVER, Paper.A4, to), drawing);
        int sheet = 1;
        double[] found = new double[2];
        for (int column = 0; column < tiling.columns(); column++) {
            if (!tiling.isPrinted(0, column)) continue;
            BufferedImage page = page(pdf, ++sheet);
            Curve.Box window = tiling.window(0, column);
            double paperY = Tiling.MARGIN + Tiling.FOOT + 52 - window.y0();
            int row = (int) ((tiling.pageHeight() - paperY) * PER_MM);
            double cut = (tiling.cell(0, column).x0() - window.x0() + Tiling.MARGIN) * PER_MM;
            assertEquals(150, cut, 1e-6, "the crosses are 15 mm from the edge of the paper");
            for (double x : Pixels.lines(page, row, true)) {
                double place = window.x0() + x / PER_MM - Tiling.MARGIN;
                if (Math.abs(place - 100) < 0.3) found[0] = place;
                if (Math.abs(place - 800) < 0.3) found[1] = place;
            }
        }
        assertEquals(1, tiling.rows());
        assertEquals(tiling.sheets() + 1, sheet);
        assertEquals(700, found[1] - found[0], 0.15);
    }

    @Test
    void theTapedSheetsAreTheDrawing() throws IOException {
        // All sheets pasted at their windows' places give the same ink as one large sheet of the same drawing as SVG.
        Drawing drawing = Drawing.of("ring", List.of(new Entity.Circle(Layer.CUT, 0, 0, 260), new Entity.Circle(Layer.TRIM, 0, 0, 180)));
        Tiling tiling = Tiling.of(drawing, Paper.LETTER);
        Path pdf = Samples.file(dir, "ring.pdf", (d, to) -> PdfWriter.write(d, Samples.COVER, Paper.LETTER, to), drawing);
        int sheet = 1, seen = 0, missed = 0;
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                if (!tiling.isPrinted(row, column)) continue;
                BufferedImage page = page(pdf, ++sheet);
                Curve.Box window = tiling.window(row, column), cell = tiling.cell(row, column);
                for (int k = 0; k < 3600; k++) {
                    double x = 260 * Math.cos(k * Math.PI / 1800), y = 260 * Math.sin(k * Math.PI / 1800);
                    if (x < cell.x0() || x >= cell.x1() || y < cell.y0() || y >= cell.y1()) continue;
                    seen++;
                    double px = (x - window.x0() + Tiling.MARGIN) * PER_MM, py = (tiling.pageHeight() - (y - window.y0() + Tiling.MARGIN + Tiling.FOOT)) * PER_MM;
                    if (!Pixels.isInk(page, (int) px, (int) py)) missed++;
                }
            }
        }
        assertEquals(3600, seen, "every point of the circle lies in one cell, and that cell is printed");
        assertEquals(0, missed);
    }

    @Test
    void emptySheetsAreLeftOutButNotThoseWithinTheBlank() {
        Drawing diagonal = Drawing.of("bar", List.of(new Entity.Line(Layer.CUT, 0, 0, 1500, 1500)));
        Tiling bar = Tiling.of(diagonal, Paper.A4);
        assertTrue(bar.sheets() < bar.rows() * bar.columns() / 2, bar.sheets() + " of " + bar.rows() + " x " + bar.columns());
        Tiling plate = Tiling.of(Drawing.of("plate", List.of(new Entity.Circle(Layer.CUT, 0, 0, 800))), Paper.A4);
        for (int row = 0; row < plate.rows(); row++) {
            for (int column = 0; column < plate.columns(); column++) {
                Curve.Box cell = plate.cell(row, column);
                if (Math.hypot((cell.x0() + cell.x1()) / 2, (cell.y0() + cell.y1()) / 2) < 800) assertTrue(plate.isPrinted(row, column), row + " " + column);
            }
        }
        assertEquals(1, Tiling.of(Drawing.of("small", List.of(new Entity.Circle(Layer.CUT, 0, 0, 50))), Paper.LETTER).sheets());
        assertEquals("A1", Tiling.label(0, 0));
        assertEquals("AB12", Tiling.label(27, 11));
        assertThrows(IllegalArgumentException.class, () -> Tiling.of(Drawing.of("huge", List.of(new Entity.Line(Layer.CUT, 0, 0, 1e5, 1e5))), Paper.A4));
    }

    @Test
    void keepsTheSameBytes() throws IOException {
        Samples.Writer writer = (d, to) -> PdfWriter.write(d, Samples.COVER, Paper.A4, to);
        assertArrayEquals(Samples.bytes(writer, Samples.plate()), Samples.bytes(writer, Samples.plate()));
    }

    private BufferedImage page(Path pdf, int number) throws IOException {
        Path png = dir.resolve("page" + number);
        OutsideReader.run("pdftoppm", "-r", "254", "-png", "-singlefile", "-f", "" + number, "-l", "" + number, pdf.toString(), png.toString());
        return ImageIO.read(dir.resolve("page" + number + ".png").toFile());
    }
}
