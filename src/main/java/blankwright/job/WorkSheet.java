package blankwright.job;

import static blankwright.job.PageWords.LEAST;
import static blankwright.job.PageWords.change;
import static blankwright.job.PageWords.length;
import static blankwright.job.PageWords.place;
import static blankwright.job.PageWords.plain;
import static blankwright.job.PageWords.sentence;
import static blankwright.job.PageWords.whole;

import blankwright.mesh.FlatMap;
import blankwright.mesh.Finding;
import blankwright.mesh.cut.Seam;
import blankwright.metal.Alloy;
import blankwright.metal.Annealing;
import blankwright.metal.Known;
import blankwright.metal.buckling.Tuck;
import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.project.Aim;
import blankwright.project.Face;
import blankwright.project.Handwork;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.shop.Amounts;
import blankwright.shop.Demand;
import blankwright.shop.Flange;
import blankwright.shop.Fold;
import blankwright.shop.Instruction;
import blankwright.shop.Judgement;
import blankwright.shop.RollMark;
import blankwright.shop.Ruling;
import blankwright.shop.SeamEdges;
import blankwright.shop.SheetThickness;
import blankwright.shop.Spot;
import blankwright.shop.Stations;
import blankwright.shop.TapeLine;
import blankwright.shop.ToolWork;
import blankwright.shop.VerdictBands;
import blankwright.shop.Zone;
import blankwright.strain.RimChange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * What to cut, what to work and how to check it, as one page of text to read and print; every number with what it stands on.
 *
 * <p>Markdown with tables, UTF-8. Lengths in mm with one digit after the point and as the nearest 1/64 inch. What makes the blank unsafe
 * to cut stands first, and then no steps are given.
 */
final class WorkSheet {
    private static final int MOST_LINES = 60;                   // stations, tucks: more are in the tables of the packet

    private final Result result;
    private final Recipe recipe;
    private final LaidTapes tapes;
    private final Set<String> files;
    private final StringBuilder page = new StringBuilder();

    private WorkSheet(Result result, LaidTapes tapes, Set<String> files) {
        this.result = result;
        this.tapes = tapes;
        this.recipe = result.recipe();
        this.files = files;
    }

    /** @param files the others in the same folder: pictures among them are shown, drawings named */
    static void write(Result result, LaidTapes tapes, Set<String> files, OutputStream out) throws IOException {
        out.write(new WorkSheet(result, tapes, files).page().getBytes(StandardCharsets.UTF_8));
    }

    private String page() {
        say("# Work sheet: %s", plain(recipe.name()));
        for (String warning : result.warnings()) say("> **%s**", plain(warning));
        if (!recipe.notes().isBlank()) say("*%s*", plain(recipe.notes()));
        inShort();
        cautions();
        if (result.warnings().isEmpty()) steps();
        cut();
        picture("work-map-form.png", "What must be stretched (orange) and shrunk (purple), on the form");
        picture("work-map-blank.png", "The same on the blank, with the zones and their lines");
        rolled();
        folded();
        turned();
        zones();
        tapeLines();
        edges();
        seams();
        buckling();
        tools();
        softening();
        thickness();
        tearing();
        littleOff();
        seen();
        basis();
        return page.toString();
    }

    private void seen() {
        Set<String> said = Set.copyOf(result.warnings());
        List<Finding> rest = result.findings().stream().filter(f -> !said.contains("DO NOT CUT: " + f.text())).toList();
        if (rest.isEmpty()) return;
        say("## What else was found");
        list(rest.stream().map(f -> sentence(plain(f.text()))).toList());
    }

