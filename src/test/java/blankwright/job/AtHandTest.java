package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.Strips;
import blankwright.mesh.Finding;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.project.Aim;
import blankwright.project.Clamps;
import blankwright.project.Face;
import blankwright.project.Handwork;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.shape.ConeFrustum;
import blankwright.shape.Cylinder;
import blankwright.shape.TorusSection;
import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.LinkedHashMap;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is taken over from one run to the next changes nothing; what is shown while a hand drags is near it. */
class AtHandTest {
    private static final Tool JAW = new Tool("jaw shrinker", Instruction.SHRINK, 40, 1);

    /** From rim to rim over the crown of the mudguard. */
    private static final DrawnSeam ACROSS = new DrawnSeam(List.of(new DrawnSeam.Point(165.4, 286.5, -84.6),
            new DrawnSeam.Point(165.4, 286.5, 84.6)));

    @TempDir Path temp;

    private Path file(TriMesh mesh) throws IOException {
        Path file = temp.resolve("panel.obj");
        try (OutputStream out = Files.newOutputStream(file)) {
            MeshWriter.write(mesh, Format.OBJ, out);
        }
        return file;
    }

    private static Recipe panel() {
        return Recipe.ofMesh("panel", "panel.obj", Optional.of(LengthUnit.MM)).withMetal(Optional.of(Metal.shipped("3003-O")))
                .withSheet(OptionalDouble.of(1.2), Face.OUTSIDE);
    }

    private static TriMesh mudguard() {
        return TorusSection.grid(Math.toRadians(120), Math.toRadians(140), 300, 90, 400);
    }

    private static UnaryOperator<Recipe> lean(double lean) {
        return r -> r.withAim(Aim.WORK).withHandwork(r.handwork().withLean(lean));
    }

    /** Everything a hand can decide, one after another, each run with drafts before it, against the run of the command line. */
    @Test
    void everyChangeGivesTheBitsOfARunByItself() throws Exception {
        Given given = Given.file(file(mudguard()));
        Map<String, UnaryOperator<Recipe>> changes = new LinkedHashMap<>();
        changes.put("nothing", r -> r);
        changes.put("the name", r -> r.withName("other").withNotes("file the edge"));
        changes.put("thickness", r -> r.withSheet(OptionalDouble.of(2), Face.OUTSIDE));
        changes.put("face", r -> r.withSheet(OptionalDouble.of(2), Face.INSIDE));
        changes.put("the middle", r -> r.withSheet(OptionalDouble.of(2), Face.MIDDLE));
        changes.put("thickness of the middle", r -> r.withSheet(OptionalDouble.of(1), Face.MIDDLE));
        changes.put("metal", r -> r.withMetal(Optional.of(Metal.shipped("5052-H32"))));
        changes.put("aim", r -> r.withAim(Aim.WORK));
        changes.put("lean", lean(0.2));
        changes.put("metal under aim work", r -> r.withMetal(Optional.of(Metal.shipped("3003-O"))));
        changes.put("tools", r -> r.withHandwork(new Handwork(0.2, List.of(JAW), Optional.empty())));
        changes.put("stations", r -> r.withStations(70));
        changes.put("trim", r -> r.withTrim(OptionalDouble.of(12)));
        changes.put("held", r -> r.withClamps(Optional.of(Clamps.RIMS)));
        changes.put("not held", r -> r.withClamps(Optional.empty()).withAim(Aim.EVEN).withHandwork(Handwork.ANY));
        changes.put("seam", r -> r.withSeams(List.of(ACROSS)));
        changes.put("thickness with a seam", r -> r.withSheet(OptionalDouble.of(3), Face.OUTSIDE));
        changes.put("no seam", r -> r.withSeams(List.of()));
        changes.put("sensitivity", r -> r.withSensitivity(true));
        AtHand hand = new AtHand(given);
        Recipe now = panel();
        for (var change : changes.entrySet()) {
            Recipe next = change.getValue().apply(now);
            hand.draft(now.withSheet(OptionalDouble.of(5), Face.OUTSIDE), Progress.NONE);
            hand.draft(lean(-0.4).apply(now), Progress.NONE);
            hand.draft(next, Progress.NONE);
            same(change.getKey(), FlattenJob.run(next, given, Progress.NONE), hand.whole(next, Progress.NONE));
            now = next;
        }
    }

