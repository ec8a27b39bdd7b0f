package blankwright.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.shape.Fineness;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The shipped recipes, and the recipes printed in the manual. */
class ModelsLoadTest {
    static List<Path> recipes() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("models"))) {
            return files.filter(p -> p.toString().endsWith(".yaml")).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("recipes")
    void loadsMeshesAndSaysWhereItComesFrom(Path file) throws Exception {
        String first = Files.readAllLines(file).get(0);
        assertTrue(first.startsWith("# Made by us") && first.contains("Teaches"), first);
        Recipe recipe = RecipeReader.read(file);
        assertEquals(recipe, RecipeReader.read("again", RecipeWriter.write(recipe)));
        if (recipe.source() instanceof Source.OfMesh mesh) {
            assertTrue(Files.size(file.resolveSibling(mesh.file())) < 400_000);
        } else {
            int count = ((Source.OfPanel) recipe.source()).panel().mesh(Fineness.chord(recipe.chord())).triangleCount();
            assertTrue(count >= 3_000 && count <= 20_000, file + " has " + count);
        }
        assertTrue(Files.readString(Path.of("models/README.md")).contains("`" + file.getFileName() + "`"));
    }

    @Test
    void thereAreEnough() throws IOException {
        assertTrue(recipes().size() >= 6);
    }

    /** The manual names every kind and key there is, and its recipes are recipes. */
    @Test
    void theManualIsTrue() throws Exception {
        String manual = Files.readString(Path.of("docs/manual/recipes.md"));
        for (PanelWords.Kind<?> kind : PanelWords.KINDS) {
            String row = manual.lines().filter(l -> l.startsWith("| `" + kind.word() + "`")).findFirst().orElseThrow(() -> new AssertionError(kind.word()));
            for (PanelWords.Key key : kind.keys()) assertTrue(row.contains("`" + key.word() + "`"), kind.word() + " " + key.word());
        }
        Matcher printed = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(manual);
        int count = 0;
        while (printed.find()) {
            RecipeReader.read("manual", printed.group(1));
            count++;
        }
        assertEquals(3, count);
    }
}
