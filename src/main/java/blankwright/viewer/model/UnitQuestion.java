package blankwright.viewer.model;

import blankwright.num.LengthUnit;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The question which unit a mesh is in, with the size each answer would give.
 *
 * @param file the mesh, or the recipe that names it
 * @param answers likely ones first
 */
public record UnitQuestion(Path file, List<Answer> answers) {
    private static final double LIKELY_LOW = 60, LIKELY_HIGH = 4000;    // mm across: what a builder usually makes

    /**
     * One answer.
     *
     * @param across longest side of the panel, mm
     */
    public record Answer(LengthUnit unit, double across, boolean likely) {
        /** {@code 400 mm (15.75 in): its numbers are metres}; what is read first is as lengths are written, for who asks that knows neither. */
        public String words(LengthStyle style) {
            LengthStyle other = style == LengthStyle.MM ? LengthStyle.INCH : LengthStyle.MM;
            return style.length(across) + " (" + other.length(across) + "): its numbers are " + plural(unit);
        }
    }

    /** @param across in the numbers of the file */
    static UnitQuestion of(Path file, double across) {
        List<Answer> likely = new ArrayList<>(), others = new ArrayList<>();
        for (LengthUnit unit : LengthUnit.values()) {
            double mm = across * unit.mm();
            boolean panel = mm >= LIKELY_LOW && mm <= LIKELY_HIGH;
            (panel ? likely : others).add(new Answer(unit, mm, panel));
        }
        likely.addAll(others);
        return new UnitQuestion(file, List.copyOf(likely));
    }

    /** {@code millimetres}. */
    public static String plural(LengthUnit unit) {
        return switch (unit) {
            case MM -> "millimetres";
            case CM -> "centimetres";
            case M -> "metres";
            case IN -> "inches";
            case FT -> "feet";
        };
    }
}
