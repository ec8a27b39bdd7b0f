package blankwright.mesh;

import blankwright.num.Sentence;

/**
 * Something seen in a panel that its maker should know: what, how many, and a sentence that says where and what was done about it.
 *
 * @param count how many places; at least 1
 * @param words one plain sentence, naming triangles, vertices or lines counted from 0 as the reader's file counts them after cleaning
 */
public record Finding(Kind kind, long count, Sentence words) {
    public Finding(Kind kind, long count, String words) {
        this(kind, count, Sentence.of(words));
    }

    /** As files have it. */
    public String text() {
        return words.text();
    }

    /** What can be seen; {@link #key()} is the stable word in summary.json. */
    public enum Kind {
        TRIANGULATED_POLYGONS, IGNORED_ELEMENTS, WRONG_COUNT, UNUSED_VERTICES, BAD_COORDINATES, WELDED_VERTICES,
        DEGENERATE_TRIANGLES, T_JUNCTIONS, DUPLICATE_TRIANGLES, TURNED_TRIANGLES, NON_MANIFOLD_EDGES, NON_MANIFOLD_VERTICES, ONE_SIDED_STRIP,
        SMALL_COMPONENTS, SEVERAL_COMPONENTS, TWO_FACES, REDUCED, SLIVERS, HOLES, UNIT_GUESS, UNUSUAL_SIZE, MOVED_TO_MIDDLE, NOT_MOVED,
        TIGHT_CURVATURE, SEAM_CHOSEN, SEAM_ADDED, PULLED_APART, TURNED_OVER, OVERLAP, SEAM_PROPOSED, NOT_CONVERGED, LARGE_STRAIN, LEAN_NOT_MET, NECKED,
        BEYOND_REACH, THINNED, ANNEAL, PAST_FORMING_LIMIT, BUCKLING_LEFT_OUT, CLAMPED_NOTHING,
        SENSITIVITY_LEFT_OUT, TAPE_LEFT_OUT, TAPE_ASTRAY;

        /** Lower case with hyphens, e.g. {@code welded-vertices}. */
        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        }
    }
}
