package blankwright.metal;

/**
 * The three bend allowances of the handbook for bends of 90 degrees, L = a T + 1.57 R, and in proportion for other angles.
 *
 * <p>R is the inside radius and T the thickness in the same unit. The printed 1.57 is kept for π/2, as the worked examples have it.
 * <p>Source: Machinery's Handbook, 31st ed., p. 1421, eqs. (32) to (34); docs/sources.md [MH31].
 */
public enum HandbookForm {
    /** Soft brass, soft copper. */
    SOFT(0.55),
    /** Half-hard copper and brass, soft steel, aluminium. */
    HALF_HARD(0.64),
    /** Bronze, hard copper, cold-rolled and spring steel. */
    HARD(0.71);

    private static final double QUARTER_TURN = 1.57;

    private final double ofThickness;

    HandbookForm(double ofThickness) {
        this.ofThickness = ofThickness;
    }

    /** Length of metal in the bend, in the unit of the bend. */
    public double allowance(Bend bend) {
        return (ofThickness * bend.thickness() + QUARTER_TURN * bend.radius()) * bend.angle() / (Math.PI / 2);
    }

    /** K that gives the same at 90 degrees with π/2 in place of 1.57: 0.350, 0.407 or 0.452. */
    public double k() {
        return ofThickness / (Math.PI / 2);
    }

    /** {@code soft}, {@code half-hard} or {@code hard}. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
}
