package blankwright.shape;

import blankwright.num.Sentence;

/**
 * How fine a panel is cut into triangles: so that no triangle is further than {@code chord} from the smooth surface, or into about
 * {@code triangles} of them.
 *
 * <p>With a chord, no edge is longer than about 1/24 of the panel either, so that a flat or single-curved panel still carries its picture.
 *
 * @param chord mm, above 0; NaN where a count was asked for
 * @param triangles 0 where a chord was asked for
 */
public record Fineness(double chord, int triangles) {
    /** More than this is refused rather than tried; a million triangles need about 2 GB to flatten. */
    public static final int MOST_TRIANGLES = 4_000_000;
    /** 0.2 mm. */
    public static final Fineness USUAL = chord(0.2);

    public Fineness {
        if (triangles == 0 ? !(chord > 0 && chord < Double.POSITIVE_INFINITY) : triangles < 0)
            throw new UnfitValue("chord", "chord %s: must be above 0; %s to %s suits hand work", Sentence.typed(chord), Sentence.typed(0.1),
                    Sentence.typed(0.5));
        if (triangles > MOST_TRIANGLES)
            throw new UnfitValue("triangles", "%d triangles: at most %d", triangles, MOST_TRIANGLES);
    }

    /** No further than this from the smooth surface, mm. */
    public static Fineness chord(double mm) {
        return new Fineness(mm, 0);
    }

    /** As near to this many as the panel's grid allows. */
    public static Fineness triangles(int count) {
        if (count < 2) throw new UnfitValue("triangles", "%d triangles: must be 2 or more", count);
        return new Fineness(Double.NaN, count);
    }
}
