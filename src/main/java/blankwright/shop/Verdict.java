package blankwright.shop;

/**
 * How hard a strain is to make by hand, in the words of the trade, for stretch and shrink alike.
 *
 * <p>Without a metal only the strain decides, {@link #of}: the last two words are then never said. With one, {@link Judgement} says all six.
 */
public enum Verdict {
    /** Nothing to do: it pulls in when fastened. */
    SPRINGS_IN,
    /** One light pass. */
    EASY,
    /** A few passes or one round of tucks. */
    ORDINARY,
    /** Heavy work in several rounds. */
    HARD,
    /** The metal must be made soft again on the way. */
    ANNEAL,
    /** More than the metal or the hands bear in one piece: move the seam, slit and fill, or notch. */
    SPLIT;

    /**
     * By the usual bands, without knowing the metal.
     *
     * @param strain engineering, of either sign; NaN throws IllegalArgumentException
     */
    public static Verdict of(double strain) {
        return VerdictBands.USUAL.ofStrain(strain);
    }

    /** What it means at the bench, in a few words. */
    public String meaning() {
        return switch (this) {
            case SPRINGS_IN -> "pulls in when fastened";
            case EASY -> "one light pass";
            case ORDINARY -> "a few passes or one round of tucks";
            case HARD -> "heavy work in several rounds";
            case ANNEAL -> "the metal must be made soft again on the way";
            case SPLIT -> "more than the metal or the hands bear in one piece: move the seam, slit and fill, or notch";
        };
    }

    /** {@code springs in}, {@code easy}, {@code ordinary}, {@code hard}, {@code anneal} or {@code split}. */
    public String words() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }
}
