package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.InputFile;
import blankwright.job.Refusal;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.Explained;
import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.project.Clamps;
import blankwright.project.FormulaHole;
import blankwright.project.FormulaMeasure;
import blankwright.project.Recipe;
import blankwright.shape.Catenoid;
import blankwright.shape.ConeFrustum;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Cylinder;
import blankwright.shape.EllipsoidalCap;
import blankwright.shape.FlangeStrip;
import blankwright.shape.Helicoid;
import blankwright.shape.Hole;
import blankwright.shape.ObliqueCone;
import blankwright.shape.Panel;
import blankwright.shape.Saddle;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shape.TwistedPanel;
import blankwright.shop.Instruction;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What is refused is told in the units of the switch: the value, the range and the remedy. */
class RefusalsFollowTheSwitchTest extends AtABench {
    private static final Recipe DISH = Recipe.of("dish", new SphericalCap(300, Math.toRadians(25))).withChord(1);
    private static final CrownedPanel SKIN = new CrownedPanel(400, 300, 20, 10, CrownedPanel.Step.NONE, List.of(Hole.round(0, 0, 40), Hole.round(90, 0, 20)));

    private final List<Sentence> refusals = new ArrayList<>();

    private void refused(Executable what) {
        refusals.add(Explained.words(assertThrows(Exception.class, what)));
    }

    /** All of each measure of a panel that are out of its own range, or do not go with the others. */
    private void measures(Panel panel) {
        Recipe recipe = Recipe.of("panel", panel);
        for (FormulaMeasure measure : FormulaMeasure.of(recipe)) {
            if (measure.kind() != FormulaMeasure.Kind.LENGTH) continue;
            for (double mm : new double[] {-1e5, -1, 3, 1000, 19_000, 1e5}) {
                try {
                    measure.in(recipe, mm);
                } catch (IllegalArgumentException e) {
                    refusals.add(Explained.words(e));
                }
            }
        }
    }

    /** In millimetres it has some, in inches inches at the same places and no millimetre; where it has none it has none. */
    private void followed(int least) {
        int measured = 0;
        for (Sentence words : refusals) {
            List<Double> mm = numbers(words.text(LengthStyle.MM), "mm", 1), far = numbers(words.text(LengthStyle.MM), "m", 1000);
            if (!mm.isEmpty()) measured++;
            for (LengthStyle inch : List.of(LengthStyle.INCH, LengthStyle.FRACTION)) {
                String text = words.text(inch);
                assertFalse(text.matches(".*\\d\\)? (mm|m)\\b.*"), text);
                same(mm, numbers(text, "in", 25.4), text);
                same(far, numbers(text, "ft", 304.8), text);
            }
        }
        assertTrue(measured >= least, measured + " of " + refusals.size() + " have a length");
    }

    /** By definition of the inch and the foot, to the digits that are written. */
    private static void same(List<Double> meant, List<Double> is, String text) {
        assertEquals(meant.size(), is.size(), text);
        for (int i = 0; i < meant.size(); i++) assertEquals(meant.get(i), is.get(i), 0.21 + 1e-3 * Math.abs(meant.get(i)), text);
    }

    private static List<Double> numbers(String text, String unit, double mm) {
        List<Double> all = new ArrayList<>();
        Matcher one = Pattern.compile("(-?(?:\\d+ )?\\d+/\\d+|-?\\d+(?:\\.\\d+)?) " + unit + "\\b").matcher(text);
        while (one.find()) all.add(mm / 25.4 * Lengths.parse(one.group(1), LengthUnit.IN));
        return all;
    }

    @Test
    void measuresOfEveryPanelByFormula() {
        double quarter = Math.PI / 2;
        for (Panel panel : List.of(new Cylinder(100, 200, quarter), new ConeFrustum(150, 100, 80, quarter), new ObliqueCone(150, 100, 80, 20, 0, quarter),
                new SphericalCap(300, 0.4), new EllipsoidalCap(200, 150, 100, 0.5), new TorusSection(330, 95, quarter, quarter), new Saddle(100, 80),
                new Catenoid(50, -60, 60, quarter), new Helicoid(50, -60, 60, quarter), new TwistedPanel(400, 300, 40), SKIN,
                new CrownedPanel(400, 300, 20, 10, new CrownedPanel.Step(12, 15, 4, 1), List.of()),
                new FlangeStrip(200, 1, 80, 15, 3, quarter, FlangeStrip.Edge.CONCAVE))) measures(panel);
        for (String demo : Demos.NAMES) for (FormulaMeasure m : FormulaMeasure.of(Demos.recipe(demo))) {
            if (m.kind() == FormulaMeasure.Kind.LENGTH) refused(() -> m.in(Demos.recipe(demo), -30_000));
        }
        Recipe skin = Recipe.of("skin", SKIN);
        refused(() -> FormulaHole.round(195, 0, 40).in(skin, 0));
        refused(() -> FormulaHole.round(60, 0, 40).in(skin, 0));
        refused(() -> FormulaHole.round(30_000, 0, 40).in(skin, 0));
        followed(100);
    }

