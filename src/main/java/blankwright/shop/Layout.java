package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Orientation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Lays pieces side by side on one sheet, each turned the same way whatever way it came.
 *
 * <ol>
 * <li>Each piece is turned until its centre line runs along u, in the mean over its area: the direction along of its {@link PanelFrame},
 *     carried to the blank. Where that mean says little (below a fifth: a skin rolled round on itself) the longer side of the smallest
 *     rectangle round the piece runs along u.
 * <li>The boxes are set in rows, first piece lowest and leftmost at (0, 0), with a gap between; a row ends where it would become longer
 *     than the longest piece and than one and a half times the side of a square of all boxes together.
 * </ol>
 */
public final class Layout {
    /** Room between the boxes of two pieces, mm. */
    public static final double GAP = 20;

    private Layout() { }

    /** With {@link #GAP} between the boxes. */
    public static List<FlatMap> of(List<FlatMap> pieces) {
        return of(pieces, GAP);
    }

    /**
     * The same maps moved, in the same order; turned and shifted only, never mirrored or scaled.
     *
     * @param gap between the boxes, mm, 0 or above: pieces with a trim allowance need more than twice that
     */
    public static List<FlatMap> of(List<FlatMap> pieces, double gap) {
        if (!(gap >= 0)) throw new IllegalArgumentException("gap " + gap + " mm: must be 0 or above");
        List<FlatMap> turned = new ArrayList<>();
        double longest = 0, boxes = 0;
        for (FlatMap piece : pieces) {
            FlatMap there = piece.moved(-direction(piece), 0, 0);
            turned.add(there);
            double[] size = there.size();
            longest = Math.max(longest, size[0]);
            boxes += (size[0] + gap) * (size[1] + gap);
        }
        double row = Math.max(longest, 1.5 * Math.sqrt(boxes)), u = 0, v = 0, high = 0;
        List<FlatMap> placed = new ArrayList<>();
        for (FlatMap piece : turned) {
            double[] box = piece.box();
            double width = box[2] - box[0], height = box[3] - box[1];
            if (u > 0 && u + width > row) {
                u = 0;
                v += high + gap;
                high = 0;
            }
            placed.add(piece.moved(0, u - box[0], v - box[1]));
            u += width + gap;
            high = Math.max(high, height);
        }
        return List.copyOf(placed);
    }

    /** Direction of the piece's centre line on its blank, rad. */
    static double direction(FlatMap map) {
        TriMesh form = map.form();
        PanelFrame frame = PanelFrame.of(form);
        double du = 0, dv = 0, area = 0;
        for (int t = 0; t < form.triangleCount(); t++) {
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            double ex = form.x(b) - form.x(a), ey = form.y(b) - form.y(a), ez = form.z(b) - form.z(a);
            double fx = form.x(c) - form.x(a), fy = form.y(c) - form.y(a), fz = form.z(c) - form.z(a);
            double ee = ex * ex + ey * ey + ez * ez, ff = fx * fx + fy * fy + fz * fz, ef = ex * fx + ey * fy + ez * fz;
            double det = ee * ff - ef * ef;
            if (!(det > 1e-20 * ee * ff)) continue;
            double ae = frame.along(0) * ex + frame.along(1) * ey + frame.along(2) * ez;
            double af = frame.along(0) * fx + frame.along(1) * fy + frame.along(2) * fz;
            double p = (ff * ae - ef * af) / det, q = (ee * af - ef * ae) / det;    // along = p e + q f, less its part along the normal
            double w = Math.sqrt(det) / 2;
            du += w * (p * (map.u(b) - map.u(a)) + q * (map.u(c) - map.u(a)));
            dv += w * (p * (map.v(b) - map.v(a)) + q * (map.v(c) - map.v(a)));
            area += w;
        }
        return Math.hypot(du, dv) > 0.2 * area ? Math.atan2(dv, du) : smallestRectangle(map);
    }

    /** Direction of the longer side of the smallest rectangle round all flat positions: one side of it lies on a side of their hull. */
    private static double smallestRectangle(FlatMap map) {
        double[] hull = hull(map);
        int n = hull.length / 2;
        double best = Double.POSITIVE_INFINITY, angle = 0;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double du = hull[2 * j] - hull[2 * i], dv = hull[2 * j + 1] - hull[2 * i + 1], length = Math.hypot(du, dv);
            if (!(length > 0)) continue;
            double lowP = Double.POSITIVE_INFINITY, highP = -lowP, lowQ = lowP, highQ = -lowP;
            for (int k = 0; k < n; k++) {
                double p = (du * hull[2 * k] + dv * hull[2 * k + 1]) / length, q = (du * hull[2 * k + 1] - dv * hull[2 * k]) / length;
                lowP = Math.min(lowP, p);
                highP = Math.max(highP, p);
                lowQ = Math.min(lowQ, q);
                highQ = Math.max(highQ, q);
            }
            double width = highP - lowP, height = highQ - lowQ;
            if (width * height < best * (1 - 1e-9)) {
                best = width * height;
                angle = Math.atan2(dv, du) + (width >= height ? 0 : Math.PI / 2);
            }
        }
        return angle;
    }

    /** Corners of the convex hull, counter-clockwise (Andrew 1979, docs/sources.md [A79]). */
    private static double[] hull(FlatMap map) {
        int n = map.form().vertexCount();
        double[][] p = new double[n][];
        for (int v = 0; v < n; v++) p[v] = new double[] {map.u(v), map.v(v)};
        Arrays.sort(p, (a, b) -> a[0] != b[0] ? Double.compare(a[0], b[0]) : Double.compare(a[1], b[1]));
        double[][] h = new double[2 * n + 2][];
        int k = 0;
        for (int pass = 0; pass < 2; pass++) {
            int base = k;
            for (int i = 0; i < n; i++) {
                double[] next = p[pass == 0 ? i : n - 1 - i];
                while (k >= base + 2 && turns(h[k - 2], h[k - 1], next) <= 0) k--;
                h[k++] = next;
            }
            k--;
        }
        double[] out = new double[2 * Math.max(k, 0)];
        for (int i = 0; i < k; i++) {
            out[2 * i] = h[i][0];
            out[2 * i + 1] = h[i][1];
        }
        return out;
    }

    private static int turns(double[] a, double[] b, double[] c) {
        return Orientation.sign(a[0], a[1], b[0], b[1], c[0], c[1]);
    }
}