    private static void same(String what, Result meant, Result is) {
        assertEquals(meant.recipe(), is.recipe(), what);
        assertEquals(meant.findings(), is.findings(), what);
        assertEquals(meant.input(), is.input(), what);
        assertEquals(meant.pieces().size(), is.pieces().size(), what);
        for (int i = 0; i < meant.pieces().size(); i++) {
            Piece a = meant.pieces().get(i), b = is.pieces().get(i);
            assertArrayEquals(a.map().form().positions(), b.map().form().positions(), what);
            assertArrayEquals(a.map().positions(), b.map().positions(), what);
            assertEquals(zones(a), zones(b), what);
            assertEquals(a.demand().map(d -> d.margin(0)), b.demand().map(d -> d.margin(0)), what);
            assertEquals(a.buckled().map(x -> x.blank().loadFactor()), b.buckled().map(x -> x.blank().loadFactor()), what);
            assertEquals(a.sensitivity(), b.sensitivity(), what);
            assertEquals(meant.work(a), is.work(b), what);
        }
        assertEquals(Packet.drawing(meant).entities(), Packet.drawing(is).entities(), what);
    }

    /** In words, without the lines, which are drawn. */
    private static String zones(Piece piece) {
        return piece.zones().list().toString().replaceAll("TapeLine@\\w+", "line");
    }

    /** A tube that must be opened, and a second part beside it. */
    @Test
    void partsAndOpenedFormsGiveTheirBitsToo() throws Exception {
        TriMesh tube = Forms.tube(80, 200, 24, 12), plate = Forms.plate(150, 60, 6, 4);
        double[] xyz = new double[3 * (tube.vertexCount() + plate.vertexCount())];
        System.arraycopy(tube.positions(), 0, xyz, 0, 3 * tube.vertexCount());
        for (int v = 0; v < plate.vertexCount(); v++) {
            xyz[3 * (tube.vertexCount() + v)] = plate.x(v) + 400;
            xyz[3 * (tube.vertexCount() + v) + 1] = plate.y(v);
            xyz[3 * (tube.vertexCount() + v) + 2] = plate.z(v) + 0.001 * plate.x(v) * plate.x(v);
        }
        int[] tri = new int[3 * (tube.triangleCount() + plate.triangleCount())];
        System.arraycopy(tube.corners(), 0, tri, 0, 3 * tube.triangleCount());
        for (int i = 0; i < 3 * plate.triangleCount(); i++) tri[3 * tube.triangleCount() + i] = plate.corners()[i] + tube.vertexCount();
        Given given = Given.file(file(TriMesh.of(xyz, tri)));
        AtHand hand = new AtHand(given);
        Recipe one = panel(), other = one.withSheet(OptionalDouble.of(4), Face.OUTSIDE);
        same("first", FlattenJob.run(one, given, Progress.NONE), hand.whole(one, Progress.NONE));
        Draft draft = hand.draft(other, Progress.NONE).orElseThrow();
        Result whole = hand.whole(other, Progress.NONE);
        same("thicker", FlattenJob.run(other, given, Progress.NONE), whole);
        assertEquals(2, draft.pieces().size());
        for (int i = 0; i < 2; i++) {
            assertEquals(whole.pieces().get(i).map().size()[0], draft.pieces().get(i).map().size()[0], 0.05);
            assertEquals(whole.pieces().get(i).map().size()[1], draft.pieces().get(i).map().size()[1], 0.05);
        }
    }

