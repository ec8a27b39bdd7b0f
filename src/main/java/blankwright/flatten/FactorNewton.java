package blankwright.flatten;

import blankwright.flatten.energy.TriangleEnergy;
import blankwright.num.Progress;
import blankwright.sparse.BlockRows;
import blankwright.sparse.Cholesky;
import java.util.Arrays;
import java.util.concurrent.CancellationException;

/**
 * By a factor of the second derivative, as much of it as is positive.
 *
 * <p>A triangle pressed together gives way by twisting: its twist mode is negative. The positive part, triangle by triangle, leaves these
 * modes out, and where many triangles are pressed the last steps then creep, hundreds of them on a crumpled mesh. The sum over all triangles
 * may be positive with the modes in. So a share of them is kept: more after each step that went well, less where a pivot fails. With all of
 * them in, the end is quadratic. An energy that makes its second derivatives fit larger changes has none of them kept.
 *
 * <p>Near a saddle the whole is not positive, and moves by a part of it would creep past. There a move is gone on with, by the whole.
 * <p>Source of the idea to ask for the full derivative first and project where that fails: Longva, Löschner, Fernández-Fernández, Larionov,
 * Ascher and Bender, "Pitfalls of Projection", 2023; docs/sources.md [LLF23]. The share, and how it is moved, are our own. Of going on:
 * Steihaug, "The Conjugate Gradient Method and Trust Regions in Large Scale Optimization", 1983; docs/sources.md [S83].
 */
final class FactorNewton implements Newton {
    private static final int ATTEMPTS = 12;
    private static final double NEAR = 1e6;                // promised gain, over what is worth gaining, below which a move is gone on with
    private static final int ITERATIONS = 20;              // cheaper than one factor more
    private static final double ENOUGH = 1e-4;            // square of the residual, relative, at which a move is good enough
    private static final double FIRST_REACH = 2;          // in lengths of the first move of the positive picture
    private static final int SWEEPS = 10;                 // after a step that was cut, at most
    private static final int STEPS = 80, MEMORY = 30;     // with the first factor that is gone on with: about the time of ten factors on small panels
    private static final int MANY = 300;                  // steps, all remembered, with each factor after it
    private static final int NUMBERS = 5_000_000;         // that may be remembered, 40 MB, where MEMORY does not take more
    private static final double FIRST = 0.25, LEAST = 0.1;   // shares: the first tried above none, the least worth trying

    private final Distortion form;
    private final Cholesky solver;
    private final TriangleEnergy energy;
    private final Progress progress;
    private double share;                                 // of negative twist to be tried next
    private double good;                                  // share of the last factor
    private double failing = 2;                           // least share that lately failed, let go of slowly
    private double lastRadius = Double.POSITIVE_INFINITY;
    private BlockRows whole;                              // the whole second derivative
    private double reach, lastLength;                     // how far a move may go, and the last one went, in the norm of its picture
    private boolean atReach;                              // the last move went as far as it may
    private boolean wentOn;                               // with one factor at least
    private boolean atOnce;                               // the last factor was found at the first attempt

    FactorNewton(Distortion form, Cholesky solver, TriangleEnergy energy, Progress progress) {
        this.form = form;
        this.solver = solver;
        this.energy = energy;
        this.progress = progress;
    }

    @Override public void gradient(double[] uv, double radius, double[] gradient) {
        form.gradient(energy, uv, gradient);
    }

    @Override public boolean move(double[] uv, double[] gradient, double radius, double worth, double[] move) {
        TriangleEnergy picture = energy.overChanges(radius);
        boolean cut = radius > lastRadius;
        if (atOnce && !cut && picture == energy) raise();                      // a step that was cut made the radius larger
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
                    boolean near = -Descent.dot(gradient, move) < NEAR * worth;
                    if (share < 1 && picture == energy && near) goOn(uv, gradient, lift, cut, move);
                    else reach = 0;
                    return true;
                }
            }
            if (share > 0) lower(attempt);
            else lift *= 100;
        }
        return false;
    }

    /**
     * Goes on from the move of the positive picture to that of the whole second derivative: conjugate gradients with the factor as
     * preconditioner, as far as the reach allows, and up to it where the second derivative is negative.
     */
    private void goOn(double[] uv, double[] gradient, double lift, boolean cut, double[] move) {
        if (whole == null) whole = new BlockRows(uv.length / 2, form.corners());
        whole.fill(form.stiffness(energy, uv, 1), lift);
        int n = move.length;
        double[] positive = move.clone(), left = gradient.clone(), z = new double[n], p = move.clone(), q = new double[n];
        double now = -Descent.dot(gradient, move), first = now, direction = now, across = 0, length = 0;
        if (reach == 0) reach = FIRST_REACH * Math.sqrt(first);
        else if (cut) reach = lastLength / 4;
        else if (atReach) reach = 4 * lastLength;
        Arrays.fill(move, 0);
        atReach = false;
        for (int i = 0; i < ITERATIONS; i++) {
            whole.multiply(p, q);
            double curvature = Descent.dot(p, q), step = curvature > 0 ? now / curvature : Double.POSITIVE_INFINITY;
            double room = (-across + Math.sqrt(across * across + direction * (reach * reach - length))) / direction;
            atReach = step >= room;
            step = Math.min(step, room);
            for (int j = 0; j < n; j++) {
                move[j] += step * p[j];
                left[j] += step * q[j];
            }
            length += 2 * step * across + step * step * direction;
            if (atReach) break;
            solver.solve(left, z);
            double before = now;
            now = Descent.dot(left, z);
            if (!(now > ENOUGH * first)) break;
            double beta = now / before;
            for (int j = 0; j < n; j++) p[j] = beta * p[j] - z[j];
            across = beta * (across + step * direction);
            direction = now + beta * beta * direction;
        }
        lastLength = Math.sqrt(length);
        if (!(-Descent.dot(gradient, move) > LEAST * Math.min(first, reach * Math.sqrt(first)))) {     // rounding, with slivers
            System.arraycopy(positive, 0, move, 0, n);
            reach = 0;
        }
    }

    /**
     * {@inheritDoc} After a step that was cut, which a few triangles do that are all but flat, vertex by vertex first; then all together by
     * the factor of the last move. An energy that makes its second derivatives fit larger changes is left as it is.
     */
    @Override public double goOn(double[] uv, double value, double worth, boolean cut) {
        if (!energy.barrier() || energy.overChanges(1) != energy) return value;
        double swept = cut ? new VertexSweeps(form, energy, progress).run(uv, value, SWEEPS) : value;
        int memory = Math.max(MEMORY, Math.min(MANY, NUMBERS / (2 * uv.length)));
        QuasiNewton further = wentOn ? new QuasiNewton(form, solver, energy, progress, Math.max(STEPS, memory), memory)
                : new QuasiNewton(form, solver, energy, progress, STEPS, MEMORY);
        wentOn = true;
        return further.run(uv, swept, worth);
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
