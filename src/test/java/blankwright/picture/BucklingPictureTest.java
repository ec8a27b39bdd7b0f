package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BucklingPictureTest {
    private static final Caption CAPTION = new Caption("plate", List.of("sheet 1.0 mm"));

    /** A flat square of 20 x 20 squares, its own blank. */
    private static FlatMap plate() {
        return plate(20);
    }

    private static FlatMap plate(int n) {
        double[] xyz = new double[3 * (n + 1) * (n + 1)], uv = new double[2 * (n + 1) * (n + 1)];
        for (int i = 0, v = 0; i <= n; i++)
            for (int j = 0; j <= n; j++, v++) {
                xyz[3 * v] = uv[2 * v] = 200.0 * i / n;
                xyz[3 * v + 1] = uv[2 * v + 1] = 200.0 * j / n;
            }
        int[] tri = new int[6 * n * n];
        for (int i = 0, p = 0; i < n; i++)
            for (int j = 0; j < n; j++) {
                int a = i * (n + 1) + j, b = a + n + 1;
                for (int v : new int[] {a, b, b + 1, a, b + 1, a + 1}) tri[p++] = v;
            }
        return FlatMap.of(TriMesh.of(xyz, tri), uv);
    }

    private static double[] mode(FlatMap map, int waves) {
        double[] mode = new double[3 * map.form().vertexCount()];
        for (int v = 0; v < map.form().vertexCount(); v++) mode[3 * v + 2] = Math.sin(Math.PI * waves * map.u(v) / 200);
        return mode;
    }

    /** Elements of the blank's half that are dark, along the middle row of the picture. */
    private static int darkAlongTheBlank(Picture picture) {
        int dark = 0;
        boolean before = false;
        int row = (int) (95 * picture.perMm());
        for (int x = picture.width() / 2; x < picture.width(); x++) {
            boolean here = (picture.colour(x, row) & 255) < 160;
            if (here && !before) dark++;
            before = here;
        }
        return dark;
    }

    /** Four levels a crest, each crossed twice: the middle row of the blank meets eight lines a half-wave and two edges. */
    @Test
    void linesOfHeightStandOnTheBlank() {
        FlatMap map = plate();
        int one = darkAlongTheBlank(BucklingPicture.of(CAPTION, new BucklingPiece("", map, mode(map, 1), List.of(), List.of())));
        assertEquals(8 + 2, one);
    }

    /** Tucks nearer together than their numbers are wide: each number is there, clear of the others and of the edge, and near its own tuck. */
    @Test
    void numbersOfTucksKeepClearOfOneAnother() {
        int n = 80;
        FlatMap map = plate(n);
        List<BucklingPiece.Mark> marks = new ArrayList<>();
        int[] gaps = {3, 2, 3, 2, 2, 4, 1, 4};                        // times 1.6 mm on paper, where a number of two digits is 3 mm wide
        for (int i = 1; i < n; i += gaps[marks.size() % gaps.length]) marks.add(new BucklingPiece.Mark(i * (n + 1) + n, 5, 20));    // along v = 200
        int below = marks.size();
        for (int i = 2; i < n; i += 2) marks.add(new BucklingPiece.Mark(n * (n + 1) + i, 5, 20));                                  // along u = 200
        Canvas canvas = BucklingPicture.drawn(CAPTION, new BucklingPiece("", map, mode(map, 3), marks, List.of("says")));
        List<Canvas.Label> all = canvas.labels(), numbers = all.stream().filter(l -> l.text().matches("\\d+"))
                .sorted(Comparator.comparingInt(l -> Integer.parseInt(l.text()))).toList();
        assertEquals(IntStream.rangeClosed(1, marks.size()).mapToObj(Integer::toString).toList(), numbers.stream().map(Canvas.Label::text).toList(),
                "every tuck has its number, once");
        for (int i = 0; i < all.size(); i++) for (int j = 0; j < i; j++) assertFalse(all.get(i).meets(all.get(j)), all.get(i) + " on " + all.get(j));
        double most = 0;
        for (int i = 0; i < below; i++) {
            double left = numbers.get(0).x(), right = numbers.get(below - 1).x();
            int first = marks.get(0).vertex(), last = marks.get(below - 1).vertex();
            double over = left + (right - left) * (marks.get(i).vertex() - first) / (last - first);
            most = Math.max(most, Math.abs(numbers.get(i).x() - over));
        }
        assertTrue(most < 5, "a number stands " + most + " mm along the edge from its tuck");
    }

    @Test
    void theReliefFollowsTheMode() {
        FlatMap map = plate();
        Picture flat = BucklingPicture.of(CAPTION, new BucklingPiece("", map, new double[3 * map.form().vertexCount()], List.of(), List.of("says")));
        Picture waved = BucklingPicture.of(CAPTION, new BucklingPiece("", map, mode(map, 3), List.of(new BucklingPiece.Mark(0, 19, 40)), List.of("says")));
        int other = 0;
        for (int y = 0; y < flat.height(); y += 4)
            for (int x = 0; x < flat.width() / 2; x += 4) if (flat.colour(x, y) != waved.colour(x, y)) other++;
        assertTrue(other > 2000, "shaded otherwise: " + other);
        assertThrows(IllegalArgumentException.class, () -> BucklingPicture.of(CAPTION, new BucklingPiece("", map, new double[3], List.of(), List.of())));
    }
}
