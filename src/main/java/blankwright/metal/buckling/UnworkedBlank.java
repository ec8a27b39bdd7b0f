package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Will a blank buckle if it is bent onto its form without being worked, and how?
 *
 * <p>The load factor is the share of the missing strain at which the sheet gives way: below 1 it buckles before it lies on the form, and
 * the modes show where. While all stays elastic that is the λ of {@link Buckling} under the force of {@link UnworkedForce}. Where the sheet
 * has yielded by then (more than {@link #YIELDED} of its area), the share is sought at which force and stiffness after yielding are in
 * balance: the force at the share found last, its λ, and on to share·λ, until λ is near 1. A sheet that stands the
 * whole strain keeps the λ found there.
 */
public final class UnworkedBlank {
    /** Two pairs, as exactly as a count of waves and a load factor to three digits need. */
    private static final Eigenpairs.Limits LIMITS = Eigenpairs.Limits.DEFAULT.withWanted(2).withTolerance(1e-3).withMultiple(false);

    private static final double YIELDED = 0.01;
    private static final double BALANCED = 0.15;        // beyond yield λ goes nearly as 1/share: share·λ is closer by far than λ to 1
    private static final int ROUNDS = 5;

    private final UnworkedForce force;
    private final double share;
    private final Buckling buckling;

    private UnworkedBlank(UnworkedForce force, double share, Buckling buckling) {
        this.force = force;
        this.share = share;
        this.buckling = buckling;
    }

    /**
     * @param elastic force at the whole strain of a sheet that does not yield
     * @param clamped per vertex: held against moving and turning once the blank has slid into place
     */
    static UnworkedBlank of(UnworkedForce elastic, Sheet sheet, boolean[] clamped, Eigenpairs.Limits limits, BooleanSupplier cancelled) {
        TriMesh form = elastic.form();
        if (clamped.length != form.vertexCount())
            throw new IllegalArgumentException(clamped.length + " clamped or not, of " + form.vertexCount() + " vertices");
        boolean[] held = new boolean[6 * clamped.length];
        for (int i = 0; i < held.length; i++) held[i] = clamped[i / 6];
        UnworkedForce force = elastic;
        Buckling buckling = Buckling.of(form, force.moduli(), sheet, force.force(), held, limits, cancelled);
        double share = 1;
        if (buckling.modes().isEmpty()) return new UnworkedBlank(force, share, buckling);
        double next = Math.min(1, buckling.modes().get(0).loadFactor());
        if (!yields(form, force, sheet, next)) return new UnworkedBlank(force, share, buckling);
        for (int round = 0; round < ROUNDS; round++) {
            share = next;
            force = elastic.at(share, sheet, cancelled);
            buckling = Buckling.of(form, force.moduli(), sheet, force.force(), held, limits, cancelled);
            if (buckling.modes().isEmpty()) break;
            next = Math.min(1, share * buckling.modes().get(0).loadFactor());
            if (Math.abs(next - share) <= BALANCED * share) break;
        }
        return new UnworkedBlank(force, share, buckling);
    }

    /** The two lowest modes. */
    public static UnworkedBlank of(UnworkedForce elastic, Sheet sheet, boolean[] clamped, BooleanSupplier cancelled) {
        return of(elastic, sheet, clamped, LIMITS, cancelled);
    }

    /** Whether more of the area than is forgiven is beyond yield at {@code more} times this force. */
    private static boolean yields(TriMesh form, UnworkedForce force, Sheet sheet, double more) {
        double whole = 0, beyond = 0, allowed = sheet.yield() * sheet.thickness();
        for (int t = 0; t < form.triangleCount(); t++) {
            double area = form.area(t);
            whole += area;
            if (more * force.effective(t) > allowed) beyond += area;
        }
        return beyond > YIELDED * whole;
    }

    /** At which the modes were found. */
    public UnworkedForce force() {
        return force;
    }

    /** Share of the missing strain at which the sheet gives way in its first mode; +∞ where it never does. */
    public double loadFactor() {
        return loadFactor(0);
    }

    /** The same for mode i. */
    public double loadFactor(int i) {
        return i < buckling.modes().size() ? share * buckling.modes().get(i).loadFactor() : Double.POSITIVE_INFINITY;
    }

    public List<Buckling.Mode> modes() {
        return buckling.modes();
    }

    public boolean converged() {
        return buckling.converged();
    }
}
