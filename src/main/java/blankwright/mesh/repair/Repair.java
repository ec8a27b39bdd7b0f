package blankwright.mesh.repair;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;

/**
 * Makes a surface out of any triangles: {@link blankwright.mesh.EdgeTable} accepts the result, whatever came in.
 *
 * <p>1. Triangles with a coordinate that is no place are left out. 2. Vertices in exactly the same place become one, and from then on only
 * those are there that have a triangle; then those on open edges within {@value #TOLERANCE} of the box's diagonal become one. 3. Triangles
 * without height are mended or dropped, see FlatTriangles. 4. Of triangles on the same three vertices the first stays. 5. Long open edges
 * against which several short ones lie are cut to match, see Cracks. 2 to 5 repeat until nothing changes. 6. Edges with three triangles and
 * more, touching vertices, mixed directions and one-sided strips are resolved, see Sheets.
 * <p>Triangles keep their order, vertices too; copies and parts cut off come last. A result put in again comes out the same, without a word.
 */
public final class Repair {
    /** Of the box's diagonal: a micrometre on a panel of a metre; text files written with six digits need it. */
    static final double TOLERANCE = 1e-6;

    /** Longest edge over height from which a triangle is called a sliver. */
    static final double SLIVER = 1e4;

    private static final double FARTHEST = 1e16;
    private static final int MOST_ROUNDS = 20;

    private final double[] given;
    private final int[] givenTri;
    private final Progress progress;
    private final List<Finding> findings = new ArrayList<>();
    private double[] xyz;           // of the vertices still there, never moved
    private int[] asGiven;          // vertex -> as given, null while all are there
    private int[] tri;              // the triangles still there
    private int[] number;           // triangle -> as given
    private final int unused;       // vertices given that belong to no triangle
    private int welded;
    private String firstWelded;
    private int flatMended;
    private int flatDropped;
    private int firstFlat = Integer.MAX_VALUE;
    private int cracksClosed;
    private String firstCrack;
    private int duplicates;
    private int firstDuplicate = Integer.MAX_VALUE;

    private Repair(double[] given, int[] givenTri, Progress progress) {
        this.given = given;
        this.givenTri = givenTri;
        this.progress = progress;
        xyz = given;
        tri = givenTri.clone();
        unused = unreferenced();
    }

    /**
     * @param xyz 3 per vertex, mm; need not be finite
     * @param tri 3 per triangle, indices of vertices
     * @return a surface, possibly {@linkplain Repaired#isEmpty without triangles}; findings count vertices and triangles as given, from 0
     * @throws IllegalArgumentException where a triangle names a vertex that is not there
     * @throws CancellationException where the progress says that nobody wants it any more
     */
    public static Repaired of(double[] xyz, int[] tri, Progress progress) {
        if (xyz.length % 3 != 0) throw new IllegalArgumentException(xyz.length + " coordinates: must be 3 per vertex");
        if (tri.length % 3 != 0) throw new IllegalArgumentException(tri.length + " corners: must be 3 per triangle");
        for (int i = 0; i < tri.length; i++) {
            if (tri[i] < 0 || tri[i] >= xyz.length / 3)
                throw new IllegalArgumentException("triangle " + i / 3 + " names vertex " + tri[i] + ": there are " + xyz.length / 3);
        }
        return new Repair(xyz, tri, progress).run();
    }

    private Repaired run() {
        number = new int[tri.length / 3];
        for (int t = 0; t < number.length; t++) number[t] = t;
        step(0);
        weldExactly(dropBadCoordinates());
        boolean changed = true;
        for (int round = 0; changed && round < MOST_ROUNDS; round++) {
            step(0.3 + 0.3 * round / MOST_ROUNDS);
            changed = dropFlat() | dropDuplicates();
            step(0.3 + 0.3 * round / MOST_ROUNDS);
            changed |= closeRims();
        }
        if (changed) {
            dropFlat();
            dropDuplicates();
        }
        step(0.6);
        Sheets sheets = new Sheets(xyz, tri);
        step(0.9);
        TriMesh mesh = compact(sheets);
        if (!isAsGiven(mesh)) tell(sheets);
        tellSlivers(mesh);
        progress.at("mending", 1);
        return new Repaired(mesh, findings);
    }

