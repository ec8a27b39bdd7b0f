package blankwright.shop;

import blankwright.mesh.FlatMap;

/**
 * A place on a piece, on blank and form.
 *
 * @param triangle that holds it
 * @param u on the blank, mm
 * @param x on the form, mm
 */
public record Spot(int triangle, double u, double v, double x, double y, double z) {
    /** Corner k of triangle t. */
    public static Spot of(FlatMap map, int t, int k) {
        int v = map.form().corner(t, k);
        return new Spot(t, map.u(v), map.v(v), map.form().x(v), map.form().y(v), map.form().z(v));
    }
}
