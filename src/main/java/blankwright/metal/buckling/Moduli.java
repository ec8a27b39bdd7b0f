package blankwright.metal.buckling;

/**
 * Stress from strain in the plane of each triangle: C11 C12 C13 C22 C23 C33, MPa, symmetric, strains exx, eyy and gxy = 2 exy, in the
 * triangle's own frame.
 */
final class Moduli {
    private final double[] c;           // 6 per triangle, or 6 for all

    private Moduli(double[] c) {
        this.c = c;
    }

    static Moduli elastic(Sheet sheet) {
        return new Moduli(isotropic(sheet.youngs(), sheet.poisson()));
    }

    static double[] isotropic(double youngs, double poisson) {
        double p = youngs / (1 - poisson * poisson);
        return new double[] {p, p * poisson, 0, p, 0, p * (1 - poisson) / 2};
    }

    /**
     * Six moduli against a small further change at the stress sxx, syy, sxy: those of the secant modulus less (secant - tangent) σσᵀ/σe²,
     * σe the effective stress, which leaves the tangent modulus along the stress. At ν = 1/2 Stowell's (1948, docs/sources.md [S48]).
     */
    static double[] afterYield(Sheet sheet, double[] stress, double secant) {
        double[] c = isotropic(secant, sheet.poissonAt(secant));
        if (secant >= sheet.youngs()) return c;
        double size = effective(stress), f = (secant - sheet.tangent(size / secant)) / (size * size);
        for (int i = 0, s = 0; i < 3; i++) for (int j = i; j < 3; j++, s++) c[s] -= f * stress[i] * stress[j];
        return c;
    }

    /** Of von Mises, plane stress sxx, syy, sxy. */
    static double effective(double[] s) {
        return Math.sqrt(s[0] * s[0] - s[0] * s[1] + s[1] * s[1] + 3 * s[2] * s[2]);
    }

    /** Takes over 6 per triangle. */
    static Moduli perTriangle(double[] c) {
        return new Moduli(c);
    }

    /** Those of triangle t times {@code factor}. */
    void of(int t, double factor, double[] out) {
        int at = c.length == 6 ? 0 : 6 * t;
        for (int i = 0; i < 6; i++) out[i] = factor * c[at + i];
    }
}
