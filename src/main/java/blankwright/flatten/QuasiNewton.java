package blankwright.flatten;

import blankwright.flatten.energy.TriangleEnergy;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import java.util.concurrent.CancellationException;

/**
 * Goes on downhill with a factor that was found for a step before: each step asks the factor once and the gradient once, and learns from
 * both gradients how the factor's picture is to be mended. Where a valley is bent, or pressed triangles give way by twisting, which the
 * factor leaves out, many such steps for the price of one factor do more than a new factor would.
 *
 * <p>A step goes at most 0.9 of the way to the first triangle without area; which way it takes depends on nothing but the place and the factor.
 * <p>Source: Nocedal, "Updating quasi-Newton matrices with limited storage", 1980; docs/sources.md [N80].
 */
final class QuasiNewton {
    private static final double SHORTEST = 1e-4;          // step, in that asked for, below which a new factor is wanted
    private static final double BENT = 1e-10;             // cosine of move and change of gradient from which a step teaches something

    private final Distortion form;
    private final Cholesky solver;
    private final TriangleEnergy energy;
    private final Progress progress;
    private final int most;                               // steps
    private final int memory;                             // steps that are remembered
    private final double[][] moves, changes;              // of place, of gradient; step k in row k mod memory
    private final double[] inverse;                       // of their product
    private int learnt;                                   // steps

    /**
     * @param solver holds a factor of what is nearly the second derivative
     * @param most steps
     * @param memory steps that are remembered, each with two numbers an unknown
     */
    QuasiNewton(Distortion form, Cholesky solver, TriangleEnergy energy, Progress progress, int most, int memory) {
        this.form = form;
        this.solver = solver;
        this.energy = energy;
        this.progress = progress;
        this.most = most;
        this.memory = memory;
        moves = new double[memory][];
        changes = new double[memory][];
        inverse = new double[memory];
    }

    /**
     * Moves {@code uv} downhill in place.
     *
     * @param value energy there
     * @param worth energy below which nothing more need be gained
     * @return the energy where it ends
     * @throws CancellationException once the result is not wanted
     */
    double run(double[] uv, double value, double worth) {
        int n = uv.length;
        double[] gradient = new double[n], next = new double[n], move = new double[n], there = new double[n];
        form.gradient(energy, uv, gradient);
        for (int step = 0; step < most; step++) {
            if (progress.cancelled()) throw new CancellationException();
            direction(gradient, move);
            double slope = Descent.dot(gradient, move);
            if (!(-slope / 2 > worth)) break;
            double length = energy.barrier() ? Math.min(1, 0.9 * form.longestStep(uv, move)) : 1, energyThere;
            while (true) {
                for (int i = 0; i < n; i++) there[i] = uv[i] + length * move[i];
                energyThere = form.value(energy, there);
                if (energyThere <= value + Descent.ARMIJO * length * slope) break;
                length /= 2;
                if (length < SHORTEST) return value;
            }
            form.gradient(energy, there, next);
            learn(uv, there, gradient, next);
            System.arraycopy(there, 0, uv, 0, n);
            System.arraycopy(next, 0, gradient, 0, n);
            value = energyThere;
        }
        return value;
    }

    /** Writes the move: downhill, as the factor has it, mended by what was learnt. */
    private void direction(double[] gradient, double[] move) {
        double[] part = new double[memory];
        for (int i = 0; i < move.length; i++) move[i] = -gradient[i];
        int oldest = Math.max(0, learnt - memory);
        for (int k = learnt - 1; k >= oldest; k--) {
            int m = k % memory;
            part[m] = inverse[m] * Descent.dot(moves[m], move);
            add(-part[m], changes[m], move);
        }
        solver.solve(move, move);
        for (int k = oldest; k < learnt; k++) {
            int m = k % memory;
            add(part[m] - inverse[m] * Descent.dot(changes[m], move), moves[m], move);
        }
    }

    private void learn(double[] from, double[] to, double[] gradient, double[] next) {
        int m = learnt % memory;
        double[] move = difference(from, to), change = difference(gradient, next);
        double product = Descent.dot(move, change);
        if (!(product > BENT * Math.sqrt(Descent.dot(move, move) * Descent.dot(change, change)))) return;
        moves[m] = move;
        changes[m] = change;
        inverse[m] = 1 / product;
        learnt++;
    }

    private static double[] difference(double[] from, double[] to) {
        double[] difference = new double[from.length];
        for (int i = 0; i < from.length; i++) difference[i] = to[i] - from[i];
        return difference;
    }

    private static void add(double factor, double[] of, double[] to) {
        for (int i = 0; i < to.length; i++) to[i] += factor * of[i];
    }
}
