package blankwright.picture;

import blankwright.mesh.FlatMap;
import blankwright.shop.Spot;

/**
 * One piece as it is drawn on the map of buckling.
 *
 * @param map where it lies on the sheet
 * @param times per vertex, how many times what it bears it is pressed together if it is not worked, 0 or above
 * @param worst the place where it is most, a single triangle
 * @param required compressive strain there, 0 where nothing is pressed together
 * @param critical strain at which it gives way there, above 0
 */
public record PressedPiece(FlatMap map, double[] times, Spot worst, double required, double critical) {
    public PressedPiece {
        if (times.length != map.form().vertexCount())
            throw new IllegalArgumentException(times.length + " numbers for " + map.form().vertexCount() + " vertices");
    }

    double most() {
        return required / critical;
    }
}
