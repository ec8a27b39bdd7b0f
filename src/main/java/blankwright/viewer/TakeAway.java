package blankwright.viewer;

import blankwright.drawing.Drawing;
import blankwright.drawing.Layer;
import blankwright.drawing.Paper;
import blankwright.drawing.PdfPrinter;
import blankwright.job.Output;
import blankwright.outline.Curve.Box;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Ink;
import blankwright.viewer.model.Pages;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Dialog;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import javafx.stage.Window;
import javafx.util.StringConverter;
import org.kordamp.ikonli.feather.Feather;

/** What goes to the bench: which files, on which paper, into which folder, with the sheets as they will come out of the printer. */
final class TakeAway {
    static final String NONE = "No printer is set up on this computer. Write the PDF and print it where there is one, at 100 %; or set a"
            + " printer up in the system's settings and come back here.";
    /** As often as they are wanted at a bench. */
    private static final List<Output> ORDER = List.of(Output.PDF, Output.DXF, Output.SVG, Output.PNG, Output.MD, Output.CSV, Output.OBJ, Output.VTU);
    private static final double WIDE = 460, HIGH = 380, WORDS = WIDE + 300;

    private final Bench bench;
    private final Drawing drawing;
    private final Ink ink;
    private final Map<Output, CheckBox> asked = new EnumMap<>(Output.class);
    private final ChoiceBox<Paper> paper = new ChoiceBox<>();
    private final TextField folder = new TextField();
    private final Label sheets = new Label();
    private final ChoiceBox<PdfPrinter> printers = new ChoiceBox<>();
    private final Button cover = new Button("Print the cover first"), print = new Button("Print the sheets", Icons.of(Feather.PRINTER));
    private final Label noPrinter = Looks.wrapped("Looking for printers…", WORDS);
    private final HBox printing = new HBox(8, kept("Printer:"), printers, cover, print);
    private final Canvas preview = new Canvas(WIDE, HIGH);
    private final Dialog<ButtonType> dialog = new Dialog<>();

    TakeAway(Bench bench, Window owner, AskFile ask) {
        this.bench = bench;
        drawing = bench.drawing();
        ink = Ink.of(drawing);
        VBox files = new VBox(6, new Label("Files:"));
        for (Output output : ORDER) {
            CheckBox box = new CheckBox(words(output));
            box.setSelected(true);
            box.setMinWidth(Region.USE_PREF_SIZE);
            Lesson.of(box, lesson(output));
            asked.put(output, box);
            files.getChildren().add(box);
        }
        paper.getItems().setAll(Paper.values());
        paper.setValue(bench.settings().get("paper", Paper.A4));
        paper.setAccessibleText("Paper of the printer");
        Lesson.of(paper, "What your printer takes: the sheets are cut out for it.");
        paper.valueProperty().addListener((o, was, is) -> draw());
        HBox on = new HBox(8, kept("Paper of the printer:"), paper);
        paper.setMinWidth(Region.USE_PREF_SIZE);
        folder.setText(start().toString());
        folder.setPrefColumnCount(30);
        folder.setAccessibleText("Folder for the files");
        Lesson.of(folder, "Where the files go: the folder is made where there is none, and files of the same name are replaced.");
        Button choose = new Button("Choose…");
        Lesson.of(choose, "Looks for another folder.");
        choose.setMinWidth(Region.USE_PREF_SIZE);
        choose.setOnAction(e -> ask.folder(owner, "Folder for the files").ifPresent(this::into));
        HBox.setHgrow(folder, Priority.ALWAYS);
        HBox into = new HBox(8, kept("Into the folder:"), folder, choose);
        sheets.setWrapText(true);
        Label care = Looks.wrapped("Print at 100 %, no fit to page; measure the check squares both ways before you cut. Cut edges are sharp:"
                + " gloves for handling, none at rotating machines.", WORDS);
        for (HBox row : List.of(on, into)) row.setAlignment(Pos.CENTER_LEFT);
        HBox beside = new HBox(20, new VBox(14, files, on, sheets), preview);
        Label said = Looks.wrapped("", WORDS);
        said.textProperty().bind(Bindings.when(bench.troubleProperty().isNotEmpty()).then(bench.troubleProperty())
                .otherwise(bench.newsProperty()));
        said.managedProperty().bind(said.textProperty().isNotEmpty());
        VBox content = new VBox(14, beside, printing(), said, into, care);
        content.setPadding(new Insets(12));
        Looks.dress(dialog, owner);
        dialog.setTitle("Take away");
        dialog.getDialogPane().setContent(content);
        ButtonType write = new ButtonType("Write the files", ButtonBar.ButtonData.OK_DONE), close = new ButtonType("Close",
                ButtonBar.ButtonData.CANCEL_CLOSE);
        dialog.getDialogPane().getButtonTypes().setAll(write, close);
        Looks.answer(dialog, write, "Writes all that is ticked into the folder, all of it or nothing.");
        Looks.answer(dialog, close, "Goes back to the bench; nothing is written.");
        draw();
    }

