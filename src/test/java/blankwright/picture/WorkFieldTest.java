package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.shape.TorusSection;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import org.junit.jupiter.api.Test;

class WorkFieldTest {
    private static FlatMap square(int n) {
        double[] xyz = new double[3 * (n + 1) * (n + 1)], uv = new double[2 * (n + 1) * (n + 1)];
        int[] tri = new int[6 * n * n];
        for (int v = 0; v < uv.length / 2; v++) {
            uv[2 * v] = xyz[3 * v] = 100.0 * (v % (n + 1)) / n;
            uv[2 * v + 1] = xyz[3 * v + 1] = 100.0 * (v / (n + 1)) / n;
        }
        for (int c = 0, at = 0; c < n * n; c++) {
            int v = c / n * (n + 1) + c % n;
            for (int corner : new int[] {v, v + 1, v + n + 2, v, v + n + 2, v + n + 1}) tri[at++] = corner;
        }
        return FlatMap.of(TriMesh.of(xyz, tri), uv);
    }

    @Test
    void vertexAmountsAreThoseOfTheStrain() {
        TriMesh form = TorusSection.grid(1.0, 1.0, 300, 80, 400);
        double[] uv = new double[2 * form.vertexCount()];
        for (int v = 0; v < form.vertexCount(); v++) {
            uv[2 * v] = 1.02 * form.x(v) + 0.01 * form.y(v);
            uv[2 * v + 1] = 0.97 * form.y(v) + 0.1 * form.z(v);
        }
        VertexStrain strain = VertexStrain.of(StrainField.of(FlatMap.of(form, uv)));
        WorkField field = WorkField.of(FlatMap.of(form, uv), strain, 1e-6);
        for (int v = 0; v < form.vertexCount(); v++) assertEquals(strain.dominant(v), field.amount(v), 1e-13 * (1 + Math.abs(strain.dominant(v))));
    }

    /** uu = k(x - 50) + r, vv = k(x - 50) - r: the larger one jumps from -r to +r at x = 50, cells of 7 not dividing it. */
    @Test
    void jumpLiesWhereTheTraceVanishesAndAreasAreKept() {
        double r = 0.02, k = 0.001;
        FlatMap map = square(7);
        double[] tensor = new double[3 * map.form().vertexCount()];
        for (int v = 0; v < map.form().vertexCount(); v++) {
            tensor[3 * v] = k * (map.u(v) - 50) + r;
            tensor[3 * v + 2] = k * (map.u(v) - 50) - r;
        }
        WorkField field = WorkField.of(map, tensor, 0.001);
        double length = 0;
        int[] jump = field.jumps();
        for (int i = 0; i < jump.length; i += 2) {
            assertEquals(50, field.u(jump[i]), 1e-9);
            length += Math.abs(field.v(jump[i]) - field.v(jump[i + 1]));
            assertEquals(Math.expm1(-r), field.amount(jump[i]), 1e-12);
            assertEquals(Math.expm1(r), field.amount(jump[i] + 1), 1e-12);
        }
        assertEquals(100, length, 1e-9);
        double shrunk = 0, whole = 0;
        for (int t = 0; t < field.triangleCount(); t++) {
            int a = field.corners()[3 * t], b = field.corners()[3 * t + 1], c = field.corners()[3 * t + 2];
            double area = ((field.u(b) - field.u(a)) * (field.v(c) - field.v(a)) - (field.u(c) - field.u(a)) * (field.v(b) - field.v(a))) / 2;
            assertTrue(area > 0);
            boolean negative = field.amount(a) < 0;
            assertEquals(negative, field.amount(b) < 0, "a triangle has one sign");
            assertEquals(negative, field.amount(c) < 0, "a triangle has one sign");
            whole += area;
            if (negative) shrunk += area;
        }
        assertEquals(10_000, whole, 1e-8);
        assertEquals(5_000, shrunk, 1e-8);
    }

    @Test
    void directionIsThatOfTheLargerStrain() {
        FlatMap map = square(2);
        for (double angle : new double[] {-1.5, -0.7, 0, 0.4, 1.2}) {
            for (double[] e : new double[][] {{0.05, -0.01}, {-0.05, 0.01}, {0.03, 0.02}, {-0.03, -0.02}}) {
                double c = Math.cos(angle), s = Math.sin(angle);
                double[] tensor = new double[3 * map.form().vertexCount()];
                for (int v = 0; v < map.form().vertexCount(); v++) {
                    tensor[3 * v] = e[0] * c * c + e[1] * s * s;
                    tensor[3 * v + 1] = (e[0] - e[1]) * c * s;
                    tensor[3 * v + 2] = e[0] * s * s + e[1] * c * c;
                }
                double[] got = WorkField.of(map, tensor, 0.001).at(0, 0.2, 0.3, 0.5);
                assertEquals(Math.expm1(e[0]), got[0], 1e-12);
                assertEquals(0, Math.sin(got[1] - angle), 1e-12, "direction " + got[1] + " for " + angle);
            }
        }
    }
}
