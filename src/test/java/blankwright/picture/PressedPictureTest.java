package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.shop.Spot;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A flat plate 400 x 200 that is its own blank, pressed together k x/400 times what it bears. */
class PressedPictureTest {
    private static PressedPiece plate(double k, double required, double critical) {
        TriMesh form = Forms.plate(400, 200, 160, 20);
        double[] uv = new double[2 * form.vertexCount()], times = new double[form.vertexCount()];
        for (int v = 0; v < times.length; v++) {
            uv[2 * v] = form.x(v);
            uv[2 * v + 1] = form.y(v);
            times[v] = k * form.x(v) / 400;
        }
        FlatMap map = FlatMap.of(form, uv);
        return new PressedPiece(map, times, Spot.of(map, 0, 0), required, critical);
    }

    private static List<String> words(Canvas canvas) {
        return canvas.labels().stream().map(Canvas.Label::text).toList();
    }

    @Test
    void everyPlaceHasTheColourOfItsNumberOnTheScaleOfTheScreen() {
        for (double end : new double[] {PressedPicture.END, 3}) {
            Picture picture = PressedPicture.of(new Caption("plate", List.of()), end == 3 ? OptionalDouble.of(3) : OptionalDouble.empty(),
                    List.of(plate(2, 0.02, 0.01)));
            Tints tints = Tints.upTo(end);
            int y = (int) (Frame.room().getCenterY() * picture.perMm()) - 100, left = 0, right = picture.width() - 1, agree = 0;
            while (picture.colour(left, y) == 0xFFFFFF) left++;
            while (picture.colour(right, y) == 0xFFFFFF) right--;
            for (int at = left; at <= right; at++)
                if (picture.colour(at, y) == tints.colourOf(2 * (at + 0.5 - left) / (right + 1 - left))) agree++;
            assertTrue(agree > 0.95 * (right - left), agree + " of " + (right - left));
        }
    }

    @Test
    void saysTheWorstOfAllPieces() {
        List<String> words = words(PressedPicture.drawn(new Caption("plate", List.of()), OptionalDouble.empty(), List.of(plate(2, 0.02, 0.0046), plate(0, 0, 1))));
        for (String part : List.of("4.3 times what it bears", "2.00 %", "0.46 %", "4.3 times", "STANDS", "GIVES WAY", "1.0", Frame.NO_BLANK))
            assertTrue(words.contains(part), part + " in " + words);
        assertTrue(words(PressedPicture.drawn(new Caption("p", List.of()), OptionalDouble.empty(), List.of(plate(2, 0.1, 1e-6)))).containsAll(
                List.of("over 100 times what it bears", "below 0.001 %")));
        assertTrue(words(PressedPicture.drawn(new Caption("p", List.of()), OptionalDouble.empty(), List.of(plate(0, 0, Double.POSITIVE_INFINITY))))
                .contains("nothing pressed together"));
    }

    @Test
    void refusesWhatIsNoMap() {
        assertThrows(IllegalArgumentException.class, () -> PressedPicture.of(new Caption("p", List.of()), OptionalDouble.empty(), List.of()));
        PressedPiece piece = plate(1, 0, 1);
        assertEquals("3 numbers for " + piece.times().length + " vertices", assertThrows(IllegalArgumentException.class,
                () -> new PressedPiece(piece.map(), new double[3], piece.worst(), 0, 1)).getMessage());
    }

    /** What must not be cut says so on every picture, framed. */
    @Test
    void noPictureHidesThatTheBlankMustNotBeCut() {
        Caption unsafe = new Caption("p", List.of(), List.of("DO NOT CUT: it covers itself."));
        assertTrue(words(PressedPicture.drawn(unsafe, OptionalDouble.empty(), List.of(plate(1, 0.1, 1)))).contains("Do not cut yet"));
        PressedPiece plate = plate(1, 0.1, 1);
        assertTrue(words(BucklingPicture.drawn(unsafe, new BucklingPiece("", plate.map(), new double[3 * plate.times().length], List.of(), List.of())))
                .contains("DO NOT CUT: it covers itself."));
    }
}
