package blankwright.flatten;

import java.util.stream.IntStream;

/** Shares a loop out to the cores in chunks of one fixed size, and sums their results in order: same bits on any number of threads. */
final class Chunks {
    private static final int SIZE = 4096;

    /** Work on indices from..to-1, returning its share of the sum. */
    interface Work {
        double on(int from, int to);
    }

    private Chunks() { }

    static double sum(int count, Work work) {
        int chunks = (count + SIZE - 1) / SIZE;
        if (chunks <= 1) return work.on(0, count);
        double[] share = new double[chunks];
        IntStream.range(0, chunks).parallel().forEach(c -> share[c] = work.on(c * SIZE, Math.min(count, (c + 1) * SIZE)));
        double sum = 0;
        for (double s : share) sum += s;
        return sum;
    }

    static double least(int count, Work work) {
        int chunks = (count + SIZE - 1) / SIZE;
        if (chunks <= 1) return work.on(0, count);
        return IntStream.range(0, chunks).parallel().mapToDouble(c -> work.on(c * SIZE, Math.min(count, (c + 1) * SIZE))).min().orElseThrow();
    }
}
