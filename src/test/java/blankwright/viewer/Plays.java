package blankwright.viewer;

import static blankwright.viewer.Scenes.check;
import static blankwright.viewer.Scenes.fx;
import static blankwright.viewer.Scenes.inWindow;
import static blankwright.viewer.Scenes.same;
import static blankwright.viewer.Scenes.until;

import blankwright.drawing.Paper;
import blankwright.drawing.PdfPrinter;
import blankwright.picture.Picture;
import blankwright.picture.Tints;
import blankwright.project.Aim;
import blankwright.project.AlloyReader;
import blankwright.project.Face;
import blankwright.project.Metal;
import blankwright.project.RecipeWriter;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.FirstAnswer;
import blankwright.viewer.model.FlangeRow;
import blankwright.viewer.model.FlatView;
import blankwright.viewer.model.Laid;
import blankwright.viewer.model.LengthStyle;
import blankwright.viewer.model.MapKind;
import blankwright.viewer.model.Numbers;
import blankwright.viewer.model.Orbit;
import blankwright.viewer.model.Pages;
import blankwright.viewer.model.Place;
import blankwright.viewer.model.SeamGrip;
import blankwright.viewer.model.Side;
import blankwright.viewer.model.Ticks;
import blankwright.viewer.model.WorkRow;
import blankwright.viewer.model.ZoneRow;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.geometry.Point3D;
import javafx.scene.AccessibleAttribute;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.SubScene;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.TitledPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.input.ZoomEvent;
import javafx.scene.shape.MeshView;
import javafx.stage.Stage;
import javafx.stage.StageStyle;
import javafx.stage.Window;
import javafx.stage.WindowEvent;
import javax.print.DocFlavor;
import javax.print.StreamPrintServiceFactory;

/** What is played in the window; each leaves its picture. */
final class Plays {
    private Plays() { }

    /** The first thing a person sees, and the demo one click away. */
    static void welcome(Scenes s) {
        s.picture("welcome");
        Node button = named(s.pane, "Look at the mudguard of the Tern");
        s.click(button);
        s.settle();
        check(s.bench.laidProperty().get() != null, "nothing was opened");
        Picture picture = s.picture("mudguard");
        check(colours(picture) > 500, "the window is bare");
    }

    static void turnSlideAndZoom(Scenes s) {
        s.demo("seat-hoop");
        Orbit before = orbit(s);
        double w = fx(() -> s.pane.form().getWidth()), h = fx(() -> s.pane.form().getHeight());
        s.drag(s.pane.form(), w / 2, h / 2, w / 2 + 80, h / 2 + 40);
        same(-0.5, orbit(s).yaw() - before.yaw(), 0.02, "80 px to the right turn it by half a radian");
        same(0.25, orbit(s).pitch() - before.pitch(), 0.02, "40 px down raise the eye");
        Orbit turned = orbit(s);
        double[] held = turned.onPlane(60, -50, h);
        s.move(s.pane.form(), w / 2 + 60, h / 2 - 50);
        s.wheel(-3);
        check(orbit(s).span() < 0.95 * turned.span(), "the wheel brings it nearer");
        double[] seen = orbit(s).seen(held[0], held[1], held[2], h);
        same(60, seen[0], 1.5, "what lay under the pointer stays there");
        same(-50, seen[1], 1.5, "what lay under the pointer stays there");
        FlatView flat = s.pane.blank().viewProperty().get();
        double bw = fx(() -> s.pane.blank().getWidth()), bh = fx(() -> s.pane.blank().getHeight());
        s.drag(s.pane.blank(), bw / 2, bh / 2, bw / 2 + 50, bh / 2 - 20);
        same(flat.u() - 50 / flat.perMm(), s.pane.blank().viewProperty().get().u(), 2 / flat.perMm(), "the blank slides with the hand");
        s.picture("turned");
        fx(() -> s.pane.form().look(Side.ABOVE));
        fx(() -> s.pane.form().edgesProperty().set(true));
        s.picture("from-above-with-edges");
        fx(() -> s.pane.form().seeThroughProperty().set(true));
        s.picture("see-through");
        fx(() -> {
            s.pane.form().edgesProperty().set(false);
            s.pane.form().seeThroughProperty().set(false);
        });
    }

    /** The keyboard does what the mouse does. */
    static void keysReachTheFormAndTheBlank(Scenes s) {
        s.demo("vent-cowl");
        fx(() -> s.pane.form().requestFocus());
        double yaw = orbit(s).yaw();
        s.keys(KeyCode.LEFT);
        same(Math.toRadians(10), orbit(s).yaw() - yaw, 1e-9, "an arrow turns by ten degrees");
        s.keys(KeyCode.DIGIT1);
        same(Math.PI / 2, orbit(s).pitch(), 1e-9, "1 looks from above");
        double span = orbit(s).span();
        s.keys(KeyCode.ADD);
        check(orbit(s).span() < span, "plus brings it nearer");
        fx(() -> s.pane.blank().requestFocus());
        s.keys(KeyCode.ALT, KeyCode.RIGHT);
        Place first = fx(() -> s.bench.placeProperty().get());
        check(first != null, "Alt and an arrow point at a place");
        s.keys(KeyCode.ALT, KeyCode.RIGHT);
        Place second = fx(() -> s.bench.placeProperty().get());
        check(s.bench.laidProperty().get().numbers(second).u() > s.bench.laidProperty().get().numbers(first).u(), "and walk to the right");
        s.picture("keys");
        s.keys(KeyCode.ESCAPE);
        check(fx(() -> s.bench.placeProperty().get()) == null, "Escape lets it go");
    }

    /**
     * Wherever the pointer meets the form, its colour in the picture is that of the scale at the number told, and so is the colour of the
     * same place on the blank; spots nearer to a boundary of the colours than a fiftieth of the scale are left out.
     */
    static void theColourAtASpotIsThatOfItsNumber(Scenes s) {
        s.demo("lamp-bowl");
        fx(() -> {
            s.pane.form().shadedProperty().set(false);
            s.pane.form().bare(true);
            s.pane.blank().bare(true);
            s.pane.form().look(Side.ABOVE);
        });
        for (MapKind kind : List.of(MapKind.WORK, MapKind.THICKNESS)) {
            fx(() -> s.bench.mapProperty().set(kind));
            fx(() -> s.pane.pointing().letGo());
            Picture picture = s.picture("colours-" + kind.name().toLowerCase());
            Tints tints = fx(() -> s.bench.tintsProperty().get());
            double w = fx(() -> s.pane.form().getWidth()), h = fx(() -> s.pane.form().getHeight());
            int spots = 0;
            for (int i = 1; i < 8; i++) {
                for (int j = 1; j < 6; j++) {
                    s.move(s.pane.form(), w * i / 8, h * (0.25 + 0.5 * j / 6));
                    Place place = fx(() -> s.bench.placeProperty().get());
                    if (place == null) continue;
                    Numbers n = s.bench.laidProperty().get().numbers(place);
                    double value = kind == MapKind.WORK ? n.most() : n.left();
                    if (nearBoundary(tints, value)) continue;
                    spots++;
                    Point2D onForm = inWindow(s.pane.form(), w * i / 8, h * (0.25 + 0.5 * j / 6));
                    sameColour(tints.colourOf(value), picture.colour((int) onForm.getX(), (int) onForm.getY()), "form at " + value);
                    FlatView view = s.pane.blank().viewProperty().get();
                    Point2D onBlank = inWindow(s.pane.blank(), fx(() -> s.pane.blank().getWidth()) / 2 + view.x(n.u()),
                            fx(() -> s.pane.blank().getHeight()) / 2 + view.y(n.v()));
                    sameColour(tints.colourOf(value), picture.colour((int) onBlank.getX(), (int) onBlank.getY()), "blank at " + value);
                }
            }
            check(spots >= 10, "only " + spots + " spots were compared");
        }
        fx(() -> {
            s.bench.mapProperty().set(MapKind.WORK);
            s.pane.form().shadedProperty().set(true);
            s.pane.form().bare(false);
            s.pane.blank().bare(false);
        });
    }

    static void aZoneIsFramedInBoth(Scenes s) {
        s.demo("side-skin");
        fx(() -> s.pane.work().zones().requestFocus());
        fx(() -> s.pane.work().zones().getSelectionModel().select(0));
        s.picture("zone");
        framed(s);
    }

    static void aFlangeIsFramedInBoth(Scenes s) {
        s.demo("scuttle");
        fx(() -> s.pane.work().zones().requestFocus());
        WorkRow flange = fx(() -> s.pane.work().zones().getItems().stream().filter(row -> row instanceof FlangeRow).findFirst().orElseThrow());
        fx(() -> s.pane.work().zones().getSelectionModel().select(flange));
        s.picture("flange");
        check(fx(() -> s.bench.chosenProperty().get()) == flange, "the flange is chosen");
        framed(s);
        s.demo("mudguard");
        check(fx(() -> s.bench.chosenProperty().get()) == null, "of another panel");
    }

    /** What is chosen lies within both pictures and fills that of the blank. */
    private static void framed(Scenes s) {
        WorkRow row = fx(() -> s.bench.chosenProperty().get());
        check(row != null, "the list chooses");
        var border = s.bench.laidProperty().get().border(row);
        double w = fx(() -> s.pane.form().getWidth()), h = fx(() -> s.pane.form().getHeight()), bw = fx(() -> s.pane.blank().getWidth());
        FlatView view = s.pane.blank().viewProperty().get();
        double far = 0;
        for (int i = 0; i < border.pieces(); i++) {
            double[] p = border.form(i), seen = orbit(s).seen(p[0], p[1], p[2], h);
            check(Math.abs(seen[0]) < w / 2 && Math.abs(seen[1]) < h / 2, "the zone leaves the form's picture");
            far = Math.max(far, Math.abs(view.x(border.blank(i, 0, 0))));
            check(Math.abs(view.x(border.blank(i, 0, 0))) < bw / 2, "the zone leaves the blank's picture");
        }
        check(far > bw / 5, "the zone is lost in the blank's picture");
    }

