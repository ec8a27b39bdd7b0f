package blankwright.mesh.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A skin moved along its normals: sphere of radius R becomes one of radius R + d, area 4 pi (R + d)^2; a tube likewise. */
class MidSurfaceMatchesClosedFormTest {
    private static double worstRadius(TriMesh mesh, double radius) {
        double worst = 0;
        for (int v = 0; v < mesh.vertexCount(); v++) {
            worst = Math.max(worst, Math.abs(Math.sqrt(mesh.x(v) * mesh.x(v) + mesh.y(v) * mesh.y(v) + mesh.z(v) * mesh.z(v)) - radius));
        }
        return worst;
    }

    @Test
    void spheresKeepTheirCentreAtSecondOrder() {
        double[] worst = new double[3];
        for (int i = 0; i < 3; i++) {
            MidSurface.Moved moved = MidSurface.moved(Forms.sphere(100, 3 + i), -0.8);
            assertEquals(List.of(Kind.MOVED_TO_MIDDLE), moved.findings().stream().map(f -> f.kind()).toList());
            worst[i] = worstRadius(moved.mesh(), 99.2);
            assertEquals(Math.pow(0.992, 2), moved.mesh().area() / Forms.sphere(100, 3 + i).area(), 1e-4);
        }
        assertTrue(worst[0] < 1e-3, "off by " + worst[0] + " mm");
        for (int i = 0; i < 2; i++) assertTrue(worst[i] / worst[i + 1] > 3.5, worst[i] + " to " + worst[i + 1]);
    }

    /** Every ring of a tube keeps its height, also at the rims, and every vertex ends at R + d: its normals are symmetric about the radius. */
    @Test
    void tubesBecomeTubes() {
        TriMesh tube = Forms.tube(50, 200, 48, 9), there = MidSurface.moved(tube, 0.6).mesh();
        boolean outward = false;
        for (int v = 0; v < tube.vertexCount(); v++) {
            double[] before = {tube.x(v), tube.y(v), tube.z(v)}, after = {there.x(v), there.y(v), there.z(v)};
            double far = Math.sqrt(Math.pow(after[0] - before[0], 2) + Math.pow(after[1] - before[1], 2) + Math.pow(after[2] - before[2], 2));
            assertEquals(0.6, far, 1e-12);
            double r = Math.hypot(after[0], after[1]);
            outward |= r > 50;
            assertEquals(0.6, Math.abs(r - 50), 1e-3);
            assertEquals(before[2], after[2], 1e-12);
        }
        assertEquals(outward, there.area() > tube.area());
    }

    @Test
    void moreThanTheRadiusFoldsOver() {
        TriMesh sphere = Forms.sphere(10, 2);
        MidSurface.Moved moved = MidSurface.moved(sphere, -11);
        assertEquals(List.of(Kind.MOVED_TO_MIDDLE, Kind.TIGHT_CURVATURE), moved.findings().stream().map(f -> f.kind()).toList());
        assertEquals(sphere.triangleCount(), moved.findings().get(1).count());
        assertEquals(1, MidSurface.moved(sphere, -9).findings().size());
        EdgeTable.of(moved.mesh());
    }

    @Test
    void nothingMovesByNothing() {
        TriMesh plate = Forms.plate(30, 20, 3, 2);
        assertSame(plate, MidSurface.moved(plate, 0).mesh());
        assertThrows(IllegalArgumentException.class, () -> MidSurface.moved(plate, Double.NaN));
    }
}
