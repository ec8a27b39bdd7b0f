package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Contour lines of fields whose lines can be written down. */
class ContourLinesMatchClosedFormTest {
    private static final int N = 200;       // cells a side over -1..1

    private static double[] places() {
        double[] xy = new double[2 * (N + 1) * (N + 1)];
        for (int v = 0; v < xy.length / 2; v++) {
            xy[2 * v] = -1 + 2.0 * (v % (N + 1)) / N;
            xy[2 * v + 1] = -1 + 2.0 * (v / (N + 1)) / N;
        }
        return xy;
    }

    private static int[] triangles() {
        int[] tri = new int[6 * N * N];
        for (int c = 0, at = 0; c < N * N; c++) {
            int v = c / N * (N + 1) + c % N;
            for (int corner : new int[] {v, v + 1, v + N + 2, v, v + N + 2, v + N + 1}) tri[at++] = corner;
        }
        return tri;
    }

    /** The lines of a cone z = r are circles of length 2 pi r; chords of a second-order accurate line fall short by less than h²/r². */
    @Test
    void circlesOnACone() {
        double[] xy = places(), field = new double[xy.length / 2];
        for (int v = 0; v < field.length; v++) field[v] = Math.hypot(xy[2 * v], xy[2 * v + 1]);
        for (double r : new double[] {0.2, 0.5, 0.9}) {
            List<ContourLines.Line> lines = ContourLines.of(triangles(), field, r);
            assertEquals(1, lines.size());
            assertTrue(lines.get(0).closed());
            assertEquals(2 * Math.PI * r, length(lines.get(0), xy), 2 * Math.PI * r * Math.pow(2.0 / N / r, 2));
        }
    }

    /** r = 1.2 leaves the square at its corners: four open arcs, each of angle pi/2 - 2 arccos(1/1.2). */
    @Test
    void arcsThatEndOnTheRim() {
        double[] xy = places(), field = new double[xy.length / 2];
        for (int v = 0; v < field.length; v++) field[v] = Math.hypot(xy[2 * v], xy[2 * v + 1]);
        List<ContourLines.Line> lines = ContourLines.of(triangles(), field, 1.2);
        assertEquals(4, lines.size());
        for (ContourLines.Line line : lines) {
            assertTrue(!line.closed());
            assertEquals(1.2 * (Math.PI / 2 - 2 * Math.acos(1 / 1.2)), length(line, xy), 1e-3);
        }
    }

    @Test
    void everyPointCarriesTheValueAndTheHighSideIsOnTheLeft() {
        double[] xy = places(), field = new double[xy.length / 2];
        Random random = new Random(3);
        for (int v = 0; v < field.length; v++) field[v] = Math.sin(5 * xy[2 * v]) * Math.cos(4 * xy[2 * v + 1]) + 0.05 * random.nextDouble();
        List<ContourLines.Line> lines = ContourLines.of(triangles(), field, -0.4, 0, 0.4);
        assertTrue(lines.size() > 10);
        for (ContourLines.Line line : lines) {
            for (int i = 0; i < line.count(); i++) assertEquals(line.value(), line.at(i, field, 1, 0), 1e-14);
        }
    }

    @Test
    void plainSlopeIsCrossedOnceByEachLineWithTheHighSideLeft() {
        double[] xy = places(), field = new double[xy.length / 2];
        for (int v = 0; v < field.length; v++) field[v] = xy[2 * v];          // rises to the right: a line runs downwards
        for (double value : new double[] {-0.99, 0, 0.305}) {
            List<ContourLines.Line> lines = ContourLines.of(triangles(), field, value);
            assertEquals(1, lines.size());
            ContourLines.Line line = lines.get(0);
            assertEquals(2, length(line, xy), 1e-12);
            assertTrue(line.at(0, xy, 2, 1) == -1 && line.at(line.count() - 1, xy, 2, 1) == 1
                    || line.at(0, xy, 2, 1) == 1 && line.at(line.count() - 1, xy, 2, 1) == -1);
            assertTrue(line.at(0, xy, 2, 1) > line.at(line.count() - 1, xy, 2, 1), "high side left means downwards");
        }
    }

    private static double length(ContourLines.Line line, double[] xy) {
        double sum = 0;
        for (int i = 1; i < line.count(); i++)
            sum += Math.hypot(line.at(i, xy, 2, 0) - line.at(i - 1, xy, 2, 0), line.at(i, xy, 2, 1) - line.at(i - 1, xy, 2, 1));
        return sum;
    }
}
