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
        glass.setMinSize(CARD_WIDE * now * 1.3, CARD_HIGH * now * 1.3);
        Label words = Looks.wrapped(Sentence.say("Hold any bank card flat to the screen and move the slider (or press the arrow keys) until"
                + " the rectangle is just as wide. Cards are %s wide the world over. After that, true size is true on this screen.",
                Sentence.length(CARD_WIDE, 2)).text(bench.styleProperty().get()), 520);
        Dialog<ButtonType> dialog = new Dialog<>();
        Looks.dress(dialog, owner);
        dialog.setTitle("Measure this screen");
        VBox box = new VBox(12, words, glass, slider);
        box.setPadding(new Insets(16));
        dialog.getDialogPane().setContent(box);
        dialog.getDialogPane().getButtonTypes().addAll(new ButtonType("It fits", ButtonBar.ButtonData.OK_DONE), ButtonType.CANCEL);
        slider.requestFocus();
        boolean fits = dialog.showAndWait().filter(b -> b.getButtonData().isDefaultButton()).isPresent();
        if (fits) bench.settings().put("screen", slider.getValue());
        return fits;
    }
}
