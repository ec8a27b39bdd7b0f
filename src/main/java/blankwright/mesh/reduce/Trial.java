package blankwright.mesh.reduce;

import blankwright.mesh.TriMesh;
import java.util.Arrays;

/**
 * Tries one collapse against all that must be kept, and does it where all is.
 *
 * <ol><li>Topology: the ends of the edge have no common neighbours but the corners opposite, and those keep edges enough (the link condition).
 * <li>No triangle turns by more than {@value #TURN} in cosine, and none becomes slimmer than {@value #SLIM}, height over longest edge, unless one
 * round it was slimmer before.
 * <li>Given vertices: each belongs to a triangle; those of the triangles that change stay within the distance of the triangles that come.
 * <li>The new vertex: within the distance of the given triangle nearest to it, as far as the given vertices tell.
 * <li>Rim: the given rim vertices between the ends of each new rim edge stay within the distance of that edge.</ol>
 */
final class Trial {
    static final double TURN = 0.2;
    static final double SLIM = 0.1;

    /** Of the distance, squared, by which a place may stand out: only one triangle is asked, and curved ground lies lower than its plane. */
    private static final double STANDING = 0.8;
    private static final int MOST_ROUND = 400;      // triangles in one fan: beyond, collapses would cost the square

    /**
     * What all trials know and change.
     *
     * @param given the surface as given; vertices keep their numbers
     * @param xyz of the vertices now, 3 each, mm
     * @param within2 the distance allowed, squared, mm²
     * @param triangleAt given vertex -> a given triangle that has it
     * @param firstOf triangle -> a given vertex that belongs to it, -1 none
     * @param nextOf given vertex -> the next of the same triangle, -1 none
     */
    record Ground(Fans fans, TriMesh given, RimRuns runs, double[] xyz, double within2, int[] triangleAt, int[] firstOf, int[] nextOf) {
        static Ground of(Fans fans, TriMesh given, RimRuns runs, double within) {
            int[] triangleAt = new int[fans.way.length], firstOf = new int[fans.tri.length / 3], nextOf = new int[triangleAt.length];
            Arrays.fill(firstOf, -1);
            for (int v = 0; v < nextOf.length; v++) {
                int t = fans.way[v] / 3;
                triangleAt[v] = t;
                nextOf[v] = firstOf[t];
                firstOf[t] = v;
            }
            return new Ground(fans, given, runs, given.positions(), within * within, triangleAt, firstOf, nextOf);
        }
    }

    private final Ground ground;
    private final Fans fans;
    private final double[] xyz;
    private final double within2;
    private final double near2;         // at this distance a given vertex looks no further
    private final int[] firstOf;
    private final int[] nextOf;

    private int[] ring = new int[64];           // neighbours of one end
    private int[] touched = new int[64];        // triangles that change or go
    private double[] corner = new double[16 * 64];      // 16 per coming triangle: corner, two edges, normal, squares
    private int[] point = new int[256];
    private int[] home = new int[256];

    Trial(Ground ground) {
        this.ground = ground;
        fans = ground.fans();
        xyz = ground.xyz();
        within2 = ground.within2();
        near2 = within2 / 100;
        firstOf = ground.firstOf();
        nextOf = ground.nextOf();
    }

    /**
     * Makes v and the other end of half-edge h one vertex, {@code keep}, at the place.
     *
     * @param standsOut whether the place may lie too far from the given surface
     * @return how many triangles went; 0, and nothing done, where something would be lost
     */
    int collapsed(int h, int keep, double[] place, boolean standsOut) {
        int a = fans.tri[h], b = fans.tri[Fans.next(h)], g = fans.twin[h], gone = keep == a ? b : a;
        if (!keepsTopology(a, b, h, g)) return 0;
        if (g < 0 && !ground.runs().keeps(fans.rimBefore(gone), gone, fans.rimAfter(gone), ground.given(), within2)) return 0;
        int many = gather(a, b, h / 3, g < 0 ? -1 : g / 3), went = g < 0 ? 1 : 2, stay = many - went;
        if (!keepsShape(stay, a, b, place)) return 0;
        int points = homes(many, stay);
        if (points < 0 || standsOut && !lies(place, points)) return 0;
        for (int i = 0; i < many; i++) firstOf[touched[i]] = -1;
        for (int i = 0; i < points; i++) {
            nextOf[point[i]] = firstOf[home[i]];
            firstOf[home[i]] = point[i];
        }
        fans.collapse(h, keep);
        System.arraycopy(place, 0, xyz, 3 * keep, 3);
        return went;
    }

