package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Cholesky;
import blankwright.sparse.Elements;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * The membrane force in a blank that is bent onto its form without having been worked.
 *
 * <p>Each triangle ought to be strained from blank to form; unworked, it takes that strain as stress. The blank is held against the form
 * but may slide along it, so the force is in equilibrium in the surface: the strains are those of the blank plus those of a sliding found
 * from one linear problem with two unknowns a vertex. Without the sliding the force would depend on how the blank was computed and would
 * not vanish at free edges; with it, it depends on the form, the outline and the metal alone, but for second-order terms.
 * <p>Beyond yield the deformation theory: stress over strain is the secant modulus at the effective strain (von Mises), Poisson's ratio
 * goes towards 1/2; found by repeating the linear problem with the secant moduli of the last. The stiffness against a further small change
 * then has the tangent modulus along the stress, the secant modulus else (Stowell 1948).
 * <p>Error: first order in the size of the triangles for each force, second for their mean over neighbours; against the disc pressed onto a
 * sphere see the test.
 * <p>Source: sliding: any text on initial strain in finite elements; plasticity: Gerard and Becker, 1957, docs/sources.md [GB57], Stowell,
 * 1948 [S48].
 */
public final class UnworkedForce {
    private static final int ROUNDS = 12;
    private static final double SETTLED = 2e-3;     // largest change of a secant modulus over E at which the rounds end
    private static final double SHIFT = 1e-10;      // over E t: a form that slides along itself (plane, sphere) leaves u undetermined

    private final TriMesh form;
    private final double[] whole;                   // the strain as given
    private final double[] strain;                  // the share of it
    private final Sheet sheet;
    private final double[] across;                  // 6 per vertex: two tangents
    private final double[] secant;                  // per triangle, MPa
    private final double[] total;                   // 3 per triangle: exx, eyy, gxy with the sliding
    private final double[] force;
    private double yielded;

    /**
     * @param strain 3 per triangle: forming strain blank to form, exx, eyy, exy (logarithms, tensor) in the frame of the triangle, first
     *     axis along its first edge
     * @param share of that strain, above 0: 0.5 = bent half way onto the form
     * @throws CancellationException once {@code cancelled} says so
     */
    public static UnworkedForce of(TriMesh form, double[] strain, double share, Sheet sheet, BooleanSupplier cancelled) {
        if (!(share > 0)) throw new IllegalArgumentException("share " + share + " of the strain: must be above 0");
        if (strain.length != 3 * form.triangleCount())
            throw new IllegalArgumentException(strain.length / 3 + " strains for " + form.triangleCount() + " triangles");
        UnworkedForce force = new UnworkedForce(form, strain.clone(), share, sheet);
        force.settle(cancelled);
        return force;
    }

    /** Of the same blank at another share of its strain, of another sheet. */
    UnworkedForce at(double share, Sheet other, BooleanSupplier cancelled) {
        return of(form, whole, share, other, cancelled);
    }

    TriMesh form() {
        return form;
    }

    private UnworkedForce(TriMesh form, double[] strain, double share, Sheet sheet) {
        this.form = form;
        whole = strain;
        this.strain = strain.clone();
        for (int i = 0; i < strain.length; i++) this.strain[i] *= share;
        this.sheet = sheet;
        across = tangents(form);
        secant = new double[form.triangleCount()];
        java.util.Arrays.fill(secant, sheet.youngs());
        total = new double[strain.length];
        force = new double[strain.length];
    }

    /** 3 per triangle: Nxx, Nyy, Nxy in its frame, N/mm, tension positive; a copy. */
    public double[] force() {
        return force.clone();
    }

    /** 3 per triangle: elastic and plastic strain after sliding, exx, eyy, exy (tensor) in its frame; a copy. */
    public double[] strain() {
        double[] e = total.clone();
        for (int i = 2; i < e.length; i += 3) e[i] /= 2;
        return e;
    }

    /** Effective force (von Mises) of triangle t, N/mm. */
    double effective(int t) {
        return Moduli.effective(new double[] {force[3 * t], force[3 * t + 1], force[3 * t + 2]});
    }

    /** Share of the area beyond yield, 0..1. */
    public double yielded() {
        return yielded;
    }

    private void settle(BooleanSupplier cancelled) {
        Cholesky solver = new Cholesky(form.vertexCount(), form.corners(), form.positions(), 2);
        double[] slide = new double[2 * form.vertexCount()];
        for (int round = 0; round < ROUNDS; round++) {
            if (cancelled.getAsBoolean()) throw new CancellationException();
            Sliding elements = new Sliding();
            if (!solver.factor(elements, SHIFT * sheet.youngs() * sheet.thickness(), cancelled))
                throw new AssertionError("a sum of squares is not positive");
            double[] pull = new double[slide.length];
            elements.pull(pull);
            solver.solve(pull, slide);
            if (measure(slide) <= SETTLED * sheet.youngs()) break;
        }
        double all = 0, beyond = 0;
        for (int t = 0; t < secant.length; t++) {
            double area = form.area(t);
            all += area;
            if (secant[t] < sheet.youngs()) beyond += area;
        }
        yielded = all > 0 ? beyond / all : 0;
    }

