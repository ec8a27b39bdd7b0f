package blankwright.mesh.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is foreseen of a file against what its reader finds in it; and of files that lie, nothing or no more than is there. */
class ForeseenAgreesWithReaderTest {
    @TempDir Path temp;

    @Test
    void smallFilesAreForeseenExactlyInEveryFormat() throws Exception {
        for (Format format : Format.values()) {
            byte[] bytes = HostileFiles.written(Forms.plate(10, 10, 30, 30), format);
            RawMesh read = MeshReader.read(bytes, "plate", Progress.NONE);
            Foreseen there = of(bytes).orElseThrow(() -> new AssertionError(format));
            assertEquals(read.triangleCount(), there.triangles(), format + "");
            assertEquals(read.vertexCount(), there.vertices(), format + "");
            assertEquals(bytes.length, there.bytes(), format + "");
            assertEquals(Optional.of(there), of(packed(bytes)), format + "");
        }
    }

    @Test
    void largeTextFilesAreForeseenWithinATenthAndNeverMore() throws Exception {
        TriMesh plate = Forms.plate(10, 10, 160, 160);
        for (Format format : new Format[] {Format.STL_TEXT, Format.OBJ}) {
            byte[] bytes = HostileFiles.written(plate, format);
            assertTrue(bytes.length > 1 << 20, format + "");
            Foreseen there = of(bytes).orElseThrow();
            double share = there.triangles() / (double) plate.triangleCount();
            assertTrue(share > 0.8 && share <= 1, share + " of the triangles of " + format);
            assertEquals(Optional.of(there), of(packed(bytes)), format + "");
        }
    }

    @Test
    void paddingIsNotTakenForTriangles() throws Exception {
        String facet = "facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\n";
        byte[] stl = ("solid a\n" + facet.repeat(1000) + " ".repeat(3_000_000) + "\nendsolid a\n").getBytes(StandardCharsets.US_ASCII);
        assertTrue(of(stl).orElseThrow().triangles() < 2000, of(stl) + "");
        byte[] obj = ("v 0 0 0\nv 1 0 0\nv 0 1 0\n" + "f 1 2 3\n".repeat(1000) + "# f 1 2 3\n".repeat(300_000)).getBytes(StandardCharsets.US_ASCII);
        assertTrue(of(obj).orElseThrow().triangles() < 30_000, of(obj) + "");
    }

    @Test
    void promisesTheFileCannotHoldAreNotBelieved() throws Exception {
        String[] lies = {
            "ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\nproperty float z\nelement face 2000000000\n"
                    + "property list uchar int vertex_indices\nend_header\n0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n",
            "ply\nformat binary_little_endian 1.0\nelement vertex 9000000000000000000\nelement face 9000000000000000000\nend_header\n",
            "ply\nelement face\nelement\nelement vertex x\n", "ply\nelement face -5\nend_header\n",
            "OFF\n3 2000000000 0\n0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n", "OFF\n3\n", "OFF", "solid", "v", "  \n", "\u001f\u008b"};
        for (String lie : lies) assertEquals(Optional.empty(), of(lie.getBytes(StandardCharsets.ISO_8859_1)), lie);
        assertEquals(Optional.empty(), Foreseen.of(temp));
        assertEquals(Optional.empty(), Foreseen.of(temp.resolve("nowhere")));
    }

    /** A packed file whose last bytes promise 4 GB. */
    @Test
    void aPackedFileThatLiesAboutItsLengthIsNotBelieved() throws Exception {
        byte[] bytes = packed(HostileFiles.written(Forms.plate(10, 10, 30, 30), Format.STL_TEXT));
        for (int i = 1; i <= 4; i++) bytes[bytes.length - i] = -1;
        assertEquals(Optional.empty(), of(bytes));
        bytes[bytes.length - 1] = 0;
        bytes[bytes.length - 2] = 15;               // a megabyte, where it is a third
        assertEquals(Optional.empty(), of(bytes));
    }

    /** The mutants of good files that the readers are tried on: no length of time, no exception. */
    @Test
    void mutantsAreBorne() throws Exception {
        for (Format format : Format.values()) {
            byte[] good = HostileFiles.written(Forms.tetrahedron(), format);
            for (int cut = 0; cut <= good.length; cut += Math.max(1, good.length / 60)) {
                byte[] bytes = java.util.Arrays.copyOf(good, cut);
                of(bytes).ifPresent(f -> assertTrue(f.triangles() <= bytes.length && f.vertices() <= 3L * bytes.length, f + ""));
            }
        }
    }

    private Optional<Foreseen> of(byte[] bytes) throws IOException {
        return Foreseen.of(Files.write(temp.resolve("mesh"), bytes));
    }

    private static byte[] packed(byte[] bytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(out)) {
            zip.write(bytes);
        }
        return out.toByteArray();
    }
}
