package blankwright.mesh.cut;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.AngleDefect;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeCost;
import blankwright.num.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** Every connected form comes out as a disk with the holes that may stay, and can be sewn up again. */
class CutToDiskGivesDisksTest {
    /** Opens, checks all that holds for every form, and gives what came out. */
    static Opened opened(TriMesh mesh, int holes) {
        Opened opened = CutToDisk.of(mesh, Progress.NONE);
        TriMesh disk = opened.mesh();
        EdgeTable edges = EdgeTable.of(disk);
        assertEquals(1 - holes, Forms.euler(disk));
        assertEquals(1 + holes, RimLoops.of(disk, edges).count());
        assertEquals(1, Forms.parts(disk).size());
        assertArrayEquals(mesh.corners(), opened.sewn().corners());
        assertArrayEquals(mesh.positions(), opened.sewn().positions());
        assertEquals(2 * Math.PI * (1 - holes), AngleDefect.of(disk, edges).sum(), 1e-7);
        double before = 0, after = 0;
        for (int t = 0; t < mesh.triangleCount(); t++)
            for (int k = 0; k < 3; k++) {
                before += mesh.angle(t, k);
                after += disk.angle(t, k);
            }
        assertEquals(before, after, "sum of angles");
        int[] vertexOf = opened.vertexOf();
        for (Seam seam : opened.seams()) {
            int[] path = seam.path();
            for (int i = 0; i < seam.edgeCount(); i++)
                for (int end = 0; end < 2; end++) {
                    assertEquals(path[i + end], vertexOf[seam.left(i, end)]);
                    assertEquals(path[i + end], vertexOf[seam.right(i, end)]);
                }
        }
        long added = opened.findings().stream().filter(f -> f.kind() == Finding.Kind.SEAM_ADDED).mapToLong(Finding::count).sum();
        assertEquals(opened.seams().size(), added);
        return opened;
    }

    private static double seamLength(Opened opened) {
        return opened.seams().stream().mapToDouble(Seam::length).sum();
    }

    @Test
    void aDiskStaysAsItIs() {
        TriMesh plate = Forms.plate(300, 200, 12, 9);
        Opened opened = opened(plate, 0);
        assertEquals(0, opened.seams().size());
        assertEquals(List.of(), opened.findings());
        assertArrayEquals(plate.corners(), opened.mesh().corners());
    }

    @Test
    void aTubeIsOpenedStraightAlong() {
        Opened opened = opened(Forms.tube(50, 200, 48, 20), 0);
        assertEquals(1, opened.seams().size());
        assertEquals(200, seamLength(opened), 1e-9);
        assertTrue(opened.findings().get(0).text().startsWith("opened along 200.0 mm from ("), opened.findings().get(0).text());
    }

    @Test
    void aSteepConeRingIsOpenedAndAFlatOneIsNot() {
        for (double degrees : new double[] {30, 85}) {
            double q = Math.toRadians(degrees);
            TriMesh ring = Forms.turned(60, 12, w -> new double[] {Math.sin(q) * (400 - 300 * w), Math.cos(q) * (300 * w)});
            Opened opened = opened(ring, degrees == 30 ? 0 : 1);
            assertEquals(degrees == 30 ? 300 : 0, seamLength(opened), 1e-9);
        }
    }

    @Test
    void aFlatAnnulusStaysAnAnnulus() {
        assertEquals(0, opened(Forms.turned(36, 4, w -> new double[] {100 - 50 * w, 0}), 1).seams().size());
    }

    @Test
    void aWavyHoleLongerThanTheOuterRimIsStillAHole() {
        TriMesh cog = Forms.grid(480, 4, true, false, (u, v) -> {
            double a = -2 * Math.PI * u, r = 100 * v + (1 - v) * (60 + 25 * Math.cos(40 * a));
            return new double[] {r * Math.cos(a), r * Math.sin(a), 0};
        });
        assertEquals(0, opened(cog, 1).seams().size());
    }

    @Test
    void aBallWithSmallOpeningsIsBranchedLikeAClosedOne() {
        TriMesh ball = Forms.sphere(100, 4);
        Opened one = opened(Forms.holed(ball, 15, new double[] {0, 0, 100}), 0);
        Opened three = opened(Forms.holed(ball, 15, new double[] {0, 0, 100}, new double[] {0, 80, 60}, new double[] {99, 0, -14}), 2);
        assertTrue(one.seams().size() > 3 && three.seams().size() > 3);
        assertEquals(0, opened(Forms.without(ball, t -> Forms.middle(ball, t)[2] < -60), 0).seams().size());     // a deep bowl is not
    }

    @Test
    void aPlateKeepsItsManyHoles() {
        TriMesh plate = Forms.plate(400, 400, 200, 200);
        List<double[]> places = new ArrayList<>();
        for (int i = 1; i < 20; i++) for (int j = 1; j < 20; j++) places.add(new double[] {20 * i, 20 * j, 0});
        Opened opened = opened(Forms.holed(plate, 4.1, places.toArray(double[][]::new)), 361);
        assertEquals(0, opened.seams().size());
        assertEquals(361, opened.findings().get(0).count());
        assertEquals(Finding.Kind.HOLES, opened.findings().get(0).kind());
    }

