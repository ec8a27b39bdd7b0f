package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;
import org.junit.jupiter.api.Test;

class UnworkedBlankTest {
    private static final Eigenpairs.Limits LIMITS = Eigenpairs.Limits.DEFAULT.withWanted(2).withTolerance(1e-5).withMultiple(false);

    /** A flat ring strip whose outer edge is too long: must be shrunk linearly from 0 at the inner edge (clamped) to -e at the outer. */
    private static UnworkedBlank flange(double width, double e, Sheet sheet) {
        double length = 8 * width;
        TriMesh mesh = Plates.rectangle(length, width, 48, 8);
        int n = mesh.triangleCount();
        double[] strain = new double[n], along = new double[3 * n];
        for (int t = 0; t < n; t++) {
            double y = (mesh.y(mesh.corner(t, 0)) + mesh.y(mesh.corner(t, 1)) + mesh.y(mesh.corner(t, 2))) / 3 / width - 0.5;
            strain[t] = -e * 6 * (y * y - 1.0 / 12);                       // compression at both edges, tension in the middle; no resultant
            along[3 * t] = 1;
        }
        UnworkedForce force = UnworkedForce.of(mesh, FacetStrain.of(mesh, strain, new double[n], along), 1, elastic(sheet), () -> false);
        return UnworkedBlank.of(force, sheet, clampedRoot(force), LIMITS, () -> false);
    }

    private static boolean[] clampedRoot(UnworkedForce force) {
        boolean[] clamped = new boolean[force.form().vertexCount()];
        for (int v = 0; v < clamped.length; v++) clamped[v] = force.form().y(v) < 1e-9;
        return clamped;
    }

    private static Sheet elastic(Sheet sheet) {
        return Sheet.elastic(sheet.youngs(), sheet.poisson(), sheet.thickness());
    }

    /** Strain at which a plate gives way does not depend on E and goes with the square of the thickness. */
    @Test
    void elasticShareScalesAsPlatesDo() {
        double one = flange(40, 0.01, Sheet.elastic(Plates.E, 0.33, 1)).loadFactor();
        assertEquals(one, flange(40, 0.01, Sheet.elastic(3 * Plates.E, 0.33, 1)).loadFactor(), 1e-6 * one);
        assertEquals(4 * one, flange(40, 0.01, Sheet.elastic(Plates.E, 0.33, 2)).loadFactor(), 4e-6 * one);
        assertEquals(2 * one, flange(40, 0.005, Sheet.elastic(Plates.E, 0.33, 1)).loadFactor(), 2e-6 * one);
    }

    /** A thick narrow flange yields long before it buckles; the share found is the one at which force and stiffness balance. */
    @Test
    void yieldingIsBalanced() {
        double elastic = flange(20, 0.03, Sheet.elastic(Plates.E, 0.33, 1)).loadFactor();
        UnworkedBlank soft = flange(20, 0.03, new Sheet(Plates.E, 0.33, 41, 0.2, 1));
        assertTrue(elastic < 1 && elastic * 0.03 > 3 * 41 / Plates.E, "meant to buckle well after yield: " + elastic);
        assertTrue(soft.force().yielded() > 0.5);
        Sheet sheet = new Sheet(Plates.E, 0.33, 41, 0.2, 1);
        UnworkedForce there = soft.force().at(soft.loadFactor(), sheet, () -> false);
        boolean[] held = new boolean[6 * there.form().vertexCount()];
        for (int i = 0; i < held.length; i++) held[i] = clampedRoot(there)[i / 6];
        assertEquals(1, Buckling.of(there.form(), there.moduli(), sheet, there.force(), held, LIMITS, () -> false).modes().get(0).loadFactor(), 0.03);
        assertTrue(soft.loadFactor() > 0.25 * elastic && soft.loadFactor() < 2 * elastic, soft.loadFactor() + " against " + elastic);
        UnworkedBlank hard = flange(20, 0.03, new Sheet(Plates.E, 0.33, 4100, 0.2, 1));
        assertEquals(elastic, hard.loadFactor(), 1e-9, "does not yield before it buckles");
    }

    @Test
    void aBlankThatFitsNeverBuckles() {
        assertEquals(Double.POSITIVE_INFINITY, flange(40, 0, Sheet.elastic(Plates.E, 0.33, 1)).loadFactor());
    }

    /** Held nowhere, the answer must not depend on which vertex the program holds on to: here the first of the mesh, turned round. */
    @Test
    void aFreeBlankIsTheSameWhereverItIsHeldOnTo() {
        TriMesh disc = Plates.disc(100, 8);
        int n = disc.triangleCount();
        double[] found = new double[2];
        for (int turn = 0; turn < 2; turn++) {
            int[] tri = disc.corners();
            if (turn == 1)
                for (int t = 0; t < n; t++)
                    for (int k = 0; k < 3; k++) tri[3 * t + k] = disc.corner(n - 1 - t, k);
            TriMesh mesh = TriMesh.of(disc.positions(), tri);
            double[] hoop = new double[n], radial = new double[n], along = new double[3 * n];
            for (int t = 0; t < n; t++) {
                double x = 0, y = 0;
                for (int k = 0; k < 3; k++) {
                    x += mesh.x(mesh.corner(t, k)) / 3;
                    y += mesh.y(mesh.corner(t, k)) / 3;
                }
                double r = Math.hypot(x, y);
                hoop[t] = -1e-3 * r * r / 1e4;
                along[3 * t] = x / r;
                along[3 * t + 1] = y / r;
            }
            Sheet sheet = Sheet.elastic(Plates.E, 0.3, 1);
            UnworkedForce force = UnworkedForce.of(mesh, FacetStrain.of(mesh, radial, hoop, along), 1, sheet, () -> false);
            found[turn] = UnworkedBlank.of(force, sheet, new boolean[mesh.vertexCount()], LIMITS, () -> false).loadFactor();
        }
        assertEquals(found[0], found[1], 1e-6 * found[0]);
    }
}
