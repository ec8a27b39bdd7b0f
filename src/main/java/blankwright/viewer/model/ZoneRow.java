package blankwright.viewer.model;

import blankwright.shop.Instruction;
import blankwright.shop.Zone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * A zone in the list of work.
 *
 * @param piece from 0
 * @param name as on paper, e.g. {@code 3} or {@code 2-3}
 */
public record ZoneRow(int piece, String name, Zone zone) {
    /** Those to be worked, hardest first; then, where {@code all}, those to be left. */
    public static List<ZoneRow> of(Laid laid, boolean all) {
        List<ZoneRow> rows = new ArrayList<>();
        for (int i = 0; i < laid.skins().size(); i++)
            for (Zone zone : laid.skins().get(i).piece().zones().list())
                if (all || zone.instruction() != Instruction.LEAVE) rows.add(new ZoneRow(i, laid.result().pieceName(i) + zone.number(),
                        zone));
        rows.sort(Comparator.comparing((ZoneRow r) -> r.zone.instruction() == Instruction.LEAVE)
                .thenComparing(r -> -Math.abs(r.zone.largestStrain())));
        return List.copyOf(rows);
    }

    /** {@code stretch}, {@code shrink} or {@code leave}. */
    public String todo() {
        return zone.instruction().word();
    }

    /** {@code take in 12.4 mm of 830 mm}. */
    public String amount(LengthStyle style) {
        if (zone.instruction() == Instruction.LEAVE) return "nothing worth a tool";
        return style.change(zone.line().change()) + " of " + style.length(zone.line().blankLength());
    }

    /** {@code at the worst place 4.2 %, ordinary}. */
    public String worst() {
        return String.format(Locale.ROOT, "worst place %.1f %%: %s", 100 * Math.abs(zone.largestStrain()), zone.verdict().words());
    }
}
