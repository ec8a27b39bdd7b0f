package blankwright.viewer;

import blankwright.shop.DrawnTape;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/**
 * What a hand does on either picture, the same on both: a light touch shows a place, a click holds it, tapes and seams go from click to
 * click.
 */
final class Pointing {
    private final Bench bench;
    private final BooleanProperty held = new SimpleBooleanProperty(), taping = new SimpleBooleanProperty(),
            cutting = new SimpleBooleanProperty(), clamping = new SimpleBooleanProperty();
    private final BooleanProperty grey = new SimpleBooleanProperty();
    private final ObservableList<Place> drawn = FXCollections.observableArrayList();
    private Optional<Place> pressed = Optional.empty();
    private final DoubleProperty letters = new SimpleDoubleProperty(1);
    private final BooleanProperty dark = new SimpleBooleanProperty();
    private final ObjectProperty<Place> from = new SimpleObjectProperty<>();

    Pointing(Bench bench) {
        this.bench = bench;
        taping.addListener((o, was, is) -> {
            from.set(null);
            if (is) only(taping);
        });
        cutting.addListener((o, was, is) -> {
            from.set(null);
            if (is) only(cutting);
        });
        clamping.addListener((o, was, is) -> {
            if (is) only(clamping);
        });
        bench.laidProperty().addListener((o, was, is) -> from.set(null));
        bench.placeProperty().addListener((o, was, is) -> {
            if (is == null) held.set(false);
        });
    }

    /** One thing at a time. */
    private void only(BooleanProperty one) {
        for (BooleanProperty other : List.of(taping, cutting, clamping)) if (other != one) other.set(false);
    }

    /** True while places are chosen where the sheet is held. */
    BooleanProperty clampingProperty() {
        return clamping;
    }

    /** True while nothing is laid, cut or clamped. */
    boolean idle() {
        return !taping.get() && !cutting.get() && !clamping.get();
    }

    /** True while a tape is laid. */
    BooleanProperty tapingProperty() {
        return taping;
    }

    /** True while a seam is drawn. */
    BooleanProperty cuttingProperty() {
        return cutting;
    }

    /** True while colours are shown as a grey printer gives them. */
    BooleanProperty greyProperty() {
        return grey;
    }

    /** How large letters are drawn: 1 as usual. */
    DoubleProperty lettersProperty() {
        return letters;
    }

    /** True where the window is dark. */
    BooleanProperty darkProperty() {
        return dark;
    }

    /** Where the tape begins; null where it does not yet. */
    ObjectProperty<Place> fromProperty() {
        return from;
    }

    /** What a drag has drawn of a seam so far. */
    ObservableList<Place> path() {
        return drawn;
    }

    /** Holds a place without laying or cutting anything there. */
    void hold(Place place) {
        bench.placeProperty().set(place);
        held.set(true);
    }

    void hover(Optional<Place> place) {
        if (!held.get()) bench.placeProperty().set(place.orElse(null));
    }

    /** @param reach how near to a rim is on it, mm */
    void click(Optional<Place> place, boolean onBlank, double reach) {
        if (place.isEmpty()) {
            if (idle()) letGo();                // a click beside the panel ends nothing that was begun: Escape does
        } else if (clamping.get()) {
            if (!bench.hold(place.get())) clamping.set(false);
        } else if (idle()) {
            hold(place.get());
        } else if (from.get() == null) {
            from.set(place.get());
        } else if (cutting.get()) {
            List<Place> path = List.of(from.get(), place.get());
            cutting.set(false);
            bench.cut(path, reach);
        } else {
            DrawnTape tape = bench.laidProperty().get().between(from.get(), place.get(), onBlank);
            from.set(null);
            if (bench.laidProperty().get().line(tape).isPresent()) bench.lay(tape);
            else bench.warn("No tape lies straight between these two places: they are on two pieces, or a hole is in"
                    + " the way. Choose two places on one piece.");
        }
    }

    /** The hand is put down: a drag begins here, if it is one. */
    void press(Optional<Place> place) {
        pressed = place;
        drawn.clear();
    }

    /** A seam drawn by dragging over the skin: places in order; nothing while no seam is drawn. */
    void draw(Optional<Place> place) {
        if (!cutting.get() || place.isEmpty()) return;
        if (drawn.isEmpty()) {
            from.set(pressed.orElse(place.get()));
            pressed.ifPresent(drawn::add);
        }
        drawn.add(place.get());
    }

    /** The drag has ended; a path of several places is a seam. */
    void drawn(double reach) {
        List<Place> path = new ArrayList<>();
        int steps = Math.min(drawn.size() - 1, 12);             // enough to follow a curve: between them the seam goes the shortest way
        for (int i = 0; i <= steps; i++) path.add(drawn.get((int) Math.round((double) i * (drawn.size() - 1) / Math.max(1, steps))));
        drawn.clear();
        if (path.size() < 3 || !cutting.get()) return;
        cutting.set(false);
        bench.cut(path, reach);
    }

    /** Escape: nothing is held any more. */
    void letGo() {
        from.set(null);
        taping.set(false);
        cutting.set(false);
        clamping.set(false);
        drawn.clear();
        held.set(false);
        bench.placeProperty().set(null);
    }
}
