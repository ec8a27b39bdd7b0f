package blankwright.strain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.oracle.Patch;
import java.util.Random;
import org.ejml.simple.SimpleMatrix;
import org.ejml.simple.SimpleSVD;
import org.junit.jupiter.api.Test;

/** The same numbers by duller ways: a library's singular values of the whole 3x2 gradient, differences along lines, and sums over sums. */
class StrainFieldAgreesWithSlowRouteTest {
    private static final FlatMap WAVY = wavy(24, 16);

    static FlatMap wavy(int nu, int nv) {
        Random random = new Random(5);
        return Patch.grid(nu, nv, 0, 600, 0, 400,
                (p, q) -> new double[] {p + 12 * Math.sin(q / 70) + 4 * random.nextDouble(),
                    q + 9 * Math.cos(p / 90) + 4 * random.nextDouble()},
                (p, q) -> new double[] {p, 1.02 * q, 40 * Math.sin(p / 150) * Math.cos(q / 120)});
    }

    @Test
    void stretchesAndDirectionsAreThoseOfTheGradientsSingularVectors() {
        StrainField field = StrainField.of(WAVY);
        for (int t = 0; t < field.triangleCount(); t++) {
            SimpleMatrix gradient = gradient(WAVY, t);
            SimpleSVD<SimpleMatrix> svd = gradient.svd();
            double s1 = svd.getSingleValue(0), s2 = svd.getSingleValue(1);
            assertEquals(s1, field.stretch1(t), 1e-12 * s1);
            assertEquals(s2, field.stretch2(t), 1e-12 * s1);
            double near = 1e-13 / (s1 / s2 - 1);
            double bu = svd.getV().get(0, 0), bv = svd.getV().get(1, 0);
            double c = Math.cos(field.directionOnBlank(t)), s = Math.sin(field.directionOnBlank(t));
            assertEquals(0, bu * s - bv * c, near);
            double sign = bu * c + bv * s < 0 ? -1 : 1;
            assertEquals(sign * svd.getU().get(0, 0), field.directionX(t), near);
            assertEquals(sign * svd.getU().get(1, 0), field.directionY(t), near);
            assertEquals(sign * svd.getU().get(2, 0), field.directionZ(t), near);
        }
    }

