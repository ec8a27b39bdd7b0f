package blankwright.flatten;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.outline.Overlap;
import java.util.ArrayList;
import java.util.List;

/** Strips wound in a flat ring that rises like a ramp, and the library's judgement where their blanks cover themselves. */
public final class Strips {
    private Strips() { }

    /** {@code degrees} of the ring between two radii, along x cells and across y cells; rises by 0.1 mm a degree, hardly longer for it. */
    public static TriMesh ring(double degrees, double inner, double outer, int x, int y) {
        return Forms.grid(x, y, false, false, (u, v) -> {
            double a = Math.toRadians(degrees) * u, r = outer + (inner - outer) * v;
            return new double[] {r * Math.cos(a), r * Math.sin(a), 0.1 * degrees * u};
        });
    }

    public static List<double[]> places(FlatMap map) {
        return Overlap.of(rings(map)).places().stream().map(p -> p.edge().flattened(1)).toList();
    }

    public static List<double[]> rings(FlatMap map) {
        RimLoops rims = RimLoops.of(map.form(), EdgeTable.of(map.form()));
        List<double[]> rings = new ArrayList<>();
        for (int i = 0; i < rims.count(); i++) rings.add(map.places(rims.loop(i)));
        return rings;
    }
}
