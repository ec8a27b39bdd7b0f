package blankwright.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToolReaderTest {
    private static final String HEAD = "blankwright-tools: 1\ntools:\n  - {name: jaw shrinker, does: shrink, reach: 1in, cost: 1.5}\n";

    @Test
    void readsWhatIsWritten() throws RecipeException {
        assertEquals(List.of(new Tool("jaw shrinker", Instruction.SHRINK, 25.4, 1.5),
                new Tool("bag", Instruction.STRETCH, Double.POSITIVE_INFINITY, 1)),
                ToolReader.read("t", HEAD + "  - name: bag\n    does: stretch\n    reach: anywhere\n"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {name: a, does: bend, reach: 9mm}               | t:4:21: does "bend": must be shrink or stretch
            {name: a, does: shrink, reach: far}             | t:4:36: reach:
            {name: a, does: shrink, reach: -2mm}            | t:4:36: reach
            {name: a, does: shrink, reach: 9mm, cost: 0}    | t:4:47: cost 0: must be above 0
            {name: a, does: shrink, reach: 9mm, cost: much} | t:4:47: cost "much": a plain number
            {name: a, does: shrink}                         | t:4:5: reach is missing
            {name: a, does: shrink, throat: 9mm}            | t:4:29: the key "throat" is not known
            """)
    void refusesWithThePlace(String line, String message) {
        String said = assertThrows(RecipeException.class, () -> ToolReader.read("t", HEAD + "  - " + line + "\n")).getMessage();
        assertTrue(said.startsWith(message), said);
    }

    @Test
    void aRecipeFindsItsToolsBesideIt(@TempDir Path folder) throws IOException, RecipeException {
        Files.writeString(folder.resolve("mine.yaml"), HEAD);
        String text = "blankwright-recipe: 1\nname: t\nmesh: a.stl\nalloy: 3003-O\naim: work\nlean: -0.25\ntools: mine.yaml\n";
        Path file = Files.writeString(folder.resolve("t.yaml"), text);
        Recipe recipe = RecipeReader.read(file);
        assertEquals(-0.25, recipe.handwork().lean());
        assertEquals(25.4, recipe.handwork().tools().get(0).reach(), 1e-12);
        Files.writeString(file, RecipeWriter.write(recipe));
        assertEquals(recipe, RecipeReader.read(file));
        refuses(folder, text.replace("mine", "none"), ":7:8: tools: \"none.yaml\" cannot be read");
        refuses(folder, text.replace("-0.25", "2"), ":6:7: lean 2.0: must be -1");
        refuses(folder, text.replace("-0.25", "left"), ":6:7: lean \"left\": a plain number");
        refuses(folder, text.replace("aim: work", "aim: even"), ":6:1: lean: goes with aim: work");
    }

    private static void refuses(Path folder, String text, String message) throws IOException {
        Path file = Files.writeString(folder.resolve("bad.yaml"), text);
        String said = assertThrows(RecipeException.class, () -> RecipeReader.read(file)).getMessage();
        assertTrue(said.contains(message), said);
    }

    @Test
    void theListsThatComeWithTheModelsAreGood() throws IOException, RecipeException {
        try (Stream<Path> lists = Files.list(Path.of("models/tools"))) {
            for (Path list : lists.toList()) assertTrue(ToolReader.read(list).size() > 1, list.toString());
        }
    }
}
