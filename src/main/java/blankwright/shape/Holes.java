package blankwright.shape;

import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Cuts holes out of a grid whose parameters are mm along the skin: vertices near a hole's edge are moved onto it, the edges still crossing it
 * are cut there, and what lies inside is left out.
 *
 * <p>A vertex moves if it lies within a quarter of its shortest cell side, so no cut is shorter than that and no triangle collapses.
 */
final class Holes {
    private static final double NEAR = 0.25;
    /** Metal left between a hole and an edge or another hole, mm. */
    private static final double BRIDGE = 5;

    private final Skin skin;
    private final List<Hole> holes;
    private final List<double[]> uv = new ArrayList<>();
    private final List<Double> away = new ArrayList<>();
    private final Map<Long, Integer> cuts = new HashMap<>();
    private final List<int[]> triangles = new ArrayList<>();

    private Holes(Skin skin, List<Hole> holes) {
        this.skin = skin;
        this.holes = holes;
    }

    /** Every hole lies within the rectangle and apart from the others, or it is refused; gives the narrowest bridge of metal, mm. */
    static double check(List<Hole> holes, double u0, double u1, double v0, double v1) {
        double room = Double.POSITIVE_INFINITY;
        for (int i = 0; i < holes.size(); i++) {
            Hole h = holes.get(i);
            double edge = Math.min(Math.min(h.along() - h.length() / 2 - u0, u1 - h.along() - h.length() / 2),
                    Math.min(h.across() - h.width() / 2 - v0, v1 - h.across() - h.width() / 2));
            Need.that(edge >= BRIDGE, "holes", edge < 0 ? "hole %d reaches %s over an edge or bend: leave %s of metal"
                    : "hole %d comes within %s of an edge or bend: leave %s of metal", i + 1, Need.mm(Math.abs(edge)), Need.mm(BRIDGE));
            room = Math.min(room, edge);
            for (int j = 0; j < i; j++) {
                double gap = gap(h, holes.get(j));
                Need.that(gap >= BRIDGE, "holes", "holes %d and %d are nearer than %s: move them apart or make them one", j + 1, i + 1,
                        Need.mm(BRIDGE));
                room = Math.min(room, gap);
            }
        }
        return room;
    }

    /**
     * Breaks so that cells round each hole are fine enough for its edge.
     *
     * @param along true for u
     * @param room the narrowest bridge of metal, mm: at least three cells fit in it
     * @return {breaks, longest step between each pair}
     */
    static double[][] breaks(List<Hole> holes, boolean along, double[] given, double chord, double room) {
        TreeSet<Double> all = new TreeSet<>();
        for (double b : given) all.add(b);
        for (Hole h : holes) {
            double step = step(h, chord, room), middle = along ? h.along() : h.across(), half = (along ? h.length() : h.width()) / 2 + 2 * step;
            for (double b : new double[] {middle - half, middle + half}) {
                if (b <= given[0] || b >= given[given.length - 1]) continue;
                Double below = all.floor(b), above = all.ceiling(b);
                if (b - below > step && above - b > step) all.add(b);
            }
        }
        double[] breaks = all.stream().mapToDouble(Double::doubleValue).toArray();
        double[] caps = Grid.none(breaks);
        for (int s = 0; s < caps.length; s++) {
            for (Hole h : holes) {
                double step = step(h, chord, room), middle = along ? h.along() : h.across(), half = (along ? h.length() : h.width()) / 2 + step;
                if (breaks[s + 1] > middle - half && breaks[s] < middle + half) caps[s] = Math.min(caps[s], step);
            }
        }
        return new double[][] {breaks, caps};
    }

    /** Edge chords of 1.4 steps stay within the tolerance of the hole's round ends; and at least a dozen steps go round. */
    private static double step(Hole h, double chord, double room) {
        return Math.min(Math.min(h.endRadius() / 2, room / 3), Math.sqrt(8 * chord * h.endRadius()) / 1.6);
    }

    static Sample cut(Skin skin, double[] us, double[] vs, List<Hole> holes) {
        Holes work = new Holes(skin, holes);
        work.place(us, vs);
        int[] grid = Grid.corners(us.length, vs.length, false);
        for (int t = 0; t < grid.length; t += 3) work.keep(grid[t], grid[t + 1], grid[t + 2]);
        return work.sample();
    }

