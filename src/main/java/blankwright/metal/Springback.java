package blankwright.metal;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How far a bend opens when it is let go, after Gardiner: Ri/Rf = 4X³ - 3X + 1 with X = Ri·Y/(E·T).
 *
 * <p>Ri is the inside radius under load, Rf the one that stays. The cubic holds for X up to 0.5, where it is 0: the sheet only just yields and springs
 * back flat. Beyond, the cubic rises again, which means nothing; the ratio stays 0 there (no permanent set).
 * <p>Source: docs/sources.md [G57], form read in a public teaching page.
 *
 * @param young E, MPa
 * @param yieldStress Y, MPa; a sheet hardened by working springs back more
 * @param thickness T, in the unit of the radii
 */
public record Springback(double young, double yieldStress, double thickness) {
    private static final double NO_SET = 0.5;

    public Springback {
        if (!(young > 0 && yieldStress > 0 && thickness > 0))
            throw new IllegalArgumentException("E " + young + ", yield " + yieldStress + ", thickness " + thickness + ": must be above 0");
    }

    public static Springback of(Alloy alloy, double thickness) {
        return new Springback(alloy.young().value(), alloy.yieldStress().value(), thickness);
    }

    /** X: 0 = a bend so sharp that all stays, 0.5 = nothing stays. */
    public double x(double radius) {
        if (!(radius >= 0)) throw new IllegalArgumentException("radius " + radius + ": must be 0 or above");
        return radius * yieldStress / (young * thickness);
    }

    /** Radius under load over radius that stays, 1..0; 0 where no set stays. */
    public double ratio(double radius) {
        double x = x(radius);
        return x >= NO_SET ? 0 : (x + 1) * (1 - 2 * x) * (1 - 2 * x);       // 4x³ - 3x + 1 without cancellation
    }

    /** Inside radius that stays of one bent to {@code radius}; +∞ where it springs back flat. */
    public double after(double radius) {
        double ratio = ratio(radius);
        return ratio == 0 ? Double.POSITIVE_INFINITY : radius / ratio;
    }

    /** Inside radius to bend or roll to, so that {@code wanted} stays; always below the largest one that takes a set. */
    public double toSet(double wanted) {
        if (!(wanted > 0) || Double.isInfinite(wanted)) throw new IllegalArgumentException("radius " + wanted + ": must be above 0 and finite");
        double w = x(wanted);
        // x = w (x + 1)(1 - 2x)²: the left rises and the right falls on 0..0.5
        double x = new BrentSolver(1e-15, 1e-16).solve(300, t -> t - w * (t + 1) * (1 - 2 * t) * (1 - 2 * t), 0, NO_SET);
        return x * young * thickness / yieldStress;
    }

    /** Largest inside radius that still takes a set: E T / (2 Y). */
    public double largestWithSet() {
        return NO_SET * young * thickness / yieldStress;
    }

    /** Angle after letting go over angle under load, both bent through, the middle of the sheet keeping its length: (2Ri/T + 1)/(2Rf/T + 1). */
    public double angleRatio(double radius) {
        double after = after(radius);
        return Double.isInfinite(after) ? 0 : (2 * radius / thickness + 1) / (2 * after / thickness + 1);
    }
}
