package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.shop.SheetThickness;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A plate 400 x 200 whose blank is u = x + g x²/800, v = y: what keeps its volume is 1 + g x/400 as thick as the sheet, at every x. */
class ThicknessPictureTest {
    private static final double SHEET = 1.5;

    private static ThicknessPiece plate(double g) {
        TriMesh form = Forms.plate(400, 200, 160, 20);
        double[] uv = new double[2 * form.vertexCount()];
        for (int v = 0; v < form.vertexCount(); v++) {
            uv[2 * v] = form.x(v) + g * form.x(v) * form.x(v) / 800;
            uv[2 * v + 1] = form.y(v);
        }
        FlatMap map = FlatMap.of(form, uv);
        return new ThicknessPiece(map, SheetThickness.of(map, VertexStrain.of(StrainField.of(map)), SHEET));
    }

    @Test
    void everyPlaceHasTheColourOfItsThickness() {
        double g = 0.18;
        Picture picture = ThicknessPicture.of(new Caption("plate", List.of()), OptionalDouble.empty(), List.of(plate(g)));
        Tints tints = Tints.thickness(1, 1 + g);
        int y = (int) (Frame.room().getCenterY() * picture.perMm()) - 100, left = 0, right = picture.width() - 1;
        while (picture.colour(left, y) == 0xFFFFFF) left++;
        while (picture.colour(right, y) == 0xFFFFFF) right--;
        int agree = 0, other = 0;
        for (int at = left; at <= right; at++) {
            double u = (at + 0.5 - left) / (right + 1 - left) * (400 + g * 200), x = 400 / g * (Math.sqrt(1 + g * u / 200) - 1);
            double share = 1 + g * x / 400;
            if (picture.colour(at, y) == tints.colourOf(share)) agree++;
            else if (picture.colour(at, y) == tints.colourOf(share - 0.004) || picture.colour(at, y) == tints.colourOf(share + 0.004)) other++;
        }
        assertTrue(agree > 0.85 * (right - left), agree + " of " + (right - left));
        assertTrue(other < 0.05 * (right - left), other + " beside a boundary");
    }

    @Test
    void saysSheetThinnestAndThickestWithoutWordsOnWords() {
        Canvas canvas = ThicknessPicture.drawn(new Caption("plate", List.of("sheet 1.50 mm")), OptionalDouble.empty(), List.of(plate(-0.2)));
        List<String> words = canvas.labels().stream().map(Canvas.Label::text).toList();
        for (String part : List.of("1.50 mm (0.059 in)", "1.20 mm, 19.9 % gone", "thinnest 1.20 mm", "thickest 1.50 mm", "THIN", "THICK"))
            assertTrue(words.contains(part), part + " in " + words);
        List<Canvas.Label> labels = canvas.labels();
        for (int i = 0; i < labels.size(); i++) {
            Canvas.Label a = labels.get(i);
            assertTrue(a.x() >= 5 && a.x() + a.width() <= Frame.WIDTH - 5 && a.y() <= Frame.HEIGHT - 3, "beyond the page: " + a);
            for (int j = 0; j < i; j++) assertTrue(!a.meets(labels.get(j)), a + " on " + labels.get(j));
        }
    }

    /** Where the whole panel differs by a hundredth, numbers of two decimals would all be the same. */
    @Test
    void classesCloseTogetherAreToldApart() {
        List<String> words = ThicknessPicture.drawn(new Caption("p", List.of()), OptionalDouble.empty(), List.of(plate(0.001))).labels().stream().map(Canvas.Label::text).toList();
        assertTrue(words.contains("1.485") && words.contains("1.515"), words.toString());
        assertEquals(10, words.stream().filter(w -> w.matches("1\\.\\d{3}")).distinct().count());
        assertThrows(IllegalArgumentException.class, () -> ThicknessPicture.of(new Caption("p", List.of()), OptionalDouble.empty(), List.of()));
    }
}
