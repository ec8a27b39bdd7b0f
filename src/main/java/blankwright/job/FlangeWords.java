package blankwright.job;

import static blankwright.job.PageWords.change;
import static blankwright.job.PageWords.length;

import blankwright.metal.Known;
import blankwright.num.Lengths;
import blankwright.project.Recipe;
import blankwright.shop.Flange;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Turning a flange, in sentences for the bench. What a pass turns, the springback and the least width are from memory, and the words say so. */
final class FlangeWords {
    private static final double TIPPED = 6;             // mm a tipping die needs to get hold of (3/16 to 1/4 in)
    private static final double LEAST_TOLD = 0.3;       // mm of inside radius
    private static final double SLOW = 10, QUICK = 15;  // degrees a pass

    private final Flange flange;
    private final Recipe recipe;

    FlangeWords(Flange flange, Recipe recipe) {
        this.flange = flange;
        this.recipe = recipe;
    }

    /** Inside radius, mm; 0 where it is as sharp as it can be. */
    double inside() {
        return Math.max(0, flange.radius() - recipe.thickness().orElse(0) / 2);
    }

    private boolean stretches() {
        return flange.byRule() > 0;
    }

    /** @param zones names of those that lie on it */
    String how(List<String> zones) {
        String bend = inside() < LEAST_TOLD ? "as tight as the metal takes" : "inside radius about " + Lengths.mm(inside(), 1);
        StringBuilder words = new StringBuilder(String.format(Locale.ROOT, "%s by %s, over the edge of a stake or a hammerform or in a tipping"
                + " die, about its line on the blank, %s in from the finished edge, %s. The first pass only marks the line, the others lift it %.0f"
                + " to %.0f° each: %d to %d in all (from memory).", flange.way(), flange.degrees(), Lengths.both(flange.scribed()), bend, SLOW,
                QUICK, passes(QUICK), passes(SLOW)));
        least().ifPresent(words::append);
        if (Math.abs(flange.byRule()) >= PageWords.LEAST) {
            words.append(" Its edge must become ").append(stretches() ? "longer: stretch it before" : "shorter: shrink it after").append(" every pass");
            if (!zones.isEmpty()) words.append(", the step for zone ").append(String.join(" and ", zones)).append(" below");
            words.append(flange.whole() ? ", evenly all round" : stretches() ? ", from the ends towards the middle" : ", from the middle towards the ends")
                    .append(" (common practice).");
        }
        if (flange.width() < TIPPED) words.append(" So narrow a flange is hard to get hold of: leave it wider and trim.");
        words.append(" Bend past the angle by the springback, 2 to 9° and least in soft sheet (from memory). Mind fingers at dies and under the")
                .append(" hammer; ").append(stretches() ? "a split begins at a nick: stop, file it out." : "a ruffle hammered flat folds over and cracks: shrink it out.");
        return words.toString();
    }

    /** Where the metal's table asks for a larger radius. */
    private Optional<String> least() {
        if (recipe.metal().isEmpty() || recipe.thickness().isEmpty()) return Optional.empty();
        Optional<Known> least = recipe.metal().get().alloy().bends().flatMap(b -> b.least(recipe.thickness().getAsDouble()));
        return least.filter(r -> inside() < 0.95 * r.value()).map(r -> String.format(Locale.ROOT,
                " That is tighter than the %s that %s takes cold (%s; %s).", Lengths.mm(r.value(), 1), recipe.metal().get().alloy().name(), r.trust().words(), PageWords.plain(r.source())));
    }

    /** With the one that only marks the line. */
    private int passes(double each) {
        return 1 + (int) Math.ceil(Math.toDegrees(flange.most()) / each);
    }

    String check() {
        String gauge = flange.degrees().contains("to") ? "a gauge cut from the form at every station touches skin and flange"
                : String.format(Locale.ROOT, "a gauge cut to %.0f° touches skin and flange all along", 180 - Math.toDegrees(flange.angle()));
        return gauge + ", within 1 to 2° (from memory). Its edge goes from " + length(flange.blankLength()) + " to " + length(flange.formLength())
                + ", " + change(flange.change()) + ". The trade's rule, width times sweep for a right angle, says " + rule() + ", were the skin beside it to stay as it is.";
    }

    /** {@code 13.9 mm x 1.57 rad: let out 21.8 mm}. */
    String rule() {
        return String.format(Locale.ROOT, "%.1f mm x %.2f rad: %s", flange.plan(), Math.abs(flange.sweep()), change(flange.byRule()));
    }
}
