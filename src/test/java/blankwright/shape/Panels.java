package blankwright.shape;

import static java.lang.Math.toRadians;

import java.util.LinkedHashMap;
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
        return all;
    }
}
