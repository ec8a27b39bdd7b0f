package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.strain.StrainField;
import org.junit.jupiter.api.Test;

/** The even blank of a cap against the one found in one dimension by shooting, as the blanks of least work are, with the order in which finer meshes come near. */
class EvenMatchesRoundBlankTest {
    /** s² + 1/s² + o² + 1/o², and its derivative. */
    private static final RoundBlank.Energy EVEN = new RoundBlank.Energy() {
        @Override public double value(double s, double o) {
            return s * s + 1 / (s * s) + o * o + 1 / (o * o);
        }

        @Override public double slope(double s, double o) {
            return 2 * s - 2 / (s * s * s);
        }
    };

    @Test
    void meshesComeNearAtSecondOrder() {
        for (double degrees : new double[] {20, 45, 70}) {
            RoundBlank.Answer answer = RoundBlank.of(EVEN, Math.toRadians(degrees), 0.9, 0.9999);
            double before = Double.POSITIVE_INFINITY;
            for (int rings : new int[] {8, 16, 32}) {
                TriMesh cap = Grids.cap(degrees, rings);
                Outcome outcome = Flattener.flatten(cap, FlattenOptions.DEFAULT.withTolerance(1e-9), Progress.NONE);
                StrainField strain = StrainField.of(outcome.map());
                double mean = 0, radius = 0;
                for (int t = 0; t < cap.triangleCount(); t++)
                    mean += cap.area(t) / cap.area() * EVEN.value(1 / strain.stretch2(t), 1 / strain.stretch1(t));
                int first = 1 + 3 * rings * (rings - 1);
                for (int v = first; v < first + 6 * rings; v++)
                    radius += Math.hypot(outcome.map().u(v) - outcome.map().u(0), outcome.map().v(v) - outcome.map().v(0)) / 1000 / (6 * rings);
                double error = Math.abs((mean - answer.mean()) / (answer.mean() - 4));
                assertTrue(error < before / 3.7, degrees + " degrees, " + rings + " rings: " + error + " after " + before);
                before = error;
                if (rings == 32) {
                    assertTrue(error < 5e-3, degrees + " degrees: " + error);
                    assertEquals(answer.radius(), radius, 5e-4 * answer.radius());
                }
            }
        }
    }
}
