package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.drawing.DxfWriter;
import blankwright.drawing.Entity;
import blankwright.drawing.Paper;
import blankwright.drawing.PdfPrinter;
import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Output;
import blankwright.job.OutputFolder;
import blankwright.job.Packet;
import blankwright.job.Result;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.picture.Tints;
import blankwright.project.Face;
import blankwright.project.Recipe;
import blankwright.project.RecipeReader;
import blankwright.project.Scales;
import blankwright.project.Source;
import blankwright.shop.DrawnTape;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.print.DocFlavor;
import javax.print.StreamPrintServiceFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(120)
class BenchTest extends AtABench {
    private static final String DISH = """
            # Kept at the head.
            blankwright-recipe: 1
            name: dish
            panel:
              kind: spherical-cap
              radius: 300mm
              half-angle: 25deg
            chord: 0.5mm
            thickness: 1mm
            """;
    private static final String OBJ = "v 0 0 0\nv 0.4 0 0\nv 0.4 0.3 0.01\nv 0 0.3 0\nf 1 2 3\nf 1 3 4\n";

    private Path dish() throws IOException {
        return Files.writeString(temp.resolve("dish.yaml"), DISH);
    }

    @Test
    void aRecipeIsLaidFlatAndRemembered() throws IOException {
        opened(dish());
        assertEquals("", bench.troubleProperty().get());
        assertEquals("dish", bench.workProperty().get().recipe().name());
        assertEquals(1, bench.laidProperty().get().skins().size());
        assertEquals(List.of(temp.resolve("dish.yaml")), bench.settings().recent());
        assertFalse(bench.unsavedProperty().get());
    }

    @Test
    void theWholeTernOpensWithoutAFile() {
        bench.openDemo("vent-cowl");
        settle();
        assertEquals("vent cowl", bench.workProperty().get().recipe().name());
        for (String name : Demos.NAMES) assertNotNull(Demos.recipe(name));
    }

    @Test
    void theDemosAreTheModelsThatNeedNoMesh() throws IOException {
        try (var files = Files.list(Path.of("models"))) {
            List<String> recipes = files.map(f -> f.getFileName().toString()).filter(f -> f.endsWith(".yaml") && !f.equals("tail.yaml"))
                    .map(f -> f.replace(".yaml", "")).sorted().toList();
            assertEquals(recipes, Demos.NAMES.stream().sorted().toList());
        }
    }

    @Test
    void changesAreFollowedAndTakenBack() throws IOException {
        opened(dish());
        Laid thin = bench.laidProperty().get();
        assertTrue(bench.change(r -> r.withSheet(OptionalDouble.of(4), Face.OUTSIDE)));
        settle();
        Laid thick = bench.laidProperty().get();
        assertTrue(thick.skins().get(0).map().area() < 0.99 * thin.skins().get(0).map().area(), "2 mm inwards on a radius of 300");
        assertTrue(bench.unsavedProperty().get());
        bench.undo();
        settle();
        assertEquals(thin.skins().get(0).map().area(), bench.laidProperty().get().skins().get(0).map().area());
        assertFalse(bench.unsavedProperty().get());
        bench.redo();
        settle();
        assertEquals(4, bench.workProperty().get().recipe().thickness().getAsDouble());
    }

    @Test
    void wordsThatCannotBeAreToldAndChangeNothing() throws IOException {
        opened(dish());
        Laid before = bench.laidProperty().get();
        assertFalse(bench.change(r -> r.withSheet(OptionalDouble.of(18), Face.OUTSIDE)));
        assertTrue(bench.troubleProperty().get().startsWith("thickness 18 mm: must be"), bench.troubleProperty().get());
        settle();
        assertSame(before, bench.laidProperty().get());
        assertFalse(bench.canUndoProperty().get());
    }

    @Test
    void troubleSaysWhatToDoAndKeepsWhatWasThere() throws IOException {
        opened(dish());
        opened(temp.resolve("gone.stl"));
        assertTrue(bench.troubleProperty().get().contains("gone.stl: no such file"), bench.troubleProperty().get());
        assertEquals("dish", bench.workProperty().get().recipe().name());
        opened(Files.writeString(temp.resolve("bad.yaml"), "blankwright-recipe: 1\ncolour: red\n"));
        assertTrue(bench.troubleProperty().get().contains("bad.yaml:2:1"), bench.troubleProperty().get());
        assertEquals("dish", bench.workProperty().get().recipe().name());
    }