    private void step(double done) {
        progress.at("mending", done);
        if (progress.cancelled()) throw new CancellationException("mending");
    }

    private boolean[] dropBadCoordinates() {
        boolean[] used = new boolean[xyz.length / 3];
        int lost = 0, first = -1;
        for (int t = 0; t < number.length; t++) {
            boolean sound = true;
            for (int k = 0; k < 9; k++) sound &= Math.abs(xyz[3 * tri[3 * t + k / 3] + k % 3]) <= FARTHEST;
            for (int k = 0; k < 3 && sound; k++) used[tri[3 * t + k]] = true;
            if (sound) continue;
            if (lost++ == 0) first = t;
            tri[3 * t] = -1;
        }
        if (lost > 0) {
            squeeze();
            add(Kind.BAD_COORDINATES, lost, count(lost, "triangle has", "triangles have")
                    + " a coordinate that is no number or far too large, the first is triangle " + first + "; left out");
        }
        return used;
    }

    /** Removes the triangles whose first corner is -1. */
    private int squeeze() {
        int m = 0;
        for (int t = 0; t < number.length; t++) {
            if (tri[3 * t] < 0) continue;
            System.arraycopy(tri, 3 * t, tri, 3 * m, 3);
            number[m++] = number[t];
        }
        int gone = number.length - m;
        tri = Arrays.copyOf(tri, 3 * m);
        number = Arrays.copyOf(number, m);
        return gone;
    }

    private void weldExactly(boolean[] used) {
        step(0.1);
        int[] to = Weld.exact(xyz, used);
        boolean changed = rename(to);
        if (changed || unused > 0 || number.length < givenTri.length / 3) leaveOut(used, to);
    }

    private boolean rename(int[] to) {
        int before = welded;
        for (int v = 0; v < to.length; v++) {
            if (to[v] != v && welded++ == 0) firstWelded = number(v) + " and " + number(to[v]);
        }
        if (welded > before) for (int i = 0; i < tri.length; i++) tri[i] = to[tri[i]];
        return welded > before;
    }

    /** Numbers the vertices anew, in order, without those that became another or are not used; {@code to} is written over. */
    private void leaveOut(boolean[] used, int[] to) {
        int kept = 0;
        for (int v = 0; v < to.length; v++) if (used[v] && to[v] == v) kept++;
        double[] places = new double[3 * kept];
        asGiven = new int[kept];
        kept = 0;
        for (int v = 0; v < used.length; v++) {
            if (!used[v] || to[v] != v) continue;
            System.arraycopy(xyz, 3 * v, places, 3 * kept, 3);
            asGiven[kept] = v;
            to[v] = kept++;
        }
        for (int i = 0; i < tri.length; i++) tri[i] = to[tri[i]];
        xyz = places;
    }

    /** The number of a vertex as given. */
    private int number(int v) {
        return asGiven == null ? v : asGiven[v];
    }

    private String numbers(int[] edge) {
        return number(edge[0]) + "-" + number(edge[1]);
    }

    /** Welds what nearly touches, then closes cracks. */
    private boolean closeRims() {
        double tolerance = TOLERANCE * diagonal();
        EdgeGroups edges = edges();
        boolean welded = weldNearly(edges, tolerance);
        step(0.5);
        return closeCracks(welded ? edges() : edges, tolerance) | welded;
    }

    private EdgeGroups edges() {
        return new EdgeGroups(xyz.length / 3, tri, tri.length);
    }

