package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import blankwright.shape.SphericalCap;
import blankwright.shop.DrawnTape;
import blankwright.shop.TapeLine;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tapes on a cap cut in two across its pole: one over the cut is lost, the others keep their numbers and lie each on its own half. */
class LaidTapesTest {
    private static final double R = 300, HALF = 0.4;

    @Test
    void eachKeepsItsNumberAndItsPiece() throws Refusal {
        Recipe cap = Recipe.of("cap", new SphericalCap(R, HALF)).withChord(0.2);
        TriMesh whole = run(cap).pieces().get(0).map().form();
        double top = Double.NEGATIVE_INFINITY;
        for (int v = 0; v < whole.vertexCount(); v++) top = Math.max(top, whole.z(v));
        double rim = R * Math.sin(HALF), low = top - R + R * Math.cos(HALF);
        DrawnSeam seam = new DrawnSeam(List.of(new DrawnSeam.Point(0, -rim, low), new DrawnSeam.Point(0, 0, top),
                new DrawnSeam.Point(0, rim, low)));
        DrawnTape over = tape(-50, 50, top), right = tape(30, 80, top), left = tape(-30, -60, top);
        Result halves = run(cap.withSeams(List.of(seam)).withTapes(List.of(over, right, left)));
        assertEquals(2, halves.pieces().size());
        LaidTapes laid = LaidTapes.of(halves);
        assertEquals(List.of(1), laid.lost());
        assertEquals(List.of("T2", "T3"), laid.laid().stream().map(t -> t.line().name()).toList());
        for (int i = 0; i < 2; i++) {
            boolean isRight = halves.pieces().get(i).map().form().x(0) + halves.pieces().get(i).map().form().x(1) > 0;
            List<TapeLine> on = laid.on(i);
            assertEquals(List.of(isRight ? "T2" : "T3"), on.stream().map(TapeLine::name).toList());
            assertEquals(R * (Math.asin((isRight ? 80 : 60) / R) - Math.asin(30 / R)),
                    on.get(0).formLength(), 0.05, "an arc of a great circle");
        }
    }

    /** Ends 300 mm off the form were laid from its edge without a word. */
    @Test
    void anEndOffTheFormIsToldWithTheNearestPlace() throws Refusal {
        Recipe cap = Recipe.of("cap", new SphericalCap(R, HALF)).withChord(0.2);
        DrawnTape on = new DrawnTape(-50, 0, Math.sqrt(R * R - 2500), 50, 0, Math.sqrt(R * R - 2500), true);
        DrawnTape off = new DrawnTape(-50, 0, Math.sqrt(R * R - 2500), 0, 0, 400, true);
        LaidTapes laid = LaidTapes.of(run(cap.withTapes(List.of(on, off))));
        assertEquals(2, laid.laid().size());
        assertEquals(List.of(Finding.Kind.TAPE_ASTRAY), laid.findings().stream().map(Finding::kind).toList());
        assertEquals("tape T2 has an end at (0.0, 0.0, 400.0) mm, which lies 100.0 mm off the form; it was laid from the nearest place,"
                + " (0.0, 0.0, 300.0) mm. Give its ends on the form, in its own coordinates.", laid.findings().get(0).text());
    }

    private static DrawnTape tape(double x0, double x1, double top) {
        return new DrawnTape(x0, 0, top - R + Math.sqrt(R * R - x0 * x0), x1, 0, top - R + Math.sqrt(R * R - x1 * x1), false);
    }

    private static Result run(Recipe recipe) throws Refusal {
        return FlattenJob.run(recipe, new Given("cap", Path.of(""), List.of()), Progress.NONE);
    }
}
