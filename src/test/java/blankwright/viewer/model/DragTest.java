package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.drawing.Layer;
import blankwright.drawing.Paper;
import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Output;
import blankwright.job.Packet;
import blankwright.job.Result;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.Progress;
import blankwright.project.Aim;
import blankwright.project.Face;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.RecipeReader;
import blankwright.project.Source;
import blankwright.shape.SphericalCap;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is shown while a hand drags, and what stays when it lets go. */
class DragTest extends AtABench {
    /** 2000 triangles, developable in no way. */
    private static final String DISH = """
            blankwright-recipe: 1
            name: dish
            panel: {kind: spherical-cap, radius: 300mm, half-angle: 40deg}
            chord: 0.3mm
            alloy: 3003-O
            thickness: 1.2mm
            face: outside
            """;

    private final List<FirstAnswer> answers = new ArrayList<>();
    private Path dish;

    @BeforeEach
    void open() throws Exception {
        bench.firstAnswerProperty().addListener((o, was, is) -> {
            if (is != null) answers.add(is);
        });
        dish = Files.writeString(temp.resolve("dish.yaml"), DISH);
        openedWell(dish);
    }

    private void drag(double mm) {
        bench.change(r -> r.withSheet(OptionalDouble.of(mm), Face.OUTSIDE), "thickness");
    }

    @Test
    void whileAHandDragsTheBlankFollowsAndTheRestWaits() {
        Laid before = bench.laidProperty().get();
        double wide = before.box()[2] - before.box()[0];
        for (double mm : new double[] {2, 4, 6}) {
            drag(mm);
            settle();
            FirstAnswer first = bench.firstAnswerProperty().get();
            assertEquals(mm, first.draft().recipe().thickness().getAsDouble());
            double now = first.box()[2] - first.box()[0];
            assertTrue(now < wide - 0.5, "a thicker sheet has its middle farther in: " + now + " mm, before " + wide);
            wide = now;
            assertSame(before, bench.laidProperty().get());
        }
        bench.letGo();
        settle();
        assertNull(bench.firstAnswerProperty().get());
        Laid after = bench.laidProperty().get();
        assertEquals(6, after.result().recipe().thickness().getAsDouble());
        assertEquals(wide, after.box()[2] - after.box()[0], 0.2);
        bench.undo();
        settle();
        assertEquals(1.2, bench.laidProperty().get().result().recipe().thickness().getAsDouble(), "one drag, one step");
    }

    /** The bits on the screen are those of the command line's run of the recipe saved. */
    @Test
    void afterADragTheResultIsThatOfTheSavedRecipe() throws Exception {
        bench.change(r -> r.withAim(Aim.WORK));
        settle();
        for (int i = 1; i <= 6; i++) {
            double to = 0.05 * i;
            bench.change(r -> r.withHandwork(r.handwork().withLean(to)), "lean");
            if (i % 2 == 0) settle();
        }
        bench.letGo();
        settle();
        drag(1.6);
        bench.letGo();
        settle();
        Path saved = temp.resolve("elsewhere/saved.yaml");
        assertTrue(bench.save(saved), bench.troubleProperty().get());
        Recipe back = RecipeReader.read(saved);
        assertEquals(0.3, back.handwork().lean(), 1e-12);
        Result meant = FlattenJob.run(back, Given.file(saved), Progress.NONE), is = bench.laidProperty().get().result();
        assertArrayEquals(meant.pieces().get(0).map().positions(), is.pieces().get(0).map().positions());
        assertArrayEquals(meant.pieces().get(0).map().form().positions(), is.pieces().get(0).map().form().positions());
        assertEquals(meant.findings(), is.findings());
        assertEquals(Packet.drawing(meant).entities(), bench.laidProperty().get().drawing().entities());
    }

