package blankwright.viewer.model;

import blankwright.drawing.Drawing;
import blankwright.drawing.Paper;
import blankwright.drawing.PdfPrinter;
import blankwright.job.AtHand;
import blankwright.job.Given;
import blankwright.job.InputFile;
import blankwright.job.OddSize;
import blankwright.job.Output;
import blankwright.job.OutputFolder;
import blankwright.job.Packet;
import blankwright.job.Refusal;
import blankwright.job.Result;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.Explained;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.picture.Picture;
import blankwright.picture.Tints;
import blankwright.project.Clamps;
import blankwright.project.Handwork;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.RecipeException;
import blankwright.project.RecipeWriter;
import blankwright.project.Source;
import blankwright.shop.DrawnTape;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.binding.ObjectBinding;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/**
 * One panel on the bench: what is open, what was decided, what came out, what is looked at.
 *
 * <ol><li>{@link #open} reads a recipe or a mesh and lays it flat; a mesh of odd size first raises the {@link #questionProperty question}.
 * <li>{@link #change} decides something else; the blank follows, the step can be taken back, and a copy is kept against a kill.
 * <li>{@link #save} writes the recipe that the command line runs.</ol>
 *
 * <p>All on the screen's thread; the work itself runs in the {@link #runner}.
 */
public final class Bench {
    /** Radius of a new clamp, mm: that of a common welding or C-clamp's pad with its block. */
    public static final double CLAMP = 20;
    /** First answers to one wish at most. */
    private static final int NEARER = 20;
    /** Triangles of a mesh up to which it is laid flat wholly under way where there is no first answer. */
    private static final int FOLLOWED = 20_000;

    private static final Sentence NOTHING = Sentence.of("");

    private final Runner runner;
    private final Settings settings;
    private final Autosave autosave;
    private final ReadOnlyObjectWrapper<Work> work = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<Laid> laid = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<FirstAnswer> first = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<Path> file = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyBooleanWrapper canUndo = new ReadOnlyBooleanWrapper(), canRedo = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
    private final ReadOnlyObjectWrapper<List<Metal>> metals = new ReadOnlyObjectWrapper<>(List.of());
    private final ObjectProperty<Sentence> wrong = new SimpleObjectProperty<>(NOTHING);
    private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
    private final StringProperty news = new SimpleStringProperty("");
    private final ObjectProperty<UnitQuestion> question = new SimpleObjectProperty<>();
    private final ObjectProperty<Place> place = new SimpleObjectProperty<>();
    private final ObjectProperty<WorkRow> chosen = new SimpleObjectProperty<>();
    private final ObjectProperty<MapKind> map = new SimpleObjectProperty<>(MapKind.WORK);
    private final ObjectProperty<LengthStyle> style;
    private final DoubleProperty span = new SimpleDoubleProperty(100);
    private final ObjectBinding<Tints> tints;
    private final BooleanBinding behind;
    private final Deque<Runnable> errands = new ArrayDeque<>();         // wait until the blank has followed
    private final Executor screen;
    private History<Work> history;
    private Given given;
    private AtHand hand;
    private Object metalsFrom;          // table and folder they were read from; null where they are to be read
    private Recipe laidFor;             // the recipe of what is laid out, its files named as now
    private boolean dragging;
    private boolean owed;               // the whole, for what a drag has shown first answers of

    public Bench(Executor screen, Settings settings, Autosave autosave) {
        this.screen = screen;
        runner = new Runner(screen);
        runner.busyProperty().addListener((o, was, is) -> {
            if (!is) screen.execute(this::rested);
        });
        this.settings = settings;
        this.autosave = autosave;
        style = new SimpleObjectProperty<>(settings.get("lengths", LengthStyle.MM));
        style.addListener((o, was, is) -> settings.put("lengths", is.name()));
        trouble.bind(Bindings.createStringBinding(() -> Plain.words(wrong.get().text(style.get())), wrong, style));
        laid.addListener((o, was, is) -> {
            if (is != null && !is.has(map.get())) map.set(MapKind.WORK);
        });
        behind = Bindings.createBooleanBinding(() -> laid.get() != null && first.get() == null && !runner.busyProperty().get()
                && lagging(), laid, work,
                first, runner.busyProperty());
        tints = Bindings.createObjectBinding(() -> laid.get() == null || !laid.get().has(map.get()) ? null
                : laid.get().tints(map.get(), work.get() == null ? OptionalDouble.empty() : work.get().end(map.get())), laid, map, work);
    }

