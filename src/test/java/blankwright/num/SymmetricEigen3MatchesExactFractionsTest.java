package blankwright.num;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.junit.jupiter.api.Test;

class SymmetricEigen3MatchesExactFractionsTest {
    private static SymmetricEigen3 of(double[][] a) {
        return new SymmetricEigen3(a[0][0], a[0][1], a[0][2], a[1][1], a[1][2], a[2][2]);
    }

    private static double[][] random(Random random, int kind) {
        double[][] a = new double[3][3];
        for (int i = 0; i < 3; i++)
            for (int j = 0; j <= i; j++) {
                double size = kind == 0 ? 1 : Math.pow(10, 12 * random.nextDouble() - 6);      // entries alike, or graded
                a[i][j] = a[j][i] = size * random.nextGaussian();
            }
        if (kind == 2) {                                                                       // nearly a ball: equal values
            for (int i = 0; i < 3; i++) for (int j = 0; j < 3; j++) a[i][j] = (i == j ? 1 : 0) + 1e-13 * random.nextGaussian();
            for (int i = 0; i < 3; i++) for (int j = 0; j < i; j++) a[i][j] = a[j][i];
        }
        return a;
    }

    private static double largest(double[][] a) {
        double most = 0;
        for (double[] row : a) for (double x : row) most = Math.max(most, Math.abs(x));
        return most;
    }

    /** A v - λ v and the lengths of the vectors without rounding: by Weyl they bound the error of each eigenvalue. */
    @Test
    void residualsAreRoundingOnTwentyThousandMatrices() {
        Random random = new Random(3);
        for (int n = 0; n < 20_000; n++) {
            double[][] a = random(random, n % 3);
            SymmetricEigen3 eigen = of(a);
            for (int i = 0; i < 3; i++) {
                for (int r = 0; r < 3; r++) {
                    BigDecimal off = new BigDecimal(eigen.value(i)).multiply(new BigDecimal(eigen.vector(i, r))).negate();
                    for (int c = 0; c < 3; c++) off = off.add(new BigDecimal(a[r][c]).multiply(new BigDecimal(eigen.vector(i, c))));
                    assertEquals(0, off.doubleValue(), 3e-15 * largest(a));
                }
                for (int j = 0; j <= i; j++) {
                    BigDecimal dot = new BigDecimal(i == j ? -1 : 0);
                    for (int k = 0; k < 3; k++) dot = dot.add(new BigDecimal(eigen.vector(i, k)).multiply(new BigDecimal(eigen.vector(j, k))));
                    assertEquals(0, dot.doubleValue(), 3e-15);
                }
            }
            assertTrue(eigen.value(0) >= eigen.value(1) && eigen.value(1) >= eigen.value(2));
        }
    }

    @Test
    void valuesAgreeWithALibrary() {
        Random random = new Random(4);
        for (int n = 0; n < 2000; n++) {
            double[][] a = random(random, n % 3);
            double[] theirs = new EigenDecomposition(new Array2DRowRealMatrix(a)).getRealEigenvalues();
            Arrays.sort(theirs);
            for (int i = 0; i < 3; i++) assertEquals(theirs[2 - i], of(a).value(i), 1e-13 * largest(a));
        }
    }

    @Test
    void plainCases() {
        SymmetricEigen3 none = new SymmetricEigen3(0, 0, 0, 0, 0, 0), along = new SymmetricEigen3(1, 0, 0, 3, 0, 2);
        for (int i = 0; i < 3; i++) assertEquals(0, none.value(i));
        assertEquals(3, along.value(0));
        assertEquals(1, Math.abs(along.vector(0, 1)));
        SymmetricEigen3 pair = new SymmetricEigen3(2, 1, 0, 2, 0, -5);
        assertEquals(3, pair.value(0), 1e-15);
        assertEquals(1, pair.value(1), 1e-15);
        assertEquals(-5, pair.value(2));
    }
}
