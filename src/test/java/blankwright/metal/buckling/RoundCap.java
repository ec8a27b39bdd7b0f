package blankwright.metal.buckling;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * A shallow round cap held at its edge under an even pressure, as long as it stays round: one dimension, nothing shared with the shell.
 *
 * <p>Marguerre's equations, over the half-span a, with x = r/a, slope y = w' R/a, thrust f = -N_r r a/D, q the pressure over that of the perfect
 * sphere:
 * <pre>x y'' + y' - y/x = 2 λ² q x² - f (x + y),    x f'' + f' - f/x = λ⁴ (x y + y²/2)</pre>
 * y = f = 0 in the middle; at the edge no hoop strain, f' = ν f, and no turning, y = 0, or no moment, y' + ν y = 0. Shooting from the middle
 * for a given curvature there; the first maximum of q is the pressure at which the cap snaps.
 */
final class RoundCap {
    private static final double FROM = 1e-3;

    private final double lambda, poisson;
    private final boolean clamped;

    RoundCap(double lambda, double poisson, boolean clamped) {
        this.lambda = lambda;
        this.poisson = poisson;
        this.clamped = clamped;
    }

    /** q at the first maximum while the curvature in the middle changes by three times that of the cap; +∞ where there is none. */
    double snap() {
        double step = 0.02;
        double[] unknown = {0, 0};
        double[] q = {0, 0, 0};
        for (int i = 1; i * step < 3; i++) {
            solve(-i * step, unknown);
            q[0] = q[1];
            q[1] = q[2];
            q[2] = unknown[1];
            if (i > 2 && q[1] > q[0] && q[1] > q[2]) return q[1] + Math.pow(q[2] - q[0], 2) / (8 * (2 * q[1] - q[0] - q[2]));
        }
        return Double.POSITIVE_INFINITY;
    }

    /** Newton for the slope of f in the middle and q, from those of the curvature before. */
    private void solve(double middle, double[] unknown) {
        for (int round = 0; round < 40; round++) {
            double[] miss = miss(middle, unknown[0], unknown[1]);
            if (Math.abs(miss[0]) + Math.abs(miss[1]) < 1e-10) return;
            double df = 1e-4, dq = 1e-6;
            double[] byF = miss(middle, unknown[0] + df, unknown[1]), byQ = miss(middle, unknown[0], unknown[1] + dq);
            double a = (byF[0] - miss[0]) / df, b = (byQ[0] - miss[0]) / dq, c = (byF[1] - miss[1]) / df, d = (byQ[1] - miss[1]) / dq;
            double det = a * d - b * c;
            unknown[0] -= (d * miss[0] - b * miss[1]) / det;
            unknown[1] -= (a * miss[1] - c * miss[0]) / det;
        }
        throw new AssertionError("no cap of curvature " + middle);
    }

    /** What is wrong at the edge. */
    private double[] miss(double middle, double thrust, double q) {
        double[] at = {middle * FROM, middle, thrust * FROM, thrust};
        new DormandPrince853Integrator(1e-9, 0.1, 1e-12, 1e-12).integrate(new FirstOrderDifferentialEquations() {
            @Override public int getDimension() {
                return 4;
            }

            @Override public void computeDerivatives(double x, double[] v, double[] d) {
                d[0] = v[1];
                d[1] = v[0] / (x * x) - v[1] / x + 2 * lambda * lambda * q * x - v[2] * (1 + v[0] / x);
                d[2] = v[3];
                d[3] = v[2] / (x * x) - v[3] / x + Math.pow(lambda, 4) * (v[0] + v[0] * v[0] / (2 * x));
            }
        }, FROM, at, 1, at);
        return new double[] {clamped ? at[0] : at[1] + poisson * at[0], (at[3] - poisson * at[2]) / (lambda * lambda)};
    }
}
