package blankwright.flatten;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * The even blank of a strip round an axis, free at both rims, by shooting: nothing of it is shared with the flattener.
 *
 * <p>A point s along the section, which there has the radius R(s), lies at radius f(s) on the blank; stretches form to blank are f' and f/R. Of the
 * integral of R·(f'² + f'⁻² + (f/R)² + (f/R)⁻²) the first variation gives, with the pull p = R·(2f' - 2f'⁻³),
 * <pre>p' = 2 f/R - 2 (R/f)³,    p = 0 at both rims.</pre>
 */
final class RoundStrip {
    private final DoubleUnaryOperator radius;
    private final double[] breaks;

    /** @param breaks where the section bends, from 0 to its length, mm; the equations are smooth between them */
    RoundStrip(DoubleUnaryOperator radius, double... breaks) {
        this.radius = radius;
        this.breaks = breaks;
    }

    /** Radii of both rims on the blank, {first, last}, mm. */
    double[] rims() {
        double r = radius.applyAsDouble(0);
        double first = new BrentSolver(1e-12, 1e-10).solve(300, f -> shoot(f)[1], 0.6 * r, 1.6 * r);
        return new double[] {first, shoot(first)[0]};
    }

    private double[] shoot(double first) {
        double[] y = {first, 0};
        FirstOrderDifferentialEquations equations = new FirstOrderDifferentialEquations() {
            @Override public int getDimension() {
                return 2;
            }

            @Override public void computeDerivatives(double s, double[] at, double[] d) {
                double r = radius.applyAsDouble(s), round = at[0] / r;
                d[0] = along(at[1] / r);
                d[1] = 2 * round - 2 / (round * round * round);
            }
        };
        for (int i = 1; i < breaks.length; i++)
            if (breaks[i] > breaks[i - 1]) new DormandPrince853Integrator(1e-9, 1, 1e-11, 1e-11).integrate(equations, breaks[i - 1], y, breaks[i], y);
        return y;
    }

    /** 2x - 2/x³ = pull. */
    private static double along(double pull) {
        return new BrentSolver(1e-15, 1e-15).solve(300, x -> 2 * x - 2 / (x * x * x) - pull, 0.2, 5);
    }
}
