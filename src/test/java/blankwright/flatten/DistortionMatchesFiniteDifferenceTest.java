package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.flatten.energy.StretchEnergy;
import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.flatten.energy.TriangleEnergy;
import blankwright.flatten.energy.Untangling;
import blankwright.mesh.TriMesh;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** The energy's derivatives against differences of the energy, and the positive part against an eigendecomposition. */
class DistortionMatchesFiniteDifferenceTest {
    private static final TriMesh ONE = TriMesh.of(new double[] {0, 0, 0, 2, 0.1, 0.3, 0.4, 1.5, -0.2}, new int[] {0, 1, 2});

    /** Mixed second derivatives, costs that differ, and tangents that fall off; numbers of the size of annealed aluminium's. */
    private static final TriangleEnergy WORK = LeastWork.of(new Resistance(70_000, 45, 180, 0.25, 0.7), new double[] {2}, new double[] {5});

    /** (ln s)²: bends the other way above a stretch of e. */
    private static final class Logarithmic implements StretchEnergy {
        @Override public double value(double s) {
            return s > 0 ? Math.log(s) * Math.log(s) : Double.POSITIVE_INFINITY;
        }

        @Override public double slope(double s) {
            return 2 * Math.log(s) / s;
        }

        @Override public double curvature(double s) {
            return 2 * (1 - Math.log(s)) / (s * s);
        }

        @Override public boolean barrier() {
            return true;
        }
    }

    private static double[] layout(Random random, double noise) {
        double[] uv = {0, 0, 1, 0, 0.2, 0.8};
        for (int i = 0; i < uv.length; i++) uv[i] += noise * random.nextGaussian();
        return uv;
    }

    private static boolean turned(double[] uv) {
        return (uv[2] - uv[0]) * (uv[5] - uv[1]) - (uv[4] - uv[0]) * (uv[3] - uv[1]) <= 0.02;
    }

    /** Singular values by the textbook: roots of the eigenvalues of JᵀJ, J from the two edges, the sign from the determinant. */
    private static double slowValue(TriangleEnergy energy, TriMesh form, double[] uv) {
        double sum = 0, whole = form.area();
        for (int t = 0; t < form.triangleCount(); t++) {
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            double l = form.distance(a, b), m = form.distance(a, c), cos = Math.cos(form.angle(t, 0)), sin = Math.sin(form.angle(t, 0));
            RealMatrix rest = new Array2DRowRealMatrix(new double[][] {{l, m * cos}, {0, m * sin}}).scalarMultiply(1 / Math.sqrt(whole));
            RealMatrix flat = new Array2DRowRealMatrix(new double[][] {{uv[2 * b] - uv[2 * a], uv[2 * c] - uv[2 * a]},
                {uv[2 * b + 1] - uv[2 * a + 1], uv[2 * c + 1] - uv[2 * a + 1]}});
            RealMatrix j = flat.multiply(new org.apache.commons.math3.linear.LUDecomposition(rest).getSolver().getInverse());
            double[] square = new EigenDecomposition(j.transpose().multiply(j)).getRealEigenvalues();
            double det = j.getEntry(0, 0) * j.getEntry(1, 1) - j.getEntry(0, 1) * j.getEntry(1, 0);
            double s1 = Math.sqrt(Math.max(square[0], square[1])), s2 = det / s1;
            sum += form.area(t) / whole * (energy.value(t, s1, s2));
        }
        return sum;
    }

    @Test
    void valueAgreesWithEigenvaluesOnAMesh() {
        TriMesh form = Grids.shaken(Grids.mudguard(6), 5, 3);
        Random random = new Random(4);
        double[] uv = new double[2 * form.vertexCount()];
        for (int v = 0; v < form.vertexCount(); v++) {
            uv[2 * v] = form.y(v) / 400 + 0.004 * random.nextDouble();
            uv[2 * v + 1] = form.z(v) / 200 + 0.004 * random.nextDouble();
        }
        Distortion distortion = new Distortion(form);
        for (TriangleEnergy energy : new TriangleEnergy[] {new Untangling(0.1), WORK})
            assertEquals(slowValue(energy, form, uv), distortion.value(energy, uv), 1e-11 * distortion.value(energy, uv));
    }

