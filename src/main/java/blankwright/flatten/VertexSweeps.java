package blankwright.flatten;

import blankwright.flatten.energy.TriangleEnergy;
import blankwright.num.Progress;
import java.util.concurrent.CancellationException;

/**
 * Moves one vertex after the other downhill, those round it held: a Newton step for two unknowns, halved until the energy round the vertex has
 * fallen. A sweep costs about as much as three gradients, and no factor.
 *
 * <p>It finds what a step of all vertices together is slow to find: where a few triangles are all but flat, these bound every such step, and a
 * vertex of theirs that moves by itself frees it. What is spread over many triangles a sweep hardly moves.
 * <p>Same input, same bits: the vertices go in their order, in one thread.
 * <p>Source: Hormann and Greiner, "MIPS: An efficient global parametrization method", 2000, who move vertices so; of relieving Newton's method
 * of what is hard in few unknowns, Lanzkron, Rose and Wilkes, "An analysis of approximate nonlinear elimination", 1996; docs/sources.md [HG00],
 * [LRW96].
 */
final class VertexSweeps {
    private static final double WORTH = 0.01;             // fall of a sweep, in the energy, from which another one follows
    private static final double NOTHING = 1e-12;          // promised fall, in the energy round a vertex, not worth a move
    private static final int HALVINGS = 12;

    private final Distortion form;
    private final TriangleEnergy energy;
    private final Progress progress;
    private final double[] derivatives = new double[5];

    VertexSweeps(Distortion form, TriangleEnergy energy, Progress progress) {
        this.form = form;
        this.energy = energy;
        this.progress = progress;
    }

    /**
     * Moves {@code uv} downhill in place.
     *
     * @param value energy there
     * @param most sweeps
     * @return the energy where it ends
     * @throws CancellationException once the result is not wanted
     */
    double run(double[] uv, double value, int most) {
        for (int i = 0; i < most; i++) {
            if (progress.cancelled()) throw new CancellationException();
            for (int v = 0; v < uv.length / 2; v++) move(v, uv);
            double before = value;
            value = form.value(energy, uv);
            if (!(value < (1 - WORTH) * before)) break;
        }
        return value;
    }

    private void move(int v, double[] uv) {
        double before = form.around(v, energy, uv, derivatives);
        double gx = derivatives[0], gy = derivatives[1], xx = derivatives[2], xy = derivatives[3], yy = derivatives[4];
        double det = xx * yy - xy * xy, dx = (xy * gy - yy * gx) / det, dy = (xy * gx - xx * gy) / det, slope = gx * dx + gy * dy;
        if (!(det > 0 && slope < -NOTHING * before)) return;
        double x = uv[2 * v], y = uv[2 * v + 1], step = 1;
        for (int i = 0; i < HALVINGS; i++, step /= 2) {
            uv[2 * v] = x + step * dx;
            uv[2 * v + 1] = y + step * dy;
            if (form.around(v, energy, uv) <= before + Descent.ARMIJO * step * slope) return;
        }
        uv[2 * v] = x;
        uv[2 * v + 1] = y;
    }
}
