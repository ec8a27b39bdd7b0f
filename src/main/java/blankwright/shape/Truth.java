package blankwright.shape;

import java.util.Optional;

/**
 * What is known of a smooth panel without flattening it.
 *
 * @param area mm²
 * @param totalCurvature integral of the Gaussian curvature over the smooth skin, rad; 0 for a developable panel (a fold or a bend counts as
 *        its skin does, a sharp fold counts nothing)
 * @param eulerNumber vertices - edges + triangles of any mesh of it: 1 a disk, 0 one hole or a tube, 2 closed
 * @param rims closed loops of free edge
 * @param development the exact flat shape, where there is one
 * @param leastSquares the least-squares flattening, where it is known in closed form
 */
public record Truth(double area, double totalCurvature, int eulerNumber, int rims, Optional<Development> development,
                    Optional<LeastSquares> leastSquares) {
    static Truth curved(double area, double totalCurvature, int eulerNumber, int rims) {
        return new Truth(area, totalCurvature, eulerNumber, rims, Optional.empty(), Optional.empty());
    }

    static Truth developable(double area, int eulerNumber, int rims, Development development) {
        return new Truth(area, 0, eulerNumber, rims, Optional.of(development), Optional.empty());
    }

    static Truth known(double area, double totalCurvature, LeastSquares answer) {
        return new Truth(area, totalCurvature, 1, 1, Optional.empty(), Optional.of(answer));
    }

    /** True where the panel unrolls without any stretching or shrinking. */
    public boolean developable() {
        return development.isPresent();
    }
}