    @Test
    void gradientAgreesOnAThousandTriangles() {
        Random random = new Random(21);
        Distortion distortion = new Distortion(ONE);
        for (TriangleEnergy energy : new TriangleEnergy[] {new SymmetricDirichlet(), new Untangling(0.3), WORK})
            for (int i = 0; i < 500; i++) {
                double[] uv = layout(random, 0.25), gradient = new double[6];
                if (energy.barrier() && turned(uv)) continue;
                distortion.gradient(energy, uv, gradient);
                double h = 1e-6, scale = 1;
                for (double g : gradient) scale = Math.max(scale, Math.abs(g));
                for (int k = 0; k < 6; k++) {
                    double[] up = uv.clone(), down = uv.clone();
                    up[k] += h;
                    down[k] -= h;
                    assertEquals((distortion.value(energy, up) - distortion.value(energy, down)) / (2 * h), gradient[k], 1e-4 * scale);
                }
            }
    }

    /** By differences of the gradient. */
    private static RealMatrix secondDerivative(Distortion distortion, TriangleEnergy energy, double[] uv) {
        double h = 1e-6;
        double[][] full = new double[6][6];
        double[] up = new double[6], down = new double[6];
        for (int k = 0; k < 6; k++) {
            double[] there = uv.clone();
            there[k] += h;
            distortion.gradient(energy, there, up);
            there[k] -= 2 * h;
            distortion.gradient(energy, there, down);
            for (int i = 0; i < 6; i++) full[i][k] = (up[i] - down[i]) / (2 * h);
        }
        RealMatrix symmetric = new Array2DRowRealMatrix(full);
        return symmetric.add(symmetric.transpose()).scalarMultiply(0.5);
    }

    private static RealMatrix unpacked(double[] lower) {
        double[][] full = new double[6][6];
        for (int i = 0, s = 0; i < 6; i++) for (int j = 0; j <= i; j++, s++) full[i][j] = full[j][i] = lower[s];
        return new Array2DRowRealMatrix(full);
    }

    @Test
    void stiffnessIsTheSecondDerivativeWhereThatIsPositiveAndNeverNegative() {
        Random random = new Random(22);
        Distortion distortion = new Distortion(ONE);
        int convex = 0;
        for (int i = 0; i < 1000; i++) {
            double[] uv = layout(random, 0.15), lower = new double[21];
            if (i % 4 < 2) for (int k = 0; k < 6; k++) uv[k] *= 2.5;                  // larger than the form: no negative twist
            TriangleEnergy energy = i % 5 == 0 ? WORK : i % 2 == 0 ? new SymmetricDirichlet() : i % 3 == 0 ? new Logarithmic() : new Untangling(0.3);
            if (energy instanceof Logarithmic) for (int k = 0; k < 6; k++) uv[k] *= 4;            // past e, where it bends the other way
            if (turned(uv) && energy.barrier()) continue;
            distortion.stiffness(energy, uv).lowerTriangle(0, lower);
            RealMatrix ours = unpacked(lower), full = secondDerivative(distortion, energy, uv);
            double scale = ours.getNorm();
            double[] eigen = new EigenDecomposition(ours).getRealEigenvalues();
            for (double e : eigen) assertTrue(e > -1e-10 * scale, "eigenvalue " + e);
            double least = Double.POSITIVE_INFINITY;
            for (double e : new EigenDecomposition(full).getRealEigenvalues()) least = Math.min(least, e);
            if (least < -1e-5 * scale) {
                // what was left out is exactly the negative modes: adding them back must be a positive matrix
                for (double e : new EigenDecomposition(ours.subtract(full)).getRealEigenvalues()) assertTrue(e > -1e-4 * scale);
            } else {
                convex++;
                assertTrue(ours.subtract(full).getNorm() < 1e-4 * scale, () -> "differs by " + ours.subtract(full).getNorm());
            }
        }
        assertTrue(convex > 100, "too few positive cases to tell: " + convex);
    }

