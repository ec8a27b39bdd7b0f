package blankwright.shape;

/**
 * A round or oblong hole, measured along the skin in mm: its middle along the panel's length and across it from the panel's middle, its own
 * length and width in the same directions. Equal length and width make it round; the ends of an oblong one are half circles.
 */
public record Hole(double along, double across, double length, double width) {
    public Hole {
        Need.length("length", length);
        Need.length("width", width);
        Need.that(Math.abs(along) <= Need.LARGEST, "along", "along %s: at most %s; check the unit", Need.mm(along), Need.FAR);
        Need.that(Math.abs(across) <= Need.LARGEST, "across", "across %s: at most %s; check the unit", Need.mm(across), Need.FAR);
    }

    public static Hole round(double along, double across, double diameter) {
        Need.length("diameter", diameter);
        return new Hole(along, across, diameter, diameter);
    }

    /** Radius of its ends, mm. */
    public double endRadius() {
        return Math.min(length, width) / 2;
    }

    /** mm², what it takes out of the skin where that is flat. */
    public double area() {
        double r = endRadius();
        return Math.PI * r * r + 2 * r * Math.abs(length - width);
    }

    /** Distance from its edge, mm, negative inside. */
    double distance(double u, double v) {
        return Math.hypot(u - coreU(u), v - coreV(v)) - endRadius();
    }

    /** Nearest point of its edge; the point must not lie on the middle line. */
    double[] nearest(double u, double v) {
        double cu = coreU(u), cv = coreV(v), d = Math.hypot(u - cu, v - cv);
        return new double[] {cu + (u - cu) / d * endRadius(), cv + (v - cv) / d * endRadius()};
    }

    private double coreU(double u) {
        double half = Math.max(0, length - width) / 2;
        return Math.max(along - half, Math.min(along + half, u));
    }

    private double coreV(double v) {
        double half = Math.max(0, width - length) / 2;
        return Math.max(across - half, Math.min(across + half, v));
    }
}