    /** Where only the metal changes the first answer is the answer, colour by colour. */
    @Test
    void firstColoursAgreeWithTheWhole() {
        bench.change(r -> r.withMetal(Optional.of(Metal.shipped("5052-H32"))).withTrim(OptionalDouble.of(8)), "metal");
        settle();
        FirstAnswer first = bench.firstAnswerProperty().get();
        assertFalse(first.draft().roughly());
        bench.letGo();
        settle();
        Skin skin = bench.laidProperty().get().skins().get(0);
        for (MapKind kind : List.of(MapKind.WORK, MapKind.THICKNESS, MapKind.LIMIT, MapKind.CURVATURE)) {
            assertArrayEquals(skin.painting(kind).values(), first.painting(0, kind).values(), kind.words());
            assertArrayEquals(skin.painting(kind).flat(), first.painting(0, kind).flat(), kind.words());
            assertArrayEquals(skin.painting(kind).corners(), first.painting(0, kind).corners(), kind.words());
        }
        for (Layer layer : List.of(Layer.CUT, Layer.TRIM)) assertEquals(lines(bench.laidProperty().get().ink().strokes(), layer),
                lines(first.strokes(), layer));
        Place place = bench.laidProperty().get().onForm(0, 0, 300);
        assertArrayEquals(bench.laidProperty().get().onBlank(place), first.onBlank(place).orElseThrow());
    }

    private static List<List<Double>> lines(List<Ink.Stroke> strokes, Layer layer) {
        return strokes.stream().filter(s -> s.layer() == layer).map(s -> Arrays.stream(s.xy()).boxed().toList()).toList();
    }

    @Test
    void wishesFasterThanAnswersEndWithTheLatest() {
        for (int i = 0; i < 40; i++) drag(1.3 + 0.05 * i);
        settle();
        assertEquals(1.3 + 0.05 * 39, bench.firstAnswerProperty().get().draft().recipe().thickness().getAsDouble());
        assertTrue(answers.size() <= 2, answers.size() + " answers: those between were not wanted any more");
    }

    @Test
    void whatIsTypedIsAnsweredAtOnceAndThenWhole() {
        bench.change(r -> r.withSheet(OptionalDouble.of(3), Face.OUTSIDE));
        settle();
        assertEquals(1, answers.size());
        assertNull(bench.firstAnswerProperty().get());
        assertEquals(3, bench.laidProperty().get().result().recipe().thickness().getAsDouble());
    }

    /** As keys held down do it: each wish stops the whole of the one before. */
    @Test
    void typedFasterThanAnsweredEndsWithTheLatestWhole() {
        for (int i = 0; i < 20; i++) {
            double mm = 1.3 + 0.1 * i;
            bench.change(r -> r.withSheet(OptionalDouble.of(mm), Face.OUTSIDE));
        }
        settle();
        assertNull(bench.firstAnswerProperty().get());
        assertEquals(3.2, bench.laidProperty().get().result().recipe().thickness().getAsDouble(), 1e-12);
    }

    @Test
    void stoppedItShowsWhatWasThere() {
        Laid before = bench.laidProperty().get();
        bench.change(r -> r.withSheet(OptionalDouble.of(3), Face.OUTSIDE));
        bench.runner().stop();
        settle();
        assertSame(before, bench.laidProperty().get());
        assertNull(bench.firstAnswerProperty().get());
        drag(2);
        settle();
        assertNotNull(bench.firstAnswerProperty().get());
    }

    @Test
    void anotherPanelPutsTheDragAside() throws Exception {
        drag(3);
        settle();
        bench.open(Files.writeString(temp.resolve("other.yaml"), DISH.replace("name: dish", "name: other")));
        settle();
        assertNull(bench.firstAnswerProperty().get());
        bench.letGo();
        settle();
        assertEquals("other", bench.laidProperty().get().result().recipe().name());
        assertEquals(1.2, bench.laidProperty().get().result().recipe().thickness().getAsDouble());
    }

    /** Another radius is another form: each answer is a whole one. */
    @Test
    void aMeasureDraggedIsFollowedByTheWhole() {
        double wide = bench.laidProperty().get().box()[2];
        for (double r : new double[] {310, 320}) {
            bench.change(recipe -> recipe.withSource(new Source.OfPanel(new SphericalCap(r, Math.toRadians(40)))), "radius");
            settle();
            assertTrue(bench.laidProperty().get().box()[2] > wide + 5, "the blank grows");
            wide = bench.laidProperty().get().box()[2];
        }
        assertEquals(List.of(), answers);
        bench.letGo();
        settle();
        assertEquals(wide, bench.laidProperty().get().box()[2]);
    }

