package blankwright.strain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Stretches and directions put in by hand come out: every triangle of a flat form in space gets the same linear map from its blank. */
class StrainFieldMatchesAffineMapTest {
    /** A form in a plane of space, its blank, and the map between: stretch1 along `angle` of the blank, stretch2 square to it. */
    record Affine(FlatMap map, double stretch1, double stretch2, double angle, double[] onForm) { }

    @Test
    void stretchesAndDirectionsComeOutAsPutIn() {
        Random random = new Random(11);
        for (int i = 0; i < 2000; i++) {
            Affine put = affine(random, false);
            StrainField field = StrainField.of(put.map());
            for (int t = 0; t < field.triangleCount(); t++) {
                assertEquals(put.stretch1(), field.stretch1(t), 1e-12 * put.stretch1());
                assertEquals(put.stretch2(), field.stretch2(t), 1e-12 * put.stretch1());
                assertEquals(0, Math.sin(put.angle() - field.directionOnBlank(t)), 1e-10, "direction on the blank");
                double same = Math.cos(put.angle() - field.directionOnBlank(t)) < 0 ? -1 : 1;
                assertEquals(same * put.onForm()[0], field.directionX(t), 1e-10);
                assertEquals(same * put.onForm()[1], field.directionY(t), 1e-10);
                assertEquals(same * put.onForm()[2], field.directionZ(t), 1e-10);
                assertFalse(field.turnedOver(t));
                assertTrue(field.directionOnBlank(t) > -Math.PI / 2 && field.directionOnBlank(t) <= Math.PI / 2);
                assertEquals(-Math.log(put.stretch1() * put.stretch2()), field.thicknessStrain(t), 1e-11);
            }
            VertexStrain mean = VertexStrain.of(field);
            for (int v = 0; v < put.map().form().vertexCount(); v++) {
                assertEquals(Math.log(put.stretch1()), mean.strain1(v), 1e-11);
                assertEquals(Math.log(put.stretch2()), mean.strain2(v), 1e-11);
                assertEquals(0, Math.sin(put.angle() - mean.directionOnBlank(v)), 1e-9);
                double same = Math.cos(put.angle() - mean.directionOnBlank(v)) < 0 ? -1 : 1;
                assertEquals(same * put.onForm()[0], mean.directionX(v), 1e-9);
                assertEquals(same * put.onForm()[1], mean.directionY(v), 1e-9);
                assertEquals(same * put.onForm()[2], mean.directionZ(v), 1e-9);
            }
            double s1 = 1 / put.stretch2(), s2 = 1 / put.stretch1();
            double dirichlet = s1 * s1 + s2 * s2 + 1 / (s1 * s1) + 1 / (s2 * s2);
            assertEquals(dirichlet, field.symmetricDirichletMean(), 1e-11 * dirichlet);
            assertEquals((s1 - 1) * (s1 - 1) + (s2 - 1) * (s2 - 1), field.arapMean(), 1e-11);
            assertEquals(Math.max(0, put.stretch1() - 1), field.stretchMax(), 1e-11);
            assertEquals(Math.max(0, 1 - put.stretch2()), field.shrinkMax(), 1e-11);
            double gain = put.stretch1() * put.stretch2() - 1;
            assertEquals(Math.max(0, gain), field.areaGainMax(), 1e-11);
            assertEquals(Math.max(0, -gain), field.areaLossMax(), 1e-11);
        }
    }

    @Test
    void turnedOverTrianglesAreFlaggedAndHaveTheStretchesOfTheirMirrorImage() {
        Random random = new Random(12);
        for (int i = 0; i < 500; i++) {
            Affine put = affine(random, true);
            StrainField field = StrainField.of(put.map());
            assertEquals(field.triangleCount(), field.turnedOverCount());
            for (int t = 0; t < field.triangleCount(); t++) {
                assertTrue(field.turnedOver(t));
                assertEquals(put.stretch1(), field.stretch1(t), 1e-12 * put.stretch1());
                assertEquals(put.stretch2(), field.stretch2(t), 1e-12 * put.stretch1());
                assertEquals(0, Math.sin(put.angle() - field.directionOnBlank(t)), 1e-10);
                double same = Math.cos(put.angle() - field.directionOnBlank(t)) < 0 ? -1 : 1;
                assertEquals(same * put.onForm()[0], field.directionX(t), 1e-10);
                assertEquals(same * put.onForm()[2], field.directionZ(t), 1e-10);
            }
            VertexStrain mean = VertexStrain.of(field);
            double same = Math.cos(put.angle() - mean.directionOnBlank(0)) < 0 ? -1 : 1;
            assertEquals(same * put.onForm()[1], mean.directionY(0), 1e-9);
        }
    }

