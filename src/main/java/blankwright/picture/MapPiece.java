package blankwright.picture;

import blankwright.mesh.FlatMap;
import blankwright.shop.SeamEdges;
import blankwright.shop.TapeLine;
import blankwright.shop.Zone;
import blankwright.shop.Zones;
import blankwright.strain.VertexStrain;
import java.util.List;

/**
 * One piece as it is drawn on the work map.
 *
 * @param name of the piece, empty when there is only one
 * @param map where it lies on the sheet
 * @param strain of that very map
 * @param zones of the piece
 * @param marks lines marked on it: centre line and stations
 * @param seams edges to be joined after forming
 */
public record MapPiece(String name, FlatMap map, VertexStrain strain, Zones zones, List<TapeLine> marks,
        List<SeamEdges> seams) {
    public MapPiece {
        marks = List.copyOf(marks);
        seams = List.copyOf(seams);
    }

    /** Zones where something is to be done, in their order. */
    List<Zone> worked() {
        return zones.worked();
    }

    /** What zone z is called on paper. */
    String label(Zone z) {
        return name.isEmpty() ? Integer.toString(z.number()) : name + z.number();
    }
}
