package blankwright.job;

import blankwright.num.LengthUnit;
import blankwright.num.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Asks whether a panel is really as large as its file says, since most mesh files do not tell their unit. */
final class SizeQuestion {
    /** Under this no hand tool holds the panel, mm. */
    static final double SMALLEST = 20;
    /** Over this no sheet is sold and no panel is carried, mm. */
    static final double LARGEST = 6000;
    private static final double LIKELY_LOW = 60, LIKELY_HIGH = 4000;    // mm across: what a builder usually makes

    private SizeQuestion() { }

    /** True where a panel {@code mm} across is no ordinary panel. */
    static boolean unusual(double mm) {
        return !(mm >= SMALLEST && mm <= LARGEST);
    }

    /**
     * The question, with what to say to each answer; empty where the size is that of a panel.
     *
     * @param across the longest side of the box round the mesh, in the numbers of the file
     * @param taken the unit taken for granted
     */
    static Optional<String> ask(String name, double across, LengthUnit taken) {
        double mm = across * taken.mm();
        if (!unusual(mm)) return Optional.empty();
        List<String> likely = new ArrayList<>();
        for (LengthUnit unit : LengthUnit.values()) {
            double then = across * unit.mm();
            if (unit != taken && then >= LIKELY_LOW && then <= LIKELY_HIGH)
                likely.add("In " + plural(unit) + " it would be " + size(then) + " across: say --units " + unit.word() + ".");
        }
        if (likely.isEmpty()) likely.add("No unit we know (" + LengthUnit.words() + ") makes it the size of a panel: check the file.");
        return Optional.of(name + ": is this really " + size(mm) + " across? " + String.join(" ", likely)
                + " If it is right as it stands, say --units " + taken.word() + ".");
    }

    /** {@code 840 mm (33.1 in)}, with as many digits as the size deserves. */
    static String size(double mm) {
        return sized(mm).text();
    }

    /** The same, its units left to the reader but for what is far too large. */
    static Sentence sized(double mm) {
        if (mm >= 10_000) return Sentence.say("%,.0f m (%,.0f ft)", mm / 1000, mm / 304.8);
        return Sentence.say("%s", Sentence.both(mm, mm >= 100 ? 0 : mm >= 1 ? 1 : 3, mm >= 25.4 ? 1 : 3));
    }

    private static String plural(LengthUnit unit) {
        return switch (unit) {
            case MM -> "millimetres";
            case CM -> "centimetres";
            case M -> "metres";
            case IN -> "inches";
            case FT -> "feet";
        };
    }
}
