package blankwright.cli;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshReader;
import blankwright.mesh.io.RawMesh;
import blankwright.mesh.reduce.Reduce;
import blankwright.mesh.repair.Repair;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import blankwright.shape.TorusSection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The least heap in which each long step goes through: {@code mvn -Pbench test} writes docs/benchmarks/memory.md. */
@Tag("bench")
class MemoryBench {
    private static final int[] SIZES = {50_000, 200_000, 1_000_000};

    @TempDir Path temp;

    /** Does a step on a file and says so; what was read is let go as the program does. */
    public static final class Step {
        private record Loose(double[] xyz, int[] triangles) { }

        private Step() { }

        public static void main(String[] words) throws Exception {
            TriMesh mesh = mended(Path.of(words[1]));
            if (words[0].equals("thin out")) Reduce.of(mesh, 0.05, mesh.triangleCount() / 4, Progress.NONE);
            if (words[0].equals("lay flat")) Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
            System.out.print("done");
        }

        private static TriMesh mended(Path file) throws Exception {
            Loose loose = read(file);
            return Repair.of(loose.xyz, loose.triangles, Progress.NONE).mesh();
        }

        private static Loose read(Path file) throws Exception {
            RawMesh raw = MeshReader.read(file, Progress.NONE);
            return new Loose(raw.xyz(), raw.triangles());
        }
    }

    @Test
    void leastHeaps() throws Exception {
        StringBuilder page = new StringBuilder("""
                # Memory, measured

                Written by `mvn -Pbench test`: the least -Xmx, to a twentieth, in which the mudguard form goes through
                reading and mending, as binary STL, which brings three vertices for each triangle, and as binary PLY, which brings half a one; the
                latter then also through thinning out to a quarter, or laying flat. `job.MemoryNeed` stands on these figures.

                | triangles | read and mend STL, MB | bytes each | read and mend PLY, MB | bytes each | thin out MB | bytes each | lay flat MB | bytes each |
                |---|---|---|---|---|---|---|---|---|
                """);
        Map<String, Double> guess = new HashMap<>(Map.of("lay flat", 1200.0));
        for (int size : SIZES) {
            TriMesh mesh = TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, size);
            Path stl = Files.write(temp.resolve("mesh.stl"), HostileFiles.written(mesh, Format.STL_BINARY));
            Path ply = Files.write(temp.resolve("mesh.ply"), HostileFiles.written(mesh, Format.PLY_LITTLE));
            page.append(String.format(Locale.ROOT, "| %,d |", mesh.triangleCount()));
            for (String step : List.of("mend loose", "mend", "thin out", "lay flat")) {
                int least = least(step, step.equals("mend loose") ? stl : ply, mesh.triangleCount(), guess.getOrDefault(step, 400.0));
                double each = least * 1048576.0 / mesh.triangleCount();
                guess.put(step, each);
                page.append(String.format(Locale.ROOT, " %,d | %.0f |", least, each));
            }
            page.append('\n');
        }
        System.out.println(page);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/memory.md"), page);
    }

    /** MB; {@code guess} bytes for each triangle is where to begin. */
    private int least(String step, Path file, int triangles, double guess) throws IOException, InterruptedException {
        int high = (int) (guess * triangles / 1048576) + 4, low = high / 2;
        for (; !passes(step, file, high); high += high / 4) low = high;
        while (high - low > Math.max(2, high / 20)) {
            int middle = (low + high) / 2;
            if (passes(step, file, middle)) high = middle;
            else low = middle;
        }
        return high;
    }

    private boolean passes(String step, Path file, int megabytes) throws IOException, InterruptedException {
        Path said = temp.resolve("said");
        new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx" + megabytes + "m", "-cp",
                System.getProperty("java.class.path"), Step.class.getName(), step, file.toString())
                .redirectErrorStream(true).redirectOutput(said.toFile()).start().waitFor();
        return Files.readString(said).equals("done");
    }
}
