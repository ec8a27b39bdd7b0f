package blankwright.viewer;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.application.Platform;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;
import javafx.stage.Stage;
import javafx.stage.Window;
import org.kordamp.ikonli.feather.Feather;

/** The manual in a window of its own: the pages of docs/manual, opened at the part about what one is doing. */
final class ManualWindow {
    private static final Pattern SPAN = Pattern.compile("\\*\\*(.+?)\\*\\*|\\*(.+?)\\*|`(.+?)`|\\[([^\\]]+)\\]\\(([^)]+)\\)");

    private final Stage stage = new Stage();
    private final VBox text = new VBox(8);
    private final ScrollPane scroll = new ScrollPane(text);
    private final Deque<String> before = new ArrayDeque<>();
    private String now = "";

    ManualWindow(Window owner, String style, boolean dark) {
        stage.initOwner(owner);
        stage.setTitle("Blankwright: the manual");
        Button back = new Button("Back", Icons.of(Feather.ARROW_LEFT)), all = new Button("All pages", Icons.of(Feather.BOOK_OPEN));
        Lesson.of(back, "The page you came from.");
        Lesson.of(all, "What each page of the manual is about.");
        back.setOnAction(e -> {
            if (!before.isEmpty()) show(before.pop(), "", false);
        });
        all.setOnAction(e -> show("README.md", "", true));
        HBox bar = new HBox(8, back, all);
        bar.setPadding(new Insets(8));
        text.setPadding(new Insets(8, 24, 24, 24));
        text.setMaxWidth(820);
        scroll.setFitToWidth(true);
        BorderPane pane = new BorderPane(scroll);
        pane.setTop(bar);
        pane.setStyle(style);
        pane.getStyleClass().addAll("bench", dark ? "dark" : "light");
        Scene scene = new Scene(pane, 760, 640);
        scene.getStylesheets().add(String.valueOf(ManualWindow.class.getResource("/blankwright/viewer/bench.css")));
        stage.setScene(scene);
    }

    Stage stage() {
        return stage;
    }

    /** Opens a page at a heading; the top where there is none of that name. */
    void open(String page, String heading) {
        show(page, heading, true);
        stage.show();
        stage.toFront();
    }

    private void show(String page, String heading, boolean forwards) {
        if (forwards && !now.isEmpty() && !now.equals(page)) before.push(now);
        now = page;
        text.getChildren().clear();
        Node at = null;
        List<String> lines = read(page).lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.startsWith("#")) {
                Label head = new Label(line.replaceFirst("#+ *", ""));
                head.setWrapText(true);
                head.setStyle("-fx-font-weight: bold; -fx-font-size: " + (line.startsWith("##") ? "1.25em;" : "1.7em;"));
                text.getChildren().add(head);
                if (head.getText().equals(heading)) at = head;
            } else if (line.startsWith("```")) {
                StringBuilder code = new StringBuilder();
                while (i + 1 < lines.size() && !lines.get(++i).startsWith("```")) code.append(code.isEmpty() ? "" : "\n")
                        .append(lines.get(i));
                Label label = new Label(code.toString());
                label.setWrapText(true);
                label.setStyle("-fx-font-family: monospace;");
                text.getChildren().add(label);
            } else if (line.startsWith("    ")) {
                StringBuilder code = new StringBuilder(line.strip());
                while (i + 1 < lines.size() && lines.get(i + 1).startsWith("    ")) code.append('\n').append(lines.get(++i).strip());
                Label label = new Label(code.toString());
                label.setWrapText(true);
                label.setStyle("-fx-font-family: monospace;");
                text.getChildren().add(label);
            } else if (line.startsWith("|")) {
                List<String> rows = new ArrayList<>(List.of(line));
                while (i + 1 < lines.size() && lines.get(i + 1).startsWith("|")) rows.add(lines.get(++i));
                text.getChildren().add(table(rows));
            } else if (!line.isBlank() && !line.startsWith("![")) {         // pictures are for reading beside the program
                StringBuilder whole = new StringBuilder(line);
                while (i + 1 < lines.size() && lines.get(i + 1).matches("\\S.*") && !lines.get(i + 1).matches("[#|>-].*|\\d+\\. .*"))
                    whole.append(' ').append(lines.get(++i));
                while (i + 1 < lines.size() && lines.get(i + 1).matches(" {1,3}\\S.*")) whole.append(' ').append(lines.get(++i).strip());
                text.getChildren().add(flow(whole.toString().replaceFirst("^- ", "•  ")));
            }
        }
        Node target = at;
        Platform.runLater(() -> Platform.runLater(() -> {           // once the window has its width and the lines their breaks
            double room = text.getHeight() - scroll.getViewportBounds().getHeight();
            scroll.setVvalue(target == null || room <= 0 ? 0 : Math.min(1, target.getBoundsInParent().getMinY() / room));
        }));
    }

    private TextFlow flow(String line) {
        TextFlow flow = new TextFlow();
        Matcher span = SPAN.matcher(line);
        int from = 0;
        while (span.find()) {
            plain(flow, line.substring(from, span.start()), "");
            if (span.group(1) != null) plain(flow, span.group(1), "-fx-font-weight: bold;");
            else if (span.group(2) != null) plain(flow, span.group(2), "-fx-font-style: italic;");
            else if (span.group(3) != null) plain(flow, span.group(3), "-fx-font-family: monospace;");
            else link(flow, span.group(4), span.group(5));
            from = span.end();
        }
        plain(flow, line.substring(from), "");
        return flow;
    }

    private static void plain(TextFlow flow, String words, String style) {
        if (words.isEmpty()) return;
        Text text = new Text(words.replace("\\|", "|"));
        text.getStyleClass().add("text");
        text.setStyle("-fx-fill: -color-fg-default;" + style);
        flow.getChildren().add(text);
    }

    private void link(TextFlow flow, String words, String to) {
        String[] parts = to.split("#", 2);
        if (!exists(parts[0])) {
            plain(flow, words, "");
            return;
        }
        Hyperlink link = new Hyperlink(words);
        link.setOnAction(e -> show(parts[0], "", true));
        Lesson.of(link, "Goes to that page of the manual; Back comes here again.");
        flow.getChildren().add(link);
    }

    private Node table(List<String> rows) {
        GridPane grid = new GridPane();
        grid.setHgap(14);
        grid.setVgap(4);
        int at = 0;
        for (String row : rows) {
            if (row.matches("\\|[-|: ]+\\|?")) continue;
            String[] cells = row.replaceFirst("^\\|", "").split("(?<!\\\\)\\|");
            for (int c = 0; c < cells.length; c++) {
                TextFlow cell = flow((at == 0 ? "**" + cells[c].strip().replace("`", "") + "**" : cells[c].strip()).replace("****", ""));
                cell.setMaxWidth(cells.length < 2 ? 720 : c == 0 ? 210 : 510.0 / (cells.length - 1));
                cell.setMinHeight(Region.USE_PREF_SIZE);
                grid.add(cell, c, at);
            }
            at++;
        }
        return grid;
    }

    private static boolean exists(String page) {
        return page.endsWith(".md") && ManualWindow.class.getResource("/META-INF/blankwright/manual/" + page) != null;
    }

    private static String read(String page) {
        try (InputStream in = ManualWindow.class.getResourceAsStream("/META-INF/blankwright/manual/" + page)) {
            return in == null ? "# This page is missing" : new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
