package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.drawing.Paper;
import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Output;
import blankwright.job.OutputFolder;
import blankwright.job.Packet;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import blankwright.shape.FlangeStrip;
import blankwright.shop.Flange;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Flanges stand in the list of work, with the numbers of the work sheet, and can be framed. */
class FlangeRowTest {
    @TempDir Path temp;

    private Laid laid(Recipe recipe) throws Exception {
        return Laid.of(FlattenJob.run(recipe, new Given(recipe.name() + ".yaml", temp, List.of()), Progress.NONE));
    }

    private static FlangeRow flange(Laid laid) {
        List<FlangeRow> all = WorkRow.of(laid, false).stream().filter(FlangeRow.class::isInstance).map(FlangeRow.class::cast).toList();
        assertEquals(1, all.size(), all.toString());
        return all.get(0);
    }

    @Test
    void theListSaysWhatTheWorkSheetSays() throws Exception {
        Laid laid = laid(Demos.recipe("scuttle"));
        FlangeRow row = flange(laid);
        try (OutputFolder folder = OutputFolder.open(temp.resolve("out"))) {
            Packet.write(laid.result(), folder, Set.of(Output.MD), Paper.A4, Progress.NONE);
        }
        String sheet = Files.readAllLines(temp.resolve("out/work-sheet.md")).stream().dropWhile(line -> !line.equals("## Flanges to turn"))
                .filter(line -> line.startsWith("| 1 |")).findFirst().orElseThrow();
        String[] cells = sheet.split("\\s*\\|\\s*");
        assertEquals("flange 1: " + cells[4], row.todo());
        List<Double> edge = numbers(row.amount(LengthStyle.MM)), rule = numbers(row.more(LengthStyle.MM));
        double blank = numbers(cells[6]).get(0), change = numbers(cells[8]).get(0);
        assertEquals(List.of(change, (double) Math.round(blank)), edge.subList(0, 2), row.amount(LengthStyle.MM));
        assertEquals(100 * change / blank, edge.get(2), 0.06, "strain of the edge, per cent");
        assertTrue(cells[8].startsWith("let out") && row.amount(LengthStyle.MM).contains("let out"), sheet);
        List<Double> told = numbers(cells[9]);
        assertEquals(List.of(numbers(cells[3]).get(0), told.get(0), told.get(1), (double) Math.round(told.get(2))), rule, "line, width, sweep, rule");
        assertEquals("F1", row.name());
        assertTrue(row.said(LengthStyle.INCH).matches("flange 1: 92 to 102° down, its edge: let out 3\\.\\d+ in of 40\\.\\d+ in .*"), row.said(LengthStyle.INCH));
    }

    private static List<Double> numbers(String text) {
        List<Double> all = new ArrayList<>();
        Matcher one = Pattern.compile("\\d+(\\.\\d+)?").matcher(text);
        while (one.find()) all.add(Double.parseDouble(one.group()));
        return all;
    }

    @Test
    void aFlangeStandsWhereItsEdgesStrainRanksIt() throws Exception {
        Laid laid = laid(Demos.recipe("scuttle"));
        List<WorkRow> all = WorkRow.of(laid, true), worked = WorkRow.of(laid, false);
        assertEquals(worked, all.subList(0, worked.size()));
        assertEquals(worked.size() - 1, ZoneRow.of(laid, false).size());
        for (int i = 1; i < worked.size(); i++) assertFalse(Math.abs(worked.get(i).strain()) > Math.abs(worked.get(i - 1).strain()));
        assertTrue(all.subList(worked.size(), all.size()).stream().allMatch(WorkRow::isLeft));
    }

    /** Round an open flange the border closes; it keeps within the flange, and the line on the form is as long as the bend's middle is. */
    @Test
    void theBorderMatchesTheStrip() throws Exception {
        double edge = 200, sweep = 1.2, width = 15, bend = 3;
        Laid laid = laid(Recipe.of("strip", new FlangeStrip(edge, sweep, 80, width, bend, Math.PI / 2, FlangeStrip.Edge.CONCAVE)));
        FlangeRow row = flange(laid);
        Flange flange = row.flange();
        Border border = laid.border(row);
        Map<String, Integer> times = new HashMap<>();
        for (int i = 0; i < border.pieces(); i++)
            for (int end = 0; end < 2; end++) times.merge(border.blank(i, end, 0) + " " + border.blank(i, end, 1), 1, Integer::sum);
        for (int n : times.values()) assertEquals(2, n);
        double[] line = border.lineOnForm();
        double length = 0;
        for (int i = 3; i < line.length; i += 3) length += Math.hypot(Math.hypot(line[i] - line[i - 3], line[i + 1] - line[i - 2]), line[i + 2] - line[i - 1]);
        // middle of a bend of radius r turned by a right angle off a concave edge of radius R: R - r sin 45°; from the first section to the last
        int sections = line.length / 3;
        assertEquals(sweep * (edge - bend * Math.sin(Math.PI / 4)) * (sections - 1) / sections, length, 0.005 * length);
        for (int i = 0; i < border.pieces(); i++) {
            double u = border.blank(i, 0, 0), v = border.blank(i, 0, 1), least = Double.POSITIVE_INFINITY;
            for (int k = 0; k < flange.edge().length; k += 2) least = Math.min(least, Math.hypot(flange.edge()[k] - u, flange.edge()[k + 1] - v));
            assertTrue(least < 1.2 * flange.scribed(), least + " mm from the edge");
        }
        assertTrue(laid.has(row));
        assertFalse(laid(Demos.recipe("scuttle")).has(row));
    }

    /** A flange all the way round is looked at out of the panel, not from one side of it. */
    @Test
    void aWholeFlangeIsSeenFromOutside() throws Exception {
        Laid laid = laid(Demos.recipe("scuttle"));
        FlangeRow row = flange(laid);
        assertTrue(row.flange().whole());
        double[] facing = laid.facing(row), out = Orbit.round(laid.frame()).from(Side.ABOVE).towards();
        assertEquals(1, Math.sqrt(facing[0] * facing[0] + facing[1] * facing[1] + facing[2] * facing[2]), 1e-9);
        assertEquals(1, facing[0] * out[0] + facing[1] * out[1] + facing[2] * out[2], 0.05, "square to the panel");
        double[] box = laid.border(row).box(), whole = laid.box();
        assertTrue(box[0] > whole[0] && box[2] < whole[2] && box[3] - box[1] > 50, "the opening within the blank");
    }
}
