package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.drawing.Drawing;
import blankwright.drawing.Entity;
import blankwright.flatten.Strips;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is proposed for a blank that covers itself, and its marks. */
class SeamMarksTest {
    @TempDir Path temp;

    private Result run(TriMesh mesh) throws Exception {
        Path file = temp.resolve("panel.obj");
        try (OutputStream out = Files.newOutputStream(file)) {
            MeshWriter.write(mesh, Format.OBJ, out);
        }
        return FlattenJob.run(Recipe.ofMesh("panel", "panel.obj", Optional.of(LengthUnit.MM)), Given.file(file), Progress.NONE);
    }

    /** Each name stands once on each of the two pieces that meet there. */
    @Test
    void bothSidesOfAProposedSeamBearTheSameMarks() throws Exception {
        Result covered = run(Strips.ring(500, 80, 320, 63, 12));
        Proposal proposal = covered.proposal().orElseThrow();
        assertEquals(240, proposal.lines().get(0).length(), 0.1);
        assertEquals(2, proposal.taken().pieces().size());
        Drawing drawing = Packet.drawing(proposal.taken());
        Map<String, Integer> names = new TreeMap<>();
        for (Entity entity : drawing.entities())
            if (entity instanceof Entity.Text text && text.text().matches("[A-Z]+-\\d+")) names.merge(text.text(), 1, Integer::sum);
        assertEquals(Map.of("A-1", 2, "A-2", 2), names);
    }

    /** A slit ring needs neither, and no proposal is made. */
    @Test
    void whatIsSoundGetsNoProposal() throws Exception {
        Result sound = run(Strips.ring(340, 80, 120, 85, 8));
        assertEquals(Optional.empty(), sound.proposal());
        assertEquals(List.of(), sound.warnings());
    }
}
