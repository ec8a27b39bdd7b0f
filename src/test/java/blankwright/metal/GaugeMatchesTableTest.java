package blankwright.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.project.AlloyReader;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checks section 11. */
class GaugeMatchesTableTest {
    /** Steel, galvanized, stainless, aluminium, inch [V: two public tables, agreeing]. */
    @ParameterizedTest
    @CsvSource({"12, .1046, .1084, .1094, .0808", "14, .0747, .0785, .0781, .0641", "16, .0598, .0635, .0625, .0508", "18, .0478, .0516, .0500, .0403",
        "20, .0359, .0396, .0375, .0320", "22, .0299, .0336, .0312, .0253", "24, .0239, .0276, .0250, .0201"})
    void evenNumbers(int number, double steel, double galvanized, double stainless, double aluminium) {
        double[] inches = {steel, galvanized, stainless, aluminium};
        for (Gauge gauge : Gauge.values()) {
            assertEquals(inches[gauge.ordinal()] * 25.4, gauge.thickness(number).value(), 1e-12);
            assertEquals(Trust.PUBLISHED, gauge.thickness(number).trust());
        }
    }

    /** Brown and Sharpe: each of 39 steps is 92^(1/39), 0.32486 in at number 0... 16 -> .0508 [C]. */
    @Test
    void aluminiumFollowsItsLaw() {
        for (int number = 10; number <= 26; number++)
            assertEquals(0.32486 * Math.pow(92, -number / 39.0), Gauge.ALUMINIUM.thickness(number).value() / 25.4, 6e-5, number + " ga");
    }

    /** Steel is 41.82 lb/ft² per inch; 16 ga 2.5, 18 ga 2.0, 20 ga 1.5 lb/ft² [V]; the odd numbers between lie between. */
    @Test
    void steelFollowsItsWeight() {
        int[] number = {16, 17, 18, 19, 20};
        double[] pounds = {2.5, 2.25, 2.0, 1.75, 1.5};
        for (int i = 0; i < number.length; i++) assertEquals(pounds[i] / 41.82 * 25.4, Gauge.STEEL.thickness(number[i]).value(), 0.003);
        assertEquals(Trust.FROM_MEMORY, Gauge.STEEL.thickness(17).trust());
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {"18 ga steel; ; 1.21412", "18ga aluminum; ; 1.02362", "#20 stainless; ; 0.9525", "16 gauge galvanised; ; 1.6129",
        "18 ga; 3003-O; 1.02362", "18ga; 304; 1.27", "20 ga steel; drawing-steel; 0.91186", "20 ga galvanized; drawing-steel; 1.00584", "1.2mm; ; 1.2",
        "1/16in; 304; 1.5875", "0.8; ; 0.8", "0.2; ; 0.2", "0.063mm; ; 0.063"})
    void readsAGaugeWithItsMetal(String text, String alloy, double mm) {
        assertEquals(mm, Gauge.sheet(text, Optional.ofNullable(alloy).map(AlloyReader.shipped()::named)), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "18 ga; ; a gauge number is another thickness in each metal (1.21 mm in steel, 1.31 mm in galvanized, 1.27 mm in stainless, 1.02 mm in aluminium); say the metal, e.g. 18 ga steel",
        "18 ga; copper-soft; there is no gauge table for copper-soft; measure the sheet", "18 ga steel; 3003-O; the alloy 3003-O is not sold by the steel gauge",
        "18 ga tin; ; no gauge table for that metal; there is steel, galvanized, stainless, aluminium", "40 ga steel; ; the table knows 10 to 26",
        "thick; ; is not a length", "0.063; ; 0.063 mm is foil: write 0.063in for 1.60 mm, or 0.063mm if it is foil", ".05; ; write .05in for 1.27 mm"})
    void refusesWithTheReason(String text, String alloy, String reason) {
        IllegalArgumentException e = assertThrows(IllegalArgumentException.class,
                () -> Gauge.sheet(text, Optional.ofNullable(alloy).map(AlloyReader.shipped()::named)));
        assertTrue(e.getMessage().contains(reason), e.getMessage());
    }
}
