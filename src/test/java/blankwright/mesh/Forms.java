package blankwright.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.IntPredicate;

/** Meshes made in code whose shape, and often whose answers, we can write down. Lengths in mm, angles in rad. */
public final class Forms {
    /** Position of a point given by two parameters. */
    public interface Skin {
        double[] at(double u, double v);
    }

    private Forms() { }

    public static TriMesh tetrahedron() {
        return TriMesh.of(new double[] {1, 1, 1, 1, -1, -1, -1, 1, -1, -1, -1, 1}, new int[] {0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2});
    }

    public static TriMesh octahedron() {
        return TriMesh.of(new double[] {1, 0, 0, 0, 1, 0, -1, 0, 0, 0, -1, 0, 0, 0, 1, 0, 0, -1},
                new int[] {0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4, 1, 0, 5, 2, 1, 5, 3, 2, 5, 0, 3, 5});
    }

    public static TriMesh icosahedron() {
        double g = (1 + Math.sqrt(5)) / 2;
        double[] xyz = {-1, g, 0, 1, g, 0, -1, -g, 0, 1, -g, 0, 0, -1, g, 0, 1, g, 0, -1, -g, 0, 1, -g, g, 0, -1, g, 0, 1, -g, 0, -1, -g, 0, 1};
        int[] tri = {0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1, 8,
            3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1};
        return TriMesh.of(xyz, tri);
    }

    /** Icosahedron with each triangle split into four {@code times} times, on a sphere. */
    public static TriMesh sphere(double radius, int times) {
        TriMesh mesh = icosahedron();
        for (int i = 0; i < times; i++) mesh = split(mesh);
        double[] xyz = mesh.positions();
        for (int v = 0; v < xyz.length; v += 3) {
            double r = Math.sqrt(xyz[v] * xyz[v] + xyz[v + 1] * xyz[v + 1] + xyz[v + 2] * xyz[v + 2]);
            for (int k = 0; k < 3; k++) xyz[v + k] *= radius / r;
        }
        return mesh.withPositions(xyz);
    }

