package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

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
}
