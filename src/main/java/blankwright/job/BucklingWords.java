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
    private BucklingWords() { }

    /** One to four sentences: whether, how, what to do, and what the finished panel will do. */
    public static List<String> of(Buckled buckled) {
        List<String> words = new ArrayList<>();
        UnworkedBlank blank = buckled.blank();
        double factor = blank.loadFactor();
        if (Double.isInfinite(factor)) words.add("buckling: none; the blank bends onto the form without being pressed together anywhere");
        else if (!buckled.buckles())
            words.add(say("buckling: it can be bent on unworked; it would stand %s times the strain it misses (estimate by linear"
                    + " buckling)", factor < 100 ? String.format(Locale.ROOT, "%.1f", factor) : "over 100"));
        else words.add(say("buckling: unworked it gives way at %s %% of the strain it misses%s (estimate by linear buckling)",
                    percent(factor), blank.force().yielded() > 0 ? ", after yielding" : ""));
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
        return switch (can.verdict()) {
            case NO_CROWN -> "held at its edges: " + can.verdict().words() + " as a whole, so nothing to pop through";
            case HIGH_CROWN -> "held at its edges: " + can.verdict().words();
            case SOFT -> say("held at its edges: %s; its crown of %s is too low for the sheet to snap (parameter %.1f, snaps from %.1f;"
                    + " from memory)", can.verdict().words(), Lengths.mm(can.crown(), 1), can.parameter(), OilCan.LEAST_PARAMETER);
            case SNAPS, STANDS -> say("held at its edges: %s: snaps at about %.0f N spread over it (parameter %.1f; formulas from"
                    + " memory); %s of length along a line over it is all its crown", can.verdict().words(), can.push(), can.parameter(),
                    Lengths.mm(can.spareLength(), 2));
        };
    }

    private static String percent(double factor) {
        return BigDecimal.valueOf(100 * factor).round(new MathContext(2)).toPlainString();
    }

    private static String say(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
