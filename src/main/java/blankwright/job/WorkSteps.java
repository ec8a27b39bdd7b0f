package blankwright.job;

import static blankwright.job.PageWords.change;
import static blankwright.job.PageWords.length;
import static blankwright.job.PageWords.place;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.metal.buckling.Tuck;
import blankwright.num.Lengths;
import blankwright.project.Recipe;
import blankwright.shop.Amounts;
import blankwright.shop.Flange;
import blankwright.shop.Instruction;
import blankwright.shop.Zone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * What to do at the bench, in order, each step with how to check it.
 *
 * <p>Shrinking comes before stretching: an edge taken in leaves less to stretch and to thin. Amounts a pass and the gaps under a gauge are planning values
 * from memory, and the steps say so.
 */
final class WorkSteps {
    private static final int MOST = 8;                          // zones told one by one
    private static final double JAWS = 25;                      // mm a small jaw tool reaches in; from memory

    private final Result result;
    private final Recipe recipe;
    private final Set<String> files;
    private final List<String> steps = new ArrayList<>();

    private WorkSteps(Result result, Set<String> files) {
        this.result = result;
        this.recipe = result.recipe();
        this.files = files;
    }

    /** @param files the others in the same folder */
    static List<String> of(Result result, Set<String> files) {
        WorkSteps steps = new WorkSteps(result, files);
        steps.before();
        steps.bend();
        steps.tuck();
        steps.zones();
        steps.fold();
        steps.turn();
        steps.rounds();
        steps.after();
        return List.copyOf(steps.steps);
    }

    private record Named(String name, Piece piece, Zone zone) { }

