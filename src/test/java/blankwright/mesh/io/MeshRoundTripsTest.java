package blankwright.mesh.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is written is read again: every double to the bit, in STL every float; zipped or not. */
class MeshRoundTripsTest {
    /** A sphere with coordinates of all sizes and digits. */
    private static TriMesh awkward() {
        TriMesh mesh = Forms.sphere(512.3, 2);
        double[] xyz = mesh.positions();
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < xyz.length; i++) xyz[i] *= Math.pow(10, random.nextInt(13) - 8);
        xyz[0] = 5e-324;
        xyz[1] = -0.0;
        xyz[2] = -1e-310;
        xyz[3] = 1.0 / 3;
        xyz[4] = 123456789012.3456;
        return mesh.withPositions(xyz);
    }

    private static boolean isStl(Format format) {
        return format == Format.STL_BINARY || format == Format.STL_TEXT;
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void comesBackToTheBit(Format format) throws FormatException {
        TriMesh mesh = awkward();
        byte[] plain = HostileFiles.written(mesh, format);
        for (byte[] bytes : List.of(plain, HostileFiles.zipped(plain))) {
            RawMesh raw = MeshReader.read(bytes, "any", Progress.NONE);
            assertEquals(format, raw.format());
            assertTrue(raw.findings().isEmpty());
            double[] there = raw.xyz();
            int[] corner = raw.triangles();
            if (!isStl(format)) {
                assertArrayEquals(mesh.corners(), corner);
                assertArrayEquals(mesh.positions(), there, 0);
                continue;
            }
            assertEquals(mesh.triangleCount(), raw.triangleCount());
            double[] given = mesh.positions();
            for (int i = 0; i < corner.length; i++) {
                for (int k = 0; k < 3; k++) assertEquals((float) given[3 * mesh.corner(i / 3, i % 3) + k], (float) there[3 * corner[i] + k]);
            }
        }
    }

    @Test
    void theNameOfTheFileDoesNotMatter(@TempDir Path dir) throws IOException, FormatException {
        Path file = Files.write(dir.resolve("wing.stl"), HostileFiles.written(Forms.icosahedron(), Format.PLY_BIG));
        assertEquals(Format.PLY_BIG, MeshReader.read(file, Progress.NONE).format());
    }

    /** Shortest decimals, long ones, those half way between two doubles: always what Double.parseDouble reads. */
    @Test
    void numbersAgreeWithTheLibrary() throws FormatException {
        Random random = new Random(99);
        StringBuilder text = new StringBuilder();
        double[] wanted = new double[3 * 20_000];
        for (int i = 0; i < wanted.length; i++) {
            String number = switch (i % 6) {
                case 0 -> Double.toString(random.nextGaussian() * Math.pow(10, random.nextInt(24) - 12));
                case 1 -> Float.toString((float) (random.nextGaussian() * 100));
                case 2 -> random.nextInt(2000) + "." + Math.abs(random.nextLong()) + Math.abs(random.nextLong());
                case 3 -> "+" + random.nextInt(100) + "E" + (random.nextInt(600) - 590);
                case 4 -> "-." + String.format("%019d", Math.abs(random.nextLong())) + "e+" + random.nextInt(11);
                default -> new java.math.BigDecimal(Math.nextUp(1 + random.nextInt(9))).add(java.math.BigDecimal.valueOf(0x1p-53)).toString();
            };
            wanted[i] = Double.parseDouble(number);
            text.append(i % 3 == 0 ? "\nv " : " ").append(number);
        }
        text.append("\nf 1 2 3\n");
        double[] got = MeshReader.read(text.toString().getBytes(StandardCharsets.US_ASCII), "numbers.obj", Progress.NONE).xyz();
        for (int i = 0; i < wanted.length; i++) assertEquals(Double.doubleToLongBits(wanted[i]), Double.doubleToLongBits(got[i]), "number " + i);
    }

    @Test
    void formAndBlankStandTogetherInOneObj() throws IOException {
        TriMesh one = TriMesh.of(new double[] {0, 0, 1, 10, 0, 1, 0, 10.25, 1}, new int[] {0, 1, 2});
        TriMesh two = TriMesh.of(new double[] {0, 0, 5, 1, 0, 5, 0, 1, 5}, new int[] {2, 0, 1});
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ObjWriter.write(List.of(FlatMap.of(one, new double[] {0, 0, 10, 0, 0, 10.5}), FlatMap.of(two, new double[] {20, 0, 21, 0, 20, 1})), out);
        assertEquals("""
                # v: the form, mm; vt: the same vertex on the blank, mm
                g piece1
                v 0.0 0.0 1.0
                v 10.0 0.0 1.0
                v 0.0 10.25 1.0
                vt 0.0 0.0
                vt 10.0 0.0
                vt 0.0 10.5
                f 1/1 2/2 3/3
                g piece2
                v 0.0 0.0 5.0
                v 1.0 0.0 5.0
                v 0.0 1.0 5.0
                vt 20.0 0.0
                vt 21.0 0.0
                vt 20.0 1.0
                f 6/6 4/4 5/5
                """, out.toString(StandardCharsets.US_ASCII));
    }
}
