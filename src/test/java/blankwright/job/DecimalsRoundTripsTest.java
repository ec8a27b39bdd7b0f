package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DecimalsRoundTripsTest {
    @Test
    void asExactArithmeticRoundsThem() throws IOException {
        Random random = new Random(5);
        for (int i = 0; i < 20_000; i++) {
            double x = random.nextGaussian() * Math.pow(10, random.nextInt(12) - 6);
            int places = random.nextInt(10);
            double off = new BigDecimal(written(x, places)).subtract(new BigDecimal(x)).abs().doubleValue();
            double half = 0.5 * Math.pow(10, -places);
            assertEquals(0, Math.max(0, off - half), 2e-16 * Math.abs(x), x + " to " + places + " places: " + written(x, places));
        }
    }

    @Test
    void plainOnesReadAsAPersonWritesThem() throws IOException {
        assertEquals("0", written(-0.0, 3));
        assertEquals("0", written(-1e-12, 9));
        assertEquals("-1.5", written(-1.5, 9));
        assertEquals("12", written(12, 4));
        assertEquals("0.050000001", written(0.0500000010, 9));
        assertEquals(new BigDecimal("1E+12"), new BigDecimal(written(1e12, 3)).setScale(-12, RoundingMode.UNNECESSARY));
        assertEquals("-17", new String(whole(-17)));
    }

    private static String written(double x, int places) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Decimals(out).number(x, places);
        return out.toString();
    }

    private static byte[] whole(long n) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Decimals(out).whole(n);
        return out.toByteArray();
    }
}
