package blankwright.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.shape.CrownedPanel;
import blankwright.shape.Hole;
import blankwright.shape.SphericalCap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FormulaHoleTest {
    private static Recipe skin(Hole... holes) {
        return Recipe.of("skin", new CrownedPanel(400, 300, 20, 10, CrownedPanel.Step.NONE, List.of(holes)));
    }

    /** The panel made with the hole at once is the one to which it is given later, and the recipe written and read is that too. */
    @Test
    void aHoleChangedIsThatOfThePanelMadeSo() throws Exception {
        Recipe one = FormulaHole.round(50, -20, 30).in(skin(new Hole(0, 0, 60, 20)), 0);
        assertEquals(skin(Hole.round(50, -20, 30)).source(), one.source());
        assertTrue(FormulaHole.of(one).orElseThrow().get(0).isRound());
        Recipe two = FormulaHole.in(one, List.of(FormulaHole.round(50, -20, 30), new FormulaHole(-80, 10, 50, 12)));
        assertEquals(skin(Hole.round(50, -20, 30), new Hole(-80, 10, 50, 12)).source(), two.source());
        assertEquals(two, RecipeReader.read("two.yaml", RecipeWriter.write(two)));
        assertEquals(skin(new Hole(-80, 10, 50, 12)).source(), FormulaHole.without(two, 0).source());
    }

    /** Nothing is said where it would not be true: a mesh and a cap have no holes of a formula. */
    @Test
    void refusesPanelsThatHaveNone() {
        Recipe cap = Recipe.of("cap", new SphericalCap(300, 0.5)), mesh = Recipe.ofMesh("mesh", "a.stl", Optional.empty());
        for (Recipe recipe : List.of(cap, mesh)) {
            assertEquals(Optional.empty(), FormulaHole.of(recipe));
            assertThrows(IllegalArgumentException.class, () -> FormulaHole.oneMore(recipe));
        }
        assertEquals(Optional.of(List.of()), FormulaHole.of(skin()));
    }

    /** Each further hole stands clear of those before it and of the edges; a full panel says so. */
    @Test
    void oneMoreFindsRoomUntilThereIsNone() {
        Recipe recipe = Recipe.of("small", new CrownedPanel(200, 150, 10, 5));
        List<FormulaHole> all = new ArrayList<>();
        while (true) {
            Recipe now = recipe;
            try {
                recipe = FormulaHole.oneMore(recipe);
            } catch (IllegalArgumentException e) {
                break;
            }
            assertTrue(all.size() < 60, "no end");
            all = new ArrayList<>(FormulaHole.of(recipe).orElseThrow());
            FormulaHole last = all.remove(all.size() - 1);
            assertEquals(FormulaHole.of(now).orElseThrow(), all, "those before stay");
            for (FormulaHole other : all) assertTrue(Math.hypot(other.along() - last.along(), other.across() - last.across()) > 20);
            assertTrue(Math.abs(last.along()) < 92 && Math.abs(last.across()) < 66, last.toString());
        }
        assertTrue(all.size() > 15, "only " + all.size());
        assertEquals(FormulaHole.round(0, 0, 20), all.get(0));
    }
}
