package blankwright.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every bad recipe is refused with the line, the column and what to write instead. */
class RecipeRefusesTest {
    private static final String GOOD = """
            blankwright-recipe: 1
            name: mudguard
            panel:
              kind: torus-section
              ring: 330mm
              tube: 95mm
              sweep: 150deg
              round: 160deg
            chord: 0.2mm
            thickness: 1.2mm
            face: outside
            """;

    @Test
    void theGoodOneIsGood() throws RecipeException {
        Recipe recipe = RecipeReader.read("good.yaml", GOOD);
        assertEquals("mudguard", recipe.name());
        assertEquals(Face.OUTSIDE, recipe.face());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "blankwright-recipe: 1|blankwright-recipe: 2|1|21|version 2 and this program knows versions up to 1",
        "blankwright-recipe: 1|blankwright-recipe: one|1|21|is no version",
        "blankwright-recipe: 1|# no version|2|1|blankwright-recipe is missing",
        "chord: 0.2mm|seams: 3|9|8|seams: a list belongs here, one seam to a line",
        "chord: 0.2mm|seams: [[[0, 0, 0], [1, 2]]]|9|21|seam 1: a point of 2 numbers; give x, y and z",
        "chord: 0.2mm|seams: [[[0, 0, 0]]]|9|9|seam 1: a seam of 1 points",
        "chord: 0.2mm|seams: [[[0, 0, 0], [1, 2, x]]]|9|28|seam 1: \"x\" is not a length",
        "chord: 0.2mm|clamped: rims|9|10|clamped asks how the sheet buckles, which needs its alloy and its thickness",
        "chord: 0.2mm|clamped: middle|9|10|must be nowhere, rims, calm, or balls",
        "chord: 0.2mm|clamped: [[0, 0, 0]]|9|11|a ball of 3 numbers; give x, y, z and radius",
        "chord: 0.2mm|clamped: [[0, 0, 0, -1]]|9|21|radius -1 mm: must be above 0",
        "chord: 0.2mm|clamped: []|9|10|no ball; say nowhere",
        "chord: 0.2mm|scale: much|9|8|scale: \"much\" is not a length",
        "chord: 0.2mm|scale: 120mm|9|8|scale 120 mm: must be 0.25 mm to 100 mm",
        "chord: 0.2mm|scale: {thicknes: 80 %}|9|9|did you mean \"thickness\"?",
        "chord: 0.2mm|scale: {thickness: 0.8}|9|20|scale: \"0.8\" has no unit; write e.g. 30 %",
        "chord: 0.2mm|scale: {thickness: 99.5 %}|9|20|scale: thickness 99.5 %: must be 10 % to 99 %",
        "chord: 0.2mm|scale: {crown: 0deg}|9|16|scale: crown 0 deg: must be 0.05 deg",
        "chord: 0.2mm|scale: {limit: 2000 %}|9|16|scale: limit 2000 %: must be 5 % to 1000 %",
        "chord: 0.2mm|scale: {buckling: 11}|9|19|scale: buckling 11: must be 0.05 to 10",
        "chord: 0.2mm|tapes: 3|9|8|tapes: a list belongs here, one tape to a line",
        "chord: 0.2mm|tapes: [{from: [0, 0, 0], to: [1, 1, 1]}]|9|9|straight-on is missing",
        "chord: 0.2mm|tapes: [{straight-on: both, from: [0, 0, 0], to: [1, 1, 1]}]|9|23|tape 1: straight-on \"both\": must be blank or form",
        "chord: 0.2mm|tapes: [{straight-on: form, from: [0, 0], to: [1, 1, 1]}]|9|35|tape 1: a point of 2 numbers; give x, y and z",
        "chord: 0.2mm|tapes: [{straight-on: form, from: [0, 0, 0]}]|9|9|to is missing",
        "chord: 0.2mm|cord: 0.2mm|9|1|did you mean \"chord\"?",
        "  tube: 95mm|  tub: 95mm|6|3|did you mean \"tube\"?",
        "  tube: 95mm|  # none|4|3|torus-section needs tube",
        "  tube: 95mm|  tube: 95furlong|6|9|the unit furlong is not known",
        "  tube: 95mm|  tube: 18 ga|6|9|gauge number",
        "  tube: 95mm|  tube:|6|8|tube has no value",
        "  tube: 95mm|  tube: [95mm]|6|9|one value belongs here, not a list",
        "  tube: 95mm|  tube: 950mm|6|9|must be smaller than the ring",
        "  tube: 95mm|  tube: -95mm|6|9|must be above 0",
        "  tube: 95mm|  ring: 95mm|6|3|stands here twice; the first is in line 5",
        "  tube: 95mm|  tube: *a|6|9|anchors and aliases",
        "  tube: 95mm|  tube: !!float 95|6|9|tags",
        "  kind: torus-section|  kind: torus-sektion|4|9|did you mean \"torus-section\"?",
        "  kind: torus-section|  kind: boat|4|9|known are cylinder",
        "name: mudguard|name: [a, b]|2|7|one value belongs here",
        "name: mudguard|name: ''|2|7|name has no value",
        "name: mudguard|mesh: tail.obj|1|1|name is missing",
        "name: mudguard|name: mudguard~mesh: tail.obj|3|1|panel and mesh stand side by side",
        "thickness: 1.2mm|thickness: 18 ga|10|12|a gauge number is another thickness in each metal",
        "thickness: 1.2mm|alloy: 3003|10|8|say the temper, one of 3003-O",
        "thickness: 1.2mm|alloy:|10|7|alloy has no value",
        "thickness: 1.2mm|alloys: own.yaml|10|1|say which of them with alloy",
        "thickness: 1.2mm|alloy: 304~alloys: gone.yaml|11|9|gone.yaml\" cannot be read",
        "face: outside|face: top|11|7|must be one of outside, middle, inside",
        "face: outside|aim: best|11|6|must be one of even, work",
        "thickness: 1.2mm|# none|11|7|face outside needs the thickness",
        "thickness: 1.2mm|thickness: 18|10|12|a gauge number is no thickness",
        "thickness: 1.2mm|thickness: 120mm|10|12|must be 0.01 mm to 10 mm; check the unit",
        "chord: 0.2mm|detail: 0.2mm|9|1|detail: a formula's triangles are as fine as chord says; leave detail out",
        "chord: 0.2mm|chord: 0mm|9|8|must be 0.0001 mm to 50 mm",
        "face: outside|--- |11|1|",
        "face: outside|face: {a: {b: {c: {d: {e: {f: {g: 1}}}}}}}|11|1|",
    })
    void withThePlace(String good, String bad, int line, int column, String says) {
        RecipeException e = assertThrows(RecipeException.class, () -> RecipeReader.read("some.yaml", GOOD.replace(good + "\n", bad.replace('~', '\n') + "\n")));
        String message = e.getMessage();
        assertTrue(says == null || message.contains(says), message);
        assertTrue(message.startsWith("some.yaml:"), message);
        if (says != null) assertEquals(line + ":" + column, e.line() + ":" + e.column(), message);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "holes: {along: 1mm}|8|10|a list belongs here",
        "holes: [{along: 1mm, across: 2mm}]|8|11|either a diameter, or a length and a width",
        "holes: [{along: 1mm, across: 2mm, diameter: 3mm, width: 2mm}]|8|11|either a diameter",
        "holes: [{along: 1mm, across: 2mm, diametre: 3mm}]|8|37|did you mean \"diameter\"?",
        "holes: [{along: 1mm, diameter: 3mm}]|8|11|across is missing",
        "holes: [{along: 1mm, across: 2mm, diameter: -3mm}]|8|47|must be above 0",
        "holes: [{along: 290mm, across: 2mm, diameter: 30mm}]|8|10|leave 5 mm of metal",
        "holes: [{along: 900mm, across: 2mm, diameter: 30mm}]|8|10|over an edge or bend",
        "step-depth: 3mm|8|3|step-land is missing or 0; a step needs step-depth, step-land, step-radius, step-fold"})
    void holesAndSteps(String line, int at, int column, String says) {
        String text = "blankwright-recipe: 1\nname: side\npanel:\n  kind: crowned-panel\n  length: 600mm\n  width: 400mm\n"
                + "  length-rise: 20mm\n  " + line + "\n  width-rise: 30mm\n";
        RecipeException e = assertThrows(RecipeException.class, () -> RecipeReader.read("side.yaml", text));
        assertTrue(e.getMessage().contains(says), e.getMessage());
        if (!line.startsWith("step")) assertEquals(at + ":" + column, e.line() + ":" + e.column(), e.getMessage());
    }

    /** The place is that of the fault, not of what was being read when it came; what helps stands at the end. */
    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {"name: t~\tpanel: x,3,1,TAB", "name: \"t~panel: x~,4,1,unexpected end", "name: t: u,2,8,mapping values are not allowed"})
    void whereItStopsBeingYaml(String rest, int line, int column, String says) {
        RecipeException e = assertThrows(RecipeException.class, () -> RecipeReader.read("x.yaml", "blankwright-recipe: 1\n" + rest.replace('~', '\n')));
        assertEquals(line + ":" + column, e.line() + ":" + e.column(), e.getMessage());
        assertTrue(e.getMessage().contains(says) && e.getMessage().endsWith("indent with blanks, and put a text that holds : or # in quotes"), e.getMessage());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "notes: none of them|1|1|neither panel nor mesh is given",
        "mesh: ''|3|7|the mesh has no file name",
        "mesh: \"tail\\u0007.obj\"|3|7|characters that no file name should",
        "mesh: {file: tail.obj, units: yards}|3|31|must be one of mm, cm, m, in, ft",
        "mesh: {units: m}|3|7|file is missing",
        "mesh: {file: tail.obj, unit: m}|3|24|did you mean \"units\"?",
        "mesh: tail.obj~chord: 0.1mm|4|1|a mesh file brings its own triangles; leave chord out"})
    void meshesWithThePlace(String rest, int line, int column, String says) {
        RecipeException e = assertThrows(RecipeException.class,
                () -> RecipeReader.read("x.yaml", "blankwright-recipe: 1\nname: tail\n" + rest.replace('~', '\n') + "\n"));
        assertTrue(e.getMessage().contains(says), e.getMessage());
        assertEquals(line + ":" + column, e.line() + ":" + e.column(), e.getMessage());
    }

    @Test
    void moreHolesThanAnySkinHas() {
        String text = "blankwright-recipe: 1\nname: sieve\npanel:\n  kind: crowned-panel\n  length: 10m\n  width: 10m\n  length-rise: 0\n  width-rise: 0\n"
                + "  holes: [" + "{along: 0, across: 0, diameter: 1}, ".repeat(201) + "]\n";
        String why = assertThrows(RecipeException.class, () -> RecipeReader.read("x.yaml", text)).getMessage();
        assertEquals("x.yaml:9:10: 201 holes: at most 200", why);
    }

    @Test
    void notYaml() {
        for (String text : new String[] {"", "   ", "\t\t", "{", "[", "a: b: c", "\"", "%", "just words", "- 1\n- 2", "\u0000", "a: *b", "? [x]\n: y", "@", "`", "{a", "&a [*a]"}) {
            assertThrows(RecipeException.class, () -> RecipeReader.read("x.yaml", text), text);
        }
    }

    @Test
    void deepAndManifold() {
        assertThrows(RecipeException.class, () -> RecipeReader.read("x.yaml", "[".repeat(100_000)));
        assertThrows(RecipeException.class, () -> RecipeReader.read("x.yaml", "{a: ".repeat(10_000)));
        assertThrows(RecipeException.class, () -> RecipeReader.read("x.yaml", "a: [" + "1, ".repeat(100_000) + "1]"));
        String bomb = "a: &a [x, x, x]\nb: &b [*a, *a, *a]\nc: [*b, *b]\n";
        assertTrue(assertThrows(RecipeException.class, () -> RecipeReader.read("x.yaml", bomb)).getMessage().contains("anchors"));
    }

    @Test
    void bytesThatAreNoText(@TempDir Path dir) throws Exception {
        Path file = dir.resolve("x.yaml");
        Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1, 2});
        assertTrue(assertThrows(RecipeException.class, () -> RecipeReader.read(file)).getMessage().contains("UTF-8"));
        Files.write(file, new byte[(1 << 20) + 1]);
        assertTrue(assertThrows(RecipeException.class, () -> RecipeReader.read(file)).getMessage().contains("longer"));
    }
}
