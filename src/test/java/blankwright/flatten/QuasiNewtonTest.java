package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.StretchEnergy;
import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleValueChecker;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunctionGradient;
import org.apache.commons.math3.optim.nonlinear.scalar.gradient.NonLinearConjugateGradientOptimizer;
import org.junit.jupiter.api.Test;

/** One factor, many steps: the end against the minimum that conjugate gradients of Commons Math find. */
class QuasiNewtonTest {
    private static final StretchEnergy ENERGY = new SymmetricDirichlet();
    private static final TriMesh BOWED = Grids.of(4, 4, (u, v) -> new double[] {100 * u, 100 * v, 40 * Math.sin(3 * u) * Math.cos(2 * v)});

    private static double[] seenFromAbove(Distortion form, TriMesh mesh) {
        double[] uv = new double[2 * mesh.vertexCount()];
        for (int v = 0; v < mesh.vertexCount(); v++) {
            uv[2 * v] = 0.7 * mesh.x(v) / form.scale();
            uv[2 * v + 1] = 1.1 * mesh.y(v) / form.scale();
        }
        return uv;
    }

    private static Cholesky factored(Distortion form, TriMesh mesh, double[] uv) {
        Cholesky solver = new Cholesky(mesh.vertexCount(), mesh.corners(), mesh.positions(), 2);
        assertTrue(solver.factor(form.stiffness(ENERGY, uv), Newton.LIFT * form.typicalStiffness(), () -> false));
        return solver;
    }

    @Test
    void endsWhereConjugateGradientsEnd() {
        Distortion form = new Distortion(BOWED);
        double[] uv = seenFromAbove(form, BOWED);
        double slow = new NonLinearConjugateGradientOptimizer(NonLinearConjugateGradientOptimizer.Formula.POLAK_RIBIERE,
                new SimpleValueChecker(1e-13, 1e-13), 1e-4, 1e-4, 1e-4)
                .optimize(new MaxEval(100_000), GoalType.MINIMIZE, new InitialGuess(uv), new ObjectiveFunction(p -> form.value(ENERGY, p)),
                        new ObjectiveFunctionGradient(p -> {
                            double[] gradient = new double[p.length];
                            form.gradient(ENERGY, p, gradient);
                            return gradient;
                        })).getValue();
        double value = form.value(ENERGY, uv);
        double found = new QuasiNewton(form, factored(form, BOWED, uv), ENERGY, Progress.NONE, 80, 30).run(uv, value, 1e-14);
        assertEquals(found, form.value(ENERGY, uv));
        assertTrue(found < value - 0.01, found + " from " + value);
        assertEquals(slow, found, 1e-8);
    }

    /** What the factor alone, never mended, would need many more steps for: it is made where the layout is far too small. */
    @Test
    void learnsWhatTheFactorHasWrong() {
        TriMesh mesh = Grids.mudguard(12);
        Distortion form = new Distortion(mesh);
        double[] small = ConformalMap.of(mesh, blankwright.mesh.RimLoops.of(mesh, blankwright.mesh.EdgeTable.of(mesh)).loop(0), form,
                new Cholesky(mesh.vertexCount(), mesh.corners(), mesh.positions(), 2), () -> false);
        form.scaleBest(small);
        for (int i = 0; i < small.length; i++) small[i] *= 0.25;                 // there the second derivative is 256 times too large
        Cholesky solver = factored(form, mesh, small);
        double[] uv = small.clone();
        double value = new QuasiNewton(form, solver, ENERGY, Progress.NONE, 80, 30).run(uv, form.value(ENERGY, uv), 1e-12);
        assertEquals(Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE).energy(), value / form.areaSum(), 1e-3);
    }
}
