package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import blankwright.mesh.TriMesh;
import java.util.Arrays;

/**
 * A mesh with vertices and triangles numbered so that what lies close in space lies close in memory: along the Morton curve of its box.
 *
 * <p>A mesh whose numbers run with its places already, as a grid's do, stays as it is. Scans in any order cost 2 to 3 times the time
 * without this (docs/decisions/010).
 */
final class Arrangement {
    private static final double NEAR = 4;                 // mean jump between numbers, in roots of their count, up to which nothing is gained

    private final TriMesh mesh;
    private final int[] vertexOf;                         // new vertex -> given one; null if nothing changed
    private final int[] triangle;                         // given triangle -> new one

    private Arrangement(TriMesh mesh, int[] vertexOf, int[] triangle) {
        this.mesh = mesh;
        this.vertexOf = vertexOf;
        this.triangle = triangle;
    }

    static Arrangement of(TriMesh given) {
        return jump(given) <= NEAR * Math.sqrt(given.vertexCount()) ? new Arrangement(given, null, null) : sorted(given);
    }

    TriMesh mesh() {
        return mesh;
    }

    /** A layout of the given mesh, 2 numbers a vertex, as one of this; may be the same array. */
    double[] arranged(double[] uv) {
        return arranged(uv, 2);
    }

    /** The same for so many numbers a vertex. */
    double[] arranged(double[] numbers, int width) {
        if (vertexOf == null) return numbers;
        double[] to = new double[numbers.length];
        for (int v = 0; v < vertexOf.length; v++) System.arraycopy(numbers, width * vertexOf[v], to, width * v, width);
        return to;
    }

    /** An energy of the given mesh as one of this. */
    LeastWork arranged(LeastWork energy) {
        if (vertexOf == null) return energy;
        double[] alike = new double[triangle.length];
        Arrays.fill(alike, 1);
        return energy.coarser(triangle.length, triangle, alike);
    }

    /** A layout of this as one of the given mesh. */
    double[] asGiven(double[] uv) {
        if (vertexOf == null) return uv;
        double[] to = new double[uv.length];
        for (int v = 0; v < vertexOf.length; v++) {
            to[2 * vertexOf[v]] = uv[2 * v];
            to[2 * vertexOf[v] + 1] = uv[2 * v + 1];
        }
        return to;
    }

    /** Mean distance of the numbers of a triangle's corners, and of the first corners of triangles in turn. */
    private static double jump(TriMesh mesh) {
        double sum = 0;
        for (int t = 0, before = 0; t < mesh.triangleCount(); t++) {
            int a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
            sum += Math.max(a, Math.max(b, c)) - Math.min(a, Math.min(b, c)) + Math.abs(a - before);
            before = a;
        }
        return sum / mesh.triangleCount();
    }

    private static Arrangement sorted(TriMesh given) {
        int n = given.vertexCount(), m = given.triangleCount();
        double[] xyz = given.positions();
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        for (int i = 0; i < xyz.length; i++) low[i % 3] = Math.min(low[i % 3], xyz[i]);
        double[] size = given.size();
        double unit = Math.max(size[0], Math.max(size[1], size[2])) / ((1 << 11) - 1);
        long[] key = new long[n];                         // 33 bits of place, then the number: no two alike
        for (int v = 0; v < n; v++) {
            long code = 0;
            for (int k = 0; k < 3; k++) code |= spread((int) ((xyz[3 * v + k] - low[k]) / unit)) << k;
            key[v] = code << 30 | v;
        }
        Arrays.parallelSort(key);
        int[] vertexOf = new int[n], number = new int[n];
        double[] moved = new double[xyz.length];
        for (int v = 0; v < n; v++) {
            int from = (int) (key[v] & (1 << 30) - 1);
            vertexOf[v] = from;
            number[from] = v;
            System.arraycopy(xyz, 3 * from, moved, 3 * v, 3);
        }
        int[] start = new int[n + 1], first = new int[m];
        for (int t = 0; t < m; t++) {
            first[t] = Math.min(number[given.corner(t, 0)], Math.min(number[given.corner(t, 1)], number[given.corner(t, 2)]));
            start[first[t] + 1]++;
        }
        for (int v = 0; v < n; v++) start[v + 1] += start[v];
        int[] tri = new int[3 * m], triangle = new int[m];
        for (int t = 0; t < m; t++) {
            triangle[t] = start[first[t]]++;
            for (int k = 0; k < 3; k++) tri[3 * triangle[t] + k] = number[given.corner(t, k)];
        }
        return new Arrangement(TriMesh.of(moved, tri), vertexOf, triangle);
    }

    /** 11 bits, two empty ones between each and the next. */
    private static long spread(int bits) {
        long b = bits & 0x7ff;
        b = (b | b << 16) & 0x70000ff;
        b = (b | b << 8) & 0x700f00f;
        b = (b | b << 4) & 0x430c30c3L;
        return (b | b << 2) & 0x49249249L;
    }
}