    @Test
    void noDirectionIsStretchedMoreOrLessThanThePrincipalOnes() {
        StrainField field = StrainField.of(WAVY);
        Random random = new Random(6);
        for (int t = 0; t < field.triangleCount(); t++) {
            double most = 0, least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < 400; i++) {
                double angle = Math.PI * (i + random.nextDouble()) / 400, step = 1e-3;
                double ratio = lengthOnForm(WAVY, t, step * Math.cos(angle), step * Math.sin(angle)) / step;
                most = Math.max(most, ratio);
                least = Math.min(least, ratio);
                assertTrue(ratio < field.stretch1(t) + 1e-9 && ratio > field.stretch2(t) - 1e-9);
            }
            assertEquals(field.stretch1(t), most, 1e-4);
            assertEquals(field.stretch2(t), least, 1e-4);
        }
    }

    @Test
    void volumeOfMetalIsKeptTriangleByTriangle() {
        StrainField field = StrainField.of(WAVY);
        double thickness = 1.2, before = 0, after = 0;
        for (int t = 0; t < field.triangleCount(); t++) {
            before += thickness * WAVY.area(t);
            double volume = thickness * Math.exp(field.thicknessStrain(t)) * WAVY.form().area(t);
            assertEquals(thickness * WAVY.area(t), volume, 1e-11 * volume);
            assertEquals(WAVY.form().area(t) / WAVY.area(t) - 1, field.areaChange(t), 1e-12);
            assertEquals(0, field.strain1(t) + field.strain2(t) + field.thicknessStrain(t), 1e-14);
            after += volume;
        }
        assertEquals(before, after, 1e-10 * before);
    }

    @Test
    void meansAreTheSumsTheyAreDefinedBy() {
        StrainField field = StrainField.of(WAVY);
        double area = 0, dirichlet = 0, arap = 0, high = 0, low = 0;
        for (int t = 0; t < field.triangleCount(); t++) {
            SimpleMatrix back = gradient(WAVY, t).pseudoInverse();         // form to blank
            SimpleSVD<SimpleMatrix> svd = back.svd();
            double s1 = svd.getSingleValue(0), s2 = svd.getSingleValue(1), a = WAVY.form().area(t);
            area += a;
            dirichlet += a * (s1 * s1 + s2 * s2 + 1 / (s1 * s1) + 1 / (s2 * s2));
            arap += a * ((s1 - 1) * (s1 - 1) + (s2 - 1) * (s2 - 1));
            high = Math.max(high, 1 / s2 - 1);
            low = Math.max(low, 1 - 1 / s1);
        }
        assertEquals(dirichlet / area, field.symmetricDirichletMean(), 1e-12);
        assertEquals(arap / area, field.arapMean(), 1e-13);
        assertEquals(high, field.stretchMax(), 1e-12);
        assertEquals(low, field.shrinkMax(), 1e-12);
    }

    @Test
    void vertexTensorIsTheMeanOfTheTrianglesRoundItOnARimOfThoseWithAnEdgeThere() {
        StrainField field = StrainField.of(WAVY);
        VertexStrain strain = VertexStrain.of(field);
        TriMesh form = WAVY.form();
        for (int v = 0; v < form.vertexCount(); v += 7) {
            SimpleMatrix sum = new SimpleMatrix(2, 2);
            double weight = 0;
            for (int t = 0; t < form.triangleCount(); t++) {
                if (!holds(form, t, v) || onRim(v) && !onRim(form, t, v)) continue;
                SimpleMatrix gradient = gradient(WAVY, t);
                var squared = gradient.transpose().mult(gradient).eig();           // C = U², ln U = ½ ln C
                for (int i = 0; i < 2; i++) {
                    SimpleMatrix d = squared.getEigenVector(i);
                    d = d.divide(d.normF());
                    sum = sum.plus(d.mult(d.transpose()).scale(form.area(t) * Math.log(squared.getEigenvalue(i).getReal()) / 2));
                }
                weight += form.area(t);
            }
            sum = sum.divide(weight);
            assertEquals(sum.get(0, 0), strain.strainUu(v), 1e-11);
            assertEquals(sum.get(0, 1), strain.strainUv(v), 1e-11);
            assertEquals(sum.get(1, 1), strain.strainVv(v), 1e-11);
            double c = Math.cos(strain.directionOnBlank(v)), s = Math.sin(strain.directionOnBlank(v));
            assertEquals(strain.strain1(v), c * c * sum.get(0, 0) + 2 * c * s * sum.get(0, 1) + s * s * sum.get(1, 1), 1e-11);
            assertEquals(strain.strain2(v), s * s * sum.get(0, 0) - 2 * c * s * sum.get(0, 1) + c * c * sum.get(1, 1), 1e-11);
        }
    }

    private static boolean holds(TriMesh form, int t, int v) {
        return form.corner(t, 0) == v || form.corner(t, 1) == v || form.corner(t, 2) == v;
    }

    /** By the places of the grid 0..600 x 0..400 on the form, where y is 1.02 q. */
    private static boolean onRim(int v) {
        return side(WAVY.form(), v) != 0;
    }

    /** Bits: left, right, low, high side of the grid. */
    private static int side(TriMesh form, int v) {
        double x = form.x(v), y = form.y(v);
        return (x < 1e-6 ? 1 : 0) | (x > 600 - 1e-6 ? 2 : 0) | (y < 1e-6 ? 4 : 0) | (y > 408 - 1e-6 ? 8 : 0);
    }

    /** Whether an edge of triangle t that ends in v lies on a side of the grid. */
    private static boolean onRim(TriMesh form, int t, int v) {
        for (int k = 0; k < 3; k++) {
            int w = form.corner(t, k);
            if (w != v && (side(form, v) & side(form, w)) != 0) return true;
        }
        return false;
    }

    /** Flange one row of triangles wide, edge stretched 10 %, root nothing, steps without end: the edge's own strain stands at the edge. */
    @Test
    void narrowFlangeShowsTheStrainOfItsEdge() {
        double inner = 100, outer = 110;
        FlatMap map = Patch.grid(90, 1, 0, 3, 0, 1, (p, q) -> new double[] {(outer - 10 * q) * Math.cos(p), (outer - 10 * q) * Math.sin(p)},
                (p, q) -> new double[] {outer * Math.cos(p), outer * Math.sin(p), -10 * q});
        VertexStrain strain = VertexStrain.of(StrainField.of(map));
        for (int v = 93; v < 180; v++) assertEquals(outer / inner, strain.stretch1(v), 3e-3, "at " + v);
    }

    /** Blank to form, 3x2: edges on the form times the inverse of edges on the blank. */
    private static SimpleMatrix gradient(FlatMap map, int t) {
        TriMesh form = map.form();
        int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
        SimpleMatrix there = new SimpleMatrix(new double[][] {
            {form.x(b) - form.x(a), form.x(c) - form.x(a)},
            {form.y(b) - form.y(a), form.y(c) - form.y(a)},
            {form.z(b) - form.z(a), form.z(c) - form.z(a)}});
        SimpleMatrix here = new SimpleMatrix(new double[][] {
            {map.u(b) - map.u(a), map.u(c) - map.u(a)},
            {map.v(b) - map.v(a), map.v(c) - map.v(a)}});
        return there.mult(here.invert());
    }

    /** Distance on the form of two points of the blank (du, dv) apart, by weights of the corners. */
    private static double lengthOnForm(FlatMap map, int t, double du, double dv) {
        TriMesh form = map.form();
        int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
        double bu = map.u(b) - map.u(a), bv = map.v(b) - map.v(a), cu = map.u(c) - map.u(a), cv = map.v(c) - map.v(a);
        double det = bu * cv - cu * bv;
        double wb = (du * cv - cu * dv) / det, wc = (bu * dv - du * bv) / det;
        double x = wb * (form.x(b) - form.x(a)) + wc * (form.x(c) - form.x(a));
        double y = wb * (form.y(b) - form.y(a)) + wc * (form.y(c) - form.y(a));
        double z = wb * (form.z(b) - form.z(a)) + wc * (form.z(c) - form.z(a));
        return Math.sqrt(x * x + y * y + z * z);
    }
}
