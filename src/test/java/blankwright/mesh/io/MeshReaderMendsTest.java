package blankwright.mesh.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Odd but honest files are read, with a finding where something was passed over. */
class MeshReaderMendsTest {
    private static RawMesh read(byte[] bytes) throws FormatException {
        return MeshReader.read(bytes, "wing", Progress.NONE);
    }

    private static RawMesh read(String text) throws FormatException {
        return read(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static List<Kind> kinds(RawMesh raw) {
        return raw.findings().stream().map(Finding::kind).toList();
    }

    @Test
    void objWithEverythingInIt() throws FormatException {
        String text = """
                # fl\u00fcgel
                mtllib a.mtl
                o tr\u00e4ger
                v 0 0 0 1
                v 2 0 0 0.5 0.5 0.5
                \tV 2 2 0   # corner
                v 0 \\
                2 0
                vn 0 0 1
                vt 0 0
                s off
                usemtl blech
                f 1/1/1 2//1 \\
                3/1 -1
                p 1
                l 1 2 3
                """;
        for (String variant : List.of(text, text.replace("\n", "\r\n"), text.replace("\n", "\r"), "\u00EF\u00BB\u00BF" + text)) {
            RawMesh raw = read(variant.replace("\tV", "v"));
            assertArrayEquals(new double[] {0, 0, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0}, raw.xyz());
            assertArrayEquals(new int[] {0, 1, 2, 0, 2, 3}, raw.triangles());
            assertEquals(List.of(Kind.IGNORED_ELEMENTS, Kind.TRIANGULATED_POLYGONS), kinds(raw));
            assertEquals(2, raw.findings().get(0).count());
        }
    }

    @Test
    void binaryStlWhoseTitleBeginsWithSolid() throws FormatException {
        byte[] b = HostileFiles.written(Forms.icosahedron(), Format.STL_BINARY);
        System.arraycopy("solid facet vertex".getBytes(StandardCharsets.US_ASCII), 0, b, 0, 18);
        b[84 + 48] = 77;                                     // attribute bytes are nobody's
        assertEquals(Format.STL_BINARY, read(b).format());
        assertEquals(20, read(b).triangleCount());
        RawMesh more = read(Arrays.copyOf(b, b.length + 3));
        assertEquals(20, more.triangleCount());
        assertEquals("3 bytes follow the last of 20 triangles; ignored", more.findings().get(0).text());
        b[80] = 0;
        assertEquals(20, read(b).triangleCount());
        assertEquals(List.of(Kind.WRONG_COUNT), kinds(read(b)));
    }

    @Test
    void coordinatesThatAreNoPlaceCostOnlyTheirTriangles() throws FormatException {
        byte[] b = HostileFiles.written(Forms.icosahedron(), Format.STL_BINARY);
        ByteBuffer data = ByteBuffer.wrap(b).order(ByteOrder.LITTLE_ENDIAN);
        data.putFloat(84 + 50 * 3 + 16, Float.NaN).putFloat(84 + 50 * 9 + 40, Float.POSITIVE_INFINITY).putFloat(84 + 50 * 11 + 20, 1e30f);
        RawMesh raw = read(b);
        assertEquals(17, raw.triangleCount());
        assertEquals(List.of(Kind.BAD_COORDINATES), kinds(raw));
        assertEquals(3, raw.findings().get(0).count());
        assertTrue(raw.findings().get(0).text().contains("the first is triangle 3;"), raw.findings().get(0).text());
        RawMesh obj = read("v 0 0 0\nv 1 0 0\nv nan 0 0\nv 0 1 0\nv 0 0 -1.#IND\nf 1 2 4\nf 1 2 3\nf 1 5 4\n");
        assertArrayEquals(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, obj.xyz());
        assertArrayEquals(new int[] {0, 1, 2}, obj.triangles());
        assertEquals(2, obj.findings().get(0).count());
    }

    @Test
    void textStlInSeveralPartsAndCapitals() throws FormatException {
        String facet = "FACET NORMAL nan 0 0\n OUTER LOOP\n VERTEX 0 0 0\nVERTEX 1e0 0 0\n vertex 0 +1. 0\nENDLOOP\nendfacet\n";
        RawMesh raw = read("solid one\n" + facet + "endsolid one\nsolid\n" + facet + facet);
        assertEquals(3, raw.triangleCount());
        assertEquals(List.of(Kind.WRONG_COUNT), kinds(raw));
    }

    @Test
    void plyOfAnyTypesInBothByteOrders() throws IOException, FormatException {
        for (boolean big : new boolean[] {true, false}) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            DataOutputStream out = new DataOutputStream(bytes);
            out.writeBytes("ply\r\nformat " + (big ? "binary_big_endian" : "binary_little_endian") + " 1.0\r\nobj_info x\r\ncomment y\r\n"
                    + "element camera 2\r\nproperty list uint8 float64 matrix\r\nproperty uchar id\r\n"
                    + "element vertex 4\r\nproperty uchar red\r\nproperty list ushort int16 near\r\nproperty double z\r\nproperty short x\r\n"
                    + "property int y\r\nelement face 2\r\nproperty list int uint vertex_index\r\nproperty float quality\r\nend_header\r\n");
            ByteBuffer b = ByteBuffer.allocate(1000).order(big ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
            b.put((byte) 1).putDouble(4).put((byte) 0).put((byte) 0).put((byte) 9);
            for (int v = 0; v < 4; v++) {
                b.put((byte) 200).putShort((short) v);
                for (int i = 0; i < v; i++) b.putShort((short) 7);
                b.putDouble(v + 0.125).putShort((short) (v % 2 == 0 ? -300 : 300)).putInt(v < 2 ? -70_000 : 70_000);
            }
            b.putInt(3).putInt(0).putInt(1).putInt(2).putFloat(0.5f).putInt(3).putInt(2).putInt(1).putInt(3).putFloat(0.5f);
            out.write(b.array(), 0, b.position());
            RawMesh raw = read(bytes.toByteArray());
            assertArrayEquals(new double[] {-300, -70_000, 0.125, 300, -70_000, 1.125, -300, 70_000, 2.125, 300, 70_000, 3.125}, raw.xyz());
            assertArrayEquals(new int[] {0, 1, 2, 2, 1, 3}, raw.triangles());
            assertEquals(List.of(Kind.IGNORED_ELEMENTS), kinds(raw));
        }
    }

    @Test
    void stripsTurnOverAtEveryTriangle() throws FormatException {
        RawMesh raw = read("ply\nformat ascii 1.0\nelement vertex 6\nproperty float x\nproperty float y\nproperty float z\nelement tristrips 1\n"
                + "property list int int vertex_indices\nend_header\n0 0 0 1 0 0 0 1 0 1 1 0 0 2 0 1 2 0\n9 0 1 2 3 4 -1 5 4 3\n");
        assertArrayEquals(new int[] {0, 1, 2, 2, 1, 3, 2, 3, 4, 5, 4, 3}, raw.triangles());
    }

    @Test
    void offWithExtrasAndMoreThanPromised() throws FormatException {
        RawMesh raw = read("# note\n\ncnoff\n3 1\n0 0 0 0 0 1 255 0 0 1\n1 0 0 0 0 1 0 0 0 1 # red\n0 1 0 0 0 1 0 0 0 1\n3 0 1 2 255 0 0\n3 0 1 2\n");
        assertArrayEquals(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, raw.xyz());
        assertEquals(List.of(Kind.WRONG_COUNT), kinds(raw));
    }

    /** Area and direction of a face that bends inwards, against the shoelace formula; and no triangle outside of it. */
    @Test
    void hollowFacesAreCutInside() throws FormatException {
        double[][] comb = {{0, 0}, {9, 0}, {9, 5}, {8, 5}, {8, 1}, {6, 1}, {6, 5}, {5, 5}, {5, 1}, {3, 1}, {3, 5}, {2, 5}, {2, 1}, {1, 1}, {1, 5}, {0, 5}};
        double[][] arrow = {{0, 0}, {4, 2}, {0, 4}, {1, 2}};
        double[][] spiral = {{0, 0}, {10, 0}, {10, 10}, {2, 10}, {2, 4}, {6, 4}, {6, 6}, {4, 6}, {4, 8}, {8, 8}, {8, 2}, {0, 2}};
        for (double[][] outline : List.of(comb, arrow, spiral)) {
            for (int shift = 0; shift < outline.length; shift++) checkInside(outline, shift);
        }
    }

    private static void checkInside(double[][] outline, int shift) throws FormatException {
        int n = outline.length;
        StringBuilder text = new StringBuilder();
        double twice = 0;
        for (int i = 0; i < n; i++) {
            double[] p = outline[(i + shift) % n], q = outline[(i + shift + 1) % n];
            twice += p[0] * q[1] - p[1] * q[0];
            text.append("v ").append(p[0]).append(' ').append(0.6 * p[1]).append(' ').append(0.8 * p[1]).append('\n');    // on a slope
        }
        text.append('f');
        for (int i = 1; i <= n; i++) text.append(' ').append(i);
        RawMesh raw = read(text + "\n");
        TriMesh mesh = TriMesh.of(raw.xyz(), raw.triangles());
        assertEquals(n - 2, mesh.triangleCount());
        assertEquals(Math.abs(twice) / 2, mesh.area(), 1e-12);
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] normal = mesh.normal(t);
            if (mesh.area(t) > 0) assertEquals(Math.signum(twice), -0.8 * normal[1] + 0.6 * normal[2], 1e-12);
        }
    }
}
