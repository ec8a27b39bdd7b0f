package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class TintsTest {
    private final StrainScale scale = StrainScale.of(0.001, new double[] {-0.043, 0.02});

    @Test
    void agreesWithThePaperAtEveryNumberAndBoundary() {
        Tints tints = Tints.of(scale);
        for (double a = -0.06; a <= 0.06; a += 1e-4) assertEquals(scale.colourOf(a), tints.colourOf(a), "" + a);
        for (double b : scale.boundaries()) {
            assertEquals(scale.colourOf(b), tints.colourOf(b), "on the boundary " + b);
            assertEquals(scale.colourOf(Math.nextUp(b)), tints.colourOf(Math.nextUp(b)));
            assertEquals(scale.colourOf(Math.nextDown(b)), tints.colourOf(Math.nextDown(b)));
        }
    }

    @Test
    void shareAndBack() {
        Tints tints = Tints.oneWay(0.8, 1.1);
        assertEquals(0.9, tints.at(tints.share(0.9)), 1e-12);
        assertEquals(0, tints.share(0.2));
        assertEquals(1, tints.share(2));
        assertEquals(0, tints.classOf(0.1));
        assertEquals(tints.classes() - 1, tints.classOf(5));
    }

    /** Only lightness is left: in grey the thinnest is still the darkest, and each class lighter than the one before. */
    @Test
    void aSequentialScaleSurvivesGreyPrint() {
        Tints grey = Tints.oneWay(0.8, 1.1).grey();
        for (int c = 1; c < grey.classes(); c++) assertTrue((grey.colour(c) & 255) > (grey.colour(c - 1) & 255), "class " + c);
        for (int c = 0; c < grey.classes(); c++) assertEquals(grey.colour(c), (grey.colour(c) & 255) * 0x10101);
    }

    @Test
    void bothWaysIsCentredOnZero() {
        Tints tints = Tints.bothWays(12);
        assertEquals(tints.classes() / 2, tints.classOf(0));
        for (int i = 0; i < tints.classes() - 1; i++) assertEquals(-tints.boundary(tints.classes() - 2 - i), tints.boundary(i), 1e-12);
    }
}
