package blankwright.viewer;

import blankwright.project.FormulaMeasure;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Work;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import javafx.geometry.Pos;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Control;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;

/** What is seldom changed: the measures and holes of a panel by formula, how fine its triangles are, notes for the bench. */
final class DetailLine extends FlowPane {
    private final Bench bench;
    private final Map<String, Control> measures = new LinkedHashMap<>();
    private final List<HBox> formula = new ArrayList<>();
    private final LengthWord chord, detail;
    private final HBox fine, thin;
    private final HoleWords holes;
    private final TextField notes = new TextField();
    private final CheckBox sensitivity = new CheckBox("try small errors");
    private boolean showing;

    DetailLine(Bench bench) {
        super(10, 4);
        this.bench = bench;
        getStyleClass().add("order");
        setAlignment(Pos.CENTER_LEFT);
        holes = new HoleWords(bench);
        chord = new LengthWord(bench, "Largest distance of the triangles from the true shape",
                "How far the triangles may lie from the true shape.", "", 0.05, (r, mm) -> r.withChord(mm.orElse(0)));
        detail = new LengthWord(bench, "How far a thinned mesh may stray",
                "How far the surface may stray where a dense mesh is thinned out; as needed:"
                + " only where it is far denser than any work needs.", "as needed", 0.05, (r, mm) -> r.withDetail(mm));
        fine = OrderLine.phrase("triangles within", chord, "of the shape");
        thin = OrderLine.phrase("thinned out within", detail);
        notes.getStyleClass().add("word");
        notes.setPrefColumnCount(24);
        notes.setPromptText("nothing");
        notes.setAccessibleText("Notes for the bench");
        Lesson.of(notes, "What the paper and the work sheet shall say besides.");
        notes.setOnAction(e -> noted());
        notes.focusedProperty().addListener((o, was, is) -> {
            if (!is) noted();
        });
        Lesson.of(sensitivity, "Lays the panel out several times more to tell how far outline and crown move with weld shrink,"
                + " another"
                + " hardening of the metal, or scan noise. What comes of it stands under what was found.");
        sensitivity.selectedProperty().addListener((o, was, is) -> {
            if (!showing) bench.change(r -> r.withSensitivity(is));
        });
        bench.workProperty().addListener((o, was, is) -> show(is));
    }

    private void noted() {
        Work work = bench.workProperty().get();
        if (work != null && !notes.getText().strip().equals(work.recipe().notes().strip().replaceAll("\\s+", " ")))
            bench.change(r -> r.withNotes(notes.getText().strip()));
    }

    private void show(Work work) {
        if (work == null) return;
        showing = true;
        Recipe recipe = work.recipe();
        List<FormulaMeasure> now = FormulaMeasure.of(recipe);
        if (!List.copyOf(measures.keySet()).equals(now.stream().map(FormulaMeasure::word).toList()) || getChildren()
                .isEmpty()) build(recipe, now);
        for (FormulaMeasure measure : now) {
            if (measures.get(measure.word()) instanceof LengthWord word) word.show(OptionalDouble.of(measure.number()));
            else if (measures.get(measure.word()) instanceof WordChoice word) word.setValue(measure.text());
        }
        holes.show(work);
        chord.show(OptionalDouble.of(recipe.chord()));
        detail.show(recipe.detail());
        if (!notes.isFocused()) notes.setText(recipe.notes().strip().replaceAll("\\s+", " "));
        sensitivity.setSelected(recipe.sensitivity());
        showing = false;
    }

    private static final class WordChoice extends ChoiceBox<String> { }

    private void build(Recipe recipe, List<FormulaMeasure> now) {
        measures.clear();
        formula.clear();
        for (FormulaMeasure measure : now) {
            String called = measure.word().replace('-', ' ');
            Control word = switch (measure.kind()) {
                case LENGTH -> new LengthWord(bench, "Measure: " + called, "The panel's " + called + ".", "", step(measure.number()), true,
                        (r, mm) -> measure.in(r, mm.orElseThrow()));
                case ANGLE -> new AngleWord(bench, "Measure: " + called, "The panel's " + called + ".", (r, rad) -> measure.in(r,
                        rad.orElseThrow()));
                case WORD -> choice(measure);
            };
            word.setAccessibleText("Measure: " + called);
            measures.put(measure.word(), word);
            formula.add(OrderLine.phrase(called, word));
        }
        getChildren().setAll(formula);
        getChildren().addAll(holes.nodes());
        getChildren().addAll(recipe.source() instanceof Source.OfPanel ? fine : thin, OrderLine.phrase("notes:", notes), sensitivity);
    }

    private WordChoice choice(FormulaMeasure measure) {
        WordChoice box = new WordChoice();
        box.getItems().setAll(measure.choices());
        box.getStyleClass().add("word");
        Lesson.of(box, "The panel's " + measure.word().replace('-', ' ') + ".");
        box.valueProperty().addListener((o, was, is) -> {
            if (!showing && is != null && !bench.change(r -> measure.in(r, is))) show(bench.workProperty().get());
        });
        return box;
    }

    /** A tenth of the length or so: 10 mm for 330, 0.1 mm for 5. */
    private static double step(double mm) {
        return Math.abs(mm) < 1 ? 1 : Math.pow(10, Math.floor(Math.log10(Math.abs(mm))) - 1);
    }
}
