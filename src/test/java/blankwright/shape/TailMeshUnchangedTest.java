package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class TailMeshUnchangedTest {
    /** The shipped file is the formula's, to the letter. */
    @Test
    void fileIsTheFormula() throws Exception {
        assertEquals(TailMesh.obj(), Files.readString(Path.of("models/tail.obj")).replace("\r", ""));
    }

    @Test
    void itIsADiskWithItsOuterSideOut() {
        String[] lines = TailMesh.obj().split("\n");
        double[] xyz = Arrays.stream(lines).filter(l -> l.startsWith("v ")).flatMap(l -> Arrays.stream(l.substring(2).split(" ")))
                .mapToDouble(Double::parseDouble).toArray();
        int[] tri = Arrays.stream(lines).filter(l -> l.startsWith("f ")).flatMap(l -> Arrays.stream(l.substring(2).split(" ")))
                .mapToInt(c -> Integer.parseInt(c) - 1).toArray();
        TriMesh mesh = TriMesh.of(xyz, tri);
        EdgeTable edges = EdgeTable.of(mesh);
        assertEquals(1, mesh.vertexCount() - edges.edgeCount() + mesh.triangleCount());
        assertEquals(1, RimLoops.of(mesh, edges).count());
        assertEquals(3840, mesh.triangleCount());
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int v = mesh.corner(t, 0);
            double[] n = mesh.normal(t);
            assertTrue(n[1] * mesh.y(v) + n[2] * mesh.z(v) > 0, "triangle " + t);
        }
    }
}
