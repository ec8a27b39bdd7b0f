package blankwright.project;

import blankwright.shape.Hole;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A hole of a panel by formula, as its recipe has it, mm along the skin; nothing is refused before it is put into a recipe.
 *
 * @param along the panel, from its middle to the hole's
 * @param across the panel, likewise
 * @param length of the hole, along the panel
 * @param width of the hole, across the panel; a round one is as wide as long
 */
public record FormulaHole(double along, double across, double length, double width) {
    private static final double DIAMETER = 20;                  // mm, of one more
    private static final double STEP = 25;                      // mm: grid of the places tried for it
    private static final int REACH = 20;                        // steps from the middle, each way

    public static FormulaHole round(double along, double across, double diameter) {
        return new FormulaHole(along, across, diameter, diameter);
    }

    public boolean isRound() {
        return length == width;
    }

    /** Those of a recipe's panel in their order; empty where it can have none. */
    public static Optional<List<FormulaHole>> of(Recipe recipe) {
        if (!(recipe.source() instanceof Source.OfPanel formula)) return Optional.empty();
        PanelWords.Kind<?> kind = PanelWords.of(formula.panel());
        return key(kind).map(key -> new PanelWords.Values(kind.values(formula.panel())).holes(key.word()).stream()
                .map(h -> new FormulaHole(h.along(), h.across(), h.length(), h.width())).toList());
    }

    /**
     * The recipe with other holes.
     *
     * @throws IllegalArgumentException where the panel can have none, or not these: they touch, they leave the panel, they are too many
     */
    public static Recipe in(Recipe recipe, List<FormulaHole> holes) {
        if (holes.size() > RecipeReader.MOST_HOLES) throw new IllegalArgumentException(holes.size() + " holes: at most " + RecipeReader.MOST_HOLES);
        if (!(recipe.source() instanceof Source.OfPanel formula)) throw new IllegalArgumentException("holes: a mesh file brings its own");
        PanelWords.Key key = key(PanelWords.of(formula.panel())).orElseThrow(() -> new IllegalArgumentException("this kind of panel has no holes"));
        return FormulaMeasure.with(recipe, key.word(), holes.stream().map(h -> new Hole(h.along, h.across, h.length, h.width)).toList());
    }

    /** The recipe with this hole in place of one of its own, from 0. */
    public Recipe in(Recipe recipe, int number) {
        List<FormulaHole> holes = new ArrayList<>(of(recipe).orElse(List.of()));
        holes.set(number, this);
        return in(recipe, holes);
    }

    /** The recipe without one of its holes, from 0. */
    public static Recipe without(Recipe recipe, int number) {
        List<FormulaHole> holes = new ArrayList<>(of(recipe).orElse(List.of()));
        holes.remove(number);
        return in(recipe, holes);
    }

    /**
     * The recipe with one round hole more, where there is room for it nearest to the middle of the panel.
     *
     * @throws IllegalArgumentException where there is none
     */
    public static Recipe oneMore(Recipe recipe) {
        List<FormulaHole> holes = new ArrayList<>(of(recipe).orElse(List.of())), places = new ArrayList<>();
        for (int i = -REACH; i <= REACH; i++) {
            for (int j = -REACH; j <= REACH; j++) {
                FormulaHole place = round(STEP * i, STEP * j, DIAMETER);
                if (holes.stream().noneMatch(place::meets)) places.add(place);
            }
        }
        places.sort(Comparator.comparingDouble(h -> Math.hypot(h.along, h.across)));
        holes.add(null);
        for (FormulaHole place : places) {
            holes.set(holes.size() - 1, place);
            try {
                in(recipe, List.of(place));              // on the panel at all: soon said, where to ask for it among many holes takes long
                return in(recipe, holes);
            } catch (IllegalArgumentException e) {
                // no room here
            }
        }
        throw new IllegalArgumentException("there is no room for another hole: move one, or make one smaller");
    }

    /** Whether the boxes round both meet. */
    private boolean meets(FormulaHole other) {
        return Math.abs(along - other.along) <= (length + other.length) / 2 && Math.abs(across - other.across) <= (width + other.width) / 2;
    }

    private static Optional<PanelWords.Key> key(PanelWords.Kind<?> kind) {
        return kind.keys().stream().filter(k -> k.measure() == PanelWords.Measure.HOLES).findFirst();
    }
}
