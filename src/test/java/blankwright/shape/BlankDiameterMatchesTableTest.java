package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.num.Progress;
import blankwright.strain.StrainField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checks section 3. */
class BlankDiameterMatchesTableTest {
    /** d = 1.5, h = 2: sqrt(14.25), printed 3.78 [V: Machinery's Handbook 31st ed. p. 1426]. */
    @Test
    void cup() {
        assertEquals(3.7749, BlankDiameter.cup(1.5, 2), 5e-5);
        assertEquals(3.78, BlankDiameter.cup(1.5, 2), 6e-3);
        assertEquals(BlankDiameter.cup(60, 40), BlankDiameter.flangedCup(60, 40, 60), 1e-12);
    }

    /** d = 2 and mean height 3 (3.75 ironed from .050 to .040): 5.29 [V: p. 1428]. */
    @Test
    void ironedCup() {
        assertEquals(5.2915, BlankDiameter.cup(2, 3.75 * .040 / .050), 5e-5);
    }

    /** Half ball of 100: 141.4214; dish of 100 by 20: D 107.7033, ball 72.5, area 9110.6187 [C]. */
    @Test
    void dishes() {
        assertEquals(141.4214, BlankDiameter.halfBall(100), 5e-5);
        assertEquals(141.4214, BlankDiameter.dish(100, 50), 5e-5);
        assertEquals(107.7033, BlankDiameter.dish(100, 20), 5e-5);
        SphericalCap dish = SphericalCap.ofRise(100, 20);
        assertEquals(72.5, dish.radius(), 1e-12);
        assertEquals(9110.6187, dish.truth().area(), 5e-5);
        assertEquals(107.7033, BlankDiameter.ofArea(dish.truth().area()), 5e-5);
        assertEquals(BlankDiameter.halfBall(80), BlankDiameter.halfBallWithWall(80, 0), 1e-12);
        assertEquals(141.4214, BlankDiameter.ofArea(new SphericalCap(50, Math.PI / 2).mesh(Fineness.chord(0.01)).area()), 0.05);
    }

    /** d = 50, h = 40, r = 5: 100.2828 from the area of disc, bend and wall [C]. */
    @Test
    void roundedCup() {
        assertEquals(100.2828, BlankDiameter.roundedCup(50, 40, 5), 5e-5);
        double area = Math.PI * 50 * 35 + Math.PI * 20 * 20 + 2 * Math.PI * (20 * 5 * Math.PI / 2 + 25);
        assertEquals(BlankDiameter.ofArea(area), BlankDiameter.roundedCup(50, 40, 5), 1e-10);
    }

    /** D = 4, d = 2, h = 2.5 in: area 28.519, blank 6.026 [V: Hodgson, "Machines and Tools Employed in the Working of Sheet Metals", ch. XX]. */
    @Test
    void conicalVessel() {
        assertEquals(6.026, BlankDiameter.conicalVessel(2, 4, Math.hypot(2.5, 1)), 6e-4);
        ConeFrustum wall = new ConeFrustum(2, 1, 2.5, 2 * Math.PI);
        assertEquals(28.519, wall.truth().area() + Math.PI, 5e-4);
    }

    /**
     * What the handbook rule stands on, a blank as large as the shell, against what the program lays out: the two areas differ by no more than
     * the area strains it computed for that blank allow.
     */
    @ParameterizedTest
    @CsvSource({"100,20", "300,15", "200,60", "100,49.999"})
    void theBlankLaidOutKeepsTheRulesAreaWithinItsComputedStrain(double across, double rise) {
        Outcome outcome = Flattener.flatten(SphericalCap.ofRise(across, rise).ringMesh(40), FlattenOptions.DEFAULT, Progress.NONE);
        StrainField strain = StrainField.of(outcome.map());
        double rule = Math.PI / 4 * Math.pow(BlankDiameter.dish(across, rise), 2), facets = 1e-3, blank = outcome.map().area();
        assertTrue(blank >= rule / (1 + strain.areaGainMax()) * (1 - facets), blank + " against " + rule);
        assertTrue(blank <= rule / (1 - strain.areaLossMax()) * (1 + facets), blank + " against " + rule);
        assertEquals(1, blank / rule, Math.max(strain.areaGainMax(), strain.areaLossMax()) / 2, "gain in the middle, loss at the rim: they offset");
    }

    /** The cup made of triangles has the area its blank has. */
    @Test
    void cupMesh() {
        Cylinder cup = new Cylinder(60, 90, 2 * Math.PI, Cylinder.Ends.ONE);
        assertEquals(BlankDiameter.cup(120, 90), BlankDiameter.ofArea(cup.truth().area()), 1e-10);
        assertEquals(BlankDiameter.cup(120, 90), BlankDiameter.ofArea(cup.mesh(Fineness.chord(0.002)).area()), 0.01);
    }
}