    /** The printer's own row; while none is known, what to do instead. */
    private Node printing() {
        printers.setAccessibleText("Printer");
        Lesson.of(printers, "Which of this computer's printers gets the sheets.");
        printers.setConverter(new StringConverter<>() {
            @Override public String toString(PdfPrinter printer) {
                return printer == null ? "" : printer.name();
            }

            @Override public PdfPrinter fromString(String name) {
                return printers.getItems().stream().filter(p -> p.name().equals(name)).findFirst().orElse(null);
            }
        });
        Lesson.of(cover, "One sheet with check squares: measure them both ways, then print the rest.");
        Lesson.of(print, "All sheets at true size, one side of the paper, with the cover.");
        cover.setOnAction(e -> print(true));
        print.setOnAction(e -> print(false));
        printers.setMaxWidth(320);
        for (Region part : List.of(cover, print)) part.setMinWidth(Region.USE_PREF_SIZE);
        printing.setAlignment(Pos.CENTER_LEFT);
        show(List.of(), "Looking for printers…");
        CompletableFuture.supplyAsync(PdfPrinter::all).exceptionally(e -> List.of()).thenAccept(found -> Platform.runLater(() ->
                show(found, NONE)));
        return new StackPane(noPrinter, printing);
    }

    /** @param without what is said where there is none */
    void show(List<PdfPrinter> found, String without) {
        printers.getItems().setAll(found);
        if (!found.isEmpty()) printers.setValue(found.get(0));
        printing.setVisible(!found.isEmpty());
        noPrinter.setVisible(found.isEmpty());
        noPrinter.setText(without);
        StackPane.setAlignment(noPrinter, Pos.CENTER_LEFT);
        boolean fits = !Pages.of(drawing, paper.getValue()).sheets().isEmpty();
        print.setDisable(!fits);
        cover.setDisable(!fits);
        Scene scene = dialog.getDialogPane().getScene();
        if (scene != null && scene.getWindow() != null) Platform.runLater(scene.getWindow()::sizeToScene);
    }

    private void print(boolean coverOnly) {
        bench.settings().put("paper", paper.getValue().name());
        bench.print(printers.getValue(), paper.getValue(), coverOnly);
        if (!coverOnly) dialog.close();
    }

    private static Label kept(String words) {
        Label label = new Label(words);
        label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }

    Dialog<ButtonType> dialog() {
        return dialog;
    }

    /** Asks, and writes in the background where the answer is yes. */
    void ask() {
        boolean yes = dialog.showAndWait().filter(b -> b.getButtonData() == ButtonBar.ButtonData.OK_DONE).isPresent();
        if (yes) write();
    }

    void write() {
        bench.settings().put("paper", paper.getValue().name());
        Set<Output> files = EnumSet.noneOf(Output.class);
        asked.forEach((output, box) -> {
            if (box.isSelected()) files.add(output);
        });
        bench.takeAway(Path.of(folder.getText().strip()), files, paper.getValue());
    }

