package blankwright.mesh.query;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Sections against every triangle asked on its own, and against circles and lines we can write down. */
class PlaneSectionAgreesWithBruteForceTest {
    private static PlaneSection cut(TriMesh mesh, double[] point, double... normal) {
        return PlaneSection.of(mesh, EdgeTable.of(mesh), point, normal);
    }

    /** Sum of what each triangle with corners on both sides has in the plane. */
    private static double slowLength(TriMesh mesh, double[] p, double[] n) {
        double sum = 0;
        for (int t = 0; t < mesh.triangleCount(); t++) {
            double[][] at = new double[2][];
            int found = 0;
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k), w = mesh.corner(t, (k + 1) % 3);
                double hv = (mesh.x(v) - p[0]) * n[0] + (mesh.y(v) - p[1]) * n[1] + (mesh.z(v) - p[2]) * n[2];
                double hw = (mesh.x(w) - p[0]) * n[0] + (mesh.y(w) - p[1]) * n[1] + (mesh.z(w) - p[2]) * n[2];
                if (hv > 0 == hw > 0) continue;
                double s = hv / (hv - hw);
                at[found++] = new double[] {mesh.x(v) + s * (mesh.x(w) - mesh.x(v)), mesh.y(v) + s * (mesh.y(w) - mesh.y(v)),
                    mesh.z(v) + s * (mesh.z(w) - mesh.z(v))};
            }
            if (found == 2) sum += Math.hypot(Math.hypot(at[0][0] - at[1][0], at[0][1] - at[1][1]), at[0][2] - at[1][2]);
        }
        return sum;
    }

    private static void soundAndInPlane(TriMesh mesh, PlaneSection section, double[] p, double[] n) {
        for (PlaneSection.Chain chain : section.chains()) {
            for (SkinPoint s : chain.points()) {
                double[] q = s.on(mesh);
                assertEquals(0, (q[0] - p[0]) * n[0] + (q[1] - p[1]) * n[1] + (q[2] - p[2]) * n[2], 1e-8);
                assertEquals(1, s.a() + s.b() + s.c(), 1e-15);
                assertTrue(s.a() >= 0 && s.b() >= 0 && s.c() >= 0);
            }
            for (int i = 1; i < chain.pieces(); i++) near(chain.end(i - 1).on(mesh), chain.start(i).on(mesh));
            if (chain.closed()) near(chain.start(0).on(mesh), chain.end(chain.pieces() - 1).on(mesh));
        }
    }

    private static void near(double[] p, double[] q) {
        for (int k = 0; k < 3; k++) assertEquals(p[k], q[k], 1e-9);
    }

    @Test
    void randomPlanesThroughRandomForms() {
        Random random = new Random(3);
        TriMesh[] forms = {Forms.sphere(100, 3), Forms.torus(90, 30, 40, 20), Forms.tube(50, 200, 24, 10), Forms.plate(300, 200, 12, 9),
            Forms.cells(Forms.randomCells(7, 0.4, 1))};
        int closed = 0, open = 0;
        for (int i = 0; i < 500; i++) {
            TriMesh mesh = forms[i % forms.length];
            double[] n = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
            for (int k = 0; k < 3; k++) n[k] /= length;
            int v = random.nextInt(mesh.vertexCount());
            boolean throughVertex = i % 3 == 0;
            double[] p = {mesh.x(v), mesh.y(v), mesh.z(v)};
            if (!throughVertex) for (int k = 0; k < 3; k++) p[k] += random.nextGaussian();
            PlaneSection section = cut(mesh, p, n);
            soundAndInPlane(mesh, section, p, n);
            double slow = slowLength(mesh, p, n);
            assertEquals(slow, section.length(), 1e-9 * (1 + slow));
            for (PlaneSection.Chain chain : section.chains()) if (chain.closed()) closed++; else open++;
        }
        assertTrue(closed > 100 && open > 100, closed + " closed, " + open + " open");
    }

    /** Circle of radius sqrt(R² - h²) in a ball; halving the size quarters the error. */
    @Test
    void aBallIsCutInCirclesAtOrderTwo() {
        for (double h : new double[] {0, 37.3}) {
            double before = 0, circle = 2 * Math.PI * Math.sqrt(100 * 100 - h * h);
            for (int level = 2; level <= 5; level++) {
                TriMesh ball = Forms.sphere(100, level);
                PlaneSection section = cut(ball, new double[] {0, 0, h}, 0, 0, 1);
                assertEquals(1, section.chains().size());
                assertTrue(section.chains().get(0).closed());
                double off = Math.abs(section.length() - circle);
                if (before > 0) assertTrue(off < before / 3.2, level + ": " + off + " after " + before);
                before = off;
            }
        }
    }

    /** All these planes run along edges and through vertices of a cube of side 6. */
    @Test
    void planesThroughVerticesAndAlongEdgesLeaveNoGapAndNothingTwice() {
        TriMesh cube = Forms.cube(6);                           // from 1 to 7
        double[][] normals = {{1, 0, 0}, {0, 1, 0}, {0, 0, -1}, {1, 1, 0}, {0, 1, -1}, {1, 1, 1}, {1, -1, 1}};
        double root = Math.sqrt(2);
        double[] lengths = {24, 24, 24, 12 + 12 * root, 12 + 12 * root, 18 * root, 18 * root};   // squares, rectangles, regular hexagons
        for (int i = 0; i < normals.length; i++) {
            PlaneSection section = cut(cube, new double[] {4, 4, 4}, normals[i]);
            assertEquals(1, section.chains().size());
            assertTrue(section.chains().get(0).closed());
            assertEquals(lengths[i], section.length(), 1e-12);
        }
    }

    @Test
    void touchingCutsNothingAndARimIsCut() {
        TriMesh body = Forms.octahedron();
        assertEquals(0, cut(body, new double[] {1, 0, 0}, 1, 0, 0).chains().size());
        assertEquals(0, cut(body, new double[] {1, 0, 0}, 1, 1, 0).chains().size());          // a whole ridge
        assertEquals(0, cut(body, new double[] {1, 0, 0}, -1, -1, 0).chains().size());
        assertEquals(4 * Math.sqrt(2), cut(body, new double[3], 0, 0, 1).length(), 1e-15);
        TriMesh plate = Forms.plate(300, 200, 12, 9);
        assertEquals(0, cut(plate, new double[3], 0, 0, 1).chains().size());
        for (double side : new double[] {1, -1}) {
            assertEquals(200, cut(plate, new double[3], side, 0, 0).length(), 1e-12);
            assertEquals(200, cut(plate, new double[] {300, 0, 0}, side, 0, 0).length(), 1e-12);
            assertEquals(200, cut(plate, new double[] {25, 0, 0}, side, 0, 0).length(), 1e-12);
        }
        assertThrows(IllegalArgumentException.class, () -> cut(plate, new double[3], 0, 0, 0));
    }

    @Test
    void aFlatAreaInThePlaneIsCutAlongItsLowerBorder() {
        TriMesh cube = Forms.cube(6);
        PlaneSection top = cut(cube, new double[] {0, 0, 7}, 0, 0, 1);
        assertEquals(1, top.chains().size());
        assertTrue(top.chains().get(0).closed());
        assertEquals(24, top.length(), 1e-12);
        assertEquals(0, cut(cube, new double[] {0, 0, 7}, 0, 0, -1).chains().size());
    }

    @Test
    void theUpperSideIsOnTheLeft() {
        TriMesh plate = Forms.plate(300, 200, 12, 9);
        double[] line = cut(plate, new double[] {0, 77, 0}, 0, 1, 0).chains().get(0).on(plate);
        assertEquals(0, line[0]);
        assertEquals(300, line[line.length - 3]);
    }

    /** A quarter tube laid flat by its arc length: stations come out straight where they must. */
    @Test
    void sectionsAreCarriedToTheBlank() {
        double r = 100;
        TriMesh shell = Forms.grid(20, 16, false, false, (u, v) -> new double[] {r * Math.sin(Math.PI / 2 * u), 300 * v, r * Math.cos(Math.PI / 2 * u)});
        double chord = 2 * r * Math.sin(Math.PI / 80);
        double[] uv = new double[2 * shell.vertexCount()];
        for (int i = 0; i < shell.vertexCount(); i++) {
            uv[2 * i] = chord * (i % 21);
            uv[2 * i + 1] = shell.y(i);
        }
        PlaneSection section = cut(shell, new double[] {0, 123.4, 0}, 0, 1, 0);
        List<double[]> lines = section.carried(FlatMap.of(shell, uv));
        assertEquals(1, lines.size());
        double[] line = lines.get(0);
        for (int i = 1; i < line.length; i += 2) assertEquals(123.4, line[i], 1e-12);
        assertEquals(section.length(), Math.abs(line[line.length - 2] - line[0]), 1e-10);
    }

    /** Same triangles, but joined at the ends on the form and not on the blank. */
    @Test
    void aSectionAcrossASeamComesInTwoLines() {
        TriMesh tube = Forms.tube(50, 200, 24, 10), sheet = Forms.grid(24, 10, false, false, (u, v) -> {
            double a = 2 * Math.PI * u;
            return new double[] {50 * Math.cos(a), 50 * Math.sin(a), 200 * v};
        });
        double[] uv = new double[2 * sheet.vertexCount()];
        for (int i = 0; i < sheet.vertexCount(); i++) {
            uv[2 * i] = 13 * (i % 25);
            uv[2 * i + 1] = sheet.z(i);
        }
        PlaneSection section = cut(tube, new double[] {0, 0, 77}, 0, 0, 1);
        assertTrue(section.chains().get(0).closed());
        List<double[]> lines = section.carried(FlatMap.of(sheet, uv));
        double sum = 0;
        for (double[] line : lines) {
            for (int i = 2; i < line.length; i += 2) assertTrue(Math.abs(line[i] - line[i - 2]) < 14, "jumps across the seam");
            sum += Math.abs(line[line.length - 2] - line[0]);
        }
        assertEquals(2, lines.size());
        assertEquals(24 * 13, sum, 1e-9);
    }

    /** The plane lies alike to both halves, runs through vertices and touches the inner ring: chains that start in one place, points alike. */
    @Test
    void numberingDoesNotMatterToTheLastBitInASymmetricForm() {
        TriMesh torus = Forms.torus(90, 30, 40, 20), ball = Forms.sphere(100, 3);
        for (TriMesh mesh : new TriMesh[] {torus, ball})
            for (double[] plane : new double[][] {{0, 1, 0, 0}, {60, 1, 0, 0}, {0, 0, 0, 1}, {13, 0, 1, 0}, {0, 1, 1, 0}})
                for (int seed = 0; seed < 5; seed++) {
                    TriMesh other = Forms.renumbered(mesh, seed);
                    double[] p = {plane[0] * plane[1], plane[0] * plane[2], plane[0] * plane[3]};
                    PlaneSection one = cut(mesh, p, plane[1], plane[2], plane[3]), two = cut(other, p, plane[1], plane[2], plane[3]);
                    assertEquals(one.chains().size(), two.chains().size());
                    for (int i = 0; i < one.chains().size(); i++)
                        assertArrayEquals(one.chains().get(i).on(mesh), two.chains().get(i).on(other));
                }
    }

    @Test
    void numberingDoesNotMatter() {
        TriMesh torus = Forms.torus(90, 30, 40, 20), other = Forms.renumbered(torus, 8);
        PlaneSection one = cut(torus, new double[] {3, 0, 0}, 1, 0.3, 0.1), two = cut(other, new double[] {3, 0, 0}, 1, 0.3, 0.1);
        assertEquals(one.chains().size(), two.chains().size());
        for (int i = 0; i < one.chains().size(); i++) {
            double[] p = one.chains().get(i).on(torus), q = two.chains().get(i).on(other);
            assertEquals(p.length, q.length);
            for (int k = 0; k < p.length; k++) assertEquals(p[k], q[k], 1e-10);
        }
    }
}
