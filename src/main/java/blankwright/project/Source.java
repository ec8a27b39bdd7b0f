package blankwright.project;

import blankwright.num.LengthUnit;
import blankwright.shape.Panel;
import java.util.Optional;

/** Where the form comes from. */
public sealed interface Source {
    /** A formula. */
    record OfPanel(Panel panel) implements Source { }

    /**
     * A mesh file.
     *
     * @param file as written, relative to the recipe's folder
     * @param units of its numbers; empty where nobody said
     */
    record OfMesh(String file, Optional<LengthUnit> units) implements Source { }
}
