package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.metal.FormingLimit;
import blankwright.num.Progress;
import blankwright.picture.LimitPicture;
import blankwright.project.AlloyReader;
import blankwright.project.RecipeReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The forming-limit picture shows the zones of the work list, with their margins. */
class LimitPlacesKeepMarginTest {
    @TempDir Path temp;

    @Test
    void everyZoneOfBothPiecesAtTheMarginOfItsRow() throws Exception {
        Path recipe = Files.writeString(temp.resolve("cap.yaml"), Files.readString(Path.of("models/nose-cap-halves.yaml"))
                .replace("chord: 0.08mm", "chord: 0.5mm") + "alloy: 3003-H14\n");
        Result result = FlattenJob.run(RecipeReader.read(recipe), Given.file(recipe), Progress.NONE);
        List<LimitPicture.Place> places = LimitPlaces.of(result);
        Path table = temp.resolve("work.csv");
        try (var out = Files.newOutputStream(table)) {
            WorkCsv.write(result.pieces(), out);
        }
        List<String> lines = Files.readAllLines(table);
        int column = List.of(lines.get(0).split(",")).indexOf("limit_margin");
        Map<String, Double> rows = new HashMap<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cell = line.split(",");
            rows.put("zone " + cell[0] + "-" + cell[1] + ", " + cell[2], Double.parseDouble(cell[column]));
        }
        assertTrue(rows.size() >= 4, rows.toString());
        FormingLimit limit = FormingLimit.of(AlloyReader.shipped().named("3003-H14"), 1.5);
        double before = Double.POSITIVE_INFINITY;
        int spots = 0, vertices = result.pieces().stream().mapToInt(p -> p.map().form().vertexCount()).sum();
        for (LimitPicture.Place place : places) {
            double[] major = place.major(), minor = place.minor();
            double most = 0;
            for (int i = 0; i < major.length; i++) most = Math.max(most, limit.margin(major[i], minor[i]));
            assertEquals(rows.remove(place.name()), most, 0.0006, place.name());        // the row has three decimals
            assertTrue(most <= before, "the nearest first");
            before = most;
            spots += major.length;
        }
        assertTrue(rows.isEmpty(), "left out: " + rows);
        assertTrue(spots >= vertices, spots + " spots for " + vertices + " vertices");
    }
}
