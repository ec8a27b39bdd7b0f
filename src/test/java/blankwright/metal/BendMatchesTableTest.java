package blankwright.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.project.AlloyReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checks section 4. */
class BendMatchesTableTest {
    private static Bend bend(double thickness, double radius, double degrees) {
        return new Bend(thickness, radius, Math.toRadians(degrees));
    }

    /** Machinery's Handbook 31st ed. p. 1421 [V]: soft steel T = .125; R = .375 through 180: 1.338; R = .625 through 60: .707; + 3.5 flat = 5.545 in. */
    @Test
    void workedExampleOfTheHandbook() {
        double first = HandbookForm.HALF_HARD.allowance(bend(.125, .375, 180)), second = HandbookForm.HALF_HARD.allowance(bend(.125, .625, 60));
        assertEquals(1.338, first, 5.1e-4);
        assertEquals(.707, second, 5e-4);
        assertEquals(5.545, 3.5 + first + second, 5e-4);
        // exact pi instead of 1.57 [C]
        double k = HandbookForm.HALF_HARD.k();
        assertEquals(5.5460, 3.5 + bend(.125, .375, 180).allowance(k) + bend(.125, .625, 60).allowance(k), 1e-4);
    }

    /** The same page [V]: L = 0.55T + 1.57R, 0.64T + 1.57R, 0.71T + 1.57R at 90 degrees; equivalent K 0.350, 0.407, 0.452 [C]. */
    @ParameterizedTest
    @CsvSource({"SOFT, .55, .350", "HALF_HARD, .64, .407", "HARD, .71, .452"})
    void threeForms(HandbookForm form, double ofThickness, double k) {
        assertEquals(ofThickness * 2 + 1.57 * 3, form.allowance(bend(2, 3, 90)), 1e-12);
        assertEquals(k, form.k(), 5e-4);
        assertEquals(form.allowance(bend(2, 3, 90)) / 2, form.allowance(bend(2, 3, 45)), 1e-12);
    }

    /** DIN 6935 [V: trade table book page; standard not read]: opening 60, a 16, b 21, r 6, s 5: k .689, chart 0.7 gives v 5.77, L 31.23; exact [C]. */
    @Test
    void workedExampleOfDin6935() {
        Bend bend = bend(5, 6, 120);
        assertEquals(.689, Din6935.k(1.2), 1e-3);
        assertEquals(.68959, Din6935.k(bend), 5e-6);
        assertEquals(5.77, 2 * 11 - bend.allowance(0.35), 6e-3);
        assertEquals(31.23, 16 + 21 - (2 * 11 - bend.allowance(0.35)), 6e-3);
        assertEquals(5.8229, Din6935.shortening(bend), 5e-5);
        assertEquals(31.1771, 16 + 21 - Din6935.shortening(bend), 5e-5);
    }

    /**
     * K-factor form [V: a public page on K-factors for BA = A (R + K T), a public sheet metal workbook for BD = 2 OSSB - BA, OSSB = (R + T) tan(A/2)]: the flat length is
     * that of both flats beside the bend and the metal in it.
     */
    @ParameterizedTest
    @CsvSource({"1.6, 3, 90, .41", "1, 2, 30, .33", "2, 0.5, 120, .44", "0.8, 12, 60, .5"})
    void kFactorForm(double t, double r, double degrees, double k) {
        Bend bend = bend(t, r, degrees);
        double angle = Math.toRadians(degrees), allowance = angle * (r + k * t), setback = (r + t) * Math.tan(angle / 2);
        assertEquals(allowance, bend.allowance(k), 1e-12);
        assertEquals(setback, bend.setback(), 1e-12);
        assertEquals(2 * setback - allowance, bend.deduction(bend.allowance(k)), 1e-12);
        assertEquals((50 - setback) + allowance + (30 - setback), 50 + 30 - bend.deduction(bend.allowance(k)), 1e-12, "legs of 50 and 30");
    }

    /** A table said to be of Machinery's 26th ed. [V2: a public page on K-factors]: aluminium .38 to .41, cold-rolled steel .42 to .47, stainless .44 to .48. */
    @Test
    void formsLieInTheRangesOfK() {
        assertTrue(HandbookForm.HALF_HARD.k() >= .38 && HandbookForm.HALF_HARD.k() <= .41, "aluminium");
        assertTrue(HandbookForm.HARD.k() >= .42 && HandbookForm.HARD.k() <= .47, "cold-rolled steel");
        assertTrue(HandbookForm.HARD.k() >= .44 && HandbookForm.HARD.k() <= .48, "stainless");
        assertEquals(HandbookForm.HALF_HARD, AlloyReader.shipped().named("3003-O").allowance());
    }

    /** k [C]. */
    @ParameterizedTest
    @CsvSource({".25, .3490", ".5, .4995", "1, .6500", "1.5, .7380", "2, .8005", "3, .8886", "4, .9510", "5, .9995", "5.01, 1", "40, 1"})
    void dinFactor(double ratio, double k) {
        assertEquals(k, Din6935.k(ratio), 5.1e-5);
    }

    /** v at 90 degrees [C]. */
    @ParameterizedTest
    @CsvSource({"1, 1, 1.9187", "1.5, 1, 2.0641", "2, 1.5, 3.0190", "3, 2, 4.1283"})
    void dinShorteningAtASquareCorner(double r, double s, double v) {
        assertEquals(v, Din6935.shortening(bend(s, r, 90)), 5.1e-5);
        // at 90 degrees v is the deduction from the corner of the outer faces
        assertEquals(bend(s, r, 90).deduction(Din6935.allowance(bend(s, r, 90))), Din6935.shortening(bend(s, r, 90)), 1e-12);
    }

