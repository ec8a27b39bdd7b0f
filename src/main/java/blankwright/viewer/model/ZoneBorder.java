package blankwright.viewer.model;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.shop.Zones;
import java.util.Arrays;

/**
 * The line round a zone on blank and form, as straight pieces.
 *
 * <p>It follows edges of triangles, so it is evened out: each point where two pieces meet goes {@value #EVENED} times half the way to the
 * middle of its neighbours. A zone's line along a rim stays on it but for its corners.
 */
public final class ZoneBorder {
    private static final int EVENED = 6;

    private final double[] uv;      // piece i: u, v, u, v
    private final double[] xyz;     // piece i: x, y, z, x, y, z
    private final TriMesh corners;

    private ZoneBorder(double[] uv, double[] xyz, TriMesh corners) {
        this.uv = uv;
        this.xyz = xyz;
        this.corners = corners;
    }

    static ZoneBorder of(FlatMap map, Zones zones, int zone) {
        TriMesh form = map.form();
        EdgeTable edges = EdgeTable.of(form);
        int[] ends = new int[2 * edges.edgeCount()];
        int n = 0;
        boolean[] onRim = new boolean[form.vertexCount()];
        for (int e = 0; e < edges.edgeCount(); e++) {
            if (edges.right(e) < 0) onRim[edges.from(e)] = onRim[edges.to(e)] = true;
            boolean left = zones.zoneOf(edges.left(e)) == zone, right = edges.right(e) >= 0 && zones.zoneOf(edges.right(e)) == zone;
            if (left == right) continue;
            ends[n++] = edges.from(e);
            ends[n++] = edges.to(e);
        }
        ends = Arrays.copyOf(ends, n);
        double[] flat = evened(map.positions(), 2, ends, onRim), space = evened(form.positions(), 3, ends, onRim);
        double[] uv = new double[2 * n], xyz = new double[3 * n];
        for (int i = 0; i < n; i++) {
            System.arraycopy(flat, 2 * ends[i], uv, 2 * i, 2);
            System.arraycopy(space, 3 * ends[i], xyz, 3 * i, 3);
        }
        return new ZoneBorder(uv, xyz, TriMesh.of(xyz, new int[0]));
    }

    private static double[] evened(double[] at, int width, int[] ends, boolean[] onRim) {
        int[] meets = new int[at.length / width];
        for (int v : ends) meets[v]++;
        double[] now = at;
        for (int pass = 0; pass < EVENED; pass++) {
            double[] sum = new double[at.length], next = now.clone();
            for (int i = 0; i < ends.length; i++) {
                int other = ends[i ^ 1];
                for (int k = 0; k < width; k++) sum[width * ends[i] + k] += now[width * other + k];
            }
            for (int v : ends)
                if (meets[v] == 2 && !onRim[v])
                    for (int k = 0; k < width; k++) next[width * v + k] = now[width * v + k] / 2 + sum[width * v + k] / 4;
            now = next;
        }
        return now;
    }

    public int pieces() {
        return uv.length / 4;
    }

    /** Coordinate k = u, v of an end (0 or 1) of piece i, mm. */
    public double blank(int i, int end, int k) {
        return uv[4 * i + 2 * end + k];
    }

    /** Piece i on the form: x, y, z, x, y, z, mm. */
    public double[] form(int i) {
        return Arrays.copyOfRange(xyz, 6 * i, 6 * i + 6);
    }

    /** Its ends as a form without triangles, to be framed. */
    public TriMesh corners() {
        return corners;
    }

    /** {u0, v0, u1, v1}, mm. */
    public double[] box() {
        double[] box = {1e300, 1e300, -1e300, -1e300};
        for (int i = 0; i < uv.length; i++) {
            box[i % 2] = Math.min(box[i % 2], uv[i]);
            box[i % 2 + 2] = Math.max(box[i % 2 + 2], uv[i]);
        }
        return box;
    }
}
