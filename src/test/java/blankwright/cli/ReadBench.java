package blankwright.cli;

import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshReader;
import blankwright.mesh.io.RawMesh;
import blankwright.mesh.repair.Repair;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import blankwright.shape.TorusSection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a file on the disk to a mended surface: {@code mvn -Pbench test} writes docs/benchmarks/reading.md. Each row has a Java of its own. */
@Tag("bench")
class ReadBench {
    private static final int TIMES = 8;

    private record Row(Format format, int triangles, boolean zipped) { }

    private static final List<Row> ROWS = List.of(new Row(Format.STL_BINARY, 1_000_000, false), new Row(Format.STL_TEXT, 200_000, false),
            new Row(Format.STL_BINARY, 3_900_000, false), new Row(Format.STL_BINARY, 1_000_000, true), new Row(Format.OBJ, 1_000_000, false),
            new Row(Format.PLY_LITTLE, 1_000_000, false));

    @TempDir Path temp;

    /** Prints the seconds of reading and of mending, once at first and the best of the later ones. */
    public static final class InItsOwnJava {
        private InItsOwnJava() { }

        public static void main(String[] file) throws Exception {
            double[] first = null, best = {9e9, 9e9, 9e9};
            for (int i = 0; i < TIMES; i++) {
                long t0 = System.nanoTime();
                RawMesh raw = MeshReader.read(Path.of(file[0]), Progress.NONE);
                long t1 = System.nanoTime();
                Repair.of(raw.xyz(), raw.triangles(), Progress.NONE);
                long t2 = System.nanoTime();
                double[] now = {(t1 - t0) / 1e9, (t2 - t1) / 1e9, (t2 - t0) / 1e9};
                if (i == 0) first = now;
                else for (int k = 0; k < 3; k++) best[k] = Math.min(best[k], now[k]);
            }
            System.out.print(String.format(Locale.ROOT, "%.2f | %.2f | %.2f | %.2f | %.2f | %.2f", first[0], first[1], first[2], best[0], best[1], best[2]));
        }
    }

    @Test
    void everyFormat() throws Exception {
        StringBuilder page = new StringBuilder("""
                # Reading, measured

                Written by `mvn -Pbench test`: seconds from a file (in the disk's cache) to triangles, and on to a mended surface: welded, checked for
                flat and double triangles, cracks, edges of three triangles and their direction. *First* in a new Java, *warm* the best of the next %d.
                Machine: %d cores, Java %s, heap 4 GB.

                | file | triangles | read, first s | weld and mend, first s | both, first s | read, warm s | weld and mend, warm s | both, warm s |
                |---|---|---|---|---|---|---|---|
                """.formatted(TIMES - 1, Runtime.getRuntime().availableProcessors(), System.getProperty("java.version")));
        for (Row row : ROWS) {
            Path file = written(row);
            int triangles = MeshReader.read(file, Progress.NONE).triangleCount();
            page.append(String.format(Locale.ROOT, "| %s%s | %,d | %s |%n", row.format().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                    row.zipped() ? ", gzipped" : "", triangles, measured(file)));
            Files.delete(file);
        }
        System.out.println(page);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/reading.md"), page);
    }

    private String measured(Path file) throws IOException, InterruptedException {
        Path said = temp.resolve("said");
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx4g", "-cp",
                System.getProperty("java.class.path"), InItsOwnJava.class.getName(), file.toString()));
        int exit = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).start().waitFor();
        if (exit != 0) throw new AssertionError(Files.readString(said));
        return Files.readString(said);
    }

    private Path written(Row row) throws IOException {
        TriMesh mesh = TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, row.triangles());
        byte[] bytes = HostileFiles.written(mesh, row.format());
        return Files.write(temp.resolve("mesh"), row.zipped() ? HostileFiles.zipped(bytes) : bytes);
    }
}
