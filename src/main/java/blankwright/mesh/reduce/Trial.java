package blankwright.mesh.reduce;

import java.util.Arrays;

/**
 * Tries one collapse against all that must be kept, and does it where all is.
 *
 * <ol><li>Topology: the ends of the edge have no common neighbours but the corners opposite, and those keep edges enough (the link condition).
 * <li>No triangle turns by more than {@value #TURN} in cosine, and none becomes slimmer than {@value #SLIM}, height over longest edge, unless one
 * round it was slimmer before.
 * <li>Given vertices: each belongs to a triangle; those of the triangles that change stay within the distance of the triangles that come.
 * <li>Rim: the given rim vertices between the ends of each new rim edge stay within the distance of that edge.</ol>
 */
final class Trial {
    static final double TURN = 0.2;
    static final double SLIM = 0.1;

    private static final int MOST_ROUND = 400;      // triangles in one fan: beyond, collapses would cost the square

    private final Fans fans;
    private final double[] xyz;         // of the vertices now
    private final double[] given;       // of the vertices as given
    private final double within2;
    private final double near2;         // at this distance a given vertex looks no further
    private final int[] firstOf;        // triangle -> a given vertex that belongs to it, -1 none
    private final int[] nextOf;         // given vertex -> the next of the same triangle
    private final RimRuns runs;
    private final int[] stamp;          // vertex -> round in which it was met
    private int round;

    private int[] touched = new int[64];        // triangles that change or go
    private int[] coming = new int[64];         // of them those that stay
    private double[] corner = new double[16 * 64];      // 16 per coming triangle: corner, two edges, normal, squares
    private int[] point = new int[256];
    private int[] home = new int[256];

    Trial(Fans fans, double[] xyz, double[] given, double within, RimRuns runs) {
        this.fans = fans;
        this.xyz = xyz;
        this.given = given;
        this.within2 = within * within;
        this.near2 = within2 / 100;
        this.runs = runs;
        stamp = new int[given.length / 3];
        firstOf = new int[fans.tri.length / 3];
        nextOf = new int[stamp.length];
        Arrays.fill(firstOf, -1);
        for (int v = 0; v < stamp.length; v++) {
            int t = fans.way[v] / 3;
            nextOf[v] = firstOf[t];
            firstOf[t] = v;
        }
    }

    /** Makes v and the other end of half-edge h one vertex, {@code keep}, at the place; false, and nothing done, where something would be lost. */
    boolean collapsed(int h, int keep, double[] place) {
        int a = fans.tri[h], b = fans.tri[Fans.next(h)], g = fans.twin[h], gone = keep == a ? b : a;
        if (!keepsTopology(a, b, h, g)) return false;
        if (g < 0 && !runs.keeps(fans.rimBefore(gone), gone, fans.rimAfter(gone), given, within2)) return false;
        int many = gather(a, b, h / 3, g < 0 ? -1 : g / 3);
        int stay = many - (g < 0 ? 1 : 2);
        if (!keepsShape(stay, a, b, place)) return false;
        int points = homes(many, stay);
        if (points < 0) return false;
        for (int i = 0; i < many; i++) firstOf[touched[i]] = -1;
        for (int i = 0; i < points; i++) {
            nextOf[point[i]] = firstOf[home[i]];
            firstOf[home[i]] = point[i];
        }
        fans.collapse(h, keep);
        System.arraycopy(place, 0, xyz, 3 * keep, 3);
        return true;
    }

    private boolean keepsTopology(int a, int b, int h, int g) {
        if (g >= 0 && fans.rim[a] && fans.rim[b]) return false;
        int c = fans.tri[Fans.before(h)], d = g < 0 ? -1 : fans.tri[Fans.before(g)];
        if (c == d || spent(c) || d >= 0 && spent(d)) return false;
        round += 2;
        int near = round - 1, common = 0, size = 0;
        for (int i = fans.way[a]; i >= 0; i = fans.left(i, a)) {
            if (++size > MOST_ROUND) return false;
            stamp[fans.tri[Fans.next(i)]] = near;
            stamp[fans.tri[Fans.before(i)]] = near;
        }
        for (int i = fans.way[b]; i >= 0; i = fans.left(i, b)) {
            if (++size > MOST_ROUND) return false;
            for (int v : new int[] {fans.tri[Fans.next(i)], fans.tri[Fans.before(i)]}) {
                if (stamp[v] != near) continue;
                stamp[v] = round;
                common++;
            }
        }
        return common == (g < 0 ? 1 : 2);
    }

    /** Has no edge to spare: two at a rim, three within. */
    private boolean spent(int c) {
        int triangles = 0, most = fans.rim[c] ? 1 : 3;
        for (int i = fans.way[c]; i >= 0 && triangles <= most; i = fans.left(i, c)) triangles++;
        return triangles <= most;
    }

    /** The triangles round both ends, those that stay first. */
    private int gather(int a, int b, int s, int t) {
        int many = 0;
        for (int v : new int[] {a, b}) {
            for (int i = fans.way[v]; i >= 0; i = fans.left(i, v)) {
                int u = i / 3;
                if (u == s || u == t) continue;
                if (many + 2 >= touched.length) grow();
                touched[many++] = u;
            }
        }
        touched[many++] = s;
        if (t >= 0) touched[many++] = t;
        return many;
    }

