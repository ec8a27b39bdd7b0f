package blankwright.shape;

import static java.lang.Math.toRadians;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One panel or more of each kind, for tests that hold for all. */
final class Panels {
    private Panels() { }

    static Map<String, Panel> all() {
        Map<String, Panel> all = new LinkedHashMap<>();
        all.put("half tube", new Cylinder(120, 300, toRadians(180)));
        all.put("tube", new Cylinder(80, 200, toRadians(360)));
        all.put("cup", new Cylinder(60, 90, toRadians(360), Cylinder.Ends.ONE));
        all.put("can", new Cylinder(60, 90, toRadians(360), Cylinder.Ends.BOTH));
        all.put("frustum", new ConeFrustum(100, 60, 90, toRadians(250)));
        all.put("frustum ring", new ConeFrustum(100, 60, 90, toRadians(360)));
        all.put("shallow cap", new SphericalCap(500, toRadians(17)));
        all.put("deep cap", new SphericalCap(150, toRadians(100)));
        all.put("mudguard", new TorusSection(330, 95, toRadians(150), toRadians(160)));
        all.put("hoop", new TorusSection(240, 40, toRadians(180), toRadians(170), toRadians(90)));
        all.put("inner ring", new TorusSection(240, 80, toRadians(90), toRadians(120), toRadians(180)));
        all.put("torus ring", new TorusSection(200, 50, toRadians(360), toRadians(180)));
        all.put("leaning cone", new ObliqueCone(100, 60, 120, 40, 0, toRadians(180)));
        all.put("leaning cone ring", new ObliqueCone(100, 60, 120, 90, toRadians(180), toRadians(360)));
        all.put("nose", new EllipsoidalCap(260, 190, 230, toRadians(75)));
        all.put("deep nose", new EllipsoidalCap(100, 60, 200, toRadians(100)));
        all.put("saddle", new Saddle(300, 150));
        all.put("deep saddle", new Saddle(100, 140));
        all.put("twisted", new TwistedPanel(500, 300, 60));
        all.put("waisted", new Catenoid(80, -70, 90, toRadians(200)));
        all.put("twisted strip", new Helicoid(80, -70, 90, toRadians(200)));
        all.put("crowned", new CrownedPanel(600, 400, 30, 25));
        all.put("flat", new CrownedPanel(300, 200, 0, 0));
        all.put("crowned saddle", new CrownedPanel(600, 400, 60, -25));
        all.put("stepped", new CrownedPanel(700, 420, 20, 35, new CrownedPanel.Step(3, 18, 2, toRadians(45)), List.of()));
        all.put("holes", new CrownedPanel(400, 250, 12, 20, new CrownedPanel.Step(2, 15, 1, toRadians(60)),
                List.of(Hole.round(-100, 30, 32), new Hole(60, -20, 90, 24), new Hole(150, 10, 20, 60), Hole.round(-150, -100, 6.5))));
        all.put("shrink flange", new FlangeStrip(150, toRadians(90), 20, 15, 3, toRadians(90), FlangeStrip.Edge.CONVEX));
        all.put("stretch flange", new FlangeStrip(150, toRadians(90), 20, 15, 3, toRadians(75), FlangeStrip.Edge.CONCAVE));
        all.put("sharp flange", new FlangeStrip(100, toRadians(60), 20, 12, 0, toRadians(90), FlangeStrip.Edge.CONVEX));
        all.put("flanged hole", new FlangeStrip(40, toRadians(360), 25, 8, 2, toRadians(90), FlangeStrip.Edge.CONCAVE));
        all.put("scuttle", new FlangedOpening(620, 520, 45, 60, 380, 300, 16, 4, toRadians(85)));
        all.put("sharp scuttle", new FlangedOpening(400, 300, 0, 20, 180, 160, 10, 0, toRadians(60)));
        return all;
    }
}
