package blankwright.mesh.cut;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.repair.Component;
import blankwright.mesh.repair.Components;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Seams drawn by hand, from points to parts. Oracles: plane geometry, a slow search over all paths, Euler numbers, sewing back. */
class ChosenSeamsTest {
    private static DrawnSeam seam(double... xyz) {
        List<DrawnSeam.Point> points = new ArrayList<>();
        for (int i = 0; i < xyz.length; i += 3) points.add(new DrawnSeam.Point(xyz[i], xyz[i + 1], xyz[i + 2]));
        return new DrawnSeam(points);
    }

    private static List<Opened> parts(TriMesh form, DrawnSeam... seams) throws UnfitSeam {
        List<int[]> paths = SeamPaths.on(form).of(List.of(seams));
        List<ChosenCut.Numbered> numbered = new ArrayList<>();
        for (int[] path : paths) numbered.add(new ChosenCut.Numbered(numbered.size() + 1, path));
        ChosenCut cut = ChosenCut.along(form, numbered);
        List<Opened> parts = new ArrayList<>();
        boolean[] seen = new boolean[form.triangleCount()];
        for (Component part : Components.of(cut.mesh())) {
            Opened opened = cut.part(CutToDisk.of(part.mesh(), Progress.NONE), part::vertexOf, part::triangleOf);
            parts.add(opened);
            assertEquals(part.mesh().triangleCount(), opened.mesh().triangleCount());
            for (int t = 0; t < opened.mesh().triangleCount(); t++) {
                int of = part.triangleOf(t);
                assertTrue(!seen[of], "triangle " + of + " is in two parts");
                seen[of] = true;
                for (int k = 0; k < 3; k++) {                        // sewn back by inForm, every triangle has its corners again
                    assertEquals(form.corner(of, k), opened.inForm(opened.mesh().corner(t, k)));
                    int sewn = opened.sewn().corner(t, k), there = opened.mesh().corner(t, k);
                    assertEquals(sewn, opened.vertexOf()[there]);
                    assertEquals(form.x(form.corner(of, k)), opened.sewn().x(sewn));
                    assertEquals(form.z(form.corner(of, k)), opened.mesh().z(there));
                }
            }
            EdgeTable edges = EdgeTable.of(opened.mesh());
            assertEquals(2 - RimLoops.of(opened.mesh(), edges).count(), Forms.euler(opened.mesh()), "a disk, perhaps with holes");
        }
        for (boolean there : seen) assertTrue(there);
        assertBothSidesMeet(form, parts, paths);
        return parts;
    }

    /** Over all parts each edge of each chosen path inside the metal is there exactly once on the left and once on the right. */
    private static void assertBothSidesMeet(TriMesh form, List<Opened> parts, List<int[]> paths) {
        for (int number = 1; number <= paths.size(); number++) {
            int[] path = paths.get(number - 1);
            int[] left = new int[path.length - 1], right = new int[path.length - 1];
            for (Opened part : parts) {
                for (Seam seam : part.seams()) {
                    if (seam.number() != number) continue;
                    assertEquals(Seam.Kind.CHOSEN, seam.kind());
                    assertArrayEquals(path, seam.path());
                    for (int i = 0; i < path.length - 1; i++) {
                        assertEquals(form.distance(path[i], path[i + 1]), seam.length(i));
                        if (seam.left(i, 0) >= 0) left[i]++;
                        if (seam.right(i, 0) >= 0) right[i]++;
                        for (int end = 0; end < 2; end++) {
                            if (seam.left(i, end) >= 0) assertEquals(path[i + end], part.inForm(seam.left(i, end)));
                            if (seam.right(i, end) >= 0) assertEquals(path[i + end], part.inForm(seam.right(i, end)));
                        }
                    }
                }
            }
            for (int i = 0; i < left.length; i++) assertTrue(left[i] == 1 && right[i] == 1, "edge " + i + " of seam " + number);
        }
    }

