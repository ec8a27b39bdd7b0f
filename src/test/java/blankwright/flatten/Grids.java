package blankwright.flatten;

import blankwright.mesh.TriMesh;
import java.util.Random;

/** Regular grids of triangles over a parameter rectangle, for tests of the flattener that need no more shape than a formula. */
final class Grids {
    /** A point of a surface, mm. */
    interface Surface {
        double[] at(double u, double v);
    }

    private Grids() { }

    /** n x m cells over [0,1]², counter-clockwise for a right-handed (u, v, normal). */
    static TriMesh of(int n, int m, Surface surface) {
        double[] xyz = new double[3 * (n + 1) * (m + 1)];
        int[] tri = new int[6 * n * m];
        for (int i = 0; i <= n; i++)
            for (int j = 0; j <= m; j++)
                System.arraycopy(surface.at((double) i / n, (double) j / m), 0, xyz, 3 * (i * (m + 1) + j), 3);
        for (int i = 0, p = 0; i < n; i++)
            for (int j = 0; j < m; j++) {
                int a = i * (m + 1) + j, b = a + m + 1, c = b + 1, d = a + 1;
                for (int v : new int[] {a, b, c, a, c, d}) tri[p++] = v;
            }
        return TriMesh.of(xyz, tri);
    }

    /** The mudguard of the benchmarks: 150 x 160 degrees of a torus, ring 330 mm, tube 95 mm. */
    static TriMesh mudguard(int n) {
        return of(n, n, (u, v) -> {
            double a = Math.toRadians(150) * (u - 0.5), b = Math.toRadians(160) * (v - 0.5), q = 330 + 95 * Math.cos(b);
            return new double[] {q * Math.cos(a), q * Math.sin(a), 95 * Math.sin(b)};
        });
    }

    /** A sphere's cap of radius 1000 mm on rings of 6, 12, 18 ... vertices; faces = 6 rings². */
    static TriMesh cap(double degrees, int rings) {
        int n = 1 + 3 * rings * (rings + 1);
        double[] xyz = new double[3 * n];
        int[] tri = new int[3 * 6 * rings * rings];
        xyz[2] = 1000;
        for (int r = 1, v = 1; r <= rings; r++)
            for (int k = 0; k < 6 * r; k++, v++) {
                double c = Math.toRadians(degrees) * r / rings, a = Math.PI * 2 * k / (6 * r);
                xyz[3 * v] = 1000 * Math.sin(c) * Math.cos(a);
                xyz[3 * v + 1] = 1000 * Math.sin(c) * Math.sin(a);
                xyz[3 * v + 2] = 1000 * Math.cos(c);
            }
        int p = 0;
        for (int r = 1; r <= rings; r++) {
            int out = 1 + 3 * r * (r - 1), in = r == 1 ? 0 : 1 + 3 * (r - 1) * (r - 2), nin = Math.max(1, 6 * (r - 1));
            for (int side = 0; side < 6; side++)
                for (int k = 0; k < r; k++) {
                    int o = side * r + k, i = side * (r - 1) + k;
                    for (int w : new int[] {out + o, out + (o + 1) % (6 * r), in + i % nin}) tri[p++] = w;
                    if (k < r - 1) for (int w : new int[] {out + (o + 1) % (6 * r), in + (i + 1) % nin, in + i % nin}) tri[p++] = w;
                }
        }
        return TriMesh.of(xyz, tri);
    }

    /** Moves every vertex by up to {@code amount} mm in every direction. */
    static TriMesh shaken(TriMesh mesh, double amount, long seed) {
        Random random = new Random(seed);
        double[] xyz = mesh.positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] += amount * (2 * random.nextDouble() - 1);
        return mesh.withPositions(xyz);
    }
}