    /** A hole of radius 50 with a flange turned up 12 mm over a bend of 4 mm, in a round plate of radius 150. */
    @Test
    void aFlangedHoleStaysAHole() {
        TriMesh plate = Forms.turned(72, 40, CutToDiskGivesDisksTest::flanged);
        assertEquals(0, opened(plate, 1).seams().size());
    }

    /** Along the profile: flat from 150 to 54, a quarter bend of 4 mm, then 8 mm straight up at radius 50. */
    private static double[] flanged(double w) {
        double flat = 0.5, bend = 0.8;
        if (w <= flat) return new double[] {150 - 96 * w / flat, 0};
        if (w <= bend) {
            double a = Math.PI / 2 * (w - flat) / (bend - flat);
            return new double[] {54 - 4 * Math.sin(a), 4 - 4 * Math.cos(a)};
        }
        return new double[] {50, 4 + 8 * (w - bend) / (1 - bend)};
    }

    @Test
    void aDeepNeckIsATube() {
        TriMesh neck = Forms.turned(72, 60, w -> w < 0.5 ? new double[] {150 - 200 * w, 0} : new double[] {50, 240 * (w - 0.5)});
        assertEquals(1, opened(neck, 0).seams().size());
    }

    @Test
    void aTubeKeepsItsSideHolesAndTheSeamKeepsOffThem() {
        TriMesh tube = Forms.tube(100, 400, 120, 80);
        double[][] places = new double[24][];
        for (int i = 0; i < places.length; i++)
            places[i] = new double[] {100 * Math.cos(i * Math.PI / 4), 100 * Math.sin(i * Math.PI / 4), 80 + 120 * (i / 8)};
        TriMesh drilled = Forms.holed(tube, 25, places);
        Opened opened = opened(drilled, 24);
        assertEquals(1, opened.seams().size());
        assertEquals(400, seamLength(opened), 1e-6);
    }

    @Test
    void aSeamRunsIntoAHoleOnlyWhereThereIsNoWayRound() {
        TriMesh tube = Forms.tube(100, 200, 16, 16);
        TriMesh barred = Forms.without(tube, t -> t / 32 == 8 && t / 2 % 2 == 0);       // every second cell of one row
        Opened opened = opened(barred, 7);
        assertEquals(2, opened.seams().size());
        assertTrue(opened.findings().stream().anyMatch(f -> f.text().contains("no way round a hole")));
    }

    @Test
    void closedSkinsBecomeDisks() {
        opened(Forms.tetrahedron(), 0);
        opened(Forms.octahedron(), 0);
        opened(Forms.icosahedron(), 0);
        opened(Forms.cube(1), 0);
        Opened cube = opened(Forms.cube(10), 0);
        AngleDefect defect = AngleDefect.of(cube.mesh(), EdgeTable.of(cube.mesh()));
        for (int v = 0; v < cube.mesh().vertexCount(); v++) if (!defect.onRim(v)) assertEquals(0, defect.defect(v), 1e-12, "a corner left whole");
        assertTrue(cube.seams().size() <= 8);
        boolean[][][] box = new boolean[22][10][6];
        for (int x = 1; x <= 20; x++) for (int y = 1; y <= 8; y++) for (int z = 1; z <= 4; z++) box[x][y][z] = true;
        assertTrue(opened(Forms.cells(box), 0).seams().size() <= 7);
        Opened ball = opened(Forms.sphere(100, 4), 0);
        assertTrue(ball.seams().size() > 3 && ball.seams().size() <= 13, ball.seams().size() + " seams");
    }

    @Test
    void handlesAreOpened() {
        Opened torus = opened(Forms.torus(90, 30, 60, 24), 0);
        double meridian = 24 * 2 * 30 * Math.sin(Math.PI / 24), inner = 60 * 2 * 60 * Math.sin(Math.PI / 60);
        assertEquals(meridian + inner, seamLength(torus), 1e-9, "once round the tube and along its inner side, no shorter way");
        boolean[][][] eight = new boolean[11][7][5];
        for (int x = 1; x <= 9; x++) for (int y = 1; y <= 5; y++) for (int z = 1; z <= 3; z++) eight[x][y][z] = true;
        for (int z = 1; z <= 3; z++) eight[3][3][z] = eight[7][3][z] = false;
        TriMesh pretzel = Forms.cells(eight);
        assertEquals(-2, Forms.euler(pretzel));
        opened(pretzel, 0);
    }

