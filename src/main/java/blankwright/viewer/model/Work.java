package blankwright.viewer.model;

import blankwright.project.Recipe;
import blankwright.project.Scales;
import blankwright.shop.DrawnTape;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What a person has decided so far, all of it: what undo steps through, and what a saved recipe holds. */
public record Work(Recipe recipe) {
    public Work with(Recipe other) {
        return new Work(other);
    }

    /** Laid on the panel by hand. */
    public List<DrawnTape> tapes() {
        return recipe.tapes();
    }

    public Work with(DrawnTape tape) {
        List<DrawnTape> all = new ArrayList<>(recipe.tapes());
        all.add(tape);
        return new Work(recipe.withTapes(all));
    }

    public Work without(DrawnTape tape) {
        List<DrawnTape> all = new ArrayList<>(recipe.tapes());
        all.remove(tape);
        return new Work(recipe.withTapes(all));
    }

    /**
     * @param end of the scale, in the numbers of the map; empty for the usual one
     * @throws IllegalArgumentException where it is no end for that map
     */
    public Work withEnd(MapKind kind, OptionalDouble end) {
        Scales scales = recipe.scales();
        return new Work(recipe.withScales(switch (kind) {
            case WORK -> scales.withWork(times(end, 100));
            case THICKNESS -> scales.withThickness(end);
            case CURVATURE -> scales.withCrown(end.isPresent() ? OptionalDouble.of(Math.toRadians(tidy(end.getAsDouble()))) : end);
            case LIMIT -> scales.withLimit(end);
            case BUCKLING -> scales.withBuckling(times(end, 1));
        }));
    }

    /** The end of a map's scale in its numbers, where a hand has set one. */
    public OptionalDouble end(MapKind kind) {
        Scales scales = recipe.scales();
        return switch (kind) {
            case WORK -> times(scales.work(), 0.01);
            case THICKNESS -> scales.thickness();
            case CURVATURE -> scales.crown().isPresent() ? OptionalDouble.of(tidy(Math.toDegrees(scales.crown().getAsDouble())))
                    : scales.crown();
            case LIMIT -> scales.limit();
            case BUCKLING -> scales.buckling();
        };
    }

    private static OptionalDouble times(OptionalDouble number, double by) {
        return number.isPresent() ? OptionalDouble.of(tidy(by * number.getAsDouble())) : number;
    }

    /** Without what the last bits of a product add. */
    private static double tidy(double x) {
        return Math.round(x * 1e8) / 1e8;
    }
}
