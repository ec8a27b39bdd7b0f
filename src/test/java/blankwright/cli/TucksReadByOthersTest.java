package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.oracle.OutsideReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The tucks of a dish on its blank, read by programs we did not write: as many as the table lists, each where and as large as it says. */
class TucksReadByOthersTest {
    private static final double TRIM = 12;

    @TempDir static Path temp;
    private static Path out;
    private static int listed;

    @BeforeAll
    static void layOutADish() throws IOException {
        Path recipe = Files.writeString(temp.resolve("dish.yaml"), "blankwright-recipe: 1\nname: dish\nalloy: 3003-O\nthickness: 1mm\nclamped: calm\n"
                + "panel: {kind: spherical-cap, radius: 400mm, half-angle: 20deg}\nchord: 0.4mm\ntrim: " + TRIM + "mm\n");
        out = temp.resolve("out");
        Run run = Run.of("flatten", recipe, "--out", out, "--formats", "dxf,svg,pdf,csv");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        listed = Files.readAllLines(out.resolve("tucks.csv")).size() - 1;
        assertTrue(listed > 3);
    }

    /** ezdxf gives the polylines of layer MARK that turn sharply back, and the distance of their ends from the cut and of their tips from the finished edge. */
    @Test
    void inTheDxfTheyAreAsLargeAsTheTableSays() {
        String said = OutsideReader.python(List.of("ezdxf"), """
                import sys, csv, math, ezdxf
                from ezdxf.math import Vec2
                from ezdxf.path import make_path
                doc = ezdxf.readfile(sys.argv[1])
                flat = lambda e: [Vec2(p) for p in make_path(e).flattening(0.001)]
                def away(p, line):
                    best = 1e9
                    for a, b in zip(line, line[1:]):
                        d = b - a
                        f = max(0, min(1, (p - a).dot(d) / max(1e-30, d.dot(d))))
                        best = min(best, (a + d * f - p).magnitude)
                    return best
                layer = lambda name: doc.modelspace().query('LWPOLYLINE[layer=="%s"]' % name)
                cut, trim = [[flat(e) for e in layer(n)] for n in ('CUT', 'TRIM')]
                assert len(cut) == len(trim) == 1
                cut, trim = cut[0], trim[0]
                rows = list(csv.DictReader(open(sys.argv[2])))
                found = 0
                for e in layer('MARK'):
                    p = flat(e)
                    if len(p) != 5 or (p[1] - p[2]).angle_between(p[3] - p[2]) > math.radians(60): continue
                    found += 1
                    middle = (p[1] + p[3]) / 2
                    row = min(rows, key=lambda r: (Vec2(float(r['u_mm']), float(r['v_mm'])) - middle).magnitude)
                    near = (Vec2(float(row['u_mm']), float(row['v_mm'])) - middle).magnitude
                    print(max(away(p[0], cut), away(p[4], cut)), max(away(p[1], trim), away(p[3], trim)), (p[1] - p[3]).magnitude - float(row['base_mm']),
                          away(p[2], trim) - float(row['depth_mm']), near, (p[0] - p[4]).magnitude - (p[1] - p[3]).magnitude)
                print(found)
                """, out.resolve("blank.dxf").toString(), out.resolve("tucks.csv").toString());
        String[] lines = said.strip().split("\n");
        assertEquals(listed, Integer.parseInt(lines[lines.length - 1]), "as many on the blank as in the table");
        for (int i = 0; i < listed; i++) {
            String[] x = lines[i].split(" ");
            assertEquals(0, Double.parseDouble(x[0]), 0.1, "begins at the cut");
            assertEquals(0, Double.parseDouble(x[1]), 0.11, "mouth on the finished edge");
            assertEquals(0, Double.parseDouble(x[2]), 0.1, "as wide as listed");
            assertEquals(0, Double.parseDouble(x[3]), 0.5, "as deep as listed");
            assertTrue(Double.parseDouble(x[4]) < 8, "the listed vertex is the nearest, so no farther than half a side");
            assertEquals(0, Double.parseDouble(x[5]), 0.01, "side by side to the cut");
        }
    }

    /** Python's XML reader finds the same strokes in the group of layer MARK. */
    @Test
    void inTheSvgTheyAreAsMany() {
        String strokes = OutsideReader.run(OutsideReader.PYTHON, "-c", """
                import sys, re, xml.etree.ElementTree as tree
                found = 0
                for group in tree.parse(sys.argv[1]).iter('{http://www.w3.org/2000/svg}g'):
                    if group.get('id') != 'MARK': continue
                    for path in group.iter('{http://www.w3.org/2000/svg}path'):
                        numbers = re.findall(r'-?[0-9.]+', path.get('d'))
                        found += len(numbers) == 10 and 'A' not in path.get('d')
                print(found)
                """, out.resolve("blank.svg").toString());
        assertEquals(listed, Integer.parseInt(strokes.strip()));
    }

    /** Poppler turns each sheet of the PDF into strokes in mm: those that stand on several sheets are one, as wide as the table says. */
    @Test
    void inThePdfTheyAreAsManyAndAsWide() throws IOException {
        Set<String> tips = new TreeSet<>();
        double base = Double.parseDouble(Files.readAllLines(out.resolve("tucks.csv")).get(1).split(",")[4]);
        Matcher count = Pattern.compile("Pages:\\s+(\\d+)").matcher(OutsideReader.run("pdfinfo", out.resolve("blank.pdf").toString()));
        assertTrue(count.find());
        for (int page = 2; page <= Integer.parseInt(count.group(1)); page++) {
            Path svg = temp.resolve("page.svg");
            OutsideReader.run("pdftocairo", "-svg", "-f", "" + page, "-l", "" + page, out.resolve("blank.pdf").toString(), svg.toString());
            Matcher stroke = Pattern.compile("<path style=\"fill:none[^>]* d=\"M ([-.\\d]+ [-.\\d]+(?: L [-.\\d]+ [-.\\d]+){4}) \" transform").matcher(Files.readString(svg));
            while (stroke.find()) {
                double[] p = Pattern.compile(" L | ").splitAsStream(stroke.group(1)).mapToDouble(Double::parseDouble).toArray();
                double ax = p[2] - p[4], ay = p[3] - p[5], bx = p[6] - p[4], by = p[7] - p[5];
                if (ax * bx + ay * by < Math.cos(Math.toRadians(60)) * Math.hypot(ax, ay) * Math.hypot(bx, by)) continue;
                assertEquals(base, Math.hypot(p[2] - p[6], p[3] - p[7]), 0.1);
                tips.add(Math.round(p[4]) + " " + Math.round(p[5]));
            }
        }
        assertEquals(listed, tips.size(), tips.toString());
    }
}
