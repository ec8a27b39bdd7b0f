package blankwright.strain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.oracle.Patch;
import blankwright.shape.SphericalCap;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Change of length along rims, against formulas and against trying every run there is. */
class RimChangeMatchesClosedFormTest {
    /**
     * An arc-true blank must shrink its edge by sin c/c - 1 (azimuthal equidistant hoop scale, J. P. Snyder 1987 ch. 25); percentages
     * computed from that formula. Both rims are regular polygons of the same number of sides, so it holds to rounding on any mesh.
     */
    @Test
    void arcTrueBlankShrinksItsEdge() {
        double[][] table = {{10, -.5069}, {20, -2.0184}, {30, -4.5070}, {45, -9.9684}, {60, -17.3007}, {90, -36.3380}};
        for (double[] row : table) {
            double c = Math.toRadians(row[0]);
            RimChange rim = RimChange.of(azimuthal(500, c, c));
            RimChange.Loop loop = rim.loops().get(0);
            assertEquals(Math.sin(c) / c - 1, loop.change() / loop.blankLength(), 1e-12);
            assertEquals(row[1] / 100, loop.change() / loop.blankLength(), 5.1e-7);
            assertEquals(-loop.change(), rim.largestTakeIn(), 1e-9);
            assertEquals(0, rim.largestLetOut());
            assertEquals(loop.blankLength(), loop.mostTakenIn().blankLength(), 1e-9);
            assertEquals(100 * (1 - Math.sin(c) / c), rim.takeInPerRun(), 1e-9);
        }
    }

    /**
     * Dish of radius 500 mm with an arc of 150 mm from the middle (c = 0.3): edge scale 1.015159 arc-true, 1.011356 equal-area; computed.
     */
    @Test
    void shopExampleOfADish() {
        RimChange.Loop arcTrue = RimChange.of(azimuthal(500, 0.3, 0.3)).loops().get(0);
        RimChange.Loop equalArea = RimChange.of(azimuthal(500, 0.3, 2 * Math.sin(0.15))).loops().get(0);
        assertEquals(1.015159, arcTrue.blankLength() / arcTrue.formLength(), 6e-7);
        assertEquals(1.011356, equalArea.blankLength() / equalArea.formLength(), 6e-7);
    }

    @Test
    void runsAreTheBestOfAllRuns() {
        Random random = new Random(8);
        for (int round = 0; round < 20; round++) {
            double wave = 20 + 60 * random.nextDouble(), depth = 6 * random.nextDouble(), more = 0.03 * (random.nextDouble() - 0.5);
            FlatMap map = Patch.grid(9, 6, 0, 300, 0, 180, (p, q) -> new double[] {p, q},
                    (p, q) -> new double[] {p * (1 + more), q + depth * Math.sin(p / wave), depth * Math.cos((p + 2 * q) / wave)});
            EdgeTable edges = EdgeTable.of(map.form());
            int[] loop = RimLoops.of(map.form(), edges).loop(0);
            int n = loop.length;
            double in = 0, out = 0;
            for (int from = 0; from < n; from++) {
                double change = 0;
                for (int i = 0; i < n; i++) {
                    int a = loop[(from + i) % n], b = loop[(from + i + 1) % n];
                    change += map.form().distance(a, b) - Math.hypot(map.u(a) - map.u(b), map.v(a) - map.v(b));
                    in = Math.max(in, -change);
                    out = Math.max(out, change);
                }
            }
            RimChange rim = RimChange.of(map);
            assertEquals(in, rim.largestTakeIn(), 1e-10);
            assertEquals(out, rim.largestLetOut(), 1e-10);
            for (int v = 0; v < 3; v++) {
                assertEquals(rim.largestTakeIn(), RimChange.of(Patch.renumbered(map, v)).largestTakeIn(), 1e-9);
                assertEquals(rim.letOutPerRun(), RimChange.of(Patch.renumbered(map, v)).letOutPerRun(), 1e-9);
            }
            assertTrue(rim.takeInPerRun() <= rim.largestTakeIn() + 1e-9);
        }
    }

    /** A square sheet whose one side is stretched from corner to corner: the worst run lies on it and is known. */
    @Test
    void worstRunLiesWhereTheStretchWasPut() {
        FlatMap map = Patch.grid(40, 20, 0, 400, 0, 200, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p, q, q == 200 && p > 100 && p < 300 ? 3 * Math.abs(Math.rint(p / 10) % 2) : 0});
        RimChange rim = RimChange.of(map);
        double each = Math.hypot(10, 3) - 10;
        RimChange.Loop loop = rim.loops().get(0);
        assertEquals(200, loop.mostLetOut().blankLength(), 1e-9, "from 100 to 300");
        assertEquals(20 * each, rim.largestLetOut(), 1e-9);
        assertEquals(10 * each, rim.letOutPerRun(), 1e-9);
        assertEquals(200, loop.mostLetOut().u(), 1e-9);
        assertEquals(200, loop.mostLetOut().v(), 1e-9);
        assertEquals(200, loop.mostLetOut().y(), 1e-9);
    }

    @Test
    void holesAreLoopsOfTheirOwn() {
        FlatMap whole = Patch.grid(12, 12, 0, 240, 0, 240, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {1.01 * p, 1.01 * q, 0});
        int[] tri = whole.form().corners();
        int[] kept = java.util.stream.IntStream.range(0, tri.length).filter(i -> {
            double u = 0, v = 0;
            for (int k = 0; k < 3; k++) {
                u += whole.u(tri[i / 3 * 3 + k]) / 3;
                v += whole.v(tri[i / 3 * 3 + k]) / 3;
            }
            return Math.abs(u - 120) > 40 || Math.abs(v - 120) > 40;
        }).map(i -> tri[i]).toArray();
        RimChange rim = RimChange.of(FlatMap.of(TriMesh.of(whole.form().positions(), kept), whole.positions()));
        assertEquals(2, rim.loops().size());
        for (RimChange.Loop loop : rim.loops()) assertEquals(0.01, loop.change() / loop.blankLength(), 1e-12);
        assertEquals(320, rim.loops().stream().mapToDouble(RimChange.Loop::blankLength).min().orElseThrow(), 1e-9);
    }

    /** Cap of radius R and half angle c laid out about its middle, the rim at flat radius R times {@code rim}. */
    private static FlatMap azimuthal(double radius, double c, double rim) {
        TriMesh cap = new SphericalCap(radius, c).ringMesh(10);
        double[] uv = new double[2 * cap.vertexCount()];
        for (int v = 0; v < cap.vertexCount(); v++) {
            double out = Math.hypot(cap.x(v), cap.y(v)), at = Math.atan2(out, cap.z(v));
            uv[2 * v] = out > 0 ? radius * rim * at / c * cap.x(v) / out : 0;
            uv[2 * v + 1] = out > 0 ? radius * rim * at / c * cap.y(v) / out : 0;
        }
        return FlatMap.of(cap, uv);
    }
}
