package blankwright.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** What is told of the place pointed at, line by line, as a builder says it. */
public final class SpotCard {
    /** One fact: what it is, and how much. */
    public record Fact(String what, String amount) { }

    private SpotCard() { }

    /**
     * @param span length over which strains are told, mm
     * @param sheet thickness of the sheet, mm, where known
     */
    public static List<Fact> of(Laid laid, Place place, double span, OptionalDouble sheet, LengthStyle style) {
        Numbers n = laid.numbers(place);
        List<Fact> facts = new ArrayList<>();
        String over = " over " + style.length(span);
        facts.add(new Fact("one way", style.change(n.most() * span) + over + percent(n.most())));
        facts.add(new Fact("across it", style.change(n.across() * span) + over + percent(n.across())));
        String left = String.format(Locale.ROOT, "%.1f %% of the sheet", 100 * n.left());
        facts.add(new Fact("thickness", sheet.isPresent() ? style.thickness(sheet.getAsDouble() * n.left()) + " (" + left + ")" : left));
        facts.add(new Fact("crown", crown(n.crownDegrees(), style)));
        facts.add(new Fact("zone", laid.result().pieceName(place.piece()) + n.zone().number() + ": " + n.zone().instruction().word() + ", "
                + n.zone().verdict().words()));
        n.metal().ifPresent(m -> facts.add(new Fact("metal", m.verdict().words() + ", " + limit(m.margin()) + " (estimate)")));
        if (laid.has(MapKind.BUCKLING)) facts.add(new Fact("unworked", pressed(laid.value(MapKind.BUCKLING, place))));
        return facts;
    }

    private static String pressed(double ratio) {
        return ratio < 0.005 ? "not pressed together" : String.format(Locale.ROOT,
                "pressed together %.1f times what it bears%s (estimate)", ratio,
                ratio > 1 ? ": buckles" : "");
    }

    private static String limit(double margin) {
        return margin > 10 ? "past all limits" : String.format(Locale.ROOT, "%.0f %% of the forming limit", 100 * margin);
    }

    private static String percent(double strain) {
        return String.format(Locale.ROOT, " (%+.1f %%)", 100 * strain).replace("(+0.0 %)", "(0 %)").replace("(-0.0 %)", "(0 %)");
    }

    private static String crown(double degrees, LengthStyle style) {
        if (Math.abs(degrees) < 0.05) return "none: single-curved or flat";
        return String.format(Locale.ROOT, "%.1f° %s in a square of %s", Math.abs(degrees), degrees > 0 ? "bowl" : "saddle", style.length(100));
    }
}
