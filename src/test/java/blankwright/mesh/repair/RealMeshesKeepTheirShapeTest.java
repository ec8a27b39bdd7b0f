package blankwright.mesh.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.io.FormatException;
import blankwright.mesh.io.MeshReader;
import blankwright.mesh.io.RawMesh;
import blankwright.num.Progress;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Real motorcycle parts, where they are present: triangles and topology as their table says (disks, and a tank with two openings). */
class RealMeshesKeepTheirShapeTest {
    private static final Path CORPUS = Path.of(System.getProperty("blankwright.corpus", "../shared/corpus"));

    @ParameterizedTest
    @CsvSource({"rear-mudguard.obj, 1960, 1, 1", "seat-pan.obj, 1838, 1, 1", "tank.obj, 4984, 0, 2"})
    void triangleCountEulerNumberAndRims(String name, int triangles, int euler, int rims) throws FormatException {
        Path file = CORPUS.resolve(name);
        Assumptions.assumeTrue(Files.isRegularFile(file), "no real meshes here");
        RawMesh raw = MeshReader.read(file, Progress.NONE);
        double[] mm = raw.xyz();
        for (int i = 0; i < mm.length; i++) mm[i] *= 1000;
        Repaired result = Repair.of(mm, raw.triangles(), Progress.NONE);
        assertTrue(raw.findings().isEmpty() && result.findings().isEmpty(), raw.findings() + " " + result.findings());
        assertEquals(triangles, result.mesh().triangleCount());
        assertEquals(euler, Forms.euler(result.mesh()));
        assertEquals(rims, RimLoops.of(result.mesh(), EdgeTable.of(result.mesh())).count());
        assertEquals(1, Components.of(result.mesh()).size());
    }
}
