package blankwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.drawing.Drawing;
import blankwright.drawing.Entity;
import blankwright.drawing.Layer;
import blankwright.drawing.Lettering;
import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.CutToDisk;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.cut.Seam;
import blankwright.num.Progress;
import blankwright.outline.Curve;
import blankwright.outline.Curve.Box;
import blankwright.shape.Cylinder;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shop.Instruction;
import blankwright.shop.Layout;
import blankwright.shop.SeamEdges;
import blankwright.shop.Stations;
import blankwright.shop.TapeLine;
import blankwright.shop.Zone;
import blankwright.shop.Zones;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class BlankSheetTest {
    private static final SheetNotes NOTES = new SheetNotes("nose cap", List.of("sheet 1.2 mm", "left hand"));
    private static final List<BlankPiece> CAP = pieces(flat(new SphericalCap(250, Math.toRadians(40)).mesh()));
    private static final List<BlankPiece> THREE = pieces(flat(new SphericalCap(250, Math.toRadians(30)).mesh()),
            flat(TorusSection.grid(1.8, 1.2, 330, 75, 3000)), flat(new Cylinder(200, 100, 1.0).mesh()));

    private static FlatMap flat(TriMesh form) {
        return ((Outcome.Converged) Flattener.flatten(form, FlattenOptions.DEFAULT, Progress.NONE)).map();
    }

    private static List<BlankPiece> pieces(FlatMap... maps) {
        List<BlankPiece> pieces = new ArrayList<>();
        List<FlatMap> laid = Layout.of(List.of(maps), 60);
        for (int i = 0; i < laid.size(); i++) {
            StrainField strain = StrainField.of(laid.get(i));
            Stations stations = Stations.of(laid.get(i));
            List<TapeLine> lines = new ArrayList<>();
            stations.stations().forEach(s -> lines.addAll(s.lines()));
            pieces.add(new BlankPiece(laid.size() == 1 ? "" : "" + (char) ('A' + i), laid.get(i), VertexStrain.of(strain), Zones.of(strain),
                    stations.centreLine(), lines, List.of(), List.of(), List.of(), List.of(), List.of(), List.of()));
        }
        return pieces;
    }

    private static double area(Drawing drawing, Layer layer) {
        double sum = 0;
        for (Entity entity : drawing.entities()) {
            if (entity.layer() == layer && entity instanceof Entity.Polyline p && p.curve().isClosed()) sum += p.curve().area();
        }
        return sum;
    }

    private static List<Entity.Text> texts(Drawing drawing) {
        return drawing.entities().stream().filter(e -> e instanceof Entity.Text).map(e -> (Entity.Text) e).toList();
    }

    @Test
    void cutIsTheOutlineOfTheFlatPieces() {
        Drawing drawing = BlankSheet.of(NOTES, THREE, 0);
        double flat = THREE.stream().mapToDouble(p -> p.map().area()).sum();
        double rim = 5000;      // mm, more than all outlines together
        assertEquals(flat, area(drawing, Layer.CUT), rim * BlankSheet.TOLERANCE);
        assertEquals(3, drawing.entities().stream().filter(e -> e.layer() == Layer.CUT).count());
        assertTrue(drawing.entities().stream().noneMatch(e -> e.layer() == Layer.TRIM));
    }

    /** Steiner: a convex outline of area A and length L grown by r has the area A + L r + pi r². */
    @Test
    void allowanceMovesCutOutAndKeepsTheFinishedEdgeOnTrim() {
        double r = 25;
        Drawing drawing = BlankSheet.of(NOTES, CAP, r);
        double net = CAP.get(0).map().area();
        assertEquals(net, area(drawing, Layer.TRIM), 1200 * BlankSheet.TOLERANCE);
        double length = drawing.entities().stream().filter(e -> e.layer() == Layer.TRIM).mapToDouble(e -> ((Entity.Polyline) e).curve().length()).sum();
        assertEquals(net + length * r + Math.PI * r * r, area(drawing, Layer.CUT), 1.5 * 1400 * BlankSheet.TOLERANCE);
        assertTrue(texts(drawing).stream().anyMatch(t -> t.text().equals("CUT is 25.0 mm outside the finished edge TRIM")));
    }

    @Test
    void numbersPrintedAreTheNumbersComputed() {
        Pattern pattern = Pattern.compile("([A-C]?)(\\d+) (shrink|stretch) ([+-]\\d+\\.\\d+) mm over (\\d+(?:\\.\\d)?) mm");
        int read = 0;
        for (Entity.Text text : texts(BlankSheet.of(NOTES, THREE, 0))) {
            Matcher m = pattern.matcher(text.text());
            if (!m.matches()) continue;
            Zone zone = THREE.get(m.group(1).charAt(0) - 'A').zones().list().get(Integer.parseInt(m.group(2)) - 1);
            assertEquals(zone.instruction().word(), m.group(3));
            assertEquals(zone.line().change(), Double.parseDouble(m.group(4)), 0.0501);
            assertEquals(zone.line().blankLength(), Double.parseDouble(m.group(5)), 0.501);
            assertEquals(zone.instruction() == Instruction.SHRINK, m.group(4).startsWith("-"), text.text());
            read++;
        }
        assertTrue(read >= 3, read + " zones said in full");
        TapeLine centre = CAP.get(0).centreLine().get(0);
        String check = String.format(java.util.Locale.ROOT, "check length centre line: flat %.1f mm, formed %.1f mm", centre.blankLength(),
                centre.formLength());
        assertTrue(texts(BlankSheet.of(NOTES, CAP, 0)).stream().anyMatch(t -> t.text().equals(check)), check);
    }

    /** Grey print or one pen: each zone carries at least one arrow of its own sign, known by its shape alone. */
    @Test
    void everyZoneHasAnArrowOfItsSign() {
        for (List<BlankPiece> pieces : List.of(CAP, THREE)) {
            Drawing drawing = BlankSheet.of(NOTES, pieces, 0);
            for (BlankPiece piece : pieces) {
                for (Zone zone : piece.worked()) {
                    Layer layer = zone.instruction() == Instruction.SHRINK ? Layer.SHRINK : Layer.STRETCH;
                    boolean found = false;
                    for (Entity entity : drawing.entities()) {
                        if (entity.layer() != layer || !(entity instanceof Entity.Polyline head) || head.curve().vertexCount() != 3
                                || head.curve().isClosed()) continue;
                        found |= inZone(piece, zone, head.curve().x(1), head.curve().y(1));
                    }
                    assertTrue(found, "zone " + zone.number() + " to " + zone.instruction());
                }
            }
        }
    }

    private static boolean inZone(BlankPiece piece, Zone zone, double u, double v) {
        FlatMap map = piece.map();
        for (int t = 0; t < map.form().triangleCount(); t++) {
            if (piece.zones().zoneOf(t) != zone.number()) continue;
            int a = map.form().corner(t, 0), b = map.form().corner(t, 1), c = map.form().corner(t, 2);
            if (left(map, a, b, u, v) && left(map, b, c, u, v) && left(map, c, a, u, v)) return true;
        }
        return false;
    }

    private static boolean left(FlatMap map, int a, int b, double u, double v) {
        return (map.u(b) - map.u(a)) * (v - map.v(a)) - (map.v(b) - map.v(a)) * (u - map.u(a)) >= 0;
    }

    @Test
    void noLetteringCoversOther() {
        for (List<BlankPiece> pieces : List.of(CAP, THREE)) {
            List<Entity.Text> texts = texts(BlankSheet.of(NOTES, pieces, 10));
            List<Box> boxes = new ArrayList<>();
            for (Entity.Text t : texts) {
                double w = Lettering.width(t.text(), t.height()), x = t.x() - t.anchor().along() * w, y = t.y() - t.anchor().up() * t.height();
                boxes.add(new Box(x, y, x + w, y + t.height()));
            }
            for (int i = 0; i < boxes.size(); i++)
                for (int j = 0; j < i; j++) assertFalse(boxes.get(i).meets(boxes.get(j)), texts.get(i).text() + " on " + texts.get(j).text());
        }
    }

    @Test
    void nothingIsDrawnTwiceAndOnlyOnItsLayer() {
        Drawing drawing = BlankSheet.of(NOTES, THREE, 12);
        Set<Entity> seen = new HashSet<>(drawing.entities());
        assertEquals(drawing.entities().size(), seen.size());
        for (Entity entity : drawing.entities()) assertEquals(entity instanceof Entity.Text, entity.layer() == Layer.TEXT);
        Box cut = drawing.only(Set.of(Layer.CUT)).box();
        for (Entity entity : drawing.entities()) {
            if (entity.layer() == Layer.TEXT || entity.layer() == Layer.CUT) continue;
            Box box = entity.box();
            assertTrue(cut.grown(1e-6).x0() <= box.x0() && box.x1() <= cut.x1() && cut.y0() <= box.y0() && box.y1() <= cut.y1(),
                    entity + " reaches beyond what is cut");
        }
    }

    /** Both ticks of a seam mark stand at the same place of the closed tube, point into the metal and carry the same name. */
    @Test
    void seamMarksMeetAgain() {
        Opened opened = CutToDisk.of(new Cylinder(80, 260, 2 * Math.PI).mesh(), Progress.NONE);
        Seam seam = opened.seams().get(0);
        FlatMap map = flat(opened.mesh());
        int n = seam.edgeCount();
        int[] left = new int[2 * n], right = new int[2 * n];
        double[] lengths = new double[n];
        for (int i = 0; i < n; i++) {
            lengths[i] = seam.length(i);
            for (int end = 0; end < 2; end++) {
                left[2 * i + end] = seam.left(i, end);
                right[2 * i + end] = seam.right(i, end);
            }
        }
        BlankPiece plain = pieces(map).get(0);
        BlankPiece piece = new BlankPiece("", map, VertexStrain.of(StrainField.of(map)), plain.zones(), List.of(), List.of(),
                List.of(), List.of(), List.of(), List.of(), List.of(), List.of(SeamEdges.of("s1", left, right, lengths)));
        Drawing drawing = BlankSheet.of(new SheetNotes("tube", List.of()), List.of(piece), 0);
        List<Entity.Line> ticks = drawing.entities().stream().filter(e -> e.layer() == Layer.MARK).map(e -> (Entity.Line) e).toList();
        assertEquals(6, ticks.size(), "260 mm: three marks on each side");
        Curve outline = ((Entity.Polyline) drawing.entities().get(0)).curve();
        for (int i = 0; i < 6; i++) {
            int start = i % 2 == 0 ? left[0] : right[0];
            assertEquals((i / 2 + 0.5) * seam.length() / 3, Math.hypot(ticks.get(i).x0() - map.u(start), ticks.get(i).y0() - map.v(start)), 1e-4);
            assertTrue(outline.contains(ticks.get(i).x1(), ticks.get(i).y1()), "tick " + i + " points into the metal");
        }
        for (String name : List.of("s1-1", "s1-2", "s1-3"))
            assertEquals(2, texts(drawing).stream().filter(x -> x.text().equals(name)).count(), name);
    }

    /** The dish is shrunk along its very rim: that line is the edge, and no mark may lie along a cut. */
    @Test
    void nothingToMeasureIsMarkedAlongTheEdge() {
        FlatMap map = CAP.get(0).map();
        double radius = map.size()[0] / 2, u = map.box()[0] + radius, v = map.box()[1] + radius;
        for (Entity entity : BlankSheet.of(NOTES, CAP, 0).entities()) {
            if (entity.layer() != Layer.SHRINK || !(entity instanceof Entity.Polyline line) || line.curve().length() < 50) continue;
            for (int i = 0; i < line.curve().vertexCount(); i++)
                assertTrue(Math.hypot(line.curve().x(i) - u, line.curve().y(i) - v) < radius - 0.8, "a mark beside the cut");
        }
    }

    @Test
    void refusesWhatIsNoSheet() {
        assertEquals("a sheet of no piece", assertThrows(IllegalArgumentException.class, () -> BlankSheet.of(NOTES, List.of(), 0)).getMessage());
        assertEquals("allowance -1.0 mm: must be 0 or more",
                assertThrows(IllegalArgumentException.class, () -> BlankSheet.of(NOTES, CAP, -1)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> SeamEdges.of("s", new int[] {1}, new int[] {2}, new double[] {1}));
    }
}
