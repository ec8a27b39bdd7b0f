package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From the start of a cold Java to all files written, for every shipped recipe: {@code mvn -Pbench test} writes docs/benchmarks/demo.md. */
@Tag("bench")
class DemoBench {
    private static final int TIMES = 3;

    @TempDir Path temp;

    @Test
    void shippedPanels() throws IOException, InterruptedException {
        StringBuilder page = new StringBuilder("""
                # The shipped panels, measured

                Written by `mvn -Pbench test`: seconds from the start of a new Java to all files written, every file format, the best and the
                worst of %d runs. Machine: %d cores, Java %s.

                | recipe | best s | worst s |
                |---|---|---|
                """.formatted(TIMES, Runtime.getRuntime().availableProcessors(), System.getProperty("java.version")));
        List<Path> recipes;
        try (Stream<Path> files = Files.list(Path.of("models"))) {
            recipes = files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
        }
        for (Path recipe : recipes) {
            double best = Double.POSITIVE_INFINITY, worst = 0;
            for (int i = 0; i < TIMES; i++) {
                Path said = temp.resolve("said");
                long from = System.nanoTime();
                int exit = Child.start(List.of(), said, "flatten", recipe, "--out", temp.resolve("packet")).waitFor();
                double seconds = (System.nanoTime() - from) / 1e9;
                assertEquals(0, exit, Files.readString(said));
                best = Math.min(best, seconds);
                worst = Math.max(worst, seconds);
            }
            page.append(String.format(Locale.ROOT, "| %s | %.2f | %.2f |%n", recipe.getFileName(), best, worst));
        }
        System.out.println(page);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/demo.md"), page);
    }
}
