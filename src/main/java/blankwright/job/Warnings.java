package blankwright.job;

import blankwright.flatten.Outcome;
import blankwright.mesh.Finding;
import blankwright.num.Sentence;
import java.util.ArrayList;
import java.util.List;

/** What makes a blank unsafe to cut, in the words of the bench. */
final class Warnings {
    private Warnings() { }

    /** One sentence per kind of trouble, naming the pieces it concerns. */
    static List<Sentence> of(List<Piece> pieces) {
        return findings(pieces).stream().map(finding -> Sentence.say("DO NOT CUT: %s", finding.words())).toList();
    }

    /** The same as findings, to stand beside the others. */
    static List<Finding> findings(List<Piece> pieces) {
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            String name = MetalFindings.name(pieces, i);
            int turned = piece.strain().turnedOverCount();
            if (turned > 0)
                found.add(new Finding(Finding.Kind.TURNED_OVER, turned, name + " has " + turned + (turned == 1 ? " triangle" : " triangles")
                        + " turned over; add a seam there, or mend the mesh."));
            if (!piece.converged())
                found.add(new Finding(Finding.Kind.NOT_CONVERGED, 1, name + " is not finished: " + reason(piece.outcome())
                        + "; divide the panel, or mesh it more evenly."));
            if (piece.overlaps())
                found.add(new Finding(Finding.Kind.OVERLAP, 1, name + " covers itself and cannot be cut from one sheet; divide it by a seam."));
            MetalFindings.pastLimit(piece, name).ifPresent(found::add);
        }
        return found;
    }

    static String reason(Outcome outcome) {
        if (!(outcome instanceof Outcome.Stopped stopped)) throw new IllegalArgumentException("converged");
        return switch (stopped.reason()) {
            case STEP_LIMIT -> "still improving after " + stopped.steps() + " steps";
            case NO_DESCENT -> "no step makes it better";
            case NO_START -> "no layout without turned-over triangles was found to begin with";
        };
    }
}
