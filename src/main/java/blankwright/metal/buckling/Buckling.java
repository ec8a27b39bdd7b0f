package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Cholesky;
import blankwright.sparse.Eigenpairs;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Linear buckling of a thin shell: the least factors λ above 0 by which its membrane force must be multiplied for it to give way, and how.
 *
 * <p>(K + λ G) x = 0 with K the elastic stiffness on the form and G the geometric stiffness of the force. λ below 1: it buckles under the
 * force as it is.
 * <p>A shell held nowhere can move as a whole without any work. It is held at one vertex, which a force in equilibrium does not feel, and
 * motions of the whole are taken out of what G sees.
 * <p>Source: any text on plates, e.g. Timoshenko and Gere, 1961, docs/sources.md [TG61]; eigenpairs by {@link Eigenpairs}.
 */
public final class Buckling {
    /**
     * One way of giving way.
     *
     * @param loadFactor λ, above 0
     * @param displacement 3 per vertex, no unit, the longest of length 1, along the outer normal there
     * @param residual of the eigenpair in the norm of K⁻¹ over 1/λ
     */
    public record Mode(double loadFactor, double[] displacement, double residual) { }

    private final List<Mode> modes;
    private final int steps;
    private final boolean converged;

    private Buckling(List<Mode> modes, int steps, boolean converged) {
        this.modes = List.copyOf(modes);
        this.steps = steps;
        this.converged = converged;
    }

    /** Least factor first; empty where no multiple of the force makes the shell give way. */
    public List<Mode> modes() {
        return modes;
    }

    /** How many solutions with K it took. */
    public int steps() {
        return steps;
    }

    public boolean converged() {
        return converged;
    }

    /**
     * Of a shell that stays elastic.
     *
     * @param force 3 per triangle: Nxx, Nyy, Nxy in its own frame (first axis along its first edge), N/mm, tension positive
     * @param held 6 per vertex: displacement along x, y, z, rotation about x, y, z
     */
    public static Buckling of(TriMesh form, Sheet sheet, double[] force, boolean[] held, Eigenpairs.Limits limits,
                              BooleanSupplier cancelled) {
        return of(form, Moduli.elastic(sheet), sheet, force, held, limits, cancelled);
    }

    static Buckling of(TriMesh form, Moduli moduli, Sheet sheet, double[] force, boolean[] held, Eigenpairs.Limits limits,
                       BooleanSupplier cancelled) {
        if (force.length != 3 * form.triangleCount())
            throw new IllegalArgumentException(force.length / 3 + " forces for " + form.triangleCount() + " triangles");
        if (held.length != 6 * form.vertexCount())
            throw new IllegalArgumentException(held.length / 6 + " held vertices of " + form.vertexCount());
        boolean free = true;
        for (boolean h : held) free &= !h;
        boolean[] kept = held.clone();
        if (free) for (int u = 0; u < 6; u++) kept[6 * form.corner(0, 0) + u] = true;
        ShellStiffness shell = new ShellStiffness(form, moduli, sheet.poisson(), sheet.thickness(), kept);
        Cholesky solver = new Cholesky(form.vertexCount(), form.corners(), form.positions(), ShellStiffness.UNKNOWNS);
        if (!solver.factor(shell, 0, cancelled))
            throw new IllegalArgumentException("the shell can move without bending or stretching: hold more of it");
        StressWork work = new StressWork(form, force,
                free ? new ShellStiffness(form, moduli, sheet.poisson(), sheet.thickness(), held) : shell);
        RigidMotions rigid = free ? new RigidMotions(form) : null;
        int n = 6 * form.vertexCount();
        double[] scratch = new double[n];
        Eigenpairs.Action a = (from, to) -> {
            if (rigid == null) {
                work.timesMinus(from, to);
                return;
            }
            System.arraycopy(from, 0, scratch, 0, n);
            rigid.remove(scratch);
            work.timesMinus(scratch, to);
            rigid.remove(to);
        };
        Eigenpairs.Action inverse = (from, to) -> {
            System.arraycopy(from, 0, to, 0, n);
            for (int i = 0; i < n; i++) if (kept[i]) to[i] = 0;
            solver.solve(to, to);
        };
        Eigenpairs pairs = Eigenpairs.largest(n, a, inverse, limits, cancelled);
        List<Mode> modes = new ArrayList<>();
        for (int i = 0; i < pairs.count(); i++) {
            double[] x = pairs.vector(i);
            if (rigid != null) rigid.remove(x);
            modes.add(new Mode(1 / pairs.value(i), scaled(form, x), pairs.residual(i)));
        }
        return new Buckling(modes, pairs.steps(), pairs.converged());
    }

    private static double[] scaled(TriMesh form, double[] x) {
        double[] d = new double[3 * form.vertexCount()];
        int most = 0;
        for (int v = 0; v < form.vertexCount(); v++) {
            System.arraycopy(x, 6 * v, d, 3 * v, 3);
            if (square(d, v) > square(d, most)) most = v;
        }
        double length = Math.sqrt(square(d, most));
        if (!(length > 0)) return d;
        double[] normal = VertexNormals.of(form);
        double along = 0;
        for (int k = 0; k < 3; k++) along += d[3 * most + k] * normal[3 * most + k];
        for (int i = 0; i < d.length; i++) d[i] /= Math.copySign(length, along);
        return d;
    }

    private static double square(double[] d, int v) {
        return d[3 * v] * d[3 * v] + d[3 * v + 1] * d[3 * v + 1] + d[3 * v + 2] * d[3 * v + 2];
    }
}