    /** Opens a recipe or a mesh in place of what is open; asks nothing. */
    public void open(Path path) {
        open(path, Optional.empty());
    }

    /** The answer to the {@link #questionProperty question}. */
    public void answer(LengthUnit unit) {
        UnitQuestion asked = question.get();
        question.set(null);
        if (asked != null) open(asked.file(), Optional.of(unit));
    }

    private void open(Path path, Optional<LengthUnit> unit) {
        question.set(null);
        try {
            Recipe recipe = InputFile.recipe(path, unit);
            boolean isRecipe = InputFile.isRecipe(path);
            if (isRecipe && unit.isPresent() && recipe.source() instanceof Source.OfMesh mesh)
                recipe = recipe.withSource(new Source.OfMesh(mesh.file(), unit));
            begin(recipe, Given.file(path), isRecipe ? path.toAbsolutePath().normalize() : null, path,
                    () -> settings.opened(path));
        } catch (Refusal e) {
            warn(e.words());
        }
    }

    /** Opens a panel of the Tern. */
    public void openDemo(String name) {
        begin(Demos.recipe(name), new Given(name + ".yaml", Path.of("").toAbsolutePath(), List.of()), null, null, () -> { });
    }

    /** Carries on where a killed program was. */
    public void carryOn(Autosave.Left left) {
        begin(left.recipe(), left.given(), left.file().orElse(null), null, () -> {
            history.neverKept();
            tell();
            copy();
            Autosave.forget(left);
        });
    }

    private void begin(Recipe recipe, Given from, Path recipeFile, Path opened, Runnable then) {
        hush();
        news.set("");
        Work begun = new Work(recipe);
        AtHand panel = new AtHand(from);
        runner.ask(progress -> Laid.of(panel.whole(recipe, progress)), true, done -> {
            history = new History<>(begun);
            given = from;
            hand = panel;
            dragging = false;
            owed = false;
            first.set(null);
            file.set(recipeFile);
            place.set(null);
            chosen.set(null);
            listMetals();
            work.set(begun);
            lie(done);
            autosave.clear();
            tell();
            then.run();
        }, e -> {
            failed(e, opened);
            again();                                // opening stopped what the panel that stays was waiting for
        });
    }

    private void failed(Throwable e, Path opened) {
        if (e instanceof OddSize odd && opened != null) {
            question.set(UnitQuestion.of(opened, odd.across()));
        } else if (e instanceof Refusal refusal) {
            warn(refusal.words());
        } else if (e instanceof OutOfMemoryError) {
            warn("There was not enough memory. Close other programs, start with more (java -Xmx8g -jar blankwright.jar), or give"
                    + " a coarser mesh.");
        } else {
            warn("The program failed, and that is our fault, not yours (" + e.getClass().getSimpleName() + ": " + e.getMessage()
                    + "). What was there before is still there.");
        }
    }

    /** Decides something else about the panel; refused words go to {@link #troubleProperty}. True where it was taken. */
    public boolean change(UnaryOperator<Recipe> how) {
        return change(how, null);
    }

    /** @param grip what the hand is on while it drags: all changes under it are one step */
    public boolean change(UnaryOperator<Recipe> how, Object grip) {
        if (history == null) return false;
        try {
            put(history.now().with(how.apply(history.now().recipe())), grip);
            return true;
        } catch (IllegalArgumentException e) {
            warn(Explained.words(e));
            return false;
        }
    }

    /** The hand has let go of what it dragged: the blank follows to the last bit. */
    public void letGo() {
        if (history == null) return;
        history.letGo();
        dragging = false;
        if (owed) follow();
    }

