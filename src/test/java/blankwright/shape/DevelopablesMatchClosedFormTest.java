package blankwright.shape;

import static java.lang.Math.toDegrees;
import static java.lang.Math.toRadians;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values of checks section 2; [V] read in the source named beside it, [C] from the formula R = sD/(D-d), angle = 180 (D-d)/s. */
class DevelopablesMatchClosedFormTest {
    /** d = 5, D = 8, H = 4 inch: r 7.12, R 11.39, 126.4 degrees [V: ceemrr.com, Geometry 2, "The Net of a Frustum"]; more digits [C]. */
    @Test
    void frustumOfFiveEightFour() {
        ConeFrustum frustum = new ConeFrustum(4 * 25.4, 2.5 * 25.4, 4 * 25.4, 2 * Math.PI);
        assertEquals(7.1200, frustum.innerArc() / 25.4, 5e-5);
        assertEquals(11.3920, frustum.outerArc() / 25.4, 5e-5);
        assertEquals(126.4044, toDegrees(frustum.sector()), 5e-5);
    }

    /** D = 200, d = 120, H = 90 mm [C]. */
    @Test
    void frustumOfTwoHundred() {
        ConeFrustum frustum = new ConeFrustum(100, 60, 90, 2 * Math.PI);
        assertEquals(98.4886, frustum.slant(), 5e-5);
        assertEquals(246.2214, frustum.outerArc(), 5e-5);
        assertEquals(147.7329, frustum.innerArc(), 5e-5);
        assertEquals(146.2098, toDegrees(frustum.sector()), 5e-5);
    }

    /** A cone of 90 degrees at its point opens to 254.6 degrees [V: anvilfire.com, cones page]; 254.558 [C]. */
    @Test
    void coneOfNinetyDegrees() {
        assertEquals(254.558, toDegrees(new ConeFrustum(100, 1e-9, 100, 2 * Math.PI).sector()), 1e-3);
    }

    /** Lateral area = mean of both rims times slant [V: "Sheet Metal Drafting", en.wikisource, p. 91]. */
    @Test
    void frustumAreaIsMeanRimTimesSlant() {
        ConeFrustum frustum = new ConeFrustum(100, 60, 90, 2 * Math.PI);
        assertEquals((2 * Math.PI * 100 + 2 * Math.PI * 60) / 2 * frustum.slant(), frustum.truth().area(), 1e-9);
    }

    /**
     * Leaning cones of height 100 and base radius 50, the point a mm to the side [C: quadrature of |P × P'|/L²]. The table counts its angle from
     * the side away from the point, this panel from the side it leans to.
     */
    @ParameterizedTest
    @CsvSource({"0,111.80340,111.80340,111.80340,40.249224,40.249224,160.996894",
        "30,128.06248,115.75837,101.98039,35.839891,41.304928,154.289637", "60,148.66069,126.88578,100.49876,30.310351,38.166823,136.954348"})
    void leaningCone(double a, double longest, double square, double shortest, double first, double second, double total) {
        ObliqueCone cone = new ObliqueCone(50, 25, 50, a / 2, 0, 2 * Math.PI);
        assertEquals(100, cone.apexHeight(), 1e-12);
        assertEquals(a, cone.apexOffset(), 1e-12);
        assertEquals(longest, cone.generator(Math.PI), 5.1e-6);
        assertEquals(square, cone.generator(Math.PI / 2), 5.1e-6);
        assertEquals(shortest, cone.generator(0), 5.1e-6);
        assertEquals(first, toDegrees(cone.developedAngle(Math.PI / 2, Math.PI)), 5.1e-7);
        assertEquals(second, toDegrees(cone.developedAngle(0, Math.PI / 2)), 5.1e-7);
        assertEquals(total, toDegrees(cone.developedAngle(0, 2 * Math.PI)), 5.1e-7);
    }

