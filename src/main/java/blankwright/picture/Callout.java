package blankwright.picture;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;

/** Finds room for what is said about a place, as near to it as can be. */
final class Callout {
    private static final double TALL = 2.7;
    private static final double FARTHEST = 34;      // mm; beyond that the list at the side must do

    private Callout() { }

    /** Middle of a free box of w x h not nearer than {@code from} to (x, y), the nearest of those tried; null where there is none. */
    static Point2D place(Canvas canvas, double x, double y, double w, double h, double from, Rectangle2D room) {
        if (from <= 0 && canvas.free(x, y, w, h, room)) return new Point2D.Double(x, y);
        for (double away = Math.max(from, 2); away <= FARTHEST; away += 2) {
            for (int i = 0; i < 16; i++) {
                double angle = Math.PI * 2 * i / 16;
                double px = x + Math.cos(angle) * (away + w / 2), py = y + Math.sin(angle) * (away + h / 2);
                if (canvas.free(px, py, w, h, room)) return new Point2D.Double(px, py);
            }
        }
        return null;
    }

    /** Middle of a free box near (x, y) that hides little: a box full of drawing counts as much as 45 mm of way. */
    static Point2D aside(Canvas canvas, double x, double y, double w, double h, Rectangle2D room) {
        Point2D best = null;
        double least = Double.POSITIVE_INFINITY;
        for (double away = 4; away <= 2 * FARTHEST; away += 3) {
            if (away >= least) break;
            for (int i = 0; i < 16; i++) {
                double angle = Math.PI * 2 * i / 16;
                double px = x + Math.cos(angle) * (away + w / 2), py = y + Math.sin(angle) * (away + h / 2);
                if (!canvas.free(px, py, w, h, room)) continue;
                double cost = away + 45 * canvas.covered(px, py, w + 3, h + 3);
                if (cost >= least) continue;
                double[] tie = tie(x, y, px, py, w, h);
                if (tie != null && canvas.crosses(tie[0], tie[1], tie[2], tie[3])) cost += 40;
                if (cost >= least) continue;
                least = cost;
                best = new Point2D.Double(px, py);
            }
        }
        return best;
    }

    static void leader(Canvas canvas, double x, double y, double toX, double toY) {
        canvas.segment(x, y, toX, toY, Canvas.PAPER, 0.8);
        canvas.segment(x, y, toX, toY, Canvas.INK, 0.3);
        canvas.disc(x, y, 0.6, Canvas.INK, Canvas.INK, 0.1);
    }

    /** The leader from the circle round (x, y) to the nearest place of the box; null where they all but touch. */
    private static double[] tie(double x, double y, double boxX, double boxY, double w, double h) {
        double nearX = Math.max(boxX - w / 2, Math.min(x, boxX + w / 2)), nearY = Math.max(boxY - h / 2, Math.min(y, boxY + h / 2));
        double away = Math.hypot(nearX - x, nearY - y);
        if (away < 4.3) return null;
        double out = 3.6;       // clear of what the circle has taken
        return new double[] {x + out * (nearX - x) / away, y + out * (nearY - y) / away, nearX, nearY};
    }

    /** Two lines of words in a box with the arrows of the sign, tied to (x, y) by a leader. Says nothing where there is no room. */
    static void words(Canvas canvas, String first, String second, boolean shrink, double x, double y, Rectangle2D room) {
        double icon = 9;
        double wide = Math.max(Canvas.wide(first, TALL), icon + 2 + Canvas.wide(second, TALL)) + 2.4, high = 2 * TALL + 4;
        Point2D at = aside(canvas, x, y, wide, high, room);
        if (at == null) return;
        double left = at.getX() - wide / 2, top = at.getY() - high / 2;
        double[] tie = tie(x, y, at.getX(), at.getY(), wide, high);
        if (tie != null) {
            canvas.segment(tie[0], tie[1], tie[2], tie[3], Canvas.PAPER, 0.8);
            canvas.segment(tie[0], tie[1], tie[2], tie[3], Canvas.INK, 0.3);
            canvas.takeLine(tie[0], tie[1], tie[2], tie[3]);
        }
        canvas.box(left, top, wide, high, Canvas.PAPER, Canvas.INK, 0.25);
        canvas.words(first, left + 1.2, top + 1.2 + TALL, TALL, Canvas.INK);
        Arrows.draw(canvas, left + 1.2 + icon / 2, top + 2.6 + 1.5 * TALL, 1, 0, icon, shrink, 0.45);
        canvas.words(second, left + 1.2 + icon + 2, top + 2.6 + 2 * TALL, TALL, Canvas.INK);
        canvas.take(at.getX(), at.getY(), wide, high);
    }
}
