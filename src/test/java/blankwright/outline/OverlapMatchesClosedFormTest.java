package blankwright.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Strips bent round a centre: what lies double is a sector of a ring, area (R² - r²) · angle / 2. */
class OverlapMatchesClosedFormTest {
    private static final double TURN = 2 * Math.PI;

    @Test
    void aStripOf300DegreesIsClear() {
        assertTrue(Overlap.of(List.of(strip(100, 140, Math.toRadians(300), 500))).isEmpty());
    }

    @Test
    void aStripOf400DegreesCovers40() {
        for (int n : new int[] {90, 2000}) {
            Overlap overlap = Overlap.of(List.of(strip(100, 140, Math.toRadians(400), n)));
            assertEquals(1, overlap.places().size());
            double area = Math.toRadians(40) * (140 * 140 - 100 * 100) / 2;
            assertEquals(area, overlap.area(), n == 90 ? 0.02 * area : 1e-4 * area);
            Overlap.Place place = overlap.places().get(0);
            assertEquals(2, place.layers());
            double angle = Math.atan2(place.y(), place.x());
            assertTrue(angle > 0 && angle < Math.toRadians(40), "at " + place);
        }
    }

    @Test
    void threeTurnsLieThreeDeep() {
        Overlap overlap = Overlap.of(List.of(strip(100, 140, 2.5 * TURN, 3000)));
        assertEquals(3, overlap.places().get(0).layers());
        assertEquals(Math.PI * (140 * 140 - 100 * 100), overlap.area(), 10);       // all of the ring lies double at least
    }

    @Test
    void mirroredOrMovedFarOffIsTheSame() {
        double[] strip = strip(100, 140, Math.toRadians(400), 300);
        double[] mirrored = strip.clone(), far = strip.clone();
        for (int i = 0; i < strip.length; i += 2) {
            mirrored[i] = -strip[i];
            far[i] += 5000;
        }
        assertEquals(Overlap.of(List.of(strip)).area(), Overlap.of(List.of(mirrored)).area(), 1e-3);
        assertEquals(Overlap.of(List.of(strip)).area(), Overlap.of(List.of(far)).area(), 1e-3);
    }

    @Test
    void touchingSeamsAreNoOverlap() {
        Random random = new Random(1);
        for (double apart : new double[] {0, 1e-9, 1e-6, 1e-4, 4e-3}) {
            double[] ring = strip(100, 140, TURN, 400);
            for (int i = 0; i < ring.length; i++) ring[i] += apart * (2 * random.nextDouble() - 1);
            assertTrue(Overlap.of(List.of(ring)).isEmpty(), "sides of the cut within " + apart);
        }
        assertEquals(1, Overlap.of(List.of(strip(100, 140, TURN + 0.0005, 400))).places().size(), "0.05 mm wide is an overlap");
    }

    @Test
    void aSeamWithManySidesThatWavesIsNoOverlap() {
        int n = 4000;
        Random random = new Random(2);
        double[] ring = new double[2 * (2 * n + 4)];
        int k = 0;
        for (double[] corner : new double[][] {{0, -100}, {300, -100}, {300, 100}, {0, 100}}) {
            ring[k++] = corner[0];
            ring[k++] = corner[1];
        }
        for (int way = 0; way < 2; way++) {                      // a slit from the left edge inwards and back, its sides crossing by a hair
            for (int i = 0; i < n; i++) {
                double x = 200.0 * (way == 0 ? i : n - 1 - i) / n;
                ring[k++] = x;
                ring[k++] = 5 * Math.sin(x / 9) + 1e-6 * random.nextGaussian();
            }
        }
        assertTrue(Overlap.of(List.of(ring)).isEmpty());
    }

    @Test
    void figureEight() {
        double[] eight = new double[2 * 400];
        for (int i = 0; i < 400; i++) {
            double t = TURN * (i + 0.3) / 400;
            eight[2 * i] = 100 * Math.sin(t);
            eight[2 * i + 1] = 100 * Math.sin(t) * Math.cos(t) + (Math.sin(t) > 0 ? 20 * Math.sin(2 * t) : 0);
        }
        Overlap overlap = Overlap.of(List.of(eight));
        assertEquals(1, overlap.places().size());
        assertEquals(-1, overlap.places().get(0).layers());
    }

    @Test
    void holesAndSeveralRims() {
        double[] plate = {0, 0, 200, 0, 200, 200, 0, 200}, hole = reversed(RimFitKeepsWithinToleranceTest.round(100, 100, 40, 64));
        assertTrue(Overlap.of(List.of(plate, hole)).isEmpty());
        double[] across = reversed(RimFitKeepsWithinToleranceTest.round(200, 100, 40, 64));
        assertEquals(1, Overlap.of(List.of(plate, across)).places().size(), "a hole over the edge");
        assertTrue(Overlap.of(List.of()).isEmpty());
        assertTrue(Overlap.of(List.of(new double[] {0, 0, 1, 1})).isEmpty());
    }

    @Test
    void twoPlacesAreToldApart() {
        List<double[]> rings = new ArrayList<>(List.of(strip(100, 140, Math.toRadians(380), 300)));
        double[] other = strip(30, 50, Math.toRadians(390), 300);
        for (int i = 0; i < other.length; i += 2) other[i] += 1000;
        rings.add(other);
        Overlap overlap = Overlap.of(rings);
        assertEquals(2, overlap.places().size());
        assertTrue(overlap.places().get(0).x() < 200 && overlap.places().get(1).x() > 800);
    }

    /** Without a limit on what is joined: ten seconds and more. */
    @Test
    void aRimThatCrossesItselfEverywhereIsToldByItsLargestPlaces() {
        Random random = new Random(1);
        double[] ring = random.doubles(2 * 400, 0, 1000).toArray();
        Overlap overlap = Overlap.of(List.of(ring));
        assertTrue(!overlap.isEmpty() && overlap.area() > 1000 && overlap.area() < 1e6, "area " + overlap.area());
        assertTrue(overlap.places().size() <= 1000);
        for (Overlap.Place place : overlap.places()) assertTrue(place.layers() < 0 || place.layers() > 1, place.toString());
    }

    @Test
    void refusesNumbersThatAreNone() {
        assertThrows(IllegalArgumentException.class, () -> Overlap.of(List.of(new double[] {0, 0, 1, Double.NaN, 1, 1})));
    }

    /** From the angle 0 on: outer edge there, inner edge back. */
    static double[] strip(double inner, double outer, double angle, int n) {
        double[] ring = new double[4 * (n + 1)];
        for (int i = 0; i <= n; i++) {
            double a = angle * i / n;
            ring[2 * i] = outer * Math.cos(a);
            ring[2 * i + 1] = outer * Math.sin(a);
            ring[4 * n + 2 - 2 * i] = inner * Math.cos(a);
            ring[4 * n + 3 - 2 * i] = inner * Math.sin(a);
        }
        return ring;
    }

    private static double[] reversed(double[] ring) {
        return Curve.polygon(ring).reversed().flattened(1);
    }
}
