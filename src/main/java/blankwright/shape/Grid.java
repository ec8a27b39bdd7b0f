package blankwright.shape;

import blankwright.mesh.TriMesh;
import java.util.Arrays;
import java.util.function.BiFunction;

/**
 * A skin cut along lines of equal u and of equal v, evenly between given breaks; each cell halved along the same diagonal.
 *
 * <p>Steps in u and v come from the second fundamental form: a cell of steps a and b lies within (a²|L| + 2ab|M| + b²|N|)/8 of the skin to
 * leading order (Filip, Magedson and Markot, "Surface algorithms using bounds on derivatives", 1986; docs/sources.md [FMM86]). The result is
 * measured, and the steps shortened until it holds.
 */
final class Grid {
    private static final int EDGES_ALONG = 24;
    private static final double SLENDER = 4;        // longest to shortest step of ordinary cells
    private static final double IN_A_BEND = 10;     // the same where a bend of small radius forces narrow cells

    private final Skin skin;
    private final double[] us;
    private final double[] vs;

    private Grid(Skin skin, double[] us, double[] vs) {
        this.skin = skin;
        this.us = us;
        this.vs = vs;
    }

    /** Cells counted by hand: m and n between the first and last value. */
    static Grid cells(Skin skin, double u0, double u1, int m, double v0, double v1, int n) {
        check((double) m * n);
        return new Grid(skin, knots(new double[] {u0, u1}, new int[] {m}), knots(new double[] {v0, v1}, new int[] {n}));
    }

    static Grid of(Skin skin, double[] uBreaks, double[] vBreaks, Fineness fineness) {
        return of(skin, uBreaks, vBreaks, none(uBreaks), none(vBreaks), 1, fineness);
    }

    /**
     * @param uCap longest step wanted between each pair of u breaks, in the unit of u; likewise {@code vCap}
     * @param multiple the number of cells along u, over all breaks, is a multiple of it where there is one pair of breaks only
     */
    static Grid of(Skin skin, double[] uBreaks, double[] vBreaks, double[] uCap, double[] vCap, int multiple, Fineness fineness) {
        Sizes sizes = new Sizes(skin, uBreaks, vBreaks);
        if (fineness.triangles() > 0) {
            double[][] steps = sizes.steps(sizes.extent() * 1e-3, uCap, vCap);
            double count = 2 * cellsOf(uBreaks, steps[0], 1) * cellsOf(vBreaks, steps[1], 1);
            double finer = Math.sqrt(fineness.triangles() / count);
            return new Grid(skin, knots(uBreaks, counts(uBreaks, steps[0], finer, multiple)), knots(vBreaks, counts(vBreaks, steps[1], finer, 1)));
        }
        double[][] steps = sizes.steps(fineness.chord(), uCap, vCap);
        double finer = 1;
        while (true) {
            check(cellsOf(uBreaks, steps[0], finer) * cellsOf(vBreaks, steps[1], finer));
            Grid grid = new Grid(skin, knots(uBreaks, counts(uBreaks, steps[0], finer, multiple)),
                    knots(vBreaks, counts(vBreaks, steps[1], finer, 1)));
            double worst = grid.worstChord();
            if (worst <= fineness.chord()) return grid;
            finer *= Math.max(1.04, Math.sqrt(worst / fineness.chord()) * 1.01);
        }
    }

    double[] us() {
        return us.clone();
    }

    double[] vs() {
        return vs.clone();
    }

    /** Largest distance of the skin from the plane of its triangle, mm, at the middles of edges and of triangles. */
    double worstChord() {
        double worst = 0;
        double[] p00 = new double[3], p10 = new double[3], p01 = new double[3], p11 = new double[3], q = new double[3];
        for (int i = 0; i + 1 < us.length; i++) {
            double u0 = us[i], u1 = us[i + 1], um = (u0 + u1) / 2;
            for (int j = 0; j + 1 < vs.length; j++) {
                double v0 = vs[j], v1 = vs[j + 1], vm = (v0 + v1) / 2;
                skin.at(u0, v0, p00);
                skin.at(u1, v0, p10);
                skin.at(u0, v1, p01);
                skin.at(u1, v1, p11);
                double[] low = plane(p00, p10, p11), high = plane(p00, p11, p01);
                skin.at(um, vm, q);
                worst = Math.max(worst, Math.max(off(low, p00, q), off(high, p00, q)));
                skin.at(um, v0, q);
                worst = Math.max(worst, off(low, p00, q));
                skin.at(u1, vm, q);
                worst = Math.max(worst, off(low, p00, q));
                skin.at(um, v1, q);
                worst = Math.max(worst, off(high, p00, q));
                skin.at(u0, vm, q);
                worst = Math.max(worst, off(high, p00, q));
                skin.at((u0 + 2 * u1) / 3, (2 * v0 + v1) / 3, q);
                worst = Math.max(worst, off(low, p00, q));
                skin.at((2 * u0 + u1) / 3, (v0 + 2 * v1) / 3, q);
                worst = Math.max(worst, off(high, p00, q));
            }
        }
        return worst;
    }

