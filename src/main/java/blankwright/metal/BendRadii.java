package blankwright.metal;

import blankwright.num.Sentence;
import blankwright.num.Unfit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Smallest inside radius a sheet bends round by 90 degrees when cold, as a multiple of its thickness, by thickness.
 *
 * <p>A thickness between two rows takes the thicker one's multiple, which is never smaller. Beyond the last row nothing is known.
 *
 * @param rows by rising thickness
 */
public record BendRadii(List<Row> rows, Trust trust, String source) {
    /** @param thickness mm, above 0; @param multiple inside radius over thickness, 0 or above */
    public record Row(double thickness, double multiple) {
        public Row {
            if (!(thickness > 0 && multiple >= 0)) throw new Unfit("thickness %s, radius %s times it", Sentence.typed(thickness), multiple);
        }
    }

    /** Tables print 1/64 in as .016: a sheet that much thicker still belongs to the row. */
    private static final double SAME = 1.03;

    public BendRadii {
        rows = rows.stream().sorted(Comparator.comparingDouble(Row::thickness)).toList();
        if (rows.isEmpty()) throw new IllegalArgumentException("no row of bend radii");
    }

    /** Smallest inside radius, mm, for a sheet of this thickness in mm; empty where it is thicker than the table. */
    public Optional<Known> least(double thickness) {
        return rows.stream().filter(r -> thickness <= r.thickness() * SAME).findFirst()
                .map(r -> new Known(r.multiple() * thickness, trust, source));
    }
}
