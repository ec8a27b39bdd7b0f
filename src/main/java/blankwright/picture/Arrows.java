package blankwright.picture;

import java.awt.geom.Path2D;

/**
 * The sign as a drawing that survives grey print: two arrows pointing at each other = shrink, one pointing both ways = stretch.
 */
final class Arrows {
    private static final double HEAD = 0.34;        // of the half length
    private static final double GAP = 0.10;         // of the half length, between the tips that meet

    private Arrows() { }

    /** Heads are solid: fill the first, then draw the second; both round (x, y), direction (dx, dy) of unit length, whole length mm. */
    record Shapes(Path2D heads, Path2D shafts) { }

    static Shapes of(double x, double y, double dx, double dy, double length, boolean shrink) {
        Path2D heads = new Path2D.Double(), shafts = new Path2D.Double();
        double half = length / 2, head = Math.max(1.1, HEAD * half), wide = head * 0.42, gap = Math.max(0.25, GAP * half);
        for (int side = -1; side <= 1; side += 2) {
            double ex = side * dx, ey = side * dy;
            double tip = shrink ? gap : half, base = shrink ? gap + head : half - head;
            double tail = shrink ? half : 0;
            heads.moveTo(x + tip * ex, y + tip * ey);
            heads.lineTo(x + base * ex - wide * ey, y + base * ey + wide * ex);
            heads.lineTo(x + base * ex + wide * ey, y + base * ey - wide * ex);
            heads.closePath();
            shafts.moveTo(x + tail * ex, y + tail * ey);
            shafts.lineTo(x + base * ex, y + base * ey);
        }
        return new Shapes(heads, shafts);
    }

    /** Draws it dark with a paper-coloured rim, so that it reads on every class of the scale. */
    static void draw(Canvas canvas, double x, double y, double dx, double dy, double length, boolean shrink, double thick) {
        Shapes shapes = of(x, y, dx, dy, length, shrink);
        canvas.line(shapes.shafts(), Canvas.PAPER, thick + 0.55);
        canvas.line(shapes.heads(), Canvas.PAPER, 0.55);
        canvas.line(shapes.shafts(), Canvas.INK, thick);
        canvas.fill(shapes.heads(), Canvas.INK);
    }
}
