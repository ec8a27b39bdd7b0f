package blankwright.shape;

import blankwright.num.Quadrature;

/** A smooth surface over two parameters; the outer skin is where x_u × x_v points. */
@FunctionalInterface
interface Skin {
    /** Writes the point at (u, v) into {@code out}, 3 numbers, mm. */
    void at(double u, double v, double[] out);

    default double[] at(double u, double v) {
        double[] p = new double[3];
        at(u, v, p);
        return p;
    }

    /** Area over the rectangles between the breaks, mm²; derivatives by differences of fourth order, relative error about 1e-9. */
    default double area(double[] us, double[] vs, int parts) {
        return integral(us, vs, parts, d -> norm(cross(d[0], d[1])));
    }

    /** Integral of the Gaussian curvature, rad; error about 1e-7 of the integral of its absolute value. */
    default double totalCurvature(double[] us, double[] vs, int parts) {
        return integral(us, vs, parts, d -> {
            double[] n = cross(d[0], d[1]);
            double w = norm(n);
            return (dot(d[2], n) * dot(d[4], n) - dot(d[3], n) * dot(d[3], n)) / (w * w * w);
        });
    }

    /** x_u, x_v, x_uu, x_uv, x_vv by central differences of fourth order, steps a and b. */
    default double[][] derivatives(double u, double v, double a, double b) {
        double[][] d = new double[5][3];
        double[] w1 = {1 / 12.0, -8 / 12.0, 0, 8 / 12.0, -1 / 12.0}, w2 = {-1 / 12.0, 16 / 12.0, -30 / 12.0, 16 / 12.0, -1 / 12.0};
        double[] p = new double[3];
        for (int i = -2; i <= 2; i++) {
            for (int j = -2; j <= 2; j++) {
                at(u + i * a, v + j * b, p);
                for (int k = 0; k < 3; k++) {
                    if (j == 0) {
                        d[0][k] += w1[i + 2] * p[k] / a;
                        d[2][k] += w2[i + 2] * p[k] / (a * a);
                    }
                    if (i == 0) {
                        d[1][k] += w1[j + 2] * p[k] / b;
                        d[4][k] += w2[j + 2] * p[k] / (b * b);
                    }
                    d[3][k] += w1[i + 2] * w1[j + 2] * p[k] / (a * b);
                }
            }
        }
        return d;
    }

    private double integral(double[] us, double[] vs, int parts, java.util.function.ToDoubleFunction<double[][]> f) {
        double sum = 0;
        for (int i = 0; i + 1 < us.length; i++) {
            for (int j = 0; j + 1 < vs.length; j++) {
                double u0 = us[i], u1 = us[i + 1], v0 = vs[j], v1 = vs[j + 1];
                // Near a break the differences must not reach across it: the outermost of 16 points lies 0.5 % of a part from its end.
                double a = (u1 - u0) / parts * 2e-3, b = (v1 - v0) / parts * 2e-3;
                sum += Quadrature.of(v -> Quadrature.of(u -> f.applyAsDouble(derivatives(u, v, a, b)), u0, u1, parts), v0, v1, parts);
            }
        }
        return sum;
    }

    static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double norm(double[] a) {
        return Math.sqrt(dot(a, a));
    }
}
