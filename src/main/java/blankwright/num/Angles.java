package blankwright.num;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Angles as a shop writes them: {@code 30deg}, {@code 30°}, {@code 0.5rad}, a bare number in degrees; rad inside. */
public final class Angles {
    private static final Pattern SHAPE = Pattern.compile("([+-]?(?:\\d{1,9}(?:\\.\\d{0,30})?|\\.\\d{1,30}))\\s*(\\p{L}+|°)?");

    private Angles() { }

    /**
     * @return rad
     * @throws IllegalArgumentException quoting the text and saying how to write it
     */
    public static double parse(String text) {
        String trimmed = text.strip();
        Matcher m = SHAPE.matcher(trimmed);
        if (!m.matches()) throw new IllegalArgumentException("\"" + Lengths.shown(trimmed) + "\" is not an angle: write e.g. 30deg");
        double number = Double.parseDouble(m.group(1));
        String unit = m.group(2) == null ? "deg" : m.group(2).toLowerCase(Locale.ROOT);
        return switch (unit) {
            case "deg", "degree", "degrees", "°" -> Math.toRadians(number);
            case "rad" -> number;
            default -> throw new IllegalArgumentException("\"" + Lengths.shown(trimmed) + "\": the unit " + Lengths.shown(m.group(2))
                    + " is not known; use deg or rad");
        };
    }

    /** {@code 30deg} where whole parts of a degree say it exactly, else in rad; {@link #parse} reads it back to the same bits. */
    public static String exact(double rad) {
        double degrees = Math.rint(Math.toDegrees(rad) * 1e9) / 1e9;
        return Math.toRadians(degrees) == rad ? Lengths.plain(degrees) + "deg" : Lengths.plain(rad) + "rad";
    }
}
