package blankwright.shop;

import java.util.Locale;

/** Lengths and strains as the bench reads them: mm first, inch as decimals and nearest 1/64 second; minus = take in, plus = let out. */
public final class Amounts {
    private static final int PARTS = 64;

    private Amounts() { }

    /** {@code -12.4 mm}, {@code +0.83 mm}, {@code 0 mm}: one digit after the point, two below 1 mm. */
    public static String change(double mm) {
        String text = String.format(Locale.ROOT, Math.abs(mm) < 0.995 ? "%+.2f" : "%+.1f", mm);
        return (isZero(text) ? "0" : text) + " mm";
    }

    /** {@code 830 mm}; one digit after the point below 100 mm. */
    public static String length(double mm) {
        return String.format(Locale.ROOT, mm < 99.95 ? "%.1f mm" : "%.0f mm", mm);
    }

    /** {@code -0.488 in (-31/64)}. */
    public static String changeInInches(double mm) {
        double inches = mm / 25.4;
        String text = String.format(Locale.ROOT, "%+.3f", inches);
        if (isZero(text)) return "0 in";
        String fraction = fraction(Math.abs(inches));
        return text + " in (" + (fraction.equals("0") ? "0" : (inches < 0 ? "-" : "+") + fraction) + ")";
    }

    /** {@code 32.68 in}. */
    public static String inches(double mm) {
        return String.format(Locale.ROOT, "%.2f in", mm / 25.4);
    }

    /** Strain in mm per 100 mm, which is percent: {@code -1.25}, {@code 0.5}, no more digits than it needs, at most three. */
    public static String perHundred(double strain) {
        String text = String.format(Locale.ROOT, "%.3f", strain * 100);
        text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }

    /** {@code +0.8} or {@code -1.2}: percent with its sign and one digit after the point. */
    public static String percent(double strain) {
        String text = String.format(Locale.ROOT, "%+.1f", strain * 100);
        return isZero(text) ? "0" : text;
    }

    /** Nearest 64th as a mixed number in lowest terms, {@code 1 3/8}; inches 0 or above. */
    public static String fraction(double inches) {
        long parts = Math.round(inches * PARTS);
        long whole = parts / PARTS, over = parts % PARTS, under = PARTS;
        while (over > 0 && over % 2 == 0) {
            over /= 2;
            under /= 2;
        }
        if (over == 0) return Long.toString(whole);
        return (whole > 0 ? whole + " " : "") + over + "/" + under;
    }

    private static boolean isZero(String signed) {
        return signed.matches("[+-]0(\\.0*)?");
    }
}
