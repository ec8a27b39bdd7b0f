package blankwright.num;

/**
 * Singular values and vectors of a 2x2 matrix J = [a b; c d] = U diag(s1, s2) Vᵀ, with s1 >= |s2|; s2 carries the sign of det J.
 *
 * <p>U and V are rotations by the angles {@code left} and {@code right}, rad: J turns the direction {@code right} into the direction
 * {@code left}, longer s1 times. Where s1 = s2 the direction is free; {@code right} is then 0.
 * <p>Error: s1 and |s2| relative below 4e-16 times s1 / |s2| for s2, below 4e-16 for s1.
 * <p>Source: the sum and difference of two hypotenuses, e.g. Blinn, "Consider the Lowly 2x2 Matrix", 1996; docs/sources.md [B96].
 */
public record Svd2(double s1, double s2, double left, double right) {
    public static Svd2 of(double a, double b, double c, double d) {
        double e = (a + d) / 2, f = (a - d) / 2, g = (c + b) / 2, h = (c - b) / 2;
        double q = Math.hypot(e, h), r = Math.hypot(f, g);
        double sum = r == 0 ? 0 : Math.atan2(g, f);     // left + right
        double difference = q == 0 ? 0 : Math.atan2(h, e);    // left - right
        double right = (sum - difference) / 2;
        if (r == 0) return new Svd2(q, q, difference, 0);
        return new Svd2(q + r, smaller(a, b, c, d, q, r), (sum + difference) / 2, right);
    }

    /** q - r loses digits when J is nearly singular; det / s1 does not. */
    private static double smaller(double a, double b, double c, double d, double q, double r) {
        double s1 = q + r;
        return s1 == 0 ? 0 : (a * d - b * c) / s1;
    }
}
