package blankwright.drawing;

/** Which point of a line of lettering stands at the given place; heights count from the base line to the top of a capital. */
public enum Anchor {
    LEFT_BASE(0, 0), CENTRE_BASE(0.5, 0), RIGHT_BASE(1, 0),
    LEFT_MIDDLE(0, 0.5), CENTRE(0.5, 0.5), RIGHT_MIDDLE(1, 0.5),
    LEFT_TOP(0, 1), CENTRE_TOP(0.5, 1), RIGHT_TOP(1, 1);

    private final double along;
    private final double up;

    Anchor(double along, double up) {
        this.along = along;
        this.up = up;
    }

    /** Share of the width left of the place: 0, 0.5 or 1. */
    public double along() {
        return along;
    }

    /** Share of the capital height below the place: 0, 0.5 or 1. */
    public double up() {
        return up;
    }
}
