package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.strain.VertexStrain;

/**
 * How thick the metal of a piece is after forming, from volume kept: t = t0·exp(e3), e3 = -(e1 + e2).
 *
 * <p>From the strain averaged to the vertices, as the work map colours it, so that one bad triangle makes no hole. Neither tool marks nor filing
 * are in it.
 */
public final class SheetThickness {
    private final double sheet;
    private final double[] at;          // per vertex, mm
    private final Place thinnest, thickest;

    /** A thickness, mm, and where it is. */
    public record Place(double mm, Spot at) { }

    private SheetThickness(double sheet, double[] at, Place thinnest, Place thickest) {
        this.sheet = sheet;
        this.at = at;
        this.thinnest = thinnest;
        this.thickest = thickest;
    }

    /** @param sheet thickness before forming, mm, above 0 */
    public static SheetThickness of(FlatMap map, VertexStrain strain, double sheet) {
        if (!(sheet > 0)) throw new IllegalArgumentException("thickness " + sheet + " mm: must be above 0");
        TriMesh form = map.form();
        double[] at = new double[form.vertexCount()];
        for (int v = 0; v < at.length; v++) at[v] = sheet * Math.exp(strain.thicknessStrain(v));
        int thin = 0, thick = 0;                            // corners
        for (int c = 1; c < 3 * form.triangleCount(); c++) {
            double here = at[form.corner(c / 3, c % 3)];
            if (here < at[form.corner(thin / 3, thin % 3)]) thin = c;
            if (here > at[form.corner(thick / 3, thick % 3)]) thick = c;
        }
        return new SheetThickness(sheet, at, place(map, at, thin), place(map, at, thick));
    }

    private static Place place(FlatMap map, double[] at, int corner) {
        int v = map.form().corner(corner / 3, corner % 3);
        return new Place(at[v], Spot.of(map, corner / 3, corner % 3));
    }

    /** Before forming, mm. */
    public double sheet() {
        return sheet;
    }

    /** At vertex v, mm. */
    public double at(int v) {
        return at[v];
    }

    /** A copy, one per vertex, mm. */
    public double[] atVertices() {
        return at.clone();
    }

    public Place thinnest() {
        return thinnest;
    }

    public Place thickest() {
        return thickest;
    }

    /** Share of the thickness that is gone at the thinnest place, 0 or above. */
    public double mostLost() {
        return Math.max(0, 1 - thinnest.mm / sheet);
    }
}
