package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.query.NearestPoint;
import blankwright.mesh.query.SkinPoint;
import java.util.List;
import java.util.Optional;

/** Finds places and tapes again on a panel laid out in one or several pieces. Build once, ask often, from any thread. */
public final class Tapes {
    private final List<FlatMap> pieces;
    private final List<NearestPoint> forms;

    private Tapes(List<FlatMap> pieces) {
        this.pieces = List.copyOf(pieces);
        forms = pieces.stream().map(map -> NearestPoint.on(map.form())).toList();
    }

    /** @param pieces at least one, as they lie on the sheet */
    public static Tapes on(List<FlatMap> pieces) {
        if (pieces.isEmpty()) throw new IllegalArgumentException("tapes on no piece");
        return new Tapes(pieces);
    }

    /** A place on one of the pieces, counted from 0. */
    public record Place(int piece, SkinPoint at) { }

    /** A tape as it lies on one of the pieces, counted from 0. */
    public record Laid(int piece, TapeLine line) { }

    /** The place of the form nearest to (x, y, z), mm; of places equally near that of the first piece. */
    public Place nearest(double x, double y, double z) {
        Place best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < forms.size(); i++) {
            SkinPoint there = forms.get(i).to(x, y, z);
            double[] at = there.on(pieces.get(i).form());
            double off = Math.hypot(Math.hypot(at[0] - x, at[1] - y), at[2] - z);
            if (off >= least) continue;
            least = off;
            best = new Place(i, there);
        }
        return best;
    }

    /** Empty where its ends lie on two pieces, at one place, or with a hole between. */
    public Optional<Laid> lay(String name, DrawnTape tape) {
        Place from = nearest(tape.x0(), tape.y0(), tape.z0()), to = nearest(tape.x1(), tape.y1(), tape.z1());
        if (from.piece() != to.piece()) return Optional.empty();
        return tape.between(name, pieces.get(from.piece()), from.at(), to.at()).map(line -> new Laid(from.piece(), line));
    }
}
