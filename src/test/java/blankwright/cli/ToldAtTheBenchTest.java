package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.shape.Cylinder;
import blankwright.shape.Fineness;
import blankwright.shape.SphericalCap;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a builder reads after a run: true, the same in all files, and plain what to do next. */
class ToldAtTheBenchTest {
    private static final TriMesh CAP = new SphericalCap(300, Math.toRadians(25)).mesh();

    @TempDir Path temp;

    private Path write(String name, TriMesh mesh) throws IOException {
        Path file = temp.resolve(name + ".obj");
        try (OutputStream to = Files.newOutputStream(file)) {
            MeshWriter.write(mesh, Format.OBJ, to);
        }
        return file;
    }

    private Run flatten(Path file, String formats, Object... more) {
        List<Object> words = new ArrayList<>(List.of("flatten", file, "--out", temp.resolve("out"), "--formats", formats));
        words.addAll(List.of(more));
        Run run = Run.of(words.toArray());
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        return run;
    }

    private JsonNode summary() throws IOException {
        return new ObjectMapper().readTree(temp.resolve("out/summary.json").toFile());
    }

    private String page() throws IOException {
        return Files.readString(temp.resolve("out/work-sheet.md"));
    }

    /** A crumb of a scan 200 mm beside the panel made it half as large again. */
    @Test
    void theSizeIsThatOfThePanelWithoutTheCrumbsLeftOut() throws IOException {
        double[] xyz = Arrays.copyOf(CAP.positions(), CAP.positions().length + 9);
        int n = CAP.vertexCount();
        System.arraycopy(new double[] {400, 0, 0, 401, 0, 0, 400, 1, 0}, 0, xyz, 3 * n, 9);
        int[] tri = Arrays.copyOf(CAP.corners(), CAP.corners().length + 3);
        System.arraycopy(new int[] {n, n + 1, n + 2}, 0, tri, tri.length - 3, 3);
        Run run = flatten(write("crumb", TriMesh.of(xyz, tri)), "csv");
        assertTrue(run.out().contains("1 loose part"), run.out());
        double[] size = CAP.size();
        for (int k = 0; k < 3; k++) assertEquals(size[k], summary().get("input").get("size_mm").get(k).asDouble(), 1e-9);
        assertEquals(CAP.area(), summary().get("input").get("area_mm2").asDouble(), 1e-9 * CAP.area());
    }

    /** It was told to be bent towards the form, measured for its crown and worked by the work map. */
    @Test
    void aFlatPanelIsOnlyCut() throws IOException {
        Run run = flatten(write("plate", Forms.plate(300, 200, 30, 20)), "md,pdf");
        assertTrue(run.out().contains("\n  shape: flat already, nothing to bend and nothing to work\nWritten"), run.out());
        assertTrue(run.out().contains("try the paper on the form; then cut it.\n"), run.out());
        assertTrue(page().contains("**Hardest:** nothing, the form is flat already.") && !page().contains("**Bend**"), page());
        flatten(write("bowed", new SphericalCap(15_000, 0.0133).mesh()), "md");
        assertFalse(page().contains("flat already"), "1.3 mm of crown on 400 mm are a crown");
    }

    @Test
    void whatIsOnlyRolledIsNotToBeWorkedByTheWorkMap() throws IOException {
        Run run = flatten(write("roll", new Cylinder(150, 300, 1.5).mesh(Fineness.chord(0.02))), "csv,dxf");
        assertTrue(run.out().contains("Next: cut oversize, roll it by the lines on the blank, and trim it; nothing needs a shrinker or a mallet.\n"), run.out());
        assertTrue(flatten(write("cap", CAP), "csv").out().contains("Next: cut oversize, work by the zones, and check the lengths of work.csv with a tape"));
        assertTrue(flatten(write("cap", CAP), "md").out().contains("Next: cut oversize, work by work-sheet.md.\n"));
    }

    /** The size without the allowance is no size to cut from the sheet. */
    @Test
    void theSizeToCutFromIsToldWithTheAllowance() throws IOException {
        Run run = flatten(write("cap", CAP), "md", "--trim", "15mm");
        Matcher told = Pattern.compile("Blank: (\\d+) x \\d+ mm.*\\n  cut from at least (\\d+ x \\d+ mm \\([^)]*\\)): 15\\.0 mm").matcher(run.out());
        assertTrue(told.find(), run.out());
        assertTrue(told.group(2).startsWith(Integer.parseInt(told.group(1)) + 30 + " x "), told.group());
        assertTrue(page().contains("**cut from at least " + told.group(2) + "**"), page());
        assertFalse(flatten(write("cap", CAP), "md").out().contains("cut from at least"));
    }

