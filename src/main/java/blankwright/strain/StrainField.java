package blankwright.strain;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Orientation;
import java.util.stream.IntStream;

/**
 * What forming does to each triangle of a piece: the linear map from the blank onto the form, as two principal stretches at right angles.
 *
 * <p>With P = [L p; 0 h] the two edges of a triangle on the form in a frame of its own (first axis along the first edge) and Q = [u1 u2; v1
 * v2] the same edges on the blank, J = Q P⁻¹ maps form to blank and has singular values s1 >= s2. Forming goes the other way:
 * stretch1 = 1/s2 >= stretch2 = 1/s1, no unit, 1 = nothing to do. Strains are those of the forming: positive = stretch, negative = shrink.
 * <p>A triangle without area (twice its area below 1e-13 of its longest side squared) on form or blank tells nothing: its stretches are 1,
 * its direction is that of the u axis, it takes no part in means and extremes, and {@link #degenerate} says so; on the blank it also counts
 * as turned over. Where it has an area on the form but none on the blank, {@link #symmetricDirichletMean} is +∞. Nothing here is ever NaN.
 * <p>A turned-over triangle has the stretches of its mirror image.
 * <p>Error: stretches relative about 1e-15 times the aspect ratio of the triangle; directions the same divided by stretch1/stretch2 - 1.
 * <p>Source: any text on finite strain, e.g. Bonet and Wood, "Nonlinear Continuum Mechanics for Finite Element Analysis", 1997, ch. 3;
 * docs/sources.md [BW97].
 */
public final class StrainField {
    /** Twice the area of a triangle over its longest side squared below which it is a line: rounding leaves two digits of it there. */
    private static final double NO_AREA = 1e-13;
    private static final int CHUNK = 1 << 14;

    private final FlatMap map;
    private final double[] stretch1;
    private final double[] stretch2;
    private final double[] angle;       // of direction1 on the blank, rad, -π/2 < angle <= π/2
    private final double[] direction;   // 3 per triangle, unit, on the form: where direction1 of the blank goes
    private final double[] area;        // on the form, mm²
    private final byte[] state;         // bits below
    private static final byte TURNED = 1, DEGENERATE = 2, COLLAPSED = 4;

    private int turnedOver;
    private double symmetricDirichletMean = 4;
    private double arapMean;
    private double stretchMax;
    private double shrinkMax;
    private double areaGainMax;
    private double areaLossMax;

    private StrainField(FlatMap map) {
        int n = map.form().triangleCount();
        this.map = map;
        stretch1 = new double[n];
        stretch2 = new double[n];
        angle = new double[n];
        direction = new double[3 * n];
        area = new double[n];
        state = new byte[n];
    }

    /** Measures each triangle by itself, on as many threads as there are; the same bits on any number. */
    public static StrainField of(FlatMap map) {
        StrainField field = new StrainField(map);
        int n = map.form().triangleCount();
        IntStream.range(0, (n + CHUNK - 1) / CHUNK).parallel()
                .forEach(c -> field.measure(c * CHUNK, Math.min(n, (c + 1) * CHUNK)));
        field.gather();
        return field;
    }

    public FlatMap map() {
        return map;
    }

    public int triangleCount() {
        return area.length;
    }

    /** Larger principal stretch of the forming of triangle t, blank to form, above 0; 1 = keeps its length. */
    public double stretch1(int t) {
        return stretch1[t];
    }

    /** Smaller principal stretch, at right angles to the larger. */
    public double stretch2(int t) {
        return stretch2[t];
    }

    /** ln stretch1. */
    public double strain1(int t) {
        return Math.log(stretch1[t]);
    }

    /** ln stretch2. */
    public double strain2(int t) {
        return Math.log(stretch2[t]);
    }

    /** stretch1 - 1: 0.05 = 5 % longer on the form than on the blank. */
    public double engineering1(int t) {
        return stretch1[t] - 1;
    }

    /** stretch2 - 1: -0.04 = 4 % shorter on the form than on the blank. */
    public double engineering2(int t) {
        return stretch2[t] - 1;
    }

    /** Area on the form over area on the blank, less 1. */
    public double areaChange(int t) {
        return stretch1[t] * stretch2[t] - 1;
    }

