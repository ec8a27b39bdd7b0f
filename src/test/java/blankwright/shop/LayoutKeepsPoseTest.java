package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.oracle.Patch;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LayoutKeepsPoseTest {
    @Test
    void sameBlankWhateverWayThePieceCame() {
        FlatMap map = horn();
        FlatMap placed = Layout.of(List.of(map)).get(0);
        assertEquals(0, placed.box()[0], 1e-9);
        assertEquals(0, placed.box()[1], 1e-9);
        FlatMap turned = Layout.of(List.of(Patch.turnedInSpace(map, 1.3).moved(2.5, 80, -900))).get(0);
        for (int v = 0; v < map.form().vertexCount(); v++) {
            assertEquals(placed.u(v), turned.u(v), 1e-8);
            assertEquals(placed.v(v), turned.v(v), 1e-8);
        }
        FlatMap renumbered = Layout.of(List.of(Patch.renumbered(map, 2))).get(0);
        assertEquals(placed.size()[0], renumbered.size()[0], 1e-8);
        assertEquals(placed.size()[1], renumbered.size()[1], 1e-8);
        FlatMap other = Layout.of(List.of(Patch.mirrored(map))).get(0);
        for (int v = 0; v < map.form().vertexCount(); v++) {
            assertEquals(placed.u(v), other.u(v), 1e-8);
            assertEquals(placed.size()[1] - placed.v(v), other.v(v), 1e-8, "the other hand");
        }
    }

    @Test
    void centreLineRunsAlongU() {
        FlatMap map = Patch.grid(30, 12, -250, 250, -80, 80, (p, q) -> new double[] {p, q},
                (p, q) -> new double[] {p, q, 50 * Math.cos(p / 200) * Math.cos(q / 90)}).moved(0.8, 3, 4);
        FlatMap placed = Layout.of(List.of(map)).get(0);
        assertEquals(500, placed.size()[0], 1e-8);
        assertEquals(160, placed.size()[1], 1e-8);
        TapeLine centre = Stations.of(placed).centreLine().get(0);
        for (int i = 0; i < centre.pointCount(); i++) assertEquals(80, centre.v(i), 1e-8);
    }

    @Test
    void skinRolledRoundOnItselfLiesInItsSmallestRectangle() {
        FlatMap tube = Patch.grid(60, 10, 0, 2 * Math.PI, 0, 40, (p, q) -> new double[] {100 * p, q},
                (p, q) -> new double[] {100 * Math.cos(p), 100 * Math.sin(p), q}).moved(0.4, 0, 0);
        FlatMap placed = Layout.of(List.of(tube)).get(0);
        double[] size = placed.size();
        assertEquals(200 * Math.PI * 40, size[0] * size[1], 1e-6);
    }

    @Test
    void piecesKeepTheirDistanceAndTheirShape() {
        Random random = new Random(3);
        List<FlatMap> pieces = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            double length = 50 + 400 * random.nextDouble(), width = 30 + 200 * random.nextDouble();
            pieces.add(Patch.grid(5, 4, 0, length, 0, width, (p, q) -> new double[] {p, q}, (p, q) -> new double[] {p, q, 0})
                    .moved(random.nextDouble() * 6, 100, 50));
        }
        List<FlatMap> placed = Layout.of(pieces);
        for (int i = 0; i < placed.size(); i++) {
            double[] a = placed.get(i).box();
            assertEquals(pieces.get(i).area(), placed.get(i).area(), 1e-6);
            assertTrue(a[0] > -1e-9 && a[1] > -1e-9);
            for (int j = 0; j < i; j++) {
                double[] b = placed.get(j).box();
                double apart = Math.max(Math.max(a[0] - b[2], b[0] - a[2]), Math.max(a[1] - b[3], b[1] - a[3]));
                assertTrue(apart > Layout.GAP - 1e-9, i + " and " + j + " are " + apart + " mm apart");
            }
        }
        assertEquals(List.of(), Layout.of(List.of()));
    }

    private static FlatMap horn() {
        return Patch.grid(24, 16, 0, 400, -120, 120, (p, q) -> new double[] {p, q + 0.0002 * p * p},
                (p, q) -> new double[] {p, q * (1 - p / 900) + 0.1 * p, 70 * Math.cos(p / 260) * Math.cos(q / 140)});
    }
}
