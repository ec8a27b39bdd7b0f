package blankwright.viewer;

import blankwright.job.BucklingWords;
import blankwright.job.Result;
import blankwright.job.SensitivityWords;
import blankwright.mesh.Finding;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.Explained;
import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.CopiedNumbers;
import blankwright.viewer.model.Laid;
import blankwright.viewer.model.LengthStyle;
import blankwright.viewer.model.MapKind;
import blankwright.viewer.model.Place;
import blankwright.viewer.model.Skin;
import blankwright.viewer.model.SpotCard;
import blankwright.viewer.model.TapeRow;
import blankwright.viewer.model.Work;
import blankwright.viewer.model.WorkRow;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javafx.beans.binding.Bindings;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.TitledPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;

/** Between the hands: what is to be done, what the place pointed at says, the tapes, and what was odd about the mesh. */
final class WorkPane extends VBox {
    private final Bench bench;
    private final Pointing pointing;
    private final ListView<WorkRow> zones = new ListView<>();
    private final CheckBox all = new CheckBox("also what is left alone");
    private final GridPane facts = new GridPane();
    private final TextField span = new TextField();
    private final Label beside = new Label("Point at either picture: the same place lights up on the other, with its numbers here.");
    private final VBox tapes = new VBox(4);
    private final VBox seams = new VBox(4);
    private final VBox findings = new VBox(6);
    private final TitledPane found = new TitledPane("What was found", findings);
    private final Label warning = new Label();
    private final Button cure = new Button("Take the seams proposed", Icons.of(Feather.SCISSORS));
    private List<SpotCard.Fact> told = List.of();