    /** e3 = -(ln stretch1 + ln stretch2): thickness on the form is thickness of the sheet times exp(e3), the volume of metal being kept. */
    public double thicknessStrain(int t) {
        return -Math.log(stretch1[t] * stretch2[t]);
    }

    /** Direction of stretch1 on the blank, rad from the u axis towards v, -π/2 < angle <= π/2; 0 where both stretches are the same. */
    public double directionOnBlank(int t) {
        return angle[t];
    }

    /** x of the unit vector on the form, in the plane of triangle t, into which the direction of stretch1 on the blank goes. */
    public double directionX(int t) {
        return direction[3 * t];
    }

    public double directionY(int t) {
        return direction[3 * t + 1];
    }

    public double directionZ(int t) {
        return direction[3 * t + 2];
    }

    /** Area of triangle t on the form, mm². */
    public double area(int t) {
        return area[t];
    }

    /** True where the triangle lies face down on the blank, or has no area there: decided without rounding error. */
    public boolean turnedOver(int t) {
        return (state[t] & TURNED) != 0;
    }

    /** True where the triangle has no area on the form or on the blank, and so tells nothing. */
    public boolean degenerate(int t) {
        return (state[t] & DEGENERATE) != 0;
    }

    /** How many triangles are turned over. */
    public int turnedOverCount() {
        return turnedOver;
    }

    /** Sum of form area times (s1² + s2² + 1/s1² + 1/s2²) over the form's area; 4 = no distortion. */
    public double symmetricDirichletMean() {
        return symmetricDirichletMean;
    }

    /** Sum of form area times (s1 - 1)² + (s2 - 1)², s of the map form to blank, over the form's area; 0 = no distortion. */
    public double arapMean() {
        return arapMean;
    }

    /** Largest engineering strain of any triangle, 0 or above: 0.05 = some place must be made 5 % longer. */
    public double stretchMax() {
        return stretchMax;
    }

    /** Largest shortening of any triangle, 0 or above: 0.04 = some place must be made 4 % shorter. */
    public double shrinkMax() {
        return shrinkMax;
    }

    /** Largest relative gain of area from blank to form, 0 or above. */
    public double areaGainMax() {
        return areaGainMax;
    }

    /** Largest relative loss of area from blank to form, 0 or above, below 1. */
    public double areaLossMax() {
        return areaLossMax;
    }

