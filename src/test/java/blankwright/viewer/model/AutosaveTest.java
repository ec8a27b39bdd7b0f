package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.Given;
import blankwright.project.Recipe;
import blankwright.shape.SphericalCap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a killed program left, among files of others that run and of others that do not. */
class AutosaveTest {
    private static final long NOBODY = 999_999_999;         // no system numbers its processes so high
    @TempDir Path temp;

    private Path left(String who, String recipe, long when) throws IOException {
        Autosave there = new Autosave(temp.resolve("other"));
        there.write(Recipe.of(recipe, new SphericalCap(300, 0.4)), new Given(recipe + ".yaml", temp, List.of()), Optional.empty());
        Path file = Files.move(there.copy(), Files.createDirectories(temp.resolve("unsaved")).resolve("left-" + who + ".yaml"));
        return Files.setLastModifiedTime(file, FileTime.fromMillis(when));
    }

    private List<String> found() {
        return new Autosave(temp.resolve("unsaved")).left().stream().map(l -> l.recipe().name()).toList();
    }

    @Test
    void theNewestIsOfferedFirst() throws IOException {
        left(NOBODY + "-7", "middle", 2_000_000);
        left(NOBODY + "", "oldest", 1_000_000);         // as older versions named it
        left(NOBODY + 1 + "-7", "newest", 3_000_000);
        Files.writeString(temp.resolve("unsaved/left-" + NOBODY + "-8.yaml"), "no recipe");
        assertEquals(List.of("newest", "middle", "oldest"), found());
    }

    /** After the machine was started anew, or in a container each time, another process has the killed program's number, or oneself. */
    @Test
    void aNumberThatCameAgainHidesNothing() throws IOException {
        ProcessHandle own = ProcessHandle.current();
        long started = own.info().startInstant().orElseThrow().toEpochMilli();
        Path killed = left(own.pid() + "-" + (started - 500), "killed", 1_000_000);
        assertEquals(List.of("killed"), found());
        Autosave autosave = new Autosave(temp.resolve("unsaved"));
        autosave.write(Recipe.of("now", new SphericalCap(300, 0.4)), new Given("now", temp, List.of()), Optional.empty());
        assertEquals(List.of("killed"), found(), "not what is under way");
        autosave.clear();
        assertTrue(Files.exists(killed), "not thrown away with one's own");
        assertFalse(Files.exists(autosave.copy()));
        ProcessHandle parent = own.parent().orElseThrow();
        long before = parent.info().startInstant().orElseThrow().toEpochMilli();
        left(parent.pid() + "-" + (before - 3_600_000), "older", 500_000);
        left(parent.pid() + "-" + (before + 1000), "still open", 2_000_000);
        assertEquals(List.of("killed", "older"), found(), "a clock that was set by a second changes nothing");
    }

    /** Names may hold anything a file's name may. */
    @Test
    void aNameOfTwoLinesStaysAName() throws IOException {
        Autosave autosave = new Autosave(temp.resolve("other"));
        Path odd = temp.resolve("two\nlines.yaml");
        autosave.write(Recipe.of("cap", new SphericalCap(300, 0.4)), new Given("two\nlines", temp, List.of()), Optional.of(odd));
        Files.move(autosave.copy(), Files.createDirectories(temp.resolve("unsaved")).resolve("left-" + NOBODY + "-1.yaml"));
        Autosave.Left left = new Autosave(temp.resolve("unsaved")).left().get(0);
        assertEquals("two lines", left.given().name());
        assertEquals(Optional.of(temp.resolve("two lines.yaml")), left.file());
    }
}
