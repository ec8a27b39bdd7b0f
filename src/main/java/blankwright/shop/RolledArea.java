package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.NearestPoint;
import blankwright.mesh.query.SkinPoint;
import blankwright.strain.Developability;
import blankwright.strain.StrainField;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/**
 * An area of the blank that is rolled: bent one way only, with next to no work in the metal.
 *
 * <p>A triangle is rolled where its strain is below {@link Developability#NEARLY}, its curvature is more than that of a circle of {@link #FLAT} times the
 * size of the piece, and the curvature across is below {@link #ACROSS} of it; neighbours that bulge to the same side make an area, which counts from
 * {@link #SMALLEST} of the piece and from a bulge of {@link #BULGE} of its size: less is a strip that by chance needs no work.
 * What turns at a {@link Fold} is no part of it. From the middle of the area a way is gone square to the rulings, both ways, until it leaves the area or the curvature
 * falls below half of what it is a little further in: there the rolling starts and stops. A ruling is the straight line through a place of the way,
 * along the mean of the tensors it crosses, to where it leaves the area.
 * <p>Error: start and stop to about two triangles, directions to about half a degree and radii to about 4 % on even meshes; a degree
 * and a half and 8 % on a tube of ragged triangles.
 *
 * @param rulings from the start to the stop, at least two
 * @param outward whether the outer skin is on the outside of the roll
 * @param share of the piece's area, 0..1
 */
public record RolledArea(List<Ruling> rulings, boolean outward, double share) {
    private static final double FLAT = 10, ACROSS = 0.25, SMALLEST = 0.03, BULGE = 0.005;
    private static final int LONGEST_WAY = 2_000;       // steps, ten sides of a square of the area: no way runs in circles for long
    private static final int RIM = 8;                   // steps from start and stop at which directions are asked for them
    private static final int GAP = 8;                   // steps a ruling may lead over a place that noise left out of the area
    private static final int COARSE = 4;                // steps at which the ends of a ruling are felt for where only its mean direction is asked

    /** Distance between two rulings where nothing else is asked, mm: a roll is brought along a few at a time. */
    public static final double SPACING = 50;

    public RolledArea {
        rulings = List.copyOf(rulings);
    }

    /** Where the rolling starts. */
    public Ruling start() {
        return rulings.get(0);
    }

    /** Where it stops. */
    public Ruling stop() {
        return rulings.get(rulings.size() - 1);
    }

    /** From start to stop along the sheet, square to the rulings, mm. */
    public double way() {
        return stop().at() - start().at();
    }

    /** How high it stands over a straight edge laid square to its rulings, about, mm. */
    double bulge() {
        double curvature = 0;
        for (Ruling ruling : rulings) curvature += 2 / (ruling.radius1() + ruling.radius2()) / rulings.size();
        return way() * way() * curvature / 8;
    }

    /**
     * All of a piece, the largest first.
     *
     * @param spacing largest distance between two rulings along the way, mm, above 0
     */
    public static List<RolledArea> of(StrainField strain, double spacing) {
        if (!(spacing > 0)) throw new IllegalArgumentException("spacing " + spacing + " mm: must be above 0");
        FlatMap map = strain.map();
        EdgeTable edges = EdgeTable.of(map.form());
        BendField bend = BendField.of(map, edges, Folds.of(map, edges));
        int[] side = sides(strain, bend);
        for (int i = 0; i < 3; i++) side = closed(side, edges);
        List<RolledArea> found = new ArrayList<>();
        boolean[] seen = new boolean[side.length];
        double whole = map.form().area();
        for (int t = 0; t < side.length; t++) {
            if (side[t] == 0 || seen[t]) continue;
            int[] area = connected(t, side, edges, seen);
            double share = 0;
            for (int a : area) share += map.form().area(a) / whole;
            if (share < SMALLEST) continue;
            List<Ruling> rulings = new Tracer(map, bend, area).rulings(spacing);
            RolledArea rolled = rulings.size() < 2 ? null : new RolledArea(rulings, side[t] > 0, share);
            if (rolled != null && rolled.bulge() > BULGE * Math.hypot(map.size()[0], map.size()[1])) found.add(rolled);
        }
        found.sort((a, b) -> Double.compare(b.share, a.share));
        return found;
    }

