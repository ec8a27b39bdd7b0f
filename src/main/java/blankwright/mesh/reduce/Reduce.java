package blankwright.mesh.reduce;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import java.util.Arrays;

/**
 * Thins a surface out by collapsing edges, the cheapest first by quadrics, within a distance that is kept and then measured.
 *
 * <ol><li>Collapse while topology, shape, distance and rims are kept: see {@link Trial}. Given vertices never get farther from the thinned
 * surface than the distance; rim vertices go or stay, none moves.
 * <li>Measure both ways: given vertices from the thinned surface, and its vertices, edge and triangle middles from the given one.
 * <li>Where the second exceeds the distance, again from the start with half of it allowed; at last the surface as given.</ol>
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
        double allowed = MARGIN * within;
        for (int i = 0; i < TRIES; i++, allowed /= 2) {
            TriMesh thinned = thinned(mesh, allowed, enough, progress);
            if (thinned.triangleCount() == mesh.triangleCount()) break;
            double back = Deviation.ofThinned(mesh, thinned, progress);
            if (back <= within) return new Reduced(thinned, Math.max(back, Deviation.ofGiven(mesh, thinned, progress)));
        }
        return new Reduced(mesh, 0);
    }

    private static TriMesh thinned(TriMesh mesh, double within, int enough, Progress progress) {
        EdgeTable edges = EdgeTable.of(mesh);
        Fans fans = new Fans(mesh, edges);
        RimRuns rims = new RimRuns(mesh, edges);
        Trial.Ground ground = Trial.Ground.of(fans, mesh, rims, within);
        double[] xyz = ground.xyz();
        new Collapses(fans, new Quadrics(mesh, fans), ground, progress).run(enough);
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
}
