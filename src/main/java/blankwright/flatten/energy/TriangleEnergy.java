package blankwright.flatten.energy;

/**
 * Energy per unit form area of triangle t's map J from form to blank, where it depends on the signed singular values s1 >= |s2| only:
 * F(t, s1, s2) = F(t, s2, s1). No unit.
 */
public interface TriangleEnergy {
    /** F, +∞ where the stretches are out of reach: a line search reads that as "too far". */
    double value(int t, double s1, double s2);

    /**
     * Writes {∂F/∂s1, ∂F/∂s2, ∂²F/∂s1², ∂²F/∂s2², ∂²F/∂s1∂s2} to the beginning of {@code out}; called only where the value is finite,
     * and by several threads at once.
     */
    void derivatives(int t, double s1, double s2, double[] out);

    /** Whether F is infinite for s2 <= 0, so that a descent that starts without a turned triangle never turns one. */
    boolean barrier();

    /**
     * The same energy with its second derivatives, and nothing else, made to fit changes of strain up to {@code radius} rather than the
     * smallest ones: what to take a step by where they vary quickly. 0 leaves them as they are.
     */
    TriangleEnergy overChanges(double radius);

    /**
     * The same energy for a coarser mesh of the same form.
     *
     * @param triangles of the coarser mesh
     * @param coarse number of the coarser triangle that fine triangle t lies in, one per fine triangle
     * @param area form areas of the fine triangles, any unit: the weights of what is averaged
     */
    TriangleEnergy coarser(int triangles, int[] coarse, double[] area);
}
