package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HolesTest {
    /** On a flat sheet a hole takes out its own area, and its rim is as long as it, within the chord. */
    @Test
    void areaAndRim() {
        Hole oblong = new Hole(20, -30, 90, 30), round = Hole.round(-80, 40, 50);
        CrownedPanel panel = new CrownedPanel(300, 200, 0, 0, CrownedPanel.Step.NONE, List.of(oblong, round));
        TriMesh mesh = panel.mesh(Fineness.chord(0.05));
        double around = Math.PI * 30 + 2 * 60 + Math.PI * 50;
        assertEquals(300 * 200 - oblong.area() - round.area(), mesh.area(), 0.05 * around);
        RimLoops loops = RimLoops.of(mesh, EdgeTable.of(mesh));
        assertEquals(3, loops.count());
        double rims = 0;
        for (int i = 0; i < 3; i++) rims += loops.length(mesh, i);
        assertEquals(1000 + around, rims, 0.3);
    }

    /** Every chord of a hole's rim stays within the tolerance of its true edge. */
    @Test
    void rimKeepsTheChord() {
        Random random = new Random(3);
        for (int i = 0; i < 40; i++) {
            double chord = new double[] {0.05, 0.2}[i % 2];
            Hole hole = new Hole(random.nextDouble() * 60 - 30, random.nextDouble() * 40 - 20, 6 + random.nextDouble() * 60, 6 + random.nextDouble() * 60);
            Sample sample = new CrownedPanel(200, 150, 0, 0, CrownedPanel.Step.NONE, List.of(hole)).sample(Fineness.chord(chord));
            RimLoops loops = RimLoops.of(sample.mesh(), EdgeTable.of(sample.mesh()));
            assertEquals(2, loops.count());
            int[] rim = loops.loop(1 - loops.longest(sample.mesh()));
            for (int k = 0; k < rim.length; k++) {
                int a = rim[k], b = rim[(k + 1) % rim.length];
                assertEquals(0, hole.distance(sample.u(a), sample.v(a)), 1e-9);
                assertTrue(Math.abs(hole.distance((sample.u(a) + sample.u(b)) / 2, (sample.v(a) + sample.v(b)) / 2)) <= chord, hole.toString());
            }
        }
    }

    /** A sheet full of holes at odd places is still one surface without slivers. */
    @Test
    void manyHoles() {
        Random random = new Random(11);
        for (int i = 0; i < 6; i++) {
            List<Hole> holes = new ArrayList<>();
            for (int x = -2; x <= 2; x++) {
                for (int y = -1; y <= 1; y++) {
                    double size = 8 + random.nextDouble() * 20;
                    holes.add(new Hole(70 * x + random.nextDouble() * 12, 70 * y + random.nextDouble() * 12, size, random.nextBoolean() ? size
                            : size + random.nextDouble() * 15));
                }
            }
            CrownedPanel panel = new CrownedPanel(420, 280, 25, 20, CrownedPanel.Step.NONE, holes);
            TriMesh mesh = panel.mesh(Fineness.chord(0.2));
            EdgeTable edges = EdgeTable.of(mesh);
            assertEquals(16, RimLoops.of(mesh, edges).count());
            assertEquals(-14, mesh.vertexCount() - edges.edgeCount() + mesh.triangleCount());
            for (int t = 0; t < mesh.triangleCount(); t++) {
                assertTrue(mesh.normal(t)[2] > 0.9);
                for (int k = 0; k < 3; k++) assertTrue(mesh.angle(t, k) > Math.toRadians(3), "sliver " + Math.toDegrees(mesh.angle(t, k)));
            }
        }
    }

    @Test
    void refusesHolesThatMeetOrLeaveTheSheet() {
        assertThrows(UnfitValue.class, () -> panel(Hole.round(140, 0, 20)));
        assertThrows(UnfitValue.class, () -> panel(Hole.round(0, 96, 4)));
        String why = assertThrows(UnfitValue.class, () -> panel(Hole.round(0, 0, 40), Hole.round(30, 0, 30))).getMessage();
        assertTrue(why.contains("holes 1 and 2 are nearer"), why);
        assertThrows(UnfitValue.class, () -> panel(Hole.round(0, 0, 40), Hole.round(0, 0, 10)));
        assertThrows(UnfitValue.class, () -> panel(Hole.round(0, 0, 40), Hole.round(0, 0, 40)));
        assertThrows(UnfitValue.class, () -> panel(new Hole(0, 0, 60, 10), new Hole(0, 0, 10, 60)));
    }

    private static CrownedPanel panel(Hole... holes) {
        return new CrownedPanel(300, 200, 0, 0, CrownedPanel.Step.NONE, List.of(holes));
    }
}
