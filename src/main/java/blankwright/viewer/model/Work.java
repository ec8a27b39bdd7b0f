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
 * @param ends of the colour scales where a hand has set one
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

    /** @param end of the scale; empty for that of the paper */
    public Work withEnd(MapKind kind, OptionalDouble end) {
        Map<MapKind, Double> all = new EnumMap<>(MapKind.class);
        all.putAll(ends);
        if (end.isPresent()) all.put(kind, end.getAsDouble());
        else all.remove(kind);
        return new Work(recipe, tapes, all);
    }

    public OptionalDouble end(MapKind kind) {
        Double end = ends.get(kind);
        return end == null ? OptionalDouble.empty() : OptionalDouble.of(end);
    }
}
