package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Random;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;

/** Stresses as unknowns of their own: what they must give in cases that need none of them, and what they are for. */
class StressesTest {
    private static final Resistance SOFT = new Resistance(70_000, 45, 180, 0.25, 0.7);
    private static final TriMesh ONE = TriMesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {0, 1, 2});
    private static final double UNIT = Math.sqrt(ONE.area());

    /** Corners of the triangle mapped by [a b; c d]. */
    private static double[] mapped(double a, double b, double c, double d) {
        return new double[] {0, 0, a / UNIT, c / UNIT, b / UNIT, d / UNIT};
    }

    /** The map with these true strains of the forming, first along the angle, turned by the other. */
    private static double[] strained(double e1, double e2, double angle, double turn) {
        SimpleMatrix v = rotation(angle), j = rotation(turn).mult(v).mult(SimpleMatrix.diag(Math.exp(-e1), Math.exp(-e2))).mult(v.transpose());
        return mapped(j.get(0, 0), j.get(0, 1), j.get(1, 0), j.get(1, 1));
    }

    private static SimpleMatrix rotation(double angle) {
        return new SimpleMatrix(new double[][] {{Math.cos(angle), -Math.sin(angle)}, {Math.sin(angle), Math.cos(angle)}});
    }

    private static SimpleMatrix square(double[] lower) {
        SimpleMatrix a = new SimpleMatrix(4, 4);
        for (int i = 0, s = 0; i < 4; i++)
            for (int j = 0; j <= i; j++, s++) {
                a.set(i, j, lower[s]);
                a.set(j, i, lower[s]);
            }
        return a;
    }

    private static SimpleMatrix second(LeastWork work, Stresses stresses, double[] uv) {
        double[] out = new double[6], second = new double[Distortion.SECOND];
        new Distortion(ONE).gradient(work, uv, out, second, stresses, 0);
        stresses.begun();
        return square(second);
    }

    private static double least(SimpleMatrix a) {
        return a.eig().getEigenvalues().stream().mapToDouble(c -> c.real).min().orElseThrow();
    }

    /** Differences of the gradient, by central differences in the places of the corners; what is negative in the twist kept. */
    @Test
    void stressesThatNoLongerChangeGiveTheTrueSecondDerivative() {
        Random random = new Random(5);
        LeastWork work = LeastWork.of(SOFT);
        Distortion form = new Distortion(ONE);
        double[] out = new double[6], second = new double[Distortion.SECOND], lower = new double[21], up = new double[6], down = new double[6];
        for (int i = 0; i < 300; i++) {
            double[] uv = strained(0.05 * random.nextGaussian(), 0.05 * random.nextGaussian(), 3 * random.nextDouble(), 6 * random.nextDouble());
            Stresses stresses = new Stresses(1, work, 0.03);
            second(work, stresses, uv);
            form.gradient(work, uv, out, second, stresses, 1);
            form.stiffness(second).lowerTriangle(0, lower);
            double most = 0;
            for (double number : lower) most = Math.max(most, Math.abs(number));
            for (int c = 0; c < 6; c++) {
                double[] moved = uv.clone();
                moved[c] += 1e-6;
                form.gradient(work, moved, up);
                moved[c] -= 2e-6;
                form.gradient(work, moved, down);
                for (int r = c; r < 6; r++) assertEquals((up[r] - down[r]) / 2e-6, lower[r * (r + 1) / 2 + c], 1e-4 * most, r + " by " + c);
            }
        }
    }

    @Test
    void gradientIsTheSame() {
        LeastWork work = LeastWork.of(SOFT, new double[] {2}, new double[] {5});
        double[] uv = strained(0.04, -0.07, 0.3, 1), with = new double[6], without = new double[6], second = new double[Distortion.SECOND];
        new Distortion(ONE).gradient(work, uv, without);
        new Distortion(ONE).gradient(work, uv, with, second, new Stresses(1, work, 0.03), 0.5);
        assertArrayEquals(without, with, 1e-12);
    }

    /** Whatever way strains took: turned, through nothing, past yield and back. The change of area has a few hundredths of its own. */
    @Test
    void secondDerivativeStaysNearlyPositiveOnAnyWay() {
        Random random = new Random(6);
        LeastWork work = LeastWork.of(SOFT);
        for (int i = 0; i < 200; i++) {
            Stresses stresses = new Stresses(1, work, 0.03);
            for (int k = 0; k < 10; k++) {
                double size = 0.04 * Math.pow(10, -3 * random.nextDouble());
                SimpleMatrix a = second(work, stresses, strained(size * random.nextGaussian(), size * random.nextGaussian(), 3 * random.nextDouble(), 0));
                assertTrue(least(a) >= -0.05 * a.normF(), () -> "least " + least(a) + " of " + a.normF());
            }
        }
    }

    /** Pulled one way, then as far the other: the tangent would be a fifth of the secant, and the next step would overshoot again. */
    @Test
    void aStrainThatSwingsOverMeetsMoreThanTheSecant() {
        LeastWork work = LeastWork.of(SOFT);
        Stresses swung = new Stresses(1, work, 0.03), stayed = new Stresses(1, work, 0.03);
        double[] there = strained(0.02, -0.01, 0, 0), back = strained(-0.02, 0.01, 0, 0);
        for (int i = 0; i < 2; i++) second(work, swung, there);
        for (int i = 0; i < 2; i++) second(work, stayed, back);
        SimpleMatrix over = second(work, swung, back), same = second(work, stayed, back);
        SimpleMatrix all = second(work, new Stresses(1, work, 1e6), back);         // τ nearly 0: the secant
        double[] secants = new double[Stresses.SECANTS];
        work.secants(0, Math.exp(0.02), Math.exp(-0.01), secants);
        assertTrue(secants[7] < 0.3 * secants[6], "hardly hardens");
        SimpleMatrix along = new SimpleMatrix(4, 1, true, new double[] {-2, 0, 0, 1});
        double swinging = along.transpose().mult(over).mult(along).get(0), secant = along.transpose().mult(all).mult(along).get(0);
        double newton = along.transpose().mult(same).mult(along).get(0);
        assertTrue(swinging > 1.15 * secant && secant > 1.5 * newton, "after a swing " + swinging + ", secant " + secant + ", Newton's " + newton);
    }

    /** Irregular triangles: 20 steps by changes of strain alone. */
    @Test
    void aScanOfTwentyThousandTrianglesTakesNoMoreThanTwelveSteps() {
        LeastWork work = LeastWork.of(new Resistance(69_000, 42, 127, 0.24, 0.65));
        Outcome outcome = Flattener.flatten(Grids.scannedMudguard(100, 1), FlattenOptions.DEFAULT.withWork(work), Progress.NONE);
        assertTrue(outcome instanceof Outcome.Converged && outcome.steps() <= 12, outcome.steps() + " steps");
    }
}
