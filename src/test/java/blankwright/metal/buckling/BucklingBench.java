package blankwright.metal.buckling;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import blankwright.strain.StrainField;
import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How long buckling takes and what memory: {@code mvn -Pbench test} writes docs/benchmarks/buckling.md. Asserts nothing about time. */
@Tag("bench")
class BucklingBench {
    private static final Sheet SHEET = new Sheet(68_900, 0.33, 41, 0.22, 1.2);

    @Test
    void panels() throws IOException {
        StringBuilder page = new StringBuilder("""
                # Buckling, measured

                Written by `mvn -Pbench -Dtest.heap=3g -Dtest=BucklingBench test`. 3003-O, 1.2 mm. Panels: a square of 400 mm of a sphere of 1200 mm, held nowhere; a flange
                of 25 mm turned along a quarter circle of 300 mm, its flat part clamped. *Force* is the membrane force of the unworked
                blank, *factor* the factorization of the stiffness (six unknowns a vertex), *whole* everything from strain to modes and
                tucks, rounds after yielding and the map of critical strain included; *processor* counts both cores. λ of the two
                lowest modes.

                """);
        page.append("Machine: ").append(ManagementFactory.getOperatingSystemMXBean().getArch()).append(", ")
                .append(Runtime.getRuntime().availableProcessors()).append(" cores, Java ").append(System.getProperty("java.version"))
                .append(", heap ").append(Runtime.getRuntime().maxMemory() / 1_000_000).append(" MB")
                .append(", load while measured ").append(Math.round(ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage()))
                .append("\n\n| panel | triangles | force s | factor s | whole s | processor s | numbers in the factor | peak heap | λ |\n")
                .append("|---|---|---|---|---|---|---|---|---|\n");
        for (int n : new int[] {71, 141, 223}) {
            TriMesh cap = cap(n);
            page.append(row("cap, free", cap, new boolean[cap.vertexCount()]));
        }
        for (int n : new int[] {16, 32, 50}) {
            TriMesh flange = flange(20 * n, n);
            boolean[] root = new boolean[flange.vertexCount()];
            for (int v = 0; v < root.length; v++) root[v] = flange.z(v) < 1e-9;
            page.append(row("flange", flange, root));
        }
        System.out.println(page);
        Files.writeString(Path.of("docs/benchmarks/buckling.md"), page);
    }

    private static TriMesh cap(int n) {
        TriMesh flat = Plates.rectangle(400, 400, n, n);
        double[] p = flat.positions();
        for (int v = 0; v < p.length; v += 3) {
            p[v] -= 200;
            p[v + 1] -= 200;
            p[v + 2] = Math.sqrt(1200 * 1200 - p[v] * p[v] - p[v + 1] * p[v + 1]) - 1200;
        }
        return flat.withPositions(p);
    }

    /** From a flat band 40 mm wide into a wall 25 mm high round its outer edge, over a bend of 5 mm. */
    private static TriMesh flange(int along, int across) {
        double band = 40, bend = 5, wall = 25, width = band + Math.PI / 2 * bend + wall;
        TriMesh flat = Plates.rectangle(300 * Math.PI / 2, width, along, across);
        double[] p = flat.positions();
        for (int v = 0; v < p.length; v += 3) {
            double angle = p[v] / 300, s = p[v + 1], out = s, up = 0;
            if (s > band) {
                double turn = Math.min(Math.PI / 2, (s - band) / bend);
                out = band + bend * Math.sin(turn);
                up = bend * (1 - Math.cos(turn)) + Math.max(0, s - band - Math.PI / 2 * bend);
            }
            p[v] = (255 + out) * Math.sin(angle);
            p[v + 1] = (255 + out) * Math.cos(angle);
            p[v + 2] = up;
        }
        return flat.withPositions(p);
    }

    private static String row(String name, TriMesh mesh, boolean[] clamped) {
        StrainField field = StrainField.of(Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE).map());
        int n = mesh.triangleCount();
        double[] larger = new double[n], smaller = new double[n], direction = new double[3 * n];
        for (int t = 0; t < n; t++) {
            larger[t] = field.strain1(t);
            smaller[t] = field.strain2(t);
            direction[3 * t] = field.directionX(t);
            direction[3 * t + 1] = field.directionY(t);
            direction[3 * t + 2] = field.directionZ(t);
        }
        double[] strain = FacetStrain.of(mesh, larger, smaller, direction);
        Sheet elastic = Sheet.elastic(SHEET.youngs(), SHEET.poisson(), SHEET.thickness());
        System.gc();
        pools().forEach(MemoryPoolMXBean::resetPeakUsage);
        long cpu = cpu(), t0 = System.nanoTime();
        UnworkedForce force = UnworkedForce.of(mesh, strain, 1, elastic, () -> false);
        UnworkedBlank blank = UnworkedBlank.of(force, SHEET, clamped, () -> false);
        CriticalStrain.of(mesh, force.force(), SHEET, clamped);
        if (!blank.modes().isEmpty()) RimWaves.of(mesh, blank.modes().get(0).displacement(), strain);
        double whole = (System.nanoTime() - t0) / 1e9, processor = (cpu() - cpu) / 1e9;
        long heap = pools().stream().mapToLong(p -> p.getPeakUsage().getUsed()).sum();
        long t1 = System.nanoTime();
        UnworkedForce.of(mesh, strain, 1, elastic, () -> false);
        long t2 = System.nanoTime();
        Cholesky solver = new Cholesky(mesh.vertexCount(), mesh.corners(), mesh.positions(), ShellStiffness.UNKNOWNS);
        boolean[] held = new boolean[6 * mesh.vertexCount()];
        for (int i = 0; i < 6; i++) held[i] = true;
        solver.factor(new ShellStiffness(mesh, Moduli.elastic(elastic), 0.33, 1.2, held), 0, () -> false);
        long t3 = System.nanoTime();
        return String.format(Locale.ROOT, "| %s | %,d | %.2f | %.2f | %.2f | %.2f | %.1f M | %d MB | %.5f, %.5f |%n", name, n,
                (t2 - t1) / 1e9, (t3 - t2) / 1e9, whole, processor, solver.factorSize() / 1e6, heap / 1_000_000, blank.loadFactor(0), blank.loadFactor(1));
    }

    private static long cpu() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    private static List<MemoryPoolMXBean> pools() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(p -> p.getType() == MemoryType.HEAP).toList();
    }
}
