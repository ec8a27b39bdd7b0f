package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.project.Metal;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import org.junit.jupiter.api.Test;

/** Evenly strained squares, whose numbers are worked out by hand from volume kept and from the judge of one strain. */
class DemandMatchesHandPutFieldTest {
    /** A square of 100 mm on the form whose blank is shorter by the stretches along u and v. */
    private static FlatMap square(double su, double sv) {
        TriMesh form = TriMesh.of(new double[] {0, 0, 0, 100, 0, 0, 100, 100, 0, 0, 100, 0}, new int[] {0, 1, 2, 0, 2, 3});
        double u = 100 / su, v = 100 / sv;
        return FlatMap.of(form, new double[] {0, 0, u, 0, u, v, 0, v});
    }

    private static Demand demand(FlatMap map, String alloy) {
        StrainField field = StrainField.of(map);
        return Demand.of(field, VertexStrain.of(field), Zones.of(field), Metal.shipped(alloy).judge(1.6));
    }

    @Test
    void volumeIsKept() {
        FlatMap map = square(1.10, 1.05);
        SheetThickness thickness = SheetThickness.of(map, VertexStrain.of(StrainField.of(map)), 1.6);
        assertEquals(1.6 / (1.10 * 1.05), thickness.thinnest().mm(), 1e-12);
        assertEquals(1 - 1 / (1.10 * 1.05), thickness.mostLost(), 1e-12);
        assertEquals(1.6 / (1.10 * 1.05), demand(map, "3003-O").zones().get(0).thinnest(), 1e-12);
        FlatMap shrunk = square(0.95, 1);
        assertEquals(1.6 / 0.95, SheetThickness.of(shrunk, VertexStrain.of(StrainField.of(shrunk)), 1.6).thickest().mm(), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> SheetThickness.of(map, VertexStrain.of(StrainField.of(map)), 0));
    }

    @Test
    void marginAndEffectiveStrainAreThoseOfTheOneStrain() {
        Demand demand = demand(square(1.10, 1), "1100-O");
        double e = Math.log(1.10);
        // 1100-O: n 0.20, Y 34, K 180, so at plane strain Hill's neck at n less e0·sqrt(3)/2
        double limit = 0.20 - Math.pow(34.0 / 180, 5) * Math.sqrt(3) / 2;
        assertEquals(e / limit, demand.margin(0), 1e-9);
        assertEquals(e / limit, demand.worst().margin(), 1e-9);
        double r = 0.7;     // Hill with e2 = 0
        assertEquals((1 + r) / Math.sqrt(1 + 2 * r) * e, demand.effective(1), 1e-12);
    }

    @Test
    void theZonesTakeTheVerdictsOfTheMetal() {
        FlatMap map = square(1.30, 1);
        assertEquals(Verdict.HARD, Zones.of(StrainField.of(map)).list().get(0).verdict());
        Zones judged = demand(map, "3003-O").judged(Zones.of(StrainField.of(map)));
        assertEquals(Verdict.SPLIT, judged.list().get(0).verdict());
        FlatMap flat = square(1, 1);
        assertEquals(Verdict.SPRINGS_IN, demand(flat, "3003-O").judged(Zones.of(StrainField.of(flat))).list().get(0).verdict());
    }

    /**
     * A strip of 700 mm along x, strained by one pair of stretches up to x = 100, by another from x = 600 on, evenly from the one to the
     * other between; so narrow that the way between shears it little.
     */
    private static FlatMap strip(double[] left, double[] right) {
        int n = 70;
        double[] xyz = new double[9 * (n + 1)], uv = new double[6 * (n + 1)];
        int[] tri = new int[12 * n];
        double u = 0;
        for (int i = 0; i <= n; i++) {
            double x = 10 * i, part = Math.max(0, Math.min(1, (x - 100) / 500)), before = Math.max(0, Math.min(1, (x - 105) / 500));
            if (i > 0) u += 10 / (left[0] + before * (right[0] - left[0]));
            for (int j = 0; j < 3; j++) {
                int v = 3 * i + j;
                xyz[3 * v] = x;
                xyz[3 * v + 1] = 10 * (j - 1);
                uv[2 * v] = u;
                uv[2 * v + 1] = 10 * (j - 1) / (left[1] + part * (right[1] - left[1]));
            }
        }
        for (int i = 0, p = 0; i < n; i++)
            for (int j = 0; j < 2; j++) {
                int v = 3 * i + j;
                for (int c : new int[] {v, v + 3, v + 4, v, v + 4, v + 1}) tri[p++] = c;
            }
        return FlatMap.of(TriMesh.of(xyz, tri), uv);
    }

    private static Judgement judgement(double s1, double s2) {
        return Metal.shipped("3003-O").judge(1.6).of(Math.log(Math.max(s1, s2)), Math.log(Math.min(s1, s2)));
    }

    /** 21 % of stretch are split, wherever they are; 10 % both ways come nearer to the forming limit and thin more, but are only hard. */
    @Test
    void verdictStandsOnTheHardestPlaceNotOnTheOneNearestItsLimit() {
        Judgement hard = judgement(1.10, 1.10), split = judgement(1.21, 0.84);
        assertEquals(Verdict.HARD, hard.verdict());
        assertEquals(Verdict.SPLIT, split.verdict());
        assertTrue(hard.margin() > 2 * split.margin() && hard.thickness() < split.thickness());
        for (boolean first : new boolean[] {true, false}) {
            FlatMap map = first ? strip(new double[] {1.21, 0.84}, new double[] {1.10, 1.10}) : strip(new double[] {1.10, 1.10}, new double[] {1.21, 0.84});
            Demand demand = demand(map, "3003-O");
            assertEquals(1, demand.zones().size());
            Demand.OfZone zone = demand.zones().get(0);
            assertEquals(Verdict.SPLIT, zone.judgement().verdict());
            assertEquals(first ? 50 : 650, zone.at().x(), 60);
            assertEquals(split.margin(), zone.judgement().margin(), 0.02, "that of the place judged");
            assertTrue(zone.margin() >= hard.margin(), "that of the place nearest its limit: there, or strained in one direction on the way");
            assertEquals(hard.thickness(), zone.thinnest(), 0.005);
            assertEquals(split.effective(), zone.effective(), 0.005);
        }
    }

    /** Both must be annealed: once where it shrinks most, twice where it shrinks both ways. Twice counts. */
    @Test
    void ofTwoPlacesWithOneVerdictTheOneAnnealedMoreOften() {
        Judgement once = judgement(0.755, 1), twice = judgement(0.775, 0.775);
        assertEquals(Verdict.ANNEAL, once.verdict());
        assertEquals(Verdict.ANNEAL, twice.verdict());
        assertEquals(1, once.annealings());
        assertEquals(2, twice.annealings());
        for (boolean first : new boolean[] {true, false}) {
            FlatMap map = first ? strip(new double[] {0.775, 0.775}, new double[] {0.755, 1}) : strip(new double[] {0.755, 1}, new double[] {0.775, 0.775});
            Demand.OfZone zone = demand(map, "3003-O").zones().get(0);
            assertEquals(2, zone.judgement().annealings());
            assertEquals(first ? 50 : 650, zone.at().x(), 60);
        }
    }
}
