package blankwright.job;

import blankwright.num.Lengths;
import blankwright.shop.Amounts;
import blankwright.shop.Demand;
import blankwright.shop.Flange;
import blankwright.shop.Instruction;
import blankwright.shop.SheetThickness;
import blankwright.shop.ToolWork;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a run says of the metal, the tools, the flanges and the folds of a piece, a sentence each. */
public final class MetalWords {
    private MetalWords() { }

    /** Nothing where neither is known. */
    public static List<String> of(Result result, Piece piece) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < piece.flanges().size(); i++) {
            Flange flange = piece.flanges().get(i);
            words.add(String.format(Locale.ROOT, "%s, its line %s in from the edge; the edge: %s", flange.words(i + 1), Lengths.both(flange.scribed()),
                    PageWords.change(flange.change())));
        }
        for (int i = 0; i < piece.folds().size(); i++)
            words.add(piece.folds().get(i).words(i + 1) + ", " + Lengths.both(piece.folds().get(i).length()) + " long; its line is on the blank");
        piece.tools().map(ToolWork::shares).orElse(List.of()).stream().filter(share -> share.area() > 0).forEach(share -> words.add(String.format(Locale.ROOT,
                "tool: %s %s %.0f cm2 of the form, by up to %s %%", share.tool().name(), share.tool().does() == Instruction.STRETCH ? "stretches" : "shrinks", share.area() / 100,
                Amounts.percent(Math.abs(share.largest())).replace("+", ""))));
        metal(result, piece).ifPresent(words::add);
        return words;
    }

    private static Optional<String> metal(Result result, Piece piece) {
        List<String> parts = new ArrayList<>();
        Demand.OfZone worst = piece.demand().map(Demand::worst).orElse(null);
        if (worst != null && worst.margin() >= 0.005) parts.add("at most " + MetalFindings.share(worst.margin()) + " of the forming limit, in zone " + worst.zone().number() + " ("
                + (piece.demand().get().limit().isEstimate() ? "an estimate, " : "") + piece.demand().get().limit().level().trust().words() + ")");
        piece.thickness().map(SheetThickness::thinnest).ifPresent(t -> parts.add("thinnest " + Lengths.mm(t.mm(), 2) + " of "
                + Lengths.mm(result.recipe().thickness().orElseThrow(), 2)));
        double work = result.work(piece);
        if (work >= 0.1) parts.add(String.format(Locale.ROOT, "it takes in %s J from blank to form", work < 10 ? String.format(Locale.ROOT, "%.1f", work)
                : String.format(Locale.ROOT, "%.0f", work)));
        return parts.isEmpty() ? Optional.empty() : Optional.of("metal: " + String.join("; ", parts));
    }
}
