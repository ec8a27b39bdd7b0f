package blankwright.job;

import blankwright.metal.buckling.OilCan;
import blankwright.metal.buckling.Tuck;
import blankwright.metal.buckling.UnworkedBlank;
import blankwright.num.Sentence;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Buckling in sentences for the bench. */
public final class BucklingWords {
    private static final Sentence NOTHING = Sentence.of("");
    private static final double TOO_MUCH = 1.3;         // linear over step by step, from which it is said

    private BucklingWords() { }

    /** One to four sentences: whether, how, what to do, and what the finished panel will do. */
    public static List<Sentence> of(Buckled buckled) {
        List<Sentence> words = new ArrayList<>();
        UnworkedBlank blank = buckled.blank();
        double factor = blank.loadFactor();
        if (Double.isInfinite(factor)) words.add(Sentence.of("buckling: none; the blank bends onto the form without being pressed together anywhere"));
        else if (!buckled.buckles())
            words.add(say("buckling: it can be bent on unworked; it would stand %s (estimate by linear buckling)", share(factor)));
        else words.add(say("buckling: unworked it gives way at %s%s (estimate by linear buckling)", share(factor), blank.force().yielded() > 0 ? ", after yielding" : ""));
        if (buckled.buckles()) words.add(waves(buckled));
        buckled.oilCan().ifPresent(can -> words.add(oilCan(can)));
        return words;
    }

    private static Sentence waves(Buckled buckled) {
        int[] waves = buckled.waves().orElseThrow().waves();
        int most = Arrays.stream(waves).max().orElse(0);
        List<Tuck> tucks = buckled.tucks();
        if (most == 0)
            return Sentence.of("buckling: it gives way inside, away from the edges: no tucks; stretch the calm metal round it or shrink there");
        String how = "buckling: " + most + (most == 1 ? " wave" : " waves") + " along the edge";
        if (tucks.isEmpty())
            return say("%s, none of them short enough where the metal must shrink: no tucks; where it is not held so already, clamped calm"
                    + " shows how its edges ruffle", how);
        Tuck widest = tucks.get(0);
        double depth = tucks.stream().mapToDouble(Tuck::depth).max().orElse(0), takeIn = tucks.stream().mapToDouble(Tuck::takeIn).sum();
        int rounds = tucks.stream().mapToInt(Tuck::rounds).max().orElse(1);
        return say("%s: %d %s, %s wide at the edge, up to %s deep, together taking in %s in %d %s; places in tucks.csv (tuck sizes from"
                + " memory)", how, tucks.size(), tucks.size() == 1 ? "tuck" : "tucks", Sentence.length(widest.base(), 0), Sentence.length(depth, 0),
                Sentence.length(takeIn, 1), rounds, rounds == 1 ? "round" : "rounds");
    }

    private static Sentence oilCan(OilCan can) {
        String words = "held at its edges: " + can.verdict().words();
        if (can.verdict() == OilCan.Verdict.NO_CROWN) return Sentence.of(words + " as a whole, so nothing to pop through");
        if (can.verdict() == OilCan.Verdict.HIGH_CROWN) return Sentence.of(words);
        if (!can.held().isEmpty()) return say("%s: %s%s", words, computed(can), spare(can));
        Sentence coarse = can.fineEnough() > 0 ? say("; triangles of %s, not more, would let it be computed", Sentence.length(can.fineEnough(), 0))
                : NOTHING;
        if (can.verdict() == OilCan.Verdict.UNKNOWN) return say("%s%s", words, coarse);
        if (can.verdict() == OilCan.Verdict.SOFT)
            return say("%s; its crown of %s is too low for the sheet to snap (parameter %.1f, snaps from %.1f; from memory)%s", words,
                    Sentence.length(can.crown(), 1), can.parameter(), OilCan.LEAST_PARAMETER, coarse);
        return say("%s: snaps at about %.0f N spread over it (parameter %.1f; formulas from memory)%s%s", words, can.push(), can.parameter(),
                spare(can), coarse);
    }

    private static String computed(OilCan can) {
        List<String> each = new ArrayList<>();
        boolean tooMuch = false;
        for (OilCan.Held held : can.held()) {
            String what = Double.isFinite(held.snap()) ? format("snaps at about %.0f N spread over it", held.snap())
                    : held.soft() ? "goes under without a snap" : format("does not snap up to %.0f N", OilCan.MOST);
            String edge = (each.isEmpty() ? " where its edge is " : " where it is ") + held.edge().words();
            each.add(!each.isEmpty() && each.get(0).startsWith(what) ? "and" + edge : what + edge);
            tooMuch |= held.soft() || Double.isFinite(held.snap()) && held.linear() > TOO_MUCH * held.snap();
        }
        boolean sooner = can.formulaPush() > 0 && can.formulaPush() < can.push();
        return String.join(", ", each) + " (computed step by step for a perfect sheet"
                + (tooMuch ? "; linear buckling says too much for so low a crown" : "") + ")"
                + (sooner ? format("; sheet that is not perfect may go at %.0f N (formula for caps, from memory)", can.formulaPush()) : "");
    }

    private static Sentence spare(OilCan can) {
        return can.spareLength() > 0 ? say("; %s of length along a line over it is all its crown", Sentence.length(can.spareLength(), 2)) : NOTHING;
    }

    /** {@code 0.71 % of the strain it misses}; from there on {@code 1.2 times}, and so on. */
    public static String share(double factor) {
        String much = factor < 1 ? BigDecimal.valueOf(100 * factor).round(new MathContext(2)).toPlainString() + " % of"
                : (factor < 100 ? String.format(Locale.ROOT, "%.1f", factor) : "over 100") + " times";
        return much + " the strain it misses";
    }

    private static Sentence say(String form, Object... values) {
        return Sentence.say(form, values);
    }

    private static String format(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
