package blankwright.num;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OrientationMatchesExactFractionsTest {
    /** The determinant over whole numbers: every finite double is one of 2^-1074. */
    private static int slow(double[] p) {
        BigInteger[] w = new BigInteger[6];
        for (int i = 0; i < 6; i++) w[i] = whole(p[i]);
        return w[0].subtract(w[4]).multiply(w[3].subtract(w[5])).subtract(w[1].subtract(w[5]).multiply(w[2].subtract(w[4]))).signum();
    }

    private static BigInteger whole(double x) {
        long bits = Double.doubleToRawLongBits(x), fraction = bits & (1L << 52) - 1;
        int exponent = (int) (bits >>> 52 & 0x7ff);
        BigInteger size = exponent == 0 ? BigInteger.valueOf(fraction) : BigInteger.valueOf(fraction | 1L << 52).shiftLeft(exponent - 1);
        return bits < 0 ? size.negate() : size;
    }

    private static int agreed(double... p) {
        int sign = Orientation.sign(p[0], p[1], p[2], p[3], p[4], p[5]);
        assertEquals(slow(p), sign);
        assertEquals(sign, Orientation.sign(p[2], p[3], p[4], p[5], p[0], p[1]), "turned round");
        assertEquals(-sign, Orientation.sign(p[2], p[3], p[0], p[1], p[4], p[5]), "two changed over");
        return sign;
    }

    @Test
    void counterClockwiseIsPositive() {
        assertEquals(1, agreed(0, 0, 1, 0, 0, 1));
        assertEquals(-1, agreed(0, 0, 0, 1, 1, 0));
        assertEquals(0, agreed(0, 0, 1, 1, 3, 3));
        assertEquals(0, agreed(2, 2, 2, 2, 1, 0));
    }

    /** Points on a line but for the last digit, where a plain determinant is wrong about every third time. */
    @Test
    void pointsNearlyOnALine() {
        Random random = new Random(1);
        int[] seen = new int[3];
        int plainWrong = 0;
        for (int i = 0; i < 100_000; i++) {
            double x = random.nextDouble(), y = random.nextDouble(), s = i % 2 == 0 ? 0.5 : random.nextDouble(), far = i % 3 == 0 ? 12 : 0;
            double[] p = {far, far, far + x, far + y, far + s * x, far + s * y};
            int k = random.nextInt(6);
            p[k] += (random.nextInt(3) - 1) * Math.ulp(p[k]);
            int sign = agreed(p);
            seen[sign + 1]++;
            if (sign != Math.signum((p[0] - p[4]) * (p[3] - p[5]) - (p[1] - p[5]) * (p[2] - p[4]))) plainWrong++;
        }
        for (int count : seen) assertTrue(count > 1000, "each sign comes up");
        assertTrue(plainWrong > 1000, "the cases are hard: " + plainWrong);
    }

    /** So small that products lose their digits, or so large that they overflow. */
    @Test
    void atTheEndsOfTheRange() {
        Random random = new Random(2);
        for (int i = 0; i < 60_000; i++) {
            int exponent = i % 3 == 0 ? -537 + random.nextInt(8) : i % 3 == 1 ? -1074 + random.nextInt(60) : 510 + random.nextInt(512);
            double[] p = new double[6];
            for (int k = 0; k < 6; k++) p[k] = Math.scalb((double) (random.nextInt(9) - 4) + (i % 2) * random.nextDouble() / 8, exponent);
            agreed(p);
        }
        // products of 2.5 smallest numbers but for the last digit: rounded to 3 and to 2, though the second is the larger
        assertEquals(-1, agreed(Math.scalb(5 / 3.0, -537), Math.scalb(1.25, -547), Math.scalb(1.0, -526), Math.scalb(1.5, -537),
                Math.scalb(0.49 * Math.ulp(1.0), -537), 0));
        for (int i = 0; i < 50_000; i++) {                                    // nearly on a line there
            double x = random.nextDouble(), y = random.nextDouble(), s = random.nextDouble();
            double[] p = {0.3, 0.7, 0.3 + x, 0.7 + y, 0.3 + s * x, 0.7 + s * y};
            int exponent = -536 + i % 8;
            for (int k = 0; k < 6; k++) p[k] = Math.scalb(p[k] + 1e-3 * (i % 2) * random.nextGaussian(), exponent);
            agreed(p);
        }
    }

    @Test
    void refusesWhatIsNoNumber() {
        assertThrows(NumberFormatException.class, () -> Orientation.sign(0, 0, 1, 0, Double.NaN, 1));
        assertThrows(NumberFormatException.class, () -> Orientation.sign(0, 0, 1, Double.POSITIVE_INFINITY, 0, 1));
    }
}