    private void place(double[] us, double[] vs) {
        for (int j = 0; j < vs.length; j++) {
            for (int i = 0; i < us.length; i++) {
                double[] p = {us[i], vs[j]};
                Hole hole = nearest(p);
                double d = hole.distance(p[0], p[1]);
                if (i > 0 && j > 0 && i + 1 < us.length && j + 1 < vs.length) {
                    double side = Math.min(Math.min(us[i] - us[i - 1], us[i + 1] - us[i]), Math.min(vs[j] - vs[j - 1], vs[j + 1] - vs[j]));
                    if (Math.abs(d) < NEAR * side) {
                        p = hole.nearest(p[0], p[1]);
                        d = 0;
                    }
                }
                uv.add(p);
                away.add(d);
            }
        }
    }

    private Hole nearest(double[] p) {
        Hole best = holes.get(0);
        for (Hole h : holes) if (h.distance(p[0], p[1]) < best.distance(p[0], p[1])) best = h;
        return best;
    }

    private void keep(int a, int b, int c) {
        int inside = 0, outside = 0;
        for (int v : new int[] {a, b, c}) {
            if (away.get(v) < 0) inside++;
            if (away.get(v) > 0) outside++;
        }
        if (outside == 0) return;
        if (inside == 0) triangles.add(new int[] {a, b, c});
        else if (inside == 2) {
            while (away.get(a) <= 0) {
                int first = a;
                a = b;
                b = c;
                c = first;
            }
            triangles.add(new int[] {a, cut(a, b), cut(a, c)});
        } else {
            while (away.get(a) >= 0) {
                int first = a;
                a = b;
                b = c;
                c = first;
            }
            if (away.get(b) == 0) triangles.add(new int[] {b, c, cut(a, c)});
            else if (away.get(c) == 0) triangles.add(new int[] {cut(a, b), b, c});
            else quad(cut(a, b), b, c, cut(a, c));
        }
    }

    private void quad(int a, int b, int c, int d) {
        if (distance(a, c) <= distance(b, d)) {
            triangles.add(new int[] {a, b, c});
            triangles.add(new int[] {a, c, d});
        } else {
            triangles.add(new int[] {a, b, d});
            triangles.add(new int[] {b, c, d});
        }
    }

    /** The vertex where the edge from a to b crosses a hole's edge. */
    private int cut(int a, int b) {
        long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
        Integer known = cuts.get(key);
        if (known != null) return known;
        double[] p = uv.get(Math.min(a, b)), q = uv.get(Math.max(a, b));
        Hole hole = nearest(uv.get(away.get(a) < 0 ? a : b));
        boolean startsInside = hole.distance(p[0], p[1]) < 0;
        double low = 0, high = 1;
        for (int i = 0; i < 60; i++) {
            double m = (low + high) / 2;
            boolean in = hole.distance(p[0] + (q[0] - p[0]) * m, p[1] + (q[1] - p[1]) * m) < 0;
            if (in == startsInside) low = m;
            else high = m;
        }
        double m = (low + high) / 2;
        uv.add(new double[] {p[0] + (q[0] - p[0]) * m, p[1] + (q[1] - p[1]) * m});
        away.add(0.0);
        cuts.put(key, uv.size() - 1);
        return uv.size() - 1;
    }

    private Sample sample() {
        int[] number = new int[uv.size()];
        Arrays.fill(number, -1);
        int[] tri = new int[3 * triangles.size()];
        for (int t = 0; t < triangles.size(); t++) for (int k = 0; k < 3; k++) number[triangles.get(t)[k]] = 0;
        int count = 0;
        for (int v = 0; v < number.length; v++) if (number[v] == 0) number[v] = count++;
        double[] xyz = new double[3 * count], kept = new double[2 * count], p = new double[3];
        for (int v = 0; v < number.length; v++) {
            if (number[v] < 0) continue;
            skin.at(uv.get(v)[0], uv.get(v)[1], p);
            System.arraycopy(p, 0, xyz, 3 * number[v], 3);
            System.arraycopy(uv.get(v), 0, kept, 2 * number[v], 2);
        }
        for (int t = 0; t < triangles.size(); t++) for (int k = 0; k < 3; k++) tri[3 * t + k] = number[triangles.get(t)[k]];
        return new Sample(TriMesh.of(xyz, tri), kept, null);
    }

    private double distance(int a, int b) {
        return Math.hypot(uv.get(a)[0] - uv.get(b)[0], uv.get(a)[1] - uv.get(b)[1]);
    }

    private static double gap(Hole a, Hole b) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 720; i++) {
            double t = Math.PI * i / 360, r = 1e6;
            double[] p = a.nearest(a.along() + r * Math.cos(t), a.across() + r * Math.sin(t));
            double[] q = b.nearest(p[0], p[1]);
            q = a.nearest(q[0], q[1]);
            least = Math.min(least, Math.min(b.distance(p[0], p[1]), b.distance(q[0], q[1])));
        }
        return least;
    }
}
