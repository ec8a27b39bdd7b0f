package blankwright.sheet;

import blankwright.mesh.FlatMap;
import blankwright.shop.Flange;
import blankwright.shop.Fold;
import blankwright.shop.RollMark;
import blankwright.shop.SeamEdges;
import blankwright.shop.TapeLine;
import blankwright.shop.Zone;
import blankwright.shop.Zones;
import blankwright.strain.VertexStrain;
import java.util.List;

/**
 * One piece as it is drawn on the sheet.
 *
 * @param name of the piece, empty when there is only one
 * @param map where it lies on the sheet; the drawing keeps its place
 * @param strain of that very map
 * @param zones of that very map
 * @param centreLine in its parts, longest first; may be empty
 * @param stations lines marked across it
 * @param tapes lines laid over it by hand
 * @param rolls rulings of the areas that are rolled
 * @param flanges edges that are turned
 * @param folds straight ones
 * @param tucks to be raised at its edges
 * @param seams edges to be joined after forming
 */
public record BlankPiece(String name, FlatMap map, VertexStrain strain, Zones zones, List<TapeLine> centreLine, List<TapeLine> stations,
        List<TapeLine> tapes, List<RollMark> rolls, List<Flange> flanges, List<Fold> folds, List<TuckMark> tucks, List<SeamEdges> seams) {
    public BlankPiece {
        centreLine = List.copyOf(centreLine);
        stations = List.copyOf(stations);
        tapes = List.copyOf(tapes);
        rolls = List.copyOf(rolls);
        flanges = List.copyOf(flanges);
        folds = List.copyOf(folds);
        tucks = List.copyOf(tucks);
        seams = List.copyOf(seams);
    }

    /** Zones where something is to be done, in their order. */
    List<Zone> worked() {
        return zones.worked();
    }

    /** What zone z is called on the sheet. */
    String label(Zone z) {
        return name.isEmpty() ? Integer.toString(z.number()) : name + z.number();
    }
}
