package blankwright.flatten;

import blankwright.sparse.Elements;

/**
 * How a flat layout resists moves, triangle by triangle: the second derivative of the energy by the gradient K = [a b; c d] of a move over the
 * layout, a symmetric matrix each, the area a factor.
 *
 * <p>One frame for all triangles, so that the matrix of a coarser triangle can be had from the finer ones that lie in it: their mean, by area.
 * Where linear functions on the coarser mesh are linear on the triangles of the finer one too, that is the exact product of the finer mesh's
 * matrix with the transfers; else it comes near, and rigid motions of the layout still cost nothing but what a twist does.
 */
final class PlaneStiffness {
    /** Numbers a matrix takes: its lower triangle, row by row, rows and columns by a, b, c, d. */
    static final int SIZE = 10;
    /** Area of a coarse triangle over that of the finer ones in it: below, it counts as this, turned over or not. */
    private static final double LEAST_SHARE = 0.1;

    /** The finer triangles. */
    interface Finer {
        /** Adds the matrix of triangle t to {@code sum[at..at+9]}; returns twice its area in the layout, above 0. */
        double add(int t, double[] sum, int at);
    }

    private final int[] tri;
    private final double[] layout;
    private final double[] area;                          // twice that of each triangle, above 0
    private final double[] matrix;

    private PlaneStiffness(int[] tri, double[] layout) {
        this.tri = tri;
        this.layout = layout;
        area = new double[tri.length / 3];
        matrix = new double[SIZE * area.length];
    }

    /**
     * @param tri 3 vertices a coarser triangle
     * @param layout 2 numbers a vertex
     * @param start of each coarser triangle in {@code inside}, and the end: one more than triangles
     * @param inside the finer triangles that lie in each; at least one
     */
    static PlaneStiffness averaged(int[] tri, double[] layout, int[] start, int[] inside, Finer finer) {
        PlaneStiffness coarse = new PlaneStiffness(tri, layout);
        Chunks.sum(coarse.area.length, (from, to) -> {
            for (int t = from; t < to; t++) {
                double whole = 0;
                for (int p = start[t]; p < start[t + 1]; p++) whole += finer.add(inside[p], coarse.matrix, SIZE * t);
                coarse.area[t] = Math.max(Math.abs(twiceArea(tri, t, layout)), LEAST_SHARE * whole);
                for (int i = SIZE * t; i < SIZE * (t + 1); i++) coarse.matrix[i] *= coarse.area[t] / whole;
            }
            return 0;
        });
        return coarse;
    }

    /** As what is averaged for the next coarser mesh. */
    Finer finer() {
        return (t, sum, at) -> {
            for (int i = 0; i < SIZE; i++) sum[at + i] += matrix[SIZE * t + i];
            return area[t];
        };
    }

    Elements elements() {
        return (t, out) -> {
            int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
            double x1 = layout[j] - layout[i], y1 = layout[j + 1] - layout[i + 1], x2 = layout[k] - layout[i], y2 = layout[k + 1] - layout[i + 1];
            element(matrix, SIZE * t, y2 / area[t], -x2 / area[t], -y1 / area[t], x1 / area[t], out);
        };
    }

    static double twiceArea(int[] tri, int t, double[] uv) {
        int i = 2 * tri[3 * t], j = 2 * tri[3 * t + 1], k = 2 * tri[3 * t + 2];
        return (uv[j] - uv[i]) * (uv[k + 1] - uv[i + 1]) - (uv[k] - uv[i]) * (uv[j + 1] - uv[i + 1]);
    }

    /**
     * Writes the element of a matrix {@code m[at..at+9]} by a gradient, on the six unknowns of the triangle's corners, as {@link Elements} have it.
     * {@code out} may be {@code m}.
     *
     * @param g1x gradient of the function that is 1 at corner 1 and 0 at the others; g2x likewise; that of corner 0 is minus their sum
     */
    static void element(double[] m, int at, double g1x, double g1y, double g2x, double g2y, double[] out) {
        double aa = m[at], ba = m[at + 1], bb = m[at + 2], ca = m[at + 3], cb = m[at + 4], cc = m[at + 5], da = m[at + 6], db = m[at + 7],
                dc = m[at + 8], dd = m[at + 9];
        double ax = aa * g1x + ba * g1y, ay = ba * g1x + bb * g1y, cx = cc * g1x + dc * g1y, cy = dc * g1x + dd * g1y;     // of corner 1
        double u1u1 = g1x * ax + g1y * ay, u2u1 = g2x * ax + g2y * ay, v1v1 = g1x * cx + g1y * cy, v2v1 = g2x * cx + g2y * cy;
        double px = ca * g1x + cb * g1y, py = da * g1x + db * g1y, v1u1 = g1x * px + g1y * py, v2u1 = g2x * px + g2y * py;
        double qx = ca * g2x + cb * g2y, qy = da * g2x + db * g2y, v1u2 = g1x * qx + g1y * qy, v2u2 = g2x * qx + g2y * qy;
        double u2u2 = g2x * (aa * g2x + ba * g2y) + g2y * (ba * g2x + bb * g2y);
        double v2v2 = g2x * (cc * g2x + dc * g2y) + g2y * (dc * g2x + dd * g2y);
        double u1u0 = -u1u1 - u2u1, u2u0 = -u2u1 - u2u2, v1v0 = -v1v1 - v2v1, v2v0 = -v2v1 - v2v2;
        double v1u0 = -v1u1 - v1u2, v2u0 = -v2u1 - v2u2, u1v0 = -v1u1 - v2u1, u2v0 = -v1u2 - v2u2;
        out[0] = -u1u0 - u2u0;
        out[1] = -v1u0 - v2u0;
        out[2] = -v1v0 - v2v0;
        out[3] = u1u0;
        out[4] = u1v0;
        out[5] = u1u1;
        out[6] = v1u0;
        out[7] = v1v0;
        out[8] = v1u1;
        out[9] = v1v1;
        out[10] = u2u0;
        out[11] = u2v0;
        out[12] = u2u1;
        out[13] = v1u2;
        out[14] = u2u2;
        out[15] = v2u0;
        out[16] = v2v0;
        out[17] = v2u1;
        out[18] = v2v1;
        out[19] = v2u2;
        out[20] = v2v2;
    }
}
