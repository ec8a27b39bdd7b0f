package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.io.Format;
import blankwright.oracle.HostileFiles;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every refusal has its exit code and its sentence, and leaves nothing behind. */
class CommandLineRefusesTest {
    @TempDir Path temp;
    private Path mesh;
    private Path out;

    @BeforeEach
    void writeAMesh() throws IOException {
        mesh = Files.write(temp.resolve("dome.obj"), HostileFiles.written(HostileFiles.dome(), Format.OBJ));
        out = temp.resolve("packet");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --units yd              | --units: "yd" is none of mm, cm, m, in, ft
            --aim best              | --aim: "best" is none of even, work
            --aim work              | --aim work: say the metal with --alloy; blankwright alloys lists them
            --lean 1                | --lean: goes with --aim work
            --tools a.yaml          | --tools: goes with --aim work
            --lean 2                | --lean: lean 2.0: must be -1 (all shrinking) to 1 (all stretching)
            --lean x                | --lean: "x" is no number
            --aim both              | --aim: "both" is none of even, work
            --alloy 3003            | --alloy: "3003": say the temper, one of 3003-O, 3003-H12, 3003-H14, 3003-H16
            --alloy 3003-H41        | --alloy: the alloy "3003-H41" is not known; did you mean "3003-H1
            --alloys own.yaml       | --alloys: say which of them with --alloy
            --thickness thick       | --thickness: "thick" is not a length: write a number and a unit, e.g. 1.6mm, 0.063in, 1/16in, 1 1/2 in
            --thickness 18ga        | --thickness: "18ga": a gauge number is another thickness in each metal (1.21 mm in steel
            --thickness -1mm        | --thickness -1 mm: must be 0.01 mm to 10 mm; check the unit
            --thickness 2m          | --thickness 2000 mm: must be 0.01 mm to 10 mm; check the unit
            --thickness 18          | --thickness 18 mm: must be 0.01 mm to 10 mm; check the unit, and measure the sheet: a gauge number is no
            --thickness 1in         | --thickness 1 in: must be 0.00039 in to 0.3937 in; check the unit, and measure
            --stations 0.001in      | --stations 0.001 in: must be 0.03937 in to 393.70079 in; check the unit
            --trim 2ft              | --trim 24 in: must be 0.00394 in to 19.68504 in; check the unit
            --face top              | --face: "top" is none of outside, middle, inside
            --stations 0            | --stations 0 mm: must be 1 mm to 10000 mm; check the unit
            --detail 20mm           | --detail 20 mm: must be 0.001 mm to 10 mm; check the unit
            --trim 1km              | --trim: "1km": the unit km is not known; use mm, cm, m, in, ft
            --paper a0              | --paper: "a0" is none of a4, letter
            --formats dwg,svg       | --formats: "dwg" is no file we write; choose among obj, dxf, svg, pdf, png, vtu, csv
            --formats ,             | --formats: nothing is named; choose among obj, dxf, svg, pdf, png, vtu, csv
            --colour red            | Unknown options: '--colour', 'red'
            """)
    void aWrongOptionIsNamedWithWhatIsRight(String option, String sentence) {
        String[] words = option.split(" ", 2);
        Run run = Run.of("flatten", mesh, "--out", out, words[0], words[1]);
        assertEquals(ExitCode.WRONG_COMMAND, run.exit(), run.said());
        assertTrue(run.err().startsWith(sentence), run.err());
        assertTrue(run.err().endsWith("Try: blankwright flatten --help\n"), run.err());
        assertEquals("", run.out());
        assertFalse(Files.exists(out));
    }

    /** Who writes in inches was answered in millimetres, with thirteen digits. */
    @Test
    void aRefusalSpeaksTheUnitOfTheRecipe() throws IOException {
        assertRefused("across: 160ft, rise: 2in", "recipe.yaml:3:29: across 1920 in: must be above 0 and at most 65.6 ft; check the unit\n");
        assertRefused("across: 160m, rise: 2in", "recipe.yaml:3:29: across 160000 mm: must be above 0 and at most 20 m; check the unit\n");
        assertRefused("across: 16in, rise: 2in}\nseams: [[[0, 0, 0], [8in, 0, 0]]]", "seam 1: point 1 (0.00, 0.00, 0.00) in lies 16.99");
        Run bend = Run.of("bend", "--thickness", "1.5in", "--radius", "2in", "--angle", "90", "--k", "0.4");
        assertEquals(ExitCode.WRONG_COMMAND, bend.exit());
        assertTrue(bend.err().startsWith("--thickness: 1.5 in: must be 0.00039 in to 0.98425 in; check the unit\n"), bend.err());
    }

    private void assertRefused(String measures, String sentence) throws IOException {
        Path recipe = Files.writeString(temp.resolve("recipe.yaml"), "blankwright-recipe: 1\nname: dish\npanel: {kind: dish, " + measures + (measures.contains("}") ? "" : "}") + "\n");
        Run run = Run.of("flatten", recipe, "--out", out);
        assertEquals(ExitCode.BAD_INPUT, run.exit(), run.said());
        assertTrue(run.err().contains(sentence), run.err());
    }

    /** "Unmatched argument at index 2" helps nobody whose file name has a blank in it. */
    @Test
    void aNameWithABlankWithoutQuotesIsExplained() {
        Run run = Run.of("flatten", "rear", "mudguard.stl", "--formats", "csv");
        assertEquals(ExitCode.WRONG_COMMAND, run.exit());
        assertEquals("\"mudguard.stl\" is a word too many; what has a blank in it goes in quotes: \"rear mudguard.stl\"\nTry: blankwright flatten --help\n", run.err());
        assertTrue(Run.of("flatten", mesh, "--thickness", "1", "mm").err().endsWith("goes in quotes: \"1 mm\"\nTry: blankwright flatten --help\n"));
        assertTrue(Run.of(mesh).err().contains("; to lay it flat: blankwright flatten " + mesh + "\n"), Run.of(mesh).err());
        Run other = Run.of("fltten", "cap.stl");
        assertEquals(ExitCode.WRONG_COMMAND, other.exit());
        assertEquals("\"fltten\" is no command; there are flatten, bend, alloys\nTry: blankwright --help\n", other.err());
    }

    @Test
    void withoutACommandItSaysWhatThereIs() {
        Run run = Run.of();
        assertEquals(ExitCode.WRONG_COMMAND, run.exit());
        assertTrue(run.err().contains("flatten"), run.err());
    }

    @Test
    void anUnknownCommandAndAMissingInputAreWrongCommandLines() {
        assertEquals(ExitCode.WRONG_COMMAND, Run.of("unroll", mesh).exit());
        assertTrue(Run.of("flatten").err().startsWith("name the mesh or the recipe to lay flat\n"), Run.of("flatten").err());
    }

    @Test
    void helpAndVersionAreDone() {
        assertEquals(new Run(ExitCode.DONE, "blankwright 0.1.0\n", ""), Run.of("--version"));
        assertEquals(ExitCode.DONE, Run.of("--help").exit());
        Run help = Run.of("flatten", "--help");
        assertEquals(ExitCode.DONE, help.exit());
        for (String option : List.of("--units", "--aim", "--alloy", "--thickness", "--face", "--out", "--formats", "--detail", "--stations", "--trim", "--paper"))
            assertTrue(help.out().contains(option), option);
    }

    @Test
    void aPlaceThatCannotBeWrittenIsRefusedBeforeTheWork() throws IOException {
        Path file = Files.writeString(temp.resolve("taken"), "x");
        Run run = Run.of("flatten", mesh, "--out", file);
        assertEquals(ExitCode.WRONG_COMMAND, run.exit());
        assertEquals("--out: the folder " + file + " cannot be used: " + file + " (file already exists)\nTry: blankwright flatten --help\n", run.err());
        assertEquals("x", Files.readString(file));
    }

    @Test
    void badInputsAreNamedWithTheirPlace() throws IOException {
        refuses(temp.resolve("none.stl"), "none.stl: no such file");
        refuses(temp.resolve("none.yaml"), "none.yaml: no such file");
        refuses(temp, "is a folder");
        refuses(Files.write(temp.resolve("empty.stl"), new byte[0]), "empty.stl: is empty (0 bytes)");
        refuses(Files.writeString(temp.resolve("broken.obj"), "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 7\n"), "broken.obj:4");
        refuses(Files.writeString(temp.resolve("points.obj"), "v 0 0 0\nv 1 0 0\nv 0 1 0\n"), "points.obj");
        refuses(Files.writeString(temp.resolve("line.obj"), "v 0 0 0\nv 100 0 0\nv 200 0 0\nf 1 2 3\n"), "nothing is left that could be a panel");
        refuses(Files.writeString(temp.resolve("spot.obj"), "v 9 9 9\nv 9 9 9\nv 9 9 9\nf 1 2 3\n"), "nothing is left that could be a panel");
        refuses(Files.writeString(temp.resolve("astray.yaml"), "blankwright-recipe: 1\nname: a\nmesh: gone.stl\n"), "gone.stl: no such file; check");
        refuses(Files.writeString(temp.resolve("colour.yaml"), "blankwright-recipe: 1\ncolour: red\n"), "colour.yaml:2:1");
    }

    @Test
    void aRecipeCannotAskForMetalsYetNorTakeAUnit() throws IOException {
        String recipe = "blankwright-recipe: 1\nname: dish\npanel:\n  kind: spherical-cap\n  radius: 300mm\n  half-angle: 20deg\n";
        refuses(Files.writeString(temp.resolve("dish.yaml"), recipe + "aim: work\n"), "aim work needs to know the metal");
        Run even = Run.of("flatten", temp.resolve("dish.yaml"), "--aim", "even", "--formats", "csv", "--out", temp.resolve("even"));
        assertEquals(ExitCode.DONE, even.exit(), "the command line has the last word: " + even.said());
        Run run = Run.of("flatten", Files.writeString(temp.resolve("plain.yaml"), recipe), "--out", out, "--units", "in");
        assertEquals(ExitCode.WRONG_COMMAND, run.exit(), run.said());
        assertTrue(run.err().startsWith("--units: the recipe"), run.err());
    }

    /** Planted: standard output breaks in the middle of the report. */
    @Test
    void ourOwnFailureIsOneSentenceAndANoteWithTheDetails() throws IOException {
        PrintStream broken = new PrintStream(OutputStream.nullOutputStream()) {
            @Override public void println(String line) {
                throw new IllegalStateException("planted");
            }
        };
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        ExitCode exit = Blankwright.run(broken, new PrintStream(err), "flatten", mesh.toString(), "--out", out.toString(), "--formats", "csv");
        assertEquals(ExitCode.FAILED, exit);
        Matcher said = Pattern.compile("The program failed, and that is our fault, not yours \\(IllegalStateException\\)\\."
                + " Details were written to (\\S+\\.txt); whoever mends the program needs that file and your input\\.\n").matcher(err.toString());
        assertTrue(said.matches(), err.toString());
        Path note = Path.of(said.group(1));
        try {
            assertTrue(Files.readString(note).contains("IllegalStateException: planted"));
        } finally {
            Files.delete(note);
        }
    }

    private void refuses(Path input, String part) throws IOException {
        Run run = Run.of("flatten", input, "--out", out);
        assertEquals(ExitCode.BAD_INPUT, run.exit(), run.said());
        assertTrue(run.err().contains(part), run.err());
        assertEquals("", run.out());
        assertFalse(Files.exists(out), "the folder stays");
        try (Stream<Path> all = Files.list(temp)) {
            assertTrue(all.noneMatch(p -> p.toString().endsWith(".part")));
        }
    }

    @Test
    void anOddSizeIsAskedAboutUnlessTheUnitIsStated() {
        Path small = scaled("small.obj", 1e-3), large = scaled("large.obj", 1e3);
        Run asked = Run.of("flatten", small, "--out", out);
        assertEquals(ExitCode.BAD_INPUT, asked.exit());
        assertTrue(asked.err().matches("(?s)small\\.obj: is this really 0\\.\\d+ mm .* across\\? In metres it would be .* say --units m\\..*"), asked.err());
        assertEquals(ExitCode.BAD_INPUT, Run.of("flatten", large, "--out", out).exit());
        Run stated = Run.of("flatten", small, "--out", out, "--units", "mm", "--formats", "csv");
        assertEquals(ExitCode.DONE, stated.exit(), stated.said());
        assertTrue(stated.out().contains("unusual; check the unit"), stated.out());
        Run metres = Run.of("flatten", small, "--out", out, "--units", "m", "--formats", "csv");
        assertEquals(ExitCode.DONE, metres.exit(), metres.said());
        assertFalse(metres.out().contains("unusual"), metres.out());
    }

    /** Whatever the format, plain, packed or named in a recipe: a panel of 0.84 m whose file says 0.84. */
    @Test
    void everyFormatIsAskedForItsUnit() throws IOException {
        double[] xyz = HostileFiles.dome().positions(), size = HostileFiles.dome().size();
        for (int i = 0; i < xyz.length; i++) xyz[i] *= 0.84 / Math.max(size[0], size[1]);
        for (Format format : Format.values()) {
            byte[] bytes = HostileFiles.written(HostileFiles.dome().withPositions(xyz), format);
            asksForMetres(Files.write(temp.resolve("nose." + format), bytes));
            asksForMetres(Files.write(temp.resolve("nose." + format + ".gz"), HostileFiles.zipped(bytes)));
            asksForMetres(Files.writeString(temp.resolve("nose.yaml"), "blankwright-recipe: 1\nname: nose\nmesh: nose." + format + "\n"));
        }
        Path stated = Files.writeString(temp.resolve("nose.yaml"), "blankwright-recipe: 1\nname: nose\nmesh: {file: nose.OBJ, units: m}\n");
        Run run = Run.of("flatten", stated, "--out", out, "--formats", "csv");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertTrue(run.out().contains("840 x"), run.out());
    }

    private void asksForMetres(Path input) {
        Run run = Run.of("flatten", input, "--out", out);
        assertEquals(ExitCode.BAD_INPUT, run.exit(), run.said());
        assertTrue(run.err().contains("is this really 0.840 mm (0.033 in) across? In metres it would be 840 mm (33.1 in) across: say --units m."), run.err());
    }

    private Path scaled(String name, double factor) {
        double[] xyz = HostileFiles.dome().positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] *= factor;
        try {
            return Files.write(temp.resolve(name), HostileFiles.written(HostileFiles.dome().withPositions(xyz), Format.OBJ));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
