package blankwright.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Lays every mesh at hand flat: {@code mvn -Pcorpus test} writes docs/benchmarks/corpus.md, where every failure
 * is named, and the table that {@link EnergiesAndStepsUnchangedTest} holds the ordinary run to. With {@code -Dcorpus.only="spikes 17"} it
 * lays one mesh flat and writes nothing.
 */
@Tag("corpus")
class CorpusTest {
    private static final Path PAGE = Path.of("docs/benchmarks/corpus.md");
    private static final int MANY_STEPS = 25;

    @Test
    void everyMeshComesOutFlat() throws IOException {
        String only = System.getProperty("corpus.only", "");
        if (!only.isEmpty()) {
            Trial one = named(only);
            assertEquals("", one.fault(), one.line());
            return;
        }
        Map<String, List<Trial>> runs = new LinkedHashMap<>();
        for (Family family : Families.ALL)
            runs.put(family.name(), IntStream.range(0, family.count()).parallel().mapToObj(i -> Trial.of(family, i)).toList());
        int[] leftOut = new int[1];
        runs.put("real panels beside the project", files(MeshFiles.corpus(), leftOut));
        runs.put("Debian's openfoam-examples", files(MeshFiles.examples(), leftOut));
        Files.createDirectories(PAGE.getParent());
        Files.writeString(PAGE, page(runs, leftOut[0]));
        EnergiesAndStepsUnchangedTest.write(runs);
        List<String> worse = runs.values().stream().flatMap(List::stream).filter(t -> !t.fault().isEmpty() && !t.onlySlow())
                .map(Trial::line).toList();
        assertEquals(List.of(), worse, "worse than not done after 500 steps, which the page names");
    }

    private static Trial named(String said) throws IOException {
        String name = said.startsWith("file ") ? said.substring("file ".length()) : said;
        for (Family family : Families.ALL)
            if (name.startsWith(family.name() + " ")) return Trial.of(family, Integer.parseInt(name.substring(family.name().length() + 1)));
        List<Path> files = new ArrayList<>(MeshFiles.corpus());
        files.addAll(MeshFiles.examples());
        for (Path file : files) {
            if (!name.startsWith(file.getFileName().toString())) continue;
            for (MeshFiles.Part part : MeshFiles.parts(file)) if (part.name().equals(name)) return Trial.of("file", name, part.form(), false);
        }
        throw new IllegalArgumentException("no mesh named " + name + " in the families or the files at hand");
    }

    private static List<Trial> files(List<Path> files, int[] leftOut) {
        List<Trial> trials = new ArrayList<>();
        for (Path file : files) {
            for (MeshFiles.Part part : MeshFiles.parts(file)) {
                if (part.form().triangleCount() > MeshFiles.MOST_TRIANGLES) leftOut[0]++;
                else trials.add(Trial.of("file", part.name(), part.form(), false));
            }
        }
        return trials;
    }

    private static String page(Map<String, List<Trial>> runs, int leftOut) {
        StringBuilder page = new StringBuilder("""
                # Every mesh at hand, laid flat

                Written by `mvn -Pcorpus test`; `mvn -Pcorpus test -Dcorpus.only="spikes 17"` lays one of them flat. Aim `even`,
                descended until a full step promises less than 1e-9 of the energy. A *failure* is a panel that did not converge, has a triangle
                turned over by the exact sign, or ended in an error. *Steps* are Newton steps of the final descent, each with a factor of its own;
                what goes on with the same factor, and sweeps, are none. Seconds are of the flattening alone, two panels at a time. Noise is a box of so many mean edges a side. Panels of this test are small and most of them worse than any scan.

                """);
        page.append(String.format(Locale.ROOT, "Real meshes are used where present; %d parts of more than %,d triangles were left out for time."
                + "%n%n", leftOut, MeshFiles.MOST_TRIANGLES));
        page.append("| family | panels | largest, triangles | failures | above 25 steps | median steps | most steps | median s | longest s |\n"
                + "|---|---|---|---|---|---|---|---|---|\n");
        List<Trial> all = new ArrayList<>();
        runs.forEach((family, trials) -> {
            if (trials.isEmpty()) return;
            all.addAll(trials);
            page.append(row(family, trials));
        });
        page.append(row("all", all));
        section(page, "Failures", all.stream().filter(t -> !t.fault().isEmpty()).toList());
        section(page, "More than 25 steps", all.stream().filter(t -> t.fault().isEmpty() && t.steps() > MANY_STEPS).toList());
        return page.toString();
    }

    private static String row(String family, List<Trial> trials) {
        int[] steps = trials.stream().mapToInt(Trial::steps).sorted().toArray();
        double[] seconds = trials.stream().mapToDouble(Trial::seconds).sorted().toArray();
        return String.format(Locale.ROOT, "| %s | %,d | %,d | %d | %d | %d | %d | %.3f | %.2f |%n", family, trials.size(),
                trials.stream().mapToInt(Trial::triangles).max().orElse(0), trials.stream().filter(t -> !t.fault().isEmpty()).count(),
                Arrays.stream(steps).filter(s -> s > MANY_STEPS).count(), steps[steps.length / 2], steps[steps.length - 1],
                seconds[seconds.length / 2], seconds[seconds.length - 1]);
    }

    private static void section(StringBuilder page, String title, List<Trial> trials) {
        page.append("\n## ").append(title).append("\n\n");
        if (trials.isEmpty()) page.append("None.\n");
        trials.stream().sorted(Comparator.comparing(Trial::family, Comparator.comparingInt(String::length)))
                .forEach(t -> page.append("- ").append(t.line()).append("\n"));
    }
}
