package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import org.junit.jupiter.api.Test;

class LengthStyleTest {
    @Test
    void saysLengthsAsTheBenchReadsThem() {
        assertEquals("12.4 mm", LengthStyle.MM.length(12.4));
        assertEquals("0.43 mm", LengthStyle.MM.length(0.43));
        assertEquals("830 mm", LengthStyle.MM.length(830.2));
        assertEquals("0.488 in", LengthStyle.INCH.length(12.4));
        assertEquals("31/64 in", LengthStyle.FRACTION.length(12.4));
        assertEquals("take in 3.2 mm", LengthStyle.MM.change(-3.2));
        assertEquals("let out 1/8 in", LengthStyle.FRACTION.change(3.175));
        assertEquals("as it is", LengthStyle.MM.change(0.001));
        assertEquals("as it is", LengthStyle.FRACTION.change(-0.1));
        assertEquals("780 × 430 × 62.5 mm", LengthStyle.MM.size(780, 430, 62.5));
    }

    /** What stands in a field reads back as the same length, to a ten-thousandth of an inch. */
    @Test
    void whatIsTypedRoundTrips() {
        for (LengthStyle style : LengthStyle.values())
            for (double mm : new double[] {0.7, 1.2, 1.6, 25.4, 3.175, 100, 152.4, 1234.5}) {
                double back = Lengths.parse(style.typed(mm), LengthUnit.MM);
                assertEquals(mm, back, 3e-4, style + " " + style.typed(mm));
            }
        assertEquals("1/8 in", LengthStyle.FRACTION.typed(3.175));
        assertEquals("1.2 mm", LengthStyle.MM.typed(1.2));
    }
}
