package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Panels that bending alone can make come out as their developments. */
class FlattenerMatchesDevelopmentTest {
    private static FlatMap flat(TriMesh mesh) {
        return assertInstanceOf(Outcome.Converged.class, Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE)).map();
    }

    /** Largest relative change of any edge. */
    private static double worstEdge(FlatMap map) {
        TriMesh form = map.form();
        double worst = 0;
        for (int t = 0; t < form.triangleCount(); t++)
            for (int k = 0; k < 3; k++) {
                int a = form.corner(t, k), b = form.corner(t, (k + 1) % 3);
                worst = Math.max(worst, Math.abs(Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a)) / form.distance(a, b) - 1));
            }
        return worst;
    }

    private static double distance(FlatMap map, int a, int b) {
        return Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a));
    }

    /** One strip of triangles between two polygons is exactly developable, whatever they are. */
    @Test
    void aStripOfTrianglesComesOutWithoutStrainToRounding() {
        TriMesh cone = Grids.of(60, 1, (u, v) -> {
            double a = 5 * u, r = 40 + 60 * v;
            return new double[] {r * Math.sin(a), r * Math.cos(a), 90 * v + 7 * Math.sin(9 * u)};
        });
        assertTrue(worstEdge(flat(cone)) < 1e-9, "worst " + worstEdge(flat(cone)));
    }

    @Test
    void aTubeCutOpenComesOutWithoutStrainToRounding() {
        TriMesh tube = Grids.of(90, 30, (u, v) -> new double[] {50 * Math.sin(6.2 * u), 50 * Math.cos(6.2 * u), 200 * v});
        FlatMap map = flat(tube);
        assertTrue(worstEdge(map) < 1e-9, "worst " + worstEdge(map));
        double chord = 2 * 50 * Math.sin(6.2 / 90 / 2);
        assertEquals(Math.hypot(90 * chord, 200), distance(map, 0, tube.vertexCount() - 1), 1e-6);
    }

    /** D = 200, d = 120, H = 90 mm: slant 98.4886, R 246.2214, r 147.7329 mm, 146.2098° [C, slant and sector formulas of the checks]. */
    @ParameterizedTest
    @CsvSource({"200,120,90,246.2214,147.7329,146.2098", "8,5,4,11.3920,7.1200,126.4044"})
    void aFrustumConvergesToItsSectorAtSecondOrder(double wide, double narrow, double high, double outer, double inner, double angle) {
        double[] error = new double[3];
        for (int i = 0; i < 3; i++) {
            int n = 24 << i, m = 4 << i;
            TriMesh frustum = Grids.of(n, m, (u, v) -> {
                double a = -2 * Math.PI * u, r = (narrow + (wide - narrow) * (1 - v)) / 2;
                return new double[] {r * Math.cos(a), r * Math.sin(a), high * v};
            });
            FlatMap map = flat(frustum);
            int end = n * (m + 1);
            double chordOuter = distance(map, 0, end), chordInner = distance(map, m, end + m);
            double turn = Math.toRadians(angle);
            assertEquals(outer - inner, distance(map, 0, m), 1e-4 * outer, "the slant lies along a generator");
            // both ends lie on circles about the apex: the chord of the open side tells radius and angle together
            error[i] = chordOuter - 2 * outer * Math.sin((2 * Math.PI - turn < Math.PI ? 2 * Math.PI - turn : turn) / 2);
            assertEquals(inner / outer, chordInner / chordOuter, 1e-3);
        }
        assertEquals(2, Math.log(error[0] / error[1]) / Math.log(2), 0.2, "order from " + error[0] + " to " + error[1]);
        assertEquals(2, Math.log(error[1] / error[2]) / Math.log(2), 0.2, "order from " + error[1] + " to " + error[2]);
        assertTrue(Math.abs(error[2]) < 2e-3 * outer);
    }

    /** do Carmo, Differential Geometry of Curves and Surfaces, section 4-2 [M]: catenoid and helicoid have the same metric. */
    @Test
    void catenoidAndHelicoidGiveTheSameBlankAtSecondOrder() {
        double[] difference = new double[2];
        for (int i = 0; i < 2; i++) {
            int n = 20 << i;
            TriMesh catenoid = Grids.of(n, n, (s, r) -> {
                double u = 1.2 * s - 0.6, v = 1.5 * r;
                return new double[] {100 * Math.cosh(u) * Math.cos(v), 100 * Math.cosh(u) * Math.sin(v), 100 * u};
            });
            TriMesh helicoid = Grids.of(n, n, (s, r) -> {
                double u = 1.2 * s - 0.6, v = 1.5 * r;
                return new double[] {100 * Math.sinh(u) * Math.sin(v), -100 * Math.sinh(u) * Math.cos(v), 100 * v};
            });
            FlatMap one = flat(catenoid), two = flat(helicoid);
            int last = one.form().vertexCount() - 1;
            for (int a : new int[] {0, n, last - n, n * (n + 1) / 2}) difference[i] = Math.max(difference[i],
                    Math.abs(distance(one, a, last) - distance(two, a, last)));
        }
        assertTrue(difference[1] < 0.05, "mm " + difference[1]);
        assertEquals(2, Math.log(difference[0] / difference[1]) / Math.log(2), 0.3, difference[0] + " to " + difference[1]);
    }
}
