package blankwright.picture;

import java.util.List;

/**
 * What stands at the head of a work map.
 *
 * @param name of the panel
 * @param notes short lines the bench needs, e.g. {@code outside face up}, {@code sheet 1.2 mm}; may be empty
 */
public record Caption(String name, List<String> notes) {
    public Caption {
        notes = List.copyOf(notes);
    }
}
