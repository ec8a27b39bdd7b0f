package blankwright.strain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.oracle.Patch;
import java.util.Arrays;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

class StrainFieldKeepsUnderSymmetryTest {
    private static final FlatMap MAP = StrainFieldAgreesWithSlowRouteTest.wavy(20, 14);
    private static final StrainField FIELD = StrainField.of(MAP);

    @Test
    void turnedInSpaceAndOnTheSheet() {
        FlatMap turned = Patch.turnedInSpace(MAP, 1.1).moved(0.7, 40, -8);
        StrainField field = StrainField.of(turned);
        for (int t = 0; t < field.triangleCount(); t++) {
            assertEquals(FIELD.stretch1(t), field.stretch1(t), 1e-12);
            assertEquals(FIELD.stretch2(t), field.stretch2(t), 1e-12);
            double near = 1e-12 / (FIELD.stretch1(t) / FIELD.stretch2(t) - 1);
            assertEquals(0, Math.sin(field.directionOnBlank(t) - FIELD.directionOnBlank(t) - 0.7), near);
        }
        assertEquals(FIELD.symmetricDirichletMean(), field.symmetricDirichletMean(), 1e-12);
        assertEquals(FIELD.arapMean(), field.arapMean(), 1e-13);
    }

    @Test
    void mirrored() {
        StrainField field = StrainField.of(Patch.mirrored(MAP));
        for (int t = 0; t < field.triangleCount(); t++) {
            assertEquals(FIELD.stretch1(t), field.stretch1(t), 1e-12);
            assertEquals(FIELD.stretch2(t), field.stretch2(t), 1e-12);
            assertEquals(0, Math.sin(field.directionOnBlank(t) + FIELD.directionOnBlank(t)), 1e-9);
            assertEquals(false, field.turnedOver(t));
        }
    }

    @Test
    void sameBitsOnAnyNumberOfThreads() throws Exception {
        FlatMap large = StrainFieldAgreesWithSlowRouteTest.wavy(220, 160);
        StrainField first = StrainField.of(large);
        for (int threads : new int[] {1, 3, 8}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                StrainField field = pool.submit(() -> StrainField.of(large)).get();
                assertEquals(first.symmetricDirichletMean(), field.symmetricDirichletMean());
                assertEquals(first.arapMean(), field.arapMean());
                for (int t = 0; t < field.triangleCount(); t++) {
                    if (first.stretch1(t) != field.stretch1(t) || first.directionOnBlank(t) != field.directionOnBlank(t))
                        throw new AssertionError("triangle " + t + " on " + threads + " threads");
                }
            } finally {
                pool.shutdown();
            }
        }
    }

    @Test
    void renumbered() {
        FlatMap other = Patch.renumbered(MAP, 3);
        StrainField field = StrainField.of(other);
        double[] before = new double[field.triangleCount()], after = before.clone();
        for (int t = 0; t < before.length; t++) {
            before[t] = FIELD.stretch1(t);
            after[t] = field.stretch1(t);
        }
        Arrays.sort(before);
        Arrays.sort(after);
        assertArrayEquals(before, after, 1e-12);
        assertEquals(FIELD.stretchMax(), field.stretchMax(), 1e-12);
        assertEquals(FIELD.shrinkMax(), field.shrinkMax(), 1e-12);
        assertEquals(FIELD.symmetricDirichletMean(), field.symmetricDirichletMean(), 1e-12);
    }

    @Test
    void scaledFormAndBlankTogetherKeepTheStrainToTheLastBit() {
        double[] xyz = MAP.form().positions(), uv = MAP.positions();
        for (int i = 0; i < xyz.length; i++) xyz[i] *= 1024;
        for (int i = 0; i < uv.length; i++) uv[i] *= 1024;
        StrainField field = StrainField.of(FlatMap.of(TriMesh.of(xyz, MAP.form().corners()), uv));
        for (int t = 0; t < field.triangleCount(); t++) assertEquals(FIELD.stretch1(t), field.stretch1(t));
        assertEquals(FIELD.symmetricDirichletMean(), field.symmetricDirichletMean());
    }
}
