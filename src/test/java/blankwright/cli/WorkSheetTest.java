package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The page a builder takes to the bench. */
class WorkSheetTest {
    /** Equal extremes of a panel alike on both sides may change places. */
    private static final String PLACE = "\\(-?\\d+, -?\\d+(, -?\\d+)?\\)";

    @TempDir Path temp;

    @ParameterizedTest
    @ValueSource(strings = {"mudguard", "nose-cap", "scuttle", "vent-cowl"})
    void thePagesOfTheDocsAreWhatTheProgramWrites(String panel) throws IOException {
        String alloy = panel.equals("vent-cowl") ? "3003-H14" : "3003-O";
        Path kept = Path.of("docs/panels", panel);
        Path out = temp.resolve(panel);
        assertEquals(ExitCode.DONE, Run.of("flatten", Path.of("models", panel + ".yaml"), "--alloy", alloy, "--clamped", "calm", "--sensitivity", "--out", out).exit());
        assertEquals(lines(kept.resolve("work-sheet.md")), lines(out.resolve("work-sheet.md")),
                "make it anew: java -jar target/blankwright.jar flatten models/" + panel + ".yaml --clamped calm --sensitivity, and take work-sheet.md from there");
        Matcher picture = Pattern.compile("!\\[[^]]*]\\(([^)]+)\\)").matcher(Files.readString(kept.resolve("work-sheet.md")));
        while (picture.find()) assertTrue(Files.exists(kept.resolve(picture.group(1))), picture.group(1));
    }

    /** The rim of a cap of a ball is a circle, 2 pi R sin(a) on the form; on the blank of a dish worked evenly it is longer. */
    @Test
    void theRimOfADishMatchesClosedForm() throws IOException {
        String page = page("", "");
        double[] rim = numbers(row(page, "| outer |"));
        assertEquals(2 * Math.PI * 400 * Math.sin(Math.toRadians(22)), rim[1], 0.5);
        assertTrue(rim[0] > rim[1]);
        assertEquals(rim[0] - rim[1], rim[2], 0.11);
    }

    @Test
    void theZonesAreThoseOfTheTable() throws IOException {
        String page = page("alloy: 3003-O\nthickness: 1.2mm\n", "");
        List<String> rows = Files.readAllLines(temp.resolve("out/work.csv"));
        List<String> heads = Arrays.asList(rows.get(0).split(","));
        for (String line : rows.subList(1, rows.size())) {
            Map<String, String> csv = new TreeMap<>();
            String[] cells = line.split(",");
            for (int i = 0; i < heads.size() - 1; i++) csv.put(heads.get(i), cells[i]);
            if (csv.get("do").equals("leave")) continue;
            String row = row(page, "| " + csv.get("zone") + " | **" + csv.get("do") + "**");
            double[] n = numbers(row);
            assertEquals(Double.parseDouble(csv.get("line_blank_mm")), n[0], 0.051);
            assertEquals(Double.parseDouble(csv.get("line_form_mm")), n[1], 0.051);
            assertEquals(Double.parseDouble(csv.get("take_in_mm").isEmpty() ? csv.get("let_out_mm") : csv.get("take_in_mm")), n[2], 0.051);
            assertEquals(csv.get("take_in_mm").isEmpty(), row.contains("let out"));
            assertTrue(row.contains("**" + csv.get("verdict") + "**"), row);
            assertEquals(Double.parseDouble(csv.get("thinnest_mm")), n[n.length - 1], 0.0051);
        }
    }

    @Test
    void aBlankThatMustNotBeCutSaysSoFirstAndGivesNoSteps() throws IOException {
        Path out = temp.resolve("out");
        Run run = Run.of("flatten", Path.of("models/nose-cap.yaml"), "--alloy", "6061-T6", "--formats", "md", "--out", out);
        assertEquals(ExitCode.UNSAFE_TO_CUT, run.exit(), run.said());
        String page = Files.readString(out.resolve("work-sheet.md"));
        assertTrue(page.lines().filter(l -> !l.isBlank()).skip(1).findFirst().orElseThrow().startsWith("> **DO NOT CUT: "), page);
        assertTrue(page.contains("## Not to be cut yet"));
        assertFalse(page.contains("## Steps"));
    }

