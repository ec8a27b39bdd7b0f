package blankwright.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Cylinder;
import blankwright.shape.EllipsoidalCap;
import blankwright.shape.Fineness;
import blankwright.shape.FlangeStrip;
import blankwright.shape.FlangedOpening;
import blankwright.shape.ObliqueCone;
import blankwright.shape.Panel;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Flanges of panels by formula: their measures are those that were put in, the change of their edge that of the exact membrane (checks section 5). */
class FlangeMatchesClosedFormTest {
    private static FlatMap flat(TriMesh form) {
        return Flattener.flatten(form, FlattenOptions.DEFAULT, Progress.NONE).map();
    }

    private static List<Flange> of(Panel panel, double chord) {
        return Flange.of(flat(panel.mesh(Fineness.chord(chord))));
    }

    /** Edge radius, sweep, flange, bend radius, fold in degrees; both ways round. */
    @ParameterizedTest
    @CsvSource({"310, 120, 18, 3, 90", "200, 90, 14, 0, 90", "200, 90, 14, 5, 60", "150, 60, 25, 2, 110", "400, 40, 10, 6, 85", "100, 90, 12, 0, 90"})
    void measuresOfAStrip(double radius, double sweep, double width, double bend, double fold) {
        for (FlangeStrip.Edge edge : FlangeStrip.Edge.values()) {
            FlangeStrip strip = new FlangeStrip(radius, Math.toRadians(sweep), 45, width, bend, Math.toRadians(fold), edge);
            List<Flange> found = of(strip, 0.05);
            assertEquals(1, found.size(), () -> strip + ": " + found);
            Flange flange = found.get(0);
            assertFalse(flange.whole());
            assertTrue(flange.outward());
            assertEquals(fold, Math.toDegrees(flange.angle()), 1);
            assertEquals(width, flange.width(), 0.5);
            assertEquals(bend, flange.radius(), 0.5);
            assertEquals(width + bend * flange.angle() / 2, flange.scribed(), 0.07 * width, "the blank of the strip is strained across too");
            int out = edge == FlangeStrip.Edge.CONVEX ? 1 : -1;
            double tip = radius + out * (bend * Math.sin(Math.toRadians(fold)) + width * Math.cos(Math.toRadians(fold)));
            assertEquals(tip * Math.toRadians(sweep), flange.formLength(), 0.5);
            double exact = strip.edgeStrain() / (1 + strip.edgeStrain()) * tip * Math.toRadians(sweep);        // form less developed edge
            assertEquals(exact, flange.byRule(), 0.03 * Math.abs(exact));
            if (bend == 0 && fold == 90) assertEquals(-out * width * Math.toRadians(sweep), flange.byRule(), 0.03 * Math.abs(exact), "width times sweep");
        }
    }

    /** R 100, b 12: +13.636 % and -10.714 % at the edge [C, checks section 5], so that from the flat contour of 88 or 112 mm it changes by 12 mm a radian. */
    @Test
    void listedEdgeStrains() {
        for (FlangeStrip.Edge edge : FlangeStrip.Edge.values()) {
            Flange flange = of(new FlangeStrip(100, Math.PI / 2, 30, 12, 0, Math.PI / 2, edge), 0.05).get(0);
            double listed = edge == FlangeStrip.Edge.CONVEX ? -.10714 : .13636;
            assertEquals(listed, flange.byRule() / (flange.formLength() - flange.byRule()), 0.004);
        }
    }

    /** All round an oval opening the sweep is a whole turn, whatever its shape; the crown it is cut in hardly changes that. */
    @Test
    void roundAnOpening() {
        List<Flange> found = of(new FlangedOpening(640, 540, 30, 70, 400, 330, 14, 5, Math.toRadians(85)), 0.2);
        assertEquals(1, found.size());
        Flange flange = found.get(0);
        assertTrue(flange.whole() && flange.outward());
        double alongEnd = slope(640, 30, 200), acrossEnd = slope(540, 70, 165);
        assertEquals(85 + Math.toDegrees(alongEnd), Math.toDegrees(flange.least()), 1.5, "turned 85 degrees from level, where the crown falls off least");
        assertEquals(85 + Math.toDegrees(acrossEnd), Math.toDegrees(flange.most()), 1.5);
        assertEquals(2 * Math.PI, flange.sweep(), 0.04 * 2 * Math.PI);
        double low = 14 * (1 - Math.cos(flange.least())) + 5 * (flange.least() - Math.sin(flange.least()));
        double high = 14 * (1 - Math.cos(flange.most())) + 5 * (flange.most() - Math.sin(flange.most()));
        assertTrue(flange.plan() > low && flange.plan() < high, low + " " + flange.plan() + " " + high);
    }

