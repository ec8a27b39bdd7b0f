package blankwright.shape;

import java.util.Locale;
import java.util.Random;

/**
 * The tail of the Tern as models/tail.obj has it: a half tube of half ellipses, x from 0 to 520 mm, half width 250 (1 - 0.62 (x/520)²) and height
 * 230 (1 - 0.7 (x/520)²)½ + 10, sampled on 48 by 40 cells whose corners are shaken by up to 0.3 of a cell and whose diagonals fall by chance.
 */
final class TailMesh {
    private static final int M = 48;
    private static final int N = 40;
    private static final double LENGTH = 520;

    private TailMesh() { }

    /** The whole file. */
    static String obj() {
        Random random = new Random(1934);
        double[] s = new double[(M + 1) * (N + 1)], t = new double[s.length];
        StringBuilder out = new StringBuilder("# Tail of the Tern, made by us by formula: half ellipses tapering backwards, sampled unevenly. Units mm.\n");
        for (int j = 0; j <= N; j++) {
            for (int i = 0; i <= M; i++) {
                int v = j * (M + 1) + i;
                s[v] = i + (i > 0 && i < M ? 0.6 * random.nextDouble() - 0.3 : 0);
                t[v] = j + (j > 0 && j < N ? 0.6 * random.nextDouble() - 0.3 : 0);
                double[] p = at(s[v] / M, Math.PI * t[v] / N);
                out.append(String.format(Locale.ROOT, "v %.3f %.3f %.3f\n", p[0], p[1], p[2]));
            }
        }
        for (int j = 0; j < N; j++) {
            for (int i = 0; i < M; i++) {
                int a = j * (M + 1) + i, b = a + 1, c = b + M + 1, d = a + M + 1;
                boolean first = random.nextBoolean();
                if (!(first ? turns(s, t, a, b, c) && turns(s, t, a, c, d) : turns(s, t, a, b, d) && turns(s, t, b, c, d))) first = !first;
                out.append(first ? face(a, b, c) + face(a, c, d) : face(a, b, d) + face(b, c, d));
            }
        }
        return out.toString();
    }

    /** {@code along} 0 to 1 from the open end to the narrow one, {@code angle} 0 to π from one side over the top to the other. */
    private static double[] at(double along, double angle) {
        double w = 250 * (1 - 0.62 * along * along), h = 230 * Math.sqrt(1 - 0.7 * along * along) + 10;
        return new double[] {LENGTH * along, w * Math.cos(angle), h * Math.sin(angle)};
    }

    private static boolean turns(double[] s, double[] t, int a, int b, int c) {
        return (s[b] - s[a]) * (t[c] - t[a]) - (s[c] - s[a]) * (t[b] - t[a]) > 0.05;
    }

    /** Along and then up turns inwards, so the corners are written the other way round. */
    private static String face(int a, int b, int c) {
        return "f " + (a + 1) + " " + (c + 1) + " " + (b + 1) + "\n";
    }
}
