package blankwright.picture;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Paints triangles coloured by classes into a picture, nearest in front, with a depth buffer; edges smoothed by several samples per
 * picture element.
 *
 * <p>The picture is cut into bands of rows painted independently, each in triangle order, so any number of threads gives the same bits.
 * A sample belongs to the triangle its centre falls in; of two edges through a centre the left and the upper one own it, so neighbouring
 * triangles leave neither gap nor overlap. At equal depth the earlier triangle stays.
 */
final class DepthPainter {
    private static final int BAND = 64;
    private static final int BACKGROUND = 0xFFFFFF;
    private static final int BACK_GREY = 0xD0;
    private static final int SHADES = 256;

    private final int width, height, samples;
    private final int[] rgb;
    private final float[] nearest;

    /** A picture of width x height elements, all background; {@code samples} per element along each side, 1..4. */
    DepthPainter(int width, int height, int samples) {
        if (width < 1 || height < 1 || samples < 1 || samples > 4)
            throw new IllegalArgumentException(width + " x " + height + " with " + samples + " samples a side");
        this.width = width;
        this.height = height;
        this.samples = samples;
        this.rgb = new int[width * height];
        this.nearest = new float[width * height];
        Arrays.fill(rgb, BACKGROUND);
        Arrays.fill(nearest, Float.NEGATIVE_INFINITY);
    }

