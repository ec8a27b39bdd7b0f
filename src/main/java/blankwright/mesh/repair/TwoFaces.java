package blankwright.mesh.repair;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.TriMesh;
import blankwright.num.Sentence;
import java.util.List;
import java.util.Optional;

/**
 * Notices a sheet given as a solid: both faces of the metal and the edge between them in one closed skin, whose blank would hold both.
 *
 * <p>A sheet of thickness t and area A has the volume A t and about 2A of skin, so 2 volume / skin is its thickness; for a plate
 * a by b by t it is t / (1 + t/a + t/b). A tank or a ball is far thicker than a sheet by the same measure.
 */
public final class TwoFaces {
    /** mm; no sheet worked by hand is thicker. */
    static final double THICKEST = 10;
    /** Of the longest side of the box round it; a plate of 60 by 40 by 2 mm comes to 0.031, a flat tin of 120 by 10 mm to 0.071. */
    static final double THIN = 0.04;

    private TwoFaces() { }

    /** A finding where some of the parts look so, however they are turned. */
    public static Optional<Finding> seen(List<Component> parts) {
        int count = 0;
        double first = 0;
        for (Component part : parts) {
            TriMesh mesh = part.mesh();
            double[] size = mesh.size();
            double thickness = 2 * Math.abs(volume(mesh)) / part.area();
            if (thickness > THICKEST || thickness > THIN * Math.max(size[0], Math.max(size[1], size[2])) || !closed(mesh)) continue;
            if (count++ == 0) first = thickness;
        }
        if (count == 0) return Optional.empty();
        return Optional.of(new Finding(Kind.TWO_FACES, count, Sentence.say("%d %s closed and about %s thick: that looks"
                + " like a solid with both faces of the sheet, and the blank holds both; export one face alone and name it with --face",
                count, count == 1 ? "part is" : "parts are", Sentence.length(first, 1))));
    }

    private static boolean closed(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        for (int e = 0; e < edges.edgeCount(); e++) if (edges.right(e) < 0) return false;
        return true;
    }

    /** Of a closed skin, mm³, positive where it faces out; summed from its first vertex, so that a far origin costs no digits. */
    private static double volume(TriMesh mesh) {
        double ox = mesh.x(0), oy = mesh.y(0), oz = mesh.z(0), sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            int a = mesh.corner(t, 0);
            sum += mesh.area(t) * (n[0] * (mesh.x(a) - ox) + n[1] * (mesh.y(a) - oy) + n[2] * (mesh.z(a) - oz)) / 3;
        }
        return sum;
    }
}
