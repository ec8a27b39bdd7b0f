package blankwright.flatten;

/** Finds the next move of a descent: to the minimum of the energy's second-order picture, or nearly. */
interface Newton {
    /** Lift of the diagonal, in typical entries of it: rigid motions cost nothing. */
    double LIFT = 1e-9;

    /**
     * Writes the energy's gradient at a layout, 2 numbers a vertex; what else is found on the way serves the move from there.
     *
     * @param radius change of strain that the second derivative is to fit
     */
    void gradient(double[] uv, double radius, double[] gradient);

    /**
     * @param uv the layout that the gradient was last asked for; must not change meanwhile
     * @param gradient there
     * @param radius as given with it
     * @param worth energy below which what is still to be gained need not be gained by this move
     * @param move written: along it the energy falls
     * @return false where no such move was found
     * @throws java.util.concurrent.CancellationException once the result is not wanted
     */
    boolean move(double[] uv, double[] gradient, double radius, double worth, double[] move);

    /**
     * Goes on downhill after a step, in place, by what is at hand from the last move, if anything is.
     *
     * @param value energy where the step ended
     * @param worth energy below which nothing more need be gained
     * @param cut whether the step was shorter than asked
     * @return the energy where it ends
     * @throws java.util.concurrent.CancellationException once the result is not wanted
     */
    default double goOn(double[] uv, double value, double worth, boolean cut) {
        return value;
    }
}
