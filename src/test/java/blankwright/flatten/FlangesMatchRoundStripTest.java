package blankwright.flatten;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.Forms;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.num.Progress;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Flanges turned square all round a ring of flat metal, laid flat: the strain of their edge against one dimension, and against checks section 5,
 * b/(R - b) = +13.636 % and -b/(R + b) = -10.714 % for R 100, b 12, +4.167 % and -3.846 % for R 300 [C], of which the flat metal beside the bend takes
 * the less the wider it is.
 */
class FlangesMatchRoundStripTest {
    /** From the edge of the flange over a sharp fold to the edge of the web: radius at s. */
    private static double radius(double edge, double flange, boolean opening, double s) {
        return s <= flange ? edge : edge + (opening ? 1 : -1) * (s - flange);
    }

    private static double edgeStrain(double edge, double flange, double web, boolean opening, int cells) {
        int across = cells + (int) Math.round(cells * web / flange), round = Math.max(48, (int) (2 * Math.PI * edge * cells / flange / 2));
        TriMesh form = Forms.grid(round, across, true, false, (u, v) -> {
            int j = (int) Math.round(v * across);
            double s = j <= cells ? flange * j / cells : flange + web * (j - cells) / (across - cells), r = radius(edge, flange, opening, s);
            double a = opening ? -2 * Math.PI * u : 2 * Math.PI * u;
            return new double[] {r * Math.cos(a), -r * Math.sin(a), Math.min(0, s - flange)};
        });
        FlatMap map = Flattener.flatten(form, FlattenOptions.DEFAULT, Progress.NONE).map();
        RimLoops rims = RimLoops.of(form, EdgeTable.of(form));
        for (int i = 0; i < rims.count(); i++) {
            int[] loop = rims.loop(i);
            if (form.z(loop[0]) > -flange / 2) continue;
            double flat = 0;
            for (int k = 0; k < loop.length; k++) {
                int a = loop[k], b = loop[(k + 1) % loop.length];
                flat += Math.hypot(map.u(b) - map.u(a), map.v(b) - map.v(a));
            }
            return rims.length(form, i) / flat - 1;
        }
        throw new AssertionError("no edge");
    }

    private static double inOneDimension(double edge, double flange, double web, boolean opening) {
        double whole = flange + web;                        // from the rim nearer to the axis on the blank
        double blank = opening ? new RoundStrip(s -> radius(edge, flange, true, s), 0, flange, whole).rims()[0]
                : new RoundStrip(s -> radius(edge, flange, false, whole - s), 0, web, whole).rims()[1];
        return edge / blank - 1;
    }

    @ParameterizedTest
    @CsvSource({"100, 12, 60, true", "100, 12, 60, false", "300, 12, 60, true", "300, 12, 60, false"})
    void edgesComeNearAtSecondOrder(double edge, double flange, double web, boolean opening) {
        double exact = inOneDimension(edge, flange, web, opening);
        double coarse = Math.abs(edgeStrain(edge, flange, web, opening, 2) - exact), fine = Math.abs(edgeStrain(edge, flange, web, opening, 4) - exact);
        assertTrue(fine < 0.01 * Math.abs(exact), exact + ": " + coarse + " then " + fine);
        assertTrue(coarse > 3 * fine, exact + ": " + coarse + " then " + fine);
        assertEquals(opening, exact > 0);
    }

    /** The wider the flat metal beside it, the nearer the edge's strain is to the listed one, which it never reaches. */
    @ParameterizedTest
    @CsvSource({"100, true, .13636", "100, false, -.10714", "300, true, .04167", "300, false, -.03846"})
    void towardsTheListedStrain(double edge, boolean opening, double listed) {
        double before = 0;
        for (double web : new double[] {10, 30, 90}) {
            double strain = inOneDimension(edge, 12, web, opening) / listed;
            assertTrue(before < strain && strain < 1, web + ": " + strain);
            before = strain;
        }
        assertTrue(before > 0.85, edge + ": " + before);
    }
}
