package blankwright.cli;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The program as its user starts it: a process of its own. */
final class Child {
    private Child() { }

    /** Starts it with Java options; what it says goes to {@code said}. */
    static Process start(List<String> java, Path said, Object... args) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(java);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "blankwright.Launcher"));
        Arrays.stream(args).map(String::valueOf).forEach(command::add);
        return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).redirectInput(new File("/dev/null")).start();
    }
}
