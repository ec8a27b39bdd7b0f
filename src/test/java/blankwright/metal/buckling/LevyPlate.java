package blankwright.metal.buckling;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * k of a plate compressed along x between supported ends, by Lévy's exact solution w = f(y) sin(mπx/a) [C]: nothing shared with the shell.
 *
 * <p>f is a sum of cosh αy, sinh αy, cos βy and sin βy with α² = μ√(N/D) + μ², β² = μ√(N/D) - μ², μ = mπ/a; the least k is where the four conditions
 * at the sides no longer have one answer only. Timoshenko and Gere 1961, ch. 9, from memory.
 */
final class LevyPlate {
    private LevyPlate() { }

    /** @param sides two letters, S supported, C clamped, F free: the sides at y = 0 and y = b, b = 1 */
    static double k(double ratio, String sides, double poisson) {
        double least = Double.POSITIVE_INFINITY;
        for (int m = 1; m <= 2 * ratio + 2; m++) least = Math.min(least, ofWaves(m, ratio, sides, poisson));
        return least;
    }

    private static double ofWaves(int m, double ratio, String sides, double poisson) {
        double column = m * m / (ratio * ratio), k = column * (1 + 1e-6) + 1e-9, before = determinant(k, m, ratio, sides, poisson);
        while (true) {
            double next = k * 1.02 + 0.002, there = determinant(next, m, ratio, sides, poisson);
            if (before * there <= 0)
                return new BrentSolver(1e-12, 1e-12).solve(200, x -> determinant(x, m, ratio, sides, poisson), k, next);
            k = next;
            before = there;
        }
    }

    private static double determinant(double k, int m, double ratio, String sides, double poisson) {
        double mu = m * Math.PI / ratio, n = mu * Math.PI * Math.sqrt(k), alpha = Math.sqrt(n + mu * mu), beta = Math.sqrt(n - mu * mu);
        double[][] rows = new double[4][];
        for (int side = 0; side < 2; side++) {
            double[][] f = derivatives(alpha, beta, side);
            double[] moment = sum(f[2], -poisson * mu * mu, f[0]), shear = sum(f[3], -(2 - poisson) * mu * mu, f[1]);
            rows[2 * side] = sides.charAt(side) == 'F' ? moment : f[0];
            rows[2 * side + 1] = switch (sides.charAt(side)) {
                case 'S' -> f[2];
                case 'C' -> f[1];
                default -> shear;
            };
        }
        return new LUDecomposition(new Array2DRowRealMatrix(rows), 0).getDeterminant();
    }

    /** f, f', f'', f''' of the four functions at y, the first two over cosh α, the last over β. */
    private static double[][] derivatives(double a, double b, double y) {
        double h = Math.cosh(a), cosh = Math.cosh(a * y) / h, sinh = Math.sinh(a * y) / h, cos = Math.cos(b * y), sin = Math.sin(b * y);
        return new double[][] {{cosh, sinh, cos, sin / b}, {a * sinh, a * cosh, -b * sin, cos}, {a * a * cosh, a * a * sinh, -b * b * cos, -b * sin},
            {a * a * a * sinh, a * a * a * cosh, b * b * b * sin, -b * b * cos}};
    }

    private static double[] sum(double[] f, double factor, double[] g) {
        double[] out = new double[4];
        for (int i = 0; i < 4; i++) out[i] = f[i] + factor * g[i];
        return out;
    }
}
