package blankwright.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Plain decimal numbers for text formats: no exponent, no grouping, a point whatever the country, no trailing zeros, never "-0". */
final class Decimals {
    private static final long[] POWER = {1, 10, 100, 1000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000};

    private Decimals() { }

    /** Appends {@code value} rounded to at most {@code places} (0 to 8) decimals; AssertionError when it is not finite. */
    static StringBuilder append(StringBuilder out, double value, int places) {
        if (!Double.isFinite(value)) throw new AssertionError("number to be written is " + value);
        if (Math.abs(value) >= 1e9) return out.append(new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString());
        long scaled = Math.round(Math.abs(value) * POWER[places]);
        if (scaled == 0) return out.append('0');
        if (value < 0) out.append('-');
        out.append(scaled / POWER[places]);
        long rest = scaled % POWER[places];
        if (rest == 0) return out;
        out.append('.');
        for (int p = places - 1; rest != 0; p--) {
            out.append((char) ('0' + rest / POWER[p]));
            rest %= POWER[p];
        }
        return out;
    }

    static String text(double value, int places) {
        return append(new StringBuilder(), value, places).toString();
    }
}
