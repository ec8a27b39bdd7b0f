package blankwright.viewer;

import blankwright.num.Explained;
import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.project.Recipe;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.LengthStyle;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import javafx.beans.property.ObjectProperty;
import javafx.scene.Cursor;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;

/** A length, or an angle, in a sentence: typed over, dragged sideways, or nudged with the arrow keys up and down. */
class LengthWord extends TextField {
    private final ObjectProperty<LengthStyle> style;
    private final double step;
    private final boolean anySign;
    private final String none;
    private final Bench bench;
    private final BiFunction<Recipe, OptionalDouble, Recipe> how;
    private OptionalDouble value = OptionalDouble.empty();
    private double dragFrom, dragValue;
    private boolean dragging;

    /**
     * @param none the word for no length, or empty where there must be one
     * @param step of one nudge, mm
     */
    LengthWord(Bench bench, String name, String lesson, String none, double step, BiFunction<Recipe, OptionalDouble, Recipe> how) {
        this(bench, name, lesson, none, step, false, how);
    }

    /** @param anySign true where it may lie on either side of zero */
    LengthWord(Bench bench, String name, String lesson, String none, double step, boolean anySign,
            BiFunction<Recipe, OptionalDouble, Recipe> how) {
        this.bench = bench;
        this.anySign = anySign;
        this.style = bench.styleProperty();
        this.step = step;
        this.none = none;
        this.how = how;
        getStyleClass().add("word");
        setAccessibleText(name);
        Lesson.of(this, lesson + " Type it, drag it sideways, or press the up and down keys.");
        textProperty().addListener((o, was, is) -> setPrefColumnCount(Math.max(4, is.length())));
        setOnAction(e -> typed());
        focusedProperty().addListener((o, was, is) -> {
            if (!is && pending()) typed();
        });
        style.addListener((o, was, is) -> show(value));
        addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.UP || e.getCode() == KeyCode.DOWN) {
                nudge(e.getCode() == KeyCode.UP ? 1 : -1);
                e.consume();
            } else if (e.getCode() == KeyCode.ESCAPE) {
                show(value);
            }
        });
        setCursor(Cursor.H_RESIZE);
        addEventFilter(MouseEvent.MOUSE_PRESSED, e -> {
            dragFrom = e.getScreenX();
            dragValue = value.orElse(0);
            dragging = false;
        });
        addEventFilter(MouseEvent.MOUSE_DRAGGED, e -> {
            double steps = Math.round((e.getScreenX() - dragFrom) / 6);
            if (!dragging && steps == 0) return;
            dragging = true;
            take(stepped(dragValue + steps * step()), this);
            e.consume();
        });
        addEventFilter(MouseEvent.MOUSE_RELEASED, e -> {
            if (dragging) bench.letGo();
        });
    }

    /** Something is typed and not yet taken. */
    boolean pending() {
        return !getText().equals(words());
    }

    void show(OptionalDouble mm) {
        value = mm;
        setText(words());
    }

    private String words() {
        return value.isPresent() ? typed(value.getAsDouble()) : none;
    }

    private void nudge(int by) {
        take(stepped(value.orElse(0) + by * step()), null);
    }

    /** The nearest whole number of steps. */
    private double stepped(double to) {
        double whole = Math.round(to / step()) * step();
        return anySign ? whole : Math.max(0, whole);
    }

    private double step() {
        return isAngle() ? step : style.get().step(step);
    }

    /** True where it is no length. */
    boolean isAngle() {
        return false;
    }

    /** What a person may type and finds again. */
    String typed(double number) {
        return style.get().typed(number);
    }

    /** @throws IllegalArgumentException saying how to write it */
    double read(String text) {
        return Lengths.parse(text, style.get() == LengthStyle.MM ? LengthUnit.MM : LengthUnit.IN);
    }

    private void typed() {
        String text = getText().strip();
        if (!pending()) return;
        if (!none.isEmpty() && (text.isEmpty() || text.equals(none))) {
            take(0, null);
            return;
        }
        try {
            take(read(text), null);
        } catch (IllegalArgumentException e) {
            bench.warn(Explained.words(e));
        }
        show(value);
    }

    /** 0 is none, where there may be none. */
    private void take(double number, Object grip) {
        bench.change(r -> how.apply(r, number == 0 && !none.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number)), grip);
    }
}
