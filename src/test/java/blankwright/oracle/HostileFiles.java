package blankwright.oracle;

import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.zip.GZIPOutputStream;

/** Good mesh files of every format, and thousands of damaged ones made from them; the same for the same seed. */
public final class HostileFiles {
    /** @param what how it was made, for the message of a failing test */
    public record File(String name, byte[] bytes, String what) { }

    private static final String[] NUMBERS = {"0", "-1", "1", "2147483647", "4294967296", "99999999999999999999", "nan", "-inf", "1e400", "1e-400",
        "1e38", "0.0000000000000001", "3.5", "1,5", "x", "", "-0", "+", ".", "1e", "1/2/3", "//", "-99999", "1.#QNAN"};

    private HostileFiles() { }

    /** One sound file per format, one OBJ with everything in it, one OFF with colours, one PLY with strips and lists. */
    public static List<File> good() {
        TriMesh mesh = dome();
        List<File> files = new ArrayList<>();
        for (Format format : Format.values()) files.add(new File("good." + format.name().toLowerCase(java.util.Locale.ROOT), written(mesh, format), "good"));
        files.add(text("rich.obj", """
                # a plate with a flap
                mtllib none.mtl
                o plate
                v 0 0 0 1.0
                v 100 0 0
                v 100 80 5.5
                v 0 80 \\
                  1e0
                vt 0 0
                vn 0 0 1
                g main
                f 1/1/1 2/1/1 3/1/1 4/1/1
                v 50 120 0
                l 1 2
                f -3//1 -1//1 -2//1
                v 20 10 0
                v 20 30 0
                v 60 30 0
                f 6 7 8
                """));
        files.add(text("rich.off", """
                COFF # with colours
                # a comment
                4 2 0
                0 0 0 255 0 0 255
                100 0 0 0 255 0 255

                100 100 7 0 0 255 255
                0 100 0 1 1 1 255
                3 0 1 2 0.5 0.5 0.5
                3 0 2 3
                """));
        files.add(text("rich.ply", """
                ply
                format ascii 1.0
                comment lists and strips
                element vertex 5
                property uchar flag
                property list uchar short near
                property float z
                property float x
                property double y
                element other 2
                property list uchar int a
                element tristrips 1
                property list int int vertex_indices
                element face 1
                property uchar red
                property list uchar uint vertex_index
                end_header
                1 2 7 8 0 0 0
                1 0 0 100 0
                1 1 3 5 0 100
                1 0 0.5 100 100
                0 0 9 200 50
                0
                3 1 2 3
                6 0 1 2 3 -1 4
                17 3 1 4 3
                """));
        return files;
    }

    private static File text(String name, String content) {
        return new File(name, content.getBytes(StandardCharsets.US_ASCII), "good");
    }

    /** A shallow dome of 60 triangles, 200 by 150 mm. */
    public static TriMesh dome() {
        int nx = 7, ny = 6;
        double[] xyz = new double[3 * nx * ny];
        int[] tri = new int[6 * (nx - 1) * (ny - 1)];
        int at = 0;
        for (int j = 0; j < ny; j++) {
            for (int i = 0; i < nx; i++) {
                double x = 200.0 * i / (nx - 1), y = 150.0 * j / (ny - 1);
                int v = j * nx + i;
                xyz[3 * v] = x;
                xyz[3 * v + 1] = y;
                xyz[3 * v + 2] = 30 - (x - 100) * (x - 100) / 500 - (y - 75) * (y - 75) / 700;
                if (i + 1 == nx || j + 1 == ny) continue;
                for (int c : new int[] {v, v + 1, v + nx + 1, v, v + nx + 1, v + nx}) tri[at++] = c;
            }
        }
        return TriMesh.of(xyz, tri);
    }

