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
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The least heap in which each long step goes through: {@code mvn -Pbench test} writes docs/benchmarks/memory.md. */
@Tag("bench")
class MemoryBench {
    private static final int[] SIZES = {50_000, 200_000, 1_000_000};

    @TempDir Path temp;

    /** Does a step on a file and says so. */
    public static final class Step {
        private Step() { }

        public static void main(String[] words) throws Exception {
            RawMesh raw = MeshReader.read(Path.of(words[1]), Progress.NONE);
            TriMesh mesh = Repair.of(raw.xyz(), raw.triangles(), Progress.NONE).mesh();
            raw = null;
            if (words[0].equals("thin out")) Reduce.of(mesh, 0.05, mesh.triangleCount() / 4, Progress.NONE);
            if (words[0].equals("lay flat")) Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
            System.out.print("done");
        }
    }

    @Test
    void leastHeaps() throws Exception {
        StringBuilder page = new StringBuilder("""
                # Memory, measured

                Written by `mvn -Pbench test`: the least -Xmx, found by halving to a twentieth, in which a binary STL of the mudguard form goes through
                reading and mending, then also through thinning out to a quarter, or laying flat. `job.MemoryNeed` stands on these figures.

                | triangles | read and mend MB | bytes each | thin out MB | bytes each | lay flat MB | bytes each |
                |---|---|---|---|---|---|---|
                """);
        for (int size : SIZES) {
            TriMesh mesh = TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, size);
            Path file = Files.write(temp.resolve("mesh.stl"), HostileFiles.written(mesh, Format.STL_BINARY));
            page.append(String.format(Locale.ROOT, "| %,d |", mesh.triangleCount()));
            for (String step : List.of("mend", "thin out", "lay flat")) {
                int least = least(step, file, mesh.triangleCount());
                page.append(String.format(Locale.ROOT, " %,d | %.0f |", least, least * 1048576.0 / mesh.triangleCount()));
            }
            page.append('\n');
        }
        System.out.println(page);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/memory.md"), page);
    }

    private int least(String step, Path file, int triangles) throws IOException, InterruptedException {
        int low = 8, high = (int) (2000L * triangles / 1_000_000) + 64;
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
