package blankwright.corpus;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Cut;
import blankwright.mesh.repair.Component;
import blankwright.mesh.repair.Components;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.triangulate.DelaunayTriangulationBuilder;

/** Ways to make a mesh worse without making it less of a surface. Lengths in mm. */
final class Mutations {
    private Mutations() { }

    /** Moves every vertex within a box of {@code cells} mean edges a side. */
    static TriMesh shaken(TriMesh mesh, double cells, Random random) {
        double amount = cells * meanEdge(mesh) / 2;
        double[] xyz = mesh.positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] += amount * (2 * random.nextDouble() - 1);
        return mesh.withPositions(xyz);
    }

    private static double meanEdge(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        double sum = 0;
        for (int e = 0; e < edges.edgeCount(); e++) sum += edges.length(e);
        return sum / edges.edgeCount();
    }

    /** Tries {@code share} times as many flips as there are edges; a flip that would join two vertices a second time is left out. */
    static TriMesh flipped(TriMesh mesh, double share, Random random) {
        int[] tri = mesh.corners();
        Map<Long, Integer> half = new HashMap<>();
        for (int h = 0; h < tri.length; h++) half.put(key(tri, h), h);
        int tries = (int) (share * tri.length / 2);
        for (int i = 0; i < tries; i++) {
            int h = random.nextInt(tri.length), a = tri[h], b = tri[next(h)], c = tri[next(next(h))];
            Integer g = half.get(pair(b, a));
            if (g == null) continue;
            int d = tri[next(next(g))];
            if (c == d || half.containsKey(pair(c, d)) || half.containsKey(pair(d, c))) continue;
            int t = h / 3, s = g / 3;
            for (int k = 0; k < 3; k++) {
                half.remove(key(tri, 3 * t + k));
                half.remove(key(tri, 3 * s + k));
            }
            int[] one = {a, d, c}, two = {d, b, c};
            for (int k = 0; k < 3; k++) {
                tri[3 * t + k] = one[k];
                tri[3 * s + k] = two[k];
            }
            for (int k = 0; k < 3; k++) {
                half.put(key(tri, 3 * t + k), 3 * t + k);
                half.put(key(tri, 3 * s + k), 3 * s + k);
            }
        }
        return TriMesh.of(mesh.positions(), tri);
    }

    private static int next(int h) {
        return h % 3 == 2 ? h - 2 : h + 1;
    }

    private static long key(int[] tri, int h) {
        return pair(tri[h], tri[next(h)]);
    }

    private static long pair(int a, int b) {
        return (long) a << 32 | b;
    }

    /** Puts {@code count} vertices into random triangles, at height longest side / {@code aspect} over the middle of a side. */
    static TriMesh slivered(TriMesh mesh, int count, double aspect, Random random) {
        return pierced(mesh, count, random, () -> {
            double low = 1 / aspect, along = 0.2 + 0.6 * random.nextDouble();
            return new double[] {(1 - low) * along, (1 - low) * (1 - along), low};
        });
    }

    /** Puts {@code count} vertices anywhere into random triangles. */
    static TriMesh peppered(TriMesh mesh, int count, Random random) {
        return pierced(mesh, count, random, () -> {
            double r = Math.sqrt(random.nextDouble()), s = random.nextDouble();
            return new double[] {1 - r, r * (1 - s), r * s};
        });
    }

    private interface Weights {
        double[] next();
    }

    private static TriMesh pierced(TriMesh mesh, int count, Random random, Weights weights) {
        int n = mesh.vertexCount(), m = mesh.triangleCount();
        double[] xyz = Arrays.copyOf(mesh.positions(), 3 * (n + count));
        int[] tri = Arrays.copyOf(mesh.corners(), 3 * (m + 2 * count));
        for (int i = 0; i < count; i++) {
            int t = random.nextInt(m), turn = random.nextInt(3), v = n + i;
            int a = tri[3 * t + turn], b = tri[3 * t + (turn + 1) % 3], c = tri[3 * t + (turn + 2) % 3];
            double[] w = weights.next();
            for (int k = 0; k < 3; k++) xyz[3 * v + k] = w[0] * xyz[3 * a + k] + w[1] * xyz[3 * b + k] + w[2] * xyz[3 * c + k];
            int[] three = {a, b, v, b, c, v, c, a, v};
            System.arraycopy(three, 0, tri, 3 * t, 3);
            System.arraycopy(three, 3, tri, 3 * m, 6);
            m += 2;
        }
        return TriMesh.of(xyz, tri);
    }

    /** Divides each rim edge into {@code parts}, so that the rim's triangles become fans of needles. */
    static TriMesh needleRim(TriMesh mesh, int parts) {
        EdgeTable edges = EdgeTable.of(mesh);
        List<int[]> triangles = new ArrayList<>();
        List<double[]> points = new ArrayList<>();
        int n = mesh.vertexCount();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int rim = -1;
            for (int k = 0; k < 3; k++) if (edges.twin(3 * t + k) < 0) rim = k;
            if (rim < 0) {
                triangles.add(new int[] {mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2)});
                continue;
            }
            int a = mesh.corner(t, rim), b = mesh.corner(t, (rim + 1) % 3), c = mesh.corner(t, (rim + 2) % 3), from = a;
            for (int i = 1; i <= parts; i++) {
                double s = (double) i / parts;
                int to = i == parts ? b : n + points.size();
                if (i < parts) points.add(new double[] {mesh.x(a) + s * (mesh.x(b) - mesh.x(a)), mesh.y(a) + s * (mesh.y(b) - mesh.y(a)),
                        mesh.z(a) + s * (mesh.z(b) - mesh.z(a))});
                triangles.add(new int[] {from, to, c});
                from = to;
            }
        }
        double[] xyz = Arrays.copyOf(mesh.positions(), 3 * (n + points.size()));
        for (int i = 0; i < points.size(); i++) System.arraycopy(points.get(i), 0, xyz, 3 * (n + i), 3);
        return TriMesh.of(xyz, triangles.stream().flatMapToInt(Arrays::stream).toArray());
    }

    /** Takes out about {@code share} of the triangles, in {@code count} patches grown from random triangles; the largest part left. */
    static TriMesh holed(TriMesh mesh, double share, int count, Random random) {
        EdgeTable edges = EdgeTable.of(mesh);
        int m = mesh.triangleCount(), wanted = Math.min(m - 1, Math.max(1, (int) (share * m)));
        BitSet gone = new BitSet(m);
        List<List<Integer>> fronts = new ArrayList<>();
        for (int i = 0; i < Math.min(count, wanted); i++) fronts.add(new ArrayList<>(List.of(random.nextInt(m))));
        for (int turn = 0; gone.cardinality() < wanted; turn++) {
            List<Integer> front = fronts.get(turn % fronts.size());
            if (front.isEmpty()) {
                front.add(random.nextInt(m));
                continue;
            }
            int t = front.remove(random.nextInt(front.size()));
            if (gone.get(t)) continue;
            gone.set(t);
            for (int k = 0; k < 3; k++) if (edges.neighbour(t, k) >= 0) front.add(edges.neighbour(t, k));
        }
        return largest(Forms.without(mesh, gone::get));
    }

    /** Parted where the metal only touches in a point; the part with the most triangles. */
    static TriMesh largest(TriMesh mesh) {
        return Components.of(Cut.along(mesh, List.of()).mesh()).stream().map(Component::mesh)
                .max(Comparator.comparingInt(TriMesh::triangleCount)).orElseThrow();
    }

    /** Random points of the unit square, joined as nearest neighbours are (Delaunay), then laid on the skin. */
    static TriMesh scattered(int points, Random random, Forms.Skin skin) {
        List<Coordinate> sites = new ArrayList<>(List.of(new Coordinate(0, 0), new Coordinate(1, 0), new Coordinate(1, 1), new Coordinate(0, 1)));
        int side = (int) Math.sqrt(points);
        for (int i = 1; i < side; i++) {
            double s = (double) i / side;
            sites.addAll(List.of(new Coordinate(s, 0), new Coordinate(1, s), new Coordinate(s, 1), new Coordinate(0, s)));
        }
        double margin = 0.5 / side;
        while (sites.size() < points) sites.add(new Coordinate(between(random, margin, 1 - margin), between(random, margin, 1 - margin)));
        DelaunayTriangulationBuilder builder = new DelaunayTriangulationBuilder();
        builder.setSites(sites);
        Geometry found = builder.getTriangles(new GeometryFactory());
        Map<Coordinate, Integer> number = new HashMap<>();
        List<double[]> xyz = new ArrayList<>();
        int[] tri = new int[3 * found.getNumGeometries()];
        for (int t = 0; t < found.getNumGeometries(); t++) {
            Coordinate[] c = found.getGeometryN(t).getCoordinates();
            boolean left = (c[1].x - c[0].x) * (c[2].y - c[0].y) - (c[1].y - c[0].y) * (c[2].x - c[0].x) > 0;
            for (int k = 0; k < 3; k++) {
                Coordinate p = c[left ? k : 2 - k];
                tri[3 * t + k] = number.computeIfAbsent(p, q -> {
                    xyz.add(skin.at(q.x, q.y));
                    return xyz.size() - 1;
                });
            }
        }
        return largest(TriMesh.of(xyz.stream().flatMapToDouble(Arrays::stream).toArray(), tri));
    }

    static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Between, each decade as likely as the next. */
    static double acrossDecades(Random random, double low, double high) {
        return Math.exp(between(random, Math.log(low), Math.log(high)));
    }
}
