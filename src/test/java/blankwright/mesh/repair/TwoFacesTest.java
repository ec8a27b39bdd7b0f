package blankwright.mesh.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Finding;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.shape.Cylinder;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A sheet drawn as a solid is noticed; a tank, and a sheet drawn by one face, are not. */
class TwoFacesTest {
    private static Optional<Finding> seen(TriMesh mesh) {
        return TwoFaces.seen(Components.of(mesh));
    }

    private static TriMesh plate(double length, double width, double thickness, double awayFromOrigin) {
        boolean[][][] full = new boolean[8][6][3];          // cells on the border of the block stay empty
        for (int i = 1; i <= 6; i++) for (int j = 1; j <= 4; j++) full[i][j][1] = true;
        TriMesh cells = Forms.cells(full);
        double[] xyz = cells.positions(), scale = {length / 6, width / 4, thickness};
        for (int i = 0; i < xyz.length; i++) xyz[i] = awayFromOrigin + xyz[i] * scale[i % 3];
        return cells.withPositions(xyz);
    }

    /** Volume by skin: t / (1 + t/a + t/b), 1.58 mm here. */
    @Test
    void aPlateIsAsThickAsItsVolumeSays() {
        for (double away : new double[] {0, 1e6}) {
            Finding finding = seen(plate(300, 200, 1.6, away)).orElseThrow();
            assertEquals(Finding.Kind.TWO_FACES, finding.kind());
            assertEquals(1, finding.count());
            assertTrue(finding.text().startsWith("1 part is closed and about 1.6 mm thick"), finding.text());
            assertTrue(finding.text().contains("export one face alone"), finding.text());
        }
        assertTrue(seen(plate(60, 40, 2, 0)).isPresent());
    }

    @Test
    void alsoWhenItIsBentRoundAndTurnedInsideOut() {
        TriMesh band = Forms.grid(60, 40, true, true, (u, v) -> {
            double r = v < 0.45 ? 150 : v < 0.5 ? 150 - 1.2 * (v - 0.45) / 0.05 : v < 0.95 ? 148.8 : 148.8 + 1.2 * (v - 0.95) / 0.05;
            double h = v < 0.45 ? 90 * v / 0.45 : v < 0.5 ? 90 : v < 0.95 ? 90 * (0.95 - v) / 0.45 : 0;
            return new double[] {r * Math.cos(2 * Math.PI * u), r * Math.sin(2 * Math.PI * u), h};
        });
        int[] corners = band.corners();
        for (int t = 0; t < corners.length; t += 3) {
            int c = corners[t + 1];
            corners[t + 1] = corners[t + 2];
            corners[t + 2] = c;
        }
        for (TriMesh way : List.of(band, TriMesh.of(band.positions(), corners)))
            assertTrue(seen(way).orElseThrow().text().contains("about 1.2 mm thick"), seen(way).toString());
    }

    @Test
    void eachPartCounts() {
        TriMesh one = plate(300, 200, 1.6, 0), other = plate(100, 80, 1, 500);
        double[] xyz = Arrays.copyOf(one.positions(), 3 * (one.vertexCount() + other.vertexCount()));
        System.arraycopy(other.positions(), 0, xyz, 3 * one.vertexCount(), 3 * other.vertexCount());
        int[] corners = Arrays.copyOf(one.corners(), 3 * (one.triangleCount() + other.triangleCount()));
        for (int i = 0; i < 3 * other.triangleCount(); i++) corners[3 * one.triangleCount() + i] = other.corners()[i] + one.vertexCount();
        assertEquals(2, seen(TriMesh.of(xyz, corners)).orElseThrow().count());
    }

    @Test
    void notATankNorASingleFace() {
        assertEquals(Optional.empty(), seen(Forms.sphere(100, 3)));
        assertEquals(Optional.empty(), seen(Forms.cube(4)));
        assertEquals(Optional.empty(), seen(Forms.plate(300, 200, 6, 4)));
        assertEquals(Optional.empty(), seen(new Cylinder(60, 10, 2 * Math.PI, Cylinder.Ends.BOTH).mesh()), "a flat tin");
        assertEquals(Optional.empty(), seen(plate(900, 900, 12, 0)), "thicker than sheet");
        assertEquals(Optional.empty(), seen(Forms.without(plate(300, 200, 1.6, 0), t -> t == 3)), "open");
    }
}
