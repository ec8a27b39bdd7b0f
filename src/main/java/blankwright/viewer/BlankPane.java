package blankwright.viewer;

import blankwright.drawing.Entity;
import blankwright.drawing.Layer;
import blankwright.picture.Tints;
import blankwright.project.Clamps;
import blankwright.shop.Amounts;
import blankwright.shop.DrawnTape;
import blankwright.shop.TapeLine;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Border;
import blankwright.viewer.model.Contour;
import blankwright.viewer.model.FirstAnswer;
import blankwright.viewer.model.FlatView;
import blankwright.viewer.model.Ink;
import blankwright.viewer.model.Laid;
import blankwright.viewer.model.LengthStyle;
import blankwright.viewer.model.MapKind;
import blankwright.viewer.model.Numbers;
import blankwright.viewer.model.Painting;
import blankwright.viewer.model.Place;
import blankwright.viewer.model.Skin;
import blankwright.viewer.model.Ticks;
import blankwright.viewer.model.WorkRow;
import blankwright.viewer.model.ZoneRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.ListChangeListener;
import javafx.geometry.VPos;
import javafx.scene.AmbientLight;
import javafx.scene.Group;
import javafx.scene.ParallelCamera;
import javafx.scene.SceneAntialiasing;
import javafx.scene.SubScene;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import javafx.scene.transform.Affine;

/**
 * The blank on the sheet: its colours, all that is cut and marked, a ruler along two sides; at true size where the screen has been
 * measured.
 */
final class BlankPane extends Pane {
    private static final double RULER = 26;             // px, with letters of the usual size
    private static final double CAPITAL = 0.73;         // of the font size: height of a capital of common screen fonts
    private static final double FINE = 0.5;             // px: points of a line nearer together are left out
    private static final double READABLE = 7;           // px: smaller lettering is left out

    private final Bench bench;
    private final Pointing pointing;
    private final ObjectProperty<FlatView> view = new SimpleObjectProperty<>();
    private final BooleanProperty contours = new SimpleBooleanProperty(true), lettering = new SimpleBooleanProperty(true);
    private final Group skins = new Group();
    private final Affine sheet = new Affine();
    private final SubScene scene;
    private final Canvas ink = new Canvas();
    private final Marks marks = new Marks();
    private final Label early = new Label();
    private final List<PhongMaterial> paints = new ArrayList<>();
    private double u0, v0;
    private double pressX, pressY, lastX, lastY;
    private Laid shown;