    private boolean weldNearly(EdgeGroups edges, double tolerance) {
        int n = xyz.length / 3;
        boolean[] rim = new boolean[n];
        for (int e = 0; e < edges.count(); e++) {
            if (edges.size(e) != 1) continue;
            int h = edges.half(e, 0);
            rim[tri[h]] = true;
            rim[tri[EdgeGroups.next(h)]] = true;
        }
        return rename(Weld.near(xyz, tri, tri.length, rim, tolerance));
    }

    private boolean closeCracks(EdgeGroups edges, double tolerance) {
        Cracks cracks = new Cracks(xyz, tri, edges, tolerance);
        if (cracks.closed == 0) return false;
        if (cracksClosed == 0) firstCrack = numbers(cracks.first);
        cracksClosed += cracks.closed;
        tri = cracks.result;
        int[] there = new int[cracks.from.length];
        for (int t = 0; t < there.length; t++) there[t] = number[cracks.from[t]];
        number = there;
        return true;
    }

    private double diagonal() {
        double[] low = new double[3], high = new double[3];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int v : tri) {
            for (int k = 0; k < 3; k++) {
                low[k] = Math.min(low[k], xyz[3 * v + k]);
                high[k] = Math.max(high[k], xyz[3 * v + k]);
            }
        }
        if (tri.length == 0) return 0;
        double x = high[0] - low[0], y = high[1] - low[1], z = high[2] - low[2];
        return Math.sqrt(x * x + y * y + z * z);
    }

    private boolean dropFlat() {
        int first = -1;
        for (int t = 0; t < number.length && first < 0; t++) {
            if (FlatTriangles.flat(xyz, tri[3 * t], tri[3 * t + 1], tri[3 * t + 2])) first = t;
        }
        if (first < 0) return false;
        firstFlat = Math.min(firstFlat, number[first]);
        flatMended += FlatTriangles.remove(xyz, tri, tri.length);
        flatDropped += squeeze();
        return true;
    }

    private boolean dropDuplicates() {
        int mask = Weld.mask(number.length);
        int[] slot = new int[mask + 1];
        Arrays.fill(slot, -1);
        int before = duplicates;
        for (int t = 0; t < number.length; t++) {
            int at = Weld.hash(low(t), middle(t), high(t)) & mask;
            while (slot[at] >= 0 && !sameCorners(slot[at], t)) at = (at + 1) & mask;
            if (slot[at] < 0) {
                slot[at] = t;
                continue;
            }
            firstDuplicate = Math.min(firstDuplicate, number[t]);
            duplicates++;
            number[t] = -1 - number[t];
        }
        if (duplicates == before) return false;
        for (int t = 0; t < number.length; t++) if (number[t] < 0) tri[3 * t] = -1;
        squeeze();
        return true;
    }

    private int low(int t) {
        return Math.min(tri[3 * t], Math.min(tri[3 * t + 1], tri[3 * t + 2]));
    }

    private int high(int t) {
        return Math.max(tri[3 * t], Math.max(tri[3 * t + 1], tri[3 * t + 2]));
    }

    private int middle(int t) {
        int a = tri[3 * t], b = tri[3 * t + 1], c = tri[3 * t + 2];
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    private boolean sameCorners(int s, int t) {
        return low(s) == low(t) && high(s) == high(t) && middle(s) == middle(t);
    }

    private TriMesh compact(Sheets sheets) {
        int[] origin = sheets.origin;
        boolean[] used = new boolean[origin.length];
        for (int v : sheets.vertexOf) used[v] = true;
        int[] to = new int[origin.length];
        double[] places = new double[3 * origin.length];
        int kept = 0;
        for (int v = 0; v < origin.length; v++) {
            if (!used[v]) continue;
            System.arraycopy(xyz, 3 * origin[v], places, 3 * kept, 3);
            to[v] = kept++;
        }
        int[] corner = new int[tri.length];
        for (int i = 0; i < corner.length; i++) corner[i] = to[sheets.vertexOf[i]];
        return TriMesh.of(Arrays.copyOf(places, 3 * kept), corner);
    }

    private boolean isAsGiven(TriMesh mesh) {
        return 3 * mesh.vertexCount() == given.length && Arrays.equals(mesh.corners(), givenTri) && Arrays.equals(mesh.positions(), given);
    }

    private void tell(Sheets sheets) {
        if (unused > 0) add(Kind.UNUSED_VERTICES, unused, count(unused, "vertex belongs", "vertices belong") + " to no triangle; left out");
        if (welded > 0) {
            add(Kind.WELDED_VERTICES, welded, count(welded, "vertex stood", "vertices stood")
                    + " in the place of another, the first are " + firstWelded + "; made one");
        }
        int flat = flatMended + flatDropped;
        if (flat > 0) {
            add(Kind.DEGENERATE_TRIANGLES, flat, count(flat, "triangle has", "triangles have") + " no height, the first is triangle " + firstFlat
                    + "; " + flatMended + " mended with their neighbours, " + flatDropped + " dropped");
        }
        if (cracksClosed > 0) {
            add(Kind.T_JUNCTIONS, cracksClosed, count(cracksClosed, "open edge has", "open edges have")
                    + " corners of other triangles lying on it, the first is " + firstCrack + "; cut there and closed");
        }
        if (duplicates > 0) {
            add(Kind.DUPLICATE_TRIANGLES, duplicates, count(duplicates, "triangle lies", "triangles lie")
                    + " on the corners of another, the first is triangle " + firstDuplicate + "; dropped");
        }
        if (sheets.nonManifoldEdges > 0) {
            add(Kind.NON_MANIFOLD_EDGES, sheets.nonManifoldEdges, count(sheets.nonManifoldEdges, "edge carries", "edges carry")
                    + " more than two triangles: " + (sheets.nonManifoldEdges > 1 ? "first, " : "") + "edge " + numbers(sheets.firstNonManifoldEdge)
                    + " carries " + sheets.firstNonManifoldSize + " triangles; pairs that run on smoothly were kept joined, the others parted");
        }
        if (sheets.nonManifoldVertices > 0) {
            add(Kind.NON_MANIFOLD_VERTICES, sheets.nonManifoldVertices, count(sheets.nonManifoldVertices, "vertex is", "vertices are")
                    + " all that holds two pieces together, the first is vertex " + number(sheets.firstNonManifoldVertex) + "; parted there");
        }
        if (sheets.turned > 0) {
            add(Kind.TURNED_TRIANGLES, sheets.turned, count(sheets.turned, "triangle faces", "triangles face")
                    + " the other way than most round it, the first is triangle " + number[sheets.firstTurned] + "; turned");
        }
        if (sheets.cutEdges > 0) {
            add(Kind.ONE_SIDED_STRIP, sheets.cutEdges, "a strip of the surface has only one side; cut open along "
                    + count(sheets.cutEdges, "edge", "edges") + ", the first is edge " + numbers(sheets.firstCut));
        }
    }

    private int unreferenced() {
        boolean[] named = new boolean[xyz.length / 3];
        for (int v : tri) named[v] = true;
        int many = 0;
        for (boolean name : named) if (!name) many++;
        return many;
    }

    private void tellSlivers(TriMesh mesh) {
        double[] places = mesh.positions();
        int slivers = 0, first = -1;
        double worst = 1;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double slim = FlatTriangles.slimness(places, mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2));
            if (slim * SLIVER >= 1) continue;
            if (slivers++ == 0) first = t;
            worst = Math.min(worst, slim);
        }
        if (slivers > 0) {
            add(Kind.SLIVERS, slivers, count(slivers, "triangle is", "triangles are") + " over " + (int) SLIVER
                    + " times as long as high, the worst " + Math.round(1 / worst) + " times, the first is triangle " + number[first] + "; kept");
        }
    }

    private void add(Kind kind, int count, String text) {
        findings.add(new Finding(kind, count, text));
    }

    private static String count(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }
}
