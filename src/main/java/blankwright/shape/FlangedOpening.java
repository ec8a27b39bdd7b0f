package blankwright.shape;

/**
 * A scuttle: a rectangular skin crowned both ways, with an oval opening in its middle whose edge is turned down into a flange.
 *
 * <p>Length and width in plan and the rises of the two crowns; length and width of the oval where the bend begins; width of the flange beyond
 * the bend, bend radius (0 is a sharp fold) and the angle turned through. mm and rad, the outer skin up. The skin is plan plus crown: the flange
 * is turned square to the oval in plan and follows the crown up and down.
 * <p>Parameters of a point: the ellipse's angle, rad; then 0 at the outer edge to 1 at the bend, mm beyond it.
 */
public record FlangedOpening(double length, double width, double lengthRise, double widthRise, double openingLength, double openingWidth,
                             double flange, double bendRadius, double fold) implements Panel {
    /** Metal left between the bend and the outer edge, mm. */
    private static final double BRIDGE = 5;

    public FlangedOpening {
        Need.length("length", length);
        Need.length("width", width);
        rise("length-rise", lengthRise, length);
        rise("width-rise", widthRise, width);
        Need.length("opening-length", openingLength);
        Need.length("opening-width", openingWidth);
        Need.length("flange", flange);
        Need.lengthOrNone("bend-radius", bendRadius);
        Need.angle("fold", fold, 0, 100);
        Need.that(openingLength <= length - 2 * BRIDGE, "opening-length", "opening-length %s in a panel of %s: leave %s of metal on each side",
                Need.mm(openingLength), Need.mm(length), Need.mm(BRIDGE));
        Need.that(openingWidth <= width - 2 * BRIDGE, "opening-width", "opening-width %s in a panel of %s: leave %s of metal on each side",
                Need.mm(openingWidth), Need.mm(width), Need.mm(BRIDGE));
        double p = openingLength / 2, q = openingWidth / 2, sharpest = Math.min(p * p / q, q * q / p);
        double inwards = bendRadius * Math.sin(fold) + Math.max(0, flange * Math.cos(fold));
        Need.that(inwards < 0.9 * sharpest, "flange",
                "flange and bend reach %s into an opening whose sharpest curve has a radius of %s: take a narrower flange or a rounder opening",
                Need.mm(inwards), Need.mm(sharpest));
    }

    private static void rise(String name, double rise, double over) {
        Need.that(Math.abs(rise) <= 0.3 * over, name, "%s %s over %s: at most 0.3 of it either way", name, Need.mm(rise), Need.mm(over));
    }

    @Override public Sample sample(Fineness fineness) {
        return Grid.of(this::at, us(), vs(), fineness).sample(true);
    }

    /** Both by quadrature; a sharp fold counts nothing. */
    @Override public Truth truth() {
        Skin skin = this::at;
        return Truth.curved(skin.area(us(), vs(), 3), skin.totalCurvature(us(), vs(), 3), 0, 2);
    }

    private double[] us() {
        double c = corner();
        return new double[] {-c, c, Math.PI - c, Math.PI + c, 2 * Math.PI - c};
    }

    private double[] vs() {
        double bend = bendRadius * fold;
        return bend > 0 ? new double[] {0, 1, 1 + bend, 1 + bend + flange} : new double[] {0, 1, 1 + flange};
    }

    /** The ellipse's angle at which its normal runs into a corner of the rectangle. */
    private double corner() {
        double a = length / 2, b = width / 2, p = openingLength / 2, q = openingWidth / 2, low = 0, high = Math.PI / 2;
        for (int i = 0; i < 60; i++) {
            double t = (low + high) / 2;
            double turn = q * Math.cos(t) * (b - q * Math.sin(t)) - p * Math.sin(t) * (a - p * Math.cos(t));
            if (turn > 0) low = t;
            else high = t;
        }
        return (low + high) / 2;
    }

    private void at(double u, double v, double[] out) {
        double p = openingLength / 2, q = openingWidth / 2, c = Math.cos(u), s = Math.sin(u), w = Math.hypot(q * c, p * s);
        double nx = q * c / w, ny = p * s / w, bend = bendRadius * fold, away, down = 0;
        if (v <= 1) {
            double toEnd = (length / 2 - p * Math.abs(c)) / Math.abs(nx), toSide = (width / 2 - q * Math.abs(s)) / Math.abs(ny);
            away = (1 - v) * Math.min(toEnd, toSide);
        } else {
            double turned = Math.min(v - 1, bend) / Math.max(bendRadius, 1e-300), beyond = Math.max(0, v - 1 - bend);
            if (bend == 0) turned = fold;
            away = -bendRadius * Math.sin(turned) - beyond * Math.cos(turned);
            down = bendRadius * (1 - Math.cos(turned)) + beyond * Math.sin(turned);
        }
        out[0] = p * c + nx * away;
        out[1] = q * s + ny * away;
        out[2] = crown(out[0], length, lengthRise) + crown(out[1], width, widthRise) - down;
    }

    /** Height of a circular arc over its chord, 0 at its top. */
    private static double crown(double x, double chord, double rise) {
        if (rise == 0) return 0;
        double r = (chord * chord / 4 + rise * rise) / (2 * rise);
        return -x * x / (r + Math.signum(r) * Math.sqrt(r * r - x * x));
    }
}
