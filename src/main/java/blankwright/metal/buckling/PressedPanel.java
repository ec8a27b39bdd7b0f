package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Cholesky;
import blankwright.sparse.Eigenpairs;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * A finished panel, held at its edges, under a pressure that pushes against its crown: at which pressure does it snap?
 *
 * <p>Two answers. {@link #linear}: what the pressure does at first (one linear problem) is taken to grow with it, and the least multiple at
 * which that membrane force makes the shell give way is an eigenvalue, as in {@link Buckling}. For a deep shell that is the classical load.
 * For a low crown it is too high, up to several times, and there is one even where nothing snaps at all, since a low crown flattens under the
 * load and loses the stiffness of its shape long before. {@link #snap}: the pressure is raised in steps and the displacement followed with
 * {@link TurningShell}, until the stiffness is no longer positive definite: a limit point or a branching, whichever comes first.
 * <p>Steps end when the pressure is known to 1 %. The metal stays elastic; the sheet has no waves and no stress of its own.
 * <p>Source: following a load: any text on stability, e.g. Bonet and Wood, 1997, docs/sources.md [BW97].
 */
final class PressedPanel {
    private static final double NEAR = 0.01;            // last step over the pressure
    /** Step over the linear pressure, while the panel is as stiff as at first. */
    static final double LONGEST = 0.1;
    /**
     * Work of a step over the one promised by the stiffness before it; more is a snap jumped over. Near a limit point pressure falls off with the square and
     * the cube of the way x still to it, 3 c x² + x³: a step up to it gives 3(2c + x)/(3c + x), which is 2 and at most 3, a jump to the other side
     * 3 + 6c/x. So any number from 2 to 3 keeps both apart; a long step rejected by mistake is halved.
     */
    static final double WIDE = 2.5;
    private static final double AT_REST = 1e-10;        // work of the last correction over that of the load
    private static final int CORRECTIONS = 12;

    private final TriMesh form;
    private final TurningShell shell;
    private final Sheet sheet;
    private final boolean[] held;
    private final double[] load;                        // 6 per vertex, N at 1 MPa
    private final Cholesky solver;
    private final BooleanSupplier cancelled;

    /**
     * @param held 6 per vertex, as for {@link Buckling}; enough that the panel cannot move as a whole
     * @param pressure of each triangle against its outer normal, as multiples of the one asked for
     */
    PressedPanel(TriMesh form, Sheet sheet, boolean[] held, double[] pressure, BooleanSupplier cancelled) {
        this.form = form;
        this.sheet = sheet;
        this.held = held.clone();
        this.cancelled = cancelled;
        shell = new TurningShell(form, sheet, held);
        load = new double[6 * form.vertexCount()];
        for (int t = 0; t < form.triangleCount(); t++) {
            double[] n = form.normal(t);
            double third = -pressure[t] * form.area(t) / 3;
            for (int k = 0; k < 3; k++) for (int i = 0; i < 3; i++) load[6 * form.corner(t, k) + i] += third * n[i];
        }
        for (int i = 0; i < load.length; i++) if (shell.held(i)) load[i] = 0;
        solver = new Cholesky(form.vertexCount(), form.corners(), form.positions(), ShellStiffness.UNKNOWNS);
    }

    /** Displacement under 1 MPa while it is small: 6 per vertex, mm and rad. */
    double[] small() {
        double[] move = new double[load.length];
        if (!factored(move)) throw new IllegalArgumentException("the panel can move without bending or stretching: hold more of it");
        solver.solve(load, move);
        return move;
    }

    /** MPa by linear buckling, with its shape; empty where the pressure presses nothing together. */
    List<Buckling.Mode> linear(Eigenpairs.Limits limits) {
        return Buckling.of(form, sheet, shell.membrane(small(), true), held, limits, cancelled).modes();
    }

    /**
     * MPa at which it snaps; empty where it does not up to {@code most}.
     *
     * @param linear MPa, to choose steps by, above 0
     * @param most MPa, above 0
     */
    OptionalDouble snap(double linear, double most) {
        return snap(linear, most, WIDE);
    }

    /** @param wide in place of {@link #WIDE} */
    OptionalDouble snap(double linear, double most, double wide) {
        double[] at = new double[load.length], ahead = small();
        double pressure = 0, longest = Math.min(LONGEST * linear, most), step = longest, first = dot(load, ahead);
        while (pressure < most) {
            double softer = Math.max(NEAR * Math.max(pressure, NEAR * linear), longest * first / dot(load, ahead));
            step = Math.min(Math.min(step, softer), most - pressure);
            double[] next = at.clone(), further = new double[load.length];
            for (int i = 0; i < next.length; i++) next[i] += step * ahead[i];
            if (settles(next, pressure + step, further) && work(next, at) <= wide * step * dot(load, ahead)) {
                at = next;
                ahead = further;
                pressure += step;
                step *= 1.5;
            } else {
                step /= 2;
                if (step < NEAR * Math.max(pressure, NEAR * linear)) return OptionalDouble.of(pressure + step);
            }
        }
        return OptionalDouble.empty();
    }

    /**
     * Corrects a displacement until it bears the pressure.
     *
     * @param further the displacement for a further 1 MPa; overwritten
     * @return whether it does, and stably so
     */
    private boolean settles(double[] at, double pressure, double[] further) {
        double[] left = new double[load.length];
        for (int round = 0; round < CORRECTIONS; round++) {
            if (cancelled.getAsBoolean()) throw new CancellationException();
            if (!factored(at)) return false;
            double[] borne = shell.forces(at);
            for (int i = 0; i < left.length; i++) left[i] = pressure * load[i] - borne[i];
            double[] move = new double[left.length];
            solver.solve(left, move);
            double gain = dot(left, move);
            if (!(gain < Double.POSITIVE_INFINITY)) return false;
            for (int i = 0; i < at.length; i++) at[i] += move[i];
            if (gain <= AT_REST * pressure * Math.abs(dot(load, at))) {
                solver.solve(load, further);
                return true;
            }
        }
        return false;
    }

    private boolean factored(double[] at) {
        return solver.factor(shell.stiffness(at), 0, cancelled);
    }

    private double work(double[] to, double[] from) {
        double sum = 0;
        for (int i = 0; i < load.length; i++) sum += load[i] * (to[i] - from[i]);
        return sum;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) sum += a[i] * b[i];
        return sum;
    }
}
