package blankwright.viewer.model;

import blankwright.drawing.Drawing;
import blankwright.drawing.Paper;
import blankwright.drawing.Tiling;
import blankwright.outline.Curve.Box;
import java.util.ArrayList;
import java.util.List;

/**
 * How the blank falls on sheets of paper, to be looked at before printing.
 *
 * @param sheets the parts of the drawing that are printed, mm
 * @param words {@code 12 sheets of A4}
 */
public record Pages(List<Sheet> sheets, String words) {
    /** One sheet: {@code A1} and what of the drawing it shows. */
    public record Sheet(String label, Box window) { }

    /** Empty where the blank is too large for any paper. */
    public static Pages of(Drawing drawing, Paper paper) {
        Tiling tiling;
        try {
            tiling = Tiling.of(drawing, paper);
        } catch (IllegalArgumentException e) {
            return new Pages(List.of(), "too large for paper: take the DXF or SVG to a cutting shop");
        }
        List<Sheet> sheets = new ArrayList<>();
        for (int row = 0; row < tiling.rows(); row++)
            for (int column = 0; column < tiling.columns(); column++)
                if (tiling.isPrinted(row, column)) sheets.add(new Sheet(Tiling.label(row, column), tiling.window(row, column)));
        String size = paper == Paper.A4 ? "A4" : "Letter";
        return new Pages(List.copyOf(sheets), sheets.size() + (sheets.size() == 1 ? " sheet of " : " sheets of ") + size
                + (tiling.pageWidth() > tiling.pageHeight() ? ", lying" : ", standing") + ", and a cover");
    }
}
