package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import blankwright.mesh.reduce.Reduce;
import blankwright.mesh.reduce.Reduced;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.project.Recipe;
import blankwright.project.Source;
import java.util.Optional;

/** The mended mesh, thinned out where the recipe asks for it or it is far denser than the work needs. */
record Thinning(TriMesh mesh, Optional<Result.Reduction> reduction, Optional<Finding> finding) {
    /** Triangles beyond which a mesh is thinned out unasked: a million on a panel of a square metre are 1.5 mm wide. */
    static final int DENSE = 1_000_000;
    /** Then so many are enough: 2.8 mm wide on that panel, and seconds to lay flat. */
    static final int ENOUGH = 300_000;
    /** Then within this, mm: half the chord by which formulas are drawn, a tenth of a common sheet, less than a tape shows. */
    static final double UNASKED = 0.1;

    static Thinning of(Recipe recipe, TriMesh mesh, Progress progress) {
        int before = mesh.triangleCount();
        boolean asked = recipe.detail().isPresent();
        double within = recipe.detail().orElse(UNASKED);
        if (!wanted(recipe, before)) return as(mesh);
        Reduced reduced = Reduce.of(mesh, within, asked ? 0 : ENOUGH, progress);
        int after = reduced.mesh().triangleCount();
        if (after == before) return as(mesh);
        Sentence words = Sentence.say("%,d triangles were thinned out to %,d%s; the surface strays %s at most from"
                + " that given (%s was allowed, along the rims too)", before, after, asked ? "" : ", enough for the work",
                Sentence.length(reduced.deviation(), 4), Sentence.exactly(within));
        return new Thinning(reduced.mesh(), Optional.of(new Result.Reduction(before, after, within, reduced.deviation())),
                Optional.of(new Finding(Finding.Kind.REDUCED, before - after, words)));
    }

    /** Whether a mesh of so many triangles is to be thinned out. */
    static boolean wanted(Recipe recipe, int triangles) {
        if (recipe.source() instanceof Source.OfPanel) return false;
        return recipe.detail().isPresent() ? recipe.detail().getAsDouble() > 0 : triangles > DENSE;
    }

    private static Thinning as(TriMesh mesh) {
        return new Thinning(mesh, Optional.empty(), Optional.empty());
    }
}