    @Test
    void dinBetweenTheBands() {
        assertEquals(0, Din6935.shortening(bend(1, 2, 10)));
        Bend open = bend(1, 2, 60);
        assertEquals(open.deduction(Din6935.allowance(open)), Din6935.shortening(open), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> Din6935.shortening(bend(1, 0, 90)));
    }

    /** AC 43.13-1B, setback = K (BR + MT), K = tan(A/2) [V]: 45 degrees .41421, .25 and .064: .130 in; 135 degrees 2.4142: .758 in. */
    @Test
    void setbackOfTheCircular() {
        assertEquals(.130, bend(.064, .25, 45).setback(), 5e-4);
        assertEquals(.758, bend(.064, .25, 135).setback(), 5e-4);
        assertEquals(.41421, Math.tan(Math.toRadians(22.5)), 5e-6);
        assertEquals(Double.POSITIVE_INFINITY, bend(1, 2, 180).setback());
    }

    /** K-chart of the circular, p. 4-15 [V]. */
    @ParameterizedTest
    @CsvSource({"30, .2679", "60, .5773", "90, 1.000", "120, 1.732"})
    void setbackChart(double degrees, double k) {
        assertEquals(k, bend(.5, .5, degrees).setback(), 1e-4);
    }

    /** The rule of aircraft handbooks, (0.01743 R + 0.0078 T) times degrees [from memory], is K = 0.447. */
    @Test
    void plainKMatchesTheRuleOfAircraftHandbooks() {
        assertEquals((0.01743 * 3 + 0.0078 * 1.6) * 70, bend(1.6, 3, 70).allowance(0.447), 0.006);
        assertThrows(IllegalArgumentException.class, () -> bend(1, 1, 90).allowance(0.6));
    }

    /** AC 43.13-1B table 4-6 [V]: upper ends by thickness; the shipped table is never above them but for 5052-H34 at .032, where it is the safer one. */
    @ParameterizedTest
    @CsvSource(delimiter = ':', value = {
        "5052-O: 0 0 1 1 1 1", "5052-H32: 0 0 1 1.5 1.5 1.5", "5052-H34: 0 0 1.5 2.5 2.5 3", "6061-O: 0 1 1 1 1 1", "6061-T4: 1 1 1 2 3 4",
        "6061-T6: 1 1 2 3 4 4"})
    void bendRadiiAgreeWithTheCircular(String name, String upper) {
        BendRadii radii = AlloyReader.shipped().named(name).bends().orElseThrow();
        double[] inches = {.016, .032, .064, .128, .182, .250};
        String[] ends = upper.strip().split(" ");
        for (int i = 0; i < inches.length; i++) {
            double multiple = radii.least(inches[i] * 25.4).orElseThrow().value() / (inches[i] * 25.4);
            if (name.equals("5052-H34") && i == 1) assertEquals(1, multiple, 1e-12);
            else assertTrue(multiple <= Double.parseDouble(ends[i]) + 1e-12, name + " " + inches[i] + ": " + multiple);
        }
    }

    /** Aluminium design manual table 3-1, by 1/64 1/32 1/16 1/8 3/16 1/4 3/8 1/2 in [V]. */
    @ParameterizedTest
    @CsvSource(delimiter = ':', value = {
        "1100-O: 0 0 0 0 .5 1 1 1.5", "1100-H14: 0 0 0 1 1 1.5 2 2.5", "3003-O: 0 0 0 0 .5 1 1 1.5", "3003-H12: 0 0 0 .5 1 1 1.5 2",
        "3003-H14: 0 0 0 1 1 1.5 2 2.5", "3003-H16: .5 1 1 1.5 2.5 3 3.5 4", "5052-O: 0 0 0 .5 1 1 1.5 1.5", "5052-H32: 0 0 1 1.5 1.5 1.5 1.5 2",
        "5052-H34: 0 1 1.5 2 2 2.5 2.5 3", "6061-O: 0 0 0 1 1 1 1.5 2", "6061-T4: 0 0 1 1.5 2.5 3 3.5 4", "6061-T6: 1 1 1.5 2.5 3 3.5 4.5 5"})
    void bendRadiiAreThoseOfTheManual(String name, String multiples) {
        BendRadii radii = AlloyReader.shipped().named(name).bends().orElseThrow();
        double[] inches = {1 / 64.0, 1 / 32.0, 1 / 16.0, 1 / 8.0, 3 / 16.0, 1 / 4.0, 3 / 8.0, 1 / 2.0};
        String[] printed = multiples.strip().split(" ");
        for (int i = 0; i < inches.length; i++)
            assertEquals(Double.parseDouble(printed[i]), radii.least(inches[i] * 25.4).orElseThrow().value() / (inches[i] * 25.4), 1e-12);
        assertTrue(radii.least(14).isEmpty());
        assertEquals(Trust.PUBLISHED, radii.trust());
    }

    @Test
    void refusesWhatIsNoBend() {
        for (double[] bad : new double[][] {{0, 1, 90}, {1, -1, 90}, {1, 1, 0}, {1, 1, 181}, {1, 1, Double.NaN}})
            assertThrows(IllegalArgumentException.class, () -> bend(bad[0], bad[1], bad[2]));
    }
}