    @Test
    void aFileWrittenAnewIsReadAnew() throws Exception {
        Given given = Given.file(file(mudguard()));
        AtHand hand = new AtHand(given);
        long before = hand.whole(panel(), Progress.NONE).input().triangles();
        file(TorusSection.grid(Math.toRadians(120), Math.toRadians(140), 300, 90, 200));
        assertEquals(Optional.empty(), hand.draft(panel(), Progress.NONE), "nothing is known of it yet");
        assertTrue(hand.whole(panel(), Progress.NONE).input().triangles() < before);
    }

    /** The middle of a sheet bent round with its outside at radius r lies at r - t/2: its blank is so much shorter, at once. */
    @Test
    void aDraggedThicknessMatchesClosedForm() throws Exception {
        Recipe recipe = Recipe.of("arc", new Cylinder(150, 260, 2)).withChord(0.05).withSheet(OptionalDouble.of(1), Face.OUTSIDE);
        AtHand hand = new AtHand(Given.file(Path.of("arc.yaml")));
        hand.whole(recipe, Progress.NONE);
        for (double t : new double[] {2, 4, 9, 0.5}) {
            Draft draft = hand.draft(recipe.withSheet(OptionalDouble.of(t), Face.OUTSIDE), Progress.NONE).orElseThrow();
            double[] size = draft.pieces().get(0).map().size();
            assertEquals(2 * (150 - t / 2), Math.max(size[0], size[1]), 0.15, t + " mm thick");
            assertEquals(t, draft.recipe().thickness().getAsDouble());
        }
    }

    @Test
    void whatLeavesTheLayoutAloneIsExact() throws Exception {
        AtHand hand = new AtHand(Given.file(file(mudguard())));
        Result whole = hand.whole(panel(), Progress.NONE);
        Draft draft = hand.draft(panel().withMetal(Optional.of(Metal.shipped("5052-H32"))).withStations(60), Progress.NONE).orElseThrow();
        assertFalse(draft.roughly());
        assertArrayEquals(whole.pieces().get(0).map().positions(), draft.pieces().get(0).map().positions());
        assertEquals(whole.pieces().get(0).outline(), length(draft.pieces().get(0).rims().get(0)), 1e-9);
        assertTrue(hand.draft(panel().withSheet(OptionalDouble.of(3), Face.OUTSIDE), Progress.NONE).orElseThrow().roughly());
    }

    private static double length(double[] ring) {
        double sum = 0;
        for (int i = 0; i < ring.length; i += 2) {
            int j = (i + 2) % ring.length;
            sum += Math.hypot(ring[j] - ring[i], ring[j + 1] - ring[i + 1]);
        }
        return sum;
    }

    @Test
    void whatCannotBeFollowedIsLeftToTheWhole() throws Exception {
        AtHand hand = new AtHand(Given.file(file(mudguard())));
        assertEquals(Optional.empty(), hand.draft(panel(), Progress.NONE), "nothing at hand yet");
        hand.whole(panel(), Progress.NONE);
        assertEquals(Optional.empty(), hand.draft(panel().withSeams(List.of(ACROSS)), Progress.NONE));
        assertEquals(Optional.empty(), hand.draft(panel().withMetal(Optional.empty()).withAim(Aim.WORK), Progress.NONE));
        Recipe inches = Recipe.ofMesh("panel", "panel.obj", Optional.of(LengthUnit.IN));
        assertEquals(Optional.empty(), hand.draft(inches, Progress.NONE));
    }

