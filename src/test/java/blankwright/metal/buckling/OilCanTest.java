package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
}
