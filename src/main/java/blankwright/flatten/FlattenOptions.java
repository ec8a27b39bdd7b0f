package blankwright.flatten;

/**
 * @param stepLimit Newton steps at most
 * @param tolerance of the mean energy, relative: a step that promises less than this ends the descent, after it is taken
 */
public record FlattenOptions(int stepLimit, double tolerance) {
    public static final FlattenOptions DEFAULT = new FlattenOptions(500, 1e-9);

    public FlattenOptions {
        if (stepLimit < 1) throw new IllegalArgumentException("step limit " + stepLimit + ": must be at least 1");
        if (!(tolerance > 0 && tolerance < 1)) throw new IllegalArgumentException("tolerance " + tolerance + ": must lie between 0 and 1");
    }

    public FlattenOptions withStepLimit(int limit) {
        return new FlattenOptions(limit, tolerance);
    }

    public FlattenOptions withTolerance(double relative) {
        return new FlattenOptions(stepLimit, relative);
    }
}
