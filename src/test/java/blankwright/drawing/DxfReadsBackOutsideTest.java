package blankwright.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.oracle.OutsideReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What two readers we did not write (ezdxf with its audit, GDAL) find in a DXF file of ours. */
class DxfReadsBackOutsideTest {
    private static final String LOOK = """
            import sys, ezdxf, logging
            from ezdxf import bbox
            logging.basicConfig(level=logging.WARNING, stream=sys.stdout)
            d = ezdxf.readfile(sys.argv[1])
            a = d.audit()
            print("errors", len(a.errors), "fixes", len(a.fixes))
            for e in a.errors + a.fixes: print(e.code, e.message)
            print("units", d.units, d.header["$MEASUREMENT"], d.dxfversion)
            m = d.modelspace()
            print("count", len(m))
            for e in m: print(e.dxftype(), e.dxf.layer, e.dxf.handle)
            print("layers", sorted(l.dxf.name for l in d.layers if l.dxf.name != "Defpoints"))
            for p in m.query("LWPOLYLINE"): print("closed", p.closed, len(p), [round(b, 6) for *_, b in p.get_points("xyb")])
            e = bbox.extents(m.query('*[layer=="CUT"]'))
            print("cut", *[round(v, 4) + 0.0 for v in (e.extmin.x, e.extmin.y, e.extmax.x, e.extmax.y)])
            for t in m.query("TEXT"): print("text", ezdxf.lldxf.encoding.decode_dxf_unicode(t.plain_text()), t.dxf.height, round(t.dxf.rotation, 4))
            for a in m.query("ARC"): print("arc", round(a.dxf.start_angle, 4), round(a.dxf.end_angle, 4))
            """;

    @TempDir
    Path dir;

    @Test
    void ezdxfFindsNothingToMend() throws IOException {
        Path file = Samples.file(dir, "plate.dxf", DxfWriter::write, Samples.plate());
        String seen = OutsideReader.python(List.of("ezdxf"), LOOK, file.toString());
        String all = "\n" + seen;
        assertTrue(seen.startsWith("errors 0 fixes 0\nunits 4 1 AC1015\ncount 9\n"), seen);
        assertTrue(seen.contains("layers ['0', 'CUT', 'MARK', 'SHRINK', 'STRETCH', 'TEXT', 'TRIM']"), seen);
        assertTrue(seen.contains("closed True 4 [0.0, 1.0, 0.0, -0.2]"), seen);
        assertTrue(seen.contains("closed False 3 [0.0, 0.0, 0.0]"), seen);
        assertEquals(1, all.split("\nLINE MARK").length - 1, "the line given twice is drawn once");
        assertTrue(all.contains("\nCIRCLE CUT") && all.contains("\nLINE TRIM") && all.contains("\nARC SHRINK") && all.contains("\nARC STRETCH"), seen);
        assertTrue(seen.contains("cut 0.0 0.0 400.0 200.0"), seen);
        assertTrue(seen.contains("text Tern 50° × 1.2 ± é ^ 100% % Ω 6.0"), seen);
        assertTrue(seen.contains("text line break 6.0 28.6479"), seen);
        double start = Math.toDegrees(0.3);
        assertTrue(seen.contains(String.format("arc %.4f %.4f", start, start + Math.toDegrees(4))), seen);
        assertTrue(seen.contains(String.format("arc %.4f %.4f", start - Math.toDegrees(2) + 360, start)), seen);
    }

    @Test
    void gdalFindsTheTrueExtents() throws IOException {
        Path file = Samples.file(dir, "plate.dxf", DxfWriter::write, Samples.plate());
        String seen = OutsideReader.run("ogrinfo", "-al", "-so", file.toString());
        assertTrue(seen.contains("Feature Count: 9"), seen);
        Matcher extent = Pattern.compile("Extent: \\(([-\\d.]+), ([-\\d.]+)\\) - \\(([-\\d.]+), ([-\\d.]+)\\)").matcher(seen);
        assertTrue(extent.find(), seen);
        double[] wanted = {0, 0, 400, 200};
        for (int i = 0; i < 4; i++) assertEquals(wanted[i], Double.parseDouble(extent.group(i + 1)), 0.1, seen);      // GDAL breaks arcs every 4°
        assertTrue(OutsideReader.run("ogrinfo", "-al", file.toString()).contains("Tern 50° × 1.2 ± é ^ 100%"), "lettering");
    }

    @Test
    void aRandomOutlineKeepsItsPlaces() throws IOException {
        Random random = new Random(4);
        double[] ring = new double[2000];
        for (int i = 0; i < 1000; i++) {
            double a = 2 * Math.PI * i / 1000, r = 300 + 50 * random.nextDouble();
            ring[2 * i] = r * Math.cos(a);
            ring[2 * i + 1] = r * Math.sin(a);
        }
        Drawing drawing = Drawing.of("rough", List.of(new Entity.Polyline(Layer.CUT, blankwright.outline.Curve.polygon(ring))));
        Path file = Samples.file(dir, "rough.dxf", DxfWriter::write, drawing);
        String seen = OutsideReader.python(List.of("ezdxf"), """
                import sys, ezdxf
                p = ezdxf.readfile(sys.argv[1]).modelspace()[0]
                for x, y in p.get_points("xy"): print(repr(x), repr(y))
                """, file.toString());
        String[] numbers = seen.trim().split("\\s+");
        assertEquals(2000, numbers.length);
        for (int i = 0; i < 2000; i++) assertEquals(ring[i], Double.parseDouble(numbers[i]), 0.5000001e-6);
    }

    @Test
    void anEmptyDrawingOpensToo() throws IOException {
        Path file = Samples.file(dir, "empty.dxf", DxfWriter::write, Drawing.of("nothing", List.of()));
        String seen = OutsideReader.python(List.of("ezdxf"), "import sys, ezdxf; a = ezdxf.readfile(sys.argv[1]).audit(); print(len(a.errors), len(a.fixes))",
                file.toString());
        assertEquals("0 0", seen.trim());
    }

    @Test
    void keepsTheSameBytesAndEveryNumberIsPlain() throws IOException {
        byte[] once = Samples.bytes(DxfWriter::write, Samples.plate());
        assertArrayEquals(once, Samples.bytes(DxfWriter::write, Samples.plate()));
        String text = new String(once, StandardCharsets.ISO_8859_1);
        assertTrue(!text.contains("NaN") && !text.contains("Infinity") && !Pattern.compile("(?m)^-?\\d+(\\.\\d+)?E-?\\d+$").matcher(text).find());
    }
}
