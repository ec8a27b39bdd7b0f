package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.strain.StrainField;
import org.junit.jupiter.api.Test;

/** The blank of a cap against the one found in one dimension, with the order in which finer meshes come near. */
class LeastWorkMatchesRoundBlankTest {
    private static final double E = 70_000, YIELD = 45, K = 180, R = 0.7;     // of the size of annealed aluminium's, not of any alloy

    /** The work of stretches s and o from form to blank, from the formulas of Hill and Swift; no code shared with the energy. */
    private record Law(double n, double stretchCost, double shrinkCost) implements RoundBlank.Energy {
        private static final double A = (1 + R) * (1 + R) / (1 + 2 * R), B = R / (1 + R);

        private double cost(double e) {
            return e > 0 ? stretchCost : shrinkCost;
        }

        private double work(double eb) {
            if (n == 1) return E * eb * eb / 2;
            double e0 = Math.pow(YIELD / K, 1 / n), elastic = YIELD / E;
            return eb <= elastic ? E * eb * eb / 2
                    : YIELD * elastic / 2 + K / (n + 1) * (Math.pow(e0 + eb - elastic, n + 1) - Math.pow(e0, n + 1));
        }

        private double stress(double eb) {
            return n == 1 || eb <= YIELD / E ? E * eb : K * Math.pow(Math.pow(YIELD / K, 1 / n) + eb - YIELD / E, n);
        }

        private double costly(double x, double y) {
            double low = Math.min(stretchCost, shrinkCost);
            return A * (cost(x) * x * x + cost(y) * y * y + 2 * low * B * x * y);
        }

        @Override public double value(double s, double o) {
            double x = -Math.log(s), y = -Math.log(o), q = A * (x * x + y * y + 2 * B * x * y);
            return q < 1e-20 ? 0 : s * o * costly(x, y) * work(Math.sqrt(q)) / q / E;
        }

        @Override public double slope(double s, double o) {
            double x = -Math.log(s), y = -Math.log(o), q = A * (x * x + y * y + 2 * B * x * y), eb = Math.sqrt(q);
            if (q < 1e-20) return 0;
            double low = Math.min(stretchCost, shrinkCost), p = costly(x, y), h = work(eb) / q;
            double px = 2 * A * (cost(x) * x + low * B * y), hx = (stress(eb) * eb / 2 - work(eb)) / (q * q) * 2 * A * (x + B * y);
            return o * (p * h - px * h - p * hx) / E;
        }
    }

    private record Seen(double radius, double mean, double stretch, double shrink, double[] radii) { }

    private static Seen laidFlat(double degrees, int rings, Law law, double tolerance) {
        TriMesh cap = Grids.cap(degrees, rings);
        Resistance metal = law.n == 1 ? Resistance.elastic(E, R) : new Resistance(E, YIELD, K, law.n, R);
        LeastWork work = LeastWork.of(metal, new double[] {law.stretchCost}, new double[] {law.shrinkCost});
        Outcome outcome = Flattener.flatten(cap, FlattenOptions.DEFAULT.withTolerance(tolerance).withWork(work), Progress.NONE);
        assertTrue(outcome instanceof Outcome.Converged, () -> "stopped after " + outcome.steps());
        StrainField strain = StrainField.of(outcome.map());
        assertEquals(0, strain.turnedOverCount());
        double mean = 0, whole = cap.area();
        for (int t = 0; t < cap.triangleCount(); t++) {
            mean += cap.area(t) / whole * law.value(1 / strain.stretch2(t), 1 / strain.stretch1(t));
        }
        double[] radii = new double[8];
        for (int i = 0; i < 8; i++) {
            int ring = rings * (i + 1) / 8, first = 1 + 3 * ring * (ring - 1);
            for (int v = first; v < first + 6 * ring; v++)
                radii[i] += Math.hypot(outcome.map().u(v) - outcome.map().u(0), outcome.map().v(v) - outcome.map().v(0)) / 1000 / (6 * ring);
        }
        return new Seen(radii[7], mean, strain.stretchMax(), strain.shrinkMax(), radii);
    }

