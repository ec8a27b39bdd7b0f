package blankwright.viewer;

import blankwright.drawing.Layer;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Seam;
import blankwright.picture.Tints;
import blankwright.project.Clamps;
import blankwright.shop.DrawnTape;
import blankwright.shop.TapeLine;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Border;
import blankwright.viewer.model.Buckles;
import blankwright.viewer.model.Laid;
import blankwright.viewer.model.MapKind;
import blankwright.viewer.model.Numbers;
import blankwright.viewer.model.Orbit;
import blankwright.viewer.model.Painting;
import blankwright.viewer.model.Place;
import blankwright.viewer.model.SeamGrip;
import blankwright.viewer.model.Side;
import blankwright.viewer.model.Skin;
import blankwright.viewer.model.WorkRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.AnimationTimer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.ListChangeListener;
import javafx.geometry.Point3D;
import javafx.scene.AmbientLight;
import javafx.scene.Cursor;
import javafx.scene.DirectionalLight;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.PerspectiveCamera;
import javafx.scene.SceneAntialiasing;
import javafx.scene.SubScene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.PickResult;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.DrawMode;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.transform.Affine;

/** The form in the hand: turned, slid, brought nearer; its colours; the place pointed at. */
final class FormPane extends Pane {
    private static final double STEP = Math.toRadians(10);
    private static final double SWAY = 2.5, HEIGHT = 0.03;      // seconds for once up and down; part of the form's size

    private final Bench bench;
    private final Pointing pointing;
    private final ObjectProperty<Orbit> orbit = new SimpleObjectProperty<>();
    private final BooleanProperty edges = new SimpleBooleanProperty(), shaded = new SimpleBooleanProperty(true);
    private final BooleanProperty seeThrough = new SimpleBooleanProperty(), swaying = new SimpleBooleanProperty();
    private final IntegerProperty way = new SimpleIntegerProperty();
    private final Label exaggerated = new Label(), early = new Label();
    private final AnimationTimer sway = new AnimationTimer() {
        @Override public void handle(long now) {
            sway(Math.sin(2 * Math.PI * (now / 1e9) / SWAY));
        }
    };
    private final Group skins = new Group(), net = new Group(), wires = new Group(), chosen = new Group(), tapes = new Group();
    private final AmbientLight everywhere = new AmbientLight(Color.WHITE);
    private final DirectionalLight lamp = new DirectionalLight(), behind = new DirectionalLight();
    private final PerspectiveCamera eye = new PerspectiveCamera(true);
    private final Affine stand = new Affine();
    private final SubScene scene;
    private final Marks marks = new Marks();
    private final List<PhongMaterial> paints = new ArrayList<>();
    private double[] origin = new double[3];
    private double pressX, pressY, lastX, lastY;
    private Laid shown;
    private Optional<SeamGrip> taken = Optional.empty();        // the end of a seam that is in the hand

    FormPane(Bench bench, Pointing pointing) {
        this.bench = bench;
        this.pointing = pointing;
        eye.setFieldOfView(Math.toDegrees(Orbit.FIELD));
        eye.getTransforms().add(stand);
        Group world = new Group(skins, net, wires, chosen, tapes, everywhere, lamp, behind, eye);
        scene = new SubScene(world, 100, 100, true, SceneAntialiasing.BALANCED);
        scene.setCamera(eye);
        scene.widthProperty().bind(widthProperty());
        scene.heightProperty().bind(heightProperty());
        scene.setManaged(false);
        exaggerated.setLayoutX(12);
        exaggerated.setLayoutY(10);
        exaggerated.getStyleClass().add("exaggerated");
        exaggerated.setWrapText(true);
        exaggerated.maxWidthProperty().bind(widthProperty().subtract(24));
        exaggerated.visibleProperty().bind(swaying);
        early.setLayoutX(12);
        early.setLayoutY(10);
        early.getStyleClass().add("exaggerated");
        early.setWrapText(true);
        early.maxWidthProperty().bind(widthProperty().subtract(24));
        early.setVisible(false);
        getChildren().addAll(scene, marks, exaggerated, early);
        getStyleClass().add("form");
        setFocusTraversable(true);
        setAccessibleText("The form. Arrow keys turn it, plus and minus bring it nearer, 1 to 6 are the straight views, F shows all of"
                + " it.");
        setMinSize(160, 160);

        bench.laidProperty().addListener((o, was, is) -> show(is, was == null || !was.result().name().equals(is.result().name())));
        bench.firstAnswerProperty().addListener((o, was, is) -> {
            if (is == null) build();
            else skins();
            boolean coarse = is != null && is.draft().coarse();         // another form, or another net: lines on the old one would lie
            for (Node old : List.of(net, wires, chosen, tapes, marks)) old.setVisible(!coarse);
            early.setVisible(coarse);
            if (coarse) early.setText(is.words());
        });
        bench.mapProperty().addListener((o, was, is) -> build());
        bench.tintsProperty().addListener((o, was, is) -> paint());
        pointing.greyProperty().addListener((o, was, is) -> paint());
        orbit.addListener((o, was, is) -> stand());
        heightProperty().addListener((o, was, is) -> stand());
        widthProperty().addListener((o, was, is) -> mark());
        edges.addListener((o, was, is) -> net());
        shaded.addListener((o, was, is) -> light());
        seeThrough.addListener((o, was, is) -> paint());
        bench.placeProperty().addListener((o, was, is) -> mark());
        bench.chosenProperty().addListener((o, was, is) -> {
            choose(is);
            frame(is);
        });
        way.addListener((o, was, is) -> tellWay());
        bench.styleProperty().addListener((o, was, is) -> tellWay());
        swaying.addListener((o, was, is) -> {
            tellWay();
            if (is) sway.start();
            else sway.stop();
            if (!is) sway(0);
        });
        bench.workProperty().addListener((o, was, is) -> {
            tapes();
            mark();
        });
        pointing.fromProperty().addListener((o, was, is) -> mark());
        pointing.path().addListener((ListChangeListener<Place>) c -> mark());
        light();
        listen();
    }

