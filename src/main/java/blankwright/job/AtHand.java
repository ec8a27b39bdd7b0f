package blankwright.job;

import blankwright.flatten.FlattenOptions;
import blankwright.mesh.FlatMap;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.repair.MidSurface;
import blankwright.num.Progress;
import blankwright.project.Aim;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.shop.Layout;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A panel at hand: laid flat again and again while somebody decides how it is to be made.
 *
 * <p>{@link #whole} is {@link FlattenJob#run}, to the last bit, but takes over what the last run read, mended, cut and laid flat where the
 * change does not touch it. {@link #draft} is quick and only for the eye: while a hand drags, and until the whole is there.
 *
 * <p>One whole and one draft may run at the same time, on threads of their own.
 */
public final class AtHand {
    private final Given given;
    private final Kept kept;

    public AtHand(Given given) {
        this(given, new Kept());
    }

    private AtHand(Given given, Kept kept) {
        this.given = given;
        this.kept = kept;
    }

    /** The same panel under a recipe that was saved elsewhere. */
    public AtHand with(Given other) {
        return new AtHand(other, kept);
    }

    /** Everything; as {@link FlattenJob#run}. */
    public Result whole(Recipe recipe, Progress progress) throws Refusal {
        Result result = FlattenJob.run(recipe, given, kept, true, progress);
        boolean mesh = recipe.source() instanceof Source.OfMesh && kept.layout().filter(last -> Coarse.worthWhile(recipe, last.triangles())).isPresent();
        if (mesh) kept.mended(recipe, given).ifPresent(kept.coarse()::ahead);
        return result;
    }

    /**
     * The last whole's blank as this recipe changes it: with another thickness, face, metal, aim, lean or tools, triangle by triangle; with
     * other measures or seams in {@link Coarse few triangles}, where the whole has so many that it takes its time. Empty where the whole is
     * as soon there, or nothing can be said of this recipe; then the whole tells why.
     *
     * @throws java.util.concurrent.CancellationException once the progress says it is no longer wanted
     */
    public Optional<Draft> draft(Recipe recipe, Progress progress) {
        Optional<Kept.Layout> before = kept.layout();
        if (before.isEmpty() || recipe.aim() == Aim.WORK && recipe.metal().isEmpty()) return Optional.empty();
        Kept.LayoutKey key = Kept.LayoutKey.of(recipe, given);
        Kept.Layout last = before.get();
        if (!key.parts().cutLike(last.key().parts())) {
            return Coarse.worthWhile(recipe, last.triangles()) ? kept.coarse().draft(recipe, given, progress) : Optional.empty();
        }
        boolean same = key.equals(last.key());
        List<FlatMap> maps = new ArrayList<>();
        for (int i = 0; i < last.parts().size(); i++) {
            LaidFlat flat = last.parts().get(i);
            if (same) {
                maps.add(flat.outcome().map());
            } else {
                if (flat.follower().isEmpty()) return Optional.empty();
                Part part = last.parted().parts().get(i);
                TriMesh form = key.parts().equals(last.key().parts()) ? part.opened().mesh() : placed(part, key.parts().toMiddle());
                FlattenOptions options = WorkAim.of(recipe, form).map(WorkAim::options).orElse(FlattenOptions.DEFAULT);
                maps.add(flat.follower().get().to(form, options, progress));
            }
        }
        boolean arrived = same || last.parts().stream().allMatch(flat -> flat.follower().orElseThrow().arrived());
        return Optional.of(new Draft(recipe, pieces(maps, recipe), false, !same, arrived));
    }

    /** Layouts side by side on the sheet, with all that is drawn of them. */
    static List<Draft.Piece> pieces(List<FlatMap> maps, Recipe recipe) {
        List<Draft.Piece> pieces = new ArrayList<>();
        for (FlatMap map : Layout.of(maps, Layout.GAP + 2 * recipe.trim().orElse(0))) {
            RimLoops loops = RimLoops.of(map.form(), EdgeTable.of(map.form()));
            pieces.add(new Draft.Piece(map, VertexStrain.of(StrainField.of(map)), FlattenJob.rims(map, loops)));
        }
        return pieces;
    }

    /** A part opened as it was, on a sheet whose middle lies elsewhere. */
    private static TriMesh placed(Part part, double toMiddle) {
        TriMesh opened = part.opened().mesh();
        double[] from = MidSurface.moved(part.component().mesh(), toMiddle).mesh().positions(), to = new double[3 * opened.vertexCount()];
        for (int v = 0; v < opened.vertexCount(); v++) System.arraycopy(from, 3 * part.opened().inForm(v), to, 3 * v, 3);
        return opened.withPositions(to);
    }
}