    /** Another thickness by typing, another metal by choosing, both taken back by keys. */
    static void changesAreTypedAndTakenBack(Scenes s) {
        s.demo("vent-cowl");
        double area = s.bench.laidProperty().get().drawing().box().width();
        TextField word = (TextField) accessible(s.pane, "Thickness of the sheet");
        s.click(word);
        fx(word::selectAll);
        s.type("3");
        s.keys(KeyCode.ENTER);
        s.settle();
        same(3, s.bench.workProperty().get().recipe().thickness().getAsDouble(), 0, "thickness");
        check(Math.abs(s.bench.laidProperty().get().drawing().box().width() - area) > 0.5, "the blank follows");
        fx(() -> s.bench.change(r -> r.withMetal(Optional.of(Metal.shipped(
                AlloyReader.shipped().list().get(0).name())))));
        s.settle();
        check(s.bench.laidProperty().get().has(MapKind.LIMIT), "with a metal there is a map of its limit");
        fx(() -> s.bench.mapProperty().set(MapKind.LIMIT));
        s.picture("changed");
        s.keys(KeyCode.CONTROL, KeyCode.Z);
        s.keys(KeyCode.CONTROL, KeyCode.Z);
        s.settle();
        same(1, s.bench.workProperty().get().recipe().thickness().getAsDouble(), 0, "taken back");
        check(fx(() -> s.bench.mapProperty().get()) == MapKind.WORK, "without a metal the map of its limit is gone");
        check(!fx(() -> s.bench.unsavedProperty().get()), "as it was opened");
        fx(() -> word.setText("thick"));
        fx(() -> s.pane.form().requestFocus());
        s.picture("trouble");
        check(s.bench.troubleProperty().get().contains("is not a length"), s.bench.troubleProperty().get());
        check(word.getText().equals("1 mm"), "the word is put back: " + word.getText());
    }

    /** The thickness and the lean dragged: the blank follows under way, with its colours; the rest comes when the hand lets go. */
    static void theBlankFollowsADrag(Scenes s) {
        s.demo("mudguard");
        fx(() -> s.bench.change(r -> r.withMetal(Optional.of(Metal.shipped("3003-O"))).withSheet(OptionalDouble.of(1.2), Face.OUTSIDE)));
        s.settle();
        Laid before = s.bench.laidProperty().get();
        Node word = accessible(s.pane, "Thickness of the sheet");
        s.hold(word, 10, 10, 190, 10);
        s.settle();
        FirstAnswer first = fx(() -> s.bench.firstAnswerProperty().get());
        check(first != null, "nothing follows the drag: " + s.bench.troubleProperty().get());
        same(4.2, first.draft().recipe().thickness().getAsDouble(), 1e-9, "thickness under the hand");
        check(fx(() -> s.bench.laidProperty().get()) == before, "the rest waits");
        s.picture("dragging");
        s.release();
        s.settle();
        check(fx(() -> s.bench.firstAnswerProperty().get()) == null, "the whole is there");
        same(4.2, s.bench.laidProperty().get().result().recipe().thickness().getAsDouble(), 1e-9, "thickness of what is laid out");

        fx(() -> s.bench.change(r -> r.withAim(Aim.WORK)));
        s.settle();
        Slider lean = (Slider) accessible(s.pane, "Where the worker would rather do it, from all shrinking to all stretching");
        Laid straight = s.bench.laidProperty().get();
        double middle = fx(() -> lean.getWidth() / 2), high = fx(() -> lean.getHeight() / 2);
        s.hold(lean, middle, high, middle + 15, high);
        s.settle();
        FirstAnswer leant = fx(() -> s.bench.firstAnswerProperty().get());
        check(leant != null && leant.draft().recipe().handwork().lean() > 0.1 && leant.draft().recipe().handwork().lean() < 0.5, "nothing follows the lean");
        s.picture("leaning");
        s.release();
        s.settle();
        Laid after = s.bench.laidProperty().get();
        check(after != straight && fx(() -> s.bench.firstAnswerProperty().get()) == null, "the whole is there");
        double[] shown = leant.box(), is = after.box();
        same(is[2] - is[0], shown[2] - shown[0], 5, "length of the blank as it was shown");
        s.picture("leant");
    }

    /** The map and the moving shape of a dish bent on unworked. */
    static void theUnworkedSheetBuckles(Scenes s) throws IOException {
        Path dish = Files.createTempDirectory("dish").resolve("dish.yaml");
        Files.writeString(dish,
                "blankwright-recipe: 1\nname: dish\npanel:\n  kind: spherical-cap\n  radius: 300mm\n  half-angle: 25deg\nchord: 0.6mm\n"
                + "thickness: 0.8mm\nalloy: 1100-O\nclamped: calm\n");
        fx(() -> s.bench.open(dish));
        s.settle();
        check(s.bench.laidProperty().get().has(MapKind.BUCKLING), "no map of buckling: " + s.bench.troubleProperty().get());
        fx(() -> {
            s.bench.mapProperty().set(MapKind.BUCKLING);
            s.pane.form().swayingProperty().set(true);
        });
        Scenes.pause(700);
        Picture moved = s.picture("buckling");
        ChoiceBox<?> ways = (ChoiceBox<?>) accessible(s.pane, "Which way of buckling is shown");
        fx(() -> ways.getSelectionModel().select(1));
        Scenes.pause(700);
        s.picture("buckling-second");
        check(fx(() -> s.pane.form().wayProperty().get()) == 1, "the second way is shown");
        fx(() -> s.pane.form().swayingProperty().set(false));
        Picture still = s.picture("buckling-still");
        int other = 0;
        for (int x = 0; x < 500; x++) for (int y = 200; y < 700; y++) if (moved.colour(x, y) != still.colour(x, y)) other++;
        check(other > 500, "the form did not move: " + other + " pixels differ");
        fx(() -> s.bench.mapProperty().set(MapKind.WORK));
    }

    /** A blank that covers itself is told not to be cut, and its cure is a click away. */
    static void theProposedSeamIsTaken(Scenes s) throws IOException {
        StringBuilder obj = new StringBuilder();
        int steps = 96;                                         // a ramp of two turns: nearly flat already, one turn over the other
        for (int k = 0; k <= steps; k++)
            for (double r : new double[] {160, 240})
                obj.append(String.format(Locale.ROOT, "v %.4f %.4f %.4f\n", r * Math.cos(4 * Math.PI * k / steps),
                        r * Math.sin(4 * Math.PI * k / steps), 60.0 * k / steps));
        for (int k = 0; k < steps; k++)
            obj.append(String.format("f %d %d %d\nf %d %d %d\n", 2 * k + 1, 2 * k + 2, 2 * k + 4, 2 * k + 1, 2 * k + 4, 2 * k + 3));
        Path ring = Files.writeString(Files.createTempDirectory("ramp").resolve("ramp.obj"), obj);
        fx(() -> s.bench.open(ring));
        s.settle();
        if (s.bench.result().orElseThrow().proposal().isEmpty()) throw new AssertionError("nothing is proposed: "
                + s.bench.result().get().warnings());
        s.picture("do-not-cut");
        s.click(named(s.pane, "Take the seams proposed"));
        s.settle();
        check(s.bench.result().get().warnings().isEmpty(), "still not to be cut: " + s.bench.result().get().warnings());
        s.picture("cured");
    }

    /**
     * The screen is measured with a bank card, 85.60 mm wide (ISO/IEC 7810, ID-1) [M]: then 100 mm of the blank are 100 mm on the screen, in the transform
     * it is drawn with, in the pixels that are coloured and on its ruler.
     */
    static void theScreenIsMeasured(Scenes s) throws IOException {
        Path sheet = Files.writeString(Files.createTempDirectory("sheet").resolve("sheet.yaml"),
                "blankwright-recipe: 1\nname: sheet\npanel: {kind: cylinder, radius: 200mm, length: 100mm, sweep: 0.4rad}\n");       // flat 100 by 80 mm
        fx(() -> s.bench.open(sheet));
        s.settle();
        check(s.bench.troubleProperty().get().isEmpty(), s.bench.troubleProperty().get());
        measured(s, 7.9);
        check(fx(() -> s.bench.settings().get("screen", 0.0)) == 7.9, "remembered");
        measured(s, 4.25);
        fx(() -> s.pane.blank().fit());
        s.click(named(s.pane, "true size"));
        fx(() -> s.pane.blank().bare(true));
        Picture picture = s.picture("true-size");
        fx(() -> s.pane.blank().bare(false));

        SubScene scene = (SubScene) fx(() -> found(s.pane.blank(), node -> node instanceof SubScene, "a picture"));
        Node skin = fx(() -> found(scene.getRoot(), node -> node instanceof MeshView, "a skin"));
        Point3D from = fx(() -> skin.localToScene(new Point3D(-50, 0, 0), true)), to = fx(() -> skin.localToScene(new Point3D(50, 0, 0), true));
        same(425, to.getX() - from.getX(), 1e-3, "100 mm in the transform");
        Point2D middle = inWindow(s.pane.blank(), fx(() -> s.pane.blank().getWidth() / 2), fx(() -> s.pane.blank().getHeight() / 2));
        int left = (int) middle.getX(), right = left;
        int skinColour = picture.colour(left, (int) middle.getY());
        while (picture.colour(left - 1, (int) middle.getY()) == skinColour) left--;
        while (picture.colour(right + 1, (int) middle.getY()) == skinColour) right++;
        double[] box = s.bench.laidProperty().get().box();
        boolean along = Math.abs(box[2] - box[0] - 100) < 0.1;
        same(along ? 425 : 340, right - left + 1, 2, "pixels of its width, " + (along ? "100" : "80") + " mm");
        FlatView view = fx(() -> s.pane.blank().viewProperty().get());
        List<Ticks.Tick> ticks = Ticks.between(0, 100, view.perMm(), LengthStyle.MM);
        same(425, view.x(ticks.get(ticks.size() - 1).mm()) - view.x(ticks.get(0).mm()), 1e-9, "0 to 100 on the ruler");
        fx(() -> s.bench.settings().put("screen", ""));
    }