    ObjectProperty<Orbit> orbitProperty() {
        return orbit;
    }

    BooleanProperty edgesProperty() {
        return edges;
    }

    BooleanProperty shadedProperty() {
        return shaded;
    }

    BooleanProperty seeThroughProperty() {
        return seeThrough;
    }

    /** True while the buckles of the unworked sheet are shown, moving; only with their map. */
    BooleanProperty swayingProperty() {
        return swaying;
    }

    /** Which of the ways to buckle is shown, from 0. */
    IntegerProperty wayProperty() {
        return way;
    }

    private double high() {
        return HEIGHT * 900 * thin();
    }

    private void tellWay() {
        if (shown != null) exaggerated.setText(Buckles.of(shown).words(way.get(), high(), bench.styleProperty().get()));
    }

    /** The form as it buckles in the way chosen; 0 = as it is. */
    private void sway(double part) {
        boolean coarse = bench.firstAnswerProperty().get() != null && bench.firstAnswerProperty().get().draft().coarse();
        if (shown == null || coarse || bench.mapProperty().get() != MapKind.BUCKLING || skins.getChildren().size() != shown.skins().size()) return;
        Buckles buckles = Buckles.of(shown);
        for (int i = 0; i < shown.skins().size(); i++) {
            double[] at = buckles.moved(i, way.get(), part * high());
            float[] points = new float[at.length];
            for (int k = 0; k < points.length; k++) points[k] = (float) (at[k] - origin[k % 3]);
            ((TriangleMesh) ((MeshView) skins.getChildren().get(i)).getMesh()).getPoints().setAll(points);
        }
    }

    /** Only the coloured skin, no lines on it. */
    void bare(boolean so) {
        wires.setVisible(!so);
        tapes.setVisible(!so);
    }

    void fit() {
        if (shown != null && getWidth() > 0) orbit.set(orbit.get().fitting(shown.forms(), getWidth(), getHeight()));
    }

    void look(Side side) {
        if (shown == null) return;
        orbit.set(orbit.get().from(side));
        fit();
    }

    /** Square to the skin at the place pointed at. */
    void squareOn() {
        Place place = bench.placeProperty().get();
        if (place == null || shown == null) return;
        Numbers there = shown.numbers(place);
        orbit.set(orbit.get().squareTo(there.form(), there.normal()));
    }

    private void show(Laid laid, boolean anotherPanel) {
        shown = laid;
        if (anotherPanel || orbit.get() == null) {
            orbit.set(Orbit.round(laid.frame()));
            for (int k = 0; k < 3; k++) origin[k] = laid.frame().origin(k);
        }
        if (bench.firstAnswerProperty().get() == null) build();     // else when that goes
        if (anotherPanel) fit();
    }

    private void build() {
        skins();
        if (shown == null) return;
        net();
        stations();
        tapes();
        choose(bench.chosenProperty().get());
        tellWay();
        stand();
    }

    /** The coloured skin alone. */
    private void skins() {
        skins.getChildren().clear();
        paints.clear();
        if (shown == null) return;
        for (Painting painting : bench.paintings(shown)) {
            MeshView view = new MeshView(SkinMesh.form(painting, origin));
            view.setCullFace(CullFace.NONE);
            PhongMaterial paint = new PhongMaterial();
            view.setMaterial(paint);
            paints.add(paint);
            skins.getChildren().add(view);
        }
        paint();
    }

