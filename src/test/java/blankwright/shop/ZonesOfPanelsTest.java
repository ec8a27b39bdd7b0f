package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.shape.FlangedOpening;
import blankwright.shape.Fineness;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.strain.RimChange;
import blankwright.strain.StrainField;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Zones, lines and stations of panels as they come from the flattener. */
class ZonesOfPanelsTest {
    /**
     * A dish of half angle 30 degrees laid flat by least squares: f(r) = A tan(r/2) - 2 cot(r/2) ln cos(r/2), A = -2 cot²(c/2) ln cos(c/2);
     * edge hoop strain +0.0350688 form to blank, centre -0.0171338 (closed form, checked by one-dimensional minimisation; computed, not
     * published). The middle must be stretched, the rim shrunk by the inverse, and the line runs once round.
     */
    @Test
    void dishIsStretchedInTheMiddleAndShrunkRoundTheRim() {
        double radius = 500, c = Math.toRadians(30), half = c / 2;
        double a = -2 / (Math.tan(half) * Math.tan(half)) * Math.log(Math.cos(half));
        TriMesh cap = new SphericalCap(radius, c).ringMesh(40);
        double[] uv = new double[2 * cap.vertexCount()];
        for (int v = 0; v < cap.vertexCount(); v++) {
            double out = Math.hypot(cap.x(v), cap.y(v)), r = Math.atan2(out, cap.z(v)) / 2;
            if (out == 0) continue;
            double f = radius * (a * Math.tan(r) - 2 / Math.tan(r) * Math.log(Math.cos(r)));
            uv[2 * v] = f * cap.x(v) / out;
            uv[2 * v + 1] = f * cap.y(v) / out;
        }
        FlatMap map = FlatMap.of(cap, uv);
        Zones zones = Zones.of(StrainField.of(map));
        ZonesMatchHandPutFieldsTest.assertPartition(zones);
        assertEquals(2, zones.list().size());
        Zone rim = zones.list().stream().filter(z -> z.instruction() == Instruction.SHRINK).findFirst().orElseThrow();
        Zone middle = zones.list().stream().filter(z -> z.instruction() == Instruction.STRETCH).findFirst().orElseThrow();
        assertEquals(1 / 1.0350688 - 1, rim.largestStrain(), 1e-3);
        assertEquals(1 / (1 - 0.0171338) - 1, middle.largestStrain(), 1e-3);
        double flat = 0.517534 * radius;
        assertTrue(rim.line().blankLength() > 0.97 * 2 * Math.PI * flat && rim.line().blankLength() < 2 * Math.PI * flat, "once round");
        assertEquals(RimChange.of(map).largestTakeIn(), rim.line().takeIn(), 0.1 * rim.line().takeIn(), "nearly the rim's own take-in");
        assertTrue(Math.hypot(middle.worst().u(), middle.worst().v()) < 20);
        assertTrue(Math.hypot(middle.label().u(), middle.label().v()) < 20);
        assertEquals(Verdict.ORDINARY, rim.verdict());
        assertEquals(Verdict.EASY, middle.verdict());
    }

    /** Skin and turned flange are one zone to be stretched; what it tells is the let-out of the flange's edge, not of a line in the skin. */
    @Test
    void flangeRoundAnOpeningTellsTheLetOutOfItsEdge() {
        TriMesh mesh = new FlangedOpening(640, 540, 30, 70, 400, 330, 14, 5, Math.toRadians(85)).mesh(Fineness.chord(0.2));
        FlatMap map = ((Outcome.Converged) Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE)).map();
        Zones zones = Zones.of(StrainField.of(map));
        double letOut = zones.list().stream().filter(z -> z.instruction() == Instruction.STRETCH).mapToDouble(z -> z.line().letOut()).max()
                .orElseThrow();
        double edge = RimChange.of(map).largestLetOut();
        assertTrue(letOut > 0.95 * edge && letOut < edge, letOut + " of " + edge);
    }

    @Test
    void mudguardIsWorkedAlongItsEdges() {
        TriMesh mesh = new TorusSection(330, 95, Math.toRadians(150), Math.toRadians(160)).mesh();
        Outcome outcome = Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
        FlatMap map = Layout.of(List.of(((Outcome.Converged) outcome).map())).get(0);
        StrainField field = StrainField.of(map);
        Zones zones = Zones.of(field);
        ZonesMatchHandPutFieldsTest.assertPartition(zones);
        RimChange rim = RimChange.of(map);
        double outline = rim.loops().get(0).blankLength(), takeIn = 0;
        double stretch = 0, shrink = 0;
        for (Zone zone : zones.list()) {
            assertTrue(zone.line().blankLength() < outline,
                    "zone " + zone.number() + " line " + zone.line().blankLength() + " of " + outline);
            if (zone.instruction() == Instruction.STRETCH) stretch = Math.max(stretch, zone.largestStrain());
            if (zone.instruction() == Instruction.SHRINK) shrink = Math.max(shrink, -zone.largestStrain());
            takeIn = Math.max(takeIn, zone.line().takeIn());
        }
        assertTrue(takeIn > 0.85 * rim.largestTakeIn() && takeIn < rim.largestTakeIn(), takeIn + " of " + rim.largestTakeIn());
        // the largest of means is no larger than the largest of what they are means of; on an even mesh it is little less
        assertTrue(stretch <= field.stretchMax() + 1e-12 && stretch > 0.97 * field.stretchMax(), stretch + " of " + field.stretchMax());
        assertTrue(shrink <= field.shrinkMax() + 1e-12 && shrink > 0.97 * field.shrinkMax(), shrink + " of " + field.shrinkMax());
        assertTrue(map.size()[0] > 3 * map.size()[1], "lies along u");
        TapeLine centre = Stations.of(map).centreLine().get(0);
        double middle = map.size()[1] / 2;
        assertEquals(425 * Math.toRadians(150), centre.formLength(), 1, "outer radius times sweep");
        for (int i = 0; i < centre.pointCount(); i++) assertEquals(middle, centre.v(i), 0.2);
    }
}