    /** Laid out by n chords as a shop does it, the leaning cone's angle comes nearer by four for each doubling of n. */
    @Test
    void chordsOfALeaningConeConvergeAtOrderTwo() {
        ObliqueCone cone = new ObliqueCone(50, 25, 50, 30, 0, Math.PI);
        double truth = cone.developedAngle(0, Math.PI), before = Double.NaN;
        for (int n = 12; n <= 192; n *= 2) {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                double a = Math.PI * i / n, b = Math.PI * (i + 1) / n, chord = 2 * 50 * Math.sin(Math.PI / n / 2);
                double p = cone.generator(a), q = cone.generator(b);
                sum += Math.acos((p * p + q * q - chord * chord) / (2 * p * q));
            }
            double error = Math.abs(sum - truth);
            if (n > 12) assertEquals(4, before / error, 0.05);
            before = error;
        }
    }

    /** An upright leaning cone is the frustum. */
    @Test
    void withoutOffsetItIsTheFrustum() {
        ObliqueCone oblique = new ObliqueCone(100, 60, 90, 0, 0, 4);
        ConeFrustum right = new ConeFrustum(100, 60, 90, 4);
        assertEquals(right.truth().area(), oblique.truth().area(), 1e-8);
        assertEquals(right.sector(), oblique.developedAngle(0, 4), 1e-13);
        double[] p = oblique.truth().development().orElseThrow().at(3, 45), q = right.truth().development().orElseThrow().at(3, right.slant() / 2);
        assertEquals(q[0], p[0], 1e-10);
        assertEquals(q[1], p[1], 1e-10);
    }

    /** Each edge of the facets is as long on the sheet as on the form, and nothing is turned over. */
    @TestFactory
    Stream<DynamicTest> facetsUnrollWithoutStrain() {
        return Panels.all().entrySet().stream().filter(e -> e.getValue().sample(Fineness.USUAL).unrolled().isPresent())
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    FlatMap flat = e.getValue().sample(Fineness.USUAL).unrolled().orElseThrow();
                    assertEquals(0, worstEdge(flat), 1e-11);
                    for (int t = 0; t < flat.form().triangleCount(); t++) assertTrue(flat.area(t) > 0);
                }));
    }

    /** Facets and smooth skin unroll to the same figure within chord against arc. */
    @Test
    void smoothAndFacetedFrustumAgree() {
        ConeFrustum frustum = new ConeFrustum(100, 60, 90, toRadians(250));
        double[] worst = new double[2];
        for (int i = 0; i < 2; i++) {
            Sample sample = frustum.sample(Fineness.chord(i == 0 ? 0.4 : 0.1));
            FlatMap facets = sample.unrolled().orElseThrow(), smooth = sample.laid(frustum.truth().development().orElseThrow());
            for (int v = 0; v < sample.mesh().vertexCount(); v++)
                worst[i] = Math.max(worst[i], Math.hypot(facets.u(v) - smooth.u(v), facets.v(v) - smooth.v(v)));
        }
        assertTrue(worst[0] < 1.0 && worst[0] / worst[1] > 3 && worst[0] / worst[1] < 5.5, worst[0] + " " + worst[1]);
    }

    @Test
    void tubeUnrollsToItsRectangle() {
        Cylinder tube = new Cylinder(50, 120, toRadians(300));
        double[] corner = tube.truth().development().orElseThrow().at(toRadians(300), 120);
        assertEquals(50 * toRadians(300), corner[0], 1e-12);
        assertEquals(120, corner[1], 0);
        assertEquals(corner[0] * corner[1], tube.truth().area(), 1e-9);
    }

    private static double worstEdge(FlatMap flat) {
        TriMesh form = flat.form();
        double worst = 0;
        for (int t = 0; t < form.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                int a = form.corner(t, k), b = form.corner(t, (k + 1) % 3);
                worst = Math.max(worst, Math.abs(Math.hypot(flat.u(a) - flat.u(b), flat.v(a) - flat.v(b)) - form.distance(a, b)));
            }
        }
        return worst;
    }
}
