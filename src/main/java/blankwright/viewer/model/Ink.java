package blankwright.viewer.model;

import blankwright.drawing.Drawing;
import blankwright.drawing.Entity;
import blankwright.drawing.Layer;
import blankwright.outline.Curve;
import java.util.ArrayList;
import java.util.List;

/** The lines and the lettering of a drawing as straight strokes, ready to be drawn at any size. */
public final class Ink {
    private static final double TOLERANCE = 0.02;   // mm: at ten times true size still a fifth of a pixel

    /**
     * One stroke.
     *
     * @param xy x, y, x, y ..., mm, y up; not to be written
     */
    public record Stroke(Layer layer, double[] xy, boolean closed) {
        static Stroke of(Layer layer, Curve curve) {
            return new Stroke(layer, curve.flattened(TOLERANCE), curve.isClosed());
        }
    }

    private final List<Stroke> strokes = new ArrayList<>();
    private final List<Entity.Text> texts = new ArrayList<>();

    private Ink() { }

    public static Ink of(Drawing drawing) {
        Ink ink = new Ink();
        for (Entity entity : drawing.entities()) ink.add(entity);
        return ink;
    }

    private void add(Entity entity) {
        if (entity instanceof Entity.Line l) stroke(l.layer(), Curve.path(l.x0(), l.y0(), l.x1(), l.y1()));
        else if (entity instanceof Entity.Arc a) stroke(a.layer(), Curve.arc(a.cx(), a.cy(), a.radius(), a.start(), a.sweep()));
        else if (entity instanceof Entity.Circle c) stroke(c.layer(), Curve.circle(c.cx(), c.cy(), c.radius()));
        else if (entity instanceof Entity.Polyline p) stroke(p.layer(), p.curve());
        else if (entity instanceof Entity.Text t) texts.add(t);
    }

    private void stroke(Layer layer, Curve curve) {
        strokes.add(Stroke.of(layer, curve));
    }

    public List<Stroke> strokes() {
        return List.copyOf(strokes);
    }

    public List<Entity.Text> texts() {
        return List.copyOf(texts);
    }
}
