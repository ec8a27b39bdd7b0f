package blankwright.num;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class SentenceTest {
    /** Each measure by its letter, so that it is seen where each stands. */
    private static final Sentence.Units LETTERS = new Sentence.Units() {
        @Override public String length(double mm, int decimals) {
            return "L" + decimals;
        }

        @Override public String typed(double mm) {
            return "T";
        }

        @Override public String metres(double m) {
            return "M";
        }

        @Override public String place(int decimals, double... mm) {
            return "P" + mm.length;
        }

        @Override public String area(double mm2, int decimals) {
            return "A" + decimals;
        }
    };

    @Test
    void measuresStandWhereTheyAreAskedForAndWordsStay() {
        Sentence inner = Sentence.say("%s (50 %%)", Sentence.length(2.5, 1));
        Sentence whole = Sentence.say("%d times %s at %s, %s: %s", 3, inner, Sentence.place(0, 1, 2, 3), Sentence.area(150, 1), "5 % left");
        assertEquals("3 times 2.5 mm (50 %) at (1, 2, 3) mm, 1.5 cm2: 5 % left", whole.text());
        assertEquals("3 times L1 (50 %) at P3, A1: 5 % left", whole.text(LETTERS));
        assertEquals("90 % of it", Sentence.of("90 % of it").text());
        assertEquals("L1 (50 %) % L1 (50 %)", Sentence.joined(" % ", List.of(inner, inner)).text(LETTERS));
        assertEquals("", Sentence.joined("; ", List.of()).text());
    }

    @Test
    void aLengthMayHaveTheDecimalsItWasWrittenWith() {
        assertEquals("0.1 mm", Sentence.say("%s", Sentence.exactly(0.1)).text());
        assertEquals("60 mm", Sentence.say("%s", Sentence.exactly(60)).text());
        assertEquals("0.025 mm", Sentence.say("%s", Sentence.exactly(0.025)).text());
    }

    @Test
    void aLengthMayBeWhatSomebodyTypedOrABoundInMetres() {
        Sentence refused = Sentence.say("%s: at most %s", Sentence.typed(31.25), Sentence.metres(20));
        assertEquals("31.25 mm: at most 20 m", refused.text());
        assertEquals("T: at most M", refused.text(LETTERS));
        assertEquals("NaN mm", Sentence.say("%s", Sentence.typed(Double.NaN)).text(LETTERS), "no length to be typed");
        assertEquals("31.25 mm: at most 20 m", new Unfit("%s: at most %s", Sentence.typed(31.25), Sentence.metres(20)).getMessage());
        assertEquals(Sentence.of("no such file"), Explained.words(new IllegalArgumentException("no such file")));
    }

    @Test
    void equalWhereWordsAndNumbersAre() {
        assertEquals(Sentence.say("%s", Sentence.length(1, 0)), Sentence.say("%s", Sentence.length(1, 0)));
        assertEquals(Sentence.say("%s", Sentence.place(0, 1, 2)).hashCode(), Sentence.say("%s", Sentence.place(0, 1, 2)).hashCode());
        assertNotEquals(Sentence.say("%s", Sentence.length(1, 0)), Sentence.say("%s", Sentence.length(1.2, 0)), "as many mm when rounded");
        assertNotEquals(Sentence.of("1 mm"), Sentence.say("%s", Sentence.length(1, 0)));
    }
}
