package blankwright.viewer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import blankwright.oracle.OutsideReader;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The window itself on a virtual display, moved by mouse and keys; every scene leaves its picture in target/screens. */
@Tag("screen")
class ScreenTest {
    @TempDir static Path home;
    private static Process display;
    private static String number;
    private static Player player;

    /** A process that holds the window. */
    private static final class Player implements AutoCloseable {
        final Process process;
        final BufferedReader answers;
        final PrintWriter names;

        Player(Path home) throws IOException {
            ProcessBuilder java = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx1g",
                    "-XX:TieredStopAtLevel=1", "-Dblankwright.home=" + home, "-cp", System.getProperty("java.class.path"), "blankwright.viewer.Scenes");
            java.environment().put("DISPLAY", number);
            process = java.redirectError(home.resolve("said").toFile()).start();
            answers = process.inputReader();
            names = new PrintWriter(process.outputWriter(), true);
            assertEquals("ready", answers.readLine());
        }

        void play(String scene) throws IOException {
            names.println(scene);
            String answer = answers.readLine();
            if (!"done".equals(answer)) fail(scene + ": " + answer);
        }

        @Override
        public void close() {
            process.destroyForcibly();
        }
    }

    @BeforeAll
    static void show() throws Exception {
        if (!OutsideReader.has("Xvfb")) {
            if ("true".equals(System.getenv("CI"))) fail("Xvfb is absent, and CI=true wants it");
            Assumptions.abort("Xvfb is absent");
        }
        display = new ProcessBuilder("Xvfb", "-displayfd", "1", "-screen", "0", "1400x900x24", "-nolisten", "tcp")
                .redirectError(ProcessBuilder.Redirect.DISCARD).start();
        number = ":" + new BufferedReader(new InputStreamReader(display.getInputStream())).readLine();
        player = new Player(home);
    }

    @AfterAll
    static void hide() throws InterruptedException {
        if (player != null) player.close();
        if (display == null) return;
        display.destroy();
        if (!display.waitFor(10, TimeUnit.SECONDS)) display.destroyForcibly();
    }

    @ParameterizedTest
    @ValueSource(strings = {"welcome", "turnSlideAndZoom", "keysReachTheFormAndTheBlank", "theColourAtASpotIsThatOfItsNumber", "aZoneIsFramedInBoth",
        "changesAreTypedAndTakenBack", "aTapeIsLaid", "aSeamIsCut", "theScaleIsDragged", "whatGoesToTheBenchIsShownAndWritten", "theUnitIsAsked",
        "darkWithLargeLetters", "everythingHasAName", "theManualOpensAtTheRightPart", "soak"})
    void scene(String name) throws IOException {
        player.play(name);
    }

    /** Killed without warning; the next start offers what was there. */
    @Test
    void aKilledViewerLosesNothing(@TempDir Path own) throws Exception {
        try (Player killed = new Player(own)) {
            killed.play("leaveUnsaved");
        }
        try (Player next = new Player(own)) {
            next.play("recover");
        }
        assertEquals(List.of(), new blankwright.viewer.model.Autosave(own.resolve("nothing")).left());
    }
}
