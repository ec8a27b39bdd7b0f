package blankwright.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** Distances are measured by small steps along both curves; crossings are sought by the polygon library on a fine flattening. */
class RimFitKeepsWithinToleranceTest {
    private static final double TOLERANCE = 0.05;

    @Test
    void aRoundRimBecomesACircle() {
        Curve fit = RimFit.of(round(12, -7, 150, 400), TOLERANCE);
        assertEquals(2, fit.segmentCount());
        assertEquals(Math.PI * 150 * 150, fit.area(), 1e-6);
        Curve hole = RimFit.of(reversed(round(12, -7, 4, 40)), TOLERANCE);
        assertEquals(2, hole.segmentCount());
        assertEquals(-Math.PI * 16, hole.area(), 1e-9);
    }

    @Test
    void aRimOutOfRoundIsNotTheBestCircle() {
        double[] ring = round(0, 0, 150, 400);
        for (int i = 0; i < ring.length; i += 2) ring[i] *= 1 + 4 * TOLERANCE / 150;      // the best circle misses it by twice the tolerance
        checked(ring, "out of round");
    }

    @Test
    void aCircleTooCoarseForTheToleranceStaysAPolygon() {
        double[] ring = round(0, 0, 100, 24);                     // rise of an arc over a side: 100 (1 - cos 7.5°) = 0.86 mm
        Curve fit = RimFit.of(ring, TOLERANCE);
        assertEquals(24, fit.segmentCount());
        assertTrue(TwoSided.distance(ring, true, fit) <= TOLERANCE);
    }

    @Test
    void aSlotBecomesTwoLinesAndFewArcs() {
        double[] ring = Curve.of(new double[] {0, 0, 60, 0, 60, 20, 0, 20}, new double[] {0, 1, 0, 1}, true).flattened(0.005);
        Curve fit = RimFit.of(ring, TOLERANCE);
        assertTrue(fit.segmentCount() <= 6, fit.toString());
        assertTrue(TwoSided.distance(ring, true, fit) <= TOLERANCE);
        assertEquals(60 * 20 + Math.PI * 100, fit.area(), 0.05 * fit.length());
    }

    @Test
    void cornersStaySharp() {
        double[] corners = {0, 0, 300, 0, 300, 200, 150, 260, 0, 200};
        double[] ring = subdivided(corners, 37);
        Curve fit = RimFit.of(ring, TOLERANCE);
        assertEquals(5, fit.segmentCount());
        for (int i = 0; i < 10; i += 2) {
            int at = i;
            assertTrue(java.util.stream.IntStream.range(0, 5).anyMatch(k -> fit.x(k) == corners[at] && fit.y(k) == corners[at + 1]), "corner " + i / 2);
        }
    }

    @Test
    void smoothRims() {
        Random random = new Random(20261125);
        int pieces = 0, sides = 0;
        for (int round = 0; round < 60; round++) {
            double[] ring = wavy(random, 200 + random.nextInt(1500), 0);
            Curve fit = checked(ring, "smooth " + round);
            pieces += fit.segmentCount();
            sides += ring.length / 2;
        }
        assertTrue(pieces < sides / 8, pieces + " pieces for " + sides + " sides");
    }

    @Test
    void jaggedRims() {
        Random random = new Random(7);
        for (int round = 0; round < 60; round++) {
            double noise = TOLERANCE * Math.pow(10, -2 + 4 * random.nextDouble());
            checked(wavy(random, 100 + random.nextInt(800), noise), "jagged " + round);
        }
    }

    @Test
    void wildPolygonsWithFewVertices() {
        Random random = new Random(11);
        for (int round = 0; round < 300; round++) checked(wavy(random, 3 + random.nextInt(12), 30 * random.nextDouble()), "wild " + round);
    }

    @Test
    void rimsCloserThanTheToleranceDoNotCross() {
        for (double gap : new double[] {0.001, 0.01, 0.03}) {
            double[] outer = round(0, 0, 100, 700), inner = reversed(round(0, 0, 100 - gap, 501));      // sides of both cross where gap < 0.002
            for (int i = 0; i < inner.length; i++) inner[i] *= 1 + 0.3 * gap / 100 * Math.sin(0.37 * i);
            inner = scaledInside(inner, 100 * Math.cos(Math.PI / 700) - gap / 2);
            List<Curve> fits = RimFit.of(List.of(outer, inner), TOLERANCE);
            assertTrue(apart(fits.get(0), fits.get(1)), "gap " + gap);
            assertTrue(TwoSided.distance(outer, true, fits.get(0)) <= TOLERANCE);
            assertTrue(TwoSided.distance(inner, true, fits.get(1)) <= TOLERANCE);
        }
    }

