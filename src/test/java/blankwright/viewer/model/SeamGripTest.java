package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.mesh.Forms;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import blankwright.project.RecipeReader;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A seam is moved by its ends: one that was drawn, and one by which the program opened a tube. */
@Timeout(120)
class SeamGripTest {
    @TempDir Path temp;
    private final Screen screen = new Screen();
    private Bench bench;

    @BeforeEach
    void openATube() throws Exception {
        bench = new Bench(screen, new Settings(temp.resolve("home")), new Autosave(temp.resolve("home/unsaved")));
        try (OutputStream out = Files.newOutputStream(temp.resolve("tube.obj"))) {
            MeshWriter.write(Forms.tube(80, 200, 24, 12), Format.OBJ, out);
        }
        bench.open(Files.writeString(temp.resolve("tube.yaml"), "blankwright-recipe: 1\nname: tube\nmesh: {file: tube.obj, units: mm}\n"));
        settle();
        assertEquals("", bench.troubleProperty().get());
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private void settle() {
        screen.until(() -> !bench.runner().busyProperty().get());
    }

    private Recipe now() {
        return bench.workProperty().get().recipe();
    }

    private Place at(double... xyz) {
        return bench.laidProperty().get().onForm(xyz[0], xyz[1], xyz[2]);
    }

    @Test
    void theSeamThatOpenedATubeIsTakenElsewhere() throws Exception {
        Laid opened = bench.laidProperty().get();
        List<SeamGrip> ends = SeamGrip.all(opened, now());
        assertEquals(2, ends.size());
        SeamGrip end = ends.get(0);
        double[] there = end.at(), stays = ends.get(1).at();
        assertEquals(Optional.of(0.0), bench.seamEnd(at(there), 5).map(g -> distance(g.at(), there)));
        assertEquals(Optional.empty(), bench.seamEnd(at(-there[0], -there[1], there[2]), 5), "the other side of the tube");
        for (double angle : new double[] {0.3, 0.6, 0.9})
            bench.move(end, at(turned(there, angle)), 12);
        bench.letGo();
        settle();
        assertEquals("", bench.troubleProperty().get());
        assertEquals(1, now().seams().size());
        Laid moved = bench.laidProperty().get();
        assertEquals(1, moved.skins().size());
        List<Seam> seams = moved.skins().get(0).piece().seams();
        assertEquals(List.of(Seam.Kind.CHOSEN), seams.stream().map(Seam::kind).toList(), "the program's own is not needed any more");
        SeamGrip now = SeamGrip.all(moved, now()).get(0);
        assertEquals(0, distance(turned(there, 0.9), now.at()), 12);
        assertEquals(0, distance(stays, SeamGrip.all(moved, now()).get(1).at()), 1e-3);
        assertTrue(seams.get(0).length() > Math.hypot(200, 0.8 * 80 * 0.9), "aslant: at least the hypotenuse of its length and what it was turned by");
        Path saved = temp.resolve("elsewhere/tube.yaml");
        assertTrue(bench.save(saved));
        assertArrayEquals(FlattenJob.run(RecipeReader.read(saved), Given.file(saved), Progress.NONE).pieces().get(0).map().positions(),
                moved.skins().get(0).map().positions());
        bench.undo();
        assertEquals(List.of(), now().seams(), "one drag, one step");
    }

    @Test
    void aDrawnSeamIsMovedByEitherEnd() {
        double bottom = SeamGrip.all(bench.laidProperty().get(), now()).stream().mapToDouble(g -> g.at()[2]).min().orElseThrow();
        double top = bottom + 200, middle = bottom + 100;
        DrawnSeam drawn = new DrawnSeam(List.of(new DrawnSeam.Point(80, 0, bottom), new DrawnSeam.Point(80, 0, middle), new DrawnSeam.Point(80, 0, top)));
        assertTrue(bench.change(r -> r.withSeams(List.of(drawn))));
        settle();
        SeamGrip end = bench.seamEnd(at(80, 0, top), 5).orElseThrow(), begin = bench.seamEnd(at(80, 0, bottom), 5).orElseThrow();
        bench.move(end, at(0, 80, top), 5);
        bench.letGo();
        settle();
        List<DrawnSeam.Point> points = now().seams().get(0).points();
        assertEquals(3, points.size());
        assertTrue(points.contains(drawn.points().get(0)) && points.contains(drawn.points().get(1)), "the rest stays");
        assertFalse(points.contains(drawn.points().get(2)));
        assertEquals(0, distance(begin.at(), new double[] {80, 0, bottom}), 1e-9);
        assertEquals(1, now().seams().size());
    }

    private static double[] turned(double[] p, double angle) {
        return new double[] {p[0] * Math.cos(angle) - p[1] * Math.sin(angle), p[0] * Math.sin(angle) + p[1] * Math.cos(angle), p[2]};
    }

    private static double distance(double[] p, double[] q) {
        return Math.hypot(Math.hypot(p[0] - q[0], p[1] - q[1]), p[2] - q[2]);
    }
}
