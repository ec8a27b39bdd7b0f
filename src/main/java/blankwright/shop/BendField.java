package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;

/**
 * How the form is bent, per triangle, told on the blank: the curvature k along which the sheet is bent most, the one across it, and the direction of the
 * ruling, which is square to the bend.
 *
 * <p>Tensor of a triangle = sum over its edges of (dihedral angle · length · ē ēᵀ) / 2 over its area, ē the direction of the edge on the blank; then
 * the mean over a triangle and its neighbours by area, {@link #ROUNDS} times. Its larger eigenvalue in size is the curvature, positive where the outer
 * skin bulges, and its vector is the ruling, for a fold turns about its edge. Exact for the facets of a cylinder. A rim has no fold to count: a
 * triangle at a rim that runs along its neighbour's ruling takes the neighbour's tensor.
 * <p>Source: Cohen-Steiner and Morvan, "Restricted Delaunay triangulations and normal cycle", 2003; docs/sources.md [CM03].
 */
final class BendField {
    private static final int ROUNDS = 5;
    private static final double ALONG = Math.cos(Math.toRadians(30));

    private final FlatMap map;
    private final EdgeTable edges;
    private double[] xx, xy, yy;        // 1/mm, per triangle

    private BendField(FlatMap map, EdgeTable edges) {
        this.map = map;
        this.edges = edges;
    }

    /** @param folds whose turns are left out */
    static BendField of(FlatMap map, EdgeTable edges, Folds folds) {
        BendField field = new BendField(map, edges);
        field.measure(folds);
        field.mendRims();
        for (int i = 0; i < ROUNDS; i++) field.smooth();
        return field;
    }

    private void measure(Folds folds) {
        TriMesh form = map.form();
        int n = form.triangleCount();
        xx = new double[n];
        xy = new double[n];
        yy = new double[n];
        for (int e = 0; e < edges.edgeCount(); e++) {
            int left = edges.left(e), right = edges.right(e);
            if (right < 0 || folds.folded(e)) continue;
            double amount = dihedral(form, edges, e) * edges.length(e) / 2;
            double du = map.u(edges.to(e)) - map.u(edges.from(e)), dv = map.v(edges.to(e)) - map.v(edges.from(e)), d2 = du * du + dv * dv;
            if (!(d2 > 0)) continue;
            for (int t : new int[] {left, right}) {
                xx[t] += amount * du * du / d2;
                xy[t] += amount * du * dv / d2;
                yy[t] += amount * dv * dv / d2;
            }
        }
        for (int t = 0; t < n; t++) {
            double area = form.area(t);
            double by = area > 0 ? 1 / area : 0;
            xx[t] *= by;
            xy[t] *= by;
            yy[t] *= by;
        }
    }

    /** Angle between the normals of both triangles of an edge within, rad, positive where the outer skin bulges. */
    static double dihedral(TriMesh form, EdgeTable edges, int e) {
        double[] p = form.normal(edges.left(e)), q = form.normal(edges.right(e));
        int a = edges.from(e), b = edges.to(e);
        double ex = form.x(b) - form.x(a), ey = form.y(b) - form.y(a), ez = form.z(b) - form.z(a), length = edges.length(e);
        double cx = p[1] * q[2] - p[2] * q[1], cy = p[2] * q[0] - p[0] * q[2], cz = p[0] * q[1] - p[1] * q[0];
        double sin = length > 0 ? (cx * ex + cy * ey + cz * ez) / length : 0, cos = p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
        return Math.atan2(sin, cos);
    }

    private void mendRims() {
        TriMesh form = map.form();
        double[] a = xx.clone(), b = xy.clone(), c = yy.clone();
        for (int t = 0; t < a.length; t++) {
            double rimU = 0, rimV = 0, bestSize = 0;
            int best = -1;
            for (int k = 0; k < 3; k++) {
                int other = edges.neighbour(t, k);
                if (other < 0) {
                    rimU = map.u(form.corner(t, (k + 1) % 3)) - map.u(form.corner(t, k));
                    rimV = map.v(form.corner(t, (k + 1) % 3)) - map.v(form.corner(t, k));
                } else if (size(a[other], b[other], c[other]) > bestSize) {
                    bestSize = size(a[other], b[other], c[other]);
                    best = other;
                }
            }
            if (best < 0 || rimU == 0 && rimV == 0 || bestSize <= size(a[t], b[t], c[t])) continue;
            double ruling = angle(a[best], b[best], c[best]);
            if (Math.abs(rimU * Math.cos(ruling) + rimV * Math.sin(ruling)) < ALONG * Math.hypot(rimU, rimV)) continue;
            xx[t] = a[best];
            xy[t] = b[best];
            yy[t] = c[best];
        }
    }

    private void smooth() {
        TriMesh form = map.form();
        double[] a = xx.clone(), b = xy.clone(), c = yy.clone();
        for (int t = 0; t < a.length; t++) {
            double area = form.area(t), sum = area, sxx = area * a[t], sxy = area * b[t], syy = area * c[t];
            for (int k = 0; k < 3; k++) {
                int other = edges.neighbour(t, k);
                if (other < 0) continue;
                double w = form.area(other);
                sum += w;
                sxx += w * a[other];
                sxy += w * b[other];
                syy += w * c[other];
            }
            if (!(sum > 0)) continue;
            xx[t] = sxx / sum;
            xy[t] = sxy / sum;
            yy[t] = syy / sum;
        }
    }

    /** Curvature that is larger in size, 1/mm, positive where the outer skin bulges. */
    double bend(int t) {
        return larger(xx[t], xy[t], yy[t]);
    }

    /** Curvature square to it. */
    double across(int t) {
        return xx[t] + yy[t] - bend(t);
    }

    /** {xx, xy, yy} of triangle t, 1/mm. */
    double[] tensor(int t) {
        return new double[] {xx[t], xy[t], yy[t]};
    }

    static double larger(double xx, double xy, double yy) {
        double mean = (xx + yy) / 2, half = Math.hypot((xx - yy) / 2, xy);
        return mean >= 0 ? mean + half : mean - half;
    }

    /** Direction of the ruling on the blank, rad: of the eigenvector whose eigenvalue is larger in size. */
    static double angle(double xx, double xy, double yy) {
        double most = Math.atan2(2 * xy, xx - yy) / 2;      // of the algebraically larger one
        return xx + yy >= 0 ? most : most + Math.PI / 2;
    }

    private static double size(double xx, double xy, double yy) {
        return Math.abs(larger(xx, xy, yy));
    }
}
