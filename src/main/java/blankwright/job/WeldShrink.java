package blankwright.job;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.query.EdgeCost;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;

/**
 * The form as it must be before it is welded so that it is right afterwards: longer along the weld by what the weld draws in.
 *
 * <p>The weld runs along the longest seam, or round the outer edge where there is none. Its line is scaled about its middle, so that it is
 * longer by just that much, and the metal beside it with it, less and less to nothing at {@value #BAND} mm: about as wide as the heat goes
 * (trade practice, from memory).
 */
final class WeldShrink {
    /** mm. */
    static final double BAND = 25;

    private WeldShrink() { }

    /** @param shrink what the weld draws in along its whole length, mm */
    static TriMesh madeUpFor(Opened opened, double shrink) {
        TriMesh form = opened.mesh();
        EdgeTable edges = EdgeTable.of(form);
        Seam longest = longest(opened);
        double[] middle = new double[4];                  // of the line by its length, and its length
        Wavefront front = new Wavefront(form, EdgeStars.of(form, edges), Wavefront.costs(edges.edgeCount(), EdgeCost.length(edges)));
        if (longest == null) {
            RimLoops rims = RimLoops.of(form, edges);
            int[] loop = rims.loop(rims.longest(form));
            for (int i = 0; i < loop.length; i++) add(form, loop[i], loop[(i + 1) % loop.length], middle, front);
        } else {
            for (int i = 0; i < longest.edgeCount(); i++) {
                add(form, longest.left(i, 0), longest.left(i, 1), middle, front);
                add(form, longest.right(i, 0), longest.right(i, 1), middle, front);
            }
        }
        double length = longest == null ? middle[3] : longest.length();
        for (int k = 0; k < 3; k++) middle[k] /= middle[3];
        front.run();
        double[] xyz = form.positions();
        for (int i = 0; i < xyz.length; i++)
            xyz[i] += shrink / length * Math.max(0, 1 - front.distance(i / 3) / BAND) * (xyz[i] - middle[i % 3]);
        return form.withPositions(xyz);
    }

    /** The edge of the line from a to b, -1 where that side of the seam is on another piece. */
    private static void add(TriMesh form, int a, int b, double[] middle, Wavefront front) {
        if (a < 0 || b < 0) return;
        double length = form.distance(a, b);
        middle[0] += length * (form.x(a) + form.x(b)) / 2;
        middle[1] += length * (form.y(a) + form.y(b)) / 2;
        middle[2] += length * (form.z(a) + form.z(b)) / 2;
        middle[3] += length;
        front.start(a);
        front.start(b);
    }

    /** Null where the piece has none. */
    static Seam longest(Opened opened) {
        Seam longest = null;
        for (Seam seam : opened.seams()) if (longest == null || seam.length() > longest.length()) longest = seam;
        return longest;
    }
}
