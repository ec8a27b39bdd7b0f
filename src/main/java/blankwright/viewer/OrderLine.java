package blankwright.viewer;

import blankwright.num.LengthUnit;
import blankwright.project.Aim;
import blankwright.project.Clamps;
import blankwright.project.Face;
import blankwright.project.Hand;
import blankwright.project.Handwork;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Laid;
import blankwright.viewer.model.UnitQuestion;
import blankwright.viewer.model.Work;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.util.StringConverter;

/** The recipe as a sentence whose words can be changed: what is ordered from the bench. */
final class OrderLine extends FlowPane {
    /** Without places of one's own. */
    private static final List<Optional<Clamps>> HELD = List.of(Optional.empty(), Optional.of(Clamps.NOWHERE), Optional.of(Clamps.RIMS),
            Optional.of(Clamps.CALM));

    private final Bench bench;
    private final AskFile files;
    private final TextField name = new TextField();
    private final Label size = new Label();
    private final ChoiceBox<LengthUnit> units = new ChoiceBox<>();
    private final HBox readIn;
    private final ChoiceBox<Face> face = new ChoiceBox<>();
    private final ChoiceBox<Optional<Metal>> metal = new ChoiceBox<>();
    private final MenuButton own = new MenuButton("own…");
    private final ChoiceBox<Aim> aim = new ChoiceBox<>();
    private final ChoiceBox<Optional<Clamps>> held = new ChoiceBox<>();
    private final Slider lean = new Slider(-1, 1, 0);
    private final HBox leaning;
    private final ChoiceBox<Optional<Hand>> hand = new ChoiceBox<>();
    private final LengthWord thickness, stations, trim;
    private final Button tools = new Button();
    private final ToggleButton more = new ToggleButton("more");
    private final DetailLine details;
    private boolean showing;

