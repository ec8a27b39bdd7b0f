package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.oracle.Patch;
import blankwright.strain.StrainField;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Sheet bent along a line by a turn put in by hand: turn(p) is the direction of the skin at p of the blank, and the form its sum. */
class FoldMatchesClosedFormTest {
    /** Direction of the skin, rad, at p mm of the way across. */
    private interface Turn {
        double at(double p);
    }

    /** Of 200 by 300 mm; positive turns bulge the outside face. */
    private static FlatMap bent(int across, int along, Turn turn) {
        double side = 200.0 / across;
        double[] x = new double[across + 1], z = new double[across + 1];
        for (int i = 0; i < across; i++) {
            double way = turn.at((i + 0.5) * side);
            x[i + 1] = x[i] + side * Math.cos(way);
            z[i + 1] = z[i] - side * Math.sin(way);
        }
        return Patch.grid(across, along, 0, 200, 0, 300, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {x[(int) Math.round(p / side)], q, z[(int) Math.round(p / side)]});
    }

    private static Fold only(FlatMap map) {
        List<Fold> folds = Fold.of(map);
        assertEquals(1, folds.size(), folds.toString());
        return folds.get(0);
    }

    /** A square bracket was told to be rolled to 23 to 2658 mm. */
    @Test
    void aSharpFoldIsNoRoll() {
        for (double degrees : new double[] {90, -90, 45, 120}) {
            FlatMap map = bent(20, 30, p -> p < 80 ? 0 : Math.toRadians(degrees));
            for (FlatMap same : List.of(map, Patch.renumbered(map, 5), Patch.turnedInSpace(map, 1))) {
                Fold fold = only(same);
                assertEquals(Math.abs(degrees), Math.toDegrees(fold.angle()), 1e-6);
                assertEquals(degrees > 0, fold.outward());
                assertEquals(0, fold.radius(), 0);
                assertEquals(80, fold.u1(), 1e-9);
                assertEquals(80, fold.u2(), 1e-9);
                assertEquals(300, fold.length(), 1e-9);
                assertEquals(List.of(), RolledArea.of(StrainField.of(same), 50));
            }
        }
        assertEquals("fold 2: 90° down, sharp", only(bent(20, 30, p -> p < 80 ? 0 : Math.PI / 2)).words(2));
    }

    /** A quarter turn about R 8, 12.57 mm of sheet in twelve sides. */
    @Test
    void aBendOfASmallRadiusIsAFoldAboutIt() {
        FlatMap map = bent(200, 60, p -> p < 100 ? 0 : p > 100 + 4 * Math.PI ? Math.PI / 2 : (p - 100) / 8);
        Fold fold = only(map);
        assertEquals(90, Math.toDegrees(fold.angle()), 0.5);
        assertEquals(8, fold.radius(), 0.8);
        assertEquals(100 + 2 * Math.PI, fold.u1(), 1);
        assertEquals(300, fold.length(), 1e-9);
        assertTrue(fold.words(1).matches("fold 1: 90° down, R [78]\\.\\d"), fold.words(1));
        assertEquals(List.of(), RolledArea.of(StrainField.of(map), 50));
    }

    /** A hat: four folds, two each way; the flats between are bent nowhere. */
    @Test
    void everyFoldHasItsOwnLine() {
        FlatMap map = bent(20, 30, p -> p < 40 ? 0 : p < 80 ? -Math.PI / 2 : p < 120 ? 0 : p < 160 ? Math.PI / 2 : 0);
        List<Fold> folds = Fold.of(map);
        assertEquals(4, folds.size());
        double[] places = folds.stream().mapToDouble(Fold::u1).sorted().toArray();
        for (int i = 0; i < 4; i++) assertEquals(40 * (i + 1), places[i], 1e-9);
        assertEquals(2, folds.stream().filter(Fold::outward).count());
        assertEquals(List.of(), RolledArea.of(StrainField.of(map), 50));
    }

    /** Closed form: rolled all over, in sides of 6 to 36 degrees, about any radius: no line of it is a fold. */
    @Test
    void aRollIsNoFold() {
        for (double radius : new double[] {40, 64, 150})
            for (int across : new int[] {10, 20, 60}) {
                if (200.0 / across / radius > Math.toRadians(36)) continue;
                FlatMap map = bent(across, 30, p -> p / radius);
                assertEquals(List.of(), Fold.of(map), radius + " in " + across);
                assertEquals(1, RolledArea.of(StrainField.of(map), 50).size(), radius + " in " + across);
            }
    }

    /** A quarter turn about R 60, and a fold of 70 degrees beside it: each is told by itself. */
    @Test
    void aFoldBesideARollTakesNothingFromIt() {
        FlatMap map = bent(100, 60, p -> (p < 40 ? 0 : Math.toRadians(70)) + Math.max(0, Math.min(Math.PI / 2, (p - 90) / 60)));
        assertEquals(70, Math.toDegrees(only(map).angle()), 0.5);
        List<RolledArea> rolls = RolledArea.of(StrainField.of(map), 50);
        assertEquals(1, rolls.size());
        assertEquals(60, rolls.get(0).start().radius1(), 4);
        assertEquals(30 * Math.PI, rolls.get(0).way(), 6);
    }

    /** 0.05 mm of noise on sides of 5 mm turn edges by two degrees, and by forty where triangles are slivers: none of it is a fold. */
    @Test
    void aRoughScanHasNoFolds() {
        Random random = new Random(4);
        FlatMap flat = bent(40, 60, p -> p / 300);
        double[] xyz = flat.form().positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] += 0.05 * random.nextGaussian();
        assertEquals(List.of(), Fold.of(FlatMap.of(flat.form().withPositions(xyz), flat.positions())));
        for (int i = 0; i < xyz.length; i++) xyz[i] += 0.5 * random.nextGaussian();
        assertEquals(List.of(), Fold.of(FlatMap.of(flat.form().withPositions(xyz), flat.positions())));
    }

    /** An edge that is turned over has no skin beyond it to be folded; nor has a bend shorter than a tool. */
    @Test
    void whatIsNoLineToFoldByIsLeftOut() {
        assertEquals(List.of(), Fold.of(bent(100, 60, p -> p < 198 ? 0 : Math.PI / 2)));
        FlatMap dent = Patch.grid(20, 20, 0, 200, 0, 200, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p, q, Math.hypot(p - 100, q - 100) < 12 ? -20 : 0});
        assertFalse(Fold.of(dent).stream().anyMatch(fold -> fold.length() < 30), "a dent of one corner");
    }
}
