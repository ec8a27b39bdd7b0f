package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.Strips;
import blankwright.job.BucklingWords;
import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Result;
import blankwright.job.SensitivityWords;
import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.project.Aim;
import blankwright.project.Clamps;
import blankwright.project.Face;
import blankwright.project.Handwork;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Hole;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was found is told in the units of the switch: every length, place and area of every sentence. */
class FindingsFollowTheSwitchTest {
    private static final Tool JAW = new Tool("jaw shrinker", Instruction.SHRINK, 10, 1);

    @TempDir Path temp;
    private final Set<Kind> seen = EnumSet.noneOf(Kind.class);
    private final List<Sentence> sentences = new ArrayList<>();

    private Result run(Recipe recipe) throws Exception {
        Result result = FlattenJob.run(recipe, Given.file(temp.resolve("panel.obj")), Progress.NONE);
        for (Finding finding : result.findings()) {
            seen.add(finding.kind());
            sentences.add(finding.words());
        }
        result.pieces().forEach(piece -> {
            piece.buckled().ifPresent(b -> sentences.addAll(BucklingWords.of(b)));
            piece.sensitivity().ifPresent(s -> sentences.addAll(SensitivityWords.of(s)));
        });
        return result;
    }

    private Recipe mesh(TriMesh mesh) throws Exception {
        try (OutputStream out = Files.newOutputStream(temp.resolve("panel.obj"))) {
            MeshWriter.write(mesh, Format.OBJ, out);
        }
        return Recipe.ofMesh("panel", "panel.obj", Optional.of(LengthUnit.MM));
    }

    @Test
    void noMillimetreIsLeftInAnySentence() throws Exception {
        Recipe dish = Recipe.of("dish", new SphericalCap(300, Math.toRadians(25))).withChord(1).withMetal(Optional.of(Metal.shipped("1100-O")))
                .withSheet(OptionalDouble.of(0.8), Face.OUTSIDE);
        run(dish.withMetal(Optional.of(Metal.shipped("6061-T6"))).withSource(new Source.OfPanel(new SphericalCap(120, Math.toRadians(80)))));
        run(dish.withClamps(Optional.of(Clamps.CALM)).withSensitivity(true));
        run(dish.withAim(Aim.WORK).withHandwork(new Handwork(0, List.of(JAW), Optional.empty())));
        run(Recipe.of("skin", new CrownedPanel(400, 300, 20, 10, CrownedPanel.Step.NONE, List.of(Hole.round(0, 0, 40), Hole.round(90, 0, 20))))
                .withChord(1).withSeams(List.of(new DrawnSeam(List.of(new DrawnSeam.Point(-196, 58.9, -20.8), new DrawnSeam.Point(196, 58.9, -20.8))))));
        run(mesh(Forms.tube(80, 200, 24, 12)));
        run(mesh(Strips.ring(500, 80, 320, 63, 12)));
        run(mesh(Forms.tube(3, 6, 24, 12)));
        run(mesh(TorusSection.grid(Math.toRadians(120), Math.toRadians(140), 300, 90, 4000)).withDetail(OptionalDouble.of(0.4)));
        for (Kind kind : List.of(Kind.MOVED_TO_MIDDLE, Kind.BEYOND_REACH, Kind.SEAM_CHOSEN, Kind.SEAM_ADDED, Kind.SEAM_PROPOSED, Kind.HOLES, Kind.REDUCED,
                Kind.UNUSUAL_SIZE, Kind.THINNED, Kind.PAST_FORMING_LIMIT)) assertTrue(seen.contains(kind), kind + " is not among " + seen);
        int lengths = 0;
        for (Sentence sentence : sentences) {
            String mm = sentence.text(LengthStyle.MM);
            boolean measured = mm.matches(".*\\d\\)? (mm|cm2)\\b.*");
            if (measured) lengths++;
            assertFalse(mm.matches(".*\\d\\)? in\\b(?! one| all).*"), mm);
            for (LengthStyle inch : List.of(LengthStyle.INCH, LengthStyle.FRACTION)) {
                assertFalse(sentence.text(inch).matches(".*\\d\\)? (mm|cm2)\\b.*"), sentence.text(inch));
                assertEquals(measured, sentence.text(inch).matches(".*\\d\\)? (sq )?in\\b.*"), sentence.text(inch));
            }
        }
        assertTrue(lengths > 15, lengths + " of " + sentences.size());
    }

    /** The number told is the same length: 25.4 mm to the inch. */
    @Test
    void theInchesAreThoseOfTheMillimetres() throws Exception {
        run(mesh(Forms.tube(80, 200, 24, 12)));
        Sentence opened = sentences.get(0);
        double mm = number(opened.text(LengthStyle.MM), "along ([0-9.]+) mm"), in = number(opened.text(LengthStyle.INCH), "along ([0-9.]+) in");
        assertEquals(mm, 25.4 * in, 0.07);
        assertEquals(200, mm, 1, "the tube is opened along its length");
    }

    private static double number(String text, String where) {
        Matcher found = Pattern.compile(where).matcher(text);
        assertTrue(found.find(), text);
        return Double.parseDouble(found.group(1));
    }
}
