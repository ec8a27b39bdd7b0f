package blankwright.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The list of work: one row per zone, piece by piece, zones in their order. */
public final class WorkList {
    private WorkList() { }

    /** @param pieces the zones of each piece, in the order of the pieces; the metal not known */
    public static List<WorkRow> of(List<Zones> pieces) {
        return of(pieces, pieces.stream().map(p -> Optional.<Demand>empty()).toList());
    }

    /** @param demands what the zones ask of the metal, one for each piece */
    public static List<WorkRow> of(List<Zones> pieces, List<Optional<Demand>> demands) {
        List<WorkRow> rows = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            Optional<Demand> demand = demands.get(p);
            for (Zone zone : pieces.get(p).list()) rows.add(WorkRow.of(p + 1, zone, demand.map(d -> d.zones().get(zone.number() - 1))));
        }
        return List.copyOf(rows);
    }
}
