package blankwright.sheet;

import java.util.List;

/**
 * What is written on the sheet beside its lines.
 *
 * @param name of the panel, not blank
 * @param lines short facts, each its own line: hand, metal, thickness, revision; {@code outside face up} is always written and need not be given
 */
public record SheetNotes(String name, List<String> lines) {
    public SheetNotes {
        if (name.isBlank()) throw new IllegalArgumentException("name of the panel: must not be empty");
        lines = List.copyOf(lines);
    }
}
