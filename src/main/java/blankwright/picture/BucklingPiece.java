package blankwright.picture;

import blankwright.mesh.FlatMap;
import java.util.List;

/**
 * One piece and the way it buckles.
 *
 * @param name of the piece, empty when there is only one
 * @param mode 3 per vertex of the form, the longest of length 1
 * @param says sentences for beside the picture
 */
public record BucklingPiece(String name, FlatMap map, double[] mode, List<Mark> marks, List<String> says) {
    /**
     * A tuck to mark.
     *
     * @param vertex of the form it is nearest to
     * @param base mm
     * @param depth mm
     */
    public record Mark(int vertex, double base, double depth) { }

    public BucklingPiece {
        marks = List.copyOf(marks);
        says = List.copyOf(says);
    }
}
