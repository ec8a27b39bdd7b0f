package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.Strips;
import blankwright.job.Output;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.oracle.HostileFiles;
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
import java.util.Iterator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole program on sound input: exit code, what is said, what is written. */
class FlattenEndToEndTest {
    private static final List<String> ALL = List.of("blank.dxf", "blank.pdf", "blank.svg", "flat.obj", "panel.vtu", "summary.json",
            "work-map-blank.png", "work-map-form.png", "work-sheet.md", "work.csv");
    private static final List<String> ALL_OF_KNOWN_THICKNESS = Stream.concat(ALL.stream(), Stream.of("thickness-blank.png")).sorted().toList();

    @TempDir Path temp;

    static Stream<Path> recipes() throws IOException {
        try (Stream<Path> all = Files.list(Path.of("models"))) {
            return all.filter(p -> p.toString().endsWith(".yaml")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("recipes")
    void everyModelComesOutFit(Path recipe) throws IOException {
        Path out = temp.resolve("packet");
        Run run = Run.of("flatten", recipe, "--out", out);
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertEquals("", run.err());
        List<String> expected = new ArrayList<>(ALL_OF_KNOWN_THICKNESS);
        if (Files.readString(recipe).contains("\nalloy:")) expected.add(expected.indexOf("panel.vtu"), "forming-limit.png");
        assertEquals(expected, names(out));
        JsonNode summary = summary(out);
        assertEquals("converged", summary.get("outcome").asText());
        for (JsonNode piece : summary.get("pieces")) {
            assertEquals(0, piece.get("turned_over").asInt());
            assertFalse(piece.get("overlaps_itself").asBoolean());
            assertTrue(piece.get("energy").get("symmetric_dirichlet_mean").asDouble() >= 4 - 1e-12);
        }
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void everyFormatGivesTheSameBlank(Format format) throws IOException {
        TriMesh dome = HostileFiles.dome();
        Path plain = Files.write(temp.resolve("dome"), HostileFiles.written(dome, format));
        Path zipped = Files.write(temp.resolve("dome.gz"), HostileFiles.zipped(HostileFiles.written(dome, format)));
        Path obj = Files.write(temp.resolve("dome.obj"), HostileFiles.written(dome, Format.OBJ));
        JsonNode expected = flattened(obj).get("pieces").get(0), seen = flattened(plain).get("pieces").get(0);
        double float32 = format.name().startsWith("STL") ? 1e-6 : 1e-12;        // STL holds 24 bits of a number
        assertEquals(expected.get("triangles"), seen.get("triangles"));
        assertEquals(expected.get("flat_area_mm2").asDouble(), seen.get("flat_area_mm2").asDouble(), float32 * 1e4);
        assertEquals(expected.get("outline_mm").asDouble(), seen.get("outline_mm").asDouble(), float32 * 1e3);
        assertEquals(seen, flattened(zipped).get("pieces").get(0));
    }

    @ParameterizedTest
    @ValueSource(strings = {"m", "cm", "in", "ft"})
    void unitsScaleTheBlank(String unit) throws IOException {
        double factor = switch (unit) {
            case "m" -> 1000;
            case "cm" -> 10;
            case "in" -> 25.4;
            default -> 304.8;
        };
        double[] xyz = HostileFiles.dome().positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] /= factor;
        Path file = Files.write(temp.resolve("dome.obj"), HostileFiles.written(HostileFiles.dome().withPositions(xyz), Format.OBJ));
        Path reference = Files.write(temp.resolve("mm.obj"), HostileFiles.written(HostileFiles.dome(), Format.OBJ));
        JsonNode expected = flattened(reference), seen = flattened(file, "--units", unit);
        assertEquals(unit, seen.get("input").get("units").asText());
        assertEquals(expected.get("pieces").get(0).get("outline_mm").asDouble(), seen.get("pieces").get(0).get("outline_mm").asDouble(), 1e-8);
        assertEquals(expected.get("input").get("area_mm2").asDouble(), seen.get("input").get("area_mm2").asDouble(), 1e-6);
    }

    /** A seam from a recipe parts the panel; both pieces bear its marks, and what it cannot be is said with its number. */
    @Test
    void aChosenSeamIsMarkedOnBothPieces() throws IOException {
        Path mesh = Files.write(temp.resolve("plate.obj"), HostileFiles.written(Forms.plate(300, 200, 30, 20), Format.OBJ));
        Path recipe = Files.writeString(temp.resolve("plate.yaml"), "blankwright-recipe: 1\nname: plate\nmesh: plate.obj\nseams:\n"
                + "  - [[100, 0, 0], [100, 200, 0]]\n");
        Path out = temp.resolve("plate");
        Run run = Run.of("flatten", recipe, "--out", out);
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertTrue(run.out().contains("seam 1 as asked for: 200.0 mm from (100.0, 0.0, 0.0) mm to (100.0, 200.0, 0.0) mm"), run.out());
        JsonNode pieces = summary(out).get("pieces");
        assertEquals(2, pieces.size());
        assertEquals(40_000, pieces.get(0).get("flat_area_mm2").asDouble(), 1e-6);
        assertEquals(20_000, pieces.get(1).get("flat_area_mm2").asDouble(), 1e-6);
        Files.writeString(recipe, "blankwright-recipe: 1\nname: plate\nmesh: plate.obj\nseams:\n  - [[100, 0, 80], [100, 200, 0]]\n");
        Run refused = Run.of("flatten", recipe, "--out", out);
        assertEquals(ExitCode.BAD_INPUT, refused.exit());
        assertTrue(refused.err().contains("plate.yaml: seam 1: point 1 (100.0, 0.0, 80.0) mm lies 80.0 mm off the panel"), refused.err());
    }

    @Test
    void theSummaryHasItsKeysInTheirOrder() throws IOException {
        JsonNode root = flattened(Files.write(temp.resolve("dome.obj"), HostileFiles.written(HostileFiles.dome(), Format.OBJ)));
        assertEquals(List.of("blankwright", "input", "reduced", "aim", "outcome", "steps", "findings", "pieces", "tapes", "proposal", "seconds", "peak_memory_mb"), keys(root));
        assertEquals(List.of("name", "units", "vertices", "triangles", "area_mm2", "size_mm"), keys(root.get("input")));
        JsonNode piece = root.get("pieces").get(0);
        assertEquals(List.of("triangles", "form_area_mm2", "flat_area_mm2", "flat_size_mm", "outline_mm", "holes", "turned_over",
                "overlaps_itself", "energy", "strain", "thickness_mm", "metal", "tools", "rolled", "flanges", "folds", "buckling", "sensitivity"), keys(piece));
        assertEquals(List.of("symmetric_dirichlet_mean", "arap_mean", "work_J"), keys(piece.get("energy")));
        assertEquals(List.of("stretch_max", "shrink_max", "area_gain_max", "area_loss_max"), keys(piece.get("strain")));
        assertEquals(List.of("min", "max"), keys(piece.get("thickness_mm")));
        assertEquals(List.of("read", "prepare", "flatten", "write", "total"), keys(root.get("seconds")));
        assertTrue(piece.get("energy").get("work_J").isNull());
        assertTrue(piece.get("thickness_mm").get("min").isNull());
        assertEquals("dome.obj", root.get("input").get("name").asText());
    }

    /** Closed form: the least and largest of t0 / (stretch1 stretch2), docs/theory/strain.md; here against the area strains of the summary. */
    @Test
    void thicknessFollowsFromTheAreaKept() throws IOException {
        JsonNode piece = flattened(write("cap", new SphericalCap(500, Math.toRadians(30)).mesh()), "--thickness", "1.2mm").get("pieces").get(0);
        assertEquals(1.2 / (1 + piece.get("strain").get("area_gain_max").asDouble()), piece.get("thickness_mm").get("min").asDouble(), 1e-12);
        assertEquals(1.2 / (1 - piece.get("strain").get("area_loss_max").asDouble()), piece.get("thickness_mm").get("max").asDouble(), 1e-12);
    }

    /** Closed form: the middle of a sheet t thick lies at R - t/2 below an outside of radius R; a half round is developable, R - t/2 times π wide. */
    @Test
    void theFaceMovesTheFormToTheMiddleOfTheSheet() throws IOException {
        Path file = write("half-round", new Cylinder(100, 200, Math.PI).mesh(Fineness.chord(0.001)));
        double middle = width(flattened(file)), outside = width(flattened(file, "--face", "outside", "--thickness", "2mm")),
                inside = width(flattened(file, "--face", "inside", "--thickness", "2mm"));
        assertEquals(100 * Math.PI, middle, 0.01);
        assertEquals(99 * Math.PI, outside, 0.03);
        assertEquals(101 * Math.PI, inside, 0.03);
    }

    /** A recipe leaves metal on to trim; {@code --trim none} takes it away: no TRIM line is left beside the cut. */
    @Test
    void theCommandLineTakesARecipesAllowanceAway() throws IOException {
        Path recipe = Files.writeString(temp.resolve("bowl.yaml"), """
                blankwright-recipe: 1
                name: bowl
                panel: {kind: spherical-cap, radius: 300mm, half-angle: 20deg}
                trim: 15mm
                """);
        String with = trimmed(recipe, "with"), without = trimmed(recipe, "without", "--trim", "none");
        assertTrue(with.contains("TRIM"), "the allowance of the recipe");
        assertTrue(!without.contains("15.0 mm outside"), "no allowance left");
        assertTrue(without.length() < with.length());
    }

    private String trimmed(Path recipe, String name, String... more) throws IOException {
        List<Object> words = new ArrayList<>(List.of("flatten", recipe, "--out", temp.resolve(name), "--formats", "svg"));
        words.addAll(List.of(more));
        assertEquals(ExitCode.DONE, Run.of(words.toArray()).exit());
        return Files.readString(temp.resolve(name).resolve("blank.svg"));
    }

    /** Gauss and Bonnet, closed form: a cap of half angle c carries 2π(1 - cos c), 48.2° at 30°, less the half rings of triangles at its rim. */
    @Test
    void theCrownOfACapIsToldInDegrees() throws IOException {
        String said = Run.of("flatten", write("cap", new SphericalCap(500, Math.toRadians(30)).mesh()), "--out", temp.resolve("crown")).said();
        var crown = java.util.regex.Pattern.compile("crown: (\\d+) degrees bowl and 0 degrees saddle").matcher(said);
        assertTrue(crown.find(), said);
        assertEquals(360 * (1 - Math.cos(Math.toRadians(30))), Integer.parseInt(crown.group(1)), 4);
    }

    private static double width(JsonNode summary) {
        JsonNode size = summary.get("pieces").get(0).get("flat_size_mm");
        return Math.max(size.get(0).asDouble(), size.get(1).asDouble());
    }

    @Test
    void aFaceWithoutAThicknessIsNotMovedAndSaysSo() throws IOException {
        Path file = write("cap", new SphericalCap(500, Math.toRadians(20)).mesh());
        JsonNode plain = flattened(file), face = flattened(file, "--face", "outside");
        assertEquals(plain.get("pieces"), face.get("pieces"));
        assertEquals("not-moved", face.get("findings").get(0).get("kind").asText());
    }

    /** A closed tube wall: outside, inside and the two edges between them. */
    @Test
    void aSheetDrawnWithBothItsFacesIsPointedOut() throws IOException {
        TriMesh wall = Forms.grid(24, 4, true, true, (u, v) -> {
            double r = v < 0.5 ? 100 : 98.5, h = v == 0.25 || v == 0.5 ? 60 : 0;
            return new double[] {r * Math.cos(2 * Math.PI * u), r * Math.sin(2 * Math.PI * u), h};
        });
        JsonNode finding = flattened(write("wall", wall)).get("findings").get(0);
        assertEquals("two-faces", finding.get("kind").asText());
        assertTrue(finding.get("text").asText().contains("about 1.5 mm thick"), finding.toString());
    }

    @Test
    void onlyTheFormatsAskedForAreWritten() throws IOException {
        Path file = write("cap", new SphericalCap(300, Math.toRadians(20)).mesh());
        for (Output output : Output.values()) {
            Path out = temp.resolve(output.word());
            assertEquals(ExitCode.DONE, Run.of("flatten", file, "--out", out, "--formats", output.word()).exit());
            List<String> expected = new ArrayList<>(ALL.stream()
                    .filter(n -> n.endsWith("." + output.word()) || n.equals("summary.json")).toList());
            assertEquals(expected, names(out));
        }
    }

    @Test
    void theFolderIsNamedAfterTheInput() throws IOException {
        Path file = write("cap", new SphericalCap(300, Math.toRadians(20)).mesh());
        Path here = Path.of(file.getFileName().toString().replace(".obj", ""));
        try {
            Run run = Run.of("flatten", file, "--formats", "csv");
            assertEquals(ExitCode.DONE, run.exit());
            assertEquals(List.of("summary.json", "work.csv"), names(here));
        } finally {
            for (String name : names(here)) Files.delete(here.resolve(name));
            Files.delete(here);
        }
    }

    /** Two turns of a strip wound up like a clock spring but in its own plane: it is flat already and covers itself. */
    @Test
    void aBlankThatCoversItselfIsWrittenAndMustNotBeCut() throws IOException {
        int n = 400;
        double[] xyz = new double[6 * (n + 1)];
        int[] tri = new int[6 * n];
        for (int i = 0; i <= n; i++) {
            double angle = 3 * Math.PI * i / n;
            for (int k = 0; k < 2; k++) {
                double r = 100 + 40 * k;
                xyz[6 * i + 3 * k] = r * Math.cos(angle);
                xyz[6 * i + 3 * k + 1] = r * Math.sin(angle);
                xyz[6 * i + 3 * k + 2] = 2.0 * i / n;
            }
        }
        for (int i = 0; i < n; i++) {
            int a = 2 * i;
            System.arraycopy(new int[] {a, a + 1, a + 2, a + 1, a + 3, a + 2}, 0, tri, 6 * i, 6);
        }
        Path out = temp.resolve("packet");
        Run run = Run.of("flatten", write("ramp", TriMesh.of(xyz, tri)), "--out", out, "--trim", "5mm", "--sensitivity");
        assertEquals(ExitCode.UNSAFE_TO_CUT, run.exit(), run.said());
        assertTrue(run.out().contains("DO NOT CUT: the blank covers itself"), run.out());
        assertTrue(run.out().contains("sensitivity was not computed: a blank that must not be cut as it is tells nothing."), run.out());
        List<String> shown = new ArrayList<>(ALL);
        for (String name : List.of("blank.dxf", "blank.pdf", "blank.svg", "work-map-blank.png", "work-map-form.png")) shown.add("with-seam-" + name);
        shown.add("with-seam.yaml");
        assertEquals(shown.stream().sorted().toList(), names(out));
        JsonNode seams = summary(out).get("proposal").get("seams");
        assertEquals(1, seams.size());
        assertEquals(40, seams.get(0).get("length_mm").asDouble(), 1e-3);
        assertTrue(run.out().contains("seam 1: 40.0 mm from"), run.out());
        Path taken = temp.resolve("taken");
        Run again = Run.of("flatten", out.resolve("with-seam.yaml"), "--out", taken);
        assertEquals(ExitCode.DONE, again.exit(), again.said());
        assertEquals(2, summary(taken).get("pieces").size());
        assertEquals(summary(out).get("proposal").get("pieces"), summary(taken).get("pieces"));
        assertTrue(summary(taken).get("proposal").isNull());
        assertEquals(Files.readString(out.resolve("with-seam-blank.dxf")), Files.readString(taken.resolve("blank.dxf")));
        assertTrue(summary(out).get("pieces").get(0).get("overlaps_itself").asBoolean());
        assertTrue(Files.readString(out.resolve("blank.dxf")).contains("DO NOT CUT"), "the blank itself does not say so");
    }

    /** Ends that lap by ten degrees need no seam. */
    @Test
    void aSmallLapIsPulledApart() throws IOException {
        Path out = temp.resolve("lap");
        Run run = Run.of("flatten", write("lap", Strips.ring(370, 80, 120, 92, 8)), "--out", out, "--formats", "dxf");
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertTrue(run.out().contains("the blank covered itself and was pulled apart; its mean energy rose from 4.000000 to 4.0000"), run.out());
        assertFalse(summary(out).get("pieces").get(0).get("overlaps_itself").asBoolean());
    }

    /** A flat C of a full turn whose ends touch; a cone with a slit of a hundredth of a degree, whose blank is half a ring by geometry. */
    @Test
    void endsThatTouchNeedNoSeam() throws IOException {
        TriMesh cone = Forms.grid(90, 6, false, false, (u, v) -> {
            double a = Math.toRadians(359.99) * u, s = 200 - 150 * v;
            return new double[] {s / 2 * Math.cos(a), s / 2 * Math.sin(a), -s * Math.sqrt(0.75)};
        });
        for (TriMesh mesh : List.of(Strips.ring(360, 80, 120, 90, 8), Strips.ring(360, 98, 102, 90, 2), cone)) {
            Path out = temp.resolve("touching");
            Run run = Run.of("flatten", write("touching", mesh), "--out", out, "--formats", "dxf");
            assertEquals(ExitCode.DONE, run.exit(), run.said());
            assertEquals(1, summary(out).get("pieces").size(), run.out());
        }
    }

    /** 1000 degrees take three pieces of up to a full turn, so two seams. */
    @Test
    void aHelixIsPartedByTheFewestSeams() throws IOException {
        Path out = temp.resolve("helix");
        Run run = Run.of("flatten", write("helix", Strips.ring(1000, 90, 110, 250, 4)), "--out", out, "--formats", "dxf");
        assertEquals(ExitCode.UNSAFE_TO_CUT, run.exit(), run.said());
        JsonNode proposal = summary(out).get("proposal");
        assertEquals(2, proposal.get("seams").size(), run.out());
        assertEquals(3, proposal.get("pieces").size(), run.out());
        for (JsonNode piece : proposal.get("pieces")) assertFalse(piece.get("overlaps_itself").asBoolean());
    }

    @Test
    void severalPartsBecomeSeveralPieces() throws IOException {
        TriMesh dome = HostileFiles.dome();
        int n = dome.vertexCount(), m = dome.triangleCount();
        double[] xyz = new double[6 * n];
        int[] tri = new int[6 * m];
        for (int i = 0; i < 3 * n; i++) {
            xyz[i] = dome.positions()[i];
            xyz[3 * n + i] = dome.positions()[i] + 1000;
        }
        for (int i = 0; i < 3 * m; i++) {
            tri[i] = dome.corners()[i];
            tri[3 * m + i] = n + dome.corners()[i];
        }
        Path out = temp.resolve("packet");
        Run run = Run.of("flatten", write("pair", TriMesh.of(xyz, tri)), "--out", out);
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        assertTrue(run.out().contains("Piece 1:") && run.out().contains("Piece 2:"), run.out());
        assertEquals(2, summary(out).get("pieces").size());
        List<String> flat = Files.readAllLines(out.resolve("flat.obj"));
        assertTrue(flat.contains("g piece1") && flat.contains("g piece2"));
        assertEquals(2 * m, flat.stream().filter(l -> l.startsWith("f ")).count());
    }

    /** Real meshes, in metres, as a user would receive them; tank.obj is a tube that has to be opened. */
    @ParameterizedTest
    @ValueSource(strings = {"rear-mudguard.obj", "seat-pan.obj", "tank.obj"})
    void realMeshesComeOutFlat(String name) throws IOException {
        Path file = Path.of("../shared/corpus", name);
        Assumptions.assumeTrue(Files.exists(file), "the corpus is not beside the project");
        assertEquals(ExitCode.BAD_INPUT, Run.of("flatten", file, "--out", temp.resolve("mm")).exit());
        Path out = temp.resolve("packet");
        Run run = Run.of("flatten", file, "--units", "m", "--out", out);
        assertTrue(run.exit() == ExitCode.DONE || run.exit() == ExitCode.UNSAFE_TO_CUT, run.said());
        JsonNode summary = summary(out);
        assertEquals("converged", summary.get("outcome").asText());
        assertEquals(0, summary.get("pieces").get(0).get("turned_over").asInt());
        assertEquals(ALL, names(out));
    }

    private JsonNode flattened(Path file, String... options) throws IOException {
        Path out = temp.resolve("packet");
        List<Object> args = new ArrayList<>(List.of("flatten", file, "--out", out, "--formats", "csv"));
        args.addAll(List.of(options));
        Run run = Run.of(args.toArray());
        assertEquals(ExitCode.DONE, run.exit(), run.said());
        return summary(out);
    }

    private Path write(String name, TriMesh mesh) throws IOException {
        Path file = temp.resolve(name + ".obj");
        try (OutputStream to = Files.newOutputStream(file)) {
            MeshWriter.write(mesh, Format.OBJ, to);
        }
        return file;
    }

    private static JsonNode summary(Path out) throws IOException {
        return new ObjectMapper().readTree(out.resolve("summary.json").toFile());
    }

    private static List<String> keys(JsonNode node) {
        List<String> names = new ArrayList<>();
        for (Iterator<String> it = node.fieldNames(); it.hasNext();) names.add(it.next());
        return names;
    }

    private static List<String> names(Path dir) throws IOException {
        try (Stream<Path> all = Files.list(dir)) {
            return List.copyOf(new TreeSet<>(all.map(p -> p.getFileName().toString()).toList()));
        }
    }
}
