package blankwright.shape;

/**
 * A rectangle in plan with four straight edges, two opposite corners lifted and the others dropped: the ruled saddle z = 4 lift x y / (L W).
 * Length, width and lift in mm, the outer skin up. Parameters of a point: x and y from the middle, mm.
 */
public record TwistedPanel(double length, double width, double lift) implements Panel {
    public TwistedPanel {
        Need.length("length", length);
        Need.length("width", width);
        Need.that(Math.abs(lift) <= (length + width) / 2, "lift", "lift %s: at most half of length and width together", Need.mm(lift));
    }

    @Override public Sample sample(Fineness fineness) {
        return Grid.of(this::at, us(), vs(), fineness).sample(false);
    }

    /** Total curvature -4 atan(pq/√(1+p²+q²)), p and q the slopes at the edges' middles; area by quadrature. */
    @Override public Truth truth() {
        double p = 2 * lift / width, q = 2 * lift / length;
        return Truth.curved(((Skin) this::at).area(us(), vs(), 4), -4 * Math.atan(Math.abs(p * q) / Math.sqrt(1 + p * p + q * q)), 1, 1);
    }

    private double[] us() {
        return new double[] {-length / 2, length / 2};
    }

    private double[] vs() {
        return new double[] {-width / 2, width / 2};
    }

    private void at(double u, double v, double[] out) {
        out[0] = u;
        out[1] = v;
        out[2] = 4 * lift * u * v / (length * width);
    }
}
