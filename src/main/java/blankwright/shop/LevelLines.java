package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Lines on a piece along which a quantity, given in the vertices and linear between, has one value: plane sections, seen on blank and form. */
final class LevelLines {
    private final FlatMap map;
    private final EdgeTable edges;
    private final double[] at;
    private final double level;
    private double[] uv = new double[64];
    private double[] xyz = new double[96];
    private int n;

    private LevelLines(FlatMap map, EdgeTable edges, double[] at, double level) {
        this.map = map;
        this.edges = edges;
        this.at = at;
        this.level = level;
    }

    /**
     * Longest on the blank first. A vertex exactly on the level counts as above it, so a row of vertices on it gives the line once, and a rim on
     * it gives a line only where the piece lies below. A closed line ends where it began.
     *
     * @param at one per vertex
     */
    static List<TapeLine> of(FlatMap map, EdgeTable edges, double[] at, double level, String name) {
        return new LevelLines(map, edges, at, level).lines(name);
    }

    private List<TapeLine> lines(String name) {
        int count = map.form().triangleCount();
        boolean[] done = new boolean[count];
        List<TapeLine> lines = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {              // lines that begin at a rim, then closed ones
            for (int t = 0; t < count; t++) {
                if (done[t]) continue;
                int entry = side(t, false);
                if (entry < 0 || pass == 0 && edges.twin(3 * t + entry) >= 0) continue;
                follow(t, entry, done);
                TapeLine line = TapeLine.of(name, Arrays.copyOf(uv, 2 * n), Arrays.copyOf(xyz, 3 * n));
                if (line.blankLength() > 0 || line.formLength() > 0) lines.add(line);
            }
        }
        lines.sort(Comparator.comparingDouble(TapeLine::blankLength).reversed());
        return List.copyOf(lines);
    }

    /** Edge of triangle t that runs up through the level, or down through it; -1 where none does. */
    private int side(int t, boolean down) {
        for (int k = 0; k < 3; k++) {
            boolean from = at[map.form().corner(t, k)] >= level, to = at[map.form().corner(t, (k + 1) % 3)] >= level;
            if (from != to && from == down) return k;
        }
        return -1;
    }

    private void follow(int first, int entry, boolean[] done) {
        n = 0;
        add(first, entry);
        for (int t = first; t >= 0 && !done[t];) {
            done[t] = true;
            int exit = side(t, true);
            add(t, exit);
            t = edges.neighbour(t, exit);
        }
    }

    private void add(int t, int k) {
        TriMesh form = map.form();
        int p = form.corner(t, k), q = form.corner(t, (k + 1) % 3), a = Math.min(p, q), b = Math.max(p, q);
        double f = (level - at[a]) / (at[b] - at[a]), g = 1 - f;
        double u = g * map.u(a) + f * map.u(b), v = g * map.v(a) + f * map.v(b);
        double x = g * form.x(a) + f * form.x(b), y = g * form.y(a) + f * form.y(b), z = g * form.z(a) + f * form.z(b);
        if (n > 0) {                                        // round a vertex on the level nothing is added
            double near = 1e-9 * form.distance(a, b);
            if (Math.abs(x - xyz[3 * n - 3]) <= near && Math.abs(y - xyz[3 * n - 2]) <= near && Math.abs(z - xyz[3 * n - 1]) <= near) return;
        }
        if (2 * n == uv.length) {
            uv = Arrays.copyOf(uv, 4 * n);
            xyz = Arrays.copyOf(xyz, 6 * n);
        }
        uv[2 * n] = u;
        uv[2 * n + 1] = v;
        xyz[3 * n] = x;
        xyz[3 * n + 1] = y;
        xyz[3 * n + 2] = z;
        n++;
    }
}
