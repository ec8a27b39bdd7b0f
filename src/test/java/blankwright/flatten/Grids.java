package blankwright.flatten;

import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.triangulate.DelaunayTriangulationBuilder;

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

    /**
     * The mudguard as a scanner gives it: about 2 n² triangles, points shaken off their rows, joined as nearest neighbours are (Delaunay), in
     * no order at all.
     */
    static TriMesh scannedMudguard(int n, long seed) {
        Random random = new Random(seed);
        double length = 330 * Math.toRadians(150), width = 95 * Math.toRadians(160);
        int nu = (int) Math.round(n * Math.sqrt(length / width)), nv = (int) Math.round(n * Math.sqrt(width / length));
        List<Coordinate> sites = new ArrayList<>();
        for (int i = 0; i <= nu; i++)
            for (int j = 0; j <= nv; j++) {
                double a = i == 0 || i == nu ? i : i + 0.9 * (random.nextDouble() - 0.5);
                double b = j == 0 || j == nv ? j : j + 0.9 * (random.nextDouble() - 0.5);
                sites.add(new Coordinate(a * length / nu, b * width / nv));
            }
        Collections.shuffle(sites, random);
        Map<Coordinate, Integer> number = new HashMap<>();
        double[] xyz = new double[3 * sites.size()];
        for (int v = 0; v < sites.size(); v++) {
            number.put(sites.get(v), v);
            double a = sites.get(v).x / 330, b = sites.get(v).y / 95 - Math.toRadians(80), q = 330 + 95 * Math.cos(b);
            xyz[3 * v] = q * Math.cos(a);
            xyz[3 * v + 1] = q * Math.sin(a);
            xyz[3 * v + 2] = 95 * Math.sin(b);
        }
        DelaunayTriangulationBuilder builder = new DelaunayTriangulationBuilder();
        builder.setSites(sites);
        Geometry found = builder.getTriangles(new GeometryFactory());
        List<Integer> order = new ArrayList<>(IntStream.range(0, found.getNumGeometries()).boxed().toList());
        Collections.shuffle(order, random);
        int[] tri = new int[3 * order.size()];
        int at = 0;
        for (int t : order) {
            Coordinate[] c = found.getGeometryN(t).getCoordinates();
            double area = (c[1].x - c[0].x) * (c[2].y - c[0].y) - (c[1].y - c[0].y) * (c[2].x - c[0].x);
            for (int k = 0; k < 3; k++) tri[at++] = number.get(c[area > 0 ? k : 2 - k]);
        }
        return TriMesh.of(xyz, tri);
    }

    /** A panel of four bumps and hollows a side, 1000 mm square, 40 mm up and down. */
    static TriMesh bumpy(int n) {
        return of(n, n, (u, v) -> new double[] {1000 * u, 1000 * v, 40 * Math.sin(4 * Math.PI * u) * Math.sin(4 * Math.PI * v)});
    }

    /** A ribbon 2000 x 100 mm that turns by half about its middle line and bends. */
    static TriMesh ribbon(int n) {
        int along = (int) Math.round(n * Math.sqrt(20)), across = (int) Math.round(n / Math.sqrt(20));
        return of(along, across, (u, v) -> {
            double a = Math.PI * u, w = 100 * (v - 0.5), s = 2000 * u;
            return new double[] {s, w * Math.cos(a), w * Math.sin(a) + 200 * Math.sin(Math.PI * u)};
        });
    }
}
