package blankwright.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.CutToDisk;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.cut.Seam;
import blankwright.num.Progress;
import blankwright.shape.Cylinder;
import blankwright.shape.Fineness;
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
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.stream.ImageInputStream;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class WorkMapTest {
    private static final Caption CAPTION = new Caption("nose cap", List.of("outside face up", "sheet 1.2 mm"));
    private static final double NEUTRAL = 0.001;

    private static FlatMap flat(TriMesh form) {
        return ((Outcome.Converged) Flattener.flatten(form, FlattenOptions.DEFAULT, Progress.NONE)).map();
    }

    private static List<MapPiece> pieces(FlatMap... maps) {
        List<MapPiece> pieces = new ArrayList<>();
        List<FlatMap> laid = Layout.of(List.of(maps));
        for (int i = 0; i < laid.size(); i++) {
            StrainField strain = StrainField.of(laid.get(i));
            Stations stations = Stations.of(laid.get(i), Math.max(1, laid.get(i).size()[0] / 5));
            List<TapeLine> lines = new ArrayList<>(stations.centreLine());
            stations.stations().forEach(s -> lines.addAll(s.lines()));
            pieces.add(new MapPiece(laid.size() == 1 ? "" : "" + (char) ('A' + i), laid.get(i), VertexStrain.of(strain), Zones.of(strain), lines,
                    List.of()));
        }
        return pieces;
    }

    /** A plate that forming makes 3 % longer one way: known strain, so known colour. */
    private static FlatMap plate(double stretch) {
        int n = 12;
        double[] xyz = new double[3 * (n + 1) * (n + 1)], uv = new double[2 * (n + 1) * (n + 1)];
        int[] tri = new int[6 * n * n];
        for (int v = 0; v < uv.length / 2; v++) {
            xyz[3 * v] = 200.0 * (v % (n + 1)) / n;
            xyz[3 * v + 1] = 130.0 * (v / (n + 1)) / n;
            uv[2 * v] = xyz[3 * v] / stretch;
            uv[2 * v + 1] = xyz[3 * v + 1];
        }
        for (int c = 0, at = 0; c < n * n; c++) {
            int v = c / n * (n + 1) + c % n;
            for (int corner : new int[] {v, v + 1, v + n + 2, v, v + n + 2, v + n + 1}) tri[at++] = corner;
        }
        TriMesh square = TriMesh.of(xyz, tri);
        return FlatMap.of(square, uv);
    }

    @Test
    void knownStrainHasItsColourOnTheBlank() {
        for (double stretch : new double[] {1.031, 0.953, 1.0}) {
            WorkMap map = WorkMap.of(CAPTION, NEUTRAL, pieces(plate(stretch)));
            int colour = map.scale().colourOf(stretch - 1);
            Picture picture = map.onBlank();
            int same = 0;
            for (int y = 300; y < 1900; y++) for (int x = 200; x < 2400; x++) if (picture.colour(x, y) == colour) same++;
            assertTrue(same > 600_000, "colour of " + stretch + " on " + same + " elements");
        }
    }

    /** Grey print: the sign is drawn. A map seen in grey alone still differs between a shrunk and a stretched plate. */
    @Test
    void signCanBeReadInGreyPrint() {
        Canvas shrunk = WorkMap.of(CAPTION, NEUTRAL, pieces(plate(0.97))).drawnBlank();
        Canvas stretched = WorkMap.of(CAPTION, NEUTRAL, pieces(plate(1.03))).drawnBlank();
        assertTrue(shrunk.labels().stream().anyMatch(l -> l.text().startsWith("1  shrink -")), "said in words");
        assertTrue(stretched.labels().stream().anyMatch(l -> l.text().startsWith("1  stretch +")), "said in words");
        int arrows = 0;
        for (Samples.Sample s : Samples.spread(WorkField.of(plate(0.97), VertexStrain.of(StrainField.of(plate(0.97))), NEUTRAL), 10)) {
            assertTrue(s.amount() < -0.029);
            arrows++;
        }
        assertTrue(arrows > 80, arrows + " places for arrows");
        Arrows.Shapes meeting = Arrows.of(0, 0, 1, 0, 10, true), parting = Arrows.of(0, 0, 1, 0, 10, false);
        assertTrue(parting.heads().contains(4.5, 0) && !meeting.heads().contains(4.5, 0), "a head points outwards only when parting");
        assertTrue(meeting.heads().contains(1, 0) && !parting.heads().contains(1, 0), "heads meet in the middle only when meeting");
    }

    @Test
    void noWordsStandOnOthers() {
        List<List<MapPiece>> all = List.of(
                pieces(flat(new SphericalCap(250, Math.toRadians(40)).mesh())),
                pieces(flat(TorusSection.grid(2.8, 2.2, 330, 75, 3000))),
                pieces(flat(new Cylinder(200, 500, 2).mesh())),
                pieces(flat(new SphericalCap(200, 0.5).mesh()), flat(TorusSection.grid(1.8, 1.2, 330, 75, 2000)), flat(new Cylinder(200, 90, 1).mesh())));
        for (List<MapPiece> pieces : all) {
            WorkMap map = WorkMap.of(CAPTION, NEUTRAL, pieces);
            for (Canvas canvas : List.of(map.drawnBlank(), map.drawnForm())) {
                List<Canvas.Label> labels = canvas.labels();
                assertTrue(labels.size() > 20);
                for (int i = 0; i < labels.size(); i++) {
                    Canvas.Label a = labels.get(i);
                    assertTrue(a.x() >= 0 && a.y() >= 0 && a.x() + a.width() <= canvas.width() && a.y() + a.height() <= canvas.height(), a + " off the paper");
                    for (int j = 0; j < i; j++) assertFalse(a.meets(labels.get(j)), a + " on " + labels.get(j));
                }
            }
        }
    }

    @Test
    void everyWorkedZoneIsListedWithItsAmount() {
        List<MapPiece> pieces = pieces(flat(new SphericalCap(250, Math.toRadians(40)).mesh()));
        List<String> words = WorkMap.of(CAPTION, NEUTRAL, pieces).drawnForm().labels().stream().map(Canvas.Label::text).toList();
        long listed = words.stream().filter(w -> w.matches("(shrink|stretch)  [+-][0-9.]+ mm over [0-9.]+ mm")).count();
        assertEquals(pieces.get(0).zones().list().stream().filter(z -> z.instruction() != Instruction.LEAVE).count(), listed);
    }

    /** What is coloured in a zone the way the zone is worked is no more than the largest strain printed for it, and somewhere as much. */
    @Test
    void numbersOfZonesAgreeWithTheColours() {
        MapPiece piece = pieces(flat(TorusSection.grid(2.0, 1.6, 330, 75, 4000))).get(0);
        WorkField field = WorkField.of(piece.map(), piece.strain(), NEUTRAL);
        assertTrue(piece.worked().size() >= 2);
        for (Zone zone : piece.worked()) {
            double sign = zone.instruction() == Instruction.SHRINK ? -1 : 1, most = 0;
            for (int i = 0; i < 3 * field.triangleCount(); i++) {
                boolean in = piece.zones().zoneOf(field.partOf(i / 3)) == zone.number();
                if (in) most = Math.max(most, sign * field.amount(field.corners()[i]));
            }
            assertEquals(sign * zone.largestStrain(), most, 1e-12, "zone " + zone.number());
        }
    }

    /** A closed tube, cut open along its length: each mark is named at both edges of the blank, and where the seam is seen on the form. */
    @Test
    void seamMarksAreNamedOnBothMaps() {
        Opened opened = CutToDisk.of(new Cylinder(80, 260, 2 * Math.PI).mesh(), Progress.NONE);
        Seam seam = opened.seams().get(0);
        int[] left = new int[2 * seam.edgeCount()], right = new int[left.length];
        double[] lengths = new double[seam.edgeCount()];
        for (int i = 0; i < left.length; i++) {
            lengths[i / 2] = seam.length(i / 2);
            left[i] = seam.left(i / 2, i % 2);
            right[i] = seam.right(i / 2, i % 2);
        }
        MapPiece plain = pieces(flat(opened.mesh())).get(0);
        MapPiece piece = new MapPiece("", plain.map(), plain.strain(), plain.zones(), plain.marks(), List.of(SeamEdges.of("A", left, right, lengths)));
        WorkMap map = WorkMap.of(CAPTION, NEUTRAL, List.of(piece));
        for (String name : List.of("A-1", "A-2", "A-3")) {
            assertEquals(2, map.drawnBlank().labels().stream().filter(l -> l.text().equals(name)).count(), name);
            assertTrue(map.drawnForm().labels().stream().anyMatch(l -> l.text().equals(name)), name);
        }
    }

    @Test
    void rolledPanelSaysBendingOnly() {
        WorkMap map = WorkMap.of(CAPTION, NEUTRAL, pieces(flat(new Cylinder(200, 300, 1.5).mesh())));
        assertTrue(map.scale().bendingOnly());
        assertTrue(map.drawnBlank().labels().stream().anyMatch(l -> l.text().equals("Bending only")));
    }

    @Test
    void warningsStandOnBothMaps() {
        Caption caption = new Caption("tail", List.of(), List.of("The blank covers itself in 2 places."));
        WorkMap map = WorkMap.of(caption, NEUTRAL, pieces(plate(1.01)));
        for (Canvas canvas : List.of(map.drawnBlank(), map.drawnForm()))
            assertTrue(canvas.labels().stream().anyMatch(l -> l.text().equals("Do not cut yet")));
    }

    @Test
    void tinyHugeAndNarrowPanelsAreDrawnOnTheSamePaper() {
        List<FlatMap> maps = List.of(flat(new SphericalCap(20, 0.5).mesh()), flat(new SphericalCap(12_000, 0.24).mesh(Fineness.triangles(2000))),
                flat(TorusSection.grid(3.0, 0.5, 600, 40, 2000)), flat(TorusSection.grid(3.0, 0.5, 600, 40, 2000)).moved(Math.PI / 2, 0, 0));
        for (FlatMap map : maps) {
            WorkMap drawn = WorkMap.of(CAPTION, NEUTRAL, pieces(map));
            for (Picture picture : List.of(drawn.onBlank(), drawn.onForm())) {
                assertEquals(3508, picture.width());
                assertEquals(2480, picture.height());
            }
        }
    }

    @Test
    void pngReadsBackWithItsSizeOnPaperAndTheSameBitsEachTime() throws Exception {
        List<MapPiece> pieces = pieces(flat(TorusSection.grid(2.0, 1.6, 330, 75, 4000)));
        byte[] first = null;
        for (int k = 0; k < 2; k++) {
            Picture picture = WorkMap.of(CAPTION, NEUTRAL, pieces).onForm();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            picture.writePng(out);
            if (first != null) {
                assertArrayEquals(first, out.toByteArray());
                continue;
            }
            first = out.toByteArray();
            ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
            try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(first))) {
                reader.setInput(in);
                BufferedImage image = reader.read(0);
                for (int y = 0; y < picture.height(); y += 7)
                    for (int x = 0; x < picture.width(); x += 7) assertEquals(picture.colour(x, y), image.getRGB(x, y) & 0xFFFFFF);
                IIOMetadata data = reader.getImageMetadata(0);
                Element size = (Element) ((Element) data.getAsTree("javax_imageio_png_1.0")).getElementsByTagName("pHYs").item(0);
                assertEquals(11811, Integer.parseInt(size.getAttribute("pixelsPerUnitXAxis")), "300 an inch");
            } finally {
                reader.dispose();
            }
        }
    }
}
