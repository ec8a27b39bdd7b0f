package blankwright.viewer;

import blankwright.project.AlloyReader;
import blankwright.viewer.model.Autosave;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Settings;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.FutureTask;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;
import javafx.scene.Scene;
import javafx.stage.Stage;

/** The window and what it begins with. */
public final class Viewer extends Application {
    private static final ScreenThread SCREEN = new ScreenThread();
    private static FutureTask<Begun> begun;                     // the toolkit makes the Viewer itself

    /** Opens the window and returns when it is closed; at most one file as argument. */
    public static void open(String... args) {
        // the drawing goes through the graphics card's language also where a processor speaks it: without this such a machine shows no form
        if (System.getProperty("prism.forceGPU") == null) System.setProperty("prism.forceGPU", "true");
        Logger.getLogger("javafx").setLevel(Level.SEVERE);      // it warns of every start from one jar
        begun = new FutureTask<>(() -> begin(args));
        Thread early = new Thread(begun, "begin");
        early.setDaemon(true);
        early.start();
        launch(Viewer.class);
        System.exit(0);
    }

    /** What the window shows first. */
    private record Begun(Bench bench, List<Autosave.Left> left) { }

    /** Runs while the toolkit starts. */
    private static Begun begin(String... args) {
        Path home = Settings.folder();
        Autosave autosave = new Autosave(home.resolve("unsaved"));
        Bench bench = new Bench(SCREEN, new Settings(home), autosave);
        if (args.length > 0) bench.open(Path.of(args[0]));
        AlloyReader.shipped();                                  // the window asks for it
        return new Begun(bench, autosave.left());
    }

    @Override
    public void start(Stage stage) throws Exception {
        Bench bench = begun.get().bench();
        BenchPane pane = new BenchPane(bench, stage);
        Scene scene = new Scene(pane, bench.settings().get("width", 1360.0), bench.settings().get("height", 860.0));
        stage.setScene(scene);
        pane.dress();
        stage.show();
        SCREEN.begin();
        pane.offer(begun.get().left());
    }
}
