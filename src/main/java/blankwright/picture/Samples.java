package blankwright.picture;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.List;

/** Places spread evenly over the blank of one piece, rows staggered, each with what is to be done there. */
final class Samples {
    /**
     * @param amount strain there, positive = stretch
     * @param du direction on the blank, unit
     * @param dx direction on the form in which that goes, unit
     */
    record Sample(double u, double v, double x, double y, double z, int triangle, double amount, double du, double dv,
            double dx, double dy, double dz) { }

    private Samples() { }

    /** One sample wherever a grid of the given spacing, mm on the blank, meets a triangle that is not turned over; row by row. */
    static List<Sample> spread(WorkField field, double spacing) {
        FlatMap map = field.map();
        TriMesh form = map.form();
        double[] box = map.box();
        double rowHigh = spacing * Math.sqrt(0.75);
        double u0 = (box[0] + box[2]) / 2, v0 = (box[1] + box[3]) / 2;
        int rows = (int) Math.ceil((box[3] - box[1]) / 2 / rowHigh), columns = (int) Math.ceil((box[2] - box[0]) / 2 / spacing) + 1;
        Sample[][] grid = new Sample[2 * rows + 1][2 * columns + 1];
        for (int t = 0; t < form.triangleCount(); t++) {
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            double low = Math.min(map.v(a), Math.min(map.v(b), map.v(c))), high = Math.max(map.v(a), Math.max(map.v(b), map.v(c)));
            double left = Math.min(map.u(a), Math.min(map.u(b), map.u(c))), right = Math.max(map.u(a), Math.max(map.u(b), map.u(c)));
            for (int j = (int) Math.ceil((low - v0) / rowHigh); j <= (high - v0) / rowHigh; j++) {
                double shift = Math.floorMod(j, 2) * spacing / 2;
                for (int i = (int) Math.ceil((left - u0 - shift) / spacing); i <= (right - u0 - shift) / spacing; i++) {
                    int row = j + rows, column = i + columns;
                    if (row < 0 || row > 2 * rows || column < 0 || column > 2 * columns || grid[row][column] != null) continue;
                    grid[row][column] = at(field, t, u0 + shift + i * spacing, v0 + j * rowHigh);
                }
            }
        }
        List<Sample> found = new ArrayList<>();
        for (Sample[] row : grid) for (Sample sample : row) if (sample != null) found.add(sample);
        return found;
    }

    /** The place (u, v) as part of triangle t, or null where it lies outside or the triangle is not face up. */
    static Sample at(WorkField field, int t, double u, double v) {
        FlatMap map = field.map();
        TriMesh form = map.form();
        int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
        double bu = map.u(b) - map.u(a), bv = map.v(b) - map.v(a), cu = map.u(c) - map.u(a), cv = map.v(c) - map.v(a);
        double det = bu * cv - cu * bv;
        if (!(det > 0)) return null;
        double pu = u - map.u(a), pv = v - map.v(a);
        double wb = (pu * cv - cu * pv) / det, wc = (bu * pv - pu * bv) / det, wa = 1 - wb - wc;
        if (wa < -1e-9 || wb < -1e-9 || wc < -1e-9) return null;
        double[] work = field.at(t, wa, wb, wc);
        double du = Math.cos(work[1]), dv = Math.sin(work[1]);
        double db = (du * cv - cu * dv) / det, dc = (bu * dv - du * bv) / det;
        double dx = db * (form.x(b) - form.x(a)) + dc * (form.x(c) - form.x(a));
        double dy = db * (form.y(b) - form.y(a)) + dc * (form.y(c) - form.y(a));
        double dz = db * (form.z(b) - form.z(a)) + dc * (form.z(c) - form.z(a));
        double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
        if (!(length > 0)) return null;
        return new Sample(u, v, wa * form.x(a) + wb * form.x(b) + wc * form.x(c), wa * form.y(a) + wb * form.y(b) + wc * form.y(c),
                wa * form.z(a) + wb * form.z(b) + wc * form.z(c), t, work[0], du, dv, dx / length, dy / length, dz / length);
    }
}
