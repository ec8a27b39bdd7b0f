package blankwright.num;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;

/** Gauss-Legendre integrals over equal parts, 16 points in each, summed in order. */
public final class Quadrature {
    private static final double[] POINT = new double[16];
    private static final double[] WEIGHT = new double[16];

    static {
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(16);
        for (int i = 0; i < 16; i++) {
            POINT[i] = rule.getPoint(i);
            WEIGHT[i] = rule.getWeight(i);
        }
    }

    private Quadrature() { }

    /**
     * Integral of f from a to b, which may stand in either order.
     *
     * @param parts at least 1; for a smooth f whose features are wider than (b-a)/parts the error is rounding
     */
    public static double of(DoubleUnaryOperator f, double a, double b, int parts) {
        double sum = 0;
        double half = (b - a) / parts / 2;
        for (int p = 0; p < parts; p++) {
            double middle = a + (2 * p + 1) * half;
            for (int i = 0; i < POINT.length; i++) sum += WEIGHT[i] * f.applyAsDouble(middle + half * POINT[i]);
        }
        return sum * half;
    }
}