    private boolean keepsTopology(int a, int b, int h, int g) {
        if (g >= 0 && fans.rim[a] && fans.rim[b]) return false;         // the panel would hang together in a point there
        int c = fans.tri[Fans.before(h)], d = g < 0 ? -1 : fans.tri[Fans.before(g)];
        if (c == d || spent(c) || d >= 0 && spent(d)) return false;
        int size = 0, common = 0, round = 0;
        for (int i = fans.way[a]; i >= 0; i = fans.left(i, a)) {
            if (++round > MOST_ROUND) return false;
            if (size + 2 > ring.length) ring = Arrays.copyOf(ring, 2 * ring.length);
            ring[size++] = fans.tri[Fans.next(i)];
            if (fans.twin[Fans.before(i)] < 0) ring[size++] = fans.tri[Fans.before(i)];
        }
        for (int i = fans.way[b]; i >= 0; i = fans.left(i, b)) {
            if (++round > MOST_ROUND) return false;
            common += times(fans.tri[Fans.next(i)], size);
            if (fans.twin[Fans.before(i)] < 0) common += times(fans.tri[Fans.before(i)], size);
        }
        return common == (g < 0 ? 1 : 2);
    }

    private int times(int v, int size) {
        for (int i = 0; i < size; i++) if (ring[i] == v) return 1;
        return 0;
    }

    /**
     * Has no edge to spare: three within the surface, as the corners of a tetrahedron, which the link condition lets fall flat. A rim corner with
     * two needs no asking: its triangle stands alone and has nowhere to go, or the edge opposite joins two rim vertices.
     */
    private boolean spent(int c) {
        int triangles = 0;
        for (int i = fans.way[c]; i >= 0 && triangles <= 3; i = fans.left(i, c)) triangles++;
        return triangles <= 3 && !fans.rim[c];
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

    /** Finds each given vertex of the touched triangles one near it of those that stay, its own if that is near; -1 where one is too far from all. */
    private int homes(int many, int stay) {
        TriMesh given = ground.given();
        int points = 0;
        for (int i = 0; i < many; i++) {
            for (int p = firstOf[touched[i]]; p >= 0; p = nextOf[p]) {
                double x = given.x(p), y = given.y(p), z = given.z(p), best = i < stay ? distance2(i, x, y, z, Double.POSITIVE_INFINITY) : Double.POSITIVE_INFINITY;
                int nearest = i;
                for (int j = 0; j < stay && best > near2; j++) {
                    double off = distance2(j, x, y, z, best);
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

    /** Whether the place lies well within the distance of a given triangle at the given vertex nearest to it. */
    private boolean lies(double[] place, int points) {
        TriMesh given = ground.given();
        double best = Double.POSITIVE_INFINITY;
        int nearest = -1;
        for (int i = 0; i < points; i++) {
            double x = given.x(point[i]) - place[0], y = given.y(point[i]) - place[1], z = given.z(point[i]) - place[2], off = x * x + y * y + z * z;
            if (off >= best) continue;
            best = off;
            nearest = point[i];
        }
        if (nearest < 0) return false;
        if (best <= within2) return true;
        double[] n = given.normal(ground.triangleAt()[nearest]);
        double off = n[0] * (given.x(nearest) - place[0]) + n[1] * (given.y(nearest) - place[1]) + n[2] * (given.z(nearest) - place[2]);
        return off * off <= STANDING * within2;
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
