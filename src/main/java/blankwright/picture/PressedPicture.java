package blankwright.picture;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Where a blank that is bent on unworked gives way, everywhere at once: how many times what it bears each place is pressed together, on the blank. Light
 * stands, dark gives way; the same colours and limits as on screen.
 */
public final class PressedPicture {
    /** End of the scale where nothing else is asked: 1, where it gives way, is then the border between two colours. */
    public static final double END = 1.8;

    private PressedPicture() { }

    /**
     * @param end of the scale, times what the sheet bears
     * @param pieces at least one, as they lie on the sheet without covering each other
     */
    public static Picture of(Caption caption, OptionalDouble end, List<PressedPiece> pieces) {
        return drawn(caption, end, pieces).picture();
    }

    static Canvas drawn(Caption caption, OptionalDouble end, List<PressedPiece> pieces) {
        if (pieces.isEmpty()) throw new IllegalArgumentException("a map of buckling of no piece");
        PressedPiece worst = pieces.stream().max(Comparator.comparingDouble(PressedPiece::most)).orElseThrow();
        boolean pressed = worst.required() > 0 && Double.isFinite(worst.critical());
        FieldPicture.Legend legend = new FieldPicture.Legend("where it gives way if it is bent on unworked, on the blank, outside face up", "STANDS", "GIVES WAY",
                "Numbers: pressed together so many times what the sheet bears there; above 1 it gives way.", times -> String.format(Locale.ROOT, "%.1f", times), new double[] {1},
                List.of(new String[] {"worst place", pressed ? number(worst.most()) + " times what it bears" : "nothing pressed together"},
                        new String[] {"pressed by", percent(worst.required())}, new String[] {"it bears", pressed ? percent(worst.critical()) : "more"}),
                List.of("Handbook estimate: each place as a strip of", "plate with its edges free, calm or clamped, and", "with the form's curvature. How high waves go",
                        "it does not say. Where it gives way, shrink or", "tuck before bending farther."));
        List<FieldPicture.Mark> marks = pressed ? List.of(new FieldPicture.Mark(number(worst.most()) + " times", worst.worst())) : List.of();
        return FieldPicture.drawn(caption, legend, Tints.upTo(end.orElse(END)), pieces.stream().map(p -> new FieldPicture.Piece(p.map(), p.times())).toList(), marks);
    }

    private static String number(double times) {
        return times > 100 ? "over 100" : String.format(Locale.ROOT, times < 10 ? "%.1f" : "%.0f", times);
    }

    private static String percent(double strain) {
        return strain > 0 && strain < 1e-5 ? "below 0.001 %" : String.format(Locale.ROOT, strain < 0.001 ? "%.3f %%" : "%.2f %%", 100 * strain);
    }
}
