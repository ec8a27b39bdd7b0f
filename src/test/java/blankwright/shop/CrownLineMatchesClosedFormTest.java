package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Cylinder;
import blankwright.shape.Fineness;
import blankwright.shape.Panel;
import blankwright.shape.UnfitValue;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The crown over a line that gains or loses length, against arcs of circles. */
class CrownLineMatchesClosedFormTest {
    private static final double IN = 25.4;

    private static TriMesh mesh(Panel panel) throws UnfitValue {
        return panel.mesh(Fineness.chord(0.01));
    }

    private static List<CrownLine> lines(TriMesh form) {
        return CrownLine.of(form, PanelFrame.of(form));
    }

    /** Crowned the long way only: 48 in over its chord, 1/2 in high. */
    private static TriMesh lowCrown() throws UnfitValue {
        double c = 48 * IN, h = IN / 2, radius = (c * c / 4 + h * h) / (2 * h);
        return mesh(new Cylinder(radius, 300, 2 * Math.asin(c / 2 / radius)));
    }

    @Test
    void riseAndChordOfAnArc() throws UnfitValue {
        TriMesh form = lowCrown();
        List<CrownLine> lines = lines(form);
        assertEquals(1, lines.size(), "straight across: no crown there");
        assertEquals(48 * IN, lines.get(0).chord(form), 0.01);
        assertEquals(IN / 2, lines.get(0).rise(form), 0.02);
    }

    /** A little length c over a low crown: 3c/(16h) times as much of rise (from arc = c + 8h²/(3c)). */
    @Test
    void aLittleLengthMovesALowCrownALot() throws UnfitValue {
        TriMesh form = lowCrown();
        CrownLine line = lines(form).get(0);
        double c = 48 * IN, h = IN / 2, little = 1e-3;
        assertEquals(3 * c / (16 * h) * little, line.riseChange(form, little), 0.01 * 18 * little);
        assertEquals(-3 * c / (16 * h) * little, line.riseChange(form, -little), 0.01 * 18 * little);
        assertEquals(0, line.riseChange(form, 0), 1e-9);
    }

    /** Trade figures, derived from arc = c + 8h²/(3c): 48 in lose 1/2 in of crown with 0.014 in of length, 1 in with 0.056 in. */
    @Test
    void aLowCrownIsLostWithFourteenThousandths() throws UnfitValue {
        TriMesh form = lowCrown();
        CrownLine line = lines(form).get(0);
        assertEquals(-line.rise(form), line.riseChange(form, -0.014 * IN), 0);
        assertTrue(line.riseChange(form, -0.0135 * IN) > -0.9 * line.rise(form), "not before");
        double h = IN / 2, lost = h - Math.sqrt(h * h - 3 * 48 * IN * 0.007 * IN / 8);
        assertEquals(-lost, line.riseChange(form, -0.007 * IN), 0.01 * lost);
        assertEquals(Math.sqrt(h * h + 3 * 48 * IN * (0.056 - 0.014) * IN / 8) - h, line.riseChange(form, 0.042 * IN), 0.05);
    }

    /** Both ways, each with the rise it was given. */
    @Test
    void alongAndAcross() throws UnfitValue {
        TriMesh form = mesh(new CrownedPanel(800, 400, 20, 10));
        List<CrownLine> lines = lines(form);
        assertEquals(List.of("along the middle", "across the middle"), lines.stream().map(CrownLine::name).toList());
        assertEquals(20, lines.get(0).rise(form), 0.3);
        assertEquals(10, lines.get(1).rise(form), 0.3);
    }

    /** On a blank laid out flat a line is as long as its own stretch of it. */
    @Test
    void lengthOnTheBlank() throws UnfitValue {
        TriMesh form = lowCrown();
        double[] uv = new double[2 * form.vertexCount()];
        double c = 48 * IN, h = IN / 2, radius = (c * c / 4 + h * h) / (2 * h);
        CrownLine line = lines(form).get(0);
        for (int v = 0; v < form.vertexCount(); v++) {
            uv[2 * v] = radius * Math.atan2(form.y(v), form.x(v));
            uv[2 * v + 1] = form.z(v);
        }
        assertEquals(2 * radius * Math.asin(c / 2 / radius), line.length(FlatMap.of(form, uv)), 1e-6);
    }
}
