package blankwright.flatten;

import blankwright.flatten.energy.TriangleEnergy;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import java.util.concurrent.CancellationException;

/** By a factor of the positive part of the second derivative, the diagonal lifted more where a pivot fails. */
final class FactorNewton implements Newton {
    private final Distortion form;
    private final Cholesky solver;
    private final TriangleEnergy energy;
    private final Progress progress;

    FactorNewton(Distortion form, Cholesky solver, TriangleEnergy energy, Progress progress) {
        this.form = form;
        this.solver = solver;
        this.energy = energy;
        this.progress = progress;
    }

    @Override public boolean move(double[] uv, double[] gradient, double radius, double worth, double[] move) {
        double lift = LIFT * form.typicalStiffness();
        for (int attempt = 0; attempt < 6; attempt++, lift *= 100) {
            if (progress.cancelled()) throw new CancellationException();
            if (!solver.factor(form.stiffness(energy.overChanges(radius), uv), lift, progress::cancelled)) continue;
            for (int i = 0; i < move.length; i++) move[i] = -gradient[i];
            solver.solve(move, move);
            if (Descent.dot(gradient, move) <= 0) return true;
        }
        return false;
    }
}
