package blankwright.viewer.model;

import blankwright.job.BucklingWords;
import blankwright.metal.buckling.UnworkedBlank;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The ways in which the unworked sheet gives way, lowest first, to be shown moving on the form: where, not how high. */
public final class Buckles {
    private static final List<String> NUMBERS = List.of("first", "second", "third", "fourth", "fifth", "sixth");

    private final Laid laid;
    private final List<Optional<UnworkedBlank>> blanks;

    private Buckles(Laid laid) {
        this.laid = laid;
        blanks = laid.skins().stream().map(skin -> skin.piece().buckled().map(b -> b.blank())).toList();
    }

    public static Buckles of(Laid laid) {
        return new Buckles(laid);
    }

    /** How many ways are known of any piece; 0 where nothing gives way, or that was not asked. */
    public int ways() {
        return blanks.stream().mapToInt(b -> b.map(blank -> blank.modes().size()).orElse(0)).max().orElse(0);
    }

    /** {@code first way}, from 0. */
    public static String name(int way) {
        return (way < NUMBERS.size() ? NUMBERS.get(way) : way + 1 + "th") + " way";
    }

    /**
     * What stands beside the moving form.
     *
     * @param high as drawn, mm
     */
    public String words(int way, double high, LengthStyle style) {
        List<String> when = new ArrayList<>();
        for (int i = 0; i < blanks.size(); i++) {
            if (blanks.get(i).isEmpty() || way >= blanks.get(i).get().modes().size()) continue;
            String piece = laid.result().pieceName(i);
            when.add((piece.isEmpty() ? "" : "piece " + piece.substring(0, piece.length() - 1) + " ")
                    + "at " + BucklingWords.share(blanks.get(i).get().loadFactor(way)));
        }
        String name = name(way);
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1) + ": " + (when.isEmpty() ? "none" : String.join(", ", when))
                + " (estimate).\nDrawn " + style.length(high, 0) + " high, much too high: where it buckles is told, not how high.";
    }

    /**
     * Places of a piece's vertices, 3 each, mm; as they are where the piece does not know that way.
     *
     * @param height of the highest place, mm, with a sign: out or in
     */
    public double[] moved(int piece, int way, double height) {
        double[] at = laid.skins().get(piece).map().form().positions();
        Optional<UnworkedBlank> blank = blanks.get(piece);
        if (blank.isEmpty() || way >= blank.get().modes().size()) return at;
        double[] shape = blank.get().modes().get(way).displacement();
        for (int k = 0; k < at.length; k++) at[k] += height * shape[k];
        return at;
    }
}
