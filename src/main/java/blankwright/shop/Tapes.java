package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.query.NearestPoint;
import blankwright.mesh.query.SkinPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds places and tapes again on a panel laid out in one or several pieces. Build once, ask often, from any thread. */
public final class Tapes {
    private static final double BESIDE = 0.01;      // mm: ends are kept to a thousandth, and both sides of a seam are as near

    private static final double OFF = 0.02;         // of a form's length, width and height together: an end farther off was meant for something else

    private final List<FlatMap> pieces;
    private final List<NearestPoint> forms;
    private final double farthest;                  // mm; of the largest piece, which is seldom far from the whole

    private Tapes(List<FlatMap> pieces) {
        this.pieces = List.copyOf(pieces);
        forms = pieces.stream().map(map -> NearestPoint.on(map.form())).toList();
        farthest = OFF * pieces.stream().map(map -> map.form().size()).mapToDouble(box -> box[0] + box[1] + box[2]).max().orElseThrow();
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
        List<Near> near = near(x, y, z);
        int best = 0;
        for (int i = 1; i < near.size(); i++) if (near.get(i).off() < near.get(best).off()) best = i;
        return new Place(best, near.get(best).at());
    }

    /** An end of a tape that lies off the form, and the place of the form nearest to it, where the tape begins or ends instead; all in mm. */
    public record Astray(double x, double y, double z, double off, double nearX, double nearY, double nearZ) { }

    /** The first end of a tape that lies farther off the form than 2 % of its length, width and height together; empty where none does. */
    public Optional<Astray> astray(DrawnTape tape) {
        for (double[] end : new double[][] {{tape.x0(), tape.y0(), tape.z0()}, {tape.x1(), tape.y1(), tape.z1()}}) {
            Place place = nearest(end[0], end[1], end[2]);
            double[] at = place.at().on(pieces.get(place.piece()).form());
            double off = distance(at, end[0], end[1], end[2]);
            if (off > farthest) return Optional.of(new Astray(end[0], end[1], end[2], off, at[0], at[1], at[2]));
        }
        return Optional.empty();
    }

    /**
     * Empty where its ends lie on two pieces, at one place, or with a hole between. An end on a seam lies on the pieces on both sides;
     * where both ends do, the first piece with a line has it.
     */
    public Optional<Laid> lay(String name, DrawnTape tape) {
        List<Near> from = near(tape.x0(), tape.y0(), tape.z0()), to = near(tape.x1(), tape.y1(), tape.z1());
        double reachFrom = least(from) + BESIDE, reachTo = least(to) + BESIDE;
        for (int i = 0; i < pieces.size(); i++) {
            if (from.get(i).off() > reachFrom || to.get(i).off() > reachTo) continue;
            Optional<TapeLine> line = tape.between(name, pieces.get(i), from.get(i).at(), to.get(i).at());
            if (line.isPresent()) return Optional.of(new Laid(i, line.get()));
        }
        return Optional.empty();
    }

    /** The nearest place of one piece, and how far off it is, mm. */
    private record Near(SkinPoint at, double off) { }

    private List<Near> near(double x, double y, double z) {
        List<Near> near = new ArrayList<>();
        for (int i = 0; i < forms.size(); i++) {
            SkinPoint there = forms.get(i).to(x, y, z);
            near.add(new Near(there, distance(there.on(pieces.get(i).form()), x, y, z)));
        }
        return near;
    }

    private static double distance(double[] at, double x, double y, double z) {
        return Math.hypot(Math.hypot(at[0] - x, at[1] - y), at[2] - z);
    }

    private static double least(List<Near> near) {
        return near.stream().mapToDouble(Near::off).min().orElseThrow();
    }
}
