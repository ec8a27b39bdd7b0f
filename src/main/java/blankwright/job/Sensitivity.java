package blankwright.job;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Opened;
import blankwright.num.Progress;
import blankwright.num.Share;
import blankwright.shop.CrownLine;
import blankwright.shop.OutlineShift;
import blankwright.shop.PanelFrame;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far the blank of one piece and its crown move when what they were worked out from is a little off.
 *
 * <p>Each case is laid flat once more, from the blank that was found, and laid on that blank: {@link OutlineShift}. The crown is the rise of
 * the lines through the middle, {@link CrownLine}. A weld takes its length out of such a line; a blank that differs is longer or shorter along
 * it; of a scan the rise itself is measured.
 *
 * @param cases in the order of the causes; one that does not come out is left out, and where the metal is not asked so are its two
 * @param crowns the lines measured, with their rise, mm
 * @param alongSeam true where the weld runs along the longest seam, false where there is none and it runs round the outer edge
 * @param asksMetal true for aim {@code work}, which alone asks the metal
 */
public record Sensitivity(List<Case> cases, List<Crown> crowns, boolean alongSeam, boolean asksMetal) {
    /** What a weld draws in along its length, mm. */
    public static final double SHRINK = 0.1;
    /** By how much K and n are changed, up and down. */
    public static final double METAL = 0.05;
    /** Of a scan, mm: root mean square, and the length of its waves. */
    public static final double NOISE = 0.5, WAVELENGTH = 100;
    private static final long[] SEEDS = {1, 2, 3};
    /** As much finer than usual as the changes are smaller than a blank. */
    private static final double TOLERANCE = 1e-11;

    /** What is a little off. */
    public enum Cause {
        WELD("weld shrink"), STRENGTH("K"), HARDENING("n"), SCAN("scan noise");

        private final String word;

        Cause(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * The worst of the tries of one cause.
     *
     * @param shift of the outline
     * @param crown what the rise of each line of {@link #crowns} changes by, mm, the largest in size
     */
    public record Case(Cause cause, OutlineShift shift, List<Double> crown) { }

    /** @param rise mm */
    public record Crown(String line, double rise) { }

    public Sensitivity {
        cases = List.copyOf(cases);
        crowns = List.copyOf(crowns);
    }

    /** Empty where the same panel does not come out a second time, so that nothing can be compared. */
    static Optional<Sensitivity> of(Opened opened, FlatMap map, Optional<WorkAim> aim, Progress progress) {
        return new Trials(opened, map, aim, progress).run();
    }

    private static final class Trials {
        private static final int MOST_TRIALS = 6 + SEEDS.length;        // as found, weld, each of the metal up and down, scans

        private final Opened opened;
        private final TriMesh form;
        private final Optional<WorkAim> aim;
        private final Progress progress;
        private final FlattenOptions options;
        private final Flattener same;
        private final RimLoops rims;
        private final List<CrownLine> lines;
        private final FlatMap given;
        private int begun;

        Trials(Opened opened, FlatMap map, Optional<WorkAim> aim, Progress progress) {
            this.opened = opened;
            this.aim = aim;
            this.progress = progress;
            given = map;
            form = map.form();
            options = aim.map(WorkAim::options).orElse(FlattenOptions.DEFAULT).withTolerance(TOLERANCE);
            same = Flattener.of(form, new Share(progress, 0, 0));
            rims = RimLoops.of(form, EdgeTable.of(form));
            lines = CrownLine.of(form, PanelFrame.of(form));
        }

        Optional<Sensitivity> run() {
            Optional<FlatMap> base = layout(same.again(given, options, next()));
            if (base.isEmpty()) return Optional.empty();
            List<Case> cases = new ArrayList<>();
            weld(base.get()).ifPresent(cases::add);
            if (aim.isPresent()) {
                metal(Cause.STRENGTH, base.get()).ifPresent(cases::add);
                metal(Cause.HARDENING, base.get()).ifPresent(cases::add);
            }
            scan(base.get()).ifPresent(cases::add);
            return Optional.of(new Sensitivity(cases, lines.stream().map(line -> new Crown(line.name(), line.rise(form))).toList(),
                    !opened.seams().isEmpty(), aim.isPresent()));
        }

        private Optional<Case> weld(FlatMap base) {
            Optional<FlatMap> madeUp = layout(other(WeldShrink.madeUpFor(opened, SHRINK), base));
            return madeUp.map(map -> new Case(Cause.WELD, OutlineShift.between(base, map, rims),
                    lines.stream().map(line -> line.riseChange(form, -SHRINK)).toList()));
        }

        private Optional<Case> metal(Cause cause, FlatMap base) {
            Optional<Case> worst = Optional.empty();
            for (double factor : new double[] {1 - METAL, 1 + METAL}) {
                FlattenOptions changed = cause == Cause.STRENGTH ? aim.get().options(factor, 1) : aim.get().options(1, factor);
                Optional<FlatMap> map = layout(same.again(base, changed.withTolerance(TOLERANCE), next()));
                if (map.isEmpty()) return Optional.empty();
                worst = Optional.of(worse(worst, new Case(cause, OutlineShift.between(base, map.get(), rims),
                        lines.stream().map(line -> line.riseChange(form, line.length(map.get()) - line.length(base))).toList())));
            }
            return worst;
        }

        private Optional<Case> scan(FlatMap base) {
            Optional<Case> worst = Optional.empty();
            for (long seed : SEEDS) {
                TriMesh scanned = ScanNoise.on(opened, NOISE, WAVELENGTH, seed);
                Optional<FlatMap> map = layout(other(scanned, base));
                if (map.isEmpty()) return Optional.empty();
                worst = Optional.of(worse(worst, new Case(Cause.SCAN, OutlineShift.between(base, map.get(), rims),
                        lines.stream().map(line -> line.rise(scanned) - line.rise(form)).toList())));
            }
            return worst;
        }

        private Outcome other(TriMesh changed, FlatMap from) {
            Progress share = next();
            return Flattener.of(changed, new Share(share, 0, 0)).again(from, options, share);
        }

        /** Its share of the trials. */
        private Progress next() {
            return new Share(progress, (double) begun / MOST_TRIALS, (double) ++begun / MOST_TRIALS);
        }

        private static Optional<FlatMap> layout(Outcome outcome) {
            return outcome instanceof Outcome.Converged ? Optional.of(outcome.map()) : Optional.empty();
        }

        /** The larger of each number. */
        private static Case worse(Optional<Case> before, Case now) {
            if (before.isEmpty()) return now;
            OutlineShift a = before.get().shift, b = now.shift, far = a.largest() >= b.largest() ? a : b;
            List<Double> crown = new ArrayList<>();
            for (int i = 0; i < now.crown.size(); i++) {
                double p = before.get().crown.get(i), q = now.crown.get(i);
                crown.add(Math.abs(p) >= Math.abs(q) ? p : q);
            }
            return new Case(now.cause, new OutlineShift(far.largest(), Math.max(a.rms(), b.rms()), far.u(), far.v()), List.copyOf(crown));
        }
    }
}
