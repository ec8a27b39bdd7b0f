package blankwright.viewer;

import blankwright.project.AlloyReader;
import blankwright.viewer.model.Autosave;
import blankwright.viewer.model.Bench;
import blankwright.viewer.model.Settings;
import java.nio.file.Path;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;

/** The window and what it begins with. */
public final class Viewer extends Application {
    /** Opens the window and returns when it is closed; at most one file as argument. */
    public static void open(String... args) {
        // the drawing goes through the graphics card's language also where a processor speaks it: without this such a machine shows no form
        if (System.getProperty("prism.forceGPU") == null) System.setProperty("prism.forceGPU", "true");
        Logger.getLogger("javafx").setLevel(Level.SEVERE);      // it warns of every start from one jar
        Thread early = new Thread(AlloyReader::shipped, "alloys");  // read while the toolkit starts: 0.15 s sooner there (docs/benchmarks/viewer.md)
        early.setDaemon(true);
        early.start();
        launch(Viewer.class, args);
        System.exit(0);
    }

    @Override
    public void start(Stage stage) {
        Path home = Settings.folder();
        Autosave autosave = new Autosave(home.resolve("unsaved"));
        Bench bench = new Bench(Platform::runLater, new Settings(home), autosave);
        // before the window, so that both are made at the same time
        if (!getParameters().getUnnamed().isEmpty()) bench.open(Path.of(getParameters().getUnnamed().get(0)));
        BenchPane pane = new BenchPane(bench, stage);
        Scene scene = new Scene(pane, bench.settings().get("width", 1360.0), bench.settings().get("height", 860.0));
        stage.setScene(scene);
        pane.dress();
        stage.show();
        pane.offer(autosave.left());
    }
}
