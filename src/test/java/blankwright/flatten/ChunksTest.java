package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

class ChunksTest {
    /** Terms of very different size, so that any other order of summing gives another sum. */
    private static double[] terms(int count) {
        Random random = new Random(13);
        double[] x = new double[count];
        for (int i = 0; i < count; i++) x[i] = random.nextGaussian() * Math.pow(10, 16 * random.nextDouble());
        return x;
    }

    private static double sum(double[] x) {
        return Chunks.sum(x.length, (from, to) -> {
            double sum = 0;
            for (int i = from; i < to; i++) sum += x[i];
            return sum;
        });
    }

    @Test
    void sumsHaveTheSameBitsOnAnyNumberOfThreadsAndEachTime() throws Exception {
        double[] x = terms(300_000);
        ForkJoinPool one = new ForkJoinPool(1), eight = new ForkJoinPool(8);
        try {
            double expected = one.submit(() -> sum(x)).get();
            for (int i = 0; i < 100; i++) {
                assertEquals(expected, eight.submit(() -> sum(x)).get());
                assertEquals(expected, sum(x));
            }
        } finally {
            one.shutdown();
            eight.shutdown();
        }
    }

    @Test
    void everyIndexIsSeenOnce() {
        for (int count : new int[] {0, 1, 1023, 1024, 1025, 100_000}) {
            assertEquals((double) ((long) count * (count - 1) / 2), Chunks.sum(count, (from, to) -> {
                double sum = 0;
                for (int i = from; i < to; i++) sum += i;
                return sum;
            }));
            assertEquals(count == 0 ? 7 : Math.min(7, 100 - count), Chunks.least(count, (from, to) -> {
                double least = 7;
                for (int i = from; i < to; i++) least = Math.min(least, 99 - i);
                return least;
            }));
        }
    }
}
