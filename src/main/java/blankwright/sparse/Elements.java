package blankwright.sparse;

/**
 * A symmetric matrix given as a sum of small dense ones, each on the three nodes of one triangle.
 *
 * <p>Nothing is stored: the solver asks for an element when it needs it, from any thread, so implementations are pure functions.
 */
public interface Elements {
    /**
     * Adds nothing, writes all: the lower triangle of the symmetric matrix of element e, row by row, (3d)(3d+1)/2 numbers, where d is the
     * number of unknowns of a node; rows are node 0's unknowns, then node 1's, then node 2's, nodes in the order of the pattern.
     */
    void lowerTriangle(int e, double[] out);
}
