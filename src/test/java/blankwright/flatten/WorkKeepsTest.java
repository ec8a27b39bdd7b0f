package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.shape.ConeFrustum;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Fineness;
import blankwright.shape.FlangeStrip;
import blankwright.shape.Panel;
import blankwright.shape.Saddle;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shape.TwistedPanel;
import blankwright.strain.StrainField;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the blank of least work keeps, whatever the panel; numbers of the size of annealed aluminium's, not of any alloy. */
class WorkKeepsTest {
    private static final Resistance SOFT = new Resistance(70_000, 45, 180, 0.25, 0.7);

    private static Outcome flat(TriMesh mesh, LeastWork work) {
        Outcome outcome = Flattener.flatten(mesh, FlattenOptions.DEFAULT.withWork(work), Progress.NONE);
        assertTrue(outcome instanceof Outcome.Converged, () -> "stopped after " + outcome.steps() + " steps");
        assertEquals(0, StrainField.of(outcome.map()).turnedOverCount());
        return outcome;
    }

    /** Work per thickness straight from the strains, N mm per mm. */
    private static double work(FlatMap map, Resistance metal) {
        StrainField strain = StrainField.of(map);
        double sum = 0;
        for (int t = 0; t < strain.triangleCount(); t++)
            sum += map.form().area(t) / (strain.stretch1(t) * strain.stretch2(t)) * metal.work(metal.effectiveStrain(strain.strain1(t), strain.strain2(t)));
        return sum;
    }

    private static double largestMove(FlatMap a, FlatMap b) {
        double most = 0;                            // by distances between vertices, since blanks may lie turned
        int n = a.form().vertexCount();
        for (int v = 0; v < n; v++) {
            int w = (v + n / 2) % n;
            most = Math.max(most, Math.abs(Math.hypot(a.u(v) - a.u(w), a.v(v) - a.v(w)) - Math.hypot(b.u(v) - b.u(w), b.v(v) - b.v(w))));
        }
        return most;
    }

    @Test
    void everyKindOfPanelConvergesToLessWorkThanTheEvenBlank() {
        List<Panel> panels = List.of(new SphericalCap(300, Math.toRadians(35)), new TorusSection(330, 95, Math.toRadians(90), Math.toRadians(140), 0),
                new Saddle(250, 120), new TwistedPanel(400, 250, 60), new CrownedPanel(500, 400, 25, 15, CrownedPanel.Step.NONE, List.of()),
                new FlangeStrip(120, Math.toRadians(80), 40, 20, 4, Math.PI / 2, FlangeStrip.Edge.CONVEX),
                new FlangeStrip(120, Math.toRadians(80), 40, 20, 4, Math.PI / 2, FlangeStrip.Edge.CONCAVE));
        for (Panel panel : panels) {
            TriMesh mesh = panel.mesh(Fineness.chord(0.5));
            Outcome even = Flattener.flatten(mesh, FlattenOptions.DEFAULT, Progress.NONE), least = flat(mesh, LeastWork.of(SOFT));
            assertTrue(work(least.map(), SOFT) < work(even.map(), SOFT) * (1 - 1e-5), () -> panel + ": " + work(least.map(), SOFT) + " even "
                    + work(even.map(), SOFT));
            assertTrue(least.steps() < 40, panel + ": " + least.steps() + " steps");
        }
    }

    @Test
    void aDevelopablePanelTakesNoWork() {
        TriMesh cone = new ConeFrustum(120, 80, 150, Math.toRadians(200)).mesh(Fineness.chord(0.2));
        StrainField even = StrainField.of(Flattener.flatten(cone, FlattenOptions.DEFAULT, Progress.NONE).map());
        StrainField least = StrainField.of(flat(cone, LeastWork.of(SOFT)).map());
        assertEquals(even.stretchMax(), least.stretchMax(), 1e-3);
        assertTrue(least.stretchMax() < 1e-3, "stretch " + least.stretchMax());
    }

    /** E, Y and K together only rename the unit of stress. K and Y alone move it as far as the elastic part has a say: little. */
    @Test
    void aStrongerSheetOfTheSameKindHasTheSameBlank() {
        TriMesh mesh = Grids.mudguard(30);
        FlatMap one = flat(mesh, LeastWork.of(SOFT)).map(), all = flat(mesh, LeastWork.of(new Resistance(140_000, 90, 360, 0.25, 0.7))).map();
        assertEquals(0, largestMove(one, all), 1e-3);
        FlatMap stronger = flat(mesh, LeastWork.of(new Resistance(70_000, 54, 216, 0.25, 0.7))).map();
        assertEquals(0, largestMove(one, stronger), 0.2);
        assertTrue(largestMove(one, flat(mesh, LeastWork.of(new Resistance(70_000, 45, 180, 0.1, 0.7))).map()) > 1, "but the hardening matters");
    }

    @Test
    void mirroredInMirroredOut() {
        TriMesh mesh = Grids.shaken(Grids.mudguard(24), 1, 5);
        double[] xyz = mesh.positions();
        int[] tri = mesh.corners();
        for (int v = 0; v < mesh.vertexCount(); v++) xyz[3 * v] = -xyz[3 * v];
        for (int t = 0; t < mesh.triangleCount(); t++) {
            int b = tri[3 * t + 1];
            tri[3 * t + 1] = tri[3 * t + 2];
            tri[3 * t + 2] = b;
        }
        assertEquals(0, largestMove(flat(mesh, LeastWork.of(SOFT)).map(), flat(TriMesh.of(xyz, tri), LeastWork.of(SOFT)).map()), 1e-2);
    }

    /** The costs of triangles stay with them when a large mesh is renumbered and made coarser. */
    @Test
    void costsFollowTheirTriangles() {
        TriMesh mesh = Grids.mudguard(60);
        int n = mesh.triangleCount();
        double[] stretch = new double[n], shrink = new double[n];
        for (int t = 0; t < n; t++) {
            boolean left = mesh.x(mesh.corner(t, 0)) * Math.tan(0.2) < mesh.y(mesh.corner(t, 0));
            stretch[t] = left ? 1 : 30;
            shrink[t] = left ? 30 : 1;
        }
        StrainField strain = StrainField.of(flat(mesh, LeastWork.of(SOFT, stretch, shrink)).map());
        double[] worst = new double[2];
        for (int t = 0; t < n; t++) {
            if (stretch[t] > 1) worst[0] = Math.max(worst[0], -strain.engineering2(t));
            else worst[1] = Math.max(worst[1], -strain.engineering2(t));
        }
        assertTrue(worst[0] > 3 * worst[1], "shrinks " + worst[0] + " where it is cheap, " + worst[1] + " where it is dear");
    }

    @Test
    void costsOfAnotherMeshAreRefused() {
        LeastWork costs = LeastWork.of(SOFT, new double[] {1, 2}, new double[] {1, 1});
        String said = org.junit.jupiter.api.Assertions.assertThrows(IllegalArgumentException.class,
                () -> Flattener.flatten(Grids.mudguard(5), FlattenOptions.DEFAULT.withWork(costs), Progress.NONE)).getMessage();
        assertEquals("costs for 2 triangles, the form has 50", said);
        assertArrayEquals(new double[] {2}, new double[] {costs.contrast()});
    }
}
