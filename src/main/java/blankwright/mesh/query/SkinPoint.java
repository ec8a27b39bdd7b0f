package blankwright.mesh.query;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;

/**
 * A place on the skin: a triangle and the weights of its three corners. The same place on form and blank, since both have the same triangles.
 *
 * @param a weight of corner 0, 0..1; a + b + c = 1 within rounding
 */
public record SkinPoint(int triangle, double a, double b, double c) {
    /** Position on the form, mm: {x, y, z}. */
    public double[] on(TriMesh mesh) {
        int i = mesh.corner(triangle, 0), j = mesh.corner(triangle, 1), k = mesh.corner(triangle, 2);
        return new double[] {mixed(mesh.x(i), mesh.x(j), mesh.x(k)), mixed(mesh.y(i), mesh.y(j), mesh.y(k)),
            mixed(mesh.z(i), mesh.z(j), mesh.z(k))};
    }

    /** Position on the blank, mm: {u, v}. */
    public double[] on(FlatMap map) {
        TriMesh mesh = map.form();
        int i = mesh.corner(triangle, 0), j = mesh.corner(triangle, 1), k = mesh.corner(triangle, 2);
        return new double[] {mixed(map.u(i), map.u(j), map.u(k)), mixed(map.v(i), map.v(j), map.v(k))};
    }

    private double mixed(double p, double q, double r) {
        return a * p + b * q + c * r;
    }
}
