package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Modes put in by hand come out as so many waves, tucks of the width and take-in computed by hand. */
class RimWavesTest {
    private static final double RADIUS = 100;
    private static final TriMesh DISC = Plates.disc(RADIUS, 24);

    /** w = (r/R)^p cos(n φ); hoop strain -e (r/R)². */
    private static RimWaves disc(int n, double p, double e) {
        double[] mode = new double[3 * DISC.vertexCount()];
        for (int v = 0; v < DISC.vertexCount(); v++)
            mode[3 * v + 2] = Math.pow(Math.hypot(DISC.x(v), DISC.y(v)) / RADIUS, p) * Math.cos(n * Math.atan2(DISC.y(v), DISC.x(v)));
        int count = DISC.triangleCount();
        double[] hoop = new double[count], none = new double[count], radial = new double[3 * count];
        for (int t = 0; t < count; t++) {
            double x = 0, y = 0;
            for (int k = 0; k < 3; k++) {
                x += DISC.x(DISC.corner(t, k)) / 3;
                y += DISC.y(DISC.corner(t, k)) / 3;
            }
            double r = Math.hypot(x, y);
            hoop[t] = -e * r * r / (RADIUS * RADIUS);
            radial[3 * t] = x / r;
            radial[3 * t + 1] = y / r;
        }
        return RimWaves.of(DISC, mode, FacetStrain.of(DISC, none, hoop, radial));
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 7, 12})
    void countsTheWavesRoundADisc(int n) {
        RimWaves waves = disc(n, n, 0.001);
        assertArrayEquals(new int[] {n}, waves.waves());
        List<Tuck> tucks = waves.tucks();
        assertEquals(n, tucks.size(), "0.6 mm round the rim: one tuck a wave holds it");
        double takeIn = 0;
        for (Tuck tuck : tucks) {
            takeIn += tuck.takeIn();
            double angle = Math.atan2(DISC.y(tuck.vertex()), DISC.x(tuck.vertex())) * n / (2 * Math.PI);
            assertEquals(0, angle - Math.rint(angle), 0.51 * n / 144, "on a crest: cos is 1 there");
            assertEquals(1, tuck.rounds());
        }
        double rim = 144 * 2 * RADIUS * Math.sin(Math.PI / 144);
        double strain = 0.001 * Math.pow(1 - 1.0 / 72, 2);               // of the triangles at the rim
        assertEquals(rim * strain, takeIn, 0.02 * rim * strain);
    }

    @Test
    void basesDepthsAndRoundsAreTheTrades() {
        Tuck wide = disc(3, 2, 0.001).tucks().get(0), narrow = disc(12, 12, 0.001).tucks().get(0);
        assertEquals(19, wide.base());
        assertEquals(19, narrow.base(), "the half-wave is 26 mm");
        assertEquals(100 * (1 - Math.pow(0.2, 0.5)), wide.depth(), 6, "(r/R)² is a fifth there");
        assertEquals(100 * (1 - Math.pow(0.2, 1 / 12.0)), narrow.depth(), 6);
        double perTuck = 19 * (Math.sqrt(2) - 1) / 2;                   // 3.9 mm stay of a tuck 19 mm wide
        RimWaves much = disc(3, 3, 0.1);                                // about 63 mm to lose in three waves
        double rim = 144 * 2 * RADIUS * Math.sin(Math.PI / 144);
        assertTrue(much.tucks().size() <= rim / 25 && much.tucks().size() >= 14, much.tucks().size() + " tucks at least 25 mm apart");
        for (Tuck tuck : much.tucks()) assertTrue(tuck.takeIn() <= tuck.rounds() * perTuck + 1e-9);
        assertTrue(disc(12, 12, 0.3).tucks().get(0).rounds() > 1);
        assertTrue(disc(5, 5, -0.01).tucks().isEmpty(), "an edge to be stretched gets none");
        assertTrue(disc(1, 1, 0.01).tucks().isEmpty(), "a wave of 628 mm: the disc swings as a whole");
    }

    /** A flange clamped along one side: three half-waves along the other. */
    @Test
    void wavesOfOneEdgeDoNotJoinRoundTheClampedOnes() {
        TriMesh mesh = Plates.rectangle(300, 30, 60, 6);
        double[] mode = new double[3 * mesh.vertexCount()];
        for (int v = 0; v < mesh.vertexCount(); v++) mode[3 * v + 2] = -mesh.y(v) / 30 * Math.sin(Math.PI * mesh.x(v) / 100);
        double[] shrink = Plates.force(mesh, -0.002, 0, 0);
        RimWaves waves = RimWaves.of(mesh, mode, shrink);
        assertArrayEquals(new int[] {2}, waves.waves(), "one and a half, counted up");
        List<Tuck> tucks = waves.tucks();
        assertEquals(1 + (mode[3 * tucks.get(0).vertex() + 2] < 0 ? 1 : 0), tucks.size());
        for (Tuck tuck : tucks) {
            assertEquals(30, mesh.y(tuck.vertex()), 1e-9);
            assertEquals(30 * 0.8, tuck.depth(), 5.1, "w falls in proportion to the distance from the clamp");
        }
    }

    /** A crest at one end of what must lose 120 mm: its tucks do not crowd those of the part beside it. */
    @Test
    void tucksOfPartsBesideEachOtherKeepTheirDistance() {
        TriMesh mesh = Plates.rectangle(600, 120, 120, 24);
        for (double crest : new double[] {20, 60, 150, 190}) {
            double[] mode = new double[3 * mesh.vertexCount()];
            for (int v = 0; v < mesh.vertexCount(); v++) {
                double x = mesh.x(v), up = x < crest ? x / crest : Math.max(0, (200 - x) / (200 - crest));
                mode[3 * v + 2] = Math.max(0, mesh.y(v) / 60 - 1) * up;
            }
            List<Tuck> tucks = RimWaves.of(mesh, mode, Plates.force(mesh, -0.1, 0, 0)).tucks();
            assertTrue(tucks.size() > 20, "" + tucks.size());
            for (Tuck tuck : tucks)
                for (Tuck other : tucks)
                    assertTrue(tuck == other || Math.abs(tuck.place() - other.place()) >= RimWaves.SPACING - 1e-9, tuck + " beside " + other);
        }
    }

    /** A strip with both long edges alike and a mode at a third of one of them: 5 % of 600 mm twice is 60 mm. */
    @Test
    void edgesThatAreAlikeGetTucksAlikeWhereverTheFirstModeIs() {
        TriMesh mesh = Plates.rectangle(600, 120, 120, 24);
        double[] mode = new double[3 * mesh.vertexCount()];
        for (int v = 0; v < mesh.vertexCount(); v++)
            if (mesh.x(v) < 200) mode[3 * v + 2] = Math.max(0, mesh.y(v) / 60 - 1) * Math.sin(Math.PI * mesh.x(v) / 100);
        List<Tuck> tucks = RimWaves.of(mesh, mode, Plates.force(mesh, -0.05, 0, 0)).tucks();
        for (double edge : new double[] {0, 120}) {
            List<Tuck> here = tucks.stream().filter(t -> mesh.y(t.vertex()) == edge).toList();
            assertEquals(600 * Math.expm1(0.05), here.stream().mapToDouble(Tuck::takeIn).sum(), 1.5, "along y = " + edge);
            for (Tuck tuck : here)
                for (Tuck other : here) assertTrue(tuck == other || Math.abs(tuck.place() - other.place()) >= 24, "25 mm apart, or nearly");
        }
        assertEquals(0, tucks.stream().filter(t -> mesh.y(t.vertex()) != 0 && mesh.y(t.vertex()) != 120).count(), "none on the short edges");
        List<Tuck> easy = RimWaves.of(mesh, mode, Plates.force(mesh, -0.015, 0, 0)).tucks();
        assertTrue(easy.stream().allMatch(t -> mesh.y(t.vertex()) == 120 && mesh.x(t.vertex()) <= 205), "below 2 % only where the mode is");
    }

    @Test
    void aModeInsideReachesNoRim() {
        double[] mode = new double[3 * DISC.vertexCount()];
        for (int v = 0; v < DISC.vertexCount(); v++) mode[3 * v + 2] = 1 - Math.pow(Math.hypot(DISC.x(v), DISC.y(v)) / RADIUS, 2);
        RimWaves waves = RimWaves.of(DISC, mode, new double[3 * DISC.triangleCount()]);
        assertArrayEquals(new int[] {0}, waves.waves());
        assertTrue(waves.tucks().isEmpty());
    }
}
