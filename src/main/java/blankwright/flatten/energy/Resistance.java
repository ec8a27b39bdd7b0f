package blankwright.flatten.energy;

/**
 * How a sheet resists forming: elastic to its yield, then hardening by a power law; the same in every direction of its plane, another
 * through its thickness.
 *
 * <p>Effective strain of principal true strains e1, e2 in plane stress, volume kept (Hill 1948 with normal anisotropy r):
 * eb² = (1+r)²/(1+2r) · (e1² + e2² + 2r/(1+r)·e1·e2); pure tension gives eb = e1, r = 1 is von Mises.
 * <p>Effective stress: E·eb up to ey = Y/E, then Swift's K(e0 + eb - ey)^n with K·e0^n = Y.
 * <p>Source: Hill, "The Mathematical Theory of Plasticity", 1950, chapter XII; Swift 1952; docs/sources.md [H50], [Sw52].
 *
 * @param modulus E, MPa, above 0
 * @param yield Y, MPa, above 0
 * @param strength K, MPa, at least Y
 * @param exponent n, 0 &lt; n &lt;= 1; with n = 1 and K = E the sheet is elastic throughout
 * @param anisotropy r, above 0
 */
public record Resistance(double modulus, double yield, double strength, double exponent, double anisotropy) {
    public Resistance {
        above("modulus", modulus, 0);
        above("yield", yield, 0);
        if (!(strength >= yield && strength < Double.POSITIVE_INFINITY))
            throw new IllegalArgumentException("strength " + strength + " MPa: must not be below the yield, " + yield + " MPa");
        if (!(exponent > 0 && exponent <= 1)) throw new IllegalArgumentException("exponent " + exponent + ": must lie above 0, up to 1");
        above("anisotropy", anisotropy, 0);
    }

    private static void above(String what, double value, double bound) {
        if (!(value > bound && value < Double.POSITIVE_INFINITY)) throw new IllegalArgumentException(what + " " + value + ": must be above 0");
    }

    /** No yield at all: stress E·eb however far. */
    public static Resistance elastic(double modulus, double anisotropy) {
        return new Resistance(modulus, modulus, modulus, 1, anisotropy);
    }

    /** Effective strain of principal true strains, 0 or above. */
    public double effectiveStrain(double e1, double e2) {
        return Math.sqrt(Math.max(0, square() * (e1 * e1 + e2 * e2 + 2 * coupling() * e1 * e2)));
    }

    /** Effective stress, MPa, at an effective strain. */
    public double stress(double effective) {
        double plastic = effective - yield / modulus;
        return plastic <= 0 ? modulus * effective : strength * Math.pow(start() + plastic, exponent);
    }

    /** Work per volume, MPa (mJ/mm³), to an effective strain: the integral of the stress. */
    public double work(double effective) {
        double elastic = yield / modulus, plastic = effective - elastic;
        if (plastic <= 0) return modulus * effective * effective / 2;
        return yield * elastic / 2 + strength / (exponent + 1) * (Math.pow(start() + plastic, exponent + 1) - Math.pow(start(), exponent + 1));
    }

    /** (1+r)²/(1+2r). */
    double square() {
        return (1 + anisotropy) * (1 + anisotropy) / (1 + 2 * anisotropy);
    }

    /** r/(1+r): below 1, so the effective strain vanishes only with both strains. */
    double coupling() {
        return anisotropy / (1 + anisotropy);
    }

    /** e0, (Y/K)^(1/n). */
    double start() {
        return Math.pow(yield / strength, 1 / exponent);
    }
}
