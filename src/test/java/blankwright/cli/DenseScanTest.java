package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.oracle.HostileFiles;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A dense mesh through the whole program: thinned out as asked, and the blank still that of the panel. */
class DenseScanTest {
    private static final double RADIUS = 200, SWEEP = Math.toRadians(100), LENGTH = 260;

    @TempDir Path temp;
    private Path mesh;

    @BeforeEach
    void aScanOfACylinder() throws IOException {
        TriMesh dense = Forms.grid(120, 90, false, false, (u, v) ->
                new double[] {RADIUS * Math.cos(SWEEP * u), RADIUS * Math.sin(SWEEP * u), LENGTH * v});
        mesh = Files.write(temp.resolve("dense.ply"), HostileFiles.written(dense, Format.PLY_LITTLE));
    }

    /** The blank of a cylinder is a rectangle, R times the angle wide; a chord is shorter than its arc by at most 8/3 sag² / chord (from the series). */
    @Test
    void theBlankIsStillThatOfThePanel() throws IOException {
        JsonNode summary = flattened("--detail", "0.1mm");
        JsonNode reduced = summary.get("reduced");
        assertEquals(120 * 90 * 2, reduced.get("triangles_before").asInt());
        assertEquals(120 * 90 * 2, summary.get("input").get("triangles").asInt());
        assertEquals(reduced.get("triangles_after").asInt(), summary.get("pieces").get(0).get("triangles").asInt());
        assertTrue(reduced.get("triangles_after").asInt() < 2000, reduced.toString());
        assertEquals(0.1, reduced.get("within_mm").asDouble());
        double deviation = reduced.get("deviation_mm").asDouble();
        assertTrue(deviation > 0.01 && deviation <= 0.1, reduced.toString());
        JsonNode found = summary.get("findings").get(0);
        assertEquals("reduced", found.get("kind").asText());
        assertTrue(found.get("text").asText().startsWith("21,600 triangles were thinned out to "), found.toString());
        assertEquals(2 * (RADIUS * SWEEP + LENGTH), summary.get("pieces").get(0).get("outline_mm").asDouble(), 0.2);
        assertEquals(RADIUS * SWEEP * LENGTH, summary.get("pieces").get(0).get("flat_area_mm2").asDouble(), 1e-3 * RADIUS * SWEEP * LENGTH);
    }

    @Test
    void aSmallMeshIsLeftAloneUnlessAsked() throws IOException {
        JsonNode unasked = flattened(), none = flattened("--detail", "none");
        assertTrue(unasked.get("reduced").isNull());
        assertTrue(none.get("reduced").isNull());
        assertEquals(120 * 90 * 2, none.get("pieces").get(0).get("triangles").asInt());
        assertEquals(unasked.get("pieces"), none.get("pieces"));
    }

    @Test
    void aRecipeSaysItTooAndTheCommandLineOverrulesIt() throws IOException {
        Path recipe = Files.writeString(temp.resolve("dense.yaml"), "blankwright-recipe: 1\nname: d\nmesh: dense.ply\ndetail: 0.1mm\n");
        JsonNode asked = flattened("--detail", "0.1mm");
        mesh = recipe;
        assertEquals(asked.get("pieces"), flattened().get("pieces"));
        assertTrue(flattened("--detail", "none").get("reduced").isNull());
    }

    @Test
    void aFormulaHasNoDetail() {
        Path out = temp.resolve("no");
        Run run = Run.of("flatten", "models/mudguard.yaml", "--out", out, "--detail", "0.1mm");
        assertEquals(ExitCode.WRONG_COMMAND, run.exit(), run.said());
        assertTrue(run.err().startsWith("--detail: the recipe models/mudguard.yaml gives a formula"), run.err());
        assertFalse(Files.exists(out));
    }

    private JsonNode flattened(String... more) throws IOException {
        Path out = temp.resolve("out");
        Object[] words = {"flatten", mesh, "--out", out, "--formats", "csv"};
        Object[] all = java.util.Arrays.copyOf(words, words.length + more.length);
        System.arraycopy(more, 0, all, words.length, more.length);
        Run run = Run.of(all);
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        return new ObjectMapper().readTree(out.resolve("summary.json").toFile());
    }
}
