package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Plasticity reduction of Gerard and Becker, NACA TN 3781, 1957 (the factors from memory): with j = Es/E at ν = 1/2, a flange supported on
 * one side j, a long supported plate j(1/2 + √(1 + 3 Et/Es)/4), a wide column j(1 + 3 Et/Es)/4. The plate is uniformly compressed beyond
 * yield; for a hardening exponent n, Et/Es = n.
 */
class YieldedPlatesMatchTableTest {
    private static final double NU = 0.4999;        // so that elastic and yielded metal have the same Poisson's ratio

    /** Stress at buckling after yielding over the elastic one, times E/Es. */
    private static double reduction(double n, double ratio, int nx, int ny, String edges) {
        Sheet sheet = new Sheet(Plates.E, NU, 50, n, 1);
        double secant = 0.1 * Plates.E;
        double effective = 50 * Math.pow(10, n / (1 - n));                       // where σ/ε has fallen to a tenth of E
        assertEquals(secant, sheet.secant(effective / secant), 1e-6 * secant);
        TriMesh mesh = Plates.rectangle(100 * ratio, 100, nx, ny);
        double[] stress = Plates.force(mesh, -effective, 0, 0), moduli = new double[6 * mesh.triangleCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] s = {stress[3 * t], stress[3 * t + 1], stress[3 * t + 2]};
            System.arraycopy(Moduli.afterYield(sheet, s, secant), 0, moduli, 6 * t, 6);
        }
        boolean[] held = Plates.held(mesh, 100 * ratio, 100, edges);
        return factor(mesh, Moduli.perTriangle(moduli), sheet, held) * 10;
    }

    private static double factor(TriMesh mesh, Moduli moduli, Sheet sheet, boolean[] held) {
        double unit = Math.PI * Math.PI * sheet.bendingStiffness() / 1e4;
        return Buckling.of(mesh, moduli, sheet, Plates.force(mesh, -unit, 0, 0), held,
                Eigenpairs.Limits.DEFAULT.withWanted(1).withMultiple(false), () -> false).modes().get(0).loadFactor();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5})
    void longSupportedPlate(double n) {
        double least = Double.POSITIVE_INFINITY;
        for (double ratio = 0.6; ratio < 1.05; ratio += 0.05) least = Math.min(least, reduction(n, ratio, 10, 12, "SSSS"));
        assertEquals(4 * (0.5 + 0.25 * Math.sqrt(1 + 3 * n)), least, 0.01 * least);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5})
    void flangeAndWideColumn(double n) {
        assertEquals(6 * (1 - NU) / (Math.PI * Math.PI), reduction(n, 10, 40, 8, "SSSF") - 0.01 * (1 + 3 * n) / 4, 0.01 * 0.3);
        assertEquals((1 + 3 * n) / 4 * 100, reduction(n, 0.1, 12, 6, "SSYY"), 0.01 * 100, "bends along its short way; k = (b/a)²");
    }

    /** Clamped sides and a clamped flange: j(0.352 + 0.324√(1 + 3Et/Es)) and j(0.330 + 0.335√(1 + 3Et/Es)), which are fits: to 2 and 3.5 %. */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5})
    void clampedSides(double n) {
        double plate = Double.POSITIVE_INFINITY, flange = Double.POSITIVE_INFINITY;
        for (double ratio = 0.4; ratio < 0.72; ratio += 0.04) plate = Math.min(plate, reduction(n, ratio, 8, 14, "SSCC"));
        for (double ratio = 1; ratio < 1.8; ratio += 0.1) flange = Math.min(flange, reduction(n, ratio, 14, 10, "SSCF"));
        double root = Math.sqrt(1 + 3 * n), elastic = LevyPlate.k(1.64, "CF", NU);
        assertEquals(6.9709 * (0.352 + 0.324 * root), plate, 0.02 * plate);
        assertEquals(elastic * (0.330 + 0.335 * root), flange, 0.035 * flange);
    }

    /** A narrow column: Et/E. Its sides are free, so that k is (b/a)²(1 - ν²). */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5})
    void columnsNeedTheTangentModulus(double n) {
        double column = 0.01 * (1 - NU * NU) * n;
        assertEquals(column, reduction(n, 10, 60, 3, "SSFF"), 0.015 * column);
    }

    /** Long plate in shear: j(0.83 + 0.17 Et/Es), roughly; at the same effective stress, √3 times the shear. */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5})
    void shear(double n) {
        assertEquals(5.336 * (0.83 + 0.17 * n), shearReduction(n), 0.05 * 5.336);
    }

    private static double shearReduction(double n) {
        Sheet sheet = new Sheet(Plates.E, NU, 50, n, 1);
        double secant = 0.1 * Plates.E, effective = 50 * Math.pow(10, n / (1 - n));
        TriMesh mesh = Plates.rectangle(1200, 100, 120, 10);
        double[] stress = Plates.force(mesh, 0, 0, effective / Math.sqrt(3)), moduli = new double[6 * mesh.triangleCount()];
        for (int t = 0; t < mesh.triangleCount(); t++)
            System.arraycopy(Moduli.afterYield(sheet, new double[] {stress[3 * t], stress[3 * t + 1], stress[3 * t + 2]}, secant), 0, moduli, 6 * t, 6);
        double unit = Math.PI * Math.PI * sheet.bendingStiffness() / 1e4;
        return 10 * Buckling.of(mesh, Moduli.perTriangle(moduli), sheet, Plates.force(mesh, 0, 0, unit), Plates.held(mesh, 1200, 100, "SSSS"),
                Eigenpairs.Limits.DEFAULT.withWanted(1).withMultiple(false), () -> false).modes().get(0).loadFactor();
    }

    @Test
    void nothingIsReducedBelowYield() {
        double[] c = Moduli.afterYield(new Sheet(70_000, 0.3, 100, 0.2, 1), new double[] {-50, 0, 0}, 70_000);
        assertEquals(70_000 / 0.91, c[0], 1e-9);
    }
}