    /** Strains and forces after the sliding; the largest change of a secant modulus, which is then the new one. */
    private double measure(double[] slide) {
        Facet f = new Facet();
        double[][] b = new double[3][6];
        double worst = 0;
        for (int t = 0; t < secant.length; t++) {
            if (f.of(form, t).empty) continue;
            strains(f, t, b);
            double[] e = {strain[3 * t], strain[3 * t + 1], 2 * strain[3 * t + 2]};
            for (int i = 0; i < 3; i++) {
                for (int c = 0; c < 6; c++) e[i] += b[i][c] * slide[2 * form.corner(t, c / 2) + c % 2];
                total[3 * t + i] = e[i];
            }
            double es = secantAt(e, secant[t]);
            worst = Math.max(worst, Math.abs(es - secant[t]));
            secant[t] = es;
            double[] s = stress(e, es);
            for (int i = 0; i < 3; i++) force[3 * t + i] = sheet.thickness() * s[i];
        }
        return worst;
    }

    private double[] stress(double[] e, double secant) {
        double[] c = Moduli.isotropic(secant, sheet.poissonAt(secant));
        return new double[] {c[0] * e[0] + c[1] * e[1], c[1] * e[0] + c[3] * e[1], c[5] * e[2]};
    }

    private double secantAt(double[] e, double start) {
        double es = start;
        for (int i = 0; i < 30; i++) {
            double next = sheet.secant(Moduli.effective(stress(e, es)) / es);
            if (Math.abs(next - es) <= 1e-12 * es) return next;
            es = next;
        }
        return es;
    }

    /** Stiffness against a further change. */
    Moduli moduli() {
        if (yielded == 0) return Moduli.elastic(sheet);
        double[] c = new double[6 * secant.length];
        double[] s = new double[3];
        for (int t = 0; t < secant.length; t++) {
            for (int i = 0; i < 3; i++) s[i] = force[3 * t + i] / sheet.thickness();
            System.arraycopy(Moduli.afterYield(sheet, s, secant[t]), 0, c, 6 * t, 6);
        }
        return Moduli.perTriangle(c);
    }

    /** Strains exx, eyy, gxy from the sliding of the three corners along their tangents: b [3][6]. */
    private void strains(Facet f, int t, double[][] b) {
        double[] g = new double[6];
        f.gradients(g);
        for (int k = 0; k < 3; k++)
            for (int a = 0; a < 2; a++) {
                int at = 6 * form.corner(t, k) + 3 * a;
                double u = f.axis[0] * across[at] + f.axis[1] * across[at + 1] + f.axis[2] * across[at + 2];
                double v = f.axis[3] * across[at] + f.axis[4] * across[at + 1] + f.axis[5] * across[at + 2];
                b[0][2 * k + a] = g[2 * k] * u;
                b[1][2 * k + a] = g[2 * k + 1] * v;
                b[2][2 * k + a] = g[2 * k + 1] * u + g[2 * k] * v;
            }
    }

    /** Stiffness of the sliding with the secant moduli. */
    private final class Sliding implements Elements {
        @Override public void lowerTriangle(int t, double[] out) {
            java.util.Arrays.fill(out, 0);
            Facet f = new Facet().of(form, t);
            if (f.empty) return;
            double[][] b = new double[3][6];
            strains(f, t, b);
            double[] c = Moduli.isotropic(secant[t], sheet.poissonAt(secant[t]));
            double h = f.area * sheet.thickness();
            for (int i = 0, s = 0; i < 6; i++) {
                double sx = h * (c[0] * b[0][i] + c[1] * b[1][i]), sy = h * (c[1] * b[0][i] + c[3] * b[1][i]), sxy = h * c[5] * b[2][i];
                for (int j = 0; j <= i; j++, s++) out[s] = sx * b[0][j] + sy * b[1][j] + sxy * b[2][j];
            }
        }

        /** What the strains of the blank pull on the sliding. */
        void pull(double[] to) {
            Facet f = new Facet();
            double[][] b = new double[3][6];
            for (int t = 0; t < secant.length; t++) {
                if (f.of(form, t).empty) continue;
                strains(f, t, b);
                double[] s = stress(new double[] {strain[3 * t], strain[3 * t + 1], 2 * strain[3 * t + 2]}, secant[t]);
                double h = f.area * sheet.thickness();
                for (int c = 0; c < 6; c++)
                    to[2 * form.corner(t, c / 2) + c % 2] -= h * (b[0][c] * s[0] + b[1][c] * s[1] + b[2][c] * s[2]);
            }
        }
    }

    /** Two unit vectors at right angles to each vertex's normal: 6 per vertex. */
    private static double[] tangents(TriMesh form) {
        double[] normal = VertexNormals.of(form), tangent = new double[6 * form.vertexCount()];
        for (int v = 0; v < form.vertexCount(); v++) {
            double x = normal[3 * v], y = normal[3 * v + 1], z = normal[3 * v + 2];
            double[] a = Math.abs(x) <= Math.abs(y) && Math.abs(x) <= Math.abs(z) ? new double[] {0, -z, y}
                    : Math.abs(y) <= Math.abs(z) ? new double[] {z, 0, -x} : new double[] {-y, x, 0};
            double length = Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
            if (!(length > 0)) {
                a = new double[] {1, 0, 0};
                length = 1;
                z = 1;
            }
            for (int i = 0; i < 3; i++) tangent[6 * v + i] = a[i] / length;
            double ax = tangent[6 * v], ay = tangent[6 * v + 1], az = tangent[6 * v + 2];
            tangent[6 * v + 3] = y * az - z * ay;
            tangent[6 * v + 4] = z * ax - x * az;
            tangent[6 * v + 5] = x * ay - y * ax;
        }
        return tangent;
    }
}
