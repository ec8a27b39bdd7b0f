package blankwright.job;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Writes text and plain decimal numbers fast and without an exponent, a point being a point in every country. Not thread-safe. */
final class Decimals {
    private static final long[] TEN = {1, 10, 100, 1000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000};

    private final OutputStream out;
    private final byte[] digits = new byte[24];

    Decimals(OutputStream out) {
        this.out = out;
    }

    Decimals text(String s) throws IOException {
        out.write(s.getBytes(StandardCharsets.UTF_8));
        return this;
    }

    /** {@code x} rounded to {@code places} (0..9) digits after the point, trailing zeros left out; beyond 9e8 as Java writes it. */
    Decimals number(double x, int places) throws IOException {
        if (!(Math.abs(x) < 9e8)) return text(Double.toString(x));
        long scaled = Math.round(Math.abs(x) * TEN[places]);
        if (x < 0 && scaled > 0) out.write('-');
        whole(scaled / TEN[places]);
        long rest = scaled % TEN[places];
        if (rest == 0) return this;
        out.write('.');
        for (int p = places - 1; rest > 0; p--) {
            out.write((int) ('0' + rest / TEN[p]));
            rest %= TEN[p];
        }
        return this;
    }

    Decimals whole(long n) throws IOException {
        if (n < 0) out.write('-');
        int at = digits.length;
        long left = Math.abs(n);
        do {
            digits[--at] = (byte) ('0' + left % 10);
            left /= 10;
        } while (left > 0);
        out.write(digits, at, digits.length - at);
        return this;
    }
}
