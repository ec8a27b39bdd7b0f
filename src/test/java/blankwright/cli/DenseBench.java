package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.drawing.Paper;
import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Output;
import blankwright.job.OutputFolder;
import blankwright.job.Packet;
import blankwright.job.Result;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import blankwright.project.Recipe;
import blankwright.shape.TorusSection;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Dense scans through the whole program, and how soon it answers when cancelled: {@code mvn -Pbench test} writes docs/benchmarks/dense-scans.md.
 * Each stage writes its own line and leaves the others as they are: {@code mvn -Pbench test -Dtest='DenseBench#fiveMillion'}.
 */
@Tag("bench")
class DenseBench {
    private static final double RING = 330, TUBE = 95;          // mm
    private static final Path PAGE = Path.of("docs/benchmarks/dense-scans.md");
    private static final String HEAD = """
            # Dense scans, and cancelling, measured

            Written by `mvn -Pbench test`, line by line. Mesh: the mudguard form, 150 x 160 degrees of a torus, ring 330 mm, tube 95 mm, as binary STL,
            plain or with noise along the normal (normally distributed, the standard deviation given); that of five million from a grid of a quarter
            as many, each triangle split in four at the middles of its edges, put onto the torus. Seconds in a new Java from its start to all files
            written; processor time of all its threads: where the whole took longer than that, other work had the cores; memory is the peak of the
            heap. Java gives itself a quarter of the machine's memory: 6g of 24 GB, 2g of 8 GB. Machine: %d cores, Java %s.

            | scan | noise mm | --detail | -Xmx | triangles | left | deviation mm | read s | mend, thin out, open, measure s | lay flat s | write s | whole s | processor s | peak MB |
            |---|---|---|---|---|---|---|---|---|---|---|---|---|---|
            """.formatted(Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"));
    private static final List<String> LINES = List.of("| 1M | 0 | 0.1mm | 6g |", "| 1M | 0.02 | 0.1mm | 6g |", "| 2M | 0 | | 6g |", "| 5M | 0 | | 6g |",
            "| 5M | 0.02 | | 6g |", "| 5M | 0.02 | | 2g |", "| 5M | 0.02 | 0.1mm | 6g |", "",
            "With 200,000 triangles and all files", "With 5 million triangles and one table");

    @TempDir Path temp;

    @Test
    void oneMillion() throws Exception {
        dense(grid(1_000_000), LINES.get(0), LINES.get(1));
    }

    @Test
    void twoMillion() throws Exception {
        dense(grid(2_000_000), LINES.get(2));
    }

    @Test
    void fiveMillion() throws Exception {
        dense(five(), LINES.get(3));
    }

    @Test
    void fiveMillionWithNoise() throws Exception {
        dense(five(), LINES.get(4), LINES.get(5));
    }

    @Test
    void fiveMillionWithNoiseAsFewAsMayBe() throws Exception {
        dense(five(), LINES.get(6));
    }

    @Test
    void cancelling() throws Exception {
        Path file = scan(grid(200_000), 0);
        EnumSet<Output> all = EnumSet.allOf(Output.class);
        seconds(file, all);
        seconds(file, all);
        write(LINES.get(8), answers(file, seconds(file, all), 50, all));
    }

    /** Reading, mending and thinning out are what a dense scan waits for. */
    @Test
    void cancellingFiveMillion() throws Exception {
        Path file = scan(five(), 0);
        EnumSet<Output> table = EnumSet.of(Output.CSV);
        write(LINES.get(9), answers(file, seconds(file, table), 9, table));
    }

    /** Measures what each line says at its beginning: scan, noise, detail, heap. */
    private void dense(TriMesh mesh, String... lines) throws IOException, InterruptedException {
        for (String line : lines) {
            String[] cell = line.substring(2).split("\\s*\\|\\s*");
            Path file = scan(mesh, Double.parseDouble(cell[1])), said = temp.resolve("said"), out = temp.resolve("packet");
            List<Object> words = new ArrayList<>(List.of("flatten", file, "--units", "mm", "--out", out));
            if (!cell[2].isEmpty()) words.addAll(List.of("--detail", cell[2]));
            long from = System.nanoTime();
            Process child = Child.start(List.of("-Xmx" + cell[3]), said, words.toArray());
            double processor = 0;
            while (!child.waitFor(50, TimeUnit.MILLISECONDS))
                processor = Math.max(processor, child.info().totalCpuDuration().orElse(Duration.ZERO).toMillis() / 1e3);
            double whole = (System.nanoTime() - from) / 1e9;
            assertEquals(0, child.exitValue(), Files.readString(said));
            JsonNode summary = new ObjectMapper().readTree(out.resolve("summary.json").toFile());
            JsonNode reduced = summary.get("reduced"), seconds = summary.get("seconds");
            write(line, String.format(Locale.ROOT, " %,d | %,d | %.4f | %.1f | %.1f | %.1f | %.1f | %.1f | %.1f | %,.0f |",
                    summary.get("input").get("triangles").asInt(), reduced.get("triangles_after").asInt(), reduced.get("deviation_mm").asDouble(),
                    seconds.get("read").asDouble(), seconds.get("prepare").asDouble(), seconds.get("flatten").asDouble(), seconds.get("write").asDouble(),
                    whole, processor, summary.get("peak_memory_mb").asDouble()));
            Files.delete(file);
        }
    }

    /** The page with this line in its place; the other lines stay as they are. */
    private static void write(String begin, String rest) throws IOException {
        System.out.println(begin + rest);
        List<String> old = Files.exists(PAGE) ? Files.readAllLines(PAGE) : List.of();
        StringBuilder page = new StringBuilder(HEAD);
        for (String line : LINES) {
            if (line.equals(begin)) page.append(begin).append(rest).append('\n');
            else old.stream().filter(there -> line.isEmpty() ? there.isEmpty() : there.startsWith(line)).findFirst().ifPresent(there -> page.append(there).append('\n'));
            if (line.startsWith("With")) page.append('\n');
        }
        Files.createDirectories(PAGE.getParent());
        Files.writeString(PAGE, page.toString().stripTrailing() + "\n");
    }

    private static TriMesh five() {
        return split(grid(1_250_000));
    }

    private static TriMesh grid(int triangles) {
        return TorusSection.grid(Math.toRadians(150), Math.toRadians(160), RING, TUBE, triangles);
    }

    /** Each triangle as four: a scan finer than a formula may be. */
    private static TriMesh split(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        int n = mesh.vertexCount(), at = 0;
        double[] xyz = Arrays.copyOf(mesh.positions(), 3 * (n + edges.edgeCount()));
        for (int e = 0; e < edges.edgeCount(); e++) {
            int v = edges.from(e), w = edges.to(e);
            double x = (mesh.x(v) + mesh.x(w)) / 2, y = (mesh.y(v) + mesh.y(w)) / 2, z = (mesh.z(v) + mesh.z(w)) / 2;
            double ring = Math.hypot(x, y), out = TUBE / Math.hypot(ring - RING, z), there = (RING + out * (ring - RING)) / ring;
            xyz[3 * (n + e)] = there * x;
            xyz[3 * (n + e) + 1] = there * y;
            xyz[3 * (n + e) + 2] = out * z;
        }
        int[] tri = new int[12 * mesh.triangleCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
            int ab = n + edges.edgeOf(t, 0), bc = n + edges.edgeOf(t, 1), ca = n + edges.edgeOf(t, 2);
            for (int v : new int[] {a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca}) tri[at++] = v;
        }
        return TriMesh.of(xyz, tri);
    }

    private Path scan(TriMesh mesh, double noise) throws IOException {
        double[] xyz = mesh.positions();
        Random random = new Random(1881);
        for (int i = 0; i < xyz.length && noise > 0; i += 3) {
            double ring = Math.hypot(xyz[i], xyz[i + 1]), off = noise * random.nextGaussian() / TUBE, across = (ring - RING) / ring;
            xyz[i + 2] += off * xyz[i + 2];
            xyz[i] += off * xyz[i] * across;
            xyz[i + 1] += off * xyz[i + 1] * across;
        }
        return Files.write(temp.resolve("scan.stl"), HostileFiles.written(mesh.withPositions(xyz), Format.STL_BINARY));
    }

    /** Turns away after a given time, and knows when. */
    private static final class TurnsAway implements Progress {
        final long at;
        volatile String doing = "";

        TurnsAway(double seconds) {
            at = System.nanoTime() + (long) (1e9 * seconds);
        }

        @Override
        public void at(String what, double fraction) {
            doing = what;
        }

        @Override
        public boolean cancelled() {
            return System.nanoTime() >= at;
        }
    }

    private String answers(Path file, double whole, int times, EnumSet<Output> files) throws Exception {
        List<Double> answers = new ArrayList<>();
        String worst = "";
        for (int i = 0; i < times; i++) {
            TurnsAway watcher = new TurnsAway(whole * i / times);
            try {
                run(file, watcher, files);
            } catch (CancellationException e) {
                double answer = (System.nanoTime() - watcher.at) / 1e9;
                if (answers.isEmpty() || answer > Collections.max(answers)) worst = watcher.doing;
                answers.add(answer);
                while (Thread.getAllStackTraces().keySet().stream().anyMatch(t -> t.getName().equals("blankwright"))) Thread.sleep(5);
            }
        }
        Collections.sort(answers);
        return String.format(Locale.ROOT, " cancelled at %d moments spread over a run of %.1f s: answered after %.3f s in the middle, %.3f s at worst (while %s).",
                answers.size(), whole, answers.get(answers.size() / 2), answers.get(answers.size() - 1), worst);
    }

    private double seconds(Path file, EnumSet<Output> files) throws Exception {
        long from = System.nanoTime();
        run(file, Progress.NONE, files);
        return (System.nanoTime() - from) / 1e9;
    }

    private void run(Path file, Progress progress, EnumSet<Output> files) throws Exception {
        Recipe recipe = Recipe.ofMesh("scan", file.toString(), Optional.of(LengthUnit.MM));
        try (OutputFolder to = OutputFolder.open(temp.resolve("cancelled"))) {
            Result result = FlattenJob.run(recipe, Given.file(file), progress);
            Packet.write(result, to, files, Paper.A4, progress);
        }
    }
}
