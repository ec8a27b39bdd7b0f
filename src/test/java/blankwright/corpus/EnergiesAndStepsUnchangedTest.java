package blankwright.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Some of each family of the corpus come out with no more energy than stored, to 1e-7, in no more steps than stored. That the energy is right is
 * proved elsewhere; here only that it, and the way there, became no worse. {@code mvn -Pcorpus test} writes the table anew: look at what
 * changed.
 */
class EnergiesAndStepsUnchangedTest {
    private static final Path TABLE = Path.of("src/test/resources/reference/energies-and-steps.csv");
    private static final int OF_EACH = 6;
    private static final int MOST_TRIANGLES = 4000;
    /** Longer ways lead past saddles, where the last bit decides on which side. */
    private static final int MOST_STEPS = 12;

    @TestFactory
    Stream<DynamicTest> eachFamily() throws IOException {
        List<String> lines = Files.readAllLines(TABLE);
        return Families.ALL.stream().map(family -> DynamicTest.dynamicTest(family.name(), () -> {
            List<String[]> stored = lines.stream().map(l -> l.split(";")).filter(l -> l[0].equals(family.name())).toList();
            for (String[] row : stored) {
                Trial trial = Trial.of(family, Integer.parseInt(row[1]));
                assertEquals("", trial.fault(), trial.line());
                assertEquals(Integer.parseInt(row[2]), trial.triangles(), "triangles of " + trial.line());
                double energy = Double.parseDouble(row[4]);
                assertTrue(trial.energy() <= energy * (1 + 1e-7), row[4] + " stored: " + trial.line());
                assertTrue(trial.steps() <= Integer.parseInt(row[3]), row[3] + " steps stored: " + trial.line());
            }
        }));
    }

    /** The first few of each family that came out without a long way. */
    static void write(Map<String, List<Trial>> runs) throws IOException {
        StringBuilder table = new StringBuilder("family;number;triangles;steps;mean symmetric Dirichlet energy\n");
        for (Family family : Families.ALL)
            runs.get(family.name()).stream()
                    .filter(t -> t.fault().isEmpty() && t.triangles() <= MOST_TRIANGLES && t.steps() <= MOST_STEPS).limit(OF_EACH)
                    .forEach(t -> table.append(String.format(Locale.ROOT, "%s;%s;%d;%d;%.12f\n", t.family(), t.name(), t.triangles(), t.steps(),
                            t.energy())));
        Files.createDirectories(TABLE.getParent());
        Files.writeString(TABLE, table);
    }
}
