package blankwright.viewer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import blankwright.oracle.OutsideReader;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** A display of its own, without a screen. */
final class VirtualDisplay {
    private final Process server;
    private final String number;
    private final Path frames;

    private VirtualDisplay(Process server, String number, Path frames) {
        this.server = server;
        this.number = number;
        this.frames = frames;
    }

    /** Skips the test where there is no server for one; fails with {@code CI=true}. */
    static VirtualDisplay start() throws IOException {
        if (!OutsideReader.has("Xvfb")) {
            if ("true".equals(System.getenv("CI"))) fail("Xvfb is absent, and CI=true wants it");
            Assumptions.abort("Xvfb is absent");
        }
        Path frames = Files.createTempDirectory("frames");
        Process server = new ProcessBuilder("Xvfb", "-displayfd", "1", "-screen", "0", "1400x900x24", "-nolisten", "tcp",
                "-fbdir", frames.toString()).redirectError(ProcessBuilder.Redirect.DISCARD).start();
        return new VirtualDisplay(server, ":" + new BufferedReader(new InputStreamReader(server.getInputStream())).readLine(), frames);
    }

    void close() throws InterruptedException, IOException {
        server.destroy();
        if (!server.waitFor(10, TimeUnit.SECONDS)) server.destroyForcibly().waitFor();
        Files.deleteIfExists(frame());
        Files.deleteIfExists(frames);
    }

    String number() {
        return number;
    }

    /** What is on it at the moment: an X window dump, of which the server writes each change at once. */
    Path frame() {
        return frames.resolve("Xvfb_screen0");
    }

    /** A process that holds the window, with Java options and the viewer's own folder. */
    Player player(Path home, String... java) throws IOException {
        return new Player(number, home, java);
    }

    /** Plays scenes by name. */
    static final class Player implements AutoCloseable {
        private final Process process;
        private final BufferedReader answers;
        private final PrintWriter names;

        private Player(String display, Path home, String... options) throws IOException {
            List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
            command.addAll(List.of(options));
            command.addAll(List.of("-Dblankwright.home=" + home, "-cp", System.getProperty("java.class.path"),
                    "blankwright.viewer.Scenes"));
            ProcessBuilder java = new ProcessBuilder(command);
            java.environment().put("DISPLAY", display);
            process = java.redirectError(home.resolve("said").toFile()).start();
            answers = process.inputReader();
            names = new PrintWriter(process.outputWriter(), true);
            assertEquals("ready", answers.readLine());
        }

        void play(String scene) throws IOException {
            ask(scene);
        }

        /** What the scene has to say; fails where it could not be played to its end. */
        String ask(String scene) throws IOException {
            names.println(scene);
            String answer = answers.readLine();
            if (answer == null || !answer.startsWith("done")) fail(scene + ": " + answer);
            return answer.substring(4).strip();
        }

        @Override
        public void close() {
            process.destroyForcibly();
        }
    }
}
