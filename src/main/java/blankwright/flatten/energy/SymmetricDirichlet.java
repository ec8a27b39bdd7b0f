package blankwright.flatten.energy;

/**
 * Symmetric Dirichlet energy, f(s) = s² + s⁻²: of a triangle |J|² + |J⁻¹|², 4 when J is a rotation, +∞ when it is flat or turned over.
 *
 * <p>Source: Smith and Schaefer, "Bijective Parameterization with Free Boundaries", 2015; docs/sources.md [SS15].
 */
public final class SymmetricDirichlet implements StretchEnergy {
    @Override public double value(double s) {
        if (!(s > 0)) return Double.POSITIVE_INFINITY;                 // NaN lands here too
        return s * s + 1 / (s * s);
    }

    @Override public double slope(double s) {
        return 2 * s - 2 / (s * s * s);
    }

    @Override public double curvature(double s) {
        return 2 + 6 / (s * s * s * s);
    }

    @Override public boolean barrier() {
        return true;
    }
}
