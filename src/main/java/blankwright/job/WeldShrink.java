package blankwright.job;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.query.EdgeCost;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;
import java.util.LinkedHashSet;
import java.util.Set;

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
        Set<Integer> line = new LinkedHashSet<>();
        double length;
        if (longest == null) {
            RimLoops rims = RimLoops.of(form, edges);
            for (int v : rims.loop(rims.longest(form))) line.add(v);
            length = rims.length(form, rims.longest(form));
        } else {
            for (int i = 0; i < 2 * longest.edgeCount(); i++) {
                line.add(longest.left(i / 2, i % 2));
                line.add(longest.right(i / 2, i % 2));
            }
            line.remove(-1);
            length = longest.length();
        }
        double[] middle = new double[3];
        Wavefront front = new Wavefront(form, EdgeStars.of(form, edges), Wavefront.costs(edges.edgeCount(), EdgeCost.length(edges)));
        for (int v : line) {
            middle[0] += form.x(v) / line.size();
            middle[1] += form.y(v) / line.size();
            middle[2] += form.z(v) / line.size();
            front.start(v);
        }
        front.run();
        double[] xyz = form.positions();
        for (int i = 0; i < xyz.length; i++)
            xyz[i] += shrink / length * Math.max(0, 1 - front.distance(i / 3) / BAND) * (xyz[i] - middle[i % 3]);
        return form.withPositions(xyz);
    }

    /** Null where the piece has none. */
    static Seam longest(Opened opened) {
        Seam longest = null;
        for (Seam seam : opened.seams()) if (longest == null || seam.length() > longest.length()) longest = seam;
        return longest;
    }
}
