package blankwright.strain;

import blankwright.mesh.AngleDefect;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;

/**
 * Gaussian curvature of a form: how much of it no bending can make.
 *
 * <p>The whole curvature of a vertex is its {@link AngleDefect}, exact for the surface of flat triangles; divided by the area that belongs
 * to the vertex it is an estimate of the curvature of the smooth surface behind, 1/mm². Crown is positive, saddle negative.
 * <p>Error of the estimate: second order in the size of the triangles on regular meshes; on irregular ones it need not converge.
 * <p>Source: Meyer, Desbrun, Schröder and Barr, "Discrete Differential-Geometry Operators for Triangulated 2-Manifolds", 2003,
 * docs/sources.md [MDSB03], for the area.
 */
public final class Curvature {
    private final double[] gaussian;
    private final AngleDefect defect;
    private final double positive;
    private final double negative;

    private Curvature(double[] gaussian, AngleDefect defect, double positive, double negative) {
        this.gaussian = gaussian;
        this.defect = defect;
        this.positive = positive;
        this.negative = negative;
    }

    public static Curvature of(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        AngleDefect defect = AngleDefect.of(mesh, edges);
        double[] area = mixedArea(mesh), gaussian = new double[area.length];
        double positive = 0, negative = 0;
        for (int v = 0; v < area.length; v++) {
            if (defect.onRim(v)) continue;
            double angle = defect.defect(v);
            if (angle > 0) positive += angle;
            else negative += angle;
            if (area[v] > 0) gaussian[v] = angle / area[v];
        }
        spreadToRim(mesh, defect, gaussian);
        return new Curvature(gaussian, defect, positive, negative);
    }

    /**
     * Estimate at vertex v, 1/mm²; on a rim, where the surface does not tell, the mean of the neighbours inside, 0 where there are none.
     * 0 at a vertex without area.
     */
    public double gaussian(int v) {
        return gaussian[v];
    }

    /** Missing angle at vertex v, rad: whole curvature inside, turning on a rim. */
    public double defect(int v) {
        return defect.defect(v);
    }

    public boolean onRim(int v) {
        return defect.onRim(v);
    }

    /** Sum of the defects above 0 inside, rad; 4π for a whole ball. */
    public double positive() {
        return positive;
    }

    /** Sum of the defects below 0 inside, rad, 0 or below. */
    public double negative() {
        return negative;
    }

    /** {@link #positive} + {@link #negative}, rad: with {@link #turning} it makes 2π times the Euler number. */
    public double net() {
        return positive + negative;
    }

    /** How far the rims together turn towards the metal, rad: 2π for a flat disk. */
    public double turning() {
        return defect.rimTurning();
    }

    /** Voronoi area in triangles without an obtuse angle; half the triangle at an obtuse corner, a quarter at the other two. */
    private static double[] mixedArea(TriMesh mesh) {
        double[] area = new double[mesh.vertexCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int a = mesh.corner(t, 0), b = mesh.corner(t, 1), c = mesh.corner(t, 2);
            double whole = mesh.area(t);
            if (!(whole > 0)) continue;
            double ab = square(mesh.distance(a, b)), bc = square(mesh.distance(b, c)), ca = square(mesh.distance(c, a));
            double cosA = ab + ca - bc, cosB = ab + bc - ca, cosC = bc + ca - ab;       // times twice the sides
            if (cosA < 0 || cosB < 0 || cosC < 0) {
                area[a] += whole / (cosA < 0 ? 2 : 4);
                area[b] += whole / (cosB < 0 ? 2 : 4);
                area[c] += whole / (cosC < 0 ? 2 : 4);
            } else {                                                                    // cot = cos / (4 area)
                double toAb = ab * cosC / (32 * whole), toBc = bc * cosA / (32 * whole), toCa = ca * cosB / (32 * whole);
                area[a] += toAb + toCa;
                area[b] += toAb + toBc;
                area[c] += toBc + toCa;
            }
        }
        return area;
    }

    private static void spreadToRim(TriMesh mesh, AngleDefect defect, double[] gaussian) {
        double[] sum = new double[gaussian.length];
        int[] count = new int[gaussian.length];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k), w = mesh.corner(t, (k + 1) % 3);
                if (defect.onRim(v) == defect.onRim(w)) continue;
                int rim = defect.onRim(v) ? v : w;
                sum[rim] += gaussian[rim == v ? w : v];
                count[rim]++;
            }
        }
        for (int v = 0; v < sum.length; v++) if (count[v] > 0) gaussian[v] = sum[v] / count[v];
    }

    private static double square(double x) {
        return x * x;
    }
}
