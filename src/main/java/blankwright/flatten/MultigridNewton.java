package blankwright.flatten;

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
    private static final double USEFUL = 0.1;             // residual at which it still beats the time of a factor
    private static final double SETTLED = 1e5;            // promised gain, over what is worth gaining, below which the matrices hardly change
    private static final int MOVES = 25;                  // then a factor, which can keep more of the second derivative, is worth its time
    private static final int PATIENCE = 30;               // iterations: about the time of one factor at 500 000 triangles

    private final List<Level> levels;                     // this one and the coarser
    private final List<TriangleEnergy> energies = new ArrayList<>();
    private final Multigrid multigrid;
    private final double[] lift;
    private final Progress progress;
    private int moves;
    private boolean settled;                              // the matrices of the last move serve the next as well
    private Newton instead;

    MultigridNewton(List<Level> levels, TriangleEnergy energy, Progress progress) {
        this.levels = levels;
        this.progress = progress;
        int n = levels.size() - 1;
        energies.add(energy);
        for (int l = 0; l < n; l++) energies.add(levels.get(l).coarser(energies.get(l)));
        multigrid = new Multigrid(levels.subList(0, n).stream().map(Level::rows).toList(),
                levels.subList(0, n).stream().map(Level::transfer).toList(), levels.get(n).solver());
        lift = levels.stream().mapToDouble(l -> LIFT * l.form().typicalStiffness()).toArray();
    }

    @Override public boolean move(double[] uv, double[] gradient, double radius, double worth, double[] move) {
        if (instead == null && moves++ < MOVES && (settled || filled(uv, radius))) {
            double[] down = new double[gradient.length];
            for (int i = 0; i < down.length; i++) down[i] = -gradient[i];
            double left = multigrid.solve(down, move, NEAR, worth, PATIENCE, progress::cancelled);
            double slope = Descent.dot(gradient, move);
            settled = -slope < SETTLED * worth;
            if (left > NEAR) instead = byFactor();
            if (left <= USEFUL && slope <= 0) return true;
        }
        if (instead == null) instead = byFactor();
        return instead.move(uv, gradient, radius, worth, move);
    }

    private Newton byFactor() {
        return new FactorNewton(levels.get(0).form(), levels.get(0).solver(), energies.get(0), progress);
    }

    private boolean filled(double[] uv, double radius) {
        List<Elements> elements = new ArrayList<>();
        double[] layout = uv;
        for (int l = 0; l < levels.size(); l++) {
            if (l > 0) layout = levels.get(l - 1).carriedDown(layout, levels.get(l));
            elements.add(levels.get(l).form().stiffness(energies.get(l).overChanges(radius), layout));
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
