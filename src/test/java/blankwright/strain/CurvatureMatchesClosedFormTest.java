package blankwright.strain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.oracle.Patch;
import blankwright.shape.SphericalCap;
import org.junit.jupiter.api.Test;

/** Identities and surfaces of known curvature (do Carmo, "Differential Geometry of Curves and Surfaces", from memory for the section). */
class CurvatureMatchesClosedFormTest {
    @Test
    void capHasTheCurvatureOfItsBallAndTheTurningOfItsRim() {
        double c = Math.toRadians(40), r = 300;
        double[] error = new double[3], whole = new double[3];
        for (int i = 0; i < 3; i++) {
            TriMesh cap = new SphericalCap(r, c).ringMesh(10 << i);
            Curvature curvature = Curvature.of(cap);
            for (int v = 0; v < cap.vertexCount(); v++) {
                if (!curvature.onRim(v)) error[i] = Math.max(error[i], Math.abs(curvature.gaussian(v) * r * r - 1));
                else assertEquals(1, curvature.gaussian(v) * r * r, 0.1, "rim takes its neighbours'");
            }
            assertEquals(2 * Math.PI, curvature.net() + curvature.turning(), 1e-9);
            assertEquals(0, curvature.negative(), 1e-9);
            whole[i] = Math.abs(curvature.net() - 2 * Math.PI * (1 - Math.cos(c)));
        }
        assertTrue(error[2] < 1e-4, "estimate off by " + error[0] + " " + error[1] + " " + error[2]);
        for (int i = 1; i < 3; i++) assertEquals(4, error[i - 1] / error[i], 0.1, "second order on a regular mesh");
        assertTrue(whole[0] / whole[1] > 1.8 && whole[1] / whole[2] > 1.8, "a rim's width is missing: " + whole[0] + " " + whole[2]);
    }

    /** Catenoid (cosh u cos v, cosh u sin v, u): K = -1/cosh⁴ u. */
    @Test
    void catenoidIsASaddleEverywhere() {
        double[] error = new double[3];
        for (int i = 0; i < 3; i++) {
            int n = 12 << i;
            FlatMap map = Patch.grid(n, n, -0.8, 0.8, -0.8, 0.8, (p, q) -> new double[] {p, q},
                    (p, q) -> new double[] {Math.cosh(p) * Math.cos(q), Math.cosh(p) * Math.sin(q), p});
            Curvature curvature = Curvature.of(map.form());
            for (int v = 0; v < map.form().vertexCount(); v++) {
                if (curvature.onRim(v)) continue;
                error[i] = Math.max(error[i], Math.abs(curvature.gaussian(v) * Math.pow(Math.cosh(map.u(v)), 4) + 1));
            }
            assertTrue(curvature.negative() < 0);
            assertEquals(2 * Math.PI, curvature.net() + curvature.turning(), 1e-9);
        }
        // this grid has vertices of 4 and of 8 triangles, where the defect over the mixed area keeps an error of its own
        assertTrue(error[2] < 0.6, error[0] + " " + error[1] + " " + error[2]);
    }

    @Test
    void cylinderHasNone() {
        FlatMap map = Patch.grid(30, 10, 0, 2, 0, 100, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {80 * Math.cos(p), 80 * Math.sin(p), q});
        Curvature curvature = Curvature.of(map.form());
        assertEquals(0, curvature.positive(), 1e-10);
        assertEquals(0, curvature.negative(), 1e-10);
        assertEquals(2 * Math.PI, curvature.turning(), 1e-9);
    }
}