    private void grow() {
        touched = Arrays.copyOf(touched, 2 * touched.length);
        corner = Arrays.copyOf(corner, 2 * corner.length);
    }

    private boolean keepsShape(int stay, int a, int b, double[] place) {
        double slimmest = SLIM;
        for (int i = 0; i < stay; i++) {
            int t = 3 * touched[i];
            frame(i, t, -1, -1, place);
            double before = slimness(i);
            double nx = corner[16 * i + 9], ny = corner[16 * i + 10], nz = corner[16 * i + 11], n2 = corner[16 * i + 12];
            frame(i, t, a, b, place);
            double m2 = corner[16 * i + 12], dot = nx * corner[16 * i + 9] + ny * corner[16 * i + 10] + nz * corner[16 * i + 11];
            if (before > 1e-6 && !(dot > TURN * Math.sqrt(n2 * m2))) return false;
            slimmest = Math.min(slimmest, before);
        }
        for (int i = 0; i < stay; i++) if (!(slimness(i) >= slimmest) || !(corner[16 * i + 12] > 0)) return false;
        return true;
    }

    /** Corner, edges to the two others, normal (not of unit length), its square, and the squares and product of the edges. */
    private void frame(int i, int t, int a, int b, double[] place) {
        int at = 16 * i;
        for (int k = 0; k < 3; k++) {
            int v = fans.tri[t + k];
            boolean moved = v == a || v == b;
            for (int j = 0; j < 3; j++) {
                double p = moved ? place[j] : xyz[3 * v + j];
                corner[at + 3 * k + j] = k == 0 ? p : p - corner[at + j];
            }
        }
        double ux = corner[at + 3], uy = corner[at + 4], uz = corner[at + 5], vx = corner[at + 6], vy = corner[at + 7], vz = corner[at + 8];
        double nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
        corner[at + 9] = nx;
        corner[at + 10] = ny;
        corner[at + 11] = nz;
        corner[at + 12] = nx * nx + ny * ny + nz * nz;
        corner[at + 13] = ux * ux + uy * uy + uz * uz;
        corner[at + 14] = ux * vx + uy * vy + uz * vz;
        corner[at + 15] = vx * vx + vy * vy + vz * vz;
    }

    /** Height over longest edge. */
    private double slimness(int i) {
        double uu = corner[16 * i + 13], uv = corner[16 * i + 14], vv = corner[16 * i + 15], longest = Math.max(Math.max(uu, vv), uu + vv - 2 * uv);
        return longest > 0 ? Math.sqrt(corner[16 * i + 12]) / longest : 0;
    }

    /** Finds each given vertex of the touched triangles its nearest of those that stay; -1 where one is too far from all. */
    private int homes(int many, int stay) {
        int points = 0;
        for (int i = 0; i < many; i++) {
            for (int p = firstOf[touched[i]]; p >= 0; p = nextOf[p]) {
                double best = Double.POSITIVE_INFINITY;
                int nearest = -1;
                for (int j = 0; j < stay && best > near2; j++) {
                    double off = distance2(j, given[3 * p], given[3 * p + 1], given[3 * p + 2], best);
                    if (off >= best) continue;
                    best = off;
                    nearest = j;
                }
                if (!(best <= within2)) return -1;
                if (points == point.length) {
                    point = Arrays.copyOf(point, 2 * points);
                    home = Arrays.copyOf(home, 2 * points);
                }
                point[points] = p;
                home[points++] = touched[nearest];
            }
        }
        return points;
    }

    /**
     * Squared distance of a point from coming triangle j, or any number from {@code best} on where it is not below that. Where the point's
     * shadow lies beyond one side of the triangle only, the nearest place is on that side; beyond two, on one of the two.
     */
    private double distance2(int j, double x, double y, double z, double best) {
        int at = 16 * j;
        double px = x - corner[at], py = y - corner[at + 1], pz = z - corner[at + 2], nn = corner[at + 12];
        double up = px * corner[at + 9] + py * corner[at + 10] + pz * corner[at + 11], plane = up * up / nn;
        if (plane >= best) return plane;
        double uu = corner[at + 13], uv = corner[at + 14], vv = corner[at + 15], pp = px * px + py * py + pz * pz;
        double pu = px * corner[at + 3] + py * corner[at + 4] + pz * corner[at + 5], pv = px * corner[at + 6] + py * corner[at + 7] + pz * corner[at + 8];
        double s = (vv * pu - uv * pv) / nn, t = (uu * pv - uv * pu) / nn;
        if (s >= 0 && t >= 0 && s + t <= 1) return plane;
        double least = Double.POSITIVE_INFINITY;
        if (t < 0) least = side(pp, pu, uu);
        if (s < 0) least = Math.min(least, side(pp, pv, vv));
        if (s + t > 1) least = Math.min(least, side(pp - 2 * pu + uu, pv - pu - uv + uu, uu + vv - 2 * uv));
        return least;
    }

    /** Squared distance from a side with square {@code ee}; the point is {@code pp} from its begin, squared, and has {@code pe} along it. */
    static double side(double pp, double pe, double ee) {
        if (pe <= 0) return Math.max(0, pp);
        return Math.max(0, pe >= ee ? pp - 2 * pe + ee : pp - pe * pe / ee);
    }
}
