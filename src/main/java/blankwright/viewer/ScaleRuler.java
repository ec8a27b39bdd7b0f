package blankwright.viewer;

import blankwright.picture.Tints;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.LengthStyle;
import blankwright.viewer.model.MapKind;
import java.util.OptionalDouble;
import javafx.geometry.VPos;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/** The colours with their numbers along the front edge of the bench; its end is dragged to set how much the strongest colour means. */
final class ScaleRuler extends Pane {
    private static final double SIDE = 108, BAND = 20, HIGH = 46;

    private final Bench bench;
    private final Pointing pointing;
    private final Canvas canvas = new Canvas();
    private double dragFrom, dragEnd;

    ScaleRuler(Bench bench, Pointing pointing) {
        this.bench = bench;
        this.pointing = pointing;
        canvas.widthProperty().bind(widthProperty());
        canvas.heightProperty().bind(pointing.lettersProperty().multiply(HIGH));
        canvas.setMouseTransparent(true);
        getChildren().add(canvas);
        minHeightProperty().bind(canvas.heightProperty());
        prefHeightProperty().bind(canvas.heightProperty());
        setMinWidth(300);
        getStyleClass().add("scale");
        setFocusTraversable(true);
        setCursor(Cursor.H_RESIZE);
        setAccessibleText("The colour scale. Left and right change what the strongest colour means, Home gives the paper's scale back.");
        widthProperty().addListener((o, was, is) -> draw());
        canvas.heightProperty().addListener((o, was, is) -> draw());
        pointing.darkProperty().addListener((o, was, is) -> draw());
        focusedProperty().addListener((o, was, is) -> draw());
        bench.tintsProperty().addListener((o, was, is) -> draw());
        bench.placeProperty().addListener((o, was, is) -> draw());
        bench.styleProperty().addListener((o, was, is) -> draw());
        pointing.greyProperty().addListener((o, was, is) -> draw());
        setOnMousePressed(e -> {
            requestFocus();
            Tints now = bench.tintsProperty().get();
            dragFrom = e.getX();
            dragEnd = now == null ? 0 : end(now);
        });
        setOnMouseDragged(e -> {
            if (dragEnd != 0) to(dragEnd * Math.pow(1.006, dragFrom - e.getX()), this);
        });
        setOnMouseReleased(e -> bench.letGo());
        setOnMouseClicked(e -> {
            if (e.getClickCount() == 2) bench.end(OptionalDouble.empty(), null);
        });
        setOnKeyPressed(e -> {
            Tints now = bench.tintsProperty().get();
            if (now == null) return;
            switch (e.getCode()) {
                case LEFT -> to(end(now) * 1.1, null);
                case RIGHT -> to(end(now) / 1.1, null);
                case HOME -> bench.end(OptionalDouble.empty(), null);
                default -> {
                    return;
                }
            }
            e.consume();
        });
    }

    /** What dragging sets: the end of a scale centred on zero, the thinnest of the sheet's. */
    private double end(Tints tints) {
        return bench.mapProperty().get() == MapKind.THICKNESS ? 1 - tints.low() : tints.high();
    }

    private void to(double end, Object grip) {
        double value = switch (bench.mapProperty().get()) {
            case WORK -> Math.max(0.0025, Math.min(1, end));
            case THICKNESS -> 1 - Math.max(0.01, Math.min(0.9, end));
            case CURVATURE -> Math.max(0.05, Math.min(1e4, end));
            case LIMIT, BUCKLING -> Math.max(0.05, Math.min(10, end));
        };
        bench.end(OptionalDouble.of(round(value)), grip);
    }

    /** Two digits, so that the numbers at the colours can be read. */
    private static double round(double value) {
        double step = Math.pow(10, Math.floor(Math.log10(value)) - 1);
        return Math.round(value / step) * step;
    }

    private void draw() {
        GraphicsContext g = canvas.getGraphicsContext2D();
        double w = getWidth(), size = pointing.lettersProperty().get(), aside = SIDE * size, band = BAND * size;
        g.clearRect(0, 0, w, canvas.getHeight());
        Tints tints = bench.tintsProperty().get();
        if (tints == null || w < 2 * aside + 50) return;
        Tints seen = pointing.greyProperty().get() ? tints.grey() : tints;
        MapKind kind = bench.mapProperty().get();
        double left = aside, right = w - aside;
        for (int c = 0; c < tints.classes(); c++) {
            double from = c == 0 ? left : left + (right - left) * tints.share(tints.boundary(c - 1));
            double to = c == tints.classes() - 1 ? right : left + (right - left) * tints.share(tints.boundary(c));
            g.setFill(Palette.colour(seen.colour(c)));
            g.fillRect(from, 4, to - from, band);
        }
        g.setStroke(isFocused() ? Marks.FOCUS : Color.gray(0.35));
        g.setLineWidth(isFocused() ? 3 : 1);
        g.strokeRect(left, 4, right - left, band);
        g.setFill(pointing.darkProperty().get() ? Color.gray(0.9) : Color.gray(0.12));
        g.setFont(Font.font(12 * size));
        g.setTextBaseline(VPos.CENTER);
        g.setTextAlign(TextAlignment.CENTER);
        double last = -1000;
        for (int i = 0; i < tints.classes() - 1; i++) {
            double x = left + (right - left) * tints.share(tints.boundary(i));
            if (x - last < 44 * size) continue;
            last = x;
            g.fillText(BlankPane.number(kind, tints.boundary(i)), x, band + 14 * size);
        }
        boolean metric = bench.styleProperty().get() == LengthStyle.MM;
        String[] words = switch (kind) {
            case WORK -> new String[] {"shrink", "stretch", metric ? "mm on 100" : "in on 100"};
            case THICKNESS -> new String[] {"thinner", "thicker", "of the sheet"};
            case CURVATURE -> new String[] {"saddle", "bowl", metric ? "in 100 × 100" : "in 3.94 × 3.94"};
            case LIMIT -> new String[] {"safe", "splits", "of the limit"};
            case BUCKLING -> new String[] {"stands", "gives way", "× what it bears"};
        };
        g.setTextAlign(TextAlignment.RIGHT);
        g.fillText(words[0], left - 8, 14 * size);
        g.setTextAlign(TextAlignment.LEFT);
        g.fillText(words[1], right + 8, 14 * size);
        g.fillText(words[2], right + 8, band + 14 * size);
        if (bench.placeProperty().get() == null || bench.laidProperty().get() == null) return;
        double value = bench.laidProperty().get().value(kind, bench.placeProperty().get());
        double x = left + (right - left) * tints.share(value);
        g.setFill(Color.BLACK);
        g.fillPolygon(new double[] {x - 6, x + 6, x}, new double[] {0, 0, 9}, 3);
        g.setStroke(Color.WHITE);
        g.setLineWidth(1);
        g.strokePolygon(new double[] {x - 6, x + 6, x}, new double[] {0, 0, 9}, 3);
    }
}
