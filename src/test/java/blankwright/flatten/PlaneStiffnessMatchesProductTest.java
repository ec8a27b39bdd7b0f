package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.SymmetricDirichlet;
import blankwright.mesh.TriMesh;
import blankwright.sparse.Elements;
import java.util.Random;
import java.util.stream.IntStream;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;

/** Matrices of coarser meshes by averaging, against the dense product Pᵀ A P, which EJML multiplies. */
class PlaneStiffnessMatchesProductTest {
    /** A fan of three triangles about vertex 0, in the plane. */
    private static final double[] FAN = {0, 0, 3, 0.2, 2, 2.5, -1.5, 2, -2, -0.5};
    private static final int[] FAN_TRI = {0, 1, 2, 0, 2, 3, 0, 3, 4};

    private static double[] positive(Random random) {
        SimpleMatrix b = SimpleMatrix.random_DDRM(4, 4, -1, 1, random), square = b.mult(b.transpose());
        double[] lower = new double[PlaneStiffness.SIZE];
        for (int i = 0, s = 0; i < 4; i++) for (int j = 0; j <= i; j++, s++) lower[s] = square.get(i, j);
        return lower;
    }

    private static SimpleMatrix dense(Elements elements, int[] tri, int vertices) {
        SimpleMatrix a = new SimpleMatrix(2 * vertices, 2 * vertices);
        double[] lower = new double[21];
        for (int t = 0; t < tri.length / 3; t++) {
            elements.lowerTriangle(t, lower);
            for (int i = 0, s = 0; i < 6; i++)
                for (int j = 0; j <= i; j++, s++) {
                    int r = 2 * tri[3 * t + i / 2] + i % 2, c = 2 * tri[3 * t + j / 2] + j % 2;
                    a.set(r, c, a.get(r, c) + lower[s]);
                    if (i != j) a.set(c, r, a.get(c, r) + lower[s]);
                }
        }
        return a;
    }

    /** Each triangle cut into four at the middles of its sides, every small one with a matrix of its own. */
    @Test void ofNestedMeshesIsTheExactProduct() {
        Random random = new Random(3);
        int coarse = FAN.length / 2, m = FAN_TRI.length / 3, n = coarse + 3 * m;      // middles of shared sides twice: cut there, no harm
        double[] fineLayout = new double[2 * n];
        SimpleMatrix p = new SimpleMatrix(2 * n, 2 * coarse);
        for (int v = 0; v < 2 * coarse; v++) p.set(v, v, 1);
        int[] tri = new int[12 * m], inside = new int[4 * m], start = IntStream.rangeClosed(0, m).map(t -> 4 * t).toArray();
        for (int t = 0; t < m; t++) {
            for (int k = 0; k < 3; k++)
                for (int u = 0; u < 2; u++) {
                    p.set(2 * (coarse + 3 * t + k) + u, 2 * FAN_TRI[3 * t + k] + u, 0.5);
                    p.set(2 * (coarse + 3 * t + k) + u, 2 * FAN_TRI[3 * t + (k + 1) % 3] + u, 0.5);
                }
            int a = FAN_TRI[3 * t], b = FAN_TRI[3 * t + 1], c = FAN_TRI[3 * t + 2], ab = coarse + 3 * t, bc = ab + 1, ca = ab + 2;
            System.arraycopy(new int[] {a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca}, 0, tri, 12 * t, 12);
            for (int i = 0; i < 4; i++) inside[4 * t + i] = 4 * t + i;
        }
        SimpleMatrix places = p.mult(new SimpleMatrix(2 * coarse, 1, true, FAN));
        for (int i = 0; i < 2 * n; i++) fineLayout[i] = places.get(i);
        double[][] of = IntStream.range(0, 4 * m).mapToObj(t -> positive(random)).toArray(double[][]::new);
        PlaneStiffness fine = PlaneStiffness.averaged(tri, fineLayout, IntStream.rangeClosed(0, 4 * m).toArray(), inside, (t, sum, at) -> {
            for (int i = 0; i < of[t].length; i++) sum[at + i] += of[t][i];
            return PlaneStiffness.twiceArea(tri, t, fineLayout);
        });
        SimpleMatrix product = p.transpose().mult(dense(fine.elements(), tri, n)).mult(p);
        SimpleMatrix averaged = dense(PlaneStiffness.averaged(FAN_TRI, FAN, start, inside, fine.finer()).elements(), FAN_TRI, coarse);
        assertTrue(product.minus(averaged).elementMaxAbs() < 1e-12 * product.elementMaxAbs(), "differs by " + product.minus(averaged).elementMaxAbs());
    }

