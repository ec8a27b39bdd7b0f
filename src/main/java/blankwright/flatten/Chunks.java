package blankwright.flatten;

import blankwright.num.Crew;
import java.util.Arrays;

/** Shares a loop out to the cores in chunks of one fixed size, and sums their results in order: same bits on any number of threads. */
final class Chunks {
    private static final int SIZE = 1024;

    /** Work on indices from..to-1, returning its share of the sum. */
    interface Work {
        double on(int from, int to);
    }

    private Chunks() { }

    static double sum(int count, Work work) {
        double sum = 0;
        for (double s : shares(count, work)) sum += s;
        return sum;
    }

    static double least(int count, Work work) {
        return Arrays.stream(shares(count, work)).min().orElseThrow();
    }

    private static double[] shares(int count, Work work) {
        double[] shares = new double[Math.max(1, (count + SIZE - 1) / SIZE)];
        Crew.each(shares.length, c -> shares[c] = work.on(c * SIZE, Math.min(count, (c + 1) * SIZE)));
        return shares;
    }
}
