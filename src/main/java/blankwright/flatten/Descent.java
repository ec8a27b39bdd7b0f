package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.TriangleEnergy;
import blankwright.num.Progress;

/**
 * Projected Newton descent of one energy on one form.
 *
 * <ol><li>Ask {@link Newton} for a move: to the minimum of the positive part of the second-order picture, or nearly.
 * <li>Step along it; with a barrier at most 0.9 of the way to the first triangle without area.
 * <li>Halve until the energy falls by 1e-4 of what the slope promises; double a full step that gained more than promised.
 * <li>Where the second derivative promised well, take it for smaller changes of strain the next time; where steps were cut, for larger.
 * <li>After the first few steps, go on from each without a new factor as far as {@link Newton#goOn} leads.
 * <li>Stop after a full step that promised less than the tolerance.</ol>
 *
 * <p>Source: Teran, Sifakis, Irving and Fedkiw, "Robust Quasistatic Finite Elements and Flesh Simulation", 2005, docs/sources.md [TSIF05].
 */
final class Descent {
    private static final double RADIUS = 0.03;          // change of strain at the beginning: about what hand work does in a panel
    private static final double NARROWER = 0.25, NARROWER_LEANING = 0.1;    // of it after a step that did as promised; where costs differ the other pays
    private static final double WORTH = 1e-10;          // of the energy: what no move need gain, a tenth of the usual tolerance
    private static final double SHORT = 1.3;            // a fall over the promised gain from which a longer step is tried: a parabola gives 1
    private static final int SOON = 4;                  // steps: most panels are nearly done by then
    private static final double NOISE = 0.01;           // rise, in tolerances, that rounding in slivers can feign
    static final double ARMIJO = 1e-4;                  // part of the promised fall that a step must bring
    private static final double ROUNDING = 1e-15;       // a promised gain below this part of the energy is noise

    /** How a run ended. */
    enum End { CONVERGED, STEP_LIMIT, NO_DESCENT, ASKED }

    /** Looks at each new layout and says whether to go on. */
    interface Watch {
        boolean goOn(double[] uv);
    }

    private final Distortion form;
    private final Newton newton;
    private final TriangleEnergy energy;
    private final FlattenOptions options;
    private final Progress progress;
    private int steps;
    private double value;

    Descent(Distortion form, Newton newton, TriangleEnergy energy, FlattenOptions options, Progress progress) {
        this.form = form;
        this.newton = newton;
        this.energy = energy;
        this.options = options;
        this.progress = progress;
    }

    int steps() {
        return steps;
    }

    double value() {
        return value;
    }

    /** Moves {@code uv} downhill in place. */
    End run(double[] uv, Watch watch) {
        double[] gradient = new double[uv.length], move = new double[uv.length], there = new double[uv.length];
        value = form.value(energy, uv);
        if (!(value < Double.POSITIVE_INFINITY)) return End.NO_DESCENT;         // else no gain would look like being at the bottom
        double firstGain = 0, radius = RADIUS;
        double narrower = options.work().map(LeastWork::contrast).orElse(1.0) > 1 ? NARROWER_LEANING : NARROWER;
        for (steps = 0; steps < options.stepLimit(); ) {
            newton.gradient(uv, radius, gradient);
            if (!newton.move(uv, gradient, radius, WORTH * value, move)) return End.NO_DESCENT;
            double slope = dot(gradient, move);
            double gain = -slope / 2;
            if (!(gain > ROUNDING * value)) return gain >= -ROUNDING * value ? End.CONVERGED : End.NO_DESCENT;
            if (steps == 0) firstGain = gain;
            double room = energy.barrier() ? 0.9 * form.longestStep(uv, move) : Double.POSITIVE_INFINITY;
            double step = Math.min(1, room);
            boolean full = step == 1;
            double next;
            while (true) {
                for (int i = 0; i < uv.length; i++) there[i] = uv[i] + step * move[i];
                next = form.value(energy, there);
                if (next <= value + ARMIJO * step * slope) break;
                if (gain <= options.tolerance() * value && next <= value * (1 + 4 * ROUNDING)) break;   // at the bottom, but for rounding
                if (step == 1 && gain <= options.tolerance() * value && next <= value * (1 + NOISE * options.tolerance())) return End.CONVERGED;
                step /= 2;
                full = false;
                if (step < 1e-12) return gain <= options.tolerance() * value ? End.CONVERGED : End.NO_DESCENT;
            }
            if (full && value - next > SHORT * gain && gain > options.tolerance() * value) next = lengthened(uv, move, room, next, there);
            double fall = value - next, before = value;
            System.arraycopy(there, 0, uv, 0, uv.length);
            value = next;
            steps++;
            progress.at("Laying flat", nearness(firstGain, gain));
            if (gain <= options.tolerance() * value && fall <= (full ? 1 : NOISE) * options.tolerance() * value) return End.CONVERGED;
            radius *= !full ? 2 : fall > 0.8 * gain ? narrower : 1;
            if (steps >= SOON && steps < options.stepLimit()) value = newton.goOn(uv, value, WORTH * value, !full);
            if (gain <= options.tolerance() * value && before - value <= NOISE * options.tolerance() * value) return End.CONVERGED;
            if (!watch.goOn(uv)) return End.ASKED;
        }
        return End.STEP_LIMIT;
    }

    /** Doubles a step that gained more than promised as long as that gains still more; writes the place to {@code there}, returns its energy. */
    private double lengthened(double[] uv, double[] move, double room, double energyThere, double[] there) {
        double[] farther = new double[uv.length];
        double least = energyThere;
        for (double step = 2; step <= room; step *= 2) {
            for (int i = 0; i < uv.length; i++) farther[i] = uv[i] + step * move[i];
            double next = form.value(energy, farther);
            if (!(next < least)) break;
            least = next;
            System.arraycopy(farther, 0, there, 0, there.length);
        }
        return least;
    }

    /** How far the promised gain has come down towards the tolerance, on a logarithmic scale, 0..1. */
    private double nearness(double first, double now) {
        double goal = options.tolerance() * value;
        if (now <= goal || first <= goal) return 1;
        return Math.max(0, Math.min(1, Math.log(first / now) / Math.log(first / goal)));
    }

    static double dot(double[] a, double[] b) {
        return Chunks.sum(a.length, (from, to) -> {
            double sum = 0;
            for (int i = from; i < to; i++) sum += a[i] * b[i];
            return sum;
        });
    }
}
