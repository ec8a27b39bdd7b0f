package blankwright.sheet;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.shop.Instruction;
import blankwright.shop.Zones;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The lines between zones on the blank.
 *
 * <p>They follow edges of triangles, so they are drawn evened out: each point three times a quarter of the way to its neighbours' middle,
 * which moves it less than the length of an edge. Ends, where a border meets the rim or another border, stay.
 */
final class ZoneBorders {
    private static final int EVENED = 3;

    /**
     * A border.
     *
     * @param shrink whether a zone to be shrunk lies on one side; else one to be stretched does
     * @param uv two per point, mm; a closed one does not repeat its first
     */
    record Border(boolean shrink, boolean closed, double[] uv) { }

    private ZoneBorders() { }

    /** Each border once, in the order of the edges. */
    static List<Border> of(FlatMap map, Zones zones) {
        TriMesh form = map.form();
        EdgeTable edges = EdgeTable.of(form);
        int[] border = new int[edges.edgeCount()];
        int count = 0;
        Map<Integer, int[]> at = new HashMap<>();       // vertex -> its border edges
        for (int e = 0; e < edges.edgeCount(); e++) {
            int l = edges.left(e), r = edges.right(e);
            if (r < 0 || zones.zoneOf(l) == zones.zoneOf(r)) continue;
            border[count++] = e;
            for (int v : new int[] {edges.from(e), edges.to(e)}) at.merge(v, new int[] {e}, ZoneBorders::joined);
        }
        List<Border> found = new ArrayList<>();
        boolean[] used = new boolean[edges.edgeCount()];
        for (int pass = 0; pass < 2; pass++) {          // first those with ends, then the closed ones
            for (int i = 0; i < count; i++) {
                int e = border[i];
                if (used[e]) continue;
                for (int start : new int[] {edges.from(e), edges.to(e)}) {
                    if (used[e] || pass == 0 && through(start, e, at, edges, zones)) continue;
                    found.add(follow(start, e, at, edges, zones, map, used));
                }
            }
        }
        return found;
    }

    private static int[] joined(int[] a, int[] b) {
        int[] both = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, both, a.length, b.length);
        return both;
    }

    private static boolean shrinks(int e, EdgeTable edges, Zones zones) {
        return zones.at(edges.left(e)).instruction() == Instruction.SHRINK || zones.at(edges.right(e)).instruction() == Instruction.SHRINK;
    }

    /** The border edge by which the line goes on from vertex v, or -1 where it ends there. */
    private static int next(int v, int e, Map<Integer, int[]> at, EdgeTable edges, Zones zones) {
        int[] here = at.get(v);
        if (here.length != 2) return -1;
        int other = here[0] == e ? here[1] : here[0];
        return shrinks(other, edges, zones) == shrinks(e, edges, zones) ? other : -1;
    }

    private static boolean through(int v, int e, Map<Integer, int[]> at, EdgeTable edges, Zones zones) {
        return next(v, e, at, edges, zones) >= 0;
    }

    private static Border follow(int start, int first, Map<Integer, int[]> at, EdgeTable edges, Zones zones, FlatMap map, boolean[] used) {
        List<Integer> path = new ArrayList<>(List.of(start));
        int v = start;
        for (int e = first; e >= 0 && !used[e]; e = next(v, e, at, edges, zones)) {
            used[e] = true;
            v = edges.from(e) == v ? edges.to(e) : edges.from(e);
            path.add(v);
        }
        boolean closed = path.size() > 3 && v == start;
        int n = path.size() - (closed ? 1 : 0);
        double[] uv = new double[2 * n];
        for (int i = 0; i < n; i++) {
            uv[2 * i] = map.u(path.get(i));
            uv[2 * i + 1] = map.v(path.get(i));
        }
        return new Border(shrinks(first, edges, zones), closed, evened(uv, closed));
    }

    private static double[] evened(double[] uv, boolean closed) {
        int n = uv.length / 2;
        double[] now = uv;
        for (int pass = 0; pass < EVENED; pass++) {
            double[] then = now.clone();
            for (int i = closed ? 0 : 1; i < (closed ? n : n - 1); i++) {
                int a = (i + n - 1) % n, b = (i + 1) % n;
                for (int k = 0; k < 2; k++) then[2 * i + k] = now[2 * i + k] / 2 + (now[2 * a + k] + now[2 * b + k]) / 4;
            }
            now = then;
        }
        return now;
    }
}
