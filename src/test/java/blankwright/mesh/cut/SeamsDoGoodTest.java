package blankwright.mesh.cut;

import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeCost;
import blankwright.num.Progress;
import org.junit.jupiter.api.Test;

/** What a seam in the right place saves, against the shortest one; the energies are the flattener's. */
class SeamsDoGoodTest {
    private record Laid(double seams, double distortion) { }

    private static Laid laid(Opened opened) {
        double energy = Flattener.flatten(opened.mesh(), FlattenOptions.DEFAULT, Progress.NONE).energy();
        return new Laid(opened.seams().stream().mapToDouble(Seam::length).sum(), energy - 4);
    }

    private static Laid shortest(TriMesh mesh) {
        EdgeTable edges = EdgeTable.of(mesh);
        return laid(CutToDisk.of(mesh, edges, EdgeCost.length(edges), Progress.NONE));
    }

    /** A straight tube with a dent out on one side: the seam goes a little round to pass through it. */
    @Test
    void theSeamOfATubeGoesThroughItsBump() {
        TriMesh tube = Forms.grid(64, 40, true, false, (u, v) -> {
            double a = 2 * Math.PI * u, r = 60 + 25 * Math.exp(-((1 - Math.cos(a)) * 8 + (v - 0.5) * (v - 0.5) * 40));
            return new double[] {r * Math.cos(a), r * Math.sin(a), 200 * v};
        });
        Laid good = laid(CutToDisk.of(tube, Progress.NONE)), plain = shortest(tube);
        assertTrue(good.seams() < 1.1 * plain.seams(), good + " against " + plain);
        assertTrue(good.distortion() < plain.distortion() / 4, good + " against " + plain);
    }

    /** A box with round edges: along the edges the seams are shorter and leave less than half of the work. */
    @Test
    void theSeamsOfABoxRunAlongItsEdges() {
        TriMesh ball = Forms.sphere(1, 4);
        double[] xyz = ball.positions();
        for (int i = 0; i < xyz.length; i += 3) {
            double r = 100 / Math.pow(Math.pow(xyz[i], 8) + Math.pow(xyz[i + 1], 8) + Math.pow(xyz[i + 2], 8), 1 / 8.0);
            for (int k = 0; k < 3; k++) xyz[i + k] *= r;
        }
        TriMesh box = ball.withPositions(xyz);
        Laid good = laid(CutToDisk.of(box, Progress.NONE)), plain = shortest(box);
        assertTrue(good.seams() < plain.seams(), good + " against " + plain);
        assertTrue(good.distortion() < plain.distortion() / 2, good + " against " + plain);
    }
}
