package blankwright.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.project.AlloyReader;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checks section 7. */
class FormingLimitMatchesTableTest {
    private static final Known ANY = new Known(1, Trust.FROM_MEMORY, "made up for a test");

    /** A metal of this n whose temper has taken next to nothing. */
    private static Alloy metal(Family family, double n) {
        Known e = new Known(200_000, Trust.FROM_MEMORY, "test"), k = new Known(1000, Trust.FROM_MEMORY, "test");
        return new Alloy("test", "", "", family, e, new Known(0.3, Trust.FROM_MEMORY, "test"), k, ANY, new Known(500, Trust.FROM_MEMORY, "test"),
                new Known(0.3, Trust.FROM_MEMORY, "test"), k, new Known(n, Trust.FROM_MEMORY, "test"), ANY, HandbookForm.SOFT, Optional.empty(),
                Optional.empty(), List.of());
    }

    /** Swift's diffuse neck for n = .2 [M; C: reduces to n at b = -.5, 0, 1]. */
    @ParameterizedTest
    @CsvSource({"-.5, .20000", "-.4, .18627", "-.3, .18203", "-.2, .18421", "-.1, .19078", "0, .20000", ".2, .21986", ".4, .23214", ".6, .23113",
        ".8, .21864", "1, .20000"})
    void swiftsDiffuseNeck(double b, double e1) {
        assertEquals(e1, FormingLimit.swift(b, 0.2), 5.1e-6);
        if (b >= 0) assertEquals(e1, FormingLimit.of(metal(Family.ALUMINIUM, 0.2), 1).limit(b), 5.1e-6);
    }

    /** Hill's local neck for n = .2: e1 = n/(1+b), sum n, uniaxial 2n [V: Marciniak, Duncan and Hu eq. (5.26)]. */
    @ParameterizedTest
    @CsvSource({"-.5, .40000", "-.4, .33333", "-.3, .28571", "-.2, .25000", "-.1, .22222", "0, .20000"})
    void hillsLocalNeck(double b, double e1) {
        FormingLimit limit = FormingLimit.of(metal(Family.ALUMINIUM, 0.2), 1);
        assertEquals(e1, limit.limit(b), 5.1e-6);
        assertEquals(0.2, limit.limit(b) * (1 + b), 1e-9);
        assertEquals(1, limit.margin(limit.limit(b), b * limit.limit(b)), 1e-12);
        assertTrue(limit.isEstimate());
    }

    /** Keeler-Brazier, engineering percent (true) [formula V2, values C]. */
    @ParameterizedTest
    @CsvSource({"0.8, 29.66, .2597, 32.96, .2848, 34.60, .2972", "1.0, 32.08, .2783, 35.65, .3049, 37.43, .3179", "1.2, 34.51, .2964, 38.34, .3245, 40.26, .3383",
        "1.5, 38.14, .3231, 42.38, .3533, 44.50, .3681", "2.0, 44.19, .3660, 49.10, .3995, 51.56, .4158"})
    void keelerBrazier(double t, double p18, double e18, double p20, double e20, double p21, double e21) {
        double[][] rows = {{.18, p18, e18}, {.20, p20, e20}, {.21, p21, e21}};
        for (double[] row : rows) {
            FormingLimit limit = FormingLimit.of(metal(Family.STEEL, row[0]), t);
            assertEquals(row[1], 100 * Math.expm1(limit.limit(0)), 5.1e-3);
            assertEquals(row[2], limit.limit(0), 5.1e-5);
            assertFalse(limit.isEstimate());
        }
        assertEquals(FormingLimit.of(metal(Family.STEEL, .21), t).limit(0), FormingLimit.of(metal(Family.STEEL, .3), t).limit(0), "n counts up to .21");
        assertEquals(FormingLimit.of(metal(Family.STEEL, .21), 3).limit(0), FormingLimit.of(metal(Family.STEEL, .21), 5).limit(0), "t counts up to 3 mm");
    }

