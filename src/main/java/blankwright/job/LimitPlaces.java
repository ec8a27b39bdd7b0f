package blankwright.job;

import blankwright.mesh.TriMesh;
import blankwright.picture.LimitPicture;
import blankwright.shop.Demand;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * The zones of all pieces for the forming-limit picture, the one nearest to its limit first.
 *
 * <p>The spots of a zone are the corners of its triangles with the strain averaged there, which its margin in {@code work.csv} comes from.
 */
final class LimitPlaces {
    private LimitPlaces() { }

    private record Margin(double most, LimitPicture.Place place) { }

    /** Of the pieces whose demand on the metal is known. */
    static List<LimitPicture.Place> of(Result result) {
        List<Margin> found = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            if (piece.demand().isEmpty()) continue;
            for (Demand.OfZone zone : piece.demand().get().zones()) {
                String name = "zone " + result.pieceName(i) + zone.zone().number() + ", " + zone.zone().instruction().word();
                found.add(new Margin(zone.margin(), place(name, piece, zone.zone().number())));
            }
        }
        return found.stream().sorted(Comparator.comparingDouble(Margin::most).reversed()).map(Margin::place).toList();
    }

    private static LimitPicture.Place place(String name, Piece piece, int zone) {
        TriMesh form = piece.map().form();
        BitSet corners = new BitSet();
        for (int c = 0; c < 3 * form.triangleCount(); c++) if (piece.zones().zoneOf(c / 3) == zone) corners.set(form.corner(c / 3, c % 3));
        return new LimitPicture.Place(name, corners.stream().mapToDouble(piece.vertices()::strain1).toArray(),
                corners.stream().mapToDouble(piece.vertices()::strain2).toArray());
    }
}
