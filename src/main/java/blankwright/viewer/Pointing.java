package blankwright.viewer;

import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Place;
import blankwright.viewer.model.Tape;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;

/** What a hand does on either picture, the same on both: a light touch shows a place, a click holds it, a tape goes from click to click. */
final class Pointing {
    private final Bench bench;
    private final BooleanProperty held = new SimpleBooleanProperty(), taping = new SimpleBooleanProperty(), grey = new SimpleBooleanProperty();
    private final BooleanProperty dark = new SimpleBooleanProperty();
    private final ObjectProperty<Place> from = new SimpleObjectProperty<>();

    Pointing(Bench bench) {
        this.bench = bench;
        taping.addListener((o, was, is) -> from.set(null));
        bench.laidProperty().addListener((o, was, is) -> from.set(null));
        bench.placeProperty().addListener((o, was, is) -> {
            if (is == null) held.set(false);
        });
    }

    /** True while a tape is laid. */
    BooleanProperty tapingProperty() {
        return taping;
    }

    /** True while colours are shown as a grey printer gives them. */
    BooleanProperty greyProperty() {
        return grey;
    }

    /** True where the window is dark. */
    BooleanProperty darkProperty() {
        return dark;
    }

    /** Where the tape begins; null where it does not yet. */
    ObjectProperty<Place> fromProperty() {
        return from;
    }

    void hover(Optional<Place> place) {
        if (!held.get()) bench.placeProperty().set(place.orElse(null));
    }

    void click(Optional<Place> place, boolean onBlank) {
        if (place.isEmpty()) {
            letGo();
        } else if (!taping.get()) {
            bench.placeProperty().set(place.get());
            held.set(true);
        } else if (from.get() == null) {
            from.set(place.get());
        } else {
            Tape tape = Tape.between(bench.laidProperty().get(), from.get(), place.get(), onBlank);
            from.set(null);
            if (tape.on(bench.laidProperty().get()).isPresent()) bench.lay(tape);
            else bench.troubleProperty().set("No tape lies straight between these two places: they are on two pieces, or a hole is in the way."
                    + " Choose two places on one piece.");
        }
    }

    /** Escape: nothing is held any more. */
    void letGo() {
        from.set(null);
        taping.set(false);
        held.set(false);
        bench.placeProperty().set(null);
    }
}
