package blankwright.flatten;

import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.flatten.energy.TriangleEnergy;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Orientation;
import blankwright.num.Progress;
import blankwright.sparse.Cholesky;
import blankwright.sparse.Elements;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;

/**
 * Pulls a layout that covers itself apart, where a small rise of distortion is enough.
 *
 * <ol><li>Each place where it covers itself gives two stretches of rim and the direction that parts them ({@link Covering}).
 * <li>Each vertex of one stretch is held against the side of the other that lies across from it, seen along that direction, by a spring that
 * pushes only: it acts while less than the gap is left.
 * <li>Newton descent of the distortion plus the springs, the barrier against turned-over triangles as ever.
 * <li>Places are asked for again; stretches found before keep their springs; all springs become ten times stiffer.
 * <li>Done where no place is left; given up where the mean energy has risen by more than {@link #allowed}, since stiffer springs only cost
 * more.</ol>
 *
 * <p>What comes out is the least distortion that the springs let through, no longer that of the blank alone. Same input, same bits.
 * <p>Source: node-to-segment contact by penalty, as in Wriggers, "Computational Contact Mechanics", 2006; docs/sources.md [W06].
 */
public final class Apart {
    /** Mean energy that may be spent on parting: 1 % more strain, root mean square, as the energy is 4 + 4 (e1² + e2²) for small strains. */
    public static final double RISE = 0.0004;
    /** Of the distortion that is there anyway. */
    public static final double SHARE = 0.1;
    /** mm that are left between the stretches, or this part of the root of the form's area where that is less. */
    static final double GAP = 1, GAP_SHARE = 0.003;
    private static final int ROUNDS = 10, STEPS = 30;
    private static final double TOLERANCE = 1e-9;

    private final TriMesh mesh;
    private final Distortion form;
    private final RimLoops rims;
    private final TriangleEnergy energy = new SymmetricDirichlet();
    private final Function<FlatMap, List<double[]>> judge;
    private final Progress progress;
    private final double gap;
    private final double lift;
    private int steps;

    private Apart(TriMesh mesh, Function<FlatMap, List<double[]>> judge, Progress progress) {
        this.mesh = mesh;
        this.judge = judge;
        this.progress = progress;
        form = new Distortion(mesh);
        rims = RimLoops.of(mesh, EdgeTable.of(mesh));
        gap = Math.min(GAP / form.scale(), GAP_SHARE);
        lift = 1e-9 * form.typicalStiffness();
    }

    /** How much the mean symmetric Dirichlet energy may rise above {@code energy}. */
    public static double allowed(double energy) {
        return Math.max(RISE, SHARE * (energy - 4));
    }

    /**
     * @param covering a layout without turned-over triangles
     * @param judge rings round the places where a layout covers itself, mm; empty where it does not
     * @return the layout pulled apart, converged; empty where that would take more than {@link #allowed}
     * @throws CancellationException once the progress says it is no longer wanted
     */
    public static Optional<Outcome> of(Outcome covering, Function<FlatMap, List<double[]>> judge, Progress progress) {
        return new Apart(covering.map().form(), judge, progress).run(covering);
    }

    /** One stretch held off another; d parts them. */
    private record Hold(int[] first, int[] second, double du, double dv) {
        boolean sameAs(Covering c) {
            return meet(first, c.first()) && meet(second, c.second()) || meet(first, c.second()) && meet(second, c.first());
        }

        private static boolean meet(int[] a, int[] b) {
            return Arrays.stream(a).anyMatch(v -> Arrays.stream(b).anyMatch(w -> v == w));
        }
    }

    /** Vertex p held off the point of side a-b that {@code share} of it lies before; moving p along (du, dv) relaxes it. */
    private record Spring(int p, int a, int b, double share, double du, double dv, double stiffness) { }

