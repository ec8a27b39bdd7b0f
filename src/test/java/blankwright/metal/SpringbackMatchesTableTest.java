package blankwright.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.project.AlloyReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checks section 9. */
class SpringbackMatchesTableTest {
    /** r2/s of the trade table book, from memory. */
    private static final double[] RATIOS = {1, 1.6, 2.5, 4, 6.3, 10, 16, 25, 40, 63, 100};

    /**
     * Kalpakjian and Schmid, worked example [numbers M]: T = .0359 in, Ri = .5 in, Y = 40 ksi, E = 29 Msi: X = .0192, Ri/Rf = .942, Rf = .531 in;
     * more digits and the angle [C].
     */
    @Test
    void workedExampleOfTheTextbook() {
        Springback sheet = new Springback(29e6, 40e3, .0359);
        assertEquals(.0192, sheet.x(.5), 5e-5);
        assertEquals(.942, sheet.ratio(.5), 5e-4);
        assertEquals(.531, sheet.after(.5), 5e-4);
        assertEquals(.01921, sheet.x(.5), 5e-6);
        assertEquals(.94240, sheet.ratio(.5), 5e-6);
        assertEquals(.5306, sheet.after(.5), 5e-5);
        assertEquals(.9443, sheet.angleRatio(.5), 5e-5);
        assertEquals(95.31, 90 / sheet.angleRatio(.5), 5e-3);
    }

    /** [C]: metals, Y/E, Ri and T in mm. */
    @ParameterizedTest
    @CsvSource({
        "42, 68900, 25, 1.2, .0127, .9619, 25.99", "42, 68900, 100, 1.0, .0610, .8180, 122.25", "42, 68900, 300, 1.0, .1829, .4758, 630.46",
        "145, 68900, 25, 1.2, .0438, .8688, 28.78", "145, 68900, 100, 1.0, .2104, .4059, 246.35", "193, 70300, 25, 1.2, .0572, .8292, 30.15",
        "180, 205000, 25, 1.2, .0183, .9451, 26.45"})
    void computedTable(double yield, double young, double radius, double thickness, double x, double ratio, double after) {
        Springback sheet = new Springback(young, yield, thickness);
        assertEquals(x, sheet.x(radius), 5.1e-5);
        assertEquals(ratio, sheet.ratio(radius), 5.1e-5);
        assertEquals(after, sheet.after(radius), 6e-3);
        assertEquals(4 * Math.pow(sheet.x(radius), 3) - 3 * sheet.x(radius) + 1, sheet.ratio(radius), 1e-15);
    }

    /** Any X of 0.5 and above leaves no set [trap 1 of the checks: the cubic rises again there; 3003-H14 at R 300, t 1 has X = 0.63]. */
    @Test
    void nothingStaysBeyondTheClamp() {
        Springback sheet = new Springback(68_900, 145, 1);
        assertEquals(0.63, sheet.x(300), 5e-3);
        assertEquals(0, sheet.ratio(300));
        assertEquals(Double.POSITIVE_INFINITY, sheet.after(300));
        assertEquals(0, sheet.angleRatio(300));
        assertEquals(0, sheet.ratio(sheet.largestWithSet()));
        assertTrue(sheet.ratio(sheet.largestWithSet() * 0.999) > 0);
        assertEquals(0, new Springback(1, 1, 1).ratio(1.2), "the cubic would give 4.34");
    }

    @ParameterizedTest
    @CsvSource({"3003-O, 1.2, 25", "3003-H14, 1, 300", "3003-H14, 1, 2000", "drawing-steel, 0.9, 80", "304, 1, 500", "copper-soft, 0.8, 3"})
    void aRollSetForARadiusGivesThatRadius(String alloy, double thickness, double wanted) {
        Springback sheet = Springback.of(AlloyReader.shipped().named(alloy), thickness);
        double set = sheet.toSet(wanted);
        assertEquals(wanted, sheet.after(set), 1e-9 * wanted);
        assertTrue(set < wanted && set < sheet.largestWithSet());
    }

    /**
     * Springback factor kR, r1 = kR (r2 + s/2) - s/2, of a German trade table book [V: values; column heads r2/s M]: drawing steel DC04 and soft Al 99.0 within .02
     * of ours as far as r2/s = 40, and the steel at 63.
     */
    @ParameterizedTest
    @CsvSource(delimiter = ':', value = {"drawing-steel: .99 .99 .99 .98 .97 .97 .96 .94 .91 .87", "1100-O: .99 .99 .99 .99 .98 .98 .97 .97 .96"})
    void agreesWithTheTradeTableForDrawingSteelAndSoftAluminium(String alloy, String factors) {
        String[] printed = factors.strip().split(" ");
        for (int i = 0; i < printed.length; i++) assertEquals(Double.parseDouble(printed[i]), factor(alloy, RATIOS[i]), 0.02, "r2/s " + RATIOS[i]);
    }

    /**
     * The same table for X12CrNi18-8, Cu R20 and the harder steel DC01 [V; heads M]: their sheet springs back more than ours of the nearest kind as bought, stainless and
     * copper by a third at r2/s = 40 and above: the manual says so.
     */
    @ParameterizedTest
    @CsvSource(delimiter = ':', value = {"304: .99 .98 .97 .95 .93 .89 .84 .76 .63", "copper-soft: .98 .97 .97 .96 .95 .93 .90 .85 .79 .72 .60",
        "drawing-steel: .99 .99 .99 .97 .96 .96 .93 .90 .85 .77 .66"})
    void otherSheetOfTheTradeTableSpringsBackMore(String alloy, String factors) {
        String[] printed = factors.strip().split(" ");
        for (int i = 0; i < printed.length; i++) {
            double less = factor(alloy, RATIOS[i]) - Double.parseDouble(printed[i]);
            assertTrue(less > -0.005 && less < 0.26, alloy + " r2/s " + RATIOS[i] + ": " + less);
        }
    }

    private static double factor(String alloy, double wanted) {
        return (Springback.of(AlloyReader.shipped().named(alloy), 1).toSet(wanted) + .5) / (wanted + .5);
    }

    @Test
    void refusesWhatIsNoSheet() {
        assertThrows(IllegalArgumentException.class, () -> new Springback(68_900, 145, 0));
        assertThrows(IllegalArgumentException.class, () -> new Springback(68_900, 145, 1).after(-1));
        assertThrows(IllegalArgumentException.class, () -> new Springback(68_900, 145, 1).toSet(Double.POSITIVE_INFINITY));
    }
}
