package blankwright.shape;

import static java.lang.Math.toRadians;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.CutToDisk;
import blankwright.num.Progress;
import blankwright.strain.StrainField;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every panel a recipe can name, opened where it must be, comes out flat: converged, nothing turned over, without strain if it is developable. */
class EveryPanelComesOutFlatTest {
    private static Outcome flat(TriMesh form) {
        return Flattener.flatten(CutToDisk.of(form, Progress.NONE).mesh(), FlattenOptions.DEFAULT, Progress.NONE);
    }

    private static void comesOut(Panel panel, Fineness fineness) {
        Outcome outcome = flat(panel.mesh(fineness));
        assertInstanceOf(Outcome.Converged.class, outcome, panel + ": " + outcome);
        StrainField strain = StrainField.of(outcome.map());
        assertEquals(0, strain.turnedOverCount(), panel.toString());
        assertTrue(outcome.energy() >= 4 - 1e-12, panel + ": " + outcome.energy());
        if (panel.truth().developable() && panel.truth().eulerNumber() <= 1) assertEquals(4, outcome.energy(), 1e-8, panel.toString());
    }

    @TestFactory
    Stream<DynamicTest> eachKind() {
        return Panels.all().entrySet().stream().map(e -> DynamicTest.dynamicTest(e.getKey(), () -> comesOut(e.getValue(), Fineness.chord(0.4))));
    }

    /** A hundred panels of random measures within what a shop would make, fixed seed. */
    @Test
    void aHundredOfRandomMeasures() {
        Random random = new Random(2026);
        List<Panel> panels = new ArrayList<>();
        while (panels.size() < 100) {
            try {
                panels.add(random(panels.size() % 10, random));
            } catch (UnfitValue notMade) {
                // the measures contradict each other; another throw
            }
        }
        for (Panel panel : panels) comesOut(panel, Fineness.triangles(1500));
    }

    private static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private static Panel random(int kind, Random r) {
        return switch (kind) {
            case 0 -> new Cylinder(between(r, 20, 400), between(r, 30, 900), toRadians(between(r, 10, 360)));
            case 1 -> new ConeFrustum(between(r, 100, 300), between(r, 20, 95), between(r, 10, 400), toRadians(between(r, 20, 359)));
            case 2 -> new ObliqueCone(between(r, 100, 200), between(r, 30, 90), between(r, 60, 300), between(r, 0, 90), 0, toRadians(between(r, 30, 340)));
            case 3 -> new SphericalCap(between(r, 100, 900), toRadians(between(r, 3, 110)));
            case 4 -> new EllipsoidalCap(between(r, 100, 400), between(r, 100, 400), between(r, 60, 400), toRadians(between(r, 20, 100)));
            case 5 -> new TorusSection(between(r, 150, 400), between(r, 20, 140), toRadians(between(r, 10, 300)), toRadians(between(r, 10, 200)));
            case 6 -> new Saddle(between(r, 100, 400), between(r, 50, 180));
            case 7 -> new CrownedPanel(between(r, 200, 900), between(r, 200, 900), between(r, -60, 90), between(r, 0, 90));
            case 8 -> new FlangeStrip(between(r, 80, 400), toRadians(between(r, 10, 170)), between(r, 10, 40), between(r, 8, 30), between(r, 1, 6),
                    toRadians(between(r, 20, 95)), r.nextBoolean() ? FlangeStrip.Edge.CONVEX : FlangeStrip.Edge.CONCAVE);
            default -> new TwistedPanel(between(r, 100, 600), between(r, 100, 600), between(r, 5, 150));
        };
    }

    /**
     * Half an oblique cone from t = 0 to 180°, apex over a point {@code a} aside, height {@code h}, base radius {@code r}, mm: the angle between
     * its end generators on the blank. Values [C], the integral of |P x P'| / |P|², checks of section 2; no printed table is known.
     */
    @ParameterizedTest
    @CsvSource({"0,100,50, 80.498447", "30,100,50, 77.144819", "60,100,50, 68.477174"})
    void anObliqueConeConvergesToItsDevelopedAngleAtSecondOrder(double a, double h, double r, double degrees) {
        double[] error = new double[3];
        for (int i = 0; i < 3; i++) {
            int n = 20 << i;
            double[] xyz = new double[6 * (n + 1)];
            int[] tri = new int[6 * n];
            for (int k = 0; k <= n; k++) {
                double t = Math.PI * k / n;
                double[] foot = {a + r * Math.cos(t), r * Math.sin(t), -h};
                for (int c = 0; c < 3; c++) {
                    xyz[6 * k + c] = foot[c];
                    xyz[6 * k + 3 + c] = 0.4 * foot[c];
                }
            }
            for (int k = 0; k < n; k++) {
                int[] two = {2 * k, 2 * k + 2, 2 * k + 3, 2 * k, 2 * k + 3, 2 * k + 1};
                System.arraycopy(two, 0, tri, 6 * k, 6);
            }
            var map = flat(TriMesh.of(xyz, tri)).map();
            double first = Math.atan2(map.v(1) - map.v(0), map.u(1) - map.u(0)), last = Math.atan2(map.v(2 * n + 1) - map.v(2 * n), map.u(2 * n + 1) - map.u(2 * n));
            double turn = Math.toDegrees(Math.abs(Math.IEEEremainder(last - first, 2 * Math.PI)));
            error[i] = turn - degrees;
            assertEquals(0.6 * Math.hypot(a + r, h), Math.hypot(map.u(1) - map.u(0), map.v(1) - map.v(0)), 1e-6, "the longest generator");
        }
        assertEquals(2, Math.log(error[0] / error[1]) / Math.log(2), 0.1, error[0] + " to " + error[1]);
        assertEquals(2, Math.log(error[1] / error[2]) / Math.log(2), 0.1, error[1] + " to " + error[2]);
        assertEquals(degrees, error[2] + degrees + (error[2] - error[1]) / 3, 2e-4, "extrapolated");
    }
}
