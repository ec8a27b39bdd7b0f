package blankwright.viewer;

import javafx.scene.Group;
import javafx.scene.paint.Color;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/** Marks laid over a picture that stay the same size: the place pointed at, where a tape begins, a zone's number. */
final class Marks extends Group {
    static final Color TAPE = Color.web("#c8102e");
    static final Color CHOSEN = Color.web("#111111");
    static final Color LINE = Color.web("#0b6e4f");

    /** Round what has the keyboard. */
    static final Color FOCUS = Color.web("#0b5cad");

    Marks() {
        setManaged(false);
        setMouseTransparent(true);
    }

    void clear() {
        getChildren().clear();
    }

    void ring(double x, double y) {
        Circle white = new Circle(x, y, 7, Color.TRANSPARENT), black = new Circle(x, y, 7, Color.TRANSPARENT);
        white.setStroke(Color.WHITE);
        white.setStrokeWidth(4);
        black.setStroke(Color.BLACK);
        black.setStrokeWidth(1.6);
        getChildren().addAll(white, black);
    }

    /** @param xy x, y, x, y ..., at least two points */
    void path(double[] xy) {
        Polyline line = new Polyline(xy);
        line.setStroke(TAPE);
        line.setStrokeWidth(3);
        getChildren().add(line);
    }

    /** Where the sheet is held. */
    void clamp(double x, double y, double radius) {
        Circle white = new Circle(x, y, radius, Color.TRANSPARENT), dashed = new Circle(x, y, radius, Color.TRANSPARENT);
        white.setStroke(Color.WHITE);
        white.setStrokeWidth(4);
        dashed.setStroke(CHOSEN);
        dashed.setStrokeWidth(2);
        dashed.getStrokeDashArray().setAll(6.0, 4.0);
        getChildren().addAll(white, dashed);
    }

    /** The end of a seam, to be taken and moved. */
    void end(double x, double y) {
        Circle dot = new Circle(x, y, 5, Color.WHITE);
        dot.setStroke(CHOSEN);
        dot.setStrokeWidth(2);
        getChildren().add(dot);
    }

    void pin(double x, double y) {
        Circle dot = new Circle(x, y, 5, TAPE);
        dot.setStroke(Color.WHITE);
        dot.setStrokeWidth(1.5);
        getChildren().add(dot);
    }

    void number(double x, double y, String words) {
        Text text = new Text(words);
        text.setFont(Font.font(18));
        double wide = text.getLayoutBounds().getWidth(), high = text.getLayoutBounds().getHeight();
        text.setX(x - wide / 2);
        text.setY(y + high / 3);
        Rectangle plate = new Rectangle(x - wide / 2 - 5, y - high / 2, wide + 10, high);
        plate.setFill(Color.WHITE);
        plate.setStroke(CHOSEN);
        plate.setArcWidth(8);
        plate.setArcHeight(8);
        getChildren().addAll(plate, text);
    }
}