    private Optional<Outcome> run(Outcome covering) {
        double[] uv = covering.map().positions();
        for (int i = 0; i < uv.length; i++) uv[i] /= form.scale();
        double most = mean(uv) + allowed(mean(uv)), stiffness = 1;
        steps = covering.steps();
        List<Hold> holds = new ArrayList<>();
        FlatMap map = covering.map();
        for (int round = 0; round < ROUNDS; round++, stiffness *= 10) {
            List<double[]> places = judge.apply(map);
            if (places.isEmpty()) return round == 0 ? Optional.empty() : Optional.of(new Outcome.Converged(map, steps, mean(uv), covering.start()));
            progress.at("Pulling apart", (double) round / ROUNDS);
            if (!renew(holds, Covering.of(map, rims, places))) return Optional.empty();
            if (!descend(uv, springs(holds, uv, stiffness), most)) return Optional.empty();
            map = inMillimetres(uv);
        }
        return Optional.empty();
    }

    /** Places found again give their hold a new direction and longer stretches; false where there is nothing to hold. */
    private static boolean renew(List<Hold> holds, List<Covering> found) {
        for (Covering c : found) {
            int[] first = c.first(), second = c.second();
            Hold before = holds.stream().filter(h -> h.sameAs(c)).findFirst().orElse(null);
            if (before != null) {
                boolean alike = Hold.meet(before.first(), first);
                first = longer(first, alike ? before.first() : before.second());
                second = longer(second, alike ? before.second() : before.first());
                holds.remove(before);
            }
            holds.add(new Hold(first, second, c.du(), c.dv()));
        }
        return !holds.isEmpty();
    }

    /** Of two stretches of one rim that meet the one with more vertices. */
    private static int[] longer(int[] a, int[] b) {
        return b.length > a.length ? b : a;
    }

    private List<Spring> springs(List<Hold> holds, double[] uv, double stiffness) {
        List<Spring> springs = new ArrayList<>();
        for (Hold h : holds) {
            double each = stiffness / (h.first().length + h.second().length);
            for (int p : h.first()) add(springs, p, h.second(), h.du(), h.dv(), uv, each);
            for (int p : h.second()) add(springs, p, h.first(), -h.du(), -h.dv(), uv, each);
        }
        return springs;
    }

    /** Holds p off the side of the stretch that lies across from it, the farthest along (du, dv) of several. */
    private static void add(List<Spring> springs, int p, int[] stretch, double du, double dv, double[] uv, double stiffness) {
        double across = uv[2 * p + 1] * du - uv[2 * p] * dv, farthest = Double.NEGATIVE_INFINITY;
        Spring best = null;
        for (int i = 1; i < stretch.length; i++) {
            int a = stretch[i - 1], b = stretch[i];
            if (p == a || p == b) return;                   // the stretches touch here
            double from = uv[2 * a + 1] * du - uv[2 * a] * dv, to = uv[2 * b + 1] * du - uv[2 * b] * dv;
            if (from > across == to > across) continue;
            double share = (across - from) / (to - from);
            double along = (1 - share) * (uv[2 * a] * du + uv[2 * a + 1] * dv) + share * (uv[2 * b] * du + uv[2 * b + 1] * dv);
            if (along <= farthest) continue;
            farthest = along;
            best = new Spring(p, a, b, share, du, dv, stiffness);
        }
        if (best != null) springs.add(best);
    }

    /** How much of the gap is missing, 0 or more. */
    private double missing(Spring s, double[] uv) {
        double u = uv[2 * s.p()] - (1 - s.share()) * uv[2 * s.a()] - s.share() * uv[2 * s.b()];
        double v = uv[2 * s.p() + 1] - (1 - s.share()) * uv[2 * s.a() + 1] - s.share() * uv[2 * s.b() + 1];
        return Math.max(0, gap - u * s.du() - v * s.dv());
    }

    private double value(List<Spring> springs, double[] uv) {
        double sum = form.value(energy, uv);
        for (Spring s : springs) {
            double m = missing(s, uv);
            sum += s.stiffness() / 2 * m * m;
        }
        return sum;
    }

