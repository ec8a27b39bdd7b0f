package blankwright.mesh.query;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import java.util.Arrays;

/**
 * Distances along edges from a set of starts that may grow, vertex by vertex, nearest first (Dijkstra 1959, docs/sources.md [D59]).
 *
 * <p>A start may be added at any time; what becomes nearer by it comes up again. Equal distances are settled by the positions of the
 * vertices (x, then y, then z), so the result does not depend on how vertices are numbered, except where two of them coincide.
 */
public final class Wavefront {
    private final TriMesh mesh;
    private final EdgeStars stars;
    private final double[] cost;        // per edge
    private final double[] distance;    // per vertex, +∞ = not reached
    private final int[] before;         // vertex before it on its path, -1 at a start
    private final int[] place;          // place in the heap, -1 outside
    private final int[] heap;
    private final int[] touched;        // vertices with a finite distance
    private int size;
    private int touchedCount;

    /** @param cost per edge, 0 or more, +∞ to close it; used, not copied */
    public Wavefront(TriMesh mesh, EdgeStars stars, double[] cost) {
        this.mesh = mesh;
        this.stars = stars;
        this.cost = cost;
        int n = mesh.vertexCount();
        distance = new double[n];
        Arrays.fill(distance, Double.POSITIVE_INFINITY);
        before = new int[n];
        place = new int[n];
        Arrays.fill(place, -1);
        heap = new int[n];
        touched = new int[n];
    }

    /** Costs of all edges as an array; throws IllegalArgumentException where one is negative or no number. */
    public static double[] costs(int edgeCount, EdgeCost cost) {
        double[] all = new double[edgeCount];
        for (int e = 0; e < edgeCount; e++) {
            all[e] = cost.of(e);
            if (!(all[e] >= 0)) throw new IllegalArgumentException("edge " + e + " costs " + all[e] + ": must be 0 or more");
        }
        return all;
    }

    /** Distance along edges by plain length of every vertex from the nearest of those said, mm; +∞ where no way leads. */
    public static double[] distances(TriMesh mesh, EdgeTable edges, EdgeStars stars, int... from) {
        Wavefront front = new Wavefront(mesh, stars, costs(edges.edgeCount(), EdgeCost.length(edges)));
        for (int v : from) front.start(v);
        return front.run().distance;
    }

    /** Distance 0 from now on at v. */
    public void start(int v) {
        reach(v, 0, -1);
    }

    /** Settles the nearest vertex not settled yet and gives it; -1 when all that can be reached is done. */
    public int next() {
        if (size == 0) return -1;
        int v = heap[0];
        place[v] = -1;
        int last = heap[--size];
        if (size > 0) down(last, 0);
        for (int i = stars.start(v); i < stars.start(v + 1); i++) {
            double there = distance[v] + cost[stars.edge(i)];
            if (there < Double.POSITIVE_INFINITY) reach(stars.far(i), there, v);
        }
        return v;
    }

    /** Settles everything that can be reached. */
    public Wavefront run() {
        while (next() >= 0) { }
        return this;
    }

    /** Distance of v along edges, as far as known by now; +∞ where not reached. Final once v was given by {@link #next}. */
    public double distance(int v) {
        return distance[v];
    }

    /** Vertex before v on its path, -1 at a start. */
    public int before(int v) {
        return before[v];
    }

    /** Vertices from the start to v, which must have been reached. */
    public int[] pathTo(int v) {
        int count = 1;
        for (int w = v; before[w] >= 0; w = before[w]) count++;
        int[] path = new int[count];
        for (int w = v; count > 0; w = before[w]) path[--count] = w;
        return path;
    }

    /** Forgets all starts; costs only what was reached since the last time. */
    public void clear() {
        for (int i = 0; i < touchedCount; i++) {
            distance[touched[i]] = Double.POSITIVE_INFINITY;
            place[touched[i]] = -1;
        }
        touchedCount = 0;
        size = 0;
    }

    private void reach(int v, double there, int from) {
        double known = distance[v];
        if (there > known) return;
        if (there == known) {
            if (from >= 0 && place[v] >= 0 && before[v] >= 0 && ahead(from, before[v])) before[v] = from;
            if (from < 0) before[v] = -1;
            return;
        }
        if (known == Double.POSITIVE_INFINITY) touched[touchedCount++] = v;
        distance[v] = there;
        before[v] = from;
        up(v, place[v] >= 0 ? place[v] : size++);
    }

    private void up(int v, int at) {
        while (at > 0) {
            int parent = (at - 1) >> 2;
            if (!nearer(v, heap[parent])) break;
            put(heap[parent], at);
            at = parent;
        }
        put(v, at);
    }

    private void down(int v, int at) {
        while (true) {
            int child = 4 * at + 1, end = Math.min(child + 4, size);
            if (child >= size) break;
            int best = child;
            for (int i = child + 1; i < end; i++) if (nearer(heap[i], heap[best])) best = i;
            if (!nearer(heap[best], v)) break;
            put(heap[best], at);
            at = best;
        }
        put(v, at);
    }

    private void put(int v, int at) {
        heap[at] = v;
        place[v] = at;
    }

    private boolean nearer(int v, int w) {
        if (distance[v] != distance[w]) return distance[v] < distance[w];
        return ahead(v, w);
    }

    private boolean ahead(int v, int w) {
        return ahead(mesh, v, w);
    }

    /** Order by position, x before y before z; by number only where two vertices coincide. */
    public static boolean ahead(TriMesh mesh, int v, int w) {
        if (mesh.x(v) != mesh.x(w)) return mesh.x(v) < mesh.x(w);
        if (mesh.y(v) != mesh.y(w)) return mesh.y(v) < mesh.y(w);
        if (mesh.z(v) != mesh.z(w)) return mesh.z(v) < mesh.z(w);
        return v < w;
    }
}
