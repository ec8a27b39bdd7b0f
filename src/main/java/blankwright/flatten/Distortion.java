package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.TriangleEnergy;
import blankwright.mesh.TriMesh;
import blankwright.sparse.Elements;

/**
 * The energy of a flat layout of a form, summed over its triangles with their form areas as weights, and its derivatives.
 *
 * <p>Lengths are in units in which the form's area is 1. A layout is 2 numbers a vertex.
 * <p>Of a triangle with map J = Q·R + P·M, R the nearest rotation and M the nearest reflection (each a unit matrix up to a turn), the
 * singular values are s1 = Q + P and s2 = Q - P, without trigonometry. Of the four modes u1v1ᵀ, u2v2ᵀ, twist and flip the first two carry
 * the second derivative of F by s1 and s2, a 2x2 block, diagonal where F is a sum; twist has the eigenvalue (p1 + p2)/(s1 + s2) and flip
 * (p1 - p2)/(s1 - s2), p the first derivatives. Negative eigenvalues are set to 0, which gives the closest positive matrix.
 * <p>Source: Smith, de Goes and Kim, "Analytic Eigensystems for Isotropic Distortion Energies", 2019; docs/sources.md [SGK19].
 */
final class Distortion {
    /** Height of a triangle over its longest side below which it is treated as this high: about 1e-7 still leaves 8 digits of stiffness. */
    private static final double LEAST_HEIGHT = 1e-7;
    /** Numbers of a second derivative by J. */
    static final int SECOND = PlaneStiffness.SIZE;
    private static final int MODES = 24;                  // four modes of five numbers, and the first derivative

    private final int triangles;
    private final int[] tri;
    private final double[] grad;      // triangle t: gradients of corner 1 and 2 in its own frame, grad[4t..4t+3]; corner 0 is minus their sum
    private final double[] area;      // form area of triangle t over that of the form
    private final int[] cornerStart;  // vertex v: its corners 3t+k stand in cornerOf[cornerStart[v] .. cornerStart[v+1]-1]
    private final int[] cornerOf;
    private final double[] pull;      // scratch: gradient at each corner, pull[6t + 2k ..]
    private final double scale;       // unit of length, mm

    Distortion(TriMesh form) {
        triangles = form.triangleCount();
        tri = form.corners();
        grad = new double[4 * triangles];
        area = new double[triangles];
        pull = new double[6 * triangles];
        scale = Math.sqrt(form.area());
        for (int t = 0; t < triangles; t++) rest(form, t);
        int n = form.vertexCount();
        cornerStart = new int[n + 1];
        for (int v : tri) cornerStart[v + 1]++;
        for (int v = 0; v < n; v++) cornerStart[v + 1] += cornerStart[v];
        cornerOf = new int[tri.length];
        int[] at = java.util.Arrays.copyOf(cornerStart, n);
        for (int c = 0; c < tri.length; c++) cornerOf[at[tri[c]]++] = c;
    }

    /** Lays the triangle in its own frame, corner 0 at the origin, its longest side along the first axis. */
    private void rest(TriMesh form, int t) {
        int longest = 0;
        double length = -1;
        for (int k = 0; k < 3; k++) {
            double side = form.distance(form.corner(t, k), form.corner(t, (k + 1) % 3));
            if (side > length) {
                length = side;
                longest = k;
            }
        }
        int a = form.corner(t, longest), b = form.corner(t, (longest + 1) % 3), c = form.corner(t, (longest + 2) % 3);
        double ux = form.x(b) - form.x(a), uy = form.y(b) - form.y(a), uz = form.z(b) - form.z(a);
        double vx = form.x(c) - form.x(a), vy = form.y(c) - form.y(a), vz = form.z(c) - form.z(a);
        double l = length / scale;
        double p = (ux * vx + uy * vy + uz * vz) / length / scale;
        double q = Math.max(2 * form.area(t) / length / scale, LEAST_HEIGHT * l);
        area[t] = l * q / 2;
        double[] gx = new double[3], gy = new double[3];     // gradients of the corners a, b, c
        gx[1] = 1 / l;
        gy[1] = -p / (l * q);
        gy[2] = 1 / q;
        gx[0] = -gx[1];
        gy[0] = -gy[1] - gy[2];
        int one = (1 + 3 - longest) % 3, two = (2 + 3 - longest) % 3;     // corner k of t is number (k - longest) mod 3 of a, b, c
        grad[4 * t] = gx[one];
        grad[4 * t + 1] = gy[one];
        grad[4 * t + 2] = gx[two];
        grad[4 * t + 3] = gy[two];
    }

