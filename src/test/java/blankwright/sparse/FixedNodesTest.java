package blankwright.sparse;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FixedNodesTest {
    /** Nothing pulls on a free node once it is in its place: A x, by the definition, is 0 there. */
    @Test
    void freeRowsOfTheWholeSystemAreSatisfiedAndFixedValuesKept() {
        Random random = new Random(12);
        for (int d = 1; d <= 3; d++) {
            SparseSolverContract.TestMesh mesh = SparseSolverContract.TestMesh.grid(12, 9, new Random(5));
            Elements elements = SparseSolverContract.random(mesh.tri().length / 3, d, 7);
            boolean[] fixed = new boolean[mesh.nodes()];
            for (int v = 0; v < fixed.length; v++) fixed[v] = random.nextInt(4) == 0;
            double[] given = SparseSolverContract.randomVector(mesh.nodes() * d, 8), x = given.clone();
            FixedNodes system = new FixedNodes(elements, mesh.tri(), d, fixed);
            Cholesky solver = new Cholesky(mesh.nodes(), mesh.tri(), mesh.xyz(), d);
            assertTrue(solver.factor(system, 0, () -> false));
            system.solve(solver, x);
            double[] pull = SparseSolverContract.times(mesh, d, elements, 0, x);
            for (int i = 0; i < x.length; i++) {
                if (fixed[i / d]) assertEquals(given[i], x[i]);
                else assertEquals(0, pull[i], 1e-10, "unknown " + i);
            }
        }
    }

    @Test
    void allFixedChangesNothing() {
        SparseSolverContract.TestMesh mesh = SparseSolverContract.TestMesh.grid(3, 3, new Random(5));
        boolean[] fixed = new boolean[mesh.nodes()];
        Arrays.fill(fixed, true);
        FixedNodes system = new FixedNodes((e, out) -> Arrays.fill(out, 0), mesh.tri(), 2, fixed);
        Cholesky solver = new Cholesky(mesh.nodes(), mesh.tri(), mesh.xyz(), 2);
        assertTrue(solver.factor(system, 0, () -> false));
        double[] given = SparseSolverContract.randomVector(2 * mesh.nodes(), 8), x = given.clone();
        system.solve(solver, x);
        assertArrayEquals(given, x);
    }
}