    private void cut() {
        say(result.warnings().isEmpty() ? "## Cut" : "## Not to be cut yet");
        List<String> facts = new ArrayList<>();
        facts.add("**Sheet:** " + metal() + ", " + (recipe.thickness().isEmpty() ? "thickness not said"
                : Lengths.mm(recipe.thickness().getAsDouble(), 2) + " (" + Lengths.inches(recipe.thickness().getAsDouble(), 3) + ")"));
        double trim = recipe.trim().orElse(0);
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            double[] size = piece.map().size();
            String holes = piece.holes() == 0 ? "" : piece.holes() == 1 ? ", one hole" : ", " + piece.holes() + " holes";
            facts.add(String.format(Locale.ROOT, "**%s:** %s to the finished edge, %.3f m2%s; outline %s", name(i), Lengths.box(size),
                    piece.map().area() / 1e6, holes, length(piece.outline()))
                    + (trim > 0 ? "; **cut from at least " + Lengths.box(size[0] + 2 * trim, size[1] + 2 * trim) + "**, the cut line lies "
                    + Lengths.both(trim) + " outside the finished edge and is trimmed after forming" : ""));
        }
        List<String> drawings = named(f -> f.startsWith("blank."));
        if (!drawings.isEmpty()) facts.add("**True size:** `" + String.join("`, `", drawings) + "`, outside face up");
        recipe.hand().ifPresent(hand -> facts.add("**Hand:** " + hand.word()));
        Result.Input in = result.input();
        facts.add("**Form:** " + Lengths.box(in.dx(), in.dy(), in.dz()) + " as given, the " + recipe.face().word() + " of the sheet"
                + (recipe.face() == Face.MIDDLE ? "" : "; the blank is that of the middle"));
        facts.add("**Aim:** " + aim());
        double work = result.pieces().stream().mapToDouble(result::work).sum();
        if (work >= 1) facts.add(String.format(Locale.ROOT, "**Work:** %.0f J, what the metal takes in from blank to form; yours is more", work));
        list(facts);
    }

    private String metal() {
        return recipe.metal().map(m -> m.alloy().name() + (m.alloy().about().isBlank() ? "" : " (" + plain(m.alloy().about()) + ")")).orElse("metal not said");
    }

    private String aim() {
        if (recipe.aim() == Aim.EVEN) return "even: the work is spread as evenly as the shape allows";
        Handwork hands = recipe.handwork();
        return "work: the least work in the metal" + (hands.lean() == 0 ? "" : String.format(Locale.ROOT, ", lean %+.2f (rather %s)",
                hands.lean(), hands.lean() > 0 ? "stretch" : "shrink"));
    }

    private void rolled() {
        PageTable table = new PageTable("line on the blank", "from the start, square to it", "its ends", "radius that must stay", "set the roll to");
        List<String> words = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            String name = result.pieceName(i);
            List<RollMark> rolls = result.rolls(piece);
            for (String sentence : RollWords.of(rolls)) words.add(name + sentence + ".");
            for (RollMark roll : rolls) {
                Ruling line = roll.ruling();
                table.row(name + roll.name(), Lengths.mm(line.at(), 0), String.format(Locale.ROOT, "(%.0f, %.0f) to (%.0f, %.0f) mm", whole(line.u1()),
                        whole(line.v1()), whole(line.u2()), whole(line.v2())), radii(roll, roll.inside1(), roll.inside2()),
                        Double.isNaN(roll.set1()) ? "not known" : radii(roll, roll.set1(), roll.set2()));
            }
        }
        if (table.isEmpty()) return;
        say("## Roll first");
        list(words);
        say("%s", table);
        result.pieces().stream().flatMap(p -> result.rolls(p).stream()).findFirst().ifPresent(roll -> say("%s. Two numbers are those of both ends: it is rolled as a"
                + " cone. Bend a strip of the same sheet first.", sentenceHead(roll)));
    }

    private void folded() {
        PageTable table = new PageTable("fold", "turned", "radius of the form", "length", "its ends");
        for (int i = 0; i < result.pieces().size(); i++) {
            List<Fold> folds = result.pieces().get(i).folds();
            for (int k = 0; k < folds.size(); k++) {
                Fold fold = folds.get(k);
                table.row(result.pieceName(i) + (k + 1), String.format(Locale.ROOT, "%.0f° %s", Math.toDegrees(fold.angle()), fold.way()),
                        fold.radius() == 0 ? "sharp" : Lengths.mm(fold.radius(), 1), length(fold.length()), String.format(Locale.ROOT,
                        "(%.0f, %.0f) to (%.0f, %.0f) mm", whole(fold.u1()), whole(fold.v1()), whole(fold.u2()), whole(fold.v2())));
            }
        }
        if (table.isEmpty()) return;
        say("## Folds");
        say("%s", table);
        say("Down is away from the outside face. The line is the middle of the bend. A fold that the form has sharp needs less metal than the blank holds once it is bent"
                + " about a radius: `blankwright bend` with `--legs` says how much.");
    }

    private void turned() {
        PageTable table = new PageTable("flange", "along", "line from the edge, on the blank", "turned", "inside radius", "edge on the blank", "on the form", "change",
                "by the rule");
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            double outer = piece.rim().loops().stream().mapToDouble(RimChange.Loop::blankLength).max().orElse(0);
            for (int k = 0; k < piece.flanges().size(); k++) {
                Flange flange = piece.flanges().get(k);
                FlangeWords words = new FlangeWords(flange, recipe);
                String edge = piece.rim().loops().get(flange.rim()).blankLength() == outer ? "outer edge" : "hole";
                table.row(result.pieceName(i) + (k + 1), (flange.whole() ? "the whole " : "part of the ") + edge, length(flange.scribed()),
                        flange.degrees() + " " + flange.way(), Lengths.mm(words.inside(), 1), length(flange.blankLength()),
                        length(flange.formLength()), change(flange.change()), words.rule());
            }
        }
        if (table.isEmpty()) return;
        say("## Flanges to turn");
        say("%s", table);
        say("Down is away from the outside face. *By the rule*: flange width times the angle swept for a right angle (derived; for other angles and with a bend radius the sheet"
                + " from the edge to the end of the bend, less what is left of it in plan), were the skin beside the bend to stay as it is. It does not quite: on the blank it takes"
                + " a part of the strain, and has its own crown. Measured on the form, means along the edge.");
    }

    private static String sentenceHead(RollMark roll) {
        return switch (roll.basis()) {
            case NOTHING -> "Radii are those of the form, since the thickness is not said";
            case THICKNESS -> "Radii are inside ones";
            case METAL -> "Radii are inside ones; what to set is worked out from the springback of the alloy, an estimate";
        };
    }

    /** Of both ends of a ruling, or one for all of it. */
    private static String radii(RollMark roll, double first, double second) {
        return roll.even() ? RollMark.radius((first + second) / 2) + " mm" : RollMark.radius(first) + " to " + RollMark.radius(second) + " mm";
    }

    private void zones() {
        say("## Work, zone by zone");
        PageTable table = new PageTable("zone", "do", "line on the blank", "on the form", "change", "worst place", "verdict", "of forming limit",
                "annealings", "thinnest left");
        List<String> grounds = new ArrayList<>(), left = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            for (Zone zone : piece.zones().list()) {
                String name = result.pieceName(i) + zone.number();
                if (zone.instruction() == Instruction.LEAVE) {
                    left.add(name);
                    continue;
                }
                Optional<Demand.OfZone> asked = piece.demand().map(d -> d.zones().get(zone.number() - 1));
                TapeLine line = zone.line();
                String todo = zone.instruction().word(), verdict = zone.verdict().words();
                table.row(name, "**" + todo + "**", length(line.blankLength()), length(line.formLength()), change(line.change()),
                        Amounts.percent(zone.largestStrain()) + " %", "**" + verdict + "**",
                        asked.map(a -> MetalFindings.share(a.margin())).orElse(""), asked.map(a -> rounds(a.judgement())).orElse(""),
                        asked.map(a -> Lengths.mm(a.thinnest(), 2)).orElse(""));
                grounds.add("Zone " + name + ", " + todo + ", **" + verdict + "** (" + zone.verdict().meaning() + "), worst at "
                        + place(zone.worst()) + ". " + asked.map(a -> ground(a, zone.worst()))
                        .orElse("Stands on the strain alone: trade practice, from memory."));
            }
        }
        if (table.isEmpty()) say(isFlat() ? "Nothing: the form is flat already." : "Nothing needs a tool but rolls or a brake: bending only.");
        else say("Each zone is measured along its own line, dash-dot on the work map: mark it on the blank, or hold the tape to the finished edge"
                + " where it runs beside that. Tape it before you begin and after each round.\n\n%s", table);
        if (!left.isEmpty() && !isFlat())
            say("Leave alone: zone%s %s. Bending only, the rest springs in.", left.size() == 1 ? "" : "s", String.join(", ", left));
        if (grounds.isEmpty()) return;
        say("What the verdicts stand on:");
        list(grounds);
    }

    private static String ground(Demand.OfZone asked, Spot worst) {
        Judgement judged = asked.judgement();
        return "Stands on" + (place(asked.at()).equals(place(worst)) ? "" : ", at " + place(asked.at())) + ": "
                + String.join("; ", judged.basis()) + ". Trust of the verdict: " + judged.trust().words() + ".";
    }

    private static String rounds(Judgement judged) {
        int count = judged.annealings();
        return count == Judgement.BEYOND ? "none helps" : count == 0 ? "none" : Integer.toString(count);
    }

    private void softening() {
        if (result.pieces().get(0).demand().isEmpty()) return;
        say("## Rounds of annealing");
        Alloy alloy = recipe.metal().orElseThrow().alloy();
        List<String> zones = new ArrayList<>();
        double most = 0;
        for (int i = 0; i < result.pieces().size(); i++) {
            for (Demand.OfZone zone : result.pieces().get(i).demand().orElseThrow().zones()) {
                most = Math.max(most, zone.effective());
                int rounds = zone.judgement().annealings();
                if (rounds > 0) zones.add("zone " + result.pieceName(i) + zone.zone().number() + (rounds == Judgement.BEYOND
                        ? " is past what annealing brings back" : " " + MetalFindings.times(rounds)));
            }
        }
        Known uniform = alloy.uniform();
        say("%s The most any place is worked to is %.3f; %s bears %.3f before it necks (n - e0; %s). A sheet that turns stiff under the hammer"
                + " before its length is there wants annealing whatever these numbers say (common practice).",
                zones.isEmpty() ? "By these numbers none is needed." : sentence((MetalFindings.inShop(recipe) ? "**Anneal on the way:** "
                : "**It would have to be made soft on the way:** ") + String.join(", ", zones)),
                most, alloy.name(), uniform.value(), uniform.trust().words());
        alloy.annealing().ifPresent(heat -> say("%s: bring it to %s%s; %s. %s", alloy.name(), heat(heat.celsius()),
                heat.melting().map(m -> "; it begins to melt at " + heat(m)).orElse(""), plain(heat.how()),
                heat.inShop() ? "Mind the cautions." : "**This is no job for the shop.**"));
    }

    private static String heat(Known celsius) {
        return Annealing.written(celsius) + " (" + plain(celsius.basis()) + ")";
    }

    private void thickness() {
        if (result.pieces().get(0).thickness().isEmpty()) return;
        say("## Thickness after forming");
        PageTable table = new PageTable("piece", "sheet", "thinnest", "where", "thickest", "where");
        for (int i = 0; i < result.pieces().size(); i++) {
            SheetThickness sheet = result.pieces().get(i).thickness().orElseThrow();
            table.row(name(i), Lengths.mm(sheet.sheet(), 2), thick(sheet.thinnest(), sheet), place(sheet.thinnest().at()),
                    thick(sheet.thickest(), sheet), place(sheet.thickest().at()));
        }
        say("%s", table);
        picture("thickness-blank.png", "How thick the metal is after forming, dark where it is thin");
        say("From volume kept; tool marks and filing are not in it, so keep the file off the thinnest place.");
    }

    private static String thick(SheetThickness.Place place, SheetThickness sheet) {
        return String.format(Locale.ROOT, "%s (%s, %+.0f %%)", Lengths.mm(place.mm(), 2), Lengths.inches(place.mm(), 3),
                100 * (place.mm() / sheet.sheet() - 1));
    }

    private void tapeLines() {
        say("## Tape lines");
        say("Mark them on the blank before you begin; the blank's drawings carry them.");
        PageTable table = new PageTable("line", "on the blank", "on the form", "change");
        for (int i = 0; i < result.pieces().size(); i++) {
            Stations stations = result.pieces().get(i).stations();
            List<TapeLine> lines = new ArrayList<>(tapes.on(i));
            lines.addAll(stations.centreLine());
            for (Stations.Station station : stations.stations()) lines.addAll(station.lines());
            String was = "";
            int part = 1;
            for (TapeLine line : lines) {
                part = line.name().equals(was) ? part + 1 : 1;
                was = line.name();
                String name = (result.pieceName(i) + " " + was).strip() + (part == 1 ? "" : ", part " + part);
                if (table.size() < MOST_LINES) table.row(name, length(line.blankLength()), length(line.formLength()), change(line.change()));
                else table.leaveOut();
            }
        }
        say("%s", table);
        if (table.left() > 0) say("%d more are on the drawings.", table.left());
    }

    private void edges() {
        say("## Edges");
        PageTable table = new PageTable("edge", "on the blank", "on the form", "change", "most in one run", "to be taken in, most in 100 mm",
                "let out, most in 100 mm");
        for (int i = 0; i < result.pieces().size(); i++) {
            List<RimChange.Loop> loops = result.pieces().get(i).rim().loops();
            double outer = loops.stream().mapToDouble(RimChange.Loop::blankLength).max().orElse(0);
            for (RimChange.Loop loop : loops) {
                RimChange.Run in = loop.mostTakenIn(), out = loop.mostLetOut(), most = -in.change() > out.change() ? in : out;
                table.row((result.pieceName(i) + (loop.blankLength() == outer ? " outer" : " hole")).strip(), length(loop.blankLength()),
                        length(loop.formLength()), change(loop.change()), change(most.change()) + " in " + Lengths.mm(most.blankLength(), 0),
                        some(-loop.tightest().change()), some(loop.loosest().change()));
            }
        }
        say("%s", table);
    }

    private static String some(double mm) {
        return mm < LEAST ? "nothing" : Lengths.both(mm);
    }

    private void seams() {
        PageTable table = new PageTable("seam", "length", "why", "marks to bring together");
        for (int i = 0; i < result.pieces().size(); i++) {
            List<SeamEdges> named = Packet.seams(result, i);
            for (int k = 0; k < named.size(); k++) {
                Seam seam = result.pieces().get(i).seams().get(k);
                List<SeamEdges.Mark> marks = named.get(k).marks();
                String name = (result.pieces().size() == 1 ? "" : name(i) + ", ") + named.get(k).name();
                table.row(name, length(seam.length()), plain(seam.reason()),
                        marks.isEmpty() ? "" : marks.get(0).name() + " to " + marks.get(marks.size() - 1).name());
            }
        }
        if (table.isEmpty()) return;
        say("## Seams");
        say("%s", table);
    }

    private void buckling() {
        List<Piece> pieces = result.pieces();
        if (pieces.stream().allMatch(p -> p.buckled().isEmpty())) return;
        say("## Buckling and tucks");
        PageTable table = new PageTable("tucks", "first at, on the blank", "last at", "apart along the edge", "wide", "deep", "each takes in", "rounds");
        for (int i = 0; i < pieces.size(); i++) {
            if (pieces.get(i).buckled().isEmpty()) continue;
            List<Sentence> words = BucklingWords.of(pieces.get(i).buckled().get());
            if (pieces.size() > 1) say("%s:", name(i));
            list(words.stream().map(w -> sentence(plain(w.text()))).toList());
            tuckRows(table, result.pieceName(i), pieces.get(i).map(), pieces.get(i).buckled().get().tucks());
        }
        if (!table.isEmpty()) say("%s", table);
        if (!table.isEmpty()) say("Each has its place in `tucks.csv` and its number on the picture; on the blank two lines, from the edge to the tip, and T with the number. Sizes are planning values from memory; what they take in together is what the"
                + " edge must lose.");
        if (table.left() > 0) say("%d more groups are in `tucks.csv`.", table.left());
        for (String picture : named(f -> f.matches("buckling(-\\d+)?\\.png")))
            picture(picture, "How the blank buckles if it is bent on unworked; the triangles are the tucks");
        picture("buckling-map-blank.png", "Where it gives way if it is bent on unworked: dark");
    }

    /** Those next to each other that are alike share a row. */
    private static void tuckRows(PageTable table, String piece, FlatMap map, List<Tuck> tucks) {
        for (int from = 0, to; from < tucks.size(); from = to) {
            Tuck first = tucks.get(from);
            for (to = from + 1; to < tucks.size() && alike(first, tucks.get(to)); to++) { }
            Tuck last = tucks.get(to - 1);
            String numbers = piece + (from + 1) + (to - from == 1 ? "" : " to " + piece + to);
            double apart = Double.POSITIVE_INFINITY;            // between neighbours; the rim's own beginning may lie between two of them
            for (int k = from + 1; k < to; k++) apart = Math.min(apart, Math.abs(tucks.get(k).place() - tucks.get(k - 1).place()));
            if (table.size() < MOST_LINES) table.row(numbers, onBlank(map, first), to - from == 1 ? "" : onBlank(map, last), to - from == 1 ? "" : "from " + Lengths.mm(apart, 0), length(first.base()),
                    length(first.depth()), Lengths.both(first.takeIn()), Integer.toString(first.rounds()));
            else table.leaveOut();
        }
    }

    /** To what a tape shows. */
    private static boolean alike(Tuck a, Tuck b) {
        return a.rim() == b.rim() && a.rounds() == b.rounds() && Math.abs(a.base() - b.base()) < 0.05 && Math.abs(a.depth() - b.depth()) < 0.05
                && Math.abs(a.takeIn() - b.takeIn()) < 0.05;
    }

    private static String onBlank(FlatMap map, Tuck tuck) {
        return String.format(Locale.ROOT, "(%.0f, %.0f) mm", whole(map.u(tuck.vertex())), whole(map.v(tuck.vertex())));
    }

    private void tools() {
        PageTable table = new PageTable("piece", "tool", "does", "on how much of the form", "most");
        for (int i = 0; i < result.pieces().size(); i++) {
            if (result.pieces().get(i).tools().isEmpty()) continue;
            ToolWork work = result.pieces().get(i).tools().get();
            for (ToolWork.Share share : work.shares())
                table.row(name(i), plain(share.tool().name()), share.tool().does().word(),
                        String.format(Locale.ROOT, "%.3f m2", share.area() / 1e6), Amounts.percent(share.largest()) + " %");
        }
        if (table.isEmpty()) return;
        say("## Tools");
        say("%s", table);
    }

    private void steps() {
        say("## Steps");
        List<String> steps = WorkSteps.of(result, files);
        for (int k = 0; k < steps.size(); k++) page.append(k + 1).append(". ").append(steps.get(k)).append('\n');
        page.append('\n');
    }

    /** What somebody asks who has the page in hand for the first time. */
    private void inShort() {
        List<String> facts = new ArrayList<>();
        double most = 0;
        String hardest = isFlat() ? "nothing, the form is flat already" : "bending only, no place needs a shrinker or a mallet";
        for (int i = 0; i < result.pieces().size(); i++) {
            for (Zone zone : result.pieces().get(i).zones().worked()) {
                if (Math.abs(zone.largestStrain()) <= most) continue;
                most = Math.abs(zone.largestStrain());
                hardest = String.format(Locale.ROOT, "zone %s, %s by up to %.1f %%, %s along its line: **%s**, %s", result.pieceName(i) + zone.number(),
                        zone.instruction().word(), 100 * most, change(zone.line().change()), zone.verdict().words(), zone.verdict().meaning());
            }
        }
        facts.add("**Hardest:** " + hardest + ".");
        for (int i = 0; i < result.pieces().size() && most > 0; i++) {
            Piece piece = result.pieces().get(i);
            String which = result.pieces().size() == 1 ? "" : name(i) + ": ";
            piece.demand().flatMap(d -> Optional.ofNullable(d.worst())).ifPresent(z -> facts.add("**Tearing:** " + which + "at most "
                    + MetalFindings.share(z.margin()) + " of the forming limit, in zone " + z.zone().number() + " (an estimate)."));
            piece.thickness().ifPresent(t -> facts.add("**Thinnest:** " + which + thick(t.thinnest(), t) + " of " + Lengths.mm(t.sheet(), 2) + "."));
            piece.buckled().ifPresent(b -> facts.add("**Unworked:** " + which + (b.buckles() ? "it buckles on the way, " + (b.tucks().isEmpty() ? "no tucks fit"
                    : b.tucks().size() + " tucks") : "it can be bent on without buckling") + "."));
        }
        say("## In short");
        list(facts);
    }

    private void tearing() {
        if (!files.contains("forming-limit.png")) return;
        say("## Tearing");
        picture("forming-limit.png", "How near each zone comes to its forming limit");
        say("Above the full line it tears, from the dashed one on take care. The limit is for sheet with smooth edges.");
    }

    /** How far outline and crown move when what they are worked out from is a little off. */
    private void littleOff() {
        if (result.pieces().stream().allMatch(p -> p.sensitivity().isEmpty())) return;
        say("## How exact it can be");
        List<String> words = new ArrayList<>();
        PageTable table = new PageTable("what is a little off", "outline moves by up to", "at, on the blank", "line over the crown", "its rise", "rise changes by up to");
        for (int i = 0; i < result.pieces().size(); i++) {
            if (result.pieces().get(i).sensitivity().isEmpty()) continue;
            Sensitivity found = result.pieces().get(i).sensitivity().get();
            String piece = result.pieces().size() == 1 ? "" : name(i) + ": ";
            if (!found.asksMetal()) words.add("The metal's K and n do not move a blank that is not laid out for them (aim even).");
            for (Sensitivity.Case one : found.cases()) {
                for (int c = 0; c < Math.max(1, found.crowns().size()); c++) {
                    boolean crown = c < found.crowns().size();
                    table.row(c > 0 ? "" : piece + amount(one.cause(), found.alongSeam()), c > 0 ? "" : Lengths.mm(one.shift().largest(), 2),
                            c > 0 ? "" : String.format(Locale.ROOT, "(%.0f, %.0f) mm", whole(one.shift().u()), whole(one.shift().v())),
                            crown ? found.crowns().get(c).line() : "", crown ? Lengths.mm(found.crowns().get(c).rise(), 1) : "",
                            crown ? Lengths.mm(Math.abs(one.crown().get(c)), 2) : "");
                }
            }
        }
        if (!table.isEmpty()) say("%s", table);
        list(words.stream().distinct().toList());
        say("Found by laying the panel flat again with each of them changed. The numbers set how fine it pays to work: leave the trim on until the panel fits, and"
                + " after welding stretch the bead until the lines over the crown are back.");
    }

    private static String amount(Sensitivity.Cause cause, boolean alongSeam) {
        return switch (cause) {
            case WELD -> cause.word() + " of " + Lengths.plain(Sensitivity.SHRINK) + " mm " + (alongSeam ? "along the longest seam" : "round the outer edge");
            case STRENGTH, HARDENING -> String.format(Locale.ROOT, "%s of the metal by %.0f %%", cause.word(), 100 * Sensitivity.METAL);
            case SCAN -> cause.word() + " of " + Lengths.plain(Sensitivity.NOISE) + String.format(Locale.ROOT, " mm in waves of %.0f mm", Sensitivity.WAVELENGTH);
        };
    }

    private void basis() {
        say("## What the numbers stand on");
        List<String> lines = new ArrayList<>();
        int triangles = result.pieces().stream().mapToInt(p -> p.strain().triangleCount()).sum();
        lines.add(String.format(Locale.ROOT, "Lengths before and after: the same points followed on blank and form, exact for a surface of %,d"
                + " triangles, which %s.", triangles, recipe.source() instanceof Source.OfPanel
                ? "stays within " + Lengths.mm(recipe.chord(), 2) + " of the panel's formula"
                : "is as true as the mesh that was given"
                + result.reduction().map(r -> " and strays " + Lengths.mm(r.deviation(), 3) + " from it").orElse("")));
        lines.add("Worst places and thickness: the strain averaged round each corner of the triangles, as the work map colours it.");
        lines.add("Places are (along, up) from the lower left corner of the blank's drawing, at the finished edge, outside face up; and (x, y, z)"
                + " in the form's own coordinates.");
        VerdictBands bands = recipe.metal().map(m -> m.bands()).orElse(VerdictBands.USUAL);
        lines.add(String.format(Locale.ROOT, "Verdicts: springs in below %s %%, easy below %s %%, ordinary below %s %%, hard from there; split from"
                + " %s %% stretch, %s %% shrink or %s %% thinner, or more than %d annealings; %s.", percent(bands.springsIn()),
                percent(bands.easy()), percent(bands.ordinary()), percent(bands.splitStretch()), percent(bands.splitShrink()),
                percent(bands.splitThinning()), bands.annealings(), bands.basis()));
        result.pieces().get(0).demand().ifPresentOrElse(d -> lines.add(String.format(Locale.ROOT, "Forming limit: %.3f true strain at plane"
                + " strain; %s (%s).", d.limit().level().value(), plain(d.limit().basis()), d.limit().level().trust().words())),
                () -> lines.add("Without alloy and thickness nothing is said of forming limit, annealing or thickness left."));
        list(lines);
        if (recipe.metal().isEmpty()) return;
        Alloy alloy = recipe.metal().get().alloy();
        PageTable table = new PageTable(alloy.name(), "", "trust", "source");
        for (Map.Entry<String, Known> number : alloy.numbers().entrySet())
            table.row(number.getKey(), Alloy.written(number.getKey(), number.getValue()), number.getValue().trust().words(),
                    plain(number.getValue().source()));
        say("%s", table);
        say("*uniform* is the true strain it bears before it necks. A strip of your own sheet beats every number here.");
    }

    private void cautions() {
        say("## Mind");
        List<String> all = new ArrayList<>(Packet.CAUTIONS);
        recipe.metal().ifPresent(m -> m.alloy().cautions().forEach(c -> all.add(sentence(plain(c)))));
        all.add("These are numbers of geometry and of a table: they know nothing of springback, weld shrink, grain, old work hardening or a"
                + " scan's errors, and are no strength calculation.");
        list(all);
    }

    private void picture(String file, String words) {
        if (files.contains(file)) say("![%s](%s)", words, file);
    }

    private List<String> named(Predicate<String> which) {
        return files.stream().filter(which).sorted().toList();
    }

    private boolean isFlat() {
        return result.pieces().stream().allMatch(Piece::isFlat);
    }

    private String name(int i) {
        return result.pieces().size() == 1 ? "Blank" : "Piece " + (i + 1);
    }

    private static String percent(double share) {
        return Amounts.perHundred(share);
    }

    private void list(List<String> lines) {
        if (lines.isEmpty()) return;
        for (String line : lines) page.append("- ").append(line).append('\n');
        page.append('\n');
    }

    private void say(String form, Object... values) {
        page.append(String.format(Locale.ROOT, form, values)).append("\n\n");
    }
}