    /** 1 where the outer skin bulges, -1 where it is hollow, 0 where the triangle is not rolled. */
    private static int[] sides(StrainField strain, BendField bend) {
        double[] size = strain.map().size();
        double least = 1 / (FLAT * Math.hypot(size[0], size[1]));
        int[] side = new int[strain.triangleCount()];
        for (int t = 0; t < side.length; t++) {
            boolean worked = Math.max(Math.abs(strain.engineering1(t)), Math.abs(strain.engineering2(t))) >= Developability.NEARLY;
            if (strain.degenerate(t) || strain.turnedOver(t) || worked) continue;
            double k = bend.bend(t);
            if (Math.abs(k) > least && Math.abs(bend.across(t)) < ACROSS * Math.abs(k)) side[t] = k > 0 ? 1 : -1;
        }
        return side;
    }

    /** Single triangles left out by the noise of ragged ones: those with two neighbours in an area join it. */
    private static int[] closed(int[] side, EdgeTable edges) {
        int[] closed = side.clone();
        for (int t = 0; t < side.length; t++) {
            if (side[t] != 0) continue;
            int sum = 0;
            for (int k = 0; k < 3; k++) sum += edges.neighbour(t, k) < 0 ? 0 : side[edges.neighbour(t, k)];
            if (Math.abs(sum) >= 2) closed[t] = Integer.signum(sum);
        }
        return closed;
    }

    private static int[] connected(int first, int[] side, EdgeTable edges, boolean[] seen) {
        ArrayDeque<Integer> open = new ArrayDeque<>(List.of(first));
        List<Integer> area = new ArrayList<>();
        seen[first] = true;
        while (!open.isEmpty()) {
            int t = open.remove();
            area.add(t);
            for (int k = 0; k < 3; k++) {
                int other = edges.neighbour(t, k);
                if (other >= 0 && !seen[other] && side[other] == side[first]) {
                    seen[other] = true;
                    open.add(other);
                }
            }
        }
        return area.stream().mapToInt(Integer::intValue).sorted().toArray();
    }

    /** Goes through one area. */
    private static final class Tracer {
        private final FlatMap map;
        private final BendField bend;
        private final int[] area;
        private final NearestPoint nearest;     // on the area's own triangles, laid flat
        private final TriMesh flat;
        private final double step;

        Tracer(FlatMap map, BendField bend, int[] area) {
            this.map = map;
            this.bend = bend;
            this.area = area;
            int[] corners = new int[3 * area.length];
            double total = 0;
            for (int i = 0; i < area.length; i++) {
                for (int k = 0; k < 3; k++) corners[3 * i + k] = map.form().corner(area[i], k);
                total += map.area(area[i]);
            }
            double[] uv = map.positions(), xyz = new double[uv.length / 2 * 3];
            for (int v = 0; v < uv.length / 2; v++) {
                xyz[3 * v] = uv[2 * v];
                xyz[3 * v + 1] = uv[2 * v + 1];
            }
            flat = TriMesh.of(xyz, corners);
            nearest = NearestPoint.on(flat);
            step = Math.sqrt(total) / 200;
        }

        /** A place of the area nearest to a point of the blank. */
        private record Here(int triangle, double u, double v, double off) { }

        private Here at(double u, double v) {
            SkinPoint spot = nearest.to(u, v, 0);
            double[] there = spot.on(flat);
            return new Here(area[spot.triangle()], there[0], there[1], Math.hypot(there[0] - u, there[1] - v));
        }

        /** Direction of the ruling at a place, the one of both that turns less from (du, dv). */
        private double[] direction(double[] tensor, double du, double dv) {
            double angle = BendField.angle(tensor[0], tensor[1], tensor[2]), c = Math.cos(angle), s = Math.sin(angle);
            return c * du + s * dv < 0 ? new double[] {-c, -s} : new double[] {c, s};
        }

