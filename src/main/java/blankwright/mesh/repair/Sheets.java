package blankwright.mesh.repair;

import java.util.Arrays;

/**
 * Decides which triangles hang together across each edge, turns them the same way and parts what cannot be one surface.
 *
 * <p>1. An edge of two triangles joins them; one of more joins the smoothest pair, then the next of what is left; the rest are parted.
 * 2. From the lowest triangle of each part on, breadth first, every triangle is turned to agree with the one it was reached from; where
 * two then disagree the strip has one side only and is cut along that edge. A part keeps the direction of most of its area.
 * 3. Corners joined across edges become one vertex; a vertex whose triangles fall into several fans becomes several. 4. Where two fans
 * still meet along an edge they are parted at its lower vertex too.
 * <p>No choice depends on the triangles' directions, so the result of a result is itself.
 */
final class Sheets {
    private static final int MOST_PAIRED = 32;      // triangles on one edge; pairs grow as the square

    private final double[] xyz;
    private final int[] tri;
    private final int corners;
    private final int[] partner;            // half-edge joined across the edge, or -1
    private int[] queue;

    int nonManifoldEdges;
    int[] firstNonManifoldEdge;             // its two ends
    int firstNonManifoldSize;               // its triangles
    int turned;
    int firstTurned = -1;
    int cutEdges;
    int[] firstCut;
    int nonManifoldVertices;
    int firstNonManifoldVertex = -1;
    int[] vertexOf;                         // corner -> vertex of the result
    int[] origin;                           // vertex of the result -> vertex before

    /** Turns triangles in {@code tri}, whose corners are all different and none of which occurs twice. */
    Sheets(double[] xyz, int[] tri) {
        this.xyz = xyz;
        this.tri = tri;
        this.corners = tri.length;
        this.partner = new int[corners];
        int n = xyz.length / 3;
        boolean[] explained = new boolean[n];       // vertices of edges that were parted
        join(new EdgeGroups(n, tri, corners), explained);
        turn(explained);
        number(n, explained);
    }

    private void join(EdgeGroups edges, boolean[] explained) {
        Arrays.fill(partner, -1);
        for (int e = 0; e < edges.count(); e++) {
            int size = edges.size(e);
            if (size == 2) pair(edges.half(e, 0), edges.half(e, 1));
            if (size <= 2) continue;
            int h = edges.half(e, 0), a = tri[h], b = tri[EdgeGroups.next(h)];
            explained[a] = true;
            explained[b] = true;
            if (nonManifoldEdges++ == 0) {
                firstNonManifoldEdge = new int[] {a, b};
                firstNonManifoldSize = size;
            }
            if (size <= MOST_PAIRED) pairSmoothest(edges, e, Math.min(a, b), Math.max(a, b));
        }
    }

    private void pair(int g, int h) {
        partner[g] = h;
        partner[h] = g;
    }

    private void pairSmoothest(EdgeGroups edges, int e, int a, int b) {
        int size = edges.size(e);
        double[][] away = new double[size][];
        boolean[] taken = new boolean[size];
        for (int i = 0; i < size; i++) away[i] = away(a, b, tri[opposite(edges.half(e, i))]);
        for (int left = size; left >= 2; left -= 2) {
            int bestI = -1, bestJ = -1;
            double best = Double.POSITIVE_INFINITY;
            for (int i = 0; i < size; i++) {
                for (int j = i + 1; j < size && !taken[i]; j++) {
                    if (taken[j]) continue;
                    double cos = away[i][0] * away[j][0] + away[i][1] * away[j][1] + away[i][2] * away[j][2];
                    if (cos < best) {
                        best = cos;
                        bestI = i;
                        bestJ = j;
                    }
                }
            }
            if (bestI < 0) return;
            taken[bestI] = true;
            taken[bestJ] = true;
            pair(edges.half(e, bestI), edges.half(e, bestJ));
        }
    }

    private static int opposite(int half) {
        return EdgeGroups.next(EdgeGroups.next(half));
    }

    /** Unit vector from the edge a-b to c, square to the edge. */
    private double[] away(int a, int b, int c) {
        double[] u = new double[3], w = new double[3];
        double uu = 0, uw = 0;
        for (int k = 0; k < 3; k++) {
            u[k] = xyz[3 * b + k] - xyz[3 * a + k];
            w[k] = xyz[3 * c + k] - xyz[3 * a + k];
            uu += u[k] * u[k];
            uw += u[k] * w[k];
        }
        double length = 0;
        for (int k = 0; k < 3; k++) {
            w[k] -= uw / uu * u[k];
            length += w[k] * w[k];
        }
        length = Math.sqrt(length);
        for (int k = 0; k < 3; k++) w[k] = length > 0 ? w[k] / length : 0;
        return w;
    }

