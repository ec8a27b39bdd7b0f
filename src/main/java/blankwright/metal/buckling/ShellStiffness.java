package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Elements;

/**
 * Elastic stiffness of a thin shell of flat triangles: {@link Membrane} and {@link Bending} in the plane of each.
 *
 * <p>Six unknowns a node: displacement along x, y, z (mm), rotation about x, y, z (rad). A held unknown keeps nothing but a positive number
 * on its diagonal. Triangles without area carry nothing; a node that has no other is held.
 */
final class ShellStiffness implements Elements {
    static final int UNKNOWNS = 6;

    private final TriMesh mesh;
    private final Moduli moduli;
    private final double thickness;
    private final double poisson;
    private final boolean[] held;

    /** @param held 6 per vertex; copied */
    ShellStiffness(TriMesh mesh, Moduli moduli, double poisson, double thickness, boolean[] held) {
        this.mesh = mesh;
        this.moduli = moduli;
        this.poisson = poisson;
        this.thickness = thickness;
        this.held = held.clone();
        boolean[] carried = new boolean[mesh.vertexCount()];
        Facet f = new Facet();
        for (int t = 0; t < mesh.triangleCount(); t++)
            if (!f.of(mesh, t).empty) for (int k = 0; k < 3; k++) carried[mesh.corner(t, k)] = true;
        for (int v = 0; v < carried.length; v++)
            if (!carried[v]) for (int u = 0; u < UNKNOWNS; u++) this.held[UNKNOWNS * v + u] = true;
    }

    boolean held(int unknown) {
        return held[unknown];
    }

    @Override public void lowerTriangle(int t, double[] out) {
        double[][] k = new double[18][18];
        pack(t, k, element(t, new Facet().of(mesh, t), k), out);
    }

    /**
     * Fills the blocks below and on the diagonal of one element, held unknowns and all; what stands on the diagonal for a held unknown.
     *
     * @param k 18x18, zeros
     */
    double element(int t, Facet f, double[][] k) {
        double[] c = new double[6];
        moduli.of(t, thickness, c);
        if (!f.empty) fill(f, c, k);
        return c[0];
    }

    /** The lower triangle row by row, with the held unknowns out of it. */
    void pack(int t, double[][] k, double diagonal, double[] out) {
        for (int i = 0, s = 0; i < 18; i++) {
            boolean out1 = held[UNKNOWNS * mesh.corner(t, i / 6) + i % 6];
            for (int j = 0; j <= i; j++, s++) {
                if (out1 || held[UNKNOWNS * mesh.corner(t, j / 6) + j % 6]) out[s] = i == j ? diagonal : 0;
                else out[s] = k[i][j];
            }
        }
    }

    private void fill(Facet f, double[] c, double[][] global) {
        double[][] m = new double[9][9], b = new double[9][9];
        Membrane.addStiffness(f, c, poisson, m);
        double[] d = c.clone();
        for (int i = 0; i < 6; i++) d[i] *= thickness * thickness / 12;
        Bending.addStiffness(f, d, b);
        double[][] uu = new double[3][3], ur = new double[3][3], ru = new double[3][3], rr = new double[3][3];
        for (int i = 0; i < 3; i++)
            for (int j = 0; j <= i; j++) {
                for (int r = 0; r < 3; r++)
                    for (int s = 0; s < 3; s++) {
                        // along axis r: u, v of the membrane, w of the plate; about axis r: two of the plate, one of the membrane
                        boolean mu = r < 2, mv = s < 2, br = r < 2, bs = s < 2;
                        uu[r][s] = mu && mv ? at(m, 3 * i + r, 3 * j + s) : !mu && !mv ? at(b, 3 * i, 3 * j) : 0;
                        ur[r][s] = mu && !bs ? at(m, 3 * i + r, 3 * j + 2) : !mu && bs ? at(b, 3 * i, 3 * j + 1 + s) : 0;
                        ru[r][s] = !br && mv ? at(m, 3 * i + 2, 3 * j + s) : br && !mv ? at(b, 3 * i + 1 + r, 3 * j) : 0;
                        rr[r][s] = br && bs ? at(b, 3 * i + 1 + r, 3 * j + 1 + s) : !br && !bs ? at(m, 3 * i + 2, 3 * j + 2) : 0;
                    }
                turn(f.axis, uu, global, 6 * i, 6 * j);
                turn(f.axis, ur, global, 6 * i, 6 * j + 3);
                turn(f.axis, ru, global, 6 * i + 3, 6 * j);
                turn(f.axis, rr, global, 6 * i + 3, 6 * j + 3);
            }
    }

    private static double at(double[][] lower, int i, int j) {
        return i >= j ? lower[i][j] : lower[j][i];
    }

    /** Rᵀ block R, the rows of R being the axes. */
    private static void turn(double[] axis, double[][] block, double[][] global, int row, int column) {
        for (int i = 0; i < 3; i++) {
            double a = axis[i] * block[0][0] + axis[3 + i] * block[1][0] + axis[6 + i] * block[2][0];
            double b = axis[i] * block[0][1] + axis[3 + i] * block[1][1] + axis[6 + i] * block[2][1];
            double c = axis[i] * block[0][2] + axis[3 + i] * block[1][2] + axis[6 + i] * block[2][2];
            for (int j = 0; j < 3; j++) global[row + i][column + j] = a * axis[j] + b * axis[3 + j] + c * axis[6 + j];
        }
    }
}
