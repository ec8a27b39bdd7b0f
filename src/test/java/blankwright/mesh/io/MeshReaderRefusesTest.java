package blankwright.mesh.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Forms;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every bad file with its message, which names the place. */
class MeshReaderRefusesTest {
    private static FormatException refused(byte[] bytes, String name) {
        return assertThrows(FormatException.class, () -> MeshReader.read(bytes, name, Progress.NONE));
    }

    private static FormatException refused(Path path) {
        return assertThrows(FormatException.class, () -> MeshReader.read(path, Progress.NONE));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            v 0 0 0~v 1 0 0~v 0 1 0~f 1 2 0 | wing:4:7: vertex 0, but OBJ counts from 1
            v 0 0 0~v 1 0 0~f 1 2 3~ | wing:3:7: vertex 3, but the file has 2; it seems cut off, so fetch or export it again
            v 0 0 0~f -1 -2 1~ | wing:2:6: vertex -2, but only 1 came before this line
            v 0 0 0~f 1 2.5 1~ | wing:2:5: "2.5" is not a whole number
            v 0 0~ | wing:1:6: the line ends where z of the vertex should be; a vertex has three coordinates
            v 0 0 zero~ | wing:1:7: "zero" is not a number
            v 0 0,5 1~ | wing:1:5: number "0,5" has a comma: write a decimal point
            v 0 0 0~w 1 1 1~ | wing:2:1: "w" begins no line of OBJ; if it is a note, put # before it
            v 0 0 0~v 1 1 1~ | wing: holds 2 points but no face; export the panel as triangles
            v 0 0 0~v 1 1 1~v 0 nan 0~f 1 2 3~ | wing: all 1 faces use coordinates that are no number or beyond 1.0E12, the first is face 0 at vertex 2; export the mesh again
            OFF~3 1 0~0 0 0~1 0 0~0 1 0~3 0 1 3~ | wing:6:7: vertex 3, but the file has 3 and OFF counts from 0
            OFF~3 1 0~0 0 0~1 0 0~0 1 0~ | wing:6:1: the file ends where face 0 should be; it seems cut off, so fetch or export it again
            4OFF~ | wing:1:1: OFF in four dimensions is no panel; export it in three
            OFF BINARY~ | wing:1:5: binary OFF cannot be read; export it as text
            solid a~facet normal 0 0 1~outer loop~vertex 0 0 0~vertex 1 0 0~ | wing:2:1: the file ends inside of this facet; it is cut off, so fetch or export it again
            solid a~facet normal 0 0 1~outer loop~vertex 0 0 x~ | wing:4:12: "x" is not a number
            solid a~facet normal 0 0 1~edge loop~ | wing:3:1: "edge" is no word of text STL
            solid a~endsolid~ | wing: holds no face; export the panel as triangles
            ply~format ascii 1.0~element vertex 3~property float q~end_header~0~0~0~ | wing: element vertex has no properties x, y and z; export the panel with its coordinates
            ply~format ascii 1.0~element vertex many~ | wing:3:16: "many" is not a whole number
            ply~format utf8 1.0~ | wing:2:8: format "utf8" is none of ascii, binary_little_endian, binary_big_endian
            hello | wing: begins with "hello", which is no mesh we know; readable are STL, OBJ, PLY and OFF, each also gzipped
            ISO-10303-21;~ | wing: looks like a STEP model; readable are STL, OBJ, PLY and OFF, each also gzipped
            """)
    void textNamesLineAndColumn(String text, String message) {
        for (String lineEnd : new String[] {"\n", "\r\n", "\r"}) {
            FormatException e = refused(text.replace("~", lineEnd).getBytes(StandardCharsets.ISO_8859_1), "wing");
            assertEquals(message, e.getMessage());
            if (e.line() > 0) assertTrue(message.startsWith(e.file() + ":" + e.line() + ":" + e.column() + ":"));
        }
    }

    @Test
    void promisesLargerThanTheFileAreRefusedAtOnce() {
        byte[] stl = new byte[84];
        Arrays.fill(stl, 80, 84, (byte) 0xFF);
        stl[0] = 's';
        assertTrue(refused(stl, "w").getMessage().startsWith("w: begins with bytes 73 00"), refused(stl, "w").getMessage());
        assertEquals("w:1:1: the file promises 4000000000 vertices and 1 faces but holds only 19 bytes; the file is cut off, fetch or export it again",
                refused("OFF\n4000000000 1 0\n".getBytes(StandardCharsets.US_ASCII), "w").getMessage());
        String ply = "ply\nformat binary_big_endian 1.0\nelement vertex 4000000000\nproperty float x\nproperty float y\nproperty float z\nend_header\n";
        assertEquals("w: the header promises 4000000000 of element vertex, at least 48.0 GB, but only 4 bytes follow; "
                + "the file is cut off, fetch or export it again", refused((ply + "abcd").getBytes(StandardCharsets.US_ASCII), "w").getMessage());
    }

    @Test
    void truncatedBinaryPlyNamesTheByte() {
        byte[] whole = HostileFiles.written(Forms.icosahedron(), Format.PLY_LITTLE);
        String message = refused(Arrays.copyOf(whole, whole.length - 5), "w").getMessage();
        assertEquals("w: byte 721, element face 19: list of 3 items, but 1 at most can follow; the file is damaged or cut off, "
                + "fetch or export it again", message);
    }

    /** Half of a scan was laid flat without a warning, with a finding that nobody reads. */
    @Test
    void binaryStlCutOffBecomesNoBlankOfHalfAPanel() {
        byte[] whole = HostileFiles.written(Forms.icosahedron(), Format.STL_BINARY);
        for (int there : new int[] {1, 7, 19}) {
            for (int over : new int[] {0, 11, 49}) {
                assertEquals("w: the header promises 20 triangles (1000 bytes) but only " + there + " are there; the file is cut off, fetch or export it again",
                        refused(Arrays.copyOf(whole, 84 + 50 * there + over), "w").getMessage());
            }
        }
    }

    @Test
    void halfAWordAtTheEndIsCalledCutOff() {
        String cut = "; the file ends in it and seems cut off, so fetch or export it again";
        String facet = "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendlo";
        assertEquals("w:7:1: \"endlo\" is no word of text STL" + cut, refused(facet.getBytes(StandardCharsets.US_ASCII), "w").getMessage());
        assertEquals("w:1:5: \"1.5e\" is not a number" + cut, refused("v 0 1.5e".getBytes(StandardCharsets.US_ASCII), "w").getMessage());
        assertEquals("w:2:5: \"-\" is not a whole number" + cut, refused("v 0 0 0\nf 1 -".getBytes(StandardCharsets.US_ASCII), "w").getMessage());
    }

    @Test
    void filesThatAreNoFiles(@TempDir Path dir) throws IOException {
        assertEquals(dir + ": is a folder; name the mesh file in it", refused(dir).getMessage());
        assertEquals(dir.resolve("none") + ": no such file; check the name and the folder", refused(dir.resolve("none")).getMessage());
        Path empty = Files.createFile(dir.resolve("empty.stl"));
        assertEquals(empty + ": is empty (0 bytes); export the mesh again", refused(empty).getMessage());
        if (Files.exists(Path.of("/dev/zero"))) assertEquals("/dev/zero: is no plain file; save the mesh as one", refused(Path.of("/dev/zero")).getMessage());
        Path huge = dir.resolve("huge.stl");
        try (RandomAccessFile sparse = new RandomAccessFile(huge.toFile(), "rw")) {
            sparse.setLength(5_000_000_000L);
        }
        assertTrue(refused(huge).getMessage().startsWith(huge + ": is 5.0 GB, more than the "), refused(huge).getMessage());
    }

    @Test
    void gzipThatIsDamagedOrSwellsUp() {
        byte[] zipped = HostileFiles.zipped(HostileFiles.written(Forms.sphere(100, 3), Format.OBJ));
        String cut = refused(Arrays.copyOf(zipped, zipped.length / 2), "w").getMessage();
        assertTrue(cut.startsWith("w: the gzip data is damaged after ") && cut.endsWith("; fetch the file again"), cut);
        zipped[zipped.length - 6] ^= 1;
        assertTrue(refused(zipped, "w").getMessage().contains("damaged"), "checksum");
        byte[] bomb = HostileFiles.zipped(new byte[20_000_000]);
        FormatException e = assertThrows(FormatException.class, () -> MeshReader.unpacked(bomb, "w", 1_000_000, Progress.NONE));
        assertTrue(e.getMessage().matches("w: 19\\.\\d kB of gzip hold more than 1\\.0 MB, too much for this run; .*"), e.getMessage());
    }

    @Test
    void workNobodyWantsStops() {
        byte[] large = HostileFiles.written(Forms.sphere(100, 6), Format.STL_BINARY);
        Progress unwanted = new Progress() {
            @Override public void at(String what, double fraction) {
                assertTrue(fraction >= 0 && fraction <= 1, what);
            }

            @Override public boolean cancelled() {
                return true;
            }
        };
        assertThrows(CancellationException.class, () -> MeshReader.read(large, "w", unwanted));
    }
}
