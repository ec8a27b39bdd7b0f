package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.io.Format;
import blankwright.oracle.HostileFiles;
import blankwright.shape.TorusSection;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The files depend on the input alone: the same bytes again, and on one thread as on two, but for seconds and memory. */
class SameBitsTest {
    @TempDir Path temp;

    @Test
    void onTwoThreadsOnOneAndWithinThisProcess() throws Exception {
        Path mesh = Files.write(temp.resolve("mudguard.obj"),
                HostileFiles.written(TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, 5000), Format.OBJ));
        Path first = packet(mesh, "first", 2), alone = packet(mesh, "alone", 1), again = temp.resolve("again");
        assertEquals(ExitCode.DONE, Run.of("flatten", mesh, "--out", again, "--thickness", "1mm", "--sensitivity").exit());
        assertTrue(read(first.resolve("summary.json")).contains("\"weld shrink\""), "the changes are among what is compared");
        for (Path other : List.of(again, alone)) {
            assertEquals(names(first), names(other));
            for (String name : names(first)) {
                if (name.equals("summary.json"))
                    assertEquals(timeless(first.resolve(name)), timeless(other.resolve(name)), other + "/" + name);
                else assertArrayEquals(Files.readAllBytes(first.resolve(name)), Files.readAllBytes(other.resolve(name)), other + "/" + name);
            }
        }
    }

    private Path packet(Path mesh, String name, int threads) throws Exception {
        Path said = temp.resolve(name + ".txt"), out = temp.resolve(name);
        Process child = Child.start(List.of("-Djava.util.concurrent.ForkJoinPool.common.parallelism=" + threads), said,
                "flatten", mesh, "--out", out, "--thickness", "1mm", "--sensitivity");
        assertEquals(0, child.waitFor(), () -> read(said));
        return out;
    }

    private static String timeless(Path summary) {
        return read(summary).replaceAll("(?s)\"seconds\".*", "");
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<String> names(Path dir) throws Exception {
        try (Stream<Path> all = Files.list(dir)) {
            return List.copyOf(new TreeSet<>(all.map(p -> p.getFileName().toString()).toList()));
        }
    }
}
