package blankwright.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.oracle.OutsideReader;
import blankwright.outline.Curve;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** An SVG file of ours, drawn by rsvg-convert at 10 pixels to the mm, measured in the pixels. */
class SvgReadsBackOutsideTest {
    private static final int PER_MM = 10;

    @TempDir
    Path dir;

    @Test
    void aSquareIsWhereItShouldBe() throws IOException {
        Drawing square = Drawing.of("square", List.of(new Entity.Polyline(Layer.CUT, Curve.polygon(30, 50, 130, 50, 130, 150, 30, 150)),
                new Entity.Line(Layer.MARK, 20, 40, 60, 40)));
        BufferedImage seen = drawn(square);
        Curve.Box page = SvgWriter.page(square);
        assertEquals(page.width() * PER_MM, seen.getWidth(), 1);
        assertEquals(page.height() * PER_MM, seen.getHeight(), 1);
        int row = (int) ((page.y1() - 100) * PER_MM), column = (int) ((80 - page.x0()) * PER_MM);
        List<Double> across = Pixels.lines(seen, row, true), up = Pixels.lines(seen, column, false);
        assertEquals(2, across.size());
        assertEquals((30 - page.x0()) * PER_MM, across.get(0), 1);
        assertEquals(1000, across.get(1) - across.get(0), 1, "100 mm across");
        assertEquals((page.y1() - 150) * PER_MM, up.get(0), 1, "y up");
        assertEquals(1000, up.get(1) - up.get(0), 1, "100 mm up");
    }

    @Test
    void arcsTurnTheRightWay() throws IOException {
        List<Entity> all = new ArrayList<>(List.of(new Entity.Line(Layer.TEXT, 0, 0, 0, 200)));
        all.add(new Entity.Polyline(Layer.CUT, Curve.of(new double[] {100, 50, 100, 150}, new double[] {0.5}, false)));    // rises 25 mm to the right
        all.add(new Entity.Polyline(Layer.CUT, Curve.of(new double[] {200, 50, 200, 150}, new double[] {-1.5}, false)));   // rises 75 mm to the left
        all.add(new Entity.Arc(Layer.CUT, 300, 100, 40, Math.PI - 0.5, 1));                                                 // leftmost at 260
        all.add(new Entity.Arc(Layer.CUT, 400, 100, 30, Math.PI / 4, 1.5 * Math.PI));                                        // all but its right
        Drawing arcs = Drawing.of("arcs", all);
        Curve.Box page = SvgWriter.page(arcs);
        List<Double> across = Pixels.lines(drawn(arcs), (int) ((page.y1() - 100) * PER_MM), true);
        double[] wanted = {0, 125, 125, 260, 370};
        assertEquals(4, across.size(), across.toString());                          // the first two arcs touch at 125
        for (int i = 0; i < 4; i++) assertEquals((wanted[i < 2 ? i : i + 1] - page.x0()) * PER_MM, across.get(i), 1.5);
    }

    @Test
    void letteringIsUprightAndNotMirrored() throws IOException {
        Drawing letter = Drawing.of("L", List.of(new Entity.Text("L", 0, 0, 20, Anchor.LEFT_BASE)));
        BufferedImage seen = drawn(letter);
        int dark = 0, lowLeft = 0, highRight = 0;
        Curve.Box box = letter.box(), page = SvgWriter.page(letter);
        double mx = ((box.x0() + box.x1()) / 2 - page.x0()) * PER_MM, my = (page.y1() - (box.y0() + box.y1()) / 2) * PER_MM;
        for (int y = 0; y < seen.getHeight(); y++) {
            for (int x = 0; x < seen.getWidth(); x++) {
                if (!Pixels.isInk(seen, x, y)) continue;
                dark++;
                if (x < mx && y > my) lowLeft++;
                if (x > mx && y < my) highRight++;
            }
        }
        assertTrue(dark > 500 && lowLeft > dark / 3 && highRight == 0, dark + " " + lowLeft + " " + highRight);
        assertEquals(20, box.y1() - box.y0(), 0.01, "a capital is as high as told");
    }

    @Test
    void isXmlWithAGroupPerLayerInMillimetres() throws Exception {
        byte[] bytes = Samples.bytes(SvgWriter::write, Samples.plate());
        assertArrayEquals(bytes, Samples.bytes(SvgWriter::write, Samples.plate()));
        Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(bytes));
        String width = document.getDocumentElement().getAttribute("width");
        assertEquals("Plate & <holes>", document.getElementsByTagName("title").item(0).getTextContent());
        String[] box = document.getDocumentElement().getAttribute("viewBox").split(" ");
        assertEquals(width, box[2] + "mm");
        NodeList groups = document.getElementsByTagName("g");
        List<String> names = new ArrayList<>();
        for (int i = 0; i < groups.getLength(); i++) names.add(groups.item(i).getAttributes().getNamedItem("id").getNodeValue());
        assertEquals(List.of("CUT", "TRIM", "MARK", "SHRINK", "STRETCH", "TEXT"), names);
    }

    private BufferedImage drawn(Drawing drawing) throws IOException {
        Path svg = Samples.file(dir, "drawing.svg", SvgWriter::write, drawing), png = dir.resolve("drawing.png");
        OutsideReader.run("rsvg-convert", "-d", "254", "-p", "254", "-b", "white", "-o", png.toString(), svg.toString());
        return ImageIO.read(png.toFile());
    }
}
