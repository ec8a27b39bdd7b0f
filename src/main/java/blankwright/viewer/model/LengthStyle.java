package blankwright.viewer.model;

import blankwright.num.Lengths;
import blankwright.num.Sentence;
import java.util.Arrays;
import java.util.Locale;

/** How lengths are written on the screen. */
public enum LengthStyle implements Sentence.Units {
    MM("mm"), INCH("inch, decimals"), FRACTION("inch, 1/64");

    private final String words;

    LengthStyle(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** {@code 12.4 mm}, {@code 0.488 in}, {@code 31/64 in}: as many digits as a bench can use. */
    public String length(double mm) {
        return switch (this) {
            case MM -> Lengths.mm(mm, Math.abs(mm) < 0.995 ? 2 : Math.abs(mm) < 99.95 ? 1 : 0);
            case INCH -> Lengths.inches(mm, Math.abs(mm) < 254 ? 3 : 2);
            case FRACTION -> Lengths.sixtyFourths(mm);
        };
    }

    /** What is worth more than tenths of a millimetre has decimals in inches too: no rule shows such a fraction. */
    @Override public String length(double mm, int decimals) {
        return this == MM ? Lengths.mm(mm, decimals) : this == FRACTION && decimals < 2 ? Lengths.sixtyFourths(mm) : Lengths.inches(mm, decimals + 2);
    }

    @Override public String place(int decimals, double... mm) {
        if (this == MM) return Sentence.FILES.place(decimals, mm);
        double[] inches = Arrays.stream(mm).map(x -> x / 25.4).toArray();
        return "(" + Sentence.numbers(decimals + 1, inches) + ") in";
    }

    /** cm², or square inches with a digit more. */
    @Override public String area(double mm2, int decimals) {
        return this == MM ? Sentence.FILES.area(mm2, decimals) : Sentence.numbers(decimals + 1, mm2 / (25.4 * 25.4)) + " sq in";
    }

    /** As a tool reads the sheet: two more digits than {@link #length}. */
    public String thickness(double mm) {
        return this == MM ? Lengths.mm(mm, 2) : Lengths.inches(mm, 4);
    }

    /** {@code let out 1.2 mm}, {@code take in 0.4 mm}, {@code as it is}. */
    public String change(double mm) {
        String size = length(Math.abs(mm));
        if (size.matches("0(\\.0*)? (mm|in)")) return "as it is";
        return (mm < 0 ? "take in " : "let out ") + size;
    }

    /** {@code 640 x 410 mm} and the like, whole mm or tenths of an inch. */
    public String size(double... mm) {
        StringBuilder out = new StringBuilder();
        for (double side : mm) {
            out.append(out.isEmpty() ? "" : " × ");
            out.append(this == MM ? String.format(Locale.ROOT, side < 100 ? "%.1f" : "%.0f", side)
                    : this == INCH ? String.format(Locale.ROOT, "%.2f", side / 25.4) : Lengths.sixtyFourths(side).replace(" in", ""));
        }
        return out + (this == MM ? " mm" : " in");
    }

    /** {@code 20 m}, {@code 65.6 ft}. */
    @Override public String metres(double m) {
        return this == MM ? Sentence.FILES.metres(m) : Sentence.numbers(1, m / 0.3048) + " ft";
    }

    /** What a person may type and finds again: {@code 100 mm}, {@code 3.937 in}. */
    @Override public String typed(double mm) {
        if (this == MM) return Lengths.plain(Math.round(mm * 1e4) / 1e4) + " mm";
        double exact = mm / 25.4 * 64;
        if (this == FRACTION && Math.abs(exact - Math.rint(exact)) < 1e-9) return Lengths.sixtyFourths(mm);
        return Lengths.plain(Math.round(mm / 25.4 * 1e5) / 1e5) + " in";
    }

    /** One nudge of a length that goes by {@code mm}: the nearest round number of an inch, or fraction of it. */
    public double step(double mm) {
        if (this == MM) return mm;
        double inch = mm / 25.4;
        if (this == FRACTION) return 25.4 * Math.max(1 / 64.0, Math.pow(2, Math.rint(Math.log(inch) / Math.log(2))));
        double ten = Math.pow(10, Math.floor(Math.log10(inch))), first = inch / ten;
        return 25.4 * ten * (first < 1.5 ? 1 : first < 3.5 ? 2 : first < 7.5 ? 5 : 10);
    }
}
