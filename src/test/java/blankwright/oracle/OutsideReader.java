package blankwright.oracle;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * Programs we did not write that read what we wrote.
 *
 * <p>Where a program is absent the test is skipped by assumption; with the environment variable {@code CI=true} it fails instead.
 */
public final class OutsideReader {
    /** Debian's Python, which sees Debian's python3-* packages whatever other Python comes first on the path. */
    public static final String PYTHON = "/usr/bin/python3";

    private static final int SECONDS = 120;

    private OutsideReader() { }

    /** Exit code and everything said on both channels, in the order it came. */
    public record Answer(int exit, String text) { }

    /** Runs the program and gives what it said; fails the test when it ends with another code than 0 or takes over 120 s. */
    public static String run(String... command) {
        Answer answer = ask(command);
        if (answer.exit() != 0) fail(Arrays.toString(command) + " ended with " + answer.exit() + ":\n" + answer.text());
        return answer.text();
    }

    /** As {@link #run}, but any exit code will do. */
    public static Answer ask(String... command) {
        need(command[0]);
        try {
            Path said = Files.createTempFile("outside", ".txt");
            try {
                Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile())
                        .redirectInput(new File("/dev/null")).start();
                if (!process.waitFor(SECONDS, TimeUnit.SECONDS)) {
                    process.destroyForcibly();
                    fail(Arrays.toString(command) + " still runs after " + SECONDS + " s");
                }
                return new Answer(process.exitValue(), Files.readString(said));
            } finally {
                Files.deleteIfExists(said);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Runs a Python program given as text, its {@code sys.argv[1:]} being {@code arguments}; needs the modules named, e.g. "ezdxf". */
    public static String python(List<String> modules, String program, String... arguments) {
        for (String module : modules) {
            if (ask(PYTHON, "-c", "import " + module).exit() != 0) absent("the Python module " + module);
        }
        List<String> command = new ArrayList<>(List.of(PYTHON, "-c", program));
        command.addAll(List.of(arguments));
        return run(command.toArray(String[]::new));
    }

    /** True where the program is an executable file or is found on the path. */
    public static boolean has(String program) {
        if (program.contains("/")) return Files.isExecutable(Path.of(program));
        String path = System.getenv().getOrDefault("PATH", "");
        return Arrays.stream(path.split(File.pathSeparator)).anyMatch(dir -> Files.isExecutable(Path.of(dir, program)));
    }

    private static void need(String program) {
        if (!has(program)) absent(program);
    }

    private static void absent(String what) {
        if ("true".equals(System.getenv("CI"))) fail(what + " is absent, and CI=true wants it");
        Assumptions.abort(what + " is absent");
    }
}
