package blankwright.mesh.cut;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeCost;
import blankwright.num.Progress;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The same form described another way is opened in the same places. */
class CutToDiskKeepsItsSeamsTest {
    private static List<TriMesh> forms() {
        List<TriMesh> forms = new ArrayList<>(List.of(Forms.tube(50, 200, 24, 10), Forms.sphere(100, 2), Forms.cube(4),
                Forms.torus(90, 30, 30, 14), Forms.icosahedron(), Forms.cells(Forms.randomCells(5, 0.3, 12)),
                Forms.holed(Forms.torus(90, 30, 60, 30), 9, new double[] {120, 0, 0}, new double[] {-120, 0, 0}, new double[] {0, 60, 0})));
        Forms.parts(Forms.cells(Forms.randomCells(8, 0.3, 12))).stream().filter(p -> p.triangleCount() > 300).forEach(forms::add);
        forms.removeIf(f -> Forms.parts(f).size() > 1);
        assertTrue(forms.size() > 6);
        return forms;
    }

    /** Moves each vertex a little, so that no two ways are equally long. */
    private static TriMesh uneven(TriMesh mesh) {
        Random random = new Random(9);
        double[] xyz = mesh.positions(), size = mesh.size();
        for (int i = 0; i < xyz.length; i++) xyz[i] += 1e-3 * size[0] * random.nextDouble();
        return mesh.withPositions(xyz);
    }

    /** Every cut edge as the places of its ends, whatever their numbers. */
    private static Set<String> places(TriMesh mesh) {
        Set<String> places = new TreeSet<>();
        for (Seam seam : CutToDisk.of(mesh, Progress.NONE).seams()) {
            int[] path = seam.path();
            for (int i = 1; i < path.length; i++) {
                String a = place(mesh, path[i - 1]), b = place(mesh, path[i]);
                places.add(a.compareTo(b) < 0 ? a + " - " + b : b + " - " + a);
            }
        }
        assertFalse(places.isEmpty());
        return places;
    }

    private static String place(TriMesh mesh, int v) {
        return mesh.x(v) + " " + mesh.y(v) + " " + mesh.z(v);
    }

    private static Set<Long> numbers(TriMesh mesh) {
        Set<Long> numbers = new TreeSet<>();
        for (Seam seam : CutToDisk.of(mesh, Progress.NONE).seams()) {
            int[] path = seam.path();
            for (int i = 1; i < path.length; i++)
                numbers.add((long) Math.min(path[i - 1], path[i]) << 32 | Math.max(path[i - 1], path[i]));
        }
        return numbers;
    }

    @Test
    void howeverItIsNumbered() {
        for (TriMesh mesh : forms())
            for (TriMesh form : List.of(mesh, uneven(mesh)))
                for (int seed = 0; seed < 4; seed++) assertEquals(places(form), places(Forms.renumbered(form, seed)));
    }

    @Test
    void howeverItLies() {
        for (TriMesh even : forms()) {
            TriMesh mesh = uneven(even);
            assertEquals(numbers(mesh), numbers(Forms.turnedBy(mesh, 0.7, -1.9, 200, -3000, 11)));
            assertEquals(numbers(mesh), numbers(Forms.mirrored(mesh)));
            double[] scaled = mesh.positions();
            for (int i = 0; i < scaled.length; i++) scaled[i] *= 0.3;
            assertEquals(numbers(mesh), numbers(mesh.withPositions(scaled)));
        }
    }

    @Test
    void eachTimeItIsAsked() {
        TriMesh torus = Forms.torus(90, 30, 30, 14);
        assertEquals(numbers(torus), numbers(torus));
    }

    /** A box opened along its own edges becomes a net: seven of twelve edges are cut. */
    @Test
    void whereSharpEdgesAreCheapABoxBecomesANet() {
        TriMesh cube = Forms.cube(10);
        EdgeTable edges = EdgeTable.of(cube);
        Opened opened = CutToDisk.of(cube, edges, EdgeCost.sharpFirst(cube, edges, 0.1), Progress.NONE);
        assertEquals(70, opened.seams().stream().mapToDouble(Seam::length).sum(), 1e-12);
        for (Seam seam : opened.seams()) {
            for (int v : seam.path()) {
                int sides = 0;
                for (double c : new double[] {cube.x(v), cube.y(v), cube.z(v)}) if (c == 1 || c == 11) sides++;
                assertTrue(sides >= 2, "leaves the edges of the box");
            }
        }
    }
}