    /** 0.4 in metres is a panel of 400 mm: asked with the size each answer gives, likely ones first. */
    @Test
    void aMeshOfOddSizeIsAskedForItsUnit() throws IOException {
        opened(Files.writeString(temp.resolve("skin.obj"), OBJ));
        UnitQuestion question = bench.questionProperty().get();
        assertNotNull(question, bench.troubleProperty().get());
        assertNull(bench.laidProperty().get());
        assertEquals(List.of(LengthUnit.M, LengthUnit.FT, LengthUnit.MM, LengthUnit.CM, LengthUnit.IN),
                question.answers().stream().map(UnitQuestion.Answer::unit).toList());
        assertEquals(400, question.answers().get(0).across(), 1e-9);
        assertEquals(0.4 * 304.8, question.answers().get(1).across(), 1e-9);
        bench.answer(LengthUnit.M);
        settle();
        assertNull(bench.questionProperty().get());
        assertEquals(400, bench.laidProperty().get().result().input().dx(), 1e-9);
    }

    @Test
    void theUnitOfAMeshNamedInARecipeIsAskedToo() throws IOException {
        Files.writeString(temp.resolve("skin.obj"), OBJ);
        opened(Files.writeString(temp.resolve("skin.yaml"), "blankwright-recipe: 1\nname: skin\nmesh: skin.obj\n"));
        assertNotNull(bench.questionProperty().get(), bench.troubleProperty().get());
        bench.answer(LengthUnit.M);
        settle();
        assertEquals(400, bench.laidProperty().get().result().input().dx(), 1e-9);
    }

    /** 25 November 2026: saved in another folder, a step back asked for the mesh in that folder, where it is not. */
    @Test
    void afterSavingElsewhereAStepBackFindsItsMesh() throws Exception {
        opened(Files.writeString(temp.resolve("skin.obj"), OBJ));
        bench.answer(LengthUnit.M);
        settle();
        bench.change(r -> r.withSheet(OptionalDouble.of(1.2), Face.OUTSIDE));
        bench.change(r -> r.withTrim(OptionalDouble.of(10)));
        bench.undo();
        settle();
        assertTrue(bench.save(temp.resolve("elsewhere/saved.yaml")), bench.troubleProperty().get());
        bench.undo();
        settle();
        assertEquals("", bench.troubleProperty().get());
        assertEquals(OptionalDouble.empty(), bench.laidProperty().get().result().recipe().thickness(), "one step back, not the saving of it");
        assertTrue(bench.unsavedProperty().get());
        bench.redo();
        bench.redo();
        settle();
        assertEquals("", bench.troubleProperty().get());
        assertEquals(OptionalDouble.of(10), bench.laidProperty().get().result().recipe().trim());
    }

    /** What was saved gives the same blank through the door the command line uses, also from another folder. */
    @Test
    void theSavedRecipeGivesTheSameBlank() throws Exception {
        opened(Files.writeString(temp.resolve("skin.obj"), OBJ));
        bench.answer(LengthUnit.M);
        settle();
        bench.change(r -> r.withSheet(OptionalDouble.of(1.2), Face.OUTSIDE).withTrim(OptionalDouble.of(10)));
        settle();
        Path there = temp.resolve("elsewhere/saved.yaml");
        assertTrue(bench.save(there), bench.troubleProperty().get());
        assertFalse(bench.unsavedProperty().get());
        Recipe back = RecipeReader.read(there);
        assertEquals("../skin.obj", ((Source.OfMesh) back.source()).file());
        var again = FlattenJob.run(back, Given.file(there), Progress.NONE);
        assertEquals(bench.laidProperty().get().drawing().entities(), Packet.drawing(again).entities());
    }

