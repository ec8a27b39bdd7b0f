package blankwright.drawing;

import blankwright.outline.Curve;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A drawing with one of everything whose places are known. */
final class Samples {
    static final Cover COVER = new Cover("Tern nose cap", List.of("Hand: left", "Outside face up", "Steel 1.0 mm"), List.of("Sharp edges: wear gloves."));

    private Samples() { }

    /** Extents of its cut line: 0, 0 to 400, 200. */
    static Drawing plate() {
        List<Entity> all = new ArrayList<>();
        all.add(new Entity.Polyline(Layer.CUT, Curve.of(new double[] {0, 0, 300, 0, 300, 200, 0, 200}, new double[] {0, 1, 0, -0.2}, true)));
        all.add(new Entity.Circle(Layer.CUT, 150, 100, 20));
        all.add(new Entity.Line(Layer.MARK, 40, 100, 390, 100));
        all.add(new Entity.Line(Layer.MARK, 40, 100, 390, 100));                      // the same again
        all.add(new Entity.Line(Layer.TRIM, 20, 50, 300, 50));
        all.add(new Entity.Arc(Layer.SHRINK, 150, 100, 60, 0.3, 4));
        all.add(new Entity.Arc(Layer.STRETCH, 150, 100, 80, 0.3, -2));
        all.add(new Entity.Polyline(Layer.MARK, Curve.path(60, 20, 80, 40, 100, 20)));
        all.add(new Entity.Text("Tern 50° × 1.2 ± é ^ 100%% Ω", 60, 150, 6, Anchor.LEFT_BASE));
        all.add(new Entity.Text(Layer.TEXT, "line\nbreak", 250, 150, 6, 0.5, Anchor.CENTRE));
        return Drawing.of("Plate & <holes>", all);
    }

    interface Writer {
        void write(Drawing drawing, java.io.OutputStream to) throws IOException;
    }

    static byte[] bytes(Writer writer, Drawing drawing) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        writer.write(drawing, out);
        return out.toByteArray();
    }

    static Path file(Path dir, String name, Writer writer, Drawing drawing) throws IOException {
        return Files.write(dir.resolve(name), bytes(writer, drawing));
    }
}
