package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Refusal;
import blankwright.num.Progress;
import blankwright.project.Clamps;
import blankwright.project.Face;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.shape.SphericalCap;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class BucklesTest {
    private static Laid dish(Optional<Clamps> clamps) throws Refusal {
        Recipe recipe = Recipe.of("dish", new SphericalCap(300, Math.toRadians(25))).withChord(2).withMetal(Optional.of(Metal.shipped("1100-O")))
                .withSheet(OptionalDouble.of(0.8), Face.MIDDLE).withClamps(clamps);
        return Laid.of(FlattenJob.run(recipe, Given.file(Path.of("dish.yaml")), Progress.NONE));
    }

    /** The highest place is as high as was asked, the ways differ, and the first takes the least. */
    @Test
    void eachWayIsDrawnAsHighAsItSays() throws Refusal {
        Laid laid = dish(Optional.of(Clamps.CALM));
        Buckles buckles = Buckles.of(laid);
        assertEquals(2, buckles.ways());
        double[] still = buckles.moved(0, 0, 0);
        assertArrayEquals(laid.skins().get(0).map().form().positions(), still);
        double[][] way = new double[2][];
        for (int i = 0; i < 2; i++) {
            double[] out = buckles.moved(0, i, 7), in = buckles.moved(0, i, -7);
            way[i] = new double[out.length];
            double highest = 0;
            for (int k = 0; k < out.length; k++) {
                way[i][k] = out[k] - still[k];
                assertEquals(-way[i][k], in[k] - still[k], 1e-9);
            }
            for (int k = 0; k < out.length; k += 3) highest = Math.max(highest, Math.hypot(Math.hypot(way[i][k], way[i][k + 1]), way[i][k + 2]));
            assertEquals(7, highest, 1e-9);
        }
        double both = 0, one = 0, other = 0;
        for (int k = 0; k < still.length; k++) {
            both += way[0][k] * way[1][k];
            one += way[0][k] * way[0][k];
            other += way[1][k] * way[1][k];
        }
        assertTrue(Math.abs(both) < 0.9 * Math.sqrt(one * other), "two ways, not one twice");
        var blank = laid.skins().get(0).piece().buckled().orElseThrow().blank();
        assertTrue(blank.loadFactor(0) <= blank.loadFactor(1));
        assertTrue(buckles.words(1, 24.4, LengthStyle.MM).matches("Second way: at [0-9.]+ (% of|times) the strain it misses \\(estimate\\)\\.\nDrawn 24 mm high.*"),
                buckles.words(1, 24.4, LengthStyle.MM));
        assertTrue(buckles.words(0, 25.4, LengthStyle.FRACTION).contains("Drawn 1 in high"), buckles.words(0, 25.4, LengthStyle.FRACTION));
        assertEquals("Third way: none", buckles.words(2, 1, LengthStyle.MM).substring(0, 15));
        assertArrayEquals(still, buckles.moved(0, 2, 5), "unknown ways move nothing");
    }

    @Test
    void whatWasNotTriedHasNoWay() throws Refusal {
        Buckles none = Buckles.of(dish(Optional.empty()));
        assertEquals(0, none.ways());
        assertArrayEquals(none.moved(0, 0, 0), none.moved(0, 0, 5));
    }
}