    private static TriMesh split(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        int n = mesh.vertexCount();
        double[] xyz = Arrays.copyOf(mesh.positions(), 3 * (n + edges.edgeCount()));
        for (int e = 0; e < edges.edgeCount(); e++)
            for (int k = 0; k < 3; k++) xyz[3 * (n + e) + k] = (xyz[3 * edges.from(e) + k] + xyz[3 * edges.to(e) + k]) / 2;
        int[] tri = new int[12 * mesh.triangleCount()];
        int at = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int[] mid = {n + edges.edgeOf(t, 0), n + edges.edgeOf(t, 1), n + edges.edgeOf(t, 2)};
            for (int k = 0; k < 3; k++) {
                tri[at++] = mesh.corner(t, k);
                tri[at++] = mid[k];
                tri[at++] = mid[(k + 2) % 3];
            }
            for (int k = 0; k < 3; k++) tri[at++] = mid[k];
        }
        return TriMesh.of(xyz, tri);
    }

    /** Grid of nu x nv cells over 0..1 x 0..1, u and v joined end to start where said, seen with u to the right and v up. */
    public static TriMesh grid(int nu, int nv, boolean joinU, boolean joinV, Skin skin) {
        int rows = joinV ? nv : nv + 1, columns = joinU ? nu : nu + 1;
        double[] xyz = new double[3 * rows * columns];
        for (int j = 0; j < rows; j++)
            for (int i = 0; i < columns; i++) System.arraycopy(skin.at((double) i / nu, (double) j / nv), 0, xyz, 3 * (j * columns + i), 3);
        int[] tri = new int[6 * nu * nv];
        int at = 0;
        for (int j = 0; j < nv; j++) {
            for (int i = 0; i < nu; i++) {
                int a = j * columns + i, b = j * columns + (i + 1) % columns;
                int d = (j + 1) % rows * columns + i, c = (j + 1) % rows * columns + (i + 1) % columns;
                int[] cell = (i + j) % 2 == 0 ? new int[] {a, b, c, a, c, d} : new int[] {a, b, d, b, c, d};
                System.arraycopy(cell, 0, tri, at, 6);
                at += 6;
            }
        }
        return TriMesh.of(xyz, tri);
    }

    /** Flat sheet in the plane z = 0. */
    public static TriMesh plate(double width, double height, int nu, int nv) {
        return grid(nu, nv, false, false, (u, v) -> new double[] {width * u, height * v, 0});
    }

    /** Open tube along z, outer skin out. */
    public static TriMesh tube(double radius, double length, int round, int along) {
        return turned(round, along, w -> new double[] {radius, length * w});
    }

    /** Skin of revolution about z; {@code profile} gives {radius, height} for 0..1, the outer skin to the right of its way up. */
    public static TriMesh turned(int round, int along, java.util.function.DoubleFunction<double[]> profile) {
        return grid(round, along, true, false, (u, v) -> {
            double[] p = profile.apply(v);
            return new double[] {p[0] * Math.cos(2 * Math.PI * u), p[0] * Math.sin(2 * Math.PI * u), p[1]};
        });
    }

    public static TriMesh torus(double ring, double tube, int round, int across) {
        return grid(round, across, true, true, (u, v) -> {
            double p = 2 * Math.PI * u, q = 2 * Math.PI * v, r = ring + tube * Math.cos(q);
            return new double[] {r * Math.cos(p), r * Math.sin(p), tube * Math.sin(q)};
        });
    }

    /** The mesh without the triangles said, unused vertices dropped. */
    public static TriMesh without(TriMesh mesh, IntPredicate gone) {
        int[] number = new int[mesh.vertexCount()];
        Arrays.fill(number, -1);
        int[] tri = new int[3 * mesh.triangleCount()];
        double[] xyz = new double[3 * mesh.vertexCount()];
        int corners = 0, vertices = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (gone.test(t)) continue;
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                if (number[v] < 0) {
                    number[v] = vertices;
                    xyz[3 * vertices] = mesh.x(v);
                    xyz[3 * vertices + 1] = mesh.y(v);
                    xyz[3 * vertices++ + 2] = mesh.z(v);
                }
                tri[corners++] = number[v];
            }
        }
        return TriMesh.of(Arrays.copyOf(xyz, 3 * vertices), Arrays.copyOf(tri, corners));
    }

    /** Without the triangles whose middle lies nearer than {@code radius} to one of the points {x, y, z}. */
    public static TriMesh holed(TriMesh mesh, double radius, double[]... points) {
        return without(mesh, t -> {
            for (double[] p : points) {
                double[] m = middle(mesh, t);
                if (Math.hypot(Math.hypot(m[0] - p[0], m[1] - p[1]), m[2] - p[2]) < radius) return true;
            }
            return false;
        });
    }

    public static double[] middle(TriMesh mesh, int t) {
        int a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
        return new double[] {(mesh.x(a) + mesh.x(b) + mesh.x(c)) / 3, (mesh.y(a) + mesh.y(b) + mesh.y(c)) / 3,
            (mesh.z(a) + mesh.z(b) + mesh.z(c)) / 3};
    }

    /** Skin of the full cells of full[x][y][z], each a cube of side 1, two triangles per face; the border cells must be empty. */
    public static TriMesh cells(boolean[][][] full) {
        Map<List<Integer>, Integer> number = new HashMap<>();
        List<double[]> points = new ArrayList<>();
        List<int[]> triangles = new ArrayList<>();
        int[][] axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        for (int x = 0; x < full.length; x++)
            for (int y = 0; y < full[x].length; y++)
                for (int z = 0; z < full[x][y].length; z++) {
                    if (!full[x][y][z]) continue;
                    for (int axis = 0; axis < 3; axis++)
                        for (int side = 0; side < 2; side++) {
                            int[] d = axes[axis], s = axes[(axis + 1) % 3], r = axes[(axis + 2) % 3];
                            int w = 2 * side - 1;
                            if (full[x + w * d[0]][y + w * d[1]][z + w * d[2]]) continue;
                            int[] q = new int[4];
                            for (int i = 0; i < 4; i++) {
                                int f = i == 1 || i == 2 ? 1 : 0, g = i >= 2 ? 1 : 0;
                                List<Integer> key = List.of(x + side * d[0] + f * s[0] + g * r[0], y + side * d[1] + f * s[1] + g * r[1],
                                        z + side * d[2] + f * s[2] + g * r[2]);
                                q[i] = number.computeIfAbsent(key, k -> {
                                    points.add(new double[] {k.get(0), k.get(1), k.get(2)});
                                    return points.size() - 1;
                                });
                            }
                            triangles.add(side == 1 ? new int[] {q[0], q[1], q[2]} : new int[] {q[0], q[2], q[1]});
                            triangles.add(side == 1 ? new int[] {q[0], q[2], q[3]} : new int[] {q[0], q[3], q[2]});
                        }
                }
        return TriMesh.of(points.stream().flatMapToDouble(Arrays::stream).toArray(),
                triangles.stream().flatMapToInt(Arrays::stream).toArray());
    }

    /** A cube of n cells a side, side n. */
    public static TriMesh cube(int n) {
        boolean[][][] full = new boolean[n + 2][n + 2][n + 2];
        for (int x = 1; x <= n; x++)
            for (int y = 1; y <= n; y++) Arrays.fill(full[x][y], 1, n + 1, true);
        return cells(full);
    }

    /** Random cells filled up until no two of them touch along an edge or corner only, so that their skin is a manifold. */
    public static boolean[][][] randomCells(int n, double share, long seed) {
        Random random = new Random(seed);
        boolean[][][] full = new boolean[n + 2][n + 2][n + 2];
        for (int x = 1; x <= n; x++)
            for (int y = 1; y <= n; y++)
                for (int z = 1; z <= n; z++) full[x][y][z] = random.nextDouble() < share;
        while (fillPinches(full, n)) { }
        return full;
    }

    /** Fills one cell at each pinch; a 2x2x2 block is pinched where its full or its empty cells do not hang together by faces. */
    private static boolean fillPinches(boolean[][][] full, int n) {
        boolean changed = false;
        for (int x = 0; x <= n; x++)
            for (int y = 0; y <= n; y++)
                for (int z = 0; z <= n; z++) {
                    int bits = 0;
                    for (int i = 0; i < 8; i++) if (full[x + (i & 1)][y + (i >> 1 & 1)][z + (i >> 2)]) bits |= 1 << i;
                    if (hangsTogether(bits) && hangsTogether(~bits & 255)) continue;
                    for (int i = 0; i < 8 && !changedAt(full, n, x + (i & 1), y + (i >> 1 & 1), z + (i >> 2)); i++) { }
                    changed = true;
                }
        return changed;
    }

    private static boolean changedAt(boolean[][][] full, int n, int x, int y, int z) {
        if (full[x][y][z] || x < 1 || y < 1 || z < 1 || x > n || y > n || z > n) return false;
        return full[x][y][z] = true;
    }

    private static boolean hangsTogether(int bits) {
        int seen = bits & -bits;
        for (int round = 0; round < 8; round++)
            for (int i = 0; i < 8; i++)
                if ((seen >> i & 1) != 0) for (int k = 1; k < 8; k *= 2) seen |= bits & 1 << (i ^ k);
        return seen == bits;
    }

    /** Same form with vertices and triangles in another order. */
    public static TriMesh renumbered(TriMesh mesh, long seed) {
        Random random = new Random(seed);
        int[] vertex = shuffled(mesh.vertexCount(), random), triangle = shuffled(mesh.triangleCount(), random);
        double[] xyz = new double[3 * mesh.vertexCount()];
        int[] tri = new int[3 * mesh.triangleCount()];
        for (int v = 0; v < mesh.vertexCount(); v++) {
            xyz[3 * vertex[v]] = mesh.x(v);
            xyz[3 * vertex[v] + 1] = mesh.y(v);
            xyz[3 * vertex[v] + 2] = mesh.z(v);
        }
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int turn = random.nextInt(3);
            for (int k = 0; k < 3; k++) tri[3 * triangle[t] + k] = vertex[mesh.corner(t, (k + turn) % 3)];
        }
        return TriMesh.of(xyz, tri);
    }

    private static int[] shuffled(int n, Random random) {
        int[] order = new int[n];
        for (int i = 0; i < n; i++) order[i] = i;
        for (int i = n - 1; i > 0; i--) {
            int j = random.nextInt(i + 1), keep = order[i];
            order[i] = order[j];
            order[j] = keep;
        }
        return order;
    }

    /** Mirrored in x = 0, corners turned round so that the outer skin stays out. */
    public static TriMesh mirrored(TriMesh mesh) {
        double[] xyz = mesh.positions();
        for (int i = 0; i < xyz.length; i += 3) xyz[i] = -xyz[i];
        int[] tri = mesh.corners();
        for (int i = 0; i < tri.length; i += 3) {
            int keep = tri[i + 1];
            tri[i + 1] = tri[i + 2];
            tri[i + 2] = keep;
        }
        return TriMesh.of(xyz, tri);
    }

    /** Turned about z by a, then about x by b, then moved. */
    public static TriMesh turnedBy(TriMesh mesh, double a, double b, double dx, double dy, double dz) {
        double[] xyz = mesh.positions();
        for (int i = 0; i < xyz.length; i += 3) {
            double x = Math.cos(a) * xyz[i] - Math.sin(a) * xyz[i + 1], y = Math.sin(a) * xyz[i] + Math.cos(a) * xyz[i + 1], z = xyz[i + 2];
            xyz[i] = x + dx;
            xyz[i + 1] = Math.cos(b) * y - Math.sin(b) * z + dy;
            xyz[i + 2] = Math.sin(b) * y + Math.cos(b) * z + dz;
        }
        return mesh.withPositions(xyz);
    }

    /** Each connected part as a mesh of its own. */
    public static List<TriMesh> parts(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        int[] part = new int[mesh.triangleCount()];
        Arrays.fill(part, -1);
        int count = 0;
        for (int s = 0; s < part.length; s++) {
            if (part[s] >= 0) continue;
            java.util.ArrayDeque<Integer> todo = new java.util.ArrayDeque<>(List.of(s));
            part[s] = count;
            while (!todo.isEmpty()) {
                int t = todo.pop();
                for (int k = 0; k < 3; k++) {
                    int w = edges.neighbour(t, k);
                    if (w >= 0 && part[w] < 0) {
                        part[w] = count;
                        todo.push(w);
                    }
                }
            }
            count++;
        }
        List<TriMesh> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int wanted = i;
            parts.add(without(mesh, t -> part[t] != wanted));
        }
        return parts;
    }

    /** V - E + F over the vertices in use. */
    public static int euler(TriMesh mesh) {
        return (int) Arrays.stream(mesh.corners()).distinct().count() - EdgeTable.of(mesh).edgeCount() + mesh.triangleCount();
    }
}
