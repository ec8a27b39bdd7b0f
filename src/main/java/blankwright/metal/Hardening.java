package blankwright.metal;

import blankwright.num.Lengths;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How a metal hardens as it is worked: elastic below yield, then Swift's law sigma = K (e0 + e)^n, with K e0^n = yield.
 *
 * <p>e is effective strain, true, counted from the sheet as bought and taken as plastic beyond yield / E; e0 is the strain its temper has
 * already taken. Stresses are true and in MPa. n = 0 is a metal that does not harden.
 * <p>Source: Swift, "Plastic Instability under Plane Stress", J. Mech. Phys. Solids 1, 1952; docs/sources.md [Sw52].
 *
 * @param young E, MPa, above 0
 * @param strength K, MPa, above 0
 * @param n 0..1
 * @param yieldStress MPa, above 0; not above K where n is 0
 */
public record Hardening(double young, double strength, double n, double yieldStress) {
    public Hardening {
        if (!(young > 0 && strength > 0 && yieldStress > 0 && n >= 0 && n <= 1))
            throw new IllegalArgumentException("E " + young + ", K " + strength + ", n " + n + ", yield " + yieldStress);
        if (n == 0) strength = yieldStress;
    }

    /** e0 = (yield / K)^(1/n); 0 where n is 0. */
    public double e0() {
        return n == 0 ? 0 : Math.pow(yieldStress / strength, 1 / n);
    }

    /** Effective strain at which the metal yields: yield / E. */
    public double yieldStrain() {
        return yieldStress / young;
    }

    /** True stress, MPa, at an effective strain of 0 or above. */
    public double stress(double e) {
        double plastic = plastic(e);
        return plastic <= 0 ? young * e : n == 0 ? yieldStress : strength * Math.pow(e0() + plastic, n);
    }

    /** Work to strain the metal so far, N mm per mm³ (MPa): the integral of stress from 0 to e. */
    public double work(double e) {
        double plastic = plastic(e);
        if (plastic <= 0) return young * e * e / 2;
        double elastic = yieldStress * yieldStrain() / 2;
        if (n == 0) return elastic + yieldStress * plastic;
        double e0 = e0();
        return elastic + strength / (n + 1) * (Math.pow(e0 + plastic, n + 1) - Math.pow(e0, n + 1));
    }

    /** Slope of stress over strain, MPa: E below yield. */
    public double tangent(double e) {
        double plastic = plastic(e);
        return plastic <= 0 ? young : n == 0 ? 0 : n * strength * Math.pow(e0() + plastic, n - 1);
    }

    /** Stress over strain, MPa: E below yield. */
    public double secant(double e) {
        return plastic(e) <= 0 ? young : stress(e) / e;
    }

    private double plastic(double e) {
        if (!(e >= 0)) throw new IllegalArgumentException("effective strain " + e);
        return e - yieldStrain();
    }

    /** True strain a tensile strip takes before it necks, n - e0 by Considère's rule; 0 where the temper has used it up. */
    public double uniform() {
        return Math.max(0, n - e0());
    }

    /** Largest load of a tensile strip over its first cross-section, MPa: K n^n exp(-(n - e0)), or yield where nothing is left to harden. */
    public double tensile() {
        return uniform() == 0 ? yieldStress : strength * Math.pow(n, n) * Math.exp(-uniform());
    }

    /**
     * The law whose yield, tensile strength and uniform strain are those of a test strip: for tempers and mill papers that give no K and n.
     *
     * <p>By Considère n = e0 + uniform; dividing the two stresses leaves (1 + uniform/e0)^(e0 + uniform) = tensile·exp(uniform)/yield, whose
     * left side falls from +∞ to exp(uniform) as e0 grows.
     *
     * @param tensile engineering, MPa, above {@code yieldStress}
     * @param uniform true strain at the largest load, above 0 and so that n comes out below 1
     */
    public static Hardening throughTensile(double young, double yieldStress, double tensile, double uniform) {
        if (!(yieldStress > 0 && tensile > yieldStress)) throw new IllegalArgumentException("tensile strength " + Lengths.plain(Math.rint(10 * tensile) / 10)
                + " MPa: must be above the yield " + Lengths.plain(Math.rint(10 * yieldStress) / 10) + " MPa");
        if (!(uniform > 0 && uniform < 1)) throw new IllegalArgumentException("uniform strain " + uniform + ": must be above 0 and below 1");
        double goal = Math.log(tensile / yieldStress) + uniform;
        double least = -60, most = Math.log(1 - uniform);
        java.util.function.DoubleUnaryOperator miss = s -> (Math.exp(s) + uniform) * Math.log1p(uniform * Math.exp(-s)) - goal;
        if (miss.applyAsDouble(least) < 0 || miss.applyAsDouble(most) > 0)
            throw new IllegalArgumentException("yield " + yieldStress + " MPa, tensile strength " + tensile + " MPa and uniform strain " + uniform
                    + " fit no hardening law; check them");
        double e0 = Math.exp(new BrentSolver(1e-14, 1e-14).solve(300, miss::applyAsDouble, least, most));
        double n = e0 + uniform;
        return new Hardening(young, yieldStress / Math.pow(e0, n), n, yieldStress);
    }
}
