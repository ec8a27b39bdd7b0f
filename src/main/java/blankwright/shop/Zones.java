package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * A piece divided into connected areas with one instruction each.
 *
 * <ol>
 * <li>The strain is averaged to vertices and back to triangles as a tensor, so that one odd triangle makes no zone.
 * <li>A triangle is left alone where both principal strains stay within the neutral band. Elsewhere the principal strain of larger
 *     magnitude decides: stretch where it is positive, shrink where negative. For log strains that is the sign of their sum, so a triangle
 *     is to be stretched where its area must grow and shrunk where it must become less; where both are needed, {@link Zone#acrossStrain}
 *     says so.
 * <li>Triangles joined by an edge under one instruction make an area; an area smaller than the asked share of the piece joins the neighbour
 *     with which it has the longest common border, smallest first.
 * <li>The areas are numbered from 1, largest first; of equals the one with lower u, then v on the blank.
 * </ol>
 *
 * <p>The line of a zone is one of those that follow the direction of the instruction's strain both ways from a grid of places in the zone
 * until they leave it: of the long ones the one that changes most ({@link ZoneLine}): along the rim of a dish, along a flange, straight
 * through where all directions are alike. Lengths on blank and form are those of the very same points.
 */
public final class Zones {
    private final StrainField field;
    private final int[] zoneOf;
    private final List<Zone> zones;

    private Zones(StrainField field, int[] zoneOf, List<Zone> zones) {
        this.field = field;
        this.zoneOf = zoneOf;
        this.zones = zones;
    }

    /** With {@link ZoneOptions#DEFAULT}. */
    public static Zones of(StrainField field) {
        return of(field, ZoneOptions.DEFAULT);
    }

    public static Zones of(StrainField field, ZoneOptions options) {
        TriMesh form = field.map().form();
        EdgeTable edges = EdgeTable.of(form);
        VertexStrain at = VertexStrain.of(field);
        SmoothStrain smooth = SmoothStrain.of(form, at);
        byte[] instruction = instructions(smooth, options.neutral());
        int[] area = ZoneAreas.of(field, edges, instruction, options.smallestShare());
        return new Survey(field, edges, at, smooth, instruction, area).zones();
    }

    public StrainField field() {
        return field;
    }

    /** All zones; number n is at n - 1. */
    public List<Zone> list() {
        return zones;
    }

    /** Zones where something is to be done, in their order. */
    public List<Zone> worked() {
        return zones.stream().filter(z -> z.instruction() != Instruction.LEAVE).toList();
    }

    /** The same with other verdicts, one for each zone. */
    Zones withVerdicts(List<Verdict> verdicts) {
        List<Zone> judged = new ArrayList<>();
        for (int i = 0; i < zones.size(); i++) judged.add(zones.get(i).withVerdict(verdicts.get(i)));
        return new Zones(field, zoneOf, List.copyOf(judged));
    }

    /** Number, from 1, of the zone that holds triangle t. */
    public int zoneOf(int t) {
        return zoneOf[t] + 1;
    }

    /** Zone that holds triangle t. */
    public Zone at(int t) {
        return zones.get(zoneOf[t]);
    }

    private static byte[] instructions(SmoothStrain smooth, double neutral) {
        double up = Math.log1p(neutral), down = Math.log1p(-neutral);
        byte[] out = new byte[smooth.triangleCount()];
        for (int t = 0; t < out.length; t++) {
            double e1 = smooth.strain1(t), e2 = smooth.strain2(t);
            boolean leave = e1 + e2 >= 0 ? e1 < up : e2 > down;
            out[t] = (byte) (leave ? Instruction.LEAVE : e1 + e2 >= 0 ? Instruction.STRETCH : Instruction.SHRINK).ordinal();
        }
        return out;
    }

    /** Measures the areas, orders them and draws their lines. */
    private static final class Survey {
        private static final int GRID = 16;
        private static final double EQUAL = 1e-9;       // relative: what differs less is a tie, decided by place

        private final StrainField field;
        private final FlatMap map;
        private final TriMesh form;
        private final EdgeTable edges;
        private final VertexStrain at;
        private final SmoothStrain smooth;
        private final byte[] instruction;   // of the area's triangle that gave it its number, see ZoneAreas
        private final int[] zoneOf;
        private final int count;
        private final int[] size;
        private final double[] area;

        Survey(StrainField field, EdgeTable edges, VertexStrain at, SmoothStrain smooth, byte[] instruction, int[] areaOf) {
            this.field = field;
            this.map = field.map();
            this.form = map.form();
            this.edges = edges;
            this.at = at;
            this.smooth = smooth;
            this.instruction = instruction;
            int n = 0;
            for (int a : areaOf) n = Math.max(n, a + 1);
            count = n;
            zoneOf = areaOf.clone();
            size = new int[n];
            area = new double[n];
            number();
        }

        Zones zones() {
            int[] start = new int[count + 1];
            for (int z : zoneOf) start[z + 1]++;
            for (int z = 0; z < count; z++) start[z + 1] += start[z];
            int[] member = new int[zoneOf.length], fill = Arrays.copyOf(start, count);
            for (int t = 0; t < zoneOf.length; t++) member[fill[zoneOf[t]]++] = t;
            List<Zone> list = new ArrayList<>();
            for (int z = 0; z < count; z++) list.add(zone(z, Arrays.copyOfRange(member, start[z], start[z + 1])));
            return new Zones(field, zoneOf, List.copyOf(list));
        }

        /** Largest first; the number of an area becomes its place in that order. */
        private void number() {
            double[] u = new double[count], v = new double[count];
            double total = 0;
            for (int t = 0; t < zoneOf.length; t++) {
                int z = zoneOf[t];
                double a = field.area(t);
                total += a;
                area[z] += a;
                size[z]++;
                u[z] += a * centre(t, true);
                v[z] += a * centre(t, false);
            }
            double unit = Math.max(total * EQUAL, Double.MIN_NORMAL), length = Math.max(Math.sqrt(total) * EQUAL, Double.MIN_NORMAL);
            Integer[] order = new Integer[count];
            for (int z = 0; z < count; z++) order[z] = z;
            Arrays.sort(order, Comparator.<Integer>comparingLong(z -> -Math.round(area[z] / unit))
                    .thenComparingLong(z -> area[z] > 0 ? Math.round(u[z] / area[z] / length) : 0)
                    .thenComparingLong(z -> area[z] > 0 ? Math.round(v[z] / area[z] / length) : 0)
                    .thenComparingInt(z -> z));
            int[] to = new int[count];
            double[] oldArea = area.clone();
            int[] oldSize = size.clone();
            for (int i = 0; i < count; i++) {
                to[order[i]] = i;
                area[i] = oldArea[order[i]];
                size[i] = oldSize[order[i]];
            }
            for (int t = 0; t < zoneOf.length; t++) zoneOf[t] = to[zoneOf[t]];
        }

        private double centre(int t, boolean along) {
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            return along ? (map.u(a) + map.u(b) + map.u(c)) / 3 : (map.v(a) + map.v(b) + map.v(c)) / 3;
        }

        private Zone zone(int z, int[] member) {
            Instruction todo = Instruction.values()[instruction[member[0]]];
            double uu = 0, uv = 0, vv = 0, sum1 = 0, sum2 = 0, weight = 0;
            for (int t : member) {
                if (field.degenerate(t)) continue;
                double w = field.area(t), e1 = field.strain1(t), e2 = field.strain2(t);
                double mean = (e1 + e2) / 2, half = (e1 - e2) / 2, twice = 2 * field.directionOnBlank(t);
                uu += w * (mean + half * Math.cos(twice));
                uv += w * half * Math.sin(twice);
                vv += w * (mean - half * Math.cos(twice));
                sum1 += w * e1;
                sum2 += w * e2;
                weight += w;
            }
            boolean larger = todo == Instruction.STRETCH || todo == Instruction.LEAVE && sum1 + sum2 >= 0;
            double angle = Math.atan2(2 * uv, uu - vv) / 2 + (larger ? 0 : Math.PI / 2);
            if (angle > Math.PI / 2) angle -= Math.PI;
            if (angle <= -Math.PI / 2) angle += Math.PI;
            int v = worst(member, todo), worst = beside(member, v, todo, larger);
            double largest = Math.expm1(strain(v, todo));
            double[] direction = onForm(member, angle);
            Grid grid = new Grid(member);
            ZoneLine line = new ZoneLine(map, edges, zoneOf, z, grid.box, smooth, larger,
                    todo == Instruction.LEAVE ? 0 : larger ? 1 : -1, angle);
            line.from(worst, centre(worst, true), centre(worst, false));
            grid.each(line::from);
            double w = weight > 0 ? weight : 1;
            return new Zone(z + 1, todo, member.length, area[z], largest, Math.expm1((larger ? sum1 : sum2) / w),
                    Math.expm1((larger ? sum2 : sum1) / w), angle, direction[0], direction[1], direction[2],
                    new Spot(worst, map.u(v), map.v(v), form.x(v), form.y(v), form.z(v)), label(z, member, grid, worst),
                    line.line(), todo == Instruction.LEAVE ? Verdict.SPRINGS_IN : Verdict.of(largest));
        }

        /** The instruction's strain at vertex v, log; where nothing is to be done the one larger in magnitude. */
        private double strain(int v, Instruction todo) {
            boolean larger = todo == Instruction.STRETCH || todo == Instruction.LEAVE && at.strain1(v) + at.strain2(v) >= 0;
            return larger ? at.strain1(v) : at.strain2(v);
        }

        /** The vertex of the zone with most of the instruction's strain. */
        private int worst(int[] member, Instruction todo) {
            int best = form.corner(member[0], 0);
            double most = Double.NEGATIVE_INFINITY;
            for (int t : member) {
                for (int k = 0; k < 3; k++) {
                    int v = form.corner(t, k);
                    double e = strain(v, todo), amount = todo == Instruction.LEAVE ? Math.abs(e) : todo == Instruction.STRETCH ? e : -e;
                    if (amount > most + EQUAL || amount > most - EQUAL && before(map.u(v), map.v(v), map.u(best), map.v(best), t)) {
                        most = Math.max(most, amount);
                        best = v;
                    }
                }
            }
            return best;
        }

        /** Of the zone's triangles at vertex v the one with most of the instruction's strain: on a rim one with an edge on it. */
        private int beside(int[] member, int v, Instruction todo, boolean larger) {
            int best = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int t : member) {
                if (form.corner(t, 0) != v && form.corner(t, 1) != v && form.corner(t, 2) != v) continue;
                double e = larger ? field.strain1(t) : field.strain2(t), amount = todo == Instruction.LEAVE ? 0 : larger ? e : -e;
                if (best < 0 || amount > most + EQUAL || amount > most - EQUAL
                        && before(centre(t, true), centre(t, false), centre(best, true), centre(best, false), t)) {
                    most = Math.max(most, amount);
                    best = t;
                }
            }
            return best;
        }

        /** Whether one place comes before another in the order of u, then v; what is nearer than a trifle of triangle t is a tie. */
        private boolean before(double u, double v, double otherU, double otherV, int t) {
            double near = EQUAL * Math.sqrt(field.area(t));
            return u - otherU < -near || u - otherU < near && v < otherV;
        }

        /**
         * Where the direction at {@code angle} of the blank goes on the form: mean over the zone of what each triangle's rotation makes of
         * it.
         */
        private double[] onForm(int[] member, double angle) {
            double[] sum = new double[3];
            for (int t : member) {
                if (field.degenerate(t)) continue;
                double[] n = form.normal(t);
                if (field.turnedOver(t)) for (int k = 0; k < 3; k++) n[k] = -n[k];
                double dx = field.directionX(t), dy = field.directionY(t), dz = field.directionZ(t);
                double turn = angle - field.directionOnBlank(t);
                double c = field.area(t) * Math.cos(turn), s = field.area(t) * Math.sin(turn);
                sum[0] += c * dx + s * (n[1] * dz - n[2] * dy);
                sum[1] += c * dy + s * (n[2] * dx - n[0] * dz);
                sum[2] += c * dz + s * (n[0] * dy - n[1] * dx);
            }
            double length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
            if (!(length > 0)) return new double[] {1, 0, 0};
            for (int k = 0; k < 3; k++) sum[k] /= length;
            return sum;
        }

        private Spot spot(int t, double u, double v) {
            double[] w = Barycentre.of(map, t, u, v);
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            return new Spot(t, u, v, w[0] * form.x(a) + w[1] * form.x(b) + w[2] * form.x(c),
                    w[0] * form.y(a) + w[1] * form.y(b) + w[2] * form.y(c), w[0] * form.z(a) + w[1] * form.z(b) + w[2] * form.z(c));
        }

        /** The grid place farthest from the zone's border on the blank; the middle of the given triangle where the grid misses the zone. */
        private Spot label(int z, int[] member, Grid grid, int worst) {
            double[] border = new double[64];
            int length = 0;
            for (int t : member) {
                for (int k = 0; k < 3; k++) {
                    int other = edges.neighbour(t, k);
                    if (other >= 0 && zoneOf[other] == z) continue;
                    if (length + 4 > border.length) border = Arrays.copyOf(border, 2 * border.length);
                    int a = form.corner(t, k), b = form.corner(t, (k + 1) % 3);
                    border[length++] = map.u(a);
                    border[length++] = map.v(a);
                    border[length++] = map.u(b) - map.u(a);
                    border[length++] = map.v(b) - map.v(a);
                }
            }
            double[] edge = Arrays.copyOf(border, length);
            double[] best = {-1, centre(worst, true), centre(worst, false), worst};
            grid.each((t, u, v) -> {
                double nearest = Double.POSITIVE_INFINITY;
                for (int i = 0; i < edge.length && nearest > best[0]; i += 4) {
                    double pu = u - edge[i], pv = v - edge[i + 1], du = edge[i + 2], dv = edge[i + 3], dd = du * du + dv * dv;
                    double f = dd > 0 ? Math.max(0, Math.min(1, (pu * du + pv * dv) / dd)) : 0;
                    pu -= f * du;
                    pv -= f * dv;
                    nearest = Math.min(nearest, pu * pu + pv * pv);
                }
                if (nearest > best[0] * (1 + EQUAL)) {
                    best[0] = nearest;
                    best[1] = u;
                    best[2] = v;
                    best[3] = t;
                }
            });
            return spot((int) best[3], best[1], best[2]);
        }

        /** The middles of GRID x GRID cells over a zone's box on the blank that lie in the zone, and the triangle that holds each. */
        private final class Grid {
            private final double u0, v0, du, dv;
            private final double[] box;
            private final int[] triangle = new int[GRID * GRID];

            Grid(int[] member) {
                double lowU = Double.POSITIVE_INFINITY, lowV = lowU, highU = -lowU, highV = -lowU;
                for (int t : member) {
                    for (int k = 0; k < 3; k++) {
                        int c = form.corner(t, k);
                        lowU = Math.min(lowU, map.u(c));
                        highU = Math.max(highU, map.u(c));
                        lowV = Math.min(lowV, map.v(c));
                        highV = Math.max(highV, map.v(c));
                    }
                }
                box = new double[] {lowU, lowV, highU, highV};
                du = (highU - lowU) / GRID;
                dv = (highV - lowV) / GRID;
                u0 = lowU + du / 2;
                v0 = lowV + dv / 2;
                Arrays.fill(triangle, -1);
                if (du > 0 && dv > 0) for (int t : member) put(t);
            }

            private void put(int t) {
                int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
                double lowU = Math.min(map.u(a), Math.min(map.u(b), map.u(c))), highU = Math.max(map.u(a), Math.max(map.u(b), map.u(c)));
                double lowV = Math.min(map.v(a), Math.min(map.v(b), map.v(c))), highV = Math.max(map.v(a), Math.max(map.v(b), map.v(c)));
                int toI = (int) Math.min(GRID - 1, Math.floor((highU - u0) / du));
                int toJ = (int) Math.min(GRID - 1, Math.floor((highV - v0) / dv));
                for (int i = (int) Math.max(0, Math.ceil((lowU - u0) / du)); i <= toI; i++) {
                    for (int j = (int) Math.max(0, Math.ceil((lowV - v0) / dv)); j <= toJ; j++) {
                        if (triangle[GRID * j + i] < 0 && Barycentre.holds(map, t, u0 + i * du, v0 + j * dv)) triangle[GRID * j + i] = t;
                    }
                }
            }

            void each(Place place) {
                for (int i = 0; i < triangle.length; i++) {
                    if (triangle[i] >= 0) place.at(triangle[i], u0 + i % GRID * du, v0 + i / GRID * dv);
                }
            }
        }
    }

    private interface Place {
        void at(int triangle, double u, double v);
    }
}
