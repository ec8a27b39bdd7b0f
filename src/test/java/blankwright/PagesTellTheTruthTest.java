package blankwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.Output;
import blankwright.job.Version;
import blankwright.mesh.Finding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the pages say is there, and what is there they say. */
class PagesTellTheTruthTest {
    @Test
    void everyLinkLeadsSomewhere() throws IOException {
        List<String> dead = new ArrayList<>();
        for (Path page : pages()) {
            Matcher link = Pattern.compile("\\]\\((?!https?:)([^)#\\s]+)[^)]*\\)").matcher(Files.readString(page));
            while (link.find()) {
                Path here = page.toAbsolutePath().getParent();
                if (!Files.exists(here.resolve(link.group(1)))) dead.add(page + " -> " + link.group(1));
            }
        }
        assertEquals(List.of(), dead);
    }

    @Test
    void everyFileNamedInACommandIsThere() throws IOException {
        List<String> missing = new ArrayList<>();
        for (Path page : pages()) {
            Matcher recipe = Pattern.compile("\\bmodels/[-a-z]+\\.(yaml|obj)").matcher(Files.readString(page));
            while (recipe.find()) if (!Files.exists(Path.of(recipe.group()))) missing.add(page + ": " + recipe.group());
        }
        assertEquals(List.of(), missing);
    }

    @Test
    void everyWorkCitedIsListedOnce() throws IOException {
        String listed = Files.readString(Path.of("docs/sources.md"));
        Set<String> missing = new TreeSet<>();
        try (Stream<Path> all = Stream.concat(Files.walk(Path.of("src/main")), Files.walk(Path.of("docs")))) {
            for (Path file : all.filter(p -> p.toString().matches(".*\\.(java|md)")).toList()) {
                Matcher key = Pattern.compile("\\[([A-Za-z]{1,5}\\d\\d)\\]|sources\\.md \\[(\\w+)\\]").matcher(Files.readString(file));
                while (key.find()) {
                    String cited = key.group(1) == null ? key.group(2) : key.group(1);
                    if (!listed.contains("| [" + cited + "] |")) missing.add(file + ": " + cited);
                }
            }
        }
        assertEquals(Set.of(), missing);
        List<String> keys = Pattern.compile("^\\| (\\[\\w+\\]) \\|", Pattern.MULTILINE).matcher(listed).results().map(m -> m.group(1)).toList();
        assertEquals(keys.size(), Set.copyOf(keys).size(), "a work stands twice");
    }

    @Test
    void everyFindingIsExplained() throws IOException {
        String page = Files.readString(Path.of("docs/manual/findings.md"));
        for (Finding.Kind kind : Finding.Kind.values()) assertTrue(page.contains("`" + kind.key() + "`"), kind.key());
    }

    @Test
    void everyFileOfThePacketIsExplained() throws IOException {
        String page = Files.readString(Path.of("docs/manual/files.md"));
        for (Output output : Output.values()) assertTrue(page.contains("." + output.word() + "`"), output.word());
    }

    @Test
    void theVersionHasItsChanges() throws IOException {
        assertTrue(Files.readString(Path.of("docs/changes.md")).contains("## " + Version.TEXT));
    }

    @Test
    void theNoticesAreShippedWithTheProgram() {
        for (String name : List.of("LICENSE", "notices.md"))
            assertTrue(Version.class.getResource("/META-INF/blankwright/" + name) != null, name);
    }

    private static List<Path> pages() throws IOException {
        try (Stream<Path> all = Stream.concat(Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md"), Path.of("models/README.md")),
                Files.walk(Path.of("docs")))) {
            return all.filter(p -> p.toString().endsWith(".md")).toList();
        }
    }
}