    /** Tapes and the ends of every scale go through the recipe to the drawing and the pictures that the command line makes. */
    @Test
    void theSavedRecipeHasTheTapesAndTheScales() throws Exception {
        opened(dish());
        Laid laid = bench.laidProperty().get();
        double[] box = laid.box();
        double v = (box[1] + box[3]) / 2;
        bench.lay(laid.between(laid.onBlank(box[0] + 20, v, 1).orElseThrow(), laid.onBlank(box[2] - 30, v - 10, 1).orElseThrow(), true));
        for (MapKind kind : List.of(MapKind.WORK, MapKind.THICKNESS, MapKind.CURVATURE)) {
            bench.mapProperty().set(kind);
            bench.end(OptionalDouble.of(kind == MapKind.CURVATURE ? 12 : kind == MapKind.THICKNESS ? 0.7 : 0.08), null);
        }
        assertEquals(12, bench.tintsProperty().get().high());
        bench.mapProperty().set(MapKind.THICKNESS);
        assertEquals(0.7, bench.tintsProperty().get().low());
        assertEquals(Math.hypot(box[2] - box[0] - 50, 10), TapeRow.of(laid, bench.workProperty().get()).get(0).line().orElseThrow().blankLength(), 0.01);
        Path there = temp.resolve("taped.yaml");
        assertTrue(bench.save(there), bench.troubleProperty().get());

        Result again = FlattenJob.run(RecipeReader.read(there), Given.file(there), Progress.NONE);
        List<String> told = Packet.drawing(again).entities().stream().filter(e -> e instanceof Entity.Text).map(e -> ((Entity.Text) e).text())
                .toList();
        assertEquals(2, told.stream().filter("T1"::equals).count(), "its name at both ends");
        String check = told.stream().filter(t -> t.startsWith("check length tape T1: flat ")).findFirst().orElseThrow();
        assertEquals(Math.hypot(box[2] - box[0] - 50, 10), Double.parseDouble(check.split("flat | mm")[1]), 0.06);
        assertEquals(0.08, Packet.workMap(again).scale().limit());
        bench.takeAway(temp.resolve("packet"), Set.of(Output.PNG, Output.MD, Output.DXF), Paper.A4);
        settle();
        try (OutputFolder folder = OutputFolder.open(temp.resolve("again"))) {
            Packet.write(again, folder, Set.of(Output.PNG, Output.MD, Output.DXF), Paper.A4, Progress.NONE);
        }
        for (String file : List.of("thickness-blank.png", "work-map-form.png", "blank.dxf"))
            assertArrayEquals(Files.readAllBytes(temp.resolve("again").resolve(file)), Files.readAllBytes(temp.resolve("packet").resolve(file)), file);
        assertTrue(Files.readString(temp.resolve("again/summary.json")).contains("\"name\": \"T1\""));
        assertTrue(Files.readString(temp.resolve("packet/work-sheet.md")).contains("| T1 |"));

        bench.open(there);
        settle();
        assertEquals(1, bench.workProperty().get().tapes().size());
        bench.mapProperty().set(MapKind.CURVATURE);
        assertEquals(12, bench.tintsProperty().get().high());
    }

    /** What is asked for while the blank is still being laid out waits for it: the files hold the last decision. */
    @Test
    void takingAwayWaitsForTheBlank() throws Exception {
        opened(dish());
        bench.change(r -> r.withTrim(OptionalDouble.of(10)));
        bench.change(r -> r.withTrim(OptionalDouble.of(20)));
        bench.takeAway(temp.resolve("packet"), Set.of(Output.DXF), Paper.A4);
        assertTrue(bench.runner().busyProperty().get());
        screen.until(() -> Files.exists(temp.resolve("packet/summary.json")));
        var drawn = new ByteArrayOutputStream();
        DxfWriter.write(bench.drawing(), drawn);
        assertEquals(20, bench.laidProperty().get().result().recipe().trim().getAsDouble());
        assertArrayEquals(drawn.toByteArray(), Files.readAllBytes(temp.resolve("packet/blank.dxf")));
    }

