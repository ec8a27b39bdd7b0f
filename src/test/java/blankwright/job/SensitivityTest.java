package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.energy.LeastWork;
import blankwright.flatten.energy.Resistance;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.CutToDisk;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.cut.Seam;
import blankwright.metal.Hardening;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.project.Aim;
import blankwright.project.Face;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.shape.Cylinder;
import blankwright.shape.Fineness;
import blankwright.shape.Panel;
import blankwright.shape.SphericalCap;
import blankwright.shape.UnfitValue;
import blankwright.shop.OutlineShift;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a little off does to a blank, where a formula tells it too. */
class SensitivityTest {
    private static Result run(Recipe recipe) throws Refusal {
        return FlattenJob.run(recipe.withSensitivity(true), Given.file(Path.of("dish.yaml")), Progress.NONE);
    }

    private static Sensitivity of(Recipe recipe) throws Refusal {
        return run(recipe).pieces().get(0).sensitivity().orElseThrow();
    }

    private static Sensitivity.Case one(Sensitivity sensitivity, Sensitivity.Cause cause) {
        return sensitivity.cases().stream().filter(c -> c.cause() == cause).findFirst().orElseThrow();
    }

    private static Opened opened(Panel panel) throws UnfitValue {
        return CutToDisk.of(panel.mesh(Fineness.chord(0.1)), Progress.NONE);
    }

    /** A flat round plate in rings. */
    private static TriMesh plate(double radius, int rings, int sides) {
        double[] xyz = new double[3 * (rings * sides + 1)];
        int[] triangles = new int[3 * sides * (2 * rings - 1)];
        int p = 0;
        for (int r = 0; r < rings; r++)
            for (int i = 0; i < sides; i++) {
                int v = 1 + r * sides + i, w = 1 + r * sides + (i + 1) % sides;
                xyz[3 * v] = radius * (r + 1) / rings * Math.cos(2 * Math.PI * i / sides);
                xyz[3 * v + 1] = radius * (r + 1) / rings * Math.sin(2 * Math.PI * i / sides);
                int[] corners = r == 0 ? new int[] {0, v, w} : new int[] {v - sides, v, w, v - sides, w, w - sides};
                for (int c : corners) triangles[p++] = c;
            }
        return TriMesh.of(xyz, triangles);
    }

    /** Its edge longer by s all round lies s/(2π) farther out; noise moves it by the second order of its slope; no crown. */
    @Test
    void roundPlateMatchesClosedForm() {
        Opened plate = CutToDisk.of(plate(200, 16, 96), Progress.NONE);
        double[] uv = new double[2 * plate.mesh().vertexCount()];
        for (int v = 0; v < plate.mesh().vertexCount(); v++) {
            uv[2 * v] = plate.mesh().x(v);
            uv[2 * v + 1] = plate.mesh().y(v);
        }
        Sensitivity sensitivity = Sensitivity.of(plate, FlatMap.of(plate.mesh(), uv), Optional.empty(), Progress.NONE).orElseThrow();
        assertFalse(sensitivity.alongSeam());
        assertEquals(List.of(), sensitivity.crowns());
        double out = Sensitivity.SHRINK / (2 * Math.PI);
        assertEquals(out, one(sensitivity, Sensitivity.Cause.WELD).shift().largest(), 0.001 * out);
        assertEquals(out, one(sensitivity, Sensitivity.Cause.WELD).shift().rms(), 0.001 * out);
        double slope = 2 * Math.PI * Sensitivity.NOISE / Sensitivity.WAVELENGTH; // at most, root mean square
        assertTrue(one(sensitivity, Sensitivity.Cause.SCAN).shift().rms() < slope * slope * 200, "second order");
    }

    /** Far beyond yield work is in proportion to K whatever the blank, so that K does not choose it; n does. */
    @Test
    void strengthDoesNotMoveABlankThatIsAllPlasticHardeningDoes() throws Refusal {
        Recipe bowl = Recipe.of("bowl", new SphericalCap(200, Math.toRadians(45))).withChord(0.4)
                .withMetal(Optional.of(Metal.shipped("3003-O"))).withSheet(OptionalDouble.of(1.6), Face.MIDDLE).withAim(Aim.WORK);
        Sensitivity sensitivity = of(bowl);
        double strength = one(sensitivity, Sensitivity.Cause.STRENGTH).shift().largest();
        double hardening = one(sensitivity, Sensitivity.Cause.HARDENING).shift().largest();
        assertTrue(strength < 0.005, "K moves it by " + strength);
        assertTrue(hardening > 10 * strength, "n moves it by " + hardening + ", K by " + strength);
        assertEquals(4, sensitivity.cases().size());
        assertEquals(2, of(bowl.withAim(Aim.EVEN)).cases().size(), "aim even does not ask the metal");
    }

