package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A panel prepared once and laid flat under one set of options after another, and one whose numbers run in no order. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)     // a loop without end is a failure, not a wait
class FlattenerAgainTest {
    private static final FlattenOptions WORK = FlattenOptions.DEFAULT.withWork(LeastWork.of(new Resistance(69_000, 42, 127, 0.24, 0.65)));

    /** Large enough for coarser meshes. */
    private static TriMesh panel() {
        return Grids.mudguard(70);
    }

    private static double largestGap(FlatMap a, FlatMap b, int[] ofB) {
        int[] three = {0, a.form().vertexCount() / 2, a.form().vertexCount() - 1};
        double gap = 0;
        for (int v = 0; v < a.form().vertexCount(); v++)
            for (int w : three) gap = Math.max(gap, Math.abs(distance(a, v, w) - distance(b, ofB[v], ofB[w])));
        return gap;
    }

    private static double distance(FlatMap map, int v, int w) {
        return Math.hypot(map.u(v) - map.u(w), map.v(v) - map.v(w));
    }

    private static int[] same(TriMesh mesh) {
        return IntStream.range(0, mesh.vertexCount()).toArray();
    }

    @Test void sameOptionsAgainTakeNoStepWorthNaming() {
        Flattener flattener = Flattener.of(panel(), Progress.NONE);
        Outcome first = flattener.flatten(FlattenOptions.DEFAULT, Progress.NONE);
        Outcome again = assertInstanceOf(Outcome.Converged.class, flattener.again(first.map(), FlattenOptions.DEFAULT, Progress.NONE));
        assertTrue(again.steps() <= 1, again.steps() + " steps");
        assertEquals(first.energy(), again.energy(), 1e-9);
    }

    @Test void toAnotherAimAndBackGivesWhatAColdStartGives() {
        Flattener flattener = Flattener.of(panel(), Progress.NONE);
        FlatMap even = flattener.flatten(FlattenOptions.DEFAULT, Progress.NONE).map();
        Outcome cold = Flattener.flatten(panel(), WORK, Progress.NONE);
        Outcome warm = assertInstanceOf(Outcome.Converged.class, flattener.again(even, WORK, Progress.NONE));
        assertTrue(largestGap(cold.map(), warm.map(), same(panel())) < 0.01, "mm " + largestGap(cold.map(), warm.map(), same(panel())));
        Outcome back = flattener.again(warm.map(), FlattenOptions.DEFAULT, Progress.NONE);
        assertTrue(largestGap(even, back.map(), same(panel())) < 0.01);
    }

    @Test void aLayoutTurnedOverIsNotGoneOnFrom() {
        Flattener flattener = Flattener.of(panel(), Progress.NONE);
        Outcome first = flattener.flatten(FlattenOptions.DEFAULT, Progress.NONE);
        double[] uv = first.map().positions();
        for (int i = 0; i < uv.length; i += 2) uv[i] = -uv[i];
        Outcome again = flattener.again(FlatMap.of(panel(), uv), FlattenOptions.DEFAULT, Progress.NONE);
        assertEquals(first.energy(), again.energy(), 1e-12);
    }

    @Test void aLayoutOfAnotherMeshIsRefused() {
        FlatMap other = Flattener.flatten(Grids.mudguard(8), FlattenOptions.DEFAULT, Progress.NONE).map();
        assertThrows(IllegalArgumentException.class, () -> Flattener.of(panel(), Progress.NONE).again(other, FlattenOptions.DEFAULT, Progress.NONE));
    }

    @Test void numbersInNoOrderChangeNothingButTheNumbers() {
        TriMesh given = panel();
        List<Integer> order = new ArrayList<>(IntStream.range(0, given.vertexCount()).boxed().toList());
        Collections.shuffle(order, new Random(4));
        int[] number = new int[given.vertexCount()];
        double[] xyz = new double[3 * given.vertexCount()];
        for (int v = 0; v < number.length; v++) {
            number[v] = order.get(v);
            System.arraycopy(given.positions(), 3 * v, xyz, 3 * number[v], 3);
        }
        int[] tri = given.corners();
        List<int[]> triangles = new ArrayList<>();
        for (int t = 0; t < tri.length; t += 3) triangles.add(new int[] {number[tri[t]], number[tri[t + 1]], number[tri[t + 2]]});
        Collections.shuffle(triangles, new Random(5));
        TriMesh shuffled = TriMesh.of(xyz, triangles.stream().flatMapToInt(Arrays::stream).toArray());
        for (FlattenOptions options : List.of(FlattenOptions.DEFAULT, WORK)) {
            Outcome a = Flattener.flatten(given, options, Progress.NONE), b = Flattener.flatten(shuffled, options, Progress.NONE);
            assertEquals(a.energy(), b.energy(), 1e-7);
            double gap = largestGap(a.map(), b.map(), number);
            assertTrue(gap < 0.05, "mm " + gap);          // an energy to 1e-9 leaves a layout of 800 mm so much play
        }
    }

    @Test void costsOfTrianglesFollowThemIntoAnotherOrder() {
        TriMesh given = panel();
        List<Integer> order = new ArrayList<>(IntStream.range(0, given.triangleCount()).boxed().toList());
        Collections.shuffle(order, new Random(6));
        int[] tri = new int[3 * order.size()];
        double[] cost = new double[order.size()], moved = new double[order.size()], one = new double[order.size()];
        Arrays.fill(one, 1);
        for (int t = 0; t < order.size(); t++) cost[t] = given.x(given.corner(t, 0)) > 200 ? 3 : 1;
        for (int t = 0; t < order.size(); t++) {
            for (int k = 0; k < 3; k++) tri[3 * t + k] = given.corner(order.get(t), k);
            moved[t] = cost[order.get(t)];
        }
        Resistance metal = new Resistance(69_000, 42, 127, 0.24, 0.65);
        Outcome a = Flattener.flatten(given, FlattenOptions.DEFAULT.withWork(LeastWork.of(metal, one, cost)), Progress.NONE);
        Outcome b = Flattener.flatten(TriMesh.of(given.positions(), tri), FlattenOptions.DEFAULT.withWork(LeastWork.of(metal, one, moved)), Progress.NONE);
        double gap = largestGap(a.map(), b.map(), same(given));
        assertTrue(gap < 0.05, "mm " + gap);
    }
}
