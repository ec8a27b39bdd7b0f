package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Spherical caps against the one-dimensional symmetric Dirichlet optimum, and against the least-squares closed form, which is its limit for
 * small angles.
 *
 * <p>Values: computed [C], minimum of the axisymmetric energy by 400 cells, about 6 digits; theory Oshri and Diamant, Phys. Rev. E 95,
 * 053003 (2017) for the least-squares closed form (abstract read, formulas derived anew). Sphere of radius 1; here 1000 mm.
 */
class FlattenerMatchesCapTableTest {
    private static Outcome flatten(TriMesh mesh) {
        return Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
    }

    /** Mean hoop stretch of the rim, blank over form. */
    private static double rimStretch(FlatMap map, int rings) {
        int first = 1 + 3 * rings * (rings - 1), n = 6 * rings;
        double flat = 0, form = 0;
        for (int k = 0; k < n; k++) {
            int a = first + k, b = first + (k + 1) % n;
            flat += Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a));
            form += map.form().distance(a, b);
        }
        return flat / form;
    }

    private static double middleStretch(FlatMap map) {
        double flat = 0, form = 0;
        for (int k = 1; k <= 6; k++) {
            flat += Math.hypot(map.u(k) - map.u(0), map.v(k) - map.v(0));
            form += map.form().distance(0, k);
        }
        return flat / form;
    }

    @ParameterizedTest
    @CsvSource({
        "10, 4.00001935, .003821, -.001899", "20, 4.00031069, .015446, -.007548", "30, 4.00158177, .035376, -.016775",
        "45, 4.00811251, .082908, -.036782", "60, 4.02613043, .156380, -.063141", "90, 4.14050834, .423330, -.129619"})
    void energyAndStrainsConvergeToTheTableAtSecondOrder(double degrees, double energy, double edge, double middle) {
        double[] error = new double[3];
        FlatMap finest = null;
        double last = 0;
        for (int i = 0; i < 3; i++) {
            Outcome.Converged done = assertInstanceOf(Outcome.Converged.class, flatten(Grids.cap(degrees, 12 << i)));
            error[i] = done.energy() - energy;
            last = done.energy();
            finest = done.map();
        }
        double order = Math.log(error[0] / error[1]) / Math.log(2);
        assertEquals(2, order, 0.25, "order from " + error[0] + " to " + error[1] + " to " + error[2]);
        double extrapolated = last - error[2] + (4 * error[2] - error[1]) / 3;
        assertEquals(energy - 4, extrapolated - 4, 2e-3 * (energy - 4), "Richardson");
        assertEquals(edge, rimStretch(finest, 48) - 1, 0.03 * edge + 2e-5);
        assertEquals(middle, middleStretch(finest) - 1, 0.01 * -middle + 2e-5);
    }

    /** flat radius -4 cot(c/2) ln cos(c/2): the symmetric Dirichlet optimum differs from it by O(c⁵) only. */
    @Test
    void flatRadiusOfAShallowCapMatchesTheLeastSquaresClosedForm() {
        double c = Math.toRadians(10);
        FlatMap map = flatten(Grids.cap(10, 40)).map();
        double radius = 0;
        int first = 1 + 3 * 40 * 39;
        for (int k = 0; k < 240; k++) radius += Math.hypot(map.u(first + k) - map.u(0), map.v(first + k) - map.v(0)) / 240;
        assertEquals(174.311, radius, 0.01, "checks: 0.174311 on the unit sphere [C]");
        assertEquals(-4 / Math.tan(c / 2) * Math.log(Math.cos(c / 2)) * 1000, radius, 0.01);
    }

    /** The same optimum by a second, duller way: the best of a one-parameter family of axisymmetric layouts can only be worse. */
    @Test
    void noAxisymmetricLayoutOfThatKindIsBetter() {
        double c = Math.toRadians(60), ours = flatten(Grids.cap(60, 48)).energy();
        double best = Double.POSITIVE_INFINITY;
        for (double a = -0.2; a <= 0.2; a += 0.002) {
            double bend = a;
            double energy = new SimpsonIntegrator().integrate(100_000, r -> {
                double f = Math.tan(r / 2) * 2 * (1 - bend * r * r) * 0.95, h = 1e-6;
                double g = Math.tan((r + h) / 2) * 2 * (1 - bend * (r + h) * (r + h)) * 0.95;
                double radial = (g - f) / h, hoop = f / Math.sin(r);
                return Math.sin(r) * (radial * radial + 1 / (radial * radial) + hoop * hoop + 1 / (hoop * hoop));
            }, 1e-9, c) / (1 - Math.cos(c));
            best = Math.min(best, energy);
        }
        assertTrue(ours < best + 1e-3, ours + " against " + best);
    }

    @Test
    void beatsTheEquidistantLayoutByAQuarterAtTheEdge() {
        double c = Math.toRadians(20);
        double edge = rimStretch(flatten(Grids.cap(20, 40)).map(), 40) - 1;
        assertEquals(0.75, edge / (c / Math.sin(c) - 1), 0.02, "c²/8 against c²/6, trap 10 of the checks [C]");
    }
}
