package blankwright.mesh.cut;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.repair.Components;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ZoneSeamTest {
    private static double length(TriMesh mesh, int[] path) {
        double sum = 0;
        for (int i = 1; i < path.length; i++) sum += mesh.distance(path[i - 1], path[i]);
        return sum;
    }

    private static int[] all(TriMesh mesh) {
        return IntStream.range(0, mesh.triangleCount()).toArray();
    }

    /** The middle line of a rectangle, from end to end, is what lies farthest from its long sides. */
    @Test
    void aStripIsPartedAlongItsMiddle() {
        TriMesh strip = Forms.plate(600, 100, 60, 10);
        for (TriMesh mesh : List.of(strip, Forms.renumbered(strip, 5))) {
            int[] path = ZoneSeam.through(mesh, all(mesh)).orElseThrow();
            for (int v : path) assertEquals(50, mesh.y(v), 10.1, "one row of triangles off the middle at most");
            assertEquals(600, length(mesh, path), 0.02 * 600);
            assertEquals(600, Math.abs(mesh.x(path[0]) - mesh.x(path[path.length - 1])), 1e-9);
        }
    }

    /** Wherever the zone lies: from rim to rim, no vertex twice, and the plate falls into two. */
    @Test
    void everySeamRunsFromRimToRimAndParts() {
        Random random = new Random(3);
        TriMesh plate = Forms.plate(300, 200, 18, 12);
        EdgeTable edges = EdgeTable.of(plate);
        boolean[] onRim = new boolean[plate.vertexCount()];
        for (int e = 0; e < edges.edgeCount(); e++) if (edges.right(e) < 0) onRim[edges.from(e)] = onRim[edges.to(e)] = true;
        int found = 0;
        for (int k = 0; k < 60; k++) {
            double x = 300 * random.nextDouble(), y = 200 * random.nextDouble(), r = 10 + 60 * random.nextDouble();
            int[] zone = IntStream.range(0, plate.triangleCount()).filter(t -> Math.hypot(plate.x(plate.corner(t, 0)) - x, plate.y(plate.corner(t, 0)) - y) < r)
                    .toArray();
            Optional<int[]> seam = zone.length == 0 ? Optional.empty() : ZoneSeam.through(plate, zone);
            if (seam.isEmpty()) continue;
            found++;
            int[] path = seam.get();
            Set<Integer> seen = new HashSet<>();
            for (int i = 0; i < path.length; i++) {
                assertTrue(seen.add(path[i]), "vertex twice");
                assertEquals(i == 0 || i == path.length - 1, onRim[path[i]]);
            }
            assertEquals(2, Components.of(Cut.along(plate, List.of(path)).mesh()).size());
            assertTrue(IntStream.of(zone).anyMatch(t -> IntStream.range(0, 3).anyMatch(c -> seen.contains(plate.corner(t, c)))), "goes past its zone");
        }
        assertTrue(found > 40, found + " seams");
    }

    /** All corners of a zone at the rim: nothing lies far from an edge. */
    @Test
    void aZoneAtTheRimGetsNone() {
        TriMesh two = Forms.plate(10, 10, 1, 1);
        assertEquals(Optional.empty(), ZoneSeam.through(two, all(two)));
    }
}
