package blankwright.viewer.model;

import blankwright.shop.Flange;
import blankwright.shop.Zone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** One thing in the list of work: a zone, or a flange to be turned. */
public sealed interface WorkRow permits ZoneRow, FlangeRow {
    /** Piece it lies on, from 0. */
    int piece();

    /** Short, as it stands on the form when it is chosen. */
    String name();

    /** What is to be done. */
    String todo();

    /** What a tape tells of it. */
    String amount(LengthStyle style);

    /** What else; may be empty. */
    String more(LengthStyle style);

    /** Engineering strain by which it is ranked and coloured: the metal must be stretched by it, or shrunk where below 0. */
    double strain();

    /** Whether nothing is to be done there. */
    boolean isLeft();

    /** Read out. */
    String said(LengthStyle style);

    /** Zones to be worked and flanges to be turned, hardest first; then, where {@code all}, zones to be left. */
    static List<WorkRow> of(Laid laid, boolean all) {
        List<WorkRow> rows = new ArrayList<>();
        for (int i = 0; i < laid.skins().size(); i++) {
            String piece = laid.result().pieceName(i);
            for (Zone zone : laid.skins().get(i).piece().zones().list()) rows.add(new ZoneRow(i, piece + zone.number(), zone));
            int number = 0;
            for (Flange flange : laid.skins().get(i).piece().flanges()) rows.add(new FlangeRow(i, piece + "F" + ++number, number, flange));
        }
        if (!all) rows.removeIf(WorkRow::isLeft);
        rows.sort(Comparator.comparing(WorkRow::isLeft).thenComparing(row -> -Math.abs(row.strain())));
        return List.copyOf(rows);
    }
}