    /** Form areas of the triangles over that of the form. Not a copy. */
    double[] areas() {
        return area;
    }

    /** Three vertices a triangle. Not a copy. */
    int[] corners() {
        return tri;
    }

    /** Unit of length, mm: the square root of the form's area. */
    double scale() {
        return scale;
    }

    /** Sum of area times F(s1, s2); divided by the sum of areas (1, but for slivers) it is the mean. */
    double value(TriangleEnergy energy, double[] uv) {
        return Chunks.sum(triangles, (from, to) -> {
            double sum = 0;
            for (int t = from; t < to; t++) {
                double f = value(t, energy, uv);
                if (!(f < Double.POSITIVE_INFINITY)) return Double.POSITIVE_INFINITY;
                sum += area[t] * f;
            }
            return sum;
        });
    }

    private double value(int t, TriangleEnergy energy, double[] uv) {
        int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
        double x1 = uv[j] - uv[i], y1 = uv[j + 1] - uv[i + 1], x2 = uv[k] - uv[i], y2 = uv[k + 1] - uv[i + 1];
        double a = x1 * grad[4 * t] + x2 * grad[4 * t + 2], b = x1 * grad[4 * t + 1] + x2 * grad[4 * t + 3];
        double c = y1 * grad[4 * t] + y2 * grad[4 * t + 2], d = y1 * grad[4 * t + 1] + y2 * grad[4 * t + 3];
        double q = Math.sqrt((a + d) * (a + d) + (c - b) * (c - b)) / 2, p = Math.sqrt((a - d) * (a - d) + (c + b) * (c + b)) / 2;
        double s1 = q + p, s2 = s1 == 0 ? 0 : (a * d - b * c) / s1;
        return energy.value(t, s1, s2);
    }

    /** What the triangles round vertex v add to the energy, +∞ where one is out of reach. */
    double around(int v, TriangleEnergy energy, double[] uv) {
        double sum = 0;
        for (int p = cornerStart[v]; p < cornerStart[v + 1]; p++) sum += area[cornerOf[p] / 3] * value(cornerOf[p] / 3, energy, uv);
        return sum;
    }

    /** The same, and writes its first derivatives by the place of v, then xx, xy and yy of the positive part of the second. */
    double around(int v, TriangleEnergy energy, double[] uv, double[] derivatives) {
        java.util.Arrays.fill(derivatives, 0);
        double[] modes = new double[MODES];
        Parts parts = new Parts();
        for (int p = cornerStart[v]; p < cornerStart[v + 1]; p++) {
            int t = cornerOf[p] / 3, k = cornerOf[p] % 3;
            parts.of(t, uv);
            energy.derivatives(t, parts.s1, parts.s2, modes);
            modes(t, parts, 0, modes);
            double gx = k == 0 ? -grad[4 * t] - grad[4 * t + 2] : grad[4 * t + 2 * k - 2];
            double gy = k == 0 ? -grad[4 * t + 1] - grad[4 * t + 3] : grad[4 * t + 2 * k - 1];
            derivatives[0] += modes[20] * gx + modes[21] * gy;
            derivatives[1] += modes[22] * gx + modes[23] * gy;
            for (int m = 0; m < 20; m += 5) {
                double x = modes[m + 1] * gx + modes[m + 2] * gy, y = modes[m + 3] * gx + modes[m + 4] * gy;
                derivatives[2] += modes[m] * x * x;
                derivatives[3] += modes[m] * x * y;
                derivatives[4] += modes[m] * y * y;
            }
        }
        return around(v, energy, uv);
    }

