package blankwright.num;

import java.math.BigDecimal;

/**
 * Which way three points of the plane turn, without rounding error.
 *
 * <p>A floating-point filter decides almost always; what it cannot decide is computed exactly, since every double is a decimal.
 * <p>Source of the filter's bound: Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates", 1997,
 * docs/sources.md [S97].
 */
public final class Orientation {
    private static final double BOUND = (3 + 16 * 0x1p-53) * 0x1p-53;
    private static final double LEAST = 1e-290;         // products below it may have lost digits, which the bound does not know of

    private Orientation() { }

    /** +1 where a, b, c turn counter-clockwise, -1 clockwise, 0 on one line; NaN coordinates throw NumberFormatException. */
    public static int sign(double ax, double ay, double bx, double by, double cx, double cy) {
        double left = (ax - cx) * (by - cy), right = (ay - cy) * (bx - cx);
        double det = left - right, size = Math.abs(left) + Math.abs(right);
        if (size > LEAST && det > BOUND * size) return 1;
        if (size > LEAST && det < -BOUND * size) return -1;
        if (size == 0 && certainlyFlat(ax - cx, by - cy, ay - cy, bx - cx)) return 0;
        return exact(ax, ay, bx, by, cx, cy);
    }

    /** Both products are zero because a factor is, not because they were too small to be written. */
    private static boolean certainlyFlat(double p, double q, double r, double s) {
        return (p == 0 || q == 0) && (r == 0 || s == 0);
    }

    private static int exact(double ax, double ay, double bx, double by, double cx, double cy) {
        BigDecimal x = new BigDecimal(cx), y = new BigDecimal(cy);
        BigDecimal left = new BigDecimal(ax).subtract(x).multiply(new BigDecimal(by).subtract(y));
        BigDecimal right = new BigDecimal(ay).subtract(y).multiply(new BigDecimal(bx).subtract(x));
        return left.compareTo(right);
    }
}