    /** Into a file of PostScript, which a printer gets on this system; each page ends with its showpage. */
    @Test
    void sheetsArePrintedAndSaidSo() throws Exception {
        opened(dish());
        var printed = new ByteArrayOutputStream();
        PdfPrinter printer = PdfPrinter.of(StreamPrintServiceFactory.lookupStreamPrintServiceFactories(DocFlavor.SERVICE_FORMATTED.PAGEABLE,
                "application/postscript")[0].getPrintService(printed));
        bench.print(printer, Paper.A4, false);
        settle();
        assertEquals("", bench.troubleProperty().get());
        int sheets = Pages.of(bench.drawing(), Paper.A4).sheets().size() + 1;
        assertTrue(bench.newsProperty().get().startsWith(sheets + " sheets were sent to "), bench.newsProperty().get());
        assertEquals(sheets, printed.toString(StandardCharsets.ISO_8859_1).lines().filter(l -> l.matches(".*\\bshowpage")).count());
        bench.print(printer, Paper.A4, true);
        settle();
        assertTrue(bench.troubleProperty().get().contains("did not take the sheets") || bench.newsProperty().get().startsWith("One sheet was"));
    }

    /** Stopped, the blank is that of an earlier order: it is said, and nothing of it is taken away. */
    @Test
    void aBlankThatStayedBehindIsNotTakenAway() throws Exception {
        opened(dish());
        assertFalse(bench.behindProperty().get());
        bench.change(r -> r.withTrim(OptionalDouble.of(20)));
        bench.stop();
        screen.until(() -> bench.behindProperty().get());
        bench.takeAway(temp.resolve("packet"), Set.of(Output.DXF), Paper.A4);
        screen.until(() -> Files.exists(temp.resolve("packet/summary.json")));
        settle();
        assertFalse(bench.behindProperty().get(), "it was laid out first");
        assertEquals(20, bench.laidProperty().get().result().recipe().trim().getAsDouble());
        bench.change(r -> r.withSeams(List.of(new DrawnSeam(List.of(new DrawnSeam.Point(0, 0, 900), new DrawnSeam.Point(0, 50, 900))))));
        screen.until(() -> bench.behindProperty().get());
        assertTrue(bench.troubleProperty().get().contains("off the panel"), bench.troubleProperty().get());
        bench.takeAway(temp.resolve("other"), Set.of(Output.DXF), Paper.A4);
        screen.until(() -> bench.behindProperty().get() && bench.newsProperty().get().isEmpty());
        assertFalse(Files.exists(temp.resolve("other")), "nothing of the blank before");
        bench.undo();
        settle();
        assertFalse(bench.behindProperty().get());
    }

    /** Also with files of the maker's own beside the recipe, which the copy names from another folder. */
    @Test
    void aKilledViewerFindsTheMakersOwnFilesAgain() throws Exception {
        Files.writeString(temp.resolve("own.yaml"),
                "blankwright-alloys: 1\nalloys: [{metal: rack, family: steel, E: 200 GPa, nu: 0.3, density: 7850,"
                + " yield: 200, tensile: 330, elongation: 30 %}]\n");
        opened(Files.writeString(temp.resolve("racked.yaml"), DISH + "alloy: rack\nalloys: own.yaml\n"));
        bench.change(r -> r.withStations(40));
        Path copy = autosave.copy();
        Files.move(copy, temp.resolve("home/unsaved/left-" + gone() + ".yaml"));
        assertEquals(1, autosave.left().size());
        assertEquals("rack", autosave.left().get(0).recipe().metal().orElseThrow().alloy().name());
    }

    /** A mesh's recipe saved in another folder names the mesh otherwise; it is the same blank, and what comes after is taken away. */
    @Test
    void afterSavingElsewhereWhatIsDecidedIsStillTakenAway() throws Exception {
        opened(Files.writeString(temp.resolve("skin.obj"), OBJ));
        bench.answer(LengthUnit.M);
        settle();
        assertTrue(bench.save(temp.resolve("elsewhere/skin.yaml")), bench.troubleProperty().get());
        Laid laid = bench.laidProperty().get();
        bench.lay(laid.between(laid.onForm(50, 50, 0), laid.onForm(350, 250, 8), true));
        settle();
        bench.takeAway(temp.resolve("packet"), Set.of(Output.DXF), Paper.A4);
        settle();
        assertTrue(Files.readString(temp.resolve("packet/summary.json")).contains("\"T1\""), bench.troubleProperty().get());
    }

