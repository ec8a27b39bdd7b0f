package blankwright.viewer;

import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonType;
import javafx.scene.control.Dialog;
import javafx.scene.control.DialogPane;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.stage.Window;
import org.kordamp.ikonli.feather.Feather;

/** What buttons and words look like, and questions: like the window they belong to, its letters, its colours, light or dark. */
final class Looks {
    private Looks() { }

    /** Words that break where the room ends and are never cut off. */
    static <L extends Label> L wrapped(L label) {
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    /** @param most width, px */
    static Label wrapped(String words, double most) {
        Label label = wrapped(new Label(words));
        label.setMaxWidth(most);
        return label;
    }

    /** @param icon null for none */
    static Button button(String words, Feather icon, String lesson, Runnable what) {
        Button button = new Button(words);
        if (icon != null) button.setGraphic(Icons.of(icon));
        Lesson.of(button, lesson);
        button.setOnAction(e -> what.run());
        return button;
    }

    /** What an answer of a dialog does; the dialog has it. */
    static void answer(Dialog<?> dialog, ButtonType answer, String lesson) {
        Lesson.of(dialog.getDialogPane().lookupButton(answer), lesson);
    }

    static void dress(Dialog<?> dialog, Window owner) {
        dialog.initOwner(owner);
        Parent bench = owner.getScene().getRoot();
        DialogPane pane = dialog.getDialogPane();
        pane.getStylesheets().setAll(owner.getScene().getStylesheets());
        pane.setStyle(bench.getStyle());
        pane.getStyleClass().addAll(bench.getStyleClass().stream().filter(c -> c.equals("bench") || c.equals("dark")).toList());
    }
}