    public void lay(DrawnTape tape) {
        if (history != null) put(history.now().with(tape), null);
    }

    public void takeAway(DrawnTape tape) {
        if (history != null) put(history.now().without(tape), null);
    }

    /**
     * Cuts the form along a path over the skin: from rim to rim it parts or opens the panel, from the rim inwards it is a relief cut. Ends
     * nearer to a rim than {@code reach} mm are put on it.
     */
    public void cut(List<Place> path, double reach) {
        Laid there = laid.get();
        if (history == null || there == null) return;
        List<DrawnSeam.Point> points = new ArrayList<>();
        for (int i = 0; i < path.size(); i++) {
            boolean end = i == 0 || i == path.size() - 1;
            double[] at = end ? there.toRim(path.get(i), reach) : there.numbers(path.get(i)).form();
            DrawnSeam.Point point = new DrawnSeam.Point(Laid.tidy(at[0]), Laid.tidy(at[1]), Laid.tidy(at[2]));
            if (points.isEmpty() || !points.get(points.size() - 1).equals(point)) points.add(point);
        }
        if (points.size() < 2) {
            warn("A seam needs two places at least: where it begins and where it ends.");
            return;
        }
        List<DrawnSeam> all = new ArrayList<>(history.now().recipe().seams());
        all.add(new DrawnSeam(points));
        change(r -> r.withSeams(all));
    }

    /**
     * Moves the end of a seam; all moves of one grip are one step.
     *
     * @param to mm on the form
     */
    public void move(SeamGrip end, double[] to) {
        change(r -> r.withSeams(end.moved(to)), end);
    }

    /** Leaves a seam out again. */
    public void sew(DrawnSeam seam) {
        if (history == null) return;
        List<DrawnSeam> all = new ArrayList<>(history.now().recipe().seams());
        all.remove(seam);
        change(r -> r.withSeams(all));
    }

    /** Holds the sheet within {@link #CLAMP} mm of a place, for the trial of bending it on unworked. True where it was taken. */
    public boolean hold(Place place) {
        if (laid.get() == null) return false;
        double[] at = laid.get().numbers(place).form();
        Clamps.Spot spot = new Clamps.Spot(Laid.tidy(at[0]), Laid.tidy(at[1]), Laid.tidy(at[2]), CLAMP);
        return change(r -> r.withClamps(Optional.of(r.clamps().orElse(Clamps.NOWHERE).with(spot))));
    }

    /**
     * Takes the metal from a table of the maker's own: the one of the same name, else its first. The recipe names the file, which is read anew
     * where it is chosen again. True where it was taken.
     */
    public boolean ownAlloys(Path file) {
        if (history == null) return false;
        String table = seenFrom(given.folder(), file);
        try {
            List<Metal> all = Metal.all(table, given.folder());
            Optional<String> name = history.now().recipe().metal().map(m -> m.alloy().name());
            Metal taken = all.stream().filter(m -> name.equals(Optional.of(m.alloy().name()))).findFirst().orElse(all.get(0));
            metalsFrom = null;
            return change(r -> r.withMetal(Optional.of(taken)));
        } catch (IOException e) {
            warn(file.getFileName() + " cannot be read. Choose another file.");
        } catch (RecipeException e) {
            warn(e.words());
        }
        return false;
    }

    /** Of the recipe as it stands; a table of the maker's own is read where it is another than before. */
    private void listMetals() {
        Optional<String> table = history.now().recipe().metal().flatMap(Metal::table);
        List<Object> from = List.of(table, given.folder());
        if (from.equals(metalsFrom)) return;
        metalsFrom = from;
        try {
            metals.set(table.isEmpty() ? Metal.all() : Metal.all(table.get(), given.folder()));
        } catch (IOException | RecipeException e) {                 // it could be read when the recipe was, whose metal is known
            metals.set(Metal.all());
        }
    }

    /** Goes back to the metals that come with the program: to the one of the same name, or to none where it has no such. */
    public void leaveOwnAlloys() {
        change(r -> r.withMetal(r.metal().filter(m -> !m.isOwn()).map(m -> Metal.shipped(m.alloy().name()))));
    }