    /** A tape that has lost its piece is told, not drawn somewhere. */
    @Test
    void aTapeWithoutALineIsTold() throws Exception {
        opened(dish());
        bench.lay(new DrawnTape(0, 0, 0, 0, 0, 0, false));
        bench.takeAway(temp.resolve("packet"), Set.of(Output.SVG), Paper.A4);
        settle();
        assertTrue(bench.troubleProperty().get().startsWith("tape T1 was left out: no straight line"), bench.troubleProperty().get());
        assertTrue(Files.readString(temp.resolve("packet/summary.json")).contains("tape-left-out"));
    }

    @Test
    void remarksAtTheHeadOfARecipeStay() throws IOException {
        opened(dish());
        bench.change(r -> r.withStations(50));
        assertTrue(bench.save(temp.resolve("dish.yaml")));
        String text = Files.readString(temp.resolve("dish.yaml"));
        assertTrue(text.startsWith("# Kept at the head.\nblankwright-recipe: 1\n"), text);
        assertTrue(text.contains("stations: 50mm"));
    }

    @Test
    void aPlaceThatCannotBeWrittenIsToldAndNothingIsLost() throws IOException {
        opened(dish());
        bench.change(r -> r.withStations(50));
        assertFalse(bench.save(dish().resolve("in-a-file.yaml")));
        assertTrue(bench.troubleProperty().get().startsWith("The recipe could not be written"), bench.troubleProperty().get());
        assertTrue(bench.unsavedProperty().get());
    }

    /** The copy on disk is that of the last change; a viewer of another process finds it once this one is gone. */
    @Test
    void everyChangeIsKeptAgainstAKill() throws Exception {
        opened(dish());
        bench.change(r -> r.withStations(40));
        Path copy = autosave.copy();
        assertEquals(40, RecipeReader.read(copy).stations());
        assertEquals(List.of(), autosave.left(), "this process still runs");
        Path orphan = Files.move(copy, temp.resolve("home/unsaved/left-" + gone() + ".yaml"));
        Autosave.Left left = autosave.left().get(0);
        assertEquals(40, left.recipe().stations());
        assertEquals(Optional.of(temp.resolve("dish.yaml")), left.file());

        bench.carryOn(left);
        settle();
        assertEquals(40, bench.workProperty().get().recipe().stations());
        assertTrue(bench.unsavedProperty().get());
        assertFalse(Files.exists(orphan), "taken over");
        assertTrue(Files.exists(copy), "and kept again");
        assertTrue(bench.save(bench.fileProperty().get()));
        assertFalse(Files.exists(copy), "saved: no copy needed");
    }

    /** The number of a process that has ended. */
    private static long gone() throws Exception {
        Process process = new ProcessBuilder("true").start();
        process.waitFor();
        return process.pid();
    }

    @Test
    void aDragIsOneStepAndItsLastAnswerIsShown() throws IOException {
        opened(dish());
        for (int i = 1; i <= 8; i++) {
            double mm = 1 + 0.1 * i;
            bench.change(r -> r.withSheet(OptionalDouble.of(mm), Face.OUTSIDE), "thickness");
        }
        bench.letGo();
        settle();
        assertEquals(1.8, bench.laidProperty().get().result().recipe().thickness().getAsDouble(), 1e-12);
        bench.undo();
        settle();
        assertEquals(Face.MIDDLE, bench.workProperty().get().recipe().face());
        assertFalse(bench.canUndoProperty().get());
    }

    @Test
    void aPlaceIsFoundAgainAfterAChange() throws IOException {
        opened(dish());
        Laid before = bench.laidProperty().get();
        Place place = before.onBlank(before.box()[0] + 60, (before.box()[1] + before.box()[3]) / 2, 1).orElseThrow();
        bench.placeProperty().set(place);
        double[] was = before.numbers(place).form();
        bench.change(r -> r.withSheet(OptionalDouble.of(2), Face.OUTSIDE));
        settle();
        double[] is = bench.laidProperty().get().numbers(bench.placeProperty().get()).form();
        assertEquals(1, Math.hypot(Math.hypot(is[0] - was[0], is[1] - was[1]), is[2] - was[2]), 0.05, "half the sheet inwards");
    }