    private void measure(int from, int to) {
        TriMesh form = map.form();
        for (int t = from; t < to; t++) {
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            double ax = form.x(a), ay = form.y(a), az = form.z(a);
            double ex = form.x(b) - ax, ey = form.y(b) - ay, ez = form.z(b) - az;
            double fx = form.x(c) - ax, fy = form.y(c) - ay, fz = form.z(c) - az;
            double nx = ey * fz - ez * fy, ny = ez * fx - ex * fz, nz = ex * fy - ey * fx;
            double twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
            area[t] = twice / 2;
            double ee = ex * ex + ey * ey + ez * ez, ff = fx * fx + fy * fy + fz * fz, ef = ex * fx + ey * fy + ez * fz;
            double u1 = map.u(b) - map.u(a), v1 = map.v(b) - map.v(a), u2 = map.u(c) - map.u(a), v2 = map.v(c) - map.v(a);
            double det = u1 * v2 - u2 * v1;
            if (Orientation.sign(map.u(a), map.v(a), map.u(b), map.v(b), map.u(c), map.v(c)) <= 0) state[t] |= TURNED;
            double longest = Math.max(Math.max(ee, ff), ee + ff - 2 * ef);
            double flat1 = u1 * u1 + v1 * v1, flat2 = u2 * u2 + v2 * v2;
            double longestFlat = Math.max(Math.max(flat1, flat2), flat1 + flat2 - 2 * (u1 * u2 + v1 * v2));
            boolean lineOnForm = !(twice > NO_AREA * longest), lineOnBlank = !(Math.abs(det) > NO_AREA * longestFlat);
            if (lineOnForm || lineOnBlank) {
                state[t] |= DEGENERATE;
                if (lineOnBlank) state[t] |= TURNED;
                if (!lineOnForm) state[t] |= COLLAPSED;
                leave(t, ex, ey, ez, fx, fy, fz);
                continue;
            }
            // J = Q P^-1, P = [L p; 0 h]
            double length = Math.sqrt(ee), p = ef / length, h = twice / length;
            double ja = u1 / length, jc = v1 / length;
            double jb = (u2 - ja * p) / h, jd = (v2 - jc * p) / h;
            boolean mirrored = det < 0;
            if (mirrored) {                         // seen from below: v -> -v
                jc = -jc;
                jd = -jd;
            }
            double half = (ja + jd) / 2, other = (jc - jb) / 2, diff = (ja - jd) / 2, mix = (jb + jc) / 2;
            double q = Math.sqrt(half * half + other * other), r = Math.sqrt(diff * diff + mix * mix);
            double s1 = q + r, s2 = (Math.abs(det) / twice) / s1;   // q - r would lose digits
            if (s2 > s1) s2 = s1;
            stretch1[t] = 1 / s2;
            stretch2[t] = 1 / s1;
            // J turns the form's direction `right` into the blank's direction `left`, s1 times longer; stretch1 is at right angles to both
            double sum = r <= 4e-16 * q ? 0 : Math.atan2(mix, diff), turn = Math.atan2(other, half);
            double left = r <= 4e-16 * q ? Math.PI / 2 : (sum + turn) / 2;
            double flat = left + Math.PI / 2, local = flat - turn;
            if (mirrored) flat = -flat;
            double wrapped = flat - Math.PI * Math.rint(flat / Math.PI);
            if (wrapped <= -Math.PI / 2) wrapped += Math.PI;
            if (Math.abs(Math.rint((flat - wrapped) / Math.PI)) % 2 == 1) local += Math.PI;
            angle[t] = wrapped;
            double along = Math.cos(local) / length, across = Math.sin(local) / (twice * length);
            direction[3 * t] = along * ex + across * (ny * ez - nz * ey);       // second axis: n x e
            direction[3 * t + 1] = along * ey + across * (nz * ex - nx * ez);
            direction[3 * t + 2] = along * ez + across * (nx * ey - ny * ex);
        }
    }

    private void leave(int t, double ex, double ey, double ez, double fx, double fy, double fz) {
        stretch1[t] = 1;
        stretch2[t] = 1;
        double length = Math.sqrt(ex * ex + ey * ey + ez * ez);
        if (length > 0) {
            set(t, ex / length, ey / length, ez / length);
            return;
        }
        length = Math.sqrt(fx * fx + fy * fy + fz * fz);
        if (length > 0) set(t, fx / length, fy / length, fz / length);
        else set(t, 1, 0, 0);
    }

    private void set(int t, double x, double y, double z) {
        direction[3 * t] = x;
        direction[3 * t + 1] = y;
        direction[3 * t + 2] = z;
    }

    private void gather() {
        double total = 0, dirichlet = 0, arap = 0;
        for (int t = 0; t < area.length; t++) {
            if (turnedOver(t)) turnedOver++;
            if ((state[t] & COLLAPSED) != 0) dirichlet = Double.POSITIVE_INFINITY;
            if (degenerate(t)) continue;
            double l1 = stretch1[t], l2 = stretch2[t], s1 = 1 / l2, s2 = 1 / l1, gain = l1 * l2 - 1;
            total += area[t];
            dirichlet += area[t] * (s1 * s1 + s2 * s2 + l1 * l1 + l2 * l2);
            arap += area[t] * ((s1 - 1) * (s1 - 1) + (s2 - 1) * (s2 - 1));
            stretchMax = Math.max(stretchMax, l1 - 1);
            shrinkMax = Math.max(shrinkMax, 1 - l2);
            areaGainMax = Math.max(areaGainMax, gain);
            areaLossMax = Math.max(areaLossMax, -gain);
        }
        if (total > 0) {
            symmetricDirichletMean = dirichlet / total;
            arapMean = arap / total;
        } else if (Double.isInfinite(dirichlet)) {
            symmetricDirichletMean = dirichlet;
        }
    }
}
