package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.num.Progress;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Same input, same bits, on 1, 2 and 8 threads: each count needs a Java of its own, since the pool is made once. */
class FlattenerKeepsBitsTest {
    /** Prints the hash of the bits of a flattening large enough to be shared out. */
    public static final class Child {
        private Child() { }

        public static void main(String[] args) {
            Outcome outcome = Flattener.flatten(Grids.shaken(Grids.mudguard(160), 1, 3), FlattenOptions.DEFAULT, Progress.NONE);
            LeastWork work = LeastWork.of(new Resistance(70_000, 45, 180, 0.25, 0.7), new double[] {1}, new double[] {4});
            Outcome least = Flattener.flatten(Grids.mudguard(60), FlattenOptions.DEFAULT.withTolerance(1e-6).withWork(work), Progress.NONE);
            System.out.print(Arrays.hashCode(least.map().positions()) + " ");
            System.out.print(Arrays.hashCode(outcome.map().positions()) + " " + outcome.steps() + " " + Double.doubleToLongBits(outcome.energy()));
        }
    }

    private static String run(int threads) throws IOException, InterruptedException {
        Process child = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.util.concurrent.ForkJoinPool.common.parallelism=" + threads, "-cp", System.getProperty("java.class.path"),
                Child.class.getName()).redirectErrorStream(true).start();
        String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, child.waitFor(), said);
        return said;
    }

    @Test
    void onOneTwoAndEightThreads() throws Exception {
        String one = run(1);
        assertTrue(one.matches("-?\\d+ -?\\d+ \\d+ \\d+"), one);
        assertEquals(one, run(2));
        assertEquals(one, run(8));
    }
}
