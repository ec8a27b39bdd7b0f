package blankwright.viewer;

import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.viewer.model.Changes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames, memory, the time to the first picture and after a change: {@code mvn -Pbench test -Dtest=ViewerBench} writes docs/benchmarks/viewer.md. */
@Tag("bench")
class ViewerBench {
    @TempDir static Path home;
    private static VirtualDisplay display;

    @BeforeAll
    static void show() throws IOException {
        display = VirtualDisplay.start();
    }

    @AfterAll
    static void hide() throws InterruptedException {
        if (display != null) display.close();
    }

    @Test
    void countsFrames() throws Exception {
        long from = System.nanoTime();
        try (VirtualDisplay.Player player = display.player(home, "-Xmx3g")) {
            player.play("demoAtOnce");
            double first = (System.nanoTime() - from) / 1e9;
            String spent = player.ask("processorTime");
            String small = player.ask("framesOfTheDemo"), large = player.ask("framesOfALargeMesh"), soak = player.ask("heapOverASoak");
            StringBuilder changes = new StringBuilder();
            for (int triangles : new int[] {5_000, 20_000, 100_000}) changes.append(Changes.rows(home, triangles));
            String page = """
                    # The viewer, measured

                    Written by `mvn -Pbench test -Dtest=ViewerBench`, on a virtual display without a graphics card: the processor draws
                    (Mesa llvmpipe). Machine: %d cores shared with other work, Java %s.

                    From the start of a cold Java to the demo on the screen: %.1f s; %s.

                    | what | seen |
                    |---|---|
                    | turning the mudguard | %s |
                    | turning a large mesh | %s |
                    | heap before and after a thousand random acts | %s |

                    ## While a hand drags

                    The mudguard form from a file. From a change to the edges and the colours of the blank, ready to be painted: processor time
                    of all threads that share the work, the middle and the most of nine small changes one after the other, and time by the
                    clock. Then how far the place of any vertex was from where the whole has it, and how long that takes by the clock, with
                    everything that is shown of it.

                    | triangles | change | ms | most | by the clock | off mm | the whole ms |
                    |---|---|---|---|---|---|---|
                    %s
                    """.formatted(Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"), first, spent, small,
                    large, soak, changes.toString().strip());
            assertTrue(small.contains("frames"), small);
            Files.createDirectories(Path.of("docs/benchmarks"));
            Files.writeString(Path.of("docs/benchmarks/viewer.md"), page);
        }
    }
}
