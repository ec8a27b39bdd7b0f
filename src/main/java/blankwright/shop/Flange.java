package blankwright.shop;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A turned flange: the strip along an edge that stands at an angle to the skin beside it, beyond a bend that runs along the edge.
 *
 * <p>The edge is looked at in {@link #LOOKS} sections square to it, or one for each of its sides where it has fewer; neighbours that are
 * folded to the same side make a flange, from three of them and {@link #SHORTEST} on, one among them that is not counting with them. Its
 * measures are means over the sections.
 * <p>Error: on panels by formula angle to 1 degree, width to 0.5 mm, change by the rule to 3 %.
 * <p>{@link #byRule} is the trade's rule: the change of an edge is the flange's width times the angle swept, for a right angle with a sharp
 * bend; for any other, the sheet from the edge to the end of the bend less what is left of it in plan (derived: a fibre that moves from
 * radius R to R' changes by (R' - R) times the sweep).
 *
 * @param rim which one of the form, as {@link RimLoops} counts them
 * @param whole whether it goes all the way round that rim
 * @param outward whether the outside face bulges at the bend, as where the edge is turned to the inside
 * @param angle turned through, rad, above 0
 * @param least where it is turned least, a twentieth of the sections left out; likewise {@code most}
 * @param radius of the bend on the surface given, mm; 0 where it is as sharp as the triangles are large
 * @param width from the edge to where the bend begins, mm, on the form
 * @param scribed from the edge to the middle of the bend, mm, on the blank
 * @param plan sheet from the edge to the end of the bend less what is left of it in plan, mm, weighted by how much the bend turns along its way
 * @param sweep that the bend turns through along its way, seen square to the skin beside it, rad: above 0 where the edge must be stretched
 * @param blankLength of the edge along it, mm; {@code formLength} on the form
 * @param line middle of the bend on the blank, two numbers a point, mm; all the way round it does not repeat its first
 * @param edge the finished edge along it, on the blank, likewise
 */
public record Flange(int rim, boolean whole, boolean outward, double angle, double least, double most, double radius, double width,
        double scribed, double plan, double sweep, double blankLength, double formLength, double[] line, double[] edge) {
    private static final int LOOKS = 360, FEWEST = 3;
    private static final double ALIKE = Math.toRadians(4);      // what a hand can hold
    private static final double HARDLY = 0.1;                   // rad of sweep, below which a bend is straight
    private static final double SHORTEST = 30;                  // mm of edge

    /** {@code 85°}, or {@code 80 to 95°} where it is not the same all along. */
    public String degrees() {
        return most - least < ALIKE ? String.format(Locale.ROOT, "%.0f°", Math.toDegrees(angle))
                : String.format(Locale.ROOT, "%.0f to %.0f°", Math.toDegrees(least), Math.toDegrees(most));
    }

    /** {@code down}, away from the outside face, or {@code up}. */
    public String way() {
        return outward ? "down" : "up";
    }

    /** {@code flange 1: 85° down}; up is towards the outside face. */
    public String words(int number) {
        return "flange " + number + ": " + degrees() + " " + way();
    }

    /** What the edge must gain, or lose where below 0, by the turning alone, mm. */
    public double byRule() {
        return plan * sweep;
    }

    /** What it gains or loses between blank and form, mm, the panel's own shape counted in. */
    public double change() {
        return formLength - blankLength;
    }

    /** Whether a place of the blank lies on the flange or its bend, or within as much again beside it. */
    public boolean holds(double u, double v) {
        for (int i = 0; i < edge.length; i += 2) if (Math.hypot(edge[i] - u, edge[i + 1] - v) < 2 * scribed) return true;
        return false;
    }

    /** All of a piece, rim by rim. */
    public static List<Flange> of(FlatMap map) {
        TriMesh form = map.form();
        EdgeTable edges = EdgeTable.of(form);
        RimLoops rims = RimLoops.of(form, edges);
        int[] rimHalf = new int[form.vertexCount()];            // by the vertex it starts from; a vertex of two rims has one of them
        for (int h = 0; h < 3 * form.triangleCount(); h++) if (edges.twin(h) < 0) rimHalf[form.corner(h / 3, h % 3)] = h;
        List<Flange> found = new ArrayList<>();
        for (int rim = 0; rim < rims.count(); rim++) new Finder(map, edges, rim, rims.loop(rim), rimHalf).find(found);
        return List.copyOf(found);
    }

    /** One rim in blocks of edges, each looked at in the middle one. */
    private static final class Finder {
        private final FlatMap map;
        private final int rim;
        private final int[] loop;
        private final int[] start;              // of each block among the places of the loop; one more than there are blocks
        private final List<Optional<EdgeProfile.Fold>> folds = new ArrayList<>();

        Finder(FlatMap map, EdgeTable edges, int rim, int[] loop, int[] rimHalf) {
            this.map = map;
            this.rim = rim;
            this.loop = loop;
            int blocks = Math.min(LOOKS, loop.length);
            start = new int[blocks + 1];
            for (int b = 0; b <= blocks; b++) start[b] = (int) ((long) loop.length * b / blocks);
            for (int b = 0; b < blocks; b++) folds.add(EdgeProfile.fold(map, edges, rimHalf[loop[(start[b] + start[b + 1]) / 2]]));
        }

        /** {@code 1} or {@code -1} by the side a block is folded to, 0 where it is not; one alone among others is as they are. */
        private int side(int block) {
            int n = folds.size(), here = own(block), before = own((block + n - 1) % n), after = own((block + 1) % n);
            return here != 0 ? here : before == after ? before : 0;
        }

        private int own(int block) {
            return folds.get(block).map(f -> (int) Math.signum(f.turn())).orElse(0);
        }

        void find(List<Flange> found) {
            int n = folds.size(), begin = 0;
            while (begin < n && side(begin) == side((begin + n - 1) % n)) begin++;
            if (begin == n) {
                if (side(0) != 0) flange(0, n, true).ifPresent(found::add);
                return;
            }
            for (int i = 0; i < n; ) {
                int from = (begin + i) % n, count = 1;
                while (i + count < n && side((from + count) % n) == side(from)) count++;
                if (side(from) != 0) flange(from, count, false).ifPresent(found::add);
                i += count;
            }
        }

        private Optional<Flange> flange(int from, int count, boolean whole) {
            List<EdgeProfile.Fold> seen = new ArrayList<>();
            double blank = 0, form = 0;
            List<double[]> edge = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                int block = (from + i) % folds.size();
                folds.get(block).ifPresent(seen::add);
                for (int p = start[block]; p < start[block + 1]; p++) {
                    int a = loop[p], b = loop[(p + 1) % loop.length];
                    blank += Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a));
                    form += map.form().distance(a, b);
                    edge.add(new double[] {map.u(a), map.v(a)});
                }
            }
            if (seen.size() < FEWEST || form < SHORTEST) return Optional.empty();
            double angle = 0, bend = 0, width = 0, scribed = 0;
            for (EdgeProfile.Fold fold : seen) {
                angle += Math.abs(fold.turn()) / seen.size();
                bend += (fold.toWeb() - fold.toBend()) / seen.size();
                width += fold.toBend() / seen.size();
                scribed += fold.onBlank() / seen.size();
            }
            double[] turned = seen.stream().mapToDouble(fold -> Math.abs(fold.turn())).sorted().toArray();
            int few = turned.length / 20;
            double[] swept = swept(seen, whole, count);
            return Optional.of(new Flange(rim, whole, seen.get(0).turn() < 0, angle, turned[few], turned[turned.length - 1 - few], bend / angle,
                    width, scribed, swept[1], swept[0], blank, form, joined(seen.stream().map(EdgeProfile.Fold::middleOnBlank).toList()), joined(edge)));
        }

        /** {sweep, plan}: turns of the bend in the skin beside it, those within the first and last block of an open one in proportion. */
        private static double[] swept(List<EdgeProfile.Fold> seen, boolean whole, int blocks) {
            int n = seen.size();
            double sum = 0, gain = 0, plain = 0;
            for (int i = whole ? 0 : 1; i < (whole ? n : n - 1); i++) {
                double[] before = seen.get((i + n - 1) % n).middle(), here = seen.get(i).middle(), after = seen.get((i + 1) % n).middle();
                double[] up = seen.get(i).web(), d = square(before, here, up), e = square(here, after, up);
                double cross = up[0] * (d[1] * e[2] - d[2] * e[1]) + up[1] * (d[2] * e[0] - d[0] * e[2]) + up[2] * (d[0] * e[1] - d[1] * e[0]);
                double turn = Math.atan2(cross, d[0] * e[0] + d[1] * e[1] + d[2] * e[2]), plan = seen.get(i).toWeb() - seen.get(i).plan();
                sum += turn;
                gain += turn * plan;
                plain += plan / (whole ? n : n - 2);
            }
            return new double[] {-(whole ? sum : sum * blocks / (n - 2)), Math.abs(sum) > HARDLY ? gain / sum : plain};
        }

        /** From a to b, less what stands on the skin. */
        private static double[] square(double[] a, double[] b, double[] normal) {
            double[] d = {b[0] - a[0], b[1] - a[1], b[2] - a[2]};
            double up = d[0] * normal[0] + d[1] * normal[1] + d[2] * normal[2];
            for (int k = 0; k < 3; k++) d[k] -= up * normal[k];
            return d;
        }

        private static double[] joined(List<double[]> points) {
            return points.stream().flatMapToDouble(Arrays::stream).toArray();
        }
    }
}
