package blankwright.shop;

/**
 * Where one verdict ends and the next begins: trade practice from memory, nothing measured, so the maker's to change.
 *
 * @param springsIn engineering strain of either sign below which it springs in
 * @param easy strain below which it is easy
 * @param ordinary strain below which it is ordinary, hard from there on
 * @param splitStretch stretch from which the piece is better split
 * @param splitShrink shrink, positive, from which it is better split or notched
 * @param splitThinning share of the thickness lost from which it is better split
 * @param careThinning share of the thickness lost from which care is due: little is left to file
 * @param uniformShare share of the metal's uniform strain that is put in between two annealings, above 0 and at most 1
 * @param annealings more of them than this and the piece is better split
 */
public record VerdictBands(double springsIn, double easy, double ordinary, double splitStretch, double splitShrink, double splitThinning,
                           double careThinning, double uniformShare, int annealings) {
    /** 0.1, 2 and 5 %; split from 20 % stretch, 25 % shrink or 25 % thinner; care from 10 % thinner; all of the uniform strain, three annealings. */
    public static final VerdictBands USUAL = new VerdictBands(0.001, 0.02, 0.05, 0.20, 0.25, 0.25, 0.10, 1, 3);

    public VerdictBands {
        if (!(springsIn > 0 && springsIn < easy && easy < ordinary && ordinary < 1))
            throw new IllegalArgumentException("springs-in " + springsIn + ", easy " + easy + ", ordinary " + ordinary + ": must rise, all above 0 and below 1");
        if (!(splitStretch > 0)) throw new IllegalArgumentException("split-stretch " + splitStretch + ": must be above 0");
        if (!(splitShrink > 0 && splitShrink < 1)) throw new IllegalArgumentException("split-shrink " + splitShrink + ": must be above 0 and below 1");
        if (!(splitThinning > 0 && splitThinning < 1))
            throw new IllegalArgumentException("split-thinning " + splitThinning + ": must be above 0 and below 1");
        if (!(careThinning > 0 && careThinning < 1))
            throw new IllegalArgumentException("care-thinning " + careThinning + ": must be above 0 and below 1");
        if (!(uniformShare > 0 && uniformShare <= 1))
            throw new IllegalArgumentException("uniform-share " + uniformShare + ": must be above 0 and at most 1");
        if (annealings < 0) throw new IllegalArgumentException("annealings " + annealings + ": must be 0 or above");
    }

    /** By strain alone: springs in, easy, ordinary or hard; NaN throws IllegalArgumentException. */
    public Verdict ofStrain(double strain) {
        double size = Math.abs(strain);
        if (Double.isNaN(size)) throw new IllegalArgumentException("strain " + strain);
        return size < springsIn ? Verdict.SPRINGS_IN : size < easy ? Verdict.EASY : size < ordinary ? Verdict.ORDINARY : Verdict.HARD;
    }

    /** Whose word they are, for lists. */
    public String basis() {
        return equals(USUAL) ? "bands of trade practice, from memory" : "your own bands";
    }
}
