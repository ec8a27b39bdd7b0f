package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Total curvature and area of each panel against two other ways to the same number, and identities of checks section 16. */
class CurvatureMatchesClosedFormTest {
    /** Angle defects inside and half of the turning the rim lacks: the skin's total curvature as the mesh gets finer. */
    @TestFactory
    Stream<DynamicTest> angleDefectsTendToIt() {
        return Panels.all().entrySet().stream().filter(e -> !List.of("cup", "can", "sharp flange", "sharp scuttle", "holes").contains(e.getKey()))
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    double truth = e.getValue().truth().totalCurvature();
                    double coarse = Math.abs(defects(e.getValue().mesh(Fineness.chord(0.2))) - truth);
                    double fine = Math.abs(defects(e.getValue().mesh(Fineness.chord(0.02))) - truth);
                    assertTrue(fine < 1e-9 || fine < 0.03 * Math.max(1, Math.abs(truth)) && fine < 0.6 * coarse, truth + " " + coarse + " " + fine);
                }));
    }

    /** The area of the facets comes nearer by about four for each quarter of the chord. */
    @TestFactory
    Stream<DynamicTest> areaConvergesAtOrderTwo() {
        return Stream.of("mudguard", "deep cap", "nose", "saddle", "deep saddle", "twisted", "waisted", "twisted strip", "crowned", "crowned saddle",
                "hoop", "inner ring").map(name -> DynamicTest.dynamicTest(name, () -> {
                    Panel panel = Panels.all().get(name);
                    double truth = panel.truth().area(), last = Double.NaN, lastCount = Double.NaN;
                    for (int n = 5_000; n <= 80_000; n *= 4) {
                        TriMesh mesh = panel.mesh(Fineness.triangles(n));
                        double error = Math.abs(mesh.area() - truth), ratio = (double) mesh.triangleCount() / lastCount;
                        if (n > 5_000) assertEquals(ratio, last / error, 0.2 * ratio, "error " + error / truth);
                        last = error;
                        lastCount = mesh.triangleCount();
                    }
                    assertTrue(last < 3e-4 * truth);
                }));
    }

    /** Ball: area 2πR²(1 - cos c), curvature 2π(1 - cos c) (checks section 16, exact). */
    @Test
    void cap() {
        Truth truth = new SphericalCap(72.5, Math.acos(52.5 / 72.5)).truth();
        assertEquals(2 * Math.PI * 72.5 * 20, truth.area(), 1e-9);
        assertEquals(2 * Math.PI * (1 - 52.5 / 72.5), truth.totalCurvature(), 1e-13);
    }

    /** Torus: outer half 4π, inner half -4π, whole area 4π²Rr (checks section 16, exact). */
    @Test
    void torus() {
        Truth outer = new TorusSection(200, 50, 2 * Math.PI, Math.PI).truth(), inner = new TorusSection(200, 50, 2 * Math.PI, Math.PI, Math.PI).truth();
        assertEquals(4 * Math.PI, outer.totalCurvature(), 1e-12);
        assertEquals(-4 * Math.PI, inner.totalCurvature(), 1e-12);
        assertEquals(4 * Math.PI * Math.PI * 200 * 50, outer.area() + inner.area(), 1e-8);
    }

    /** A ball is an ellipsoid with equal axes, and a half of any ellipsoid turns by 2π. */
    @Test
    void ellipsoid() {
        Truth ball = new SphericalCap(90, 1.2).truth(), same = new EllipsoidalCap(90, 90, 90, 1.2).truth();
        assertEquals(ball.area(), same.area(), 1e-9 * ball.area());
        assertEquals(ball.totalCurvature(), same.totalCurvature(), 1e-12);
        assertEquals(2 * Math.PI, new EllipsoidalCap(260, 190, 230, Math.PI / 2).truth().totalCurvature(), 1e-9);
        // prolate half, axes a = a < c: π a² (1 + c/(a e) asin e), e² = 1 - a²/c² [from memory, standard]
        double a = 60, c = 100, e = Math.sqrt(1 - a * a / c / c);
        assertEquals(Math.PI * a * a * (1 + c / (a * e) * Math.asin(e)), new EllipsoidalCap(a, a, c, Math.PI / 2).truth().area(), 1e-6);
    }

    /** Quadrature of the curvature itself, by differences of the skin, says what the closed forms say. */
    @Test
    void closedFormsAgreeWithQuadrature() {
        Truth strip = new FlangeStrip(150, 1.5, 20, 15, 3, 1.2, FlangeStrip.Edge.CONCAVE).truth();
        FlangedOpening round = new FlangedOpening(200, 200, 0, 0, 100, 100, 12, 3, 1.2);
        // a round opening in a flat sheet is the concave strip all the way round, and a flat web
        Truth whole = new FlangeStrip(50, 2 * Math.PI, 10, 12, 3, 1.2, FlangeStrip.Edge.CONCAVE).truth();
        double web = Math.PI * (60 * 60 - 50 * 50);
        assertEquals(whole.totalCurvature(), round.truth().totalCurvature(), 1e-5);
        assertEquals(whole.area() - web + 200 * 200 - Math.PI * 2500, round.truth().area(), 1e-4);
        assertEquals(-1.5 * (1 - Math.cos(1.2)), strip.totalCurvature(), 1e-14);
        CrownedPanel crowned = new CrownedPanel(600, 400, 60, 50);
        double u = Profile.crown(600, 60).length() / 2, v = Profile.crown(400, 50).length() / 2;
        Profile a = Profile.crown(600, 60), b = Profile.crown(400, 50);
        Skin skin = (s, t, out) -> {
            out[0] = a.x(s + u);
            out[1] = b.x(t + v);
            out[2] = a.z(s + u) + b.z(t + v);
        };
        assertEquals(skin.totalCurvature(new double[] {-u, u}, new double[] {-v, v}, 3), crowned.truth().totalCurvature(), 1e-7);
        TwistedPanel twisted = new TwistedPanel(500, 300, 60);
        Skin ruled = (x, y, out) -> {
            out[0] = x;
            out[1] = y;
            out[2] = 240 * x * y / 150_000;
        };
        assertEquals(ruled.totalCurvature(new double[] {-250, 250}, new double[] {-150, 150}, 3), twisted.truth().totalCurvature(), 1e-7);
    }

    /** A step does not change what the crown turns, its skin is as wide as its profile, and it drops the edge by its depth. */
    @Test
    void step() {
        CrownedPanel plain = new CrownedPanel(700, 420, 20, 35);
        CrownedPanel stepped = new CrownedPanel(700, 420, 20, 35, new CrownedPanel.Step(3, 18, 2, Math.toRadians(45)), List.of());
        assertEquals(plain.truth().totalCurvature(), stepped.truth().totalCurvature(), 1e-15);
        CrownedPanel flat = new CrownedPanel(300, 200, 0, 0, new CrownedPanel.Step(3, 18, 2, Math.toRadians(45)), List.of());
        assertEquals(3, flat.mesh().size()[2], 1e-12);
        double bends = 2 * 2 * Math.PI / 4, straight = (3 - 4 * (1 - Math.sqrt(0.5))) / Math.sqrt(0.5);
        assertEquals(300 * (200 + bends + straight + 18), flat.truth().area(), 1e-6);
        assertEquals(300 * (200 + bends + straight + 18), flat.mesh(Fineness.chord(0.0005)).area(), 30);
    }

    /** Same grid, same lengths: catenoid and helicoid edges differ by second order, and both areas are the closed form. */
    @Test
    void catenoidBendsIntoHelicoid() {
        double before = Double.NaN;
        for (int n = 10; n <= 80; n *= 2) {
            TriMesh a = new Catenoid(80, -70, 90, 2).cells(2 * n, n).mesh(), b = new Helicoid(80, -70, 90, 2).cells(2 * n, n).mesh();
            double worst = 0;
            for (int t = 0; t < a.triangleCount(); t++) {
                for (int k = 0; k < 3; k++) {
                    int p = a.corner(t, k), q = a.corner(t, (k + 1) % 3);
                    worst = Math.max(worst, Math.abs(a.distance(p, q) / b.distance(p, q) - 1));
                }
            }
            if (n > 10) assertEquals(4, before / worst, 0.3);
            before = worst;
        }
        assertTrue(before < 1e-4);
    }

    /** On the saddle each ring of radius r is 2π sinh r long: the patch is what it says, not only its area. */
    @Test
    void saddleRingsHaveTheLengthOfHyperbolicCircles() {
        Saddle saddle = new Saddle(100, 120);
        int n = 120;
        Sample sample = saddle.rings(n);
        for (int k : new int[] {30, 60, 120}) {
            double length = 0;
            for (int j = 0; j < 6 * k; j++)
                length += sample.mesh().distance(Rings.start(k) + j, Rings.start(k) + (j + 1) % (6 * k));
            assertEquals(2 * Math.PI * 100 * Math.sinh(1.2 * k / n), length, 2e-4 * length);
        }
        for (int j = 0; j < 12; j++) {      // and along any ray from the middle the rings are evenly spaced
            double ray = 0;
            for (int k = 0; k < n; k++) {
                double[] p = {sample.u(Rings.start(k)), 0};
                int a = k == 0 ? 0 : Rings.start(k) + (j * 6 * k / 12 * 1), b = Rings.start(k + 1) + j * 6 * (k + 1) / 12;
                if (j % 2 == 0) ray += sample.mesh().distance(a, b);
                assertEquals(1.2 * k / n, p[0], 1e-12);
            }
            if (j % 2 == 0) assertEquals(120, ray, 0.01);
        }
    }

    private static double defects(TriMesh mesh) {
        double[] left = new double[mesh.vertexCount()];
        java.util.Arrays.fill(left, 2 * Math.PI);
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) left[mesh.corner(t, k)] -= mesh.angle(t, k);
        }
        RimLoops loops = RimLoops.of(mesh, EdgeTable.of(mesh));
        for (int i = 0; i < loops.count(); i++) for (int v : loops.loop(i)) left[v] = 0;
        double sum = 0;
        for (double x : left) sum += x;
        return sum;
    }
}
