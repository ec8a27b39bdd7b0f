package blankwright.drawing;

import java.util.List;

/**
 * What the first page of a paper pattern says beside its map and check squares.
 *
 * @param name of the part, in large letters
 * @param facts one line each: hand, which face is up, metal and thickness, date or revision; the first two are repeated on every page
 * @param cautions sentences, each broken into lines as needed
 */
public record Cover(String name, List<String> facts, List<String> cautions) {
    public Cover {
        facts = List.copyOf(facts);
        cautions = List.copyOf(cautions);
    }
}