    BlankPane(Bench bench, Pointing pointing) {
        this.bench = bench;
        this.pointing = pointing;
        skins.getTransforms().add(sheet);
        AmbientLight light = new AmbientLight(Color.WHITE);
        scene = new SubScene(new Group(skins, light), 100, 100, true, SceneAntialiasing.BALANCED);
        scene.setCamera(new ParallelCamera());
        scene.setManaged(false);
        scene.setMouseTransparent(true);
        scene.widthProperty().bind(widthProperty());
        scene.heightProperty().bind(heightProperty());
        ink.widthProperty().bind(widthProperty());
        ink.heightProperty().bind(heightProperty());
        ink.setManaged(false);
        ink.setMouseTransparent(true);
        early.setLayoutX(RULER + 8);
        early.setLayoutY(8);
        early.getStyleClass().add("exaggerated");
        early.setWrapText(true);
        early.maxWidthProperty().bind(widthProperty().subtract(RULER + 16));
        early.visibleProperty().bind(bench.firstAnswerProperty().isNotNull());
        early.textProperty().bind(Bindings.createStringBinding(() -> bench.firstAnswerProperty().get() == null ? ""
                : bench.firstAnswerProperty().get().words(), bench.firstAnswerProperty()));
        getChildren().addAll(scene, ink, marks, early);
        getStyleClass().add("blank");
        setFocusTraversable(true);
        setAccessibleText("The blank. Arrow keys slide it, plus and minus bring it nearer, F shows all of it, T is true size;"
                + " Alt with the arrow keys moves the place pointed at, Enter lays a tape or cuts a seam there.");
        setMinSize(160, 160);

        bench.laidProperty().addListener((o, was, is) -> show(is, was == null || !was.result().name().equals(is.result().name())));
        bench.firstAnswerProperty().addListener((o, was, is) -> {
            build();
            boolean otherPieces = is != null && is.pieces() != (was == null ? shown.skins().size() : was.pieces());
            if (otherPieces && getWidth() > 2 * ruler()) view.set(FlatView.fitting(is.box(), getWidth() - 2 * ruler(), getHeight() - 2 * ruler()));
        });
        bench.mapProperty().addListener((o, was, is) -> build());
        bench.tintsProperty().addListener((o, was, is) -> paint());
        pointing.greyProperty().addListener((o, was, is) -> paint());
        pointing.darkProperty().addListener((o, was, is) -> soon());
        pointing.lettersProperty().addListener((o, was, is) -> soon());
        bench.placeProperty().addListener((o, was, is) -> mark());
        pointing.fromProperty().addListener((o, was, is) -> mark());
        pointing.path().addListener((ListChangeListener<Place>) c -> mark());
        bench.chosenProperty().addListener((o, was, is) -> choose(is));
        bench.workProperty().addListener((o, was, is) -> soon());
        bench.styleProperty().addListener((o, was, is) -> soon());
        contours.addListener((o, was, is) -> soon());
        lettering.addListener((o, was, is) -> soon());
        view.addListener((o, was, is) -> stand());
        widthProperty().addListener((o, was, is) -> stand());
        heightProperty().addListener((o, was, is) -> stand());
        focusedProperty().addListener((o, was, is) -> soon());
        listen();
    }

    ObjectProperty<FlatView> viewProperty() {
        return view;
    }

    BooleanProperty contoursProperty() {
        return contours;
    }

    BooleanProperty letteringProperty() {
        return lettering;
    }

    /** Only the coloured sheet, nothing drawn on it. */
    void bare(boolean so) {
        ink.setVisible(!so);
    }

    void fit() {
        if (shown != null && getWidth() > ruler()) view.set(FlatView.fitting(shown.box(), getWidth() - 2 * ruler(),
                getHeight() - 2 * ruler()));
    }

    /** As large as on the bench, by the screen's measured pixels for each mm. */
    void trueSize() {
        if (view.get() != null) view.set(view.get().at(bench.settings().get("screen", TrueSize.unmeasured())));
    }

    private void show(Laid laid, boolean anotherPanel) {
        boolean otherPieces = shown == null || shown.skins().size() != laid.skins().size();
        shown = laid;
        double[] box = laid.box();
        u0 = (box[0] + box[2]) / 2;
        v0 = (box[1] + box[3]) / 2;
        if (bench.firstAnswerProperty().get() == null) build();     // else when that goes
        if (anotherPanel || otherPieces || view.get() == null) fit();
        stand();
    }

    private void build() {
        skins.getChildren().clear();
        paints.clear();
        if (shown == null) return;
        for (Painting painting : bench.paintings(shown)) {
            MeshView flat = new MeshView(SkinMesh.blank(painting, u0, v0));
            flat.setCullFace(CullFace.NONE);
            PhongMaterial paint = new PhongMaterial();
            flat.setMaterial(paint);
            paints.add(paint);
            skins.getChildren().add(flat);
        }
        paint();
        stand();
    }

    private void paint() {
        Tints tints = bench.tintsProperty().get();
        if (tints == null || shown == null) return;
        List<Painting> paintings = bench.paintings(shown);
        if (paintings.size() != paints.size()) return;                  // they are built anew in a moment
        var image = Palette.image(pointing.greyProperty().get() ? tints.grey() : tints, 1);
        for (int i = 0; i < paints.size(); i++) {
            Painting painting = paintings.get(i);
            TriangleMesh mesh = (TriangleMesh) ((MeshView) skins.getChildren().get(i)).getMesh();
            if (mesh.getPoints().size() == 3 * painting.vertexCount()) SkinMesh.paint(mesh, painting, tints);
            paints.get(i).setDiffuseMap(image);
        }
        soon();
    }