    @Test
    void whatIsDecidedAboutASheet() {
        refused(() -> DISH.withSheet(OptionalDouble.of(0.001), DISH.face()));
        refused(() -> DISH.withChord(80));
        refused(() -> DISH.withStations(0.5));
        refused(() -> DISH.withTrim(OptionalDouble.of(600)));
        refused(() -> DISH.withDetail(OptionalDouble.of(25.4)));
        refused(() -> DISH.withScales(DISH.scales().withWork(OptionalDouble.of(120))));
        refused(() -> new Clamps.Spot(0, 0, 0, -20));
        refused(() -> ToolDraft.tools(List.of(new ToolDraft("jaw", Instruction.SHRINK, "-25", "1")), LengthStyle.MM));
        followed(refusals.size());
    }

    @Test
    void whatIsSeenOnlyWhenItIsLaidOut() throws Exception {
        Given here = Given.file(temp.resolve("dish.yaml"));
        refused(() -> FlattenJob.run(Recipe.of("tube", new Cylinder(300, 5000, 1)).withChord(5).withStations(1), here, Progress.NONE));
        refused(() -> FlattenJob.run(DISH.withSeams(List.of(new DrawnSeam(List.of(new DrawnSeam.Point(0, 0, 900), new DrawnSeam.Point(10, 0, 0))))), here,
                Progress.NONE));
        followed(1);
        assertTrue(refusals.get(0).text(LengthStyle.INCH).contains("0.03937 in"), refusals.get(0).text(LengthStyle.INCH));
        assertTrue(refusals.get(1).text(LengthStyle.INCH).contains("(0.00, 0.00, 35.43) in"), refusals.get(1).text(LengthStyle.INCH));
    }

    @Test
    void whatStandsInARecipeFile() throws Exception {
        String head = "blankwright-recipe: 1\nname: dish\npanel: {kind: spherical-cap, radius: %s, half-angle: 25deg}\n%s\n";
        Path file = temp.resolve("dish.yaml");
        for (String[] wrong : new String[][] {{"30m", ""}, {"300mm", "thickness: 90mm"}, {"300mm", "stations: 0.1mm"}, {"300mm", "scale: 150mm"},
            {"300mm", "thickness: 18 ga"}, {"300mm", "clamped: [[0mm, 0mm, 0mm, -5mm]]"},
            {"300mm", "aim: work\nalloy: 3003-O\ntools: [{name: jaw, does: shrink, reach: -5mm}]"}}) {
            Files.writeString(file, String.format(head, wrong[0], wrong[1]));
            refused(() -> InputFile.recipe(file, Optional.empty()));
        }
        for (Sentence words : refusals) assertTrue(words.text().startsWith(file.toString()), words.text());
        followed(refusals.size());
    }

    /** The message on the screen is read anew when the switch is moved, in the window as in the model. */
    @Test
    void aMessageThatStandsThereIsReadAnew() throws Exception {
        String dish = "blankwright-recipe: 1\nname: dish\npanel: {kind: spherical-cap, radius: %s, half-angle: 25deg}\nchord: 1mm\n";
        openedWell(Files.writeString(temp.resolve("dish.yaml"), String.format(dish, "300mm")));
        bench.styleProperty().set(LengthStyle.INCH);
        assertFalse(bench.change(r -> r.withTrim(OptionalDouble.of(635))));
        assertEquals("trim 25 in: must be 0.00394 in to 19.68504 in; check the unit", bench.troubleProperty().get());
        bench.styleProperty().set(LengthStyle.MM);
        assertEquals("trim 635 mm: must be 0.1 mm to 500 mm; check the unit", bench.troubleProperty().get());
        bench.styleProperty().set(LengthStyle.FRACTION);
        opened(Files.writeString(temp.resolve("bad.yaml"), String.format(dish, "30m")));
        assertTrue(bench.troubleProperty().get().endsWith("radius 1181.10236 in: must be above 0 and at most 65.6 ft; check the unit"),
                bench.troubleProperty().get());
        bench.hush();
        assertEquals("", bench.troubleProperty().get());
    }

    /** 254 mm are 10 in by definition. */
    @Test
    void theUnitThatIsReadStandsFirstInTheQuestion() {
        UnitQuestion.Answer answer = new UnitQuestion.Answer(LengthUnit.CM, 254, true);
        assertEquals("254 mm (10.00 in): its numbers are centimetres", answer.words(LengthStyle.MM));
        assertEquals("10.00 in (254 mm): its numbers are centimetres", answer.words(LengthStyle.INCH));
        assertEquals("10 in (254 mm): its numbers are centimetres", answer.words(LengthStyle.FRACTION));
    }

    /** The command line and the files say millimetres as before. */
    @Test
    void theMessageIsThatOfTheFiles() {
        Refusal refusal = new Refusal(Sentence.say("%s off", Sentence.length(12.7, 1)));
        assertEquals("12.7 mm off", refusal.getMessage());
        assertEquals("0.500 in off", refusal.words().text(LengthStyle.INCH));
    }
}