    /** Moves the card of the dialog to so many pixels a mm and says that it fits; the picture shows it as large as that. */
    private static void measured(Scenes s, double perMm) {
        later(() -> ((Button) named(s.pane, "measure the screen")).fire());
        Window window = window("Measure this screen");
        Parent root = window.getScene().getRoot();
        fx(() -> ((Slider) accessible(root, "Size of the card")).setValue(perMm));
        Scenes.pulses();
        Node card = fx(() -> found(root, node -> node.getStyleClass().contains("card"), "a card"));
        Bounds seen = fx(() -> card.localToScene(card.getBoundsInLocal()));
        same(85.60 * perMm, seen.getWidth(), 1, "the card on the screen");
        same(53.98 * perMm, seen.getHeight(), 1, "the card's height");
        check(seen.getMinX() >= 0 && seen.getMaxX() <= fx(() -> window.getScene().getWidth()), "the card leaves the window: " + seen);
        Scenes.keep(fx(() -> window.getScene().snapshot(null)), "bank-card");
        fx(() -> ((Button) named(root, "It fits")).fire());
        Scenes.pulses();
    }

    /** What is copied is what stands there: the place held, the tape, the work. */
    static void numbersAreCopied(Scenes s) {
        s.demo("scuttle");
        Laid laid = s.bench.laidProperty().get();
        ZoneRow zone = ZoneRow.of(laid, false).get(0);
        Place place = laid.placeOf(zone);
        double[] at = laid.numbers(place).form();
        fx(() -> s.bench.lay(laid.between(place, laid.onForm(at[0], at[1], at[2] + 30), false)));
        fx(() -> s.pane.pointing().hold(place));
        fx(() -> Clipboard.getSystemClipboard().clear());
        Node copy = named(s.pane.work(), "Copy");
        s.click(copy);
        until("the numbers are copied", () -> Clipboard.getSystemClipboard().hasString());
        List<String> lines = fx(() -> Clipboard.getSystemClipboard().getString()).lines().toList();
        check(lines.get(0).equals("scuttle"), lines.toString());
        double strain = laid.numbers(place).most() * 100;
        check(lines.get(1).startsWith(String.format(Locale.ROOT, "one way\tlet out %.2f mm over 100 mm", strain)), "strain of " + strain + " per cent: " + lines);
        List<String> shown = fx(() -> told(s.pane.work()));
        for (String line : lines.subList(1, lines.size()))
            for (String cell : line.split("\t"))
                check(shown.stream().anyMatch(words -> words.replace('\u00a0', ' ').toLowerCase(Locale.ROOT).contains(cell.toLowerCase(Locale.ROOT))), cell + " is not shown in " + shown);
        for (WorkRow row : WorkRow.of(laid, false)) check(lines.stream().anyMatch(l -> l.startsWith(row.name() + "\t" + row.todo() + "\t")), row.name() + ": " + lines);
        check(lines.stream().anyMatch(l -> l.matches("tape 1\tbefore [0-9.]+ mm, after [0-9.]+ mm: .*")), lines.toString());
        s.picture("copied");
        fx(s.pane.pointing()::letGo);
        fx(() -> ((Button) copy).fire());
        check(fx(() -> Clipboard.getSystemClipboard().getString()).lines().noneMatch(l -> l.startsWith("one way")), "no place is held any more");
    }

    static void aTapeIsLaid(Scenes s) {
        s.demo("seat-hoop");
        fx(() -> s.pane.blank().fit());
        fx(() -> s.pane.pointing().tapingProperty().set(true));
        Laid laid = s.bench.laidProperty().get();
        ZoneRow row = ZoneRow.of(laid, true).get(0);
        double u = row.zone().label().u(), v = row.zone().label().v();
        clickBlank(s, u, v);
        double[] other = null;
        for (double far = 60; far > 5 && other == null; far *= 0.8)
            for (double angle = 0; angle < 6 && other == null; angle += 0.5)
                if (laid.onBlank(u + far * Math.cos(angle), v + far * Math.sin(angle), 0).isPresent())
                    other = new double[] {u + far * Math.cos(angle), v + far * Math.sin(angle)};
        clickBlank(s, other[0], other[1]);
        check(s.bench.workProperty().get().tapes().size() == 1, "no tape: " + s.bench.troubleProperty().get());
        double length = laid.line(s.bench.workProperty().get().tapes().get(0)).orElseThrow().blankLength();
        same(Math.hypot(other[0] - u, other[1] - v), length, 3 / s.pane.blank().viewProperty().get().perMm(), "its length on the blank");
        fx(() -> s.pane.pointing().tapingProperty().set(false));
        fx(() -> s.bench.styleProperty().set(LengthStyle.FRACTION));
        s.picture("tape");
        fx(() -> s.bench.styleProperty().set(LengthStyle.MM));
    }

    /** Two clicks on the rim of a bowl part it in two; undone it is whole again. */
    static void aSeamIsCut(Scenes s) {
        s.demo("lamp-bowl");
        fx(() -> s.pane.form().look(Side.ABOVE));
        fx(() -> s.pane.pointing().cuttingProperty().set(true));
        Laid laid = s.bench.laidProperty().get();
        var form = laid.forms().get(0);
        double h = fx(() -> s.pane.form().getHeight()), w = fx(() -> s.pane.form().getWidth());
        double left = 0, right = 0, yl = 0, yr = 0;
        for (int v = 0; v < form.vertexCount(); v++) {
            double[] p = orbit(s).seen(form.x(v), form.y(v), form.z(v), h);
            if (p[0] < left) {
                left = p[0];
                yl = p[1];
            }
            if (p[0] > right) {
                right = p[0];
                yr = p[1];
            }
        }
        s.click(s.pane.form(), w / 2 + left + 3, h / 2 + yl);
        s.click(s.pane.form(), w / 2 + right - 3, h / 2 + yr);
        s.settle();
        check(s.bench.laidProperty().get().skins().size() == 2, "pieces: " + s.bench.laidProperty().get().skins().size() + " "
                + s.bench.troubleProperty().get());
        fx(() -> s.pane.blank().fit());
        s.picture("seam");
        fx(() -> s.bench.undo());
        s.settle();
        check(s.bench.laidProperty().get().skins().size() == 1, "undone it is whole");
    }

    static void theScaleIsDragged(Scenes s) {
        s.demo("nose-cap");
        double paper = fx(() -> s.bench.tintsProperty().get().high());
        Node ruler = accessible(s.pane, "The colour scale");
        double w = fx(() -> ruler.getBoundsInLocal().getWidth());
        s.drag(ruler, w / 2, 14, w / 2 - 60, 14);
        check(fx(() -> s.bench.tintsProperty().get().high()) > 1.2 * paper, "to the left it means more");
        fx(() -> s.pane.pointing().greyProperty().set(true));
        s.picture("grey-print");
        fx(() -> s.pane.pointing().greyProperty().set(false));
        s.keys(KeyCode.HOME);
        same(paper, fx(() -> s.bench.tintsProperty().get().high()), 0, "Home gives the paper's scale back");
        fx(() -> s.bench.mapProperty().set(MapKind.CURVATURE));
        s.picture("bowl-and-saddle");
        fx(() -> s.bench.mapProperty().set(MapKind.WORK));
    }

    static void whatGoesToTheBenchIsShownAndWritten(Scenes s) throws IOException {
        s.demo("mudguard");
        Path folder = Files.createTempDirectory("packet");
        TakeAway dialog = fx(() -> {
            TakeAway d = new TakeAway(s.bench, s.stage, s.answers);
            d.dialog().show();
            return d;
        });
        Scenes.pulses();
        Scenes.keep(fx(() -> dialog.dialog().getDialogPane().getScene().snapshot(null)), "take-away");
        int sheets = Pages.of(s.bench.laidProperty().get().drawing(), Paper.A4).sheets().size();
        fx(() -> {
            dialog.into(folder);
            dialog.dialog().close();
            dialog.write();
        });
        until("news of the files", () -> !s.bench.newsProperty().get().isEmpty() || !s.bench.troubleProperty().get().isEmpty());
        for (String file : List.of("blank.pdf", "blank.dxf", "blank.svg", "work-map-form.png", "work.csv", "flat.obj", "panel.vtu",
                "summary.json"))
            check(Files.size(folder.resolve(file)) > 0, file);
        try (var pdf = org.apache.pdfbox.Loader.loadPDF(folder.resolve("blank.pdf").toFile())) {
            same(sheets + 1, pdf.getNumberOfPages(), 0, "as many pages as the preview told, and the cover");
        }
        fx(() -> s.bench.keepPicture(Snapshots.of(s.pane.form()), folder.resolve("form.png")));
        check(Files.size(folder.resolve("form.png")) > 1000, "picture of the form");
        s.picture("taken-away");
    }

    /** Printing belongs to the sheets: a printer of PostScript gets the cover, then all; without any it is said what to do. */
    static void sheetsGoToThePrinter(Scenes s) {
        s.demo("vent-cowl");
        fx(() -> s.bench.hush());
        var printed = new ByteArrayOutputStream();
        PdfPrinter printer = PdfPrinter.of(StreamPrintServiceFactory.lookupStreamPrintServiceFactories(DocFlavor.SERVICE_FORMATTED.PAGEABLE,
                "application/postscript")[0].getPrintService(printed));
        TakeAway dialog = fx(() -> {
            TakeAway d = new TakeAway(s.bench, s.stage, s.answers);
            d.dialog().show();
            return d;
        });
        fx(() -> dialog.show(List.of(), TakeAway.NONE));
        Scenes.pulses();
        Scenes.keep(fx(() -> dialog.dialog().getDialogPane().getScene().snapshot(null)), "no-printer");
        fx(() -> dialog.show(List.of(printer), ""));
        Scenes.pulses();
        s.click(named(dialog.dialog().getDialogPane(), "Print the cover first"));
        until("news of the sheet", () -> !s.bench.newsProperty().get().isEmpty() || !s.bench.troubleProperty().get().isEmpty());
        Scenes.pulses();
        Scenes.keep(fx(() -> dialog.dialog().getDialogPane().getScene().snapshot(null)), "printed");
        check(s.bench.newsProperty().get().startsWith("One sheet was sent to "), s.bench.newsProperty().get() + s.bench.troubleProperty().get());
        check(printed.size() > 1000, "nothing reached the printer");
        fx(() -> dialog.dialog().close());
    }

