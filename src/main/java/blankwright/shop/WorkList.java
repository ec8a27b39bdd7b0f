package blankwright.shop;

import java.util.ArrayList;
import java.util.List;

/** The list of work: one row per zone, piece by piece, zones in their order. */
public final class WorkList {
    private WorkList() { }

    /** @param pieces the zones of each piece, in the order of the pieces */
    public static List<WorkRow> of(List<Zones> pieces) {
        List<WorkRow> rows = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            for (Zone zone : pieces.get(p).list()) rows.add(WorkRow.of(p + 1, zone));
        }
        return List.copyOf(rows);
    }
}
