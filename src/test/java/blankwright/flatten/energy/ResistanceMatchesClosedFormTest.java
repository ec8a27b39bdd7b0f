package blankwright.flatten.energy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

class ResistanceMatchesClosedFormTest {
    /** Numbers of the size of annealed aluminium's, not of any alloy. */
    static final Resistance SOFT = new Resistance(70_000, 45, 180, 0.25, 0.7);

    @Test
    void tensionAloneGivesItsOwnStrain() {
        for (double r : new double[] {0.5, 1, 1.8}) {
            Resistance metal = new Resistance(200_000, 180, 530, 0.22, r);
            assertEquals(0.1, metal.effectiveStrain(0.1, -r / (1 + r) * 0.1), 1e-15);       // across it the sheet narrows by r to 1 + r
        }
    }

    /** eb = 2/√3 √(e1² + e1 e2 + e2²). */
    @Test
    void anisotropyOneIsVonMises() {
        Random random = new Random(5);
        Resistance metal = new Resistance(200_000, 180, 530, 0.22, 1);
        for (int i = 0; i < 1000; i++) {
            double a = random.nextGaussian(), b = random.nextGaussian();
            assertEquals(2 / Math.sqrt(3) * Math.sqrt(a * a + a * b + b * b), metal.effectiveStrain(a, b), 1e-14);
        }
    }

    @Test
    void workIsTheIntegralOfTheStress() {
        double yieldStrain = SOFT.yield() / SOFT.modulus();
        IterativeLegendreGaussIntegrator integrator = new IterativeLegendreGaussIntegrator(8, 1e-12, 1e-14);
        for (double e : new double[] {yieldStrain / 2, yieldStrain, 0.002, 0.01, 0.1, 0.5}) {
            double below = integrator.integrate(100_000, SOFT::stress, 0, Math.min(e, yieldStrain));
            double above = e > yieldStrain ? integrator.integrate(100_000, SOFT::stress, yieldStrain, e) : 0;
            assertEquals(below + above, SOFT.work(e), 1e-9 * SOFT.work(e), "to " + e);
        }
    }

    @Test
    void stressIsContinuousAtYieldAndReachesTheStrength() {
        double yieldStrain = SOFT.yield() / SOFT.modulus();
        assertEquals(SOFT.yield(), SOFT.stress(yieldStrain), 1e-12);
        assertEquals(SOFT.yield(), SOFT.stress(yieldStrain + 1e-12), 1e-4);
        assertEquals(SOFT.strength(), SOFT.stress(1 + yieldStrain - SOFT.start()), 1e-10);
    }

    @Test
    void withoutYieldItIsElastic() {
        Resistance elastic = Resistance.elastic(70_000, 1);
        for (double e : new double[] {0.001, 0.1, 0.9, 2}) assertEquals(70_000 * e * e / 2, elastic.work(e), 1e-9 * elastic.work(e));
    }

    @Test
    void refusesWhatNoSheetIs() {
        assertThrows(IllegalArgumentException.class, () -> new Resistance(0, 45, 180, 0.2, 1));
        assertThrows(IllegalArgumentException.class, () -> new Resistance(70_000, 200, 180, 0.2, 1));
        assertThrows(IllegalArgumentException.class, () -> new Resistance(70_000, 45, 180, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Resistance(70_000, 45, 180, 1.1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Resistance(70_000, 45, 180, 0.2, Double.NaN));
    }
}
