package blankwright.viewer.model;

/**
 * Which part of the sheet the blank's pane shows. Screen: pixels from the middle of the pane, x right, y down; the sheet's v points up.
 *
 * @param u with v the place in the middle, mm
 * @param perMm pixels for each mm, above 0
 */
public record FlatView(double u, double v, double perMm) {
    private static final double LEAST = 1e-3, MOST = 500;

    public FlatView {
        perMm = Math.max(LEAST, Math.min(MOST, perMm));
    }

    /** All of a box {u0, v0, u1, v1} in the pane, a little room round it. */
    public static FlatView fitting(double[] box, double paneWidth, double paneHeight) {
        double wide = Math.max(1, box[2] - box[0]), high = Math.max(1, box[3] - box[1]);
        return new FlatView((box[0] + box[2]) / 2, (box[1] + box[3]) / 2, Math.min(paneWidth / wide, paneHeight / high) * 0.88);
    }

    public double x(double atU) {
        return (atU - u) * perMm;
    }

    public double y(double atV) {
        return (v - atV) * perMm;
    }

    public double uAt(double x) {
        return u + x / perMm;
    }

    public double vAt(double y) {
        return v - y / perMm;
    }

    public FlatView moved(double dx, double dy) {
        return new FlatView(u - dx / perMm, v + dy / perMm, perMm);
    }

    /** {@code factor} times larger, what lies at (x, y) staying there. */
    public FlatView zoomed(double factor, double x, double y) {
        double there = Math.max(LEAST, Math.min(MOST, perMm * factor));
        return new FlatView(uAt(x) - x / there, vAt(y) + y / there, there);
    }

    /** At the given size, the middle staying there. */
    public FlatView at(double pixelsPerMm) {
        return new FlatView(u, v, pixelsPerMm);
    }

    public FlatView lookingAt(double atU, double atV) {
        return new FlatView(atU, atV, perMm);
    }
}
