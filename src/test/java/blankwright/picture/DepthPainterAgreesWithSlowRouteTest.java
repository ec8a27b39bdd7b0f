package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The depth buffer against a ray cast through every element at every triangle. */
class DepthPainterAgreesWithSlowRouteTest {
    private static final int W = 90, H = 150;      // more than two bands high

    @Test
    void nearestDepthAndClassAtEveryElement() {
        Random random = new Random(20261125);
        int n = 60;
        float[] place = new float[9 * n];
        double[] amount = new double[3 * n];
        float[] light = new float[3 * n];
        Arrays.fill(light, 1);
        int[] tri = new int[3 * n];
        for (int v = 0; v < 3 * n; v++) {
            place[3 * v] = (float) (random.nextDouble() * (W + 40) - 20);
            place[3 * v + 1] = (float) (random.nextDouble() * (H + 40) - 20);
            place[3 * v + 2] = (float) (random.nextDouble() * 100);
            amount[v] = random.nextDouble() * 0.1 - 0.05;
            tri[v] = v;
        }
        StrainScale scale = StrainScale.of(0.001, amount);
        DepthPainter painter = new DepthPainter(W, H, 1);
        painter.paint(place, amount, light, tri, Tints.of(scale));
        int covered = 0, front = 0;
        for (int y = 0; y < H; y++) {
            for (int x = 0; x < W; x++) {
                double best = Double.NEGATIVE_INFINITY, worth = 0, second = best;
                boolean back = false;
                for (int t = 0; t < n; t++) {
                    double[] w = weights(place, 9 * t, x + 0.5, y + 0.5);
                    if (w == null) continue;
                    double z = 0, a = 0;
                    for (int k = 0; k < 3; k++) {
                        z += w[k] * place[9 * t + 3 * k + 2];
                        a += w[k] * amount[3 * t + k];
                    }
                    if (z > best) {
                        second = best;
                        best = z;
                        worth = a;
                        back = w[3] > 0;
                    } else second = Math.max(second, z);
                }
                if (best == Double.NEGATIVE_INFINITY) {
                    assertEquals(0xFFFFFF, painter.colour(x, y));
                    assertEquals(Float.NEGATIVE_INFINITY, painter.depth(x, y));
                    continue;
                }
                covered++;
                assertEquals(best, painter.depth(x, y), 1e-3, "depth at " + x + ", " + y);
                if (back || best - second < 1e-3 || nearBoundary(scale, worth)) continue;
                front++;
                assertEquals(scale.colourOf(worth), painter.colour(x, y), "colour at " + x + ", " + y);
            }
        }
        assertTrue(covered > 10_000 && front > 4_000, covered + " covered, " + front + " seen from the front");
    }

    /** A square cut into triangles any way covers each element once: no crack, and its colour is the pure one. */
    @Test
    void neighboursLeaveNoCrack() {
        Random random = new Random(7);
        int n = 12;
        float[] place = new float[3 * (n + 1) * (n + 1)];
        for (int j = 0; j <= n; j++) {
            for (int i = 0; i <= n; i++) {
                int v = j * (n + 1) + i;
                boolean rim = i == 0 || j == 0 || i == n || j == n;
                place[3 * v] = (float) (10 + 5 * i + (rim ? 0 : random.nextDouble() * 3 - 1.5));
                place[3 * v + 1] = (float) (10 + 10 * j + (rim ? 0 : random.nextDouble() * 6 - 3));
            }
        }
        int[] tri = new int[6 * n * n];
        for (int c = 0, at = 0; c < n * n; c++) {
            int v = c / n * (n + 1) + c % n;
            for (int corner : new int[] {v, v + n + 2, v + 1, v, v + n + 1, v + n + 2}) tri[at++] = corner;
        }
        double[] amount = new double[place.length / 3];
        Arrays.fill(amount, 0.013);
        float[] light = new float[amount.length];
        Arrays.fill(light, 1);
        StrainScale scale = StrainScale.of(0.001, amount);
        DepthPainter painter = new DepthPainter(W, H, 2);
        painter.paint(place, amount, light, tri, Tints.of(scale));
        for (int y = 0; y < H; y++) {
            for (int x = 0; x < W; x++) {
                boolean inside = x >= 10 && x < 70 && y >= 10 && y < 130;
                assertEquals(inside ? scale.colourOf(0.013) : 0xFFFFFF, painter.colour(x, y), "at " + x + ", " + y);
            }
        }
    }

    /** Barycentric weights and the sign of the turn (y downwards); null outside. */
    private static double[] weights(float[] p, int at, double x, double y) {
        double ax = p[at], ay = p[at + 1], bx = p[at + 3], by = p[at + 4], cx = p[at + 6], cy = p[at + 7];
        double det = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
        double b = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / det, c = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / det;
        return b < 0 || c < 0 || b + c > 1 ? null : new double[] {1 - b - c, b, c, det};
    }

    private static boolean nearBoundary(StrainScale scale, double amount) {
        for (double b : scale.boundaries()) if (Math.abs(b - amount) < 1e-6) return true;
        return false;
    }
}
