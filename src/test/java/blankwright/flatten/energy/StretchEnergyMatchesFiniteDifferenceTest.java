package blankwright.flatten.energy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StretchEnergyMatchesFiniteDifferenceTest {
    private static final List<StretchEnergy> ENERGIES =
            List.of(new SymmetricDirichlet(), new Untangling(0.3), new Untangling(0.1), new Untangling(0.03));

    @Test
    void slopeAndCurvatureAgreeOnAThousandStretches() {
        Random random = new Random(11);
        for (StretchEnergy energy : ENERGIES)
            for (int i = 0; i < 1000; i++) {
                double s = energy.barrier() ? 0.2 + 3 * random.nextDouble() : 4 * random.nextDouble() - 2;
                double h = 1e-5, scale = Math.abs(energy.curvature(s)) + 1;
                assertEquals((energy.value(s + h) - energy.value(s - h)) / (2 * h), energy.slope(s), 1e-5 * scale, energy + " at " + s);
                assertEquals((energy.slope(s + h) - energy.slope(s - h)) / (2 * h), energy.curvature(s), 1e-4 * scale, energy + " at " + s);
            }
    }

    @Test
    void eachIsLeastAtNoStretch() {
        for (StretchEnergy energy : ENERGIES) {
            assertEquals(0, energy.slope(1), 1e-15);
            assertEquals(2, energy.value(1), 1e-15);
            for (double s = 0.05; s < 4; s += 0.01) assertTrue(energy.value(s) >= 2 - 1e-15);
        }
    }

    @Test
    void onlyABarrierIsInfiniteForATurnedTriangle() {
        assertEquals(Double.POSITIVE_INFINITY, new SymmetricDirichlet().value(0));
        assertEquals(Double.POSITIVE_INFINITY, new SymmetricDirichlet().value(-1));
        assertEquals(Double.POSITIVE_INFINITY, new SymmetricDirichlet().value(Double.NaN));
        assertTrue(Double.isFinite(new Untangling(0.03).value(-5)));
    }
}