    WorkPane(Bench bench, Pointing pointing) {
        this.bench = bench;
        this.pointing = pointing;
        getStyleClass().add("work");
        setSpacing(8);
        setPadding(new Insets(8));
        zones.setCellFactory(l -> new Row());
        zones.setAccessibleText("The work, hardest first. Choosing a zone or a flange frames it in both pictures.");
        zones.setPlaceholder(Looks.wrapped(new Label("Nothing here needs a tool: roll or bend it.")));
        zones.getSelectionModel().selectedItemProperty().addListener((o, was, is) -> bench.chosenProperty().set(is));
        zones.setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ESCAPE) zones.getSelectionModel().clearSelection();
        });
        Lesson.of(zones, "Choose one to have it framed in both pictures; Escape lets it go.");
        VBox.setVgrow(zones, Priority.ALWAYS);
        Lesson.of(all, "Areas with less than 0.1 % either way spring in by themselves; they are left alone.");
        all.selectedProperty().addListener((o, was, is) -> list());
        Label head = head("The work, hardest first");

        span.setPrefColumnCount(6);
        span.setAccessibleText("Length over which strains are told");
        Lesson.of(span, "Strains are told as a length over this length: choose what your rule or your dividers span.");
        span.setOnAction(e -> span());
        span.focusedProperty().addListener((o, was, is) -> {
            if (!is) span();
        });
        Button copy = new Button("Copy", Icons.of(Feather.COPY));
        Lesson.of(copy, "Puts these numbers, the tapes and the list of work on the clipboard as text.");
        copy.setOnAction(e -> copy());
        Label over = new Label("told over");
        over.setMinWidth(Region.USE_PREF_SIZE);
        copy.setMinWidth(Region.USE_PREF_SIZE);
        span.setMinWidth(Region.USE_PREF_SIZE);
        FlowPane measure = new FlowPane(6, 4, over, span, copy);
        measure.setAlignment(Pos.CENTER_LEFT);
        facts.setHgap(10);
        facts.setVgap(2);
        ColumnConstraints first = new ColumnConstraints();
        first.setMinWidth(Region.USE_PREF_SIZE);
        facts.getColumnConstraints().addAll(first, new ColumnConstraints());
        facts.setMinHeight(Region.USE_PREF_SIZE);
        facts.getStyleClass().add("facts");
        Looks.wrapped(beside);

        ToggleButton tape = new ToggleButton("Lay a tape", Icons.of(Feather.EDIT_3));
        tape.selectedProperty().bindBidirectional(pointing.tapingProperty());
        Lesson.of(tape, "Click two places on one picture: the tape tells its length on the blank and on the form."
                + " On the blank it lies straight, on the form it lies as seen from above it.");
        ToggleButton cut = new ToggleButton("Cut a seam", Icons.of(Feather.SCISSORS));
        cut.selectedProperty().bindBidirectional(pointing.cuttingProperty());
        Lesson.of(cut, "Click two places on a rim, or drag along the skin, on either picture: the panel is cut there."
                + " From a rim inwards it is a relief cut.");
        ToggleButton clamp = new ToggleButton("Clamp it", Icons.of(Feather.ANCHOR));
        clamp.selectedProperty().bindBidirectional(pointing.clampingProperty());
        Lesson.of(clamp, "Click the places where you would clamp the sheet: it is tried to bend it on unworked, held there. Needs the"
                + " metal and the thickness.");
        FlowPane laying = new FlowPane(6, 4, tape, cut, clamp);
        for (Node one : laying.getChildren()) one.getStyleClass().add("small");
        Label next = Looks.wrapped(new Label());
        next.textProperty().bind(Bindings.createStringBinding(this::next, pointing.tapingProperty(), pointing.cuttingProperty(),
                pointing.clampingProperty(),
                pointing.fromProperty()));
        next.managedProperty().bind(next.textProperty().isNotEmpty());
        next.visibleProperty().bind(next.managedProperty());
        next.getStyleClass().add("next");
        findings.getStyleClass().add("findings");
        found.setExpanded(false);
        Lesson.of(found, "What was odd about the mesh and what was done about it, buckling, and what small errors do.");
        found.setAnimated(false);
        warning.getStyleClass().add("warning");
        Looks.wrapped(warning);
        warning.managedProperty().bind(warning.visibleProperty());
        warning.setVisible(false);
        Lesson.of(cure, "Seams that were found to make this blank one that can be cut, or to let the tools reach."
                + " Undo takes them back.");
        cure.setOnAction(e -> bench.result().flatMap(Result::proposal)
                .ifPresent(p -> bench.change(r -> r.withSeams(p.taken().recipe().seams()))));
        cure.managedProperty().bind(cure.visibleProperty());
        cure.setVisible(false);
        getChildren().addAll(warning, cure, head, zones, all, head("Under the finger"), measure, beside, facts, laying, next, tapes, seams, new ClampList(bench),
                found);

        for (Node node : List.of(zones, facts, tapes, found))       // of what was laid out last
            node.opacityProperty().bind(Bindings.when(bench.firstAnswerProperty().isNull()).then(1.0).otherwise(0.45));
        bench.laidProperty().addListener((o, was, is) -> {
            list();
            findings(is);
            tapes();
        });
        bench.placeProperty().addListener((o, was, is) -> facts());
        bench.spanProperty().addListener((o, was, is) -> facts());
        bench.styleProperty().addListener((o, was, is) -> {
            list();
            facts();
            tapes();
            findings(bench.laidProperty().get());
        });
        bench.workProperty().addListener((o, was, is) -> {
            seams(is);
            tapes();
            facts();
        });
        facts();
    }

    ListView<WorkRow> zones() {
        return zones;
    }

    private static Label head(String words) {
        Label label = new Label(words);
        label.getStyleClass().add("head");
        return label;
    }

    /** What the hand is expected to do next. */
    private String next() {
        boolean begun = pointing.fromProperty().get() != null;
        if (pointing.clampingProperty().get()) return "Click a place where the sheet is held, then the next. Escape leaves it.";
        if (pointing.tapingProperty().get()) return begun ? "Now click where it ends." : "Click where the tape begins, on either picture.";
        if (!pointing.cuttingProperty().get()) return "";
        return begun ? "Now click where the seam ends." : "Click two places on a rim, or drag along the skin. Escape"
                + " leaves it.";
    }

    private void list() {
        Laid laid = bench.laidProperty().get();
        WorkRow chosen = zones.getSelectionModel().getSelectedItem();
        zones.getItems().setAll(laid == null ? List.of() : WorkRow.of(laid, all.isSelected()));
        if (chosen != null && zones.getItems().contains(chosen)) zones.getSelectionModel().select(chosen);
    }

    private void findings(Laid laid) {
        findings.getChildren().clear();
        LengthStyle style = bench.styleProperty().get();
        List<Sentence> list = new ArrayList<>();
        if (laid != null) {
            for (Finding finding : laid.result().findings()) list.add(finding.words());
            for (Skin skin : laid.skins()) skin.piece().buckled().ifPresent(b -> list.addAll(BucklingWords.of(b)));
            for (Skin skin : laid.skins()) skin.piece().sensitivity().ifPresent(s -> list.addAll(SensitivityWords.of(s)));
        }
        for (Sentence words : list) findings.getChildren().add(Looks.wrapped(new Label(words.text(style))));
        found.setText(list.isEmpty() ? "Nothing odd was found" : list.size() == 1 ? "One thing was found" : list.size()
                + " things were found");
        found.setDisable(list.isEmpty());
        List<String> warnings = laid == null ? List.of() : laid.result().warnings(style);
        warning.setText(String.join("\n", warnings));
        warning.setVisible(!warnings.isEmpty());
        cure.setVisible(laid != null && laid.result().proposal().isPresent());
    }

    private void facts() {
        Laid laid = bench.laidProperty().get();
        Place place = bench.placeProperty().get();
        Work work = bench.workProperty().get();
        LengthStyle style = bench.styleProperty().get();
        span.setText(style.typed(bench.spanProperty().get()));
        boolean there = laid != null && place != null && work != null;
        told = there ? SpotCard.of(laid, place, bench.spanProperty().get(), work.recipe().thickness(), style) : List.of();
        facts.getChildren().clear();
        for (int i = 0; i < told.size(); i++) {
            Label what = new Label(told.get(i).what());
            what.getStyleClass().add("what");
            facts.add(what, 0, i);
            facts.add(Looks.wrapped(new Label(told.get(i).amount().replace(" %", "\u00a0%"))), 1, i);
        }
        beside.setVisible(!there);
        beside.setManaged(!there);
        facts.setVisible(there);
        facts.setManaged(there);
    }

    private void span() {
        try {
            double mm = Lengths.parse(span.getText(), bench.styleProperty().get() == LengthStyle.MM ? LengthUnit.MM
                    : LengthUnit.IN);
            if (mm >= 1 && mm <= 10_000) bench.spanProperty().set(mm);
            else bench.warn(Sentence.say("Choose a span between %s and %s.", Sentence.length(1, 0), Sentence.length(10_000, 0)));
        } catch (IllegalArgumentException e) {
            bench.warn(Explained.words(e));
        }
        facts();
    }

    private void copy() {
        Laid laid = bench.laidProperty().get();
        if (laid == null) return;
        ClipboardContent content = new ClipboardContent();
        content.putString(CopiedNumbers.text(laid, bench.workProperty().get(), told, bench.styleProperty().get()));
        Clipboard.getSystemClipboard().setContent(content);
    }

    private void tapes() {
        tapes.getChildren().clear();
        Laid laid = bench.laidProperty().get();
        Work work = bench.workProperty().get();
        if (laid == null || work == null) return;
        for (TapeRow row : TapeRow.of(laid, work)) {
            tapes.getChildren().add(line("Tape " + row.number() + ": " + row.words(bench.styleProperty().get()), "Take tape "
                    + row.number() + " away",
                    () -> bench.takeAway(row.tape())));
        }
    }

    private void seams(Work work) {
        seams.getChildren().clear();
        int number = 1;
        for (DrawnSeam seam : work.recipe().seams()) {
            String name = "seam " + number++;
            seams.getChildren().add(line("S" + name.substring(1) + ", through " + seam.points().size() + " places: drag its ends on the form", "Leave " + name
                    + " out",
                    () -> bench.sew(seam)));
        }
    }

    private static HBox line(String text, String what, Runnable gone) {
        Label words = Looks.wrapped(new Label(text));
        HBox.setHgrow(words, Priority.ALWAYS);
        words.setMaxWidth(Double.MAX_VALUE);
        Button away = new Button("", Icons.of(Feather.X));
        away.setAccessibleText(what);
        away.getStyleClass().add("small");
        Lesson.of(away, what + ".");
        away.setOnAction(e -> gone.run());
        HBox line = new HBox(6, words, away);
        line.setAlignment(Pos.CENTER_LEFT);
        return line;
    }

    /** Name, what to do, how much; the strip at its side has its colour on the map. */
    private final class Row extends ListCell<WorkRow> {
        private final Label number = new Label(), todo = new Label(), amount = new Label(), more = new Label();
        private final Region strip = new Region();
        private final HBox box;

        Row() {
            strip.setMinWidth(8);
            strip.setMaxWidth(8);
            number.getStyleClass().add("number");
            number.setMinWidth(Region.USE_PREF_SIZE);
            todo.getStyleClass().add("todo");
            more.getStyleClass().add("what");
            for (Label label : List.of(todo, amount, more)) label.setWrapText(true);
            VBox words = new VBox(todo, amount, more);
            HBox.setHgrow(words, Priority.ALWAYS);
            box = new HBox(8, strip, number, words);
            box.setFillHeight(true);
            setPrefWidth(10);
        }

        /** As the words break in the list's width. */
        @Override
        protected double computePrefHeight(double width) {
            return getGraphic() == null ? super.computePrefHeight(width)
                    : snappedTopInset() + box.prefHeight(zones.getWidth() - 40) + snappedBottomInset();
        }

        @Override
        protected void updateItem(WorkRow row, boolean empty) {
            super.updateItem(row, empty);
            setGraphic(empty || row == null ? null : box);
            if (empty || row == null) {
                setAccessibleText("");
                return;
            }
            number.setText(row.name());
            todo.setText(row.todo());
            amount.setText(row.amount(bench.styleProperty().get()));
            more.setText(row.more(bench.styleProperty().get()));
            var tints = bench.laidProperty().get().tints(MapKind.WORK, OptionalDouble.empty());
            strip.setStyle(String.format("-fx-background-color: #%06x; -fx-border-color: #777;",
                    tints.colourOf(row.strain())));
            setAccessibleText(row.said(bench.styleProperty().get()));
        }
    }
}