    /** Scales a layout to the least energy: with means a of s² and b of s⁻², a k² + b / k² is least at k⁴ = b / a. */
    void scaleBest(double[] uv) {
        double[] means = stretchMeans(uv);
        double scale = Math.sqrt(Math.sqrt(means[1] / means[0]));
        if (!(scale > 0 && scale < Double.POSITIVE_INFINITY)) scale = 1 / Math.sqrt(means[0] / 2);
        for (int i = 0; i < uv.length; i++) uv[i] *= scale;
    }

    /** Means of s1² + s2² and of s1⁻² + s2⁻². */
    private double[] stretchMeans(double[] uv) {
        double direct = Chunks.sum(triangles, (from, to) -> {
            double sum = 0;
            for (int t = from; t < to; t++) sum += area[t] * squared(t, uv)[0];
            return sum;
        });
        double inverse = Chunks.sum(triangles, (from, to) -> {
            double sum = 0;
            for (int t = from; t < to; t++) {
                double[] s = squared(t, uv);
                sum += area[t] * s[0] / (s[1] * s[1]);
            }
            return sum;
        });
        return new double[] {direct, inverse};
    }

    /** Root mean square stretch of triangle t, over all directions. */
    double stretch(int t, double[] uv) {
        return Math.sqrt(squared(t, uv)[0] / 2);
    }

    /** {|J|², det J} of triangle t. */
    private double[] squared(int t, double[] uv) {
        int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
        double x1 = uv[j] - uv[i], y1 = uv[j + 1] - uv[i + 1], x2 = uv[k] - uv[i], y2 = uv[k + 1] - uv[i + 1];
        double a = x1 * grad[4 * t] + x2 * grad[4 * t + 2], b = x1 * grad[4 * t + 1] + x2 * grad[4 * t + 3];
        double c = y1 * grad[4 * t] + y2 * grad[4 * t + 2], d = y1 * grad[4 * t + 1] + y2 * grad[4 * t + 3];
        return new double[] {a * a + b * b + c * c + d * d, a * d - b * c};
    }

    /** Sum of form areas in units of the form's area: 1 but for what slivers were given. */
    double areaSum() {
        return Chunks.sum(triangles, (from, to) -> {
            double sum = 0;
            for (int t = from; t < to; t++) sum += area[t];
            return sum;
        });
    }

    /** Writes the gradient, 2 numbers a vertex. */
    void gradient(TriangleEnergy energy, double[] uv, double[] out) {
        Chunks.sum(triangles, (from, to) -> {
            double[] of = new double[5];
            for (int t = from; t < to; t++) {
                int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
                double x1 = uv[j] - uv[i], y1 = uv[j + 1] - uv[i + 1], x2 = uv[k] - uv[i], y2 = uv[k + 1] - uv[i + 1];
                double g1x = grad[4 * t], g1y = grad[4 * t + 1], g2x = grad[4 * t + 2], g2y = grad[4 * t + 3];
                double a = x1 * g1x + x2 * g2x, b = x1 * g1y + x2 * g2y, c = y1 * g1x + y2 * g2x, d = y1 * g1y + y2 * g2y;
                double e = (a + d) / 2, h = (c - b) / 2, f = (a - d) / 2, g = (c + b) / 2;
                double q = Math.sqrt(e * e + h * h), p = Math.sqrt(f * f + g * g);
                double s1 = q + p, s2 = s1 == 0 ? 0 : (a * d - b * c) / s1;
                energy.derivatives(t, s1, s2, of);
                double p1 = of[0], p2 = of[1];
                // dE/dJ = (p1 + p2)/2 R + (p1 - p2)/2 M, R = [e -h; h e]/q, M = [f g; g -f]/p
                double sum = q == 0 ? 0 : (p1 + p2) / 2 / q * area[t], difference = p == 0 ? 0 : (p1 - p2) / 2 / p * area[t];
                double pa = sum * e + difference * f, pb = -sum * h + difference * g;
                double pc = sum * h + difference * g, pd = sum * e - difference * f;
                pull(t, pa, pb, pc, pd);
            }
            return 0;
        });
        gather(out);
    }

