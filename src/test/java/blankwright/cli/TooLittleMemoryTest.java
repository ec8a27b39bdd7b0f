package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.io.Format;
import blankwright.oracle.HostileFiles;
import blankwright.shape.TorusSection;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A panel too large for the memory given is refused with its number of triangles and the option that helps, and leaves nothing. */
class TooLittleMemoryTest {
    @TempDir Path temp;

    @Test
    void itSaysHowManyTrianglesAndWhatToGive() throws Exception {
        Path mesh = Files.write(temp.resolve("mudguard.ply"),
                HostileFiles.written(TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, 60_000), Format.PLY_LITTLE));
        Path said = temp.resolve("said"), out = temp.resolve("packet");
        Process child = Child.start(List.of("-Xmx40m"), said, "flatten", mesh, "--out", out, "--formats", "csv");
        int exit = child.waitFor();
        String text = Files.readString(said);
        assertEquals(ExitCode.BAD_INPUT.number(), exit, text);
        assertTrue(text.matches("mudguard\\.ply: [\\d,]+ triangles did not fit into the memory given; run it with java -Xmx\\dg .*\\n"), text);
        assertFalse(Files.exists(out));
    }
}
