package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.shape.SphericalCap;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the whole program says of a bowl in a metal it is known to be made of.
 *
 * <p>The bowl is a cap of a ball, 60 degrees from pole to rim: at its pole the blank is 0.063141 smaller than the form, both ways (the one-dimensional
 * minimum of the same energy, docs/theory/cap.md), so the metal there is stretched by the true strain e = -ln(1 - 0.063141) both ways and keeps exp(-2e) of its
 * thickness.
 */
class MetalEndToEndTest {
    private static final double POLE = -Math.log(1 - 0.063141);

    @TempDir Path temp;

    private Run bowl(Object... more) throws IOException {
        Path file = temp.resolve("bowl.obj");
        try (OutputStream to = Files.newOutputStream(file)) {
            MeshWriter.write(new SphericalCap(300, Math.toRadians(60)).mesh(), Format.OBJ, to);
        }
        List<Object> words = new ArrayList<>(List.of("flatten", file, "--out", temp.resolve("out")));
        words.addAll(List.of(more));
        return Run.of(words.toArray());
    }

    private JsonNode summary() throws IOException {
        return new ObjectMapper().readTree(temp.resolve("out/summary.json").toFile());
    }

    private Optional<String> finding(String kind) throws IOException {
        for (JsonNode finding : summary().get("findings")) if (finding.get("kind").asText().equals(kind)) return Optional.of(finding.get("text").asText());
        return Optional.empty();
    }

    private boolean written(String name) throws IOException {
        return Files.exists(temp.resolve("out").resolve(name));
    }

    /** Swift's diffuse neck under equal stretch both ways is n, 0.05 in 6061-T6, less the e0 the temper has taken over the effective 2e. */
    @Test
    void pastTheFormingLimitItEndsWithFour() throws IOException {
        Run run = bowl("--alloy", "6061-T6", "--thickness", "1mm", "--formats", "png,csv,dxf");
        assertEquals(ExitCode.UNSAFE_TO_CUT, run.exit(), run.said());
        assertEquals(4, run.exit().number());
        double e0 = Math.pow(276 / 410.0, 1 / 0.05), margin = POLE / (0.05 - e0 / 2);
        assertEquals(margin, summary().get("pieces").get(0).get("metal").get("limit_margin_max").asDouble(), 0.02 * margin);
        String text = finding("past-forming-limit").orElseThrow();
        assertTrue(run.out().matches("(?s).*  metal: at most 13\\d % of the forming limit, in zone 1 \\(an estimate, .*; thinnest 0\\.8\\d mm of 1\\.00 mm; it takes in \\d+ J .*"), run.out());
        assertTrue(text.contains("worst zone 1, 13") && text.contains("% of the forming limit") && text.contains("strain +7 % and +7 % at (0, 0, 300) mm"), text);
        assertTrue(run.out().contains("DO NOT CUT: " + text), run.out());
        assertTrue(Files.readString(temp.resolve("out/blank.dxf")).contains("DO NOT CUT"), "the blank itself does not say so");
        assertTrue(written("forming-limit.png"));
        assertFalse(finding("anneal").isPresent(), "full-hard 6061 is no metal to soften in the shop");
    }

    @Test
    void aThinPoleIsTold() throws IOException {
        Run run = bowl("--thickness", "2mm", "--formats", "png,csv");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        JsonNode thickness = summary().get("pieces").get(0).get("thickness_mm");
        double left = 2 * Math.exp(-2 * POLE);
        assertEquals(left, thickness.get("min").asDouble(), 0.01 * left);
        assertTrue(finding("thinned").orElseThrow().startsWith("the blank thins to 1.76 mm of 2.00 mm (12 % gone) at (0, 0, 300) mm; from 10 % on"), run.out());
        assertTrue(run.out().contains("the blank thins to 1.76 mm"), run.out());
        assertTrue(written("thickness-blank.png"));
        assertFalse(written("forming-limit.png"), "no metal, no limit");
    }

    /** A table of one's own: K 300 and n 0.2 with 60 MPa of yield bear n - e0/2 at the pole; 6.7 % of stretch is easy where the bands say easy up to 8 %. */
    @Test
    void anAlloyOfOnesOwnIsJudgedByItsOwnNumbersAndBands() throws IOException {
        String table = "blankwright-alloys: 1\nalloys: [{metal: rack, family: aluminium, E: 69 GPa, nu: 0.33, density: 2700, yield: 60 MPa, tensile: 160 MPa,"
                + " elongation: 25 %, K: 300 MPa, n: 0.2}]\n";
        Path own = Files.writeString(temp.resolve("own.yaml"), table);
        Run run = bowl("--alloy", "rack", "--alloys", own, "--thickness", "1mm", "--formats", "csv");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        double margin = POLE / (0.2 - Math.pow(60 / 300.0, 5) / 2);
        assertEquals(margin, summary().get("pieces").get(0).get("metal").get("limit_margin_max").asDouble(), 0.02 * margin);
        assertTrue(Files.readString(temp.resolve("out/work.csv")).lines().anyMatch(l -> l.contains(",stretch,") && l.contains(",hard,")));
        Files.writeString(own, table + "verdicts: {easy: 8 %, ordinary: 9 %}\n");
        assertEquals(ExitCode.DONE, bowl("--alloy", "rack", "--alloys", own, "--thickness", "1mm", "--formats", "csv").exit());
        assertTrue(Files.readString(temp.resolve("out/work.csv")).lines().anyMatch(l -> l.contains(",stretch,") && l.contains(",easy,")));
    }

    /** The pole takes 2e = 0.13 of effective strain: soft 3003 bears 0.23 (n less e0), half-hard a twentieth, so it is softened on the way, and then holds. */
    @Test
    void halfHardIsSoftenedOnTheWayAndSoftIsNot() throws IOException {
        assertEquals(ExitCode.DONE, bowl("--alloy", "3003-H14", "--thickness", "1mm", "--formats", "png,csv").exit());
        String text = finding("anneal").orElseThrow();
        assertTrue(text.startsWith("the blank must be made soft again on the way: zone 1 once"), text);
        assertTrue(text.contains("cautions on torches"), text);
        assertTrue(written("forming-limit.png"));
        assertEquals(ExitCode.DONE, bowl("--alloy", "3003-O", "--thickness", "1mm", "--formats", "csv").exit());
        assertFalse(finding("anneal").isPresent());
    }
}