    /** From 20,000 triangles on: the draft of another form has the blank of that form, of a cone its sector to the closed form, at once. */
    @Test
    void otherMeasuresOfALargeFormulaMatchClosedForm() throws Exception {
        double sweep = Math.toRadians(100);
        Recipe recipe = Recipe.of("cone", new ConeFrustum(300, 120, 240, sweep)).withChord(0.0015);
        AtHand hand = new AtHand(Given.file(Path.of("cone.yaml")));
        Result whole = hand.whole(recipe, Progress.NONE);
        assertTrue(whole.pieces().get(0).map().form().triangleCount() > Coarse.WORTH);
        for (double bottom : new double[] {320, 400, 260}) {
            Recipe other = recipe.withSource(new Source.OfPanel(new ConeFrustum(bottom, 120, 240, sweep)));
            Draft draft = hand.draft(other, Progress.NONE).orElseThrow();
            assertTrue(draft.coarse() && draft.arrived() && draft.roughly());
            assertEquals(other, draft.recipe());
            double slant = Math.hypot(bottom - 120, 240), area = sweep / 2 * (bottom + 120) * slant;
            assertEquals(area, draft.pieces().get(0).map().area(), 2e-3 * area, "area of the frustum's skin, angle times mean radius times slant");
            assertTrue(draft.pieces().get(0).map().form().triangleCount() < Coarse.WORTH / 2);
        }
        same("as if nothing had been dragged", FlattenJob.run(recipe, Given.file(Path.of("cone.yaml")), Progress.NONE), hand.whole(recipe, Progress.NONE));
    }

    /** A seam over a large mesh: the draft is in as many pieces as the whole, about where the whole puts them. */
    @Test
    void aSeamOverALargeMeshIsShownInFewTriangles() throws Exception {
        Given given = Given.file(file(TorusSection.grid(Math.toRadians(120), Math.toRadians(140), 300, 90, 24_000)));
        for (UnaryOperator<Recipe> aim : List.<UnaryOperator<Recipe>>of(r -> r, lean(0.3))) {
            AtHand hand = new AtHand(given);
            Recipe plain = aim.apply(panel()), cut = plain.withSeams(List.of(ACROSS));
            hand.whole(plain, Progress.NONE);
            Draft draft = hand.draft(cut, Progress.NONE).orElseThrow();
            assertTrue(draft.coarse());
            Result whole = hand.whole(cut, Progress.NONE);
            same("seam", FlattenJob.run(cut, given, Progress.NONE), whole);
            assertEquals(2, draft.pieces().size());
            for (int i = 0; i < 2; i++) {
                double[] meant = whole.pieces().get(i).map().size(), is = draft.pieces().get(i).map().size();
                for (int k = 0; k < 2; k++) assertEquals(meant[k], is[k], 0.02 * meant[k] + 5, aim.apply(panel()).aim() + " piece " + i);
            }
            assertTrue(hand.draft(plain, Progress.NONE).orElseThrow().coarse(), "sewn up again");
            Recipe nowhere = plain.withSeams(List.of(new DrawnSeam(List.of(new DrawnSeam.Point(0, 0, 900), new DrawnSeam.Point(0, 50, 900)))));
            assertEquals(Optional.empty(), hand.draft(nowhere, Progress.NONE), "the whole says why");
        }
    }

    /** The seams tried to cure a blank that covers itself leave nothing that a later run would take for its own. */
    @Test
    void aProposalLeavesNothingBehind() throws Exception {
        Given given = Given.file(file(Strips.ring(500, 80, 320, 63, 12)));
        Recipe plain = Recipe.ofMesh("panel", "panel.obj", Optional.of(LengthUnit.MM));
        AtHand hand = new AtHand(given);
        Result covered = hand.whole(plain, Progress.NONE);
        same("covered", FlattenJob.run(plain, given, Progress.NONE), covered);
        Recipe cured = covered.proposal().orElseThrow().taken().recipe();
        same("cured", FlattenJob.run(cured, given, Progress.NONE), hand.whole(cured, Progress.NONE));
        same("covered again", covered, hand.whole(plain, Progress.NONE));
        assertTrue(covered.findings().stream().anyMatch(f -> f.kind() == Finding.Kind.SEAM_PROPOSED));
    }
}