    /** A mesh in metres: the question tells each size, Enter takes the likely one. */
    static void theUnitIsAsked(Scenes s) throws IOException {
        Path mesh = Files.createTempDirectory("mesh").resolve("skin.obj");
        Files.writeString(mesh, "v 0 0 0\nv 0.4 0 0\nv 0.4 0.3 0.01\nv 0 0.3 0\nf 1 2 3\nf 1 3 4\n");
        later(() -> s.bench.open(mesh));
        until("a question", () -> Window.getWindows().size() == 2);
        Scenes.pulses();
        Scenes.keep(fx(() -> Window.getWindows().get(1).getScene().snapshot(null)), "unit-question");
        Node metres = fx(() -> found(Window.getWindows().get(1).getScene().getRoot(), n -> n instanceof Button b && b.getText().endsWith("metres")
                && !b.getText().contains("milli") && !b.getText().contains("centi"), "metres"));
        fx(() -> ((Button) metres).fire());
        until("an answer", () -> s.bench.laidProperty().get() != null && s.bench.laidProperty().get().result().name().equals("skin.obj"));
        s.settle();
        same(400, s.bench.laidProperty().get().result().input().dx(), 1e-9, "metres");
        Path saved = mesh.resolveSibling("saved.yaml");
        check(fx(() -> s.bench.save(saved)), s.bench.troubleProperty().get());
        fx(() -> s.bench.open(saved));
        s.settle();
        same(400, s.bench.laidProperty().get().result().input().dx(), 1e-9, "opened again, nothing is asked");
        s.picture("mesh");
    }

    /** Measures of a formula and the tools at hand, typed; each taken back as one step. */
    static void measuresAndToolsAreChanged(Scenes s) throws IOException {
        s.demo("mudguard");
        s.click(named(s.pane, "more"));
        TextField tube = (TextField) accessible(s.pane, "Measure: tube");
        type(s, tube, "85");
        s.settle();
        check(text(s).contains("tube: 85mm"), text(s));
        type(s, (TextField) accessible(s.pane, "Measure: round"), "140");
        s.settle();
        check(text(s).contains("round: 140deg"), text(s));
        type(s, (TextField) accessible(s.pane, "Measure: tube"), "500");
        check(s.bench.troubleProperty().get().contains("tube"), s.bench.troubleProperty().get());
        s.picture("measures");
        fx(() -> s.bench.change(r -> r.withMetal(Optional.of(Metal.shipped("3003-O"))).withAim(Aim.WORK)));
        s.settle();
        Node tools = accessible(s.pane, "Tools at hand: any tools");
        later(() -> ((Button) tools).fire());
        Window list = window("Tools at hand");
        fx(() -> ((Button) named(list.getScene().getRoot(), "Add a tool")).fire());
        fx(() -> ((TextField) accessible(list.getScene().getRoot(), "Tool 1: name")).setText("jaw shrinker"));
        fx(() -> ((TextField) accessible(list.getScene().getRoot(), "Tool 1: how far in")).setText("far"));
        fx(() -> ((Button) named(list.getScene().getRoot(), "Use these")).fire());
        Scenes.keep(fx(() -> list.getScene().snapshot(null)), "tools-refused");
        fx(() -> ((TextField) accessible(list.getScene().getRoot(), "Tool 1: how far in")).setText("1 1/4 in"));
        s.answers.next = Files.createTempDirectory("tools").resolve("mine.yaml");
        Path kept = s.answers.next;
        fx(() -> ((Button) named(list.getScene().getRoot(), "Keep as a list…")).fire());
        check(Files.readString(kept).contains("jaw shrinker"), "the list was not kept");
        Scenes.pulses();
        Scenes.keep(fx(() -> list.getScene().snapshot(null)), "tools");
        fx(() -> ((Button) named(list.getScene().getRoot(), "Use these")).fire());
        s.settle();
        check(text(s).contains("reach: 31.75mm"), text(s));
        accessible(s.pane, "Tools at hand: one tool");
        s.picture("with-tools");
        for (int i = 0; i < 4; i++) fx(() -> s.bench.undo());
        s.settle();
        check(!fx(() -> s.bench.unsavedProperty().get()), "four steps back it is as it was opened: " + text(s));
        s.click(named(s.pane, "more"));
    }

    /** A hole more, clamps on the blank, and metals from a file of one's own. */
    static void holesClampsAndOwnAlloysAreChosen(Scenes s) throws IOException {
        Path skin = Files.writeString(Files.createTempDirectory("skin").resolve("skin.yaml"),
                "blankwright-recipe: 1\nname: door skin\npanel: {kind: crowned-panel, length: 400mm, width: 300mm, length-rise: 20mm, width-rise: 12mm}\n"
                + "chord: 1mm\nthickness: 1mm\nalloy: 3003-O\n");
        fx(() -> s.bench.open(skin));
        s.settle();
        s.click(named(s.pane, "more"));
        int holes = s.bench.result().orElseThrow().pieces().get(0).holes();
        s.click(named(s.pane, "Add a hole"));
        s.settle();
        check(s.bench.result().orElseThrow().pieces().get(0).holes() == holes + 1, "no hole more: " + s.bench.troubleProperty().get());
        type(s, (TextField) accessible(s.pane, "Hole: diameter"), "60");
        s.settle();
        check(text(s).contains("diameter: 60mm"), text(s));
        type(s, (TextField) accessible(s.pane, "Hole: diameter"), "900");
        s.settle();
        check(s.bench.troubleProperty().get().contains("hole"), "a hole larger than the panel: " + s.bench.troubleProperty().get());
        s.picture("holes");
        s.click(named(s.pane, "more"));

        ToggleButton clamp = (ToggleButton) named(s.pane, "Clamp it");
        s.click(clamp);
        double[] box = s.bench.laidProperty().get().box();
        clickBlank(s, box[0] + 0.12 * (box[2] - box[0]), box[1] + 0.2 * (box[3] - box[1]));
        s.settle();
        clickBlank(s, box[0] + 0.88 * (box[2] - box[0]), box[1] + 0.2 * (box[3] - box[1]));
        s.settle();
        s.keys(KeyCode.ESCAPE);
        check(!clamp.isSelected(), "Escape leaves it");
        type(s, (TextField) accessible(s.pane, "Clamp 2: held within"), "35");
        s.settle();
        check(text(s).contains("35mm]"), text(s));
        check(s.bench.laidProperty().get().has(MapKind.BUCKLING), "it was not tried: " + s.bench.troubleProperty().get());
        fx(() -> s.bench.mapProperty().set(MapKind.BUCKLING));
        s.picture("clamps");
        fx(() -> s.bench.mapProperty().set(MapKind.WORK));

        s.answers.next = Files.writeString(Files.createTempDirectory("alloys").resolve("my-alloys.yaml"), """
                blankwright-alloys: 1
                alloys:
                  - {metal: door skin, temper: as found, family: steel, E: 205 GPa, nu: 0.3, density: 7850 kg/m3, yield: 180 MPa, tensile: 300 MPa, elongation: 36 %}
                """);
        MenuButton own = (MenuButton) accessible(s.pane, "A list of your own alloys");
        fx(() -> own.getItems().get(0).fire());
        ChoiceBox<?> metal = (ChoiceBox<?>) accessible(s.pane, "Metal of the sheet");
        fx(() -> metal.getSelectionModel().select(1));
        s.settle();
        check(text(s).contains("alloys: ") && text(s).contains("door skin"), text(s));
        check(metal.getItems().size() == AlloyReader.shipped().list().size() + 2, "metals to choose from: " + metal.getItems().size());
        s.picture("own-alloys");
        fx(() -> own.show());
        Scenes.pulses();
        check(own.getItems().stream().anyMatch(i -> i.getText().endsWith("my-alloys.yaml out")), "no way back");
        fx(() -> own.hide());
        fx(() -> {
            while (s.bench.canUndoProperty().get()) s.bench.undo();
        });
        s.settle();
        check(metal.getItems().size() == AlloyReader.shipped().list().size() + 1, "the list is left out again");
        check(!fx(() -> s.bench.unsavedProperty().get()), "as it was opened");
    }

    /** The end of a seam taken on the form and drawn along the rim; the blank follows, and one step takes it back. */
    static void aSeamIsMoved(Scenes s) throws IOException {
        Path tube = Files.writeString(Files.createTempDirectory("tube").resolve("tube.yaml"),
                "blankwright-recipe: 1\nname: tube\npanel: {kind: cone-frustum, bottom-radius: 120mm, top-radius: 80mm, height: 200mm, sweep: 360deg}\n"
                + "chord: 0.3mm\nthickness: 1mm\n");
        fx(() -> s.bench.open(tube));
        s.settle();
        List<SeamGrip> ends = SeamGrip.all(s.bench.laidProperty().get(), s.bench.workProperty().get().recipe());
        check(ends.size() == 2, "ends of the seam that opened it: " + ends.size());
        double h = fx(() -> s.pane.form().getHeight()), w = fx(() -> s.pane.form().getWidth());
        double[] end = ends.get(0).at()[2] > ends.get(1).at()[2] ? ends.get(0).at() : ends.get(1).at();
        fx(() -> s.pane.form().look(Side.ABOVE));
        Orbit above = orbit(s);
        double[] from = above.seen(end[0], end[1], end[2], h);
        double angle = 0.7, x = end[0] * Math.cos(angle) - end[1] * Math.sin(angle), y = end[0] * Math.sin(angle) + end[1] * Math.cos(angle);
        double[] to = above.seen(x, y, end[2], h);
        double out = Math.hypot(from[0], from[1]), in = (out + 8) / out;                 // a little outwards: onto the skin, which widens downwards
        s.hold(s.pane.form(), w / 2 + in * from[0], h / 2 + in * from[1], w / 2 + in * to[0], h / 2 + in * to[1]);
        s.settle();
        s.picture("seam-moving");
        s.release();
        s.settle();
        check(s.bench.workProperty().get().recipe().seams().size() == 1, "no seam was moved " + s.bench.troubleProperty().get());
        double[] now = SeamGrip.all(s.bench.laidProperty().get(), s.bench.workProperty().get().recipe()).stream().map(SeamGrip::at)
                .filter(p -> Math.abs(p[2] - end[2]) < 1).findFirst().orElseThrow();
        same(0, Math.hypot(now[0] - x, now[1] - y), 15, "where the hand took it");
        same(1, s.bench.laidProperty().get().skins().size(), 0, "pieces");
        s.picture("seam-moved");
        s.keys(KeyCode.CONTROL, KeyCode.Z);
        s.settle();
        check(s.bench.workProperty().get().recipe().seams().isEmpty() && !fx(() -> s.bench.unsavedProperty().get()), "one drag, one step");
    }

