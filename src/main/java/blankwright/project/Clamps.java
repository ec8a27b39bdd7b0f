package blankwright.project;

import blankwright.num.Sentence;
import blankwright.num.Unfit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where the sheet is held while it is bent onto its form: at all its rims, wherever it is not pressed together, within
 * balls, or nowhere.
 *
 * @param calm against the form wherever the metal is not pressed together, so that only the edges and places that must shrink are free
 * @param spots may be empty
 */
public record Clamps(boolean rims, boolean calm, List<Spot> spots) {
    /** More than anyone has, or could find again on a drawing. */
    public static final int MOST = 200;
    public static final Clamps NOWHERE = new Clamps(false, false, List.of());
    public static final Clamps RIMS = new Clamps(true, false, List.of());
    public static final Clamps CALM = new Clamps(false, true, List.of());

    /** A ball, mm, in the coordinates of the form. */
    public record Spot(double x, double y, double z, double radius) {
        public Spot {
            if (!(radius > 0 && radius <= 10_000))
                throw new Unfit("radius %s: must be above 0 to %s", Sentence.typed(radius), Sentence.typed(10_000));
        }

        public Spot withRadius(double mm) {
            return new Spot(x, y, z, mm);
        }
    }

    public Clamps {
        spots = List.copyOf(spots);
    }

    /**
     * Held at one place more; what held the whole, as all rims, gives way to places.
     *
     * @throws IllegalArgumentException where there are too many
     */
    public Clamps with(Spot spot) {
        if (spots.size() == MOST) throw new IllegalArgumentException("more than " + MOST + " clamps");
        List<Spot> all = new ArrayList<>(spots);
        all.add(spot);
        return new Clamps(false, false, all);
    }

    /** Another place instead of one, from 0. */
    public Clamps with(int number, Spot spot) {
        List<Spot> all = new ArrayList<>(spots);
        all.set(number, spot);
        return new Clamps(false, false, all);
    }

    /** Without one of the places, from 0; without the last, held nowhere. */
    public Clamps without(int number) {
        List<Spot> all = new ArrayList<>(spots);
        all.remove(number);
        return new Clamps(false, false, all);
    }

    /** Those that one word names, by it. */
    public static Optional<Clamps> named(String word) {
        return Optional.ofNullable(Map.of("nowhere", NOWHERE, "rims", RIMS, "calm", CALM).get(word));
    }

    /** {@code nowhere}, {@code rims} or {@code calm}; empty for balls. */
    public Optional<String> word() {
        if (!spots.isEmpty()) return Optional.empty();
        return Optional.of(rims ? "rims" : calm ? "calm" : "nowhere");
    }
}