    /** Of a circular arc over its chord, rad, at x from its top. */
    private static double slope(double chord, double rise, double x) {
        return Math.asin(x / ((chord * chord / 4 + rise * rise) / (2 * rise)));
    }

    /** Rolled, domed and stepped edges are not turned. */
    @Test
    void othersHaveNone() {
        List<Panel> panels = List.of(new Cylinder(60, 200, Math.PI), new SphericalCap(60, Math.toRadians(80)), new TorusSection(240, 38, Math.PI, Math.toRadians(170),
                Math.PI / 2), new EllipsoidalCap(235, 190, 210, Math.toRadians(68)), new ObliqueCone(90, 45, 150, 60, 0, Math.PI),
                new CrownedPanel(780, 430, 34, 28, new CrownedPanel.Step(3, 20, 2, Math.toRadians(45)), List.of()));
        for (Panel panel : panels) assertEquals(List.of(), of(panel, 0.2), panel.toString());
    }

    /** A straight strip 300 mm long of flat parts: widths from the edge, and the turn after each. */
    private static List<Flange> straight(double[] widths, double[] degrees) {
        int n = widths.length;
        double[] x = new double[n + 1], z = new double[n + 1], s = new double[n + 1];
        double way = 0;
        for (int i = 0; i < n; i++) {
            x[i + 1] = x[i] + widths[i] * Math.cos(way);
            z[i + 1] = z[i] + widths[i] * Math.sin(way);
            s[i + 1] = s[i] + widths[i];
            if (i < degrees.length) way += Math.toRadians(degrees[i]);
        }
        TriMesh form = Forms.grid(30, n, false, false, (u, v) -> {
            int i = (int) Math.round(v * n);
            return new double[] {300 * u, x[i], z[i]};
        });
        double[] uv = new double[2 * form.vertexCount()];
        for (int v = 0; v < form.vertexCount(); v++)
            for (int i = 0; i <= n; i++)
                if (Math.hypot(form.y(v) - x[i], form.z(v) - z[i]) < 1e-9) {
                    uv[2 * v] = form.x(v);
                    uv[2 * v + 1] = s[i];
                }
        return Flange.of(FlatMap.of(form, uv));
    }

    /** What turns back or goes on turning beside the fold is a step or a roll; a straight edge keeps its length. */
    @Test
    void stepsAndRollsOfAStraightEdgeAreNone() {
        Flange square = straight(new double[] {15, 80}, new double[] {90}).get(0);
        assertEquals(90, Math.toDegrees(square.angle()), 1e-9);
        assertEquals(15, square.scribed(), 1e-9);
        assertEquals(0, square.sweep(), 1e-9);
        assertEquals(0, square.byRule(), 1e-9);
        assertEquals(1, straight(new double[] {15, 10, 80}, new double[] {60, -15}).size(), "hardly turned back");
        assertEquals(List.of(), straight(new double[] {15, 10, 80}, new double[] {60, -50}), "a step");
        assertEquals(List.of(), straight(new double[] {15, 12, 80}, new double[] {60, 25}), "goes on turning");
        assertEquals(110, Math.toDegrees(straight(new double[] {15, 10, 80}, new double[] {60, 50}).get(0).angle()), 1e-9, "one bend in two facets");
        assertEquals(List.of(), straight(new double[] {15, 80}, new double[] {20}), "hardly bent");
        assertEquals(List.of(), straight(new double[] {3, 80}, new double[] {90}), "too narrow to turn");
        assertEquals(List.of(), straight(new double[] {120, 300}, new double[] {90}), "a bend, far from the edge");
        assertEquals(List.of(), straight(new double[] {40, 40}, new double[] {90}), "an angle with equal legs");
    }

    @Test
    void mirroredItIsTurnedTheOtherWay() {
        TriMesh mesh = new FlangeStrip(200, Math.toRadians(90), 45, 14, 5, Math.toRadians(60), FlangeStrip.Edge.CONCAVE).mesh(Fineness.chord(0.05));
        int[] tri = mesh.corners();
        for (int t = 0; t < tri.length; t += 3) {
            int b = tri[t + 1];
            tri[t + 1] = tri[t + 2];
            tri[t + 2] = b;
        }
        Flange up = Flange.of(flat(TriMesh.of(mesh.positions(), tri))).get(0), down = Flange.of(flat(mesh)).get(0);
        assertFalse(up.outward());
        assertEquals("flange 2: 60° up", up.words(2));
        assertEquals("flange 1: 60° down", down.words(1));
        assertEquals(down.byRule(), up.byRule(), 1e-3 * down.byRule(), "the edge must gain as much");
    }
}