    /** A measure of a panel of many triangles, dragged: few triangles are shown, said to be so; then the whole. */
    static void aLargePanelFollowsInFewTriangles(Scenes s) throws IOException {
        Path fine = Files.writeString(Files.createTempDirectory("large").resolve("large.yaml"),
                "blankwright-recipe: 1\nname: large\npanel: {kind: torus-section, ring: 330mm, tube: 95mm, sweep: 150deg, round: 160deg}\nchord: 0.02mm\n");
        fx(() -> s.bench.open(fine));
        s.settle();
        Laid before = s.bench.laidProperty().get();
        check(before.result().input().triangles() > 20_000, before.result().input().triangles() + " triangles");
        s.click(named(s.pane, "more"));
        Node word = accessible(s.pane, "Measure: tube");
        s.hold(word, 10, 10, 130, 10);
        s.settle();
        FirstAnswer first = fx(() -> s.bench.firstAnswerProperty().get());
        check(first != null && first.draft().coarse(), "nothing follows the drag: " + s.bench.troubleProperty().get());
        s.picture("few-triangles");
        s.release();
        s.settle();
        check(fx(() -> s.bench.firstAnswerProperty().get()) == null && s.bench.laidProperty().get() != before, "the whole is there");
        double[] shown = first.box(), is = s.bench.laidProperty().get().box();
        for (int k = 0; k < 2; k++) same(is[k + 2] - is[k], shown[k + 2] - shown[k], 6, "side of the blank as it was shown");
        fx(() -> s.bench.undo());
        s.settle();
        s.click(named(s.pane, "more"));
    }

    private static String text(Scenes s) {
        return RecipeWriter.write(s.bench.workProperty().get().recipe());
    }

    private static void type(Scenes s, TextField field, String words) {
        s.click(field);
        fx(field::selectAll);
        s.type(words);
        s.keys(KeyCode.ENTER);
    }

    /** The window of that title, once it is there. */
    private static Window window(String title) {
        Window[] found = new Window[1];
        until("a window called " + title, () -> {
            for (Window window : Window.getWindows()) if (window instanceof Stage stage && title.equals(stage.getTitle())) found[0] = window;
            return found[0] != null;
        });
        Scenes.pulses();
        return found[0];
    }

    /** Fingers on a pad: up and down brings nearer about the place under them, sideways slides, two fingers apart bring nearer. */
    static void aPadZoomsAndSlides(Scenes s) {
        s.demo("vent-cowl");
        double h = fx(() -> s.pane.form().getHeight());
        Orbit before = orbit(s);
        double[] held = before.onPlane(40, 30, h);
        pad(s.pane.form(), 0, 40, 40, 30);
        check(orbit(s).span() < before.span() * 0.95, "up brings it nearer");
        double[] seen = orbit(s).seen(held[0], held[1], held[2], h);
        same(40, seen[0], 1, "about the fingers");
        Orbit near = orbit(s);
        pad(s.pane.form(), 60, 5, 0, 0);
        same(near.span(), orbit(s).span(), 1e-9, "sideways it only slides");
        seen = orbit(s).seen(held[0], held[1], held[2], h);
        same(100, seen[0], 1, "with the fingers");
        Orbit slid = orbit(s);
        pinch(s.pane.form(), 1.5, -20, 10);
        same(slid.span() / 1.5, orbit(s).span(), 1e-6, "fingers apart by half: half as much again");
        FlatView flat = s.pane.blank().viewProperty().get();
        pad(s.pane.blank(), 0, -40, 0, 0);
        check(s.pane.blank().viewProperty().get().perMm() < flat.perMm(), "down takes it away");
        flat = s.pane.blank().viewProperty().get();
        pinch(s.pane.blank(), 2, 30, 20);
        FlatView now = s.pane.blank().viewProperty().get();
        same(2 * flat.perMm(), now.perMm(), 1e-9, "twice as large");
        same(flat.uAt(30), now.uAt(30), 1e-6, "about the fingers");
        pad(s.pane.blank(), -25, 0, 0, 0);
        same(now.x(0) - 25, s.pane.blank().viewProperty().get().x(0), 1e-6, "slides with the fingers");
        s.picture("pad");
    }

    /** @param x with y from the middle of the node */
    private static void pad(Node node, double dx, double dy, double x, double y) {
        fx(() -> {
            Point2D at = middle(node).add(x, y);
            Event.fireEvent(node, new ScrollEvent(null, node, ScrollEvent.SCROLL, at.getX(), at.getY(), at.getX(), at.getY(), false, false, false,
                    false, true, false, dx, dy, dx, dy, ScrollEvent.HorizontalTextScrollUnits.NONE, 0,
                    ScrollEvent.VerticalTextScrollUnits.NONE, 0, 2, null));
        });
        Scenes.pulses();
    }

    private static void pinch(Node node, double factor, double x, double y) {
        fx(() -> {
            Point2D at = middle(node).add(x, y);
            Event.fireEvent(node, new ZoomEvent(null, node, ZoomEvent.ZOOM, at.getX(), at.getY(), at.getX(), at.getY(), false, false, false,
                    false, true, false, factor, factor, null));
        });
        Scenes.pulses();
    }

    /** In the window, as events count. */
    private static Point2D middle(Node node) {
        return node.localToScene(node.getLayoutBounds().getWidth() / 2, node.getLayoutBounds().getHeight() / 2);
    }

    /** A file dragged over from another window is opened. */
    static void aFileIsDropped(Scenes s) throws IOException {
        Path dish = Files.writeString(Files.createTempDirectory("drop").resolve("dropped.yaml"),
                "blankwright-recipe: 1\nname: dropped dish\npanel:\n  kind: spherical-cap\n  radius: 300mm\n  half-angle: 25deg\nchord: 1mm\n");
        Stage folder = fx(() -> {
            Label icon = new Label("dropped.yaml");
            icon.setMinSize(160, 90);
            icon.setOnDragDetected(e -> {
                ClipboardContent content = new ClipboardContent();
                content.putFiles(List.of(dish.toFile()));
                icon.startDragAndDrop(TransferMode.COPY).setContent(content);
            });
            Stage stage = new Stage(StageStyle.UNDECORATED);
            stage.setScene(new Scene(icon));
            stage.setX(20);
            stage.setY(650);
            stage.show();
            return stage;
        });
        Scenes.pulses();
        Point2D to = fx(() -> s.pane.form().localToScreen(200, 100));
        s.carry(folder.getScene().getRoot(), to);
        until("it is opened", () -> s.bench.workProperty().get() != null && s.bench.workProperty().get().recipe().name().equals("dropped dish"));
        fx(folder::close);
        s.settle();
        s.picture("dropped");
    }

    /** Along the skin on the form from rim to rim: two pieces; on the blank from the rim inwards: a relief cut. Each undone in one step. */
    static void seamsAreDragged(Scenes s) {
        s.demo("lamp-bowl");
        fx(() -> s.pane.form().look(Side.ABOVE));
        double w = fx(() -> s.pane.form().getWidth()), h = fx(() -> s.pane.form().getHeight());
        double[] ends = ends(s, h);
        fx(() -> s.pane.pointing().cuttingProperty().set(true));
        s.hold(s.pane.form(), w / 2 + ends[0] + 3, h / 2 + ends[1]);
        for (int i = 1; i <= 10; i++)
            s.onward(s.pane.form(), w / 2 + ends[0] + 3 + (ends[2] - ends[0] - 6) * i / 10, h / 2 + ends[1] + (ends[3] - ends[1]) * i / 10 + 25 * Math.sin(Math.PI * i / 10));
        s.picture("seam-drawn");
        check(s.pane.pointing().path().size() > 5, "the path is shown");
        s.release();
        s.settle();
        check(s.bench.laidProperty().get().skins().size() == 2, "pieces: " + s.bench.laidProperty().get().skins().size() + " "
                + s.bench.troubleProperty().get());
        fx(() -> s.pane.blank().fit());
        s.picture("seam-dragged");
        fx(() -> s.bench.undo());
        s.settle();
        check(s.bench.laidProperty().get().skins().size() == 1, "undone it is whole");

        Laid laid = s.bench.laidProperty().get();
        double rim = laid.result().pieces().get(0).outline();
        fx(() -> s.pane.blank().fit());
        fx(() -> s.pane.pointing().cuttingProperty().set(true));
        double[] box = laid.box();
        FlatView view = s.pane.blank().viewProperty().get();
        double bw = fx(() -> s.pane.blank().getWidth()), bh = fx(() -> s.pane.blank().getHeight()), v = (box[1] + box[3]) / 2;
        s.hold(s.pane.blank(), bw / 2 + view.x(box[0] + 1), bh / 2 + view.y(v));
        for (int i = 1; i <= 6; i++) s.onward(s.pane.blank(), bw / 2 + view.x(box[0] + 1 + 10.0 * i), bh / 2 + view.y(v));
        s.release();
        s.settle();
        check(s.bench.laidProperty().get().skins().size() == 1, "a relief cut parts nothing");
        check(s.bench.laidProperty().get().result().pieces().get(0).outline() > rim + 100, "both sides of it are rim: " + s.bench.troubleProperty().get());
        s.picture("relief-cut");
        fx(() -> s.bench.undo());
        s.settle();
        same(rim, s.bench.laidProperty().get().result().pieces().get(0).outline(), 1e-9, "undone");
    }

