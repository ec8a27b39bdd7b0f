package blankwright.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;

class AnisotropyTest {
    /** r = 1: 2/sqrt(3)·sqrt(e1² + e1 e2 + e2²), and the same from all three principal strains, sqrt(2/3 sum e²). */
    @Test
    void anEvenSheetIsVonMises() {
        Random random = new Random(4);
        Anisotropy even = new Anisotropy(1);
        for (int i = 0; i < 1000; i++) {
            double e1 = random.nextGaussian(), e2 = random.nextGaussian(), e3 = -e1 - e2;
            assertEquals(Math.sqrt(2 / 3.0 * (e1 * e1 + e2 * e2 + e3 * e3)), even.effective(e1, e2), 1e-14);
        }
    }

    /** A pulled strip, e2 = -r/(1+r) e1, has the strain it is pulled: any r. */
    @Test
    void aPulledStripHasTheStrainItIsPulled() {
        for (double r : new double[] {0.3, 0.7, 1, 1.6, 2.5}) {
            assertEquals(0.1, new Anisotropy(r).effective(0.1, -r / (1 + r) * 0.1), 1e-15, "r " + r);
            assertEquals(0, new Anisotropy(r).effective(0, 0));
            assertEquals(new Anisotropy(r).effective(0.2, -0.05), new Anisotropy(r).effective(-0.05, 0.2), 1e-16);
        }
    }

    @Test
    void refusesWhatIsNoSheet() {
        assertThrows(IllegalArgumentException.class, () -> new Anisotropy(-0.1));
        assertThrows(IllegalArgumentException.class, () -> new Anisotropy(Double.NaN));
    }
}