    private void turn(boolean[] explained) {
        int m = corners / 3;
        byte[] way = new byte[m];               // 0 unseen, 1 as given, -1 turned
        queue = new int[m];
        int[] beside = new int[3];
        for (int seed = 0; seed < m; seed++) {
            if (way[seed] != 0) continue;
            way[seed] = 1;
            int head = 0, tail = 0;
            queue[tail++] = seed;
            double kept = 0, other = 0;
            while (head < tail) {
                int t = queue[head++];
                double area = area(t);
                if (way[t] > 0) kept += area;
                else other += area;
                int many = halvesByNeighbour(t, beside);
                for (int i = 0; i < many; i++) {
                    int h = beside[i], g = partner[h], s = g / 3;
                    boolean sameWay = tri[h] == tri[g];
                    byte wanted = (byte) (sameWay ? -way[t] : way[t]);
                    if (way[s] == 0) {
                        way[s] = wanted;
                        queue[tail++] = s;
                    } else if (way[s] != wanted) {
                        int a = tri[h], b = tri[EdgeGroups.next(h)];
                        if (cutEdges++ == 0) firstCut = new int[] {a, b};
                        explained[a] = true;
                        explained[b] = true;
                        partner[h] = -1;
                        partner[g] = -1;
                    }
                }
            }
            if (other > kept) for (int i = 0; i < tail; i++) way[queue[i]] = (byte) -way[queue[i]];
        }
        for (int t = 0; t < m; t++) {
            if (way[t] > 0) continue;
            if (turned++ == 0) firstTurned = t;
            int c = tri[3 * t + 1];             // a b c becomes a c b: edge k becomes edge 2 - k
            tri[3 * t + 1] = tri[3 * t + 2];
            tri[3 * t + 2] = c;
            int p = partner[3 * t];
            partner[3 * t] = partner[3 * t + 2];
            partner[3 * t + 2] = p;
        }
        for (int h = 0; h < corners; h++) {
            int g = partner[h];
            if (g >= 0 && way[g / 3] < 0) partner[h] = g / 3 * 3 + 2 - g % 3;
        }
    }

    /** Joined half-edges of t, those to the lowest neighbour first: an order that does not change when t is turned. */
    private int halvesByNeighbour(int t, int[] into) {
        int many = 0;
        for (int h = 3 * t; h < 3 * t + 3; h++) {
            if (partner[h] < 0) continue;
            int i = many++;
            for (; i > 0 && partner[into[i - 1]] / 3 > partner[h] / 3; i--) into[i] = into[i - 1];
            into[i] = h;
        }
        return many;
    }

    private double area(int t) {
        int a = 3 * tri[3 * t], b = 3 * tri[3 * t + 1], c = 3 * tri[3 * t + 2];
        double ux = xyz[b] - xyz[a], uy = xyz[b + 1] - xyz[a + 1], uz = xyz[b + 2] - xyz[a + 2];
        double vx = xyz[c] - xyz[a], vy = xyz[c + 1] - xyz[a + 1], vz = xyz[c + 2] - xyz[a + 2];
        double nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
        return Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
    }

    private void number(int n, boolean[] explained) {
        vertexOf = new int[corners];
        for (int round = 0; ; round++) {
            int count = numberFans(n);
            if (!partFansThatMeet(count, round)) break;
        }
        boolean[] counted = new boolean[n];
        for (int v = n; v < origin.length; v++) {
            int o = origin[v];
            if (explained[o] || counted[o]) continue;
            counted[o] = true;
            nonManifoldVertices++;
            if (firstNonManifoldVertex < 0 || o < firstNonManifoldVertex) firstNonManifoldVertex = o;
        }
    }

    /** The first fan of a vertex keeps its number, the others get new ones from n on; returns how many there are. */
    private int numberFans(int n) {
        Partition fans = new Partition(corners);
        for (int h = 0; h < corners; h++) {
            int g = partner[h];
            if (g <= h) continue;
            fans.unite(h, EdgeGroups.next(g));
            fans.unite(EdgeGroups.next(h), g);
        }
        boolean[] taken = new boolean[n];
        int[] of = new int[corners];
        origin = new int[n + 64];
        for (int v = 0; v < n; v++) origin[v] = v;
        int count = n;
        for (int h = 0; h < corners; h++) {
            int r = fans.lowest(h);
            if (r == h) {                       // roots are the lowest of their fan
                int v = tri[h];
                if (!taken[v]) {
                    taken[v] = true;
                    of[h] = v;
                } else {
                    if (count == origin.length) origin = Arrays.copyOf(origin, count + (count >> 1));
                    origin[count] = v;
                    of[h] = count++;
                }
            }
            vertexOf[h] = of[r];
        }
        origin = Arrays.copyOf(origin, count);
        return count;
    }

    /** Parts triangles that would be one too many on an edge of the result; true where there were any. */
    private boolean partFansThatMeet(int count, int round) {
        EdgeGroups edges = new EdgeGroups(count, vertexOf, corners);
        boolean any = false;
        for (int e = 0; e < edges.count(); e++) {
            int size = edges.size(e);
            if (size == 1) continue;
            int g = edges.half(e, 0), h = edges.half(e, 1);
            if (size == 2 && vertexOf[g] != vertexOf[h]) continue;      // one way each: a proper edge, joined or not
            int keep = g;
            for (int i = size - 1; i >= 0; i--) if (partner[edges.half(e, i)] >= 0) keep = edges.half(e, i);
            int low = Math.min(vertexOf[g], vertexOf[EdgeGroups.next(g)]);
            for (int i = 0; i < size; i++) {
                int half = edges.half(e, i);
                if (half == keep || half == partner[keep]) continue;
                any = true;
                int other = vertexOf[half] == low ? opposite(half) : EdgeGroups.next(half);     // the triangle's other edge at low
                part(other);
                if (round >= 4) {                                       // never seen; an island can meet nobody
                    part(half);
                    part(vertexOf[half] == low ? EdgeGroups.next(half) : opposite(half));
                }
            }
        }
        return any;
    }

    private void part(int half) {
        int g = partner[half];
        if (g >= 0) partner[g] = -1;
        partner[half] = -1;
    }
}
