package blankwright.viewer;

import blankwright.num.Explained;
import blankwright.project.Handwork;
import blankwright.project.RecipeException;
import blankwright.project.ToolReader;
import blankwright.project.ToolWriter;
import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.LengthStyle;
import blankwright.viewer.model.ToolDraft;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.event.ActionEvent;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Dialog;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.Window;
import javafx.util.StringConverter;
import org.kordamp.ikonli.feather.Feather;

/** The tools at hand with their reach: one line each, typed over; read from a list and kept as one. */
final class ToolList {
    private static final double WIDE = 640;             // px

    private final Bench bench;
    private final AskFile files;
    private final LengthStyle style;
    private final Dialog<ButtonType> dialog = new Dialog<>();
    private final GridPane grid = new GridPane();
    private final Label trouble = Looks.wrapped("", WIDE), news = new Label();
    private final List<Line> lines = new ArrayList<>();

    /** The fields of one tool. */
    private record Line(TextField name, ChoiceBox<Instruction> does, TextField reach, TextField cost, Button away) {
        ToolDraft draft() {
            return new ToolDraft(name.getText(), does.getValue(), reach.getText(), cost.getText());
        }
    }

    ToolList(Bench bench, Window owner, AskFile files) {
        this.bench = bench;
        this.files = files;
        style = bench.styleProperty().get();
        grid.setHgap(8);
        grid.setVgap(6);
        Label words = Looks.wrapped("What you have, and how far in from a free edge it works along the skin: the throat of a jaw tool or a wheel,"
                + " the depth of a tuck; or anywhere. The cost is the time the same work takes, 1 for the quickest. With no tool listed,"
                + " whatever is needed is taken to be possible anywhere.", WIDE);
        Button add = Looks.button("Add a tool", Feather.PLUS, "One line more.", () -> {
            line(ToolDraft.blank(style));
            lay();
            lines.get(lines.size() - 1).name().requestFocus();
        });
        Button read = Looks.button("Read a list…", Feather.FOLDER, "Takes the tools from a file; see the manual, least work.", () -> read(owner));
        Button keep = Looks.button("Keep as a list…", Feather.SAVE, "Writes these tools to a file of their own, for other panels.", () ->
                keep(owner));
        trouble.getStyleClass().add("refused");
        ScrollPane scroll = new ScrollPane(grid);
        scroll.setFitToWidth(true);
        scroll.setPrefViewportHeight(220);
        VBox content = new VBox(12, words, scroll, new FlowPane(8, 6, add, read, keep), trouble, news);
        for (Label label : List.of(trouble, news)) label.managedProperty().bind(label.textProperty().isNotEmpty());
        content.setPadding(new Insets(14));
        Looks.dress(dialog, owner);
        dialog.setTitle("Tools at hand");
        dialog.getDialogPane().setContent(content);
        ButtonType use = new ButtonType("Use these", ButtonBar.ButtonData.OK_DONE);
        dialog.getDialogPane().getButtonTypes().setAll(use, ButtonType.CANCEL);
        Looks.answer(dialog, use, "Lays the blank out for these tools.");
        Looks.answer(dialog, ButtonType.CANCEL, "Leaves the tools as they were.");
        dialog.getDialogPane().lookupButton(use).addEventFilter(ActionEvent.ACTION, e -> {
            if (!use()) e.consume();
        });
        put(bench.workProperty().get().recipe().handwork().tools());
    }

    Dialog<ButtonType> dialog() {
        return dialog;
    }

    void ask() {
        dialog.showAndWait();
    }

    private void put(List<Tool> tools) {
        lines.clear();
        for (Tool tool : tools) line(ToolDraft.of(tool, style));
        lay();
    }

