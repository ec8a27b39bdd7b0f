package blankwright.metal;

/** How far a number is to be trusted, best first. */
public enum Trust {
    /** Read in the printed source named beside it, which gives it as measured, as a limit or as a rule. */
    PUBLISHED,
    /** Read in the source named, which gives it as typical: the sheet at hand may be a tenth or two away. */
    TYPICAL,
    /** Believed right, not looked up again. A test strip of the metal at hand beats it. */
    FROM_MEMORY;

    /** {@code published}, {@code typical} or {@code from memory}. */
    public String words() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }

    /** The less trusted of two. */
    public Trust weaker(Trust other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