    private void gradient(List<Spring> springs, double[] uv, double[] out) {
        form.gradient(energy, uv, out);
        for (Spring s : springs) {
            double pull = -s.stiffness() * missing(s, uv);
            pull(out, s.p(), pull, s);
            pull(out, s.a(), -(1 - s.share()) * pull, s);
            pull(out, s.b(), -s.share() * pull, s);
        }
    }

    private static void pull(double[] out, int v, double by, Spring s) {
        out[2 * v] += by * s.du();
        out[2 * v + 1] += by * s.dv();
    }

    private Elements stiffness(List<Spring> springs, double[] uv) {
        Elements triangles = form.stiffness(energy, uv);
        int count = mesh.triangleCount();
        return (e, out) -> {
            if (e < count) {
                triangles.lowerTriangle(e, out);
                return;
            }
            Spring s = springs.get(e - count);
            double k = missing(s, uv) > 0 ? s.stiffness() : 0;
            double[] m = {s.du(), s.dv(), -(1 - s.share()) * s.du(), -(1 - s.share()) * s.dv(), -s.share() * s.du(), -s.share() * s.dv()};
            for (int i = 0, at = 0; i < 6; i++) for (int j = 0; j <= i; j++, at++) out[at] = k * m[i] * m[j];
        };
    }

    /** To the bottom, in place; false where no step leads down before that, or the mean energy ends above {@code most}. */
    private boolean descend(double[] uv, List<Spring> springs, double most) {
        int count = mesh.triangleCount();
        int[] tri = Arrays.copyOf(mesh.corners(), 3 * (count + springs.size()));
        for (int i = 0; i < springs.size(); i++) {
            Spring s = springs.get(i);
            tri[3 * (count + i)] = s.p();
            tri[3 * (count + i) + 1] = s.a();
            tri[3 * (count + i) + 2] = s.b();
        }
        Cholesky solver = new Cholesky(mesh.vertexCount(), tri, mesh.positions(), 2);
        double[] gradient = new double[uv.length], move = new double[uv.length], there = new double[uv.length];
        double value = value(springs, uv);
        for (int step = 0; step < STEPS; step++) {
            if (progress.cancelled()) throw new CancellationException();
            gradient(springs, uv, gradient);
            if (!solver.factor(stiffness(springs, uv), lift, progress::cancelled)) return false;
            for (int i = 0; i < move.length; i++) move[i] = -gradient[i];
            solver.solve(move, move);
            double slope = 0;
            for (int i = 0; i < move.length; i++) slope += gradient[i] * move[i];
            double part = Math.min(1, 0.9 * form.longestStep(uv, move)), next;
            boolean full = part == 1;
            while (true) {
                for (int i = 0; i < uv.length; i++) there[i] = uv[i] + part * move[i];
                next = value(springs, there);
                if (next <= value + 1e-4 * part * slope) break;
                if (-slope / 2 <= TOLERANCE * value) return good(uv, most);           // at the bottom, but for rounding
                part /= 2;
                full = false;
                if (part < 1e-12) return false;
            }
            System.arraycopy(there, 0, uv, 0, uv.length);
            steps++;
            boolean bottom = full && -slope / 2 <= TOLERANCE * value;
            value = next;
            if (bottom) return good(uv, most);
        }
        return false;
    }

    private boolean good(double[] uv, double most) {
        return mean(uv) <= most && !anyTurnedOver(uv);
    }

    private boolean anyTurnedOver(double[] uv) {
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int a = 2 * mesh.corner(t, 0), b = 2 * mesh.corner(t, 1), c = 2 * mesh.corner(t, 2);
            if (Orientation.sign(uv[a], uv[a + 1], uv[b], uv[b + 1], uv[c], uv[c + 1]) <= 0) return true;
        }
        return false;
    }

    private double mean(double[] uv) {
        return form.value(new SymmetricDirichlet(), uv) / form.areaSum();
    }

    private FlatMap inMillimetres(double[] uv) {
        double[] mm = new double[uv.length];
        for (int i = 0; i < uv.length; i++) mm[i] = uv[i] * form.scale();
        return FlatMap.of(mesh, mm);
    }
}
