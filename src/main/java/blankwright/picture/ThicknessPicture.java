package blankwright.picture;

import blankwright.num.Lengths;
import blankwright.shop.SheetThickness;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * How thick the metal is after forming, on the blank: dark where it is thin, light where it is thick, so that a grey print reads the same.
 *
 * <p>Colours and their limits are those of the map on screen, see {@link Tints#thickness}; numbers are mm.
 */
public final class ThicknessPicture {
    private ThicknessPicture() { }

    /**
     * @param thinEnd where the colours end at the thin side, as a share of the sheet; empty where the thinnest place decides
     * @param pieces at least one, all of one sheet, as they lie on it without covering each other
     */
    public static Picture of(Caption caption, OptionalDouble thinEnd, List<ThicknessPiece> pieces) {
        return drawn(caption, thinEnd, pieces).picture();
    }

    static Canvas drawn(Caption caption, OptionalDouble thinEnd, List<ThicknessPiece> pieces) {
        if (pieces.isEmpty()) throw new IllegalArgumentException("a map of thickness of no piece");
        double sheet = pieces.get(0).thickness().sheet();
        Comparator<SheetThickness.Place> thinner = Comparator.comparingDouble(SheetThickness.Place::mm);
        SheetThickness.Place thinnest = pieces.stream().map(p -> p.thickness().thinnest()).min(thinner).orElseThrow();
        SheetThickness.Place thickest = pieces.stream().map(p -> p.thickness().thickest()).max(thinner).orElseThrow();
        Tints tints = Tints.thickness(thinnest.mm() / sheet, thickest.mm() / sheet).from(thinEnd);
        boolean coarse = sheet * (tints.high() - tints.low()) / tints.classes() >= 0.01;       // a hundredth of a mm tells the classes apart
        FieldPicture.Legend legend = new FieldPicture.Legend("thickness after forming, on the blank, outside face up", "THIN", "THICK",
                "Numbers: mm of metal left or gathered when the panel has its shape.",
                share -> String.format(Locale.ROOT, coarse ? "%.2f" : "%.3f", sheet * share), tints.boundaries(),
                List.of(new String[] {"sheet", Lengths.mm(sheet, 2) + " (" + Lengths.inches(sheet, 3) + ")"},
                        new String[] {"thinnest", changed(thinnest, sheet)}, new String[] {"thickest", changed(thickest, sheet)}),
                List.of("Worked out from volume kept: what is", "stretched thins, what is shrunk thickens.",
                        "Hammer marks and filing take more of it.", "Measure thin places after each round."));
        return FieldPicture.drawn(caption, legend, tints, pieces.stream().map(p -> new FieldPicture.Piece(p.map(), shares(p, sheet))).toList(),
                List.of(new FieldPicture.Mark("thinnest " + Lengths.mm(thinnest.mm(), 2), thinnest.at()),
                        new FieldPicture.Mark("thickest " + Lengths.mm(thickest.mm(), 2), thickest.at())));
    }

    private static double[] shares(ThicknessPiece piece, double sheet) {
        double[] left = piece.thickness().atVertices();
        for (int v = 0; v < left.length; v++) left[v] /= sheet;
        return left;
    }

    private static String changed(SheetThickness.Place spot, double sheet) {
        double share = spot.mm() / sheet - 1;
        return Lengths.mm(spot.mm(), 2) + String.format(Locale.ROOT, ", %.1f %% %s", 100 * Math.abs(share), share < 0 ? "gone" : "gained");
    }
}