    /**
     * The same, and with it the positive part of the second derivative: of each triangle the lower triangle, row by row, of the symmetric matrix
     * by J = [a b; c d], its area a factor; 10 numbers.
     */
    void gradient(TriangleEnergy energy, double[] uv, double[] out, double[] second) {
        Chunks.sum(triangles, (from, to) -> {
            double[] of = new double[5];
            Parts parts = new Parts();
            Second sum = new Second();
            for (int t = from; t < to; t++) {
                parts.of(t, uv);
                energy.derivatives(t, parts.s1, parts.s2, of);
                sum.of(area[t], parts, of, 0);
                sum.byJ(parts, second, SECOND * t);
                pull(t, parts, of[0], of[1]);
            }
            return 0;
        });
        gather(out);
    }

    /** The same by stresses that are unknowns of their own, with this share, 0..1, of what is negative in the twist modes. */
    void gradient(LeastWork energy, double[] uv, double[] out, double[] second, Stresses stresses, double twisting) {
        Chunks.sum(triangles, (from, to) -> {
            double[] of = new double[Stresses.SECANTS];
            Parts parts = new Parts();
            Second sum = new Second();
            for (int t = from; t < to; t++) {
                parts.of(t, uv);
                energy.secants(t, parts.s1, parts.s2, of);
                sum.of(area[t], parts, of, twisting);
                stresses.soften(t, area[t], parts, of, sum);
                sum.byJ(parts, second, SECOND * t);
                pull(t, parts, of[0], of[1]);
            }
            return 0;
        });
        gather(out);
    }

    /** Notes what the derivatives by s1 and s2 mean for the corners: dE/dJ = (p1 + p2)/2 R + (p1 - p2)/2 M. */
    private void pull(int t, Parts parts, double p1, double p2) {
        double even = parts.q == 0 ? 0 : (p1 + p2) / 2 * area[t], odd = parts.p == 0 ? 0 : (p1 - p2) / 2 * area[t];
        double e = even * parts.re, h = even * parts.rh, f = odd * parts.mf, g = odd * parts.mg;
        pull(t, e + f, g - h, h + g, e - f);
    }

    /** Notes what a derivative by J = [a b; c d] means for the corners. */
    private void pull(int t, double a, double b, double c, double d) {
        double g1x = grad[4 * t], g1y = grad[4 * t + 1], g2x = grad[4 * t + 2], g2y = grad[4 * t + 3];
        double u1 = a * g1x + b * g1y, v1 = c * g1x + d * g1y, u2 = a * g2x + b * g2y, v2 = c * g2x + d * g2y;
        int o = 6 * t;
        pull[o] = -u1 - u2;
        pull[o + 1] = -v1 - v2;
        pull[o + 2] = u1;
        pull[o + 3] = v1;
        pull[o + 4] = u2;
        pull[o + 5] = v2;
    }

    private void gather(double[] out) {
        Chunks.sum(cornerStart.length - 1, (from, to) -> {
            for (int v = from; v < to; v++) {
                double x = 0, y = 0;
                for (int p = cornerStart[v]; p < cornerStart[v + 1]; p++) {
                    x += pull[2 * cornerOf[p]];
                    y += pull[2 * cornerOf[p] + 1];
                }
                out[2 * v] = x;
                out[2 * v + 1] = y;
            }
            return 0;
        });
    }

    /** The positive part of the second derivative at a layout, triangle by triangle. The layout must not change while in use. */
    Elements stiffness(TriangleEnergy energy, double[] uv) {
        return stiffness(energy, uv, 0);
    }