    /** @param around true where the last line of equal u is the first one again */
    Sample sample(boolean around) {
        int m = us.length - (around ? 1 : 0), n = vs.length;
        double[] xyz = new double[3 * m * n], uv = new double[2 * m * n], p = new double[3];
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < m; i++) {
                int at = j * m + i;
                skin.at(us[i], vs[j], p);
                System.arraycopy(p, 0, xyz, 3 * at, 3);
                uv[2 * at] = us[i];
                uv[2 * at + 1] = vs[j];
            }
        }
        return new Sample(TriMesh.of(xyz, corners(m, n, around)), uv, null);
    }

    /** Sample whose facets between neighbouring lines of equal u are flat, laid flat side by side as {@code place} says. */
    Sample sample(BiFunction<Integer, double[], double[]> place) {
        Sample sample = sample(false);
        int count = sample.mesh().vertexCount(), m = us.length;
        double[] flat = new double[2 * count];
        for (int at = 0; at < count; at++) {
            double[] q = place.apply(at % m, new double[] {sample.mesh().x(at), sample.mesh().y(at), sample.mesh().z(at)});
            flat[2 * at] = q[0];
            flat[2 * at + 1] = q[1];
        }
        return sample.with(flat);
    }

    /** The same cells as {@link #sample} has: vertex (i, j) is number j m + i. */
    static int[] corners(int m, int n, boolean around) {
        int cells = around ? m : m - 1;
        int[] tri = new int[6 * cells * (n - 1)];
        int at = 0;
        for (int j = 0; j + 1 < n; j++) {
            for (int i = 0; i < cells; i++) {
                int a = j * m + i, b = j * m + (i + 1) % m, c = b + m, d = a + m;
                for (int corner : new int[] {a, b, c, a, c, d}) tri[at++] = corner;
            }
        }
        return tri;
    }

    static double[] none(double[] breaks) {
        double[] caps = new double[breaks.length - 1];
        Arrays.fill(caps, Double.POSITIVE_INFINITY);
        return caps;
    }

    static void check(double cells) {
        if (!(2 * cells <= Fineness.MOST_TRIANGLES))
            throw new UnfitValue("chord", "this chord needs %.3g triangles and at most %d are made: take a larger chord", 2 * cells,
                    Fineness.MOST_TRIANGLES);
    }

    private static double cellsOf(double[] breaks, double[] steps, double finer) {
        double sum = 0;
        for (int s = 0; s < steps.length; s++) sum += Math.ceil((breaks[s + 1] - breaks[s]) / steps[s] * finer);
        return sum;
    }

    private static int[] counts(double[] breaks, double[] steps, double finer, int multiple) {
        int[] n = new int[steps.length];
        for (int s = 0; s < n.length; s++) {
            n[s] = (int) Math.max(1, Math.ceil((breaks[s + 1] - breaks[s]) / steps[s] * finer - 1e-9));
            if (n.length == 1) n[s] = (n[s] + multiple - 1) / multiple * multiple;
        }
        return n;
    }

    private static double[] knots(double[] breaks, int[] counts) {
        double[] knots = new double[Arrays.stream(counts).sum() + 1];
        int at = 0;
        for (int s = 0; s < counts.length; s++) {
            for (int i = 0; i < counts[s]; i++) knots[at++] = breaks[s] + (breaks[s + 1] - breaks[s]) * i / counts[s];
        }
        knots[at] = breaks[counts.length];
        return knots;
    }

    static double[] plane(double[] a, double[] b, double[] c) {
        double[] n = Skin.cross(new double[] {b[0] - a[0], b[1] - a[1], b[2] - a[2]}, new double[] {c[0] - a[0], c[1] - a[1], c[2] - a[2]});
        double length = Skin.norm(n);
        for (int k = 0; k < 3; k++) n[k] /= length;
        return n;
    }

    static double off(double[] n, double[] a, double[] q) {
        return Math.abs(n[0] * (q[0] - a[0]) + n[1] * (q[1] - a[1]) + n[2] * (q[2] - a[2]));
    }

    /** What the skin's bending and size between each pair of breaks ask of the steps. */
    private static final class Sizes {
        private static final int LOOKS = 7;
        private final double[] uBreaks;
        private final double[] vBreaks;
        private final double[] bendU;       // |L| + |M| |x_u|/|x_v|, largest seen between the breaks
        private final double[] bendV;
        private final double[] sizeU;       // |x_u|, likewise
        private final double[] sizeV;

        Sizes(Skin skin, double[] uBreaks, double[] vBreaks) {
            this.uBreaks = uBreaks;
            this.vBreaks = vBreaks;
            int m = uBreaks.length - 1, n = vBreaks.length - 1;
            bendU = new double[m];
            sizeU = new double[m];
            bendV = new double[n];
            sizeV = new double[n];
            for (int i = 0; i < m; i++) {
                for (int j = 0; j < n; j++) {
                    double du = uBreaks[i + 1] - uBreaks[i], dv = vBreaks[j + 1] - vBreaks[j];
                    for (int k = 0; k < LOOKS * LOOKS; k++) look(skin, i, j, du, dv, k % LOOKS, k / LOOKS);
                }
            }
        }

        private void look(Skin skin, int i, int j, double du, double dv, int a, int b) {
            double step = 2e-3;
            double u = uBreaks[i] + du * (2.5 * step + (1 - 5 * step) * a / (LOOKS - 1));
            double v = vBreaks[j] + dv * (2.5 * step + (1 - 5 * step) * b / (LOOKS - 1));
            double[][] d = skin.derivatives(u, v, du * step, dv * step);
            double[] n = Skin.cross(d[0], d[1]);
            double w = Skin.norm(n), lu = Skin.norm(d[0]), lv = Skin.norm(d[1]);
            double l = Math.abs(Skin.dot(d[2], n)) / w, m = Math.abs(Skin.dot(d[3], n)) / w, nn = Math.abs(Skin.dot(d[4], n)) / w;
            bendU[i] = Math.max(bendU[i], l + m * lu / lv);
            bendV[j] = Math.max(bendV[j], nn + m * lv / lu);
            sizeU[i] = Math.max(sizeU[i], lu);
            sizeV[j] = Math.max(sizeV[j], lv);
        }

        /** The longer of the panel's two ways across, mm, along the skin. */
        double extent() {
            double u = 0, v = 0;
            for (int i = 0; i < sizeU.length; i++) u += sizeU[i] * (uBreaks[i + 1] - uBreaks[i]);
            for (int j = 0; j < sizeV.length; j++) v += sizeV[j] * (vBreaks[j + 1] - vBreaks[j]);
            return Math.max(u, v);
        }

        double[][] steps(double chord, double[] uCap, double[] vCap) {
            double longest = extent() / EDGES_ALONG;
            double[] a = first(uBreaks, bendU, sizeU, uCap, chord, longest), b = first(vBreaks, bendV, sizeV, vCap, chord, longest);
            limit(a, sizeU, largest(b, sizeV) * SLENDER);
            limit(b, sizeV, largest(a, sizeU) * SLENDER);
            limit(a, sizeU, smallest(b, sizeV) * IN_A_BEND);
            limit(b, sizeV, smallest(a, sizeU) * IN_A_BEND);
            return new double[][] {a, b};
        }

        private static double[] first(double[] breaks, double[] bend, double[] size, double[] cap, double chord, double longest) {
            double[] steps = new double[bend.length];
            for (int s = 0; s < steps.length; s++) {
                double step = Math.min(cap[s], Math.min(Math.sqrt(4 * chord / bend[s]), longest / size[s])), whole = breaks[s + 1] - breaks[s];
                steps[s] = whole / Math.ceil(whole / step - 1e-9);
            }
            return steps;
        }

        private static void limit(double[] steps, double[] size, double mm) {
            for (int s = 0; s < steps.length; s++) steps[s] = Math.min(steps[s], mm / size[s]);
        }

        private static double largest(double[] steps, double[] size) {
            double most = 0;
            for (int s = 0; s < steps.length; s++) most = Math.max(most, steps[s] * size[s]);
            return most;
        }

        private static double smallest(double[] steps, double[] size) {
            double least = Double.POSITIVE_INFINITY;
            for (int s = 0; s < steps.length; s++) least = Math.min(least, steps[s] * size[s]);
            return least;
        }
    }
}