    private List<Named> worked() {
        List<Named> all = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++)
            for (Zone zone : result.pieces().get(i).zones().worked()) all.add(new Named(result.pieceName(i) + zone.number(), result.pieces().get(i), zone));
        all.sort(Comparator.comparing((Named n) -> n.zone.instruction() != Instruction.SHRINK).thenComparingDouble(n -> -Math.abs(n.zone.line().change())));
        return all;
    }

    private List<Tuck> tucks() {
        return result.pieces().stream().flatMap(p -> p.buckled().stream()).flatMap(b -> b.tucks().stream()).toList();
    }

    private boolean rolls() {
        return result.pieces().stream().anyMatch(p -> !p.rolled().isEmpty());
    }

    private boolean flanges() {
        return result.pieces().stream().anyMatch(p -> !p.flanges().isEmpty());
    }

    private boolean folds() {
        return result.pieces().stream().anyMatch(p -> !p.folds().isEmpty());
    }

    private void before() {
        if (files.contains("blank.pdf"))
            step("Print", "`blank.pdf` at 100 %, tape the pages and lay the paper on the form.", "the squares measure 100 mm and 4 in both ways, else print again."
                    + " The paper lies snug where nothing is to be done, pleats where the metal must shrink, and wants slits where it must stretch.");
        double trim = recipe.trim().orElse(0);
        step("Cut", trim > 0 ? "along CUT, " + Lengths.both(trim) + " outside the finished edge TRIM. Deburr, and file the edge smooth where it will be stretched: nicks tear."
                : "outside the line: CUT is the finished edge, with nothing left on for trimming. Deburr, and file the edge smooth where it will be stretched: nicks tear.",
                "length and width against *Cut* below.");
        step("Mark", "with a felt pen, on the outside face: centre line, stations" + (worked().isEmpty() ? "" : ", the zones' lines") + (rolls() ? ", the lines to roll by" : "")
                + (tucks().isEmpty() ? "" : ", the sides of each tuck") + (flanges() ? ", the lines of the flanges" : "") + (folds() ? ", the lines of the folds" : "") + ".", "tape every line once. It reads its length *on the blank* within 0.5 mm;"
                + " where all are off by the same share the print or the cut was not true size: stop.");
    }

    private void bend() {
        if (result.pieces().stream().allMatch(Piece::isFlat)) return;
        if (rolls()) step("Roll", "what is only bent, by the table *Roll first*: its lines parallel to the roll, closer a little at a time.",
                "a sweep of the radius that must stay, held square to the lines.");
        else if (!folds() || !worked().isEmpty()) step("Bend", "it towards the form as far as it goes freely, over a knee, over a stake or in slack rolls. " + (worked().isEmpty()
                ? "It is bent so little or so unevenly that there is no radius to set."
                : "No part of it is bent one way only, so there is no radius to set."),
                worked().isEmpty() ? "it lies on the form when it is held at its edges, and nothing is creased."
                        : "it rocks on the form where it must still be worked, and nothing is creased.");
    }

    private void tuck() {
        List<Tuck> tucks = tucks();
        if (tucks.isEmpty()) return;
        int rounds = tucks.stream().mapToInt(Tuck::rounds).max().orElse(1);
        double takeIn = tucks.stream().mapToDouble(Tuck::takeIn).sum();
        step("Tuck", String.format(Locale.ROOT, "the edge at the %d places of the table *Buckling and tucks*: raise the tuck, beat it down from its inner end, the edge last, so that it"
                + " cannot run out. %s", tucks.size(), rounds == 1 ? "One round." : rounds + " rounds, the later ones between the earlier."),
                String.format(Locale.ROOT, "the edge has lost about %s when all are down%s. Sizes of tucks are from memory: try one on scrap.",
                        Lengths.both(takeIn), rounds == 1 ? "" : ", each round about " + Lengths.both(takeIn / rounds)));
    }

    private void zones() {
        List<Named> worked = worked().stream().filter(one -> flange(one).isEmpty()).toList();
        worked.subList(0, Math.min(MOST, worked.size())).forEach(this::work);
        if (worked.size() > MOST) step("The other zones", "the same way, by the table *Work, zone by zone*.", "their lines.");
    }

    /** After the work in the skin between, which a fold would keep from the tools. */
    private void fold() {
        if (folds()) step("Fold", "about the lines of the table *Folds*, the inner ones last where an outer one would no longer pass the brake. Two close together, one up and one"
                + " down, are a step: roll it in between a pair of dies.",
                "each angle with a gauge or a bevel; springback is yours to add: `blankwright bend` says how much.");
    }

    /** The number of the flange of its piece that a zone lies on, from 1. */
    private static OptionalInt flange(Named one) {
        List<Flange> flanges = one.piece.flanges();
        boolean stretch = one.zone.instruction() == Instruction.STRETCH;
        return IntStream.range(0, flanges.size()).filter(i -> flanges.get(i).byRule() > 0 == stretch
                && flanges.get(i).holds(one.zone.worst().u(), one.zone.worst().v())).map(i -> i + 1).findFirst();
    }

    /** Each flange, and the zones that lie on it: what an edge must gain or lose is worked in while it is turned. */
    private void turn() {
        for (int p = 0; p < result.pieces().size(); p++) {
            Piece piece = result.pieces().get(p);
            for (int i = 0; i < piece.flanges().size(); i++) {
                int number = i + 1;
                List<Named> on = worked().stream().filter(one -> one.piece == piece && flange(one).equals(OptionalInt.of(number))).toList();
                FlangeWords words = new FlangeWords(piece.flanges().get(i), result.recipe());
                step("Turn " + result.pieceName(p) + "flange " + number, words.how(on.stream().map(Named::name).toList()), words.check());
                on.forEach(this::work);
            }
        }
    }

    private void work(Named one) {
        Zone zone = one.zone;
        boolean shrink = zone.instruction() == Instruction.SHRINK;
        double before = zone.line().blankLength(), after = zone.line().formLength();
        String tucked = shrink && !tucks().isEmpty() ? ", tucks counted in" : "";
        step((shrink ? "Shrink zone " : "Stretch zone ") + one.name, how(one) + ".", Math.abs(zone.line().change()) < PageWords.LEAST
                ? "its line reads " + length(after) + " before and after: watch the work map for where."
                : "its line goes from " + length(before) + " to " + length(after) + ", " + change(zone.line().change()) + tucked + "; half done it reads "
                + length((before + after) / 2) + ".");
    }

    /** Where to begin, with what, and how often over the worst place. */
    private String how(Named one) {
        double strain = Math.abs(one.zone.largestStrain()), in = fromEdge(one);
        boolean shrink = one.zone.instruction() == Instruction.SHRINK;
        if (in > JAWS && shrink) return String.format(Locale.ROOT, "which is worst %s in from the edge, %s: a deep-throat shrinker or tucks must reach so far, or the"
                + " metal round it is stretched instead", Lengths.mm(in, 0), place(one.zone.worst()));
        if (in > JAWS) return "from its middle outwards, most where it is worst, " + place(one.zone.worst()) + ", with a wheel, or bag and mallet. A wheel with firm pressure takes "
                + passes(strain, 0.003, 0.008);
        if (shrink) return (tucks().isEmpty() ? "" : "where the tucks have left something, ") + "from the edge inwards, a little all along, then again. "
                + (tucks().isEmpty() ? "A" : "Without tucks a") + " jaw shrinker takes " + passes(strain, 0.01, 0.02);
        String turned = flange(one).isEmpty() ? "" : "as the flange is turned, some before every pass, ";
        return turned + "from the edge inwards, a little all along, then again; most where it is worst, " + place(one.zone.worst()) + ". A jaw stretcher, or a hammer on a dolly, takes "
                + passes(strain, 0.01, 0.03);
    }

    /** How far in the worst place lies on the blank, mm. */
    private static double fromEdge(Named one) {
        FlatMap map = one.piece.map();
        RimLoops rims = RimLoops.of(map.form(), EdgeTable.of(map.form()));
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < rims.count(); i++)
            for (int v : rims.loop(i)) least = Math.min(least, Math.hypot(map.u(v) - one.zone.worst().u(), map.v(v) - one.zone.worst().v()));
        return least;
    }

    /** @param slow strain that one pass brings at least, @param quick at most; from memory */
    private static String passes(double strain, double slow, double quick) {
        int least = (int) Math.max(1, Math.ceil(strain / quick)), most = (int) Math.max(1, Math.ceil(strain / slow));
        return String.format(Locale.ROOT, "%s over the worst place, at %s to %s %% a pass (from memory)", most == 1 ? "one pass" : least + " to " + most + " passes",
                Amounts.perHundred(slow), Amounts.perHundred(quick));
    }

    private void rounds() {
        if (worked().isEmpty()) return;
        List<String> anneal = new ArrayList<>(), thin = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            String name = result.pieceName(i);
            piece.demand().ifPresent(d -> anneal.addAll(MetalFindings.softened(d, name)));
            piece.thickness().ifPresent(t -> thin.add(Lengths.mm(t.thinnest().mm(), 2) + " at " + place(t.thinnest().at())));
        }
        step("After each round", "lay it on the form or hold the gauges square to it, and go where it is farthest off. Do not finish one place while others wait."
                + (anneal.isEmpty() ? "" : MetalFindings.inShop(recipe) ? " Anneal " + String.join(", ", anneal) + ", spread over the work, before it turns stiff."
                : " By the numbers it would have to be made soft on the way (" + String.join(", ", anneal) + "), and that is no job for the shop: take a softer"
                + " metal, or more pieces."),
                "light under the middle of a gauge is too little there, under its ends too much; tape the lines. Stop short: what went too far is harder to bring back (common practice)."
                + (thin.isEmpty() ? "" : " Measure the thinnest place: not below " + String.join(" and ", thin) + "."));
        if (anneal.isEmpty() && MetalFindings.inShop(recipe))
            step("Anneal", "only if it turns stiff or rings before its lengths are there; by the numbers it need not be.",
                    "*Rounds of annealing* below says how hot and how to see it.");
    }

    private void after() {
        boolean seams = result.pieces().stream().anyMatch(p -> !p.seams().isEmpty());
        if (seams) step("Join", "the seams, marks of the same name together: tack from the middle outwards, halving the gaps, then weld short and stretch each bead back.",
                "the lines across the seam keep their length on the form; what the weld draws in is missing from the crown.");
        step("Trim", "to the finished edge" + (recipe.trim().orElse(0) > 0 ? " TRIM, scribed on from the paper or from the form" : "") + ", last of all.",
                "*Edges* and *Tape lines* read their lengths *on the form*; under the gauges gaps below 3 mm while roughing, 1.5 mm before planishing, 0.5 to 1 mm at"
                + " edges that meet others (from memory).");
    }

    private void step(String what, String how, String check) {
        steps.add("**" + what + "** " + how + " *Check:* " + check);
    }
}
