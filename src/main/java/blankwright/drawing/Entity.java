package blankwright.drawing;

import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;

/** One thing drawn, on one layer; mm, rad, y up. Constructors refuse numbers that are not finite and lengths that are not above 0. */
public sealed interface Entity {
    Layer layer();

    /** The smallest upright box round it, line width left out. */
    Box box();

    /** A straight line between two different points. */
    record Line(Layer layer, double x0, double y0, double x1, double y1) implements Entity {
        public Line {
            finite(x0, y0, x1, y1);
            if (x0 == x1 && y0 == y1) throw new IllegalArgumentException("line from " + x0 + ", " + y0 + " to itself");
        }

        @Override
        public Box box() {
            return new Box(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
        }
    }

    /** From the angle {@code start} on through {@code sweep}, positive to the left; 0 < |sweep| < 2π. */
    record Arc(Layer layer, double cx, double cy, double radius, double start, double sweep) implements Entity {
        public Arc {
            finite(cx, cy, radius, start, sweep);
            above0("radius", radius);
            if (sweep == 0 || Math.abs(sweep) >= 2 * Math.PI) throw new IllegalArgumentException("arc sweeping " + sweep + " rad");
        }

        @Override
        public Box box() {
            return Curve.boxOf(centreForm());
        }

        Curve.CentreForm centreForm() {
            return new Curve.CentreForm(cx, cy, radius, start, sweep);
        }
    }

    record Circle(Layer layer, double cx, double cy, double radius) implements Entity {
        public Circle {
            finite(cx, cy, radius);
            above0("radius", radius);
        }

        @Override
        public Box box() {
            return new Box(cx - radius, cy - radius, cx + radius, cy + radius);
        }
    }

    /** Lines and arcs joined end to end, open or closed. */
    record Polyline(Layer layer, Curve curve) implements Entity {
        @Override
        public Box box() {
            return curve.box();
        }
    }

    /**
     * One line of lettering. Control characters become spaces.
     *
     * @param height of a capital letter, mm
     * @param angle of the base line, rad, positive to the left
     */
    record Text(Layer layer, String text, double x, double y, double height, double angle, Anchor anchor) implements Entity {
        public Text {
            finite(x, y, height, angle);
            above0("lettering height", height);
            text = text.replaceAll("[\\x00-\\x1f\\x7f-\\x9f\\u2028\\u2029]", " ");
            if (text.isBlank()) throw new IllegalArgumentException("lettering of nothing at " + x + ", " + y);
        }

        /** On the layer TEXT, level. */
        public Text(String text, double x, double y, double height, Anchor anchor) {
            this(Layer.TEXT, text, x, y, height, 0, anchor);
        }

        @Override
        public Box box() {
            var bounds = Lettering.outline(this).getBounds2D();
            return bounds.isEmpty() ? new Box(x, y, x, y) : new Box(bounds.getMinX(), bounds.getMinY(), bounds.getMaxX(), bounds.getMaxY());
        }
    }

    private static void finite(double... numbers) {
        for (double number : numbers) {
            if (!Double.isFinite(number)) throw new IllegalArgumentException("drawing at " + number + " mm");
        }
    }

    private static void above0(String what, double length) {
        if (!(length > 0)) throw new IllegalArgumentException(what + " " + length + " mm: must be above 0");
    }
}
