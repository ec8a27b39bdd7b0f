package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.shape.Cylinder;
import blankwright.shape.TorusSection;
import java.util.List;
import org.junit.jupiter.api.Test;

class ViewTest {
    @Test
    void axesAreSquareAndRightHanded() {
        for (View v : View.round(TorusSection.grid(2.8, 2.2, 330, 75, 800))) {
            double[][] a = {{v.rx(), v.ry(), v.rz()}, {v.ux(), v.uy(), v.uz()}, {v.tx(), v.ty(), v.tz()}};
            for (int i = 0; i < 3; i++)
                for (int j = 0; j < 3; j++) assertEquals(i == j ? 1 : 0, a[i][0] * a[j][0] + a[i][1] * a[j][1] + a[i][2] * a[j][2], 1e-12, v.name());
            double det = a[0][0] * (a[1][1] * a[2][2] - a[1][2] * a[2][1]) - a[0][1] * (a[1][0] * a[2][2] - a[1][2] * a[2][0])
                    + a[0][2] * (a[1][0] * a[2][1] - a[1][1] * a[2][0]);
            assertEquals(1, det, 1e-12, v.name());
        }
    }

    /** A half tube longer than wide, its axis along z: seen from above its length lies level, seen from the end it shows its arch. */
    @Test
    void longSideLiesLevelAndTheEndShowsTheArch() {
        TriMesh form = new Cylinder(100, 500, Math.PI).mesh();
        List<View> views = View.round(form);
        double[] above = extents(views.get(2), form), side = extents(views.get(3), form), end = extents(views.get(4), form);
        assertEquals(500, above[0], 1e-6);
        assertEquals(200, above[1], 0.5);
        assertEquals(500, side[0], 1e-6);
        assertEquals(100, side[1], 0.5);
        assertEquals(200, end[0], 0.5);
        assertEquals(100, end[1], 0.5);
        assertTrue(views.get(0).towards(0, 1, 0) > 0, "the first view looks at the outside, which is towards y");
        assertTrue(views.get(1).towards(0, 1, 0) < 0, "the second at the inside");
    }

    private static double[] extents(View view, TriMesh form) {
        double left = Double.POSITIVE_INFINITY, right = -left, low = left, high = -left;
        for (int v = 0; v < form.vertexCount(); v++) {
            double r = view.right(form.x(v), form.y(v), form.z(v)), u = view.up(form.x(v), form.y(v), form.z(v));
            left = Math.min(left, r);
            right = Math.max(right, r);
            low = Math.min(low, u);
            high = Math.max(high, u);
        }
        return new double[] {right - left, high - low};
    }
}