    /** Sets the end of the present map's scale; empty for the usual one. */
    public void end(OptionalDouble end, Object grip) {
        if (history != null) change(r -> new Work(r).withEnd(map.get(), end).recipe(), grip);
    }

    public void undo() {
        if (history == null) return;
        history.undo();
        show(false);
    }

    public void redo() {
        if (history == null) return;
        history.redo();
        show(false);
    }

    private void put(Work next, Object grip) {
        history.change(next, grip);
        show(grip != null);
    }

    /** The history has moved: everything follows, while a hand drags only a first answer. */
    private void show(boolean dragged) {
        Work now = history.now();
        Recipe before = work.get().recipe();                    // the colours end where they may, tapes come and go: the blank is the same
        boolean otherPanel = !now.recipe().equals(before.withScales(now.recipe().scales()).withTapes(now.tapes()));
        listMetals();
        work.set(now);
        hush();
        tell();
        copy();
        if (!otherPanel) return;
        dragging = dragged;
        owed = true;
        if (dragged) answerFirst();
        else follow();
    }

    /** While a hand drags: the latest wish, as soon as the answer to the one before is there, and nearer and nearer while the hand rests. */
    private void answerFirst() {
        Recipe recipe = history.now().recipe();
        Question question = new Question(history, hand, laid.get(), map.get());
        boolean small = question.before.result().input().triangles() <= FOLLOWED;
        runner.follow(progress -> {
            Optional<FirstAnswer> answer = firstAnswer(question, recipe);
            for (int i = 1; i < NEARER && answer.isPresent() && !answer.get().draft().arrived() && !progress.cancelled(); i++)
                answer = firstAnswer(question, recipe);
            if (answer.isPresent()) return null;
            Laid whole = Laid.of(question.panel.whole(recipe, small ? Progress.NONE : progress));       // another form, as by its measures
            screen.execute(() -> {
                if (history == question.of) followed(whole);
            });
            return null;
        }, nothing -> { }, e -> failed(e, null));
    }

    /** A first answer, then the whole. */
    private void follow() {
        owed = false;
        Recipe recipe = history.now().recipe();
        Question question = new Question(history, hand, laid.get(), map.get());
        Result known = laid.get().result().seenFrom(given.folder());
        Recipe before = laidFor;
        FirstAnswer shown = first.get();
        runner.follow(progress -> {
            if (onlyNamed(before, recipe)) return Laid.of(known.with(recipe));
            if (shown == null || !shown.draft().recipe().equals(recipe)) firstAnswer(question, recipe);
            return Laid.of(question.panel.whole(recipe, progress));
        }, done -> {
            if (history == question.of) followed(done);
        }, e -> failed(e, null));
    }

    /** What was there when something was wished; an answer that comes after another panel was opened is for nobody. */
    private record Question(History<Work> of, AtHand panel, Laid before, MapKind kind) { }

    /** Never stopped, so that something is seen even where wishes come faster than answers. Empty where only the whole can tell. */
    private Optional<FirstAnswer> firstAnswer(Question question, Recipe recipe) {
        Optional<FirstAnswer> answer = question.panel.draft(recipe, Progress.NONE)
                .flatMap(draft -> FirstAnswer.of(draft, question.before, question.kind));
        answer.ifPresent(a -> screen.execute(() -> {
            if (history == question.of && laid.get() == question.before) first.set(a);
        }));
        return answer;
    }

    /** Nothing runs any more: what is shown is the last whole, unless a hand still drags; what waited for that is done. */
    private void rested() {
        if (!dragging && !runner.busyProperty().get()) first.set(null);
        nextErrand();
    }

    /** Whether two recipes give the same blank with other words on it. */
    private static boolean onlyNamed(Recipe one, Recipe other) {
        return one.withName(other.name()).withHand(other.hand()).withNotes(other.notes()).withScales(other.scales())
                .withTapes(other.tapes())
                .equals(other);
    }