    private void paint() {
        Tints tints = bench.tintsProperty().get();
        if (tints == null || shown == null) return;
        List<Painting> paintings = bench.paintings(shown);
        if (paintings.size() != paints.size()) return;                  // they are built anew in a moment
        Tints seen = pointing.greyProperty().get() ? tints.grey() : tints;
        var image = Palette.image(seen, seeThrough.get() ? 0.55 : 1);
        for (int i = 0; i < paints.size(); i++) {
            Painting painting = paintings.get(i);
            TriangleMesh mesh = (TriangleMesh) ((MeshView) skins.getChildren().get(i)).getMesh();
            if (mesh.getPoints().size() == 3 * painting.vertexCount()) SkinMesh.paint(mesh, painting, tints);
            paints.get(i).setDiffuseMap(image);
            paints.get(i).setDiffuseColor(Color.gray(1, seeThrough.get() ? 0.55 : 1));
        }
    }

    private void light() {
        boolean round = shaded.get();
        everywhere.setColor(round ? Color.gray(0.62) : Color.WHITE);
        lamp.setLightOn(round);
        behind.setLightOn(round);
        lamp.setColor(Color.gray(0.45));
        behind.setColor(Color.gray(0.45));
    }

    private void net() {
        net.getChildren().clear();
        if (shown == null || !edges.get()) return;
        for (Skin skin : shown.skins()) {
            MeshView lines = new MeshView(SkinMesh.form(skin.painting(MapKind.THICKNESS), origin));
            lines.setDrawMode(DrawMode.LINE);
            lines.setCullFace(CullFace.NONE);
            lines.setMaterial(new PhongMaterial(Color.gray(0.1, 0.3)));
            lines.setMouseTransparent(true);
            net.getChildren().add(lines);
        }
    }

    private double thin() {
        double[] size = shown.forms().get(0).size();
        return Math.sqrt(size[0] * size[0] + size[1] * size[1] + size[2] * size[2]) / 900;
    }

    private void stations() {
        wires.getChildren().clear();
        List<double[]> lines = new ArrayList<>();
        for (Skin skin : shown.skins()) {
            for (TapeLine line : skin.piece().stations().centreLine()) lines.add(line.onForm());
            skin.piece().stations().stations().forEach(s -> s.lines().forEach(line -> lines.add(line.onForm())));
        }
        wires.getChildren().add(Wire.of(lines, origin, thin() * 0.8, Palette.colour(Layer.MARK.rgb())));
        List<double[]> cuts = new ArrayList<>();
        for (Skin skin : shown.skins()) {
            TriMesh form = skin.map().form();
            for (Seam seam : skin.piece().seams())
                for (int i = 0; i < seam.edgeCount(); i++) {
                    if (seam.left(i, 0) >= 0) cuts.add(edge(form, seam.left(i, 0), seam.left(i, 1)));
                    else if (seam.right(i, 0) >= 0) cuts.add(edge(form, seam.right(i, 0), seam.right(i, 1)));    // else along other pieces
                }
        }
        wires.getChildren().add(Wire.of(cuts, origin, thin() * 1.2, Palette.colour(Layer.CUT.rgb())));
    }

    private static double[] edge(TriMesh form, int v, int w) {
        return new double[] {form.x(v), form.y(v), form.z(v), form.x(w), form.y(w), form.z(w)};
    }

    private void tapes() {
        tapes.getChildren().clear();
        if (shown == null || bench.workProperty().get() == null) return;
        List<double[]> lines = new ArrayList<>();
        for (DrawnTape tape : bench.workProperty().get().tapes()) shown.line(tape).ifPresent(line -> lines.add(line.onForm()));
        tapes.getChildren().add(Wire.of(lines, origin, thin() * 1.4, Marks.TAPE));
    }

    private void choose(WorkRow row) {
        chosen.getChildren().clear();
        if (shown == null || !shown.has(row)) return;
        Border border = shown.border(row);
        List<double[]> lines = new ArrayList<>();
        for (int i = 0; i < border.pieces(); i++) lines.add(border.form(i));
        chosen.getChildren().add(Wire.of(lines, origin, thin(), Marks.CHOSEN));
        chosen.getChildren().add(Wire.of(List.of(border.lineOnForm()), origin, thin() * 1.3, Marks.LINE));
    }

