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
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Dense scans through the whole program, and how soon it answers when cancelled: {@code mvn -Pbench test} writes docs/benchmarks/dense-scans.md. */
@Tag("bench")
class DenseBench {
    private static final double RING = 330, TUBE = 95;          // mm

    @TempDir Path temp;

    @Test
    void denseScansAndCancelling() throws Exception {
        StringBuilder page = new StringBuilder("""
                # Dense scans, and cancelling, measured

                Written by `mvn -Pbench test`. Mesh: the mudguard form, 150 x 160 degrees of a torus, ring 330 mm, tube 95 mm, as binary STL (the two of
                five million from a grid of a quarter as many, each triangle split in four at the middles of its edges, put onto the torus), plain or with noise along the normal (normally distributed, the standard deviation given). Seconds in a new Java at -Xmx8g from its start to all files
                written; memory is the peak of the process. Machine: %d cores, Java %s.

                | triangles | noise mm | --detail | left | deviation mm | read s | mend, thin out, open, measure s | lay flat s | write s | whole s | peak MB |
                |---|---|---|---|---|---|---|---|---|---|---|
                """.formatted(Runtime.getRuntime().availableProcessors(), System.getProperty("java.version")));
        dense(page, grid(1_000_000), 0, "0.1mm");
        dense(page, grid(1_000_000), 0.02, "0.1mm");
        dense(page, grid(2_000_000), 0, null);
        TriMesh five = split(grid(1_250_000));
        dense(page, five, 0, null);
        dense(page, five, 0.02, null);
        cancelling(page);
        cancellingDense(page, five);
        System.out.println(page);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/dense-scans.md"), page);
    }

    private void dense(StringBuilder page, TriMesh mesh, double noise, String detail) throws IOException, InterruptedException {
        Path file = scan(mesh, noise), said = temp.resolve("said"), out = temp.resolve("packet");
        List<Object> words = new ArrayList<>(List.of("flatten", file, "--units", "mm", "--out", out));
        if (detail != null) words.addAll(List.of("--detail", detail));
        long from = System.nanoTime();
        int exit = Child.start(List.of("-Xmx8g"), said, words.toArray()).waitFor();
        double whole = (System.nanoTime() - from) / 1e9;
        assertEquals(0, exit, Files.readString(said));
        JsonNode summary = new ObjectMapper().readTree(out.resolve("summary.json").toFile());
        JsonNode reduced = summary.get("reduced"), seconds = summary.get("seconds");
        page.append(String.format(Locale.ROOT, "| %,d | %s | %s | %,d | %.4f | %.1f | %.1f | %.1f | %.1f | %.1f | %,.0f |%n",
                summary.get("input").get("triangles").asInt(), noise, detail == null ? "" : detail, reduced.get("triangles_after").asInt(),
                reduced.get("deviation_mm").asDouble(), seconds.get("read").asDouble(), seconds.get("prepare").asDouble(),
                seconds.get("flatten").asDouble(), seconds.get("write").asDouble(), whole, summary.get("peak_memory_mb").asDouble()));
        Files.delete(file);
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

    private void cancelling(StringBuilder page) throws Exception {
        Path file = scan(grid(200_000), 0);
        Recipe recipe = Recipe.ofMesh("scan", file.toString(), Optional.of(LengthUnit.MM));
        double whole = 0;
        for (int i = 0; i < 3; i++) {
            long from = System.nanoTime();
            run(recipe, file, Progress.NONE, EnumSet.allOf(Output.class));
            whole = (System.nanoTime() - from) / 1e9;
        }
        page.append("\nCancelled at ").append(answers(recipe, file, whole, 100, EnumSet.allOf(Output.class))).append(" with 200,000 triangles and all files.\n");
    }

    /** Reading, mending and thinning out are what a dense scan waits for. */
    private void cancellingDense(StringBuilder page, TriMesh five) throws Exception {
        Path file = scan(five, 0);
        Recipe recipe = Recipe.ofMesh("scan", file.toString(), Optional.of(LengthUnit.MM));
        long from = System.nanoTime();
        run(recipe, file, Progress.NONE, EnumSet.of(Output.CSV));
        page.append("\nCancelled at ").append(answers(recipe, file, (System.nanoTime() - from) / 1e9, 9, EnumSet.of(Output.CSV)))
                .append(String.format(Locale.ROOT, " with %,d triangles and two small files.%n", five.triangleCount()));
    }

    private String answers(Recipe recipe, Path file, double whole, int times, EnumSet<Output> files) throws Exception {
        List<Double> answers = new ArrayList<>();
        String worst = "";
        for (int i = 0; i < times; i++) {
            TurnsAway watcher = new TurnsAway(whole * i / times);
            try {
                run(recipe, file, watcher, files);
            } catch (CancellationException e) {
                double answer = (System.nanoTime() - watcher.at) / 1e9;
                if (answers.isEmpty() || answer > Collections.max(answers)) worst = watcher.doing;
                answers.add(answer);
                while (Thread.getAllStackTraces().keySet().stream().anyMatch(t -> t.getName().equals("blankwright"))) Thread.sleep(5);
            }
        }
        Collections.sort(answers);
        return String.format(Locale.ROOT, "%d moments spread over a run of %.1f s: answered after %.3f s in the middle, %.3f s at worst (while %s),",
                answers.size(), whole, answers.get(answers.size() / 2), answers.get(answers.size() - 1), worst);
    }

    private void run(Recipe recipe, Path file, Progress progress, EnumSet<Output> files) throws Exception {
        try (OutputFolder to = OutputFolder.open(temp.resolve("cancelled"))) {
            Result result = FlattenJob.run(recipe, Given.file(file), progress);
            Packet.write(result, to, files, Paper.A4, progress);
        }
    }
}
