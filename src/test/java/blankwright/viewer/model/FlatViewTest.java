package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class FlatViewTest {
    private final FlatView view = new FlatView(100, 50, 2);

    @Test
    void thereAndBackIsTheSamePlace() {
        assertEquals(137.5, view.uAt(view.x(137.5)), 1e-12);
        assertEquals(-20, view.vAt(view.y(-20)), 1e-12);
        assertEquals(-2 * (60 - 50), view.y(60), "v points up, the screen down");
    }

    @Test
    void zoomingKeepsThePlaceUnderThePointerAndSlidingMovesIt() {
        double u = view.uAt(80), v = view.vAt(-30);
        FlatView nearer = view.zoomed(3, 80, -30);
        assertEquals(6, nearer.perMm());
        assertEquals(80, nearer.x(u), 1e-9);
        assertEquals(-30, nearer.y(v), 1e-9);
        FlatView slid = view.moved(5, 7);
        assertEquals(85, slid.x(u), 1e-9);
        assertEquals(-23, slid.y(v), 1e-9);
    }

    @Test
    void fittingHoldsTheWholeBox() {
        FlatView fit = FlatView.fitting(new double[] {-10, 0, 990, 100}, 500, 400);
        assertEquals(0, fit.x(490), 1e-9);
        assertTrue(fit.x(990) < 250 && fit.x(990) > 200, "" + fit.x(990));
    }

    /** A card of 85.60 mm that measured 342.4 px wide makes 4 px of each mm: then 100 mm on the sheet take 400 px. */
    @Test
    void trueSizeIsTrue() {
        FlatView real = view.at(342.4 / 85.60);
        assertEquals(400, real.x(170) - real.x(70), 1e-9);
        assertEquals(400, real.y(70) - real.y(170), 1e-9);
        assertEquals(view.uAt(0), real.uAt(0), 1e-12, "the middle stays");
    }

    /** Marks stand where a rule has them: every label is a round length, the same step between all. */
    @Test
    void rulerMarksAreEvenAndReadable() {
        for (LengthStyle style : LengthStyle.values()) {
            for (double perMm : new double[] {0.05, 0.3, 1, 3.78, 20}) {
                List<Ticks.Tick> ticks = Ticks.between(-33, 700 / perMm, perMm, style);
                List<Ticks.Tick> told = ticks.stream().filter(t -> !t.label().isEmpty()).toList();
                assertTrue(told.size() >= 2, style + " at " + perMm);
                double step = (told.get(1).mm() - told.get(0).mm()) * perMm;
                assertTrue(step >= 60, style + " at " + perMm + ": labels " + step + " px apart");
                for (int i = 1; i < ticks.size(); i++) assertTrue((ticks.get(i).mm() - ticks.get(i - 1).mm()) * perMm >= 5.9);
                if (style == LengthStyle.MM) for (Ticks.Tick t : told) assertEquals(t.mm(), Double.parseDouble(t.label()), 1e-9);
                if (style == LengthStyle.INCH) for (Ticks.Tick t : told) assertEquals(t.mm() / 25.4, Double.parseDouble(t.label()), 1e-4);
            }
        }
    }
}
