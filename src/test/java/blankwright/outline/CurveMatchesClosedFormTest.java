package blankwright.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Areas and lengths of school geometry: πr², 2πr, slot = rectangle and two half circles, segment r²(s - sin s)/2. */
class CurveMatchesClosedFormTest {
    private static final double PI = Math.PI;

    @Test
    void circle() {
        Curve circle = Curve.circle(30, -20, 17);
        assertEquals(PI * 17 * 17, circle.area(), 1e-9);
        assertEquals(2 * PI * 17, circle.length(), 1e-10);
        assertEquals(-PI * 17 * 17, circle.reversed().area(), 1e-9);
        assertBox(13, -37, 47, -3, circle.box());
        assertTrue(circle.contains(41.9, -31.9));
        assertFalse(circle.contains(42.1, -32.1));
        assertEquals(3, circle.distance(50, -20), 1e-12);
        assertEquals(17, circle.distance(30, -20), 1e-12);
    }

    @Test
    void slotAndRing() {
        Curve slot = Curve.of(new double[] {0, 0, 60, 0, 60, 20, 0, 20}, new double[] {0, 1, 0, 1}, true);
        assertEquals(60 * 20 + PI * 100, slot.area(), 1e-9);
        assertEquals(120 + 20 * PI, slot.length(), 1e-10);
        assertBox(-10, 0, 70, 20, slot.box());
        assertTrue(slot.contains(69, 10));
        assertFalse(slot.contains(69, 1));

        Region ring = Region.of(Curve.circle(0, 0, 50), List.of(Curve.circle(0, 0, 30)));
        assertEquals(PI * (2500 - 900), ring.area(), 1e-9);
        assertEquals(2 * PI * 80, ring.length(), 1e-9);
        assertTrue(ring.contains(40, 0));
        assertFalse(ring.contains(20, 0));
    }

    @Test
    void segmentsOfAllSweeps() {
        for (double sweep : new double[] {1e-7, 1e-4, 0.0099, 0.0101, 0.5, 2, 3.1, 4.5, 6.1}) {
            for (double radius : new double[] {0.3, 250, 1e5}) {
                double chord = 2 * radius * Math.sin(sweep / 2);
                Curve cap = Curve.of(new double[] {0, 0, chord, 0}, new double[] {Math.tan(sweep / 4), 0}, true);
                double area = sweep < 1e-3 ? radius * radius * sweep * sweep * sweep / 12 : radius * radius * (sweep - Math.sin(sweep)) / 2;
                assertEquals(area, cap.area(), 1e-7 * area + 1e-9 * chord * chord * sweep, "sweep " + sweep + ", radius " + radius);
                assertEquals(radius * sweep, cap.length(0), 1e-9 * radius * sweep);
                assertEquals(radius, cap.centreForm(0).radius(), 1e-6 * radius);
                assertEquals(sweep, cap.centreForm(0).sweep(), 1e-12);
                assertEquals(0, cap.centreForm(0).x(0), 1e-9 * radius);
                assertEquals(chord, cap.centreForm(0).x(1), 1e-9 * radius);
            }
        }
    }

    @Test
    void keepsAreaAndLengthWhenTurnedAndReversed() {
        Curve slot = Curve.of(new double[] {0, 0, 60, 0, 60, 20, 0, 20}, new double[] {0.3, 1, -0.4, 1}, true);
        Curve there = slot.moved(0.7, 1234, -77);
        assertEquals(slot.area(), there.area(), 1e-8);
        assertEquals(slot.length(), there.length(), 1e-9);
        assertEquals(-slot.area(), slot.reversed().area(), 1e-9);
        assertEquals(slot, slot.reversed().reversed());
        Curve open = Curve.of(new double[] {0, 0, 60, 0, 60, 20}, new double[] {0.3, -1}, false);
        assertEquals(open, open.reversed().reversed());
        assertEquals(open.length(), open.reversed().length(), 1e-12);
    }

    @Test
    void flattenedStaysWithinItsTolerance() {
        Curve slot = Curve.of(new double[] {0, 0, 600, 0, 600, 200, 0, 200}, new double[] {-0.3, 1.2, 0, 1}, true);
        double[] p = slot.flattened(0.01);
        assertTrue(TwoSided.fromPolygonToCurve(p, true, slot) <= 0.01 + 1e-9);
        assertTrue(TwoSided.fromCurveToPolygon(slot, p, true) <= 0.01 + 1e-9);
    }

    @Test
    void containsAgreesWithItsFlattening() {
        Curve odd = Curve.of(new double[] {0, 0, 60, 0, 60, 20, 30, 40, 0, 20}, new double[] {0.3, 1.4, -0.4, 0, -0.9}, true);
        double[] p = odd.flattened(1e-4);
        Random random = new Random(5);
        for (int i = 0; i < 20_000; i++) {
            double x = -20 + 120 * random.nextDouble(), y = -30 + 100 * random.nextDouble();
            if (odd.distance(x, y) < 1e-3) continue;
            assertEquals(Curve.polygon(p).contains(x, y), odd.contains(x, y), x + ", " + y);
        }
    }

    @Test
    void refusesWhatIsNoCurve() {
        assertThrows(IllegalArgumentException.class, () -> Curve.polygon(0, 0));
        assertThrows(IllegalArgumentException.class, () -> Curve.polygon(0, 0, Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> Curve.of(new double[] {0, 0, 1, 1}, new double[] {0, 0}, false));
        assertThrows(IllegalArgumentException.class, () -> Curve.of(new double[] {0, 0, 1, 1}, new double[] {Double.POSITIVE_INFINITY}, false));
    }

    @Test
    void leastBoxOfATurnedRectangle() {
        double[] corners = Curve.polygon(0, 0, 300, 0, 300, 40, 0, 40).moved(0.6, 5, 7).flattened(1);
        LeastBox box = LeastBox.of(corners);
        assertEquals(300, box.length(), 1e-9);
        assertEquals(40, box.width(), 1e-9);
        assertEquals(-0.6, box.angle(), 1e-9);
    }

    private static void assertBox(double x0, double y0, double x1, double y1, Curve.Box box) {
        assertEquals(x0, box.x0(), 1e-9);
        assertEquals(y0, box.y0(), 1e-9);
        assertEquals(x1, box.x1(), 1e-9);
        assertEquals(y1, box.y1(), 1e-9);
    }
}
