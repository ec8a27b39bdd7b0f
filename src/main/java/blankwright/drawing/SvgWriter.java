package blankwright.drawing;

import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * A drawing as SVG 1.1 at true size: width and height in mm, one user unit = 1 mm.
 *
 * <p>User coordinates are the drawing's own x and minus its y. Each layer that holds something is a group whose id is its name. Lettering is
 * written as outlines, so that browser and cutting shop show the same. Positions are rounded to 1e-4 mm.
 * <p>Source: W3C, "Scalable Vector Graphics (SVG) 1.1 (Second Edition)", 2011; docs/sources.md [SVG].
 */
public final class SvgWriter {
    private static final double MARGIN = 5;       // mm of blank paper all round, so that no line width is cut off
    private static final int PLACES = 4;
    private static final int CHUNK = 1 << 16;

    private SvgWriter() { }

    /** Writes all of it and flushes, without closing {@code to}. */
    public static void write(Drawing drawing, OutputStream to) throws IOException {
        Box page = page(drawing);
        StringBuilder out = new StringBuilder();
        out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"");
        number(out, page.width()).append("mm\" height=\"");
        number(out, page.height()).append("mm\" viewBox=\"");
        numbers(out, page.x0(), -page.y1(), page.width(), page.height()).append("\">\n<title>").append(escaped(drawing.title())).append("</title>\n");
        for (Layer layer : Layer.values()) {
            boolean open = false;
            for (Entity entity : drawing.entities()) {
                if (entity.layer() != layer) continue;
                if (!open) group(out, layer);
                open = true;
                entity(out, entity);
                if (out.length() > CHUNK) send(out, to);
            }
            if (open) out.append("</g>\n");
        }
        out.append("</svg>\n");
        send(out, to);
        to.flush();
    }

    /** The part of the drawing's plane the picture shows: everything and 5 mm round it, in whole mm. */
    public static Box page(Drawing drawing) {
        Box box = drawing.box().grown(MARGIN);
        return new Box(Math.floor(box.x0()), Math.floor(box.y0()), Math.ceil(box.x1()), Math.ceil(box.y1()));
    }

    private static void group(StringBuilder out, Layer layer) {
        String colour = String.format("#%06x", layer.rgb());
        out.append("<g id=\"").append(layer.name()).append("\" fill=\"none\" stroke=\"").append(colour).append("\" stroke-width=\"");
        number(out, layer.width()).append("\" stroke-linejoin=\"round\"");
        if (layer.dashes().length > 0) {
            out.append(" stroke-dasharray=\"");
            numbers(out, layer.dashes()).append('"');
        }
        out.append(">\n");
    }

    private static void entity(StringBuilder out, Entity entity) {
        if (entity instanceof Entity.Line line) {
            out.append("<path d=\"M");
            point(out, line.x0(), line.y0()).append('L');
            point(out, line.x1(), line.y1());
        } else if (entity instanceof Entity.Arc arc) {
            out.append("<path d=\"M");
            Curve.CentreForm form = arc.centreForm();
            point(out, form.x(0), form.y(0));
            int parts = Math.abs(arc.sweep()) > Math.PI ? 2 : 1;      // an arc command cannot tell a nearly full circle from a nearly empty one
            for (int i = 1; i <= parts; i++) arcTo(out, arc.radius(), arc.sweep() > 0, false, form.x((double) i / parts), form.y((double) i / parts));
        } else if (entity instanceof Entity.Circle circle) {
            out.append("<circle cx=\"");
            number(out, circle.cx()).append("\" cy=\"");
            number(out, -circle.cy()).append("\" r=\"");
            number(out, circle.radius());
        } else if (entity instanceof Entity.Polyline polyline) {
            polyline(out, polyline.curve());
        } else if (entity instanceof Entity.Text text) {
            lettering(out, text);
        }
        out.append("\"/>\n");
    }

    private static void polyline(StringBuilder out, Curve curve) {
        out.append("<path d=\"M");
        point(out, curve.x(0), curve.y(0));
        for (int i = 0; i < curve.segmentCount(); i++) {
            if (curve.isArc(i)) {
                double bulge = curve.bulge(i);
                arcTo(out, curve.centreForm(i).radius(), bulge > 0, Math.abs(bulge) > 1, curve.x(i + 1), curve.y(i + 1));
            } else if (!curve.isClosed() || i < curve.segmentCount() - 1) {
                point(out.append('L'), curve.x(i + 1), curve.y(i + 1));
            }
            if (i % 16 == 15) out.append('\n');
        }
        if (curve.isClosed()) out.append('Z');
    }

    private static void arcTo(StringBuilder out, double radius, boolean left, boolean large, double x, double y) {
        out.append('A');
        number(out, radius).append(' ');
        number(out, radius).append(" 0 ").append(large ? 1 : 0).append(' ').append(left ? 0 : 1).append(' ');   // y down turns left into 0
        point(out, x, y);
    }

    private static void lettering(StringBuilder out, Entity.Text text) {
        out.append("<path aria-label=\"").append(escaped(text.text())).append(String.format("\" fill=\"#%06x\" stroke=\"none\" d=\"", text.layer().rgb()));
        Path2D.Double path = Lettering.outline(text);
        double[] p = new double[6];
        for (PathIterator it = path.getPathIterator(null); !it.isDone(); it.next()) {
            switch (it.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> point(out.append('M'), p[0], p[1]);
                case PathIterator.SEG_LINETO -> point(out.append('L'), p[0], p[1]);
                case PathIterator.SEG_QUADTO -> point(point(out.append('Q'), p[0], p[1]).append(' '), p[2], p[3]);
                case PathIterator.SEG_CUBICTO -> point(point(point(out.append('C'), p[0], p[1]).append(' '), p[2], p[3]).append(' '), p[4], p[5]);
                default -> out.append('Z');
            }
        }
    }

    private static StringBuilder point(StringBuilder out, double x, double y) {
        return number(number(out, x).append(' '), -y);
    }

    private static StringBuilder number(StringBuilder out, double value) {
        return Decimals.append(out, value, PLACES);
    }

    private static StringBuilder numbers(StringBuilder out, double... values) {
        for (int i = 0; i < values.length; i++) number(i == 0 ? out : out.append(' '), values[i]);
        return out;
    }

    /** Text for XML 1.0: the five named characters, and a question mark for what XML cannot hold. */
    static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '&' -> out.append("&amp;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&apos;");
                default -> out.appendCodePoint(isXml(c) ? c : '?');
            }
        });
        return out.toString();
    }

    private static boolean isXml(int c) {
        return c == '\t' || c == '\n' || c == '\r' || c >= 0x20 && c <= 0xd7ff || c >= 0xe000 && c <= 0xfffd || c >= 0x10000;
    }

    private static void send(StringBuilder out, OutputStream to) throws IOException {
        to.write(out.toString().getBytes(StandardCharsets.UTF_8));
        out.setLength(0);
    }
}
