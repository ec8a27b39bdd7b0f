package blankwright.num;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** A unit of length as it may be written at the doors; inside everything is mm. */
public enum LengthUnit {
    MM("mm", 1, List.of("mm")),
    CM("cm", 10, List.of("cm")),
    M("m", 1000, List.of("m")),
    IN("in", 25.4, List.of("in", "inch", "inches", "\"")),
    FT("ft", 304.8, List.of("ft", "foot", "feet", "'"));

    private final String word;
    private final double inMm;
    private final List<String> spellings;

    LengthUnit(String word, double inMm, List<String> spellings) {
        this.word = word;
        this.inMm = inMm;
        this.spellings = spellings;
    }

    /** The short word: mm, cm, m, in, ft. */
    public String word() {
        return word;
    }

    /** Millimetres in one of it; exact. */
    public double mm() {
        return inMm;
    }

    /** By any of its spellings, upper or lower case; empty where it is none. */
    public static Optional<LengthUnit> of(String text) {
        String low = text.toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(u -> u.spellings.contains(low)).findFirst();
    }

    /** {@code mm, cm, m, in, ft}, for messages. */
    public static String words() {
        return Arrays.stream(values()).map(LengthUnit::word).collect(Collectors.joining(", "));
    }
}
