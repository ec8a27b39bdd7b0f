package blankwright.flatten;

import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.sparse.Cholesky;
import blankwright.sparse.Elements;
import blankwright.sparse.FixedNodes;
import java.util.Arrays;
import java.util.function.BooleanSupplier;

/**
 * The flat layout with the outer rim on a circle and every other vertex at the mean of its neighbours: no triangle turned over, whatever
 * the panel, but far from the wanted shape. Holes are closed for it by a fan of triangles round an extra vertex each.
 *
 * <p>Source: Tutte, "How to draw a graph", 1963; Floater, "One-to-one piecewise linear mappings over triangulations", 2003;
 * docs/sources.md [T63], [F03].
 */
final class CircleMap {
    private CircleMap() { }

    /** 2 numbers a vertex, in units of the root of the form's area; null where the system could not be factored. */
    static double[] of(TriMesh mesh, RimLoops rims, int outer, BooleanSupplier cancelled) {
        int n = mesh.vertexCount(), hubs = rims.count() - 1;
        int[] tri = withFans(mesh, rims, outer);
        double[] xyz = Arrays.copyOf(mesh.positions(), 3 * (n + hubs));
        boolean[] fixed = new boolean[n + hubs];
        double[] uv = new double[2 * (n + hubs)];
        int hub = n;
        for (int i = 0; i < rims.count(); i++) {
            if (i != outer) middle(mesh, rims.loop(i), xyz, hub++);
        }
        placeRim(mesh, rims.loop(outer), uv, fixed);
        Elements mean = (e, out) -> {
            Arrays.fill(out, 0);                       // each side pulls its ends together, in both directions alike
            out[0] = out[2] = out[5] = out[9] = out[14] = out[20] = 2;
            out[3] = out[7] = out[10] = out[12] = out[16] = out[18] = -1;
        };
        FixedNodes system = new FixedNodes(mean, tri, 2, fixed);
        Cholesky solver = new Cholesky(n + hubs, tri, xyz, 2);
        if (!solver.factor(system, 0, cancelled)) return null;
        system.solve(solver, uv);
        return Arrays.copyOf(uv, 2 * n);
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
        for (int v : loop) {
            xyz[3 * hub] += mesh.x(v) / loop.length;
            xyz[3 * hub + 1] += mesh.y(v) / loop.length;
            xyz[3 * hub + 2] += mesh.z(v) / loop.length;
        }
    }

    /** Along the circle of area 1 by length, each side given at least a fifth of its even share so that no corner of the circle is lost. */
    private static void placeRim(TriMesh mesh, int[] loop, double[] uv, boolean[] fixed) {
        double whole = 0;
        for (int i = 0; i < loop.length; i++) whole += mesh.distance(loop[i], loop[(i + 1) % loop.length]);
        double radius = 1 / Math.sqrt(Math.PI), angle = 0;
        for (int i = 0; i < loop.length; i++) {
            fixed[loop[i]] = true;
            uv[2 * loop[i]] = radius * Math.cos(angle);
            uv[2 * loop[i] + 1] = radius * Math.sin(angle);
            double share = mesh.distance(loop[i], loop[(i + 1) % loop.length]) / whole;
            angle += 2 * Math.PI * (0.8 * share + 0.2 / loop.length);
        }
    }
}
