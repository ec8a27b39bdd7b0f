package blankwright.job;

import blankwright.metal.buckling.OilCan;
import blankwright.metal.buckling.Tuck;
import blankwright.metal.buckling.UnworkedBlank;
import blankwright.num.Lengths;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Buckling in sentences for the bench. */
public final class BucklingWords {
    private static final double TOO_MUCH = 1.3;         // linear over step by step, from which it is said

    private BucklingWords() { }

    /** One to four sentences: whether, how, what to do, and what the finished panel will do. */
    public static List<String> of(Buckled buckled) {
        List<String> words = new ArrayList<>();
        UnworkedBlank blank = buckled.blank();
        double factor = blank.loadFactor();
        if (Double.isInfinite(factor)) words.add("buckling: none; the blank bends onto the form without being pressed together anywhere");
        else if (!buckled.buckles())
            words.add("buckling: it can be bent on unworked; it would stand " + share(factor) + " (estimate by linear buckling)");
        else words.add(say("buckling: unworked it gives way at %s%s (estimate by linear buckling)", share(factor), blank.force().yielded() > 0 ? ", after yielding" : ""));
        if (buckled.buckles()) words.add(waves(buckled));
        buckled.oilCan().ifPresent(can -> words.add(oilCan(can)));
        return words;
    }

    private static String waves(Buckled buckled) {
        int[] waves = buckled.waves().orElseThrow().waves();
        int most = Arrays.stream(waves).max().orElse(0);
        List<Tuck> tucks = buckled.tucks();
        if (most == 0)
            return "buckling: it gives way inside, away from the edges: no tucks; stretch the calm metal round it or shrink there";
        String how = "buckling: " + most + (most == 1 ? " wave" : " waves") + " along the edge";
        if (tucks.isEmpty())
            return how + ", none of them short enough where the metal must shrink: no tucks; where it is not held so already, clamped calm"
                    + " shows how its edges ruffle";
        Tuck widest = tucks.get(0);
        double depth = tucks.stream().mapToDouble(Tuck::depth).max().orElse(0), takeIn = tucks.stream().mapToDouble(Tuck::takeIn).sum();
        int rounds = tucks.stream().mapToInt(Tuck::rounds).max().orElse(1);
        return how + say(": %d %s, %s wide at the edge, up to %s deep, together taking in %s in %d %s; places in tucks.csv (tuck sizes from"
                + " memory)", tucks.size(), tucks.size() == 1 ? "tuck" : "tucks", Lengths.mm(widest.base(), 0), Lengths.mm(depth, 0),
                Lengths.mm(takeIn, 1), rounds, rounds == 1 ? "round" : "rounds");
    }

    private static String oilCan(OilCan can) {
        String words = "held at its edges: " + can.verdict().words();
        if (can.verdict() == OilCan.Verdict.NO_CROWN) return words + " as a whole, so nothing to pop through";
        if (can.verdict() == OilCan.Verdict.HIGH_CROWN) return words;
        if (!can.held().isEmpty()) return words + ": " + computed(can) + spare(can);
        String coarse = can.fineEnough() > 0 ? say("; triangles of %s, not more, would let it be computed", Lengths.mm(can.fineEnough(), 0)) : "";
        if (can.verdict() == OilCan.Verdict.UNKNOWN) return words + coarse;
        if (can.verdict() == OilCan.Verdict.SOFT)
            return words + say("; its crown of %s is too low for the sheet to snap (parameter %.1f, snaps from %.1f; from memory)",
                    Lengths.mm(can.crown(), 1), can.parameter(), OilCan.LEAST_PARAMETER) + coarse;
        return words + say(": snaps at about %.0f N spread over it (parameter %.1f; formulas from memory)", can.push(), can.parameter())
                + spare(can) + coarse;
    }

    private static String computed(OilCan can) {
        List<String> each = new ArrayList<>();
        boolean tooMuch = false;
        for (OilCan.Held held : can.held()) {
            String what = Double.isFinite(held.snap()) ? say("snaps at about %.0f N spread over it", held.snap())
                    : held.soft() ? "goes under without a snap" : say("does not snap up to %.0f N", OilCan.MOST);
            String edge = (each.isEmpty() ? " where its edge is " : " where it is ") + held.edge().words();
            each.add(!each.isEmpty() && each.get(0).startsWith(what) ? "and" + edge : what + edge);
            tooMuch |= held.soft() || Double.isFinite(held.snap()) && held.linear() > TOO_MUCH * held.snap();
        }
        boolean sooner = can.formulaPush() > 0 && can.formulaPush() < can.push();
        return String.join(", ", each) + " (computed step by step for a perfect sheet"
                + (tooMuch ? "; linear buckling says too much for so low a crown" : "") + ")"
                + (sooner ? say("; sheet that is not perfect may go at %.0f N (formula for caps, from memory)", can.formulaPush()) : "");
    }

    private static String spare(OilCan can) {
        return can.spareLength() > 0 ? say("; %s of length along a line over it is all its crown", Lengths.mm(can.spareLength(), 2)) : "";
    }

    /** {@code 0.71 % of the strain it misses}; from there on {@code 1.2 times}, and so on. */
    public static String share(double factor) {
        String much = factor < 1 ? BigDecimal.valueOf(100 * factor).round(new MathContext(2)).toPlainString() + " % of"
                : (factor < 100 ? String.format(Locale.ROOT, "%.1f", factor) : "over 100") + " times";
        return much + " the strain it misses";
    }

    private static String say(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
