package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import java.util.Arrays;
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

    /**
     * A shallow cap of parameter λ, so thin that it is shallow in truth.
     *
     * @param unit pressure of the perfect sphere, MPa
     */
    private record Cap(PressedPanel panel, double unit) {
        static Cap of(double lambda, double poisson, boolean clamped, int rings) {
            double a = 100, t = 0.1, radius = Math.sqrt(12 * (1 - poisson * poisson)) * a * a / (lambda * lambda * t);
            TriMesh disc = Plates.disc(a, rings);
            double[] xyz = disc.positions(), even = new double[disc.triangleCount()];
            boolean[] held = new boolean[6 * disc.vertexCount()];
            for (int v = 0; v < disc.vertexCount(); v++) {
                double r = Math.hypot(disc.x(v), disc.y(v));
                xyz[3 * v + 2] = -r * r / (2 * radius);
                if (r > a * (1 - 1e-9)) Arrays.fill(held, 6 * v, 6 * v + (clamped ? 6 : 3), true);
            }
            Arrays.fill(even, 1);
            return new Cap(new PressedPanel(disc.withPositions(xyz), Sheet.elastic(E, poisson, t), held, even, () -> false), classical(t, radius, poisson));
        }
    }

    private static Seen cap(double lambda, double poisson, boolean clamped, int rings) {
        Cap cap = Cap.of(lambda, poisson, clamped, rings);
        double linear = cap.panel.linear(ONE).get(0).loadFactor();
        return new Seen(linear / cap.unit, cap.panel.snap(linear, 1.2 * linear).orElse(Double.POSITIVE_INFINITY) / cap.unit);
    }

    private static double classical(double t, double radius, double poisson) {
        return 2 * E * t * t / (radius * radius * Math.sqrt(3 * (1 - poisson * poisson)));
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
        Arch arch = Arch.of(e);
        double linear = arch.panel.linear(ONE).get(0).loadFactor(), byThrust = Math.min(4, 1 + 2 * e * e) * (1 + 2 * e * e) / (2 * e);
        assertEquals(byThrust, linear / arch.unit, 0.01 * byThrust);
        double snap = snap(e), found = arch.panel.snap(linear, 1.2 * linear).orElse(Double.POSITIVE_INFINITY) / arch.unit;
        if (e < 1) assertEquals(snap, found);
        else assertEquals(snap, found, 0.015 * snap, "linear buckling says " + linear / arch.unit);
    }

    /**
     * The arch in closed form, followed with the program's own steps: what a step does to the rise over what the slope before it promised is below the program's bound
     * where the rise stays on its side, and above it where the arch is on the other side afterwards. Nothing of the shell takes part.
     */
    @Test
    void theBoundOnAStepsWorkPartsStepsFromSnaps() {
        double stays = 0, jumps = Double.POSITIVE_INFINITY;
        for (double e : new double[] {1.1, 1.3, 1.5, 2, 2.3}) {
            double limit = Math.sqrt((e * e - 1) / 3), linear = Math.min(4, 1 + 2 * e * e) * (1 + 2 * e * e) / (2 * e);
            for (double u = limit + 1e-3; u < Math.min(e, 4 * limit); u += 1e-3) {
                double slope = 3 * u * u + 1 - e * e;
                for (double part = 1; part > 0.01; part /= 2) {
                    double step = part * PressedPanel.LONGEST * linear * slope / (1 + 2 * e * e), q = q(e, u) + step;
                    boolean near = q <= q(e, limit);
                    double low = near ? limit : -2 * limit - 3 * e, high = near ? u : -2 * limit;
                    for (int i = 0; i < 60; i++) {
                        double middle = (low + high) / 2;
                        if (q(e, middle) > q) low = middle;
                        else high = middle;
                    }
                    double ratio = (u - low) * slope / step;
                    if (near) stays = Math.max(stays, ratio);
                    else jumps = Math.min(jumps, ratio);
                }
            }
        }
        assertTrue(stays < PressedPanel.WIDE && PressedPanel.WIDE < jumps, stays + " and " + jumps);
    }

    private static double q(double e, double u) {
        return e - u + u * (e * e - u * u);
    }

    /** Any bound from 2 to 3 finds the snap of the arch; one too narrow takes its softening for a snap. */
    @Test
    void aNarrowBoundTakesSofteningForASnap() {
        Arch arch = Arch.of(1.5);
        double linear = 4 * (1 + 2 * 1.5 * 1.5) / (2 * 1.5) * arch.unit, exact = snap(1.5);
        for (double wide : new double[] {2, PressedPanel.WIDE, 3})
            assertEquals(exact, arch.panel.snap(linear, 1.2 * linear, wide).orElseThrow() / arch.unit, 0.015 * exact, "bound " + wide);
        assertTrue(arch.panel.snap(linear, 1.2 * linear, 1.01).orElseThrow() / arch.unit < 0.8 * exact);
    }

    /** The lowest clamped caps that snap go a little way only; without a bound a step goes past it and nothing is seen. */
    @Test
    void withoutABoundALowCapsSnapIsJumpedOver() {
        double lambda = 3.3, poisson = 1.0 / 3, round = new RoundCap(lambda, poisson, true).snap();
        Cap cap = Cap.of(lambda, poisson, true, 10);
        double linear = cap.panel.linear(ONE).get(0).loadFactor();
        for (double wide : new double[] {PressedPanel.WIDE, 3})
            assertEquals(round, cap.panel.snap(linear, 1.2 * linear, wide).orElseThrow() / cap.unit, 0.02 * round, "bound " + wide);
        assertTrue(cap.panel.snap(linear, 1.2 * linear, Double.POSITIVE_INFINITY).isEmpty());
    }

    /** q of the first snap; +∞ where there is none. */
    private static double snap(double e) {
        return e < 1 ? Double.POSITIVE_INFINITY : e * e < 5.5 ? e + Math.sqrt(4 * Math.pow(e * e - 1, 3) / 27) : e + 3 * Math.sqrt(e * e - 4);
    }

    /** @param unit MPa for q = 1 */
    private record Arch(PressedPanel panel, double unit) {
        static Arch of(double e) {
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
            return new Arch(new PressedPanel(flat.withPositions(xyz), Sheet.elastic(E, poisson, t), held, pressure, () -> false), unit);
        }
    }
}
