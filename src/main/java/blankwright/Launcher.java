package blankwright;

import blankwright.cli.Blankwright;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Where the jar starts. */
public final class Launcher {
    private Launcher() { }

    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");        // pictures are drawn in memory; a missing display must not matter
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        System.exit(Blankwright.run(out, err, args).number());
    }
}
