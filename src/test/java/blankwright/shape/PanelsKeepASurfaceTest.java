package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class PanelsKeepASurfaceTest {
    /** Two triangles at each edge, run opposite ways, the rims and the Euler number the panel promises, every vertex used. */
    @TestFactory
    Stream<DynamicTest> topologyIsAsPromised() {
        return each((name, panel, mesh) -> {
            EdgeTable edges = EdgeTable.of(mesh);
            assertEquals(panel.truth().rims(), RimLoops.of(mesh, edges).count(), "rims");
            assertEquals(panel.truth().eulerNumber(), mesh.vertexCount() - edges.edgeCount() + mesh.triangleCount(), "Euler number");
            boolean[] used = new boolean[mesh.vertexCount()];
            for (int c : mesh.corners()) used[c] = true;
            for (boolean u : used) assertTrue(u);
        });
    }

    /** No sliver: the sharpest corner of an ordinary panel is above 3 degrees, and no triangle is without area. */
    @TestFactory
    Stream<DynamicTest> noTriangleIsDegenerate() {
        return each((name, panel, mesh) -> {
            double sharpest = Math.PI;
            for (int t = 0; t < mesh.triangleCount(); t++) {
                for (int k = 0; k < 3; k++) sharpest = Math.min(sharpest, mesh.angle(t, k));
            }
            assertTrue(Math.toDegrees(sharpest) > 3, "sharpest corner " + Math.toDegrees(sharpest) + " degrees");
        });
    }

    /** Interior angle defects and rim turning add up to 2π times the Euler number, to rounding. */
    @TestFactory
    Stream<DynamicTest> gaussBonnetHolds() {
        return each((name, panel, mesh) -> {
            double[] angles = new double[mesh.vertexCount()];
            for (int t = 0; t < mesh.triangleCount(); t++) {
                for (int k = 0; k < 3; k++) angles[mesh.corner(t, k)] += mesh.angle(t, k);
            }
            boolean[] rim = rim(mesh);
            double sum = 0;
            for (int v = 0; v < angles.length; v++) sum += (rim[v] ? Math.PI : 2 * Math.PI) - angles[v];
            assertEquals(2 * Math.PI * panel.truth().eulerNumber(), sum, 1e-12 * mesh.vertexCount());
        });
    }

    /** The facets' area is below the skin's by no more than second order in the chord. */
    @TestFactory
    Stream<DynamicTest> areaIsThatOfTheSkin() {
        return Panels.all().entrySet().stream().map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
            double area = e.getValue().truth().area();
            double coarse = area - e.getValue().mesh(Fineness.chord(0.4)).area();
            double fine = area - e.getValue().mesh(Fineness.chord(0.1)).area();
            assertTrue(Math.abs(coarse) < 0.01 * area, "coarse error " + coarse / area);
            assertTrue(Math.abs(fine) < 0.0025 * area && Math.abs(fine) <= Math.abs(coarse) + 1e-8 * area, coarse / area + " " + fine / area);
        }));
    }

    /** The outer skin is where a maker would say it is: up for what lies, away from the axis or the middle for what is round. */
    @TestFactory
    Stream<DynamicTest> theOuterSkinIsOut() {
        return each((name, panel, mesh) -> {
            boolean lies = panel instanceof CrownedPanel || panel instanceof TwistedPanel;
            boolean folds = panel instanceof FlangeStrip || panel instanceof FlangedOpening;
            for (int t = 0; t < mesh.triangleCount(); t++) {
                double[] n = mesh.normal(t);
                double x = 0, y = 0, z = 0;
                for (int k = 0; k < 3; k++) {
                    x += mesh.x(mesh.corner(t, k)) / 3;
                    y += mesh.y(mesh.corner(t, k)) / 3;
                    z += mesh.z(mesh.corner(t, k)) / 3;
                }
                double out;
                if (lies) out = n[2];
                else if (folds) out = n[2] + 1e-6;
                else if (panel instanceof Cylinder) out = n[0] * x + n[1] * y + n[2] * (z - 45);
                else if (panel instanceof TorusSection torus) {
                    double r = Math.hypot(x, y);
                    out = (n[0] * x + n[1] * y) * (r - torus.ring()) / r + n[2] * z;
                } else if (panel instanceof SphericalCap || panel instanceof EllipsoidalCap) out = n[0] * x + n[1] * y + n[2] * z;
                else if (panel instanceof Helicoid) out = 1;
                else if (panel instanceof ObliqueCone cone) out = n[0] * (x - cone.offset() * z / cone.height()) + n[1] * y;
                else out = n[0] * x + n[1] * y;
                assertTrue(out > 0, "triangle " + t + ": " + out);
            }
        });
    }

    /** The grids that are timed: as near to the count as n by n cells come. */
    @Test
    void timingGridsHaveTheirCount() {
        int[] wanted = {10_082, 100_352, 500_000}, near = {1_000_000};
        for (int n : wanted) assertEquals(n, TorusSection.grid(2.6, 2.8, 330, 95, n).triangleCount());
        for (int n : near) assertEquals(n, TorusSection.grid(2.6, 2.8, 330, 95, n).triangleCount(), 0.001 * n);
        for (Panel panel : Panels.all().values()) {
            int count = panel.mesh(Fineness.triangles(10_000)).triangleCount();
            assertTrue(count > 3_000 && count < 80_000, panel + " " + count);
        }
        for (Panel rings : new Panel[] {new SphericalCap(500, 0.3), new EllipsoidalCap(260, 190, 230, 1.3), new Saddle(300, 150)})
            assertEquals(6 * 41 * 41, rings.mesh(Fineness.triangles(10_000)).triangleCount());
        TriMesh outer = TorusSection.grid(2.6, 2.8, 330, 95, 200);
        for (int t = 0; t < outer.triangleCount(); t++) {      // away from the tube's middle line
            int v = outer.corner(t, 0);
            double r = Math.hypot(outer.x(v), outer.y(v)), k = (r - 330) / r;
            double[] n = outer.normal(t);
            assertTrue(n[0] * outer.x(v) * k + n[1] * outer.y(v) * k + n[2] * outer.z(v) > 0);
        }
    }

    private interface Check {
        void on(String name, Panel panel, TriMesh mesh);
    }

    private static Stream<DynamicTest> each(Check check) {
        return Panels.all().entrySet().stream().map(e -> DynamicTest.dynamicTest(e.getKey(),
                () -> check.on(e.getKey(), e.getValue(), e.getValue().mesh(Fineness.chord(0.3)))));
    }

    private static boolean[] rim(TriMesh mesh) {
        RimLoops loops = RimLoops.of(mesh, EdgeTable.of(mesh));
        boolean[] rim = new boolean[mesh.vertexCount()];
        for (int i = 0; i < loops.count(); i++) for (int v : loops.loop(i)) rim[v] = true;
        return rim;
    }
}