    /** No exchange of one path for another makes the cut of a pretzel shorter, and none before it was. */
    @Test
    void handleCutsAreShortened() {
        boolean[][][] eight = new boolean[22][14][6];
        for (int x = 0; x < 20; x++)
            for (int y = 0; y < 12; y++)
                for (int z = 0; z < 4; z++) eight[x + 1][y + 1][z + 1] = !(y >= 4 && y < 8 && (x >= 4 && x < 8 || x >= 12 && x < 16));
        TriMesh pretzel = Forms.cells(eight);
        EdgeTable edges = EdgeTable.of(pretzel);
        Opened opened = CutToDisk.of(pretzel, edges, EdgeCost.length(edges), Progress.NONE);
        double handles = opened.seams().stream().filter(s -> s.reason().equals("handle")).mapToDouble(Seam::length).sum();
        assertTrue(handles <= 4 * 16, handles + " mm: each of two handles goes once round a bar of 4 by 4 and once round its hole of 4 by 4");
    }

    @Test
    void handlesWithRimsAndHoles() {
        TriMesh torus = Forms.torus(90, 30, 120, 60);
        for (int holes = 1; holes <= 9; holes++) {
            double[][] places = new double[holes][];
            for (int i = 0; i < holes; i++) {
                double a = 2 * Math.PI * i / holes + 0.1;
                places[i] = new double[] {120 * Math.cos(a), 120 * Math.sin(a), 0};
            }
            opened(Forms.holed(torus, 6, places), holes - 1);
        }
    }

    @Test
    void randomSkinsOfAnyGenusWithAndWithoutHolesBecomeDisks() {
        int handles = 0, forms = 0;
        for (int seed = 0; seed < 100; seed++) {
            int n = 3 + seed % 9;
            TriMesh all = Forms.cells(Forms.randomCells(n, 0.15 + 0.3 * (seed % 7) / 7, seed));
            for (TriMesh part : Forms.parts(all)) {
                handles += (2 - Forms.euler(part)) / 2;
                forms++;
                anyOpened(part);
                java.util.Random random = new java.util.Random(seed);
                TriMesh torn = Forms.without(part, t -> random.nextDouble() < 0.12);
                for (TriMesh piece : Forms.parts(torn)) anyOpened(Cut.along(piece, List.of()).mesh());
            }
        }
        assertTrue(forms > 60 && handles > 200, forms + " forms with " + handles + " handles");
    }

    private static void anyOpened(TriMesh mesh) {
        Opened first = CutToDisk.of(mesh, Progress.NONE);
        opened(mesh, RimLoops.of(first.mesh(), EdgeTable.of(first.mesh())).count() - 1);
    }

    @Test
    void theTankIsOpened() throws IOException {
        Path file = Path.of("../shared/corpus/tank.obj");
        Assumptions.assumeTrue(Files.exists(file), "no corpus here");
        TriMesh tank = obj(file);
        Opened opened = opened(tank, 0);
        assertEquals(1, opened.seams().size());
        assertTrue(seamLength(opened) > 10 && seamLength(opened) < 1500, seamLength(opened) + " mm");
    }

    /** Vertices in metres and triangles only, as the corpus has them; equal positions are one vertex. */
    private static TriMesh obj(Path file) throws IOException {
        java.util.Map<String, Integer> number = new java.util.LinkedHashMap<>();
        List<Integer> vertex = new ArrayList<>();
        List<Integer> corners = new ArrayList<>();
        List<Double> xyz = new ArrayList<>();
        for (String line : Files.readAllLines(file)) {
            String[] words = line.trim().split("\\s+");
            if (words[0].equals("v")) {
                Integer known = number.putIfAbsent(line.trim(), number.size());
                vertex.add(known == null ? number.size() - 1 : known);
                if (known == null) for (int k = 1; k <= 3; k++) xyz.add(1000 * Double.parseDouble(words[k]));
            } else if (words[0].equals("f")) {
                for (int k = 1; k <= 3; k++) corners.add(vertex.get(Integer.parseInt(words[k].split("/")[0]) - 1));
            }
        }
        return TriMesh.of(xyz.stream().mapToDouble(d -> d).toArray(), corners.stream().mapToInt(i -> i).toArray());
    }

    @Test
    void refusesWhatIsNoConnectedSurface() {
        TriMesh bow = TriMesh.of(new double[] {0, 0, 0, 1, 0, 0, 1, 1, 0, -1, 0, 0, -1, -1, 0}, new int[] {0, 1, 2, 0, 3, 4});
        assertTrue(assertThrows(IllegalArgumentException.class, () -> CutToDisk.of(bow, Progress.NONE)).getMessage().contains("vertex 0"));
        TriMesh two = Cut.along(bow, List.of()).mesh();
        assertThrows(IllegalArgumentException.class, () -> CutToDisk.of(two, Progress.NONE));
        assertThrows(IllegalArgumentException.class, () -> CutToDisk.of(TriMesh.of(new double[0], new int[0]), Progress.NONE));
    }

    @Test
    void stopsWhenNobodyWantsIt() {
        Progress off = new Progress() {
            @Override public void at(String what, double fraction) { }

            @Override public boolean cancelled() {
                return true;
            }
        };
        assertThrows(CancellationException.class, () -> CutToDisk.of(Forms.tube(50, 200, 48, 20), off));
    }
}
