package blankwright.picture;

import blankwright.mesh.TriMesh;
import blankwright.shop.PanelFrame;
import java.util.List;

/**
 * A direction to look at a form from, far away: three unit axes, to the right and up on the paper and towards the eye.
 *
 * @param name what the builder calls it
 */
record View(String name, double rx, double ry, double rz, double ux, double uy, double uz, double tx, double ty, double tz) {

    /** To the right on the paper, mm. */
    double right(double x, double y, double z) {
        return rx * x + ry * y + rz * z;
    }

    /** Up on the paper, mm. */
    double up(double x, double y, double z) {
        return ux * x + uy * y + uz * z;
    }

    /** Towards the eye, mm. */
    double towards(double x, double y, double z) {
        return tx * x + ty * y + tz * z;
    }

    /**
     * Five ways to look at a form: from a corner above, from below, on top, from its long side, from its end.
     *
     * <p>Up is the frame's; of its other two axes the one along which the form reaches farther lies level on the paper.
     */
    static List<View> round(TriMesh form) {
        PanelFrame frame = PanelFrame.of(form);
        double[] up = {frame.up(0), frame.up(1), frame.up(2)}, along = {frame.along(0), frame.along(1), frame.along(2)};
        double[] across = {frame.across(0), frame.across(1), frame.across(2)};
        double[] reach = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (int v = 0; v < form.vertexCount(); v++) {
            reach[0] = Math.min(reach[0], frame.alongOf(v));
            reach[1] = Math.max(reach[1], frame.alongOf(v));
            double side = across[0] * form.x(v) + across[1] * form.y(v) + across[2] * form.z(v);
            reach[2] = Math.min(reach[2], side);
            reach[3] = Math.max(reach[3], side);
        }
        if (reach[3] - reach[2] > 1.05 * (reach[1] - reach[0])) {
            double[] was = along;
            along = across;
            across = new double[] {-was[0], -was[1], -was[2]};
        }
        return List.of(
                looking("from the corner, outside", up, mixed(0.62, up, 0.38, along, -0.69, across)),
                looking("from below, inside", up, mixed(-0.55, up, 0.38, along, -0.74, across)),
                looking("from above", across, up),
                looking("from the side", up, mixed(0, up, 0, along, -1, across)),
                looking("from the end", up, along));
    }

    private static View looking(String name, double[] upwards, double[] towards) {
        double[] t = unit(towards), r = unit(cross(upwards, t)), u = cross(t, r);
        return new View(name, r[0], r[1], r[2], u[0], u[1], u[2], t[0], t[1], t[2]);
    }

    private static double[] mixed(double a, double[] p, double b, double[] q, double c, double[] r) {
        return new double[] {a * p[0] + b * q[0] + c * r[0], a * p[1] + b * q[1] + c * r[1], a * p[2] + b * q[2] + c * r[2]};
    }

    private static double length(double[] v) {
        return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    }

    private static double[] unit(double[] v) {
        double length = length(v);
        return length > 0 ? new double[] {v[0] / length, v[1] / length, v[2] / length} : new double[] {0, 0, 1};
    }

    private static double[] cross(double[] p, double[] q) {
        return new double[] {p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]};
    }
}
