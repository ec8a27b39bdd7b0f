package blankwright.flatten;

import blankwright.flatten.energy.TriangleEnergy;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.sparse.Cholesky;
import blankwright.sparse.Elements;
import blankwright.sparse.FixedNodes;
import java.util.Arrays;
import java.util.function.BooleanSupplier;

/**
 * The flat layout with the outer rim on a circle, every edge a spring and every other vertex where its springs balance: no triangle turned
 * over, whatever the panel and however stiff each spring. Holes are closed for it by a fan of weak springs round an extra vertex each.
 *
 * <p>With springs alike, a spike or a long tube shrinks to a dot. So {@link #evened} stiffens the springs of triangles that are stretched,
 * weakens the others, and balances again, as long as the energy falls.
 * <p>Source: Tutte, "How to draw a graph", 1963; Floater, "One-to-one piecewise linear mappings over triangulations", 2003; for the springs
 * renewed, Yoshizawa, Belyaev and Seidel, "A fast and simple stretch-minimizing mesh parameterization", 2004; docs/sources.md [T63], [F03],
 * [YBS04].
 */
final class CircleMap {
    private static final int ROUNDS = 15;                 // the deepest tubes of the corpus take 12
    private static final double SOFTEST = 1e-15;          // spring, in mean springs; and 1 / SOFTEST the stiffest
    private static final double IN_HOLES = 0.01;          // spring across a hole, in mean springs
    private static final double SHORTEST = 1e-3;          // in mean edges: a shorter edge gets no stiffer spring
    private static final double WORTH = 0.9;              // energy, in that of the round before, above which rounds end

    private final TriMesh mesh;
    private final BooleanSupplier cancelled;
    private final int[] tri;                              // with the fans over holes
    private final double[] spring;                        // of the edge from corner k of triangle t to the next: spring[3t + k]
    private final boolean[] fixed;
    private final double[] u, v;
    private final Cholesky solver;

    private CircleMap(TriMesh mesh, RimLoops rims, int outer, BooleanSupplier cancelled) {
        this.mesh = mesh;
        this.cancelled = cancelled;
        int n = mesh.vertexCount(), all = n + rims.count() - 1;
        tri = withFans(mesh, rims, outer);
        double[] xyz = Arrays.copyOf(mesh.positions(), 3 * all);
        fixed = new boolean[all];
        u = new double[all];
        v = new double[all];
        int hub = n;
        for (int i = 0; i < rims.count(); i++) {
            if (i != outer) middle(mesh, rims.loop(i), xyz, hub++);
        }
        placeRim(mesh, rims.loop(outer));
        spring = new double[tri.length];
        double mean = 0;
        for (int h = 0; h < 3 * mesh.triangleCount(); h++) mean += length(h) / (3 * mesh.triangleCount());
        for (int h = 0; h < tri.length; h++) spring[h] = h < 3 * mesh.triangleCount() ? 1 / Math.max(SHORTEST, length(h) / mean) : IN_HOLES;
        solver = new Cholesky(all, tri, xyz, 1);
    }

    private double length(int h) {
        return mesh.distance(tri[h], tri[h % 3 == 2 ? h - 2 : h + 1]);
    }

    /** Springs by length: 2 numbers a vertex, in units of the root of the form's area; null where the system could not be factored. */
    static double[] of(TriMesh mesh, RimLoops rims, int outer, BooleanSupplier cancelled) {
        return new CircleMap(mesh, rims, outer, cancelled).balanced();
    }

    /** Springs renewed, scaled to the least energy, in the unit of {@code form}; null where the system could not be factored. */
    static double[] evened(TriMesh mesh, RimLoops rims, int outer, Distortion form, TriangleEnergy energy, BooleanSupplier cancelled) {
        return new CircleMap(mesh, rims, outer, cancelled).evened(form, energy);
    }

