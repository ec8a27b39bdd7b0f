package blankwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.drawing.Drawing;
import blankwright.drawing.Entity;
import blankwright.drawing.Layer;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.outline.Curve;
import blankwright.shop.Zones;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tucks on a flat ring between two circles: places, mouths and tips by the geometry of the circle. */
class TuckSidesMatchClosedFormTest {
    private static final double INNER = 120, OUTER = 200;
    private static final int ROUND = 720;

    /** Its form is the ring 1 % larger, so that lengths on the form and on the blank differ. */
    private static FlatMap ring() {
        TriMesh flat = Forms.grid(ROUND, 8, true, false, (u, v) -> {
            double r = INNER + (OUTER - INNER) * v;
            return new double[] {-r * Math.cos(2 * Math.PI * u), r * Math.sin(2 * Math.PI * u), 0};
        });
        double[] xyz = flat.positions(), uv = new double[2 * flat.vertexCount()];
        for (int v = 0; v < flat.vertexCount(); v++) {
            uv[2 * v] = xyz[3 * v];
            uv[2 * v + 1] = xyz[3 * v + 1];
            for (int k = 0; k < 3; k++) xyz[3 * v + k] *= 1.01;
        }
        return FlatMap.of(flat.withPositions(xyz), uv);
    }

    private static RimLoops rims(FlatMap map) {
        return RimLoops.of(map.form(), EdgeTable.of(map.form()));
    }

    private static int rim(FlatMap map, double radius) {
        RimLoops rims = rims(map);
        for (int i = 0; i < rims.count(); i++) if (Math.abs(Math.hypot(map.u(rims.loop(i)[0]), map.v(rims.loop(i)[0])) - radius) < 1) return i;
        throw new AssertionError("no rim of radius " + radius);
    }

    private static List<Curve> drawn(FlatMap map, double allowance, List<TuckMark> tucks) {
        StrainField strain = StrainField.of(map);
        BlankPiece piece = new BlankPiece("", map, VertexStrain.of(strain), Zones.of(strain), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), tucks,
                List.of());
        Drawing drawing = BlankSheet.of(new SheetNotes("ring", List.of()), List.of(piece), allowance);
        List<Curve> found = new ArrayList<>();
        for (Entity entity : drawing.entities()) if (entity.layer() == Layer.MARK && entity instanceof Entity.Polyline line) found.add(line.curve());
        for (TuckMark tuck : tucks) assertEquals(found.size() == tucks.size() ? 1 : 0, drawing.entities().stream()
                .filter(e -> e instanceof Entity.Text text && text.text().equals(tuck.name())).count(), tuck.name());
        return found;
    }

    /** On the outer edge the tip lies the depth within the circle, on the hole's the depth outside it, square to the edge at the place asked for. */
    @Test
    void mouthsAndTipsLieWhereTheyOughtTo() {
        FlatMap map = ring();
        for (double radius : new double[] {OUTER, INNER}) {
            int rim = rim(map, radius), first = rims(map).loop(rim)[0], second = rims(map).loop(rim)[1];
            double whole = rims(map).length(map.form(), rim), from = Math.atan2(map.v(first), map.u(first));
            double way = Math.signum(map.u(first) * map.v(second) - map.v(first) * map.u(second));
            for (double place : new double[] {0, 3, 0.4 * whole, whole - 2}) {
                Curve path = drawn(map, 0, List.of(new TuckMark("T1", rim, place, 19, 50))).get(0);
                assertEquals(3, path.vertexCount());
                double angle = from + way * 2 * Math.PI * place / whole, tip = radius == OUTER ? OUTER - 50 : INNER + 50;
                assertEquals(tip * Math.cos(angle), path.x(1), 0.05);
                assertEquals(tip * Math.sin(angle), path.y(1), 0.05);
                for (int end : new int[] {0, 2}) assertEquals(radius, Math.hypot(path.x(end), path.y(end)), 0.01, "on the edge");
                assertEquals(2 * radius * Math.sin(9.5 / radius), Math.hypot(path.x(2) - path.x(0), path.y(2) - path.y(0)), 0.01, "19 mm along the edge");
            }
        }
    }

    /** With metal left on, both sides go on to the cut: to a circle of 215 mm, and within the hole to one of 105 mm. */
    @Test
    void theyBeginAtTheCut() {
        FlatMap map = ring();
        for (double radius : new double[] {OUTER, INNER}) {
            Curve path = drawn(map, 15, List.of(new TuckMark("T1", rim(map, radius), 100, 19, 50))).get(0);
            assertEquals(5, path.vertexCount());
            double cut = radius == OUTER ? OUTER + 15 : INNER - 15;
            for (int end : new int[] {0, 4}) assertEquals(cut, Math.hypot(path.x(end), path.y(end)), 2 * BlankSheet.TOLERANCE);
            assertEquals(Math.hypot(path.x(3) - path.x(1), path.y(3) - path.y(1)), Math.hypot(path.x(4) - path.x(0), path.y(4) - path.y(0)), 1e-6, "side by side");
            assertEquals(radius == OUTER ? OUTER - 50 : INNER + 50, Math.hypot(path.x(2), path.y(2)), 0.05);
        }
    }

    /** 90 mm do not fit between edge and hole, which are 80 mm apart: the tip is drawn short of the hole. 400 mm are not drawn. */
    @Test
    void noneReachesIntoAHole() {
        FlatMap map = ring();
        int rim = rim(map, OUTER);
        Curve path = drawn(map, 0, List.of(new TuckMark("T1", rim, 50, 19, 90))).get(0);
        double tip = Math.hypot(path.x(1), path.y(1));
        assertTrue(tip > INNER && tip < INNER + 90 / 20.0 + 0.1, "tip at " + tip);
        assertEquals(List.of(), drawn(map, 0, List.of(new TuckMark("T1", rim, 50, 19, 400))));
    }
}
