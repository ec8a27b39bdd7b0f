package blankwright.job;

import blankwright.drawing.Paper;
import blankwright.mesh.io.ObjWriter;
import blankwright.mesh.io.VtuWriter;
import blankwright.num.Lengths;
import blankwright.num.Progress;
import blankwright.picture.Caption;
import blankwright.picture.MapPiece;
import blankwright.picture.WorkMap;
import blankwright.shop.TapeLine;
import blankwright.shop.ZoneOptions;
import blankwright.strain.StrainField;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntToDoubleFunction;

/** All that goes to the bench: writes the files of a result into a folder, whole or not at all. */
public final class Packet {
    private final Result result;

    private Packet(Result result) {
        this.result = result;
    }

    /** Writes and keeps the files; returns them, {@code summary.json} last. */
    public static List<Path> write(Result result, OutputFolder to, Set<Output> asked, Paper paper, Progress progress) throws IOException {
        new Packet(result).write(to, asked, paper, progress);
        return to.keep();
    }

    private void write(OutputFolder to, Set<Output> asked, Paper paper, Progress progress) throws IOException {
        Stopwatch watch = new Stopwatch();
        List<Piece> pieces = result.pieces();
        progress.at("writing", 0);
        Map<String, OutputFolder.Content> files = new LinkedHashMap<>();
        if (asked.contains(Output.PNG)) pictures(files);
        if (asked.contains(Output.OBJ)) files.put("flat.obj", out -> ObjWriter.write(pieces.stream().map(Piece::map).toList(), out));
        if (asked.contains(Output.VTU)) files.put("panel.vtu", out -> VtuWriter.write(pieces.stream().map(Packet::part).toList(), out));
        if (asked.contains(Output.CSV)) files.put("work.csv", out -> WorkCsv.write(pieces, out));
        to.writeAll(files);
        Result.Seconds before = result.seconds();
        double write = watch.lap(), total = before.read() + before.prepare() + before.flatten() + write;
        to.write("summary.json", out -> Summary.write(result, write, total, Stopwatch.peakMemoryMb(), out));
    }

    private void pictures(Map<String, OutputFolder.Content> files) {
        List<MapPiece> pieces = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            List<TapeLine> marks = new ArrayList<>(piece.stations().centreLine());
            piece.stations().stations().forEach(station -> marks.addAll(station.lines()));
            pieces.add(new MapPiece(result.pieceName(i), piece.map(), piece.vertices(), piece.zones(), marks));
        }
        WorkMap map = WorkMap.of(new Caption(result.recipe().name(), notes()), ZoneOptions.DEFAULT.neutral(), pieces);
        files.put("work-map-blank.png", out -> map.onBlank().writePng(out));
        files.put("work-map-form.png", out -> map.onForm().writePng(out));
    }

    /** Short lines for every sheet of paper. */
    private List<String> notes() {
        List<String> notes = new ArrayList<>(result.warnings());
        result.recipe().thickness().ifPresent(t -> notes.add("sheet " + Lengths.exact(t)));
        return notes;
    }

    /** The form with its fields: stretches and logarithmic strains per triangle, the place on the blank per vertex. */
    private static VtuWriter.Part part(Piece piece) {
        StrainField field = piece.strain();
        int n = field.triangleCount();
        Map<String, double[]> cells = new LinkedHashMap<>();
        cells.put("stretch1", each(n, field::stretch1));
        cells.put("stretch2", each(n, field::stretch2));
        double[] direction = new double[3 * n];
        for (int t = 0; t < n; t++) {
            direction[3 * t] = field.directionX(t);
            direction[3 * t + 1] = field.directionY(t);
            direction[3 * t + 2] = field.directionZ(t);
        }
        cells.put("direction1", direction);
        cells.put("strain1", each(n, field::strain1));
        cells.put("strain2", each(n, field::strain2));
        cells.put("thickness_strain", each(n, field::thicknessStrain));
        double[] flat = new double[3 * piece.map().form().vertexCount()];
        for (int v = 0; v < flat.length / 3; v++) {
            flat[3 * v] = piece.map().u(v);
            flat[3 * v + 1] = piece.map().v(v);
        }
        return new VtuWriter.Part(piece.map().form(), cells, Map.of("flat", flat));
    }

    private static double[] each(int n, IntToDoubleFunction value) {
        double[] values = new double[n];
        for (int i = 0; i < n; i++) values[i] = value.applyAsDouble(i);
        return values;
    }
}
