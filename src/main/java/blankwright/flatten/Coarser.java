package blankwright.flatten;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;

/**
 * The same panel with about a third of the vertices, and where each of the others lies on it.
 *
 * <ol><li>Pass over the vertices in order; each that no neighbour of this pass has locked is taken out by drawing it into that neighbour
 * which leaves the best-shaped triangles, if rims, holes and the surface stay what they are. Vertices are cut into regions by number, which
 * are passed over side by side; those with a neighbour in another region come after, so that the bits do not depend on the threads.
 * <li>Its star is unrolled into the plane for that: the vertex, and all taken out before that lay in the star, find their places in the
 * new triangles there.
 * <li>Passes end when the goal is reached or little more can go: corners of the rim and holes of three sides stay.</ol>
 *
 * <p>The vertices that stay keep their places and order. Weights of one vertex sum to 1; beside a curved rim some are a little negative.
 * <p>Source: Lee, Sweldens, Schröder, Cowsar and Dobkin, "MAPS: Multiresolution Adaptive Parameterization of Surfaces", 1998;
 * docs/sources.md [LSSCD98].
 */
final class Coarser {
    private static final double SHARE = 0.3;               // of the vertices that may be left when passes end
    private static final double WORTH = 0.03;              // of the vertices a pass must take out for another to follow
    private static final int REGIONS = 8, LEAST_REGION = 12_000;   // most of them, and their least vertices
    private static final int RING = 14;                    // largest ring a vertex taken out may have
    private static final double RIM_TURN = Math.PI / 3;    // a rim that turns more than this at a vertex has a corner there
    private static final double FAIR = 0.3;                // shape, 1 for equal sides, below which new triangles must not be worse than half the old

    private final TriMesh fine;
    private final double[] xyz;
    private final int[] tri;                               // tail of each half-edge, -1 where its triangle is gone
    private final int[] twin;
    private final int[] out;                               // vertex -> a half-edge that leaves it, -1 once taken out
    private final int[] locked;                            // vertex -> last pass in which its neighbourhood changed
    private final int[] host, next, first;                 // vertex -> triangle it lies in, the next vertex in that; triangle -> the first
    private final double[] w0, w1;                         // its weights for corners 0 and 1 of the host

    private int[] vertexOf;
    private TriMesh mesh;
    private int[] parent;
    private int[] triangleOf;
    private double[] weight;

    private Coarser(TriMesh fine, EdgeTable edges) {
        this.fine = fine;
        xyz = fine.positions();
        tri = fine.corners();
        int n = fine.vertexCount();
        twin = new int[tri.length];
        out = new int[n];
        for (int h = tri.length - 1; h >= 0; h--) {
            twin[h] = edges.twin(h);
            out[tri[h]] = h;
        }
        locked = new int[n];
        host = new int[n];
        next = new int[n];
        w0 = new double[n];
        w1 = new double[n];
        first = new int[tri.length / 3];
        Arrays.fill(first, -1);
    }

    static Coarser of(TriMesh fine, EdgeTable edges, Progress progress) {
        Coarser c = new Coarser(fine, edges);
        c.takeOut(progress);
        c.collect();
        return c;
    }

    TriMesh mesh() {
        return mesh;
    }

    /** Coarse vertices to fine ones: what they carry over. {@code from} is 2 numbers a fine vertex, the result 2 a coarse one. */
    double[] carried(double[] from) {
        double[] to = new double[2 * vertexOf.length];
        for (int i = 0; i < vertexOf.length; i++) {
            to[2 * i] = from[2 * vertexOf[i]];
            to[2 * i + 1] = from[2 * vertexOf[i] + 1];
        }
        return to;
    }

    /** A fine vertex for each coarse one, in the same place. Not a copy. */
    int[] vertexOf() {
        return vertexOf;
    }

    /** Three coarse vertices for each fine one. Not a copy. */
    int[] parents() {
        return parent;
    }

    /** Their weights. Not a copy. */
    double[] weights() {
        return weight;
    }

    /** A coarse triangle for each fine one: that in which one of its corners lies. Not a copy. */
    int[] triangleOf() {
        return triangleOf;
    }

