package blankwright.viewer;

import javafx.beans.value.ObservableValue;
import javafx.event.EventHandler;
import javafx.scene.Node;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseEvent;

/**
 * What a control teaches: read out by a screen reader, shown to who rests the pointer on it. Shown from a tooltip that is made when the
 * pointer first comes: a window has some sixty, and making them all takes part of its start.
 */
final class Lesson {
    private static final String TAUGHT = "lesson";

    private Lesson() { }

    /** Also in place of what it taught before. */
    static void of(Node node, String words) {
        node.setAccessibleHelp(words);
        teach(node);
    }

    /** One that changes. */
    static void of(Node node, ObservableValue<String> words) {
        node.accessibleHelpProperty().bind(words);
        teach(node);
    }

    private static void teach(Node node) {
        if (node.getProperties().putIfAbsent(TAUGHT, true) != null) return;
        node.addEventHandler(MouseEvent.MOUSE_ENTERED, new EventHandler<>() {
            @Override public void handle(MouseEvent e) {
                node.removeEventHandler(MouseEvent.MOUSE_ENTERED, this);
                Tooltip tooltip = new Tooltip();
                tooltip.textProperty().bind(node.accessibleHelpProperty());
                Tooltip.install(node, tooltip);
            }
        });
    }
}