    /**
     * A low half-hard lid is strained about as far as it yields, so that K and yield against E have a say: as far as a blank laid out by hand
     * for them differs. Every cause has its numbers for the outline and for both crowns.
     */
    @Test
    void strengthMovesABlankThatIsPartElastic() throws Refusal {
        Metal half = Metal.shipped("3003-H14");
        Recipe lid = Recipe.of("lid", new SphericalCap(900, Math.toRadians(12))).withChord(0.3).withMetal(Optional.of(half))
                .withSheet(OptionalDouble.of(1), Face.MIDDLE).withAim(Aim.WORK);
        Result result = run(lid);
        Sensitivity sensitivity = result.pieces().get(0).sensitivity().orElseThrow();
        TriMesh form = result.pieces().get(0).map().form();
        FlatMap base = byHand(form, half, 1);
        double most = 0;
        for (double factor : new double[] {1 - Sensitivity.METAL, 1 + Sensitivity.METAL})
            most = Math.max(most, OutlineShift.between(base, byHand(form, half, factor), RimLoops.of(form, EdgeTable.of(form))).largest());
        assertTrue(most > 0.002, "moves it by " + most);
        assertEquals(most, one(sensitivity, Sensitivity.Cause.STRENGTH).shift().largest(), 0.02 * most);
        assertEquals(List.of(Sensitivity.Cause.values()), sensitivity.cases().stream().map(Sensitivity.Case::cause).toList());
        for (Sensitivity.Case each : sensitivity.cases()) {
            assertEquals(2, each.crown().size());
            assertTrue(each.shift().largest() > 1e-5 && Math.abs(each.crown().get(0)) > 1e-4, each.toString());
        }
    }

    private static FlatMap byHand(TriMesh form, Metal metal, double factor) {
        Hardening law = metal.alloy().law();
        Resistance sheet = new Resistance(law.young(), factor * law.yieldStress(), factor * law.strength(), law.n(), metal.alloy().sheet().r());
        return Flattener.flatten(form, FlattenOptions.DEFAULT.withTolerance(1e-11).withWork(LeastWork.of(sheet)), Progress.NONE).map();
    }

    /** Where the points of a seam lie closer at one end it draws in no less there: a tube of rings that grow higher. */
    @Test
    void aWeldDrawsInEvenlyWhateverTheMesh() {
        int n = 12, sides = 48;
        double[] xyz = new double[3 * (n + 1) * sides];
        int[] tri = new int[6 * n * sides];
        for (int i = 0, p = 0, q = 0; i <= n; i++)
            for (int j = 0; j < sides; j++) {
                double angle = 2 * Math.PI * j / sides;
                int here = i * sides + j, next = i * sides + (j + 1) % sides;
                if (i < n) for (int v : new int[] {here, next, next + sides, here, next + sides, here + sides}) tri[q++] = v;
                xyz[p++] = 80 * Math.cos(angle);
                xyz[p++] = 80 * Math.sin(angle);
                xyz[p++] = 300.0 * i * i / (n * n);
            }
        Opened tube = CutToDisk.of(TriMesh.of(xyz, tri), Progress.NONE);
        Seam seam = WeldShrink.longest(tube);
        TriMesh made = WeldShrink.madeUpFor(tube, 0.1);
        double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY, atLow = 0, atHigh = 0;
        for (int i = 0; i < 2 * seam.edgeCount(); i++) {
            int v = seam.left(i / 2, i % 2);
            if (made.z(v) < low) atLow = made.z(v) - tube.mesh().z(v);
            if (made.z(v) > high) atHigh = made.z(v) - tube.mesh().z(v);
            low = Math.min(low, made.z(v));
            high = Math.max(high, made.z(v));
        }
        assertEquals(0.05, atHigh, 0.005);
        assertEquals(-0.05, atLow, 0.005);
    }

