package blankwright.viewer;

import blankwright.project.Clamps;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;

/** The places where the sheet is held while it is tried to bend it on unworked, each with how far round it. */
final class ClampList extends VBox {
    private final Bench bench;
    private final List<LengthWord> words = new ArrayList<>();

    ClampList(Bench bench) {
        super(4);
        this.bench = bench;
        managedProperty().bind(visibleProperty());
        bench.workProperty().addListener((o, was, is) -> show(is));
        show(bench.workProperty().get());
    }

    /** Those of a recipe; none where it is held in another way. */
    static List<Clamps.Spot> of(Work work) {
        return work == null ? List.of() : work.recipe().clamps().map(Clamps::spots).orElse(List.of());
    }

    private void show(Work work) {
        List<Clamps.Spot> spots = of(work);
        setVisible(!spots.isEmpty());
        while (words.size() > spots.size()) {
            words.remove(words.size() - 1);
            getChildren().remove(words.size());
        }
        while (words.size() < spots.size()) getChildren().add(line(words.size()));      // those there stay: one of them may be under the hand
        for (int i = 0; i < spots.size(); i++) words.get(i).show(OptionalDouble.of(spots.get(i).radius()));
    }

    private FlowPane line(int i) {
        String name = "clamp " + (i + 1);
        LengthWord radius = new LengthWord(bench, "Clamp " + (i + 1) + ": held within", "How far round the place the sheet is held.", "", 5,
                (r, mm) -> {
                    Clamps clamps = r.clamps().orElseThrow();
                    return r.withClamps(Optional.of(clamps.with(i, clamps.spots().get(i).withRadius(mm.orElseThrow()))));
                });
        words.add(radius);
        Button away = Looks.button("", Feather.X, "Takes " + name + " away.", () -> bench.change(r -> r.withClamps(r.clamps().map(c -> c.without(i)))));
        away.setAccessibleText("Take " + name + " away");
        away.getStyleClass().add("small");
        HBox phrase = OrderLine.phrase("C" + name.substring(1) + ": held within", radius, away);
        FlowPane line = new FlowPane(6, 2, phrase);
        line.setAlignment(Pos.CENTER_LEFT);
        return line;
    }
}
