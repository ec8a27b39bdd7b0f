package blankwright.mesh;

/**
 * Where the curvature of a surface of flat triangles sits: in its vertices, as the angle that is missing from a full turn, rad.
 *
 * <p>Inside, the defect is 2π less the angles round the vertex: above 0 on a crown, below 0 on a saddle. On a rim it is π less the angles:
 * how far the rim turns towards the metal, above 0 at an outer corner, below 0 round a hole. A vertex no triangle uses has 0.
 * <p>All defects add up to 2π times the Euler number (discrete Gauss-Bonnet): 2π for a disk, 0 for an annulus, 4π for a closed skin.
 * Where two rims touch in one vertex a further π is taken off for each, which keeps that sum.
 */
public final class AngleDefect {
    private final double[] defect;
    private final int[] rims;       // how often a rim passes through a vertex

    private AngleDefect(double[] defect, int[] rims) {
        this.defect = defect;
        this.rims = rims;
    }

    public static AngleDefect of(TriMesh mesh, EdgeTable edges) {
        int n = mesh.vertexCount();
        double[] angles = new double[n];
        boolean[] used = new boolean[n];
        int[] rims = new int[n];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                angles[v] += mesh.angle(t, k);
                used[v] = true;
                if (edges.twin(3 * t + k) < 0) rims[v]++;
            }
        }
        for (int v = 0; v < n; v++) angles[v] = used[v] ? (2 - rims[v]) * Math.PI - angles[v] : 0;
        return new AngleDefect(angles, rims);
    }

    /** Missing angle at vertex v, rad. */
    public double defect(int v) {
        return defect[v];
    }

    public boolean onRim(int v) {
        return rims[v] > 0;
    }

    /** Sum over the vertices inside, rad: the curvature of the surface. */
    public double inside() {
        double sum = 0;
        for (int v = 0; v < defect.length; v++) if (rims[v] == 0) sum += defect[v];
        return sum;
    }

    /** Sum over the rim vertices, rad: how far all rims together turn towards the metal. */
    public double rimTurning() {
        double sum = 0;
        for (int v = 0; v < defect.length; v++) if (rims[v] > 0) sum += defect[v];
        return sum;
    }

    /** Turning along one rim loop as {@link RimLoops#loop} gives it, rad: 2π round a flat disk, -2π round a hole in a flat sheet. */
    public double turning(int[] loop) {
        double sum = 0;
        for (int v : loop) sum += defect[v];
        return sum;
    }

    /** {@link #inside} + {@link #rimTurning}, rad. */
    public double sum() {
        return inside() + rimTurning();
    }
}
