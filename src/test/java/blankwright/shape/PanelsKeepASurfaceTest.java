package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
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
