package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.project.Recipe;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Which meshes are thinned out unasked, and how far. */
class ThinningTest {
    @Test
    void overAMillionTrianglesComeDownToEnough() {
        TriMesh dense = Forms.plate(900, 700, 710, 705), fine = Forms.plate(900, 700, 700, 700);
        Recipe recipe = Recipe.ofMesh("scan", "scan.stl", Optional.empty());
        Thinning thinned = Thinning.of(recipe, dense, Progress.NONE);
        assertEquals(Thinning.ENOUGH, thinned.mesh().triangleCount(), 1);
        assertEquals(900 * 700, thinned.mesh().area(), 1e-6);
        assertEquals(dense.triangleCount(), thinned.reduction().orElseThrow().before());
        assertEquals(dense.triangleCount() - thinned.mesh().triangleCount(), thinned.finding().orElseThrow().count());
        assertSame(fine, Thinning.of(recipe, fine, Progress.NONE).mesh());
        assertSame(dense, Thinning.of(recipe.withDetail(OptionalDouble.of(0)), dense, Progress.NONE).mesh());
        assertTrue(Thinning.of(recipe, fine, Progress.NONE).reduction().isEmpty());
    }
}
