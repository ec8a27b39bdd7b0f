package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The triangles stay within the chord of the true skin: true distances, from formulas that know nothing of how the mesh was made. */
class ChordKeepsToleranceTest {
    private interface Surface {
        /** Distance of a point from the whole smooth surface, mm. */
        double distance(double x, double y, double z);
    }

    @TestFactory
    Stream<DynamicTest> distanceFromTheSkin() {
        return Stream.of(0.5, 0.1).flatMap(chord -> Stream.of(
                check("ball", new SphericalCap(180, 1.4), chord, (x, y, z) -> Math.abs(Math.sqrt(x * x + y * y + z * z) - 180)),
                check("tube", new Cylinder(120, 300, 3), chord, (x, y, z) -> Math.abs(Math.hypot(x, y) - 120)),
                check("cone", new ConeFrustum(100, 60, 90, 4), chord,
                        (x, y, z) -> Math.abs(Math.hypot(x, y) - 100 + z * 40 / 90) * 90 / Math.hypot(90, 40)),
                check("mudguard", new TorusSection(330, 95, 2.6, 2.8), chord, (x, y, z) -> Math.abs(Math.hypot(Math.hypot(x, y) - 330, z) - 95)),
                check("inner ring", new TorusSection(240, 80, 1.5, 2, Math.PI), chord,
                        (x, y, z) -> Math.abs(Math.hypot(Math.hypot(x, y) - 240, z) - 80)),
                check("ruled saddle", new TwistedPanel(500, 300, 60), chord, (x, y, z) -> footOnRuled(x, y, z, 4 * 60 / (500.0 * 300))),
                check("waisted", new Catenoid(80, -70, 90, 3), chord, (x, y, z) -> footOnCurve(Math.hypot(x, y), z, 80)),
                check("flange", new FlangeStrip(150, 1.5, 20, 15, 3, Math.PI / 2, FlangeStrip.Edge.CONVEX), chord,
                        (x, y, z) -> fromFlange(Math.hypot(x, y), z))));
    }

