package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.oracle.OutsideReader;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packet of a shipped panel, read by programs we did not write: sizes and strains there are those of the summary. */
class PacketReadByOthersTest {
    private static final double TRIM = 12;

    @TempDir static Path temp;
    private static Path out;
    private static JsonNode summary;
    private static JsonNode piece;

    @BeforeAll
    static void layOutALampBowl() throws IOException {
        out = temp.resolve("packet");
        Run run = Run.of("flatten", "models/lamp-bowl.yaml", "--out", out, "--trim", TRIM + "mm", "--paper", "letter");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        summary = new ObjectMapper().readTree(out.resolve("summary.json").toFile());
        piece = summary.get("pieces").get(0);
    }

    @Test
    void dxfIsSoundInMillimetresAndOfTrueSize() {
        String said = OutsideReader.python(List.of("ezdxf"), """
                import sys, ezdxf
                from ezdxf import bbox
                doc = ezdxf.readfile(sys.argv[1])
                audit = doc.audit()
                layers = sorted({e.dxf.layer for e in doc.modelspace()})
                print(len(audit.errors), len(audit.fixes), doc.units, *layers)
                for layer in ('CUT', 'TRIM'):
                    lines = doc.modelspace().query('*[layer=="%s"]' % layer)
                    assert all(e.is_closed for e in lines), layer
                    size = bbox.extents(lines, flatten=0.001).size
                    print(size.x, size.y)
                """, out.resolve("blank.dxf").toString());
        String[] lines = said.strip().split("\n");
        assertEquals("0 0 4 CUT MARK SHRINK STRETCH TEXT TRIM", lines[0]);
        size(lines[1], 2 * TRIM, 0.3);
        size(lines[2], 0, 0.1);
    }

    @Test
    void aGeographersReaderTakesTheDxfToo() {
        Matcher extent = Pattern.compile("Extent: \\(([-.\\d]+), ([-.\\d]+)\\) - \\(([-.\\d]+), ([-.\\d]+)\\)").matcher(
                OutsideReader.run("ogrinfo", "-ro", "-al", "-so", "-where", "Layer='CUT'", out.resolve("blank.dxf").toString()));
        assertTrue(extent.find());
        double width = Double.parseDouble(extent.group(3)) - Double.parseDouble(extent.group(1));
        double height = Double.parseDouble(extent.group(4)) - Double.parseDouble(extent.group(2));
        size(width + " " + height, 2 * TRIM, 0.3);
    }

    /** The page of the SVG in mm equals its view box, and a renderer makes as many elements of it as that says. */
    @Test
    void svgIsOfTrueSize() throws IOException {
        String svg = Files.readString(out.resolve("blank.svg"));
        Matcher head = Pattern.compile("width=\"([.\\d]+)mm\" height=\"([.\\d]+)mm\" viewBox=\"[-.\\d]+ [-.\\d]+ ([.\\d]+) ([.\\d]+)\"").matcher(svg);
        assertTrue(head.find(), svg.substring(0, 300));
        assertEquals(Double.parseDouble(head.group(1)), Double.parseDouble(head.group(3)), 1e-9);
        assertEquals(Double.parseDouble(head.group(2)), Double.parseDouble(head.group(4)), 1e-9);
        Path png = temp.resolve("blank.png");
        OutsideReader.run("rsvg-convert", "--dpi-x", "25.4", "--dpi-y", "25.4", "-o", png.toString(), out.resolve("blank.svg").toString());
        var image = javax.imageio.ImageIO.read(png.toFile());
        assertEquals(Double.parseDouble(head.group(1)), image.getWidth(), 1);
        assertEquals(Double.parseDouble(head.group(2)), image.getHeight(), 1);
    }

    /** A browser lays the SVG out at 96 pixels an inch, as CSS Values and Units Level 3, section 5.2, defines its millimetre. */
    @Test
    void svgIsOfTrueSizeInABrowser() throws IOException {
        Matcher head = Pattern.compile("width=\"([.\\d]+)mm\" height=\"([.\\d]+)mm\"").matcher(Files.readString(out.resolve("blank.svg")));
        assertTrue(head.find());
        Path page = Files.writeString(temp.resolve("page.html"), """
                <body onload="p.textContent = 'seen ' + i.width / 96 * 25.4 + ' ' + i.height / 96 * 25.4"><img id="i" src="%s"><p id="p"></p>
                """.formatted(out.resolve("blank.svg").toUri()));
        String seen = OutsideReader.run("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync", "--virtual-time-budget=10000",
                "--user-data-dir=" + temp.resolve("browser"), "--dump-dom", page.toUri().toString());
        Matcher size = Pattern.compile(">seen ([.\\d]+) ([.\\d]+)<").matcher(seen);
        assertTrue(size.find(), seen);
        assertEquals(Double.parseDouble(head.group(1)), Double.parseDouble(size.group(1)), 0.3, "mm, to a pixel");
        assertEquals(Double.parseDouble(head.group(2)), Double.parseDouble(size.group(2)), 0.3, "mm, to a pixel");
    }

    @Test
    void pdfHasPagesOfThePaperAskedFor() {
        String said = OutsideReader.run("pdfinfo", out.resolve("blank.pdf").toString());
        assertTrue(said.contains("612 x 792 pts (letter)"), said);
        OutsideReader.run("qpdf", "--check", out.resolve("blank.pdf").toString());
    }

