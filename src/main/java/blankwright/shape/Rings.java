package blankwright.shape;

import blankwright.mesh.TriMesh;

/**
 * A disc-like skin cut into n rings round its middle, ring k with 6k vertices: 6n² triangles, near equilateral where the skin is a plane.
 *
 * <p>The skin's parameters are u, 0 in the middle to {@code reach} at the rim, and the direction v, 0 to 2π.
 */
final class Rings {
    private Rings() { }

    /** As few rings as the chord allows, or about the wanted count of triangles. */
    static int count(Skin skin, double reach, Fineness fineness) {
        if (fineness.triangles() > 0) return Math.max(1, (int) Math.round(Math.sqrt(fineness.triangles() / 6.0)));
        double n = 12;
        while (true) {
            Grid.check(3 * n * n);
            double worst = worstChord(skin, reach, (int) n);
            if (worst <= fineness.chord()) return (int) n;
            n = Math.max(n + 1, Math.ceil(n * Math.sqrt(worst / fineness.chord()) * 0.99));
        }
    }

    static Sample sample(Skin skin, double reach, int n) {
        int count = 1 + 3 * n * (n + 1);
        double[] xyz = new double[3 * count], uv = new double[2 * count], p = new double[3];
        for (int k = 0, at = 0; k <= n; k++) {
            for (int j = 0; j < Math.max(1, 6 * k); j++, at++) {
                uv[2 * at] = reach * k / n;
                uv[2 * at + 1] = k == 0 ? 0 : Math.PI * j / (3 * k);
                skin.at(uv[2 * at], uv[2 * at + 1], p);
                System.arraycopy(p, 0, xyz, 3 * at, 3);
            }
        }
        return new Sample(TriMesh.of(xyz, corners(n)), uv, null);
    }

    /** Counter-clockwise in the plane of (u cos v, u sin v). */
    static int[] corners(int n) {
        int[] tri = new int[18 * n * n];
        int at = 0;
        for (int k = 1; k <= n; k++) {
            for (int side = 0; side < 6; side++) {
                for (int i = 0; i < k; i++) {
                    tri[at++] = vertex(k - 1, side * (k - 1) + i);
                    tri[at++] = vertex(k, side * k + i);
                    tri[at++] = vertex(k, side * k + i + 1);
                    if (i == k - 1) continue;
                    tri[at++] = vertex(k - 1, side * (k - 1) + i);
                    tri[at++] = vertex(k, side * k + i + 1);
                    tri[at++] = vertex(k - 1, side * (k - 1) + i + 1);
                }
            }
        }
        return tri;
    }

    /** Number of the first vertex of ring k. */
    static int start(int k) {
        return k == 0 ? 0 : 1 + 3 * k * (k - 1);
    }

    /** Largest distance of the skin from the plane of its triangle, mm, at the middles of edges and of triangles. */
    static double worstChord(Skin skin, double reach, int n) {
        Sample sample = sample(skin, reach, n);
        TriMesh mesh = sample.mesh();
        double worst = 0;
        double[] q = new double[3];
        double[][] weights = {{.5, .5, 0}, {0, .5, .5}, {.5, 0, .5}, {1 / 3.0, 1 / 3.0, 1 / 3.0}};
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] normal = mesh.normal(t);
            int a = mesh.corner(t, 0);
            double[] p = {mesh.x(a), mesh.y(a), mesh.z(a)};
            for (double[] w : weights) {
                double x = 0, y = 0;
                for (int k = 0; k < 3; k++) {
                    int v = mesh.corner(t, k);
                    x += w[k] * sample.u(v) * Math.cos(sample.v(v));
                    y += w[k] * sample.u(v) * Math.sin(sample.v(v));
                }
                skin.at(Math.hypot(x, y), Math.atan2(y, x), q);
                worst = Math.max(worst, Grid.off(normal, p, q));
            }
        }
        return worst;
    }

    private static int vertex(int k, int j) {
        return k == 0 ? 0 : start(k) + j % (6 * k);
    }
}
