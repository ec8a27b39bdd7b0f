package blankwright.mesh.reduce;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Arrays;

/**
 * Thins a surface out by collapsing edges, the cheapest first by quadrics, within a distance that is kept and then measured.
 *
 * <ol><li>Number the vertices and triangles so that neighbours lie near in memory; see {@link NearInMemory}.
 * <li>Collapse while topology, shape, distance and rims are kept: see {@link Trial}. Given vertices never get farther from the thinned
 * surface than the distance; rim vertices go or stay, none moves.
 * <li>Measure both ways, at samples; see {@link Deviation}.
 * <li>Where they are farther apart than the distance, again from the start with half of it allowed; at last the surface as given.</ol>
 *
 * <p>Same input, same bits, on any number of threads.
 * <p>Source: Garland and Heckbert 1997 [GH97] for the quadrics and the order; Dey, Edelsbrunner, Guha and Nekhayev 1999 [DEGN99] for the
 * link condition.
 */
public final class Reduce {
    private static final int TRIES = 3;
    /** Of the distance: the middles of edges and triangles lie a little farther off than the given vertices beside them. */
    private static final double MARGIN = 0.97;

    private Reduce() { }

    /**
     * @param mesh a surface as mesh.repair leaves it
     * @param within mm, above 0
     * @param enough triangles at which to stop; 0 for as few as may be
     * @throws IllegalArgumentException where a vertex holds no triangle or several fans of them, or {@code within} is not above 0
     * @throws java.util.concurrent.CancellationException once the progress says it is no longer wanted
     */
    public static Reduced of(TriMesh mesh, double within, int enough, Progress progress) {
        if (!(within > 0)) throw new IllegalArgumentException("within " + within + " mm: must be above 0");
        new Fans(mesh, EdgeTable.of(mesh));         // what is no surface is refused with the caller's numbers
        double allowed = MARGIN * within;
        TriMesh given = NearInMemory.of(mesh);
        for (int i = 0; i < TRIES; i++, allowed /= 2) {
            TriMesh thinned = thinned(given, allowed, enough, progress);
            if (thinned.triangleCount() == mesh.triangleCount()) break;
            double far = Deviation.ofThinned(given, thinned, progress);
            if (far <= within) far = Math.max(far, Deviation.ofGiven(given, thinned, progress));
            if (far <= within) return new Reduced(thinned, far);
        }
        return new Reduced(mesh, 0);
    }

    private static TriMesh thinned(TriMesh mesh, double within, int enough, Progress progress) {
        Trial.Ground ground = ground(mesh, within);
        Fans fans = ground.fans();
        double[] xyz = ground.xyz();
        new Collapses(new Quadrics(mesh, fans), ground, progress).run(enough);
        int[] number = new int[fans.way.length];
        int kept = 0;
        for (int v = 0; v < number.length; v++) {
            if (fans.way[v] < 0) continue;
            System.arraycopy(xyz, 3 * v, xyz, 3 * kept, 3);
            number[v] = kept++;
        }
        int[] tri = new int[3 * fans.triangles];
        int m = 0;
        for (int t = 0; t < fans.tri.length; t += 3) {
            if (fans.tri[t] < 0) continue;
            for (int k = 0; k < 3; k++) tri[m++] = number[fans.tri[t + k]];
        }
        return TriMesh.of(Arrays.copyOf(xyz, 3 * kept), tri);
    }

    /** The table of edges is gone from the memory once this returns. */
    private static Trial.Ground ground(TriMesh mesh, double within) {
        EdgeTable edges = EdgeTable.of(mesh);
        return Trial.Ground.of(new Fans(mesh, edges), mesh, new RimRuns(mesh, edges), within);
    }
}
