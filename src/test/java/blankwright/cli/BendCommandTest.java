package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BendCommandTest {
    @TempDir Path temp;

    private static Run bend(String words) {
        return Run.of((Object[]) ("bend " + words).split(" "));
    }

    /** DIN 6935, worked example of a trade table book page [V]: opening 60, a 16, b 21, r 6, s 5: L 31.1771 with k unrounded [C]. */
    @Test
    void workedExampleOfDin6935() {
        Run run = bend("--thickness 5mm --radius 6mm --angle 120deg --din --legs 16mm,21mm");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertTrue(run.out().contains("measured to the outside of the bend: 31.18 mm (1.227 in)"), run.out());
        assertTrue(run.out().contains("K 0.345. Basis: DIN 6935"), run.out());
    }

    /** Machinery's Handbook 31st ed. p. 1421 [V]: soft steel T .125, R .375 in through 180 degrees: 1.338 in. */
    @Test
    void workedExampleOfTheHandbook() {
        Run run = bend("--thickness 0.125in --radius 0.375in --angle 180deg --alloy drawing-steel");
        assertTrue(run.out().contains("Metal in the bend (allowance): 33.97 mm (1.338 in), K 0.407"), run.out());
        assertTrue(run.out().contains("Setback: none at 180 degrees"), run.out());
    }

    /** Kalpakjian and Schmid [numbers M], with the sheet written as a table of one's own: Ri .5 in opens to .531 in; for 90 degrees bend 95.31 [C]. */
    @Test
    void workedExampleOfSpringback() throws IOException {
        Path own = Files.writeString(temp.resolve("own.yaml"), """
                blankwright-alloys: 1
                alloys: [{metal: sheet, family: steel, E: 29 Msi, nu: 0.3, density: 7850, yield: 40 ksi, tensile: 55 ksi, elongation: 35 %}]
                """);
        Run run = bend("--thickness 0.0359in --radius 0.5in --angle 90 --alloy sheet --alloys " + own);
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertTrue(run.out().contains("bent to 12.70 mm (0.500 in) it opens to 13.48 mm (0.531 in)"), run.out());
    }

    /** 3003-H14, R 300, t 1: X 0.63, so nothing stays [C, checks section 0 trap 1]; the roll must be set far tighter. */
    @Test
    void rollingBeyondTheClampSaysSo() {
        Run run = bend("--thickness 1mm --radius 300mm --alloy 3003-H14");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertTrue(run.out().contains("it opens to flat again: no set stays"), run.out());
        assertTrue(run.out().contains("set the roll for 108.6 mm"), run.out());
        assertTrue(run.out().contains("Largest radius that takes a set in this sheet: 237.6 mm"), run.out());
    }

    @Test
    void aBendTighterThanTheTableIsWarnedOf() {
        Run run = bend("--thickness 1.6mm --radius 0.5mm --angle 90deg --alloy 6061-T6");
        assertTrue(run.out().contains("Least inside radius, cold, 90 degrees: 2.40 mm (0.094 in) (published; Aluminum Design Manual"), run.out());
        assertTrue(run.out().contains("Caution: 0.50 mm (0.020 in) is tighter than that"), run.out());
        assertTrue(run.out().contains("licensed practice and local codes decide"), run.out());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --radius 3mm                                                | Missing required option: '--thickness=LENGTH'
            --thickness 18ga --radius 3 --angle 90 --k 0.4              | --thickness: "18ga": a gauge number is another thickness in each metal
            --thickness 1 --radius three --alloy 304                    | --radius: "three" is not a length
            --thickness 1 --radius -3 --alloy 304                       | --radius: -3 mm: must be 0 mm to 100000 mm; check the unit
            --thickness 0 --radius 3 --alloy 304                        | --thickness: 0 mm: must be 0.01 mm to 25 mm
            --thickness 1 --radius 3                                    | --alloy: needed to say how far it springs back
            --thickness 1 --radius 3 --angle 90                         | --alloy: name the metal for its rule, or give --k
            --thickness 1 --radius 3 --angle 200 --k 0.4                | --angle: angle 200
            --thickness 1 --radius 3 --angle 90 --k 0.7                 | --k: "0.7": must be 0 to 0.5
            --thickness 1 --radius 3 --angle 90 --k half                | --k: "half" is not a number
            --thickness 1 --radius 0 --angle 90 --din                   | --din: radius over thickness 0.0: DIN 6935 gives nothing below 0.05
            --thickness 1 --radius 3 --angle 90 --din --k 0.4           | --k and --din: choose one of them
            --thickness 1 --radius 3 --k 0.4                            | --angle: needed to say how much metal
            --thickness 1 --radius 3 --angle 90 --k 0.4 --legs 20       | --legs: "20": give two lengths with a comma between
            --thickness 1 --radius 3 --angle 90 --k 0.4 --legs 20,3     | --legs: a leg shorter than 4.00 mm (0.157 in) ends within the bend
            --thickness 1 --radius 3 --alloy 3003                       | --alloy: "3003": say the temper
            --thickness 1 --radius 3 --angle 90 --k 0.4 --alloys a.yaml | --alloys: say which of them with --alloy
            """)
    void aWrongCommandLineIsNamedWithWhatIsRight(String words, String sentence) {
        Run run = bend(words);
        assertEquals(ExitCode.WRONG_COMMAND, run.exit(), run.said());
        assertTrue(run.err().startsWith(sentence), run.err());
        assertTrue(run.err().endsWith("Try: blankwright bend --help\n"), run.err());
        assertEquals("", run.out());
    }

    @Test
    void aTableThatCannotBeReadIsBadInput() throws IOException {
        Path own = Files.writeString(temp.resolve("own.yaml"), "blankwright-alloys: 1\nalloys:\n  - metal: x\n");
        for (String command : new String[] {"bend --thickness 1 --radius 3 --alloy x --alloys ", "alloys --alloys "}) {
            Run run = Run.of((Object[]) (command + own).split(" "));
            assertEquals(new Run(ExitCode.BAD_INPUT, "", own + ":3:5: E is missing\n"), run);
            Run gone = Run.of((Object[]) (command + temp.resolve("gone.yaml")).split(" "));
            assertEquals(ExitCode.BAD_INPUT, gone.exit());
            assertTrue(gone.err().contains("gone.yaml: the alloy table cannot be read"), gone.err());
        }
    }

    @Test
    void alloysAreListedAndShownWithTheBasisOfEachNumber() {
        Run list = Run.of("alloys");
        assertEquals(ExitCode.DONE, list.exit());
        assertTrue(list.out().contains("3003-H14            145 t     152 t      8 t"), list.out());
        assertTrue(list.out().contains("p published, t typical, m from memory"), list.out());
        Run one = Run.of("alloys", "1100-o");
        for (String line : new String[] {"E             68900 MPa      typical; Kutz", "n             0.2000         typical; table of K and n after Kalpakjian",
            "e0            0.0002         typical; worked out", "nu            0.33           from memory", "melting from  643 °C (1189 °F)",
            "bends         inside radius over thickness"}) assertTrue(one.out().contains(line), line + "\n" + one.out());
        Run unknown = Run.of("alloys", "3004");
        assertEquals(ExitCode.WRONG_COMMAND, unknown.exit());
        assertTrue(unknown.err().startsWith("NAME: the alloy \"3004\" is not known"), unknown.err());
    }
}