    /** Seams are cut anew: nothing can be said at once, and the whole follows. */
    @Test
    void aSeamHasNoFirstAnswer() {
        Laid laid = bench.laidProperty().get();
        double middle = (laid.box()[1] + laid.box()[3]) / 2;
        bench.cut(List.of(laid.onBlank(laid.box()[0] + 1, middle, 5).orElseThrow(), laid.onBlank(laid.box()[0] + 60, middle, 5).orElseThrow()), 5);
        settle();
        assertEquals(List.of(), answers);
        assertEquals("", bench.troubleProperty().get());
        List<DrawnSeam> seams = bench.laidProperty().get().result().recipe().seams();
        assertEquals(1, seams.size());
    }

    /** A formula of many triangles: under the hand in few, said to be so, and the whole when it lets go. */
    @Test
    void aMeasureOfALargePanelIsFollowedInFewTriangles() throws Exception {
        bench.open(Files.writeString(temp.resolve("fine.yaml"), DISH.replace("chord: 0.3mm", "chord: 0.009mm")));
        settle();
        Laid before = bench.laidProperty().get();
        assertTrue(before.result().input().triangles() > 20_000, before.result().input().triangles() + " triangles");
        double wide = before.box()[2] - before.box()[0];
        for (double r : new double[] {330, 360}) {
            bench.change(recipe -> recipe.withSource(new Source.OfPanel(new SphericalCap(r, Math.toRadians(40)))), "radius");
            settle();
            FirstAnswer first = bench.firstAnswerProperty().get();
            assertTrue(first.draft().coarse() && first.words().contains("few triangles"), first.words());
            assertEquals(wide * r / 300, first.box()[2] - first.box()[0], 0.01 * wide, "a cap of another radius is the same cap, larger");
            assertEquals(Optional.empty(), first.onBlank(before.onForm(0, 0, 300)));
            assertSame(before, bench.laidProperty().get());
            for (MapKind kind : List.of(MapKind.WORK, MapKind.THICKNESS, MapKind.LIMIT, MapKind.CURVATURE)) {
                bench.mapProperty().set(kind);
                assertTrue(bench.paintings(before).get(0).triangleCount() < 20_000, kind.words());
            }
            assertEquals(before.value(MapKind.CURVATURE, before.onForm(0, 0, 300)), first.painting(0, MapKind.CURVATURE).value(0), 0.5,
                    "what is not known stays as it was");
        }
        bench.letGo();
        settle();
        assertNull(bench.firstAnswerProperty().get());
        assertEquals(wide * 1.2, bench.laidProperty().get().box()[2] - bench.laidProperty().get().box()[0], 0.5);
        bench.undo();
        settle();
        assertEquals(wide, bench.laidProperty().get().box()[2] - bench.laidProperty().get().box()[0], 1e-9);
    }

    /** What is being written is written to its end, whatever is wished meanwhile. */
    @Test
    void aWishStopsNoWriting() {
        bench.takeAway(temp.resolve("packet"), Set.of(Output.DXF, Output.PDF, Output.PNG), Paper.A4);
        drag(2);
        bench.letGo();
        settle();
        assertTrue(Files.isRegularFile(temp.resolve("packet/summary.json")));
        assertEquals(2, bench.laidProperty().get().result().recipe().thickness().getAsDouble());
    }

    /** Files asked for while the hand still drags are those of the whole blank. */
    @Test
    void filesWaitForTheWhole() throws Exception {
        drag(4);
        settle();
        bench.takeAway(temp.resolve("packet"), Set.of(Output.DXF), Paper.A4);
        settle();
        settle();
        assertEquals(4, bench.laidProperty().get().result().recipe().thickness().getAsDouble());
        assertTrue(Files.readString(temp.resolve("packet/blank.dxf")).contains("4.00 mm"));
    }

    /** What takes several runs is not asked for under way. */
    @Test
    void sensitivityWaitsForTheHand() {
        bench.change(r -> r.withSensitivity(true));
        settle();
        Laid before = bench.laidProperty().get();
        assertTrue(before.result().pieces().get(0).sensitivity().isPresent());
        drag(2);
        settle();
        assertSame(before, bench.laidProperty().get());
        bench.letGo();
        settle();
        assertTrue(bench.laidProperty().get().result().pieces().get(0).sensitivity().isPresent());
        assertEquals(2, bench.laidProperty().get().result().recipe().thickness().getAsDouble());
    }
}
