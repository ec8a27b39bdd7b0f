package blankwright.metal.buckling;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;

/**
 * A straight line on the skin: straight within each triangle, going on over an edge as if both triangles were laid flat.
 *
 * <p>Source: Polthier and Schmies, "Straightest geodesics on polyhedral surfaces", 1998, docs/sources.md [PS98]; lines through a vertex,
 * where they differ, are nudged past it.
 */
final class Track {
    /** Asked in every triangle entered. */
    interface Step {
        /**
         * @param t triangle entered, at a point of its edge from corner k to k+1, the share {@code along} of the way
         * @param length of the line so far, mm
         * @return whether to go on through t
         */
        boolean enter(int t, int k, double along, double length);
    }

    /** How a line ended, where, and how long it was, mm. */
    record End(boolean atRim, int triangle, double length) { }

    private final TriMesh mesh;
    private final EdgeTable edges;

    Track(TriMesh mesh, EdgeTable edges) {
        this.mesh = mesh;
        this.edges = edges;
    }

    /**
     * From a place in triangle t, in its own frame, in direction (dx, dy), unit, for {@code longest} mm at most.
     *
     * @param entered half-edge of t the line starts on, or -1 inside
     */
    End from(int t, int entered, double x, double y, double dx, double dy, double longest, Step step) {
        Facet f = new Facet().of(mesh, t);
        if (f.empty) return new End(false, t, 0);
        double length = 0;
        while (true) {
            int out = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
                if (k == entered) continue;
                int j = (k + 1) % 3;
                double ex = f.x[j] - f.x[k], ey = f.y[j] - f.y[k];
                double towards = dx * ey - dy * ex;                     // speed out through this edge times its length
                if (!(towards > 0)) continue;
                double far = Math.max(0, ((f.x[k] - x) * ey - (f.y[k] - y) * ex) / towards);
                if (far < least) {
                    least = far;
                    out = k;
                }
            }
            if (out < 0) return new End(false, t, length);              // along an edge: nowhere to go
            length += least;
            if (length >= longest) return new End(false, t, longest);
            x += least * dx;
            y += least * dy;
            int twin = edges.twin(3 * t + out);
            if (twin < 0) return new End(true, t, length);
            int j = (out + 1) % 3;
            double ex = f.x[j] - f.x[out], ey = f.y[j] - f.y[out], size = Math.sqrt(ex * ex + ey * ey);
            double share = Math.min(1, Math.max(0, ((x - f.x[out]) * ex + (y - f.y[out]) * ey) / (size * size)));
            double along = (dx * ex + dy * ey) / size, across = (dx * ey - dy * ex) / size;     // across > 0: out of t
            t = twin / 3;
            entered = twin % 3;
            double back = Math.min(1 - 1e-9, Math.max(1e-9, 1 - share));
            if (f.of(mesh, t).empty || !step.enter(t, entered, back, length)) return new End(false, t, length);
            int i = entered, n = (i + 1) % 3;
            double gx = (f.x[n] - f.x[i]) / size, gy = (f.y[n] - f.y[i]) / size;                // runs the other way
            x = f.x[i] + back * (f.x[n] - f.x[i]);
            y = f.y[i] + back * (f.y[n] - f.y[i]);
            dx = -along * gx - across * gy;                                                     // into t: (-gy, gx)
            dy = -along * gy + across * gx;
        }
    }
}