    void into(Path other) {
        folder.setText(other.toString());
    }

    private Path start() {
        String name = bench.workProperty().get().recipe().name().replaceAll("[^\\p{L}\\p{N}]+", "-");
        return bench.folder().orElse(Path.of(System.getProperty("user.home"))).resolve(name);
    }

    private static String words(Output output) {
        return switch (output) {
            case PDF -> "PDF: the blank on sheets of paper";
            case DXF -> "DXF: the blank for a cutting shop";
            case SVG -> "SVG: the blank for a plotter or cutter";
            case PNG -> "PNG: the work maps as pictures";
            case CSV -> "CSV: the list of work";
            case MD -> "MD: the work sheet, to read and print";
            case OBJ -> "OBJ: form and blank as a mesh";
            case VTU -> "VTU: all numbers on the form";
        };
    }

    private static String lesson(Output output) {
        return switch (output) {
            case PDF -> "Sheets to be taped together at their marks, with a cover that shows how.";
            case DXF -> "Lines and arcs on layers, in millimetres, as laser, plasma and water-jet shops read them.";
            case SVG -> "The same lines for a pen plotter, a vinyl cutter or a drawing program, in millimetres.";
            case PNG -> "Where to shrink and stretch, on the blank and on the form, for a screen or a wall.";
            case CSV -> "A row for each zone, for a table of your own.";
            case MD -> "The steps in order, each with its check, and what every number stands on.";
            case OBJ -> "Each corner with its place on the form and on the blank, for another program of shapes.";
            case VTU -> "Strain and thickness of every triangle, for a program that draws fields.";
        };
    }

    private void draw() {
        Pages pages = Pages.of(drawing, paper.getValue());
        sheets.setText(pages.words());
        GraphicsContext g = preview.getGraphicsContext2D();
        g.setFill(Color.gray(0.8));
        g.fillRect(0, 0, WIDE, HIGH);
        Box box = drawing.box();
        for (Pages.Sheet sheet : pages.sheets()) box = box.with(sheet.window());
        double scale = Math.min((WIDE - 20) / box.width(), (HIGH - 20) / box.height());
        double x0 = WIDE / 2 - scale * (box.x0() + box.x1()) / 2, y0 = HIGH / 2 + scale * (box.y0() + box.y1()) / 2;
        g.setFont(Font.font(12));
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        for (Pages.Sheet sheet : pages.sheets()) {
            Box w = sheet.window();
            g.setFill(Color.gray(1, 0.7));
            g.fillRect(x0 + scale * w.x0(), y0 - scale * w.y1(), scale * w.width(), scale * w.height());
            g.setStroke(Color.gray(0.4));
            g.setLineWidth(0.8);
            g.strokeRect(x0 + scale * w.x0(), y0 - scale * w.y1(), scale * w.width(), scale * w.height());
        }
        for (Ink.Stroke stroke : ink.strokes()) {
            g.setStroke(Palette.colour(stroke.layer().rgb()));
            g.setLineWidth(stroke.layer() == Layer.CUT ? 1.4 : 0.7);
            double[] xy = stroke.xy();
            g.beginPath();
            for (int i = 0; i < xy.length; i += 2) {
                if (i == 0) g.moveTo(x0 + scale * xy[0], y0 - scale * xy[1]);
                else g.lineTo(x0 + scale * xy[i], y0 - scale * xy[i + 1]);
            }
            if (stroke.closed()) g.closePath();
            g.stroke();
        }
        for (Pages.Sheet sheet : pages.sheets()) {
            Box w = sheet.window();
            g.setFill(Color.gray(0.1, 0.8));
            g.fillText(sheet.label(), x0 + scale * (w.x0() + w.x1()) / 2, y0 - scale * (w.y0() + w.y1()) / 2);
        }
    }
}
