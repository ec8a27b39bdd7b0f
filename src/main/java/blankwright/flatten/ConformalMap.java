package blankwright.flatten;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Cholesky;
import blankwright.sparse.FixedNodes;
import java.util.function.BooleanSupplier;

/**
 * The flat layout that keeps angles best in the least-squares sense, two far-apart rim vertices pinned: a good place to start from, but
 * it may turn triangles over where angles are obtuse.
 *
 * <p>Source: Lévy, Petitjean, Ray and Maillot, "Least Squares Conformal Maps", 2002; docs/sources.md [LPRM02].
 */
final class ConformalMap {
    private ConformalMap() { }

    /** 2 numbers a vertex, in the unit of {@code form}; null where the system could not be factored. */
    static double[] of(TriMesh mesh, int[] rim, Distortion form, Cholesky solver, BooleanSupplier cancelled) {
        int[] pins = farApart(mesh, rim);
        boolean[] fixed = new boolean[mesh.vertexCount()];
        fixed[pins[0]] = fixed[pins[1]] = true;
        double[] uv = new double[2 * mesh.vertexCount()];
        uv[2 * pins[1]] = mesh.distance(pins[0], pins[1]) / form.scale();
        FixedNodes system = new FixedNodes(form.conformal(), mesh.corners(), 2, fixed);
        if (!solver.factor(system, 0, cancelled)) return null;
        system.solve(solver, uv);
        return uv;
    }

    /** Two rim vertices nearly as far apart as any: the farthest from the first, then the farthest from that. */
    private static int[] farApart(TriMesh mesh, int[] rim) {
        int a = farthest(mesh, rim, rim[0]), b = farthest(mesh, rim, a);
        return new int[] {a, b};
    }

    private static int farthest(TriMesh mesh, int[] rim, int from) {
        int best = rim[0];
        for (int v : rim) if (mesh.distance(v, from) > mesh.distance(best, from)) best = v;
        return best;
    }
}
