package blankwright.viewer;

import blankwright.project.FormulaHole;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.util.StringConverter;
import org.kordamp.ikonli.feather.Feather;

/** The holes of a panel by formula: which of them, where it is, how large. */
final class HoleWords {
    private final Bench bench;
    private final ChoiceBox<Integer> which = new ChoiceBox<>();
    private final ChoiceBox<Boolean> shape = new ChoiceBox<>();
    private final LengthWord along, across, diameter, length, width;
    private final List<Node> one, round, oblong;
    private final List<Node> nodes = new ArrayList<>();
    private boolean showing;

    /** A hole with another measure. */
    private interface Changed {
        FormulaHole of(FormulaHole hole, double mm);
    }

    HoleWords(Bench bench) {
        this.bench = bench;
        which.getStyleClass().add("word");
        which.setAccessibleText("Hole to be changed");
        Lesson.of(which, "Which hole the measures beside it are of.");
        which.setConverter(words(number -> number == null ? "" : "hole " + (number + 1) + " of " + which.getItems().size()));
        which.valueProperty().addListener((o, was, is) -> {
            if (!showing) show(bench.workProperty().get());
        });
        shape.getStyleClass().add("word");
        shape.setAccessibleText("Hole: round or oblong");
        Lesson.of(shape, "Round, or oblong with half circles for ends.");
        shape.getItems().setAll(true, false);
        shape.setConverter(words(isRound -> isRound == null ? "" : isRound ? "round" : "oblong"));
        shape.valueProperty().addListener((o, was, is) -> {
            if (!showing && is != null) change(is ? h -> FormulaHole.round(h.along(), h.across(), h.width())
                    : h -> new FormulaHole(h.along(), h.across(), 2 * h.width(), h.width()));
        });
        along = word("along", "How far the hole's middle is from the panel's middle along the panel, measured on the skin.",
                (h, mm) -> new FormulaHole(mm, h.across(), h.length(), h.width()));
        across = word("across", "How far the hole's middle is from the panel's middle across the panel, measured on the skin.",
                (h, mm) -> new FormulaHole(h.along(), mm, h.length(), h.width()));
        diameter = word("diameter", "The hole's diameter.", (h, mm) -> FormulaHole.round(h.along(), h.across(), mm));
        length = word("length", "The hole's length, along the panel.", (h, mm) -> new FormulaHole(h.along(), h.across(), mm, h.width()));
        width = word("width", "The hole's width, across the panel.", (h, mm) -> new FormulaHole(h.along(), h.across(), h.length(), mm));
        Button away = Looks.button("", Feather.X, "Takes this hole away.", () -> {
            int number = which.getValue();
            bench.change(r -> FormulaHole.without(r, number));
        });
        away.setAccessibleText("Take this hole away");
        away.getStyleClass().add("small");
        Button add = Looks.button("Add a hole", Feather.PLUS, "One hole more, where there is room for it nearest to the middle of the panel.", this::add);
        add.getStyleClass().add("small");
        round = List.of(OrderLine.phrase("across it", diameter));
        oblong = List.of(OrderLine.phrase("length", length), OrderLine.phrase("width", width));
        one = List.of(which, shape, OrderLine.phrase("along", along), OrderLine.phrase("across", across), away);
        nodes.addAll(one.subList(0, 4));
        nodes.addAll(round);
        nodes.addAll(oblong);
        nodes.addAll(List.of(away, add));
    }

    /** Phrase after phrase, to be put into a line. */
    List<Node> nodes() {
        return List.copyOf(nodes);
    }

    private static <T> StringConverter<T> words(Function<T, String> of) {
        return new StringConverter<>() {
            @Override public String toString(T value) {
                return of.apply(value);
            }

            @Override public T fromString(String text) {
                throw new IllegalStateException("chosen, never typed: " + text);
            }
        };
    }

    private LengthWord word(String name, String lesson, Changed how) {
        return new LengthWord(bench, "Hole: " + name, lesson, "", 5, true, (r, mm) -> {
            int number = which.getValue();
            return how.of(FormulaHole.of(r).orElseThrow().get(number), mm.orElseThrow()).in(r, number);
        });
    }

    private void change(UnaryOperator<FormulaHole> how) {
        int number = which.getValue();
        if (!bench.change(r -> how.apply(FormulaHole.of(r).orElseThrow().get(number)).in(r, number))) show(bench.workProperty().get());
    }

    private void add() {
        if (!bench.change(FormulaHole::oneMore)) return;
        which.setValue(which.getItems().size() - 1);
    }

    /** Nothing where the panel can have no holes. */
    void show(Work work) {
        List<FormulaHole> holes = work == null ? null : FormulaHole.of(work.recipe()).orElse(null);
        shown(nodes, holes != null);
        if (holes == null) return;
        showing = true;
        int chosen = which.getValue() == null ? 0 : Math.min(which.getValue(), holes.size() - 1);
        if (which.getItems().size() != holes.size()) which.getItems().setAll(IntStream.range(0, holes.size()).boxed().toList());
        boolean any = !holes.isEmpty();
        FormulaHole hole = any ? holes.get(Math.max(0, chosen)) : null;
        boolean isRound = any && hole.isRound();
        shown(one, any);
        shown(round, any && isRound);
        shown(oblong, any && !isRound);
        which.setValue(any ? Math.max(0, chosen) : null);
        if (any) {
            shape.setValue(isRound);
            put(along, hole, FormulaHole::along);
            put(across, hole, FormulaHole::across);
            put(diameter, hole, FormulaHole::length);
            put(length, hole, FormulaHole::length);
            put(width, hole, FormulaHole::width);
        }
        showing = false;
    }

    private static void put(LengthWord word, FormulaHole hole, ToDoubleFunction<FormulaHole> measure) {
        word.show(OptionalDouble.of(measure.applyAsDouble(hole)));
    }

    private static void shown(List<Node> nodes, boolean so) {
        for (Node node : nodes) {
            node.setVisible(so);
            node.setManaged(so);
        }
    }
}