    @Test
    void trianglesWithoutAreaAreDefinedAndTakeNoPart() {
        double[] xyz = {0, 0, 0, 10, 0, 0, 0, 10, 0, 20, 0, 0, 10, 10, 0, 20, 0, 0, 20, 0, 0};
        TriMesh form = TriMesh.of(xyz, new int[] {0, 1, 2, 1, 0, 3, 1, 4, 2, 3, 5, 6});       // good, a line, good, a point
        double[] uv = {0, 0, 10, 0, 0, 10, 20, 5, 5, 5, 20, 5, 20, 5};        // and the third a line on the blank
        StrainField field = StrainField.of(FlatMap.of(form, uv));
        for (int t = 0; t < 4; t++) {
            assertEquals(1, field.stretch1(t), 1e-15);
            assertEquals(1, field.stretch2(t), 1e-15);
            double length = Math.hypot(Math.hypot(field.directionX(t), field.directionY(t)), field.directionZ(t));
            assertEquals(1, length, 1e-15);
            assertEquals(t != 0, field.degenerate(t));
        }
        assertTrue(field.turnedOver(2) && field.turnedOver(3));
        assertFalse(field.turnedOver(0));
        assertEquals(Double.POSITIVE_INFINITY, field.symmetricDirichletMean());
        assertEquals(0, field.stretchMax());
        VertexStrain mean = VertexStrain.of(field);
        for (int v = 0; v < form.vertexCount(); v++) {
            assertTrue(Double.isFinite(mean.strain1(v)) && Double.isFinite(mean.directionOnBlank(v)));
            assertTrue(Double.isFinite(mean.directionX(v)));
        }
        StrainField none = StrainField.of(FlatMap.of(TriMesh.of(new double[0], new int[0]), new double[0]));
        assertEquals(4, none.symmetricDirichletMean());
        assertEquals(0, none.arapMean());
    }

    private static Affine affine(Random random, boolean mirrored) {
        double s1 = Math.exp(random.nextDouble() * 1.2 - 0.4), s2 = s1 * (0.3 + 0.65 * random.nextDouble());
        double angle = Math.PI * (random.nextDouble() - 0.5), turn = 7 * random.nextDouble();
        double[] e = unit(random), n = unit(random), f = cross(n, e);
        double length = Math.sqrt(f[0] * f[0] + f[1] * f[1] + f[2] * f[2]);
        for (int k = 0; k < 3; k++) f[k] /= length;
        double c = Math.cos(angle), s = Math.sin(angle), rc = Math.cos(turn), rs = Math.sin(turn), side = mirrored ? -1 : 1;
        int n4 = 5;
        double[] uv = new double[2 * n4], xyz = new double[3 * n4];
        for (int i = 0; i < n4; i++) {
            double u = i == 4 ? 0.3 : Math.cos(i * Math.PI / 2) + 0.2 * random.nextDouble();
            double v = i == 4 ? 0.1 : Math.sin(i * Math.PI / 2) + 0.2 * random.nextDouble();
            uv[2 * i] = 40 * u;
            uv[2 * i + 1] = 40 * v;
            double along = s1 * (c * u + s * v), across = side * s2 * (c * v - s * u);
            for (int k = 0; k < 3; k++) {
                double a = rc * e[k] + rs * f[k], b = rc * f[k] - rs * e[k];
                xyz[3 * i + k] = 40 * (along * a + across * b) + 5 * k;
            }
        }
        int[] tri = mirrored ? new int[] {1, 0, 4, 2, 1, 4, 3, 2, 4, 0, 3, 4} : new int[] {0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4};
        double[] onForm = new double[3];
        for (int k = 0; k < 3; k++) onForm[k] = rc * e[k] + rs * f[k];
        return new Affine(FlatMap.of(TriMesh.of(xyz, tri), uv), s1, s2, angle, onForm);
    }

    private static double[] unit(Random random) {
        double[] d = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
        double length = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
        for (int k = 0; k < 3; k++) d[k] /= length;
        return d;
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }
}
