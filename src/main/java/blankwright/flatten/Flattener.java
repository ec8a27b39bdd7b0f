package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.StretchEnergy;
import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.flatten.energy.TriangleEnergy;
import blankwright.flatten.energy.Untangling;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Orientation;
import blankwright.num.Progress;
import blankwright.num.Share;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays a disk, holes allowed, flat with its distortion spread as evenly as geometry allows: the minimum of the symmetric Dirichlet energy
 * over all layouts in which no triangle is turned over. Or so that it takes the least work, from there on.
 *
 * <ol><li>Coarser meshes of the same panel, each with about a third of the vertices, until one is small.
 * <li>A start on the coarsest: the conformal map; if it turned a few triangles over, untangled; if many, or still some, the rim on a circle.
 * <li>Newton descent to the minimum there; where the work is to be least, on from there by the same descent.
 * <li>The layout carried to the next finer mesh, untangled if need be; descent there; and so on up to the finest.
 * <li>Exact orientation of every triangle.</ol>
 *
 * <p>Where a coarser layout is of no use to a finer mesh, that one makes a start of its own.
 * <p>An instance keeps what is found once for a mesh, so that it can be laid flat {@link #again} soon. The blank may still cover itself: see
 * {@code outline}. Same input, same bits, on any number of threads. Not for use by two threads at once.
 * <p>Source: Smith and Schaefer 2015 [SS15] for the energy; docs/theory/flattening.md.
 */
public final class Flattener {
    private static final double[] THRESHOLDS = {0.3, 0.1};
    private static final int UNTANGLING_STEPS = 8;          // of each threshold: what these do not cure another start does, sooner
    private static final int CARRIED_STEPS = 24;            // likewise for what was carried up: without it all is to be done again
    private static final double FEW = 0.02;                 // share of turned-over triangles worth untangling
    private static final double FAR = 12;                   // energy of a start from which a better one is looked for
    private static final int LONG = 12;                     // steps over coarser meshes
    private static final int SWEEPS = 30;                   // of a layout from a circle, at most
    private static final double ROUGHLY = 1e-4;             // tolerance of stages on the way
    private static final double COARSE_TOLERANCE = 1e-4;    // the next finer mesh differs by as much: 6e-5 and less on a regular grid
    private static final double ROUGH_WORK = 1e-3;          // likewise of the work, which is all distortion: 4e-3 and more
    private static final int COARSE_STEPS = 200;
    private static final double PREPARED = 0.3, COARSER = 0.3;   // shares of the time: before the descents; of all coarser levels in a level

    private final TriMesh disk;
    private final Arrangement arrangement;
    private final List<Level> levels;
    private final StretchEnergy even = new SymmetricDirichlet();

    private FlattenOptions options;
    private Outcome.Start start;
    private int steps;                                      // on the finest mesh

    private Flattener(TriMesh disk, Arrangement arrangement, List<Level> levels) {
        this.disk = disk;
        this.arrangement = arrangement;
        this.levels = levels;
    }

    /**
     * @param disk connected, one outer rim, holes allowed, no handles, consistently oriented, every vertex in a triangle
     * @throws IllegalArgumentException where it has no rim or no area, or the options' costs are not for its triangles
     * @throws java.util.concurrent.CancellationException once the progress says it is no longer wanted
     * @throws OutOfMemoryError before the long part begins where it is plain that the heap is too small
     */
    public static Outcome flatten(TriMesh disk, FlattenOptions options, Progress progress) {
        return of(disk, new Share(progress, 0, PREPARED)).flatten(options, new Share(progress, PREPARED, 1));
    }

    /** What can be found for a mesh before it is laid flat; arguments and errors of {@link #flatten(TriMesh, FlattenOptions, Progress)}. */
    public static Flattener of(TriMesh disk, Progress progress) {
        progress.at("Laying flat", 0);
        if (!(disk.area() > 0)) throw new IllegalArgumentException("the panel has no area");
        Arrangement arrangement = Arrangement.of(disk);
        List<Level> levels = Level.of(arrangement.mesh(), progress);
        if (levels.get(0).closed()) throw new IllegalArgumentException("the panel has no rim: open it with a seam first");
        return new Flattener(disk, arrangement, levels);
    }

    /** Lays it flat from coarse to fine. */
    public Outcome flatten(FlattenOptions options, Progress progress) {
        take(options);
        double[] uv = null;
        double share = Math.pow(COARSER, levels.size() - 1);                // of the work, for this level and the coarser
        for (int l = levels.size() - 1; l > 0; l--, share /= COARSER)
            uv = descended(l, uv, new Share(progress, levels.size() - 1 == l ? 0 : share * COARSER, share));
        progress.at("Laying flat", levels.size() == 1 ? 0 : COARSER);
        return finest(uv == null ? null : carriedUp(0, uv, progress), new Share(progress, levels.size() == 1 ? 0 : COARSER, 1));
    }

    /**
     * Lays it flat from a layout found before for the same mesh under other options: a few steps where they differ little.
     *
     * @param from a layout of the same mesh; one that turned triangles over is not used
     */
    public Outcome again(FlatMap from, FlattenOptions options, Progress progress) {
        if (from.form().vertexCount() != disk.vertexCount() || from.form().triangleCount() != disk.triangleCount())
            throw new IllegalArgumentException("a layout of " + from.form().triangleCount() + " triangles for " + disk.triangleCount());
        double[] uv = new double[2 * disk.vertexCount()];
        double unit = levels.get(0).form().scale();
        for (int v = 0; v < disk.vertexCount(); v++) {
            uv[2 * v] = from.u(v) / unit;
            uv[2 * v + 1] = from.v(v) / unit;
        }
        uv = arrangement.arranged(uv);
        if (turnedOver(0, uv) > 0) return flatten(options, progress);
        take(options);
        start = Outcome.Start.GIVEN;
        return finest(uv, progress);
    }

    /**
     * What follows a layout of this mesh while a hand drags.
     *
     * @param from the outcome's map, as it was found under the options
     */
    public Follower follower(FlatMap from, FlattenOptions options) {
        return new Follower(from, options, arrangement, levels);
    }

    private void take(FlattenOptions options) {
        if (options.work().isPresent()) {
            LeastWork work = options.work().get();
            if (work.triangles() != 0 && work.triangles() != disk.triangleCount())
                throw new IllegalArgumentException("costs for " + work.triangles() + " triangles, the form has " + disk.triangleCount());
            options = options.withWork(arrangement.arranged(work));
        }
        this.options = options;
        steps = 0;
    }

    /** The finest mesh's minimum from a clean layout of it, or from nothing. */
    private Outcome finest(double[] given, Progress progress) {
        double[] uv = given == null ? ownStart(0, progress) : given;
        if (uv == null) return stopped(new double[2 * disk.vertexCount()], Outcome.Reason.NO_START);
        if (turnedOver(0, uv) > 0) return stopped(uv, Outcome.Reason.NO_START);
        Descent.End end = descend(0, uv, given != null, options, progress);
        if (turnedOver(0, uv) > 0) throw new AssertionError(turnedOver(0, uv) + " triangles turned over by a descent that cannot");
        return switch (end) {
            case CONVERGED -> new Outcome.Converged(inMillimetres(uv), steps, mean(uv), start);
            case STEP_LIMIT -> stopped(uv, Outcome.Reason.STEP_LIMIT);
            case NO_DESCENT, ASKED -> stopped(uv, Outcome.Reason.NO_DESCENT);
        };
    }

    /** A level's minimum, nearly, from the next coarser one's or from nothing; null where there is no clean layout to begin with. */
    private double[] descended(int level, double[] coarse, Progress progress) {
        double[] given = coarse == null ? null : carriedUp(level, coarse, progress);
        double[] uv = given == null ? ownStart(level, progress) : given;
        if (uv == null || turnedOver(level, uv) > 0) return null;
        double rough = options.work().isPresent() ? ROUGH_WORK : COARSE_TOLERANCE;
        descend(level, uv, given != null, options.withTolerance(Math.max(options.tolerance(), rough)).withStepLimit(COARSE_STEPS), progress);
        return uv;
    }

    /** A layout of the next coarser level, carried to this one and untangled if need be; null where triangles stay turned over. */
    private double[] carriedUp(int level, double[] coarse, Progress progress) {
        double[] uv = levels.get(level).carriedUp(coarse, levels.get(level + 1));
        start = Outcome.Start.COARSER;
        return untangle(level, uv, CARRIED_STEPS, progress) == 0 ? uv : null;
    }

    /** Moves {@code uv} to the minimum: first of the even energy, unless it was found already, then of the work if that is wanted. */
    private Descent.End descend(int level, double[] uv, boolean found, FlattenOptions options, Progress progress) {
        List<Stage> stages = new ArrayList<>();
        if (options.work().isEmpty() || !found) stages.add(new Stage(even, options));
        if (options.work().isPresent()) {
            LeastWork work = options.work().get();
            int count = Math.max(1, (int) Math.ceil(Math.log10(work.contrast()) - 1e-9)), stagesLeft = !found ? count
                    : start == Outcome.Start.GIVEN ? 1 : Math.min(2, count);    // strain of what is carried up is rough: the dear kind is let go first
            for (int i = count + 1 - stagesLeft; i <= count; i++)       // costs that differ much bend the energy sharply: raised tenfold at a time
                stages.add(i == count ? new Stage(atLevel(level, work), options)
                        : new Stage(atLevel(level, work.milder((double) i / count)), options.withTolerance(ROUGHLY)));
        }
        Descent.End end = Descent.End.CONVERGED;
        for (int i = 0; i < stages.size() && (i != 1 || end == Descent.End.CONVERGED); i++) end = descend(level, uv, stages.get(i), progress);
        return end;
    }

    /** One stage: where it takes long over the coarser meshes, on with factors, which can be gone on with from each step. */
    private Descent.End descend(int level, double[] uv, Stage stage, Progress progress) {
        boolean both = level < levels.size() - 1 && stage.energy() == even && stage.options().stepLimit() > LONG;
        Descent descent = descent(level, stage.energy(), both ? stage.options().withStepLimit(LONG) : stage.options(), progress);
        Descent.End end = descent.run(uv, layout -> true);
        if (level == 0) steps += descent.steps();
        if (!both || end != Descent.End.STEP_LIMIT) return end;
        Level here = levels.get(level);
        Descent byFactors = new Descent(here.form(), new FactorNewton(here.form(), here.solver(), even, progress), even,
                stage.options().withStepLimit(stage.options().stepLimit() - LONG), progress);
        end = byFactors.run(uv, layout -> true);
        if (level == 0) steps += byFactors.steps();
        return end;
    }

    private record Stage(TriangleEnergy energy, FlattenOptions options) { }

    private TriangleEnergy atLevel(int level, TriangleEnergy finest) {
        TriangleEnergy energy = finest;
        for (int l = 0; l < level; l++) energy = levels.get(l).coarser(energy);
        return energy;
    }

    private Descent descent(int level, TriangleEnergy energy, FlattenOptions options, Progress progress) {
        Level here = levels.get(level);
        Newton newton = level == levels.size() - 1 ? new FactorNewton(here.form(), here.solver(), energy, progress)
                : new MultigridNewton(levels.subList(level, levels.size()), energy, progress);
        return new Descent(here.form(), newton, energy, options, progress);
    }

    /** The best start to be had without any other; null if there is none at all. Triangles may be turned over still. */
    private double[] ownStart(int level, Progress progress) {
        Level here = levels.get(level);
        int triangles = here.mesh().triangleCount();
        double[] uv = ConformalMap.of(here.mesh(), here.rims().loop(here.outer()), here.form(), here.solver(), progress::cancelled);
        start = Outcome.Start.CONFORMAL;
        long turned = uv == null ? triangles : turnedOver(level, uv);
        if (turned > 0 && turned <= Math.max(4, FEW * triangles)) {
            start = Outcome.Start.UNTANGLED;
            here.form().scaleBest(uv);
            turned = untangle(level, uv, UNTANGLING_STEPS, progress);
        }
        if (turned == 0) here.form().scaleBest(uv);
        if (turned > 0 || here.form().value(even, uv) > FAR) {
            double[] circle = CircleMap.evened(here.mesh(), here.rims(), here.outer(), here.form(), even, progress::cancelled);
            if (circle == null || turned == 0 && !(here.form().value(even, circle) < here.form().value(even, uv))) return uv;
            start = Outcome.Start.CIRCLE;
            uv = circle;
            if (untangle(level, uv, UNTANGLING_STEPS, progress) == 0)
                new VertexSweeps(here.form(), even, progress).run(uv, here.form().value(even, uv), SWEEPS);
        }
        return uv;
    }

    private Outcome stopped(double[] uv, Outcome.Reason reason) {
        return new Outcome.Stopped(inMillimetres(uv), steps, mean(uv), start, reason);
    }

    /** Lowers the number of turned-over triangles, to 0 if it can; returns what is left. */
    private long untangle(int level, double[] uv, int steps, Progress progress) {
        long turned = turnedOver(level, uv);
        for (double threshold : THRESHOLDS) {
            if (turned == 0) return 0;
            descent(level, new Untangling(threshold), options.withStepLimit(steps), progress)
                    .run(uv, layout -> turnedOver(level, layout) > 0);
            turned = turnedOver(level, uv);
        }
        return turned;
    }

    private double mean(double[] uv) {
        Distortion form = levels.get(0).form();
        return form.value(even, uv) / form.areaSum();
    }

    private long turnedOver(int level, double[] uv) {
        TriMesh mesh = levels.get(level).mesh();
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
        double unit = levels.get(0).form().scale();
        for (int i = 0; i < uv.length; i++) mm[i] = Double.isFinite(uv[i]) ? uv[i] * unit : 0;
        return FlatMap.of(disk, arrangement.asGiven(mm));
    }
}
