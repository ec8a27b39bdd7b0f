package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Buckling of plates against Timoshenko and Gere, "Theory of Elastic Stability", 2nd ed. 1961, ch. 9, and Gerard and Becker, NACA TN 3781,
 * 1957. The books' own numbers (4.00, 6.97, 5.42, 0.425, 1.277, 5.34, 8.98) are from memory; those used here are computed from the closed
 * form: the Lévy solution for plates with two supported edges, k(a/b) = min (mb/a + a/mb)², a Ritz solution of 14 terms for shear, Bessel
 * functions for circular plates. k = 4 for the square was read in Megson, p. 171.
 */
class PlatesMatchTableTest {
    /** At 16 squares over the width; edges: the two loaded ones, then the sides. */
    @ParameterizedTest(name = "{0} a/b {1} nu {2}: {3}")
    @CsvSource({
        "SSSS, 1, 0.3, 4", "SSSS, 0.5, 0.3, 6.25", "SSSS, 0.7, 0.33, 4.531", "SSSS, 1.4142135623730951, 0.3, 4.5", "SSSS, 2, 0.3, 4",
        "SSSS, 3, 0.3, 4", "SSSS, 0.2, 0.3, 27.04",
        "SSCC, 0.661, 0.3, 6.9709", "SSSC, 0.795, 0.3, 5.4097",
        "SSSF, 0.5, 0.3, 4.3558", "SSSF, 1, 0.3, 1.4016", "SSSF, 2, 0.3, 0.6681", "SSSF, 5, 0.3, 0.4642",
        "SSSF, 1, 0.25, 1.4342", "SSSF, 2.5, 0.25, 0.6104",
        "SSSF, 10, 0.3, 0.4352",
        "SSCF, 1.638, 0.3, 1.2804", "SSCF, 1.634, 0.25, 1.3290", "SSCF, 1.638, 0.3333333333333333, 1.2462"})
    void compressedPlatesWithinOnePercent(String edges, double ratio, double poisson, double k) {
        int ny = ratio > 4 ? 10 : 16, nx = Math.max(8, (int) Math.round(ny * Math.min(ratio, 4)));
        assertEquals(k, Plates.k(100 * ratio, 100, nx, ny, edges, poisson, 1, 0), 0.01 * k);
    }

    /** A long flange of the alloy's own ν: 6(1 - ν)/π² plus the ends' (b/a)², high by less than 0.4 % above a/b = 4. */
    @ParameterizedTest
    @CsvSource({"0.33, 0.4073", "0.30, 0.4255", "0.25, 0.4559"})
    void longFlangesDependOnPoissonsRatio(double poisson, double longest) {
        assertEquals(6 * (1 - poisson) / (Math.PI * Math.PI), longest, 5e-5);
        assertEquals(longest + 0.01, Plates.k(1000, 100, 40, 10, "SSSF", poisson, 1, 0), 0.01 * longest);
    }

    /** A long plate stands for the endless one; supported 16 wide as long as wide: 5.336 and 8.978 are those of the endless plate. */
    @Test
    void shearOfLongPlatesWithinOnePercent() {
        assertEquals(5.336, Plates.k(1600, 100, 160, 10, "SSSS", 0.3, 0, 1), 0.01 * 5.336);
        assertEquals(8.978, Plates.k(1200, 100, 120, 10, "CCCC", 0.3, 0, 1), 0.01 * 8.978);
    }

    /** Halve the squares, a second-order error falls four times. */
    @ParameterizedTest
    @CsvSource({"SSSS, 1, 4", "SSCC, 0.661, 6.9709", "SSSC, 0.795, 5.4097", "SSSF, 1, 1.401609", "SSCF, 1.638, 1.28036"})
    void convergesAtOrderTwo(String edges, double ratio, double k) {
        double coarse = Math.abs(Plates.k(100 * ratio, 100, 6, 6, edges, 0.3, 1, 0) - k);
        double fine = Math.abs(Plates.k(100 * ratio, 100, 12, 12, edges, 0.3, 1, 0) - k);
        double order = Math.log(coarse / fine) / Math.log(2);
        assertTrue(order > 1.6, edges + ": error " + coarse + " then " + fine + ", order " + order);
    }

    /** [C]: 25.437 MPa for E 68.9 GPa, ν 0.33, t 1, b 100; 73.260 MPa for k 1.28, t 1.2, b 40. */
    @Test
    void sampleStresses() {
        assertEquals(25.437, Plates.k(100, 100, 16, 16, "SSSS", 0.33, 1, 0) * stress(0.33, 1, 100), 0.25);
        assertEquals(25.437, 4 * stress(0.33, 1, 100), 5e-4);
        assertEquals(73.260, 1.28 * stress(0.33, 1.2, 40), 1e-3);
    }

    private static double stress(double poisson, double t, double b) {
        return Math.PI * Math.PI * Sheet.elastic(Plates.E, poisson, t).bendingStiffness() / (b * b * t);
    }

    /** Thrust round the edge, N = c D / a²: clamped 14.682 for any ν, supported 4.1978 (ν 0.3), 4.0690 (0.25), 4.2824 (1/3). */
    @ParameterizedTest
    @CsvSource({"0.3, C, 14.682", "0.3, S, 4.1978", "0.25, S, 4.0690", "0.3333333333333333, S, 4.2824"})
    void circularPlatesWithinOnePercent(double poisson, String edge, double c) {
        double found = circular(poisson, edge, 16);
        assertEquals(c, found, 0.01 * c);
        double coarse = Math.abs(circular(poisson, edge, 8) - c), fine = Math.abs(found - c);
        assertTrue(coarse > 2.8 * fine, "order: " + coarse + " then " + fine);
    }

    private static double circular(double poisson, String edge, int rings) {
        double a = 100;
        TriMesh mesh = Plates.disc(a, rings);
        boolean[] held = new boolean[6 * mesh.vertexCount()];
        for (int v = 0; v < mesh.vertexCount(); v++) {
            held[6 * v] = held[6 * v + 1] = held[6 * v + 5] = true;
            if (Math.hypot(mesh.x(v), mesh.y(v)) < a * (1 - 1e-9)) continue;
            held[6 * v + 2] = true;
            if (edge.equals("C")) held[6 * v + 3] = held[6 * v + 4] = true;
        }
        Sheet sheet = Sheet.elastic(206_000, poisson, 1);
        double unit = sheet.bendingStiffness() / (a * a);
        return Buckling.of(mesh, sheet, Plates.force(mesh, -unit, -unit, 0), held,
                Eigenpairs.Limits.DEFAULT.withWanted(1).withMultiple(false), () -> false).modes().get(0).loadFactor();
    }
}
