package blankwright.flatten;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.TriangleEnergy;
import blankwright.num.Progress;
import blankwright.sparse.Elements;
import blankwright.sparse.Multigrid;
import java.util.ArrayList;
import java.util.List;

/**
 * By conjugate gradients over a mesh and its coarser ones; where they do not come near enough soon, as on meshes of slivers, or where the
 * descent takes many moves, as on crumpled ones, by a factor, for the rest of the descent.
 */
final class MultigridNewton implements Newton {
    private static final double NEAR = 0.01;              // residual, relative, at which a move is good enough: what is left is the next one's
    private static final double NEARLY = 0.06;            // the same where metal hardens: the second derivative misses as much itself
    private static final double FIRST_CHANGE = 0.01;      // of strain
    private static final double TWISTING = 0.5;           // share of negative twist once near, for metal that hardens: more is not positive on scans
    private static final double TWISTS = 1e7;             // promised gain, over what is worth gaining, below which that is near
    private static final double USEFUL = 0.1;             // residual at which it still beats the time of a factor
    private static final double SETTLED = 1e5;            // promised gain, over what is worth gaining, below which the matrices hardly change
    private static final int MOVES = 25;                  // then a factor, which can keep more of the second derivative, is worth its time
    private static final int PATIENCE = 30;               // iterations: about the time of one factor at 500 000 triangles

    private final List<Level> levels;                     // this one and the coarser
    private final TriangleEnergy energy;
    private final Multigrid multigrid;
    private final int[] tri;
    private final double[] second;                        // derivative of the energy, by triangles of the finest mesh
    private final double[] lift;
    private final Progress progress;
    private final Stresses stresses;                      // null where the energy has no metal in it
    private int moves;
    private double twisting;                              // share of negative twist that is kept
    private boolean settled;                              // the matrices of the last move serve the next as well
    private Newton instead;

    MultigridNewton(List<Level> levels, TriangleEnergy energy, Progress progress) {
        this.levels = levels;
        this.progress = progress;
        int n = levels.size() - 1;
        this.energy = energy;
        tri = levels.get(0).mesh().corners();
        second = new double[Distortion.SECOND * levels.get(0).mesh().triangleCount()];
        multigrid = new Multigrid(levels.subList(0, n).stream().map(Level::rows).toList(),
                levels.subList(0, n).stream().map(Level::transfer).toList(), levels.get(n).solver());
        stresses = energy instanceof LeastWork work ? new Stresses(tri.length / 3, work, FIRST_CHANGE) : null;
        lift = levels.stream().mapToDouble(l -> LIFT * l.form().typicalStiffness()).toArray();
    }

    @Override public void gradient(double[] uv, double radius, double[] gradient) {
        Distortion form = levels.get(0).form();
        if (instead != null || moves >= MOVES || settled) form.gradient(energy, uv, gradient);
        else if (energy instanceof LeastWork work) {
            form.gradient(work.overChanges(radius), uv, gradient, second, stresses, twisting);
            stresses.begun();
        } else form.gradient(energy, uv, gradient, second);
    }

    @Override public boolean move(double[] uv, double[] gradient, double radius, double worth, double[] move) {
        if (instead == null && moves++ < MOVES && (settled || filled(uv))) {
            double[] down = new double[gradient.length];
            for (int i = 0; i < down.length; i++) down[i] = -gradient[i];
            boolean hardens = stresses != null;
            double near = hardens ? NEARLY : NEAR;
            double left = multigrid.solve(down, move, near, worth, PATIENCE, progress::cancelled);
            double slope = Descent.dot(gradient, move);
            settled = !hardens && -slope < SETTLED * worth;
            boolean twisted = twisting > 0;
            twisting = hardens && left <= near && -slope < TWISTS * worth ? TWISTING : 0;
            if (left > near && !twisted) instead = byFactor();
            if ((left <= USEFUL || twisted) && slope < 0) return true;
        }
        if (instead == null) instead = byFactor();
        return instead.move(uv, gradient, radius, worth, move);
    }

    private Newton byFactor() {
        return new FactorNewton(levels.get(0).form(), levels.get(0).solver(), energy, progress);
    }

    private boolean filled(double[] uv) {
        Distortion form = levels.get(0).form();
        List<Elements> elements = new ArrayList<>(List.of(form.stiffness(second)));
        double[] layout = uv;
        PlaneStiffness.Finer finer = (t, sum, at) -> {
            form.addInPlane(t, uv, second, sum, at);
            return Math.max(Math.abs(PlaneStiffness.twiceArea(tri, t, uv)), Double.MIN_NORMAL);
        };
        for (int l = 1; l < levels.size(); l++) {
            layout = levels.get(l - 1).carriedDown(layout);
            PlaneStiffness coarse = levels.get(l - 1).averaged(finer, layout);
            elements.add(coarse.elements());
            finer = coarse.finer();
        }
        return multigrid.fill(elements, lift, rigidMotions(layout), progress::cancelled);
    }

    /** Orthonormal: along, across, and a small turn about the middle. */
    private static List<double[]> rigidMotions(double[] layout) {
        int n = layout.length / 2;
        double x = 0, y = 0, square = 0;
        for (int v = 0; v < n; v++) {
            x += layout[2 * v] / n;
            y += layout[2 * v + 1] / n;
        }
        for (int v = 0; v < n; v++) square += Math.pow(layout[2 * v] - x, 2) + Math.pow(layout[2 * v + 1] - y, 2);
        double[] along = new double[2 * n], across = new double[2 * n], turn = new double[2 * n];
        for (int v = 0; v < n; v++) {
            along[2 * v] = across[2 * v + 1] = 1 / Math.sqrt(n);
            turn[2 * v] = (y - layout[2 * v + 1]) / Math.sqrt(square);
            turn[2 * v + 1] = (layout[2 * v] - x) / Math.sqrt(square);
        }
        return List.of(along, across, turn);
    }
}
