package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.metal.Alloy;
import blankwright.metal.Alloys;
import blankwright.metal.Trust;
import blankwright.project.AlloyReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JudgeTest {
    private static final Alloys SHIPPED = AlloyReader.shipped();

    private static Judge judge(String name, VerdictBands bands) {
        Alloy alloy = SHIPPED.named(name);
        return new Judge(alloy, SHIPPED.softened(alloy), 1.2, bands);
    }

    /** Bands of the trade [from memory]; half-hard sheet must be annealed where soft sheet is only hard work; stainless cannot be. */
    @ParameterizedTest
    @CsvSource({
        "3003-O, 0.0005, -0.0005, springs in", "3003-O, 0.01, -0.01, easy", "3003-O, 0.03, 0.0, ordinary", "3003-O, 0.01, -0.04, ordinary",
        "3003-O, 0.08, 0.0, hard", "3003-O, 0.08, 0.08, hard", "3003-O, 0.15, 0.14, anneal", "3003-O, 0.25, -0.1, split", "3003-O, 0.0, -0.30, split", "3003-O, 0.17, 0.16, split",
        "3003-H14, 0.0005, 0.0, springs in", "3003-H14, 0.015, 0.0, easy", "3003-H14, 0.08, 0.0, anneal", "3003-H14, 0.0, -0.08, anneal",
        "drawing-steel, 0.08, 0.0, hard", "drawing-steel, 0.15, 0.0, hard", "304, 0.15, 0.0, hard", "6061-T6, 0.08, 0.0, split", "6061-T6, 0.01, 0, easy"})
    void saysTheWordsOfTheTrade(String alloy, double stretch, double shrink, String verdict) {
        assertEquals(verdict, judge(alloy, VerdictBands.USUAL).of(Math.log1p(stretch), Math.log1p(shrink)).verdict().words());
    }

    /** 3003-O has uniform strain n - e0 = 0.229: an effective strain of 0.3 needs one annealing, of 0.5 two, counted by hand. */
    @Test
    void countsTheAnnealings() {
        Judge judge = judge("3003-O", VerdictBands.USUAL);
        double uniform = SHIPPED.named("3003-O").law().uniform();
        assertEquals(0.229, uniform, 2e-3);
        for (double[] row : new double[][] {{0.9, 0}, {1.01, 1}, {1.99, 1}, {2.01, 2}, {4.5, 4}}) {
            // shrink both ways alike: nothing thins, so only the hardening counts
            double each = -row[0] * uniform / SHIPPED.named("3003-O").sheet().effective(1, 1);
            Judgement found = judge.of(each, each);
            assertEquals((int) row[1], found.annealings(), "effective " + found.effective());
            assertEquals(row[0] * uniform, found.effective(), 1e-12);
            assertEquals(0, found.margin());
        }
    }

    /** A half-hard sheet annealed once is soft sheet: what the temper has left counts for the first round only. */
    @Test
    void theFirstRoundIsWorkedInTheTemperBought() {
        Alloy half = SHIPPED.named("3003-H14"), soft = SHIPPED.named("3003-O");
        assertEquals(soft, SHIPPED.softened(half));
        assertEquals(SHIPPED.named("drawing-steel"), SHIPPED.softened(SHIPPED.named("drawing-steel")));
        double factor = half.sheet().effective(1, 1);
        double both = (half.law().uniform() + soft.law().uniform()) * 0.999 / factor;
        assertEquals(1, judge("3003-H14", VerdictBands.USUAL).of(-both, -both).annealings());
        assertEquals(2, judge("3003-H14", VerdictBands.USUAL).of(-both / 0.99, -both / 0.99).annealings());
    }

    @Test
    void thicknessKeepsTheVolume() {
        Judgement found = judge("3003-O", VerdictBands.USUAL).of(0.05, -0.02);
        assertEquals(1.2, found.thickness() * Math.exp(0.05) * Math.exp(-0.02), 1e-14);
    }

    @Test
    void eachVerdictNamesWhatItStandsOn() {
        Judgement found = judge("3003-H14", VerdictBands.USUAL).of(0.08, 0.01);
        String said = String.join("\n", found.basis());
        for (String part : new String[] {"strain +8.3 % and +1.0 %", "thickness 1.10 mm of 1.20 mm", "bands of trade practice, from memory", "n - e0; from memory",
            "of the forming limit (estimate; from memory)", "annealing"}) assertTrue(said.contains(part), part + " in " + said);
        assertEquals(Trust.FROM_MEMORY, found.trust());
        Judgement own = judge("1100-O", new VerdictBands(0.002, 0.03, 0.06, 0.2, 0.25, 0.25, 0.1, 0.5, 3)).of(0.025, 0);
        assertEquals(Verdict.EASY, own.verdict());
        assertEquals(Trust.TYPICAL, own.trust());
        assertTrue(own.basis().get(0).endsWith("your own bands"));
    }

    @Test
    void refusesBandsThatDoNotRise() {
        assertThrows(IllegalArgumentException.class, () -> new VerdictBands(0.02, 0.02, 0.05, 0.2, 0.25, 0.25, 0.1, 1, 3));
        assertThrows(IllegalArgumentException.class, () -> new VerdictBands(0.001, 0.02, 0.05, 0.2, 0.25, 0.25, 0.1, 1.5, 3));
        assertThrows(IllegalArgumentException.class, () -> judge("3003-O", VerdictBands.USUAL).of(0, 0.1));
    }
}
