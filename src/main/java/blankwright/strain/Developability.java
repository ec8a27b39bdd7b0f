package blankwright.strain;

/**
 * Whether a piece can be bent onto its form without being worked, in numbers a builder can check.
 *
 * <p>Developable: every strain below 0.1 %, and no connected part of a rim to be taken in or let out by more than 1 mm. Below 0.1 % a panel
 * is pulled in by its fasteners ("springs in", from memory of the trade), and 1 mm is what a marked line is worth (the same).
 * <p>Nearly: every strain below 0.5 %: a light wheel or one pass of a shrinker (the lower part of the trade's "easy", from memory).
 * <p>Not: anything else, and every piece with a triangle turned over.
 *
 * @param largestTakeIn mm, of any connected part of a rim, 0 or above
 * @param largestLetOut mm, the same
 * @param stretchMax largest engineering strain, 0 or above
 * @param shrinkMax largest shortening, 0 or above
 */
public record Developability(Kind kind, double largestTakeIn, double largestLetOut, double stretchMax, double shrinkMax) {
    /** Strain below which fastening alone pulls a panel in; trade practice, from memory. */
    public static final double SPRINGS_IN = 0.001;
    /** Strain below which a panel is nearly developable; trade practice, from memory. */
    public static final double NEARLY = 0.005;
    /** Change of length of a rim within the width of marking, mm; trade practice, from memory. */
    public static final double LINE = 1;

    /** The three answers, in the words of the reports. */
    public enum Kind {
        DEVELOPABLE, NEARLY, NOT;

        /** {@code developable}, {@code nearly} or {@code not}. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    public static Developability of(StrainField field) {
        return of(field, RimChange.of(field.map()));
    }

    /** @param rim of the same piece */
    public static Developability of(StrainField field, RimChange rim) {
        double strain = Math.max(field.stretchMax(), field.shrinkMax()), in = rim.largestTakeIn(), out = rim.largestLetOut();
        Kind kind = Kind.NOT;
        if (field.turnedOverCount() == 0) {
            if (strain < SPRINGS_IN && Math.max(in, out) <= LINE) kind = Kind.DEVELOPABLE;
            else if (strain < NEARLY) kind = Kind.NEARLY;
        }
        return new Developability(kind, in, out, field.stretchMax(), field.shrinkMax());
    }

    /** One plain sentence. */
    public String sentence() {
        String change = String.format(java.util.Locale.ROOT, "largest take-in along the rim %.1f mm, largest let-out %.1f mm; "
                + "strain of single triangles from %.2f %% shrink to %.2f %% stretch", largestTakeIn, largestLetOut, 100 * shrinkMax, 100 * stretchMax);
        if (kind == Kind.NOT && Math.max(stretchMax, shrinkMax) < NEARLY) return "not laid flat, triangles are turned over: " + change;
        return switch (kind) {
            case DEVELOPABLE -> "developable (strain below 0.1 %, rim within 1 mm), it bends or springs onto the form: " + change;
            case NEARLY -> "nearly developable (strain below 0.5 %), light work brings it onto the form: " + change;
            case NOT -> "not developable (strain of 0.5 % or more), the metal must be worked: " + change;
        };
    }
}