    @Test
    void fromRimToRimThereAreTwoParts() throws UnfitSeam {
        List<Opened> parts = parts(Forms.plate(300, 200, 30, 20), seam(100, 0, 0, 100, 200, 0));
        assertEquals(2, parts.size());
        assertEquals(200 * 200, parts.get(0).mesh().area(), 1e-6);
        assertEquals(100 * 200, parts.get(1).mesh().area(), 1e-6);
        assertEquals(200, parts.get(0).seams().get(0).length(), 1e-9);
    }

    @Test
    void aReliefCutAndASlitLeaveOnePart() throws UnfitSeam {
        List<Opened> dart = parts(Forms.plate(300, 200, 30, 20), seam(150, 0, 0, 150, 80, 0));
        assertEquals(1, dart.size());
        assertEquals(1, RimLoops.of(dart.get(0).mesh(), EdgeTable.of(dart.get(0).mesh())).count());
        List<Opened> slit = parts(Forms.plate(300, 200, 30, 20), seam(100, 100, 0, 200, 100, 0));
        assertEquals(1, slit.size());
        assertEquals(2, RimLoops.of(slit.get(0).mesh(), EdgeTable.of(slit.get(0).mesh())).count(), "a slit is a hole without width");
    }

    @Test
    void crossingSeamsMakeFourParts() throws UnfitSeam {
        assertEquals(4, parts(Forms.plate(300, 200, 30, 20), seam(100, 0, 0, 100, 200, 0), seam(0, 60, 0, 300, 60, 0)).size());
    }

    @Test
    void aRingRoundABallPartsIt() throws UnfitSeam {
        TriMesh ball = Forms.sphere(100, 3);
        List<Opened> parts = parts(ball, seam(100, 0, 0, 0, 100, 0, -100, 0, 0, 0, -100, 0, 100, 0, 0));
        assertEquals(2, parts.size());
        for (Opened part : parts) {
            assertEquals(ball.area() / 2, part.mesh().area(), 0.08 * ball.area());
            assertEquals(0, part.seams().stream().filter(s -> s.kind() == Seam.Kind.ADDED).count(), "half a ball is a disk");
        }
    }

    @Test
    void aTubeOpenedByHandNeedsNoOtherSeam() throws UnfitSeam {
        List<Opened> parts = parts(Forms.tube(50, 200, 48, 20), seam(0, 50, 0, 0, 50, 200));
        assertEquals(1, parts.size());
        assertEquals(1, parts.get(0).seams().size());
        assertEquals(200, parts.get(0).seams().get(0).length(), 1e-9);
        assertEquals(2, RimLoops.of(parts.get(0).sewn(), EdgeTable.of(parts.get(0).sewn())).count(), "sewn it is a tube again");
    }

    @Test
    void aTorusCutAcrossIsOpenedFurtherByTheProgram() throws UnfitSeam {
        List<Opened> parts = parts(Forms.torus(90, 30, 60, 24), seam(120, 0, 0, 90, 0, 30, 60, 0, 0, 90, 0, -30, 120, 0, 0));
        assertEquals(1, parts.size());
        assertTrue(parts.get(0).seams().size() >= 2);
    }

