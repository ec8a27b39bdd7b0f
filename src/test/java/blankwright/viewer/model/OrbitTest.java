package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.shape.Fineness;
import blankwright.shape.TorusSection;
import blankwright.shop.PanelFrame;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OrbitTest {
    private static final double HIGH = 700, WIDE = 900;
    private final TriMesh form = new TorusSection(330, 95, 2.6, 2.8, 0).mesh(Fineness.chord(1));
    private final Orbit start = Orbit.round(PanelFrame.of(form)).fitting(List.of(form), WIDE, HIGH);

    @Test
    void itsAxesAreSquareAndRightHandedWhereverItStands() {
        Random random = new Random(1);
        Orbit orbit = start;
        for (int i = 0; i < 200; i++) {
            orbit = orbit.turned(random.nextGaussian(), random.nextGaussian());
            double[] r = orbit.right(), u = orbit.upward(), t = orbit.towards();
            assertEquals(1, dot(r, r), 1e-12);
            assertEquals(1, dot(u, u), 1e-12);
            assertEquals(0, dot(r, u), 1e-12);
            assertArrayEquals(t, new double[] {r[1] * u[2] - r[2] * u[1], r[2] * u[0] - r[0] * u[2], r[0] * u[1] - r[1] * u[0]}, 1e-12);
        }
    }

    /** What lies under the pointer stays there: the promise of zooming to it. */
    @Test
    void zoomingKeepsThePlaceUnderThePointer() {
        for (double factor : new double[] {0.2, 0.9, 1.3, 4}) {
            double[] held = start.onPlane(120, -200, HIGH);
            double[] seen = start.zoomed(factor, 120, -200, HIGH).seen(held[0], held[1], held[2], HIGH);
            assertEquals(120, seen[0], 1e-9);
            assertEquals(-200, seen[1], 1e-9);
        }
    }

    @Test
    void slidingMovesThePlaceWithTheHand() {
        double[] held = start.onPlane(10, 20, HIGH);
        double[] seen = start.moved(37, -11, HIGH).seen(held[0], held[1], held[2], HIGH);
        assertEquals(47, seen[0], 1e-9);
        assertEquals(9, seen[1], 1e-9);
    }

    @Test
    void fittingShowsEveryVertexAndFillsHalfThePane() {
        for (Side side : Side.values()) {
            Orbit orbit = start.from(side).fitting(List.of(form), WIDE, HIGH);
            double farX = 0, farY = 0;
            for (int v = 0; v < form.vertexCount(); v++) {
                double[] seen = orbit.seen(form.x(v), form.y(v), form.z(v), HIGH);
                farX = Math.max(farX, Math.abs(seen[0]));
                farY = Math.max(farY, Math.abs(seen[1]));
            }
            assertTrue(farX <= WIDE / 2 && farY <= HIGH / 2, side + ": " + farX + ", " + farY);
            assertTrue(farX > WIDE / 4 || farY > HIGH / 4, side + ": " + farX + ", " + farY);
        }
    }

    @Test
    void theSixViewsLookAlongTheAxesOfThePanel() {
        PanelFrame f = PanelFrame.of(form);
        assertArrayEquals(new double[] {f.up(0), f.up(1), f.up(2)}, start.from(Side.ABOVE).towards(), 1e-12);
        assertArrayEquals(new double[] {-f.up(0), -f.up(1), -f.up(2)}, start.from(Side.BELOW).towards(), 1e-12);
        assertArrayEquals(new double[] {f.along(0), f.along(1), f.along(2)}, start.from(Side.HEAD).towards(), 1e-12);
        assertArrayEquals(new double[] {-f.along(0), -f.along(1), -f.along(2)}, start.from(Side.FOOT).towards(), 1e-12);
        assertArrayEquals(new double[] {f.across(0), f.across(1), f.across(2)}, start.from(Side.FAR).towards(), 1e-12);
        assertArrayEquals(new double[] {-f.across(0), -f.across(1), -f.across(2)}, start.from(Side.NEAR).towards(), 1e-12);
        assertArrayEquals(new double[] {f.along(0), f.along(1), f.along(2)}, start.from(Side.ABOVE).right(), 1e-12,
                "the centre line lies level");
    }

    @Test
    void squareOnLooksAgainstTheNormal() {
        Random random = new Random(3);
        for (int i = 0; i < 50; i++) {
            double[] n = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            double length = Math.sqrt(dot(n, n));
            for (int k = 0; k < 3; k++) n[k] /= length;
            Orbit square = start.squareTo(new double[] {1, 2, 3}, n);
            assertArrayEquals(n, square.towards(), 1e-12);
            assertArrayEquals(new double[] {0, 0}, Arrays.copyOf(square.seen(1, 2, 3, HIGH), 2), 1e-9);
        }
    }

    /** Pinhole by hand: half the field of view reaches half the span at the distance of the place looked at. */
    @Test
    void aPlaceNearerToTheEyeLooksLarger() {
        double[] t = start.towards(), u = start.upward();
        double d = start.distance();
        double[] p = new double[3];
        for (int k = 0; k < 3; k++) p[k] = start.target(k) + 0.25 * d * t[k] + 10 * u[k];
        assertEquals(-10 / (0.75 * d) * (HIGH / 2) / Math.tan(Orbit.FIELD / 2), start.seen(p[0], p[1], p[2], HIGH)[1], 1e-9);
        for (int k = 0; k < 3; k++) p[k] = start.target(k) + 1.01 * d * t[k];
        assertEquals(0, start.seen(p[0], p[1], p[2], HIGH)[2], "behind the eye");
    }

    private static double dot(double[] p, double[] q) {
        return p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
    }
}
