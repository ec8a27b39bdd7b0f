package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.drawing.Drawing;
import blankwright.drawing.Entity;
import blankwright.drawing.Layer;
import blankwright.metal.Alloy;
import blankwright.num.Progress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rulings as they are drawn and lettered on the blank, against the tube's and the cone's own geometry. */
class RolledOnTheBlankMatchesClosedFormTest {
    private static final String SHEET = "chord: 0.05mm\nthickness: 1.2mm\nalloy: 3003-H14\nface: outside\nstations: 2000mm\n";
    private static final Pattern RADII = Pattern.compile("R ([\\d.]+), set ([\\d.]+)");

    @TempDir Path temp;

    private Result run(String more) throws Exception {
        Path recipe = Files.writeString(temp.resolve("panel.yaml"), "blankwright-recipe: 1\nname: panel\n" + more);
        return FlattenJob.run(InputFile.recipe(recipe, Optional.empty()), Given.file(recipe), Progress.NONE);
    }

    private static List<Entity.Line> straight(Drawing drawing, double longer) {
        List<Entity.Line> lines = new ArrayList<>();
        for (Entity e : drawing.entities())
            if (e.layer() == Layer.MARK && e instanceof Entity.Line line && Math.hypot(line.x1() - line.x0(), line.y1() - line.y0()) > longer) lines.add(line);
        return lines;
    }

    private static List<String> words(Drawing drawing, String pattern) {
        return drawing.entities().stream().filter(e -> e instanceof Entity.Text).map(e -> ((Entity.Text) e).text()).filter(w -> w.matches(pattern)).toList();
    }

    /** Gardiner's Ri/Rf = 4X³ - 3X + 1, X = Ri Y / (E T): what is rolled to the radius set must open to the one that stays. */
    private static void opensTo(Result result, double set, double stays) {
        Alloy alloy = result.recipe().metal().orElseThrow().alloy();
        double x = set * alloy.yieldStress().value() / (alloy.young().value() * 1.2);
        assertEquals(stays, set / (4 * x * x * x - 3 * x + 1), 0.02 * stays, "the numbers on the blank are rounded to whole mm");
    }

    /** A tube of 200 mm to its outer skin: eight lines along it, evenly spaced, and both edges. Inside it has 198.8 mm. */
    @Test
    void tube() throws Exception {
        Result result = run("panel: {kind: cylinder, radius: 200mm, length: 600mm, sweep: 120deg}\n" + SHEET);
        Drawing drawing = Packet.drawing(result);
        double round = 199.4 * 2 * Math.PI / 3;
        List<Entity.Line> lines = straight(drawing, 100);
        assertEquals(8, lines.size());
        for (int i = 0; i < 8; i++) {
            Entity.Line line = lines.get(i);
            assertEquals(600, Math.hypot(line.x1() - line.x0(), line.y1() - line.y0()), 1);
            assertEquals(round * (i + 1) / 9, line.y0(), 0.5, "the edge is the start");
            assertEquals(line.y0(), line.y1(), 0.5);
        }
        List<String> rolls = words(drawing, "roll 1 .*R .*");
        assertEquals(10, rolls.size(), rolls.toString());
        assertTrue(rolls.stream().anyMatch(w -> w.startsWith("roll 1 start (edge)  R 199, set ")), rolls.toString());
        assertTrue(rolls.stream().anyMatch(w -> w.startsWith("roll 1 stop (edge)  R 199, set ")), rolls.toString());
        assertTrue(rolls.stream().anyMatch(w -> w.startsWith("roll 1 +" + Math.round(round / 9) + "  R ")), rolls.toString());
        for (String roll : rolls) {
            Matcher radii = RADII.matcher(roll);
            assertTrue(radii.find(), roll);
            assertEquals(198.8, Double.parseDouble(radii.group(1)), 1.5);
            opensTo(result, Double.parseDouble(radii.group(2)), 198.8);
        }
        assertEquals(1, words(drawing, "roll 1: the outside face bulges; .*").size());
    }

