package blankwright.strain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.oracle.Patch;
import org.junit.jupiter.api.Test;

class DevelopabilityTest {
    @Test
    void rolledSheetIsDevelopable() {
        int n = 30;
        double side = 2 * 80 * Math.sin(1.0 / n) / (2.0 / n);           // the polygon's length, so that the facets are laid flat exactly
        FlatMap map = Patch.grid(n, 10, 0, 2, 0, 100, (p, q) -> new double[] {p * side, q},
                (p, q) -> new double[] {80 * Math.cos(p), 80 * Math.sin(p), -q});
        Developability found = Developability.of(StrainField.of(map));
        assertEquals(Developability.Kind.DEVELOPABLE, found.kind());
        assertEquals(0, found.largestTakeIn(), 1e-9);
        assertEquals(0, found.stretchMax(), 1e-12);
        assertTrue(found.sentence().startsWith("developable"), found.sentence());
    }

    @Test
    void strainAndRimDecide() {
        assertEquals(Developability.Kind.DEVELOPABLE, stretched(300, 1.0009).kind());
        assertEquals(Developability.Kind.NEARLY, stretched(1500, 1.0009).kind(), "1.35 mm along a side: more than a marked line is worth");
        assertEquals(Developability.Kind.NEARLY, stretched(300, 1.0011).kind());
        assertEquals(Developability.Kind.NEARLY, stretched(300, 0.9951).kind());
        assertEquals(Developability.Kind.NOT, stretched(300, 0.9949).kind());
        assertEquals(300 * 0.0051, stretched(300, 0.9949).largestTakeIn() / 2, 1e-9, "both long sides are taken in");
        assertEquals(Developability.Kind.NOT, Developability.of(StrainField.of(FlatMap.of(
                Patch.mirrored(sheet(100, 1)).form(), sheet(100, 1).positions()))).kind(), "turned over");
    }

    private static Developability stretched(double length, double factor) {
        return Developability.of(StrainField.of(sheet(length, factor)));
    }

    private static FlatMap sheet(double length, double factor) {
        return Patch.grid(10, 4, 0, length, 0, 100, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {factor * p, q, 0});
    }
}