    private void stand() {
        FlatView now = view.get();
        if (now == null) {
            if (shown != null) fit();
            return;
        }
        sheet.setToTransform(now.perMm(), 0, 0, getWidth() / 2 + now.x(u0), 0, now.perMm(), 0, getHeight() / 2 + now.y(v0), 0, 0, 1, 0);
        soon();
    }

    /** Draws once with the next picture, however often asked, so that lines and colours never part. */
    private void soon() {
        requestLayout();
    }

    @Override
    protected void layoutChildren() {
        super.layoutChildren();
        draw();
    }

    private void draw() {
        GraphicsContext g = ink.getGraphicsContext2D();
        g.clearRect(0, 0, ink.getWidth(), ink.getHeight());
        mark();
        if (shown == null || view.get() == null) return;
        FirstAnswer first = bench.firstAnswerProperty().get();
        if (contours.get() && first == null) contours(g);
        for (Ink.Stroke stroke : first == null ? shown.ink().strokes() : first.strokes()) stroke(g, stroke);
        g.setLineDashes();
        if (first != null) {
            rulers(g);
            return;
        }
        if (lettering.get()) for (Entity.Text text : shown.ink().texts()) text(g, text);
        chosen(g);
        tapes(g);
        rulers(g);
    }

    private double ruler() {
        return RULER * pointing.lettersProperty().get();
    }

    private double x(double u) {
        return getWidth() / 2 + view.get().x(u);
    }

    private double y(double v) {
        return getHeight() / 2 + view.get().y(v);
    }

    private void stroke(GraphicsContext g, Ink.Stroke stroke) {
        Layer layer = stroke.layer();
        double perMm = view.get().perMm();
        g.setStroke(Palette.colour(layer.rgb()));
        g.setLineWidth(layer == Layer.CUT ? 2 : 1.2);
        g.setLineCap(StrokeLineCap.BUTT);
        double[] dashes = layer.dashes();
        double scale = Math.max(1.2, Math.min(4, perMm));
        for (int i = 0; i < dashes.length; i++) dashes[i] *= scale;
        g.setLineDashes(dashes);
        path(g, stroke.xy(), stroke.closed());
    }

    private void path(GraphicsContext g, double[] xy, boolean closed) {
        double atX = x(xy[0]), atY = y(xy[1]);
        g.beginPath();
        g.moveTo(atX, atY);
        for (int i = 2; i < xy.length; i += 2) {
            double x = x(xy[i]), y = y(xy[i + 1]);
            if (i + 2 < xy.length && Math.abs(x - atX) + Math.abs(y - atY) < FINE) continue;
            g.lineTo(x, y);
            atX = x;
            atY = y;
        }
        if (closed) g.closePath();
        g.stroke();
    }

    private void text(GraphicsContext g, Entity.Text text) {
        double high = text.height() * view.get().perMm();
        if (high < READABLE * CAPITAL || high > 400) return;
        g.save();
        g.translate(x(text.x()), y(text.y()));
        g.rotate(-Math.toDegrees(text.angle()));
        g.setFont(Font.font(high / CAPITAL));
        g.setFill(Palette.colour(text.layer().rgb()));
        g.setTextAlign(text.anchor().along() == 0 ? TextAlignment.LEFT : text.anchor().along() == 1 ? TextAlignment.RIGHT
                : TextAlignment.CENTER);
        g.setTextBaseline(VPos.BASELINE);
        g.fillText(text.text(), 0, text.anchor().up() * high);
        g.restore();
    }

