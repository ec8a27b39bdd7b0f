package blankwright.flatten;

import blankwright.flatten.energy.TriangleEnergy;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import java.util.concurrent.CancellationException;

/**
 * By a factor of the second derivative, as much of it as is positive.
 *
 * <p>A triangle pressed together gives way by twisting: its twist mode is negative. The positive part, triangle by triangle, leaves these
 * modes out, and where many triangles are pressed the last steps then creep, hundreds of them on a crumpled mesh. The sum over all triangles
 * may be positive with the modes in. So a share of them is kept: more after each step that went well, less where a pivot fails. With all of
 * them in, the end is quadratic. An energy that makes its second derivatives fit larger changes has none of them kept.
 * <p>Source of the idea to ask for the full derivative first and project where that fails: Longva, Löschner, Fernández-Fernández, Larionov,
 * Ascher and Bender, "Pitfalls of Projection", 2023; docs/sources.md [LLF23]. The share, and how it is moved, are our own.
 */
final class FactorNewton implements Newton {
    private static final int ATTEMPTS = 12;
    private static final double FIRST = 0.25, LEAST = 0.1;   // shares: the first tried above none, the least worth trying

    private final Distortion form;
    private final Cholesky solver;
    private final TriangleEnergy energy;
    private final Progress progress;
    private double share;                                 // of negative twist to be tried next
    private double good;                                  // share of the last factor
    private double failing = 2;                           // least share that lately failed, let go of slowly
    private double lastRadius = Double.POSITIVE_INFINITY;
    private boolean atOnce;                               // the last factor was found at the first attempt

    FactorNewton(Distortion form, Cholesky solver, TriangleEnergy energy, Progress progress) {
        this.form = form;
        this.solver = solver;
        this.energy = energy;
        this.progress = progress;
    }

    @Override public boolean move(double[] uv, double[] gradient, double radius, double worth, double[] move) {
        TriangleEnergy picture = energy.overChanges(radius);
        if (atOnce && radius <= lastRadius && picture == energy) raise();      // a step that was cut made the radius larger
        lastRadius = radius;
        double lift = LIFT * form.typicalStiffness();
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            if (progress.cancelled()) throw new CancellationException();
            if (solver.factor(form.stiffness(picture, uv, share), lift, progress::cancelled)) {
                for (int i = 0; i < move.length; i++) move[i] = -gradient[i];
                solver.solve(move, move);
                if (Descent.dot(gradient, move) <= 0) {
                    atOnce = attempt == 0;
                    good = share;
                    return true;
                }
            }
            if (share > 0) lower(attempt);
            else lift *= 100;
        }
        return false;
    }

    private void raise() {
        failing = Math.min(2, 1.3 * failing);
        share = Math.min(1, share == 0 ? FIRST : Math.min(2 * share, Math.max(share, (share + failing) / 2)));
    }

    private void lower(int attempt) {
        failing = share;
        if (good > LEAST && good < 0.9 * share) share = attempt == 0 ? (good + share) / 2 : good;
        else share = share > FIRST ? share / 2 : 0;
    }
}