    private void takeOut(Progress progress) {
        int n = out.length, left = n;
        int regions = Math.max(1, Math.min(REGIONS, n / LEAST_REGION)), size = (n + regions - 1) / regions;
        int[] later = new int[n];                                          // of each region from where it begins: what must wait
        int[] waiting = new int[regions], gone = new int[regions];
        Star alone = new Star(0, n);
        for (int pass = 1; ; pass++) {
            if (progress.cancelled()) throw new CancellationException();
            int now = pass;
            IntStream.range(0, regions).parallel().forEach(r -> {
                Star star = new Star(r * size, Math.min(n, (r + 1) * size));
                int count = 0, wait = 0;
                for (int v = star.from; v < star.to; v++) {
                    if (out[v] < 0 || locked[v] >= now) continue;
                    if (!star.around(v)) continue;
                    if (!star.within()) later[star.from + wait++] = v;
                    else if (star.takeOut(v, now)) count++;
                }
                waiting[r] = wait;
                gone[r] = count;
            });
            int before = left;
            for (int r = 0; r < regions; r++) {
                left -= gone[r];
                for (int i = 0; i < waiting[r]; i++) {
                    int v = later[r * size + i];
                    if (locked[v] < pass && alone.around(v) && alone.takeOut(v, pass)) left--;
                }
            }
            if (left <= SHARE * n || before - left < WORTH * before) return;
        }
    }

    private static int following(int h) {
        return h % 3 == 2 ? h - 2 : h + 1;
    }

    private static int before(int h) {
        return h % 3 == 0 ? h + 2 : h - 1;
    }

    /** The triangles about one vertex, and the taking out of that vertex. One a thread: all it writes to lies between vertices of its region. */
    private final class Star {
        final int from, to;                                // vertices of the region
        private final int[] ring = new int[RING], spoke = new int[RING];      // neighbours of the vertex in turn; half-edges that lead to them
        private final double[] px = new double[RING], py = new double[RING];  // where they lie, the vertex at the origin
        private final double[] shape = new double[RING];   // worst shape of the triangles that drawing the vertex into this neighbour leaves
        private final int[] near = new int[2 * RING + 3];  // neighbours of a neighbour
        private int size;
        private boolean open;                              // the vertex lies on a rim

        Star(int from, int to) {
            this.from = from;
            this.to = to;
        }

        /** Walks round v; false where the ring is too large or too small. */
        boolean around(int v) {
            int start = out[v];
            open = false;
            for (int h = start, turns = 0; ; turns++) {                   // back to the rim, if there is one
                if (twin[h] < 0) {
                    start = h;
                    open = true;
                    break;
                }
                h = following(twin[h]);
                if (h == start) break;
                if (turns == RING) return false;
            }
            size = 0;
            int h = start;
            while (true) {
                if (size == RING - 1) return false;
                spoke[size] = h;
                ring[size++] = tri[following(h)];
                int across = twin[before(h)];
                if (across < 0) {
                    spoke[size] = -1;
                    ring[size++] = tri[before(h)];
                    break;
                }
                h = across;
                if (h == start) break;
            }
            return size >= 3;
        }

        /** Whether the whole ring lies in the region. */
        boolean within() {
            for (int i = 0; i < size; i++) if (ring[i] < from || ring[i] >= to) return false;
            return true;
        }

        /** Takes out the vertex that it lies around and locks its ring for this pass, if that leaves good triangles and the same surface. */
        boolean takeOut(int v, int pass) {
            if (!unroll(v)) return false;
            double least = Math.min(FAIR, leastShape() / 2);
            for (int i = 0; i < size; i++) shape[i] = open && i != 0 && i != size - 1 ? -1 : shapeWith(i);
            while (true) {
                int best = 0;
                for (int i = 1; i < size; i++) if (shape[i] > shape[best]) best = i;
                if (!(shape[best] > Math.max(0, least))) return false;
                if (joinable(best)) {
                    drawInto(v, best);
                    for (int i = 0; i < size; i++) locked[ring[i]] = pass;
                    return true;
                }
                shape[best] = -1;
            }
        }

        /** Lays the star flat about the origin; false where the rim has a corner there. */
        private boolean unroll(int v) {
            double angle = 0;
            for (int i = 0; i < size; i++) {
                px[i] = angle;                                                 // angle now, place below
                py[i] = distance(v, ring[i]);
                if (i < sectors()) angle += corner(v, ring[i], ring[after(i)]);
            }
            if (!(angle > 0)) return false;
            if (open && Math.abs(Math.PI - angle) > RIM_TURN) return false;
            double scale = open ? 1 : 2 * Math.PI / angle;
            for (int i = 0; i < size; i++) {
                double a = px[i] * scale, r = py[i];
                px[i] = r * Math.cos(a);
                py[i] = r * Math.sin(a);
            }
            return true;
        }