        List<Ruling> rulings(double spacing) {
            double mu = 0, mv = 0, sum = 0;
            for (int t : area) {
                double w = map.area(t);
                for (int k = 0; k < 3; k++) {
                    mu += w / 3 * map.u(map.form().corner(t, k));
                    mv += w / 3 * map.v(map.form().corner(t, k));
                }
                sum += w;
            }
            Here middle = at(mu / sum, mv / sum);
            double[] d = direction(lineTensor(middle.u(), middle.v(), bend.tensor(middle.triangle())), 1, 0);
            List<double[]> back = way(middle, d, -1), forth = way(middle, d, 1), way = new ArrayList<>();
            for (int i = back.size() - 1; i > 0; i--) way.add(back.get(i));
            way.addAll(forth);
            way = new ArrayList<>(trimmed(way));
            if (way.size() < 2) return List.of();
            double[] run = new double[way.size()];
            for (int i = 1; i < run.length; i++)
                run[i] = run[i - 1] + Math.hypot(way.get(i)[0] - way.get(i - 1)[0], way.get(i)[1] - way.get(i - 1)[1]);
            double length = run[run.length - 1];
            int parts = (int) Math.max(1, Math.ceil(length / spacing - 1e-9));
            List<Ruling> rulings = new ArrayList<>();
            double[] along = {1, 0};
            double in = Math.min(RIM * step, length / 8);
            for (int p = 0; p <= parts; p++) {
                double s = length * p / parts;
                along = s < in || s > length - in ? turned(along, way, run, s < in ? in : length - in, s < in ? 3 * in : length - 3 * in, s)
                        : ruled(along, way, run, s);
                double inside = Math.max(in / 4, Math.min(length - in / 4, s));
                double[] place = onWay(way, run, inside);
                rulings.add(shifted(ruling(place[0], place[1], along, s), along, s - inside));
            }
            return rulings;
        }

        /** Found a little inside, where it cannot graze a rim, and put back to its place where both ends stay on the area. */
        private Ruling shifted(Ruling r, double[] d, double by) {
            if (by == 0) return r;
            Here a = at(r.u1() - by * d[1], r.v1() + by * d[0]), b = at(r.u2() - by * d[1], r.v2() + by * d[0]);
            return a.off() > step || b.off() > step ? r : new Ruling(a.u(), a.v(), b.u(), b.v(), r.radius1(), r.radius2(), r.at());
        }

        /** Direction of the ruling at s of the way, the one that turns less from {@code like}. */
        private double[] ruled(double[] like, List<double[]> way, double[] run, double s) {
            double[] p = onWay(way, run, s), tensor = lineTensor(p[0], p[1], bend.tensor(at(p[0], p[1]).triangle()));
            return direction(lineTensor(p[0], p[1], tensor), like[0], like[1]);
        }

        /** Beside a rim the folds of half the neighbourhood are missing: the direction is carried on from two places further in. */
        private double[] turned(double[] like, List<double[]> way, double[] run, double near, double far, double s) {
            double[] p = ruled(like, way, run, near), q = ruled(p, way, run, far);
            double turn = Math.atan2(q[0] * p[1] - q[1] * p[0], q[0] * p[0] + q[1] * p[1]) * (s - near) / (near - far);
            double c = Math.cos(turn), d = Math.sin(turn);
            return new double[] {c * p[0] - d * p[1], d * p[0] + c * p[1]};
        }

        private static double[] onWay(List<double[]> way, double[] run, double s) {
            int i = 1;
            while (i < run.length - 1 && run[i] < s) i++;
            double f = (s - run[i - 1]) / (run[i] - run[i - 1]);
            double[] p = way.get(i - 1), q = way.get(i);
            return new double[] {p[0] + f * (q[0] - p[0]), p[1] + f * (q[1] - p[1])};
        }

        /** Places {u, v, curvature} from the middle on, square to the rulings; sense 1 to the left of (d), -1 to its right. */
        private List<double[]> way(Here middle, double[] d, int sense) {
            List<double[]> way = new ArrayList<>();
            double u = middle.u(), v = middle.v();
            double[] dir = d;
            way.add(new double[] {u, v, curvature(u, v)});
            for (int i = 0; i < LONGEST_WAY; i++) {
                double[] here = direction(lineTensor(u, v, bend.tensor(at(u, v).triangle())), dir[0], dir[1]);
                double hu = u - sense * here[1] * step / 2, hv = v + sense * here[0] * step / 2;
                double[] half = direction(lineTensor(hu, hv, bend.tensor(at(hu, hv).triangle())), here[0], here[1]);
                double fraction = 1;
                double nu = u - sense * half[1] * step, nv = v + sense * half[0] * step;
                boolean out = at(nu, nv).off() > 1e-9 * step;
                if (out) {                              // the last part of the step, to the border
                    double low = 0;
                    for (int j = 0; j < 30; j++) {
                        double f = (low + fraction) / 2;
                        if (at(u - sense * half[1] * step * f, v + sense * half[0] * step * f).off() > 1e-9 * step) fraction = f;
                        else low = f;
                    }
                    fraction = low;
                }
                u -= sense * half[1] * step * fraction;
                v += sense * half[0] * step * fraction;
                dir = half;
                if (fraction > 1e-6) way.add(new double[] {u, v, curvature(u, v)});
                if (out) return way;
            }
            return way;
        }

