package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.strain.StrainField;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Blanks that cover themselves, pulled apart. Oracles: the bent ring of strength of materials, JTS, symmetry. */
class ApartTest {
    private static Outcome even(TriMesh mesh) {
        Outcome outcome = Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE);
        assertTrue(outcome instanceof Outcome.Converged);
        return outcome;
    }

    private static Optional<Outcome> apart(Outcome covering) {
        assertFalse(Strips.places(covering.map()).isEmpty(), "nothing to pull apart");
        Optional<Outcome> apart = Apart.of(covering, Strips::places, Progress.NONE);
        apart.ifPresent(outcome -> {
            assertTrue(Strips.places(outcome.map()).isEmpty(), "still covers itself");
            StrainField strain = StrainField.of(outcome.map());
            assertEquals(0, strain.turnedOverCount());
            assertEquals(strain.symmetricDirichletMean(), outcome.energy(), 1e-9);
            assertTrue(outcome.energy() > covering.energy() && outcome.energy() <= covering.energy() + Apart.allowed(covering.energy()));
            assertTrue(outcome.steps() > covering.steps());
        });
        return apart;
    }

    /**
     * A slit ring of radius R and width w, w much less than R, whose ends are pushed apart along the ring by d: with the bending moment
     * growing as 1 - cos from the slit, Castigliano's theorem gives the change of curvature d (1 - cos a) / (3 pi R²), hence the mean of
     * 4 strain² over the ring, w² d² / (18 pi² R⁴). The ends lap by the angle beyond a full turn and are left the gap.
     */
    @Test
    void aRingStripCostsWhatABentRingDoes() {
        double r = 100, w = 10;
        for (double degrees : new double[] {365, 372}) {
            Outcome even = even(Strips.ring(degrees, r - w / 2, r + w / 2, 180, 8));
            Outcome apart = apart(even).orElseThrow();
            double gap = Math.min(Apart.GAP, Apart.GAP_SHARE * Math.sqrt(w * r * Math.toRadians(degrees)));
            double d = Math.toRadians(degrees - 360) * r + gap;
            double expected = w * w * d * d / (18 * Math.PI * Math.PI * Math.pow(r, 4));
            assertEquals(expected, apart.energy() - even.energy(), 0.08 * expected, degrees + " degrees");
        }
    }

    @Test
    void aHairIsCuredAndAWideLapIsNot() {
        assertTrue(apart(even(Strips.ring(361, 80, 120, 90, 8))).isPresent());
        assertTrue(apart(even(Strips.ring(380, 80, 120, 95, 8))).isPresent());
        assertTrue(apart(even(Strips.ring(400, 95, 105, 100, 4))).isPresent(), "a narrow strip bends in its plane");
        assertTrue(apart(even(Strips.ring(400, 80, 120, 100, 8))).isEmpty(), "a wide one takes 2 % at its edges");
        assertTrue(apart(even(Strips.ring(500, 80, 120, 125, 8))).isEmpty());
        assertTrue(apart(even(Strips.ring(1000, 95, 105, 250, 4))).isEmpty());
    }

    /** Hardly open in the middle: the two lobes of a leaf, joined at its stem, lap by a hair. */
    @Test
    void theLobesOfALeafAreParted() {
        assertTrue(apart(even(Strips.ring(364, 15, 120, 91, 16))).isPresent());
    }

    @Test
    void whatDoesNotCoverItselfIsLeft() {
        Outcome even = even(Strips.ring(350, 80, 120, 90, 8));
        assertTrue(Strips.places(even.map()).isEmpty());
        assertTrue(Apart.of(even, Strips::places, Progress.NONE).isEmpty());
    }

    /** Mirrored, renumbered, turned about: the same energy. */
    @Test
    void keepsUnderSymmetry() {
        TriMesh strip = Strips.ring(370, 80, 120, 92, 8);
        double energy = apart(even(strip)).orElseThrow().energy();
        assertEquals(energy, apart(even(Forms.mirrored(strip))).orElseThrow().energy(), 2e-7);
        assertEquals(energy, apart(even(Forms.renumbered(strip, 5))).orElseThrow().energy(), 2e-7);
        assertEquals(energy, apart(even(Forms.turnedBy(strip, 1, 2, 30, 40, 50))).orElseThrow().energy(), 2e-7);
    }

    @Test
    void sameInputSameBits() {
        Outcome even = even(Strips.ring(370, 80, 120, 200, 20));
        assertArrayEquals(apart(even).orElseThrow().map().positions(), apart(even).orElseThrow().map().positions());
    }

    @Test
    void stopsWhenNobodyWantsIt() {
        Outcome even = even(Strips.ring(370, 80, 120, 92, 8));
        Progress off = new Progress() {
            @Override public void at(String what, double fraction) { }

            @Override public boolean cancelled() {
                return true;
            }
        };
        Assertions.assertThrows(CancellationException.class, () -> Apart.of(even, Strips::places, off));
    }

    /** Two ends that lap: their stretches are the ends, and they part along the ring. */
    @Test
    void stretchesAreThoseThatCross() {
        FlatMap map = even(Strips.ring(366, 80, 120, 183, 8)).map();
        var covering = Covering.of(map, blankwright.mesh.RimLoops.of(map.form(), blankwright.mesh.EdgeTable.of(map.form())), Strips.places(map));
        assertEquals(1, covering.size());
        for (int[] stretch : new int[][] {covering.get(0).first(), covering.get(0).second()}) {
            assertTrue(stretch.length >= 10 && stretch.length < 24, stretch.length + " vertices");
            double low = 1e9, high = 0;
            for (int v : stretch) {
                low = Math.min(low, map.form().z(v));
                high = Math.max(high, map.form().z(v));
            }
            assertTrue(high < 1.4 || low > 36.6 - 1.4, "within 14 degrees of one end");
        }
    }
}
