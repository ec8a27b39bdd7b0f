package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReachTest {
    private static final Tool JAW = new Tool("jaw shrinker", Instruction.SHRINK, 25, 1);
    private static final Tool TUCK = new Tool("tucks", Instruction.SHRINK, 60, 3);
    private static final Tool WHEEL = new Tool("wheel", Instruction.STRETCH, Double.POSITIVE_INFINITY, 1.5);

    /** A flat square of 200 mm, 5 mm cells. */
    private static TriMesh square() {
        int n = 40;
        double[] xyz = new double[3 * (n + 1) * (n + 1)];
        int[] tri = new int[6 * n * n];
        for (int i = 0, p = 0; i <= n; i++)
            for (int j = 0; j <= n; j++) {
                int v = i * (n + 1) + j;
                xyz[3 * v] = 5 * i;
                xyz[3 * v + 1] = 5 * j;
                if (i < n && j < n) for (int w : new int[] {v, v + n + 1, v + n + 2, v, v + n + 2, v + 1}) tri[p++] = w;
            }
        return TriMesh.of(xyz, tri);
    }

    /** Straight in from the side of a square the nearest way runs along the edges of the grid, so it is exact. */
    @Test
    void distanceIsThatFromTheNearestSide() {
        TriMesh form = square();
        Reach reach = Reach.of(form, List.of(), 0);
        for (int t = 0; t < form.triangleCount(); t++) {
            double mean = 0;
            for (int k = 0; k < 3; k++) {
                int v = form.corner(t, k);
                mean += Math.min(Math.min(form.x(v), 200 - form.x(v)), Math.min(form.y(v), 200 - form.y(v))) / 3;
            }
            assertEquals(mean, reach.distance(t), 1e-9);
        }
    }

    @Test
    void theCheapestToolThatGetsThereDoesIt() {
        Reach reach = Reach.of(square(), List.of(TUCK, JAW, WHEEL), 0);
        double[] shrink = reach.shrinkCosts(), stretch = reach.stretchCosts();
        for (int t = 0; t < shrink.length; t++) {
            double in = reach.distance(t);
            assertEquals(in <= 25 ? 1 : in <= 60 ? 0 : -1, reach.tool(Instruction.SHRINK, t));
            assertEquals(in <= 25 ? 1 : in <= 60 ? 3 : Reach.BEYOND, shrink[t]);
            assertEquals(2, reach.tool(Instruction.STRETCH, t));
            assertEquals(1.5, stretch[t]);
        }
    }

    @Test
    void leanMultipliesTheOtherKind() {
        TriMesh form = square();
        double[] half = Reach.of(form, List.of(JAW, WHEEL), 0.5).shrinkCosts();
        double[] most = Arrays.stream(half).distinct().sorted().toArray();
        assertArrayEquals(new double[] {Math.sqrt(Reach.BEYOND), Reach.BEYOND}, most, 1e-9);
        assertEquals(1.5, Reach.of(form, List.of(JAW, WHEEL), 1).stretchCosts()[0]);
        assertEquals(Reach.BEYOND, Reach.of(form, List.of(), -1).stretchCosts()[0]);
        assertEquals(1, Reach.of(form, List.of(), -1).shrinkCosts()[0]);
    }

    @Test
    void refusesWhatNoToolIs() {
        assertThrows(IllegalArgumentException.class, () -> new Tool(" ", Instruction.SHRINK, 25, 1));
        assertThrows(IllegalArgumentException.class, () -> new Tool("a", Instruction.LEAVE, 25, 1));
        assertThrows(IllegalArgumentException.class, () -> new Tool("a", Instruction.SHRINK, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Tool("a", Instruction.SHRINK, 25, 101));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Reach.of(square(), List.of(), 1.5)).getMessage().contains("lean 1.5"));
    }
}
