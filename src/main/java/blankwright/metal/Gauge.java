package blankwright.metal;

import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.num.Unfit;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Sheet gauge numbers, which mean another thickness in each metal.
 *
 * <p>Even numbers 12 to 24 are published: two public gauge tables that agree, docs/sources.md [GT]. The others of steel, galvanized and stainless
 * are from memory; those of aluminium follow the Brown and Sharpe law 0.32486 in · 92^(-number/39), which the table rounds.
 */
public enum Gauge {
    STEEL("steel", 10, .1345, .1196, .1046, .0897, .0747, .0673, .0598, .0538, .0478, .0418, .0359, .0329, .0299, .0269, .0239, .0209, .0179),
    GALVANIZED("galvanized", 10, .1382, .1233, .1084, .0934, .0785, .0710, .0635, .0575, .0516, .0456, .0396, .0366, .0336, .0306, .0276, .0247, .0217),
    STAINLESS("stainless", 10, .1406, .1250, .1094, .0937, .0781, .0703, .0625, .0562, .0500, .0437, .0375, .0344, .0312, .0281, .0250, .0219, .0187),
    ALUMINIUM("aluminium", 10, .1019, .0907, .0808, .0720, .0641, .0571, .0508, .0453, .0403, .0359, .0320, .0285, .0253, .0226, .0201, .0179, .0159);

    private static final double THINNEST = 0.2;     // mm; a panel maker's sheet is 0.4 to 5 mm, which is 0.016 to 0.2 in

    private static final Pattern SHAPE = Pattern.compile(
            "(?:#\\s*(\\d{1,3})|(\\d{1,3})\\s*-?\\s*(?:ga|gauge|gage))\\.?(?:\\s+(\\p{L}[\\p{L}\\d. -]*))?", Pattern.CASE_INSENSITIVE);

    private final String word;
    private final int first;
    private final double[] inches;

    Gauge(String word, int first, double... inches) {
        this.word = word;
        this.first = first;
        this.inches = inches;
    }

    /** {@code steel}, {@code galvanized}, {@code stainless} or {@code aluminium}. */
    public String word() {
        return word;
    }

    /** Thickness of a number, mm, with its source; refuses numbers outside the table. */
    public Known thickness(int number) {
        int i = number - first;
        if (i < 0 || i >= inches.length)
            throw new IllegalArgumentException(number + " gauge " + word + ": the table knows " + first + " to " + (first + inches.length - 1)
                    + "; measure the sheet");
        boolean read = number % 2 == 0 && number >= 12 && number <= 24;
        String source = this == ALUMINIUM ? "Brown and Sharpe gauge" : word + " sheet gauge";
        return new Known(inches[i] * 25.4, read || this == ALUMINIUM ? Trust.PUBLISHED : Trust.FROM_MEMORY, source + ", public gauge tables [GT]");
    }

    /** Whether a text is meant as a gauge number, with or without its metal. */
    public static boolean isMeant(String text) {
        return SHAPE.matcher(text.strip()).matches();
    }

    /**
     * Reads a thickness of sheet: a length (a bare number is mm, from 0.2 up), a gauge number with its metal ({@code 18 ga steel}), or a bare gauge number where the alloy tells it.
     *
     * @return mm
     * @throws IllegalArgumentException quoting the text and saying why and what to write
     */
    public static double sheet(String text, Optional<Alloy> alloy) {
        Matcher m = SHAPE.matcher(text.strip());
        if (!m.matches()) return length(text.strip());
        int number = Integer.parseInt(m.group(1) != null ? m.group(1) : m.group(2));
        Optional<Gauge> told = alloy.flatMap(a -> a.family().gauge());
        if (m.group(3) != null) {
            Gauge named = of(m.group(3)).orElseThrow(() -> new IllegalArgumentException("\"" + text.strip() + "\": no gauge table for that metal; there is "
                    + words() + ". Measure the sheet and write it as mm or inch"));
            boolean coated = named == GALVANIZED && told.equals(Optional.of(STEEL));
            if (alloy.isPresent() && !coated && !told.equals(Optional.of(named)))
                throw new IllegalArgumentException("\"" + text.strip() + "\": the alloy " + alloy.get().name() + " is not sold by the " + named.word
                        + " gauge; measure the sheet and write it as mm or inch");
            return named.thickness(number).value();
        }
        if (told.isPresent()) return told.get().thickness(number).value();
        if (alloy.isPresent()) throw new IllegalArgumentException("\"" + text.strip() + "\": there is no gauge table for " + alloy.get().name()
                + "; measure the sheet and write it as mm or inch");
        throw new Unfit("\"%s\": a gauge number is another thickness in each metal%s; say the metal, e.g. %d ga steel, or name the alloy,"
                + " or measure the sheet", text.strip(), thicknesses(number), number);
    }

    /** A bare number is mm, but not where that is foil and the same number of inches is sheet. */
    private static double length(String text) {
        double mm = Lengths.parse(text);
        if (mm > 0 && mm < THINNEST && text.chars().allMatch(c -> c >= '0' && c <= '9' || c == '.'))
            throw new Unfit("\"%s\" has no unit, and %s mm is foil: write %sin for %s, or %smm if it is foil", text, text, text,
                    Sentence.length(25.4 * mm, 2), text);
        return mm;
    }

    private static Sentence thicknesses(int number) {
        List<Sentence> known = Arrays.stream(values()).filter(g -> number >= g.first && number < g.first + g.inches.length)
                .map(g -> Sentence.say("%s in %s", Sentence.length(g.thickness(number).value(), 2), g.word)).toList();
        return known.isEmpty() ? Sentence.of("") : Sentence.say(" (%s)", Sentence.joined(", ", known));
    }

    /** By its word or a common spelling of it. */
    public static Optional<Gauge> of(String metal) {
        String low = metal.strip().toLowerCase(Locale.ROOT);
        return switch (low) {
            case "steel", "mild steel" -> Optional.of(STEEL);
            case "galvanized", "galvanised", "galvanized steel", "galvanised steel" -> Optional.of(GALVANIZED);
            case "stainless", "stainless steel" -> Optional.of(STAINLESS);
            case "aluminium", "aluminum" -> Optional.of(ALUMINIUM);
            default -> Optional.empty();
        };
    }

    private static String words() {
        return Arrays.stream(values()).map(Gauge::word).collect(Collectors.joining(", "));
    }
}