    /** @param toolList opens the list of tools */
    OrderLine(Bench bench, AskFile files, Runnable toolList) {
        super(6, 4);
        this.bench = bench;
        this.files = files;
        getStyleClass().add("order");
        setAlignment(Pos.CENTER_LEFT);
        name.getStyleClass().addAll("word", "name");
        name.setAccessibleText("Name of the panel");
        Lesson.of(name, "The panel's name, as it will stand on the paper.");
        name.textProperty().addListener((o, was, is) -> name.setPrefColumnCount(Math.max(5, is.length())));
        name.setOnAction(e -> named());
        name.focusedProperty().addListener((o, was, is) -> {
            if (!is) named();
        });
        choice(units, List.of(LengthUnit.values()), UnitQuestion::plural, "Unit of the mesh's numbers",
                "The unit the numbers in the mesh file are in: compare the size with your panel.", u -> recipe ->
                recipe.source() instanceof Source.OfMesh mesh ? recipe.withSource(new Source.OfMesh(mesh.file(), Optional.of(u))) : recipe);
        choice(face, List.of(Face.values()), Face::word, "Side of the sheet that the form is",
                "Which side of the sheet your shape is: a scan of the outside is the outside. The blank is that of the middle of the"
                + " sheet.",
                f -> recipe -> recipe.withSheet(f == Face.MIDDLE || recipe.thickness().isPresent() ? recipe.thickness()
                        : OptionalDouble.of(1), f));
        choice(metal, List.of(Optional.empty()), m -> m.map(OrderLine::called).orElse("unknown metal"), "Metal of the sheet",
                "The metal: what it bears before it splits, and when it must be annealed. The numbers are estimates: a test strip beats"
                + " them.",
                m -> recipe -> recipe.withMetal(m));
        own.getStyleClass().add("word");
        own.setAccessibleText("A list of your own alloys");
        Lesson.of(own, "Alloys of your own, from a file: their numbers stand in the list of metals, first. The recipe names the file.");
        own.setOnShowing(e -> own.getItems().setAll(ownAlloys()));
        own.getItems().setAll(ownAlloys());
        choice(aim, List.of(Aim.values()), a -> a == Aim.EVEN ? "spread evenly" : "for least work", "What is made least",
                "Spread evenly: distortion as even as the shape allows. For least work: the blank that needs the least forming of this"
                + " metal.",
                a -> recipe -> {
                    if (a == Aim.WORK && recipe.metal().isEmpty()) throw new IllegalArgumentException("Least work depends on the metal:"
                            + " choose it first.");
                    return recipe.withAim(a).withHandwork(a == Aim.WORK ? recipe.handwork() : Handwork.ANY);
                });
        choice(held, HELD,
                c -> c.map(OrderLine::held).orElse("not tried"), "Whether it is tried to bend the sheet on unworked",
                "Tries in the computer to bend the blank onto its form without working it: does it buckle, and where? It takes some"
                + " seconds.",
                c -> recipe -> recipe.withClamps(c));
        lean.setBlockIncrement(0.1);
        lean.setMajorTickUnit(0.5);
        lean.setSnapToTicks(false);
        lean.setPrefWidth(120);
        lean.setAccessibleText("Where the worker would rather do it, from all shrinking to all stretching");
        Lesson.of(lean, "Where you would rather do it: left all by shrinking, right all by stretching, in the middle"
                + " whatever is less work.");
        lean.valueProperty().addListener((o, was, is) -> {
            double to = Math.round(is.doubleValue() * 20) / 20.0;
            Work work = bench.workProperty().get();
            if (showing || work == null || to == work.recipe().handwork().lean()) return;
            bench.change(r -> r.withHandwork(r.handwork().withLean(to)), lean.isValueChanging() ? lean : null);
        });
        lean.valueChangingProperty().addListener((o, was, is) -> {
            if (!is) bench.letGo();
        });
        tools.getStyleClass().add("word");
        Lesson.of(tools, "The tools you have and how far each reaches in from an edge: the blank is laid out for"
                + " what they can do.");
        tools.setOnAction(e -> toolList.run());
        leaning = phrase("shrinking", lean, "stretching, with", tools, ",");
        more.getStyleClass().add("small");
        Lesson.of(more, "The measures of a panel by formula, notes for the bench, and how fine the mesh is.");
        details = new DetailLine(bench);
        details.visibleProperty().bind(more.selectedProperty().and(visibleProperty()));
        details.managedProperty().bind(details.visibleProperty());
        choice(hand, List.of(Optional.empty(), Optional.of(Hand.LEFT), Optional.of(Hand.RIGHT)), h -> h.map(Hand::word).orElse("either"),
                "Side of the machine",
                        "Which side of the machine the panel is for: written on the paper. The other hand is its mirror image.",
                h -> recipe -> recipe.withHand(h));
        thickness = new LengthWord(bench, "Thickness of the sheet",
                "Thickness of the sheet: measure it, a gauge number is another thickness in each metal.",
                "unknown", 0.1, (r, mm) -> r.withSheet(mm, mm.isEmpty() ? Face.MIDDLE : r.face()));
        stations = new LengthWord(bench, "Distance of the station lines",
                "How far apart the station lines are: lines square to the centre line, to measure"
                + " and to hold gauges at.", "", 10, (r, mm) -> r.withStations(mm.orElse(Recipe.USUAL_STATIONS)));
        trim = new LengthWord(bench, "Metal left on for trimming", "Metal left on outside the finished edge, to be trimmed after forming.",
                "nothing", 5,
                Recipe::withTrim);
        readIn = phrase("read in", units);
        getChildren().addAll(phrase(name, size), readIn, phrase("is the", face), phrase("of", thickness), phrase("sheet of", metal, own),
                phrase("laid out", aim), leaning,
                phrase("with station lines every", stations), phrase("and", trim, "left on for trimming,"),
                phrase("for the", hand, "side;"), phrase("bending it on unworked:", held), more);
        setVisible(false);
        setManaged(false);
        bench.workProperty().addListener((o, was, is) -> show(is));
        bench.metalsProperty().addListener((o, was, is) -> metals(is));
        metals(bench.metalsProperty().get());
        bench.laidProperty().addListener((o, was, is) -> size(is));
        bench.styleProperty().addListener((o, was, is) -> size(bench.laidProperty().get()));
    }

    private static String held(Clamps clamps) {
        if (clamps.rims()) return "held at its rims";
        if (clamps.calm()) return "held where it is calm";
        int places = clamps.spots().size();
        return places == 0 ? "held nowhere" : places == 1 ? "held at one place" : "held at " + places + " places";
    }

    private static String called(Metal metal) {
        return metal.alloy().name() + (metal.isOwn() ? " (own)" : "");
    }

    private void metals(List<Metal> all) {
        showing = true;
        List<Optional<Metal>> metals = new ArrayList<>(List.of(Optional.empty()));
        all.forEach(m -> metals.add(Optional.of(m)));
        Optional<Metal> now = metal.getValue();
        metal.getItems().setAll(metals);
        metal.setValue(now == null ? null : metals.stream().filter(m -> sameMetal(m, now)).findFirst().orElse(null));
        showing = false;
    }

