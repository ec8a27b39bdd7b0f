package blankwright.viewer.model;

import blankwright.project.Recipe;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What a person has decided so far, all of it: what undo steps through.
 *
 * @param tapes laid on the panel
 * @param ends of the colour scales, other than the work map's, where a hand has set one
 */
public record Work(Recipe recipe, List<Tape> tapes, Map<MapKind, Double> ends) {
    public Work {
        tapes = List.copyOf(tapes);
        ends = Map.copyOf(ends);
    }

    public static Work of(Recipe recipe) {
        return new Work(recipe, List.of(), Map.of());
    }

    public Work with(Recipe other) {
        return new Work(other, tapes, ends);
    }

    public Work with(Tape tape) {
        List<Tape> all = new ArrayList<>(tapes);
        all.add(tape);
        return new Work(recipe, all, ends);
    }

    public Work without(Tape tape) {
        List<Tape> all = new ArrayList<>(tapes);
        all.remove(tape);
        return new Work(recipe, all, ends);
    }

    /** @param end of the scale; empty for the usual one. That of the work map is the recipe's, since paper has it too. */
    public Work withEnd(MapKind kind, OptionalDouble end) {
        if (kind == MapKind.WORK) return with(recipe.withScale(end.isPresent() ? OptionalDouble.of(tidy(100 * end.getAsDouble())) : end));
        Map<MapKind, Double> all = new EnumMap<>(MapKind.class);
        all.putAll(ends);
        if (end.isPresent()) all.put(kind, end.getAsDouble());
        else all.remove(kind);
        return new Work(recipe, tapes, all);
    }

    /** Without what the last bits of a product add. */
    private static double tidy(double x) {
        return Math.round(x * 1e6) / 1e6;
    }

    public OptionalDouble end(MapKind kind) {
        if (kind == MapKind.WORK) return recipe.scale().isPresent() ? OptionalDouble.of(recipe.scale().getAsDouble() / 100)
                : OptionalDouble.empty();
        Double end = ends.get(kind);
        return end == null ? OptionalDouble.empty() : OptionalDouble.of(end);
    }
}
