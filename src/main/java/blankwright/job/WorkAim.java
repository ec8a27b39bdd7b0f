package blankwright.job;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import blankwright.metal.Hardening;
import blankwright.num.Sentence;
import blankwright.project.Aim;
import blankwright.project.Handwork;
import blankwright.project.Recipe;
import blankwright.shop.Instruction;
import blankwright.shop.Reach;
import blankwright.shop.ToolWork;
import blankwright.shop.ToolWork.Beyond;
import blankwright.strain.StrainField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What aim {@code work} asks of the flattening of one form, and what came of it. */
final class WorkAim {
    /** A step that promises less of the work than this ends the descent: far below what 0.1 mm on the outline costs. */
    private static final double TOLERANCE = 1e-6;
    /** Stretch that only the wall of the energy has stopped. */
    private static final double NECK = 0.97 * LeastWork.FREE - 1;
    /** Power laws need some hardening; below this the blank no longer changes with it. */
    private static final double LEAST_EXPONENT = 0.01;

    private final Recipe recipe;
    private final Reach reach;

    private WorkAim(Recipe recipe, Reach reach) {
        this.recipe = recipe;
        this.reach = reach;
    }

    /** Empty where the recipe has another aim. */
    static Optional<WorkAim> of(Recipe recipe, TriMesh form) {
        if (recipe.aim() != Aim.WORK) return Optional.empty();
        return Optional.of(new WorkAim(recipe, Reach.of(form, recipe.handwork().tools(), recipe.handwork().lean())));
    }

    FlattenOptions options() {
        return options(1, 1);
    }

    /** With another metal: K and yield, and n, of the alloy by a factor each. */
    FlattenOptions options(double stronger, double harder) {
        Hardening law = recipe.metal().orElseThrow().alloy().law();
        Resistance metal = new Resistance(law.young(), stronger * law.yieldStress(), stronger * law.strength(),
                Math.min(1, Math.max(LEAST_EXPONENT, harder * law.n())), recipe.metal().get().alloy().sheet().r());
        boolean plain = recipe.handwork().tools().isEmpty() && recipe.handwork().lean() == 0;
        return FlattenOptions.DEFAULT.withTolerance(TOLERANCE)
                .withWork(plain ? LeastWork.of(metal) : LeastWork.of(metal, reach.stretchCosts(), reach.shrinkCosts()));
    }

    /** Which tool does what; empty where none are listed. */
    Optional<ToolWork> tools(StrainField strain) {
        return recipe.handwork().tools().isEmpty() ? Optional.empty() : Optional.of(ToolWork.of(strain, reach));
    }

    /** Triangles where strain is left to no tool. */
    int[] beyond(StrainField strain) {
        return recipe.handwork().tools().isEmpty() ? new int[0] : ToolWork.beyond(strain, reach);
    }

    /**
     * What no tool gets to, and what the end of a lean could not do away with.
     *
     * @param piece how the blank is called, e.g. {@code of piece 2}; empty where it is the only one
     */
    List<Finding> findings(StrainField strain, String piece) {
        List<Finding> found = new ArrayList<>();
        tools(strain).ifPresent(work -> {
            work.shrinkBeyond().ifPresent(b -> found.add(beyond("shrinking", b, piece)));
            work.stretchBeyond().ifPresent(b -> found.add(beyond("stretching", b, piece)));
        });
        Handwork hands = recipe.handwork();
        if (Math.abs(hands.lean()) == 1) {
            Instruction unwanted = hands.lean() > 0 ? Instruction.SHRINK : Instruction.STRETCH;
            ToolWork.anywhere(strain, reach, unwanted).ifPresent(b -> found.add(new Finding(Finding.Kind.LEAN_NOT_MET, b.triangles(),
                    Sentence.say("lean all %s leaves %s of up to %.1f %%%s at %s on the form, %s in from the edge.",
                            hands.lean() > 0 ? "stretching" : "shrinking", hands.lean() > 0 ? "shrinking" : "stretching", 100 * Math.abs(b.largest()),
                            piece.isEmpty() ? "" : " " + piece, place(b), Sentence.length(b.distance(), 0)))));
        }
        ToolWork.from(strain, reach, Instruction.STRETCH, NECK).ifPresent(b -> found.add(new Finding(Finding.Kind.NECKED, b.triangles(),
                Sentence.say("the least work draws the metal%s out by %.0f %% at %s on the form, %s in all, as far as the program lets"
                                + " it: beyond the %.0f %% that it stretches evenly a neck costs less. This is no blank to work by; lean less towards"
                                + " stretching, or divide the panel there.", piece.isEmpty() ? "" : " " + piece, 100 * b.largest(), place(b),
                        Sentence.area(b.area(), 1), 100 * Math.expm1(recipe.metal().orElseThrow().alloy().law().uniform())))));
        return found;
    }

    private static Finding beyond(String what, Beyond b, String piece) {
        return new Finding(Finding.Kind.BEYOND_REACH, b.triangles(), Sentence.say(
                "no tool listed gets to %s of up to %.1f %%%s: worst at %s on the form, %s in from the edge, %s in all; "
                        + "add a tool that reaches so far, or a seam from there to the edge.",
                what, 100 * Math.abs(b.largest()), piece.isEmpty() ? "" : " " + piece, place(b), Sentence.length(b.distance(), 0),
                Sentence.area(b.area(), 0)));
    }

    private static Sentence.Measure place(Beyond b) {
        return Sentence.place(0, b.at().x(), b.at().y(), b.at().z());
    }
}
