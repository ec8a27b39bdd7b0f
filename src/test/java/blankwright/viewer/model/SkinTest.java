package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Refusal;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import blankwright.shape.SphericalCap;
import blankwright.shop.Instruction;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class SkinTest {
    private static Laid cap;

    @BeforeAll
    static void lay() throws Refusal {
        cap = Laid.of(FlattenJob.run(Recipe.of("cap", new SphericalCap(300, Math.toRadians(30))).withChord(0.3),
                new Given("cap", Path.of(""), List.of()), Progress.NONE));
    }

    /** A place clicked on one picture is the same place on the other. */
    @Test
    void thereAndBack() {
        var map = cap.skins().get(0).map();
        for (int t = 0; t < map.form().triangleCount(); t += 97) {
            double u = (map.u(map.form().corner(t, 0)) + map.u(map.form().corner(t, 1)) + map.u(map.form().corner(t, 2))) / 3;
            double v = (map.v(map.form().corner(t, 0)) + map.v(map.form().corner(t, 1)) + map.v(map.form().corner(t, 2))) / 3;
            Place there = cap.onBlank(u, v, 0).orElseThrow();
            assertEquals(t, there.at().triangle());
            double[] form = cap.numbers(there).form();
            Place back = cap.onForm(form[0], form[1], form[2]);
            assertArrayEquals(new double[] {u, v}, new double[] {cap.numbers(back).u(), cap.numbers(back).v()}, 1e-6);
        }
        double[] box = cap.box();
        assertTrue(cap.onBlank(box[0] - 1, box[1] - 1, 0.5).isEmpty());
    }

    /** The number of a place and the number that colours it: equal at the vertices, close between. */
    @Test
    void numbersAreThoseThatAreColoured() {
        Skin skin = cap.skins().get(0);
        Painting work = skin.painting(MapKind.WORK), left = skin.painting(MapKind.THICKNESS), crown = skin.painting(MapKind.CURVATURE);
        var form = skin.map().form();
        for (int v = 0; v < form.vertexCount(); v += 53) {
            Numbers n = cap.numbers(cap.onForm(form.x(v), form.y(v), form.z(v)));
            assertEquals(work.value(v), n.most(), 1e-9);
            assertEquals(left.value(v), n.left(), 1e-9);
            assertEquals(crown.value(v), n.crownDegrees(), 1e-6);
        }
    }

    /** Incompressible metal: thickness is what is left when both lengths have changed, 1 / ((1 + e1)(1 + e2)). */
    @Test
    void thicknessFollowsFromBothWays() {
        for (ZoneRow row : ZoneRow.of(cap, true)) {
            Numbers n = cap.numbers(cap.placeOf(row));
            assertEquals(1 / ((1 + n.most()) * (1 + n.across())), n.left(), 1e-12);
        }
    }

    /** A ball of radius r has 1/r² everywhere: in a square of 100 mm that is (100/r)² rad. */
    @Test
    void crownOfABallMatchesItsRadius() {
        double[] box = cap.box();
        Numbers n = cap.numbers(cap.onBlank((box[0] + box[2]) / 2, (box[1] + box[3]) / 2, 1).orElseThrow());
        double meant = Math.toDegrees(1.0 / 9);
        assertEquals(meant, n.crownDegrees(), 0.02 * meant);
        List<SpotCard.Fact> facts = SpotCard.of(cap, cap.onForm(n.form()[0], n.form()[1], n.form()[2]), 100, OptionalDouble.of(1.2),
                LengthStyle.MM);
        assertTrue(facts.stream().anyMatch(f -> f.amount().equals("6.4° bowl in a square of 100 mm")), facts.toString());
        assertTrue(facts.get(0).amount().startsWith("let out "), facts.toString());
    }

    /** The line round a zone closes: every end of its pieces meets another; and lies within an edge's length of the zone's own border. */
    @Test
    void theBorderOfAZoneCloses() {
        for (ZoneRow row : ZoneRow.of(cap, true)) {
            Border border = cap.border(row);
            assertTrue(border.pieces() > 0);
            Map<String, Integer> times = new HashMap<>();
            for (int i = 0; i < border.pieces(); i++)
                for (int end = 0; end < 2; end++) times.merge(border.blank(i, end, 0) + " " + border.blank(i, end, 1), 1, Integer::sum);
            for (int n : times.values()) assertEquals(0, n % 2);
            assertEquals(2 * border.pieces(), border.corners().vertexCount());
        }
    }

    @Test
    void theListHasTheHardestFirst() {
        List<ZoneRow> all = ZoneRow.of(cap, true), worked = ZoneRow.of(cap, false);
        assertTrue(worked.stream().noneMatch(r -> r.zone().instruction() == Instruction.LEAVE));
        assertEquals(worked, all.subList(0, worked.size()));
        for (int i = 1; i < worked.size(); i++)
            assertFalse(Math.abs(worked.get(i).zone().largestStrain()) > Math.abs(worked.get(i - 1).zone().largestStrain()));
    }

    @Test
    void aDraggedScaleEndsWhereItWasPut() {
        assertEquals(0.07, cap.tints(MapKind.WORK, OptionalDouble.of(0.07)).high());
        assertEquals(0.7, cap.tints(MapKind.THICKNESS, OptionalDouble.of(0.7)).low());
        assertEquals(-30, cap.tints(MapKind.CURVATURE, OptionalDouble.of(30)).low());
    }
}