    @Test
    void withoutItsMetalItSaysThatNothingIsKnownOfIt() throws IOException {
        String page = page("", "");
        assertTrue(page.contains("metal not said, thickness not said"));
        assertTrue(page.contains("Without alloy and thickness nothing is said of forming limit"));
        assertFalse(page.contains("## Rounds of annealing"));
        assertFalse(page.contains("## Thickness"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '!', value = {"a|b!a\\|b", "<b>!&lt;b>", "[x](y)!\\[x\\](y)", "**loud**!\\*\\*loud\\*\\*"})
    void namesStayWords(String name, String written) throws IOException {
        assertTrue(page("", name).startsWith("# Work sheet: " + written + "\n"));
    }

    @Test
    void tucksStandInTheirTable() throws IOException {
        String page = page("alloy: 3003-O\nthickness: 0.8mm\nclamped: calm\n", "");
        List<String> tucks = Files.readAllLines(temp.resolve("out/tucks.csv"));
        assertTrue(tucks.size() > 1, page);
        List<String> rows = page.substring(page.indexOf("| tucks |")).lines().takeWhile(l -> l.startsWith("|")).skip(2).toList();
        int next = 1;
        for (String row : rows) {                               // | 4 to 9 | or | 10 |, none left out, none twice
            Matcher numbers = Pattern.compile("\\| (\\d+)(?: to (\\d+))? \\|.*").matcher(row);
            assertTrue(numbers.matches(), row);
            assertEquals(next, Integer.parseInt(numbers.group(1)));
            next = (numbers.group(2) == null ? next : Integer.parseInt(numbers.group(2))) + 1;
            double takeIn = Double.parseDouble(tucks.get(next - 1).split(",")[Arrays.asList(tucks.get(0).split(",")).indexOf("take_in_mm")]);
            assertTrue(row.contains(String.format(java.util.Locale.ROOT, "| %.1f mm (", takeIn)), takeIn + " in " + row);
        }
        assertEquals(tucks.size(), next);
        assertTrue(page.contains("](buckling-map-blank.png)"));
        assertTrue(page.contains("](buckling.png)"));
    }

    /** Shrinking comes first, every step has its check, and half done a line reads the mean of both its lengths. */
    @Test
    void theStepsComeInOrderEachWithItsCheck() throws IOException {
        String page = page("alloy: 3003-O\nthickness: 1.2mm\n", "");
        List<String> steps = page.substring(page.indexOf("## Steps")).lines().filter(l -> l.matches("\\d+\\. \\*\\*.*")).toList();
        assertTrue(steps.size() >= 6, page);
        for (int i = 0; i < steps.size(); i++) assertTrue(steps.get(i).startsWith(i + 1 + ". **") && steps.get(i).contains(" *Check:* "), steps.get(i));
        int shrink = 0, stretch = 0;
        for (int i = 0; i < steps.size(); i++) {
            if (!steps.get(i).contains(". **Shrink zone ") && !steps.get(i).contains(". **Stretch zone ")) continue;
            if (steps.get(i).contains("Shrink")) shrink = i;
            else if (stretch == 0) stretch = i;
            double[] n = numbers(steps.get(i).substring(steps.get(i).indexOf("its line goes")));
            assertEquals((n[0] + n[1]) / 2, n[n.length - 1], 0.11);
        }
        assertTrue(0 < shrink && shrink < stretch, "shrink " + shrink + ", stretch " + stretch);
    }

    /** A tube of 200 mm outside and 1.2 mm sheet: 198.8 mm inside must stay; nothing is worked. */
    @Test
    void aTubeIsRolled() throws IOException {
        Path recipe = Files.writeString(temp.resolve("tube.yaml"), "blankwright-recipe: 1\nname: tube\nthickness: 1.2mm\nalloy: 3003-H14\nface: outside\n"
                + "panel: {kind: cylinder, radius: 200mm, length: 300mm, sweep: 90deg}\nchord: 0.1mm\n");
        Run.of("flatten", recipe, "--formats", "md", "--out", temp.resolve("out"));
        String page = Files.readString(temp.resolve("out/work-sheet.md"));
        double[] start = numbers(row(page, "| roll 1 start |"));
        assertEquals(0, start[0], 0);
        assertEquals(198.8, start[start.length - 2], 1.5);
        assertTrue(start[start.length - 1] < 150, "half-hard sheet springs far: " + start[start.length - 1]);
        assertEquals(199.4 * Math.PI / 2, numbers(row(page, "| roll 1 stop |"))[0], 1);
        assertTrue(page.contains(". **Roll** ") && page.contains("bending only"));
        assertFalse(page.contains(". **Shrink") || page.contains(". **Bend**"));
    }

    /** A lip of 18 mm turned square inside a curve of 310 mm through 120 degrees: checks section 5, the change is width times sweep, here with a bend of 3 mm outside. */
    @Test
    void aFlangeIsAStepOfItsOwnWithItsCheck() throws IOException {
        Run run = Run.of("flatten", Path.of("models/wheel-arch-lip.yaml"), "--alloy", "3003-O", "--formats", "md", "--out", temp.resolve("out"));
        String page = Files.readString(temp.resolve("out/work-sheet.md"));
        List<String> steps = page.substring(page.indexOf("## Steps")).lines().filter(l -> l.matches("\\d+\\. \\*\\*.*")).toList();
        int turn = -1;
        for (int i = 0; i < steps.size(); i++) if (steps.get(i).startsWith(i + 1 + ". **Turn flange 1** down by 90°")) turn = i;
        assertTrue(turn > 2, page);
        String check = steps.get(turn).substring(steps.get(turn).indexOf("*Check:* a gauge cut to 90°"));
        double sweep = Math.toRadians(120), radius = 3 - 0.6, plan = 18 + radius * (Math.PI / 2 - 1), tip = 310 - radius;
        double[] mm = numbers(check);
        assertEquals(tip * sweep, mm[1], 0.5, "the edge on the form");
        assertEquals(mm[1] - mm[0], mm[2], 0.11);
        assertEquals(plan, mm[3], 0.02 * plan, "width, and what the bend adds");
        assertEquals(plan * sweep, mm[4], 0.02 * plan * sweep, "width times sweep");
        assertTrue(check.contains(String.format(java.util.Locale.ROOT, " x %.2f rad: let out ", sweep)), check);
        assertTrue(steps.get(turn).contains("stretch it before every pass") && steps.get(turn).contains("Mind fingers"));
        assertTrue(steps.get(turn + 1).contains(". **Stretch zone ") && steps.get(turn + 1).contains("as the flange is turned"), "its zone follows");
        assertTrue(row(page, "| 1 | part of the outer edge |").contains("| 90° down |"));
        var told = new com.fasterxml.jackson.databind.ObjectMapper().readTree(temp.resolve("out/summary.json").toFile()).get("pieces").get(0).get("flanges");
        assertEquals(1, told.size());
        assertEquals(120, told.get(0).get("sweep_deg").asDouble(), 0.5);
        assertEquals(18, told.get(0).get("width_mm").asDouble(), 0.3);
        assertEquals(mm[4], told.get(0).get("by_rule_mm").asDouble(), 0.051);
        assertTrue(run.out().contains("  flange 1: 90° down, its line "), run.out());
        assertEquals(1, steps.stream().filter(s -> s.contains("**Turn ")).count());
        assertFalse(page("", "").contains("**Turn "), "a dish has none");
    }

    /** What sensitivity found stands there with the very numbers of the summary. */
    @Test
    void howExactItCanBeIsThatOfTheSummary() throws IOException {
        String page = page("alloy: 3003-O\nthickness: 1.2mm\nsensitivity: true\n", "");
        var cases = new com.fasterxml.jackson.databind.ObjectMapper().readTree(temp.resolve("out/summary.json").toFile()).get("pieces").get(0).get("sensitivity")
                .get("cases");
        double[] weld = numbers(row(page, "| weld shrink of 0.1 mm")), scan = numbers(row(page, "| scan noise of 0.5 mm"));
        assertEquals(cases.get(0).get("outline_mm").asDouble(), weld[1], 0.0051);
        assertEquals(Math.abs(cases.get(0).get("crown_mm").get(0).asDouble()), weld[weld.length - 1], 0.0051);
        assertEquals(cases.get(1).get("outline_mm").asDouble(), scan[2], 0.0051);
        assertTrue(page.contains("K and n do not move a blank"));
    }

    @Test
    void seamsAreNamedAsOnTheBlank() throws IOException {
        Path out = temp.resolve("out");
        assertEquals(ExitCode.DONE, Run.of("flatten", Path.of("models/nose-cap-halves.yaml"), "--formats", "md", "--out", out).exit());
        String page = Files.readString(out.resolve("work-sheet.md"));
        assertTrue(row(page, "| Piece 1, A |").endsWith("| A-1 to A-5 |"), page);      // 535 mm, a mark about every 100 mm
        assertTrue(row(page, "| Piece 2, A |").endsWith("| A-1 to A-5 |"), page);
        assertTrue(page.contains("| 2-1 |"));
        assertFalse(page.contains("!["), "pictures that are not there");
    }

    /** A dish of 22 degrees half-angle off a ball of 400 mm. */
    private String page(String more, String name) throws IOException {
        Path recipe = Files.writeString(temp.resolve("dish.yaml"), "blankwright-recipe: 1\nname: '" + (name.isEmpty() ? "dish" : name) + "'\n"
                + "panel: {kind: spherical-cap, radius: 400mm, half-angle: 22deg}\nchord: 0.2mm\n" + more);
        Path out = temp.resolve("out");
        Run run = Run.of("flatten", recipe, "--formats", "md,csv,png", "--out", out);
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        return Files.readString(out.resolve("work-sheet.md"));
    }

    private static List<String> lines(Path page) throws IOException {
        return Files.readAllLines(page).stream().map(l -> l.replaceAll(PLACE, "(place)")).toList();
    }

    private static String row(String page, String start) {
        return page.lines().filter(l -> l.startsWith(start)).findFirst().orElseThrow(() -> new AssertionError(start + " not in\n" + page));
    }

    /** Those that are followed by mm, in their order. */
    private static double[] numbers(String row) {
        return Pattern.compile("([\\d.]+) mm").matcher(row).results().mapToDouble(m -> Double.parseDouble(m.group(1))).toArray();
    }
}