    /** The same with this share, 0..1, of what is negative in the twist modes: the sum over all triangles may be positive or not. */
    Elements stiffness(TriangleEnergy energy, double[] uv, double twisting) {
        return (t, out) -> {
            double[] modes = new double[MODES];
            Parts parts = new Parts();
            parts.of(t, uv);
            energy.derivatives(t, parts.s1, parts.s2, modes);
            modes(t, parts, twisting, modes);
            java.util.Arrays.fill(out, 0);
            for (int m = 0; m < 20; m += 5) addOnCorners(out, t, modes[m], modes[m + 1], modes[m + 2], modes[m + 3], modes[m + 4]);
        };
    }

    /** The second derivative that was written with the gradient, triangle by triangle. */
    Elements stiffness(double[] second) {
        return (t, out) -> PlaneStiffness.element(second, SECOND * t, grad[4 * t], grad[4 * t + 1], grad[4 * t + 2], grad[4 * t + 3], out);
    }

    /** The same of triangle t by the gradient K of a move over the layout, which changes J by K·J, added to {@code sum[at..at+9]}. */
    void addInPlane(int t, double[] uv, double[] second, double[] sum, int at) {
        int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
        double x1 = uv[j] - uv[i], y1 = uv[j + 1] - uv[i + 1], x2 = uv[k] - uv[i], y2 = uv[k + 1] - uv[i + 1];
        double g1x = grad[4 * t], g1y = grad[4 * t + 1], g2x = grad[4 * t + 2], g2y = grad[4 * t + 3];
        double a = x1 * g1x + x2 * g2x, b = x1 * g1y + x2 * g2y, c = y1 * g1x + y2 * g2x, d = y1 * g1y + y2 * g2y;
        int o = SECOND * t;
        double xx = second[o], xy = second[o + 1], yy = second[o + 2];       // of the first row of J with itself
        sum[at] += a * a * xx + 2 * a * b * xy + b * b * yy;
        sum[at + 1] += a * c * xx + (a * d + b * c) * xy + b * d * yy;
        sum[at + 2] += c * c * xx + 2 * c * d * xy + d * d * yy;
        double p = second[o + 3], q = second[o + 4], r = second[o + 6], s = second[o + 7];     // of the second row with the first
        double pa = p * a + q * b, pc = p * c + q * d, ra = r * a + s * b, rc = r * c + s * d;
        sum[at + 3] += a * pa + b * ra;
        sum[at + 4] += a * pc + b * rc;
        sum[at + 6] += c * pa + d * ra;
        sum[at + 7] += c * pc + d * rc;
        xx = second[o + 5];
        xy = second[o + 8];
        yy = second[o + 9];
        sum[at + 5] += a * a * xx + 2 * a * b * xy + b * b * yy;
        sum[at + 8] += a * c * xx + (a * d + b * c) * xy + b * d * yy;
        sum[at + 9] += c * c * xx + 2 * c * d * xy + d * d * yy;
    }

    /** The map of one triangle in its parts: J = q·R + p·M, R = [re -rh; rh re] the nearest rotation, M = [mf mg; mg -mf] the nearest reflection. */
    final class Parts {
        double q, p, s1, s2, re, rh, mf, mg;

        void of(int t, double[] uv) {
            int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
            double x1 = uv[j] - uv[i], y1 = uv[j + 1] - uv[i + 1], x2 = uv[k] - uv[i], y2 = uv[k + 1] - uv[i + 1];
            double g1x = grad[4 * t], g1y = grad[4 * t + 1], g2x = grad[4 * t + 2], g2y = grad[4 * t + 3];
            double a = x1 * g1x + x2 * g2x, b = x1 * g1y + x2 * g2y, c = y1 * g1x + y2 * g2x, d = y1 * g1y + y2 * g2y;
            double e = (a + d) / 2, h = (c - b) / 2, f = (a - d) / 2, g = (c + b) / 2;
            q = Math.sqrt(e * e + h * h);
            p = Math.sqrt(f * f + g * g);
            s1 = q + p;
            s2 = s1 == 0 ? 0 : (a * d - b * c) / s1;
            re = q > 0 ? e / q : 1;
            rh = q > 0 ? h / q : 0;
            mf = p > 0 ? f / p : 1;
            mg = p > 0 ? g / p : 0;
        }

