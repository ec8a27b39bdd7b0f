package blankwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import org.junit.jupiter.api.Test;

/**
 * Advances of the font in 1/2048 em: H 1479, space 569, digits 1139 (Liberation Sans is made to the advances of the common sans of the
 * PostScript core fonts, 722, 278 and 556 of 1000: Adobe Font Metrics of the core 14, from memory), capital height 1409.
 */
class LetteringMatchesTheFontTest {
    @Test
    void widths() {
        assertEquals(1479.0 / 1409, Lettering.width("H", 1), 1e-9);
        assertEquals(10 * (1479 + 569 + 2 * 1139) / 1409.0, Lettering.width("H 12", 10), 1e-9);
        assertEquals(0, Lettering.width("", 10));
    }

    @Test
    void anchors() {
        for (Anchor anchor : Anchor.values()) {
            Rectangle2D box = Lettering.outline("HH", 100, 50, 7, 0, anchor).getBounds2D();
            assertEquals(7, box.getHeight(), 1e-9);
            assertEquals(50 - 7 * anchor.up(), box.getMinY(), 1e-9);
            assertEquals(100, box.getCenterX() + (anchor.along() - 0.5) * Lettering.width("HH", 7), 0.1);
        }
        Rectangle2D turned = Lettering.outline("HHHH", 0, 0, 7, Math.PI / 2, Anchor.LEFT_BASE).getBounds2D();
        assertEquals(-7, turned.getMinX(), 1e-9);
        assertTrue(turned.getMaxY() > 25);
    }

    @Test
    void unknownLettersAreBoxesAndBlanksAreRefused() {
        assertTrue(Lettering.outline("\u6f22", 0, 0, 5, 0, Anchor.LEFT_BASE).getBounds2D().getHeight() > 4);
        assertEquals("a b c", new Entity.Text("a\nb\u0085c", 0, 0, 3, Anchor.CENTRE).text());
        assertThrows(IllegalArgumentException.class, () -> new Entity.Text(" \n", 0, 0, 3, Anchor.CENTRE));
        assertThrows(IllegalArgumentException.class, () -> new Entity.Text("x", 0, 0, 0, Anchor.CENTRE));
        assertThrows(IllegalArgumentException.class, () -> new Entity.Line(Layer.CUT, 0, Double.NaN, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Entity.Circle(Layer.CUT, 0, 0, -1));
        assertThrows(IllegalArgumentException.class, () -> new Entity.Arc(Layer.CUT, 0, 0, 1, 0, 7));
    }

    @Test
    void decimalsArePlain() {
        assertEquals("0", Decimals.text(-0.00000001, 4));
        assertEquals("-12.3", Decimals.text(-12.3, 6));
        assertEquals("1234567890123", Decimals.text(1234567890123.0, 4));
        assertEquals("0.0001", Decimals.text(0.00005001, 4));
        assertThrows(AssertionError.class, () -> Decimals.text(Double.NaN, 4));
        java.util.Random random = new java.util.Random(1);
        for (int i = 0; i < 100_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(10) - 2);
            assertEquals(value, Double.parseDouble(Decimals.text(value, 6)), 0.5e-6 + 2 * Math.ulp(value));
        }
    }
}