    public static byte[] written(TriMesh mesh, Format format) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            MeshWriter.write(mesh, format, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    public static byte[] zipped(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(out)) {
            zip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** {@code perFile} damaged copies of each good file, then fixed horrors and noise. */
    public static List<File> damaged(long seed, int perFile) {
        SplittableRandom random = new SplittableRandom(seed);
        List<File> files = new ArrayList<>(horrors());
        for (File good : good()) {
            for (int i = 0; i < perFile; i++) {
                byte[] bytes = good.bytes().clone();
                StringBuilder what = new StringBuilder(good.name() + " #" + i + ":");
                int wounds = 1 + random.nextInt(3);
                for (int w = 0; w < wounds && bytes.length > 0; w++) bytes = wound(bytes, random, what);
                if (random.nextInt(10) == 0) {
                    bytes = zipped(bytes);
                    what.append(" zipped");
                    if (random.nextBoolean()) bytes = wound(bytes, random, what);
                }
                files.add(new File("damaged-" + i + "-" + good.name(), bytes, what.toString()));
            }
        }
        for (int i = 0; i < perFile; i++) {
            byte[] noise = new byte[random.nextInt(2000)];
            random.nextBytes(noise);
            if (i % 2 == 0) for (int j = 0; j < noise.length; j++) noise[j] = (byte) " 0123456789.-evfOFply\nsolid\t/#".charAt((noise[j] & 0xFF) % 30);
            files.add(new File("noise-" + i, noise, "noise"));
        }
        return files;
    }

    private static byte[] wound(byte[] b, SplittableRandom random, StringBuilder what) {
        int at = random.nextInt(b.length);
        switch (random.nextInt(10)) {
            case 0: {
                int many = 1 + random.nextInt(8);
                what.append(" flip ").append(many);
                for (int i = 0; i < many; i++) b[random.nextInt(b.length)] ^= (byte) (1 << random.nextInt(8));
                return b;
            }
            case 1:
                what.append(" cut at ").append(at);
                return Arrays.copyOf(b, at);
            case 2:
                what.append(" line out");
                return spliced(b, lineStart(b, at), lineEnd(b, at), new byte[0]);
            case 3:
                what.append(" line twice");
                return spliced(b, lineEnd(b, at), lineEnd(b, at), Arrays.copyOfRange(b, lineStart(b, at), lineEnd(b, at)));
            case 4: case 5: case 6: {
                int from = at;
                while (from < b.length && !isNumber(b[from])) from++;
                int to = from;
                while (to < b.length && isNumber(b[to])) to++;
                String number = NUMBERS[random.nextInt(NUMBERS.length)];
                what.append(" number ").append(number);
                return spliced(b, from, to, number.getBytes(StandardCharsets.US_ASCII));
            }
            case 7: {                                       // a number early in the file: counts and header lies
                int early = random.nextInt(Math.min(b.length, 200));
                int length = Math.min(4, b.length - early);
                what.append(" lie at ").append(early);
                int value = new int[] {-1, Integer.MAX_VALUE, 0, 1 << 16, 0x7FC00000, 0x7F800000, 1000000000}[random.nextInt(7)];
                for (int i = 0; i < length; i++) b[early + i] = (byte) (value >> 8 * i);
                return b;
            }
            case 8: {
                byte[] piece = Arrays.copyOfRange(b, at, Math.min(b.length, at + 1 + random.nextInt(200)));
                what.append(" piece again");
                int there = random.nextInt(b.length);
                return spliced(b, there, there, piece);
            }
            default: {
                byte[] noise = new byte[1 + random.nextInt(20)];
                random.nextBytes(noise);
                what.append(" noise at ").append(at);
                return spliced(b, at, Math.min(b.length, at + random.nextInt(20)), noise);
            }
        }
    }

    private static byte[] spliced(byte[] b, int from, int to, byte[] middle) {
        byte[] all = new byte[b.length - (to - from) + middle.length];
        System.arraycopy(b, 0, all, 0, from);
        System.arraycopy(middle, 0, all, from, middle.length);
        System.arraycopy(b, to, all, from + middle.length, b.length - to);
        return all;
    }

    private static boolean isNumber(byte c) {
        return c >= '0' && c <= '9' || c == '.' || c == '-';
    }

    private static int lineStart(byte[] b, int at) {
        int i = at;
        while (i > 0 && b[i - 1] != '\n') i--;
        return i;
    }

    private static int lineEnd(byte[] b, int at) {
        int i = at;
        while (i < b.length && b[i] != '\n') i++;
        return Math.min(b.length, i + 1);
    }

    private static List<File> horrors() {
        List<File> files = new ArrayList<>();
        files.add(new File("empty", new byte[0], "nothing"));
        files.add(new File("zeros", new byte[5000], "zeros"));
        files.add(new File("zipped-zeros", zipped(new byte[3_000_000]), "zeros"));
        files.add(new File("zipped-nothing", zipped(new byte[0]), "nothing"));
        files.add(new File("twice-zipped", zipped(zipped(written(dome(), Format.OBJ))), "twice"));
        files.add(new File("magic", new byte[] {0x1f, (byte) 0x8b}, "two bytes"));
        byte[] claim = Arrays.copyOf("solid lie".getBytes(StandardCharsets.US_ASCII), 84);
        Arrays.fill(claim, 80, 84, (byte) 0xFF);
        files.add(new File("claim.stl", claim, "four billion triangles"));
        String ply = "ply\nformat %s 1.0\nelement vertex %s\nproperty float x\nproperty float y\nproperty float z\n"
                + "element face %s\nproperty list %s int vertex_indices\nend_header\n";
        for (String format : new String[] {"ascii", "binary_little_endian", "binary_big_endian"}) {
            for (String count : new String[] {"4294967295", "9223372036854775807", "99999999999999999999", "-1", "0", "1"}) {
                files.add(text("claim.ply", String.format(ply, format, count, count, "int") + "0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n"));
                files.add(text("claim-faces.ply", String.format(ply, format, "3", count, "int") + "0 0 0\n1 0 0\n0 1 0\n2000000000 0 1 2\n"));
            }
        }
        files.add(text("no-vertex-properties.ply", "ply\nformat ascii 1.0\nelement vertex 4000000000\nelement face 1\n"
                + "property list uchar int vertex_indices\nend_header\n3 5 6 7\n"));
        files.add(text("no-properties.ply", "ply\nformat ascii 1.0\nelement nothing 4000000000\nelement vertex 1\nproperty float x\nend_header\n1\n"));
        files.add(text("claim.off", "OFF\n4000000000 4000000000 0\n0 0 0\n"));
        files.add(text("corners.off", "OFF\n3 1 0\n0 0 0\n1 0 0\n0 1 0\n2000000000 0 1 2\n"));
        files.add(text("zero.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 0 1 2\n"));
        files.add(text("later.obj", "f 1 2 3\nv 0 0 0\nv 1 0 0\nv 0 1 0\n"));
        files.add(text("high.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 2147483647\nf 1 2 9999999999999\n"));
        files.add(text("tiny.obj", "v 0 0 0\nv 1e-300 0 0\nv 0 1e-300 0\nf 1 2 3\n"));
        files.add(text("huge.obj", "v 0 0 0\nv 1e300 0 0\nv 0 1e300 0\nf 1 2 3\n"));
        files.add(text("point.obj", "v 0 0 0\nv 0 0 0\nv 0 0 0\nf 1 2 3\n"));
        files.add(text("line.obj", "v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n"));
        files.add(text("same.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\nf 1 1 2\nf 3 2 1\nf 2 3 1\n"));
        StringBuilder star = new StringBuilder();
        StringBuilder face = new StringBuilder("f");
        for (int i = 0; i < 3000; i++) {
            double r = i % 2 == 0 ? 100 : 40 + i % 7, a = 2 * Math.PI * i * 1501 / 3000;
            star.append("v ").append(r * Math.cos(a)).append(' ').append(r * Math.sin(a)).append(" 0\n");
            face.append(' ').append(i + 1);
        }
        files.add(text("star.obj", star + face.toString() + "\n"));
        files.add(text("long-number.obj", "v " + "9".repeat(100_000) + " 0 0\nv 0." + "1".repeat(100_000) + " 1 0\nv 0 0 0\nf 1 2 3\n"));
        files.add(text("backslashes.obj", "\\\n".repeat(5000) + "v 0 0 0\\"));
        return files;
    }
}
