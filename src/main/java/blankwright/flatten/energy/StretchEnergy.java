package blankwright.flatten.energy;

/** The same for every triangle, and a sum f(s1) + f(s2). */
public interface StretchEnergy extends TriangleEnergy {
    /** f(s), +∞ where s is out of reach: a line search reads that as "too far". */
    double value(double s);

    /** f'(s). */
    double slope(double s);

    /** f''(s). */
    double curvature(double s);

    @Override default double value(int t, double s1, double s2) {
        return value(s1) + value(s2);
    }

    @Override default void derivatives(int t, double s1, double s2, double[] out) {
        out[0] = slope(s1);
        out[1] = slope(s2);
        out[2] = curvature(s1);
        out[3] = curvature(s2);
        out[4] = 0;
    }

    @Override default StretchEnergy overChanges(double radius) {
        return this;
    }

    @Override default StretchEnergy coarser(int triangles, int[] coarse, double[] area) {
        return this;
    }
}
