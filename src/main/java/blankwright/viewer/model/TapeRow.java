package blankwright.viewer.model;

import blankwright.shop.DrawnTape;
import blankwright.shop.TapeLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A tape with its lengths.
 *
 * @param line empty where the panel has changed so that it no longer lies on one piece
 */
public record TapeRow(int number, DrawnTape tape, Optional<TapeLine> line) {
    public static List<TapeRow> of(Laid laid, Work work) {
        List<TapeRow> rows = new ArrayList<>();
        for (DrawnTape tape : work.tapes()) rows.add(new TapeRow(rows.size() + 1, tape, laid.line(tape)));
        return List.copyOf(rows);
    }

    /** {@code before 412 mm, after 420 mm: let out 8.0 mm}. */
    public String words(LengthStyle style) {
        if (line.isEmpty()) return "no longer lies on one piece";
        TapeLine l = line.get();
        return "before " + style.length(l.blankLength()) + ", after " + style.length(l.formLength()) + ": " + style.change(l.change());
    }
}