        private double curvature(double u, double v) {
            double[] t = lineTensor(u, v, bend.tensor(at(u, v).triangle()));
            return Math.abs(BendField.larger(t[0], t[1], t[2]));
        }

        /** Without the ends where the smoothing alone bends: below half of the curvature a little further in. */
        private List<double[]> trimmed(List<double[]> way) {
            int in = Math.max(1, way.size() / 12), from = 0, to = way.size() - 1;
            while (from + in < to && way.get(from)[2] < way.get(from + in)[2] / 2) from++;
            while (to - in > from && way.get(to)[2] < way.get(to - in)[2] / 2) to--;
            return way.subList(from, to + 1);
        }

        /** Ends of the line through (u, v) along a direction within the area: {distance back, distance forth}, both 0 or above. */
        private double[] reach(double u, double v, double[] d, int stride) {
            double[] ends = new double[2];
            double loose = step;                        // a line beside a straight rim must not end where it grazes it
            for (int side = 0; side < 2; side++) {
                double sign = side == 0 ? -1 : 1;
                int far = 0;
                for (int i = stride; i <= far + GAP && i < LONGEST_WAY; i += stride)
                    if (at(u + sign * i * step * d[0], v + sign * i * step * d[1]).off() <= loose) far = i;
                ends[side] = far * step;
            }
            return ends;
        }

        /** Mean of the tensors along the ruling through (u, v), whose direction they in turn give. */
        private double[] lineTensor(double u, double v, double[] first) {
            double[] d = direction(first, 1, 0), ends = reach(u, v, d, COARSE), mean = new double[3];
            int samples = 12;
            for (int i = 0; i <= samples; i++) {
                double s = -ends[0] + (ends[0] + ends[1]) * i / samples;
                double[] t = bend.tensor(at(u + s * d[0], v + s * d[1]).triangle());
                for (int k = 0; k < 3; k++) mean[k] += t[k] / (samples + 1);
            }
            return mean;
        }

        private Ruling ruling(double u, double v, double[] d, double at) {
            double[] ends = reach(u, v, d, 1);
            // a step and a half out is off the area on both sides; its nearest place is the end
            Here a = at(u - (ends[0] + 1.5 * step) * d[0], v - (ends[0] + 1.5 * step) * d[1]);
            Here b = at(u + (ends[1] + 1.5 * step) * d[0], v + (ends[1] + 1.5 * step) * d[1]);
            double[] radii = radii(a, b);
            return new Ruling(a.u(), a.v(), b.u(), b.v(), radii[0], radii[1], at);
        }

        /** At both ends, from the straight line that fits 1/curvature along the ruling best: on a developable skin the radius changes evenly along it. */
        private double[] radii(Here a, Here b) {
            int samples = 24;
            double s0 = 0, s1 = 0, s2 = 0, r0 = 0, r1 = 0;
            for (int i = 0; i <= samples; i++) {
                double f = (double) i / samples;
                double[] t = bend.tensor(at(a.u() + f * (b.u() - a.u()), a.v() + f * (b.v() - a.v())).triangle());
                double radius = 1 / Math.max(1e-12, Math.abs(BendField.larger(t[0], t[1], t[2])));
                s0++;
                s1 += f;
                s2 += f * f;
                r0 += radius;
                r1 += f * radius;
            }
            double slope = (s0 * r1 - s1 * r0) / (s0 * s2 - s1 * s1), level = (r0 - slope * s1) / s0, mean = r0 / s0;
            // of few and noisy triangles the line could pass below 0 at an end: then the mean tells more
            return level > mean / 20 && level + slope > mean / 20 ? new double[] {level, level + slope} : new double[] {mean, mean};
        }
    }
}
