package blankwright.flatten.energy;

/**
 * Symmetric Dirichlet energy down to a threshold, below it continued as the parabola with the same value, slope and curvature: finite
 * for turned-over triangles and ever steeper the lower the threshold, so that descending it turns them back.
 */
public final class Untangling implements StretchEnergy {
    private final SymmetricDirichlet above = new SymmetricDirichlet();
    private final double threshold;
    private final double value, slope, curvature;

    /** @param threshold stretch below which the parabola holds, 0 &lt; threshold &lt; 1 */
    public Untangling(double threshold) {
        if (!(threshold > 0 && threshold < 1)) throw new IllegalArgumentException("threshold " + threshold + ": must lie between 0 and 1");
        this.threshold = threshold;
        value = above.value(threshold);
        slope = above.slope(threshold);
        curvature = above.curvature(threshold);
    }

    @Override public double value(double s) {
        double t = s - threshold;
        return t >= 0 ? above.value(s) : value + t * (slope + t * curvature / 2);
    }

    @Override public double slope(double s) {
        double t = s - threshold;
        return t >= 0 ? above.slope(s) : slope + t * curvature;
    }

    @Override public double curvature(double s) {
        return s >= threshold ? above.curvature(s) : curvature;
    }

    @Override public boolean barrier() {
        return false;
    }
}
