package blankwright.mesh.query;

import blankwright.mesh.AngleDefect;
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

    /**
     * What a seam costs unless somebody says otherwise: length, mm, less where the skin is folded and where it is curved both ways, each by
     * up to six tenths; docs/decisions/009. Rounded to a millionth, so that the order of summing does not choose between equals.
     */
    static EdgeCost seam(TriMesh mesh, EdgeTable edges) {
        EdgeCost sharp = sharpFirst(mesh, edges, LEAST), curved = curvedFirst(mesh, edges, LEAST);
        return e -> {
            double length = edges.length(e);
            return length > 0 ? length * Math.rint(1e6 * sharp.of(e) * curved.of(e) / (length * length)) / 1e6 : 0;
        };
    }

    /** Of the length that a seam costs at most to be cheap: at 0.8 it does not reach the edges of a rounded box. */
    double LEAST = 0.4;

    /**
     * Length, mm, but down to {@code least} of it (0..1) where the skin is curved both ways: with q = |Gaussian curvature| over that of a ball of
     * the same area, the share above {@code least} falls as 1 / (1 + q). A seam there goes through the metal that would need most work.
     *
     * <p>The curvature is the angle missing at the vertices per area, averaged along edges over about {@value #AVERAGED} of the root of the
     * area, so that neither the triangles' size nor the noise of a scan counts.
     */
    static EdgeCost curvedFirst(TriMesh mesh, EdgeTable edges, double least) {
        if (!(least >= 0 && least <= 1)) throw new IllegalArgumentException("share " + least + ": must be 0..1");
        AngleDefect defect = AngleDefect.of(mesh, edges);
        int n = mesh.vertexCount();
        double[] missing = new double[n], area = new double[n];
        double whole = mesh.area(), side = 0;
        for (int v = 0; v < n; v++) missing[v] = defect.onRim(v) ? 0 : defect.defect(v);
        for (int t = 0; t < mesh.triangleCount(); t++) for (int k = 0; k < 3; k++) area[mesh.corner(t, k)] += mesh.area(t) / 3;
        for (int e = 0; e < edges.edgeCount(); e++) side += edges.length(e) / edges.edgeCount();
        double steps = AVERAGED * Math.sqrt(whole) / side;
        EdgeStars stars = EdgeStars.of(mesh, edges);
        for (int i = 0; i < Math.max(1, Math.min(MOST_ROUNDS, Math.rint(steps * steps))); i++) {
            missing = averaged(missing, stars);
            area = averaged(area, stars);
        }
        double[] q = new double[n];
        for (int v = 0; v < n; v++) q[v] = area[v] > 0 ? Math.abs(missing[v]) / area[v] * whole / (4 * Math.PI) : 0;
        return e -> edges.length(e) * (least + (1 - least) / (1 + (q[edges.from(e)] + q[edges.to(e)]) / 2));
    }

    /** Part of the root of the area: 3 mm on a skin of 100 mm by 100 mm. */
    double AVERAGED = 0.03;
    /** Meshes finer than about 150 sides across get less averaging than said; theirs is cleaner, or was thinned out. */
    int MOST_ROUNDS = 25;

    private static double[] averaged(double[] value, EdgeStars stars) {
        double[] mean = new double[value.length];
        for (int v = 0; v < mean.length; v++) {
            double sum = value[v];
            for (int i = stars.start(v); i < stars.start(v + 1); i++) sum += value[stars.far(i)];
            mean[v] = sum / (1 + stars.start(v + 1) - stars.start(v));
        }
        return mean;
    }

    private static double angle(double[] n, double[] m) {
        double x = n[1] * m[2] - n[2] * m[1], y = n[2] * m[0] - n[0] * m[2], z = n[0] * m[1] - n[1] * m[0];
        return Math.atan2(Math.sqrt(x * x + y * y + z * z), n[0] * m[0] + n[1] * m[1] + n[2] * m[2]);
    }
}