    @Test
    void aThinWavySlitIsNotClosed() {
        int n = 600;
        double[] ring = new double[4 * n];
        Random random = new Random(3);
        for (int i = 0; i < n; i++) {
            double x = 200.0 * i / n, y = 3 * Math.sin(x / 17) + 0.045 * Math.sin(x * 1.7), gap = 0.004 + 0.01 * random.nextDouble();
            ring[2 * i] = x;
            ring[2 * i + 1] = y - gap;
            ring[4 * n - 2 - 2 * i] = x;
            ring[4 * n - 1 - 2 * i] = y + gap;
        }
        checked(ring, "slit");
    }

    @Test
    void anOpenPathKeepsItsEnds() {
        double[] path = Curve.arc(0, 0, 400, 0.2, 2.5).flattened(0.002);
        Curve fit = RimFit.path(path, TOLERANCE);
        assertTrue(fit.segmentCount() <= 2, fit.toString());
        assertEquals(path[0], fit.x(0));
        assertEquals(path[path.length - 1], fit.y(fit.vertexCount() - 1));
        assertEquals(1000, fit.length(), 0.05);
        assertTrue(TwoSided.distance(path, false, fit) <= TOLERANCE);
    }

    @Test
    void repeatedVerticesAreNoCorners() {
        double[] ring = round(0, 0, 50, 200);
        double[] twice = new double[2 * ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            System.arraycopy(ring, i, twice, 2 * i, 2);
            System.arraycopy(ring, i, twice, 2 * i + 2, 2);
        }
        assertEquals(RimFit.of(ring, TOLERANCE), RimFit.of(twice, TOLERANCE));
    }

    @Test
    void refusesWhatIsNoRim() {
        assertThrows(IllegalArgumentException.class, () -> RimFit.of(new double[] {1, 1, 1, 1, 1, 1}, TOLERANCE));
        assertThrows(IllegalArgumentException.class, () -> RimFit.of(new double[] {1, 1, 1, Double.NaN, 3, 1}, TOLERANCE));
        assertThrows(IllegalArgumentException.class, () -> RimFit.of(round(0, 0, 1, 9), 0));
    }

    @Test
    void allowancesMatchTheClosedForm() {
        // A convex figure grown by d with round corners: area + length d + π d², length + 2 π d (Steiner).
        Region plate = Region.of(Curve.polygon(0, 0, 300, 0, 300, 200, 0, 200), List.of(Curve.circle(100, 100, 40), Curve.circle(250, 50, 20)));
        Region grown = plate.grown(25, TOLERANCE);
        assertEquals(1, grown.holes().size(), "the hole of 20 mm radius closes");
        assertEquals(300 * 200 + 1000 * 25 + Math.PI * 625 - Math.PI * 15 * 15, grown.area(), TOLERANCE * grown.length());
        assertEquals(1000 + 2 * Math.PI * 25 + 2 * Math.PI * 15, grown.length(), 0.5);
        assertTrue(grown.outer().segmentCount() <= 12, grown.outer().toString());
        Random random = new Random(9);
        double[] wavy = wavy(random, 900, 0);
        Region blank = Region.ofRims(List.of(wavy), TOLERANCE), allowed = blank.grown(25, TOLERANCE);
        double[] edge = allowed.outer().flattened(0.01);
        for (int i = 0; i < edge.length; i += 2) assertEquals(25, blank.outer().distance(edge[i], edge[i + 1]), TOLERANCE);
        assertEquals(plate, plate.grown(0, TOLERANCE));
        assertThrows(IllegalArgumentException.class, () -> plate.grown(-1, TOLERANCE));
    }

    /** Every place of the new edge is the allowance away from the nearest of all sides of a rough rim; what lies that near within is held. */
    @Test
    void roughRimsGrowByTheAllowanceAllRound() {
        Random random = new Random(17);
        int n = 6000;
        double[] rough = new double[2 * n], window = new double[2 * n / 3];
        for (int i = 0; i < n; i++) noisy(rough, i, n, 300, random);
        for (int i = 0; i < n / 3; i++) noisy(window, i, n / 3, 120, random);
        Region blank = Region.of(Curve.polygon(rough), List.of(Curve.polygon(window)));
        for (double by : new double[] {2, 25}) {
            Region grown = blank.grown(by, TOLERANCE);
            assertEquals(1, grown.holes().size());
            for (Curve curve : grown.curves()) {
                double[] edge = curve.flattened(0.005);
                for (int i = 0; i < edge.length; i += 2 * Math.max(1, edge.length / 600))
                    assertEquals(by, Math.min(away(rough, edge[i], edge[i + 1]), away(window, edge[i], edge[i + 1])), TOLERANCE + 0.005);
            }
            for (int i = 0; i < 2 * n; i += 40) {
                double out = 1 + 0.9 * by / Math.hypot(rough[i], rough[i + 1]);
                assertTrue(grown.contains(out * rough[i], out * rough[i + 1]));
            }
            assertTrue(grown.contains(200, 0) && !grown.contains(0, 0) && !grown.contains(340, 0));
        }
        assertTrue(blank.grown(130, TOLERANCE).holes().isEmpty(), "a window of 120 mm closes");
    }

