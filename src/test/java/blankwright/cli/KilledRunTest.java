package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.io.Format;
import blankwright.oracle.HostileFiles;
import blankwright.shape.TorusSection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run stopped in the middle of writing leaves old files or new ones, never half of one. */
class KilledRunTest {
    private static final int TRIANGLES = 40_000;
    @TempDir Path temp;
    private Path mesh;
    private Path out;

    @BeforeEach
    void writeAMudguard() throws IOException {
        mesh = Files.write(temp.resolve("mudguard.ply"),
                HostileFiles.written(TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, TRIANGLES), Format.PLY_LITTLE));
        out = Files.createDirectory(temp.resolve("packet"));
        Files.writeString(out.resolve("flat.obj"), "old");
    }

    @Test
    void stoppedFromTheKeyboardItCleansUp() throws Exception {
        Process child = startedAndWriting();
        child.destroy();                                    // as Ctrl-C: the shutdown hook runs
        assertTrue(child.waitFor(20, TimeUnit.SECONDS));
        assertEquals(List.of(), parts());
        assertOldOrWhole();
    }

    @Test
    void killedItLeavesNothingHalfAndTheNextRunSweepsUp() throws Exception {
        Process child = startedAndWriting();
        child.destroyForcibly();
        assertTrue(child.waitFor(20, TimeUnit.SECONDS));
        assertOldOrWhole();
        Run again = Run.of("flatten", mesh, "--out", out, "--formats", "obj");
        assertEquals(ExitCode.DONE, again.exit(), again.said());
        assertEquals(List.of(), parts());
        assertFalse(Files.readString(out.resolve("flat.obj")).startsWith("old"));
        assertOldOrWhole();
    }

    private Process startedAndWriting() throws Exception {
        Process child = Child.start(List.of(), temp.resolve("said"), "flatten", mesh, "--out", out, "--formats", "obj,vtu,png");
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        while (child.isAlive() && parts().isEmpty() && System.nanoTime() < end) Thread.sleep(5);
        assertFalse(parts().isEmpty() && child.isAlive(), () -> "no file was begun within a minute");
        return child;
    }

    private void assertOldOrWhole() throws IOException {
        Path obj = out.resolve("flat.obj");
        String first = Files.readString(obj);
        if (first.equals("old")) return;
        assertEquals(TRIANGLES, first.lines().filter(l -> l.startsWith("f ")).count(), TRIANGLES / 20.0);
        assertTrue(first.endsWith("\n"));
    }

    private List<String> parts() throws IOException {
        try (Stream<Path> all = Files.list(out)) {
            return all.map(p -> p.getFileName().toString()).filter(n -> n.endsWith(".part")).toList();
        }
    }
}
