package blankwright.strain;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;

/**
 * The strain of a piece averaged to its vertices, weighted by area on the form.
 *
 * <p>What is averaged is the tensor ln U of each triangle in the axes of the blank, E = e1 d1 d1ᵀ + e2 d2 d2ᵀ, never its angles: directions
 * that differ by half a turn are the same, and a triangle without a direction of its own pulls none along. The principal strains at a
 * vertex are those of the mean tensor. The direction on the form is the mean of the directions into which the triangles' rotations carry
 * the one on the blank.
 * <p>On a rim only the triangles with an edge on it count, where there are any of measurable size: the others lie a row farther in. On a
 * turned flange one row of triangles wide, whose edge must be stretched 10 %, the mean of all said 7 %.
 * <p>A vertex no measurable triangle touches has strain 0 and the direction (1, 0, 0).
 * <p>A turned-over triangle takes part with the strain of its mirror image.
 */
public final class VertexStrain {
    private final double[] uu;
    private final double[] uv;
    private final double[] vv;
    private final double[] strain1;
    private final double[] strain2;
    private final double[] angle;
    private final double[] direction;

    private VertexStrain(int n) {
        uu = new double[n];
        uv = new double[n];
        vv = new double[n];
        strain1 = new double[n];
        strain2 = new double[n];
        angle = new double[n];
        direction = new double[3 * n];
    }

    public static VertexStrain of(StrainField field) {
        VertexStrain out = new VertexStrain(field.map().form().vertexCount());
        out.average(field);
        out.solve();
        out.direct(field);
        return out;
    }

    /** Larger principal log strain at vertex v, blank to form. */
    public double strain1(int v) {
        return strain1[v];
    }

    /** Smaller principal log strain at vertex v. */
    public double strain2(int v) {
        return strain2[v];
    }

    /** exp(strain1). */
    public double stretch1(int v) {
        return Math.exp(strain1[v]);
    }

    public double stretch2(int v) {
        return Math.exp(strain2[v]);
    }

    /** The principal strain of larger magnitude as engineering strain: positive = stretch, negative = shrink. */
    public double dominant(int v) {
        return Math.expm1(strain1[v] + strain2[v] >= 0 ? strain1[v] : strain2[v]);
    }

    /** -(strain1 + strain2). */
    public double thicknessStrain(int v) {
        return -(strain1[v] + strain2[v]);
    }

    /** Direction of strain1 on the blank, rad, -π/2 < angle <= π/2; 0 where both strains are the same. */
    public double directionOnBlank(int v) {
        return angle[v];
    }

    /** x of the unit vector on the form into which that direction goes. */
    public double directionX(int v) {
        return direction[3 * v];
    }

    public double directionY(int v) {
        return direction[3 * v + 1];
    }

    public double directionZ(int v) {
        return direction[3 * v + 2];
    }

    /** Mean log strain along u; with {@link #strainUv} and {@link #strainVv} the whole tensor on the blank. */
    public double strainUu(int v) {
        return uu[v];
    }

    public double strainUv(int v) {
        return uv[v];
    }

    public double strainVv(int v) {
        return vv[v];
    }

    private void average(StrainField field) {
        TriMesh form = field.map().form();
        double[] weight = new double[uu.length];
        boolean[] counts = counting(field);
        for (int t = 0; t < field.triangleCount(); t++) {
            if (field.degenerate(t)) continue;
            double w = field.area(t), e1 = field.strain1(t), e2 = field.strain2(t);
            double mean = (e1 + e2) / 2, half = (e1 - e2) / 2, twice = 2 * field.directionOnBlank(t);
            double c = half * Math.cos(twice), s = half * Math.sin(twice);
            for (int k = 0; k < 3; k++) {
                if (!counts[3 * t + k]) continue;
                int v = form.corner(t, k);
                weight[v] += w;
                uu[v] += w * (mean + c);
                uv[v] += w * s;
                vv[v] += w * (mean - c);
            }
        }
        for (int v = 0; v < weight.length; v++) {
            if (!(weight[v] > 0)) continue;
            uu[v] /= weight[v];
            uv[v] /= weight[v];
            vv[v] /= weight[v];
        }
    }

    /** Per corner 3t + k: whether triangle t takes part in the mean at that corner. */
    private static boolean[] counting(StrainField field) {
        TriMesh form = field.map().form();
        EdgeTable edges = EdgeTable.of(form);
        boolean[] counts = new boolean[3 * form.triangleCount()], byRim = new boolean[form.vertexCount()];
        for (int c = 0; c < counts.length; c++) {
            int t = c / 3, k = c % 3;
            counts[c] = !field.degenerate(t) && (edges.twin(c) < 0 || edges.twin(3 * t + (k + 2) % 3) < 0);     // the edges that meet there
            if (counts[c]) byRim[form.corner(t, k)] = true;
        }
        for (int c = 0; c < counts.length; c++) counts[c] |= !byRim[form.corner(c / 3, c % 3)];
        return counts;
    }

    private void solve() {
        for (int v = 0; v < uu.length; v++) {
            double mean = (uu[v] + vv[v]) / 2, c = (uu[v] - vv[v]) / 2, r = Math.sqrt(c * c + uv[v] * uv[v]);
            strain1[v] = mean + r;
            strain2[v] = mean - r;
            angle[v] = r > 0 ? principalAngle(c, uv[v]) : 0;
        }
    }

    private static double principalAngle(double c, double s) {
        double half = Math.atan2(s, c) / 2;
        return half <= -Math.PI / 2 ? half + Math.PI : half;
    }

    private void direct(StrainField field) {
        FlatMap map = field.map();
        TriMesh form = map.form();
        double[] cos = new double[angle.length], sin = new double[angle.length];
        for (int v = 0; v < angle.length; v++) {
            cos[v] = Math.cos(angle[v]);
            sin[v] = Math.sin(angle[v]);
        }
        for (int t = 0; t < field.triangleCount(); t++) {
            if (field.degenerate(t)) continue;
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            double ex = form.x(b) - form.x(a), ey = form.y(b) - form.y(a), ez = form.z(b) - form.z(a);
            double fx = form.x(c) - form.x(a), fy = form.y(c) - form.y(a), fz = form.z(c) - form.z(a);
            double nx = ey * fz - ez * fy, ny = ez * fx - ex * fz, nz = ex * fy - ey * fx;
            double n = Math.sqrt(nx * nx + ny * ny + nz * nz);
            if (map.area(t) < 0) n = -n;                                      // face down: left and right change places
            double dx = field.directionX(t), dy = field.directionY(t), dz = field.directionZ(t);
            double gx = (ny * dz - nz * dy) / n, gy = (nz * dx - nx * dz) / n, gz = (nx * dy - ny * dx) / n;
            double tc = Math.cos(field.directionOnBlank(t)), ts = Math.sin(field.directionOnBlank(t)), w = field.area(t);
            for (int k = 0; k < 3; k++) {
                int v = form.corner(t, k);
                double along = w * (cos[v] * tc + sin[v] * ts), across = w * (sin[v] * tc - cos[v] * ts);
                direction[3 * v] += along * dx + across * gx;
                direction[3 * v + 1] += along * dy + across * gy;
                direction[3 * v + 2] += along * dz + across * gz;
            }
        }
        for (int i = 0; i < direction.length; i += 3) {
            double x = direction[i], y = direction[i + 1], z = direction[i + 2], length = Math.sqrt(x * x + y * y + z * z);
            direction[i] = length > 0 ? x / length : 1;
            direction[i + 1] = length > 0 ? y / length : 0;
            direction[i + 2] = length > 0 ? z / length : 0;
        }
    }
}
