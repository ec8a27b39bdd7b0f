package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Format;
import blankwright.mesh.io.MeshWriter;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The blank belongs to the shape: turned about, mirrored, renumbered or scaled input gives the same one, mirrored or scaled with it. */
class BlankKeepsShapeTest {
    private static final double CLOSE = 1e-3;       // mm, on panels of half a metre

    @TempDir Path temp;

    private final TriMesh mudguard = TorusSection.grid(Math.toRadians(120), Math.toRadians(140), 300, 90, 2000);
    private final TriMesh cap = new SphericalCap(400, Math.toRadians(35)).ringMesh(16);

    @Test
    void turnedAndMoved() throws Exception {
        Random random = new Random(3);
        for (TriMesh mesh : new TriMesh[] {mudguard, cap}) {
            double[][] q = rotation(random);
            double[] xyz = mesh.positions();
            for (int i = 0; i < xyz.length; i += 3) {
                double x = xyz[i], y = xyz[i + 1], z = xyz[i + 2];
                for (int k = 0; k < 3; k++) xyz[i + k] = q[k][0] * x + q[k][1] * y + q[k][2] * z + 500 * (k - 1);
            }
            same(blank(mesh), blank(mesh.withPositions(xyz)), 1);
        }
    }

    @Test
    void mirrored() throws Exception {
        for (TriMesh mesh : new TriMesh[] {mudguard, cap}) {
            double[] xyz = mesh.positions();
            int[] tri = mesh.corners();
            for (int i = 0; i < xyz.length; i += 3) xyz[i] = -xyz[i];
            for (int t = 0; t < tri.length; t += 3) {           // turned back, so that the outside stays outside
                int b = tri[t + 1];
                tri[t + 1] = tri[t + 2];
                tri[t + 2] = b;
            }
            FlatMap here = blank(mesh), there = blank(TriMesh.of(xyz, tri));
            for (int t = 0; t < mesh.triangleCount(); t++) {
                assertTrue(there.area(t) > 0, "triangle " + t + " is turned over");
                assertEquals(length(here, t, 0, 1), length(there, t, 0, 2), CLOSE);
                assertEquals(length(here, t, 1, 2), length(there, t, 1, 2), CLOSE);
                assertEquals(length(here, t, 0, 2), length(there, t, 0, 1), CLOSE);
            }
        }
    }

    @Test
    void renumbered() throws Exception {
        Random random = new Random(8);
        int n = mudguard.vertexCount();
        int[] to = new int[n];
        for (int i = 0; i < n; i++) to[i] = i;
        for (int i = n - 1; i > 0; i--) {
            int j = random.nextInt(i + 1), was = to[i];
            to[i] = to[j];
            to[j] = was;
        }
        double[] xyz = new double[3 * n];
        for (int v = 0; v < n; v++) {
            xyz[3 * to[v]] = mudguard.x(v);
            xyz[3 * to[v] + 1] = mudguard.y(v);
            xyz[3 * to[v] + 2] = mudguard.z(v);
        }
        int[] tri = mudguard.corners();
        for (int i = 0; i < tri.length; i++) tri[i] = to[tri[i]];
        same(blank(mudguard), blank(TriMesh.of(xyz, tri)), 1);
    }

    @Test
    void scaled() throws Exception {
        for (double factor : new double[] {0.25, 3}) {
            double[] xyz = mudguard.positions();
            for (int i = 0; i < xyz.length; i++) xyz[i] *= factor;
            same(blank(mudguard), blank(mudguard.withPositions(xyz)), factor);
        }
    }

    /** Every side of every triangle has the same length, so the blanks differ by a rigid motion at most; no triangle is turned over. */
    private static void same(FlatMap here, FlatMap there, double factor) {
        assertEquals(here.form().triangleCount(), there.form().triangleCount());
        for (int t = 0; t < here.form().triangleCount(); t++) {
            assertTrue(there.area(t) > 0, "triangle " + t + " is turned over");
            for (int k = 0; k < 3; k++)
                assertEquals(factor * length(here, t, k, (k + 1) % 3), length(there, t, k, (k + 1) % 3), CLOSE * Math.max(1, factor));
        }
    }

    private FlatMap blank(TriMesh mesh) throws Exception {
        Path file = temp.resolve("panel.ply");
        try (OutputStream out = Files.newOutputStream(file)) {
            MeshWriter.write(mesh, Format.PLY_LITTLE, out);
        }
        Recipe recipe = Recipe.ofMesh("panel", file.getFileName().toString(), Optional.of(LengthUnit.MM));
        Result result = FlattenJob.run(recipe, Given.file(file), Progress.NONE);
        assertEquals(1, result.pieces().size());
        assertEquals("converged", result.outcome());
        return result.pieces().get(0).map();
    }

    private static double length(FlatMap map, int t, int j, int k) {
        int a = map.form().corner(t, j), b = map.form().corner(t, k);
        return Math.hypot(map.u(a) - map.u(b), map.v(a) - map.v(b));
    }

    /** From a random quaternion. */
    private static double[][] rotation(Random random) {
        double w = random.nextGaussian(), x = random.nextGaussian(), y = random.nextGaussian(), z = random.nextGaussian();
        double n = w * w + x * x + y * y + z * z;
        return new double[][] {
            {(w * w + x * x - y * y - z * z) / n, 2 * (x * y - w * z) / n, 2 * (x * z + w * y) / n},
            {2 * (x * y + w * z) / n, (w * w - x * x + y * y - z * z) / n, 2 * (y * z - w * x) / n},
            {2 * (x * z - w * y) / n, 2 * (y * z + w * x) / n, (w * w - x * x - y * y + z * z) / n}};
    }
}
