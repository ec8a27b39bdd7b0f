package blankwright.picture;

import blankwright.shop.Amounts;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Numbers on drawn contour lines. */
final class Contours {
    private static final double TALL = 2.2;
    private static final double[] TRIED = {0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.05, 0.95};
    private static final double NEAREST = 1.7;      // mm from a number's middle to the next line

    private Contours() { }

    /** A strain with its sign, mm in every 100 mm. */
    static String strain(double value) {
        return (value > 0 ? "+" : "") + Amounts.perHundred(value);
    }

    /**
     * Writes words on the line of a value, and again every {@code apart} mm, each time at the first place tried that is free and where
     * {@code others} leave room beside the line; a line that runs close to others all along is left without a number.
     */
    static void number(Canvas canvas, Path2D path, double value, String words, Rectangle2D room, double apart, Crowd others) {
        double length = length(path), wide = Canvas.wide(words, TALL);
        if (length < 1.5 * wide) return;
        int times = 1 + (int) (length / apart);
        for (int k = 0; k < times; k++) {
            for (double share : TRIED) {
                Point2D at = along(path, (k + share) / times * length);
                if (others.meets(value, at.getX(), at.getY(), NEAREST) || !canvas.free(at.getX(), at.getY(), wide + 1, TALL + 1, room)) continue;
                canvas.take(at.getX(), at.getY(), wide, TALL);
                canvas.wordsOver(words, at.getX(), at.getY(), TALL, Canvas.INK);
                break;
            }
        }
    }

    /** Where lines of which value run, on a grid of cells a little wider than the distance asked for. */
    static final class Crowd {
        private static final double CELL = 2;
        private final Map<Long, List<double[]>> cells = new HashMap<>();

        void add(Path2D path, double value) {
            double length = length(path);
            double[] at = new double[6];
            double px = 0, py = 0;
            for (PathIterator i = path.getPathIterator(null); !i.isDone() && length > 0; i.next()) {
                boolean line = i.currentSegment(at) == PathIterator.SEG_LINETO;
                int parts = line ? 1 + (int) (Math.hypot(at[0] - px, at[1] - py) / 0.7) : 1;
                for (int k = line ? 1 : parts; k <= parts; k++) {
                    double x = px + (at[0] - px) * k / parts, y = py + (at[1] - py) * k / parts;
                    cells.computeIfAbsent(cell(x, y), c -> new ArrayList<>()).add(new double[] {x, y, value});
                }
                px = at[0];
                py = at[1];
            }
        }

        /** True where a line of another value comes nearer than {@code distance}, at most {@link #CELL} mm. */
        boolean meets(double value, double x, double y, double distance) {
            for (int j = -1; j <= 1; j++) {
                for (int i = -1; i <= 1; i++) {
                    for (double[] p : cells.getOrDefault(cell(x + i * CELL, y + j * CELL), List.of())) {
                        if (p[2] != value && Math.hypot(p[0] - x, p[1] - y) < distance) return true;
                    }
                }
            }
            return false;
        }

        private static long cell(double x, double y) {
            return (long) Math.floor(x / CELL) << 32 ^ (long) Math.floor(y / CELL) & 0xFFFFFFFFL;
        }
    }

    /** Length of all straight parts, mm. */
    static double length(Path2D path) {
        return walk(path, Double.POSITIVE_INFINITY, null);
    }

    /** The point that far from the beginning. */
    static Point2D along(Path2D path, double distance) {
        Point2D found = new Point2D.Double();
        walk(path, distance, found);
        return found;
    }

    private static double walk(Path2D path, double distance, Point2D found) {
        double sum = 0, px = 0, py = 0;
        double[] at = new double[6];
        for (PathIterator i = path.getPathIterator(null); !i.isDone(); i.next()) {
            if (i.currentSegment(at) == PathIterator.SEG_LINETO) {
                double part = Math.hypot(at[0] - px, at[1] - py);
                if (sum + part >= distance) {
                    double w = part > 0 ? (distance - sum) / part : 0;
                    found.setLocation(px + w * (at[0] - px), py + w * (at[1] - py));
                    return distance;
                }
                sum += part;
            }
            px = at[0];
            py = at[1];
            if (found != null) found.setLocation(px, py);
        }
        return sum;
    }
}