        /**
         * Eigenvalue of the twist mode, with this share of it where it is negative.
         *
         * @param of the five derivatives of the energy by s1 and s2
         */
        double twist(double[] of, double share) {
            double twist = q > 1e-12 * s1 ? (of[0] + of[1]) / (2 * q) : 0;
            return twist < 0 ? share * twist : twist;
        }

        /** Eigenvalue of the flip mode, 0 where it is negative. */
        double flip(double[] of) {
            return Math.max(0, p > 1e-8 * s1 ? (of[0] - of[1]) / (2 * p) : (of[2] + of[3]) / 2 - of[4]);
        }
    }

    /**
     * The second derivative of one triangle, its area a factor, in its own frame: a symmetric matrix over R, M and what R and M turned a quarter
     * are, twist and flip.
     */
    static final class Second {
        private double rr, rm, mm, rf, mf, tt, ff;

        /**
         * The positive part, and of what is negative in the twist this share.
         *
         * @param of begins with the five derivatives of the energy by s1 and s2
         */
        void of(double area, Parts parts, double[] of, double twisting) {
            double f11 = of[2], f22 = of[3], f12 = of[4];
            if (f12 == 0) {
                f11 = Math.max(0, f11);
                f22 = Math.max(0, f22);
            } else if (!(f11 + f22 > 0 && f11 * f22 > f12 * f12)) {          // (cos, sin) of the larger eigenvalue's vector, its square by halves
                double half = (f11 - f22) / 2, radius = Math.sqrt(half * half + f12 * f12), one = Math.max(0, (f11 + f22) / 2 + radius);
                f11 = one * (1 + half / radius) / 2;
                f22 = one * (1 - half / radius) / 2;
                f12 *= one / (2 * radius);
            }
            // u1v1ᵀ = (R + M)/2, u2v2ᵀ = (R - M)/2; twist and flip are over √2
            double w = area / 4;
            rr = w * (f11 + f22 + 2 * f12);
            rm = w * (f11 - f22);
            mm = w * (f11 + f22 - 2 * f12);
            tt = area / 2 * parts.twist(of, twisting);
            ff = area / 2 * parts.flip(of);
            rf = 0;
            mf = 0;
        }

        /** Takes off weight·(a bᵀ + b aᵀ)/2, a of R and M only, b of R, M and flip. */
        void less(double weight, double ar, double am, double br, double bm, double bf) {
            rr -= weight * ar * br;
            mm -= weight * am * bm;
            rm -= weight * (ar * bm + am * br) / 2;
            rf -= weight * ar * bf / 2;
            mf -= weight * am * bf / 2;
        }

        /**
         * Writes the lower triangle, row by row, of the matrix by J = [a b; c d]. R stands for re·(a + d) + rh·(c - b), twist for that turned,
         * M for mf·(a - d) + mg·(c + b), flip for that turned.
         */
        void byJ(Parts parts, double[] out, int at) {
            double re = parts.re, rh = parts.rh, f = parts.mf, g = parts.mg;
            double xx = rr * re * re + tt * rh * rh, xy = (rr - tt) * re * rh, yy = rr * rh * rh + tt * re * re;
            double both = 2 * mf * f * g, zz = mm * f * f + ff * g * g - both, ww = mm * g * g + ff * f * f + both;
            double zw = (mm - ff) * f * g + mf * (f * f - g * g);
            double z = rm * f - rf * g, w = rm * g + rf * f, xz = re * z, xw = re * w, yz = rh * z, yw = rh * w;
            out[at] = xx + 2 * xz + zz;
            out[at + 1] = xw - xy + zw - yz;
            out[at + 2] = ww - 2 * yw + yy;
            out[at + 3] = xy + xw + yz + zw;
            out[at + 4] = ww - yy;
            out[at + 5] = ww + 2 * yw + yy;
            out[at + 6] = xx - zz;
            out[at + 7] = xw - xy - zw + yz;
            out[at + 8] = xy + xw - yz - zw;
            out[at + 9] = xx - 2 * xz + zz;
        }
    }

