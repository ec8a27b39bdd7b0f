package blankwright.metal.buckling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.TriMesh;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * k of Timoshenko and Gere 1961 and Gerard and Becker 1957, from memory or computed from the closed form as in {@link
 * PlatesMatchTableTest}.
 */
class CriticalStrainMatchesTableTest {
    private static final Sheet SHEET = Sheet.elastic(Plates.E, 0.3, 1);
    private static final double A = 400, B = 100;

    /** A plate pressed along x by 1e-3 times f(y/b); the triangle nearest (x, y). */
    private static CriticalStrain plate(DoubleUnaryOperator f, String held) {
        TriMesh mesh = Plates.rectangle(A, B, 80, 20);
        double[] force = new double[3 * mesh.triangleCount()];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double y = (mesh.y(mesh.corner(t, 0)) + mesh.y(mesh.corner(t, 1)) + mesh.y(mesh.corner(t, 2))) / 3 / B;
            double[] one = Plates.force(TriMesh.of(mesh.positions(), new int[] {mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2)}),
                    -1e-3 * Plates.E * f.applyAsDouble(y), 0, 0);
            System.arraycopy(one, 0, force, 3 * t, 3);
        }
        boolean[] clamped = new boolean[mesh.vertexCount()];
        for (int v = 0; v < clamped.length; v++)
            clamped[v] = held.charAt(0) == 'C' && mesh.y(v) < 1e-9 || held.charAt(1) == 'C' && mesh.y(v) > B - 1e-9;
        return CriticalStrain.of(mesh, force, SHEET, clamped);
    }

    private static int at(double x, double y) {
        return 2 * ((int) (x / A * 80) * 20 + (int) (y / B * 20));
    }

    private static double k(double strain, double b) {
        return strain * 12 * (1 - 0.09) / (Math.PI * Math.PI) * b * b;
    }

    @ParameterizedTest
    @CsvSource({"CC, HELD, 6.9709", "FC, FREE_AND_HELD, 1.2804", "CF, FREE_AND_HELD, 1.2804"})
    void wholeWidthPressed(String held, PlateEdges edges, double wanted) {
        CriticalStrain map = plate(y -> 1, held);
        int t = at(200, 52);
        assertEquals(edges, map.edges(t));
        assertEquals(B, map.width(t), 1e-6);
        assertEquals(1e-3, map.required(t), 1e-12);
        assertEquals(wanted, k(map.critical(t), B), 1e-3);
        assertEquals(map.required(t) / map.critical(t), map.ratio(t));
    }

    /** Half of the width is pressed: one side at the free edge, the other calm. */
    @Test
    void pressedBesideAFreeEdge() {
        CriticalStrain map = plate(y -> y > 0.5 ? 1 : 0, "FF");
        int t = at(200, 77);
        assertEquals(PlateEdges.FREE, map.edges(t));
        assertEquals(50, map.width(t), 1e-6);
        assertEquals(6 * 0.7 / (Math.PI * Math.PI) + 50 * 50 / (A * A), k(map.critical(t), 50), 1e-6);
        assertNull(map.edges(at(200, 20)));
        assertEquals(Double.POSITIVE_INFINITY, map.critical(at(200, 20)));
        assertEquals(0, map.ratio(at(200, 20)));
    }

    /** A band inside: k = 4 where it is long. */
    @Test
    void pressedInside() {
        CriticalStrain map = plate(y -> y > 0.25 && y < 0.75 ? 1 : -1, "FF");
        int t = at(200, 52);
        assertEquals(PlateEdges.SUPPORTED, map.edges(t));
        assertEquals(50, map.width(t), 1e-6);
        assertEquals(4, k(map.critical(t), 50), 1e-9);
        CriticalStrain column = plate(y -> 1, "FF");
        assertEquals(PlateEdges.COLUMN, column.edges(t));
        assertEquals(Math.PI * Math.PI / 12 / (A * A), column.critical(t), 1e-12, "Euler's column of a strip: π² t² / (12 a²)");
    }

    /** SSSS k(a/b) = min (mb/a + a/mb)²: [C] .4 8.41, .7 4.531, 1 4, sqrt 2 4.5. */
    @ParameterizedTest
    @CsvSource({"0.4, 8.41", "0.7, 4.531", "1, 4", "1.2, 4.134", "1.4142135623730951, 4.5", "3, 4", "60, 4"})
    void shortSupportedPlates(double ratio, double k) {
        assertEquals(k, PlateEdges.SUPPORTED.k(ratio * 30, 30, 0.3), 6e-4);
    }

    /** A whole cylinder pressed along its axis: half of 0.605 t/R, whatever its width. */
    @Test
    void curvatureHelps() {
        int round = 96, along = 40;
        double radius = 50, length = 80;
        double[] xyz = new double[3 * round * (along + 1)];
        int[] tri = new int[6 * round * along];
        for (int i = 0, p = 0; i <= along; i++)
            for (int j = 0; j < round; j++) {
                xyz[p++] = radius * Math.cos(2 * Math.PI * j / round);
                xyz[p++] = radius * Math.sin(2 * Math.PI * j / round);
                xyz[p++] = length * i / along;
            }
        for (int i = 0, p = 0; i < along; i++)
            for (int j = 0; j < round; j++) {
                int a = i * round + j, b = i * round + (j + 1) % round;
                for (int v : new int[] {a, b, b + round, a, b + round, a + round}) tri[p++] = v;
            }
        TriMesh mesh = TriMesh.of(xyz, tri);
        double[] force = new double[3 * mesh.triangleCount()];
        Facet f = new Facet();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            f.of(mesh, t);
            double c = f.axis[2], s = f.axis[5], n = -1e-3 * Plates.E;
            force[3 * t] = n * c * c;
            force[3 * t + 1] = n * s * s;
            force[3 * t + 2] = n * c * s;
        }
        CriticalStrain map = CriticalStrain.of(mesh, force, SHEET, new boolean[mesh.vertexCount()]);
        double half = 0.5 / (50 * Math.sqrt(3 * 0.91));
        for (int t = 10 * round; t < 70 * round; t += 37) assertEquals(half, map.critical(t), 0.02 * half);
    }

    /**
     * Gerard and Becker's factors: a supported plate's strain falls to 1/2 + √(1 + 3n)/4 of the elastic one but for ν, never below yield.
     */
    @Test
    void yieldingLowersTheStrain() {
        Sheet soft = new Sheet(Plates.E, 0.4999, 41, 0.2, 1);
        assertEquals(0.01 * (0.5 + 0.25 * Math.sqrt(1.6)), PlateEdges.SUPPORTED.strainBeyondYield(0.01, soft), 1e-5);
        assertEquals(0.01, PlateEdges.FREE.strainBeyondYield(0.01, soft), 1e-5);
        assertEquals(1e-4, PlateEdges.SUPPORTED.strainBeyondYield(1e-4, soft));
        double yield = 41 / Plates.E;
        assertEquals(yield, PlateEdges.COLUMN.strainBeyondYield(1.05 * yield, soft));
        for (PlateEdges edges : PlateEdges.values()) assertEquals(1, edges.yielded(1), 1e-12, edges + ": no reduction while Et = E");
        assertTrue(PlateEdges.FREE.strainBeyondYield(0.01, new Sheet(Plates.E, 0.3, 41, 0.2, 1)) > 0.01, "ν towards 1/2 stiffens");
    }
}
