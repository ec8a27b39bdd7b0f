package blankwright.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Panels that took long when each step had a factor of its own and nothing more. The energies are those of that way, the number of its
 * steps stands last: the other way there ends at the same place.
 */
class HardOnesComeSoonTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "random edge flips;146;23.340199958;178",
        "random edge flips;28;6.697690480;88",
        "vertex noise 0.8 to 1.2 cells;204;4.247648243;109",
        "vertex noise 0.3 to 0.8 cells;28;4.199406429;103",
        "random connectivity;57;13.011010648;315"})
    void atTheSamePlaceInAQuarterOfTheSteps(String family, int number, double energy, int before) {
        Trial trial = Families.ALL.stream().filter(f -> f.name().equals(family)).map(f -> Trial.of(f, number)).findFirst().orElseThrow();
        assertEquals("", trial.fault(), trial.line());
        assertEquals(energy, trial.energy(), 1e-7 * energy, trial.line());
        assertTrue(trial.steps() <= before / 4, before + " before: " + trial.line());
    }

    /**
     * Triangles that edge flips left without area, in long bent valleys: with at most 80 steps a factor, 30 of them remembered, these took the
     * steps that stand last. There are many hollows side by side; the energy may not be higher than it was by more than these differ.
     */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "random connectivity;1;131.969039;61",
        "random connectivity;19;190.190194;122",
        "random connectivity;34;252.095312;55",
        "random connectivity;48;115.460556;93"})
    void alongBentValleysInHalfTheSteps(String family, int number, double energy, int before) {
        Trial trial = Families.ALL.stream().filter(f -> f.name().equals(family)).map(f -> Trial.of(f, number)).findFirst().orElseThrow();
        assertEquals("", trial.fault(), trial.line());
        assertTrue(trial.energy() <= energy * (1 + 1e-4), energy + " before: " + trial.line());
        assertTrue(trial.steps() <= before / 2, before + " before: " + trial.line());
    }
}
