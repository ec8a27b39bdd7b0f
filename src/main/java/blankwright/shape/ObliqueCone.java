package blankwright.shape;

import blankwright.num.Quadrature;

/**
 * Part or all of a leaning cone's wall between two level circles, the outer skin away from the middle: bottom and top radius, height, and how
 * far the top's middle stands to the side of the bottom's, mm. It begins at {@code start} round the bottom, 0 on the side the top leans to, and
 * goes on for {@code sweep}, rad.
 *
 * <p>Parameters of a point: the angle round its level circle, rad, and its height, mm. The wall unrolls about the point where it would meet;
 * the angle there is an integral without a closed form, taken by quadrature to rounding.
 */
public record ObliqueCone(double bottomRadius, double topRadius, double height, double offset, double start, double sweep) implements Panel {
    public ObliqueCone {
        Need.length("bottom-radius", bottomRadius);
        Need.length("top-radius", topRadius);
        Need.length("height", height);
        Need.lengthOrNone("offset", offset);
        Need.angle("sweep", sweep, 0, 360);
        Need.angle("start", start, -360.001, 360);
        Need.that(topRadius < bottomRadius, "top-radius", "top-radius %s on a bottom of %s: must be smaller; turn the cone over", Need.mm(topRadius), Need.mm(bottomRadius));
    }

    /** Height above the bottom of the point where the wall would meet, mm. */
    public double apexHeight() {
        return height * bottomRadius / (bottomRadius - topRadius);
    }

    /** That point's distance to the side of the bottom's middle, mm. */
    public double apexOffset() {
        return offset * bottomRadius / (bottomRadius - topRadius);
    }

    /** Length from that point down to the bottom edge at the angle t, mm. */
    public double generator(double t) {
        double x = bottomRadius * Math.cos(t) - apexOffset(), y = bottomRadius * Math.sin(t), h = apexHeight();
        return Math.sqrt(x * x + y * y + h * h);
    }

    /** Angle of the blank, rad, between the generators at two angles round the bottom: the integral of |P × P'| / |P|². */
    public double developedAngle(double from, double to) {
        int parts = Math.max(1, (int) Math.ceil(Math.abs(to - from) * 4));
        return Quadrature.of(t -> crossed(t) / (generator(t) * generator(t)), from, to, parts);
    }

    @Override public Sample sample(Fineness fineness) {
        Grid grid = Grid.of(this::at, new double[] {start, start + sweep}, new double[] {0, height}, fineness);
        if (Cylinder.isRound(sweep)) return grid.sample(true);
        double[] us = grid.us(), apex = {apexOffset(), 0, apexHeight()};
        double[][] foot = new double[us.length][3];
        for (int i = 0; i < us.length; i++) at(us[i], 0, foot[i]);
        return Unroll.fromApex(grid, apex, foot);
    }

    @Override public Truth truth() {
        boolean round = Cylinder.isRound(sweep);
        double small = topRadius / bottomRadius;
        double area = Quadrature.of(this::crossed, start, start + sweep, 32) / 2 * (1 - small * small);
        return Truth.developable(area, round ? 0 : 1, round ? 2 : 1, (u, v) -> {
            double r = generator(u) * (1 - v / apexHeight()), angle = developedAngle(start, u);
            return new double[] {r * Math.sin(angle), -r * Math.cos(angle)};
        });
    }

    /** |P × P'|, P from the meeting point to the bottom edge: r √(h² + (r - a cos t)²). */
    private double crossed(double t) {
        return bottomRadius * Math.hypot(apexHeight(), bottomRadius - apexOffset() * Math.cos(t));
    }

    private void at(double u, double v, double[] out) {
        double up = v / height, r = bottomRadius + (topRadius - bottomRadius) * up;
        out[0] = offset * up + r * Math.cos(u);
        out[1] = r * Math.sin(u);
        out[2] = v;
    }
}