    /** Along the weld the length grows by what it draws in, beside it by less, and nothing farther off. */
    @Test
    void madeUpForAWeld() throws UnfitValue {
        Opened tube = opened(new Cylinder(80, 300, 2 * Math.PI));
        Seam seam = WeldShrink.longest(tube);
        TriMesh made = WeldShrink.madeUpFor(tube, 0.1);
        double longer = 0, seamAt = Math.atan2(made.y(seam.left(0, 0)), made.x(seam.left(0, 0)));
        for (int i = 0; i < seam.edgeCount(); i++) longer += distance(made, seam.left(i, 0), seam.left(i, 1));
        assertEquals(seam.length() + 0.1, longer, 1e-9);
        for (int v = 0; v < made.vertexCount(); v++) {
            double moved = Math.hypot(Math.hypot(made.x(v) - tube.mesh().x(v), made.y(v) - tube.mesh().y(v)), made.z(v) - tube.mesh().z(v));
            double angle = Math.abs(Math.atan2(tube.mesh().y(v), tube.mesh().x(v)) - seamAt);
            double away = 80 * Math.min(angle, 2 * Math.PI - angle);
            assertTrue(moved <= 0.051, "no more than its share");
            if (away > WeldShrink.BAND + 5) assertEquals(0, moved, 0, "at " + away + " mm");
        }
    }

    /** Sum of many waves: mean square as asked; the sides of a seam stay together; another seed is another scan. */
    @Test
    void noiseIsAsLargeAsAsked() throws UnfitValue {
        Opened tube = opened(new Cylinder(200, 900, 2 * Math.PI));
        TriMesh form = tube.mesh(), scanned = ScanNoise.on(tube, 0.5, 100, 1);
        double squares = 0;
        for (int v = 0; v < form.vertexCount(); v++) {
            double off = Math.hypot(scanned.x(v), scanned.y(v)) - Math.hypot(form.x(v), form.y(v));
            squares += off * off;
        }
        assertEquals(0.5, Math.sqrt(squares / form.vertexCount()), 0.1);
        Seam seam = WeldShrink.longest(tube);
        for (int i = 0; i < seam.edgeCount(); i++) assertEquals(0, gap(scanned, seam.left(i, 0), scanned, seam.right(i, 0)), 0);
        assertTrue(gap(scanned, 0, ScanNoise.on(tube, 0.5, 100, 2), 0) > 0.001);
        assertEquals(0, gap(scanned, 0, ScanNoise.on(tube, 0.5, 100, 1), 0), 0);
    }

    private static double distance(TriMesh mesh, int a, int b) {
        return gap(mesh, a, mesh, b);
    }

    private static double gap(TriMesh a, int v, TriMesh b, int w) {
        return Math.hypot(Math.hypot(a.x(v) - b.x(w), a.y(v) - b.y(w)), a.z(v) - b.z(w));
    }

    /** 48 in with 1/2 in of crown: 0.1 mm takes h - sqrt(h² - 3c·0.1/8) of it. */
    @Test
    void saysWhatItDoesToTheCrown() throws Refusal {
        double c = 1219.2, h = 12.7;
        Recipe low = Recipe.of("roof", SphericalCap.ofRise(c, h)).withChord(0.2);
        Result result = run(low);
        Sensitivity sensitivity = result.pieces().get(0).sensitivity().orElseThrow();
        double lost = h - Math.sqrt(h * h - 3 * c * Sensitivity.SHRINK / 8);
        assertEquals(2, sensitivity.crowns().size());
        for (double change : one(sensitivity, Sensitivity.Cause.WELD).crown()) assertEquals(-lost, change, 0.05 * lost);
        List<String> words = SensitivityWords.of(sensitivity).stream().map(Sentence::text).toList();
        assertTrue(words.get(0).matches("a little off: 0\\.1 mm of weld shrink round the outer edge moves the outline by up to 0\\.\\d\\d mm"
                + " \\(.* in\\);"
                + " taken out of a line it lowers the crown along the middle \\(12\\.\\d mm\\) by 1\\.9\\d mm .*"), words.get(0));
        assertTrue(words.get(1).contains("K and n do not move"), words.get(1));
        assertTrue(words.get(2).startsWith("a little off: scan noise of 0.5 mm in waves of 100 mm moves the outline by up to "), words.get(2));
        assertEquals(3, words.size());
        Sensitivity none = new Sensitivity(List.of(), List.of(), true, true);
        for (Sentence sentence : SensitivityWords.of(none))
            assertTrue(sentence.text().endsWith(": not known, the blank did not come out"), sentence.text());
    }

    @Test
    void whatIsNotAskedIsNotComputedAndWhatCannotBeIsSaid() throws Refusal {
        Recipe tube = Recipe.of("tube", new Cylinder(80, 300, Math.toRadians(200)));
        assertTrue(FlattenJob.run(tube, Given.file(Path.of("t.yaml")), Progress.NONE).pieces().get(0).sensitivity().isEmpty());
        Result result = run(tube);
        assertTrue(result.pieces().get(0).sensitivity().isPresent());
        assertEquals(0, result.findings().stream().filter(f -> f.kind() == Finding.Kind.SENSITIVITY_LEFT_OUT).count());
    }
}
