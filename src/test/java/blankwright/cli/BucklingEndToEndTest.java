package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Buckling through the whole program: asked for, it stands in every file that tells of it, and the files agree. */
class BucklingEndToEndTest {
    @TempDir Path temp;

    private static final String CAP = "blankwright-recipe: 1\nname: bowl\npanel: {kind: spherical-cap, radius: 400mm, half-angle: 20deg}\nchord: 0.4mm\n";

    private Run flatten(String recipe, Object... more) throws IOException {
        Path file = Files.writeString(temp.resolve("panel.yaml"), recipe);
        Object[] words = new Object[more.length + 4];
        words[0] = "flatten";
        words[1] = file;
        words[2] = "--out";
        words[3] = temp.resolve("out");
        System.arraycopy(more, 0, words, 4, more.length);
        return Run.of(words);
    }

    private JsonNode piece() throws IOException {
        return new ObjectMapper().readTree(temp.resolve("out/summary.json").toFile()).get("pieces").get(0);
    }

    @Test
    void aBowlHeldByItsCalmMetalRufflesRoundItsEdge() throws IOException {
        Run run = flatten(CAP, "--alloy", "3003-O", "--thickness", "1mm", "--clamped", "calm", "--formats", "png,csv,vtu");
        assertEquals(ExitCode.DONE, run.exit(), run.err());
        JsonNode buckling = piece().get("buckling");
        assertTrue(buckling.get("buckles").asBoolean());
        double factor = buckling.get("load_factor").asDouble();
        assertTrue(factor > 0 && factor < 1);
        assertEquals(factor, buckling.get("load_factors").get(0).asDouble());
        assertTrue(buckling.get("compression_over_critical_max").asDouble() > 1, "the map says the same");
        int waves = buckling.get("waves_along_rims").get(0).asInt();
        assertTrue(waves >= 4 && waves <= 30, "all round: " + waves);
        List<String> tucks = Files.readAllLines(temp.resolve("out/tucks.csv"));
        assertEquals("piece,tuck,rim,place_mm,base_mm,depth_mm,take_in_mm,rounds,u_mm,v_mm,x_mm,y_mm,z_mm", tucks.get(0));
        assertEquals(buckling.get("tucks").asInt(), tucks.size() - 1);
        double rim = 2 * Math.PI * 400 * Math.sin(Math.toRadians(20)), takeIn = 0;
        for (String row : tucks.subList(1, tucks.size())) {
            String[] cell = row.split(",");
            takeIn += Double.parseDouble(cell[6]);
            double x = Double.parseDouble(cell[10]), y = Double.parseDouble(cell[11]), z = Double.parseDouble(cell[12]);
            double most = Math.max(Math.abs(x), Math.max(Math.abs(y), Math.abs(z)));
            assertTrue(most <= 400.001 && Double.parseDouble(cell[5]) > 5, row);
        }
        double c = Math.toRadians(20), needed = -2 * Math.log(Math.cos(c / 2)) / Math.pow(Math.sin(c / 2), 2) - 1;    // edge strain of the cap's blank
        assertEquals(needed * rim, takeIn, 0.1 * needed * rim, "the tucks take in what the edge must lose (docs/theory/cap.md)");
        assertTrue(run.out().contains("waves along the edge") && run.out().contains("held at its edges:"), run.out());
        assertTrue(Files.size(temp.resolve("out/buckling.png")) > 20_000);
        String vtu = Files.readString(temp.resolve("out/panel.vtu"), java.nio.charset.StandardCharsets.ISO_8859_1);
        for (String field : List.of("compression_required", "compression_over_critical", "buckling_mode")) assertTrue(vtu.contains(field), field);
    }

