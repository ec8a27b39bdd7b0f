package blankwright.viewer;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blankwright.viewer.model.Changes;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The start; frames, memory and the time after a change: {@code mvn -Pbench test -Dtest=ViewerBench} writes docs/benchmarks/start.md and
 * viewer.md.
 */
@Tag("bench")
class ViewerBench {
    private static final int STARTS = 7;

    @TempDir static Path home;
    private static VirtualDisplay display;

    @BeforeAll
    static void show() throws IOException {
        display = VirtualDisplay.start();
    }

    @AfterAll
    static void hide() throws Exception {
        if (display != null) display.close();
    }

    /** Of the finished program: needs {@code mvn -DskipTests package}, and {@code mvn -Pimage -DskipTests clean verify} for the folder. */
    @Test
    void startsCold() throws Exception {
        Path jar = Path.of("target/blankwright.jar").toAbsolutePath();
        Path image = Path.of("target/image/Blankwright/bin/Blankwright").toAbsolutePath();
        assumeTrue(Files.exists(jar), "no jar");
        List<String> plain = List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", jar.toString());
        List<String> first = new ArrayList<>(plain);
        first.add(1, "-Dblankwright.second=true");
        double before = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
        StringBuilder rows = new StringBuilder();
        rows.append(new ColdStart(home, first).row("the jar, without a second Java", display, STARTS));
        rows.append(new ColdStart(home, plain).row("the jar", display, STARTS));
        if (Files.exists(image))
            rows.append(new ColdStart(home, List.of(image.toString())).row("the folder of `-Pimage`", display, STARTS));
        String page = """
                # The start, measured

                Written by `mvn -Pbench test -Dtest=ViewerBench#startsCold` after `mvn -Pimage -DskipTests clean verify`, on a virtual display without a
                graphics card: the processor draws (Mesa llvmpipe). Machine: %d cores, Java %s; load %.1f before, %.1f after, of which
                the starts themselves are up to 2: with more, other work took its share.

                The mudguard of the Tern is opened from its recipe. Time by the clock from the start of the process until form and blank stand on the
                screen in their colours; then the window is closed. The first start makes the archive of classes that later ones use; of those the
                middle and the longest of %d. The files are in memory.

                | started | first | middle | longest |
                |---|---|---|---|
                %s
                Why it takes so long, and what was tried: [a second Java](../decisions/021-a-second-java.md).
                """.formatted(Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"), before,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(), STARTS, rows);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/start.md"), page);
    }

    @Test
    void countsFrames() throws Exception {
        try (VirtualDisplay.Player player = display.player(home, "-Xmx3g")) {
            String small = player.ask("framesOfTheDemo"), large = player.ask("framesOfALargeMesh"), soak = player.ask("heapOverASoak");
            StringBuilder changes = new StringBuilder();
            for (int triangles : new int[] {5_000, 20_000, 100_000}) changes.append(Changes.rows(home, triangles));
            String page = """
                    # The viewer, measured

                    Written by `mvn -Pbench test -Dtest=ViewerBench`, on a virtual display without a graphics card: the processor draws
                    (Mesa llvmpipe). Machine: %d cores shared with other work, Java %s.

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
                    """.formatted(Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"), small, large,
                    soak, changes.toString().strip());
            assertTrue(small.contains("frames"), small);
            Files.createDirectories(Path.of("docs/benchmarks"));
            Files.writeString(Path.of("docs/benchmarks/viewer.md"), page);
        }
    }
}
