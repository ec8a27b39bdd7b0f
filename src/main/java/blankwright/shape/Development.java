package blankwright.shape;

/** Where the points of a developable panel lie once it is unrolled, outer skin up. */
@FunctionalInterface
public interface Development {
    /** Flat position of the point with parameters (u, v), 2 numbers, mm; lengths on the sheet equal lengths on the panel. */
    double[] at(double u, double v);
}
