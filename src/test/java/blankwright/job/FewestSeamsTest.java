package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Strips;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** As many seams as the winding of a strip asks for, and no more; the strips are flat already, so the parts of a blank are the blanks of its parts. */
class FewestSeamsTest {
    /** A part of a flat ring lies over itself when it winds more than once round: n turns and a bit take n cuts. */
    @Test
    void aStripWoundRoundTakesOneCutATurn() {
        int[][] strips = {{300, 0}, {500, 1}, {700, 1}, {1000, 2}, {1400, 3}};
        for (int width : new int[] {10, 60}) {
            for (int[] strip : strips) {
                TriMesh ring = Strips.ring(strip[0], 100 - width / 2.0, 100 + width / 2.0, strip[0] / 5, 4);
                FlatMap map = Flattener.flatten(ring, FlattenOptions.DEFAULT, Progress.NONE).map();
                List<double[]> places = Strips.places(map);
                String what = strip[0] + " degrees, " + width + " mm wide";
                assertEquals(strip[1] == 0, places.isEmpty(), what);
                if (strip[1] == 0) continue;
                List<int[]> cuts = FewestSeams.of(map, places);
                assertEquals(strip[1], cuts.size(), what);
                for (int[] cut : cuts) assertEquals(width, length(ring, cut), 0.2 * width, what);
            }
        }
    }

    /** Like an S with both ends rolled in: two places, a cut for each, proposed together. */
    @Test
    void twoCoilsTakeTwoCutsAtOnce() {
        TriMesh coils = Forms.grid(160, 4, false, false, (u, v) -> {
            double turned = Math.toRadians(1000) * Math.min(u, 1 - u), a = Math.toRadians(500) - turned, r = u < 0.5 ? 90 + 20 * v : 110 - 20 * v;
            double way = u < 0.5 ? 1 : -1;
            return new double[] {way * (r * Math.cos(a) - 100), way * r * Math.sin(a), 40 * u};
        });
        FlatMap map = Flattener.flatten(coils, FlattenOptions.DEFAULT, Progress.NONE).map();
        List<int[]> cuts = FewestSeams.of(map, Strips.places(map));
        assertEquals(2, cuts.size());
    }

    /** A tongue from the rim of a window that reaches over the frame on the other side: it is cut off across its width, and the window stays closed. */
    @Test
    void aTongueFromAHolesRimIsCutOff() {
        FlatMap map = tongue();
        List<double[]> places = Strips.places(map);
        assertTrue(!places.isEmpty());
        List<int[]> cuts = FewestSeams.of(map, places);
        assertEquals(1, cuts.size());
        assertEquals(20, length(map.form(), cuts.get(0)), 1e-9);
    }

    /** A frame of 120 by 120 mm round a window of 60 by 60; a tongue 20 wide grows from one side and ends 20 mm over the other, 1 mm above it. */
    private static FlatMap tongue() {
        Map<String, Integer> number = new HashMap<>();
        List<double[]> places = new ArrayList<>();
        List<Integer> corners = new ArrayList<>();
        for (int x = 0; x < 12; x++) {
            for (int y = 0; y < 12; y++) {
                if (x < 3 || x >= 9 || y < 3 || y >= 9) cell(x, y, false, number, places, corners);
                if (x >= 5 && x < 7 && y >= 3 && y < 11) cell(x, y, true, number, places, corners);
            }
        }
        double[] xyz = places.stream().flatMapToDouble(java.util.Arrays::stream).toArray(), uv = new double[xyz.length / 3 * 2];
        for (int v = 0; v < uv.length / 2; v++) {
            uv[2 * v] = xyz[3 * v];
            uv[2 * v + 1] = xyz[3 * v + 1];
        }
        return FlatMap.of(TriMesh.of(xyz, corners.stream().mapToInt(i -> i).toArray()), uv);
    }

    private static void cell(int x, int y, boolean above, Map<String, Integer> number, List<double[]> places, List<Integer> corners) {
        int[] at = new int[4];
        for (int k = 0; k < 4; k++) {
            int i = x + (k == 1 || k == 2 ? 1 : 0), j = y + k / 2;
            boolean up = above && j > 3;
            at[k] = number.computeIfAbsent(i + " " + j + " " + up, key -> {
                places.add(new double[] {10 * i, 10 * j, up ? 1 : 0});
                return places.size() - 1;
            });
        }
        corners.addAll(List.of(at[0], at[1], at[2], at[0], at[2], at[3]));
    }

    private static double length(TriMesh mesh, int[] path) {
        double sum = 0;
        for (int i = 1; i < path.length; i++) sum += mesh.distance(path[i - 1], path[i]);
        return sum;
    }
}
