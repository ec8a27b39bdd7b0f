package blankwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** One run of the command line within the test: exit code and what was said. */
record Run(ExitCode exit, String out, String err) {
    static Run of(Object... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(), err = new ByteArrayOutputStream();
        ExitCode exit = Blankwright.run(new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8),
                Arrays.stream(args).map(String::valueOf).toArray(String[]::new));
        return new Run(exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** Everything said on both channels. */
    String said() {
        return out + err;
    }
}
