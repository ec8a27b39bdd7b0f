package blankwright.mesh.cut;

import blankwright.mesh.AngleDefect;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeCost;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.IntToDoubleFunction;
import java.util.function.Supplier;

/**
 * Opens any connected form so that it can lie flat: a disk, perhaps with holes.
 *
 * <ol><li>Each rim is a hole, which stays, or an end ({@link HoleRule}). The longest end is the outer rim. If there are only holes, as in a
 * tank with a filler opening, the skin counts as closed but for the longest of them, which serves as the outer rim.
 * <li>Handles are opened by a short system of loops ({@link HandleCut}), starting at the outer rim if there is one.
 * <li>A closed skin without handles or rims is slit between two places far apart, sharp corners if it has two (a vertex missing
 * {@value #CORNER} rad or more).
 * <li>Each end is joined by the shortest path to what is open already, the nearest end first. Paths keep off holes; only where
 * there is no way round one, the seam runs into it.
 * <li>A skin that counts as closed gets branches, {@value #BRANCHES} at most: first to its other sharp corners, the far and
 * strong ones first; then to the place farthest from the cut, while a crown as large as its distance holds more than
 * {@value #CROWN} rad of curvature. Without them a ball would have to be flattened round its whole equator.</ol>
 * Ends of seams are chosen by distance; between them a seam takes the way of least cost, which prefers folds and crowns ({@link EdgeCost#seam}).
 *
 * <p>Time grows a little faster than the number of triangles. Same seams however vertices are numbered, but for coinciding vertices.
 */
public final class CutToDisk {
    static final int BRANCHES = 12;
    /** Seams with a finding of their own; a sieve with thousands must not drown the rest. */
    static final int LISTED = 40;
    /** 30°: a cube corner misses 90°, one vertex of a sphere of 42 vertices 17°. */
    static final double CORNER = Math.PI / 6;
    /** About a cap of half angle 41°. */
    static final double CROWN = Math.PI / 2;

    private record Way(String reason, Sentence why, int[] path, int startOwner, int owner, boolean needed) { }

    private final TriMesh mesh;
    private final EdgeTable edges;
    private final EdgeStars stars;
    private final RimLoops rims;
    private final int[] rimOf;              // vertex -> rim, or -1
    private final AngleDefect defect;
    private final Supplier<EdgeCost> costing;
    private double[] cost;                  // of a seam along each edge; null until asked for, as most panels need no seam
    private final double[] length;          // of each edge: where to branch is a matter of distance
    private final double detour;            // far more than any way round
    private final Progress progress;
    private final List<Way> ways = new ArrayList<>();

    private CutToDisk(TriMesh mesh, EdgeTable edges, Supplier<EdgeCost> costing, Progress progress) {
        this.mesh = mesh;
        this.edges = edges;
        this.progress = progress;
        stars = EdgeStars.of(mesh, edges);
        rims = RimLoops.of(mesh, edges);
        rimOf = new int[mesh.vertexCount()];
        Arrays.fill(rimOf, -1);
        for (int i = 0; i < rims.count(); i++) for (int v : rims.loop(i)) rimOf[v] = i;
        defect = AngleDefect.of(mesh, edges);
        double[] size = mesh.size();
        this.costing = costing;
        length = rounded(EdgeCost.length(edges), edges.edgeCount(), size);
        detour = 1e4 * (size[0] + size[1] + size[2]);
    }

    private double[] cost() {
        if (cost == null) cost = rounded(costing.get(), edges.edgeCount(), mesh.size());
        return cost;
    }

    /** To a power of two below 1e-8 of the form's size: sums are then exact, so that no order of summing chooses between equal ways. */
    private static double[] rounded(EdgeCost cost, int count, double[] size) {
        double[] all = Wavefront.costs(count, cost);
        double unit = Math.scalb(Math.ulp(size[0] + size[1] + size[2]), 25);
        for (int e = 0; e < count; e++) if (all[e] < Double.POSITIVE_INFINITY) all[e] = Math.rint(all[e] / unit) * unit;
        return all;
    }

    /**
     * Seams where they are short and do good: see {@link EdgeCost#seam}.
     *
     * @param mesh connected, manifold in edges and vertices, oriented; else IllegalArgumentException saying where not
     * @throws CancellationException once {@code progress} says so
     */
    public static Opened of(TriMesh mesh, Progress progress) {
        EdgeTable edges = EdgeTable.of(mesh);
        return of(mesh, edges, () -> EdgeCost.seam(mesh, edges), progress);
    }

    /** Seams where they cost least; {@code cost} in mm or the like, finite. */
    public static Opened of(TriMesh mesh, EdgeTable edges, EdgeCost cost, Progress progress) {
        return of(mesh, edges, () -> cost, progress);
    }

