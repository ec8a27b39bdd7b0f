package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.metal.Annealing;
import blankwright.num.Sentence;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.shop.Demand;
import blankwright.shop.Judgement;
import blankwright.shop.SheetThickness;
import blankwright.shop.Spot;
import blankwright.shop.Verdict;
import blankwright.shop.VerdictBands;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Where the metal thins more than the bands allow, must be softened on the way, or is asked for more than it bears. */
final class MetalFindings {
    private static final List<String> TIMES = List.of("never", "once", "twice", "three times", "four times", "five times", "six times");    // "zone 1 3 times" misleads

    private MetalFindings() { }

    /** What to know before and while working; nothing here keeps a blank from being cut. */
    static List<Finding> of(List<Piece> pieces, Recipe recipe) {
        VerdictBands bands = recipe.metal().map(Metal::bands).orElse(VerdictBands.USUAL);
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            String name = name(pieces, i);
            pieces.get(i).thickness().flatMap(t -> thinned(t, name, bands)).ifPresent(found::add);
            if (inShop(recipe)) pieces.get(i).demand().flatMap(d -> annealed(d, name)).ifPresent(found::add);
        }
        return found;
    }

    static String name(List<Piece> pieces, int i) {
        return pieces.size() == 1 ? "the blank" : "piece " + (i + 1);
    }

    /** Past the forming limit and no annealing brings it back: unsafe to cut. */
    static Optional<Finding> pastLimit(Piece piece, String name) {
        if (piece.demand().isEmpty()) return Optional.empty();
        List<Demand.OfZone> past = piece.demand().get().zones().stream().filter(MetalFindings::past).toList();
        if (past.isEmpty()) return Optional.empty();
        Demand.OfZone worst = past.stream().max(Comparator.comparingDouble(Demand.OfZone::margin)).orElseThrow();
        Judgement judged = worst.judgement();
        return Optional.of(new Finding(Finding.Kind.PAST_FORMING_LIMIT, past.size(), Sentence.say(
                "%s asks more of the metal than it bears in %s: worst zone %d, %s of the forming limit (%s), strain %+.0f %% and %+.0f %% at %s;"
                        + " put a seam there, or take a softer metal.", name, past.size() == 1 ? "one zone" : past.size() + " zones",
                worst.zone().number(), share(worst.margin()), piece.demand().get().limit().level().trust().words(), 100 * Math.expm1(judged.e1()),
                100 * Math.expm1(judged.e2()), place(worst.at()))));
    }

    private static boolean past(Demand.OfZone zone) {
        return zone.margin() > 1 && zone.judgement().verdict() == Verdict.SPLIT;
    }

    private static Optional<Finding> thinned(SheetThickness thickness, String name, VerdictBands bands) {
        double lost = thickness.mostLost();
        if (lost < bands.careThinning()) return Optional.empty();
        boolean split = lost >= bands.splitThinning();
        return Optional.of(new Finding(Finding.Kind.THINNED, 1, Sentence.say(
                "%s thins to %s of %s (%.0f %% gone) at %s; from %.0f %% on %s (%s).", name, Sentence.length(thickness.thinnest().mm(), 2),
                Sentence.length(thickness.sheet(), 2), 100 * lost, place(thickness.thinnest().at()),
                100 * (split ? bands.splitThinning() : bands.careThinning()),
                split ? "it is better made in more pieces" : "there is little left to file", bands.basis())));
    }

    private static Optional<Finding> annealed(Demand demand, String name) {
        List<String> zones = softened(demand, "");
        return zones.isEmpty() ? Optional.empty() : Optional.of(new Finding(Finding.Kind.ANNEAL, zones.size(), name
                + " must be made soft again on the way: " + String.join(", ", zones) + "; mind the cautions on torches and fumes."));
    }

    /** {@code zone 2 once} and so on, of the zones that annealing brings to their shape, also where they are better made in more pieces. */
    static List<String> softened(Demand demand, String piece) {
        List<String> zones = new ArrayList<>();
        for (Demand.OfZone zone : demand.zones()) {
            int rounds = zone.judgement().annealings();
            if (rounds > 0 && rounds != Judgement.BEYOND) zones.add("zone " + piece + zone.zone().number() + " " + times(rounds));
        }
        return zones;
    }

    /** Whether the metal can be made soft where it is worked. */
    static boolean inShop(Recipe recipe) {
        return recipe.metal().flatMap(m -> m.alloy().annealing()).filter(Annealing::inShop).isPresent();
    }

    static String times(int rounds) {
        return rounds < TIMES.size() ? TIMES.get(rounds) : rounds + " times";
    }

    static String share(double margin) {
        return Double.isInfinite(margin) ? "past all" : String.format(Locale.ROOT, "%.0f %%", 100 * margin);
    }

    private static Sentence.Measure place(Spot at) {
        return Sentence.place(0, at.x(), at.y(), at.z());
    }
}