    /** Meshes of 8, 16 and 32 rings: the error of the mean work falls by at least so much at each halving. */
    private static void comesNear(double degrees, Law law, double low, double high, double factor, double last) {
        RoundBlank.Answer answer = RoundBlank.of(law, Math.toRadians(degrees), low, high);
        double before = Double.POSITIVE_INFINITY;
        for (int rings : new int[] {8, 16, 32}) {
            Seen seen = laidFlat(degrees, rings, law, 1e-9);
            double error = Math.abs(seen.mean - answer.mean()) / answer.mean();
            assertTrue(error < before / factor, rings + " rings, " + law + ": " + error + " after " + before);
            if (rings == 32) {
                assertTrue(error < last, law + ": " + error);
                assertEquals(answer.radius(), seen.radius, last / 10 * answer.radius());
            }
            before = error;
        }
    }

    @Test
    void elasticSheetAtSecondOrder() {
        for (double degrees : new double[] {20, 45}) comesNear(degrees, new Law(1, 1, 1), 0.9, 0.9999, 3.7, 3e-3);
    }

    @Test
    void hardeningSheetAtNearlySecondOrder() {
        for (double degrees : new double[] {20, 45}) comesNear(degrees, new Law(0.2, 1, 1), 0.9, 0.9999, 3.2, 1.5e-3);
    }

    @Test
    void stretchingDearerOrShrinkingDearer() {
        comesNear(30, new Law(0.2, 10, 1), 0.95, 0.99999, 2.5, 1e-2);
        comesNear(20, new Law(0.2, 1, 100), 0.97, 0.985, 2.5, 1e-2);
    }

    /** The farthest that any of eight rings lies from where it ought to, over the radius. */
    private static double off(Seen seen, RoundBlank.Answer answer) {
        double most = 0;
        for (int i = 0; i < 8; i++) most = Math.max(most, Math.abs(seen.radii[i] - answer.radii()[i]) / answer.radius());
        return most;
    }

    /**
     * Mean work and place of eight rings, at each doubling of the rings. A strain that may have one sign only makes triangles of even strain
     * stiff, so that meshes come near from the stiff side.
     */
    private static void comesNearAtAnEnd(double degrees, Law law, double low, double high, int coarsest, int finest,
                                         double work, double place) {
        RoundBlank.Answer answer = RoundBlank.of(law, Math.toRadians(degrees), low, high);
        double[] before = null;
        for (int rings = coarsest; rings <= finest; rings *= 2) {
            Seen seen = laidFlat(degrees, rings, law, 1e-6);
            assertTrue(law.stretchCost > 1 ? seen.stretch < 0.002 && seen.shrink > 0.02 : seen.shrink < 0.002 && seen.stretch > 0.02,
                    () -> law + ": " + seen);
            double[] error = {seen.mean / answer.mean() - 1, off(seen, answer)};
            assertTrue(error[0] > 0, "stiffer than the true sheet");
            if (before != null)
                for (int k = 0; k < 2; k++)
                    assertTrue(error[k] < before[k] / (k == 0 ? work : place), rings + " rings, " + law + ": " + error[k] + " after "
                            + before[k]);
            before = error;
        }
    }

    /** First order: the errors fall to a half. */
    @Test
    void allShrinkingAtFirstOrder() {
        for (double degrees : new double[] {20, 45})
            for (double n : new double[] {0.2, 1}) comesNearAtAnEnd(degrees, new Law(n, 1e4, 1), 0.999, 0.9999999, 8, 32, 1.8, 1.7);
    }

    /** Slowly at first, since no triangle may shrink either way; from 64 to 128 rings fourfold, and where the metal hardens by 2.9 and 2.2. */
    @Test
    void allStretching() {
        comesNearAtAnEnd(20, new Law(1, 1, 1e4), 0.97, 0.99, 32, 64, 1.3, 1.5);
        comesNearAtAnEnd(20, new Law(1, 1, 1e4), 0.97, 0.99, 64, 128, 3, 3.5);
        comesNearAtAnEnd(20, new Law(0.2, 1, 1e4), 0.97, 0.976, 32, 64, 1.1, 1.3);
        comesNearAtAnEnd(20, new Law(0.2, 1, 1e4), 0.97, 0.976, 64, 128, 2.5, 1.9);
    }
}
