package blankwright.shape;

/**
 * Part or all of a right cone's wall, the outer skin away from the axis: bottom and top radius and height in mm, sweep in rad.
 *
 * <p>Parameters of a point: the angle round the axis, rad, and the distance up the slant from the bottom, mm.
 */
public record ConeFrustum(double bottomRadius, double topRadius, double height, double sweep) implements Panel {
    public ConeFrustum {
        Need.length("bottom-radius", bottomRadius);
        Need.length("top-radius", topRadius);
        Need.length("height", height);
        Need.angle("sweep", sweep, 0, 360);
        Need.that(topRadius < bottomRadius, "top-radius", "top-radius %s on a bottom of %s: must be smaller; turn the cone over, or take a cylinder",
                Need.mm(topRadius), Need.mm(bottomRadius));
    }

    /** Length of the wall from bottom to top, mm: sqrt(H² + (R - r)²). */
    public double slant() {
        return Math.hypot(height, bottomRadius - topRadius);
    }

    /** Radius of the blank's outer arc, mm. */
    public double outerArc() {
        return slant() * bottomRadius / (bottomRadius - topRadius);
    }

    /** Radius of the blank's inner arc, mm. */
    public double innerArc() {
        return slant() * topRadius / (bottomRadius - topRadius);
    }

    /** Angle of the blank's sector, rad. */
    public double sector() {
        return sweep * (bottomRadius - topRadius) / slant();
    }

    @Override public Sample sample(Fineness fineness) {
        Grid grid = Grid.of(this::at, new double[] {0, sweep}, new double[] {0, slant()}, fineness);
        if (Cylinder.isRound(sweep)) return grid.sample(true);
        double[] us = grid.us(), apex = {0, 0, height * bottomRadius / (bottomRadius - topRadius)};
        double[][] foot = new double[us.length][3];
        for (int i = 0; i < us.length; i++) at(us[i], 0, foot[i]);
        return Unroll.fromApex(grid, apex, foot);
    }

    @Override public Truth truth() {
        boolean round = Cylinder.isRound(sweep);
        double turn = (bottomRadius - topRadius) / slant();
        return Truth.developable(sweep * (bottomRadius + topRadius) / 2 * slant(), round ? 0 : 1, round ? 2 : 1, (u, v) -> {
            double r = outerArc() - v;
            return new double[] {r * Math.sin(u * turn), -r * Math.cos(u * turn)};
        });
    }

    private void at(double u, double v, double[] out) {
        double up = v / slant(), r = bottomRadius + (topRadius - bottomRadius) * up;
        out[0] = r * Math.cos(u);
        out[1] = r * Math.sin(u);
        out[2] = height * up;
    }
}