    /** And the skin's own points, taken at random, are within the chord of some triangle near by: nothing of it is cut off. */
    @TestFactory
    Stream<DynamicTest> skinIsCovered() {
        return Panels.all().entrySet().stream().filter(e -> !(e.getValue() instanceof Cylinder c && c.ends() != Cylinder.Ends.NONE))
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    Sample coarse = e.getValue().sample(Fineness.chord(0.4)), fine = e.getValue().sample(Fineness.chord(0.02));
                    Random random = new Random(7);
                    double worst = 0;
                    for (int i = 0; i < 400; i++) {
                        int v = random.nextInt(fine.mesh().vertexCount());      // a point of the skin, to rounding
                        worst = Math.max(worst, distance(coarse.mesh(), fine.mesh().x(v), fine.mesh().y(v), fine.mesh().z(v)));
                    }
                    assertTrue(worst <= 0.4 * 1.02, "off by " + worst);
                }));
    }

    /** A quarter of the chord costs four times the triangles on panels bent both ways: the facets are of second order. */
    @Test
    void trianglesGrowAsTheInverseOfTheChord() {
        for (Panel panel : new Panel[] {new TorusSection(330, 95, 2.6, 2.8), new SphericalCap(300, 0.8), new CrownedPanel(600, 400, 60, 50)}) {
            double at04 = panel.mesh(Fineness.chord(0.04)).triangleCount(), at01 = panel.mesh(Fineness.chord(0.01)).triangleCount();
            assertTrue(at01 / at04 > 3.6 && at01 / at04 < 4.4, panel + " " + at04 + " " + at01);
        }
    }

    /** On a ball the skin is farthest from a triangle over its circumcentre: R less the plane's distance from the ball's middle. */
    @Test
    void theWorstChordOfRingsIsThatOfTheBall() {
        Skin ball = (u, v, out) -> {
            out[0] = 200 * Math.sin(u) * Math.cos(v);
            out[1] = 200 * Math.sin(u) * Math.sin(v);
            out[2] = 200 * Math.cos(u);
        };
        for (int n : new int[] {6, 12, 24}) {
            TriMesh mesh = Rings.sample(ball, 0.5, n).mesh();
            double worst = 0;
            for (int t = 0; t < mesh.triangleCount(); t++) {
                double[] normal = mesh.normal(t);
                int a = mesh.corner(t, 0);
                worst = Math.max(worst, 200 - (normal[0] * mesh.x(a) + normal[1] * mesh.y(a) + normal[2] * mesh.z(a)));
            }
            assertEquals(worst, Rings.worstChord(ball, 0.5, n), 0.05 * worst);
        }
    }

    private static DynamicTest check(String name, Panel panel, double chord, Surface surface) {
        return DynamicTest.dynamicTest(name + " " + chord, () -> {
            TriMesh mesh = panel.mesh(Fineness.chord(chord));
            double worst = 0;
            for (int t = 0; t < mesh.triangleCount(); t++) {
                for (int i = 0; i <= 6; i++) {
                    for (int j = 0; i + j <= 6; j++) {
                        double a = i / 6.0, b = j / 6.0, c = 1 - a - b;
                        int p = mesh.corner(t, 0), q = mesh.corner(t, 1), r = mesh.corner(t, 2);
                        worst = Math.max(worst, surface.distance(a * mesh.x(p) + b * mesh.x(q) + c * mesh.x(r),
                                a * mesh.y(p) + b * mesh.y(q) + c * mesh.y(r), a * mesh.z(p) + b * mesh.z(q) + c * mesh.z(r)));
                    }
                }
            }
            assertTrue(worst <= chord, "off by " + worst);
            assertTrue(worst >= chord / 5 || mesh.triangleCount() < 3000, "finer than asked: off by " + worst + " with " + mesh.triangleCount());
        });
    }

    private static double footOnRuled(double x, double y, double z, double k) {
        double u = x, v = y;
        for (int i = 0; i < 30; i++) {     // nearest point by Newton on the half squared distance
            double f = k * u * v - z, gu = u - x + f * k * v, gv = v - y + f * k * u;
            double a = 1 + k * k * v * v, b = k * k * u * v + f * k, d = 1 + k * k * u * u, det = a * d - b * b;
            u -= (d * gu - b * gv) / det;
            v -= (a * gv - b * gu) / det;
        }
        return Math.sqrt((u - x) * (u - x) + (v - y) * (v - y) + (k * u * v - z) * (k * u * v - z));
    }

    private static double footOnCurve(double r, double z, double waist) {
        double t = z;
        for (int i = 0; i < 30; i++) {
            double c = waist * Math.cosh(t / waist), s = Math.sinh(t / waist);
            t -= ((c - r) * s + t - z) / (s * s + (c - r) * Math.cosh(t / waist) / waist + 1);
        }
        return Math.hypot(waist * Math.cosh(t / waist) - r, t - z);
    }

    /** Web at z = 0 up to 150, bend of 3 about (150, -3), flange at 153 below. */
    private static double fromFlange(double r, double z) {
        if (r <= 150) return Math.abs(z);
        if (z >= -3) return Math.abs(Math.hypot(r - 150, z + 3) - 3);
        return Math.abs(r - 153);
    }

    private static double distance(TriMesh mesh, double x, double y, double z) {
        double best = Double.POSITIVE_INFINITY;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
            double[] p = {x - mesh.x(a), y - mesh.y(a), z - mesh.z(a)};
            double[] e = {mesh.x(b) - mesh.x(a), mesh.y(b) - mesh.y(a), mesh.z(b) - mesh.z(a)};
            double[] f = {mesh.x(c) - mesh.x(a), mesh.y(c) - mesh.y(a), mesh.z(c) - mesh.z(a)};
            double ee = Skin.dot(e, e), ff = Skin.dot(f, f), ef = Skin.dot(e, f), pe = Skin.dot(p, e), pf = Skin.dot(p, f), pp = Skin.dot(p, p);
            double det = ee * ff - ef * ef, u = (ff * pe - ef * pf) / det, v = (ee * pf - ef * pe) / det;
            double d2;
            if (u >= 0 && v >= 0 && u + v <= 1) d2 = pp - u * pe - v * pf;
            else d2 = Math.min(onEdge(pp, pe, ee), Math.min(onEdge(pp, pf, ff),
                    onEdge(pp - 2 * pe + ee, pf - pe - ef + ee, ff - 2 * ef + ee)));
            best = Math.min(best, d2);
        }
        return Math.sqrt(Math.max(0, best));
    }

    /** Squared distance from a segment: |p|², p·e, |e|² with p from its start. */
    private static double onEdge(double pp, double pe, double ee) {
        double t = Math.max(0, Math.min(1, pe / ee));
        return pp - 2 * t * pe + t * t * ee;
    }
}
