package blankwright.picture;

import java.util.List;

/**
 * What stands at the head of a work map.
 *
 * @param name of the panel
 * @param notes short lines the bench needs, e.g. {@code outside face up}, {@code sheet 1.2 mm}; may be empty
 * @param warnings sentences on what makes the blank unsafe to cut; empty when it is safe
 */
public record Caption(String name, List<String> notes, List<String> warnings) {
    public Caption {
        notes = List.copyOf(notes);
        warnings = List.copyOf(warnings);
    }

    /** Nothing to warn of. */
    public Caption(String name, List<String> notes) {
        this(name, notes, List.of());
    }
}