    /**
     * Writes the second derivative of triangle t by J as four modes m mᵀ, each a weight and the four numbers of m, then the four numbers of the
     * first derivative; weights and first derivative times its area.
     *
     * @param out begins with the five derivatives of the energy by s1 and s2
     */
    private void modes(int t, Parts parts, double twisting, double[] out) {
        double q = parts.q, p = parts.p, re = parts.re, rh = parts.rh, mf = parts.mf, mg = parts.mg;
        double p1 = out[0], p2 = out[1], f11 = out[2], f22 = out[3], f12 = out[4];
        double one = Math.max(0, f11), two = Math.max(0, f22), cos = 1, sin = 0;
        if (f12 != 0) {                                                      // eigenvectors (cos, sin) and (-sin, cos) of the 2x2 block
            double middle = (f11 + f22) / 2, half = (f11 - f22) / 2, radius = Math.sqrt(half * half + f12 * f12);
            one = Math.max(0, middle + radius);
            two = Math.max(0, middle - radius);
            double larger = Math.sqrt((1 + Math.abs(half) / radius) / 2), smaller = f12 / (2 * radius * larger);
            cos = half >= 0 ? larger : Math.abs(smaller);
            sin = half >= 0 ? smaller : Math.copySign(larger, f12);
        }
        double twist = parts.twist(out, twisting), flip = parts.flip(out);
        // u1v1ᵀ = (R + M)/2, u2v2ᵀ = (R - M)/2; so cos u1v1ᵀ + sin u2v2ᵀ = (sum R + gap M)/2, and -sin u1v1ᵀ + cos u2v2ᵀ = (gap R - sum M)/2;
        // twist and flip are R and M turned a quarter, over √2
        double sum = cos + sin, gap = cos - sin, w = area[t];
        set(out, 0, w * one, (sum * re + gap * mf) / 2, (gap * mg - sum * rh) / 2, (sum * rh + gap * mg) / 2, (sum * re - gap * mf) / 2);
        set(out, 5, w * two, (gap * re - sum * mf) / 2, (-gap * rh - sum * mg) / 2, (gap * rh - sum * mg) / 2, (gap * re + sum * mf) / 2);
        set(out, 10, w * twist / 2, -rh, -re, re, -rh);
        set(out, 15, w * flip / 2, -mg, mf, mf, mg);
        // dE/dJ = (p1 + p2)/2 R + (p1 - p2)/2 M
        double even = q == 0 ? 0 : (p1 + p2) / 2 * w, odd = p == 0 ? 0 : (p1 - p2) / 2 * w;
        out[20] = even * re + odd * mf;
        out[21] = -even * rh + odd * mg;
        out[22] = even * rh + odd * mg;
        out[23] = even * re - odd * mf;
    }

    /** Least-squares conformal energy |M part of J|² doubled, triangle by triangle: 0 where a map keeps angles. */
    Elements conformal() {
        return (t, out) -> {
            java.util.Arrays.fill(out, 0);
            addOnCorners(out, t, area[t], 1, 0, 0, -1);
            addOnCorners(out, t, area[t], 0, 1, 1, 0);
        };
    }

    private static void set(double[] modes, int at, double weight, double a, double b, double c, double d) {
        modes[at] = weight;
        modes[at + 1] = a;
        modes[at + 2] = b;
        modes[at + 3] = c;
        modes[at + 4] = d;
    }

