package blankwright.shop;

/**
 * How hard a strain is to make by hand, for stretch and shrink alike: below 0.1 % it springs in, to 2 % easy, to 5 % ordinary, above hard.
 *
 * <p>The limits are trade practice from memory, nothing measured: a test strip of the metal at hand beats them. They say nothing of whether
 * the metal bears it without annealing or splitting.
 */
public enum Verdict {
    SPRINGS_IN(0.001), EASY(0.02), ORDINARY(0.05), HARD(Double.POSITIVE_INFINITY);

    private final double below;

    Verdict(double below) {
        this.below = below;
    }

    /** Strain at which the next harder band begins, engineering; +∞ for the hardest. */
    public double below() {
        return below;
    }

    /** @param strain engineering, of either sign; NaN throws IllegalArgumentException */
    public static Verdict of(double strain) {
        for (Verdict verdict : values()) {
            if (Math.abs(strain) < verdict.below) return verdict;
        }
        if (Double.isInfinite(strain)) return HARD;
        throw new IllegalArgumentException("strain " + strain);
    }

    /** {@code springs in}, {@code easy}, {@code ordinary} or {@code hard}. */
    public String words() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }
}
