package blankwright.metal.buckling;

/**
 * A sheet of metal as far as buckling asks: elastic up to the yield stress, then σ = yield·(ε E / yield)^n.
 *
 * @param youngs modulus, MPa, above 0
 * @param poisson ratio, 0 to below 0.5
 * @param yield stress, MPa, above 0; +∞ for a sheet that stays elastic
 * @param hardening exponent n, above 0 (a flat curve would leave no stiffness at all along the stress) and at most 1
 * @param thickness mm, above 0
 */
public record Sheet(double youngs, double poisson, double yield, double hardening, double thickness) {
    public Sheet {
        above0("modulus", youngs, "MPa");
        above0("yield stress", yield, "MPa");
        above0("thickness", thickness, "mm");
        if (!(poisson >= 0 && poisson < 0.5))
            throw new IllegalArgumentException("Poisson's ratio " + poisson + ": must be 0 to below 0.5");
        if (!(hardening > 0 && hardening <= 1))
            throw new IllegalArgumentException("hardening " + hardening + ": must be above 0, at most 1");
        if (Double.isInfinite(youngs) || Double.isInfinite(thickness))
            throw new IllegalArgumentException("modulus and thickness must be finite");
    }

    /** Never yields. */
    public static Sheet elastic(double youngs, double poisson, double thickness) {
        return new Sheet(youngs, poisson, Double.POSITIVE_INFINITY, 1, thickness);
    }

    /** E t³ / (12 (1 - ν²)), N mm. */
    public double bendingStiffness() {
        return youngs * thickness * thickness * thickness / (12 * (1 - poisson * poisson));
    }

    /** Stress over strain at the effective strain {@code e}, MPa. */
    double secant(double e) {
        double ratio = e * youngs / yield;
        return ratio <= 1 ? youngs : youngs * Math.pow(ratio, hardening - 1);
    }

    /** Slope of stress over strain at the effective strain {@code e}, MPa. */
    double tangent(double e) {
        return e * youngs <= yield ? youngs : hardening * secant(e);
    }

    /** Poisson's ratio between the elastic one and 1/2, by how far the secant modulus has fallen [GB57]. */
    double poissonAt(double secant) {
        return 0.5 - (0.5 - poisson) * secant / youngs;
    }

    private static void above0(String what, double value, String unit) {
        if (!(value > 0)) throw new IllegalArgumentException(what + " " + value + " " + unit + ": must be above 0");
    }
}
