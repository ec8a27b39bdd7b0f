package blankwright.sparse;

/** The library route, kept as the oracle of the fast one: EJML's sparse Cholesky, which does not share a line with ours. */
final class LibrarySolverTest extends SparseSolverContract {
    @Override double[] solve(TestMesh mesh, int unknowns, Elements elements, double shift, double[] b) {
        return LibrarySolver.solve(mesh, unknowns, elements, shift, b);
    }
}