    private void line(ToolDraft draft) {
        TextField name = new TextField(draft.name()), reach = new TextField(draft.reach()), cost = new TextField(draft.cost());
        name.setPromptText("name");
        reach.setPrefColumnCount(8);
        cost.setPrefColumnCount(5);
        ChoiceBox<Instruction> does = new ChoiceBox<>();
        does.getItems().setAll(Instruction.SHRINK, Instruction.STRETCH);
        does.setConverter(new StringConverter<>() {
            @Override public String toString(Instruction what) {
                return what == null ? "" : what.word() + "s";
            }

            @Override public Instruction fromString(String text) {
                return text.equals("shrinks") ? Instruction.SHRINK : Instruction.STRETCH;
            }
        });
        does.setValue(draft.does());
        does.setMinWidth(Region.USE_PREF_SIZE);
        Button away = new Button("", Icons.of(Feather.X));
        Line line = new Line(name, does, reach, cost, away);
        away.setOnAction(e -> {
            lines.remove(line);
            lay();
        });
        lines.add(line);
    }

    private void lay() {
        grid.getChildren().clear();
        String[] heads = {"tool", "what it does", "reach", "cost"};
        for (int c = 0; c < heads.length; c++) {
            Label head = new Label(heads[c]);
            head.getStyleClass().add("what");
            head.setMinWidth(Region.USE_PREF_SIZE);
            grid.add(head, c, 0);
        }
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            String number = "Tool " + (i + 1) + ": ";
            line.name().setAccessibleText(number + "name");
            line.does().setAccessibleText(number + "what it does");
            line.reach().setAccessibleText(number + "how far in from an edge it reaches, or anywhere");
            line.cost().setAccessibleText(number + "cost against the quickest");
            line.away().setAccessibleText("Take tool " + (i + 1) + " off the list");
            Lesson.of(line.name(), "What you call tool " + (i + 1) + ": so it is named where the work is told.");
            Lesson.of(line.does(), "What tool " + (i + 1) + " does; one that does both stands there twice.");
            Lesson.of(line.reach(), "How far in from a free edge tool " + (i + 1) + " works, along the skin; or the word anywhere.");
            Lesson.of(line.cost(), "How long tool " + (i + 1) + " takes for the same work: 1 for the quickest, 2 for twice as long.");
            Lesson.of(line.away(), "Takes tool " + (i + 1) + " off the list.");
            grid.addRow(i + 1, line.name(), line.does(), line.reach(), line.cost(), line.away());
        }
        trouble.setText("");
        news.setText("");
    }

    /** @throws IllegalArgumentException where a line cannot be read */
    private List<Tool> tools() {
        return ToolDraft.tools(lines.stream().map(Line::draft).toList(), style);
    }

    /** True where they were taken. */
    private boolean use() {
        try {
            List<Tool> tools = tools();
            Handwork now = bench.workProperty().get().recipe().handwork();
            return now.tools().equals(tools) || bench.change(r -> r.withHandwork(r.handwork().withTools(tools)));
        } catch (IllegalArgumentException e) {
            trouble.setText(Explained.words(e).text(style));
            return false;
        }
    }

    private void read(Window owner) {
        Optional<Path> chosen = files.toOpen(owner, "A list of tools", "Tool lists", List.of(".yaml", ".yml"));
        if (chosen.isEmpty()) return;
        try {
            put(ToolReader.read(chosen.get()));
        } catch (IOException e) {
            trouble.setText(chosen.get().getFileName() + " cannot be read. Choose another file.");
        } catch (RecipeException e) {
            trouble.setText(Explained.words(e).text(style));
        }
    }

    private void kept(Optional<String> why, Path to) {
        trouble.setText(why.orElse(""));
        news.setText(why.isPresent() ? "" : "Written: " + to);
    }

    private void keep(Window owner) {
        try {
            String text = ToolWriter.write(tools());
            files.toWrite(owner, "Keep the tools as", "my-tools.yaml").ifPresent(to -> kept(bench.keepText(text, to), to));
        } catch (IllegalArgumentException e) {
            trouble.setText(Explained.words(e).text(style));
        }
    }
}
