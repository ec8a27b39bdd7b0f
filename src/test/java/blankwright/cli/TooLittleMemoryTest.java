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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A panel too large for the memory given is refused with its number of triangles, what they need and the option that helps, and leaves nothing. */
class TooLittleMemoryTest {
    @TempDir Path temp;

    @Test
    void beforeItIsLaidFlat() throws Exception {
        assertTrue(said("-Xmx40m", mudguard(60_000, Format.PLY_LITTLE)).matches("mudguard: [\\d,]+ triangles need about \\d\\d MB of memory to be"
                + " laid flat, and 4\\d MB are given; run it with java -Xmx\\d00m -jar blankwright\\.jar \\.\\.\\., or thin it out with --detail 0\\.1mm\\.\\n"));
    }

    @Test
    void beforeItIsRead() throws Exception {
        assertTrue(said("-Xmx24m", mudguard(200_000, Format.STL_BINARY)).matches("mudguard: [\\d,]+ triangles need about [34]\\d MB of memory to be"
                + " read and mended, and 2\\d MB are given; run it with java -Xmx\\d00m -jar blankwright\\.jar \\.\\.\\., or give a coarser mesh\\.\\n"));
    }

    /** Text STL takes 250 bytes a triangle as a file alone, PLY brings its vertices once. */
    @Test
    void beforeOtherFormatsAreRead() throws Exception {
        String words = "mudguard: [\\d,]+ triangles need about %s MB of memory to be read and mended, and %s MB are given; run it with java -Xmx\\d00m"
                + " -jar blankwright\\.jar \\.\\.\\., or give a coarser mesh\\.\\n";
        String text = said("-Xmx24m", mudguard(100_000, Format.STL_TEXT));
        assertTrue(text.matches(words.formatted("[23]\\d", "2\\d")), text);
        for (Format format : new Format[] {Format.OBJ, Format.OFF, Format.PLY_TEXT, Format.PLY_BIG}) {
            text = said("-Xmx18m", mudguard(200_000, format));
            assertTrue(text.matches(words.formatted("[23]\\d", "[12]\\d")), text);
        }
    }

    /** The promise of two thousand million faces does not frighten: the reader says what is wrong. */
    @Test
    void notForAPromise() throws Exception {
        Path mesh = Files.writeString(temp.resolve("mudguard"), "OFF\n3 2000000000 0\n0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n");
        String text = said("-Xmx64m", mesh);
        assertTrue(text.contains("the file promises 3 vertices and 2000000000 faces but holds only"), text);
    }

    /** Whatever the estimate says, a little less than a mesh needs ends in the same words, and what is advised is enough. */
    @Test
    void orWhereTheEstimateWasTooLow() throws Exception {
        Path mesh = mudguard(60_000, Format.PLY_LITTLE);
        String text = said("-Xmx62m", mesh);
        if (text.startsWith("mudguard: ")) assertTrue(text.matches("mudguard: [\\d,]+ triangles need about \\d+ MB .* run it with java -Xmx\\w+ .*\\n"), text);
        String enough = text.replaceFirst("(?s).*(-Xmx\\w+) -jar.*", "$1");
        if (enough.startsWith("-Xmx")) assertTrue(said(enough, mesh).contains("Written to"));
    }

    private Path mudguard(int triangles, Format format) throws IOException {
        return Files.write(temp.resolve("mudguard"),
                HostileFiles.written(TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, triangles), format));
    }

    private String said(String heap, Path mesh) throws Exception {
        Path said = temp.resolve("said"), out = temp.resolve("packet");
        int exit = Child.start(List.of(heap), said, "flatten", mesh, "--out", out, "--formats", "csv").waitFor();
        String text = Files.readString(said);
        boolean written = text.contains("Written to");
        assertEquals(written ? ExitCode.DONE.number() : ExitCode.BAD_INPUT.number(), exit, text);
        if (!written) assertFalse(Files.exists(out));
        return text;
    }
}
