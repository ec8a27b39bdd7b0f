package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.project.Recipe;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** What is tried at a bench without a window; each test has one of its own. */
abstract class AtABench {
    @TempDir Path temp;
    final Screen screen = new Screen();
    Autosave autosave;
    Bench bench;

    @BeforeEach
    final void clearTheBench() {
        autosave = new Autosave(temp.resolve("home/unsaved"));
        bench = new Bench(screen, new Settings(temp.resolve("home")), autosave);
    }

    @AfterEach
    final void leaveTheBench() {
        bench.close();
    }

    /** Nothing runs, and what was left to be told is told. */
    final void settle() {
        screen.until(() -> !bench.runner().busyProperty().get());
        boolean[] told = {false};
        screen.execute(() -> told[0] = true);
        screen.until(() -> told[0]);
    }

    /** Opened, or refused. */
    final void opened(Path file) {
        bench.open(file);
        settle();
    }

    /** Opened, with nothing wrong. */
    final void openedWell(Path file) {
        opened(file);
        assertEquals("", bench.troubleProperty().get());
    }

    final Recipe now() {
        return bench.workProperty().get().recipe();
    }
}
