package blankwright.picture;

import java.util.Arrays;

/**
 * Eleven colours for the work in the metal: purple where it must be shrunk, near-white neutral ground, orange where it must be stretched.
 *
 * <p>The scale is centred on zero and ends at the same amount on both sides. Class 5 is neutral ground; five classes of equal
 * {@link #step()} lie on each side, the first shortened by the neutral ground. Amounts are engineering strains blank to form, so 0.01 is
 * 1 mm in every 100 mm.
 * <p>Colours: the PuOr scheme of eleven classes from ColorBrewer, (c) 2002 Cynthia Brewer, Mark Harrower and The Pennsylvania State
 * University, Apache-2.0; docs/sources.md [CB].
 */
public final class StrainScale {
    public static final int CLASSES = 11;
    private static final int NEUTRAL_CLASS = 5;
    private static final int SIDE = 5;
    private static final int[] COLOURS = {      // most shrunk first
            0x2D004B, 0x542788, 0x8073AC, 0xB2ABD2, 0xD8DAEB, 0xF7F7F7, 0xFEE0B6, 0xFDB863, 0xE08214, 0xB35806, 0x7F3B08};
    /** Ends of scale that a fifth of still reads well; coarser steps of 1-2-5 left a panel of 2.1 % with two colours a side. */
    private static final double[] ROUND = {1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10};
    /** Below half a per cent there is nothing a bench could show; a smaller scale would paint rounding in strong colours. */
    private static final double LEAST_LIMIT = 0.005;
    private static final double KEPT = 0.995;

    private final double limit;
    private final double neutral;
    private final double lowest, highest;
    private final double[] boundary;

    private StrainScale(double limit, double neutral, double lowest, double highest) {
        this.limit = limit;
        this.neutral = neutral;
        this.lowest = lowest;
        this.highest = highest;
        this.boundary = new double[CLASSES - 1];
        for (int i = 0; i < SIDE; i++) {
            double amount = i == 0 ? neutral : limit * i / SIDE;
            boundary[NEUTRAL_CLASS + i] = amount;
            boundary[NEUTRAL_CLASS - 1 - i] = -amount;
        }
    }

    /**
     * The scale whose round end holds 99.5 percent of the amounts; what lies beyond takes the end colours and {@link #clampsHigh} says so.
     *
     * @param neutral amounts nearer to zero than this are left alone, above 0
     * @param amounts strains of all that will be drawn, any order, NaN-free; may be empty
     */
    public static StrainScale of(double neutral, double[]... amounts) {
        if (!(neutral > 0 && neutral < 1)) throw new IllegalArgumentException("neutral ground within " + neutral + ": must be above 0 and below 1");
        double lowest = 0, highest = 0;
        int count = 0;
        for (double[] some : amounts) count += some.length;
        double[] size = new double[count];
        int at = 0;
        for (double[] some : amounts) {
            for (double a : some) {
                size[at++] = Math.abs(a);
                lowest = Math.min(lowest, a);
                highest = Math.max(highest, a);
            }
        }
        Arrays.sort(size);
        double end = count == 0 ? 0 : size[Math.min(count - 1, (int) Math.ceil(KEPT * count) - 1)];
        return new StrainScale(roundedUp(Math.max(end, Math.max(LEAST_LIMIT, 2 * neutral * SIDE))), neutral, lowest, highest);
    }

    /** The same scale ending at another amount, above {@link #neutral}. */
    public StrainScale withLimit(double end) {
        if (!(end > neutral && end < Double.POSITIVE_INFINITY)) throw new IllegalArgumentException("scale to " + end + ": must be above " + neutral);
        return new StrainScale(end, Math.min(neutral, end / (2 * SIDE)), lowest, highest);
    }

    private static double roundedUp(double end) {
        double decade = Math.pow(10, Math.floor(Math.log10(end)));
        for (double r : ROUND) {
            // 1e-9: an end that is round but for its last bits stays where it is
            if (r * decade >= end * (1 - 1e-9)) return Math.round(r * decade * 1e6) / 1e6;
        }
        return 10 * decade;
    }

    /** End of the scale on both sides, above 0. */
    public double limit() {
        return limit;
    }

    /** Width of a class away from neutral ground: a fifth of the limit. */
    public double step() {
        return limit / SIDE;
    }

    /** Amounts nearer to zero than this are neutral ground. */
    public double neutral() {
        return neutral;
    }

    /** Boundary i = 0..9 between class i and class i + 1, rising. */
    public double boundary(int i) {
        return boundary[i];
    }

    /** A copy of all ten boundaries, rising. */
    public double[] boundaries() {
        return boundary.clone();
    }

    /** Class 0 (shrink most) .. 10 (stretch most) of an amount; amounts beyond the limit and on a boundary belong to the outer class. */
    public int classOf(double amount) {
        int c = NEUTRAL_CLASS;
        if (amount >= 0) {
            while (c < CLASSES - 1 && amount >= boundary[c]) c++;
        } else {
            while (c > 0 && amount <= boundary[c - 1]) c--;
        }
        return c;
    }

    /** Colour of class c as 0xRRGGBB. */
    public static int colour(int c) {
        return COLOURS[c];
    }

    /** Colour of an amount as 0xRRGGBB. */
    public int colourOf(double amount) {
        return COLOURS[classOf(amount)];
    }

    /** True where an amount lies so far below zero that the scale ends before it. */
    public boolean clampsLow() {
        return lowest < -limit * (1 + 1e-9);
    }

    public boolean clampsHigh() {
        return highest > limit * (1 + 1e-9);
    }

    /** The strongest shrinking among the amounts, 0 or below. */
    public double lowest() {
        return lowest;
    }

    /** The strongest stretching among the amounts, 0 or above. */
    public double highest() {
        return highest;
    }

    /** True when every amount is neutral ground: the panel needs bending only. */
    public boolean bendingOnly() {
        return lowest > -neutral && highest < neutral;
    }
}
