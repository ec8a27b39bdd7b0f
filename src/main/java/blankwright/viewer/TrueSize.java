package blankwright.viewer;

import blankwright.num.Sentence;
import blankwright.viewer.model.Bench;
import javafx.geometry.Insets;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.scene.control.Dialog;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Screen;
import javafx.stage.Window;

/** Measures the screen with a bank card: the card is held to the glass and a rectangle made the same size. */
final class TrueSize {
    /** Width and height of a card of form ID-1, mm: ISO/IEC 7810. */
    static final double CARD_WIDE = 85.60, CARD_HIGH = 53.98;
    private static final double ROOM = 1.1;             // of the glass, for the card
    private static final double WORDS = 520;            // px

    private TrueSize() { }

    /** Pixels for each mm by what the system says of the screen, which is often wrong. */
    static double unmeasured() {
        return Screen.getPrimary().getDpi() / 25.4;
    }

    /** Asks, and remembers the answer; true where there was one. */
    static boolean measure(Bench bench, Window owner) {
        double now = bench.settings().get("screen", unmeasured());
        Slider slider = new Slider(2, 16, now);
        slider.setBlockIncrement(0.01);
        slider.setAccessibleText("Size of the card on the screen");
        Region card = new Region();
        card.getStyleClass().add("card");
        card.maxWidthProperty().bind(slider.valueProperty().multiply(CARD_WIDE));
        card.maxHeightProperty().bind(slider.valueProperty().multiply(CARD_HIGH));
        card.minWidthProperty().bind(card.maxWidthProperty());
        card.minHeightProperty().bind(card.maxHeightProperty());
        StackPane glass = new StackPane(card);
        glass.setMinSize(CARD_WIDE * now * ROOM, CARD_HIGH * now * ROOM);
        slider.setMaxWidth(WORDS);              // where it is under the hand it must not grow with the window
        Label words = Looks.wrapped(Sentence.say("Hold any bank card flat to the screen and move the slider (or press the arrow keys) until"
                + " the rectangle is just as wide. Cards are %s wide the world over. After that, true size is true on this screen.",
                Sentence.length(CARD_WIDE, 2)).text(bench.styleProperty().get()), WORDS);
        Dialog<ButtonType> dialog = new Dialog<>();
        Looks.dress(dialog, owner);
        dialog.setTitle("Measure this screen");
        VBox box = new VBox(12, words, slider, glass);
        box.setPadding(new Insets(16));
        dialog.getDialogPane().setContent(box);
        ButtonType fit = new ButtonType("It fits", ButtonBar.ButtonData.OK_DONE);
        dialog.getDialogPane().getButtonTypes().addAll(fit, ButtonType.CANCEL);
        Lesson.of(slider, "Makes the rectangle wider or narrower; the arrow keys do it in small steps.");
        Looks.answer(dialog, fit, "Keeps this size for true size, on this screen.");
        Looks.answer(dialog, ButtonType.CANCEL, "Leaves true size as it was.");
        slider.requestFocus();
        slider.valueProperty().addListener((o, was, is) -> {        // both edges of the card stay in the window
            glass.setMinSize(Math.max(glass.getMinWidth(), CARD_WIDE * is.doubleValue() * ROOM),
                    Math.max(glass.getMinHeight(), CARD_HIGH * is.doubleValue() * ROOM));
            Window window = dialog.getDialogPane().getScene().getWindow();
            if (window != null) window.sizeToScene();
        });
        boolean fits = dialog.showAndWait().filter(b -> b.getButtonData().isDefaultButton()).isPresent();
        if (fits) bench.settings().put("screen", slider.getValue());
        return fits;
    }
}
