package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.shop.DrawnTape;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CopiedNumbersTest extends AtABench {
    /** Every line holds the number of the mesh or of the sheet it is about, in the units of the switch. */
    @Test
    void holdTheNumbersOfThePlaceTheTapesAndTheWork() {
        bench.openDemo("scuttle");
        settle();
        Laid laid = bench.laidProperty().get();
        ZoneRow hardest = ZoneRow.of(laid, false).get(0);
        Place place = laid.placeOf(hardest);
        double[] at = laid.numbers(place).form();
        DrawnTape tape = laid.between(place, laid.onForm(at[0], at[1], at[2] + 30), false);
        bench.lay(tape);
        settle();
        List<SpotCard.Fact> facts = SpotCard.of(laid, place, 100, OptionalDouble.of(1.2), LengthStyle.MM);
        List<String> lines = CopiedNumbers.text(laid, bench.workProperty().get(), facts, LengthStyle.MM).lines().toList();
        assertEquals("scuttle", lines.get(0));
        Numbers n = laid.numbers(place);
        assertTrue(lines.get(1).startsWith(String.format(Locale.ROOT, "one way\tlet out %.2f mm over 100 mm (+%.1f %%)", 100 * n.most(), 100 * n.most())),
                lines.get(1));
        assertTrue(lines.get(3).startsWith(String.format(Locale.ROOT, "thickness\t%.2f mm", 1.2 * n.left())), lines.get(3));
        String before = lines.get(1 + facts.size());
        double form = laid.line(tape).orElseThrow().formLength();
        assertTrue(before.matches("tape 1\tbefore .*, after " + LengthStyle.MM.length(form) + ": .*"), before);
        List<String> work = lines.subList(2 + facts.size(), lines.size());
        assertEquals(List.of("2", "F1", "1"), work.stream().map(l -> l.split("\t")[0]).toList());
        assertEquals(String.format(Locale.ROOT, "let out %.1f mm of %.0f mm", hardest.zone().line().change(), hardest.zone().line().blankLength()),
                work.get(0).split("\t")[2]);
        String inches = CopiedNumbers.text(laid, bench.workProperty().get(), List.of(), LengthStyle.INCH);
        assertEquals(lines.size() - facts.size(), inches.lines().count());
        assertTrue(inches.contains(String.format(Locale.ROOT, "let out %.3f in of %.2f in", hardest.zone().line().change() / 25.4,
                hardest.zone().line().blankLength() / 25.4)) && !inches.contains(" mm"), inches);
    }
}
