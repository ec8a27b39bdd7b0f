package blankwright.mesh.repair;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.TriMesh;
import blankwright.num.Sentence;
import java.util.ArrayList;
import java.util.List;

/**
 * Moves a skin along its normals, as from the outside of the sheet to its middle.
 *
 * <p>The normal of a vertex is the sum of its triangles' normals, each weighted by its angle there. On a smooth skin that leaves an error
 * of second order in the triangles' size; on a rim, where only one side is known, of first order: offset times half the angle between
 * neighbouring triangles, along the skin. A sharp fold is rounded, not mitred.
 * <p>Source: Thürmer and Wüthrich, "Computing Vertex Normals from Polygonal Facets", 1998; docs/sources.md [TW98].
 */
public final class MidSurface {
    /** The moved skin, same triangles, and what to know about it. */
    public record Moved(TriMesh mesh, List<Finding> findings) {
        public Moved {
            findings = List.copyOf(findings);
        }
    }

    private MidSurface() { }

    /**
     * @param offset along the outward normals, mm: -thickness/2 where the mesh is the outside of the sheet, +thickness/2 where the inside
     * @return findings MOVED_TO_MIDDLE, and TIGHT_CURVATURE where the offset is beyond a radius of the skin: a triangle is turned over or
     *     an edge runs backwards, so that what is there cannot be made of this sheet
     */
    public static Moved moved(TriMesh mesh, double offset) {
        if (!Double.isFinite(offset)) throw new IllegalArgumentException("offset " + offset + " mm: must be a length");
        if (offset == 0) return new Moved(mesh, List.of());
        double[] normal = vertexNormals(mesh);
        double[] places = mesh.positions();
        for (int i = 0; i < places.length; i++) places[i] += offset * normal[i];
        TriMesh there = mesh.withPositions(places);
        List<Finding> findings = new ArrayList<>();
        findings.add(new Finding(Kind.MOVED_TO_MIDDLE, mesh.vertexCount(), Sentence.say(
                "the skin was moved %s %s along its normals to the middle of the sheet", Sentence.length(Math.abs(offset), 3),
                offset < 0 ? "in" : "out")));
        int tight = 0, first = -1;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            if (!tight(mesh, there, t)) continue;
            if (tight++ == 0) first = t;
        }
        if (tight > 0) {
            findings.add(new Finding(Kind.TIGHT_CURVATURE, tight, tight + (tight == 1 ? " triangle is" : " triangles are")
                    + " curved tighter than half the thickness, the first is triangle " + first
                    + "; the middle of the sheet folds over itself there, so give the thinner sheet or a larger radius"));
        }
        return new Moved(there, findings);
    }

    /** Unit normal of each vertex, 3 per vertex; zeros where its triangles cancel out. */
    public static double[] vertexNormals(TriMesh mesh) {
        double[] sum = new double[3 * mesh.vertexCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            for (int k = 0; k < 3; k++) {
                double angle = mesh.angle(t, k);
                int v = mesh.corner(t, k);
                for (int c = 0; c < 3; c++) sum[3 * v + c] += angle * n[c];
            }
        }
        for (int v = 0; v < mesh.vertexCount(); v++) {
            double length = Math.sqrt(sum[3 * v] * sum[3 * v] + sum[3 * v + 1] * sum[3 * v + 1] + sum[3 * v + 2] * sum[3 * v + 2]);
            for (int c = 0; c < 3; c++) sum[3 * v + c] = length > 1e-12 ? sum[3 * v + c] / length : 0;
        }
        return sum;
    }

    private static boolean tight(TriMesh before, TriMesh after, int t) {
        double[] n = before.normal(t), m = after.normal(t);
        if (!(n[0] * m[0] + n[1] * m[1] + n[2] * m[2] > 0)) return true;
        for (int k = 0; k < 3; k++) {
            int a = before.corner(t, k), b = before.corner(t, (k + 1) % 3);
            double along = (before.x(b) - before.x(a)) * (after.x(b) - after.x(a)) + (before.y(b) - before.y(a)) * (after.y(b) - after.y(a))
                    + (before.z(b) - before.z(a)) * (after.z(b) - after.z(a));
            if (!(along > 0)) return true;
        }
        return false;
    }
}
