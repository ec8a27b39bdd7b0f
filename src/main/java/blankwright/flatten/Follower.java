package blankwright.flatten;

import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.flatten.energy.TriangleEnergy;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import java.util.List;

/**
 * Follows a layout that was found while what is asked of it, or the form, changes little by little, as under a hand that drags.
 *
 * <ol><li>On the first of the coarser meshes that is small, the minimum for what was asked before: once.
 * <li>There a few steps towards the minimum for what is asked now, from where the last ones led.
 * <li>The way between both is carried up, mesh by mesh, and added to the layout, as far as no triangle is turned over.</ol>
 *
 * <p>What the coarser mesh does not see stays as it was, and nothing changed gives the layout itself. An answer for now, not the minimum:
 * {@link Flattener} finds that. Depends on all that was asked before. Not for use by two threads at once.
 */
public final class Follower {
    /** Of the mesh that is descended on, at most, where there is a coarser one; a step takes 2 µs for each. */
    private static final int SMALL = 10_000;
    private static final int AT_ONCE = 40_000, LEAST = 4, MOST = 12;       // steps of one answer times triangles; so many steps at least, at most
    private static final int SETTLED = 100;
    private static final double TOLERANCE = 1e-6, SETTLED_TOLERANCE = 1e-7;     // of one answer; of what all answers are measured from
    private static final int HALVINGS = 6;

    /** Between one mesh and the next coarser: what {@link Coarser} knows of that, without what it took to find it. */
    private record Way(int coarseTriangles, int[] vertexOf, int[] parents, double[] weights, int[] triangleOf, double[] areas) {
        static Way of(Level level) {
            Coarser c = level.coarser();
            return new Way(c.mesh().triangleCount(), c.vertexOf(), c.parents(), c.weights(), c.triangleOf(), level.form().areas());
        }

        /** {@code width} numbers a fine vertex to as many a coarse one. */
        double[] down(double[] from, int width) {
            double[] to = new double[width * vertexOf.length];
            for (int i = 0; i < vertexOf.length; i++) System.arraycopy(from, width * vertexOf[i], to, width * i, width);
            return to;
        }

        /** 2 numbers a coarse vertex to 2 a fine one. */
        double[] up(double[] from) {
            double[] to = new double[parents.length / 3 * 2];
            for (int i = 0; i < parents.length; i++) {
                to[i / 3 * 2] += weights[i] * from[2 * parents[i]];
                to[i / 3 * 2 + 1] += weights[i] * from[2 * parents[i] + 1];
            }
            return to;
        }

        TriangleEnergy down(TriangleEnergy energy) {
            return energy.coarser(coarseTriangles, triangleOf, areas);
        }
    }

    private final FlatMap from;
    private final FlattenOptions before;
    private final Arrangement arrangement;
    private final List<Way> ways;
    private final TriMesh small;
    private Cholesky solver;                               // of the small mesh, once it is needed
    private double[] settled;                              // on the small mesh, mm: the minimum for what was asked before
    private double[] now;                                  // likewise: where the last steps led
    private boolean arrived;

    Follower(FlatMap from, FlattenOptions before, Arrangement arrangement, List<Level> levels) {
        this.from = from;
        this.before = before;
        this.arrangement = arrangement;
        int at = 0;
        while (at < levels.size() - 1 && levels.get(at).mesh().triangleCount() > SMALL) at++;
        ways = levels.subList(0, at).stream().map(Way::of).toList();
        small = levels.get(at).mesh();
    }

    /** True where the change is found on a coarser mesh. */
    public boolean roughly() {
        return !ways.isEmpty();
    }

    /** False where the last answer could take more steps: to ask the same again brings it nearer. */
    public boolean arrived() {
        return arrived;
    }

    /**
     * The layout for what is asked now.
     *
     * @param form the triangles of the layout followed; its places may have moved
     * @throws IllegalArgumentException where it has other triangles
     * @throws java.util.concurrent.CancellationException once the progress says it is no longer wanted
     */
    public FlatMap to(TriMesh form, FlattenOptions options, Progress progress) {
        TriMesh disk = from.form();
        if (form.triangleCount() != disk.triangleCount() || form.vertexCount() != disk.vertexCount())
            throw new IllegalArgumentException("a layout of " + disk.triangleCount() + " triangles for " + form.triangleCount());
        if (settled == null) {
            solver = new Cholesky(small.vertexCount(), small.corners(), small.positions(), 2);
            now = down(arrangement.arranged(from.positions(), 2), 2);
            if (roughly()) descend(now, small, before.withStepLimit(SETTLED).withTolerance(SETTLED_TOLERANCE), progress);
            settled = now.clone();
        }
        TriMesh there = form == disk ? small : small.withPositions(down(arrangement.arranged(form.positions(), 3), 3));
        int steps = Math.max(LEAST, Math.min(MOST, AT_ONCE / small.triangleCount()));
        arrived = descend(now, there, options.withStepLimit(steps).withTolerance(TOLERANCE), progress) != Descent.End.STEP_LIMIT;
        double[] way = new double[now.length];
        for (int i = 0; i < way.length; i++) way[i] = now[i] - settled[i];
        for (int i = ways.size() - 1; i >= 0; i--) way = ways.get(i).up(way);
        return along(form, arrangement.asGiven(way));
    }

    private double[] down(double[] numbers, int width) {
        for (Way way : ways) numbers = way.down(numbers, width);
        return numbers;
    }

    /** Moves a layout of the small mesh, mm, towards its minimum. */
    private Descent.End descend(double[] uv, TriMesh mesh, FlattenOptions asked, Progress progress) {
        Distortion form = new Distortion(mesh);
        TriangleEnergy energy = new SymmetricDirichlet();
        if (asked.work().isPresent()) {
            energy = arrangement.arranged(asked.work().get());
            for (Way way : ways) energy = way.down(energy);
        }
        double[] there = uv.clone();
        for (int i = 0; i < there.length; i++) there[i] /= form.scale();
        Descent.End end = new Descent(form, new FactorNewton(form, solver, energy, progress), energy, asked, progress).run(there, layout -> true);
        for (int i = 0; i < there.length; i++) uv[i] = there[i] * form.scale();
        return end;
    }

    /** The layout moved all the way, or half of it, a quarter and so on, so that no triangle is turned over that was not. */
    private FlatMap along(TriMesh form, double[] way) {
        double[] was = from.positions();
        long turned = turnedOver(from);
        double part = 1;
        for (int i = 0; i < HALVINGS; i++, part /= 2) {
            double[] uv = was.clone();
            for (int k = 0; k < uv.length; k++) uv[k] += part * way[k];
            FlatMap there = FlatMap.of(form, uv);
            if (turnedOver(there) <= turned) return there;
        }
        return FlatMap.of(form, was);
    }

    private static long turnedOver(FlatMap map) {
        long count = 0;
        for (int t = 0; t < map.form().triangleCount(); t++) if (!(map.area(t) > 0)) count++;
        return count;
    }
}
