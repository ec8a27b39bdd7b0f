package blankwright.cli;

import blankwright.job.BucklingWords;
import blankwright.job.MetalWords;
import blankwright.job.Packet;
import blankwright.job.Piece;
import blankwright.job.Proposal;
import blankwright.job.Result;
import blankwright.job.RollWords;
import blankwright.job.SensitivityWords;
import blankwright.mesh.Finding;
import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.shop.Instruction;
import blankwright.shop.Zone;
import blankwright.strain.Curvature;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** What a builder reads after a run: sizes first, then what was odd, what to cut, what to work, and what to do next. */
final class BenchReport {
    private final Result result;
    private final Path folder;
    private final List<Path> files;
    private final List<String> earlier;
    private final List<Finding> findings;
    private final List<String> lines = new ArrayList<>();

    BenchReport(Result result, Path folder, Packet.Written written) {
        this.result = result;
        this.folder = folder;
        this.files = written.files();
        this.earlier = written.earlier();
        findings = new ArrayList<>(result.findings());
        findings.addAll(written.findings());
    }

    void print(PrintStream out) {
        for (String line : lines()) out.println(line);
    }

    List<String> lines() {
        Result.Input in = result.input();
        say("%s: %s, %,d %s, %s", result.name(), Lengths.box(in.dx(), in.dy(), in.dz()), in.triangles(), in.triangles() == 1 ? "triangle" : "triangles",
                area(in.area()));
        for (Finding finding : findings) say("  found: %s", finding.text());
        List<Piece> pieces = result.pieces();
        for (int i = 0; i < pieces.size(); i++) piece(pieces.get(i), pieces.size() == 1 ? "Blank" : "Piece " + (i + 1));
        result.proposal().ifPresent(this::proposal);
        say("Written to %s: %s", folder, String.join(", ", files.stream().map(f -> f.getFileName().toString()).toList()));
        if (!earlier.isEmpty()) say("Also there, from an earlier run and perhaps not of this blank: %s. Do not mix them up: delete them, or choose another --out.",
                String.join(", ", earlier));
        if (result.warnings().isEmpty()) next();
        for (String warning : result.warnings()) say("%s", warning);
        say("Caution: cut edges are sharp: gloves for handling, none at rotating machines, and eye protection. Where the part carries people or"
                + " flies, licensed practice and local codes decide. See docs/manual/cautions.md.");
        return lines;
    }

    private void proposal(Proposal proposal) {
        say("Proposed, %s:", proposal.reason().words());
        for (Proposal.Line line : proposal.lines()) say("  seam %d: %s", line.number(), line.words());
        List<Piece> pieces = proposal.taken().pieces();
        for (int i = 0; i < pieces.size(); i++)
            say("  gives piece %d: %s, mean energy %.6f", i + 1, Lengths.box(pieces.get(i).map().size()), pieces.get(i).strain().symmetricDirichletMean());
        say("  To take %s: blankwright flatten %s", proposal.lines().size() == 1 ? "it" : "them", folder.resolve("with-seam.yaml"));
    }

    private void piece(Piece piece, String name) {
        double[] flat = piece.map().size();
        say("%s: %s, %s%s", name, Lengths.box(flat), area(piece.map().area()),
                piece.holes() == 0 ? "" : piece.holes() == 1 ? ", one hole" : ", " + piece.holes() + " holes");
        result.recipe().trim().ifPresent(trim -> say("  cut from at least %s: %s are left on outside the finished edge",
                Lengths.box(flat[0] + 2 * trim, flat[1] + 2 * trim), Lengths.both(trim)));
        if (piece.isFlat()) say("  shape: flat already, nothing to bend and nothing to work");
        else shape(piece);
        for (String sentence : RollWords.of(result.rolls(piece))) say("  %s", sentence);
        for (String sentence : MetalWords.of(result, piece)) say("  %s", sentence);
        piece.buckled().ifPresent(buckled -> {
            for (Sentence sentence : BucklingWords.of(buckled)) say("  %s", sentence);
        });
        piece.sensitivity().ifPresent(sensitivity -> {
            for (Sentence sentence : SensitivityWords.of(sensitivity)) say("  %s", sentence);
        });
        if (piece.addedSeams() > 0) say("  seams added: %d, together %s", piece.addedSeams(), Lengths.both(piece.addedSeamLength()));
    }

    private void shape(Piece piece) {
        say("  shape: %s", piece.developability().sentence());
        Curvature curvature = piece.curvature();
        say("  crown: %.0f degrees bowl and %.0f degrees saddle in all: what the pleats and the slits of a paper pattern would add up to",
                Math.toDegrees(curvature.positive()), Math.toDegrees(Math.abs(curvature.negative())));
        most(piece, Instruction.SHRINK, "shrink");
        most(piece, Instruction.STRETCH, "stretch");
    }

    /** The zone whose line changes most, and the one with the worst place. */
    private void most(Piece piece, Instruction what, String word) {
        List<Zone> zones = piece.zones().list().stream().filter(z -> z.instruction() == what).toList();
        if (zones.isEmpty()) {
            say("  %s: nothing worth a tool", word);
            return;
        }
        Zone most = Collections.max(zones, Comparator.comparingDouble(z -> Math.abs(z.line().change())));
        Zone worst = Collections.max(zones, Comparator.comparingDouble(z -> Math.abs(z.largestStrain())));
        double change = most.line().change();
        say("  %s: zone %d most, %s %s along its line of %s; at the worst place%s %.1f %%", word, most.number(),
                change < 0 ? "take in" : "let out", Lengths.both(Math.abs(change)), Lengths.mm(most.line().blankLength(), 0),
                worst == most ? "" : ", in zone " + worst.number() + ",", 100 * Math.abs(worst.largestStrain()));
    }

    private void next() {
        List<String> names = files.stream().map(file -> file.getFileName().toString()).toList();
        boolean worked = result.pieces().stream().anyMatch(piece -> !piece.zones().worked().isEmpty());
        boolean folded = result.pieces().stream().anyMatch(piece -> !piece.folds().isEmpty());
        boolean rolled = result.pieces().stream().anyMatch(piece -> !piece.rolled().isEmpty());
        String bench;
        if (worked) {
            String by = names.contains("work-map-blank.png") ? "the work map" : names.contains("work-sheet.md") ? "work-sheet.md" : "the zones";
            bench = "cut oversize, work by " + by + (names.contains("work.csv") ? ", and check the lengths of work.csv with a tape after each round." : ".");
        } else if (result.pieces().stream().allMatch(Piece::isFlat)) {
            bench = "cut it.";
        } else {
            bench = "cut oversize, " + (rolled && folded ? "roll and fold it by the lines on the blank" : rolled ? "roll it by the lines on the blank"
                    : folded ? "fold it by the lines on the blank" : "bend it onto the form") + ", and trim it; nothing needs a shrinker or a mallet.";
        }
        say("Next: %s%s", names.contains("blank.pdf")
                ? "print blank.pdf at 100 %, measure its check squares both ways, try the paper on the form; then " : "", bench);
    }

    private void say(String form, Object... values) {
        lines.add(String.format(Locale.ROOT, form, values));
    }

    private static String area(double mm2) {
        return String.format(Locale.ROOT, mm2 < 1e4 ? "%.0f mm2" : "%.3f m2", mm2 < 1e4 ? mm2 : mm2 / 1e6);
    }
}
