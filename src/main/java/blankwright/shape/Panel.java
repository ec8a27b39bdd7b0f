package blankwright.shape;

import blankwright.mesh.TriMesh;

/** A panel given by a formula. Immutable; lengths in mm, angles in rad; a value out of range is an {@link UnfitValue} at construction. */
public interface Panel {
    /**
     * The form as triangles, counter-clockwise seen from the outer skin, one connected surface without degenerate triangles.
     *
     * @throws UnfitValue naming {@code chord} where more than {@link Fineness#MOST_TRIANGLES} would be needed
     */
    Sample sample(Fineness fineness);

    /** What is known of the smooth surface without flattening it. */
    Truth truth();

    /** The triangles alone. */
    default TriMesh mesh(Fineness fineness) {
        return sample(fineness).mesh();
    }

    /** The triangles at the fineness a recipe takes when it says nothing. */
    default TriMesh mesh() {
        return mesh(Fineness.USUAL);
    }
}
