package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class AmountsTest {
    @Test
    void lengthsAsTheBenchReadsThem() {
        assertEquals("-12.4 mm", Amounts.change(-12.41));
        assertEquals("+0.83 mm", Amounts.change(0.83));
        assertEquals("0 mm", Amounts.change(-0.001));
        assertEquals("+1.0 mm", Amounts.change(0.9951));
        assertEquals("830 mm", Amounts.length(830.2));
        assertEquals("34.2 mm", Amounts.length(34.21));
    }

    @Test
    void inchesAsDecimalsAndNearestSixtyFourth() {
        assertEquals("-0.488 in (-31/64)", Amounts.changeInInches(-12.4));
        assertEquals("+1.500 in (+1 1/2)", Amounts.changeInInches(38.1));
        assertEquals("-0.003 in (0)", Amounts.changeInInches(-0.08));
        assertEquals("0 in", Amounts.changeInInches(0.001));
        assertEquals("4", Amounts.fraction(3.999));
    }

    @Test
    void strainsAsMmPerHundred() {
        assertEquals("-1.25", Amounts.perHundred(-0.0125));
        assertEquals("8", Amounts.perHundred(0.08));
        assertEquals("0.06", Amounts.perHundred(0.0006));
        assertEquals("-47.8", Amounts.percent(-0.4779));
        assertEquals("0", Amounts.percent(-0.0001));
    }
}
