package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.List;
import org.junit.jupiter.api.Test;

class BucklingPictureTest {
    private static final Caption CAPTION = new Caption("plate", List.of("sheet 1.0 mm"));

    /** A flat square of 20 x 20 squares, its own blank. */
    private static FlatMap plate() {
        int n = 20;
        double[] xyz = new double[3 * (n + 1) * (n + 1)], uv = new double[2 * (n + 1) * (n + 1)];
        for (int i = 0, v = 0; i <= n; i++)
            for (int j = 0; j <= n; j++, v++) {
                xyz[3 * v] = uv[2 * v] = 10 * i;
                xyz[3 * v + 1] = uv[2 * v + 1] = 10 * j;
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