        private double distance(int v, int w) {
            double dx = xyz[3 * v] - xyz[3 * w], dy = xyz[3 * v + 1] - xyz[3 * w + 1], dz = xyz[3 * v + 2] - xyz[3 * w + 2];
            return Math.sqrt(dx * dx + dy * dy + dz * dz);
        }

        private double corner(int v, int a, int b) {
            double ux = xyz[3 * a] - xyz[3 * v], uy = xyz[3 * a + 1] - xyz[3 * v + 1], uz = xyz[3 * a + 2] - xyz[3 * v + 2];
            double vx = xyz[3 * b] - xyz[3 * v], vy = xyz[3 * b + 1] - xyz[3 * v + 1], vz = xyz[3 * b + 2] - xyz[3 * v + 2];
            double cx = uy * vz - uz * vy, cy = uz * vx - ux * vz, cz = ux * vy - uy * vx;
            return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ux * vx + uy * vy + uz * vz);
        }

        /** Triangles of the star: between ring vertex i and the next, all of them, or one less on a rim. */
        private int sectors() {
            return open ? size - 1 : size;
        }

        private int after(int i) {
            return i + 1 == size ? 0 : i + 1;
        }

        private double leastShape() {
            double least = 1;
            for (int i = 0; i < sectors(); i++) {
                int j = after(i);
                least = Math.min(least, shape(px[i], py[i], px[j] - px[i], py[j] - py[i]));
            }
            return least;
        }

        /** The worst shape among the triangles that fan out from ring vertex u instead of the origin. */
        private double shapeWith(int u) {
            double least = 1;
            for (int i = 0; i < sectors(); i++) {
                int j = after(i);
                if (i == u || j == u) continue;
                least = Math.min(least, shape(px[i] - px[u], py[i] - py[u], px[j] - px[i], py[j] - py[i]));
            }
            return least;
        }

        /** Of a triangle with sides a and b in turn: 1 with equal sides, 0 without area, negative turned over. */
        private static double shape(double ax, double ay, double bx, double by) {
            double cx = ax + bx, cy = ay + by;
            return 2 * Math.sqrt(3) * (ax * by - ay * bx) / (ax * ax + ay * ay + bx * bx + by * by + cx * cx + cy * cy);
        }

        /** Whether drawing the vertex into ring vertex i joins no two vertices that are joined already, nor leaves one without triangles. */
        private boolean joinable(int i) {
            int start = out[ring[i]], h = start, count = 0, most = RING + 3 - size;
            while (true) {                                                     // counter-clockwise
                if (count == most) return false;
                near[count++] = tri[following(h)];
                int across = twin[before(h)];
                if (across < 0) near[count] = tri[before(h)];
                h = across;
                if (h < 0 || h == start) break;
            }
            int neighbours = count;
            if (h < 0) {                                                       // a rim: the other way too
                neighbours++;
                h = start;
                while (twin[h] >= 0) {
                    if (count++ == most) return false;
                    h = following(twin[h]);
                    near[neighbours++] = tri[following(h)];
                }
            }
            for (int j = 0; j < size; j++) {
                boolean beside = j == i || j == after(i) || i == after(j);
                if (open && (i == 0 && j == size - 1 || j == 0 && i == size - 1)) beside = false;
                for (int k = 0; k < neighbours && !beside; k++) if (near[k] == ring[j]) return false;
            }
            for (int s = 0; s < sectors(); s++) {                              // the triangles that vanish must both leave something behind
                if (s != i && after(s) != i) continue;
                int g = spoke[s];
                int far = twin[following(g)], side = s == i ? twin[before(g)] : twin[g];
                if (far < 0 && side < 0) return false;
            }
            return true;
        }

        private void drawInto(int v, int u) {
            int lifted = v;
            next[v] = -1;
            w0[v] = w1[v] = 0;                                                 // in the plane of the star, for the moment
            for (int s = 0; s < sectors(); s++) {
                int t = spoke[s] / 3, k = spoke[s] % 3, i = s, j = after(s);
                for (int p = first[t]; p >= 0; ) {
                    int following = next[p];
                    double w2 = 1 - w0[p] - w1[p];
                    double a = k == 0 ? w1[p] : k == 1 ? w2 : w0[p], b = k == 0 ? w2 : k == 1 ? w0[p] : w1[p];   // of ring vertices i and j
                    w0[p] = a * px[i] + b * px[j];
                    w1[p] = a * py[i] + b * py[j];
                    next[p] = lifted;
                    lifted = p;
                    p = following;
                }
                first[t] = -1;
            }
            for (int p = lifted; p >= 0; ) {
                int following = next[p];
                place(p, u);
                p = following;
            }
            join(v, u);
            out[v] = -1;
        }