    /**
     * Adds weight·m mᵀ, m the mode [a b; c d] as a pull on the six unknowns of triangle t, to the packed lower triangle. Mode by mode, for in
     * slivers the sum by J would drown the weaker modes in the rounding of the strongest.
     */
    private void addOnCorners(double[] out, int t, double weight, double a, double b, double c, double d) {
        double g1x = grad[4 * t], g1y = grad[4 * t + 1], g2x = grad[4 * t + 2], g2y = grad[4 * t + 3];
        double m2 = a * g1x + b * g1y, m3 = c * g1x + d * g1y, m4 = a * g2x + b * g2y, m5 = c * g2x + d * g2y;
        double m0 = -m2 - m4, m1 = -m3 - m5;
        double w0 = weight * m0, w1 = weight * m1, w2 = weight * m2, w3 = weight * m3, w4 = weight * m4, w5 = weight * m5;
        out[0] += w0 * m0;
        out[1] += w1 * m0;
        out[2] += w1 * m1;
        out[3] += w2 * m0;
        out[4] += w2 * m1;
        out[5] += w2 * m2;
        out[6] += w3 * m0;
        out[7] += w3 * m1;
        out[8] += w3 * m2;
        out[9] += w3 * m3;
        out[10] += w4 * m0;
        out[11] += w4 * m1;
        out[12] += w4 * m2;
        out[13] += w4 * m3;
        out[14] += w4 * m4;
        out[15] += w5 * m0;
        out[16] += w5 * m1;
        out[17] += w5 * m2;
        out[18] += w5 * m3;
        out[19] += w5 * m4;
        out[20] += w5 * m5;
    }

    /** Largest step along {@code move} before the first triangle has no area, +∞ if none; only triangles that are not turned over count. */
    double longestStep(double[] uv, double[] move) {
        return Chunks.least(triangles, (from, to) -> {
            double least = Double.POSITIVE_INFINITY;
            for (int t = from; t < to; t++) {
                int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
                double x1 = uv[j] - uv[i], y1 = uv[j + 1] - uv[i + 1], x2 = uv[k] - uv[i], y2 = uv[k + 1] - uv[i + 1];
                double dx1 = move[j] - move[i], dy1 = move[j + 1] - move[i + 1], dx2 = move[k] - move[i], dy2 = move[k + 1] - move[i + 1];
                least = Math.min(least, firstRoot(dx1 * dy2 - dy1 * dx2, x1 * dy2 + dx1 * y2 - y1 * dx2 - dy1 * x2, x1 * y2 - y1 * x2));
            }
            return least;
        });
    }

    /** Smallest positive root of a x² + b x + c with c > 0, +∞ if there is none. */
    static double firstRoot(double a, double b, double c) {
        if (!(c > 0)) return Double.POSITIVE_INFINITY;
        double disc = b * b - 4 * a * c;
        if (!(disc >= 0)) return Double.POSITIVE_INFINITY;
        double root = Math.sqrt(disc);
        if (b < 0) return 2 * c / (-b + root);                           // both roots positive, or one: this is the smaller positive one
        double denominator = -b - root;                                  // <= 0
        if (a < 0) return denominator / (2 * a);
        return Double.POSITIVE_INFINITY;
    }

    /** A typical diagonal entry of the stiffness of a layout without distortion: what a shift is measured by. */
    double typicalStiffness() {
        double sum = Chunks.sum(triangles, (from, to) -> {
            double s = 0;
            for (int t = from; t < to; t++) {
                double g1 = grad[4 * t] * grad[4 * t] + grad[4 * t + 1] * grad[4 * t + 1];
                double g2 = grad[4 * t + 2] * grad[4 * t + 2] + grad[4 * t + 3] * grad[4 * t + 3];
                s += Math.min(1e3, area[t] * (g1 + g2));                 // a sliver must not set the measure for all
            }
            return s;
        });
        return 8 * sum / (cornerStart.length - 1);
    }
}
