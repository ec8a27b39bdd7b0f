package blankwright.mesh.cut;

import blankwright.mesh.AngleDefect;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.Wavefront;

/**
 * Tells a hole, which may stay a free edge of the blank, from an end, where the skin must be opened to lie flat.
 *
 * <p>Imagine a cap over the rim. By Gauss-Bonnet it would hold the curvature C(0) = 2π + the rim's turning: 0 over a hole in a flat sheet,
 * 2π over the end of a tube, 2π(1 - sin q) over the small end of a cone of half apex angle q. Walking inwards, C(d) is C(0) + the angle
 * defects of the vertices within d of the rim, along edges. The rim is a hole where |C(d)| ≤ π/6 for some d up to
 * {@value #COLLAR} of the radius of a circle of the rim's length. The walk is for holes with a turned flange: their rim looks like the
 * end of a tube, but the bend at its foot takes the curvature away again.
 */
final class HoleRule {
    /**
     * π/6: a cone of half apex angle 66°, or a hole in a ball that spans 2 · 24° seen from its middle. At π/4 the opening of a tank of
     * 4.8 rad that held 0.65 rad passed for a hole.
     */
    static final double HOLE = Math.PI / 6;
    /** Part of the rim's radius that may be a flange; a neck deeper than that is a tube. */
    static final double COLLAR = 0.35;

    private final TriMesh mesh;
    private final RimLoops rims;
    private final AngleDefect defect;
    private final Wavefront front;      // by plain length, used again for each rim

    private final double crowns;        // all positive defects inside, rad
    private final double saddles;       // all negative ones

    HoleRule(TriMesh mesh, RimLoops rims, AngleDefect defect, Wavefront front) {
        this.mesh = mesh;
        this.rims = rims;
        this.defect = defect;
        this.front = front;
        double up = 0, down = 0;
        for (int v = 0; v < mesh.vertexCount(); v++) {
            if (defect.onRim(v)) continue;
            up += Math.max(0, defect.defect(v));
            down += Math.min(0, defect.defect(v));
        }
        crowns = up;
        saddles = down;
    }

    boolean isHole(int rim) {
        int[] loop = rims.loop(rim);
        double curvature = 2 * Math.PI + defect.turning(loop);
        if (curvature + saddles > HOLE || curvature + crowns < -HOLE) return false;         // no walk could bring it down, or up
        double collar = COLLAR * rims.length(mesh, rim) / (2 * Math.PI), sameRow = 1e-6 * collar, row = 0;
        front.clear();
        for (int v : loop) front.start(v);
        for (int v = front.next(); v >= 0 && front.distance(v) <= collar; v = front.next()) {
            if (front.distance(v) > row + sameRow) {            // a whole row of vertices is in: ask before the next
                if (Math.abs(curvature) <= HOLE) return true;
                row = front.distance(v);
            }
            if (!defect.onRim(v)) curvature += defect.defect(v);
        }
        return Math.abs(curvature) <= HOLE;
    }
}
