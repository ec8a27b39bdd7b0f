package blankwright.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.LengthUnit;
import blankwright.shape.Catenoid;
import blankwright.shape.ConeFrustum;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Cylinder;
import blankwright.shape.EllipsoidalCap;
import blankwright.shape.FlangeStrip;
import blankwright.shape.FlangedOpening;
import blankwright.shape.Helicoid;
import blankwright.shape.Hole;
import blankwright.shape.ObliqueCone;
import blankwright.shape.Panel;
import blankwright.shape.Saddle;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shape.TwistedPanel;
import blankwright.shop.DrawnTape;
import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecipeRoundTripsTest {
    @Test
    void everythingSaid() throws RecipeException {
        Recipe recipe = Recipe.of("side skin, \"left\"\\", new Cylinder(101.6, 300.123456789, Math.toRadians(123.4)))
                .withChord(0.05).withSheet(OptionalDouble.of(1.27), Face.INSIDE).withAim(Aim.WORK).withStations(50.8)
                .withTrim(OptionalDouble.of(25.4)).withHand(Optional.of(Hand.LEFT)).withNotes("two\nlines: # and - more ✓ \u2028 \u0007 \u0085 \u009f 𝄞");
        assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
    }

    @Test
    void seams() throws RecipeException {
        Recipe recipe = Recipe.of("halves", new Cylinder(101.6, 300, 3)).withSeams(List.of(
                new DrawnSeam(List.of(new DrawnSeam.Point(1 / 3.0, -0.0, 25.4), new DrawnSeam.Point(-1e-7, 12345.678, 2))),
                new DrawnSeam(List.of(new DrawnSeam.Point(0, 0, 0), new DrawnSeam.Point(1, 2, 3), new DrawnSeam.Point(4, 5, 6)))));
        assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
        assertEquals(List.of(new DrawnSeam(List.of(new DrawnSeam.Point(25.4, 0, 5), new DrawnSeam.Point(40, 1.5, 5)))), RecipeReader.read("x",
                "blankwright-recipe: 1\nname: t\nmesh: a.stl\nseams:\n  - [[1in, 0, 5mm], [40, 1.5, 5]]\n").seams());
    }

    /** A gauge number becomes a thickness; the alloy is looked up by name, in the maker's own table first. */
    @Test
    void metals(@TempDir Path folder) throws IOException, RecipeException {
        String head = "blankwright-recipe: 1\nname: t\nmesh: a.stl\n";
        Recipe soft = RecipeReader.read("x", head + "alloy: 3003-o\nthickness: 18 ga\n");
        assertEquals(1.02362, soft.thickness().orElseThrow(), 1e-12);
        assertEquals("3003-O", soft.metal().orElseThrow().alloy().name());
        assertEquals(soft, RecipeReader.read("x", RecipeWriter.write(soft)));
        assertEquals(1.21412, RecipeReader.read("x", head + "thickness: 18 ga steel\n").thickness().orElseThrow(), 1e-12);
        Files.writeString(folder.resolve("own.yaml"), """
                blankwright-alloys: 1
                alloys: [{metal: rack, family: steel, E: 200 GPa, nu: 0.3, density: 7850, yield: 200, tensile: 330, elongation: 30 %}]
                verdicts: {easy: 3 %}
                """);
        String path = folder.resolve("x.yaml").toString();
        Recipe own = RecipeReader.read(path, head + "alloy: rack\nalloys: own.yaml\nthickness: 20ga\n");
        assertEquals(0.91186, own.thickness().orElseThrow(), 1e-12);
        assertEquals(0.03, own.metal().orElseThrow().bands().easy(), 1e-15);
        assertEquals(own, RecipeReader.read(path, RecipeWriter.write(own)));
        assertEquals("3003-O", RecipeReader.read(path, head + "alloy: 3003-O\nalloys: own.yaml\n").metal().orElseThrow().alloy().name());
    }

    @Test
    void theScaleOfTheWorkMap() throws RecipeException {
        String head = "blankwright-recipe: 1\nname: t\nmesh: a.stl\n";
        Recipe set = RecipeReader.read("x", head + "scale: 4.2mm\n");
        assertEquals(OptionalDouble.of(4.2), set.scales().work());
        assertEquals(set, RecipeReader.read("x", RecipeWriter.write(set)));
        assertEquals(Scales.USUAL, RecipeReader.read("x", head).scales());
    }

    /** Tools stand in the recipe, or in a file of their own with the same words. */
    @Test
    void tools(@TempDir Path folder) throws IOException, RecipeException {
        List<Tool> tools = List.of(new Tool("jaw \"shrinker\"", Instruction.SHRINK, 25.4 / 3, 1), new Tool("mallet: big", Instruction.STRETCH,
                Double.POSITIVE_INFINITY, 1 / 3.0));
        Recipe recipe = Recipe.of("worked", new Cylinder(101.6, 300, 3)).withMetal(Optional.of(Metal.shipped("3003-O"))).withAim(Aim.WORK)
                .withHandwork(Handwork.ANY.withLean(-0.25).withTools(tools));
        assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
        Files.writeString(folder.resolve("mine.yaml"), ToolWriter.write(tools));
        assertEquals(tools, ToolReader.read(folder.resolve("mine.yaml")));
        RecipeException wrong = assertThrows(RecipeException.class, () -> RecipeReader.read("x",
                RecipeWriter.write(recipe).replace("does: shrink", "does: bend")));
        assertTrue(wrong.text().contains("must be shrink or stretch"), wrong.text());
    }

    /** Each measure of each kind put back one by one, and turned into another. */
    @Test
    void measuresOneByOne() throws RecipeException {
        Recipe guard = Recipe.of("guard", new TorusSection(330, 95, 2.6, 2.8));
        List<FormulaMeasure> measures = FormulaMeasure.of(guard);
        assertEquals(List.of("ring", "tube", "sweep", "round", "tilt"), measures.stream().map(FormulaMeasure::word).toList());
        for (FormulaMeasure m : measures) assertEquals(guard, m.in(guard, m.number()));
        assertEquals(new Source.OfPanel(new TorusSection(330, 80, 2.6, 2.8)), measures.get(1).in(guard, 80).source());
        assertEquals(new Source.OfPanel(new TorusSection(330, 95, 2.6, 1.5)), measures.get(3).in(guard, 1.5).source());
        assertTrue(assertThrows(IllegalArgumentException.class, () -> measures.get(1).in(guard, 400)).getMessage().contains("must be smaller than the ring"));
        Recipe tube = Recipe.of("tube", new Cylinder(50, 100, 2 * Math.PI));
        FormulaMeasure ends = FormulaMeasure.of(tube).get(3);
        assertEquals(List.of("none", "one", "both"), ends.choices());
        assertEquals(new Source.OfPanel(new Cylinder(50, 100, 2 * Math.PI, Cylinder.Ends.BOTH)), ends.in(tube, "both").source());
        Recipe holed = Recipe.of("skin", new CrownedPanel(400, 250, 12, 20, new CrownedPanel.Step(2, 15, 1, 1), List.of(Hole.round(-100, 30, 32))));
        assertEquals(8, FormulaMeasure.of(holed).size(), "all but the holes");
        assertEquals(holed, FormulaMeasure.of(holed).get(0).in(holed, 400), "which stay");
        assertEquals(List.of(), FormulaMeasure.of(Recipe.ofMesh("tail", "tail.obj", Optional.empty())));
    }

    @Test
    void theScalesOfAllMaps() throws RecipeException {
        String head = "blankwright-recipe: 1\nname: t\nmesh: a.stl\n";
        Recipe set = RecipeReader.read("x", head + "scale: {work: 1/8in, thickness: 85 %, crown: 6deg, limit: 80 %, buckling: 1.5}\n");
        assertEquals(new Scales(OptionalDouble.of(3.175), OptionalDouble.of(0.85), OptionalDouble.of(Math.toRadians(6)), OptionalDouble.of(0.8),
                OptionalDouble.of(1.5)), set.scales());
        assertEquals(set, RecipeReader.read("x", RecipeWriter.write(set)));
        Random random = new Random(7);
        for (int i = 0; i < 200; i++) {
            Recipe any = set.withScales(new Scales(OptionalDouble.empty(), OptionalDouble.of(0.1 + 0.8 * random.nextDouble()),
                    OptionalDouble.of(0.1 + random.nextDouble()), OptionalDouble.of(0.1 + 9 * random.nextDouble()),
                    OptionalDouble.of(0.1 + 9 * random.nextDouble())));
            assertEquals(any, RecipeReader.read("x", RecipeWriter.write(any)));
        }
    }

    @Test
    void tapes() throws RecipeException {
        Recipe recipe = Recipe.of("taped", new Cylinder(101.6, 300, 3)).withTapes(List.of(new DrawnTape(1 / 3.0, -0.0, 25.4, 40, 1.5, -1e-7, true),
                new DrawnTape(0, 0, 0, 1, 2, 3, false)));
        assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
        assertEquals(List.of(new DrawnTape(25.4, 0, 5, 40, 1.5, 5, false)), RecipeReader.read("x",
                "blankwright-recipe: 1\nname: t\nmesh: a.stl\ntapes:\n  - {straight-on: form, from: [1in, 0, 5mm], to: [40, 1.5, 5]}\n").tapes());
    }

    @Test
    void sensitivity() throws RecipeException {
        String head = "blankwright-recipe: 1\nname: t\nmesh: a.stl\n";
        assertFalse(RecipeReader.read("x", head).sensitivity());
        assertFalse(RecipeReader.read("x", head + "sensitivity: false\n").sensitivity());
        Recipe asked = RecipeReader.read("x", head + "sensitivity: true\n");
        assertTrue(asked.sensitivity());
        assertEquals(asked, RecipeReader.read("x", RecipeWriter.write(asked)));
        RecipeException wrong = assertThrows(RecipeException.class, () -> RecipeReader.read("x", head + "sensitivity: much\n"));
        assertEquals(4, wrong.line());
        assertTrue(wrong.text().contains("must be true or false"), wrong.text());
    }

    @Test
    void clamps() throws RecipeException {
        String head = "blankwright-recipe: 1\nname: t\nmesh: a.stl\nalloy: 3003-O\nthickness: 1mm\n";
        for (Clamps clamps : List.of(Clamps.NOWHERE, Clamps.RIMS, Clamps.CALM,
                new Clamps(false, false, List.of(new Clamps.Spot(1 / 3.0, -2, 25.4, 10), new Clamps.Spot(0, 0, 0, 0.5))))) {
            Recipe recipe = RecipeReader.read("x", head).withClamps(Optional.of(clamps));
            assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
        }
        assertEquals(Optional.empty(), RecipeReader.read("x", head).clamps());
        assertEquals(new Clamps.Spot(25.4, 0, 5, 20), RecipeReader.read("x", head + "clamped: [[1in, 0, 5mm, 20]]\n").clamps().orElseThrow().spots().get(0));
    }

    @Test
    void nothingSaid() throws RecipeException {
        Recipe recipe = Recipe.of("a", new Cylinder(1, 2, 3));
        assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
    }

    /** Every kind of panel, the numbers to the last bit. */
    @Test
    void everyKindOfPanel() throws RecipeException {
        List<Panel> panels = List.of(new Cylinder(1 / 3.0, 25.4 / 64, 2 * Math.PI, Cylinder.Ends.BOTH), new ConeFrustum(100, 60, 90, 1 / 3.0),
                new ObliqueCone(100, 60, 120, 0, -0.1, Math.toRadians(359)), new SphericalCap(100, 1), new EllipsoidalCap(260, 190, 230, Math.PI / 2),
                new TorusSection(330, 95, 2.6, 2.8, -0.2), new Saddle(300, 150.5), new TwistedPanel(500, 300, -60), new Catenoid(80, -70, 90, 2),
                new Helicoid(80, -70, 90, 2), new CrownedPanel(600, 400, -30, 25),
                new CrownedPanel(400, 250, 12, 20, new CrownedPanel.Step(2, 15, 1, 1), List.of(Hole.round(-100, 30, 32), new Hole(60, -20, 90, 24.1), new Hole(150, 10, 20, 60))),
                new FlangeStrip(150, 1.5, 20, 15, 0, Math.PI / 2, FlangeStrip.Edge.CONCAVE),
                new FlangedOpening(620, 520, 45, 60, 380, 300, 16, 4, 1.4));
        Set<String> kinds = new TreeSet<>();
        for (Panel panel : panels) {
            Recipe recipe = Recipe.of("p", panel);
            assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
            kinds.add(PanelWords.of(panel).word());
        }
        kinds.add("dish");
        assertEquals(new TreeSet<>(PanelWords.words()), kinds);
    }

    /** Chord and rise are another way to say the same cap. */
    @Test
    void dish() throws RecipeException {
        Recipe recipe = RecipeReader.read("x", "blankwright-recipe: 1\nname: d\npanel: {kind: dish, across: 100mm, rise: 20mm}\n");
        assertEquals(new Source.OfPanel(SphericalCap.ofRise(100, 20)), recipe.source());
        assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
    }

    @Test
    void mesh() throws RecipeException {
        Recipe recipe = Recipe.ofMesh("tail", "meshes/tail.obj", Optional.of(LengthUnit.IN)).withTrim(OptionalDouble.of(10));
        assertEquals(recipe, RecipeReader.read("x", RecipeWriter.write(recipe)));
        for (double detail : new double[] {0, 0.2, 1 / 3.0}) {
            Recipe thinned = recipe.withDetail(OptionalDouble.of(detail));
            assertEquals(thinned, RecipeReader.read("x", RecipeWriter.write(thinned)));
        }
        assertEquals(0, RecipeReader.read("x", "blankwright-recipe: 1\nname: t\nmesh: a.stl\ndetail: none").detail().orElseThrow());
        assertEquals(Optional.empty(), ((Source.OfMesh) RecipeReader.read("x", "blankwright-recipe: 1\nname: t\nmesh: a.stl\n").source()).units());
        assertEquals(OptionalDouble.empty(), RecipeReader.read("x", "blankwright-recipe: 1\nname: t\nmesh: a.stl\ntrim: none").trim());
    }

    /** Letters dropped, doubled, swapped and replaced by any others: a recipe or a refusal with a place, never anything else. */
    @Test
    void aThousandDamagedRecipes() {
        String good = RecipeWriter.write(Recipe.of("mudguard", new TorusSection(330, 95, 2.6, 2.8))
                .withSheet(OptionalDouble.of(1.2), Face.OUTSIDE).withNotes("for the nearside"));
        Random random = new Random(1881);
        String odd = "{}[]&*!|>%@`'\"#:-,?\n\t \u0000\u0085\ud800é0129.eE/~<=";
        int read = 0;
        for (int i = 0; i < 3000; i++) {
            StringBuilder text = new StringBuilder(good);
            for (int k = random.nextInt(5); k >= 0; k--) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(4)) {
                    case 0 -> text.deleteCharAt(at);
                    case 1 -> text.insert(at, odd.charAt(random.nextInt(odd.length())));
                    case 2 -> text.setCharAt(at, odd.charAt(random.nextInt(odd.length())));
                    default -> text.insert(at, text.substring(at, Math.min(text.length(), at + random.nextInt(60))));
                }
            }
            try {
                assertNotNull(RecipeReader.read("x", text.toString()));
                read++;
            } catch (RecipeException e) {
                assertTrue(e.line() >= 1 && e.column() >= 1 && !e.text().isBlank() && e.text().length() < 600, e.getMessage());
            }
        }
        assertTrue(read > 50, "only " + read + " came through");
    }
}
