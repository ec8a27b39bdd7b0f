package blankwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.num.Progress;
import blankwright.oracle.OutsideReader;
import blankwright.outline.Curve;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import javax.imageio.ImageIO;
import javax.print.DocFlavor;
import javax.print.PrintService;
import javax.print.StreamPrintServiceFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Sheets printed into a file of PostScript, drawn by Ghostscript at 254 dpi (10 pixels to the mm) and measured in the pixels. */
class PdfPrinterPrintsTrueTest {
    @TempDir
    Path dir;

    private static PrintService into(OutputStream to) {
        return StreamPrintServiceFactory.lookupStreamPrintServiceFactories(DocFlavor.SERVICE_FORMATTED.PAGEABLE, "application/postscript")[0]
                .getPrintService(to);
    }

    private List<Path> drawn(ByteArrayOutputStream printed) throws IOException {
        Path ps = Files.write(dir.resolve("printed.ps"), printed.toByteArray());
        OutsideReader.run("gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=pnggray", "-r254", "-sOutputFile=" + dir.resolve("page-%d.png"),
                ps.toString());
        try (var files = Files.list(dir)) {
            return files.filter(f -> f.toString().endsWith(".png")).sorted().toList();
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void theCheckSquaresComeOutTrue(Paper paper) throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream(), printed = new ByteArrayOutputStream();
        PdfWriter.write(Samples.plate(), Samples.COVER, paper, pdf);
        int sheets = Tiling.of(Samples.plate(), paper).sheets();
        assertEquals(sheets + 1, PdfPrinter.of(into(printed)).print(pdf.toByteArray(), "plate", paper, Integer.MAX_VALUE, Progress.NONE));
        List<Path> pages = drawn(printed);
        assertEquals(sheets + 1, pages.size());
        BufferedImage first = ImageIO.read(pages.get(0).toFile());
        assertEquals(paper.width() * 10, first.getWidth(), 5);
        assertEquals(paper.height() * 10, first.getHeight(), 5);
        PdfReadsBackOutsideTest.square(first, paper, 10, 101.6);
        PdfReadsBackOutsideTest.square(first, paper, 10 + Math.sqrt(230 * 230 - 101.6 * 101.6) - 100, 100);
    }

    /** Sheets that lie are turned on the paper, not shrunk: two strokes of the drawing keep their distance. */
    @Test
    void aLyingSheetIsTurnedNotShrunk() throws IOException {
        Drawing drawing = Drawing.of("lying", List.of(new Entity.Line(Layer.CUT, 20, 20, 20, 60), new Entity.Line(Layer.CUT, 220, 20, 220, 60),
                new Entity.Line(Layer.MARK, 20, 40, 220, 40)));
        Tiling tiling = Tiling.of(drawing, Paper.A4);
        assertEquals(1, tiling.sheets());
        assertTrue(tiling.pageWidth() > tiling.pageHeight(), "lies");
        ByteArrayOutputStream pdf = new ByteArrayOutputStream(), printed = new ByteArrayOutputStream();
        PdfWriter.write(drawing, Samples.COVER, Paper.A4, pdf);
        PdfPrinter.of(into(printed)).print(pdf.toByteArray(), "lying", Paper.A4, Integer.MAX_VALUE, Progress.NONE);
        BufferedImage sheet = ImageIO.read(drawn(printed).get(1).toFile());
        Curve.Box window = tiling.window(0, 0);
        double y = tiling.pageHeight() - (30 - window.y0() + Tiling.MARGIN + Tiling.FOOT);
        boolean lies = sheet.getWidth() > sheet.getHeight();
        List<Double> strokes = Pixels.lines(sheet, (int) (10 * y), lies);
        if (!lies) strokes = Pixels.lines(sheet, (int) (sheet.getWidth() - 10 * y), false);
        double most = 0;
        for (double a : strokes) for (double b : strokes) if (Math.abs(b - a - 2000) < Math.abs(most - 2000)) most = b - a;
        assertEquals(2000, most, 1.5);
    }

    @Test
    void theCoverAloneComesFirst() throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream(), printed = new ByteArrayOutputStream();
        PdfWriter.write(Samples.plate(), Samples.COVER, Paper.A4, pdf);
        assertEquals(1, PdfPrinter.of(into(printed)).print(pdf.toByteArray(), "plate", Paper.A4, 1, Progress.NONE));
        assertEquals(1, drawn(printed).size());
    }

    @Test
    void stopsWhenNobodyWantsIt() throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        PdfWriter.write(Samples.plate(), Samples.COVER, Paper.A4, pdf);
        Progress stopped = new Progress() {
            @Override public void at(String what, double fraction) { }

            @Override public boolean cancelled() {
                return true;
            }
        };
        assertThrows(CancellationException.class,
                () -> PdfPrinter.of(into(new ByteArrayOutputStream())).print(pdf.toByteArray(), "plate", Paper.A4, 9, stopped));
    }

    @Test
    void theSystemIsAskedForItsPrinters() {
        for (PdfPrinter printer : PdfPrinter.all()) assertTrue(!printer.name().isBlank());
    }
}
