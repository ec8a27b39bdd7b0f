package blankwright.mesh.query;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NearestPointAgreesWithBruteForceTest {
    private static double off(double[] p, double[] q) {
        return Math.hypot(Math.hypot(p[0] - q[0], p[1] - q[1]), p[2] - q[2]);
    }

    /** Asks every triangle by a duller way: its foot if inside, else the nearest of its three sides. */
    private static double slow(TriMesh mesh, double[] p) {
        double best = Double.POSITIVE_INFINITY;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[] n = mesh.normal(t);
            double[][] c = new double[3][];
            for (int k = 0; k < 3; k++) c[k] = new double[] {mesh.x(mesh.corner(t, k)), mesh.y(mesh.corner(t, k)), mesh.z(mesh.corner(t, k))};
            double h = 0;
            for (int k = 0; k < 3; k++) h += n[k] * (p[k] - c[0][k]);
            boolean inside = true;
            for (int k = 0; k < 3; k++) {
                double[] a = c[k], b = c[(k + 1) % 3];
                double ex = b[0] - a[0], ey = b[1] - a[1], ez = b[2] - a[2], px = p[0] - a[0], py = p[1] - a[1], pz = p[2] - a[2];
                inside &= n[0] * (ey * pz - ez * py) + n[1] * (ez * px - ex * pz) + n[2] * (ex * py - ey * px) >= 0;
                double s = Math.max(0, Math.min(1, (ex * px + ey * py + ez * pz) / (ex * ex + ey * ey + ez * ez)));
                best = Math.min(best, off(p, new double[] {a[0] + s * ex, a[1] + s * ey, a[2] + s * ez}));
            }
            if (inside) best = Math.min(best, Math.abs(h));
        }
        return best;
    }

    @Test
    void distancesAreTheSame() {
        Random random = new Random(11);
        TriMesh[] forms = {Forms.tetrahedron(), Forms.torus(90, 30, 40, 20), Forms.plate(300, 200, 12, 9), Forms.cells(Forms.randomCells(6, 0.4, 2))};
        for (TriMesh mesh : forms) {
            NearestPoint nearest = NearestPoint.on(mesh);
            double[] size = mesh.size();
            for (int i = 0; i < 300; i++) {
                int v = random.nextInt(mesh.vertexCount());
                double[] p = {mesh.x(v), mesh.y(v), mesh.z(v)};
                if (i % 4 > 0) for (int k = 0; k < 3; k++) p[k] += random.nextGaussian() * (0.1 + 0.3 * size[k]);
                SkinPoint found = nearest.to(p[0], p[1], p[2]);
                assertEquals(slow(mesh, p), off(p, found.on(mesh)), 1e-9 * (1 + size[0]));
                assertEquals(1, found.a() + found.b() + found.c(), 1e-12);
                assertTrue(Math.min(found.a(), Math.min(found.b(), found.c())) >= -1e-12);
            }
        }
    }

    /** Triangles that are a side or a point: the nearest of their sides that have a length counts, and none spoils the others. */
    @Test
    void trianglesWithoutAreaAreStillPlaces() {
        double[] xyz = {0, 0, 0, 10, 0, 0, 0, 10, 0, 40, 0, 0, 40, 30, 0, 40, 0, 0, 40, 30, 0, 90, 0, 0, 90, 0, 0, 90, 0, 0};
        int[] tri = {0, 1, 2, 3, 4, 5, 3, 5, 4, 4, 3, 6, 7, 8, 9};
        Random random = new Random(12);
        for (int first = 0; first < 5; first++) {
            int[] turned = new int[tri.length];
            for (int i = 0; i < tri.length; i++) turned[i] = tri[(i + 3 * first) % tri.length];
            NearestPoint nearest = NearestPoint.on(TriMesh.of(xyz, turned));
            for (int i = 0; i < 200; i++) {
                double x = 120 * random.nextDouble() - 10, y = 50 * random.nextDouble() - 10;
                double[] found = nearest.to(x, y, 0).on(TriMesh.of(xyz, turned));
                double side = Math.hypot(x - 40, y - Math.max(0, Math.min(30, y))), point = Math.hypot(x - 90, y);
                double least = Math.min(Math.min(side, point), slow(TriMesh.of(xyz, new int[] {0, 1, 2}), new double[] {x, y, 0}));
                assertEquals(least, Math.hypot(found[0] - x, found[1] - y), 1e-12);
            }
        }
    }

    @Test
    void aMarkIsCarriedBackFromTheBlank() {
        TriMesh plate = Forms.plate(300, 200, 12, 9);
        TriMesh form = Forms.turnedBy(plate, 0.4, 1.1, 5, 6, 7);
        double[] uv = new double[2 * plate.vertexCount()];
        for (int v = 0; v < plate.vertexCount(); v++) {
            uv[2 * v] = plate.x(v);
            uv[2 * v + 1] = plate.y(v);
        }
        FlatMap map = FlatMap.of(form, uv);
        SkinPoint place = NearestPoint.on(map).to(123.4, 56.7, 0);
        double[] back = place.on(map);
        assertEquals(123.4, back[0], 1e-10);
        assertEquals(56.7, back[1], 1e-10);
        double[] there = place.on(form);
        double x = Math.cos(0.4) * 123.4 - Math.sin(0.4) * 56.7;            // the same turn applied to the point itself
        assertEquals(x + 5, there[0], 1e-10);
    }

    @Test
    void refusesNothingToLookAtAndNowhere() {
        assertThrows(IllegalArgumentException.class, () -> NearestPoint.on(TriMesh.of(new double[3], new int[0])));
        assertThrows(IllegalArgumentException.class, () -> NearestPoint.on(Forms.tetrahedron()).to(Double.NaN, 0, 0));
    }
}