    /** A place and a zone are found again on the panel laid out anew. */
    private void followed(Laid done) {
        double[] at = place.get() == null ? null : laid.get().numbers(place.get()).form();
        if (!done.has(chosen.get())) chosen.set(null);
        place.set(null);
        lie(done);
        first.set(null);
        if (at != null) place.set(done.onForm(at[0], at[1], at[2]));
    }

    private void lie(Laid done) {
        laidFor = done.result().recipe();
        laid.set(done);
    }

    private void tell() {
        canUndo.set(history.canUndo());
        canRedo.set(history.canRedo());
        unsaved.set(history.unkept());
    }

    private void copy() {
        if (!history.unkept()) {
            autosave.clear();
            return;
        }
        try {
            autosave.write(history.now().recipe(), given, Optional.ofNullable(file.get()));
        } catch (IOException e) {
            warn("No safety copy can be kept (" + InputFile.words(e) + "): save the recipe yourself from time to time.");
        }
    }

    /**
     * Writes the recipe, whole or not at all, keeping the remarks at the head of a file already there. A mesh it names is found from there
     * too. True where it was written; else {@link #troubleProperty} says why not.
     */
    public boolean save(Path to) {
        if (history == null) return false;
        Path whole = to.toAbsolutePath().normalize();
        Path before = given.folder();
        UnaryOperator<String> moved = name -> seenFrom(whole.getParent(), before.resolve(name));
        Recipe recipe = named(history.now().recipe(), moved);
        String text = head(whole) + RecipeWriter.write(recipe);
        try (OutputFolder folder = OutputFolder.open(whole.getParent())) {
            folder.write(whole.getFileName().toString(), out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
            folder.keep();
        } catch (IOException e) {
            warn("The recipe could not be written: " + InputFile.words(e) + ". Choose another place, or make room.");
            return false;
        }
        if (onlyNamed(laidFor, history.now().recipe())) laidFor = recipe;
        given = Given.file(whole);
        hand = hand.with(given);
        history.reword(state -> state.with(named(state.recipe(), moved)));      // undo finds its files from there too
        history.keep();
        listMetals();
        work.set(history.now());
        file.set(whole);
        settings.opened(whole);
        autosave.clear();
        hush();
        tell();
        return true;
    }

    /** The recipe with the files it names under other names. */
    private static Recipe named(Recipe recipe, UnaryOperator<String> moved) {
        Recipe there = recipe;
        if (recipe.source() instanceof Source.OfMesh mesh) there = there.withSource(new Source.OfMesh(moved.apply(mesh.file()), mesh.units()));
        there = there.withMetal(recipe.metal().map(m -> new Metal(m.alloy(), m.soft(), m.bands(), m.table().map(moved))));
        Handwork hands = recipe.handwork();
        return there.withHandwork(new Handwork(hands.lean(), hands.tools(), hands.toolFile().map(moved)));
    }

    /** Does it at once, or as soon as nothing runs any more. */
    private void whenLaid(Runnable errand) {
        letGo();
        if (behind.get()) follow();
        errands.add(errand);
        if (runner.busyProperty().get()) news.set("This is done as soon as the blank is laid out.");
        else nextErrand();
    }

    private void nextErrand() {
        if (errands.isEmpty() || runner.busyProperty().get()) return;
        if (!lagging()) {
            errands.remove().run();
            return;
        }
        errands.clear();
        news.set("");
        if (trouble.get().isEmpty()) warn("The blank shown is not that of the order, so nothing was taken away: undo, or lay"
                + " it out again.");
    }

    /** Lays out what was decided, where that was stopped or refused. */
    public void again() {
        if (behind.get()) follow();
    }

    /** Whether what is laid out is another blank than that decided. */
    private boolean lagging() {
        return history != null && !onlyNamed(laidFor, history.now().recipe());
    }

    /** Stops what runs and forgets what waits. */
    public void stop() {
        errands.clear();
        runner.stop();
    }

    /** What is shown, with the words, scales and tapes of the moment. */
    private Result shown() {
        Recipe now = history.now().recipe();
        Result known = laid.get().result();
        return onlyNamed(laidFor, now) ? known.seenFrom(given.folder()).with(now) : known;
    }

    /** The blank as the files hold it, tapes and all; null while nothing is open. */
    public Drawing drawing() {
        return laid.get() == null ? null : Packet.drawing(shown());
    }

    /** Writes files of what is shown into a folder; {@link #newsProperty} tells when they are there. */
    public void takeAway(Path folder, Set<Output> files, Paper paper) {
        if (laid.get() != null) whenLaid(() -> write(folder, files, paper));
    }

    /**
     * Prints the sheets at true size; {@link #newsProperty} tells when the printer has them.
     *
     * @param coverOnly with the check squares, to see first whether the printer keeps them true
     */
    public void print(PdfPrinter printer, Paper paper, boolean coverOnly) {
        if (laid.get() != null) whenLaid(() -> send(printer, paper, coverOnly));
    }

    private void send(PdfPrinter printer, Paper paper, boolean coverOnly) {
        Result shown = shown();
        String name = shown.recipe().name();
        news.set("");
        hush();
        runner.ask(progress -> printer.print(Packet.pdf(shown, paper), name, paper, coverOnly ? 1 : Integer.MAX_VALUE, progress), false,
                sheets -> news.set((sheets == 1 ? "One sheet was" : sheets + " sheets were") + " sent to " + printer.name()
                        + ". Measure the check squares both ways before you cut."),
                e -> {
                    if (e instanceof IOException) warn("The printer " + printer.name() + " did not take the sheets ("
                            + e.getMessage()
                            + "). See whether it is switched on and has paper, or write the PDF and print that at 100 %.");
                    else if (e instanceof IllegalArgumentException) warn(
                            "This blank would take thousands of sheets of paper: give the DXF or SVG to a cutting shop instead.");
                    else failed(e, null);
                });
    }

    private void write(Path folder, Set<Output> files, Paper paper) {
        Result shown = shown();
        news.set("");
        hush();
        runner.ask(progress -> {
            try (OutputFolder to = OutputFolder.open(folder)) {
                return Packet.write(shown, to, files, paper, progress);
            }
        }, false, written -> {
            int count = written.files().size();
            news.set((count == 1 ? "One file was" : count + " files were") + " written to " + folder + ".");
            if (!written.findings().isEmpty()) warn(written.findings().get(0).words());
        }, e -> {
            if (e instanceof IOException) warn("The files could not be written: " + InputFile.words(e)
                    + ". Choose another folder, or make room.");
            else failed(e, null);
        });
    }

    /** Writes a picture of what the screen shows. */
    public void keepPicture(Picture picture, Path to) {
        Path whole = to.toAbsolutePath().normalize();
        try (OutputFolder folder = OutputFolder.open(whole.getParent())) {
            folder.write(whole.getFileName().toString(), picture::writePng);
            folder.keep();
            news.set("Written: " + whole);
        } catch (IOException e) {
            warn("The picture could not be written: " + InputFile.words(e) + ". Choose another place, or make room.");
        }
    }

    /** Writes a text of a few lines; why not, where it could not be written. */
    public Optional<String> keepText(String text, Path to) {
        Path whole = to.toAbsolutePath().normalize();
        try (OutputFolder folder = OutputFolder.open(whole.getParent())) {
            folder.write(whole.getFileName().toString(), out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
            folder.keep();
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of("The list could not be written: " + InputFile.words(e) + ". Choose another place, or make room.");
        }
    }

    /** Where the recipe or the mesh lies; empty for a panel of the Tern that was never saved. */
    public Optional<Path> folder() {
        if (file.get() != null) return Optional.of(file.get().getParent());
        return given != null && history != null && history.now().recipe().source() instanceof Source.OfMesh ? Optional.of(given.folder())
                : Optional.empty();
    }

    private static String seenFrom(Path folder, Path mesh) {
        try {
            return folder.relativize(mesh.toAbsolutePath().normalize()).toString();
        } catch (IllegalArgumentException e) {                      // another drive
            return mesh.toAbsolutePath().normalize().toString();
        }
    }

    private static String head(Path there) {
        try {
            StringBuilder head = new StringBuilder();
            for (String line : Files.readAllLines(there)) {
                if (!line.startsWith("#")) break;
                head.append(line).append('\n');
            }
            return head.toString();
        } catch (IOException e) {
            return "";
        }
    }

    /** The window closes for good: what was not saved is not wanted. */
    public void close() {
        runner.close();
        autosave.clear();
    }

    public Runner runner() {
        return runner;
    }

    public Settings settings() {
        return settings;
    }

    /** What was decided; null while nothing is open. */
    public ReadOnlyObjectProperty<Work> workProperty() {
        return work.getReadOnlyProperty();
    }

    /** What came out of it last; null while nothing is open. It may lag behind {@link #workProperty} while work is under way. */
    public ReadOnlyObjectProperty<Laid> laidProperty() {
        return laid.getReadOnlyProperty();
    }

    /** What is shown in place of {@link #laidProperty} while the blank follows; null where that is up to date, or nothing can be said soon. */
    public ReadOnlyObjectProperty<FirstAnswer> firstAnswerProperty() {
        return first.getReadOnlyProperty();
    }

    /** The colours of the pieces of what is laid out under the present map, or of the first answer in its place. */
    public List<Painting> paintings(Laid shown) {
        FirstAnswer now = first.get();
        if (now == null) return shown.skins().stream().map(skin -> skin.painting(map.get())).toList();
        return IntStream.range(0, now.pieces()).mapToObj(i -> now.painting(i, map.get())).toList();
    }

    /** True where nothing runs and yet the blank is not that of the order: it was stopped or refused. */
    public BooleanBinding behindProperty() {
        return behind;
    }

    /** The metals to choose from, the maker's own first where the recipe names a table of them. */
    public ReadOnlyObjectProperty<List<Metal>> metalsProperty() {
        return metals.getReadOnlyProperty();
    }

    /** The recipe file it is saved as; null where it has none. */
    public ReadOnlyObjectProperty<Path> fileProperty() {
        return file.getReadOnlyProperty();
    }

    public ReadOnlyBooleanProperty canUndoProperty() {
        return canUndo.getReadOnlyProperty();
    }

    public ReadOnlyBooleanProperty canRedoProperty() {
        return canRedo.getReadOnlyProperty();
    }

    public ReadOnlyBooleanProperty unsavedProperty() {
        return unsaved.getReadOnlyProperty();
    }

    /** What went wrong and what to do, in one or two sentences, lengths as {@link #styleProperty} has them; empty where nothing did. */
    public ReadOnlyStringProperty troubleProperty() {
        return trouble.getReadOnlyProperty();
    }

    /** Something went wrong: what, and what to do. */
    public void warn(Sentence words) {
        wrong.set(words);
    }

    /** The same, without measures. */
    public void warn(String words) {
        warn(Sentence.of(words));
    }

    /** Nothing is wrong any more, or it has been read. */
    public void hush() {
        wrong.set(NOTHING);
    }

    /** What has been done, where that cannot be seen; empty where nothing was. */
    public StringProperty newsProperty() {
        return news;
    }

    /** Which unit a mesh is in, where nobody said; null where nothing is asked. */
    public ObjectProperty<UnitQuestion> questionProperty() {
        return question;
    }

    /** The place pointed at; null where none is. */
    public ObjectProperty<Place> placeProperty() {
        return place;
    }

    /** The zone or flange chosen in the list; null where none is. */
    public ObjectProperty<WorkRow> chosenProperty() {
        return chosen;
    }

    public ObjectProperty<MapKind> mapProperty() {
        return map;
    }

    public ObjectProperty<LengthStyle> styleProperty() {
        return style;
    }

    /** Length over which strains are told as lengths, mm. */
    public DoubleProperty spanProperty() {
        return span;
    }

    /** Colours and limits of the present map; null while nothing is open. */
    public ObjectBinding<Tints> tintsProperty() {
        return tints;
    }

    /** The result, where there is one. */
    public Optional<Result> result() {
        return Optional.ofNullable(laid.get()).map(Laid::result);
    }
}
