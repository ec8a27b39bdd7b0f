package blankwright.metal;

/**
 * A number with what it stands on.
 *
 * @param value finite, in the unit the holder says
 * @param source the book, standard, table or formula it comes from, not blank
 */
public record Known(double value, Trust trust, String source) {
    public Known {
        if (!Double.isFinite(value)) throw new IllegalArgumentException(value + " is no number");
        if (source.isBlank()) throw new IllegalArgumentException("a number without its source");
    }

    /**
     * A number worked out from others: trusted no further than the least trusted of them.
     *
     * @param formula in words or letters, for those who want to follow it
     */
    public static Known from(double value, String formula, Known... others) {
        Trust trust = Trust.PUBLISHED;
        for (Known other : others) trust = trust.weaker(other.trust);
        return new Known(value, trust, "worked out: " + formula);
    }

    /** {@code typical; source}, for lists and tips. */
    public String basis() {
        return trust.words() + "; " + source;
    }
}
