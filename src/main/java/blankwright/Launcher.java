package blankwright;

import blankwright.cli.Blankwright;
import blankwright.viewer.QuickStart;
import blankwright.viewer.Viewer;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;

/** Where the jar starts: with a subcommand the command line, else the viewer where there is a display. */
public final class Launcher {
    private Launcher() { }

    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");        // pictures are drawn in memory; a missing display must not matter
        if (display() && (args.length == 0 || args.length == 1 && isFile(args[0]))) {
            QuickStart.run(Launcher.class, args).ifPresent(System::exit);
            Viewer.open(args);
            return;
        }
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        System.exit(Blankwright.run(out, err, args).number());
    }

    /** Asks nothing that would load a toolkit. */
    private static boolean display() {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        return system.contains("win") || system.contains("mac") || !System.getenv().getOrDefault("DISPLAY", "").isEmpty();
    }

    private static boolean isFile(String word) {
        try {
            return Files.isRegularFile(Path.of(word));
        } catch (InvalidPathException e) {
            return false;
        }
    }
}
