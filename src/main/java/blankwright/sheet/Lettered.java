package blankwright.sheet;

import blankwright.drawing.Anchor;
import blankwright.drawing.Entity;
import blankwright.drawing.Lettering;
import blankwright.outline.Curve.Box;
import java.util.ArrayList;
import java.util.List;

/** Level lettering that keeps out of its own way. */
final class Lettered {
    private static final double AIR = 0.35;         // of the height, kept clear all round
    private final List<Box> taken = new ArrayList<>();
    private final List<Entity> out;

    Lettered(List<Entity> out) {
        this.out = out;
    }

    /** Writes with its middle at the first of the places that is free; false where none is. */
    boolean firstFree(String text, double height, List<double[]> places) {
        double wide = Lettering.width(text, height);
        for (double[] place : places) {
            Box box = new Box(place[0] - wide / 2, place[1] - height / 2, place[0] + wide / 2, place[1] + height / 2).grown(AIR * height);
            if (taken.stream().anyMatch(box::meets)) continue;
            taken.add(box);
            out.add(new Entity.Text(text, place[0], place[1], height, Anchor.CENTRE));
            return true;
        }
        return false;
    }

    /** The place itself, then rings of places round it, each a little farther out, to {@code far} mm. */
    static List<double[]> round(double u, double v, double height, double far) {
        List<double[]> places = new ArrayList<>(List.of(new double[] {u, v}));
        for (double away = 1.5 * height; away <= far; away += 1.5 * height) {
            for (int i = 0; i < 12; i++) {
                double angle = Math.PI * (2 * i + 3) / 6;      // straight above first
                places.add(new double[] {u + away * Math.cos(angle), v + away * Math.sin(angle)});
            }
        }
        return places;
    }

    boolean isFree(double u, double v, double w, double h) {
        Box box = new Box(u - w / 2, v - h / 2, u + w / 2, v + h / 2);
        return taken.stream().noneMatch(box::meets);
    }

    /** Keeps later lettering out of a box. */
    void keepClear(double u, double v, double w, double h) {
        taken.add(new Box(u - w / 2, v - h / 2, u + w / 2, v + h / 2));
    }

    /** Writes from (u, v) on to the right, whatever is there. */
    void line(String text, double u, double v, double height) {
        out.add(new Entity.Text(text, u, v, height, Anchor.LEFT_BASE));
        taken.add(new Box(u, v, u + Lettering.width(text, height), v + height));
    }
}
