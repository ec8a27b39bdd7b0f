package blankwright.viewer.model;

import blankwright.job.AtHand;
import blankwright.job.Given;
import blankwright.mesh.FlatMap;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.project.Aim;
import blankwright.project.Face;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.shape.TorusSection;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;

/** How long it takes from a change under the hand to the blank's edges and colours, not yet painted, and how far they are from the whole. */
public final class Changes {
    private static final int WARM = 6, TIMES = 9;

    private final AtHand hand;
    private final StringBuilder rows = new StringBuilder();
    private Laid laid;

    private Changes(AtHand hand) {
        this.hand = hand;
    }

    /** Rows of a table, for the mudguard form in about so many triangles. */
    public static String rows(Path folder, int triangles) throws Exception {
        Path file = folder.resolve("mudguard-" + triangles + ".obj");
        try (OutputStream out = Files.newOutputStream(file)) {
            MeshWriter.write(TorusSection.grid(Math.toRadians(150), Math.toRadians(160), 330, 95, triangles), Format.OBJ, out);
        }
        Recipe even = Recipe.ofMesh("mudguard", file.getFileName().toString(), Optional.of(LengthUnit.MM))
                .withMetal(Optional.of(Metal.shipped("3003-O"))).withSheet(OptionalDouble.of(1.2), Face.OUTSIDE);
        Changes changes = new Changes(new AtHand(Given.file(file)));
        changes.measure("thickness, form outside", even, t -> even.withSheet(OptionalDouble.of(1.2 + t), Face.OUTSIDE));
        Recipe middle = even.withSheet(OptionalDouble.of(1.2), Face.MIDDLE), work = middle.withAim(Aim.WORK);
        changes.measure("thickness, form in the middle", middle, t -> middle.withSheet(OptionalDouble.of(1.2 + t), Face.MIDDLE));
        changes.measure("lean, least work", work, t -> work.withHandwork(work.handwork().withLean(t / 2)));
        return changes.rows.toString();
    }

    private void measure(String what, Recipe from, DoubleFunction<Recipe> to) throws Exception {
        laid = Laid.of(hand.whole(from, Progress.NONE));
        List<Double> cpu = new ArrayList<>(), wall = new ArrayList<>();
        FirstAnswer last = null;
        for (int i = 0; i < WARM + TIMES; i++) {
            Recipe wish = to.apply(0.02 * (i + 1));
            double c = processor(), w = System.nanoTime() / 1e6;
            last = FirstAnswer.of(hand.draft(wish, Progress.NONE).orElseThrow(), laid, MapKind.WORK).orElseThrow();
            if (i < WARM) continue;
            cpu.add(processor() - c);
            wall.add(System.nanoTime() / 1e6 - w);
        }
        double w = System.nanoTime() / 1e6;
        Laid whole = Laid.of(hand.whole(last.draft().recipe(), Progress.NONE));
        double wholeWall = System.nanoTime() / 1e6 - w;
        FlatMap meant = whole.skins().get(0).map(), shown = last.draft().pieces().get(0).map();
        double off = 0;
        for (int v = 0; v < meant.form().vertexCount(); v++) off = Math.max(off, Math.hypot(meant.u(v) - shown.u(v), meant.v(v) - shown.v(v)));
        rows.append(String.format(Locale.ROOT, "| %,d | %s | %.0f | %.0f | %.0f | %.2f | %.0f |%n", meant.form().triangleCount(), what, middle(cpu),
                cpu.stream().mapToDouble(x -> x).max().orElseThrow(), middle(wall), off, wholeWall));
    }

    private static double middle(List<Double> all) {
        return all.stream().sorted().toList().get(all.size() / 2);
    }

    /** Processor time of this thread and of those it shares work with, ms. */
    private static double processor() {
        ThreadMXBean bean = ManagementFactory.getThreadMXBean();
        double sum = bean.getCurrentThreadCpuTime();
        for (ThreadInfo info : bean.getThreadInfo(bean.getAllThreadIds()))
            if (info != null && info.getThreadName().startsWith("ForkJoinPool")) sum += Math.max(0, bean.getThreadCpuTime(info.getThreadId()));
        return sum / 1e6;
    }
}