    /** Of the form as it is seen: leftmost and rightmost corner, from the middle, {x, y, x, y}. */
    private static double[] ends(Scenes s, double h) {
        var form = s.bench.laidProperty().get().forms().get(0);
        double[] ends = new double[4];
        for (int v = 0; v < form.vertexCount(); v++) {
            double[] p = orbit(s).seen(form.x(v), form.y(v), form.z(v), h);
            if (p[0] < ends[0]) System.arraycopy(p, 0, ends, 0, 2);
            if (p[0] > ends[2]) System.arraycopy(p, 0, ends, 2, 2);
        }
        return ends;
    }

    /** Every question for a file, answered as a person would: open, save, save as, a picture, a folder; and nothing happens where none is chosen. */
    static void filesAreAskedFor(Scenes s) throws IOException {
        s.demo("vent-cowl");
        Path folder = Files.createTempDirectory("files");
        s.keys(KeyCode.CONTROL, KeyCode.O);
        check(s.answers.asked.equals("A mesh or a recipe"), s.answers.asked);
        check(s.bench.workProperty().get().recipe().name().equals("vent cowl"), "nothing chosen, nothing changed");
        fx(() -> s.bench.change(r -> r.withStations(45)));
        s.settle();
        s.answers.next = folder.resolve("cowl.yaml");
        s.keys(KeyCode.CONTROL, KeyCode.S);
        check(s.answers.asked.equals("Save the recipe as vent-cowl.yaml"), s.answers.asked);
        check(Files.readString(folder.resolve("cowl.yaml")).contains("stations: 45mm"), "not saved");
        s.answers.asked = "";
        fx(() -> s.bench.change(r -> r.withStations(55)));
        s.keys(KeyCode.CONTROL, KeyCode.S);
        check(s.answers.asked.isEmpty() && Files.readString(folder.resolve("cowl.yaml")).contains("stations: 55mm"), "the second time it knows");
        s.answers.next = folder.resolve("other.yaml");
        s.keys(KeyCode.CONTROL, KeyCode.SHIFT, KeyCode.S);
        check(Files.exists(folder.resolve("other.yaml")), "not saved as another");
        s.answers.next = folder.resolve("cowl.yaml");
        s.keys(KeyCode.CONTROL, KeyCode.O);
        s.settle();
        check(s.bench.fileProperty().get().equals(folder.resolve("cowl.yaml")), "not opened");
        s.answers.next = folder.resolve("form.png");
        fx(() -> item(s.pane, "A picture of the form as it stands…").fire());
        Scenes.pulses();
        check(Files.size(folder.resolve("form.png")) > 1000, "no picture");
        TakeAway dialog = fx(() -> new TakeAway(s.bench, s.stage, s.answers));
        s.answers.next = folder.resolve("packet");
        fx(() -> ((Button) named(dialog.dialog().getDialogPane(), "Choose…")).fire());
        check(((TextField) accessible(dialog.dialog().getDialogPane(), "Folder for the files")).getText().equals(folder.resolve("packet").toString()),
                "folder");
        s.answers.next = folder.resolve("gone/nothing.stl");
        s.keys(KeyCode.CONTROL, KeyCode.O);
        s.settle();
        check(s.bench.troubleProperty().get().contains("no such file"), s.bench.troubleProperty().get());
        s.picture("no-such-file");
    }

    /** What a builder comes for: a scan opened, where to work seen, a seam cut and moved, the pattern written, the order kept. */
    static void fromTheScanToThePattern(Scenes s) throws IOException {
        Path scan = scan(Files.createTempDirectory("scan").resolve("rear-guard.obj"));
        s.answers.next = scan;
        s.keys(KeyCode.CONTROL, KeyCode.O);
        s.settle();
        check(s.bench.troubleProperty().get().isEmpty(), s.bench.troubleProperty().get());
        s.picture("scan");
        s.click(s.pane.work().zones(), 80, 30);
        check(fx(() -> s.bench.chosenProperty().get()) != null, "the list shows where to work");
        s.picture("scan-zone");
        s.click(named(s.pane, "all of it"));
        s.click(named(s.pane, "Cut a seam"));
        double h = fx(() -> s.pane.form().getHeight()), w = fx(() -> s.pane.form().getWidth());
        fx(() -> s.pane.form().look(Side.ABOVE));
        double[] left = rim(s, -0.2, -1), right = rim(s, -0.2, 1);
        s.click(s.pane.form(), w / 2 + left[0], h / 2 + left[1] - 4);
        s.picture("scan-seam-begun");
        s.click(s.pane.form(), w / 2 + right[0], h / 2 + right[1] + 4);
        s.settle();
        same(2, s.bench.laidProperty().get().skins().size(), 0, "pieces; " + s.bench.troubleProperty().get());
        s.picture("scan-seam");
        double[] to = rim(s, 0.15, 1);
        SeamGrip end = SeamGrip.all(s.bench.laidProperty().get(), s.bench.workProperty().get().recipe()).stream()
                .max(Comparator.comparingDouble(e -> seen(s, e.at())[1])).orElseThrow();
        double[] from = seen(s, end.at());
        s.drag(s.pane.form(), w / 2 + from[0], h / 2 + from[1] + 3, w / 2 + to[0], h / 2 + to[1] + 3);
        s.settle();
        double[] now = SeamGrip.all(s.bench.laidProperty().get(), s.bench.workProperty().get().recipe()).stream().map(e -> seen(s, e.at()))
                .max(Comparator.comparingDouble(p -> p[1])).orElseThrow();
        same(to[0], now[0], 14, "the seam's end went with the hand");
        s.picture("scan-seam-moved");
        s.keys(KeyCode.CONTROL, KeyCode.E);
        Window take = window("Take away");
        Scenes.keep(fx(() -> take.getScene().snapshot(null)), "scan-take-away");
        later(() -> ((Button) named(take.getScene().getRoot(), "Write the files")).fire());
        until("news of the files", () -> !s.bench.newsProperty().get().isEmpty() || !s.bench.troubleProperty().get().isEmpty());
        s.settle();
        check(Files.size(scan.resolveSibling("rear-guard").resolve("blank.pdf")) > 1000, s.bench.troubleProperty().get());
        s.picture("scan-written");
        s.answers.next = scan.resolveSibling("rear-guard.yaml");
        s.keys(KeyCode.CONTROL, KeyCode.S);
        check(!fx(() -> s.bench.unsavedProperty().get()), "nothing more is asked when it closes");
    }

    /** A mudguard as a scanner gives it: 12,000 triangles, each corner a tenth of a millimetre off. */
    private static Path scan(Path file) throws IOException {
        int along = 120, round = 50;
        Random noise = new Random(3);
        StringBuilder obj = new StringBuilder();
        for (int i = 0; i <= along; i++) {
            for (int j = 0; j <= round; j++) {
                double a = Math.toRadians(130.0 * i / along - 65), b = Math.toRadians(140.0 * j / round - 70), r = 310 + 85 * Math.cos(b);
                obj.append(String.format(Locale.ROOT, "v %.4f %.4f %.4f\n", r * Math.sin(a) + 0.1 * noise.nextGaussian(), 85 * Math.sin(b)
                        + 0.1 * noise.nextGaussian(), r * Math.cos(a) + 0.1 * noise.nextGaussian()));
            }
        }
        for (int i = 0; i < along; i++) {
            for (int j = 0; j < round; j++) {
                int p = i * (round + 1) + j + 1, q = p + round + 1;
                obj.append(String.format("f %d %d %d\nf %d %d %d\n", p, q, q + 1, p, q + 1, p + 1));
            }
        }
        return Files.writeString(file, obj);
    }

    /** From the middle of the form's picture, px. */
    private static double[] seen(Scenes s, double[] form) {
        return orbit(s).seen(form[0], form[1], form[2], fx(() -> s.pane.form().getHeight()));
    }

    /** The rim as it is seen, uppermost or lowest, at a share of the picture's width beside its middle. */
    private static double[] rim(Scenes s, double share, int down) {
        double x = share * fx(() -> s.pane.form().getWidth());
        double[] best = null;
        for (var form : s.bench.laidProperty().get().forms()) {
            for (int v = 0; v < form.vertexCount(); v++) {
                double[] p = seen(s, new double[] {form.x(v), form.y(v), form.z(v)});
                if (Math.abs(p[0] - x) < 6 && (best == null || down * (p[1] - best[1]) > 0)) best = p;
            }
        }
        return best;
    }

    private static MenuItem item(Parent root, String words) {
        List<MenuItem> found = new ArrayList<>();
        visit(root, node -> {
            if (node instanceof MenuButton menu) menu.getItems().stream().filter(i -> words.equals(i.getText())).forEach(found::add);
        });
        return found.get(0);
    }

    /** Unsaved work is asked about once: staying stays, leaving leaves. */
    static void closingAsksOnce(Scenes s) {
        Bench bench = fx(() -> new Bench(Platform::runLater, s.bench.settings(), s.autosave));
        Stage stage = fx(() -> {
            Stage own = new Stage();
            BenchPane pane = new BenchPane(bench, own, s.answers);
            own.setScene(new Scene(pane, 900, 600));
            pane.dress();
            own.show();
            bench.openDemo("vent-cowl");
            return own;
        });
        until("laid out", () -> bench.laidProperty().get() != null && !bench.runner().busyProperty().get());
        fx(() -> bench.change(r -> r.withTrim(OptionalDouble.of(9))));
        later(() -> stage.fireEvent(new WindowEvent(stage, WindowEvent.WINDOW_CLOSE_REQUEST)));
        Window question = window("Not saved yet");
        Scenes.keep(fx(() -> question.getScene().snapshot(null)), "closing");
        fx(() -> ((Button) named(question.getScene().getRoot(), "Cancel")).fire());
        Scenes.pulses();
        check(fx(stage::isShowing), "staying stays");
        later(() -> stage.fireEvent(new WindowEvent(stage, WindowEvent.WINDOW_CLOSE_REQUEST)));
        Window again = window("Not saved yet");
        fx(() -> ((Button) named(again.getScene().getRoot(), "Leave it")).fire());
        Scenes.pulses();
        check(!fx(stage::isShowing), "leaving leaves, asked once");
        check(fx(() -> Window.getWindows().size()) == 1, "nothing more is asked");
    }

