package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.shop.Instruction;
import blankwright.shop.Tool;
import java.util.List;
import org.junit.jupiter.api.Test;

class ToolDraftTest {
    private static final List<Tool> SHOP = List.of(new Tool("jaw shrinker", Instruction.SHRINK, 25.4, 1),
            new Tool("mallet", Instruction.STRETCH, Double.POSITIVE_INFINITY, 2.5));

    @Test
    void whatIsShownIsReadBack() {
        for (LengthStyle style : LengthStyle.values())
            assertEquals(SHOP, ToolDraft.tools(SHOP.stream().map(t -> ToolDraft.of(t, style)).toList(), style));
        assertEquals("1 in", ToolDraft.of(SHOP.get(0), LengthStyle.FRACTION).reach());
        assertEquals(50.8, ToolDraft.tools(List.of(new ToolDraft("jaw", Instruction.SHRINK, "2", "1")), LengthStyle.INCH).get(0).reach(), 1e-12);
    }

    @Test
    void eachLineIsRefusedWithItsRemedy() {
        refused(new ToolDraft(" ", Instruction.SHRINK, "25", "1"), "Tool 2: give it a name");
        refused(new ToolDraft("jaw", Instruction.SHRINK, "far", "1"), "Tool 2, jaw: reach: \"far\" is not a length");
        refused(new ToolDraft("jaw", Instruction.SHRINK, "0", "1"), "must be above 0");
        refused(new ToolDraft("jaw", Instruction.SHRINK, "25", "dear"), "its cost is a number");
        refused(new ToolDraft("jaw", Instruction.SHRINK, "25", "0"), "cost 0.0: must be above 0, up to 100");
    }

    private static void refused(ToolDraft draft, String words) {
        String told = assertThrows(IllegalArgumentException.class, () -> ToolDraft.tools(List.of(new ToolDraft("good", Instruction.STRETCH,
                "anywhere", "1"), draft), LengthStyle.MM)).getMessage();
        assertTrue(told.contains(words), told);
    }
}