    private static Opened of(TriMesh mesh, EdgeTable edges, Supplier<EdgeCost> cost, Progress progress) {
        Cut whole = Cut.along(mesh, edges, new boolean[edges.edgeCount()]);
        refuseTouching(mesh, whole);
        refuseSeveral(mesh, edges);
        return new CutToDisk(mesh, edges, cost, progress).opened();
    }

    private static void refuseTouching(TriMesh mesh, Cut whole) {
        int n = mesh.vertexCount();
        if (whole.mesh().vertexCount() > n)
            throw new IllegalArgumentException("at vertex " + whole.vertexOf(n) + " two parts of the surface only touch");
    }

    private static void refuseSeveral(TriMesh mesh, EdgeTable edges) {
        int reached = connected(mesh, edges);
        if (mesh.triangleCount() == 0) throw new IllegalArgumentException("a surface without triangles");
        if (reached < mesh.triangleCount())
            throw new IllegalArgumentException("only " + reached + " of " + mesh.triangleCount() + " triangles hang together");
    }

    private Opened opened() {
        watch(0);
        boolean[] open = new boolean[rims.count()];
        boolean[] end = new boolean[rims.count()];
        boolean closed = holesOrEnds(end);
        int outer = longest(end);
        if (outer >= 0) open[outer] = true;
        watch(0.2);
        int handles = handles();
        if (handles > 0) openHandles(handles, open);
        else if (outer < 0) slit();
        watch(0.5);
        joinEnds(open, end);
        watch(0.7);
        if (closed) branch(open, end);
        watch(0.9);
        return result(open);
    }

    /** Marks the ends; true where there is none. */
    private boolean holesOrEnds(boolean[] end) {
        HoleRule rule = new HoleRule(mesh, rims, defect, new Wavefront(mesh, stars, length));
        boolean closed = true;
        for (int i = 0; i < end.length; i++) {
            end[i] = !rule.isHole(i);
            closed &= !end[i];
            if (i % 256 == 0) watch(0.2 * i / end.length);
        }
        return closed;
    }

    /** The longest end, or the longest rim where there is no end; -1 without rims. */
    private int longest(boolean[] end) {
        int best = -1;
        double most = 0;
        for (int i = 0; i < end.length; i++) {
            double length = rims.length(mesh, i);
            boolean better = best < 0 || (end[i] == end[best] ? length > most : end[i]);
            if (better) {
                best = i;
                most = length;
            }
        }
        return best;
    }

    private void watch(double fraction) {
        progress.at("Opening the form", fraction);
        if (progress.cancelled()) throw new CancellationException("cancelled while opening the form");
    }

    private int handles() {
        return (2 - rims.count() - euler(mesh, edges)) / 2;
    }

    private void openHandles(int handles, boolean[] open) {
        Sentence why = Sentence.of(handles == 1 ? "the form goes round a handle" : "the form goes round " + handles + " handles");
        for (int[] path : new HandleCut(mesh, edges, stars, rims, rimOf, cost(), detour).paths(open, farthestFromMiddle()))
            ways.add(new Way("handle", why, path, -1, -1, true));
    }

    private void slit() {
        Wavefront plain = new Wavefront(mesh, stars, length);
        int a = farthest(plain, farthestFromMiddle());
        int b = farthest(plain, a);
        Wavefront front = new Wavefront(mesh, stars, cost());
        front.start(a);
        int[] path = front.run().pathTo(b);
        if (path.length == 2) path = longer(path);
        ways.add(new Way("closed-skin", Sentence.of("the skin is closed"), path, -1, -1, true));
    }

    private int farthest(Wavefront front, int start) {
        front.clear();
        front.start(start);
        front.run();
        boolean corners = corners() > 1;
        return best(v -> corners && !sharp(v) ? -1 : front.distance(v));
    }

    private boolean sharp(int v) {
        return defect.defect(v) >= CORNER;
    }

    private int corners() {
        int count = 0;
        for (int v = 0; v < mesh.vertexCount(); v++) if (sharp(v)) count++;
        return count;
    }

    /** A slit of one edge would have no width: goes on to the farthest neighbour of its end. */
    private int[] longer(int[] path) {
        int best = -1;
        for (int i = stars.start(path[1]); i < stars.start(path[1] + 1); i++) {
            int v = stars.far(i);
            if (v == path[0]) continue;
            double there = mesh.distance(path[0], v), known = best < 0 ? -1 : mesh.distance(path[0], best);
            if (there > known || there == known && Wavefront.ahead(mesh, v, best)) best = v;
        }
        return new int[] {path[0], path[1], best};
    }

