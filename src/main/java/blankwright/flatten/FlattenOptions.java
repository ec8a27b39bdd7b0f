package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import java.util.Optional;

/**
 * @param stepLimit Newton steps of one descent at most
 * @param tolerance of the mean energy, relative: a step that promises less than this ends the descent, after it is taken
 * @param work what is made least once the distortion is even; empty to leave it at that
 */
public record FlattenOptions(int stepLimit, double tolerance, Optional<LeastWork> work) {
    public static final FlattenOptions DEFAULT = new FlattenOptions(500, 1e-9, Optional.empty());

    public FlattenOptions {
        if (stepLimit < 1) throw new IllegalArgumentException("step limit " + stepLimit + ": must be at least 1");
        if (!(tolerance > 0 && tolerance < 1)) throw new IllegalArgumentException("tolerance " + tolerance + ": must lie between 0 and 1");
    }

    public FlattenOptions withStepLimit(int limit) {
        return new FlattenOptions(limit, tolerance, work);
    }

    public FlattenOptions withTolerance(double relative) {
        return new FlattenOptions(stepLimit, relative, work);
    }

    /** @param least its costs, where not the same everywhere, are those of the disk's triangles */
    public FlattenOptions withWork(LeastWork least) {
        return new FlattenOptions(stepLimit, tolerance, Optional.of(least));
    }
}
