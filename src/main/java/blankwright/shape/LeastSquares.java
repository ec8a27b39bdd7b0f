package blankwright.shape;

/**
 * The flattening of a geodesic disc of constant curvature that makes the mean of (s1-1)² + (s2-1)² least, s the stretches from form to blank.
 *
 * <p>With c the disc's radius along the skin over the radius of curvature, and r the same for a point inside, the point comes to rest at
 * f(r) = A tan(r/2) - 2 cot(r/2) ln cos(r/2), A = -2 cot²(c/2) ln cos(c/2), times the radius of curvature; on a saddle with the hyperbolic
 * functions. Strains here are those of flattening, form to blank: forming has to undo them.
 * <p>Source: equilibrium of (sin r f')' - f/sin r = cos r - 1 with a free edge; docs/sources.md [OD17] for the governing theory.
 */
public final class LeastSquares {
    private final double c;
    private final double scale;
    private final boolean saddle;

    private LeastSquares(double c, double scale, boolean saddle) {
        this.c = c;
        this.scale = scale;
        this.saddle = saddle;
    }

    /** Cap of half angle c, rad below π, on a ball of the given radius, mm. */
    static LeastSquares onBall(double c, double radius) {
        return new LeastSquares(c, radius, false);
    }

    /** Geodesic disc of radius c times {@code radius}, mm, on a skin of curvature -1/radius². */
    static LeastSquares onSaddle(double c, double radius) {
        return new LeastSquares(c, radius, true);
    }

    /** Distance from the middle of the blank, mm, of what lies {@code along} mm from the middle along the skin. */
    public double flatRadius(double along) {
        double r = along / scale;
        if (r == 0) return 0;
        double t = tangent(r / 2);
        return scale * (edgeConstant() * t + 2 * bent(r / 2) / t);
    }

    /** Radius of the blank, mm. */
    public double flatRadius() {
        return flatRadius(c * scale);
    }

    /** Strain of flattening along the rim. */
    public double rimStrain() {
        double along = saddle ? Math.sinh(c) : Math.sin(c);
        return flatRadius() / scale / along - 1;
    }

    /** Strain of flattening in the middle, the same in all directions. */
    public double middleStrain() {
        return (edgeConstant() - 1) / 2;
    }

    /** Mean of (s1-1)² + (s2-1)² over the form's area; written so that no digits are lost for shallow discs. */
    public double meanEnergy() {
        double half = c / 2;
        double q = (saddle ? 2 * Math.cosh(half) / square(Math.sinh(half)) : 2 * Math.cos(half) / square(Math.sin(half))) * bent(half);
        return (1 - q) * (1 + q);
    }

    private double edgeConstant() {
        return 2 * bent(c / 2) / square(tangent(c / 2));
    }

    private double tangent(double x) {
        return saddle ? Math.tanh(x) : Math.tan(x);
    }

    /** -ln cos x or ln cosh x, without cancellation near 0. */
    private double bent(double x) {
        return saddle ? Math.log1p(2 * square(Math.sinh(x / 2))) : -Math.log1p(-2 * square(Math.sin(x / 2)));
    }

    private static double square(double x) {
        return x * x;
    }
}
