package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;

/** Weights of a point of the blank in one of its triangles. */
final class Barycentre {
    private Barycentre() { }

    /** Weights of the corners of triangle t that give (u, v); a third each where the triangle has no area. */
    static double[] of(FlatMap map, int t, double u, double v) {
        TriMesh form = map.form();
        int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
        double bu = map.u(b) - map.u(a), bv = map.v(b) - map.v(a), cu = map.u(c) - map.u(a), cv = map.v(c) - map.v(a);
        double det = bu * cv - cu * bv, pu = u - map.u(a), pv = v - map.v(a);
        double wb = (pu * cv - cu * pv) / det, wc = (bu * pv - pu * bv) / det;
        if (!Double.isFinite(wb) || !Double.isFinite(wc)) return new double[] {1.0 / 3, 1.0 / 3, 1.0 / 3};
        return new double[] {1 - wb - wc, wb, wc};
    }

    /** Whether (u, v) lies in triangle t or on its border, by the signs of three areas. */
    static boolean holds(FlatMap map, int t, double u, double v) {
        TriMesh form = map.form();
        boolean left = true, right = true;
        for (int k = 0; k < 3; k++) {
            int a = form.corner(t, k), b = form.corner(t, (k + 1) % 3);
            double side = (map.u(b) - map.u(a)) * (v - map.v(a)) - (u - map.u(a)) * (map.v(b) - map.v(a));
            left &= side >= 0;
            right &= side <= 0;
        }
        return left != right;
    }
}
