package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.StretchEnergy;
import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.flatten.energy.Untangling;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Orientation;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays a disk, holes allowed, flat with its distortion spread as evenly as geometry allows: the minimum of the symmetric Dirichlet energy
 * over all layouts in which no triangle is turned over. Or so that it takes the least work, from there on.
 *
 * <ol><li>Order and pattern of the system, once.
 * <li>A start: the conformal map; if it turned a few triangles over, untangled; if many, or still some, the rim on a circle.
 * <li>Projected Newton descent to the minimum.
 * <li>Where the work is to be least: on from there by the same descent.
 * <li>Exact orientation of every triangle.</ol>
 *
 * <p>The blank may still cover itself: see {@code outline}. Same input, same bits, on any number of threads.
 * <p>Source: Smith and Schaefer 2015 [SS15] for the energy; docs/theory/flattening.md.
 */
public final class Flattener {
    private static final double[] THRESHOLDS = {0.3, 0.1, 0.03};
    private static final int UNTANGLING_STEPS = 60;
    private static final double ROUGHLY = 1e-4;         // tolerance where only a start for the next stage is wanted
    private static final double FEW = 0.02;             // share of turned-over triangles worth untangling

    private final TriMesh mesh;
    private final FlattenOptions options;
    private final Progress progress;
    private final Distortion form;
    private final RimLoops rims;
    private final int outer;
    private final Cholesky solver;
    private final StretchEnergy energy = new SymmetricDirichlet();

    private Flattener(TriMesh mesh, FlattenOptions options, Progress progress) {
        this.mesh = mesh;
        this.options = options;
        this.progress = progress;
        rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        outer = rims.longest(mesh);
        if (outer < 0) throw new IllegalArgumentException("the panel has no rim: open it with a seam first");
        if (options.work().isPresent() && options.work().get().triangles() != 0 && options.work().get().triangles() != mesh.triangleCount())
            throw new IllegalArgumentException("costs for " + options.work().get().triangles() + " triangles, the form has " + mesh.triangleCount());
        if (!(mesh.area() > 0)) throw new IllegalArgumentException("the panel has no area");
        form = new Distortion(mesh);
        progress.at("Finding an order", 0);
        solver = new Cholesky(mesh.vertexCount(), mesh.corners(), mesh.positions(), 2);
        needRoom(solver.factorSize());
    }

    /**
     * @param disk connected, one outer rim, holes allowed, no handles, consistently oriented, every vertex in a triangle
     * @throws IllegalArgumentException where it has no rim or no area
     * @throws java.util.concurrent.CancellationException once the progress says it is no longer wanted
     * @throws OutOfMemoryError before the long part begins where the factor cannot fit into the heap
     */
    public static Outcome flatten(TriMesh disk, FlattenOptions options, Progress progress) {
        return new Flattener(disk, options, progress).run();
    }

    /** Says no before the memory is gone: a factor takes its numbers and about half as much again while it is made. */
    private static void needRoom(long numbers) {
        long need = 12 * numbers;
        if (need > Runtime.getRuntime().maxMemory()) throw new OutOfMemoryError("the factor takes " + need / 1_000_000 + " MB");
    }

    private Outcome run() {
        progress.at("Laying flat", 0);
        double[] uv = ConformalMap.of(mesh, rims.loop(outer), form, solver, progress::cancelled);
        Outcome.Start start = Outcome.Start.CONFORMAL;
        long turned = uv == null ? mesh.triangleCount() : turnedOver(uv);
        if (turned > 0 && turned <= Math.max(4, FEW * mesh.triangleCount())) {
            start = Outcome.Start.UNTANGLED;
            form.scaleBest(uv);
            turned = untangle(uv);
        }
        if (turned > 0) {
            start = Outcome.Start.CIRCLE;
            double[] circle = CircleMap.of(mesh, rims, outer, progress::cancelled);
            turned = circle == null ? mesh.triangleCount() : turnedOver(circle);
            if (circle != null) uv = circle;
            if (circle != null && turned > 0) turned = untangle(uv);
        }
        if (turned > 0) return stopped(uv == null ? new double[2 * mesh.vertexCount()] : uv, 0, start, Outcome.Reason.NO_START);
        form.scaleBest(uv);
        Descent descent = new Descent(form, solver, energy, options, progress);
        Descent.End end = descent.run(uv, layout -> true);
        int steps = descent.steps();
        if (options.work().isPresent() && end == Descent.End.CONVERGED) {
            for (Stage stage : stages(options.work().get())) {
                descent = new Descent(form, solver, stage.energy(), stage.last() ? options : options.withTolerance(ROUGHLY), progress);
                end = descent.run(uv, layout -> true);
                steps += descent.steps();
            }
        }
        if (turnedOver(uv) > 0) throw new AssertionError(turnedOver(uv) + " triangles turned over by a descent that cannot");
        return switch (end) {
            case CONVERGED -> new Outcome.Converged(inMillimetres(uv), steps, mean(uv), start);
            case STEP_LIMIT -> stopped(uv, steps, start, Outcome.Reason.STEP_LIMIT);
            case NO_DESCENT, ASKED -> stopped(uv, steps, start, Outcome.Reason.NO_DESCENT);
        };
    }

    private record Stage(LeastWork energy, boolean last) { }

    /** Costs that differ much make the energy bend sharply: they are raised by no more than tenfold at a time. */
    private static List<Stage> stages(LeastWork work) {
        int count = Math.max(1, (int) Math.ceil(Math.log10(work.contrast()) - 1e-9));
        List<Stage> stages = new ArrayList<>();
        for (int i = 1; i <= count; i++) stages.add(new Stage(i == count ? work : work.milder((double) i / count), i == count));
        return stages;
    }

    private Outcome stopped(double[] uv, int steps, Outcome.Start start, Outcome.Reason reason) {
        return new Outcome.Stopped(inMillimetres(uv), steps, mean(uv), start, reason);
    }

    /** Lowers the number of turned-over triangles, to 0 if it can; returns what is left. */
    private long untangle(double[] uv) {
        long turned = turnedOver(uv);
        for (double threshold : THRESHOLDS) {
            if (turned == 0) return 0;
            Descent descent = new Descent(form, solver, new Untangling(threshold), options.withStepLimit(UNTANGLING_STEPS), progress);
            descent.run(uv, layout -> turnedOver(layout) > 0);
            turned = turnedOver(uv);
        }
        return turned;
    }

    private double mean(double[] uv) {
        return form.value(energy, uv) / form.areaSum();
    }

    private long turnedOver(double[] uv) {
        return (long) Chunks.sum(mesh.triangleCount(), (from, to) -> {
            long count = 0;
            for (int t = from; t < to; t++) {
                int a = 2 * mesh.corner(t, 0), b = 2 * mesh.corner(t, 1), c = 2 * mesh.corner(t, 2);
                boolean finite = Double.isFinite(uv[a] + uv[a + 1] + uv[b] + uv[b + 1] + uv[c] + uv[c + 1]);
                if (!finite || Orientation.sign(uv[a], uv[a + 1], uv[b], uv[b + 1], uv[c], uv[c + 1]) <= 0) count++;
            }
            return count;
        });
    }

    private FlatMap inMillimetres(double[] uv) {
        double[] mm = new double[uv.length];
        for (int i = 0; i < uv.length; i++) mm[i] = Double.isFinite(uv[i]) ? uv[i] * form.scale() : 0;
        return FlatMap.of(mesh, mm);
    }
}
