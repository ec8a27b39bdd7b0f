package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.metal.Springback;
import blankwright.num.LengthUnit;
import blankwright.num.Sentence;
import blankwright.project.Recipe;
import blankwright.shop.FormingWork;
import blankwright.shop.RollMark;
import blankwright.shop.ToolWork;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A panel laid flat, with everything found out about it.
 *
 * @param name of the input, e.g. {@code nose.stl}
 * @param folder that a mesh file named in the recipe is relative to
 * @param units of the input's numbers
 * @param input the mesh as it came
 * @param reduction what was thinned out of it, empty where nothing was
 * @param findings what was odd and what was done, in the order of finding
 * @param pieces of the blank, largest form first; at least one
 * @param seconds each phase took
 * @param proposal where a piece covers itself: seams that cure it; empty where none is needed or none was found
 */
public record Result(Recipe recipe, String name, Path folder, LengthUnit units, Input input, Optional<Reduction> reduction, List<Finding> findings,
                     List<Piece> pieces, Seconds seconds, Optional<Proposal> proposal) {
    public Result {
        findings = List.copyOf(findings);
        pieces = List.copyOf(pieces);
    }

    /**
     * The mesh as it came.
     *
     * @param vertices as in the file
     * @param triangles as in the file, larger polygons cut up
     * @param area of the mended form without the crumbs left out, mm²
     * @param dx with dy and dz the sides of the box round it, mm
     */
    public record Input(long vertices, long triangles, double area, double dx, double dy, double dz) {
        /** Longest side of the box, mm. */
        public double across() {
            return Math.max(dx, Math.max(dy, dz));
        }
    }

    /**
     * A dense mesh thinned out.
     *
     * @param before triangles of the mended mesh
     * @param after triangles that were laid flat
     * @param within the distance allowed, mm
     * @param deviation the largest distance found, mm
     */
    public record Reduction(long before, long after, double within, double deviation) { }

    /** Wall time of the phases; depends on the machine, not on the input alone. */
    public record Seconds(double read, double prepare, double flatten) { }

    /** Work that takes the blank of a piece to its form, J; NaN where metal or thickness are not known. */
    public double work(Piece piece) {
        if (recipe.metal().isEmpty() || recipe.thickness().isEmpty()) return Double.NaN;
        return FormingWork.joules(piece.strain(), recipe.metal().get().alloy(), recipe.thickness().getAsDouble());
    }

    /** Where a piece is rolled, and what to set the roll for where metal and thickness are known. */
    public List<RollMark> rolls(Piece piece) {
        Optional<Springback> sheet = recipe.thickness().isEmpty() ? Optional.empty()
                : recipe.metal().map(m -> Springback.of(m.alloy(), recipe.thickness().getAsDouble()));
        return RollMark.of(piece.rolled(), recipe.thickness(), sheet);
    }

    /** Strain times area that no tool listed gets to, mm²; 0 where none are listed. */
    double beyondReach() {
        return pieces.stream().flatMap(p -> p.tools().stream()).mapToDouble(ToolWork::amountBeyond).sum();
    }

    /** With more findings after the others. */
    Result withFindings(List<Finding> more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(more);
        return new Result(recipe, name, folder, units, input, reduction, all, pieces, seconds, proposal);
    }

    /** The same blank under a recipe that differs only in its words. */
    public Result with(Recipe worded) {
        return new Result(worded, name, folder, units, input, reduction, findings, pieces, seconds, proposal.map(p -> p.with(worded)));
    }

    /** The same, its mesh file named from another folder. */
    public Result seenFrom(Path other) {
        return new Result(recipe, name, other, units, input, reduction, findings, pieces, seconds,
                proposal.map(p -> new Proposal(p.taken().seenFrom(other), p.numbers(), p.reason())));
    }

    Result withProposal(Proposal cure) {
        Result told = withFindings(List.of(cure.finding(this)));
        return new Result(recipe, name, folder, units, input, reduction, told.findings(), pieces, seconds, Optional.of(cure));
    }

    /** {@code converged}, or {@code stopped: REASON} of the first piece that did not. */
    public String outcome() {
        return pieces.stream().filter(p -> !p.converged()).findFirst().map(p -> "stopped: " + Warnings.reason(p.outcome())).orElse("converged");
    }

    /** Newton steps of all pieces together. */
    public int steps() {
        return pieces.stream().mapToInt(p -> p.outcome().steps()).sum();
    }

    /** Why the blank must not be cut as it is, one sentence each; empty where it may be. */
    public List<String> warnings() {
        return warnings(Sentence.FILES);
    }

    /** The same, measures as one reader has them. */
    public List<String> warnings(Sentence.Units units) {
        return Warnings.of(pieces).stream().map(sentence -> sentence.text(units)).toList();
    }

    /** What piece i is called on paper before the number of a zone: empty where there is only one, else {@code 1-}, {@code 2-} ... */
    public String pieceName(int i) {
        return pieces.size() == 1 ? "" : i + 1 + "-";
    }
}