    /** With all of the negative twist it is the whole second derivative, also of a triangle pressed together; with half of it, half way. */
    @Test
    void stiffnessWithAllNegativeTwistIsTheSecondDerivative() {
        Random random = new Random(24);
        Distortion distortion = new Distortion(ONE);
        int pressed = 0;
        for (int i = 0; i < 500; i++) {
            double[] uv = layout(random, 0.15), positive = new double[21], half = new double[21], all = new double[21];
            TriangleEnergy energy = new SymmetricDirichlet();
            for (int k = 0; k < 6; k++) uv[k] *= 0.8;
            if (turned(uv)) continue;
            distortion.stiffness(energy, uv).lowerTriangle(0, positive);
            distortion.stiffness(energy, uv, 0.5).lowerTriangle(0, half);
            distortion.stiffness(energy, uv, 1).lowerTriangle(0, all);
            RealMatrix full = secondDerivative(distortion, energy, uv);
            double scale = full.getNorm();
            assertTrue(unpacked(all).subtract(full).getNorm() < 1e-4 * scale);
            assertTrue(unpacked(all).add(unpacked(positive)).scalarMultiply(0.5).subtract(unpacked(half)).getNorm() < 1e-12 * scale);
            if (unpacked(positive).subtract(full).getNorm() > 1e-2 * scale) pressed++;
        }
        assertTrue(pressed > 50, pressed + " pressed enough to tell");
    }

    @Test
    void conformalEnergyIsZeroForSimilaritiesAndCountsReflectionsOnly() {
        Distortion distortion = new Distortion(ONE);
        double[] lower = new double[21];
        distortion.conformal().lowerTriangle(0, lower);
        RealMatrix k = unpacked(lower);
        double l = ONE.distance(0, 1), m = ONE.distance(0, 2), a = ONE.angle(0, 0);
        double[] similar = {1, 2, 1 + l * 0.6, 2 + l * 0.8, 1 + m * Math.cos(a + Math.atan2(0.8, 0.6)), 2 + m * Math.sin(a + Math.atan2(0.8, 0.6))};
        double[] mirrored = {0, 0, l, 0, m * Math.cos(a), -m * Math.sin(a)};
        assertEquals(0, quadratic(k, similar), 1e-12 * l * l);
        // J = diag(1, -1) in units of the form: (a - d)² = 4 per unit area, area 1 in that unit
        assertEquals(4 * ONE.area(), quadratic(k, mirrored), 1e-10 * ONE.area());
    }

    private static double quadratic(RealMatrix k, double[] x) {
        double[] kx = k.operate(x);
        double sum = 0;
        for (int i = 0; i < 6; i++) sum += x[i] * kx[i];
        return sum;
    }

    @Test
    void firstRootMatchesBruteForceOnAThousandParabolas() {
        Random random = new Random(23);
        for (int i = 0; i < 1000; i++) {
            double a = random.nextInt(5) == 0 ? 0 : random.nextGaussian(), b = random.nextGaussian(), c = random.nextDouble() + 0.01;
            double root = Distortion.firstRoot(a, b, c), seen = Double.POSITIVE_INFINITY;
            for (double x = 0; x < 50; x += 1e-3)
                if (a * x * x + b * x + c <= 0) {
                    seen = x;
                    break;
                }
            if (seen < 50) assertEquals(seen, root, 2e-3);
            else assertTrue(root > 49 || b * b - 4 * a * c < 1e-4, a + " " + b + " " + c + " -> " + root);
        }
    }
}
