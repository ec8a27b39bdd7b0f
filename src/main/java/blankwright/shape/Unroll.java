package blankwright.shape;

/** Flat facets that all run to one point, laid side by side. */
final class Unroll {
    private Unroll() { }

    /**
     * A conical grid with the apex for the origin of the sheet, the first generator pointing down and the next ones to its right.
     *
     * @param apex 3 numbers, mm
     * @param foot a point on each generator in order, mm
     */
    static Sample fromApex(Grid grid, double[] apex, double[][] foot) {
        double[] turned = new double[foot.length];
        for (int i = 1; i < foot.length; i++) {
            double[] a = minus(foot[i - 1], apex), b = minus(foot[i], apex);
            turned[i] = turned[i - 1] + Math.atan2(Skin.norm(Skin.cross(a, b)), Skin.dot(a, b));
        }
        return grid.sample((i, p) -> {
            double r = Skin.norm(minus(p, apex));
            return new double[] {r * Math.sin(turned[i]), -r * Math.cos(turned[i])};
        });
    }

    static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }
}
