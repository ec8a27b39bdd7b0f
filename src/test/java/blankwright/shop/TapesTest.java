package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.oracle.Patch;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Tapes on a flat panel of 200 by 50 mm parted at x = 100: the right piece lies 300 mm farther off on the blank, longer by a tenth. */
class TapesTest {
    private static final FlatMap LEFT = Patch.grid(10, 5, 0, 100, 0, 50, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {p, q, 3});
    private static final FlatMap RIGHT = Patch.grid(10, 5, 100, 200, 0, 50, (p, q) -> new double[] {300 + 1.1 * p, q},
            (p, q) -> new double[] {p, q, 3});
    private static final Tapes TAPES = Tapes.on(List.of(LEFT, RIGHT));

    private static Optional<Tapes.Laid> lay(double x0, double x1, boolean onBlank) {
        return TAPES.lay("T1", new DrawnTape(x0, 22, 3, x1, 22, 3, onBlank));
    }

    @Test
    void placesAreFoundOnTheNearestPiece() {
        assertEquals(0, TAPES.nearest(99, 20, 5).piece());
        assertEquals(1, TAPES.nearest(101, 20, 5).piece());
        assertEquals(0, TAPES.nearest(100, 20, 3).piece(), "as near to both: the first");
        double[] at = TAPES.nearest(131, 20, 40).at().on(RIGHT);
        assertEquals(300 + 1.1 * 131, at[0], 1e-9);
        assertEquals(20, at[1], 1e-9);
        assertThrows(IllegalArgumentException.class, () -> Tapes.on(List.of()));
    }

    /** Whichever piece comes first, a seam's edge belongs to both. */
    @Test
    void aTapeFromASeamLiesOnThePieceOfItsOtherEnd() {
        for (boolean onBlank : new boolean[] {true, false}) {
            for (double seam : new double[] {99.9995, 100, 100.0005}) {         // as it is kept: to a thousandth
                Tapes.Laid left = lay(seam, 40, onBlank).orElseThrow(), right = lay(160, seam, onBlank).orElseThrow();
                assertEquals(0, left.piece());
                assertEquals(60, left.line().formLength(), 1e-3);
                assertEquals(60, left.line().blankLength(), 1e-3);
                assertEquals(1, right.piece());
                assertEquals(60, right.line().formLength(), 1e-3);
                assertEquals(66, right.line().blankLength(), 1e-3);
            }
        }
        assertEquals(0, TAPES.lay("along", new DrawnTape(100, 5, 3, 100, 45, 3, true)).orElseThrow().piece());
    }

    @Test
    void noTapeFromPieceToPiece() {
        assertTrue(lay(60, 140, true).isEmpty());
        assertTrue(lay(60, 140, false).isEmpty());
        assertTrue(lay(99.9, 140, false).isEmpty(), "beside a seam is not on it");
        assertTrue(lay(140, 140, true).isEmpty(), "one place");
        assertEquals("T1", lay(120, 140, false).orElseThrow().line().name());
    }
}
