package blankwright.project;

import blankwright.shape.Panel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One measure of a panel by formula, under the word a recipe has for it.
 *
 * @param kind of number; a word is one of {@code choices}
 * @param number mm or rad; NaN for a word
 * @param text the word; empty for a number
 */
public record FormulaMeasure(String word, Kind kind, double number, String text, List<String> choices) {
    public enum Kind { LENGTH, ANGLE, WORD }

    public FormulaMeasure {
        choices = List.copyOf(choices);
    }

    /** Those of a recipe's panel in their order, all but its {@link FormulaHole holes}; none for a mesh file. */
    public static List<FormulaMeasure> of(Recipe recipe) {
        List<FormulaMeasure> measures = new ArrayList<>();
        if (!(recipe.source() instanceof Source.OfPanel formula)) return measures;
        PanelWords.Kind<?> panel = PanelWords.of(formula.panel());
        Map<String, Object> values = panel.values(formula.panel());
        for (PanelWords.Key key : panel.keys()) {
            Object value = values.get(key.word());
            switch (key.measure()) {
                case LENGTH -> measures.add(new FormulaMeasure(key.word(), Kind.LENGTH, (Double) value, "", List.of()));
                case ANGLE -> measures.add(new FormulaMeasure(key.word(), Kind.ANGLE, (Double) value, "", List.of()));
                case WORD -> measures.add(new FormulaMeasure(key.word(), Kind.WORD, Double.NaN, (String) value, key.choices()));
                case HOLES -> { }
            }
        }
        return measures;
    }

    /**
     * The recipe with another number for this measure.
     *
     * @throws IllegalArgumentException where it gives no panel, with the range
     */
    public Recipe in(Recipe recipe, double other) {
        return with(recipe, word, other);
    }

    /** The recipe with another word for this measure. */
    public Recipe in(Recipe recipe, String other) {
        return with(recipe, word, other);
    }

    static Recipe with(Recipe recipe, String word, Object other) {
        if (!(recipe.source() instanceof Source.OfPanel formula)) throw new IllegalArgumentException(word
                + ": a mesh file brings its own measures");
        PanelWords.Kind<?> panel = PanelWords.of(formula.panel());
        Map<String, Object> values = new LinkedHashMap<>(panel.values(formula.panel()));
        if (values.replace(word, other) == null) throw new IllegalArgumentException(panel.word() + " has no " + word);
        Panel made = panel.panel(new PanelWords.Values(values));
        return recipe.withSource(new Source.OfPanel(made));
    }
}
