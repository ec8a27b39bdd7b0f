package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Panels under pressure, by linear buckling and step by step, against caps in one dimension, the perfect sphere and the shallow arch.
 *
 * <p>Clamped caps, published: no snap below λ = 3.3, axisymmetric snap at 0.58 of the sphere's classical pressure at λ = 4 (Budiansky 1959),
 * unsymmetrical buckling at 0.75 to 0.80 from λ = 6 on (Huang, "Unsymmetrical buckling of thin shallow spherical shells", 1964); all from
 * memory.
 */
class PressedPanelMatchesClosedFormTest {
    private static final double E = 68_900;
    private static final Eigenpairs.Limits ONE = Eigenpairs.Limits.DEFAULT.withWanted(1).withTolerance(1e-4).withMultiple(false);

    private record Seen(double linear, double snap) { }

    /** A shallow cap of parameter λ, so thin that it is shallow in truth; pressures over that of the perfect sphere. */
    private static Seen cap(double lambda, double poisson, boolean clamped, int rings) {
        double a = 100, t = 0.1, radius = Math.sqrt(12 * (1 - poisson * poisson)) * a * a / (lambda * lambda * t);
        TriMesh disc = Plates.disc(a, rings);
        double[] xyz = disc.positions();
        boolean[] held = new boolean[6 * disc.vertexCount()];
        for (int v = 0; v < disc.vertexCount(); v++) {
            double r = Math.hypot(disc.x(v), disc.y(v));
            xyz[3 * v + 2] = -r * r / (2 * radius);
            if (r > a * (1 - 1e-9)) Arrays.fill(held, 6 * v, 6 * v + (clamped ? 6 : 3), true);
        }
        return seen(disc.withPositions(xyz), Sheet.elastic(E, poisson, t), held, classical(t, radius, poisson));
    }

    private static double classical(double t, double radius, double poisson) {
        return 2 * E * t * t / (radius * radius * Math.sqrt(3 * (1 - poisson * poisson)));
    }

    private static Seen seen(TriMesh mesh, Sheet sheet, boolean[] held, double unit) {
        double[] even = new double[mesh.triangleCount()];
        Arrays.fill(even, 1);
        PressedPanel panel = new PressedPanel(mesh, sheet, held, even, () -> false);
        double linear = panel.linear(ONE).get(0).loadFactor();
        OptionalDouble snap = panel.snap(linear, 1.2 * linear);
        return new Seen(linear / unit, snap.orElse(Double.POSITIVE_INFINITY) / unit);
    }

    /** While it stays round, which a clamped cap does up to λ of 5.5; to the 1 % of the last step. */
    @ParameterizedTest
    @CsvSource({"3.5, true", "4, true", "5, true", "3, false"})
    void capsSnapAsTheRoundOneDoes(double lambda, boolean clamped) {
        double round = new RoundCap(lambda, 1.0 / 3, clamped).snap();
        assertEquals(round, cap(lambda, 1.0 / 3, clamped, 14).snap, 0.02 * round);
    }

    /** [M] 0.58 at λ = 4; by linear buckling one and a half. Below 3.3 nothing snaps, and linear buckling does not know it. */
    @Test
    void linearBucklingSaysTooMuchForLowCaps() {
        assertEquals(Double.POSITIVE_INFINITY, new RoundCap(3.25, 1.0 / 3, true).snap());
        assertTrue(new RoundCap(3.4, 1.0 / 3, true).snap() < 0.65, "[M] from 3.3 on it snaps");
        assertEquals(0.58, new RoundCap(4, 1.0 / 3, true).snap(), 0.01);
        Seen low = cap(4, 1.0 / 3, true, 12);
        assertEquals(0.58, low.snap, 0.02);
        assertEquals(1.50, low.linear, 0.03);
        Seen none = cap(3, 1.0 / 3, true, 8);
        assertEquals(Double.POSITIVE_INFINITY, none.snap);
        assertEquals(2.57, none.linear, 0.05);
    }

    /** [M] Beyond 5.5 waves round the edge come first: 0.75 to 0.80 of the perfect sphere. */
    @ParameterizedTest
    @CsvSource({"6", "8"})
    void higherCapsBuckleInWaves(double lambda) {
        assertEquals(0.775, cap(lambda, 1.0 / 3, true, 16).snap, 0.03);
    }