    /** The inch form (23.3 + 360 t)·n/.21 [M]: within a third of a per cent. */
    @Test
    void inchForm() {
        assertEquals((23.3 + 360 * .0359) / 100, Math.expm1(FormingLimit.of(metal(Family.STEEL, .21), .0359 * 25.4).limit(0)), 1e-3);
    }

    /** Left: constant thinning, slope -1 in true strain; right: +0.6 up to 20 % engineering [V: public application guidelines]. */
    @Test
    void branchesOfSteel() {
        FormingLimit limit = FormingLimit.of(metal(Family.STEEL, .21), 1);
        double level = limit.limit(0);
        for (double b = -0.9; b <= 0; b += 0.1) assertEquals(level, limit.limit(b) * (1 + b), 1e-12);
        for (double minor : new double[] {0.02, 0.1, 0.19}) {
            double major = .3743 + 0.6 * minor, e1 = Math.log1p(major), e2 = Math.log1p(minor);
            assertEquals(1, limit.margin(e1, e2), 1e-4);
        }
        assertEquals(1, limit.margin(Math.log1p(.3743 + .12), Math.log1p(.35)), 1e-4, "level beyond 20 %");
        assertEquals(limit.limit(1e-9), limit.limit(0), 1e-8);
    }

    @Test
    void whatDoesNotThinDoesNotNeck() {
        FormingLimit limit = FormingLimit.of(AlloyReader.shipped().named("3003-O"), 1.2);
        assertEquals(0, limit.margin(0.1, -0.1));
        assertEquals(0, limit.margin(0.05, -0.3));
        assertEquals(0, limit.margin(-0.01, -0.02));
        assertEquals(0, limit.margin(0, 0));
        assertTrue(limit.margin(0.1, -0.099) < 0.01);
        assertThrows(IllegalArgumentException.class, () -> limit.margin(0.1, 0.2));
        assertThrows(IllegalArgumentException.class, () -> limit.margin(Double.NaN, 0));
    }

    /** What a temper has taken is gone: the effective strain at the limit is less by e0; a temper past it has none left. */
    @Test
    void aHardTemperHasLessLeft() {
        Alloy soft = AlloyReader.shipped().named("1100-O");
        Alloy half = new Alloy("1100", "worked", "", soft.family(), soft.young(), soft.poisson(), soft.density(),
                new Known(180 * Math.pow(0.05, 0.2), Trust.FROM_MEMORY, "soft sheet worked to 5 %"), new Known(140, Trust.FROM_MEMORY, "test"),
                soft.elongation(), soft.strength(), soft.hardening(), soft.anisotropy(), soft.allowance(), soft.bends(), soft.annealing(), List.of());
        assertEquals(0.05, half.e0().value(), 1e-12);
        for (double b : new double[] {-0.5, 0, 0.5, 1}) {
            double c = 2 / Math.sqrt(3) * Math.sqrt(1 + b + b * b);
            double lost = FormingLimit.of(soft, 1).limit(b) - FormingLimit.of(half, 1).limit(b);
            assertEquals(0.05 - soft.e0().value(), lost * c, 1e-12);
        }
        Alloy spent = new Alloy("1100", "spent", "", soft.family(), soft.young(), soft.poisson(), soft.density(), new Known(150, Trust.FROM_MEMORY, "t"),
                new Known(155, Trust.FROM_MEMORY, "t"), soft.elongation(), soft.strength(), soft.hardening(), soft.anisotropy(), soft.allowance(),
                soft.bends(), soft.annealing(), List.of());
        assertEquals(Double.POSITIVE_INFINITY, FormingLimit.of(spent, 1).margin(0.01, 0));
        assertEquals(0, spent.uniform().value());
    }

    /** The level is trusted no further than the n it stands on. */
    @Test
    void theLevelSaysHowFarItIsToBeTrusted() {
        assertEquals(Trust.FROM_MEMORY, FormingLimit.of(AlloyReader.shipped().named("3003-O"), 1).level().trust());
        assertEquals(Trust.TYPICAL, FormingLimit.of(AlloyReader.shipped().named("1100-O"), 1).level().trust());
        assertTrue(FormingLimit.of(AlloyReader.shipped().named("1100-O"), 1).basis().startsWith("estimate"));
    }
}
