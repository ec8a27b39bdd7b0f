package blankwright.viewer;

import blankwright.viewer.model.Settings;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.zip.CRC32;

/**
 * Opens the window in a second Java, which starts sooner: it is given an archive of the classes that a window used before, of which Java
 * must be told as it starts. The first window makes that archive as it closes; another jar or another Java makes another.
 *
 * <p>Only where the program lies in one jar and was given no option that may not be handed on, and Java has its own classes in such an
 * archive, as usual on Linux and macOS. Everywhere else, and where the second Java does not start, the window opens in the first.
 */
public final class QuickStart {
    private static final String SECOND = "blankwright.second";
    /** Relocation: the archive is mapped where it says, without a tenth of a second's work to put it somewhere else. */
    private static final List<String> OPTIONS = List.of("-XX:+UseParallelGC", "-Xshare:auto", "-Xlog:disable",
            "-XX:+IgnoreUnrecognizedVMOptions", "-XX:+UnlockDiagnosticVMOptions", "-XX:ArchiveRelocationMode=0");
    private static final int CLOSED = 0, ASKED_TO_END = 143;
    private static final int NOT_STARTED = 1;           // how a Java ends that does not know an option or finds no display

    private QuickStart() { }

    /** How the window ended, as a program's exit code; empty where it is still to be opened. */
    public static OptionalInt run(Class<?> main, String... args) {
        Optional<List<String>> options = options();
        Path home = Path.of(System.getProperty("java.home")), java = home.resolve("bin/java");
        Path jar = Path.of(System.getProperty("java.class.path"));
        if (options.isEmpty() || System.getProperty(SECOND) != null || !jar.toString().endsWith(".jar") || !Files.isRegularFile(jar)
                || !Files.isExecutable(java) || !Files.isRegularFile(home.resolve("lib/server/classes.jsa"))) return OptionalInt.empty();
        try {
            Path whole = jar.toRealPath(), folder = Files.createDirectories(Settings.folder().resolve("start"));
            Path archive = folder.resolve(name(whole)), part = folder.resolve(name(whole) + "." + ProcessHandle.current().pid());
            boolean there = Files.isRegularFile(archive);
            List<String> command = new ArrayList<>(List.of(java.toString()));
            command.addAll(options.get());
            command.addAll(OPTIONS);
            command.addAll(List.of("-D" + SECOND + "=true",
                    there ? "-XX:SharedArchiveFile=" + archive : "-XX:ArchiveClassesAtExit=" + part,
                    "-cp", whole.toString(), main.getName()));
            command.addAll(List.of(args));
            int code = ended(command);
            boolean well = code == CLOSED || code == ASKED_TO_END;
            if (!well) Files.deleteIfExists(there ? archive : part);
            else if (!there) keep(part, archive);
            return code == NOT_STARTED ? OptionalInt.empty() : OptionalInt.of(code);
        } catch (IOException e) {
            return OptionalInt.empty();
        }
    }

    /** Options of this Java that the second needs too; empty where they cannot be told, or one of them may not be handed on. */
    private static Optional<List<String>> options() {
        if (System.getProperty("jpackage.app-path") != null) return Optional.of(List.of());
        List<String> options = new ArrayList<>();
        for (String one : ProcessHandle.current().info().arguments().orElse(new String[0])) {
            if (one.equals("-jar")) return Optional.of(options);
            if (!one.startsWith("-D") && !one.startsWith("-Xm")) return Optional.empty();
            options.add(one);
        }
        return Optional.empty();
    }

    /** Java itself refuses an archive made of another jar or by another Java, and never makes it anew. */
    private static String name(Path jar) throws IOException {
        CRC32 sum = new CRC32();
        sum.update((jar + "\n" + Files.size(jar) + "\n" + Files.getLastModifiedTime(jar).toMillis() + "\n"
                + System.getProperty("java.home") + "\n" + System.getProperty("java.vm.version")).getBytes(StandardCharsets.UTF_8));
        return Long.toHexString(sum.getValue()) + ".jsa";
    }

    private static int ended(List<String> command) throws IOException {
        Process second = new ProcessBuilder(command).inheritIO().start();
        Runtime.getRuntime().addShutdownHook(new Thread(second::destroy));
        while (true) {
            try {
                return second.waitFor();
            } catch (InterruptedException e) {
                second.destroy();
            }
        }
    }

    /** In place of all archives before. */
    private static void keep(Path part, Path archive) throws IOException {
        if (!Files.isRegularFile(part)) return;
        try (DirectoryStream<Path> all = Files.newDirectoryStream(archive.getParent())) {
            for (Path one : all) if (!one.equals(part)) Files.deleteIfExists(one);
        }
        Files.move(part, archive, StandardCopyOption.ATOMIC_MOVE);
    }
}
