package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.PlaneSection;
import blankwright.mesh.query.SkinPoint;
import java.util.Optional;

/**
 * A tape laid by hand between two places: straight on the blank, or straight over the form as seen from above it.
 *
 * <p>Keeps its ends as points of the form, mm, so that it finds itself again when the panel has been laid out anew.
 *
 * @param onBlank true where it lies straight on the blank
 */
public record DrawnTape(double x0, double y0, double z0, double x1, double y1, double z1, boolean onBlank) {
    public DrawnTape {
        if (!Double.isFinite(x0 + y0 + z0 + x1 + y1 + z1)) throw new IllegalArgumentException("a tape's ends must be three lengths each");
        x0 += 0.0;                              // no -0, which is written as 0
        y0 += 0.0;
        z0 += 0.0;
        x1 += 0.0;
        y1 += 0.0;
        z1 += 0.0;
    }

    /** The line between two places of a piece on both, with its lengths; empty where it is one place, or a hole lies between. */
    Optional<TapeLine> between(String name, FlatMap map, SkinPoint from, SkinPoint to) {
        return onBlank ? straightOnBlank(name, map, from, to) : overForm(name, map, from, to);
    }

    private static Optional<TapeLine> straightOnBlank(String name, FlatMap map, SkinPoint from, SkinPoint to) {
        double[] p = from.on(map), q = to.on(map);
        double[] flat = new double[3 * map.form().vertexCount()];
        for (int v = 0; v < map.form().vertexCount(); v++) {
            flat[3 * v] = map.u(v);
            flat[3 * v + 1] = map.v(v);
        }
        return cut(name, map, map.form().withPositions(flat), from, to, new double[] {p[1] - q[1], q[0] - p[0], 0});
    }

    private static Optional<TapeLine> overForm(String name, FlatMap map, SkinPoint from, SkinPoint to) {
        TriMesh form = map.form();
        double[] p = from.on(form), q = to.on(form), n = form.normal(from.triangle()), m = form.normal(to.triangle());
        double[] along = {q[0] - p[0], q[1] - p[1], q[2] - p[2]}, up = {n[0] + m[0], n[1] + m[1], n[2] + m[2]};
        return cut(name, map, form, from, to, new double[] {along[1] * up[2] - along[2] * up[1], along[2] * up[0] - along[0] * up[2],
            along[0] * up[1] - along[1] * up[0]});
    }

    /** Cuts by the plane through both places and follows the cut from one to the other, the shorter way where it closes. */
    private static Optional<TapeLine> cut(String name, FlatMap map, TriMesh mesh, SkinPoint from, SkinPoint to, double[] normal) {
        double[] p = from.on(mesh), q = to.on(mesh);
        double apart = Math.hypot(Math.hypot(q[0] - p[0], q[1] - p[1]), q[2] - p[2]);
        if (!(apart > 1e-6) || !(Math.hypot(Math.hypot(normal[0], normal[1]), normal[2]) > 1e-9 * apart)) return Optional.empty();
        TapeLine best = null;
        for (PlaneSection.Chain chain : PlaneSection.of(mesh, EdgeTable.of(mesh), p, normal).chains()) {
            int i = nearest(mesh, chain, p, 1e-5 * apart), j = nearest(mesh, chain, q, 1e-5 * apart);
            if (i < 0 || j < 0) continue;
            TapeLine one = i <= j ? run(name, map, chain, i, j, from, to, false) : run(name, map, chain, j, i, to, from, false);
            TapeLine other = !chain.closed() ? one : i <= j ? run(name, map, chain, j, i, to, from, true) : run(name, map, chain, i, j, from, to, true);
            TapeLine shorter = other.formLength() < one.formLength() ? other : one;
            if (best == null || shorter.formLength() < best.formLength()) best = shorter;
        }
        return Optional.ofNullable(best);
    }

    /** The piece of the chain that p lies on, -1 where it lies on none. */
    private static int nearest(TriMesh mesh, PlaneSection.Chain chain, double[] p, double reach) {
        int best = -1;
        double least = reach;
        for (int i = 0; i < chain.pieces(); i++) {
            double off = distance(p, chain.start(i).on(mesh), chain.end(i).on(mesh));
            if (off < least) {
                least = off;
                best = i;
            }
        }
        return best;
    }

    private static double distance(double[] p, double[] a, double[] b) {
        double[] d = {b[0] - a[0], b[1] - a[1], b[2] - a[2]}, e = {p[0] - a[0], p[1] - a[1], p[2] - a[2]};
        double length = d[0] * d[0] + d[1] * d[1] + d[2] * d[2];
        double s = length > 0 ? Math.max(0, Math.min(1, (d[0] * e[0] + d[1] * e[1] + d[2] * e[2]) / length)) : 0;
        return Math.hypot(Math.hypot(e[0] - s * d[0], e[1] - s * d[1]), e[2] - s * d[2]);
    }

    /** From a point on piece i to a point on piece j, i <= j, or on through the end to the beginning where {@code round}. */
    private static TapeLine run(String name, FlatMap map, PlaneSection.Chain chain, int i, int j, SkinPoint from, SkinPoint to, boolean round) {
        int n = chain.pieces(), steps = round ? (j - i + n) % n : j - i;
        int[] triangle = new int[steps + 2];
        double[] weight = new double[3 * triangle.length];
        put(triangle, weight, 0, from);
        for (int k = 0; k < steps; k++) put(triangle, weight, k + 1, chain.end((i + k) % n));
        put(triangle, weight, steps + 1, to);
        return TapeLine.of(name, map, triangle, weight);
    }

    private static void put(int[] triangle, double[] weight, int at, SkinPoint p) {
        triangle[at] = p.triangle();
        weight[3 * at] = p.a();
        weight[3 * at + 1] = p.b();
        weight[3 * at + 2] = p.c();
    }
}
