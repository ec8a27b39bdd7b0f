package blankwright.picture;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;

/** Where the pieces lying on the sheet come on paper: as large as fits the room, the whole turned by a quarter where it then fits larger. */
final class OnSheet {
    private static final double EDGE = 8;               // mm of paper kept free at each side

    private final double u0, v0, x0, y0, perMm;         // paper = origin + perMm * (turned) blank
    private final double wide, high;
    private final boolean turned;

    /** @param maps at least one */
    OnSheet(List<FlatMap> maps, Rectangle2D room) {
        double[] box = maps.get(0).box();
        for (FlatMap map : maps) {
            double[] other = map.box();
            for (int k = 0; k < 2; k++) {
                box[k] = Math.min(box[k], other[k]);
                box[2 + k] = Math.max(box[2 + k], other[2 + k]);
            }
        }
        wide = box[2] - box[0];
        high = box[3] - box[1];
        double w = Math.max(wide, 1e-6), h = Math.max(high, 1e-6), roomW = room.getWidth() - 2 * EDGE, roomH = room.getHeight() - 2 * EDGE;
        double upright = Math.min(roomW / w, roomH / h), quarter = Math.min(roomW / h, roomH / w);
        turned = quarter > 1.02 * upright;
        perMm = Math.max(upright, turned ? quarter : 0);
        u0 = (box[0] + box[2]) / 2;
        v0 = (box[1] + box[3]) / 2;
        x0 = room.getCenterX();
        y0 = room.getCenterY();
    }

    /** Paper mm per mm of metal. */
    double perMm() {
        return perMm;
    }

    boolean turned() {
        return turned;
    }

    /** {@code blank 812 x 530 mm (32.0 x 20.9 in)}, as it lies on paper. */
    String size() {
        return "blank " + Frame.size(turned ? high : wide, turned ? wide : high);
    }

    double x(double u, double v) {
        return x0 + perMm * (turned ? -(v - v0) : u - u0);
    }

    double y(double u, double v) {
        return y0 - perMm * (turned ? u - u0 : v - v0);
    }

    /** @param uv two per vertex; @param amount one per vertex; @param tri three vertices per triangle */
    void paint(Canvas canvas, double[] uv, double[] amount, int[] tri, Tints tints) {
        int n = amount.length;
        double left = Double.POSITIVE_INFINITY, top = Double.POSITIVE_INFINITY, right = Double.NEGATIVE_INFINITY, low = right;
        for (int v = 0; v < n; v++) {
            double x = x(uv[2 * v], uv[2 * v + 1]), y = y(uv[2 * v], uv[2 * v + 1]);
            left = Math.min(left, x);
            right = Math.max(right, x);
            top = Math.min(top, y);
            low = Math.max(low, y);
        }
        double dots = canvas.perMm();
        int c0 = (int) Math.floor(left * dots) - 1, r0 = (int) Math.floor(top * dots) - 1;
        DepthPainter painter = new DepthPainter((int) Math.ceil(right * dots) + 1 - c0, (int) Math.ceil(low * dots) + 1 - r0, 2);
        float[] place = new float[3 * n], light = new float[n];
        Arrays.fill(light, 1);
        for (int v = 0; v < n; v++) {
            place[3 * v] = (float) (x(uv[2 * v], uv[2 * v + 1]) * dots - c0);
            place[3 * v + 1] = (float) (y(uv[2 * v], uv[2 * v + 1]) * dots - r0);
        }
        painter.paint(place, amount, light, tri, tints);
        painter.overlay(canvas.raster(), canvas.columns(), canvas.rows(), c0, r0);
    }

    /** @param uv two per vertex of the field the line was found in */
    Path2D path(ContourLines.Line line, double[] uv) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < line.count(); i++) {
            double u = line.at(i, uv, 2, 0), v = line.at(i, uv, 2, 1);
            if (i == 0) path.moveTo(x(u, v), y(u, v));
            else path.lineTo(x(u, v), y(u, v));
        }
        return path;
    }

    Path2D rim(FlatMap map) {
        RimLoops rims = RimLoops.of(map.form(), EdgeTable.of(map.form()));
        Path2D path = new Path2D.Double();
        for (int i = 0; i < rims.count(); i++) {
            int[] loop = rims.loop(i);
            for (int k = 0; k < loop.length; k++) {
                double x = x(map.u(loop[k]), map.v(loop[k])), y = y(map.u(loop[k]), map.v(loop[k]));
                if (k == 0) path.moveTo(x, y);
                else path.lineTo(x, y);
            }
            path.closePath();
        }
        return path;
    }
}
