package blankwright.flatten;

import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How long a flattening takes, phase by phase, and how that grows: {@code mvn -Pbench test} prints the table and writes
 * docs/benchmarks/flattening.md. Asserts nothing about time.
 */
@Tag("bench")
class FlattenBench {
    private static final int[] SIDES = {71, 100, 141, 224, 316, 447, 500, 707};     // 2 n² triangles

    private record Row(int triangles, double order, double start, double descent, double cold, double warm, int steps, double energy,
                       long factor, long heap) { }

    @Test
    void mudguardForm() throws IOException {
        List<Row> rows = new ArrayList<>();
        for (int n : SIDES) rows.add(row(Grids.mudguard(n)));
        StringBuilder page = new StringBuilder("""
                # Flattening, measured

                Written by `mvn -Pbench test`. Mesh: the mudguard form, 150 x 160 degrees of a torus, ring 330 mm, tube 95 mm, as a regular
                grid. Aim `even`, descended until a full step promises less than 1e-9 of the energy. Phases are of one warm run; *whole* is
                from triangles in to blank out: *first* as met in this table's own Java, *warm* the best of the later runs. Growth is that of
                the warm time, scaled to a doubling of the triangles.

                """);
        page.append("Machine: ").append(machine()).append("\n\n");
        page.append("| triangles | order and pattern s | start s | descent s | whole, first s | whole, warm s | growth per doubling | steps "
                + "| mean energy | numbers in the factor | peak heap |\n|---|---|---|---|---|---|---|---|---|---|---|\n");
        Row last = null;
        for (Row r : rows) {
            String growth = last == null ? "" : String.format(Locale.ROOT, "%.2f",
                    Math.pow(r.warm() / last.warm(), Math.log(2) / Math.log((double) r.triangles() / last.triangles())));
            page.append(String.format(Locale.ROOT, "| %,d | %.3f | %.3f | %.3f | %.2f | %.3f | %s | %d | %.12f | %.1f M | %d MB |%n",
                    r.triangles(), r.order(), r.start(), r.descent(), r.cold(), r.warm(), growth, r.steps(), r.energy(), r.factor() / 1e6,
                    r.heap() / 1_000_000));
            last = r;
        }
        System.out.println(page);
        Files.createDirectories(Path.of("docs/benchmarks"));
        Files.writeString(Path.of("docs/benchmarks/flattening.md"), page);
    }

    private static Row row(TriMesh mesh) {
        double cold = 0, warm = Double.POSITIVE_INFINITY;
        int repeats = mesh.triangleCount() < 50_000 ? 25 : mesh.triangleCount() < 300_000 ? 8 : 4;
        Outcome outcome = null;
        System.gc();
        pools().forEach(MemoryPoolMXBean::resetPeakUsage);
        for (int i = 0; i < repeats; i++) {
            long from = System.nanoTime();
            outcome = Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
            double seconds = (System.nanoTime() - from) / 1e9;
            if (i == 0) cold = seconds;
            else warm = Math.min(warm, seconds);
        }
        long heap = pools().stream().mapToLong(p -> p.getPeakUsage().getUsed()).sum();
        long t0 = System.nanoTime();
        Distortion form = new Distortion(mesh);
        RimLoops rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        Cholesky solver = new Cholesky(mesh.vertexCount(), mesh.corners(), mesh.positions(), 2);
        long t1 = System.nanoTime();
        double[] uv = ConformalMap.of(mesh, rims.loop(0), form, solver, () -> false);
        form.scaleBest(uv);
        long t2 = System.nanoTime();
        new Descent(form, new FactorNewton(form, solver, new SymmetricDirichlet(), Progress.NONE), new SymmetricDirichlet(), FlattenOptions.DEFAULT, Progress.NONE).run(uv, layout -> true);
        long t3 = System.nanoTime();
        return new Row(mesh.triangleCount(), (t1 - t0) / 1e9, (t2 - t1) / 1e9, (t3 - t2) / 1e9, cold, warm, outcome.steps(), outcome.energy(),
                solver.factorSize(), heap);
    }

    private static List<MemoryPoolMXBean> pools() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(p -> p.getType() == MemoryType.HEAP).toList();
    }

    private static String machine() throws IOException {
        Path cpu = Path.of("/proc/cpuinfo");
        String model = !Files.exists(cpu) ? System.getProperty("os.arch") : Files.readAllLines(cpu).stream()
                .filter(l -> l.startsWith("model name")).map(l -> l.substring(l.indexOf(':') + 2)).findFirst().orElse("unknown");
        return model + ", " + Runtime.getRuntime().availableProcessors() + " cores, Java " + System.getProperty("java.version")
                + ", heap " + Runtime.getRuntime().maxMemory() / 1_000_000 + " MB";
    }
}
