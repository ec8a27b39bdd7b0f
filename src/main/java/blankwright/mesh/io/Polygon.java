package blankwright.mesh.io;

import blankwright.num.Orientation;

/**
 * Cuts faces of more than three corners into triangles that keep their direction.
 *
 * <p>1. The plane that fits best: its normal by Newell's sum over the edges. 2. A four-cornered face is cut along the shorter diagonal
 * that lies inside. 3. A convex one becomes a fan. 4. Any other loses ears one by one. An outline that crosses itself has no ears left
 * at some point; its next corner is then cut off as it is. All ear searches of one file share a budget, so no face can hang us.
 */
final class Polygon {
    private final double[] xyz;
    private long budget = 200_000_000;      // corners looked at; about a second
    private double[] u = new double[16];
    private double[] v = new double[16];
    private int[] ring = new int[16];

    Polygon(double[] xyz) {
        this.xyz = xyz;
    }

    /** Adds n - 2 triangles; false where the cut is rough. Corners corner[from..to-1] are vertices with sound coordinates. */
    boolean cut(IntRow corner, int from, int to, IntRow triangles) {
        int n = to - from;
        flatten(corner, from, n);
        if (n == 4) {
            cutFour(corner, from, triangles);
            return true;
        }
        if (convex(n)) {
            for (int i = 1; i + 1 < n; i++) add(triangles, corner, from, 0, i, i + 1);
            return true;
        }
        return cutEars(corner, from, n, triangles);
    }

    private static void add(IntRow triangles, IntRow corner, int from, int a, int b, int c) {
        triangles.add(corner.get(from + a));
        triangles.add(corner.get(from + b));
        triangles.add(corner.get(from + c));
    }

    private void flatten(IntRow corner, int from, int n) {
        if (u.length < n) {
            u = new double[n];
            v = new double[n];
            ring = new int[n];
        }
        double nx = 0, ny = 0, nz = 0;
        int o = 3 * corner.get(from);
        for (int i = 0; i < n; i++) {
            int p = 3 * corner.get(from + i), q = 3 * corner.get(from + (i + 1) % n);
            double px = xyz[p] - xyz[o], py = xyz[p + 1] - xyz[o + 1], pz = xyz[p + 2] - xyz[o + 2];
            double qx = xyz[q] - xyz[o], qy = xyz[q + 1] - xyz[o + 1], qz = xyz[q + 2] - xyz[o + 2];
            nx += py * qz - pz * qy;
            ny += pz * qx - px * qz;
            nz += px * qy - py * qx;
        }
        double ax = Math.abs(nx), ay = Math.abs(ny), az = Math.abs(nz);
        double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
        if (length > 0) {
            nx /= length;
            ny /= length;
            nz /= length;
        } else {
            nz = 1;
            az = 1;
        }
        double ex = 0, ey = 0, ez = 0;          // the axis most across the normal, made square to it
        if (ax <= ay && ax <= az) ex = 1;
        else if (ay <= az) ey = 1;
        else ez = 1;
        double along = ex * nx + ey * ny + ez * nz;
        ex -= along * nx;
        ey -= along * ny;
        ez -= along * nz;
        double fx = ny * ez - nz * ey, fy = nz * ex - nx * ez, fz = nx * ey - ny * ex;
        for (int i = 0; i < n; i++) {
            int p = 3 * corner.get(from + i);
            double x = xyz[p] - xyz[o], y = xyz[p + 1] - xyz[o + 1], z = xyz[p + 2] - xyz[o + 2];
            u[i] = x * ex + y * ey + z * ez;
            v[i] = x * fx + y * fy + z * fz;
        }
    }

    private int turn(int a, int b, int c) {
        return Orientation.sign(u[a], v[a], u[b], v[b], u[c], v[c]);
    }

    private void cutFour(IntRow corner, int from, IntRow triangles) {
        boolean first = turn(0, 1, 2) > 0 && turn(0, 2, 3) > 0, second = turn(1, 2, 3) > 0 && turn(1, 3, 0) > 0;
        if (first == second) first = apart(corner, from, 0, 2) <= apart(corner, from, 1, 3);
        if (first) {
            add(triangles, corner, from, 0, 1, 2);
            add(triangles, corner, from, 0, 2, 3);
        } else {
            add(triangles, corner, from, 0, 1, 3);
            add(triangles, corner, from, 1, 2, 3);
        }
    }

    private double apart(IntRow corner, int from, int i, int j) {
        int p = 3 * corner.get(from + i), q = 3 * corner.get(from + j);
        double x = xyz[p] - xyz[q], y = xyz[p + 1] - xyz[q + 1], z = xyz[p + 2] - xyz[q + 2];
        return x * x + y * y + z * z;
    }

    /** Every corner turns left and, seen from the first, all others follow in order: so the outline winds once. */
    private boolean convex(int n) {
        for (int i = 0; i < n; i++) if (turn(i, (i + 1) % n, (i + 2) % n) <= 0) return false;
        for (int i = 1; i + 1 < n; i++) if (turn(0, i, i + 1) <= 0) return false;
        return true;
    }

    private boolean cutEars(IntRow corner, int from, int n, IntRow triangles) {
        for (int i = 0; i < n; i++) ring[i] = i;
        int left = n, at = 0, tried = 0;
        boolean clean = true;
        while (left > 3) {
            int a = ring[(at + left - 1) % left], b = ring[at % left], c = ring[(at + 1) % left];
            boolean ear = tried >= left || budget < 0 || isEar(a, b, c, left);
            if (!ear) {
                at = (at + 1) % left;
                tried++;
                continue;
            }
            if (tried >= left || budget < 0) clean = false;
            add(triangles, corner, from, a, b, c);
            at %= left;
            if (budget < 0) at = left - 1;      // no long moves any more
            System.arraycopy(ring, at + 1, ring, at, left - at - 1);
            left--;
            at = left == 0 ? 0 : at % left;
            tried = 0;
        }
        add(triangles, corner, from, ring[0], ring[1], ring[2]);
        return clean;
    }

    private boolean isEar(int a, int b, int c, int left) {
        budget -= left;
        if (turn(a, b, c) <= 0) return false;
        for (int i = 0; i < left; i++) {
            int p = ring[i];
            if (p == a || p == b || p == c) continue;
            if (same(p, a) || same(p, b) || same(p, c)) continue;       // a bridge to an inner outline passes twice
            if (turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0) return false;
        }
        return true;
    }

    private boolean same(int p, int q) {
        return u[p] == u[q] && v[p] == v[q];
    }
}