    /** The same matrix whether a move is taken by what it does to J, in each triangle's own frame, or by its gradient over the layout. */
    @Test void inThePlaneIsTheSecondDerivativeByJ() {
        TriMesh form = Grids.shaken(Grids.mudguard(6), 4, 9);
        Distortion distortion = new Distortion(form);
        int[] tri = form.corners();
        Random random = new Random(5);
        double[] uv = new double[2 * form.vertexCount()], gradient = new double[uv.length], plain = new double[uv.length];
        for (int v = 0; v < form.vertexCount(); v++) {
            uv[2 * v] = (v / 7) * 0.15 + 0.03 * random.nextDouble();
            uv[2 * v + 1] = (v % 7) * 0.11 + 0.03 * random.nextDouble();
        }
        double[] second = new double[Distortion.SECOND * form.triangleCount()], own = new double[21], plane = new double[21];
        SymmetricDirichlet energy = new SymmetricDirichlet();
        distortion.gradient(energy, uv, gradient, second);
        distortion.gradient(energy, uv, plain);
        for (int i = 0; i < plain.length; i++) assertEquals(plain[i], gradient[i], 1e-12 * Math.abs(plain[i]) + 1e-15);
        int m = form.triangleCount();
        PlaneStiffness same = PlaneStiffness.averaged(tri, uv, IntStream.rangeClosed(0, m).toArray(), IntStream.range(0, m).toArray(), (t, sum, at) -> {
            distortion.addInPlane(t, uv, second, sum, at);
            return PlaneStiffness.twiceArea(tri, t, uv);
        });
        for (int t = 0; t < m; t++) {
            distortion.stiffness(energy, uv).lowerTriangle(t, own);
            same.elements().lowerTriangle(t, plane);
            double scale = own[0] + own[2] + own[5] + own[9];
            assertArrayEquals(own, plane, 1e-11 * scale);
            distortion.stiffness(second).lowerTriangle(t, plane);
            assertArrayEquals(own, plane, 1e-14 * scale);
        }
    }

    /** A coarse triangle without area, or turned over, resists as one with a tenth of the area of what it stands for: much, but positively. */
    @Test void aTriangleTurnedOverStaysPositive() {
        double[] of = positive(new Random(8));
        for (double height : new double[] {-0.3, 0, 1e-9}) {
            double[] lower = new double[21];
            PlaneStiffness.averaged(new int[] {0, 1, 2}, new double[] {0, 0, 1, 0, 0.4, height}, new int[] {0, 1}, new int[] {0}, (t, sum, at) -> {
                System.arraycopy(of, 0, sum, at, of.length);
                return 2;
            }).elements().lowerTriangle(0, lower);
            SimpleMatrix full = new SimpleMatrix(6, 6);
            for (int i = 0, s = 0; i < 6; i++)
                for (int j = 0; j <= i; j++, s++) {
                    full.set(i, j, lower[s]);
                    full.set(j, i, lower[s]);
                }
            for (var eigen : full.eig().getEigenvalues()) assertTrue(eigen.getReal() > -1e-12 * full.elementMaxAbs(), "eigenvalue " + eigen);
            assertTrue(full.trace() > 0 && full.trace() < 1e4, "trace " + full.trace());
        }
    }

    /** Where the finer triangles said to lie in one cover twice its area, it gets the half of their sum: what resists is the sheet, not the count. */
    @Test void whatCoversMoreThanTheTriangleCountsByItsShare() {
        double[] of = positive(new Random(8)), one = new double[21], two = new double[21];
        double[] layout = {0, 0, 1, 0, 0.4, 1};
        for (int share = 1; share <= 2; share++) {
            double area = share;
            PlaneStiffness.averaged(new int[] {0, 1, 2}, layout, new int[] {0, 1}, new int[] {0}, (t, sum, at) -> {
                System.arraycopy(of, 0, sum, at, of.length);
                return area;
            }).elements().lowerTriangle(0, share == 1 ? one : two);
        }
        for (int i = 0; i < 21; i++) assertEquals(one[i] / 2, two[i], 1e-13);
    }
}