    private double[] evened(Distortion form, TriangleEnergy energy) {
        double[] best = null, springs = spring.clone();
        double least = Double.POSITIVE_INFINITY, power = 1;
        for (int round = 0; round < ROUNDS && power > 0.2; round++) {
            double[] uv = balanced();
            if (uv == null) return best;
            form.scaleBest(uv);
            double now = form.value(energy, uv);
            boolean better = now < least || !(least < Double.POSITIVE_INFINITY);     // not yet written apart: the next round may be
            if (better) {
                boolean last = now > WORTH * least;
                best = uv;
                least = now;
                System.arraycopy(spring, 0, springs, 0, spring.length);
                if (last && now < Double.POSITIVE_INFINITY) return best;
            } else {
                System.arraycopy(springs, 0, spring, 0, spring.length);
                power /= 2;
            }
            renew(form, best, power);
        }
        return best;
    }

    /** Multiplies each spring by its triangle's stretch to the power said, and scales all to mean 1. */
    private void renew(Distortion form, double[] uv, double power) {
        int count = 3 * mesh.triangleCount();
        double logs = 0;
        for (int h = 0; h < count; h++) {
            spring[h] *= Math.pow(Math.max(1e-12, Math.min(1e12, form.stretch(h / 3, uv))), power);
            logs += Math.log(spring[h]) / count;
        }
        double mean = Math.exp(logs);
        for (int h = 0; h < count; h++) spring[h] = Math.max(SOFTEST, Math.min(1 / SOFTEST, spring[h] / mean));
    }

    private double[] balanced() {
        Elements pull = (e, out) -> {                     // each spring pulls its ends together, in both directions alike
            double a = spring[3 * e], b = spring[3 * e + 1], c = spring[3 * e + 2];
            out[0] = a + c;
            out[1] = -a;
            out[2] = a + b;
            out[3] = -c;
            out[4] = -b;
            out[5] = b + c;
        };
        FixedNodes system = new FixedNodes(pull, tri, 1, fixed);
        if (!solver.factor(system, 0, cancelled)) return null;
        system.solve(solver, u);
        system.solve(solver, v);
        double[] uv = new double[2 * mesh.vertexCount()];
        for (int i = 0; i < mesh.vertexCount(); i++) {
            uv[2 * i] = u[i];
            uv[2 * i + 1] = v[i];
        }
        return uv;
    }

    private static int[] withFans(TriMesh mesh, RimLoops rims, int outer) {
        int[] tri = mesh.corners();
        int hub = mesh.vertexCount();
        for (int i = 0; i < rims.count(); i++) {
            if (i == outer) continue;
            int[] loop = rims.loop(i);
            int at = tri.length;
            tri = Arrays.copyOf(tri, at + 3 * loop.length);
            for (int j = 0; j < loop.length; j++) {
                tri[at++] = loop[(j + 1) % loop.length];
                tri[at++] = loop[j];
                tri[at++] = hub;
            }
            hub++;
        }
        return tri;
    }

    private static void middle(TriMesh mesh, int[] loop, double[] xyz, int hub) {
        for (int w : loop) {
            xyz[3 * hub] += mesh.x(w) / loop.length;
            xyz[3 * hub + 1] += mesh.y(w) / loop.length;
            xyz[3 * hub + 2] += mesh.z(w) / loop.length;
        }
    }

    /** Along the circle of area 1 by length, each side given at least a fifth of its even share so that no corner of the circle is lost. */
    private void placeRim(TriMesh mesh, int[] loop) {
        double whole = 0;
        for (int i = 0; i < loop.length; i++) whole += mesh.distance(loop[i], loop[(i + 1) % loop.length]);
        double radius = 1 / Math.sqrt(Math.PI), angle = 0;
        for (int i = 0; i < loop.length; i++) {
            fixed[loop[i]] = true;
            u[loop[i]] = radius * Math.cos(angle);
            v[loop[i]] = radius * Math.sin(angle);
            double share = mesh.distance(loop[i], loop[(i + 1) % loop.length]) / whole;
            angle += 2 * Math.PI * (0.8 * share + 0.2 / loop.length);
        }
    }
}
