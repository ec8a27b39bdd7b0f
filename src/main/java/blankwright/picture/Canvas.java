package blankwright.picture;

import blankwright.drawing.Anchor;
import blankwright.drawing.Lettering;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.ArrayList;
import java.util.List;

/**
 * A sheet of paper to draw on, in mm from its upper left corner, x to the right and y downwards.
 *
 * <p>It remembers where words stand, so that the next ones find a free place. Words are drawn as filled outlines; no font of the machine
 * and no display is asked.
 */
final class Canvas {
    static final int INK = 0x111111, FAINT = 0x777777, PAPER = 0xFFFFFF;
    private static final double AIR = 0.35;        // mm kept clear round words

    /** Words as they stand on the paper: their box in mm. */
    record Label(String text, double x, double y, double width, double height) {
        boolean meets(Label other) {
            return x < other.x + other.width && other.x < x + width && y < other.y + other.height && other.y < y + height;
        }
    }

    private final BufferedImage image;
    private final Graphics2D g;
    private final double perMm;
    private final double width, height;
    private final List<Rectangle2D> taken = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();

    Canvas(double width, double height, double perMm) {
        this.width = width;
        this.height = height;
        this.perMm = perMm;
        image = new BufferedImage((int) Math.round(width * perMm), (int) Math.round(height * perMm), BufferedImage.TYPE_INT_RGB);
        java.util.Arrays.fill(raster(), PAPER);
        g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.scale(perMm, perMm);
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }

    double perMm() {
        return perMm;
    }

    /** The picture's own elements, 0xRRGGBB. */
    int[] raster() {
        return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    }

    int columns() {
        return image.getWidth();
    }

    int rows() {
        return image.getHeight();
    }

    void fill(Shape shape, int rgb) {
        g.setColor(new Color(rgb));
        g.fill(shape);
    }

    void line(Shape shape, int rgb, double thick) {
        g.setColor(new Color(rgb));
        g.setStroke(new BasicStroke((float) thick, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(shape);
    }

    void dashed(Shape shape, int rgb, double thick, float... dash) {
        g.setColor(new Color(rgb));
        g.setStroke(new BasicStroke((float) thick, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0));
        g.draw(shape);
    }

    void segment(double x1, double y1, double x2, double y2, int rgb, double thick) {
        Path2D path = new Path2D.Double();
        path.moveTo(x1, y1);
        path.lineTo(x2, y2);
        line(path, rgb, thick);
    }

    void box(double x, double y, double w, double h, int fill, int edge, double thick) {
        Rectangle2D r = new Rectangle2D.Double(x, y, w, h);
        fill(r, fill);
        line(r, edge, thick);
    }

    void disc(double x, double y, double radius, int fill, int edge, double thick) {
        Ellipse2D disc = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
        fill(disc, fill);
        line(disc, edge, thick);
    }

    /** Words whose capitals are {@code tall} mm high, beginning at x on the line y. */
    void words(String text, double x, double y, double tall, int rgb) {
        Path2D outline = outline(text, x, y, tall);
        fill(outline, rgb);
        labels.add(new Label(text, x, y - tall, Lettering.width(text, tall), tall * 1.25));
    }

    /** Words in the middle of (x, y), with a paper-coloured rim so that they read on any ground. */
    void wordsOver(String text, double x, double y, double tall, int rgb) {
        double wide = Lettering.width(text, tall);
        Path2D outline = outline(text, x - wide / 2, y + tall / 2, tall);
        line(outline, PAPER, tall * 0.42);
        fill(outline, rgb);
        labels.add(new Label(text, x - wide / 2, y - tall / 2, wide, tall));
    }

    void wordsCentred(String text, double x, double y, double tall, int rgb) {
        words(text, x - Lettering.width(text, tall) / 2, y, tall, rgb);
    }

    void wordsEndingAt(String text, double x, double y, double tall, int rgb) {
        words(text, x - Lettering.width(text, tall), y, tall, rgb);
    }

    static double wide(String text, double tall) {
        return Lettering.width(text, tall);
    }

    private static Path2D outline(String text, double x, double y, double tall) {
        Path2D.Double letters = Lettering.outline(text, 0, 0, tall, 0, Anchor.LEFT_BASE);
        letters.transform(new AffineTransform(1, 0, 0, -1, x, y));
        return letters;
    }

    /** True where nothing that was taken before meets a box of w x h round (x, y), and it lies inside the given part of the paper. */
    boolean free(double x, double y, double w, double h, Rectangle2D within) {
        Rectangle2D box = new Rectangle2D.Double(x - w / 2 - AIR, y - h / 2 - AIR, w + 2 * AIR, h + 2 * AIR);
        if (!within.contains(box)) return false;
        for (Rectangle2D other : taken) if (other.intersects(box)) return false;
        return true;
    }

    /** True where a straight line runs through a place that is taken. */
    boolean crosses(double x1, double y1, double x2, double y2) {
        for (Rectangle2D other : taken) if (other.intersectsLine(x1, y1, x2, y2)) return true;
        return false;
    }

    /** Keeps later words off a straight line. */
    void takeLine(double x1, double y1, double x2, double y2) {
        int parts = 1 + (int) Math.hypot(x2 - x1, y2 - y1);
        for (int i = 0; i <= parts; i++) take(x1 + (x2 - x1) * i / parts, y1 + (y2 - y1) * i / parts, 0.8, 0.8);
    }

    /** Share of a box of w x h round (x, y) that is drawn on already, 0..1, from seven by five places. */
    double covered(double x, double y, double w, double h) {
        int drawn = 0;
        for (int j = 0; j < 5; j++) {
            for (int i = 0; i < 7; i++) {
                int column = (int) ((x + w * (i - 3) / 6) * perMm), row = (int) ((y + h * (j - 2) / 4) * perMm);
                boolean inside = column >= 0 && row >= 0 && column < columns() && row < rows();
                if (!inside || (raster()[row * columns() + column] & 0xFFFFFF) != PAPER) drawn++;
            }
        }
        return drawn / 35.0;
    }

    /** Keeps later words out of a box of w x h round (x, y). */
    void take(double x, double y, double w, double h) {
        taken.add(new Rectangle2D.Double(x - w / 2, y - h / 2, w, h));
    }

    /** How many places are taken, to be {@link #release released} down to that number again. */
    int taken() {
        return taken.size();
    }

    void release(int until) {
        taken.subList(until, taken.size()).clear();
    }

    /** What has been written so far, in order. */
    List<Label> labels() {
        return List.copyOf(labels);
    }

    Picture picture() {
        g.dispose();
        return new Picture(raster(), columns(), rows(), perMm);
    }
}