    /** Tab goes to everything that can be changed or pressed, and what has the keyboard looks different from what has not. */
    static void theKeyboardReachesEverything(Scenes s) {
        s.demo("vent-cowl");
        fx(() -> s.pane.form().requestFocus());
        Set<Node> reached = new LinkedHashSet<>();
        List<String> missed = new ArrayList<>(), unseen = new ArrayList<>();
        while (reached.add(fx(() -> s.pane.getScene().getFocusOwner()))) {
            Node now = fx(() -> s.pane.getScene().getFocusOwner());
            boolean picture = now == s.pane.form() || now == s.pane.blank();            // theirs is a frame, seen in the window's picture
            int with = picture ? 0 : ink(now);
            s.key(KeyCode.TAB);
            if (!picture && with == ink(now)) unseen.add(name(now));
            check(reached.size() < 150, "no end");
        }
        fx(() -> visit(s.pane, node -> {
            boolean byArrow = node instanceof ToggleButton t && t.getToggleGroup() != null;       // one of several: arrows go from one to the next
            if (!reached.contains(node) && !byArrow && node.isFocusTraversable() && !node.isDisabled() && shown(node)) missed.add(name(node));
        }));
        check(missed.isEmpty(), "Tab never comes to " + missed);
        check(reached.size() > 30, "only " + reached.size());
        fx(() -> named(s.pane, MapKind.WORK.words()).requestFocus());
        s.keys(KeyCode.RIGHT);
        check(fx(() -> s.bench.mapProperty().get()) == MapKind.THICKNESS, "an arrow takes the next map");
        s.keys(KeyCode.LEFT);
        check(unseen.isEmpty(), "looks the same with the keyboard on it: " + unseen);
        Node save = named(s.pane, "Save");
        fx(save::requestFocus);
        s.picture("focus");
    }

    private static boolean shown(Node node) {
        for (Node up = node; up != null; up = up.getParent()) if (!up.isVisible()) return false;
        return true;
    }

    private static String name(Node node) {
        return node.getAccessibleText() != null ? node.getAccessibleText() : node instanceof Labeled l ? l.getText() : node.toString();
    }

    /** What the node's picture is made of, as one number. */
    private static int ink(Node node) {
        WritableImage image = fx(() -> node.snapshot(null, null));
        int[] rgb = new int[(int) image.getWidth() * (int) image.getHeight()];
        image.getPixelReader().getPixels(0, 0, (int) image.getWidth(), (int) image.getHeight(), PixelFormat.getIntArgbInstance(), rgb, 0,
                (int) image.getWidth());
        return Arrays.hashCode(rgb);
    }

    /** Lengths as a rule has them, typed and told. */
    static void inchFractions(Scenes s) {
        s.demo("side-skin");
        fx(() -> s.bench.styleProperty().set(LengthStyle.FRACTION));
        TextField word = (TextField) accessible(s.pane, "Thickness of the sheet");
        fx(word::requestFocus);
        fx(() -> word.setText("1/16 in"));
        fx(() -> s.pane.form().requestFocus());
        s.settle();
        same(25.4 / 16, s.bench.workProperty().get().recipe().thickness().getAsDouble(), 1e-12, "a sixteenth");
        check(word.getText().equals("1/16 in"), word.getText());
        fx(word::requestFocus);
        fx(() -> word.setText(".063"));
        fx(() -> s.pane.form().requestFocus());
        s.settle();
        same(25.4 * 0.063, s.bench.workProperty().get().recipe().thickness().getAsDouble(), 1e-12, "a bare number is in inches");
        fx(() -> s.pane.work().zones().getSelectionModel().select(0));
        fx(() -> s.pane.blank().requestFocus());
        s.keys(KeyCode.ALT, KeyCode.RIGHT);
        fx(() -> s.bench.change(r -> r.withTrim(OptionalDouble.of(25.4 * 30))));
        List<String> told = fx(() -> told(s.pane));
        check(told.stream().anyMatch(t -> t.matches(".*\\d/(2|4|8|16|32|64) in.*")), "no fraction is told: " + told);
        check(told.contains("trim 30 in: must be 0.00394 in to 19.68504 in; check the unit"), "what is refused: " + told);
        noMillimetre(told);
        s.picture("inch-fractions");
        inDialog("Measure this screen", () -> ((Button) named(s.pane, "measure the screen")).fire(), (title, root) -> noMillimetre(told(root)));
        inDialog("Tools at hand", () -> new ToolList(s.bench, s.stage, s.answers).ask(), (title, root) -> noMillimetre(told(root)));
        inDialog("Take away", () -> new TakeAway(s.bench, s.stage, s.answers).ask(), (title, root) -> noMillimetre(told(root)));
        fx(() -> s.bench.styleProperty().set(LengthStyle.MM));
    }

    /** All that is shown or read out, also what each control teaches. */
    private static List<String> told(Parent root) {
        List<String> told = new ArrayList<>();
        visit(root, node -> {
            told.add(node.getAccessibleText());
            told.add(node.getAccessibleHelp());
            if (node instanceof Labeled label) told.add(label.getText());
            if (node instanceof TextInputControl field) told.addAll(Arrays.asList(field.getText(), field.getPromptText()));
        });
        told.removeIf(words -> words == null || words.isBlank());
        return told;
    }

    /** A file's own name may hold one; nothing else. */
    private static void noMillimetre(List<String> told) {
        check(told.size() > 3, "only " + told);
        check(told.stream().noneMatch(t -> t.matches("(?s).*\\bmm\\b.*")), "millimetres are told: " + told);
    }

    static void darkWithLargeLetters(Scenes s) {
        s.demo("scuttle");
        Node light = accessible(s.pane, "Light or dark window"), larger = accessible(s.pane, "Larger letters"), swap = named(s.pane,
                "Swap hands");
        s.click(light);
        for (int i = 0; i < 4; i++) fx(() -> ((Button) larger).fire());
        fx(() -> ((Button) swap).fire());
        s.picture("dark-large-swapped");
        Point2D form = inWindow(s.pane.form(), 0, 0), blank = inWindow(s.pane.blank(), 0, 0);
        check(form.getX() > blank.getX(), "the hands are swapped");
        fx(() -> ((Button) light).fire());
        for (int i = 0; i < 4; i++) s.keys(KeyCode.CONTROL, KeyCode.MINUS);
        fx(() -> ((Button) swap).fire());
        Scenes.pulses();
    }

    /** Everything the keyboard can reach says what it is, and everything that can be pressed can be reached; in the window and in each dialog. */
    static void everythingHasAName(Scenes s) throws IOException {
        s.demo("side-skin");
        inEach(s, (title, root) -> {
            List<String> nameless = new ArrayList<>(), out = new ArrayList<>();
            int[] names = {0};
            visit(root, node -> {
                Object name = node.queryAccessibleAttribute(AccessibleAttribute.TEXT);
                boolean named = name instanceof String words && !words.isBlank();
                boolean frame = node instanceof SplitPane || node instanceof ScrollPane || node instanceof ScrollBar;
                if (node.isFocusTraversable() && !named && !frame) nameless.add(node.toString());
                if (node.isFocusTraversable() && named) names[0]++;
                if (node instanceof ButtonBase && !node.isFocusTraversable() && node.isVisible()) out.add(node.toString());
            });
            check(names[0] > 1, title + ": only " + names[0]);
            check(nameless.isEmpty(), title + ", nameless: " + nameless);
            check(out.isEmpty(), title + ", out of the keyboard's reach: " + out);
        });
    }

    /** Whatever a person can press, choose, type or drag teaches one thing, read out and shown to who rests on it; no two teach the same. */
    static void everyControlTeachesOneThing(Scenes s) throws IOException {
        s.demo("side-skin");
        fx(() -> s.bench.change(r -> r.withMetal(Optional.of(Metal.shipped("3003-O"))).withAim(Aim.WORK)));
        s.settle();
        inEach(s, (title, root) -> {
            Map<String, String> lessons = new HashMap<>();
            List<String> wrong = new ArrayList<>();
            visit(root, node -> {
                boolean used = node instanceof ButtonBase || node instanceof ChoiceBox || node instanceof TextInputControl || node instanceof Slider
                        || node instanceof ListView || node instanceof TitledPane || node.getStyleClass().contains("scale");
                if (!used || !(node.getParent() != null && part(node))) return;
                Object lesson = node.queryAccessibleAttribute(AccessibleAttribute.HELP);
                if (!(lesson instanceof String words) || !words.matches("(?s)\\p{Lu}.{9,}[.?]")) wrong.add(name(node) + " teaches " + lesson);
                else if (!(node instanceof Hyperlink) && lessons.put(words, name(node)) != null) wrong.add("taught twice: " + words);
            });
            check(wrong.isEmpty(), title + ": " + wrong);
            check(lessons.size() > 1, title + ": only " + lessons);
        });
        for (String words : List.of("from above", "Undo")) {
            Node button = named(s.pane, words);
            fx(() -> s.pane.form().requestFocus());
            s.move(s.pane.form(), 200, 300);
            s.move(button, 8, 8);
            s.move(button, 10, 9);
            until("the lesson of " + words, () -> Window.getWindows().stream().anyMatch(window -> window instanceof Tooltip tip
                    && tip.getText().equals(button.getAccessibleHelp())));
            if (words.equals("Undo")) Scenes.keep(fx(() -> lesson().getScene().snapshot(null)), "lesson");
            s.move(s.pane.form(), 200, 300);
            until("no lesson", () -> lesson() == null);
        }
        fx(() -> s.bench.undo());
        s.settle();
    }

    /** The one shown at the moment, or null. */
    private static Tooltip lesson() {
        return Window.getWindows().stream().filter(window -> window instanceof Tooltip).map(window -> (Tooltip) window).findFirst().orElse(null);
    }

    /** Not what another control is made of, as the arrow of a list that opens. */
    private static boolean part(Node node) {
        for (Node up = node.getParent(); up != null; up = up.getParent())
            if (up instanceof ButtonBase || up instanceof ChoiceBox || up instanceof Slider || up instanceof ListView) return false;
        return true;
    }

    private interface Looked {
        void at(String title, Parent root);
    }

