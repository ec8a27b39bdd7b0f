package blankwright.oracle;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Grids of triangles with positions by formula on blank and form, and the same piece numbered, turned or mirrored otherwise. */
public final class Patch {
    /** A position on the form for a parameter pair. */
    public interface Place {
        double[] at(double p, double q);
    }

    private Patch() { }

    /** (nu + 1)(nv + 1) vertices over p = p0..p1, q = q0..q1, numbered along p first; 2 nu nv triangles, diagonals crossed alternately. */
    public static FlatMap grid(int nu, int nv, double p0, double p1, double q0, double q1, Place blank, Place form) {
        double[] uv = new double[2 * (nu + 1) * (nv + 1)], xyz = new double[3 * (nu + 1) * (nv + 1)];
        for (int j = 0, v = 0; j <= nv; j++) {
            for (int i = 0; i <= nu; i++, v++) {
                double p = p0 + (p1 - p0) * i / nu, q = q0 + (q1 - q0) * j / nv;
                System.arraycopy(blank.at(p, q), 0, uv, 2 * v, 2);
                System.arraycopy(form.at(p, q), 0, xyz, 3 * v, 3);
            }
        }
        int[] tri = new int[6 * nu * nv];
        int n = 0;
        for (int j = 0; j < nv; j++) {
            for (int i = 0; i < nu; i++) {
                int a = j * (nu + 1) + i, b = a + 1, c = b + nu + 1, d = a + nu + 1;
                int[] two = (i + j) % 2 == 0 ? new int[] {a, b, c, a, c, d} : new int[] {a, b, d, b, c, d};
                for (int corner : two) tri[n++] = corner;
            }
        }
        return FlatMap.of(TriMesh.of(xyz, tri), uv);
    }

    /** Vertices, triangles and first corners in another order. */
    public static FlatMap renumbered(FlatMap map, long seed) {
        Random random = new Random(seed);
        TriMesh form = map.form();
        int n = form.vertexCount(), m = form.triangleCount();
        List<Integer> vertices = order(n, random), triangles = order(m, random);
        int[] to = new int[n], tri = new int[3 * m];
        double[] uv = new double[2 * n], xyz = new double[3 * n];
        for (int v = 0; v < n; v++) {
            int w = vertices.get(v);
            to[w] = v;
            uv[2 * v] = map.u(w);
            uv[2 * v + 1] = map.v(w);
            xyz[3 * v] = form.x(w);
            xyz[3 * v + 1] = form.y(w);
            xyz[3 * v + 2] = form.z(w);
        }
        for (int t = 0; t < m; t++) {
            int first = random.nextInt(3);
            for (int k = 0; k < 3; k++) tri[3 * t + k] = to[form.corner(triangles.get(t), (first + k) % 3)];
        }
        return FlatMap.of(TriMesh.of(xyz, tri), uv);
    }

    /** The form turned in space about a slanting axis and moved; the blank as it is. */
    public static FlatMap turnedInSpace(FlatMap map, double angle) {
        double[] a = {2.0 / 7, 3.0 / 7, 6.0 / 7}, xyz = map.form().positions();
        double c = Math.cos(angle), s = Math.sin(angle);
        for (int i = 0; i < xyz.length; i += 3) {
            double x = xyz[i], y = xyz[i + 1], z = xyz[i + 2], dot = (a[0] * x + a[1] * y + a[2] * z) * (1 - c);
            xyz[i] = c * x + s * (a[1] * z - a[2] * y) + dot * a[0] + 130;
            xyz[i + 1] = c * y + s * (a[2] * x - a[0] * z) + dot * a[1] - 70;
            xyz[i + 2] = c * z + s * (a[0] * y - a[1] * x) + dot * a[2] + 11;
        }
        return FlatMap.of(map.form().withPositions(xyz), map.positions());
    }

    /** The other hand of the panel: x and u change sign, triangles run the other way round. */
    public static FlatMap mirrored(FlatMap map) {
        double[] xyz = map.form().positions(), uv = map.positions();
        int[] tri = map.form().corners();
        for (int i = 0; i < xyz.length; i += 3) xyz[i] = -xyz[i];
        for (int i = 0; i < uv.length; i += 2) uv[i] = -uv[i];
        for (int t = 0; t < tri.length; t += 3) {
            int b = tri[t + 1];
            tri[t + 1] = tri[t + 2];
            tri[t + 2] = b;
        }
        return FlatMap.of(TriMesh.of(xyz, tri), uv);
    }

    private static List<Integer> order(int n, Random random) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < n; i++) order.add(i);
        Collections.shuffle(order, random);
        return order;
    }
}
