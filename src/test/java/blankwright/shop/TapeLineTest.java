package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import blankwright.mesh.FlatMap;
import blankwright.oracle.Patch;
import blankwright.strain.StrainField;
import java.util.List;
import org.junit.jupiter.api.Test;

class TapeLineTest {
    private static final FlatMap MAP = Patch.grid(10, 5, 0, 100, 0, 50, (p, q) -> new double[] {p, q},
            (p, q) -> new double[] {1.1 * p, 0.9 * q, 3});

    @Test
    void lengthsByVerticesAndByPlacesAgree() {
        TapeLine byVertices = TapeLine.of("edge", MAP, new int[] {0, 1, 2, 3});
        assertEquals(30, byVertices.blankLength(), 1e-12);
        assertEquals(33, byVertices.formLength(), 1e-12);
        assertEquals(3, byVertices.letOut(), 1e-12);
        assertEquals(0, byVertices.takeIn());
        TapeLine byPlaces = TapeLine.of("up", MAP, new int[] {0, 0}, new double[] {1, 0, 0, 0, 0, 1});
        int a = MAP.form().corner(0, 0), c = MAP.form().corner(0, 2);
        assertEquals(Math.hypot(MAP.u(c) - MAP.u(a), MAP.v(c) - MAP.v(a)), byPlaces.blankLength(), 1e-12);
        assertEquals(MAP.form().distance(a, c), byPlaces.formLength(), 1e-12);
        assertEquals(0, TapeLine.of("point", MAP, new int[] {4}).change());
        assertThrows(IllegalArgumentException.class, () -> TapeLine.of("odd", new double[4], new double[3]));
    }

    @Test
    void rowsOfTheWorkListSayWhatTheZonesSay() {
        List<WorkRow> rows = WorkList.of(List.of(Zones.of(StrainField.of(MAP)), Zones.of(StrainField.of(MAP.moved(0, 500, 0)))));
        assertEquals(2, rows.size());
        WorkRow row = rows.get(1);
        assertEquals(2, row.piece());
        assertEquals(1, row.zone());
        assertEquals("shrink", row.todo(), "ln 0.9 outweighs ln 1.1");
        assertEquals(4950, row.areaMm2(), 1e-9);
        assertEquals(-10, row.strainMaxPercent(), 1e-9);
        assertEquals(10, row.strainAcrossPercent(), 1e-9);
        assertEquals(90, row.directionDegOnBlank(), 1e-9);
        assertEquals(50, row.lineBlankMm(), 1e-9);
        assertEquals(45, row.lineFormMm(), 1e-9);
        assertEquals(5, row.takeInMm(), 1e-9);
        assertEquals(null, row.letOutMm());
        assertEquals("hard", row.verdict());
        assertEquals(WorkRow.COLUMNS.size(), row.values().size());
        assertEquals("shrink", row.values().get(WorkRow.COLUMNS.indexOf("do")));
        assertEquals("hard", row.values().get(WorkRow.COLUMNS.indexOf("verdict")));
    }

    @Test
    void verdictsChangeWhereTheTradeSaysTheyDo() {
        assertEquals(Verdict.SPRINGS_IN, Verdict.of(-0.00099));
        assertEquals(Verdict.EASY, Verdict.of(0.001));
        assertEquals(Verdict.EASY, Verdict.of(-0.0199));
        assertEquals(Verdict.ORDINARY, Verdict.of(0.02));
        assertEquals(Verdict.HARD, Verdict.of(-0.05));
        assertEquals(Verdict.HARD, Verdict.of(Double.POSITIVE_INFINITY));
        assertEquals("springs in", Verdict.SPRINGS_IN.words());
        assertThrows(IllegalArgumentException.class, () -> Verdict.of(Double.NaN));
    }
}
