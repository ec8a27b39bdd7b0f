package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.metal.FormingLimit;
import blankwright.project.AlloyReader;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LimitPictureTest {
    private static final FormingLimit SOFT = FormingLimit.of(AlloyReader.shipped().named("3003-O"), 1.2);

    private static List<LimitPicture.Place> places(int count) {
        Random random = new Random(7);
        List<LimitPicture.Place> places = new ArrayList<>();
        for (int p = 0; p < count; p++) {
            double[] major = new double[400], minor = new double[400];
            for (int i = 0; i < major.length; i++) {
                double a = 0.02 * p + 0.015 * random.nextGaussian(), b = 0.05 - 0.03 * p + 0.02 * random.nextGaussian();
                major[i] = Math.max(a, b);
                minor[i] = Math.min(a, b);
            }
            places.add(new LimitPicture.Place("zone " + (p + 1) + (p % 2 == 0 ? ", stretch" : ", shrink"), major, minor));
        }
        return places;
    }

    private static List<String> words(Canvas canvas) {
        return canvas.labels().stream().map(Canvas.Label::text).toList();
    }

    @Test
    void saysMetalBasisAndTheWorstPlace() {
        Canvas canvas = LimitPicture.drawn(new Caption("nose cap", List.of("sheet 1.20 mm (0.047 in)", "3003-O")), SOFT, places(6));
        List<String> words = words(canvas);
        String all = String.join(" ", words);
        for (String part : new String[] {"nose cap", "3003-O, 1.20 mm", "Basis: estimate: Hill's local neck left, Swift's diffuse neck right", "n 0.230: from memory", "zone 6, shrink",
            "major", "minor", "of the limit", "80 % of it"}) assertTrue(all.contains(part), part + " in " + all);
    }

    /** One spot at a known margin: 0.115 at plane strain, where the limit is n - e0/1.1547, is half of it. */
    @Test
    void theRingedSpotIsTheOneNearestToTheLimit() {
        double limit = SOFT.limit(0);
        List<LimitPicture.Place> places = List.of(new LimitPicture.Place("a", new double[] {0.01, limit / 2}, new double[] {-0.2, 0}),
                new LimitPicture.Place("b", new double[] {-0.1}, new double[] {-0.3}));
        List<String> words = words(LimitPicture.drawn(new Caption("p", List.of()), SOFT, places));
        assertTrue(words.contains("50 % of the limit"), words.toString());
        assertEquals(1, words.stream().filter("50 %"::equals).count());
        assertEquals(1, words.stream().filter("0 %"::equals).count());
    }

    /** A spot is drawn where it belongs: the colour of its place stands on the grid lines that cross there. */
    @Test
    void aSpotStandsAtItsStrains() {
        Picture with = LimitPicture.of(new Caption("p", List.of()), SOFT, List.of(new LimitPicture.Place("a", new double[] {0.1, 0.2}, new double[] {0, -0.1})));
        int seen = 0;
        long sumX = 0, sumY = 0;
        for (int y = 300; y < 1900; y++) for (int x = 300; x < 2300; x++) if (with.colour(x, y) == 0x0072B2) {
            seen++;
            sumX += x;
            sumY += y;
        }
        assertTrue(seen > 100, seen + " elements");
        // the middle of both spots is at minor -0.05, major 0.15: between the lines drawn for 0 and -0.1, found by their ink
        double perMm = with.perMm(), middleX = sumX / (double) seen / perMm, middleY = sumY / (double) seen / perMm;
        double level = SOFT.limit(0), air = 0.04 * Math.max(1.6 * level + 0.15 * level, 0.7 * level + Math.max(0.1, 0.7 * level));
        double left = -Math.max(0.1, 0.7 * level) - air, right = 0.7 * level + air, low = -0.15 * level - air, high = 1.6 * level + air;
        assertEquals(24 + (-0.05 - left) / (right - left) * (297 - 14 - 78 - 24), middleX, 0.15);
        assertEquals(210 - 7 - 33 + 5 - (0.15 - low) / (high - low) * (210 - 16.5 - 7 - 33), middleY, 0.15);
    }

    /** Three zones with the very same strains: none hides another, and none is drawn where it is not. */
    @Test
    void placesThatFallTogetherAreAllSeen() {
        double[] major = new double[500], minor = new double[500];
        for (int i = 0; i < 500; i++) {
            major[i] = 0.1 + 0.02 * Math.sin(i);
            minor[i] = 0.02 * Math.cos(7 * i);
        }
        Picture picture = LimitPicture.of(new Caption("p", List.of()), SOFT, List.of(new LimitPicture.Place("a", major, minor),
                new LimitPicture.Place("b", major, minor), new LimitPicture.Place("c", major, minor)));
        int[] seen = new int[3];
        for (int y = 300; y < 1900; y++) for (int x = 300; x < 2300; x++)
            for (int p = 0; p < 3; p++) if (picture.colour(x, y) == new int[] {0x0072B2, 0xE69F00, 0x009E73}[p]) seen[p]++;
        int all = seen[0] + seen[1] + seen[2];
        for (int count : seen) assertTrue(count > 0.15 * all && all > 5000, java.util.Arrays.toString(seen));
    }

    @Test
    void saysThatItIsNoBlankAndWhetherTheBlankMayBeCut() {
        assertTrue(words(LimitPicture.drawn(new Caption("p", List.of()), SOFT, places(2))).contains("A chart, not a blank: cut from blank.*"));
        assertTrue(words(LimitPicture.drawn(new Caption("p", List.of(), List.of("DO NOT CUT: past its limit.")), SOFT, places(2)))
                .contains("DO NOT CUT: past its limit."));
    }

    @Test
    void noWordStandsOnAnother() {
        for (FormingLimit limit : List.of(SOFT, FormingLimit.of(AlloyReader.shipped().named("drawing-steel"), 0.9), FormingLimit.of(AlloyReader.shipped().named("3003-H14"), 1))) {
            List<Canvas.Label> labels = LimitPicture.drawn(new Caption("panel", List.of("notes"), limit == SOFT ? List.of() : List.of("DO NOT CUT: no.")), limit, places(9)).labels();
            for (int i = 0; i < labels.size(); i++) for (int j = 0; j < i; j++) {
                Canvas.Label a = labels.get(i), b = labels.get(j);
                boolean over = a.text().endsWith("of the limit") || b.text().endsWith("of the limit");        // stands on the field on purpose
                assertTrue(over || !a.meets(b), a + " on " + b);
            }
        }
    }

    @Test
    void nothingToShowIsAPictureToo() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        LimitPicture.of(new Caption("p", List.of()), SOFT, List.of()).writePng(out);
        assertTrue(out.size() > 10_000);
        assertThrows(IllegalArgumentException.class, () -> new LimitPicture.Place("a", new double[] {0}, new double[] {1}));
        assertThrows(IllegalArgumentException.class, () -> new LimitPicture.Place("a", new double[] {0}, new double[0]));
        assertThrows(IllegalArgumentException.class, () -> new LimitPicture.Place("a", new double[] {Double.NaN}, new double[] {0}));
    }
}
