package blankwright.mesh.query;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;

/** What it costs to walk along an edge: 0 or more, +∞ where nobody may walk. */
@FunctionalInterface
public interface EdgeCost {
    double of(int edge);

    /** Plain length, mm. */
    static EdgeCost length(EdgeTable edges) {
        return edges::length;
    }

    /**
     * Length, mm, but down to {@code least} of it (0..1) where the skin is folded along the edge: all of it up to 20°, so that the facets of a
     * round skin do not count, least from 60° on. A seam there hides in a corner of the form and takes nothing from a smooth face.
     */
    static EdgeCost sharpFirst(TriMesh mesh, EdgeTable edges, double least) {
        if (!(least >= 0 && least <= 1)) throw new IllegalArgumentException("share " + least + ": must be 0..1");
        return e -> {
            double fold = edges.right(e) < 0 ? 0 : angle(mesh.normal(edges.left(e)), mesh.normal(edges.right(e)));
            double sharp = Math.max(0, Math.min(1, (fold - Math.PI / 9) / (Math.PI / 3 - Math.PI / 9)));
            return edges.length(e) * (1 - (1 - least) * sharp);
        };
    }

    private static double angle(double[] n, double[] m) {
        double x = n[1] * m[2] - n[2] * m[1], y = n[2] * m[0] - n[0] * m[2], z = n[0] * m[1] - n[1] * m[0];
        return Math.atan2(Math.sqrt(x * x + y * y + z * z), n[0] * m[0] + n[1] * m[1] + n[2] * m[2]);
    }
}
