package blankwright.viewer;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames, memory and the time to the first picture: {@code mvn -Pbench test -Dtest=ViewerBench} writes docs/benchmarks/viewer.md. */
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
    void countsFrames() throws IOException {
        long from = System.nanoTime();
        try (VirtualDisplay.Player player = display.player(home, "-Xmx3g")) {
            player.play("demoAtOnce");
            double first = (System.nanoTime() - from) / 1e9;
            String small = player.ask("framesOfTheDemo"), large = player.ask("framesOfALargeMesh"), soak = player.ask("heapOverASoak");
            String page = """
                    # The viewer, measured

                    Written by `mvn -Pbench test -Dtest=ViewerBench`, on a virtual display without a graphics card: the processor draws
                    (Mesa llvmpipe). Machine: %d cores shared with other work, Java %s.

                    From the start of a cold Java to the demo on the screen: %.1f s.

                    | what | seen |
                    |---|---|
                    | turning the mudguard | %s |
                    | turning a large mesh | %s |
                    | heap before and after a thousand random acts | %s |
                    """.formatted(Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"), first, small, large,
                    soak);
            assertTrue(small.contains("frames"), small);
            Files.createDirectories(Path.of("docs/benchmarks"));
            Files.writeString(Path.of("docs/benchmarks/viewer.md"), page);
        }
    }
}