    @Test
    void tapesAndScalesAreStepsToo() throws IOException {
        opened(dish());
        Laid laid = bench.laidProperty().get();
        Tints paper = bench.tintsProperty().get();
        double v = (laid.box()[1] + laid.box()[3]) / 2;
        bench.lay(laid.between(laid.onBlank(laid.box()[0] + 20, v, 1).orElseThrow(), laid.onBlank(laid.box()[2] - 20, v, 1)
                .orElseThrow(), true));
        bench.end(OptionalDouble.of(0.2), null);
        assertEquals(0.2, bench.tintsProperty().get().high());
        assertSame(laid, bench.laidProperty().get(), "nothing to lay out anew");
        assertEquals(20, bench.workProperty().get().recipe().scales().work().getAsDouble(), 0,
                "mm on every 100: the recipe and the paper have it too");
        bench.undo();
        assertEquals(paper, bench.tintsProperty().get());
        assertEquals(1, bench.workProperty().get().tapes().size());
        bench.undo();
        assertEquals(0, bench.workProperty().get().tapes().size());
    }

    /** What is written has the words and the colours of the moment, though the panel was not laid out anew for them. */
    @Test
    void thePaperHasTheScaleOfTheScreen() throws Exception {
        opened(dish());
        bench.change(r -> r.withNotes("file the edge"));
        settle();
        bench.end(OptionalDouble.of(0.2), null);
        Result shown = bench.result().orElseThrow();
        assertEquals("file the edge", shown.recipe().notes());
        bench.takeAway(temp.resolve("packet"), Set.of(Output.PNG), Paper.A4);
        settle();
        assertEquals("", bench.troubleProperty().get());
        byte[] written = Files.readAllBytes(temp.resolve("packet/work-map-blank.png"));
        var meant = new ByteArrayOutputStream();
        Packet.workMap(shown.with(shown.recipe().withScales(Scales.USUAL.withWork(OptionalDouble.of(20))))).onBlank().writePng(meant);
        assertEquals(0.2, Packet.workMap(shown.with(shown.recipe().withScales(Scales.USUAL.withWork(OptionalDouble.of(20))))).scale().limit(), 0);
        assertArrayEquals(meant.toByteArray(), written);
    }

    /** Files a recipe names are found from the new place too. */
    @Test
    void namesOfFilesMoveWithTheRecipe() throws Exception {
        Files.createDirectories(temp.resolve("one/two"));
        Files.writeString(temp.resolve("one/own.yaml"),
                "blankwright-alloys: 1\nalloys: [{metal: rack, family: steel, E: 200 GPa, nu: 0.3, density: 7850,"
                + " yield: 200, tensile: 330, elongation: 30 %}]\n");
        opened(Files.writeString(temp.resolve("one/dish.yaml"), DISH + "alloy: rack\nalloys: own.yaml\n"));
        assertTrue(bench.save(temp.resolve("one/two/dish.yaml")), bench.troubleProperty().get());
        Recipe back = RecipeReader.read(temp.resolve("one/two/dish.yaml"));
        assertEquals(Optional.of("../own.yaml"), back.metal().orElseThrow().table());
        assertTrue(bench.laidProperty().get().has(MapKind.LIMIT));
    }

    @Test
    void settingsThatCannotBeReadAreForgotten() throws IOException {
        Path home = Files.createDirectories(temp.resolve("other"));
        Files.write(home.resolve("settings.properties"), new byte[] {'a', '=', '\\', 'u', 'z', 'z'});
        Settings settings = new Settings(home);
        assertEquals(3, settings.get("text", 3.0));
        settings.put("text", 16.0);
        settings.put("lengths", LengthStyle.FRACTION.name());
        assertEquals(16, new Settings(home).get("text", 3.0));
        assertEquals(LengthStyle.FRACTION, new Settings(home).get("lengths", LengthStyle.MM));
    }
}
