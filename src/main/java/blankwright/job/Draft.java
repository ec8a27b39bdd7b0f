package blankwright.job;

import blankwright.mesh.FlatMap;
import blankwright.project.Recipe;
import blankwright.strain.VertexStrain;
import java.util.List;

/**
 * A first answer while a hand drags: how the blank lies and what the metal must do, of the recipe as it stands at that moment. Nothing is cut
 * from it: {@link AtHand#whole} follows.
 *
 * @param pieces in the order of the result before, in their places on the sheet
 * @param coarse true where the triangles are others than those of the result before, far fewer: of another form, or cut in another way
 * @param roughly true where a piece was laid flat on a coarser mesh, or in a few steps, and will come out a little different
 * @param arrived false where asking for the same again brings it nearer
 */
public record Draft(Recipe recipe, List<Piece> pieces, boolean coarse, boolean roughly, boolean arrived) {
    public Draft {
        pieces = List.copyOf(pieces);
    }

    /**
     * @param vertices strain of the map
     * @param rims of the blank, rings of places u, v, mm
     */
    public record Piece(FlatMap map, VertexStrain vertices, List<double[]> rims) {
        public Piece {
            rims = List.copyOf(rims);
        }
    }
}
