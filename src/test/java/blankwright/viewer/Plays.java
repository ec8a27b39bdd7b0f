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
import blankwright.project.AlloyReader;
import blankwright.project.Metal;
import blankwright.viewer.model.FlatView;
import blankwright.viewer.model.Laid;
import blankwright.viewer.model.LengthStyle;
import blankwright.viewer.model.MapKind;
import blankwright.viewer.model.Numbers;
import blankwright.viewer.model.Orbit;
import blankwright.viewer.model.Pages;
import blankwright.viewer.model.Place;
import blankwright.viewer.model.Side;
import blankwright.viewer.model.ZoneRow;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Labeled;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Window;
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
        ZoneRow row = fx(() -> s.bench.zoneProperty().get());
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
            TakeAway d = new TakeAway(s.bench, s.stage, s.pane.getStyle());
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
        fx(() -> s.bench.troubleProperty().set(""));
        var printed = new ByteArrayOutputStream();
        PdfPrinter printer = PdfPrinter.of(StreamPrintServiceFactory.lookupStreamPrintServiceFactories(DocFlavor.SERVICE_FORMATTED.PAGEABLE,
                "application/postscript")[0].getPrintService(printed));
        TakeAway dialog = fx(() -> {
            TakeAway d = new TakeAway(s.bench, s.stage, s.pane.getStyle());
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
        Node metres = fx(() -> named(Window.getWindows().get(1).getScene().getRoot(), "metres"));
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

    /** Everything the keyboard can reach says what it is, and everything that can be pressed can be reached. */
    static void everythingHasAName(Scenes s) {
        s.demo("vent-cowl");
        List<String> nameless = new ArrayList<>(), out = new ArrayList<>();
        fx(() -> visit(s.pane, node -> {
            boolean worded = node instanceof Labeled l && l.getText() != null && !l.getText().isBlank();
            boolean named = node.getAccessibleText() != null && !node.getAccessibleText().isBlank();
            if (node.isFocusTraversable() && node.isVisible() && !worded && !named
                    && !(node instanceof SplitPane)) nameless.add(node.toString());
            if (node instanceof ButtonBase && !node.isFocusTraversable() && node.isVisible()) out.add(node.toString());
        }));
        check(nameless.isEmpty(), "nameless: " + nameless);
        check(out.isEmpty(), "out of the keyboard's reach: " + out);
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

    static void demoAtOnce(Scenes s) {
        s.demo("mudguard");
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
