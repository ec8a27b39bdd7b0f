package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How long a flattening takes, how that grows, and in how much memory it can be done: {@code mvn -Pbench test} prints the tables and writes
 * docs/benchmarks/flattening.md. Asserts nothing about time.
 */
@Tag("bench")
class FlattenBench {
    private static final int[] SIDES = {71, 100, 141, 224, 316, 447, 500, 707};     // 2 n² triangles
    private static final int[] FEWER = {71, 224, 500, 707};
    private static final Resistance SOFT_ALUMINIUM = new Resistance(69_000, 42, 127, 0.24, 0.65);   // 3003-O, rounded; only for time

    private record Row(int triangles, double prepare, double cold, double warm, int steps, double energy) { }

    private record Heap(int side, String given) { }

    private record Form(String name, IntFunction<TriMesh> mesh, int[] sides) { }

    @Test
    void flattening() throws Exception {
        StringBuilder page = new StringBuilder("""
                # Flattening, measured

                Written by `mvn -Pbench test -Dtest=FlattenBench`. From triangles in to blank out, descended until a full step promises less than
                1e-9 of the energy. *Prepare* (coarser meshes) is part of the whole; *first* as met in this table's own Java, *warm* the best of the
                later runs. Growth is that of the warm time, scaled to a doubling of the triangles. Steps are those on the mesh itself, after the
                coarser ones.

                """);
        page.append("Machine: ").append(machine()).append("\n\n");
        List<Form> forms = List.of(
                new Form("The mudguard form, 150 x 160 degrees of a torus, ring 330 mm, tube 95 mm, as a regular grid", Grids::mudguard, SIDES),
                new Form("The same as a scanner gives it: Delaunay triangles on shaken points, in no order at all",
                        n -> Grids.scannedMudguard(n, 1), FEWER),
                new Form("Bumps and hollows: 1000 mm square, four waves a side, 40 mm up and down", Grids::bumpy, FEWER),
                new Form("A ribbon of 2000 x 100 mm that turns by half and bows", Grids::ribbon, FEWER));
        for (Form form : forms) table(page, form, FlattenOptions.DEFAULT);
        table(page, new Form("Aim `work`, soft aluminium: the mudguard form", Grids::mudguard, new int[] {71, 224, 500}),
                FlattenOptions.DEFAULT.withWork(LeastWork.of(SOFT_ALUMINIUM)));
        again(page);
        heap(page);
        System.out.println(page);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/flattening.md"), page);
    }

    private static void table(StringBuilder page, Form form, FlattenOptions options) {
        page.append("## ").append(form.name()).append("\n\n| triangles | prepare s | whole, first s | whole, warm s | growth per doubling | steps | "
                + "mean energy |\n|---|---|---|---|---|---|---|\n");
        Row last = null;
        for (int side : form.sides()) {
            Row r = row(form.mesh().apply(side), options);
            String growth = last == null ? "" : String.format(Locale.ROOT, "%.2f",
                    Math.pow(r.warm() / last.warm(), Math.log(2) / Math.log((double) r.triangles() / last.triangles())));
            page.append(String.format(Locale.ROOT, "| %,d | %.3f | %.2f | %.3f | %s | %d | %.12f |%n", r.triangles(), r.prepare(), r.cold(),
                    r.warm(), growth, r.steps(), r.energy()));
            last = r;
        }
        page.append('\n');
    }

    private static Row row(TriMesh mesh, FlattenOptions options) {
        double cold = 0, warm = Double.POSITIVE_INFINITY, prepare = Double.POSITIVE_INFINITY;
        int repeats = mesh.triangleCount() < 50_000 ? 40 : mesh.triangleCount() < 300_000 ? 12 : 5;
        Outcome outcome = null;
        for (int i = 0; i < repeats; i++) {
            long from = System.nanoTime();
            Flattener flattener = Flattener.of(mesh, Progress.NONE);
            long ready = System.nanoTime();
            outcome = flattener.flatten(options, Progress.NONE);
            double seconds = (System.nanoTime() - from) / 1e9;
            if (i == 0) cold = seconds;
            else warm = Math.min(warm, seconds);
            prepare = Math.min(prepare, (ready - from) / 1e9);
        }
        return new Row(mesh.triangleCount(), prepare, cold, warm, outcome.steps(), outcome.energy());
    }