    /** Brings a zone or a flange into the picture, square on. */
    private void frame(WorkRow row) {
        if (shown == null || !shown.has(row) || getHeight() <= 0) return;
        Border border = shown.border(row);
        orbit.set(orbit.get().squareTo(shown.numbers(shown.placeOf(row)).form(), shown.facing(row)).fitting(List.of(border.corners()), getWidth(), getHeight()));
    }

    private void stand() {
        Orbit now = orbit.get();
        if (now == null) return;
        double[] r = now.right(), u = now.upward(), t = now.towards();
        double far = now.distance();
        stand.setToTransform(
                r[0], -u[0], -t[0], now.target(0) - origin[0] + far * t[0],
                r[1], -u[1], -t[1], now.target(1) - origin[1] + far * t[1],
                r[2], -u[2], -t[2], now.target(2) - origin[2] + far * t[2]);
        eye.setNearClip(far / 200);
        eye.setFarClip(far * 50);
        Point3D light = new Point3D(-t[0] + 0.35 * r[0] - 0.5 * u[0], -t[1] + 0.35 * r[1] - 0.5 * u[1], -t[2] + 0.35 * r[2] - 0.5 * u[2]);
        lamp.setDirection(light);
        behind.setDirection(light.multiply(-1));
        mark();
    }

    private void mark() {
        marks.clear();
        if (shown == null || orbit.get() == null) return;
        Place place = bench.placeProperty().get();
        if (place != null) at(shown.numbers(place).form(), (x, y) -> marks.ring(x, y));
        Place from = pointing.fromProperty().get();
        if (from != null) at(shown.numbers(from).form(), (x, y) -> marks.pin(x, y));
        double[] path = new double[2 * pointing.path().size()];
        for (int i = 0; i < path.length / 2; i++) {
            int to = 2 * i;
            at(shown.numbers(pointing.path().get(i)).form(), (x, y) -> {
                path[to] = x;
                path[to + 1] = y;
            });
        }
        if (path.length > 2) marks.path(path);
        if (bench.workProperty().get() != null)
            for (SeamGrip end : SeamGrip.all(shown, bench.workProperty().get().recipe())) at(end.at(), (x, y) -> marks.end(x, y));
        for (Clamps.Spot spot : ClampList.of(bench.workProperty().get()))
            at(new double[] {spot.x(), spot.y(), spot.z()}, (x, y) -> marks.clamp(x, y, spot.radius() * getHeight() / orbit.get().span()));
        WorkRow row = bench.chosenProperty().get();
        if (shown.has(row))
            at(shown.numbers(shown.placeOf(row)).form(), (x, y) -> marks.number(x, y, row.name()));
    }

    private interface There {
        void put(double x, double y);
    }

    private void at(double[] form, There there) {
        double[] seen = orbit.get().seen(form[0], form[1], form[2], getHeight());
        if (seen[2] > 0) there.put(getWidth() / 2 + seen[0], getHeight() / 2 + seen[1]);
    }

    /** A dozen pixels, in mm at the place looked at. */
    private double reach() {
        return 12 * orbit.get().span() / getHeight();
    }

    /** The place of the skin under a pick. */
    private Optional<Place> picked(PickResult pick) {
        if (shown == null || !(pick.getIntersectedNode() instanceof MeshView view) || !skins.getChildren().contains(view))
            return Optional.empty();
        Point3D p = pick.getIntersectedPoint();
        return Optional.of(shown.onForm(p.getX() + origin[0], p.getY() + origin[1], p.getZ() + origin[2]));
    }

    /** The place under the pointer; where a seam is cut also beside a rim, which is where seams end. */
    private Optional<Place> clicked(MouseEvent e) {
        Optional<Place> on = picked(e.getPickResult());
        if (on.isPresent() || shown == null || orbit.get() == null || !pointing.cuttingProperty().get()) return on;
        return rim(e).map(at -> shown.onForm(at[0], at[1], at[2]));
    }

    /** The corner of a rim two fingers' width or less from the pointer. */
    private Optional<double[]> rim(MouseEvent e) {
        return shown.rimSeen(orbit.get(), e.getX() - getWidth() / 2, e.getY() - getHeight() / 2, getHeight(), 24);
    }

    /** The end of a seam under the pointer, while nothing else is laid or cut. */
    private Optional<SeamGrip> seamEnd(MouseEvent e) {
        if (shown == null || orbit.get() == null || !pointing.idle()) return Optional.empty();
        return SeamGrip.under(shown, bench.workProperty().get().recipe(), orbit.get(), e.getX() - getWidth() / 2, e.getY() - getHeight() / 2,
                getHeight(), picked(e.getPickResult()).map(place -> shown.numbers(place).form()));
    }

