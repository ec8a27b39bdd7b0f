package blankwright.flatten.energy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LeastWorkMatchesFiniteDifferenceTest {
    private static final Resistance SOFT = ResistanceMatchesClosedFormTest.SOFT;
    private static final List<LeastWork> ENERGIES = List.of(LeastWork.of(SOFT), LeastWork.of(Resistance.elastic(200_000, 1.6)),
            costing(1, 100), costing(40, 1), costing(3, 7));

    private static LeastWork costing(double stretch, double shrink) {
        return LeastWork.of(SOFT, new double[] {stretch}, new double[] {shrink});
    }

    @Test
    void derivativesAgreeOnAThousandPairsOfStretches() {
        Random random = new Random(11);
        double[] d = new double[5], up = new double[5], down = new double[5];
        for (LeastWork energy : ENERGIES)
            for (int i = 0; i < 1000; i++) {
                double s1 = 0.4 + 2 * random.nextDouble(), s2 = i % 3 == 0 ? s1 + 0.01 * random.nextDouble() : 0.4 + 2 * random.nextDouble(), h = 1e-6;
                if (Math.abs(s1 - 1) < 1e-4 || Math.abs(s2 - 1) < 1e-4) continue;      // the cost changes there
                energy.derivatives(0, s1, s2, d);
                double scale = Math.abs(d[2]) + Math.abs(d[3]) + Math.abs(d[4]);
                assertEquals((energy.value(0, s1 + h, s2) - energy.value(0, s1 - h, s2)) / (2 * h), d[0], 1e-5 * scale + 1e-10);
                assertEquals((energy.value(0, s1, s2 + h) - energy.value(0, s1, s2 - h)) / (2 * h), d[1], 1e-5 * scale + 1e-10);
                energy.derivatives(0, s1 + h, s2, up);
                energy.derivatives(0, s1 - h, s2, down);
                assertEquals((up[0] - down[0]) / (2 * h), d[2], 1e-4 * scale);
                assertEquals((up[1] - down[1]) / (2 * h), d[4], 1e-4 * scale);
                energy.derivatives(0, s1, s2 + h, up);
                energy.derivatives(0, s1, s2 - h, down);
                assertEquals((up[1] - down[1]) / (2 * h), d[3], 1e-4 * scale);
                assertEquals((up[0] - down[0]) / (2 * h), d[4], 1e-4 * scale);
            }
    }

    /** Straight from the formula of the work: area of the blank over that of the form, times the work to the effective strain. */
    @Test
    void valueIsTheWorkOverTheModulus() {
        Random random = new Random(12);
        double none = LeastWork.of(SOFT).value(0, 1, 1);
        for (int i = 0; i < 1000; i++) {
            double s1 = 0.7 + random.nextDouble(), s2 = 0.7 + random.nextDouble();
            double work = s1 * s2 * SOFT.work(SOFT.effectiveStrain(Math.log(1 / s1), Math.log(1 / s2))) / SOFT.modulus();
            assertEquals(work, LeastWork.of(SOFT).value(0, s1, s2) - none, 1e-14);
            assertEquals(6 * work, costing(6, 6).value(0, s1, s2) - none, 1e-13);
            double one = s1 * SOFT.work(SOFT.effectiveStrain(Math.log(1 / s1), 0)) / SOFT.modulus();
            assertEquals((s1 < 1 ? 3 : 7) * one, costing(3, 7).value(0, s1, 1) - none, 1e-13);
        }
    }

    @Test
    void noStrainHasNoSlopeAndTheSheetsOwnStiffness() {
        double[] d = new double[5];
        for (LeastWork energy : ENERGIES) {
            energy.derivatives(0, 1, 1, d);
            assertEquals(0, d[0], 0);
            assertEquals(0, d[1], 0);
            assertTrue(d[2] > 0 && d[3] > 0 && d[2] * d[3] > d[4] * d[4], "not a minimum");
        }
        LeastWork.of(SOFT).derivatives(0, 1, 1, d);
        assertArrayEquals(new double[] {0, 0, SOFT.square(), SOFT.square(), SOFT.square() * SOFT.coupling()}, d, 1e-15);
    }

    /** What is meant for large changes is never softer than the true one, and the same in the limit. */
    @Test
    void largeChangesMeetAStifferSheet() {
        Random random = new Random(14);
        double[] exact = new double[5], wide = new double[5], narrow = new double[5];
        for (LeastWork energy : ENERGIES)
            for (int i = 0; i < 1000; i++) {
                double s1 = 0.8 + 0.4 * random.nextDouble(), s2 = 0.8 + 0.4 * random.nextDouble();
                energy.derivatives(0, s1, s2, exact);
                energy.overChanges(0.05).derivatives(0, s1, s2, wide);
                energy.overChanges(1e-9).derivatives(0, s1, s2, narrow);
                assertEquals(exact[0], wide[0], 0);
                double more1 = wide[2] - exact[2], more2 = wide[3] - exact[3], mixed = wide[4] - exact[4];
                assertTrue(more1 >= -1e-12 && more2 >= -1e-12 && more1 * more2 - mixed * mixed >= -1e-9 * (1 + more1 * more2));
                assertArrayEquals(exact, narrow, 1e-9 * (1 + Math.abs(exact[2]) + Math.abs(exact[3])));
            }
    }

    @Test
    void milderCostsAreRootsOfTheFullOnes() {
        LeastWork full = costing(3, 10_000);
        assertEquals(10_000 / 3.0, full.contrast(), 1e-9);
        assertEquals(costing(Math.sqrt(3), 100).value(0, 1.1, 0.9), full.milder(0.5).value(0, 1.1, 0.9), 1e-15);
        assertEquals(LeastWork.of(SOFT).value(0, 1.1, 0.9), full.milder(0).value(0, 1.1, 0.9), 1e-15);
    }

    /** Orders of the two stretches do not matter, also where they nearly agree. */
    @Test
    void bothStretchesAreTreatedAlike() {
        double[] d = new double[5], turned = new double[5];
        for (LeastWork energy : ENERGIES)
            for (double gap : new double[] {0, 1e-14, 1e-9, 0.1}) {
                energy.derivatives(0, 0.95, 0.95 + gap, d);
                energy.derivatives(0, 0.95 + gap, 0.95, turned);
                assertArrayEquals(d, new double[] {turned[1], turned[0], turned[3], turned[2], turned[4]}, 1e-13);
            }
    }

    /** Work alone would fall to nothing with the blank: the wall must leave no way down. */
    @Test
    void vanishingStretchCostsMoreAndMore() {
        for (LeastWork energy : ENERGIES)
            for (double other : new double[] {0, 0.5, 0.8, 1, 1.5}) {              // 0: both stretches alike
                double last = -1;
                for (double s = other == 0 ? 1 : Math.min(0.6, other - 0.1); s > 1e-4; s *= 0.98) {
                    double value = energy.value(0, other == 0 ? s : other, s);
                    assertTrue(value > last, "falls at " + other + ", " + s);
                    last = value;
                }
            }
        assertEquals(Double.POSITIVE_INFINITY, LeastWork.of(SOFT).value(0, 1, 0));
        assertEquals(Double.POSITIVE_INFINITY, LeastWork.of(SOFT).value(0, 1, -1));
        assertEquals(Double.POSITIVE_INFINITY, LeastWork.of(SOFT).value(0, Double.NaN, Double.NaN));
    }

    @Test
    void coarserTrianglesPayTheMeanOfTheirPartsByArea() {
        LeastWork fine = LeastWork.of(SOFT, new double[] {1, 4, 2, 5}, new double[] {1, 1, 3, 9});
        LeastWork coarse = fine.coarser(3, new int[] {0, 0, 1, 1}, new double[] {1, 2, 1, 1});
        double none = fine.value(0, 1, 1), stretched = LeastWork.of(SOFT).value(0, 1, 0.9) - none, shrunk = LeastWork.of(SOFT).value(0, 1.1, 1) - none;
        assertEquals(3 * stretched, coarse.value(0, 1, 0.9) - none, 1e-15);
        assertEquals(6 * shrunk, coarse.value(1, 1.1, 1) - none, 1e-15);
        assertTrue(Double.isFinite(coarse.value(2, 1.1, 1)), "a coarse triangle without parts");
    }
}
