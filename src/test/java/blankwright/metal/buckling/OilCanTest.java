package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Hand-worked: the parameter 2 (3 (1 - ν²))^¼ √(h/t), the perfect sphere's pressure, the length a crown needs. */
class OilCanTest {
    private static final Sheet SHEET = Sheet.elastic(68_900, 0.33, 1);

    @Test
    void parameterIsThatOfTheRise() {
        OilCan can = OilCan.of(2000, 150, SHEET);
        assertEquals(150 * 150 / 4000.0, can.crown(), 1e-12);
        assertEquals(2 * Math.pow(3 * (1 - 0.33 * 0.33), 0.25) * Math.sqrt(can.crown()), can.parameter(), 1e-9);
        double perfect = 2 * 68_900 / (2000.0 * 2000 * Math.sqrt(3 * (1 - 0.33 * 0.33)));
        assertEquals(perfect * (0.14 + 3.2 / (can.parameter() * can.parameter())), can.pressure(), 1e-12);
        assertEquals(can.pressure() * Math.PI * 150 * 150, can.push(), 1e-9);
    }

    /** Trade facts, derived: 12.7 mm of crown over 1220 mm is 0.35 mm of extra length. */
    @Test
    void aWholeCrownIsAThirdOfAMillimetre() {
        double half = 609.6, radius = half * half / (2 * 12.7);
        assertEquals(0.35, OilCan.of(radius, half, SHEET).spareLength(), 0.005);
    }

    @Test
    void verdicts() {
        assertEquals(OilCan.Verdict.SOFT, OilCan.of(20_000, 150, SHEET).verdict(), "rise 0.56 mm, half the thickness");
        assertEquals(OilCan.Verdict.SNAPS, OilCan.of(24_000, 600, SHEET).verdict(), "rise 7.5 mm over 1.2 m");
        assertEquals(OilCan.Verdict.STANDS, OilCan.of(500, 150, SHEET).verdict());
        assertEquals(OilCan.Verdict.HIGH_CROWN, OilCan.of(290, 150, SHEET).verdict());
    }

    @Test
    void measuresThePanel() {
        TriMesh disc = Plates.disc(150, 12);
        boolean[] rim = new boolean[disc.vertexCount()];
        for (int v = 0; v < rim.length; v++) rim[v] = Math.hypot(disc.x(v), disc.y(v)) > 149.9;
        OilCan can = OilCan.of(disc, 1 / (2000.0 * 2000), rim, SHEET).orElseThrow();
        assertEquals(150, can.halfSpan(), 1e-9);
        assertEquals(2000, can.radius(), 1e-9);
        assertEquals(OilCan.Verdict.NO_CROWN, OilCan.of(disc, -1e-6, rim, SHEET).orElseThrow().verdict());
        assertTrue(OilCan.of(disc, 1e-6, new boolean[rim.length], SHEET).isEmpty(), "no edge to hold");
    }

    private static TriMesh bowed(TriMesh flat, double alongX, double alongY) {
        double[] xyz = flat.positions();
        for (int v = 0; v < flat.vertexCount(); v++)
            xyz[3 * v + 2] = -alongX * xyz[3 * v] * xyz[3 * v] / 2 - alongY * xyz[3 * v + 1] * xyz[3 * v + 1] / 2;
        return flat.withPositions(xyz);
    }

    private static OilCan computed(TriMesh panel, double gaussian, Sheet sheet) {
        boolean[] rim = new boolean[panel.vertexCount()];
        RimLoops rims = RimLoops.of(panel, EdgeTable.of(panel));
        for (int v : rims.loop(0)) rim[v] = true;
        return OilCan.of(panel, gaussian, rim, sheet).orElseThrow().computed(panel, rim, sheet, () -> false);
    }

    /** λ 4.5: of the perfect sphere's pressure 0.59 clamped (see the test of pressed panels), whichever way the triangles face. */
    @Test
    void computedOnThePanelItself() {
        double radius = 150 * 150 * Math.sqrt(12 * (1 - 0.33 * 0.33)) / (4.5 * 4.5);
        TriMesh cap = bowed(Plates.disc(150, 12), 1 / radius, 1 / radius);
        OilCan can = computed(cap, 1 / (radius * radius), SHEET);
        double perfect = 2 * 68_900 / (radius * radius * Math.sqrt(3 * (1 - 0.33 * 0.33))) * Math.PI * 150 * 150;
        assertEquals(0.594, can.held().get(0).snap() / perfect, 0.02);
        assertEquals(OilCan.Edge.CLAMPED, can.held().get(0).edge());
        assertEquals(1.33, can.held().get(0).linear() / perfect, 0.04);
        assertEquals(OilCan.Verdict.STANDS, can.verdict());
        assertEquals(Math.min(can.held().get(0).snap(), can.held().get(1).snap()), can.push(), 1e-9 * can.push());
        int[] tri = cap.corners();
        for (int t = 0; t < tri.length; t += 3) {
            int b = tri[t + 1];
            tri[t + 1] = tri[t + 2];
            tri[t + 2] = b;
        }
        OilCan turned = computed(TriMesh.of(cap.positions(), tri), 1 / (radius * radius), SHEET);
        for (int i = 0; i < 2; i++) assertEquals(can.held().get(i).snap(), turned.held().get(i).snap(), 0.02 * can.held().get(i).snap());
    }

    /** What no formula of caps tells: a sheet bowed one way only snaps, a flat one and a saddle have nothing to lose. */
    @Test
    void bowedOneWayFlatAndSaddle() {
        TriMesh flat = Plates.rectangle(600, 400, 24, 16);
        assertEquals(OilCan.Verdict.UNKNOWN, computed(bowed(Plates.rectangle(600, 400, 12, 8), 1 / 4000.0, 0), 0, SHEET).verdict());
        assertEquals(OilCan.Verdict.SNAPS, computed(bowed(flat, 1 / 4000.0, 0), 0, Sheet.elastic(68_900, 0.33, 0.6)).verdict());
        assertEquals(OilCan.Verdict.NO_CROWN, computed(flat, 0, SHEET).verdict());
        assertEquals(OilCan.Verdict.NO_CROWN, computed(bowed(flat, 1 / 4000.0, -1 / 4000.0), -1 / 16e6, SHEET).verdict());
        OilCan soft = computed(bowed(Plates.disc(150, 8), 1 / 20_000.0, 1 / 20_000.0), 1 / 4e8, SHEET);
        assertEquals(OilCan.Verdict.SOFT, soft.verdict());
        assertTrue(soft.held().get(0).soft() && Double.isInfinite(soft.held().get(0).snap()) && soft.held().get(0).linear() > 0);
    }

    @Test
    void saysHowFineTheMeshMustBe() {
        TriMesh coarse = bowed(Plates.disc(150, 3), 1 / 2000.0, 1 / 2000.0);
        OilCan can = computed(coarse, 1 / 4e6, SHEET);
        assertEquals(OilCan.of(2000, 150, SHEET).verdict(), can.verdict());
        assertTrue(can.held().isEmpty());
        assertEquals(0.5 * Math.sqrt(2000 / Math.sqrt(2)), can.fineEnough(), 2, "half of √(R t), R a little small to be sure");
        assertTrue(can.triangles(coarse, SHEET) > coarse.triangleCount());
    }
}
