package blankwright.mesh.reduce;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.NearestPoint;
import blankwright.num.Progress;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.DoubleAccumulator;
import java.util.stream.IntStream;

/**
 * How far apart two surfaces are: the larger of the distances of each one's samples from the other.
 *
 * <p>Samples are all vertices; the places that part each edge into so many equal steps; and those of the lattice of as many steps inside each
 * triangle, with its middle. The fewer the triangles, the more steps. A thinned surface has {@value #LEAST} at least, the given one may be left
 * with its vertices: it is the denser.
 */
final class Deviation {
    static final int LEAST = 4, MOST = 16;
    static final int GIVEN_LEAST = 1, GIVEN_MOST = 8;

    private static final int CHUNK = 1024;
    private static final int SAMPLES = 500_000;     // half a second; of a lattice of n steps each triangle has n²/2

    private Deviation() { }

    /** Largest distance of a sample of {@code given} from {@code thinned}, mm. */
    static double ofGiven(TriMesh given, TriMesh thinned, Progress progress) {
        return most(given, steps(given, GIVEN_LEAST, GIVEN_MOST), thinned, progress);
    }

    /** Largest distance of a sample of {@code thinned} from {@code given}, mm. */
    static double ofThinned(TriMesh given, TriMesh thinned, Progress progress) {
        return most(thinned, steps(thinned, LEAST, MOST), given, progress);
    }

    static int steps(TriMesh mesh, int least, int most) {
        return Math.max(least, Math.min(most, (int) Math.sqrt(2.0 * SAMPLES / mesh.triangleCount())));
    }

    private static double most(TriMesh of, int n, TriMesh from, Progress progress) {
        Largest largest = new Largest(NearestPoint.on(from), progress);
        largest.of(of.vertexCount(), (v, farthest) -> farthest.at(of.x(v), of.y(v), of.z(v)));
        if (n == 1) return largest.distance();
        EdgeTable edges = EdgeTable.of(of);
        largest.of(edges.edgeCount(), (e, farthest) -> {
            int a = edges.from(e), b = edges.to(e);
            for (int k = 1; k < n; k++) farthest.at(of, a, b, b, (double) (n - k) / n, (double) k / n, 0);
        });
        largest.of(of.triangleCount(), (t, farthest) -> {
            int a = of.corner(t, 0), b = of.corner(t, 1), c = of.corner(t, 2);
            farthest.at(of, a, b, c, 1 / 3.0, 1 / 3.0, 1 / 3.0);
            for (int i = 1; i < n; i++)
                for (int j = 1; i + j < n; j++) farthest.at(of, a, b, c, (double) i / n, (double) j / n, (double) (n - i - j) / n);
        });
        return largest.distance();
    }

    /** Asks at the samples of one vertex, edge or triangle. */
    private interface Samples {
        void ask(int i, Farthest farthest);
    }

    /** The largest distance so far. Whoever is no farther need not be measured to the end, so it does not matter who comes first. */
    private static final class Largest {
        private final NearestPoint skin;
        private final Progress progress;
        private final DoubleAccumulator most2 = new DoubleAccumulator(Math::max, 0);

        Largest(NearestPoint skin, Progress progress) {
            this.skin = skin;
            this.progress = progress;
        }

        void of(int count, Samples samples) {
            IntStream.range(0, (count + CHUNK - 1) / CHUNK).parallel().forEach(c -> {
                if (progress.cancelled()) throw new CancellationException("measuring what was thinned out");
                Farthest farthest = new Farthest(skin, most2.get());
                for (int i = c * CHUNK; i < Math.min(count, (c + 1) * CHUNK); i++) samples.ask(i, farthest);
                most2.accumulate(farthest.most2);
            });
        }

        double distance() {
            return Math.sqrt(most2.get());
        }
    }

    /** How far the farthest of some places is, squared. */
    private static final class Farthest {
        private final NearestPoint skin;
        private double most2;

        Farthest(NearestPoint skin, double most2) {
            this.skin = skin;
            this.most2 = most2;
        }

        void at(double x, double y, double z) {
            most2 = Math.max(most2, skin.distance2(x, y, z, most2));
        }

        /** The weighted mean of three vertices. */
        void at(TriMesh mesh, int a, int b, int c, double wa, double wb, double wc) {
            at(wa * mesh.x(a) + wb * mesh.x(b) + wc * mesh.x(c), wa * mesh.y(a) + wb * mesh.y(b) + wc * mesh.y(c),
                    wa * mesh.z(a) + wb * mesh.z(b) + wc * mesh.z(c));
        }
    }
}