    private int farthestFromMiddle() {
        double[] middle = new double[3];
        double area = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double w = mesh.area(t);
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                middle[0] += w / 3 * mesh.x(v);
                middle[1] += w / 3 * mesh.y(v);
                middle[2] += w / 3 * mesh.z(v);
            }
            area += w;
        }
        double x = middle[0] / area, y = middle[1] / area, z = middle[2] / area;
        double size = 1e-4 * detour, away = Math.abs(x) + Math.abs(y) + Math.abs(z);
        double about = size * (1e-9 * size + 1e-12 * away);
        return best(v -> {                                  // rounded, so that the order of summing does not choose between equals
            double dx = mesh.x(v) - x, dy = mesh.y(v) - y, dz = mesh.z(v) - z;
            return Math.rint((dx * dx + dy * dy + dz * dz) / about);
        });
    }

    /** Vertex in use with the largest finite value, the first by place of equals. */
    private int best(IntToDoubleFunction value) {
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int v = 0; v < mesh.vertexCount(); v++) {
            if (stars.start(v) == stars.start(v + 1)) continue;
            double there = value.applyAsDouble(v);
            if (there == Double.POSITIVE_INFINITY || there < most) continue;
            if (there > most || best < 0 || Wavefront.ahead(mesh, v, best)) {
                best = v;
                most = there;
            }
        }
        return best;
    }

    private void joinEnds(boolean[] open, boolean[] end) {
        int missing = 0;
        for (int i = 0; i < end.length; i++) if (end[i] && !open[i]) missing++;
        if (missing == 0) return;
        int[] owner = new int[mesh.vertexCount()];          // way that opened this vertex, or -1
        Arrays.fill(owner, -1);
        Wavefront front = new Wavefront(mesh, stars, keepingOffHoles(cost(), open, end));
        for (int v = 0; v < rimOf.length; v++) if (rimOf[v] >= 0 && open[rimOf[v]]) front.start(v);
        for (Way way : ways) for (int v : way.path()) front.start(v);
        int first = ways.size();
        while (missing > 0) {
            int v = front.next();
            if (v < 0) throw new AssertionError(missing + " ends cannot be reached");
            int rim = rimOf[v];
            if (rim < 0 || open[rim]) continue;
            int[] path = front.pathTo(v);
            int number = ways.size();
            open[rim] = true;
            Sentence.Measure round = Sentence.length(rims.length(mesh, rim), 1);
            ways.add(end[rim] ? new Way("end", Sentence.say("an end %s round cannot lie flat closed", round), path, owner[path[0]], number, true)
                    : new Way("hole-in-the-way", Sentence.say("there is no way round a hole %s round", round), path, owner[path[0]], number, false));
            if (end[rim]) missing--;
            for (int w : path) opened(w, number, owner, front);
            for (int w : rims.loop(rim)) opened(w, number, owner, front);
            if (number % 256 == 0) watch(0.5);
        }
        dropUseless(first, open);
    }

    private void opened(int v, int number, int[] owner, Wavefront front) {
        if (front.distance(v) > 0) {
            owner[v] = number;
            front.start(v);
        }
    }

    private double[] keepingOffHoles(double[] costs, boolean[] open, boolean[] end) {
        double[] walk = costs.clone();
        for (int e = 0; e < walk.length; e++) {
            int a = rimOf[edges.from(e)], b = rimOf[edges.to(e)];
            if (edges.right(e) < 0) walk[e] = Double.POSITIVE_INFINITY;
            else if (a >= 0 && !open[a] && !end[a] || b >= 0 && !open[b] && !end[b]) walk[e] += detour;
        }
        return walk;
    }

    /** A seam into a hole from which no other seam goes on was tried in vain. */
    private void dropUseless(int first, boolean[] open) {
        boolean[] used = new boolean[ways.size()];
        for (int i = ways.size() - 1; i >= first; i--) {
            Way way = ways.get(i);
            used[i] |= way.needed();
            if (used[i] && way.startOwner() >= 0) used[way.startOwner()] = true;
        }
        for (int i = ways.size() - 1; i >= first; i--) {
            if (used[i]) continue;
            int[] path = ways.get(i).path();
            open[rimOf[path[path.length - 1]]] = false;
            ways.remove(i);
        }
    }

    private void branch(boolean[] open, boolean[] end) {
        Wavefront front = new Wavefront(mesh, stars, keepingOffHoles(cost(), open, end)), way = new Wavefront(mesh, stars, keepingOffHoles(length, open, end));
        Wavefront cap = new Wavefront(mesh, stars, length);
        for (int v = 0; v < rimOf.length; v++) if (rimOf[v] >= 0 && open[rimOf[v]]) start(v, front, way);
        for (Way known : ways) for (int v : known.path()) start(v, front, way);
        for (int i = 0; i < BRANCHES; i++) {
            front.run();
            way.run();
            IntToDoubleFunction away = v -> rimOf[v] >= 0 || way.distance(v) >= detour ? -1 : way.distance(v);
            int corner = best(v -> sharp(v) ? away.applyAsDouble(v) * defect.defect(v) : 0);
            int tip = corner;
            if (away.applyAsDouble(corner) <= 0 || !sharp(corner)) {
                tip = best(away);
                if (away.applyAsDouble(tip) <= 0 || !crowned(cap, tip, way.distance(tip))) return;
            }
            int[] path = front.pathTo(tip);
            ways.add(new Way("crown", Sentence.of(tip == corner ? "a sharp corner lies far from the cut" : "a strong crown lies far from the cut"),
                    path, -1, -1, true));
            for (int v : path) start(v, front, way);
            watch(0.7 + 0.2 * i / BRANCHES);
        }
    }

    private static void start(int v, Wavefront... fronts) {
        for (Wavefront front : fronts) front.start(v);
    }

    private boolean crowned(Wavefront cap, int tip, double radius) {
        double curvature = 0;
        cap.clear();
        cap.start(tip);
        for (int v = cap.next(); v >= 0 && cap.distance(v) < radius * (1 - 1e-9); v = cap.next()) if (!defect.onRim(v)) curvature += defect.defect(v);
        return curvature > CROWN;
    }

    private Opened result(boolean[] open) {
        List<int[]> paths = ways.stream().map(Way::path).toList();
        Cut cut = Cut.along(mesh, edges, stars, paths);
        int kept = 0;
        double shortest = Double.POSITIVE_INFINITY, longest = 0;
        for (int i = 0; i < open.length; i++) {
            if (open[i]) continue;
            kept++;
            shortest = Math.min(shortest, rims.length(mesh, i));
            longest = Math.max(longest, rims.length(mesh, i));
        }
        assertDisk(cut.mesh(), kept);
        List<Seam> seams = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (Way way : ways) {
            Seam seam = Seam.of(Seam.Kind.ADDED, 0, way.reason(), way.path(), mesh, edges, stars, cut.mesh(), null);
            seams.add(seam);
            int[] path = way.path();
            if (seams.size() <= LISTED) findings.add(new Finding(Finding.Kind.SEAM_ADDED, 1, Sentence.say(
                    "opened along %s from %s to %s: %s", Sentence.length(seam.length(), 1), place(mesh, path[0]), place(mesh, path[path.length - 1]), way.why())));
        }
        if (seams.size() > LISTED) findings.add(new Finding(Finding.Kind.SEAM_ADDED, seams.size() - LISTED, Sentence.say(
                "opened along %d more seams, %s together", seams.size() - LISTED,
                Sentence.length(seams.stream().skip(LISTED).mapToDouble(Seam::length).sum(), 1))));
        if (kept > 0) findings.add(new Finding(Finding.Kind.HOLES, kept, kept == 1
                ? Sentence.say("a hole %s round stays a free edge", Sentence.length(longest, 1))
                : Sentence.say("%d holes, %s to %s round, stay free edges", kept, Sentence.length(shortest, 1), Sentence.length(longest, 1))));
        return new Opened(cut, seams, findings);
    }

    /** For findings. */
    static Sentence.Measure place(TriMesh mesh, int v) {
        return Sentence.place(1, mesh.x(v), mesh.y(v), mesh.z(v));
    }

    private static void assertDisk(TriMesh disk, int holes) {
        EdgeTable edges = EdgeTable.of(disk);
        int euler = euler(disk, edges), loops = RimLoops.of(disk, edges).count(), reached = connected(disk, edges);
        if (loops != holes + 1 || euler != 1 - holes || reached != disk.triangleCount())
            throw new AssertionError("opened to " + loops + " rims instead of " + (holes + 1) + ", Euler number " + euler + ", "
                    + reached + " of " + disk.triangleCount() + " triangles connected");
    }

    /** V - E + F over the vertices in use. */
    private static int euler(TriMesh mesh, EdgeTable edges) {
        boolean[] used = new boolean[mesh.vertexCount()];
        int count = 0;
        for (int t = 0; t < mesh.triangleCount(); t++)
            for (int k = 0; k < 3; k++)
                if (!used[mesh.corner(t, k)]) {
                    used[mesh.corner(t, k)] = true;
                    count++;
                }
        return count - edges.edgeCount() + mesh.triangleCount();
    }

    /** How many triangles hang together with the first. */
    private static int connected(TriMesh mesh, EdgeTable edges) {
        if (mesh.triangleCount() == 0) return 0;
        boolean[] seen = new boolean[mesh.triangleCount()];
        int[] todo = new int[mesh.triangleCount()];
        int count = 1;
        seen[0] = true;
        for (int i = 0; i < count; i++) {
            for (int k = 0; k < 3; k++) {
                int t = edges.neighbour(todo[i], k);
                if (t >= 0 && !seen[t]) {
                    seen[t] = true;
                    todo[count++] = t;
                }
            }
        }
        return count;
    }
}
