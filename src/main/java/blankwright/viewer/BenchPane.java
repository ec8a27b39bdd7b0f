package blankwright.viewer;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import blankwright.num.LengthUnit;
import blankwright.num.Sentence;
import blankwright.viewer.model.Autosave;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Buckles;
import blankwright.viewer.model.Demos;
import blankwright.viewer.model.LengthStyle;
import blankwright.viewer.model.MapKind;
import blankwright.viewer.model.Side;
import blankwright.viewer.model.UnitQuestion;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.StringBinding;
import javafx.beans.property.BooleanProperty;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ButtonType;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Dialog;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.SplitPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.ToolBar;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;
import javafx.util.StringConverter;
import org.kordamp.ikonli.feather.Feather;

/** The whole window: the order above, form and blank on either hand, the work between them, the scale along the front edge. */
final class BenchPane extends BorderPane {
    private static final double USUAL_TEXT = 14;        // px
    private static final double WORDS = 560;            // px: longest line of a question
    private static final double RULER = 484;            // px: the scale needs so much that each second boundary has its number

    private final Bench bench;
    private final Stage stage;
    private final AskFile files;
    private final OrderLine order;
    private final Pointing pointing;
    private final FormPane form;
    private final BlankPane blank;
    private final WorkPane work;
    private final SplitPane hands = new SplitPane();
    private final Node formSide, blankSide;
    private final VBox welcome = new VBox(18);
    private final BooleanProperty dark;
    private double textSize;

    BenchPane(Bench bench, Stage stage) {
        this(bench, stage, AskFile.system(() -> bench.folder().or(() -> bench.settings().recent().stream().findFirst()
                .map(Path::getParent))));
    }

    BenchPane(Bench bench, Stage stage, AskFile files) {
        this.bench = bench;
        this.stage = stage;
        this.files = files;
        pointing = new Pointing(bench);
        dark = pointing.darkProperty();
        form = new FormPane(bench, pointing);
        blank = new BlankPane(bench, pointing);
        work = new WorkPane(bench, pointing);
        formSide = side("The form", form, formTools());
        blankSide = side("The blank", blank, blankTools());
        textSize = Math.max(10, Math.min(28, bench.settings().get("text", USUAL_TEXT)));
        dark.set(Boolean.parseBoolean(bench.settings().get("dark", "false")));
        boolean swapped = Boolean.parseBoolean(bench.settings().get("swapped", "false"));
        ScrollPane between = new ScrollPane(work);
        between.setFitToWidth(true);
        between.setFitToHeight(true);
        between.setMinWidth(200);
        hands.getItems().setAll(swapped ? List.of(blankSide, between, formSide) : List.of(formSide, between, blankSide));
        hands.setDividerPositions(0.38, 0.63);
        SplitPane.setResizableWithParent(between, false);
        getStyleClass().add("bench");
        StackPane middle = new StackPane(hands, welcome());
        order = new OrderLine(bench, files, this::toolList);
        VBox top = new VBox(tools(), order, order.details(), trouble());
        setTop(top);
        setCenter(middle);
        setBottom(new VBox(maps(), status()));
        hands.visibleProperty().bind(bench.laidProperty().isNotNull().or(bench.runner().busyProperty()));
        welcome.visibleProperty().bind(hands.visibleProperty().not());
        bench.questionProperty().addListener((o, was, is) -> {
            if (is != null) Platform.runLater(this::askUnit);
        });
        addEventHandler(DragEvent.DRAG_OVER, e -> {
            if (e.getDragboard().hasFiles()) e.acceptTransferModes(TransferMode.COPY);
        });
        addEventHandler(DragEvent.DRAG_DROPPED, e -> {
            if (e.getDragboard().hasFiles()) openAsking(e.getDragboard().getFiles().get(0).toPath());
            e.setDropCompleted(e.getDragboard().hasFiles());
        });
        bench.laidProperty().addListener((o, was, is) -> bench.newsProperty().set(""));
        stage.titleProperty().bind(Bindings.createStringBinding(this::title, bench.workProperty(), bench.unsavedProperty()));
        stage.setOnCloseRequest(this::closing);
    }