    /**
     * A whole sphere, an eighth of it between its planes of symmetry: 2E t²/(R²√(3(1-ν²))), where ten waves fit round it, 10·11 =
     * 2√(3(1-ν²)) R/t. Dead forces are no pressure that turns with the skin, which at ten waves is 1 % of the load.
     */
    @Test
    void completeSphereAtItsClassicalPressure() {
        double poisson = 0.3, radius = 110 / (2 * Math.sqrt(3 * (1 - poisson * poisson)));
        double[] error = new double[2];
        for (int i = 0; i < 2; i++) {
            TriMesh eighth = eighth(radius, i == 0 ? 14 : 28);
            boolean[] held = new boolean[6 * eighth.vertexCount()];
            for (int v = 0; v < eighth.vertexCount(); v++) {
                double[] x = {eighth.x(v), eighth.y(v), eighth.z(v)};
                for (int k = 0; k < 3; k++) if (x[k] < 1e-9) held[6 * v + k] = held[6 * v + 3 + (k + 1) % 3] = held[6 * v + 3 + (k + 2) % 3] = true;
            }
            double[] even = new double[eighth.triangleCount()];
            Arrays.fill(even, 1);
            error[i] = new PressedPanel(eighth, Sheet.elastic(E, poisson, 1), held, even, () -> false).linear(ONE).get(0).loadFactor()
                    / classical(1, radius, poisson) - 1;
        }
        assertEquals(0, error[1], 0.02, "coarser " + error[0]);
        assertTrue(error[0] > error[1], error[0] + " then " + error[1]);
    }

    private static TriMesh eighth(double radius, int n) {
        double[] xyz = new double[3 * (n + 1) * (n + 2) / 2];
        int[] tri = new int[3 * n * n], row = new int[n + 2];
        for (int i = 0; i <= n; i++) row[i + 1] = row[i] + n + 1 - i;
        for (int i = 0, p = 0; i <= n; i++)
            for (int j = 0; j <= n - i; j++) {
                double[] x = {n - i - j, i, j};
                double length = Math.sqrt(x[0] * x[0] + x[1] * x[1] + x[2] * x[2]);
                for (double c : x) xyz[p++] = radius * c / length;
            }
        for (int i = 0, p = 0; i < n; i++)
            for (int j = 0; j < n - i; j++) {
                for (int v : new int[] {row[i] + j, row[i + 1] + j, row[i] + j + 1}) tri[p++] = v;
                if (j == n - i - 1) continue;
                for (int v : new int[] {row[i + 1] + j, row[i + 1] + j + 1, row[i] + j + 1}) tri[p++] = v;
            }
        return TriMesh.of(xyz, tri);
    }

    /**
     * A shallow arch a sin(πx/L) between hinges that do not give, under a pressure that goes with sin(πx/L), as a wide strip. With e = a/(2ρ),
     * ρ = t/√12, the pressure over 2π⁴ E I ρ/L⁴ and the thrust over Euler's, the rise falls from e to u at q = e - u + u(e² - u²). Up to e = 1
     * without a snap; from there to √5.5 with the maximum e + √(4(e² - 1)³/27); beyond it goes to one side at a thrust of 4, q = e + 3√(e² - 4).
     * By linear buckling the thrust 2e q/(1 + 2e²) reaches 4, or 1 + 2e² where that is less. (Both snaps: Fung and Kaplan, "Buckling of low
     * arches or curved beams of small curvature", NACA TN 2840, 1952, from memory; all derived here.)
     */
    @ParameterizedTest
    @CsvSource({"0.9", "1.5", "2", "3", "5"})
    void stripsSnapAsShallowArches(double e) {
        double poisson = 0.3, t = 1, length = 400, rho = t / Math.sqrt(12), modulus = E / (1 - poisson * poisson);
        int parts = 40, wide = 1;
        TriMesh flat = Plates.rectangle(length, 10, parts, wide);
        double[] xyz = flat.positions(), pressure = new double[flat.triangleCount()];
        boolean[] held = new boolean[6 * flat.vertexCount()];
        for (int v = 0; v < flat.vertexCount(); v++) {
            xyz[3 * v + 2] = 2 * e * rho * Math.sin(Math.PI * xyz[3 * v] / length);
            held[6 * v + 1] = held[6 * v + 3] = held[6 * v + 5] = true;
            if (xyz[3 * v] < 1e-9 || xyz[3 * v] > length - 1e-9) held[6 * v] = held[6 * v + 2] = true;
        }
        for (int i = 0; i < pressure.length; i++) {
            double x = (xyz[3 * flat.corner(i, 0)] + xyz[3 * flat.corner(i, 1)] + xyz[3 * flat.corner(i, 2)]) / 3;
            pressure[i] = Math.sin(Math.PI * x / length);
        }
        double unit = 2 * Math.pow(Math.PI / length, 4) * modulus * t * t * t / 12 * rho;
        PressedPanel panel = new PressedPanel(flat.withPositions(xyz), Sheet.elastic(E, poisson, t), held, pressure, () -> false);
        double linear = panel.linear(ONE).get(0).loadFactor(), byThrust = Math.min(4, 1 + 2 * e * e) * (1 + 2 * e * e) / (2 * e);
        assertEquals(byThrust, linear / unit, 0.01 * byThrust);
        double snap = e < 1 ? Double.POSITIVE_INFINITY : e * e < 5.5 ? e + Math.sqrt(4 * Math.pow(e * e - 1, 3) / 27) : e + 3 * Math.sqrt(e * e - 4);
        double found = panel.snap(linear, 1.2 * linear).orElse(Double.POSITIVE_INFINITY) / unit;
        if (e < 1) assertEquals(snap, found);
        else assertEquals(snap, found, 0.015 * snap, "linear buckling says " + linear / unit);
    }
}
