package blankwright.flatten;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * The round blank of a cap of the unit sphere that makes an energy least, by shooting: nothing of it is shared with the flattener.
 *
 * <p>A point at angle r from the pole lies at radius f(r) on the blank, so the stretches form to blank are f' along the meridian and f/sin r
 * round it. Of the integral of sin r · F(f', f/sin r) the first variation gives, with the pull p = sin r · ∂F/∂f',
 * <pre>p' = ∂F/∂(f/sin r),    p = 0 at the free rim.</pre>
 * f' is found from p by root finding; the start f ~ a r with the a that leaves no pull at the rim.
 */
final class RoundBlank {
    /** ∂F/∂s of the first of two stretches, and F itself. */
    interface Energy {
        double value(double s, double other);

        double slope(double s, double other);
    }

    private static final double SMALLEST = 0.84, LARGEST = 1.3;
    private static final double FROM = 1e-3;            // here the solution is a r to 1e-7

    private final Energy energy;
    private final double rim;

    /** f at the rim, stretches f' and f/sin r there and in the middle, the mean energy, and f at 1/8, 2/8 .. 8/8 of the way out. */
    record Answer(double radius, double along, double round, double middle, double mean, double[] radii) { }

    private RoundBlank(Energy energy, double rim) {
        this.energy = energy;
        this.rim = rim;
    }

    /**
     * @param rim angle from pole to rim, rad
     * @param low stretch in the middle that leaves a pull at the rim of one sign, high of the other
     */
    static Answer of(Energy energy, double rim, double low, double high) {
        RoundBlank blank = new RoundBlank(energy, rim);
        double a = new BrentSolver(1e-13, 1e-13).solve(200, (UnivariateFunction) x -> blank.shoot(x, rim)[1], low, high);
        double[] end = blank.shoot(a, rim), radii = new double[8];
        for (int i = 0; i < 8; i++) radii[i] = blank.shoot(a, rim * (i + 1) / 8)[0];
        return new Answer(end[0], blank.along(0, end[0] / Math.sin(rim)), end[0] / Math.sin(rim), a, end[2] / (1 - Math.cos(rim)), radii);
    }

    /** {f, p, ∫ sin r F} at an angle {@code to} from the pole. */
    private double[] shoot(double a, double to) {
        double sin = Math.sin(FROM);
        double[] y = {a * FROM, sin * energy.slope(a, a), (1 - Math.cos(FROM)) * energy.value(a, a)};
        FirstOrderDifferentialEquations equations = new FirstOrderDifferentialEquations() {
            @Override public int getDimension() {
                return 3;
            }

            @Override public void computeDerivatives(double r, double[] at, double[] d) {
                double round = at[0] / Math.sin(r), along = along(at[1] / Math.sin(r), round);
                d[0] = along;
                d[1] = energy.slope(round, along);
                d[2] = Math.sin(r) * energy.value(along, round);
            }
        };
        new DormandPrince853Integrator(1e-9, rim / 50, 1e-12, 1e-12).integrate(equations, FROM, y, to, y);
        return y;
    }

    /** The stretch f' that gives the pull; outside what a sheet takes before it necks the end of that: the shot went wide. */
    private double along(double pull, double round) {
        if (energy.slope(SMALLEST, round) >= pull) return SMALLEST;
        if (energy.slope(LARGEST, round) <= pull) return LARGEST;
        return new BrentSolver(1e-15, 1e-15).solve(300, (UnivariateFunction) s -> energy.slope(s, round) - pull, SMALLEST, LARGEST);
    }
}