    private List<MenuItem> ownAlloys() {
        List<MenuItem> items = new ArrayList<>();
        MenuItem take = new MenuItem("Take them from a file…");
        take.setOnAction(e -> files.toOpen(getScene().getWindow(), "A list of your own alloys", "Alloy lists", List.of(".yaml", ".yml"))
                .ifPresent(bench::ownAlloys));
        items.add(take);
        Work work = bench.workProperty().get();
        Optional<String> table = work == null ? Optional.empty() : work.recipe().metal().flatMap(Metal::table);
        if (table.isPresent()) {
            MenuItem leave = new MenuItem("Leave " + table.get() + " out");
            leave.setMnemonicParsing(false);
            leave.setOnAction(e -> bench.leaveOwnAlloys());
            items.add(leave);
        }
        return items;
    }

    /** The second line, shown where asked for. */
    DetailLine details() {
        return details;
    }

    private static String tools(Handwork work) {
        int count = work.tools().size();
        return count == 0 ? "any tools" : count == 1 ? "one tool" : count + " tools";
    }

    static HBox phrase(Object... parts) {
        HBox box = new HBox(6);
        box.setAlignment(Pos.CENTER_LEFT);
        for (Object part : parts) box.getChildren().add(part instanceof Node node ? node : new Label((String) part));
        return box;
    }

    private <T> void choice(ChoiceBox<T> box, List<T> values, Function<T, String> words, String name, String lesson,
            Function<T, UnaryOperator<Recipe>> how) {
        box.getItems().setAll(values);
        box.setConverter(new StringConverter<>() {
            @Override public String toString(T value) {
                return value == null ? "" : words.apply(value);
            }

            @Override public T fromString(String text) {
                return box.getItems().stream().filter(v -> words.apply(v).equals(text)).findFirst().orElse(null);
            }
        });
        box.getStyleClass().add("word");
        box.setAccessibleText(name);
        Lesson.of(box, lesson);
        box.valueProperty().addListener((o, was, is) -> {
            if (!showing && is != null && !bench.change(how.apply(is))) show(bench.workProperty().get());
        });
    }

    private void named() {
        Work work = bench.workProperty().get();
        if (work == null || name.getText().equals(work.recipe().name())) return;
        if (name.getText().isBlank()) name.setText(work.recipe().name());
        else bench.change(r -> r.withName(name.getText().strip()));
    }

    private void show(Work work) {
        if (work == null) return;
        showing = true;
        Recipe recipe = work.recipe();
        setVisible(true);
        setManaged(true);
        if (!name.getText().equals(recipe.name())) name.setText(recipe.name());
        boolean mesh = recipe.source() instanceof Source.OfMesh;
        readIn.setVisible(mesh);
        readIn.setManaged(mesh);
        if (recipe.source() instanceof Source.OfMesh m) units.setValue(m.units().orElse(LengthUnit.MM));
        face.setValue(recipe.face());
        aim.setValue(recipe.aim());
        held.getItems().setAll(HELD);
        if (!HELD.contains(recipe.clamps())) held.getItems().add(recipe.clamps());
        held.setValue(recipe.clamps());
        leaning.setVisible(recipe.aim() == Aim.WORK);
        leaning.setManaged(recipe.aim() == Aim.WORK);
        if (!lean.isValueChanging()) lean.setValue(recipe.handwork().lean());
        tools.setText(tools(recipe.handwork()));
        tools.setAccessibleText("Tools at hand: " + tools(recipe.handwork()));
        hand.setValue(recipe.hand());
        Optional<Metal> same = metal.getItems().stream().filter(m -> sameMetal(m, recipe.metal())).findFirst().orElse(null);
        if (same == null) metal.getItems().add(recipe.metal());     // of a table that is gone
        metal.setValue(same == null ? recipe.metal() : same);
        own.setText(recipe.metal().flatMap(Metal::table).map(t -> "of " + Path.of(t).getFileName()).orElse("own…"));
        thickness.show(recipe.thickness());
        stations.show(OptionalDouble.of(recipe.stations()));
        trim.show(recipe.trim());
        showing = false;
    }

    private static boolean sameMetal(Optional<Metal> one, Optional<Metal> other) {
        return one.map(m -> m.alloy().name()).equals(other.map(m -> m.alloy().name()))
                && one.flatMap(Metal::table).equals(other.flatMap(Metal::table));
    }

    private void size(Laid laid) {
        if (laid == null) return;
        var in = laid.result().input();
        size.setText("(" + bench.styleProperty().get().size(in.dx(), in.dy(), in.dz()) + ")");
        Lesson.of(size, "Size of the form along x, y and z. Is that your panel? If not, the unit is wrong.");
    }
}
