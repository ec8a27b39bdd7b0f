package blankwright.viewer.model;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.shop.Flange;
import blankwright.shop.Zone;
import blankwright.shop.Zones;
import java.util.Arrays;

/**
 * The line round a zone or a flange on blank and form, as straight pieces, and the line in it that the bench works by: of a zone the one
 * that is taped, of a flange the one it is turned about.
 *
 * <p>Round a zone it follows edges of triangles, so it is evened out: each point where two pieces meet goes {@value #EVENED} times half the
 * way to the middle of its neighbours. A zone's line along a rim stays on it but for its corners. Round a flange it is the finished edge, and
 * the bend with what joins both ends.
 */
public final class Border {
    private static final int EVENED = 6;

    private final double[] uv;      // piece i: u, v, u, v
    private final double[] xyz;     // piece i: x, y, z, x, y, z
    private final TriMesh corners;
    private final double[] lineOnBlank, lineOnForm;

    private Border(double[] uv, double[] xyz, double[] lineOnBlank, double[] lineOnForm) {
        this.uv = uv;
        this.xyz = xyz;
        corners = TriMesh.of(xyz, new int[0]);
        this.lineOnBlank = lineOnBlank;
        this.lineOnForm = lineOnForm;
    }

    static Border of(Skin skin, Zone zone) {
        FlatMap map = skin.map();
        Zones zones = skin.piece().zones();
        TriMesh form = map.form();
        EdgeTable edges = EdgeTable.of(form);
        int[] ends = new int[2 * edges.edgeCount()];
        int n = 0;
        boolean[] onRim = new boolean[form.vertexCount()];
        for (int e = 0; e < edges.edgeCount(); e++) {
            if (edges.right(e) < 0) onRim[edges.from(e)] = onRim[edges.to(e)] = true;
            boolean left = zones.zoneOf(edges.left(e)) == zone.number(), right = edges.right(e) >= 0 && zones.zoneOf(edges.right(e)) == zone.number();
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
        return new Border(uv, xyz, zone.line().onBlank(), zone.line().onForm());
    }

    static Border of(Skin skin, Flange flange) {
        double[] line = closed(flange.line(), flange.whole()), edge = closed(flange.edge(), flange.whole()), lineThere = onForm(skin, line),
                edgeThere = onForm(skin, edge);
        int n = line.length / 2, m = edge.length / 2, pieces = n - 1 + m - 1 + (flange.whole() ? 0 : 2);
        double[] uv = new double[4 * pieces], xyz = new double[6 * pieces];
        int piece = 0;
        for (int i = 0; i < m - 1; i++) put(uv, xyz, piece++, edge, edgeThere, i, edge, edgeThere, i + 1);
        for (int i = 0; i < n - 1; i++) put(uv, xyz, piece++, line, lineThere, i, line, lineThere, i + 1);
        if (!flange.whole()) {
            put(uv, xyz, piece++, edge, edgeThere, 0, line, lineThere, 0);
            put(uv, xyz, piece, edge, edgeThere, m - 1, line, lineThere, n - 1);
        }
        return new Border(uv, xyz, line, lineThere);
    }

    /** One piece, from a point of one line to a point of another. */
    private static void put(double[] uv, double[] xyz, int piece, double[] a, double[] aThere, int i, double[] b, double[] bThere, int j) {
        System.arraycopy(a, 2 * i, uv, 4 * piece, 2);
        System.arraycopy(b, 2 * j, uv, 4 * piece + 2, 2);
        System.arraycopy(aThere, 3 * i, xyz, 6 * piece, 3);
        System.arraycopy(bThere, 3 * j, xyz, 6 * piece + 3, 3);
    }

    private static double[] closed(double[] line, boolean whole) {
        double[] all = Arrays.copyOf(line, line.length + (whole ? 2 : 0));
        if (whole) System.arraycopy(line, 0, all, line.length, 2);
        return all;
    }

    private static double[] onForm(Skin skin, double[] line) {
        double[] there = new double[line.length / 2 * 3];
        for (int i = 0; i < line.length / 2; i++)
            System.arraycopy(skin.nearest(line[2 * i], line[2 * i + 1]).on(skin.map().form()), 0, there, 3 * i, 3);
        return there;
    }

    /** The line that is worked by, on the blank: u, v, u, v, ..., mm. */
    public double[] lineOnBlank() {
        return lineOnBlank.clone();
    }

    /** The same on the form: x, y, z, x, y, z, ..., mm. */
    public double[] lineOnForm() {
        return lineOnForm.clone();
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