    FormPane form() {
        return form;
    }

    BlankPane blank() {
        return blank;
    }

    WorkPane work() {
        return work;
    }

    Pointing pointing() {
        return pointing;
    }

    /** Gives the scene its looks and its keys; to be called once it has this pane. */
    void dress() {
        Scene scene = getScene();
        scene.getStylesheets().add(String.valueOf(BenchPane.class.getResource("/blankwright/viewer/bench.css")));
        wear();
        key(KeyCode.O, this::open);
        key(KeyCode.S, this::save);
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.S, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN),
                this::saveAs);
        key(KeyCode.PLUS, () -> text(1));
        key(KeyCode.EQUALS, () -> text(1));
        key(KeyCode.MINUS, () -> text(-1));
        key(KeyCode.E, this::takeAway);
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.F6), this::nextPart);
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.F1), this::help);
        scene.addEventFilter(MouseEvent.MOUSE_RELEASED, e -> Platform.runLater(bench::letGo));      // whatever was dragged
        scene.addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) pointing.letGo();
            boolean pending = scene.getFocusOwner() instanceof LengthWord word && word.pending();
            if (!e.isShortcutDown() || pending || e.getCode() != KeyCode.Z && e.getCode() != KeyCode.Y) return;
            if (e.getCode() == KeyCode.Y || e.isShiftDown()) bench.redo();      // also where a text field has steps of its own
            else bench.undo();
            e.consume();
        });
    }

    private void key(KeyCode code, Runnable what) {
        getScene().getAccelerators().put(new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN), what);
    }

    private void wear() {
        Application.setUserAgentStylesheet(dark.get() ? new PrimerDark().getUserAgentStylesheet()
                : new PrimerLight().getUserAgentStylesheet());
        setStyle("-fx-font-size: " + textSize + "px;");
        pointing.lettersProperty().set(textSize / USUAL_TEXT);
        getStyleClass().remove("dark");
        if (dark.get()) getStyleClass().add("dark");
    }

    private void text(double by) {
        textSize = Math.max(10, Math.min(28, textSize + by));
        bench.settings().put("text", textSize);
        wear();
    }

    /** Form, work, blank, scale, and round again. */
    private void nextPart() {
        List<Node> parts = List.of(form, work.zones(), blank);
        Node owner = getScene().getFocusOwner();
        int now = parts.indexOf(owner);
        parts.get((now + 1) % parts.size()).requestFocus();
    }

    private String title() {
        if (bench.workProperty().get() == null) return "Blankwright";
        return bench.workProperty().get().recipe().name() + (bench.unsavedProperty().get() ? " (not saved)" : "") + " - Blankwright";
    }

    private Node side(String words, Node picture, Node tools) {
        Label head = new Label(words);
        head.getStyleClass().add("head");
        BorderPane pane = new BorderPane(picture);
        VBox top = new VBox(2, head, tools);
        top.setPadding(new Insets(6, 8, 6, 8));
        pane.setTop(top);
        pane.getStyleClass().add("side");
        return pane;
    }

    private static ToggleButton toggle(String words, String lesson, BooleanProperty state) {
        ToggleButton button = new ToggleButton(words);
        Lesson.of(button, lesson);
        button.selectedProperty().bindBidirectional(state);
        return button;
    }

    private static FlowPane row(Node... nodes) {
        FlowPane row = new FlowPane(4, 4, nodes);
        row.setAlignment(Pos.CENTER_LEFT);
        for (Node node : nodes) if (node instanceof ButtonBase) node.getStyleClass().add("small");
        return row;
    }

    private Node formTools() {
        List<Node> nodes = new ArrayList<>();
        int digit = 1;
        for (Side side : Side.values())
            nodes.add(Looks.button(side.words(), null, "Looks at the form " + side.words() + " (key " + digit++ + ").", () -> form.look(side)));
        nodes.add(Looks.button("all of it", null, "Brings the whole form into the picture (key F).", form::fit));
        nodes.add(Looks.button("square on", null, "Looks straight at the place pointed at (key S, or click it twice).", form::squareOn));
        nodes.add(toggle("rounded", "Light and shade show the shape; without them the colours are exactly those of the scale.",
                form.shadedProperty()));
        nodes.add(toggle("edges", "Draws the triangles of the mesh.", form.edgesProperty()));
        nodes.add(toggle("see through", "Lets what lies behind show through the skin.", form.seeThroughProperty()));
        ToggleButton sway = toggle("how it buckles", "Moves the form the way the unworked sheet gives way; with the map of buckling.",
                form.swayingProperty());
        sway.visibleProperty().bind(bench.mapProperty().isEqualTo(MapKind.BUCKLING));
        sway.managedProperty().bind(sway.visibleProperty());
        bench.mapProperty().addListener((o, was, is) -> form.swayingProperty().set(false));
        nodes.add(sway);
        nodes.add(ways());
        return row(nodes.toArray(Node[]::new));
    }

    /** Which way of buckling moves the form, where more than one is known. */
    private Node ways() {
        ChoiceBox<Integer> ways = new ChoiceBox<>();
        ways.setConverter(new StringConverter<>() {
            @Override public String toString(Integer way) {
                return way == null ? "" : Buckles.name(way);
            }

            @Override public Integer fromString(String text) {
                return ways.getItems().stream().filter(w -> Buckles.name(w).equals(text)).findFirst().orElse(null);
            }
        });
        ways.setAccessibleText("Which way of buckling is shown");
        Lesson.of(ways, "The first way takes the least; the second shows where it goes next if the first is held down.");
        ways.visibleProperty().bind(form.swayingProperty().and(Bindings.size(ways.getItems()).greaterThan(1)));
        ways.managedProperty().bind(ways.visibleProperty());
        bench.laidProperty().addListener((o, was, is) -> {
            int count = Buckles.of(is).ways();
            if (count == ways.getItems().size()) return;
            ways.getItems().setAll(IntStream.range(0, count).boxed().toList());
            ways.setValue(count == 0 ? null : 0);
        });
        ways.valueProperty().addListener((o, was, is) -> form.wayProperty().set(is == null ? 0 : is));
        return ways;
    }

    private Node blankTools() {
        Button trueSize = Looks.button("true size", null, "", this::trueSize);
        Lesson.of(trueSize, Bindings.createStringBinding(() -> {
            String length = bench.styleProperty().get() == LengthStyle.MM ? "100 mm" : "4 in";
            return "Shows " + length + " as " + length + " (key T), once this screen has been measured.";
        }, bench.styleProperty()));
        return row(Looks.button("all of it", null, "Brings the whole blank into the picture (key F).", blank::fit), trueSize,
                Looks.button("measure the screen", null, "Measures this screen with a bank card, so that true size is true.",
                        () -> TrueSize.measure(bench, stage)),
                toggle("contours", "Lines along which the number is the same, with the number on them.", blank.contoursProperty()),
                toggle("lettering", "What is written on the blank.", blank.letteringProperty()));
    }

    private void trueSize() {
        if (bench.settings().get("screen", 0.0) > 0 || TrueSize.measure(bench, stage)) blank.trueSize();
    }

    private Node tools() {
        MenuButton open = new MenuButton("Open", Icons.of(Feather.FOLDER));
        Lesson.of(open, "Opens a mesh (STL, OBJ, PLY, OFF) or a recipe. Files can also be dropped on the window.");
        open.setAccessibleText("Open");                         // a button with a menu does not tell its own words
        open.setOnShowing(e -> fill(open));
        fill(open);
        Button save = Looks.button("Save", Feather.SAVE, "Saves the recipe, which the command line runs too.", this::save);
        save.disableProperty().bind(bench.workProperty().isNull());
        Button undo = Looks.button("Undo", Feather.CORNER_UP_LEFT, "Takes the last step back.", bench::undo);
        undo.disableProperty().bind(bench.canUndoProperty().not());
        Button redo = Looks.button("Redo", Feather.CORNER_UP_RIGHT, "Does again what was taken back.", bench::redo);
        redo.disableProperty().bind(bench.canRedoProperty().not());
        MenuButton take = new MenuButton("Take away", Icons.of(Feather.PACKAGE));
        Lesson.of(take, "Writes what goes to the bench: the blank on paper and for cutters, the work maps, the lists.");
        take.setAccessibleText("Take away");
        take.disableProperty().bind(bench.laidProperty().isNull());
        take.getItems().addAll(item("The packet: blank, work maps, lists…", this::takeAway),
                item("A picture of the form as it stands…", () -> picture(form, "form")),
                item("A picture of the blank as it stands…", () -> picture(blank, "blank")));
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        MenuButton lengths = new MenuButton();
        lengths.textProperty().bind(Bindings.createStringBinding(() -> bench.styleProperty().get().words(), bench.styleProperty()));
        Lesson.of(lengths, "How lengths are written: millimetres, inches with decimals, or the nearest 64th.");
        lengths.accessibleTextProperty().bind(Bindings.concat("Lengths in ", lengths.textProperty()));
        for (LengthStyle style : LengthStyle.values()) {
            MenuItem item = new MenuItem(style.words());
            item.setOnAction(e -> bench.styleProperty().set(style));
            lengths.getItems().add(item);
        }
        Button smaller = Looks.button("a", null, "Smaller letters (Ctrl and minus).", () -> text(-1));
        Button larger = Looks.button("A", null, "Larger letters (Ctrl and plus).", () -> text(1));
        smaller.setAccessibleText("Smaller letters");
        larger.setAccessibleText("Larger letters");
        Button swap = Looks.button("Swap hands", Feather.REPEAT, "Puts the form on the other hand.", this::swap);
        Button light = Looks.button("", Feather.MOON, "Light or dark window.", this::lightOrDark);
        light.setAccessibleText("Light or dark window");
        Button help = Looks.button("Help", Feather.HELP_CIRCLE, "The manual, at the page of what you are doing (F1).", this::help);
        ToolBar bar = new ToolBar(open, save, undo, redo, take, gap, lengths, smaller, larger, swap, light, help);
        bar.getStyleClass().add("tools");
        return bar;
    }

    private static MenuItem item(String words, Runnable what) {
        MenuItem item = new MenuItem(words);
        item.setOnAction(e -> what.run());
        return item;
    }

    private void takeAway() {
        if (bench.laidProperty().get() != null) new TakeAway(bench, stage, files).ask();
    }

    private void toolList() {
        new ToolList(bench, stage, files).ask();
    }

    private void picture(Node node, String what) {
        files.toWrite(stage, "Keep the picture as", fileName() + "-" + what + ".png").ifPresent(to ->
                bench.keepPicture(Snapshots.of(node), to));
    }

    /** At the part that is about where the keyboard is. */
    private void help() {
        Node owner = getScene().getFocusOwner();
        String heading = owner == form ? "The form" : owner == blank ? "The blank" : owner == work.zones() ? "The work"
                : owner instanceof ScaleRuler
                ? "The maps" : owner instanceof LengthWord ? "The order" : "The viewer";
        new ManualWindow(stage, getStyle(), dark.get()).open("viewer.md", heading);
    }

    private void lightOrDark() {
        dark.set(!dark.get());
        bench.settings().put("dark", dark.get());
        wear();
    }

    private void swap() {
        List<Node> now = new ArrayList<>(hands.getItems());
        double[] at = hands.getDividerPositions();
        Collections.reverse(now);
        hands.getItems().clear();
        hands.getItems().setAll(now);
        hands.setDividerPositions(1 - at[1], 1 - at[0]);
        bench.settings().put("swapped", now.get(0) == blankSide);
    }

    private void fill(MenuButton open) {
        open.getItems().clear();
        MenuItem file = new MenuItem("A mesh or a recipe…");
        file.setOnAction(e -> open());
        open.getItems().addAll(file, new SeparatorMenuItem());
        for (Path recent : bench.settings().recent()) {
            MenuItem item = new MenuItem(recent.getFileName() + "   " + recent.getParent());
            item.setMnemonicParsing(false);
            item.setOnAction(e -> openAsking(recent));
            open.getItems().add(item);
        }
        open.getItems().add(new SeparatorMenuItem());
        for (String name : Demos.NAMES) {
            MenuItem item = new MenuItem("Tern: " + name.replace('-', ' '));
            item.setOnAction(e -> demo(name));
            open.getItems().add(item);
        }
    }

    private Node welcome() {
        Label head = new Label("What shall be made?");
        head.getStyleClass().add("welcome");
        Label words = Looks.wrapped("Drop a mesh of one side of the sheet here (STL, OBJ, PLY or OFF), or a recipe. Blankwright lays it flat"
                + " and shows where the metal must be shrunk and stretched.", WORDS);
        Button open = Looks.button("Open a mesh or a recipe…", Feather.FOLDER, "Looks for the file on this computer.", this::open);
        Button demo = Looks.button("Look at the mudguard of the Tern", Feather.PLAY, "A panel that comes with the program: try everything on it.",
                () -> demo(Demos.NAMES.get(0)));
        demo.getStyleClass().add("accent");
        welcome.getChildren().setAll(head, words, new HBox(12, demo, open));
        VBox recent = new VBox(4);
        for (Path file : bench.settings().recent()) {
            Hyperlink link = new Hyperlink(file.toString());
            link.setOnAction(e -> openAsking(file));
            Lesson.of(link, "Opens " + file.getFileName() + " again, from " + file.getParent() + ".");
            recent.getChildren().add(link);
        }
        if (!recent.getChildren().isEmpty()) welcome.getChildren().addAll(new Label("Opened before:"), recent);
        welcome.setAlignment(Pos.CENTER_LEFT);
        welcome.setMaxWidth(600);
        return welcome;
    }

    private Node trouble() {
        Label words = Looks.wrapped(new Label());
        words.textProperty().bind(bench.troubleProperty());
        HBox.setHgrow(words, Priority.ALWAYS);
        words.setMaxWidth(Double.MAX_VALUE);
        Button away = Looks.button("", Feather.X, "Takes this message away.", bench::hush);
        away.setAccessibleText("Take this message away");
        HBox box = new HBox(10, Icons.of(Feather.ALERT_TRIANGLE), words, away);
        box.setAlignment(Pos.CENTER_LEFT);
        box.getStyleClass().add("trouble");
        box.visibleProperty().bind(bench.troubleProperty().isNotEmpty());
        box.managedProperty().bind(box.visibleProperty());
        return box;
    }

    /** As lengths are written at the moment. */
    private StringBinding told(Sentence words) {
        return Bindings.createStringBinding(() -> words.text(bench.styleProperty().get()), bench.styleProperty());
    }

    private Node maps() {
        ToggleGroup group = new ToggleGroup();
        FlowPane kinds = new FlowPane(4, 4);
        kinds.setAlignment(Pos.CENTER_LEFT);
        for (MapKind kind : MapKind.values()) {
            ToggleButton one = new ToggleButton(kind.words());
            Lesson.of(one, told(kind.lesson()));
            one.setToggleGroup(group);
            one.setUserData(kind);
            one.setSelected(kind == bench.mapProperty().get());
            one.setMinWidth(Region.USE_PREF_SIZE);
            if (kind == MapKind.LIMIT || kind == MapKind.BUCKLING) one.disableProperty().bind(Bindings.createBooleanBinding(
                    () -> bench.laidProperty().get() == null || !bench.laidProperty().get().has(kind), bench.laidProperty()));
            kinds.getChildren().add(one);
        }
        // as wide as one row of them; where there is less room they go below each other
        kinds.prefWidthProperty().bind(Bindings.createDoubleBinding(
                () -> kinds.getChildren().stream().mapToDouble(n -> ((Region) n).getWidth() + kinds.getHgap()).sum(),
                kinds.getChildren().stream().map(n -> ((Region) n).widthProperty()).toArray(Observable[]::new)));
        group.selectedToggleProperty().addListener((o, was, is) -> {
            if (is == null) was.setSelected(true);
            else bench.mapProperty().set((MapKind) is.getUserData());
        });
        bench.mapProperty().addListener((o, was, is) -> group.getToggles().forEach(t -> t.setSelected(t.getUserData() == is)));
        ToggleButton grey = toggle("as grey print", "Shows the colours as a printer without colour gives them.", pointing.greyProperty());
        grey.setMinWidth(Region.USE_PREF_SIZE);
        ScaleRuler ruler = new ScaleRuler(bench, pointing);
        Lesson.of(ruler, "Drag sideways to set what the strongest colour means; click twice for the paper's scale.");
        FlowPane box = new FlowPane(10, 4, kinds, grey, ruler);
        box.setAlignment(Pos.CENTER_LEFT);
        box.setPadding(new Insets(4, 8, 2, 8));
        // what is left of the row; a row of its own where that is too little
        ruler.prefWidthProperty().bind(Bindings.createDoubleBinding(() -> {
            double whole = box.getWidth() - 17, left = whole - kinds.getPrefWidth() - grey.getWidth() - 2 * box.getHgap();
            return left < RULER * pointing.lettersProperty().get() ? Math.max(300, whole) : left;
        }, box.widthProperty(), kinds.prefWidthProperty(), grey.widthProperty(), pointing.lettersProperty()));
        box.visibleProperty().bind(bench.laidProperty().isNotNull());
        return box;
    }

    private Node status() {
        ProgressBar bar = new ProgressBar();
        bar.setPrefWidth(220);
        bar.progressProperty().bind(bench.runner().doneProperty());
        Label doing = new Label();
        doing.textProperty().bind(bench.runner().doingProperty());
        Button stop = Looks.button("Stop", Feather.X, "Stops this; what was there before stays.", bench::stop);
        Label news = new Label();
        news.textProperty().bind(bench.newsProperty());
        news.visibleProperty().bind(bench.runner().busyProperty().not());
        news.managedProperty().bind(news.visibleProperty());
        Label late = new Label("The blank shown is not that of the order.");
        Button again = Looks.button("Lay it out again", Feather.REFRESH_CW, "Lays out what the order says now.", bench::again);
        for (Node node : List.of(late, again)) {
            node.visibleProperty().bind(bench.behindProperty());
            node.managedProperty().bind(node.visibleProperty());
        }
        HBox box = new HBox(10, late, again, news, bar, doing, stop);
        box.setAlignment(Pos.CENTER_LEFT);
        box.setPadding(new Insets(2, 8, 6, 8));
        box.setMinHeight(36);
        for (Node node : List.of(bar, doing, stop)) node.visibleProperty().bind(bench.runner().busyProperty());
        return box;
    }

    private void open() {
        files.toOpen(stage, "A mesh or a recipe", "Meshes and recipes", List.of(".yaml", ".yml", ".stl", ".obj", ".ply", ".off", ".gz"))
                .ifPresent(this::openAsking);
    }

    /** Opens in place of what is there, which is asked about once where it is not saved. */
    private void openAsking(Path path) {
        if (mayLeave()) bench.open(path);
    }

    private void demo(String name) {
        if (mayLeave()) bench.openDemo(name);
    }

    private void save() {
        if (bench.workProperty().get() == null) return;
        Path there = bench.fileProperty().get();
        if (there != null) bench.save(there);
        else saveAs();
    }

    private void saveAs() {
        if (bench.workProperty().get() != null) files.toWrite(stage, "Save the recipe as", fileName() + ".yaml").ifPresent(bench::save);
    }

    /** The panel's name as a file may be called. */
    private String fileName() {
        return bench.workProperty().get().recipe().name().replaceAll("[^\\p{L}\\p{N}]+", "-");
    }

    private boolean mayLeave() {
        if (!bench.unsavedProperty().get()) return true;
        ButtonType save = new ButtonType("Save", ButtonBar.ButtonData.YES), leave = new ButtonType("Leave it", ButtonBar.ButtonData.NO);
        Map<ButtonType, String> lessons = new LinkedHashMap<>();
        lessons.put(save, "Saves the recipe first.");
        lessons.put(leave, "Forgets what you changed since it was saved.");
        lessons.put(ButtonType.CANCEL, "Stays at the bench.");
        Optional<ButtonType> answer = ask("Not saved yet", "What you changed on " + bench.workProperty().get().recipe().name()
                + " is not saved.", lessons);
        if (answer.isPresent() && answer.get() == save) {
            save();
            return !bench.unsavedProperty().get();
        }
        return answer.isPresent() && answer.get() == leave;
    }

    /** @param lessons what each answer does, in the order of the buttons */
    private Optional<ButtonType> ask(String title, String words, Map<ButtonType, String> lessons) {
        Dialog<ButtonType> dialog = new Dialog<>();
        Looks.dress(dialog, stage);
        dialog.setTitle(title);
        Label label = Looks.wrapped(words, WORDS);
        VBox content = new VBox(label);
        content.setPadding(new Insets(14));
        dialog.getDialogPane().setContent(content);
        dialog.getDialogPane().getButtonTypes().setAll(lessons.keySet());
        for (ButtonType answer : lessons.keySet()) {
            Node button = dialog.getDialogPane().lookupButton(answer);
            ButtonBar.setButtonUniformSize(button, false);
            ((Region) button).setMinWidth(Region.USE_PREF_SIZE);
            Lesson.of(button, lessons.get(answer));
        }
        return dialog.showAndWait();
    }

    private void closing(WindowEvent e) {
        if (!mayLeave()) {
            e.consume();
            return;
        }
        bench.settings().put("width", getScene().getWidth());
        bench.settings().put("height", getScene().getHeight());
        bench.close();
    }

    /** Each answer is a button with the size it gives; the likeliest first. */
    private void askUnit() {
        UnitQuestion question = bench.questionProperty().get();
        if (question == null) return;
        Dialog<LengthUnit> dialog = new Dialog<>();
        Looks.dress(dialog, stage);
        dialog.setTitle("Which unit?");
        VBox content = new VBox(8, Looks.wrapped("The file " + question.file().getFileName()
                + " holds numbers but not their unit. How large is the panel across?", WORDS));
        for (UnitQuestion.Answer answer : question.answers()) {
            Button button = new Button(answer.words(bench.styleProperty().get()));
            button.setMaxWidth(Double.MAX_VALUE);
            button.setAlignment(Pos.CENTER_LEFT);
            Lesson.of(button, "Takes each number of the file for " + UnitQuestion.plural(answer.unit()) + "; the order keeps it.");
            button.setDefaultButton(answer == question.answers().get(0) && answer.likely());
            button.setOnAction(e -> {
                dialog.setResult(answer.unit());
                dialog.close();
            });
            content.getChildren().add(button);
        }
        content.setPadding(new Insets(14));
        dialog.getDialogPane().setContent(content);
        dialog.getDialogPane().getButtonTypes().setAll(ButtonType.CANCEL);
        Looks.answer(dialog, ButtonType.CANCEL, "Does not open the file.");
        dialog.setResultConverter(b -> null);
        Optional<LengthUnit> said = dialog.showAndWait();
        if (said.isPresent()) bench.answer(said.get());
        else bench.questionProperty().set(null);
    }

    /** Work that a killed program left is offered once. */
    void offer(List<Autosave.Left> left) {
        for (Autosave.Left one : left) {
            ButtonType on = new ButtonType("Carry on", ButtonBar.ButtonData.YES);
            ButtonType away = new ButtonType("Throw it away", ButtonBar.ButtonData.NO);
            Map<ButtonType, String> lessons = new LinkedHashMap<>();
            lessons.put(on, "Opens it as it was, still not saved.");
            lessons.put(away, "Forgets it for good.");
            lessons.put(ButtonType.CANCEL, "Leaves it where it is: you are asked again at the next start.");
            Optional<ButtonType> answer = ask("Work was found", "The program was stopped before " + one.recipe().name()
                    + " was saved. Carry on where you were?", lessons);
            if (answer.isPresent() && answer.get() == on) {
                bench.carryOn(one);
                return;
            }
            if (answer.isPresent() && answer.get() == away) Autosave.forget(one);
        }
    }
}
