package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.num.Sentence;
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

    /** 25.4 mm and 6.4516 cm² by definition. */
    @Test
    void saysTheMeasuresOfASentence() {
        Sentence sentence = Sentence.say("%s long and %s thick at %s, %s in all", Sentence.length(50.8, 0), Sentence.length(1.27, 2),
                Sentence.place(0, 254, -12.7, -0.001), Sentence.area(1290.32, 0));
        assertEquals("51 mm long and 1.27 mm thick at (254, -13, 0) mm, 13 cm2 in all", sentence.text(LengthStyle.MM));
        assertEquals("2.00 in long and 0.0500 in thick at (10.0, -0.5, 0.0) in, 2.0 sq in in all", sentence.text(LengthStyle.INCH));
        assertEquals("2 in long and 0.0500 in thick at (10.0, -0.5, 0.0) in, 2.0 sq in in all", sentence.text(LengthStyle.FRACTION));
        Sentence both = Sentence.say("%s", Sentence.both(25.4, 2, 3));
        assertEquals("25.40 mm (1.000 in)", both.text());
        assertEquals("25.40 mm", both.text(LengthStyle.MM));
        assertEquals("1.0000 in", both.text(LengthStyle.INCH));
    }

    /** Round numbers of the unit that is read, about as large as those in mm. */
    @Test
    void aNudgeIsARoundNumber() {
        assertEquals(0.1, LengthStyle.MM.step(0.1));
        assertEquals(0.005, LengthStyle.INCH.step(0.1) / 25.4, 1e-12);
        assertEquals(0.2, LengthStyle.INCH.step(5) / 25.4, 1e-12);
        assertEquals(0.5, LengthStyle.INCH.step(10) / 25.4, 1e-12);
        assertEquals(1 / 64.0, LengthStyle.FRACTION.step(0.1) / 25.4, 1e-12);
        assertEquals(1 / 4.0, LengthStyle.FRACTION.step(5) / 25.4, 1e-12);
        assertEquals(1 / 2.0, LengthStyle.FRACTION.step(10) / 25.4, 1e-12);
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
