package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Seam;
import blankwright.num.Sentence;
import blankwright.project.Recipe;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What to do about a blank that covers itself or needs work out of reach of the tools: the seams that cure it, and the panel laid flat with them.
 *
 * @param taken the panel with the seams taken; its recipe holds them, so that running that recipe gives it again
 * @param numbers of the proposed seams in that recipe, from 1; the others were there before
 */
public record Proposal(Result taken, List<Integer> numbers, Reason reason) {
    /** What a seam is proposed for. */
    public enum Reason {
        COVERED("so that nothing lies over itself"), REACH("so that the tools reach where they must");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Proposal {
        numbers = List.copyOf(numbers);
    }

    /**
     * One proposed seam.
     *
     * @param number in the recipe of {@link #taken}, from 1
     * @param length mm
     * @param from where it begins on the form, on the middle of the sheet, mm: {x, y, z}
     * @param to where it ends
     */
    public record Line(int number, double length, double[] from, double[] to) {
        /** {@code 40.0 mm from (0.0, 1.0, 2.0) mm to (3.0, 4.0, 5.0) mm}. */
        public Sentence words() {
            return Sentence.say("%s from %s to %s", Sentence.length(length, 1), Sentence.place(1, from), Sentence.place(1, to));
        }
    }

    /** Under a recipe that differs only in its words. */
    Proposal with(Recipe worded) {
        return new Proposal(taken.with(worded.withSeams(taken.recipe().seams())), numbers, reason);
    }

    /** The proposed seams in their order. */
    public List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        for (int number : numbers) lines.add(line(number));
        return lines;
    }

    private Line line(int number) {
        for (Piece piece : taken.pieces()) {
            for (Seam seam : piece.seams()) {
                int last = seam.edgeCount() - 1;
                if (seam.number() != number || end(seam, 0, 0) < 0 || end(seam, last, 1) < 0) continue;
                TriMesh form = piece.map().form();
                return new Line(number, seam.length(), place(form, end(seam, 0, 0)), place(form, end(seam, last, 1)));
            }
        }
        throw new AssertionError("seam " + number + " is on no piece");
    }

    private static int end(Seam seam, int edge, int end) {
        return seam.left(edge, end) >= 0 ? seam.left(edge, end) : seam.right(edge, end);
    }

    private static double[] place(TriMesh form, int v) {
        return new double[] {form.x(v), form.y(v), form.z(v)};
    }

    /** Mean symmetric Dirichlet energy of a result over all its pieces; 4 is no distortion. */
    static double energy(Result result) {
        double sum = 0, area = 0;
        for (Piece piece : result.pieces()) {
            double part = piece.map().form().area();
            sum += part * piece.strain().symmetricDirichletMean();
            area += part;
        }
        return sum / area;
    }

    Finding finding(Result without) {
        List<Sentence> words = lines().stream().map(Line::words).toList();
        String them = words.size() == 1 ? "it" : "them", seams = words.size() == 1 ? "a seam" : words.size() + " seams";
        Sentence places = Sentence.joined("; ", words);
        Sentence does = switch (reason) {
            case COVERED -> Sentence.say("%s would cure it: %s; %d pieces, none over itself, mean energy %.4f, now %.4f.", seams, places,
                    taken.pieces().size(), energy(taken), energy(without));
            case REACH -> Sentence.say("%s would let the tools in: %s; %s.", seams, places, taken.beyondReach() == 0
                    ? "with " + them + " nothing is out of reach"
                    : String.format(Locale.ROOT, "with %s %.0f %% of what is out of reach now is left", them, 100 * taken.beyondReach() / without.beyondReach()));
        };
        return new Finding(Finding.Kind.SEAM_PROPOSED, words.size(), Sentence.say("%s The files beginning with with-seam show %s; running with-seam.yaml"
                + " takes %s.", does, them, them));
    }
}
