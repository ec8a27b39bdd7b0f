package blankwright.viewer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blankwright.viewer.model.Settings;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A small program in a jar that says which Java it runs in and ends as it is told. */
class QuickStartTest {
    @TempDir Path temp;
    private Path jar;

    /** What the jar runs. */
    public static final class Twice {
        public static void main(String[] args) {
            QuickStart.run(Twice.class, args).ifPresent(System::exit);
            System.out.println((System.getProperty("blankwright.second") == null ? "first" : "second") + " " + String.join("|", args));
            System.exit(Integer.parseInt(args[0]));
        }
    }

    @BeforeEach
    void pack() throws IOException {
        assumeTrue(ProcessHandle.current().info().arguments().isPresent(), "this system does not tell a program's options");
        jar = temp.resolve("a program.jar");
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, Twice.class.getName());
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar), manifest)) {
            for (Class<?> one : List.of(QuickStart.class, Settings.class, Twice.class)) {
                String name = one.getName().replace('.', '/') + ".class";
                out.putNextEntry(new ZipEntry(name));
                out.write(one.getResourceAsStream("/" + name).readAllBytes());
            }
        }
    }

    private record Said(String text, int code) { }

    private Said run(List<String> options, String... args) throws Exception {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dblankwright.home=" + temp.resolve("home")));
        command.addAll(options);
        command.addAll(List.of("-jar", jar.toString()));
        command.addAll(List.of(args));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Said(text.strip(), process.waitFor());
    }

    private List<Path> archives() throws IOException {
        try (Stream<Path> all = Files.list(temp.resolve("home/start"))) {
            return all.toList();
        }
    }

    /** Made by the first window, used by the next, made anew for another jar; nothing but the program is heard. */
    @Test
    void anArchiveIsMadeOnceForEachJar() throws Exception {
        assertEquals(new Said("second 0|a b|*", 0), run(List.of(), "0", "a b", "*"));
        List<Path> made = archives();
        assertEquals(1, made.size());
        FileTime when = Files.getLastModifiedTime(made.get(0));
        assertEquals(new Said("second 0", 0), run(List.of("-Xmx99m"), "0"));
        assertEquals(made, archives());
        assertEquals(when, Files.getLastModifiedTime(made.get(0)));
        Files.setLastModifiedTime(jar, FileTime.fromMillis(1_000_000_000_000L));
        assertEquals(new Said("second 0", 0), run(List.of(), "0"));
        assertEquals(1, archives().size(), "that of the jar before is gone");
        assertTrue(!archives().equals(made));
    }

    /** An archive under which the second Java ended otherwise than well is not used again; without one none is kept. */
    @Test
    void anArchiveThatMayBeBadIsThrownAway() throws Exception {
        assertEquals(new Said("second 3", 3), run(List.of(), "3"));
        assertEquals(List.of(), archives());
        run(List.of(), "0");
        Path archive = archives().get(0);
        assertEquals(new Said("second 3", 3), run(List.of(), "3"));
        assertEquals(List.of(), archives());
        Files.writeString(archive, "no archive");
        assertEquals(new Said("second 0", 0), run(List.of(), "0"), "Java passes over what is none");
    }

    @Test
    void whatCannotBeHandedOnOrDoesNotStartRunsInTheFirst() throws Exception {
        assertEquals(new Said("first 0", 0), run(List.of("-ea"), "0"));
        assertEquals(new Said("first 0", 0), run(List.of("-Dblankwright.home=" + Files.writeString(temp.resolve("file"), "")), "0"));
        assertEquals(new Said("second 1" + System.lineSeparator() + "first 1", 1), run(List.of(), "1"));
    }
}
