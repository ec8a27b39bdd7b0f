package blankwright.job;

import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.repair.MidSurface;
import java.util.Random;

/**
 * A form as a scanner might give it: moved along its normals by smooth noise of one wavelength, the same for the same seed on any mesh.
 *
 * <p>The sum of many plane waves with random directions and phases, sqrt(2/m)·Σ cos(k·x + p), |k| = 2π/wavelength: mean 0, mean square 1. A wave that meets the
 * skin at a slant is longer along it, by a fifth on the average of the squares of its slope.
 */
final class ScanNoise {
    private static final int WAVES = 64;

    private ScanNoise() { }

    /**
     * The opened form, both sides of its seams moved alike.
     *
     * @param rms of the distance from the form, mm
     * @param wavelength mm, above 0
     */
    static TriMesh on(Opened opened, double rms, double wavelength, long seed) {
        double[] scanned = scanned(opened.sewn(), rms, wavelength, seed), xyz = new double[3 * opened.mesh().vertexCount()];
        int[] vertexOf = opened.vertexOf();
        for (int v = 0; v < vertexOf.length; v++) System.arraycopy(scanned, 3 * vertexOf[v], xyz, 3 * v, 3);
        return opened.mesh().withPositions(xyz);
    }

    private static double[] scanned(TriMesh form, double rms, double wavelength, long seed) {
        Random random = new Random(seed);
        double[] wave = new double[4 * WAVES];
        for (int i = 0; i < wave.length; i += 4) {
            double x = random.nextGaussian(), y = random.nextGaussian(), z = random.nextGaussian();
            double k = 2 * Math.PI / wavelength / Math.sqrt(x * x + y * y + z * z);
            wave[i] = k * x;
            wave[i + 1] = k * y;
            wave[i + 2] = k * z;
            wave[i + 3] = 2 * Math.PI * random.nextDouble();
        }
        double[] normal = MidSurface.vertexNormals(form), xyz = form.positions();
        double unit = rms * Math.sqrt(2.0 / WAVES);
        for (int v = 0; v < xyz.length; v += 3) {
            double sum = 0;
            for (int i = 0; i < wave.length; i += 4)
                sum += Math.cos(wave[i] * form.x(v / 3) + wave[i + 1] * form.y(v / 3) + wave[i + 2] * form.z(v / 3) + wave[i + 3]);
            for (int k = 0; k < 3; k++) xyz[v + k] += unit * sum * normal[v + k];
        }
        return xyz;
    }
}
