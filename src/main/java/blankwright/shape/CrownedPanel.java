package blankwright.shape;

import java.util.List;

/**
 * A rectangular skin crowned both ways, the outer side up: a circular arc along its length carried along another across its width.
 *
 * <p>Length and width are measured straight from edge to edge, the rises of the two middle lines above those, mm; a negative rise hollows
 * the panel that way, so one of each makes a saddle. {@code step} turns a lowered land along one long edge, for the next skin to lie on.
 * Parameters of a point: distance along the skin from the middle, along and across, mm.
 */
public record CrownedPanel(double length, double width, double lengthRise, double widthRise, Step step, List<Hole> holes) implements Panel {
    /**
     * A lowered land along the edge on the positive side across: how deep, how wide, the radius of its two bends, their angle.
     * A depth of 0 is no step.
     */
    public record Step(double depth, double land, double radius, double fold) {
        public static final Step NONE = new Step(0, 0, 0, 0);

        public Step {
            if (depth != 0 || land != 0 || radius != 0 || fold != 0) {
                String[] name = {"step-depth", "step-land", "step-radius", "step-fold"};
                double[] value = {depth, land, radius, fold};
                for (int i = 0; i < 4; i++) {
                    Need.that(value[i] != 0, name[i], name[i] + " is missing or 0; a step needs " + String.join(", ", name));
                }
                Need.length("step-depth", depth);
                Need.length("step-land", land);
                Need.length("step-radius", radius);
                Need.angle("step-fold", fold, 5, 80);
                double bends = 2 * radius * (1 - Math.cos(fold));
                Need.that(bends <= depth, "step-radius",
                        "step-radius %s: two such bends of %s already drop %s, more than the depth of %s; take a smaller radius or fold",
                        Need.mm(radius), Need.degrees(fold), Need.mm(bends), Need.mm(depth));
            }
        }

        boolean there() {
            return depth > 0;
        }

        private Profile after(Profile crown) {
            double straight = (depth - 2 * radius * (1 - Math.cos(fold))) / Math.sin(fold);
            return crown.arc(radius * fold, -1 / radius).line(straight > 1e-9 * depth ? straight : 0).arc(radius * fold, 1 / radius).line(land);
        }
    }

    public CrownedPanel {
        Need.length("length", length);
        Need.length("width", width);
        rise("length-rise", lengthRise, length);
        rise("width-rise", widthRise, width);
        holes = List.copyOf(holes);
        room(length, width, lengthRise, widthRise, holes);
    }

    public CrownedPanel(double length, double width, double lengthRise, double widthRise) {
        this(length, width, lengthRise, widthRise, Step.NONE, List.of());
    }

    private static double room(double length, double width, double lengthRise, double widthRise, List<Hole> holes) {
        double a = along(length, lengthRise).length() / 2, b = Profile.crown(width, widthRise).length() / 2;
        return Holes.check(holes, -a, a, -b, b);
    }

    private static void rise(String name, double rise, double over) {
        Need.that(Math.abs(rise) <= 0.45 * over, name,
                "%s %s over %s: at most 0.45 of it either way; a deeper one is a dish or a tube", name, Need.mm(rise), Need.mm(over));
    }

    @Override public Sample sample(Fineness fineness) {
        Skin skin = skin();
        double[] us = uBreaks(), vs = vBreaks();
        if (holes.isEmpty()) return Grid.of(skin, us, vs, fineness).sample(false);
        double chord = fineness.triangles() > 0 ? Fineness.USUAL.chord() : fineness.chord();
        double room = room(length, width, lengthRise, widthRise, holes);
        double[][] u = Holes.breaks(holes, true, us, chord, room), v = Holes.breaks(holes, false, vs, chord, room);
        Grid grid = Grid.of(skin, u[0], v[0], u[1], v[1], 1, fineness);
        return Holes.cut(skin, grid.us(), grid.vs(), holes);
    }

    /** The area by quadrature, less the holes as far as the skin is flat across one; the total curvature is that without the holes. */
    @Override public Truth truth() {
        double area = skin().area(uBreaks(), vBreaks(), 4);
        for (Hole hole : holes) area -= hole.area();
        double p = Math.tan(2 * Math.atan(2 * lengthRise / length)), q = Math.tan(2 * Math.atan(2 * widthRise / width));
        // K dA = dp dq (1 + p² + q²)^(-3/2), p and q the slopes of the two arcs; a step ends at the slope it begins with
        return Truth.curved(area, 4 * Math.atan(p * q / Math.sqrt(1 + p * p + q * q)), 1 - holes.size(), 1 + holes.size());
    }

    private Skin skin() {
        Profile along = along(length, lengthRise), across = across();
        double u0 = along.length() / 2, v0 = Profile.crown(width, widthRise).length() / 2;
        return (u, v, out) -> {
            out[0] = along.x(u + u0);
            out[1] = across.x(v + v0);
            out[2] = along.z(u + u0) + across.z(v + v0);
        };
    }

    private static Profile along(double length, double rise) {
        return Profile.crown(length, rise);
    }

    private Profile across() {
        Profile crown = Profile.crown(width, widthRise);
        return step.there() ? step.after(crown) : crown;
    }

    private double[] uBreaks() {
        double half = along(length, lengthRise).length() / 2;
        return new double[] {-half, half};
    }

    private double[] vBreaks() {
        double[] breaks = across().breaks();
        double half = Profile.crown(width, widthRise).length() / 2;
        for (int i = 0; i < breaks.length; i++) breaks[i] -= half;
        return breaks;
    }
}