    private void contours(GraphicsContext g) {
        MapKind kind = bench.mapProperty().get();
        double size = pointing.lettersProperty().get();
        g.setLineDashes();
        g.setLineWidth(0.8);
        g.setFont(Font.font(11 * size));
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        List<double[]> taken = new ArrayList<>();
        for (Contour line : shown.contours(kind, bench.tintsProperty().get())) {
            g.setStroke(Color.gray(0.25, 0.55));
            double[] xy = new double[2 * line.count()];
            for (int i = 0; i < line.count(); i++) {
                xy[2 * i] = line.u(i);
                xy[2 * i + 1] = line.v(i);
            }
            path(g, xy, false);
            if (line.length() * view.get().perMm() < 70) continue;
            String words = number(kind, line.value());
            for (double share : new double[] {0.5, 0.3, 0.7}) {
                int at = (int) (share * (line.count() - 1));
                double px = x(line.u(at)), py = y(line.v(at));
                if (taken.stream().anyMatch(t -> Math.abs(t[0] - px) < 34 * size && Math.abs(t[1] - py) < 13 * size)) continue;
                taken.add(new double[] {px, py});
                g.setStroke(Color.gray(1, 0.85));
                g.setLineWidth(3);
                g.strokeText(words, px, py);
                g.setLineWidth(0.8);
                g.setFill(Color.gray(0.1));
                g.fillText(words, px, py);
                break;
            }
        }
    }

    /** A number of a map as the lines carry it: mm on every 100, per cent of the sheet, degrees. */
    static String number(MapKind kind, double value) {
        return switch (kind) {
            case WORK -> (value > 0 ? "+" : "") + Amounts.perHundred(value);
            case THICKNESS -> String.format(Locale.ROOT, "%.1f %%", 100 * value);
            case BUCKLING -> String.format(Locale.ROOT, "%.1f", value);
            case LIMIT -> String.format(Locale.ROOT, "%.0f %%", 100 * value);
            case CURVATURE -> String.format(Locale.ROOT, "%+.1f°", value);
        };
    }

    private void chosen(GraphicsContext g) {
        WorkRow row = bench.chosenProperty().get();
        if (!shown.has(row)) return;
        Border border = shown.border(row);
        g.setStroke(Marks.CHOSEN);
        g.setLineWidth(2.6);
        g.setLineCap(StrokeLineCap.ROUND);
        g.beginPath();
        for (int i = 0; i < border.pieces(); i++) {
            g.moveTo(x(border.blank(i, 0, 0)), y(border.blank(i, 0, 1)));
            g.lineTo(x(border.blank(i, 1, 0)), y(border.blank(i, 1, 1)));
        }
        g.stroke();
        g.setStroke(Marks.LINE);
        g.setLineWidth(2.6);
        path(g, border.lineOnBlank(), false);
    }

    private void tapes(GraphicsContext g) {
        if (bench.workProperty().get() == null) return;
        g.setStroke(Marks.TAPE);
        g.setLineWidth(2.2);
        for (DrawnTape tape : bench.workProperty().get().tapes()) {
            Optional<TapeLine> line = shown.line(tape);
            if (line.isPresent()) path(g, line.get().onBlank(), false);
        }
    }

