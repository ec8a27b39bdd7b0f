package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.StretchEnergy;
import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Vertex by vertex: its derivatives against differences of the energy of all triangles, its end against the minimum found otherwise. */
class VertexSweepsTest {
    private static final StretchEnergy ENERGY = new SymmetricDirichlet();
    private static final TriMesh BOWED = Grids.of(6, 6, (u, v) -> new double[] {100 * u, 100 * v, 15 * Math.sin(3 * u) * Math.cos(2 * v)});

    /** Seen from above, made a little longer so that no triangle is pressed: then the positive part is the whole second derivative. */
    private static double[] layout(Distortion form, double length, double noise) {
        Random random = new Random(7);
        double[] uv = new double[2 * BOWED.vertexCount()];
        for (int v = 0; v < BOWED.vertexCount(); v++) {
            uv[2 * v] = length * BOWED.x(v) / form.scale() + noise * random.nextGaussian();
            uv[2 * v + 1] = length * BOWED.y(v) / form.scale() + noise * random.nextGaussian();
        }
        return uv;
    }

    @Test
    void derivativesMatchDifferencesOfTheWholeEnergy() {
        Distortion form = new Distortion(BOWED);
        double[] uv = layout(form, 1.6, 0.003), found = new double[5];
        double h = 1e-4;
        for (int v = 0; v < BOWED.vertexCount(); v++) {
            form.around(v, ENERGY, uv, found);
            double[][] f = new double[3][3];
            for (int i = 0; i < 3; i++)
                for (int j = 0; j < 3; j++) {
                    double[] moved = uv.clone();
                    moved[2 * v] += (i - 1) * h;
                    moved[2 * v + 1] += (j - 1) * h;
                    f[i][j] = form.value(ENERGY, moved);
                }
            double[] slow = {(f[2][1] - f[0][1]) / (2 * h), (f[1][2] - f[1][0]) / (2 * h), (f[2][1] - 2 * f[1][1] + f[0][1]) / (h * h),
                    (f[2][2] - f[2][0] - f[0][2] + f[0][0]) / (4 * h * h), (f[1][2] - 2 * f[1][1] + f[1][0]) / (h * h)};
            assertArrayEquals(slow, found, 1e-4 * Math.abs(slow[2]), "vertex " + v);
        }
    }

    @Test
    void manySweepsEndAtTheMinimum() {
        Distortion form = new Distortion(BOWED);
        double[] uv = layout(form, 0.8, 0.01);
        double value = form.value(ENERGY, uv);
        VertexSweeps sweeps = new VertexSweeps(form, ENERGY, Progress.NONE);
        for (int i = 0; i < 3000; i++) {
            double next = sweeps.run(uv, value, 1);
            assertTrue(next <= value * (1 + 1e-14), next + " after " + value);
            value = next;
        }
        assertEquals(form.value(ENERGY, uv), value);
        assertEquals(Flattener.flatten(BOWED, FlattenOptions.DEFAULT, Progress.NONE).energy(), value, 1e-8);
    }

    /** One vertex all but on the far side of a triangle: the energy falls by a factor of more than a million in a few sweeps. */
    @Test
    void aTriangleAllButFlatIsFreedAtOnce() {
        Distortion form = new Distortion(BOWED);
        double[] uv = layout(form, 1, 0);
        int a = BOWED.corner(30, 0), b = BOWED.corner(30, 1), c = BOWED.corner(30, 2);
        for (int k = 0; k < 2; k++) uv[2 * a + k] = (uv[2 * b + k] + uv[2 * c + k]) / 2 + 1e-5 * (uv[2 * a + k] - uv[2 * b + k]);
        double before = form.value(ENERGY, uv), after = new VertexSweeps(form, ENERGY, Progress.NONE).run(uv, before, 30);
        assertTrue(before > 1e6 && before < Double.POSITIVE_INFINITY, before + " before");
        assertTrue(after < 5, after + " after");
    }
}