        /** Puts a lifted point into that triangle of the fan about ring vertex u in which it lies, or nearly. */
        private void place(int p, int u) {
            double x = w0[p], y = w1[p], best = Double.NEGATIVE_INFINITY, bestU = 0, bestI = 0;
            int sector = -1;
            for (int s = 0; s < sectors() && best < 0; s++) {
                int i = s, j = after(s);
                if (i == u || j == u) continue;
                double ix = px[i] - px[u], iy = py[i] - py[u], jx = px[j] - px[u], jy = py[j] - py[u], dx = x - px[u], dy = y - py[u];
                double area = ix * jy - iy * jx, wi = (dx * jy - dy * jx) / area, wj = (ix * dy - iy * dx) / area;
                double least = Math.min(1 - wi - wj, Math.min(wi, wj));
                if (least > best) {
                    best = least;
                    sector = s;
                    bestU = 1 - wi - wj;
                    bestI = wi;
                }
            }
            int t = spoke[sector] / 3, k = spoke[sector] % 3;                  // corner k becomes u, k+1 is i, k+2 is j
            double bestJ = 1 - bestU - bestI;
            w0[p] = k == 0 ? bestU : k == 1 ? bestJ : bestI;
            w1[p] = k == 0 ? bestI : k == 1 ? bestU : bestJ;
            host[p] = t;
            next[p] = first[t];
            first[t] = p;
        }

        private void join(int v, int u) {
            int to = ring[u];
            for (int s = 0; s < sectors(); s++) tri[spoke[s]] = to;
            for (int s = 0; s < sectors(); s++) {
                if (s != u && after(s) != u) continue;
                int h = spoke[s], far = twin[following(h)];
                int side = s == u ? twin[before(h)] : twin[h];                 // across the side that v and the third vertex share
                int third = s == u ? tri[before(h)] : tri[following(h)];
                if (far >= 0) twin[far] = side;
                if (side >= 0) twin[side] = far;
                // of the two that now face each other one leaves u, the other the third vertex; if there is one only, what follows it does
                int a = far >= 0 ? far : side, b = far >= 0 && side >= 0 ? side : following(a);
                out[tri[a]] = a;
                out[tri[b]] = b;
                if (out[to] < 0 || out[third] < 0) throw new AssertionError("vertex " + third + " or " + to + " lost its triangles");
                int t = h / 3;
                tri[3 * t] = tri[3 * t + 1] = tri[3 * t + 2] = -1;
            }
        }
    }

    private void collect() {
        int n = out.length, left = 0;
        int[] number = new int[n];
        for (int v = 0; v < n; v++) if (out[v] >= 0) number[v] = left++;
        vertexOf = new int[left];
        double[] places = new double[3 * left];
        parent = new int[3 * n];
        weight = new double[3 * n];
        for (int v = 0; v < n; v++) {
            if (out[v] >= 0) {
                int c = number[v];
                vertexOf[c] = v;
                System.arraycopy(xyz, 3 * v, places, 3 * c, 3);
                Arrays.fill(parent, 3 * v, 3 * v + 3, c);
                weight[3 * v] = 1;
            } else {
                for (int k = 0; k < 3; k++) parent[3 * v + k] = number[tri[3 * host[v] + k]];
                weight[3 * v] = w0[v];
                weight[3 * v + 1] = w1[v];
                weight[3 * v + 2] = 1 - w0[v] - w1[v];
            }
        }
        int[] corners = new int[tri.length], numberOf = new int[tri.length / 3];
        int m = 0;
        for (int t = 0; t < tri.length; t += 3) {
            if (tri[t] < 0) continue;
            numberOf[t / 3] = m / 3;
            for (int k = 0; k < 3; k++) corners[m++] = number[tri[t + k]];
        }
        triangleOf = new int[tri.length / 3];
        for (int t = 0; t < triangleOf.length; t++) triangleOf[t] = tri[3 * t] >= 0 ? numberOf[t] : numberOf[hostOf(t)];
        mesh = TriMesh.of(places, Arrays.copyOf(corners, m));
    }

    private int hostOf(int t) {
        for (int k = 0; k < 3; k++) {
            int v = fine.corner(t, k);
            if (out[v] < 0) return host[v];
        }
        return out[fine.corner(t, 0)] / 3;
    }
}
