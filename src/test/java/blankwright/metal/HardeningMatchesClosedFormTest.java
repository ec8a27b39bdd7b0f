package blankwright.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HardeningMatchesClosedFormTest {
    private static final Hardening SOFT = new Hardening(68_900, 180, 0.20, 34);

    @Test
    void swiftPassesThroughYield() {
        assertEquals(34, SOFT.stress(SOFT.yieldStrain()), 1e-9);
        assertEquals(34, SOFT.strength() * Math.pow(SOFT.e0(), SOFT.n()), 1e-10);
        assertEquals(17, SOFT.stress(SOFT.yieldStrain() / 2), 1e-12);
        assertEquals(0, SOFT.stress(0));
    }

    /** 1100-O at true strain 0.2: 180·0.2^0.2 = 130.5 MPa [C, checks section 8]; Swift's e0 and the elastic part shift it by under 0.1 %. */
    @Test
    void workHardenedStressAsInTheTable() {
        assertEquals(130.5, SOFT.stress(0.2), 0.15);
    }

    /** UTS = K (n/e)^n: 1100-O 106.8 MPa [C, checks section 8]; the handbook has 90 [V], which shows the scatter. */
    @Test
    void considereGivesTheTensileStrength() {
        assertEquals(106.8, SOFT.tensile(), 0.1);
        assertEquals(0.2, SOFT.uniform(), 3e-4);
    }

    /** The engineering stress of a strip, stress·exp(-strain), is largest at the uniform strain: found by looking. */
    @Test
    void theNeckBeginsWhereTheLoadIsLargest() {
        double best = 0, at = 0;
        for (double p = 0; p < 0.4; p += 1e-5) {
            double load = SOFT.stress(p + SOFT.yieldStrain()) * Math.exp(-p);
            if (load > best) {
                best = load;
                at = p;
            }
        }
        assertEquals(SOFT.uniform(), at, 2e-5);
        assertEquals(SOFT.tensile(), best, 1e-6);
    }

    /** Work against the sum of many small trapezia; tangent against a difference. */
    @Test
    void workAndTangentBelongToTheStress() {
        for (Hardening law : new Hardening[] {SOFT, new Hardening(205_000, 600, 0.21, 180), new Hardening(70_000, 145, 0, 145)}) {
            double end = 0.25, sum = 0;
            int parts = 200_000;
            for (int i = 0; i < parts; i++) sum += (law.stress(end * i / parts) + law.stress(end * (i + 1) / parts)) / 2 * end / parts;
            assertEquals(1, law.work(end) / sum, 2e-7);
            for (double e : new double[] {law.yieldStrain() / 3, 0.01, 0.1}) {
                assertEquals((law.stress(e + 1e-7) - law.stress(e - 1e-7)) / 2e-7, law.tangent(e), 1e-4 * law.young());
                assertEquals(law.stress(e) / e, law.secant(e), 1e-9 * law.young());
            }
        }
        assertEquals(0, SOFT.work(0));
    }

    @ParameterizedTest
    @CsvSource({"145, 152, 0.0392", "117, 124, 0.044", "241, 300, 0.1", "90, 193, 0.118", "276, 310, 0.06"})
    void aLawFoundFromATestStripGivesTheStripBack(double yield, double tensile, double uniform) {
        Hardening law = Hardening.throughTensile(70_000, yield, tensile, uniform);
        assertEquals(tensile, law.tensile(), 1e-9 * tensile);
        assertEquals(uniform, law.uniform(), 1e-12);
        assertEquals(yield, law.strength() * Math.pow(law.e0(), law.n()), 1e-9 * yield);
    }

    @Test
    void refusesWhatNoMetalDoes() {
        assertThrows(IllegalArgumentException.class, () -> new Hardening(0, 1, 0.1, 1));
        assertThrows(IllegalArgumentException.class, () -> SOFT.stress(-0.1));
        assertThrows(IllegalArgumentException.class, () -> SOFT.stress(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Hardening.throughTensile(70_000, 150, 140, 0.1));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Hardening.throughTensile(70_000, 100, 100.5, 0.3)).getMessage().contains("fit no"));
    }
}