    private void rulers(GraphicsContext g) {
        double w = getWidth(), h = getHeight(), size = pointing.lettersProperty().get(), ruler = ruler();
        FlatView now = view.get();
        boolean dark = pointing.darkProperty().get();
        Color card = Color.gray(dark ? 0.13 : 0.96, 0.95), marked = Color.gray(dark ? 0.85 : 0.15);
        g.setFill(card);
        g.fillRect(0, h - ruler, w, ruler);
        g.fillRect(0, 0, ruler, h);
        g.setStroke(marked);
        g.setFill(marked);
        g.setLineWidth(1);
        g.setFont(Font.font(10.5 * size));
        g.setTextBaseline(VPos.CENTER);
        FirstAnswer first = bench.firstAnswerProperty().get();
        double[] box = first == null ? shown.box() : first.box();
        g.setTextAlign(TextAlignment.LEFT);
        for (Ticks.Tick tick : Ticks.between(now.uAt(ruler - w / 2) - box[0], now.uAt(w / 2) - box[0], now.perMm(),
                bench.styleProperty().get())) {
            double x = Math.round(x(tick.mm() + box[0])) + 0.5, long_ = tick.label().isEmpty() ? 5 : 11;
            g.strokeLine(x, h - ruler, x, h - ruler + long_);
            if (!tick.label().isEmpty()) g.fillText(tick.label(), x + 3, h - 8 * size);
        }
        for (Ticks.Tick tick : Ticks.between(now.vAt(h / 2 - ruler) - box[1], now.vAt(-h / 2) - box[1], now.perMm(),
                bench.styleProperty().get())) {
            double y = Math.round(y(tick.mm() + box[1])) + 0.5, long_ = tick.label().isEmpty() ? 5 : 11;
            g.strokeLine(ruler - long_, y, ruler, y);
            if (!tick.label().isEmpty()) {
                g.save();
                g.translate(8 * size, y - 3);
                g.rotate(-90);
                g.fillText(tick.label(), 0, 0);
                g.restore();
            }
        }
        g.setFill(card);
        g.fillRect(0, h - ruler, ruler, ruler);
        g.setFill(marked);
        g.setTextAlign(TextAlignment.CENTER);
        g.fillText(bench.styleProperty().get() == LengthStyle.MM ? "mm" : "in", ruler / 2, h - ruler / 2);
        if (!isFocused()) return;
        g.setStroke(Marks.FOCUS);                   // over the rulers, which hide the pane's own frame
        g.setLineWidth(3);
        g.strokeRect(1.5, 1.5, w - 3, h - 3);
    }

    private void mark() {
        marks.clear();
        if (shown == null || view.get() == null) return;
        Place place = bench.placeProperty().get();
        FirstAnswer first = bench.firstAnswerProperty().get();
        if (place != null) {
            Optional<double[]> at = first == null ? Optional.of(shown.onBlank(place)) : first.onBlank(place);
            at.ifPresent(uv -> marks.ring(x(uv[0]), y(uv[1])));
        }
        if (first != null) return;
        Place from = pointing.fromProperty().get();
        if (from != null) {
            Numbers n = shown.numbers(from);
            marks.pin(x(n.u()), y(n.v()));
        }
        double[] path = new double[2 * pointing.path().size()];
        for (int i = 0; i < path.length / 2; i++) {
            Numbers n = shown.numbers(pointing.path().get(i));
            path[2 * i] = x(n.u());
            path[2 * i + 1] = y(n.v());
        }
        if (path.length > 2) marks.path(path);
        for (Clamps.Spot spot : ClampList.of(bench.workProperty().get())) {
            double[] at = shown.onBlank(shown.onForm(spot.x(), spot.y(), spot.z()));
            marks.clamp(x(at[0]), y(at[1]), spot.radius() * view.get().perMm());
        }
    }

    private void choose(WorkRow row) {
        soon();
        if (shown == null || !shown.has(row) || getWidth() <= 3 * ruler()) return;
        view.set(FlatView.fitting(shown.border(row).box(), getWidth() - 3 * ruler(), getHeight() - 3 * ruler()));
    }

    /** A dozen pixels, in mm. */
    private double reach() {
        return view.get() == null ? 0 : 12 / view.get().perMm();
    }

    private Optional<Place> under(double x, double y) {
        if (shown == null || view.get() == null || bench.firstAnswerProperty().get() != null) return Optional.empty();
        FlatView now = view.get();
        double beside = pointing.cuttingProperty().get() ? 16 : 4;             // px: a seam ends on a rim, which nobody hits from inside
        return shown.onBlank(now.uAt(x - getWidth() / 2), now.vAt(y - getHeight() / 2), beside / now.perMm());
    }