    /** The end in the hand, onto a rim where one is near: there is the use of most seams, and beside it no skin to be pointed at. */
    private void move(MouseEvent e) {
        rim(e).or(() -> picked(e.getPickResult()).map(place -> shown.numbers(place).form())).ifPresent(at -> bench.move(taken.orElseThrow(), at));
    }

    private void listen() {
        addEventHandler(MouseEvent.MOUSE_PRESSED, e -> {
            requestFocus();
            pressX = lastX = e.getX();
            pressY = lastY = e.getY();
            if (pointing.cuttingProperty().get()) pointing.press(clicked(e));
            taken = e.getButton() == MouseButton.PRIMARY && !e.isShiftDown() ? seamEnd(e) : Optional.empty();
        });
        addEventHandler(MouseEvent.MOUSE_DRAGGED, e -> {
            if (orbit.get() == null) return;
            double dx = e.getX() - lastX, dy = e.getY() - lastY;
            lastX = e.getX();
            lastY = e.getY();
            if (taken.isPresent()) move(e);
            else if (pointing.cuttingProperty().get() && e.getButton() == MouseButton.PRIMARY) pointing.draw(picked(e.getPickResult()));
            else if (e.getButton() == MouseButton.PRIMARY && !e.isShiftDown()) orbit.set(orbit.get().turned(-dx / 160, dy / 160));
            else orbit.set(orbit.get().moved(dx, dy, getHeight()));
        });
        addEventHandler(MouseEvent.MOUSE_RELEASED, e -> pointing.drawn(reach()));
        addEventHandler(MouseEvent.MOUSE_CLICKED, e -> {
            if (Math.hypot(e.getX() - pressX, e.getY() - pressY) > 4) return;
            if (e.getButton() == MouseButton.PRIMARY) pointing.click(clicked(e), false, reach());
            if (e.getButton() == MouseButton.PRIMARY && e.getClickCount() == 2) squareOn();
        });
        addEventHandler(MouseEvent.MOUSE_MOVED, e -> {
            Optional<Place> place = picked(e.getPickResult());
            pointing.hover(place);
            setCursor(seamEnd(e).isPresent() ? Cursor.OPEN_HAND : Cursor.DEFAULT);
        });
        addEventHandler(MouseEvent.MOUSE_EXITED, e -> pointing.hover(Optional.empty()));
        setOnScroll(e -> {
            if (orbit.get() == null) return;
            if (Math.abs(e.getDeltaX()) > Math.abs(e.getDeltaY())) orbit.set(orbit.get().moved(e.getDeltaX(), 0, getHeight()));
            else orbit.set(orbit.get().zoomed(Math.pow(1.0022, -e.getDeltaY()), e.getX() - getWidth() / 2, e.getY() - getHeight() / 2,
                    getHeight()));
            e.consume();
        });
        setOnZoom(e -> {
            if (orbit.get() != null && e.getZoomFactor() > 0)
                orbit.set(orbit.get().zoomed(1 / e.getZoomFactor(), e.getX() - getWidth() / 2, e.getY() - getHeight() / 2, getHeight()));
        });
        setOnRotate(e -> {
            if (orbit.get() != null) orbit.set(orbit.get().turned(-Math.toRadians(e.getAngle()), 0));
        });
        setOnKeyPressed(this::key);
    }

    private void key(KeyEvent e) {
        if (orbit.get() == null || e.isControlDown() || e.isMetaDown() || e.isAltDown()) return;
        double slide = getHeight() / 12, high = getHeight();
        boolean shift = e.isShiftDown();
        Orbit now = orbit.get();
        KeyCode code = e.getCode();
        switch (code) {
            case LEFT -> orbit.set(shift ? now.moved(slide, 0, high) : now.turned(STEP, 0));
            case RIGHT -> orbit.set(shift ? now.moved(-slide, 0, high) : now.turned(-STEP, 0));
            case UP -> orbit.set(shift ? now.moved(0, slide, high) : now.turned(0, -STEP));
            case DOWN -> orbit.set(shift ? now.moved(0, -slide, high) : now.turned(0, STEP));
            case PLUS, ADD, EQUALS -> orbit.set(now.zoomed(0.8, 0, 0, high));
            case MINUS, SUBTRACT -> orbit.set(now.zoomed(1.25, 0, 0, high));
            case F -> fit();
            case S -> squareOn();
            case DIGIT1, DIGIT2, DIGIT3, DIGIT4, DIGIT5, DIGIT6 -> look(Side.values()[code.ordinal() - KeyCode.DIGIT1.ordinal()]);
            default -> {
                return;
            }
        }
        e.consume();
    }
}
