package blankwright.flatten.energy;

/**
 * Energy per unit form area of a triangle's map J from form to blank, where it depends on the signed singular values s1 >= |s2| only and
 * is a sum f(s1) + f(s2). No unit. A new energy is one class and one finite-difference test.
 */
public interface StretchEnergy {
    /** f(s), +∞ where s is out of reach: a line search reads that as "too far". */
    double value(double s);

    /** f'(s). */
    double slope(double s);

    /** f''(s). */
    double curvature(double s);

    /** Whether f is infinite for s <= 0, so that a descent that starts without a turned triangle never turns one. */
    boolean barrier();
}
