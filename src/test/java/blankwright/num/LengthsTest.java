package blankwright.num;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LengthsTest {
    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {"1.6mm, 1.6", "1.6 mm, 1.6", "0.063in, 1.6002", "1/16in, 1.5875", "1 1/2 in, 38.1", "1-1/2\", 38.1", "2ft, 609.6",
        "3', 914.4", "12cm, 120", ".5m, 500", "-3mm, -3", "25, 25", "+4 MM, 4", "0mm, 0", "3 feet, 914.4", "-1/2in, -12.7", "-1 1/2 in, -38.1", "10 inches, 254", "5., 5"})
    void readsWhatAShopWrites(String text, double mm) {
        assertEquals(mm, Lengths.parse(text), 1e-12 * Math.abs(mm));
    }

    @Test
    void bareNumberTakesTheUnitGiven() {
        assertEquals(50.8, Lengths.parse("2", LengthUnit.IN), 1e-12);
        assertEquals(12.7, Lengths.parse("1/2", LengthUnit.IN), 1e-12);
        assertEquals(3, Lengths.parse("3mm", LengthUnit.IN), 0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"18 ga", "18ga", "#18 gauge", "20 swg", "16 Gauge", "18 ga.", "#18", "18 gauge steel", "22-gauge"})
    void refusesAGaugeBecauseItNeedsTheMetal(String text) {
        String why = assertThrows(IllegalArgumentException.class, () -> Lengths.parse(text)).getMessage();
        assertTrue(why.contains("gauge number is another thickness in steel, aluminium and stainless"), why);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "mm", "1,6mm", "1.6 furlong", "2ft 3in", "1/0 in", "1e3mm", "NaN", "Infinity", "0x10", "1.6.2mm", "--2mm",
        "1/2/3in", "１mm", "9999999999999999999999mm", "\u0000\u0001"})
    void refusesWithAnExample(String text) {
        String why = assertThrows(IllegalArgumentException.class, () -> Lengths.parse(text)).getMessage();
        assertTrue(why.startsWith("\"") && why.length() > 20 && why.length() < 250, why);
    }

    /** 1/16 was taken for 0.0625 mm of sheet. */
    @ParameterizedTest
    @ValueSource(strings = {"1/16", "16 1/2", "-3/4", "1-1/2"})
    void aFractionWithoutAUnitIsNoMillimetre(String text) {
        String why = assertThrows(IllegalArgumentException.class, () -> Lengths.parse(text)).getMessage();
        assertTrue(why.startsWith("\"" + text + "\" has no unit") && why.endsWith("write " + text + "in"), why);
        assertEquals(Lengths.parse(text + "in"), Lengths.parse(text, LengthUnit.IN), 0);
    }

    @Test
    void twoUnitsAreExplained() {
        for (String text : new String[] {"2ft 3in", "2' 3\"", "2 feet 3"})
            assertTrue(assertThrows(IllegalArgumentException.class, () -> Lengths.parse(text)).getMessage().contains("one number and one unit"), text);
    }

    @Test
    void aCommaIsExplained() {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Lengths.parse("1,6mm")).getMessage().contains("point instead of the comma"));
    }

    @ParameterizedTest
    @CsvSource({"38.1, 1 1/2 in", "1.5875, 1/16 in", "0, 0 in", "25.4, 1 in", "-12.7, -1/2 in", "0.1, 0 in", "-0.1, 0 in", "25.3, 1 in", "19.447, 49/64 in", "0.1984375, 1/64 in", "-0.1984375, -1/64 in"})
    void writesTheNearestSixtyFourth(double mm, String text) {
        assertEquals(text, Lengths.sixtyFourths(mm));
    }

    @Test
    void writesMillimetresAndDecimalInch() {
        assertEquals("12.70 mm", Lengths.mm(12.7, 2));
        assertEquals("0.063 in", Lengths.inches(1.6, 3));
        assertEquals("0.0 mm", Lengths.mm(-0.01, 1));
    }

    /** What is written with every digit comes back to the same bits. */
    @Test
    void exactRoundTrips() {
        Random random = new Random(20);
        for (int i = 0; i < 2000; i++) {
            double mm = (random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(8) - 3);
            double rounded = Math.rint(mm * 1000) / 1000;
            assertEquals(rounded, Lengths.parse(Lengths.exact(rounded)), 0);
            assertEquals(mm / 100, Angles.parse(Angles.exact(mm / 100)), 0);
            double degrees = random.nextInt(360_000) / 1000.0;
            double round = Math.toRadians(degrees), beside = Math.nextUp(round);
            assertEquals(round, Angles.parse(Angles.exact(round)), 0);
            assertEquals(beside, Angles.parse(Angles.exact(beside)), 0);
        }
    }

    @ParameterizedTest
    @CsvSource({"30deg, 30", "30, 30", "30°, 30", "-12.5 degrees, -12.5", "0.5rad, 28.64788975654116"})
    void readsAngles(String text, double degrees) {
        assertEquals(Math.toRadians(degrees), Angles.parse(text), 1e-15);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "30 turns", "abc", "1,5deg", "1e2deg"})
    void refusesOtherAngles(String text) {
        assertThrows(IllegalArgumentException.class, () -> Angles.parse(text));
    }
}