    /** Bellman 1958 and Ford 1956, no heap: every edge relaxed until nothing changes; edges of the rim are closed, touching it is dear. */
    @Test
    void pathsAgreeWithASlowSearch() throws UnfitSeam {
        Random random = new Random(12);
        for (TriMesh mesh : new TriMesh[] {Forms.sphere(100, 2), Forms.plate(300, 200, 12, 8), Forms.tube(50, 200, 12, 6)}) {
            EdgeTable edges = EdgeTable.of(mesh);
            boolean[] rim = new boolean[mesh.vertexCount()];
            for (int e = 0; e < edges.edgeCount(); e++) if (edges.right(e) < 0) rim[edges.from(e)] = rim[edges.to(e)] = true;
            SeamPaths paths = SeamPaths.on(mesh);
            for (int trial = 0; trial < 30; trial++) {
                int a = random.nextInt(mesh.vertexCount()), b = random.nextInt(mesh.vertexCount());
                if (a == b || mesh.distance(a, b) < 80) continue;
                int[] path = paths.of(List.of(seam(mesh.x(a), mesh.y(a), mesh.z(a), mesh.x(b), mesh.y(b), mesh.z(b)))).get(0);
                double[] far = new double[mesh.vertexCount()];
                Arrays.fill(far, 1e300);
                far[path[0]] = 0;
                for (boolean again = true; again; ) {
                    again = false;
                    for (int e = 0; e < edges.edgeCount(); e++) {
                        if (edges.right(e) < 0) continue;
                        int v = edges.from(e), w = edges.to(e);
                        double cost = edges.length(e) + 1e4 * ((rim[v] ? 1 : 0) + (rim[w] ? 1 : 0));
                        if (far[v] + cost < far[w] - 1e-9) {
                            far[w] = far[v] + cost;
                            again = true;
                        }
                        if (far[w] + cost < far[v] - 1e-9) {
                            far[v] = far[w] + cost;
                            again = true;
                        }
                    }
                }
                double length = 0;
                for (int i = 1; i < path.length; i++) length += mesh.distance(path[i - 1], path[i]);
                assertEquals(far[path[path.length - 1]] % 1e4, length, 1e-6, "from " + a + " to " + b);
                int[] again = paths.of(List.of(paths.drawn(path))).get(0);
                assertArrayEquals(path, again, "drawn from its path it is that path");
            }
        }
    }

    /** Ends near the rim run out to it; a point in the middle of the way does not. */
    @Test
    void endsReachTheRim() throws UnfitSeam {
        TriMesh plate = Forms.plate(300, 200, 30, 20);
        int[] path = SeamPaths.on(plate).of(List.of(seam(101, 3, 0, 99, 104, 1))).get(0);
        assertEquals(0, plate.y(path[0]));
        assertEquals(100, plate.y(path[path.length - 1]), 1e-9);
        for (int v : path) assertEquals(100, plate.x(v), 1e-9);
    }

    @Test
    void saysWhichSeamIsUnfitAndWhatToDo() {
        TriMesh plate = Forms.plate(300, 200, 30, 20);
        assertUnfit(plate, "seam 2: point 1 (0.0, 0.0, 90.0) mm lies 90.0 mm off the panel, nearest is (0.0, 0.0, 0.0) mm; give points on the form",
                seam(0, 100, 0, 300, 100, 0), seam(0, 0, 90, 50, 50, 0));
        assertUnfit(plate, "seam 1: all its points fall on one corner", seam(100, 100, 0, 101, 100, 0));
        assertUnfit(plate, "seam 1: a single edge inside the metal opens nothing", seam(100, 100, 0, 110, 100, 0));
        assertThrows(IllegalArgumentException.class, () -> seam(1, 2, 3));
        assertThrows(IllegalArgumentException.class, () -> seam(1, 2, 3, Double.NaN, 0, 0));
        double[] xyz = Arrays.copyOf(plate.positions(), 3 * plate.vertexCount() + 9);
        System.arraycopy(new double[] {400, 0, 0, 500, 0, 0, 400, 100, 0}, 0, xyz, 3 * plate.vertexCount(), 9);
        int[] tri = Arrays.copyOf(plate.corners(), 3 * plate.triangleCount() + 3);
        for (int k = 0; k < 3; k++) tri[tri.length - 3 + k] = plate.vertexCount() + k;
        assertUnfit(TriMesh.of(xyz, tri), "seam 1: no way through the metal leads from point 1 to point 2", seam(100, 100, 0, 400, 0, 0));
    }

    private static void assertUnfit(TriMesh mesh, String begins, DrawnSeam... seams) {
        String message = assertThrows(UnfitSeam.class, () -> SeamPaths.on(mesh).of(List.of(seams))).getMessage();
        assertTrue(message.startsWith(begins), message);
    }
}