    /**
     * A cone frustum: all rulings meet in one point of the blank, where the sector's arcs have their middle, and the rims lie at their slant heights.
     * Square to the skin the radius is that of the ring over the cosine of the half angle.
     */
    @Test
    void cone() throws Exception {
        Result result = run("panel: {kind: cone-frustum, bottom-radius: 160mm, top-radius: 80mm, height: 200mm, sweep: 100deg}\n"
                + SHEET.replace("face: outside", "face: inside"));
        Drawing drawing = Packet.drawing(result);
        List<Entity.Line> lines = straight(drawing, 100);
        assertTrue(lines.size() >= 3, lines.size() + " rulings");
        double sin = 80 / Math.hypot(200, 80), cos = 200 / Math.hypot(200, 80), half = 0.6;
        double near = (80 + half * cos) / sin, far = (160 + half * cos) / sin;      // of the middle of the sheet, from the point
        double a = 0, b = 0, d = 0, p = 0, q = 0;                                    // the place nearest to all lines, by least squares
        for (Entity.Line l : lines) {
            double length = Math.hypot(l.x1() - l.x0(), l.y1() - l.y0()), nx = -(l.y1() - l.y0()) / length, ny = (l.x1() - l.x0()) / length;
            double off = nx * l.x0() + ny * l.y0();
            a += nx * nx;
            b += nx * ny;
            d += ny * ny;
            p += nx * off;
            q += ny * off;
        }
        double det = a * d - b * b, x = (d * p - b * q) / det, y = (a * q - b * p) / det;
        for (Entity.Line l : lines) {
            double one = Math.hypot(l.x0() - x, l.y0() - y), other = Math.hypot(l.x1() - x, l.y1() - y);
            assertEquals(near, Math.min(one, other), 4);
            assertEquals(far, Math.max(one, other), 4);
        }
        int small = 0, large = 0;
        for (String roll : words(drawing, "R [\\d.]+, set [\\d.]+")) {
            Matcher radii = RADII.matcher(roll);
            assertTrue(radii.matches(), roll);
            double r = Double.parseDouble(radii.group(1));
            boolean top = r < 130 / cos;
            assertEquals((top ? 80 : 160) / cos, r, 0.04 * r, "the given face is the inside one");
            opensTo(result, Double.parseDouble(radii.group(2)), r);
            small += top ? 1 : 0;
            large += top ? 0 : 1;
        }
        assertTrue(small >= 4 && large >= 4, small + " and " + large + " lettered");
    }

    /** Narrow strips of a round tube ring happen to need no work; nobody rolls them. */
    @Test
    void whatIsWorkedIsNotRolled() throws Exception {
        Result result = run("panel: {kind: torus-section, ring: 240mm, tube: 38mm, sweep: 180deg, round: 170deg, tilt: 90deg}\nchord: 0.1mm\nthickness: 1mm\n");
        assertEquals(List.of(), result.pieces().get(0).rolled());
        assertEquals(List.of(), words(Packet.drawing(result), ".*roll.*"));
    }

    /** Without the metal no springback is known, without the thickness no inside. */
    @Test
    void saysNoMoreThanIsKnown() throws Exception {
        String tube = "panel: {kind: cylinder, radius: 200mm, length: 300mm, sweep: 60deg}\nstations: 2000mm\n";
        Drawing bare = Packet.drawing(run(tube)), thick = Packet.drawing(run(tube + "thickness: 4mm\n"));
        assertTrue(words(bare, "roll 1 \\+\\d+  R 200").size() > 0, words(bare, "roll.*").toString());
        assertEquals(1, words(bare, "R: radius of the form .*").size());
        assertTrue(words(thick, "roll 1 \\+\\d+  R 198").size() > 0, words(thick, "roll.*").toString());
        assertEquals(1, words(thick, "R: inside radius that must stay, mm").size());
    }
}
