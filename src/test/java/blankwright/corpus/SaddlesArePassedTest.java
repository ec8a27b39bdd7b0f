package blankwright.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Panels whose descent comes near a saddle, where the positive part of the second derivative alone creeps past. */
class SaddlesArePassedTest {
    private static Trial trial(String family, int number) {
        return Families.ALL.stream().filter(f -> f.name().equals(family)).map(f -> Trial.of(f, number)).findFirst().orElseThrow();
    }

    /** 73 steps by the positive part alone, 19 with what follows it; the least energy is that of both. */
    @Test void anEggBoxWhoseBumpsMustGoOneWay() {
        Trial trial = trial("egg boxes", 42);
        assertEquals("", trial.fault(), trial.line());
        assertEquals(16.830593, trial.energy(), 1e-5);
        assertTrue(trial.steps() <= 40, trial.line());
    }
}
