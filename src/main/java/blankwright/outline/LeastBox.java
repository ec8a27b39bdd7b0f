package blankwright.outline;

import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The rectangle of least area round some points: how a piece lies best on a sheet.
 *
 * @param angle turn by this (rad, within ±π/2) and the long side lies along x
 * @param length the long side, mm
 * @param width the short side, mm
 */
public record LeastBox(double angle, double length, double width) {
    /** Of points x, y, x, y, ... in mm; at least one. */
    public static LeastBox of(double[] xy) {
        if (xy.length < 2) throw new IllegalArgumentException("no points to lay a box round");
        Coordinate[] at = new Coordinate[xy.length / 2];
        for (int i = 0; i < at.length; i++) at[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
        Coordinate[] c = MinimumAreaRectangle.getMinimumRectangle(new GeometryFactory().createMultiPointFromCoords(at)).getCoordinates();
        if (c.length < 2) return new LeastBox(0, 0, 0);
        double ux = c[1].x - c[0].x, uy = c[1].y - c[0].y, u = Math.hypot(ux, uy), v = c.length > 2 ? c[2].distance(c[1]) : 0;
        if (v > u) {
            ux = c[2].x - c[1].x;
            uy = c[2].y - c[1].y;
        }
        double angle = -Math.atan2(uy, ux);
        if (angle > Math.PI / 2) angle -= Math.PI;
        if (angle <= -Math.PI / 2) angle += Math.PI;
        return new LeastBox(angle, Math.max(u, v), Math.min(u, v));
    }
}
