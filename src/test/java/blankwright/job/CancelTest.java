package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.drawing.Paper;
import blankwright.mesh.Forms;
import blankwright.mesh.io.Format;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import blankwright.project.Recipe;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Whoever cancels is answered, whatever the program is at: reading, mending, thinning out, opening, laying flat, measuring, drawing, writing. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)     // a loop without end is a failure, not a wait
class CancelTest {
    /** A watcher that turns away at a given share of the work and counts how often it is asked again. */
    private static final class Impatient implements Progress {
        final double until;
        final AtomicInteger asked = new AtomicInteger();
        final AtomicReference<String> last = new AtomicReference<>("");
        volatile boolean away;

        Impatient(double until) {
            this.until = until;
        }

        @Override
        public void at(String what, double fraction) {
            if (away) return;
            last.set(what);
            away = fraction >= until;
        }

        @Override
        public boolean cancelled() {
            if (away) asked.incrementAndGet();
            return away;
        }
    }

    @TempDir static Path temp;
    private static Recipe recipe;

    @BeforeAll
    static void aPanelOfTwoHundredThousandTriangles() throws IOException {
        byte[] bytes = HostileFiles.written(Forms.grid(316, 316, false, false, (u, v) ->
                new double[] {500 * u, 400 * v, 40 * Math.cos(3 * u - 1.5) * Math.cos(2 * v - 1)}), Format.STL_BINARY);
        recipe = Recipe.ofMesh("scan", Files.write(temp.resolve("scan.stl"), bytes).toString(), Optional.of(LengthUnit.MM))
                .withDetail(OptionalDouble.of(0.002));
    }

    /** After it turned away no thread asks more than once or twice: each question ends the work of the one who asked. */
    @Test
    void atAnyMoment() throws Exception {
        for (double moment : new double[] {0, 0.04, 0.1, 0.13, 0.17, 0.2, 0.24, 0.29, 0.4, 0.8}) {
            Impatient watcher = new Impatient(moment);
            Path folder = temp.resolve("packet");
            assertThrows(CancellationException.class, () -> run(folder, watcher), "at " + moment + " " + watcher.last.get());
            assertTrue(watcher.asked.get() >= 1, "nobody asked at " + moment);
            assertTrue(watcher.asked.get() <= 64, watcher.asked.get() + " questions after it was over, at " + watcher.last.get());
            assertEquals(List.of(), left(folder));
        }
    }

    /** A step that never asks keeps nobody waiting, and what it comes to does not matter any more. */
    @Test
    void evenInAStepThatNeverAsks() throws Exception {
        Impatient watcher = new Impatient(0);
        watcher.at("", 0);
        CountDownLatch never = new CountDownLatch(1);
        assertThrows(CancellationException.class, () -> Patience.with(watcher, () -> never.await(1, TimeUnit.HOURS)));
        never.countDown();
        assertEquals("done", Patience.with(Progress.NONE, () -> "done"));
        assertEquals("no", assertThrows(Refusal.class, () -> Patience.with(Progress.NONE, () -> {
            throw new Refusal("no");
        })).getMessage());
        assertThrows(OutOfMemoryError.class, () -> Patience.with(Progress.NONE, () -> {
            throw new OutOfMemoryError();
        }));
    }

    /** Whoever interrupts a wait gets the result all the same, and still knows afterwards that he did. */
    @Test
    void anInterruptIsNotLost() {
        Thread.currentThread().interrupt();
        assertEquals("done", Patience.with(Progress.NONE, () -> "done"));
        assertTrue(Thread.interrupted());
    }

    private static void run(Path folder, Progress progress) throws Exception {
        try (OutputFolder to = OutputFolder.open(folder)) {
            Result result = FlattenJob.run(recipe, Given.file(temp.resolve("scan.stl")), progress);
            Packet.write(result, to, EnumSet.allOf(Output.class), Paper.A4, progress);
        }
    }

    private static List<Path> left(Path folder) throws IOException {
        if (!Files.exists(folder)) return List.of();
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }
}
