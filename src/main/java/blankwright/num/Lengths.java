package blankwright.num;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lengths as a shop writes them, read into mm and written from mm.
 *
 * <p>Read: {@code 1.6mm}, {@code 0.063in}, {@code 1/16in}, {@code 1 1/2 in}, {@code 1-1/2"}, {@code 2ft}. One number and one unit; a bare number
 * takes the unit the caller says, a bare fraction none but inch or foot. A sheet gauge is refused: its thickness depends on the metal.
 */
public final class Lengths {
    private static final Pattern GAUGE = Pattern.compile("#\\s*\\d+.*|\\d+\\s*-?\\s*(ga|gauge|gage|swg|awg)\\b.*", Pattern.CASE_INSENSITIVE);
    private static final Pattern SHAPE = Pattern.compile(
            "([+-]?)(?:(\\d{1,15}(?:\\.\\d{0,30})?|\\.\\d{1,30})|(?:(\\d{1,6})(?:\\s+|-))?(\\d{1,6})\\s*/\\s*(\\d{1,6}))\\s*([a-zA-Z]+|\"|')?");

    private Lengths() { }

    /** Reads with mm for a bare number; see {@link #parse(String, LengthUnit)}. */
    public static double parse(String text) {
        return parse(text, LengthUnit.MM);
    }

    /**
     * Reads one length. A fraction without a unit is refused where a bare number is mm: 1/16 was meant as inch.
     *
     * @param bare the unit of a number that brings none
     * @return mm, finite, of any sign; decimal numbers in mm come back as written, others rounded once or twice
     * @throws IllegalArgumentException quoting the text and saying how to write it
     */
    public static double parse(String text, LengthUnit bare) {
        String trimmed = text.strip();
        if (GAUGE.matcher(trimmed).matches())
            throw new IllegalArgumentException("\"" + shown(trimmed) + "\": a gauge number is another thickness in steel, aluminium and"
                    + " stainless; measure the sheet and write it as mm or inch, e.g. 1.2mm or 0.050in");
        Matcher m = SHAPE.matcher(trimmed);
        if (!m.matches()) throw new IllegalArgumentException("\"" + shown(trimmed) + "\" is not a length" + hint(trimmed));
        if (bare == LengthUnit.MM && m.group(6) == null && m.group(2) == null)
            throw new IllegalArgumentException("\"" + shown(trimmed) + "\" has no unit, and nobody measures fractions of a millimetre: write "
                    + shown(trimmed) + "in");
        LengthUnit unit = bare;
        if (m.group(6) != null)
            unit = LengthUnit.of(m.group(6)).orElseThrow(() -> new IllegalArgumentException(
                    "\"" + shown(trimmed) + "\": the unit " + shown(m.group(6)) + " is not known; use " + LengthUnit.words()));
        double number;
        if (m.group(2) != null) {
            number = Double.parseDouble(m.group(2));
        } else {
            int whole = m.group(3) == null ? 0 : Integer.parseInt(m.group(3));
            int top = Integer.parseInt(m.group(4)), bottom = Integer.parseInt(m.group(5));
            if (bottom == 0) throw new IllegalArgumentException("\"" + shown(trimmed) + "\": nothing can be divided by 0");
            number = whole + (double) top / bottom;
        }
        double mm = number * unit.mm();
        return m.group(1).equals("-") ? -mm : mm;
    }

    /** {@code 12.7 mm} with the given decimals, rounded half up. */
    public static String mm(double mm, int decimals) {
        return fixed(mm, decimals) + " mm";
    }

    /** {@code 0.500 in} with the given decimals. */
    public static String inches(double mm, int decimals) {
        return fixed(mm / 25.4, decimals) + " in";
    }

    /** The nearest 1/64 inch, reduced: {@code 1 1/2 in}, {@code 3/64 in}, {@code 0 in}; a tie goes away from zero. */
    public static String sixtyFourths(double mm) {
        long n = Math.round(Math.abs(mm) / 25.4 * 64);
        long whole = n / 64, top = n % 64, bottom = 64;
        while (top > 0 && top % 2 == 0) {
            top /= 2;
            bottom /= 2;
        }
        String part = top == 0 ? "" : top + "/" + bottom;
        String number = whole == 0 ? (top == 0 ? "0" : part) : top == 0 ? Long.toString(whole) : whole + " " + part;
        return (mm < 0 && n > 0 ? "-" : "") + number + " in";
    }

    /** {@code 12.4 mm (0.488 in, 31/64 in)}; two digits after the point below 1 mm. */
    public static String both(double mm) {
        return mm(mm, mm < 1 ? 2 : 1) + " (" + inches(mm, 3) + ", " + sixtyFourths(mm) + ")";
    }

    /** The sides of a box: {@code 830 x 95.4 mm (32.68 x 3.76 in)}. */
    public static String box(double... mm) {
        StringBuilder metric = new StringBuilder(), inch = new StringBuilder();
        for (double side : mm) {
            metric.append(metric.isEmpty() ? "" : " x ").append(String.format(Locale.ROOT, side < 100 ? "%.1f" : "%.0f", side));
            inch.append(inch.isEmpty() ? "" : " x ").append(String.format(Locale.ROOT, "%.2f", side / 25.4));
        }
        return metric + " mm (" + inch + " in)";
    }

    /** {@code 1.6mm}: every digit of the number, without exponent, as {@link #parse} reads it back to the same bits. */
    public static String exact(double mm) {
        return plain(mm) + "mm";
    }

    /** Every digit without exponent and without a useless point, e.g. {@code 1.6} or {@code 330}. */
    public static String plain(double x) {
        if (!Double.isFinite(x)) throw new IllegalArgumentException(x + " cannot be written as a length or angle");
        if (x == 0) return "0";
        return new BigDecimal(Double.toString(x)).stripTrailingZeros().toPlainString();
    }

    /** Rounded half up, never -0. */
    static String fixed(double x, int decimals) {
        String s = String.format(Locale.ROOT, "%." + decimals + "f", x);
        return s.startsWith("-") && s.chars().allMatch(c -> c == '-' || c == '0' || c == '.') ? s.substring(1) : s;
    }

    private static String hint(String text) {
        if (text.isEmpty()) return ": nothing is written; e.g. 1.6mm, 0.063in, 1/16in";
        if (text.matches("[+-]?\\d+,\\d+.*")) return ": write a point instead of the comma, e.g. 1.6mm";
        if (text.matches(".*\\d\\s*(ft|foot|feet|')\\s*\\d.*")) return ": write one number and one unit, e.g. 27in";
        return ": write a number and a unit, e.g. 1.6mm, 0.063in, 1/16in, 1 1/2 in";
    }

    /** What somebody wrote, safe and short enough to be shown in a message. */
    static String shown(String text) {
        String clean = text.codePoints().map(c -> Character.isISOControl(c) ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
        return clean.length() <= 40 ? clean : clean.substring(0, 40) + "...";
    }
}
