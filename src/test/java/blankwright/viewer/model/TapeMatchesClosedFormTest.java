package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Refusal;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import blankwright.shape.SphericalCap;
import blankwright.shop.TapeLine;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A tape over the middle of a cap is an arc of a great circle: r times the angle. */
class TapeMatchesClosedFormTest {
    private static final double R = 300, HALF = Math.toRadians(25);
    private static Laid cap;

    @BeforeAll
    static void lay() throws Refusal {
        cap = laid(Recipe.of("cap", new SphericalCap(R, HALF)).withChord(0.1));
    }

    private static Laid laid(Recipe recipe) throws Refusal {
        return Laid.of(FlattenJob.run(recipe, new Given("cap", Path.of(""), List.of()), Progress.NONE));
    }

    private static Place at(double angle, double round) {
        double[] pole = pole();
        return cap.onForm(pole[0] + R * Math.sin(angle) * Math.cos(round), pole[1] + R * Math.sin(angle) * Math.sin(round),
                pole[2] + R * Math.cos(angle));
    }

    /** Centre of the ball, found from the form: the vertex farthest up lies R above it. */
    private static double[] pole() {
        var form = cap.forms().get(0);
        int top = 0;
        for (int v = 0; v < form.vertexCount(); v++) if (form.z(v) > form.z(top)) top = v;
        return new double[] {form.x(top), form.y(top), form.z(top) - R};
    }

    @Test
    void overThePoleOnTheForm() {
        for (double round : new double[] {0, 0.7, 2}) {
            TapeLine line = cap.line(cap.between(at(0.35, round), at(0.3, round + Math.PI), false)).orElseThrow();
            assertEquals(R * 0.65, line.formLength(), 2e-3 * R * 0.65);
            assertTrue(line.pointCount() > 10);
        }
    }

    /** By the symmetry of the cap a line through the middle is straight on both: both ways of laying it agree. */
    @Test
    void throughTheMiddleBothWaysAgree() {
        TapeLine over = cap.line(cap.between(at(0.4, 1), at(0.4, 1 + Math.PI), false)).orElseThrow();
        TapeLine flat = cap.line(cap.between(at(0.4, 1), at(0.4, 1 + Math.PI), true)).orElseThrow();
        assertEquals(over.formLength(), flat.formLength(), 1e-3 * over.formLength());
        assertEquals(over.blankLength(), flat.blankLength(), 1e-3 * over.blankLength());
        assertTrue(over.change() > 0, "the middle of a dish is stretched");
    }

    @Test
    void straightOnTheBlankIsTheDistanceOnTheBlank() {
        Place p = at(0.3, 0.2), q = at(0.35, 2.9);
        Numbers a = cap.numbers(p), b = cap.numbers(q);
        TapeLine line = cap.line(cap.between(p, q, true)).orElseThrow();
        assertEquals(Math.hypot(b.u() - a.u(), b.v() - a.v()), line.blankLength(), 2e-3, "its ends are kept to a thousandth");
        TapeLine back = cap.line(cap.between(q, p, true)).orElseThrow();
        assertEquals(line.formLength(), back.formLength(), 1e-6, "there and back");
    }

    @Test
    void noTapeOverNothing() {
        Place p = at(0.3, 0.2);
        assertTrue(cap.line(cap.between(p, p, true)).isEmpty());
    }

    /** Across a hole the tape would hang in the air. */
    @Test
    void noTapeOverAHole() throws Refusal {
        Laid skin = laid(Demos.recipe("side-skin").withChord(2));
        double[] box = skin.box();
        var hole = skin.result().pieces().get(0);
        assertEquals(3, hole.holes());
        Place left = null, right = null;
        for (double at = box[1]; at < box[3] && right == null; at += 2) {       // a level line with metal, a gap of 40 mm and metal again
            double begin = Double.NaN;
            left = null;
            for (double u = box[0] + 5; u < box[2] - 5; u += 2) {
                boolean metal = skin.onBlank(u, at, 0).isPresent();
                if (metal && Double.isNaN(begin)) left = skin.onBlank(u, at, 0).get();
                if (!metal && left != null && Double.isNaN(begin)) begin = u;
                if (metal && !Double.isNaN(begin)) {
                    if (u - begin > 40) right = skin.onBlank(u + 2, at, 1).orElse(null);
                    else begin = Double.NaN;
                    if (right != null) break;
                }
            }
        }
        assertTrue(left != null && right != null);
        assertTrue(skin.line(skin.between(left, right, true)).isEmpty());
    }
}
