package blankwright.viewer.model;

import blankwright.shop.Instruction;
import blankwright.shop.Zone;
import java.util.List;
import java.util.Locale;

/**
 * A zone in the list of work.
 *
 * @param piece from 0
 * @param name as on paper, e.g. {@code 3} or {@code 2-3}
 */
public record ZoneRow(int piece, String name, Zone zone) implements WorkRow {
    /** The zones alone of {@link WorkRow#of}. */
    public static List<ZoneRow> of(Laid laid, boolean all) {
        return WorkRow.of(laid, all).stream().filter(ZoneRow.class::isInstance).map(ZoneRow.class::cast).toList();
    }

    /** {@code stretch}, {@code shrink} or {@code leave}. */
    @Override public String todo() {
        return zone.instruction().word();
    }

    /** {@code take in 12.4 mm of 830 mm}. */
    @Override public String amount(LengthStyle style) {
        if (isLeft()) return "nothing worth a tool";
        return style.change(zone.line().change()) + " of " + style.length(zone.line().blankLength());
    }

    /** {@code worst place 4.2 %: ordinary}. */
    @Override public String more(LengthStyle style) {
        return isLeft() ? "" : String.format(Locale.ROOT, "worst place %.1f %%: %s", 100 * Math.abs(zone.largestStrain()), zone.verdict().words());
    }

    @Override public double strain() {
        return zone.largestStrain();
    }

    @Override public boolean isLeft() {
        return zone.instruction() == Instruction.LEAVE;
    }

    @Override public String said(LengthStyle style) {
        return "Zone " + name + ", " + todo() + ", " + amount(style) + ", " + more(style);
    }
}
