package blankwright.drawing;

import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * What is drawn on one page, as PDF operators in mm from the lower left corner of the paper.
 *
 * <p>Source of the operators: ISO 32000-1:2008, section 8 (graphics) and annex A; docs/sources.md [PDF].
 */
final class PdfPage {
    /** Greatest gap between an arc and the curves that stand for it, mm. */
    private static final double ARC_ERROR = 0.0005;

    private final StringBuilder out = new StringBuilder("2.834645669291 0 0 2.834645669291 0 0 cm 1 J 1 j\n");   // 72/25.4 points per mm

    byte[] bytes() {
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** All that follows, up to {@link #unclip}, shows only within the box and is moved by (dx, dy). */
    void clip(Box box, double dx, double dy) {
        out.append("q ");
        numbers(box.x0(), box.y0(), box.width(), box.height()).append("re W n 1 0 0 1 ");
        numbers(dx, dy).append("cm\n");
    }

    void unclip() {
        out.append("Q\n");
    }

    /** Colour 0xRRGGBB for lines and fillings, width and dashes in mm, {@code phase} = how much of the dashes is gone at the start. */
    void pen(int rgb, double width, double phase, double... dashes) {
        double r = (rgb >> 16 & 255) / 255.0, g = (rgb >> 8 & 255) / 255.0, b = (rgb & 255) / 255.0;
        numbers(r, g, b).append("RG ");
        numbers(r, g, b).append("rg ");
        numbers(width).append("w [");
        numbers(dashes).append("] ");
        numbers(phase).append("d ").append(dashes.length > 0 ? "0 J\n" : "1 J\n");
    }

    void line(double x0, double y0, double x1, double y1) {
        numbers(x0, y0).append("m ");
        numbers(x1, y1).append("l S\n");
    }

    void rectangle(Box box) {
        numbers(box.x0(), box.y0(), box.width(), box.height()).append("re S\n");
    }

    void moveTo(double x, double y) {
        numbers(x, y).append("m\n");
    }

    void lineTo(double x, double y) {
        numbers(x, y).append("l\n");
    }

    /** From the present point, which is the arc's start. */
    void arcTo(Curve.CentreForm arc) {
        // A cubic over the angle a misses the circle by less than r a^6 / 27648 (leading term r a^6 / 2^7 / 6^3, Bezier handles 4/3 tan(a/4)).
        double most = Math.min(Math.PI / 2, Math.pow(27648 * ARC_ERROR / arc.radius(), 1 / 6.0));
        int parts = (int) Math.max(1, Math.ceil(Math.abs(arc.sweep()) / most));
        double step = arc.sweep() / parts, handle = 4.0 / 3 * Math.tan(step / 4) * arc.radius();
        for (int i = 0; i < parts; i++) {
            double a = arc.start() + i * step, b = a + step;
            double x0 = arc.cx() + arc.radius() * Math.cos(a), y0 = arc.cy() + arc.radius() * Math.sin(a);
            double x1 = arc.cx() + arc.radius() * Math.cos(b), y1 = arc.cy() + arc.radius() * Math.sin(b);
            numbers(x0 - handle * Math.sin(a), y0 + handle * Math.cos(a), x1 + handle * Math.sin(b), y1 - handle * Math.cos(b), x1, y1).append("c\n");
        }
    }

    void close() {
        out.append("h\n");
    }

    void stroke() {
        out.append("S\n");
    }

    /** Filled letters in the colour of the pen. */
    void text(String text, double x, double y, double height, double angle, Anchor anchor) {
        fill(Lettering.outline(text, x, y, height, angle, anchor));
    }

    void text(String text, double x, double y, double height, Anchor anchor) {
        text(text, x, y, height, 0, anchor);
    }

    private void fill(Path2D.Double path) {
        double[] p = new double[6];
        double x = 0, y = 0;
        for (PathIterator it = path.getPathIterator(null); !it.isDone(); it.next()) {
            int kind = it.currentSegment(p);
            switch (kind) {
                case PathIterator.SEG_MOVETO -> numbers(p[0], p[1]).append("m\n");
                case PathIterator.SEG_LINETO -> numbers(p[0], p[1]).append("l\n");
                case PathIterator.SEG_QUADTO -> {      // the same parabola as a cubic
                    numbers(x + (p[0] - x) * 2 / 3, y + (p[1] - y) * 2 / 3, p[2] + (p[0] - p[2]) * 2 / 3, p[3] + (p[1] - p[3]) * 2 / 3, p[2], p[3]);
                    out.append("c\n");
                }
                case PathIterator.SEG_CUBICTO -> numbers(p).append("c\n");
                default -> out.append("h\n");
            }
            int last = kind == PathIterator.SEG_QUADTO ? 2 : kind == PathIterator.SEG_CUBICTO ? 4 : 0;
            x = p[last];
            y = p[last + 1];
        }
        out.append("f\n");
    }

    /** Lines of text within a box from its top down, as large as fit between the two heights of a capital, paragraphs set apart. */
    void paragraphs(List<String> paragraphs, Box box, double largest) {
        double height = largest;
        while (room(paragraphs, box.width(), height) > box.height() && height > 0.4) height *= 0.95;
        double y = box.y1();
        for (String paragraph : paragraphs) {
            for (String line : broken(paragraph, box.width(), height)) {
                text(line, box.x0(), y, height, Anchor.LEFT_TOP);
                y -= 1.75 * height;
            }
            y -= 0.9 * height;
        }
    }

    private static double room(List<String> paragraphs, double width, double height) {
        double sum = 0;
        for (String paragraph : paragraphs) sum += (1.75 * broken(paragraph, width, height).size() + 0.9) * height;
        return sum - 1.2 * height;
    }

    /** Words set into lines no wider than {@code width}; a single word that is wider stands alone. */
    static List<String> broken(String paragraph, double width, double height) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : paragraph.trim().split("\\s+")) {
            if (line.length() > 0 && Lettering.width(line + " " + word, height) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private StringBuilder numbers(double... values) {
        for (double value : values) Decimals.append(out, value, 4).append(' ');
        return out;
    }
}
