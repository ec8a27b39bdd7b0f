package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** A round blank against circles that are larger, turned, moved or out of round. */
class OutlineShiftMatchesClosedFormTest {
    private static final int SIDES = 360;
    private static final double R = 150;

    private interface Radius {
        double at(double angle);
    }

    private static TriMesh wheel() {
        double[] xyz = new double[3 * (SIDES + 1)];
        int[] triangles = new int[3 * SIDES];
        for (int i = 0; i < SIDES; i++) {
            xyz[3 * i + 3] = R * Math.cos(2 * Math.PI * i / SIDES);
            xyz[3 * i + 4] = R * Math.sin(2 * Math.PI * i / SIDES);
            triangles[3 * i + 1] = i + 1;
            triangles[3 * i + 2] = (i + 1) % SIDES + 1;
        }
        return TriMesh.of(xyz, triangles);
    }

    private static FlatMap blank(TriMesh form, Radius radius) {
        double[] uv = new double[2 * (SIDES + 1)];
        for (int i = 0; i < SIDES; i++) {
            double angle = 2 * Math.PI * i / SIDES;
            uv[2 * i + 2] = radius.at(angle) * Math.cos(angle);
            uv[2 * i + 3] = radius.at(angle) * Math.sin(angle);
        }
        return FlatMap.of(form, uv);
    }

    private static OutlineShift shift(FlatMap from, FlatMap to) {
        return OutlineShift.between(from, to, RimLoops.of(from.form(), EdgeTable.of(from.form())));
    }

    /** Scaled by 1 + e it lies e R farther out all round. */
    @Test
    void largerCircle() {
        TriMesh form = wheel();
        for (double e : new double[] {1e-4, -1e-3, 0.02}) {
            OutlineShift shift = shift(blank(form, a -> R), blank(form, a -> R * (1 + e)));
            assertEquals(Math.abs(e) * R, shift.largest(), 1e-9);
            assertEquals(Math.abs(e) * R, shift.rms(), 1e-9);
        }
    }

    @Test
    void turningAndMovingAreNoShift() {
        TriMesh form = wheel();
        FlatMap blank = blank(form, a -> R * (1 + 0.1 * Math.cos(2 * a) + 0.05 * Math.cos(3 * a)));
        OutlineShift shift = shift(blank, blank.moved(2.5, 700, -300));
        assertEquals(0, shift.largest(), 1e-9);
        assertEquals(0, shift(blank, blank).rms(), 1e-9);
    }

    /** Out of round by d cos 4a: d at most, d/sqrt(2) in the mean square, the largest on an axis of the pattern. */
    @Test
    void outOfRound() {
        TriMesh form = wheel();
        double d = 0.3;
        OutlineShift shift = shift(blank(form, a -> R), blank(form, a -> R + d * Math.cos(4 * a)).moved(0.7, 12, 34));
        assertEquals(d, shift.largest(), 1e-6);
        assertEquals(d / Math.sqrt(2), shift.rms(), 1e-6);
        double fromPeak = Math.abs(Math.IEEEremainder(Math.atan2(shift.v(), shift.u()), Math.PI / 4));
        assertEquals(0, fromPeak, 0.02);
    }
}
