package blankwright.metal;

/**
 * Bends of flat steel after DIN 6935: the correction v by which the flat piece differs from the two outside legs, L = a + b - v.
 *
 * <p>k = 0.65 + 0.5 log10(r/s) up to r/s = 5, 1 above; K of the other formulas is k/2. Below r/s of 0.05 the formula gives a negative k and is refused.
 * Opening angle 180 - bend angle: up to 90 degrees the legs are measured to the outer face of the bend, between 90 and 165 to the corner of the outer
 * faces, above 165 v is taken as 0. The standard is for cold bends of flat steel; for other metals it is a habit, not a rule.
 * <p>Source: docs/sources.md [DIN6935]. The worked example there rounds k to 0.7 from a chart.
 */
public final class Din6935 {
    private static final double LEAST = 0.05, ALL = 5;

    private Din6935() { }

    /** k, 0..1, for the inside radius over the thickness. */
    public static double k(double radiusOverThickness) {
        if (!(radiusOverThickness >= LEAST))
            throw new IllegalArgumentException("radius over thickness " + radiusOverThickness + ": DIN 6935 gives nothing below " + LEAST);
        return radiusOverThickness > ALL ? 1 : 0.65 + 0.5 * Math.log10(radiusOverThickness);
    }

    public static double k(Bend bend) {
        return k(bend.radius() / bend.thickness());
    }

    /** Metal in the bend: angle (r + k s/2). */
    public static double allowance(Bend bend) {
        return bend.angle() * (bend.radius() + k(bend) / 2 * bend.thickness());
    }

    /** v, in the unit of the bend; may be negative for sharp angles with large radii. */
    public static double shortening(Bend bend) {
        double opening = Math.PI - bend.angle(), r = bend.radius(), s = bend.thickness();
        if (opening > Math.toRadians(165) + 1e-12) return 0;
        double legs = opening <= Math.PI / 2 + 1e-12 ? 2 * (r + s) : 2 * (r + s) * Math.tan(bend.angle() / 2);
        return legs - allowance(bend);
    }
}
