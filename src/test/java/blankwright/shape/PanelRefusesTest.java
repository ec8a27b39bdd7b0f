package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class PanelRefusesTest {
    /** The message names the value, and the parameter is the recipe's word. */
    @Test
    void eachValueOutOfRange() {
        refused("radius", "0 mm", () -> new Cylinder(0, 1, 1));
        refused("length", "NaN", () -> new Cylinder(1, Double.NaN, 1));
        refused("radius", "20 m", () -> new Cylinder(1e9, 1, 1));
        refused("sweep", "400 degrees", () -> new Cylinder(1, 1, Math.toRadians(400)));
        refused("ends", "full 360", () -> new Cylinder(1, 1, 1, Cylinder.Ends.BOTH));
        refused("top-radius", "turn the cone over", () -> new ConeFrustum(50, 60, 10, 1));
        refused("half-angle", "170", () -> new SphericalCap(10, Math.PI));
        refused("tube", "smaller than the ring", () -> new TorusSection(50, 60, 1, 1));
        refused("reach", "1.4 times", () -> new Saddle(100, 150));
        refused("length-rise", "0.45", () -> new CrownedPanel(100, 100, 50, 0));
        refused("step-radius", "smaller radius", () -> new CrownedPanel.Step(2, 10, 5, Math.toRadians(60)));
        refused("flange", "make it narrower", () -> new FlangeStrip(20, 1, 5, 30, 2, 1.5, FlangeStrip.Edge.CONCAVE));
        refused("web", "narrower", () -> new FlangeStrip(20, 1, 25, 3, 2, 1.5, FlangeStrip.Edge.CONVEX));
        refused("opening-length", "leave 5 mm", () -> new FlangedOpening(300, 300, 0, 0, 295, 100, 5, 2, 1.5));
        refused("flange", "rounder opening", () -> new FlangedOpening(300, 300, 0, 0, 200, 40, 5, 8, 1.5));
        refused("up", "20 to 1", () -> new EllipsoidalCap(100, 100, 1, 1));
        refused("low", "below high", () -> new Catenoid(10, 5, 5, 1));
        refused("chord", "must be above 0", () -> Fineness.chord(0));
        refused("chord", "larger chord", () -> new SphericalCap(15_000, 3 * Math.PI / 4 * 0.99).mesh(Fineness.chord(1e-6)));
        refused("chord", "larger chord", () -> new TorusSection(3000, 500, 3, 3).mesh(Fineness.chord(1e-5)));
    }

    /** Any numbers at all: a panel that meshes as one surface, or a refusal; slender, tiny and large ones too. */
    @Test
    void anyNumbersGiveAPanelOrARefusal() {
        Random random = new Random(77);
        int made = 0;
        for (int i = 0; i < 600; i++) {
            double[] x = new double[9];
            for (int k = 0; k < 9; k++) x[k] = Math.pow(10, random.nextDouble() * 4 - 1) * (random.nextInt(20) == 0 ? -1 : 1);
            double a = random.nextDouble() * 7, b = random.nextDouble() * 3;
            int kind = i % 12;
            try {
                Panel panel = switch (kind) {
                    case 0 -> new Cylinder(x[0], x[1], a);
                    case 1 -> new ConeFrustum(x[0], x[1], x[2], a);
                    case 2 -> new SphericalCap(x[0], b);
                    case 3 -> new TorusSection(x[0], x[1], a, b, b - 1);
                    case 4 -> new ObliqueCone(x[0], x[1], x[2], x[3], a - 3, a);
                    case 5 -> new EllipsoidalCap(x[0], x[1], x[2], b);
                    case 6 -> new Saddle(x[0], x[1]);
                    case 7 -> new TwistedPanel(x[0], x[1], x[2]);
                    case 8 -> new Catenoid(x[0], -x[1], x[2], a);
                    case 9 -> new CrownedPanel(x[0], x[1], x[2], x[3], CrownedPanel.Step.NONE, i % 2 == 0 ? List.of() : List.of(Hole.round(0, 0, x[4])));
                    case 10 -> new FlangeStrip(x[0], a, x[1], x[2], x[3], b, i % 2 == 0 ? FlangeStrip.Edge.CONVEX : FlangeStrip.Edge.CONCAVE);
                    default -> new FlangedOpening(x[0], x[1], 0, 0, x[2], x[3], x[4], x[5], b);
                };
                blankwright.mesh.TriMesh mesh = panel.mesh(Fineness.chord(1));
                blankwright.mesh.EdgeTable edges = blankwright.mesh.EdgeTable.of(mesh);
                assertEquals(panel.truth().eulerNumber(), mesh.vertexCount() - edges.edgeCount() + mesh.triangleCount(), panel.toString());
                made++;
            } catch (UnfitValue e) {
                assertTrue(e.getMessage().length() > 15);
            }
        }
        assertTrue(made > 150, made + " made");
    }

    private static void refused(String parameter, String says, Executable make) {
        UnfitValue e = assertThrows(UnfitValue.class, make);
        assertEquals(parameter, e.parameter(), e.getMessage());
        assertTrue(e.getMessage().contains(says), e.getMessage());
    }
}