    /** Looks at the window and at everything that opens over it. */
    private static void inEach(Scenes s, Looked looked) throws IOException {
        s.click(named(s.pane, "more"));
        fx(() -> looked.at("the window", s.pane));
        s.click(named(s.pane, "more"));
        inDialog("Measure this screen", () -> ((Button) named(s.pane, "measure the screen")).fire(), looked);
        inDialog("Take away", () -> new TakeAway(s.bench, s.stage, s.answers).ask(), looked);
        inDialog("Tools at hand", () -> {
            ToolList tools = new ToolList(s.bench, s.stage, s.answers);
            for (int i = 0; i < 2; i++) ((Button) named(tools.dialog().getDialogPane(), "Add a tool")).fire();
            tools.ask();
        }, looked);
        inDialog("Blankwright: the manual", () -> new ManualWindow(s.stage, s.pane.getStyle(), false).open("viewer.md", "The form"), looked);
        Path mesh = Files.writeString(Files.createTempDirectory("mesh").resolve("skin.obj"), "v 0 0 0\nv 0.4 0 0\nv 0.4 0.3 0.01\nv 0 0.3 0\nf 1 2 3\nf 1 3 4\n");
        inDialog("Which unit?", () -> s.bench.open(mesh), looked);
        fx(() -> s.bench.change(r -> r.withTrim(OptionalDouble.of(11))));
        inDialog("Not saved yet", () -> Event.fireEvent(s.stage, new WindowEvent(s.stage, WindowEvent.WINDOW_CLOSE_REQUEST)), looked);
        fx(() -> s.bench.undo());
        s.settle();
    }

    /** Opens it, looks at it, closes it again without an answer. */
    private static void inDialog(String title, Runnable open, Looked looked) {
        later(open);
        Window dialog = window(title);
        Scenes.pulses();
        fx(() -> looked.at(title, dialog.getScene().getRoot()));
        fx(dialog::hide);
        Scenes.pulses();
    }

    static void theManualOpensAtTheRightPart(Scenes s) {
        ManualWindow manual = fx(() -> {
            ManualWindow m = new ManualWindow(s.stage, s.pane.getStyle(), false);
            m.open("viewer.md", "The form");
            return m;
        });
        Scenes.pulses();
        Scenes.keep(fx(() -> manual.stage().getScene().snapshot(null)), "manual");
        fx(() -> manual.stage().close());
    }

    /** Changes something and leaves it unsaved: the process is killed after this. */
    static void leaveUnsaved(Scenes s) {
        s.demo("vent-cowl");
        fx(() -> s.bench.change(r -> r.withStations(35).withTrim(OptionalDouble.of(7))));
        s.settle();
    }

    static void recover(Scenes s) {
        later(() -> s.pane.offer(s.autosave.left()));
        until("the offer", () -> Window.getWindows().size() == 2);
        Scenes.pulses();
        Scenes.keep(fx(() -> Window.getWindows().get(1).getScene().snapshot(null)), "recover-offer");
        Node on = fx(() -> named(Window.getWindows().get(1).getScene().getRoot(), "Carry on"));
        fx(() -> ((Button) on).fire());
        s.settle();
        until("the panel", () -> s.bench.laidProperty().get() != null);
        same(35, s.bench.workProperty().get().recipe().stations(), 0, "stations");
        same(7, s.bench.workProperty().get().recipe().trim().getAsDouble(), 0, "trim");
        check(fx(() -> s.bench.unsavedProperty().get()), "still not saved");
        s.picture("recovered");
    }

    static String framesOfTheDemo(Scenes s) {
        s.demo("mudguard");
        return frames(s);
    }

    /** The side skin so fine that it has about two hundred thousand triangles. */
    static String framesOfALargeMesh(Scenes s) throws IOException {
        Path fine = Files.createTempDirectory("fine").resolve("fine.yaml");
        Files.writeString(fine,
                "blankwright-recipe: 1\nname: fine\npanel:\n  kind: torus-section\n  ring: 330mm\n  tube: 95mm\n  sweep: 150deg\n"
                + "  round: 160deg\nchord: 0.0036mm\n");
        fx(() -> s.bench.open(fine));
        long end = System.nanoTime() + 300_000_000_000L;
        while (fx(() -> s.bench.runner().busyProperty().get()) && System.nanoTime() < end) Scenes.pause(200);
        check(s.bench.troubleProperty().get().isEmpty(), s.bench.troubleProperty().get());
        return frames(s);
    }

    static String heapOverASoak(Scenes s) {
        s.demo("vent-cowl");
        long before = heap();
        for (int i = 0; i < 4; i++) soak(s);
        s.demo("vent-cowl");
        return before / 1_000_000 + " MB, " + heap() / 1_000_000 + " MB";
    }

    private static long heap() {
        for (int i = 0; i < 3; i++) {
            System.gc();
            Scenes.pause(200);
        }
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    /** Turns the form for five seconds, a little at each picture. */
    private static String frames(Scenes s) {
        int triangles = s.bench.laidProperty().get().forms().get(0).triangleCount();
        int[] count = new int[1];
        long from = System.nanoTime();
        while (System.nanoTime() - from < 5_000_000_000L) {
            fx(() -> s.pane.form().orbitProperty().set(s.pane.form().orbitProperty().get().turned(0.02, 0)));
            Scenes.pulse();
            count[0]++;
        }
        double seconds = (System.nanoTime() - from) / 1e9;
        return String.format(Locale.ROOT, "%,d triangles: %.0f frames a second, %d MB of heap in use", triangles, count[0] / seconds,
                heap() / 1_000_000);
    }

    /** Hundreds of random acts of a fixed seed: no exception reaches the screen's thread. */
    static void soak(Scenes s) {
        s.demo("vent-cowl");
        Random random = new Random(11);
        for (int i = 0; i < Integer.getInteger("blankwright.soak", 250); i++) {
            int act = random.nextInt(16);
            double a = random.nextDouble(), b = random.nextDouble();
            fx(() -> act(s, act, a, b));
            if (i % 25 == 0) Scenes.pulses();
        }
        s.settle();
        s.picture("soaked");
        fx(() -> {
            while (s.bench.canUndoProperty().get()) s.bench.undo();
        });
        s.settle();
        check(!fx(() -> s.bench.unsavedProperty().get()), "undone to the beginning it is as it was opened");
    }

    private static void act(Scenes s, int act, double a, double b) {
        Laid laid = s.bench.laidProperty().get();
        double[] box = laid.box();
        double u = box[0] + a * (box[2] - box[0]), v = box[1] + b * (box[3] - box[1]);
        switch (act) {
            case 0 -> s.bench.change(r -> r.withSheet(OptionalDouble.of(0.5 + 2 * a), r.face()));
            case 1 -> s.bench.change(r -> r.withStations(20 + 100 * a), "stations");
            case 2 -> s.bench.change(r -> r.withTrim(a < 0.2 ? OptionalDouble.empty() : OptionalDouble.of(30 * b + 1)));
            case 3 -> s.bench.undo();
            case 4 -> s.bench.redo();
            case 5 -> s.pane.pointing().click(laid.onBlank(u, v, 1), true, 2);
            case 6 -> s.pane.pointing().tapingProperty().set(a < 0.5);
            case 7 -> s.bench.mapProperty().set(List.of(MapKind.WORK, MapKind.THICKNESS, MapKind.CURVATURE).get((int) (3 * a)));
            case 8 -> s.bench.end(OptionalDouble.of(0.01 + a), null);
            case 9 -> s.pane.form().look(Side.values()[(int) (6 * a)]);
            case 10 -> s.pane.form().squareOn();
            case 11 -> s.pane.blank().viewProperty().set(s.pane.blank().viewProperty().get().zoomed(0.5 + a, 100 * b, 100 * a));
            case 12 -> s.pane.work().zones().getSelectionModel().select((int) (a * 5));
            case 13 -> s.bench.styleProperty().set(LengthStyle.values()[(int) (3 * a)]);
            case 14 -> s.pane.form().orbitProperty().set(s.pane.form().orbitProperty().get().turned(6 * a, b).zoomed(0.5 + b, 40 * a,
                    40 * b, 600));
            default -> s.pane.blank().fit();
        }
    }

    private static void later(Runnable what) {
        Platform.runLater(what);
    }

    private static Orbit orbit(Scenes s) {
        return fx(() -> s.pane.form().orbitProperty().get());
    }

    private static void clickBlank(Scenes s, double u, double v) {
        FlatView view = s.pane.blank().viewProperty().get();
        s.click(s.pane.blank(), fx(() -> s.pane.blank().getWidth()) / 2 + view.x(u), fx(() -> s.pane.blank().getHeight()) / 2 + view.y(v));
    }

    private static boolean nearBoundary(Tints tints, double value) {
        for (double boundary : tints.boundaries()) if (Math.abs(value - boundary) < (tints.high() - tints.low()) / 50) return true;
        return false;
    }

    private static void sameColour(int meant, int is, String where) {
        for (int shift = 0; shift <= 16; shift += 8)
            check(Math.abs((meant >> shift & 255) - (is >> shift & 255)) <= 2, String.format("%s: colour %06x instead of %06x", where, is,
                    meant));
    }

    private static int colours(Picture picture) {
        return (int) IntStream.range(0, picture.width() * picture.height())
                .map(i -> picture.colour(i % picture.width(), i / picture.width())).distinct().count();
    }

    private static Node named(Parent root, String words) {
        return found(root, node -> node instanceof ButtonBase b && words.equals(b.getText()), words);
    }

    private static Node accessible(Parent root, String beginning) {
        return found(root, node -> node.getAccessibleText() != null && node.getAccessibleText().startsWith(beginning), beginning);
    }

    private static Node found(Parent root, Predicate<Node> which, String words) {
        List<Node> all = new ArrayList<>();
        visit(root, node -> {
            if (which.test(node)) all.add(node);
        });
        check(!all.isEmpty(), "nothing is called " + words);
        return all.get(0);
    }

    private static void visit(Node node, Consumer<Node> visitor) {
        visitor.accept(node);
        if (node instanceof Parent parent) for (Node child : parent.getChildrenUnmodifiable()) visit(child, visitor);
    }
}