    private static void noisy(double[] ring, int i, int n, double radius, Random random) {
        double a = 2 * Math.PI * i / n, r = radius + random.nextGaussian();
        ring[2 * i] = r * Math.cos(a);
        ring[2 * i + 1] = r * Math.sin(a);
    }

    /** Distance from the nearest side, all sides asked. */
    private static double away(double[] ring, double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < ring.length; i += 2) {
            double ax = ring[i], ay = ring[i + 1], dx = ring[(i + 2) % ring.length] - ax, dy = ring[(i + 3) % ring.length] - ay;
            double t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
            least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
        }
        return least;
    }

    @Test
    void unionOfTwoSquares() {
        Region a = Region.of(Curve.polygon(0, 0, 10, 0, 10, 10, 0, 10), List.of());
        assertEquals(1, Region.union(List.of(a, a.moved(0, 5, 5)), TOLERANCE).size());
        assertEquals(175, Region.union(List.of(a, a.moved(0, 5, 5)), TOLERANCE).get(0).area(), 1e-9);
        assertEquals(2, Region.union(List.of(a, a.moved(0, 50, 5)), TOLERANCE).size());
    }

    private static Curve checked(double[] ring, String name) {
        Curve fit = RimFit.of(ring, TOLERANCE);
        assertTrue(fit.isClosed());
        double distance = TwoSided.distance(ring, true, fit);
        assertTrue(distance <= TOLERANCE + 1e-9, name + ": " + distance + " mm");
        if (isSimple(ring)) assertTrue(isSimple(fit.flattened(2e-5)), name + " crosses itself");
        assertTrue(fit.segmentCount() <= ring.length / 2, name);
        return fit;
    }

    private static boolean apart(Curve a, Curve b) {
        return !line(a.flattened(2e-5)).intersects(line(b.flattened(2e-5)));
    }

    private static boolean isSimple(double[] ring) {
        return line(ring).isSimple();
    }

    private static org.locationtech.jts.geom.LineString line(double[] ring) {
        Coordinate[] at = new Coordinate[ring.length / 2 + 1];
        for (int i = 0; i < at.length; i++) at[i] = new Coordinate(ring[2 * i % ring.length], ring[2 * i % ring.length + 1]);
        return new GeometryFactory().createLinearRing(at);
    }

    private static double[] scaledInside(double[] ring, double radius) {
        double most = 0;
        for (int i = 0; i < ring.length; i += 2) most = Math.max(most, Math.hypot(ring[i], ring[i + 1]));
        double by = radius / most;
        return Arrays.stream(ring).map(x -> x * by).toArray();
    }

    static double[] round(double cx, double cy, double radius, int n) {
        double[] ring = new double[2 * n];
        for (int i = 0; i < n; i++) {
            ring[2 * i] = cx + radius * Math.cos(2 * Math.PI * i / n);
            ring[2 * i + 1] = cy + radius * Math.sin(2 * Math.PI * i / n);
        }
        return ring;
    }

    /** Star-shaped about the origin, so that it never crosses itself however jagged. */
    private static double[] wavy(Random random, int n, double noise) {
        double[] a = new double[6], phase = new double[6];
        for (int k = 0; k < 6; k++) {
            a[k] = 0.2 * random.nextDouble() / (k + 1);
            phase[k] = 2 * Math.PI * random.nextDouble();
        }
        double size = 20 + 400 * random.nextDouble();
        double[] ring = new double[2 * n];
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * i / n, r = size;
            for (int k = 0; k < 6; k++) r += size * a[k] * Math.cos((k + 1) * angle + phase[k]);
            r = Math.max(1, r + noise * (2 * random.nextDouble() - 1));
            ring[2 * i] = r * Math.cos(angle);
            ring[2 * i + 1] = r * Math.sin(angle);
        }
        return ring;
    }

    private static double[] subdivided(double[] corners, int parts) {
        int n = corners.length / 2;
        double[] ring = new double[2 * n * parts];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < parts; k++) {
                for (int c = 0; c < 2; c++) {
                    double from = corners[2 * i + c], to = corners[2 * ((i + 1) % n) + c];
                    ring[2 * (i * parts + k) + c] = from + (to - from) * k / parts;
                }
            }
        }
        return ring;
    }

    private static double[] reversed(double[] ring) {
        return Curve.polygon(ring).reversed().flattened(1);
    }
}