    @Test
    void vtuCarriesTheFieldsOfTheSummary() {
        String program = """
                import sys, math
                import numpy as np
                %s
                s1, s2, t, d = get('stretch1'), get('stretch2'), get('thickness_strain'), get('direction1')
                assert abs(t + get('strain1') + get('strain2')).max() < 1e-12
                assert abs(np.log(s1) - get('strain1')).max() < 1e-12 and (s1 >= s2).all()
                assert abs(np.linalg.norm(d, axis=1) - 1).max() < 1e-9
                assert np.median(curved) > 0
                print(len(s1), s1.max() - 1, 1 - s2.min(), (s1 * s2).max() - 1)
                """;
        for (String reader : List.of("vtk", "meshio")) {
            String opening = reader.equals("vtk") ? """
                    import vtk
                    from vtk.util.numpy_support import vtk_to_numpy
                    r = vtk.vtkXMLUnstructuredGridReader()
                    r.SetFileName(sys.argv[1])
                    r.Update()
                    get = lambda name: vtk_to_numpy(r.GetOutput().GetCellData().GetArray(name))
                    curved = vtk_to_numpy(r.GetOutput().GetPointData().GetArray('gaussian_curvature'))
                    """ : """
                    import meshio
                    m = meshio.read(sys.argv[1])
                    get = lambda name: m.cell_data[name][0]
                    curved = m.point_data['gaussian_curvature']
                    """;
            String[] seen = OutsideReader.python(List.of(reader, "numpy"), program.formatted(opening), out.resolve("panel.vtu").toString())
                    .strip().split(" ");
            assertEquals(piece.get("triangles").asInt(), Integer.parseInt(seen[0]), reader);
            assertEquals(piece.get("strain").get("stretch_max").asDouble(), Double.parseDouble(seen[1]), 1e-9, reader);
            assertEquals(piece.get("strain").get("shrink_max").asDouble(), Double.parseDouble(seen[2]), 1e-9, reader);
            assertEquals(piece.get("strain").get("area_gain_max").asDouble(), Double.parseDouble(seen[3]), 1e-9, reader);
        }
    }

    /** Singular values by NumPy from the positions in flat.obj: energies, areas and strains as docs/manual/files.md defines them. */
    @Test
    void flatObjGivesTheNumbersOfTheSummary() {
        String[] seen = OutsideReader.python(List.of("numpy"), """
                import sys, numpy as np
                v, vt, f = [], [], []
                for line in open(sys.argv[1]):
                    w = line.split()
                    if w[0] == 'v': v.append([float(x) for x in w[1:]])
                    elif w[0] == 'vt': vt.append([float(x) for x in w[1:]])
                    elif w[0] == 'f': f.append([[int(i) - 1 for i in c.split('/')] for c in w[1:]])
                v, vt, f = np.array(v), np.array(vt), np.array(f)
                p, q = v[f[:, :, 0]], vt[f[:, :, 1]]
                e1, e2 = p[:, 1] - p[:, 0], p[:, 2] - p[:, 0]
                n = np.cross(e1, e2)
                area = np.linalg.norm(n, axis=1) / 2
                x = e1 / np.linalg.norm(e1, axis=1)[:, None]
                y = np.cross(n / (2 * area)[:, None], x)
                P = np.stack([np.stack([(e * a).sum(1) for e in (e1, e2)], -1) for a in (x, y)], 1)
                Q = np.stack([q[:, 1] - q[:, 0], q[:, 2] - q[:, 0]], -1)
                J = Q @ np.linalg.inv(P)
                s = np.linalg.svd(J, compute_uv=False)
                mean = lambda z: (area * z).sum() / area.sum()
                print(len(f), area.sum(), np.linalg.det(Q).sum() / 2, mean((s**2 + s**-2.).sum(1)), mean(((s - 1)**2).sum(1)),
                      1 / s.min() - 1, 1 - 1 / s.max(), int((np.linalg.det(J) <= 0).sum()), *np.ptp(vt, axis=0))
                """, out.resolve("flat.obj").toString()).strip().split(" ");
        assertEquals(piece.get("triangles").asInt(), Integer.parseInt(seen[0]));
        double[] x = java.util.Arrays.stream(seen).mapToDouble(Double::parseDouble).toArray();
        assertEquals(piece.get("form_area_mm2").asDouble(), x[1], 1e-6);
        assertEquals(piece.get("flat_area_mm2").asDouble(), x[2], 1e-6);
        assertEquals(piece.get("energy").get("symmetric_dirichlet_mean").asDouble(), x[3], 1e-10);
        assertEquals(piece.get("energy").get("arap_mean").asDouble(), x[4], 1e-10);
        assertEquals(piece.get("strain").get("stretch_max").asDouble(), x[5], 1e-9);
        assertEquals(piece.get("strain").get("shrink_max").asDouble(), x[6], 1e-9);
        assertEquals(0, x[7]);
        assertEquals(piece.get("flat_size_mm").get(0).asDouble(), x[8], 1e-9);
        assertEquals(piece.get("flat_size_mm").get(1).asDouble(), x[9], 1e-9);
    }

    /** @param text width and height, larger than the flat size by {@code more} */
    private static void size(String text, double more, double tolerance) {
        String[] words = text.strip().split(" ");
        assertEquals(piece.get("flat_size_mm").get(0).asDouble() + more, Double.parseDouble(words[0]), tolerance, text);
        assertEquals(piece.get("flat_size_mm").get(1).asDouble() + more, Double.parseDouble(words[1]), tolerance, text);
    }
}
