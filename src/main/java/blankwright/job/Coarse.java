package blankwright.job;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.reduce.Reduce;
import blankwright.mesh.repair.Repair;
import blankwright.mesh.repair.Repaired;
import blankwright.num.Progress;
import blankwright.project.Aim;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.shape.Fineness;
import blankwright.shape.Panel;
import blankwright.shape.UnfitValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A panel of many triangles laid flat in few, for the eye, where it is cut in another way or has other measures.
 *
 * <ol><li>A formula is drawn with few triangles; a mesh is thinned out, once, ahead of time.
 * <li>Cut and opened as the recipe has it.
 * <li>Each part laid flat, in few steps.</ol>
 *
 * <p>Its strains are those of the coarser surface, and rims lie between its corners: the whole differs a little everywhere.
 */
final class Coarse {
    /** Triangles of a whole from which few are worth while: below, it is there as soon. Least work takes its time sooner. */
    static final int WORTH = 20_000, WORTH_OF_WORK = 10_000;
    private static final int FEW = 8000;
    private static final int STEPS = 20;
    private static final double TOLERANCE = 1e-5;
    private static final double ASTRAY = 0.01;              // of the panel's size: as far as a mesh that is thinned out may stray

    private final Kept kept;
    private volatile Mended begun, thinnedFrom;
    private Optional<TriMesh> thinned = Optional.empty();

    Coarse(Kept kept) {
        this.kept = kept;
    }

    /** Whether a panel of so many triangles is shown in few. */
    static boolean worthWhile(Recipe recipe, int triangles) {
        return triangles > (recipe.aim() == Aim.WORK ? WORTH_OF_WORK : WORTH);
    }

    /** Thins a mesh out on a thread of its own, so that it is there when a seam is cut: half a second for 100,000 triangles. */
    void ahead(Mended mended) {
        if (mended == thinnedFrom || mended == begun) return;
        begun = mended;
        Thread thread = new Thread(() -> thinned(mended, Progress.NONE), "thinning ahead");
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        thread.start();
    }

    /** Empty where the mesh is not there yet, or the whole would be refused. */
    Optional<Draft> draft(Recipe recipe, Given given, Progress progress) {
        try {
            Optional<TriMesh> mesh = recipe.source() instanceof Source.OfPanel formula ? drawn(formula.panel(), progress)
                    : kept.mended(recipe, given).flatMap(mended -> thinned(mended, progress));
            if (mesh.isEmpty()) return Optional.empty();
            List<FlatMap> maps = new ArrayList<>();
            for (Part part : Parted.of(mesh.get(), recipe, given, progress).parts()) {
                Outcome outcome = flat(part.opened().mesh(), recipe, progress);
                if (outcome instanceof Outcome.Stopped stopped && stopped.reason() == Outcome.Reason.NO_START) return Optional.empty();
                maps.add(outcome.map());
            }
            return Optional.of(new Draft(recipe, AtHand.pieces(maps, recipe), true, true, true));
        } catch (Refusal | UnfitValue e) {
            return Optional.empty();
        }
    }

    private static Optional<TriMesh> drawn(Panel panel, Progress progress) {
        TriMesh mesh = panel.mesh(Fineness.triangles(FEW));
        Repaired mended = Repair.of(mesh.positions(), mesh.corners(), progress);
        return mended.isEmpty() ? Optional.empty() : Optional.of(mended.mesh());
    }

    /** Empty where there is no memory for it. */
    private synchronized Optional<TriMesh> thinned(Mended mended, Progress progress) {
        if (mended == thinnedFrom) return thinned;
        TriMesh whole = mended.whole();
        try {
            thinned = 2 * MemoryNeed.thinning(whole.triangleCount()) > Runtime.getRuntime().maxMemory() ? Optional.empty()
                    : Optional.of(Reduce.of(whole, ASTRAY * mended.input().across(), FEW, progress).mesh());
        } catch (OutOfMemoryError e) {
            thinned = Optional.empty();
        }
        thinnedFrom = mended;
        return thinned;
    }

    private static Outcome flat(TriMesh disk, Recipe recipe, Progress progress) {
        FlattenOptions options = WorkAim.of(recipe, disk).map(WorkAim::options).orElse(FlattenOptions.DEFAULT);
        return Flattener.flatten(disk, options.withStepLimit(STEPS).withTolerance(TOLERANCE), progress);
    }
}
