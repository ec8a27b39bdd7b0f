package blankwright.viewer;

import javafx.scene.Parent;
import javafx.scene.control.Dialog;
import javafx.scene.control.DialogPane;
import javafx.stage.Window;

/** Questions look like the window they belong to: its letters, its colours, light or dark. */
final class Looks {
    private Looks() { }

    static void dress(Dialog<?> dialog, Window owner) {
        dialog.initOwner(owner);
        Parent bench = owner.getScene().getRoot();
        DialogPane pane = dialog.getDialogPane();
        pane.getStylesheets().setAll(owner.getScene().getStylesheets());
        pane.setStyle(bench.getStyle());
        pane.getStyleClass().addAll(bench.getStyleClass().stream().filter(c -> c.equals("bench") || c.equals("dark")).toList());
    }
}
