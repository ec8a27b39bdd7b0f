package blankwright.strain;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.List;

/**
 * How much longer or shorter the free edges of a piece are on the form than on the blank: the one number a tape measure checks.
 *
 * <p>Changes are form less blank, mm: positive = let-out, negative = take-in. Two questions are answered for each loop:
 * which connected stretch of it, of any length, changes most in all; and which run of a given length marked on the blank changes most.
 */
public final class RimChange {
    /** Run that a builder marks and tapes where nothing else is said, mm: a hand's breadth. */
    public static final double RUN = 100;

    /**
     * A connected part of a rim loop.
     *
     * @param blankLength its length on the blank, mm
     * @param formLength its length on the form, mm
     * @param u place of its middle (half its blank length) on the blank, mm
     * @param x the same place on the form, mm
     */
    public record Run(double blankLength, double formLength, double u, double v, double x, double y, double z) {
        /** Form less blank, mm: positive = let-out, negative = take-in. */
        public double change() {
            return formLength - blankLength;
        }
    }

    /**
     * One rim loop.
     *
     * @param index of the loop among the {@link RimLoops} of the form
     * @param mostTakenIn the connected part, of any length, whose take-in is largest; of no length where nothing is to be taken in
     * @param mostLetOut the same for let-out
     * @param tightest the run of the asked length with the lowest change; the whole loop where that is shorter
     * @param loosest the run of the asked length with the highest change
     */
    public record Loop(int index, double blankLength, double formLength, Run mostTakenIn, Run mostLetOut, Run tightest, Run loosest) {
        public double change() {
            return formLength - blankLength;
        }
    }

    private final List<Loop> loops;
    private final double run;

    private RimChange(List<Loop> loops, double run) {
        this.loops = loops;
        this.run = run;
    }

    /** Runs of {@link #RUN}. */
    public static RimChange of(FlatMap map) {
        return of(map, RimLoops.of(map.form(), EdgeTable.of(map.form())), RUN);
    }

    /**
     * @param rims of the form of the map
     * @param run length of the runs, measured on the blank, mm, above 0
     */
    public static RimChange of(FlatMap map, RimLoops rims, double run) {
        if (!(run > 0)) throw new IllegalArgumentException("run " + run + " mm: must be above 0");
        List<Loop> loops = new ArrayList<>();
        for (int i = 0; i < rims.count(); i++) loops.add(new Walk(map, rims.loop(i)).loop(i, run));
        return new RimChange(List.copyOf(loops), run);
    }

    public List<Loop> loops() {
        return loops;
    }

    /** Length of the runs, mm. */
    public double run() {
        return run;
    }

    /** Largest take-in of any connected part of any loop, mm, 0 or above. */
    public double largestTakeIn() {
        double most = 0;
        for (Loop loop : loops) most = Math.max(most, -loop.mostTakenIn().change());
        return most;
    }

    /** Largest let-out of any connected part of any loop, mm, 0 or above. */
    public double largestLetOut() {
        double most = 0;
        for (Loop loop : loops) most = Math.max(most, loop.mostLetOut().change());
        return most;
    }

    /** Largest take-in over one run, mm, 0 or above. */
    public double takeInPerRun() {
        double most = 0;
        for (Loop loop : loops) most = Math.max(most, -loop.tightest().change());
        return most;
    }

    /** Largest let-out over one run, mm, 0 or above. */
    public double letOutPerRun() {
        double most = 0;
        for (Loop loop : loops) most = Math.max(most, loop.loosest().change());
        return most;
    }

    /** A loop as two tables of length from its first vertex, on blank and form, gone round twice so that no run meets the end. */
    private static final class Walk {
        private final FlatMap map;
        private final int[] loop;
        private final double[] blank;
        private final double[] form;
        private final int n;

        Walk(FlatMap map, int[] loop) {
            this.map = map;
            this.loop = loop;
            n = loop.length;
            blank = new double[2 * n + 1];
            form = new double[2 * n + 1];
            for (int i = 0; i < 2 * n; i++) {
                int a = loop[i % n], b = loop[(i + 1) % n];
                double du = map.u(b) - map.u(a), dv = map.v(b) - map.v(a);
                blank[i + 1] = blank[i] + Math.sqrt(du * du + dv * dv);
                form[i + 1] = form[i] + map.form().distance(a, b);
            }
        }

        Loop loop(int index, double run) {
            Run[] window = windows(run);
            return new Loop(index, blank[n], form[n], most(-1), most(1), window[0], window[1]);
        }

        /** Connected part with the largest sum of sign times change: one sweep, and what is left of the loop by the part with the least. */
        private Run most(int sign) {
            int start = 0, bestFrom = 0, bestTo = 0, worstStart = 0, worstFrom = 0, worstTo = 0;
            double sum = 0, best = 0, low = 0, worst = 0;
            for (int i = 0; i < n; i++) {
                double gain = sign * (change(i + 1) - change(i));
                if (sum <= 0) {
                    sum = 0;
                    start = i;
                }
                sum += gain;
                if (sum > best) {
                    best = sum;
                    bestFrom = start;
                    bestTo = i + 1;
                }
                if (low >= 0) {
                    low = 0;
                    worstStart = i;
                }
                low += gain;
                if (low < worst) {
                    worst = low;
                    worstFrom = worstStart;
                    worstTo = i + 1;
                }
            }
            if (sign * change(n) - worst > best) return part(worstTo, worstFrom + n);
            return part(bestFrom, bestTo);
        }

        private double change(int i) {
            return form[i] - blank[i];
        }

        private Run part(int from, int to) {
            return run(blank[from], blank[to] - blank[from], form[to] - form[from]);
        }

        /** Runs of the asked length that start in a vertex: {lowest change, highest change}. */
        private Run[] windows(double run) {
            if (!(run < blank[n])) {
                Run whole = part(0, n);
                return new Run[] {whole, whole};
            }
            int low = 0, high = 0;
            double lowest = Double.POSITIVE_INFINITY, highest = Double.NEGATIVE_INFINITY;
            for (int i = 0, j = 0; i < n; i++) {
                double end = blank[i] + run;
                while (blank[j + 1] < end) j++;
                double change = formAt(j, end) - form[i] - run;
                if (change < lowest) {
                    lowest = change;
                    low = i;
                }
                if (change > highest) {
                    highest = change;
                    high = i;
                }
            }
            return new Run[] {run(blank[low], run, lowest + run), run(blank[high], run, highest + run)};
        }

        private double formAt(int edge, double at) {
            double span = blank[edge + 1] - blank[edge];
            return form[edge] + (span > 0 ? (at - blank[edge]) / span : 1) * (form[edge + 1] - form[edge]);
        }

        private Run run(double from, double blankLength, double formLength) {
            double middle = from + blankLength / 2;
            int j = 0;
            while (j + 1 < 2 * n && blank[j + 1] < middle) j++;
            int a = loop[j % n], b = loop[(j + 1) % n];
            double span = blank[j + 1] - blank[j], f = span > 0 ? (middle - blank[j]) / span : 0, g = 1 - f;
            TriMesh on = map.form();
            return new Run(blankLength, formLength, g * map.u(a) + f * map.u(b), g * map.v(a) + f * map.v(b),
                    g * on.x(a) + f * on.x(b), g * on.y(a) + f * on.y(b), g * on.z(a) + f * on.z(b));
        }
    }
}