    /** A low crown is pressed on in the computer; a mesh too coarse for that says so. */
    @Test
    void oilCanOfALowCrown() throws IOException {
        String low = "blankwright-recipe: 1\nname: lid\nclamped: rims\nalloy: 3003-O\nthickness: 0.5mm\n"
                + "panel: {kind: crowned-panel, length: 300mm, width: 220mm, length-rise: 2mm, width-rise: 1.5mm}\nchord: ";
        Run run = flatten(low + "0.01mm\n", "--formats", "csv");
        assertEquals(ExitCode.DONE, run.exit(), run.err());
        JsonNode can = piece().get("buckling").get("oil_can");
        assertEquals("computed", can.get("basis").asText());
        assertEquals(List.of("clamped", "free to turn"), can.get("held").findValuesAsText("edge"));
        double clamped = can.get("held").get(0).get("snap_N").asDouble(), turning = can.get("held").get(1).get("snap_N").asDouble();
        assertEquals(Math.min(clamped, turning), can.get("push_N").asDouble(), 1e-9 * clamped);
        assertTrue(turning > can.get("formula_N").asDouble() && turning < 150 && can.get("held").get(0).get("linear_N").asDouble() > clamped);
        assertTrue(run.out().matches("(?s).*held at its edges: oil-cans under a hand: snaps at about \\d+ N spread over it where its edge is"
                + " clamped, snaps at about \\d+ N spread over it where it is free to turn \\(computed step by step for a perfect sheet.*;"
                + " sheet that is not perfect may go at \\d+ N .*"), run.out());
        Run coarse = flatten(low.replace("300mm", "900mm").replace("220mm", "600mm").replace("2mm", "14mm") + "0.3mm\n", "--formats", "csv");
        assertEquals(ExitCode.DONE, coarse.exit(), coarse.err());
        assertEquals("formula", piece().get("buckling").get("oil_can").get("basis").asText());
        assertTrue(coarse.out().contains(" mm, not more, would let it be computed"), coarse.out());
    }

    @Test
    void whatIsNotAskedIsNotSaid() throws IOException {
        Run run = flatten(CAP, "--alloy", "3003-O", "--thickness", "1mm", "--formats", "png,csv");
        assertEquals(ExitCode.DONE, run.exit());
        assertTrue(piece().get("buckling").isNull());
        assertFalse(Files.exists(temp.resolve("out/tucks.csv")) || Files.exists(temp.resolve("out/buckling.png")));
        assertFalse(run.out().contains("buckling"));
    }

    /** Places in a recipe; those that miss are told. A rolled panel misses nothing and cannot buckle. */
    @Test
    void placesOfARecipe() throws IOException {
        String sheet = "alloy: 3003-O\nthickness: 1mm\n";
        Run missed = flatten(CAP + sheet + "clamped: [[0, 0, 5000mm, 10mm]]\n", "--formats", "csv");
        assertEquals(ExitCode.DONE, missed.exit(), missed.err());
        assertTrue(missed.out().contains("none of the places clamped lies on the form"), missed.out());
        double free = piece().get("buckling").get("load_factor").asDouble();
        Run held = flatten(CAP + sheet + "clamped: [[0, 0, 400mm, 60mm]]\n", "--formats", "csv");
        assertFalse(held.out().contains("none of the places"), held.out());
        assertTrue(piece().get("buckling").get("load_factor").asDouble() > free, "held, it bears more");
        String roll = "blankwright-recipe: 1\nname: roll\npanel: {kind: cylinder, radius: 100mm, length: 200mm, sweep: 120deg}\nclamped: rims\n";
        Run rolled = flatten(roll + sheet, "--formats", "csv");
        assertEquals(ExitCode.DONE, rolled.exit(), rolled.err());
        assertFalse(piece().get("buckling").get("buckles").asBoolean());
    }

    @Test
    void needsToKnowTheSheet() throws IOException {
        Run run = flatten(CAP, "--clamped", "rims");
        assertEquals(ExitCode.WRONG_COMMAND, run.exit());
        assertTrue(run.err().contains("needs its alloy and its thickness"), run.err());
        assertTrue(flatten(CAP, "--clamped", "everywhere").err().contains("is none of nowhere, rims, calm"));
    }
}
