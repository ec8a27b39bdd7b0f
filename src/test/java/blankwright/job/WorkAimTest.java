package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Finding;
import blankwright.num.Progress;
import blankwright.project.Aim;
import blankwright.project.Handwork;
import blankwright.project.Metal;
import blankwright.project.Face;
import blankwright.project.Recipe;
import blankwright.shape.CrownedPanel;
import blankwright.shape.FlangeStrip;
import blankwright.shape.Panel;
import blankwright.shape.Saddle;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shape.TwistedPanel;
import blankwright.shop.Instruction;
import blankwright.shop.Reach;
import blankwright.shop.Tool;
import blankwright.shop.ToolWork;
import blankwright.strain.StrainField;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class WorkAimTest {
    private static final Tool JAW = new Tool("jaw shrinker", Instruction.SHRINK, 25, 1);
    private static final Tool WHEEL = new Tool("wheel", Instruction.STRETCH, Double.POSITIVE_INFINITY, 1.5);

    private static Recipe dish() {
        return Recipe.of("dish", new SphericalCap(400, Math.toRadians(22))).withChord(0.3).withMetal(Optional.of(Metal.shipped("3003-O")))
                .withSheet(OptionalDouble.of(1.6), Face.MIDDLE).withAim(Aim.WORK);
    }

    private static Result run(Recipe recipe) throws Refusal {
        Result result = FlattenJob.run(recipe, Given.file(Path.of("dish.yaml")), Progress.NONE);
        assertTrue(result.pieces().get(0).converged());
        return result;
    }

    private static Recipe with(double lean, Tool... tools) {
        return dish().withHandwork(new Handwork(lean, List.of(tools), Optional.empty()));
    }

    private static List<Finding> of(Result result, Finding.Kind kind) {
        return result.findings().stream().filter(f -> f.kind() == kind).toList();
    }

    private static double work(Result result) {
        return result.work(result.pieces().get(0));
    }

    @Test
    void takesLessWorkThanTheEvenBlankInProportionToTheThickness() throws Refusal {
        double even = work(run(dish().withAim(Aim.EVEN))), least = work(run(dish()));
        assertTrue(least < 0.99 * even, least + " J, even " + even + " J");
        double thick = work(run(dish().withSheet(OptionalDouble.of(3.2), Face.MIDDLE)));
        assertEquals(2 * least, thick, 1e-9 * thick);
        assertTrue(Double.isNaN(run(dish().withSheet(OptionalDouble.empty(), Face.MIDDLE)).work(run(dish()).pieces().get(0))));
    }

    @Test
    void atTheEndsTheOtherStrainIsGone() throws Refusal {
        Result stretching = run(with(1)), shrinking = run(with(-1));
        assertTrue(stretching.pieces().get(0).strain().shrinkMax() < 0.002);
        assertTrue(shrinking.pieces().get(0).strain().stretchMax() < 0.002);
        assertEquals(List.of(), of(stretching, Finding.Kind.LEAN_NOT_MET));
        assertTrue(work(run(with(0))) < Math.min(work(stretching), work(shrinking)));
    }

    /** The other strain is below 0.2 % on every kind of panel, or it is said how much of it is left. */
    @Test
    void endsOfTheLeanOnManyForms() throws Refusal {
        List<Panel> panels = List.of(new TorusSection(330, 95, Math.toRadians(60), Math.toRadians(120), 0), new Saddle(250, 120),
                new TwistedPanel(400, 250, 60), new CrownedPanel(500, 400, 25, 15, CrownedPanel.Step.NONE, List.of()),
                new FlangeStrip(120, Math.toRadians(60), 40, 20, 4, Math.PI / 2, FlangeStrip.Edge.CONVEX),
                new FlangeStrip(200, Math.toRadians(60), 20, 20, 4, Math.PI / 2, FlangeStrip.Edge.CONCAVE));
        for (Panel panel : panels)
            for (double lean : new double[] {-1, 1}) {
                Result result = run(Recipe.of("panel", panel).withChord(1).withMetal(Optional.of(Metal.shipped("3003-O")))
                        .withSheet(OptionalDouble.of(1.6), Face.MIDDLE).withAim(Aim.WORK).withHandwork(new Handwork(lean, List.of(), Optional.empty())));
                StrainField strain = result.pieces().get(0).strain();
                double left = lean < 0 ? strain.stretchMax() : strain.shrinkMax(), done = lean < 0 ? strain.shrinkMax() : strain.stretchMax();
                List<Finding> said = of(result, Finding.Kind.LEAN_NOT_MET);
                assertEquals(left > 0.002, !said.isEmpty(), panel + " leant " + lean + ": " + left);
                if (said.isEmpty()) assertTrue(done > 5 * left, panel + " leant " + lean + ": " + done + " and " + left);
                else assertTrue(said.get(0).text().contains(String.format(Locale.ROOT, "of up to %.1f %% at (", 100 * left)), said.get(0).text());
                assertTrue(left < 0.004, panel + " leant " + lean + ": " + left);
            }
    }

    /** A deep bowl only stretched: the work has no even answer, and the program says where it gave way. A shallow one has. */
    @Test
    void aNeckIsSaidWithItsPlace() throws Refusal {
        Recipe deep = Recipe.of("bowl", new SphericalCap(150, Math.toRadians(75))).withChord(1).withMetal(Optional.of(Metal.shipped("3003-O")))
                .withSheet(OptionalDouble.of(1.6), Face.MIDDLE).withAim(Aim.WORK).withHandwork(new Handwork(1, List.of(), Optional.empty()));
        List<Finding> found = of(run(deep), Finding.Kind.NECKED);
        assertEquals(1, found.size());
        assertTrue(found.get(0).text().matches("the least work draws the metal out by \\d+ % at \\(-?\\d+, -?\\d+, -?\\d+\\) mm on the form, .* cm2 in all, as far as"
                + " the program lets it: beyond the 26 % that it stretches evenly a neck costs less\\. .*"), found.get(0).text());
        assertEquals(List.of(), of(run(with(1)), Finding.Kind.NECKED));
        assertEquals(List.of(), of(run(deep.withHandwork(new Handwork(-1, List.of(), Optional.empty()))), Finding.Kind.NECKED));
    }

    @Test
    void shrinkingStaysInTheThroat() throws Refusal {
        Result result = run(with(0, JAW, WHEEL));
        Piece piece = result.pieces().get(0);
        Reach reach = Reach.of(piece.map().form(), List.of(JAW, WHEEL), 0);
        double within = 0, beyond = 0;
        for (int t = 0; t < piece.strain().triangleCount(); t++) {
            double shrink = Math.max(0, -piece.strain().engineering2(t));
            if (reach.distance(t) <= 25) within = Math.max(within, shrink);
            else beyond = Math.max(beyond, shrink);
        }
        assertTrue(within > 0.005, "the shrinker has something to do: " + within);
        assertTrue(beyond < 0.002, "beyond its throat " + beyond);
        assertEquals(List.of(), of(result, Finding.Kind.BEYOND_REACH));
        ToolWork.Share jaw = piece.tools().orElseThrow().shares().get(0);
        assertEquals(-within, jaw.largest(), 0);
        assertTrue(jaw.area() > 0);
    }

    /** A bowl cannot be had by shrinking its rim alone. */
    @Test
    void whatNoToolGetsToIsSaidWithItsPlace() throws Refusal {
        Result result = run(with(0, JAW));
        List<Finding> found = of(result, Finding.Kind.BEYOND_REACH);
        assertFalse(found.isEmpty());
        assertTrue(found.get(0).text().matches("no tool listed gets to (shrinking|stretching) of up to \\d+\\.\\d %: worst at \\(-?\\d+, -?\\d+, -?\\d+\\) mm"
                + " on the form, \\d+ mm in from the edge, .* cm2 in all; add a tool .*seam from there to the edge\\."), found.get(0).text());
        assertTrue(run(with(1, JAW)).findings().stream().anyMatch(f -> f.kind() == Finding.Kind.LEAN_NOT_MET));
    }

    /** A seam across the dish lets the shrinker in; what is told of it is what its own recipe gives, and the next tool makes it needless. */
    @Test
    void whatNoToolGetsToIsGivenToASeamOrToTheNextTool() throws Refusal {
        Result result = run(with(0, JAW));
        Proposal proposal = result.proposal().orElseThrow();
        assertEquals(Proposal.Reason.REACH, proposal.reason());
        assertEquals(List.of(1), proposal.numbers());
        assertEquals(2 * 400 * Math.toRadians(22), proposal.lines().get(0).length(), 10, "the way over the middle of the cap, 2 R a");
        assertEquals(2, proposal.taken().pieces().size());
        Result taken = run(proposal.taken().recipe());
        assertTrue(taken.beyondReach() < 0.7 * result.beyondReach(), taken.beyondReach() + " of " + result.beyondReach());
        String text = of(result, Finding.Kind.SEAM_PROPOSED).get(0).text();
        assertTrue(text.startsWith("a seam would let the tools in: " + proposal.lines().get(0).words() + "; with it "), text);
        assertTrue(text.contains(String.format(java.util.Locale.ROOT, "with it %.0f %% of what is out of reach now is left",
                100 * taken.beyondReach() / result.beyondReach())), text);
        Result both = run(with(0, JAW, WHEEL));
        assertEquals(0, both.beyondReach(), 0);
        assertEquals(Optional.empty(), both.proposal());
    }

    /** Elastic below yield, so the metal's own stiffness has a say, but a small one where the strains are far beyond it. */
    @Test
    void thicknessDoesNotMoveTheBlank() throws Refusal {
        Result one = run(dish()), two = run(dish().withSheet(OptionalDouble.of(0.8), Face.MIDDLE));
        for (int v = 0; v < one.pieces().get(0).map().form().vertexCount(); v++)
            assertEquals(one.pieces().get(0).map().u(v), two.pieces().get(0).map().u(v), 0);
    }
}