    /** What a change costs once the panel has been laid flat. */
    private static void again(StringBuilder page) {
        page.append("## Again after a change, mudguard form of 20,000 triangles\n\n| change | warm s | steps |\n|---|---|---|\n");
        TriMesh mesh = Grids.mudguard(100);
        Flattener flattener = Flattener.of(mesh, Progress.NONE);
        FlatMap even = flattener.flatten(FlattenOptions.DEFAULT, Progress.NONE).map();
        FlattenOptions work = FlattenOptions.DEFAULT.withWork(LeastWork.of(SOFT_ALUMINIUM));
        FlatMap least = flattener.flatten(work, Progress.NONE).map();
        again(page, "aim `even` to `work`", flattener, even, work);
        again(page, "aim `work` to `even`", flattener, least, FlattenOptions.DEFAULT);
        again(page, "shrinking costs 5 % more", flattener, least,
                FlattenOptions.DEFAULT.withWork(LeastWork.of(SOFT_ALUMINIUM, costs(mesh, 1), costs(mesh, 1.05))));
        again(page, "shrinking costs twice as much", flattener, least,
                FlattenOptions.DEFAULT.withWork(LeastWork.of(SOFT_ALUMINIUM, costs(mesh, 1), costs(mesh, 2))));
        double best = Double.POSITIVE_INFINITY;
        Outcome outcome = null;
        TriMesh thicker = mesh.withPositions(moved(mesh, 0.5));
        for (int i = 0; i < 40; i++) {
            long from = System.nanoTime();
            outcome = Flattener.flatten(thicker, FlattenOptions.DEFAULT, Progress.NONE);
            best = Math.min(best, (System.nanoTime() - from) / 1e9);
        }
        page.append(String.format(Locale.ROOT, "| thickness or a seam: another mesh, from the beginning | %.3f | %d |%n%n", best, outcome.steps()));
    }

    private static double[] costs(TriMesh mesh, double cost) {
        double[] costs = new double[mesh.triangleCount()];
        java.util.Arrays.fill(costs, cost);
        return costs;
    }

    /** The tube's radius more by {@code by}. */
    private static double[] moved(TriMesh mesh, double by) {
        double[] xyz = mesh.positions();
        for (int v = 0; v < mesh.vertexCount(); v++) xyz[3 * v + 2] *= 1 + by / 95;
        return xyz;
    }

    private static void again(StringBuilder page, String change, Flattener flattener, FlatMap from, FlattenOptions options) {
        double best = Double.POSITIVE_INFINITY;
        Outcome outcome = null;
        for (int i = 0; i < 40; i++) {
            long at = System.nanoTime();
            outcome = flattener.again(from, options, Progress.NONE);
            best = Math.min(best, (System.nanoTime() - at) / 1e9);
        }
        page.append(String.format(Locale.ROOT, "| %s | %.3f | %d |%n", change, best, outcome.steps()));
    }

    /** A Java of its own for each size, given no more heap than asked for. */
    private static void heap(StringBuilder page) throws IOException, InterruptedException {
        page.append("## Memory: the mudguard form in a Java of its own with no more heap than this\n\n| triangles | heap | first s | warm s |\n|---|---|---|---|\n");
        for (Heap h : List.of(new Heap(71, "150m"), new Heap(224, "300m"), new Heap(500, "1000m"), new Heap(707, "1600m"))) {
            Process child = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx" + h.given(), "-cp",
                    System.getProperty("java.class.path"), Child.class.getName(), "" + h.side()).redirectErrorStream(true).start();
            String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8).trim();
            if (child.waitFor() != 0) said = "- | did not fit";
            page.append(String.format(Locale.ROOT, "| %,d | %s | %s |%n", 2 * h.side() * h.side(), h.given(), said));
        }
    }

    /** One mesh laid flat a few times in the heap it is given. */
    static final class Child {
        private Child() { }

        public static void main(String[] args) {
            TriMesh mesh = Grids.mudguard(Integer.parseInt(args[0]));
            double first = 0, best = Double.POSITIVE_INFINITY;
            for (int i = 0; i < 6; i++) {
                long from = System.nanoTime();
                Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
                double seconds = (System.nanoTime() - from) / 1e9;
                if (i == 0) first = seconds;
                best = Math.min(best, seconds);
            }
            System.out.printf(Locale.ROOT, "%.2f | %.3f", first, best);
        }
    }

    private static String machine() throws IOException {
        Path cpu = Path.of("/proc/cpuinfo");
        String model = !Files.exists(cpu) ? System.getProperty("os.arch") : Files.readAllLines(cpu).stream()
                .filter(l -> l.startsWith("model name")).map(l -> l.substring(l.indexOf(':') + 2)).findFirst().orElse("unknown");
        return model + ", " + Runtime.getRuntime().availableProcessors() + " cores, Java " + System.getProperty("java.version")
                + ", heap " + Runtime.getRuntime().maxMemory() / 1_000_000 + " MB";
    }
}
