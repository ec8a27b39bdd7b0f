package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class StrainScaleTest {
    /** The published list runs from orange to purple (as in RColorBrewer and d3-scale-chromatic, both alike) [V]. */
    private static final String PUOR = "7F3B08 B35806 E08214 FDB863 FEE0B6 F7F7F7 D8DAEB B2ABD2 8073AC 542788 2D004B";

    @Test
    void coloursAreThePublishedElevenWithPurpleForShrink() {
        String[] hex = PUOR.split(" ");
        for (int c = 0; c < StrainScale.CLASSES; c++)
            assertEquals(Integer.parseInt(hex[10 - c], 16), StrainScale.colour(c), "class " + c);
    }

    @Test
    void isCentredOnZeroAndSymmetric() {
        StrainScale scale = StrainScale.of(0.001, new double[] {-0.031, 0.002, 0.017});
        assertEquals(0.04, scale.limit(), 1e-15);
        for (int i = 0; i < 10; i++) {
            assertEquals(-scale.boundary(i), scale.boundary(9 - i));
            if (i > 0) assertTrue(scale.boundary(i) > scale.boundary(i - 1));
        }
        for (double a : new double[] {0, 0.0005, 0.0011, 0.01, 0.02, 0.039, 0.5})
            assertEquals(10 - scale.classOf(a), scale.classOf(-a), "class of " + a);
        assertEquals(5, scale.classOf(0));
        assertEquals(10, scale.classOf(1));
        assertEquals(6, scale.classOf(0.001), "a boundary belongs to the outer class");
    }

    @Test
    void endIsRoundAndNotBelowTheAmounts() {
        for (double most = 1e-5; most < 3; most *= 1.13) {
            StrainScale scale = StrainScale.of(1e-4, new double[] {most, -most / 2});
            assertTrue(scale.limit() >= most * (1 - 1e-9) && scale.limit() <= Math.max(0.005, 2 * most), most + " gave " + scale.limit());
            assertFalse(scale.clampsHigh());
        }
        assertEquals(0.05, StrainScale.of(1e-4, new double[] {0.05}).limit(), "a round amount is its own end");
    }

    @Test
    void aFewWildTrianglesDoNotFlattenTheScaleButAreSaid() {
        double[] amounts = new double[1000];
        Arrays.fill(amounts, -0.018);
        amounts[17] = 0.7;
        amounts[400] = -0.9;
        StrainScale scale = StrainScale.of(0.001, amounts);
        assertEquals(0.02, scale.limit());
        assertTrue(scale.clampsHigh() && scale.clampsLow());
        assertEquals(0.7, scale.highest());
        assertEquals(-0.9, scale.lowest());
    }

    @Test
    void rollingNeedsNoColour() {
        StrainScale scale = StrainScale.of(0.001, new double[] {1e-9, -3e-10});
        assertTrue(scale.bendingOnly());
        assertEquals(0xF7F7F7, scale.colourOf(1e-9));
        assertTrue(StrainScale.of(0.001).bendingOnly());
        assertFalse(StrainScale.of(0.001, new double[] {0.002}).bendingOnly());
    }

    @Test
    void refusesNeutralGroundThatIsNone() {
        assertEquals("neutral ground within 0.0: must be above 0 and below 1",
                assertThrows(IllegalArgumentException.class, () -> StrainScale.of(0)).getMessage());
    }
}