    private void listen() {
        addEventHandler(MouseEvent.MOUSE_PRESSED, e -> {
            requestFocus();
            pressX = lastX = e.getX();
            pressY = lastY = e.getY();
            if (pointing.cuttingProperty().get()) pointing.press(under(e.getX(), e.getY()));
        });
        addEventHandler(MouseEvent.MOUSE_DRAGGED, e -> {
            if (pointing.cuttingProperty().get() && e.getButton() == MouseButton.PRIMARY) pointing.draw(under(e.getX(), e.getY()));
            else if (view.get() != null) view.set(view.get().moved(e.getX() - lastX, e.getY() - lastY));
            lastX = e.getX();
            lastY = e.getY();
        });
        addEventHandler(MouseEvent.MOUSE_RELEASED, e -> pointing.drawn(reach()));
        addEventHandler(MouseEvent.MOUSE_CLICKED, e -> {
            if (Math.hypot(e.getX() - pressX, e.getY() - pressY) <= 4 && e.getButton() == MouseButton.PRIMARY)
                pointing.click(under(e.getX(), e.getY()), true, reach());
        });
        addEventHandler(MouseEvent.MOUSE_MOVED, e -> pointing.hover(under(e.getX(), e.getY())));
        addEventHandler(MouseEvent.MOUSE_EXITED, e -> pointing.hover(Optional.empty()));
        setOnScroll(e -> {
            if (view.get() == null) return;
            if (Math.abs(e.getDeltaX()) > Math.abs(e.getDeltaY())) view.set(view.get().moved(e.getDeltaX(), 0));
            else view.set(view.get().zoomed(Math.pow(1.0022, e.getDeltaY()), e.getX() - getWidth() / 2, e.getY() - getHeight() / 2));
            e.consume();
        });
        setOnZoom(e -> {
            if (view.get() != null && e.getZoomFactor() > 0)
                view.set(view.get().zoomed(e.getZoomFactor(), e.getX() - getWidth() / 2, e.getY() - getHeight() / 2));
        });
        setOnKeyPressed(this::key);
    }

    private void key(KeyEvent e) {
        if (view.get() == null || e.isControlDown() || e.isMetaDown()) return;
        FlatView now = view.get();
        double step = Math.min(getWidth(), getHeight()) / 12;
        double dx = switch (e.getCode()) {
            case LEFT -> -1;
            case RIGHT -> 1;
            default -> 0;
        }, dy = switch (e.getCode()) {
            case UP -> -1;
            case DOWN -> 1;
            default -> 0;
        };
        if (dx != 0 || dy != 0) {
            if (e.isAltDown()) walk(dx * step / 3, dy * step / 3);
            else view.set(now.moved(-dx * step, -dy * step));
            e.consume();
            return;
        }
        switch (e.getCode()) {
            case PLUS, ADD, EQUALS -> view.set(now.zoomed(1.25, 0, 0));
            case MINUS, SUBTRACT -> view.set(now.zoomed(0.8, 0, 0));
            case F -> fit();
            case T -> trueSize();
            case ENTER, SPACE -> {
                if (bench.placeProperty().get() != null) pointing.click(Optional.of(bench.placeProperty().get()), true, reach());
            }
            default -> {
                return;
            }
        }
        e.consume();
    }

    /** Moves the place pointed at, or begins in the middle. */
    private void walk(double dx, double dy) {
        Place now = bench.placeProperty().get();
        double x = getWidth() / 2, y = getHeight() / 2;
        if (now != null) {
            Numbers n = shown.numbers(now);
            x = x(n.u()) + dx;
            y = y(n.v()) + dy;
        }
        Optional<Place> next = under(x, y);
        if (next.isEmpty() && now == null) {
            next = Optional.of(shown.placeOf(ZoneRow.of(shown, true).get(0)));
        }
        next.ifPresent(pointing::hold);
    }
}
