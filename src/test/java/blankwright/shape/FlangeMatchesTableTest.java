package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Edge strains of checks section 5 [C: exact membrane geometry] and of the shop table trade 2E (same formula, rounded to whole percent). */
class FlangeMatchesTableTest {
    private static FlangeStrip sharp(double radius, double flange, double degrees, FlangeStrip.Edge edge) {
        return new FlangeStrip(radius, Math.PI / 2, 20, flange, 0, Math.toRadians(degrees), edge);
    }

    @ParameterizedTest
    @CsvSource({"100,12,.13636,-.10714", "300,12,.04167,-.03846"})
    void fullFlange(double radius, double flange, double stretch, double shrink) {
        assertEquals(stretch, sharp(radius, flange, 90, FlangeStrip.Edge.CONCAVE).edgeStrain(), 6e-6);
        assertEquals(shrink, sharp(radius, flange, 90, FlangeStrip.Edge.CONVEX).edgeStrain(), 6e-6);
    }

    @ParameterizedTest
    @CsvSource({"30", "60", "120"})
    void partFlange(double degrees) {
        double turned = 12 * (1 - Math.cos(Math.toRadians(degrees)));
        assertEquals(turned / 88, sharp(100, 12, degrees, FlangeStrip.Edge.CONCAVE).edgeStrain(), 1e-14);
        assertEquals(-turned / 112, sharp(100, 12, degrees, FlangeStrip.Edge.CONVEX).edgeStrain(), 1e-14);
    }

    /** Radius and width in inch; the table's largest strains are rounded to 1 %. */
    @ParameterizedTest
    @CsvSource({"3,.5,-14,20", "3,1,-25,50", "3,1.5,-33,100", "6,.75,-11,14", "12,1,-8,9", "24,1.5,-6,7"})
    void shopTable(double radius, double flange, double shrink, double stretch) {
        assertEquals(shrink, 100 * sharp(radius * 25.4, flange * 25.4, 90, FlangeStrip.Edge.CONVEX).edgeStrain(), 0.51);
        assertEquals(stretch, 100 * sharp(radius * 25.4, flange * 25.4, 90, FlangeStrip.Edge.CONCAVE).edgeStrain(), 0.51);
    }

    /** 10, 15, 25 mm of flange along 90 degrees: the edge loses or gains 16, 24, 39 mm (trade 2E, derived). */
    @ParameterizedTest
    @CsvSource({"10,16", "15,24", "25,39"})
    void takeIn(double flange, double mm) {
        for (FlangeStrip.Edge edge : FlangeStrip.Edge.values()) {
            FlangeStrip strip = sharp(150, flange, 90, edge);
            double tip = edge == FlangeStrip.Edge.CONVEX ? 150 + flange : 150 - flange;
            assertEquals(mm, Math.abs(strip.edgeStrain()) * tip * Math.PI / 2, 0.51);
        }
    }

    /** The mesh's free edge has the length the formula says, and the web stays flat with its top up. */
    @Test
    void meshCarriesTheGeometry() {
        for (FlangeStrip.Edge edge : FlangeStrip.Edge.values()) {
            FlangeStrip strip = new FlangeStrip(200, Math.PI / 2, 25, 14, 4, Math.PI / 2, edge);
            TriMesh mesh = strip.mesh(Fineness.chord(0.02));
            double tip = edge == FlangeStrip.Edge.CONVEX ? 204 : 196, lowest = 0, length = 0;
            for (int v = 0; v < mesh.vertexCount(); v++) lowest = Math.min(lowest, mesh.z(v));
            assertEquals(-18, lowest, 1e-9);
            int[] loop = RimLoops.of(mesh, EdgeTable.of(mesh)).loop(0);
            for (int i = 0; i < loop.length; i++) {
                int a = loop[i], b = loop[(i + 1) % loop.length];
                if (mesh.z(a) < -17.999 && mesh.z(b) < -17.999) length += mesh.distance(a, b);
            }
            assertEquals(tip * Math.PI / 2, length, 0.1);
            for (int t = 0; t < mesh.triangleCount(); t++) assertTrue(mesh.normal(t)[2] > -1e-9);
        }
    }
}
