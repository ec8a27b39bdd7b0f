package blankwright.flatten;

import blankwright.mesh.FlatMap;

/** How a flattening ended. Either way no triangle of {@link #map} is turned over, unless the reason says there is no map at all. */
public sealed interface Outcome {
    /** The layout, in mm; of a {@link Stopped} with reason {@link Reason#NO_START} the best that was found, turned-over triangles and all. */
    FlatMap map();

    /** Newton steps taken, from the start that was used. */
    int steps();

    /** Mean symmetric Dirichlet energy; 4 is no distortion. */
    double energy();

    /** What the descent started from. */
    Start start();

    /** The minimum, to the tolerance asked for. */
    record Converged(FlatMap map, int steps, double energy, Start start) implements Outcome { }

    /** Not the minimum. */
    record Stopped(FlatMap map, int steps, double energy, Start start, Reason reason) implements Outcome { }

    /** Where a descent set out. */
    enum Start { CONFORMAL, UNTANGLED, CIRCLE, COARSER, GIVEN }

    /** Why it ended early. */
    enum Reason {
        STEP_LIMIT, NO_DESCENT, NO_START
    }
}