    /** Tucks of another metal lay beside the new pictures as if they were of the same blank. */
    @Test
    void filesOfAnEarlierRunAreNamed() throws IOException {
        Path cap = write("cap", CAP);
        assertFalse(flatten(cap, "csv,svg,md").out().contains("Also there"));
        Files.writeString(temp.resolve("out/notes.txt"), "of my own");
        Run run = flatten(cap, "csv", "--thickness", "1mm");
        assertTrue(run.out().contains("Also there, from an earlier run and perhaps not of this blank: blank.svg, work-sheet.md. Do not mix them up"), run.out());
        assertFalse(flatten(cap, "csv,svg,md").out().contains("Also there"));
        assertEquals("of my own", Files.readString(temp.resolve("out/notes.txt")));
    }

    /** A zone that splits and is softened twice on the way stood on the work sheet, but not in what was found. */
    @Test
    void findingAndWorkSheetAnnealTheSameZones() throws IOException {
        Path bowl = write("bowl", new SphericalCap(200, Math.toRadians(100)).mesh());
        Run run = flatten(bowl, "md", "--alloy", "3003-O", "--thickness", "1mm");
        Matcher found = Pattern.compile("the blank must be made soft again on the way: (.*?); mind").matcher(run.out());
        assertTrue(found.find(), run.out());
        assertTrue(page().contains("**Anneal on the way:** " + found.group(1) + "."), found.group(1));
        assertTrue(page().contains("**split**"), "no zone splits, so this shows nothing");
    }

    /** One line said "Anneal zone 1 once", the next that this is no job for the shop. */
    @Test
    void whatIsNoJobForTheShopIsNoStepOfTheWork() throws IOException {
        Path bowl = write("bowl", new SphericalCap(200, Math.toRadians(60)).mesh());
        Run.of("flatten", bowl, "--out", temp.resolve("out"), "--formats", "md", "--alloy", "6061-T4", "--thickness", "1mm");
        assertTrue(page().contains("made soft on the way (zone 1 "), page());
        assertTrue(page().contains("**This is no job for the shop.**") && page().contains("that is no job for the shop: take a softer metal, or more pieces."), page());
        assertFalse(page().contains("nneal zone") || page().contains("**Anneal"), page());
    }

    /** "wheel stretchs 2151 cm2". */
    @Test
    void toolsAreToldInEnglish() throws IOException {
        Run run = flatten(write("cap", CAP), "csv", "--thickness", "1mm", "--alloy", "3003-O", "--aim", "work", "--tools", "models/tools/small-shop.yaml");
        assertTrue(run.out().matches("(?s).*\\n  tool: [a-z -]+ shrinks \\d+ cm2 of the form.*"), run.out());
        assertTrue(run.out().matches("(?s).*\\n  tool: [a-z -]+ stretches \\d+ cm2 of the form.*"), run.out());
    }

    /** The blank of a bracket had no line to fold by, and the page said roll it. */
    @Test
    void aBracketIsFoldedByItsLine() throws IOException {
        TriMesh bracket = Forms.grid(20, 12, false, false, (u, v) -> new double[] {u < 0.5 ? 200 * u - 100 : 0, 240 * v, u < 0.5 ? 0 : 200 * u - 100});
        Run run = flatten(write("bracket", bracket), "md,svg", "--thickness", "1mm");
        assertTrue(run.out().contains("\n  fold 1: 90° up, sharp, 240.0 mm (9.449 in, 9 29/64 in) long; its line is on the blank\n"), run.out());
        assertTrue(run.out().contains("Next: cut oversize, fold it by the lines on the blank, and trim it"), run.out());
        assertFalse(run.out().contains("roll 1") || page().contains("**Roll**") || page().contains("**Bend**"), page());
        assertTrue(page().contains("**Fold** about the lines of the table *Folds*") && page().contains("\n| 1 | 90° up | sharp | 240.0 mm (9 29/64 in) |"), page());
        JsonNode fold = summary().get("pieces").get(0).get("folds").get(0);
        assertEquals(90, fold.get("angle_deg").asDouble(), 1e-4);
        assertEquals(240, Math.hypot(fold.get("to_mm").get(0).asDouble() - fold.get("from_mm").get(0).asDouble(),
                fold.get("to_mm").get(1).asDouble() - fold.get("from_mm").get(1).asDouble()), 1e-4);
        assertTrue(Files.readString(temp.resolve("out/blank.svg")).contains("fold: folded about its line"));
    }

    @Test
    void anOutFolderWithoutANameIsRefused() throws IOException {
        Run run = Run.of("flatten", write("cap", CAP), "--out", "");
        assertEquals(ExitCode.WRONG_COMMAND, run.exit());
        assertTrue(run.err().startsWith("--out: no folder is named"), run.err());
    }

    /** The manual's own example had tapes 300 mm off its dish. */
    @Test
    void theManualsTapesLieOnItsDish() throws IOException {
        Matcher yaml = Pattern.compile("```yaml\n([^`]*tapes:[^`]*)```").matcher(Files.readString(Path.of("docs/manual/recipes.md")));
        assertTrue(yaml.find());
        Run run = flatten(Files.writeString(temp.resolve("dish.yaml"), yaml.group(1)), "csv");
        assertFalse(run.out().contains("  found: "), run.out());
        assertEquals(2, summary().get("tapes").size());
    }
}
