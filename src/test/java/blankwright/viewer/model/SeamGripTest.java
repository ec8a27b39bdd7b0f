package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.num.Progress;
import blankwright.project.RecipeReader;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A seam is moved by its ends: one that was drawn, and one by which the program opened a tube. */
@Timeout(120)
class SeamGripTest extends AtABench {
    @BeforeEach
    void openATube() throws Exception {
        try (OutputStream out = Files.newOutputStream(temp.resolve("tube.obj"))) {
            MeshWriter.write(Forms.tube(80, 200, 24, 12), Format.OBJ, out);
        }
        openedWell(Files.writeString(temp.resolve("tube.yaml"), "blankwright-recipe: 1\nname: tube\nmesh: {file: tube.obj, units: mm}\n"));
    }

    @Test
    void theSeamThatOpenedATubeIsTakenElsewhere() throws Exception {
        Laid opened = bench.laidProperty().get();
        List<SeamGrip> ends = SeamGrip.all(opened, now());
        assertEquals(2, ends.size());
        SeamGrip end = ends.get(0);
        double[] there = end.at(), stays = ends.get(1).at();
        Orbit orbit = Orbit.round(opened.frame()).fitting(opened.forms(), 600, 500);
        double[] seen = orbit.seen(there[0], there[1], there[2], 500);
        assertEquals(Optional.of(0.0), under(opened, orbit, seen[0] + 5, seen[1] - 6, Optional.empty()).map(g -> distance(g.at(), there)), "a finger beside it");
        assertEquals(Optional.of(0.0), under(opened, orbit, seen[0], seen[1], Optional.of(there)).map(g -> distance(g.at(), there)));
        assertEquals(Optional.empty(), under(opened, orbit, seen[0] + 10, seen[1] - 8, Optional.empty()), "too far");
        assertEquals(Optional.empty(), under(opened, orbit, seen[0], seen[1], Optional.of(nearer(orbit, there, 100))), "behind another skin");
        assertTrue(under(opened, orbit, seen[0], seen[1], Optional.of(nearer(orbit, there, -100))).isPresent(), "before it");
        Seam added = opened.skins().get(0).piece().seams().get(0);
        TriMesh form = opened.skins().get(0).map().form();
        for (int i = 1; i < added.edgeCount(); i++) {
            int v = added.left(i, 0);
            double[] on = seenAt(opened, new double[] {form.x(v), form.y(v), form.z(v)});
            double[] rim = opened.rimSeen(Orbit.round(opened.frame()), on[0], on[1], 500, 1000).orElseThrow();
            assertTrue(Math.abs(rim[2] - there[2]) < 1e-6 || Math.abs(rim[2] - stays[2]) < 1e-6, "a seam is no rim to be drawn onto");
        }
        for (double angle : new double[] {0.3, 0.6, 0.9})
            bench.move(end, opened.rimSeen(Orbit.round(opened.frame()), seenAt(opened, turned(there, angle))[0] + 3, seenAt(opened, turned(there, angle))[1],
                    500, 40).orElseThrow());
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
        SeamGrip begin = SeamGrip.all(bench.laidProperty().get(), now()).get(1), end = SeamGrip.all(bench.laidProperty().get(), now()).get(0);
        bench.move(end, new double[] {0, 80, top});
        bench.letGo();
        settle();
        List<DrawnSeam.Point> points = now().seams().get(0).points();
        assertEquals(3, points.size());
        assertTrue(points.contains(drawn.points().get(0)), "the other end stays");
        DrawnSeam.Point between = points.get(1);
        assertEquals(80, Math.hypot(between.x(), between.y()), 1, "what lies between is on the skin, half as far round");
        assertEquals(Math.PI / 4, Math.atan2(between.y(), between.x()), 0.15);
        assertEquals(middle, between.z(), 1);
        assertEquals(0, distance(begin.at(), new double[] {80, 0, bottom}), 1e-9);
        assertEquals(1, now().seams().size());
    }

    /** Each of four pieces knows half of each seam; moved, the one keeps its other end. */
    @Test
    void seamsThatCrossAreMovedToo() throws Exception {
        bench.open(Files.writeString(temp.resolve("dish.yaml"), "blankwright-recipe: 1\nname: dish\nchord: 1mm\n"
                + "panel: {kind: spherical-cap, radius: 300mm, half-angle: 30deg}\n"
                + "seams:\n  - [[-150mm, 0mm, 259.8mm], [150mm, 0mm, 259.8mm]]\n  - [[0mm, -150mm, 259.8mm], [0mm, 150mm, 259.8mm]]\n"));
        settle();
        assertEquals("", bench.troubleProperty().get());
        Laid laid = bench.laidProperty().get();
        assertEquals(4, laid.skins().size());
        List<SeamGrip> ends = SeamGrip.all(laid, now());
        assertEquals(4, ends.size());
        for (SeamGrip end : ends) {
            double[] to = turned(end.at(), 0.2);
            List<DrawnSeam> moved = end.moved(to);
            assertEquals(2, moved.size());
            assertTrue(moved.stream().flatMap(s -> s.points().stream()).anyMatch(p -> distance(new double[] {p.x(), p.y(), p.z()}, to) < 1e-2));
        }
    }

    private Optional<SeamGrip> under(Laid laid, Orbit orbit, double x, double y, Optional<double[]> skin) {
        return SeamGrip.under(laid, now(), orbit, x, y, 500, skin);
    }

    private static double[] seenAt(Laid laid, double[] p) {
        return Orbit.round(laid.frame()).seen(p[0], p[1], p[2], 500);
    }

    /** So many mm towards the eye. */
    private static double[] nearer(Orbit orbit, double[] p, double mm) {
        double[] t = orbit.towards();
        return new double[] {p[0] + mm * t[0], p[1] + mm * t[1], p[2] + mm * t[2]};
    }

    private static double[] turned(double[] p, double angle) {
        return new double[] {p[0] * Math.cos(angle) - p[1] * Math.sin(angle), p[0] * Math.sin(angle) + p[1] * Math.cos(angle), p[2]};
    }

    private static double distance(double[] p, double[] q) {
        return Math.hypot(Math.hypot(p[0] - q[0], p[1] - q[1]), p[2] - q[2]);
    }
}