    /**
     * Paints once.
     *
     * @param place three per vertex: x to the right, y downwards, both in picture elements from the upper left corner; z towards the
     *        viewer in the same unit
     * @param amount number per vertex
     * @param light brightness per vertex, 0..1; 1 shows the pure colour of the scale
     * @param tri three vertices per triangle, counter-clockwise on its outer skin; seen from behind it turns grey and hatched
     */
    void paint(float[] place, double[] amount, float[] light, int[] tri, Tints scale) {
        int bands = (height + BAND - 1) / BAND;
        int[][] inBand = sortedIntoBands(place, tri, bands);
        int[][] front = shades(scale, false), back = shades(scale, true);
        IntStream.range(0, bands).parallel().forEach(b -> new Band(b).paint(place, amount, light, tri, inBand[b], scale, front, back));
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** 0xRRGGBB at column x, row y. */
    int colour(int x, int y) {
        return rgb[y * width + x];
    }

    /** Copies what is painted into {@code target}, whose rows are {@code stride} long, from column x0, row y0 on; the background stays. */
    void overlay(int[] target, int stride, int targetRows, int x0, int y0) {
        for (int y = Math.max(0, -y0); y < height && y + y0 < targetRows; y++) {
            int from = Math.max(0, -x0), to = Math.min(width, stride - x0);
            for (int x = from; x < to; x++) {
                int p = y * width + x;
                if (nearest[p] > Float.NEGATIVE_INFINITY) target[(y + y0) * stride + x0 + x] = rgb[p];
            }
        }
    }

    /** Depth of the nearest sample of element (x, y), -infinity on the background. */
    float depth(int x, int y) {
        return nearest[y * width + x];
    }

    /**
     * True where a point of a drawn line is not covered by a triangle in front of it.
     *
     * <p>It is compared with the farthest of the nine elements round it, and may lie {@code slack} behind: a line on a skin seen at a
     * slant is neither eaten by rounding nor by the skin beside it.
     */
    boolean sees(double x, double y, double z, double slack) {
        int cx = (int) Math.floor(x), cy = (int) Math.floor(y);
        if (cx < 0 || cy < 0 || cx >= width || cy >= height) return false;
        float farthest = Float.POSITIVE_INFINITY;
        for (int j = Math.max(0, cy - 1); j <= Math.min(height - 1, cy + 1); j++) {
            for (int i = Math.max(0, cx - 1); i <= Math.min(width - 1, cx + 1); i++) {
                farthest = Math.min(farthest, nearest[j * width + i]);
            }
        }
        return z >= farthest - slack;
    }

    private int[][] sortedIntoBands(float[] place, int[] tri, int bands) {
        int triangles = tri.length / 3;
        int[] count = new int[bands];
        for (int t = 0; t < triangles; t++) {
            int last = lastBand(place, tri, t, bands);
            for (int b = firstBand(place, tri, t); b <= last; b++) count[b]++;
        }
        int[][] inBand = new int[bands][];
        for (int b = 0; b < bands; b++) inBand[b] = new int[count[b]];
        Arrays.fill(count, 0);
        for (int t = 0; t < triangles; t++) {
            int last = lastBand(place, tri, t, bands);
            for (int b = firstBand(place, tri, t); b <= last; b++) inBand[b][count[b]++] = t;
        }
        return inBand;
    }

    private int firstBand(float[] place, int[] tri, int t) {
        float low = Math.min(place[3 * tri[3 * t] + 1], Math.min(place[3 * tri[3 * t + 1] + 1], place[3 * tri[3 * t + 2] + 1]));
        return Math.max(0, (int) Math.floor(low / BAND));
    }

    private int lastBand(float[] place, int[] tri, int t, int bands) {
        float high = Math.max(place[3 * tri[3 * t] + 1], Math.max(place[3 * tri[3 * t + 1] + 1], place[3 * tri[3 * t + 2] + 1]));
        return Math.min(bands - 1, (int) Math.floor(high / BAND));
    }

    /** Colour of each class at each brightness; the back of the skin is mixed half with grey. */
    private static int[][] shades(Tints scale, boolean back) {
        int[][] table = new int[scale.classes()][SHADES];
        for (int c = 0; c < scale.classes(); c++) {
            for (int s = 0; s < SHADES; s++) {
                int colour = 0;
                for (int shift = 16; shift >= 0; shift -= 8) {
                    int part = scale.colour(c) >> shift & 255;
                    if (back) part = (part + BACK_GREY) / 2;
                    colour |= Math.round(part * s / (float) (SHADES - 1)) << shift;
                }
                table[c][s] = colour;
            }
        }
        return table;
    }

    /** Rows that one thread paints, with its own samples. */
    private final class Band {
        private final int row0, rows;
        private final int wide;
        private final float[] depth;
        private final int[] colour;

        Band(int b) {
            row0 = b * BAND;
            rows = Math.min(BAND, height - row0);
            wide = width * samples;
            depth = new float[wide * rows * samples];
            colour = new int[depth.length];
        }

        void paint(float[] place, double[] amount, float[] light, int[] tri, int[] mine, Tints scale, int[][] front, int[][] back) {
            Arrays.fill(depth, Float.NEGATIVE_INFINITY);
            Arrays.fill(colour, BACKGROUND);
            for (int t : mine) triangle(place, amount, light, tri[3 * t], tri[3 * t + 1], tri[3 * t + 2], scale, front, back);
            gather();
        }

        private void triangle(float[] place, double[] amount, float[] light, int a, int b, int c, Tints scale,
                int[][] front, int[][] back) {
            double ax = place[3 * a] * (double) samples, ay = (place[3 * a + 1] - row0) * (double) samples;
            double bx = place[3 * b] * (double) samples, by = (place[3 * b + 1] - row0) * (double) samples;
            double cx = place[3 * c] * (double) samples, cy = (place[3 * c + 1] - row0) * (double) samples;
            double det = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
            if (!(Math.abs(det) > 1e-12)) return;
            boolean seenFromBehind = det > 0;           // y runs downwards
            double az = place[3 * a + 2], bz = place[3 * b + 2], cz = place[3 * c + 2];
            double zx = ((bz - az) * (cy - ay) - (cz - az) * (by - ay)) / det, zy = ((cz - az) * (bx - ax) - (bz - az) * (cx - ax)) / det;
            double e = amount[a], eb = amount[b] - e, ec = amount[c] - e;
            double ex = (eb * (cy - ay) - ec * (by - ay)) / det, ey = (ec * (bx - ax) - eb * (cx - ax)) / det;
            double l = light[a], lb = light[b] - l, lc = light[c] - l;
            double lx = (lb * (cy - ay) - lc * (by - ay)) / det, ly = (lc * (bx - ax) - lb * (cx - ax)) / det;
            int one = scale.classOf(amount[a]);
            boolean single = one == scale.classOf(amount[b]) && one == scale.classOf(amount[c]);
            int[][] table = seenFromBehind ? back : front;
            int first = Math.max(0, (int) Math.ceil(Math.min(ay, Math.min(by, cy)) - 0.5));
            int last = Math.min(rows * samples - 1, (int) Math.ceil(Math.max(ay, Math.max(by, cy)) - 0.5) - 1);
            for (int j = first; j <= last; j++) {
                double y = j + 0.5;
                double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY;
                double x1 = crossing(ax, ay, bx, by, y), x2 = crossing(bx, by, cx, cy, y), x3 = crossing(cx, cy, ax, ay, y);
                if (x1 == x1) { low = Math.min(low, x1); high = Math.max(high, x1); }
                if (x2 == x2) { low = Math.min(low, x2); high = Math.max(high, x2); }
                if (x3 == x3) { low = Math.min(low, x3); high = Math.max(high, x3); }
                int i0 = Math.max(0, (int) Math.ceil(low - 0.5)), i1 = Math.min(wide - 1, (int) Math.ceil(high - 0.5) - 1);
                double dy = y - ay;
                for (int i = i0, p = j * wide + i0; i <= i1; i++, p++) {
                    double dx = i + 0.5 - ax;
                    float z = (float) (az + zx * dx + zy * dy);
                    if (z <= depth[p]) continue;
                    depth[p] = z;
                    int shade = (int) ((l + lx * dx + ly * dy) * (SHADES - 1) + 0.5);
                    shade = shade < 0 ? 0 : Math.min(shade, SHADES - 1);
                    if (seenFromBehind && (i + j + row0 * samples) % (7 * samples) < samples) shade = shade * 3 / 4;
                    colour[p] = table[single ? one : scale.classOf(e + ex * dx + ey * dy)][shade];
                }
            }
        }

        /** Where the edge meets the row y, its ends taken in one order whichever triangle asks; NaN where it does not. */
        private double crossing(double px, double py, double qx, double qy, double y) {
            if (py <= y == qy <= y) return Double.NaN;
            return py < qy ? px + (qx - px) * ((y - py) / (qy - py)) : qx + (px - qx) * ((y - qy) / (py - qy));
        }

        private void gather() {
            int n = samples * samples;
            for (int y = 0; y < rows; y++) {
                for (int x = 0; x < width; x++) {
                    int r = 0, g = 0, b = 0;
                    float near = Float.NEGATIVE_INFINITY;
                    for (int j = 0; j < samples; j++) {
                        int p = (y * samples + j) * wide + x * samples;
                        for (int i = 0; i < samples; i++, p++) {
                            r += colour[p] >> 16 & 255;
                            g += colour[p] >> 8 & 255;
                            b += colour[p] & 255;
                            near = Math.max(near, depth[p]);
                        }
                    }
                    int to = (row0 + y) * width + x;
                    rgb[to] = (r + n / 2) / n << 16 | (g + n / 2) / n << 8 | (b + n / 2) / n;
                    nearest[to] = near;
                }
            }
        }
    }
}
