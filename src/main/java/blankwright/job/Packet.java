package blankwright.job;

import blankwright.drawing.Cover;
import blankwright.drawing.Drawing;
import blankwright.drawing.DxfWriter;
import blankwright.drawing.Paper;
import blankwright.drawing.PdfWriter;
import blankwright.drawing.SvgWriter;
import blankwright.mesh.Finding;
import blankwright.mesh.FlatMap;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.io.ObjWriter;
import blankwright.mesh.io.VtuWriter;
import blankwright.metal.buckling.Tuck;
import blankwright.num.Lengths;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.num.Share;
import blankwright.outline.Curve;
import blankwright.picture.BucklingPicture;
import blankwright.picture.BucklingPiece;
import blankwright.picture.Caption;
import blankwright.picture.LimitPicture;
import blankwright.picture.MapPiece;
import blankwright.picture.PressedPicture;
import blankwright.picture.PressedPiece;
import blankwright.picture.ThicknessPicture;
import blankwright.picture.ThicknessPiece;
import blankwright.picture.WorkMap;
import blankwright.project.Recipe;
import blankwright.project.RecipeWriter;
import blankwright.project.Source;
import blankwright.sheet.BlankPiece;
import blankwright.sheet.BlankSheet;
import blankwright.sheet.SheetNotes;
import blankwright.sheet.TuckMark;
import blankwright.shop.SeamEdges;
import blankwright.shop.Spot;
import blankwright.shop.TapeLine;
import blankwright.shop.ZoneOptions;
import blankwright.strain.StrainField;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Objects;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** All that goes to the bench: writes the files of a result into a folder, whole or not at all. */
public final class Packet {
    /** Share of the whole work that is done when the writing begins. */
    static final double BEGINS = 0.8;
    /** About 3000 sheets, mm². */
    private static final double MOST_PAPER = 3000 * 180.0 * 260;
    static final List<String> CAUTIONS = List.of(
            "Cut edges are sharp: gloves for handling, none at rotating machines, and eye protection. Guards stay on presses and shears.",
            "Torch annealing and welding make fumes and fires: ventilate, clear the place, keep an extinguisher at hand.",
            "Where the part carries people or flies, licensed practice and local codes decide.");

    /** What the files begin with that show a proposed seam taken. */
    private static final String WITH_SEAM = "with-seam";

    private static final Pattern OURS = Pattern.compile("(with-seam-)?(blank\\.(pdf|dxf|svg)|(work-map-blank|work-map-form|thickness-blank|forming-limit"
            + "|buckling-map-blank|buckling(-\\d+)?)\\.png)|flat\\.obj|panel\\.vtu|work\\.csv|tucks\\.csv|work-sheet\\.md|with-seam\\.yaml");

    private final Result result;
    private final String prefix;
    private final LaidTapes tapes;

    private Packet(Result result, String prefix) {
        this.result = result;
        tapes = LaidTapes.of(result);
        this.prefix = prefix;
    }

    /**
     * What was written.
     *
     * @param files {@code summary.json} last
     * @param findings what could not be written and why
     * @param earlier names of files of an earlier packet that lie in the folder too, in order: they may not belong to this blank
     */
    public record Written(List<Path> files, List<Finding> findings, List<String> earlier) { }

    /**
     * Writes and keeps the files.
     *
     * @throws java.util.concurrent.CancellationException once the progress says they are no longer wanted; then none is kept
     */
    public static Written write(Result result, OutputFolder to, Set<Output> asked, Paper paper, Progress progress) throws IOException {
        List<Finding> findings = Patience.with(progress, () -> new Packet(result, "").write(to, asked, paper, progress));
        List<Path> files = to.keep();
        return new Written(files, findings, earlier(to.path(), files));
    }

    private static List<String> earlier(Path folder, List<Path> written) throws IOException {
        Set<String> now = written.stream().map(file -> file.getFileName().toString()).collect(Collectors.toSet());
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(file -> file.getFileName().toString()).filter(name -> OURS.matcher(name).matches() && !now.contains(name)).sorted().toList();
        }
    }

    private List<Finding> write(OutputFolder to, Set<Output> asked, Paper paper, Progress progress) throws IOException {
        Stopwatch watch = new Stopwatch();
        List<Piece> pieces = result.pieces();
        List<Finding> findings = new ArrayList<>();
        findings.addAll(tapes.findings());
        progress.at("drawing and writing", BEGINS);
        Map<String, OutputFolder.Content> files = new LinkedHashMap<>();
        drawings(files, asked, paper, findings);
        if (asked.contains(Output.OBJ)) files.put("flat.obj", out -> ObjWriter.write(pieces.stream().map(Piece::map).toList(), out));
        if (asked.contains(Output.VTU)) files.put("panel.vtu", out -> VtuWriter.write(pieces.stream().map(Packet::part).toList(), out));
        if (asked.contains(Output.CSV)) files.put("work.csv", out -> WorkCsv.write(pieces, out));
        if (asked.contains(Output.CSV) && pieces.stream().anyMatch(p -> p.buckled().isPresent()))
            files.put("tucks.csv", out -> TucksCsv.write(pieces, out));
        if (asked.contains(Output.MD)) {
            Set<String> others = Set.copyOf(files.keySet());
            files.put("work-sheet.md", out -> WorkSheet.write(result.withFindings(findings), tapes, others, out));
        }
        result.proposal().ifPresent(proposal -> {
            new Packet(proposal.taken(), WITH_SEAM + "-").drawings(files, asked, paper, findings);
            files.put(WITH_SEAM + ".yaml", out -> out.write(RecipeWriter.write(from(to.path(), proposal.taken())).getBytes(StandardCharsets.UTF_8)));
        });
        files.replaceAll((name, content) -> out -> content.writeTo(new WantedStream(out, progress)));
        to.writeAll(files);
        Result whole = result.withFindings(findings);
        Result.Seconds before = result.seconds();
        double write = watch.lap(), total = before.read() + before.prepare() + before.flatten() + write;
        to.write("summary.json", out -> Summary.write(whole, tapes, write, total, Stopwatch.peakMemoryMb(), out));
        return findings;
    }

    private void drawings(Map<String, OutputFolder.Content> files, Set<Output> asked, Paper paper, List<Finding> findings) {
        if (asked.contains(Output.PNG)) pictures(files);
        if (asked.contains(Output.PDF) || asked.contains(Output.DXF) || asked.contains(Output.SVG)) blank(files, asked, paper, findings);
    }

    /** The recipe as it is read in the folder, where a mesh has another way to it. */
    private static Recipe from(Path folder, Result result) {
        if (!(result.recipe().source() instanceof Source.OfMesh mesh)) return result.recipe();
        Path file = result.folder().resolve(mesh.file()).toAbsolutePath().normalize();
        Path way = Objects.equals(file.getRoot(), folder.getRoot()) ? folder.relativize(file) : file;
        return result.recipe().withSource(new Source.OfMesh(way.toString().replace(File.separatorChar, '/'), mesh.units()));
    }

    /** The blank as DXF, SVG and PDF hold it. */
    public static Drawing drawing(Result result) {
        return new Packet(result, "").drawing();
    }

    private Drawing drawing() {
        List<BlankPiece> pieces = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            pieces.add(new BlankPiece(result.pieceName(i), piece.map(), piece.vertices(), piece.zones(), piece.stations().centreLine(),
                    stationLines(piece), tapes.on(i), result.rolls(piece), piece.flanges(), piece.folds(), tucks(i), seams(i)));
        }
        List<String> lines = new ArrayList<>(result.warnings());
        lines.addAll(notes());
        return BlankSheet.of(new SheetNotes(result.recipe().name(), lines), pieces, result.recipe().trim().orElse(0));
    }

    private List<TuckMark> tucks(int i) {
        List<Tuck> tucks = result.pieces().get(i).buckled().map(Buckled::tucks).orElse(List.of());
        List<TuckMark> marks = new ArrayList<>();
        for (Tuck tuck : tucks)
            marks.add(new TuckMark(result.pieceName(i) + "T" + (marks.size() + 1), tuck.rim(), tuck.place(), tuck.base(), tuck.depth()));
        return marks;
    }

    private void blank(Map<String, OutputFolder.Content> files, Set<Output> asked, Paper paper, List<Finding> findings) {
        Drawing blank = drawing();
        if (asked.contains(Output.DXF)) files.put(prefix + "blank.dxf", out -> DxfWriter.write(blank, out));
        if (asked.contains(Output.SVG)) files.put(prefix + "blank.svg", out -> SvgWriter.write(blank, out));
        if (!asked.contains(Output.PDF)) return;
        Curve.Box box = blank.box();
        if (box.width() * box.height() > MOST_PAPER) {
            findings.add(new Finding(Finding.Kind.UNUSUAL_SIZE, 1, prefix + "blank.pdf was left out: the blank would take thousands of sheets of paper."));
            return;
        }
        files.put(prefix + "blank.pdf", out -> PdfWriter.write(blank, cover(), paper, out));
    }

    private Cover cover() {
        Recipe recipe = result.recipe();
        List<String> facts = new ArrayList<>(List.of("outside face up"));
        facts.addAll(notes());
        List<String> cautions = new ArrayList<>(result.warnings());
        if (!recipe.notes().isBlank()) cautions.add(recipe.notes().strip().replaceAll("\\s+", " "));
        cautions.addAll(CAUTIONS);
        return new Cover((result.warnings().isEmpty() ? "" : "DO NOT CUT: ") + recipe.name(), facts, cautions);
    }

    /**
     * The blank on sheets of paper, the bytes of {@code blank.pdf}.
     *
     * @throws IllegalArgumentException where it would take thousands of sheets
     */
    public static byte[] pdf(Result result, Paper paper) throws IOException {
        Packet packet = new Packet(result, "");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfWriter.write(packet.drawing(), packet.cover(), paper, out);
        return out.toByteArray();
    }

    /** Of piece i. Chosen seams are named by their number, A for the first, on every piece they bound; those added follow, piece by piece. */
    private List<SeamEdges> seams(int i) {
        int next = result.recipe().seams().size();
        for (int j = 0; j < i; j++) next += result.pieces().get(j).addedSeams();
        List<SeamEdges> seams = new ArrayList<>();
        for (Seam seam : result.pieces().get(i).seams())
            seams.add(edges(letters(seam.kind() == Seam.Kind.CHOSEN ? seam.number() - 1 : next++), seam));
        return seams;
    }

    /** Of piece i, in the order of its seams, under the names that blank and pictures give them. */
    static List<SeamEdges> seams(Result result, int i) {
        return new Packet(result, "").seams(i);
    }

    private static SeamEdges edges(String name, Seam seam) {
        int[] left = new int[2 * seam.edgeCount()], right = new int[left.length];
        double[] lengths = new double[seam.edgeCount()];
        for (int i = 0; i < left.length; i++) {
            left[i] = seam.left(i / 2, i % 2);
            right[i] = seam.right(i / 2, i % 2);
            lengths[i / 2] = seam.length(i / 2);
        }
        return SeamEdges.of(name, left, right, lengths);
    }

    /** A, B ... Z, AA, AB ... */
    private static String letters(int k) {
        return (k < 26 ? "" : letters(k / 26 - 1)) + (char) ('A' + k % 26);
    }

    private static List<TapeLine> stationLines(Piece piece) {
        return piece.stations().stations().stream().flatMap(station -> station.lines().stream()).toList();
    }

    /** The work map as its pictures show it: the same fields, colours and limits. */
    public static WorkMap workMap(Result result) {
        return new Packet(result, "").workMap();
    }

    private void pictures(Map<String, OutputFolder.Content> files) {
        WorkMap map = workMap();
        files.put(prefix + "work-map-blank.png", out -> map.onBlank().writePng(out));
        files.put(prefix + "work-map-form.png", out -> map.onForm().writePng(out));
        List<ThicknessPiece> thick = result.pieces().stream().flatMap(p -> p.thickness().map(t -> new ThicknessPiece(p.map(), t)).stream()).toList();
        if (!thick.isEmpty()) files.put(prefix + "thickness-blank.png", out -> ThicknessPicture.of(caption(), result.recipe().scales().thickness(), thick).writePng(out));
        result.pieces().stream().flatMap(piece -> piece.demand().stream()).findFirst().ifPresent(demand -> files.put(prefix + "forming-limit.png",
                out -> LimitPicture.of(caption(), demand.limit(), LimitPlaces.of(result)).writePng(out)));
        List<PressedPiece> pressed = result.pieces().stream().flatMap(p -> p.buckled().map(b -> pressed(p.map(), b)).stream()).toList();
        if (!pressed.isEmpty()) files.put(prefix + "buckling-map-blank.png",
                out -> PressedPicture.of(caption(), result.recipe().scales().buckling(), pressed).writePng(out));
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            if (piece.buckled().isEmpty() || piece.buckled().get().blank().modes().isEmpty() || piece.buckled().get().standsByFar()) continue;
            BucklingPiece buckling = buckling(result.pieceName(i), piece, piece.buckled().get());
            files.put(prefix + "buckling" + (result.pieces().size() == 1 ? "" : "-" + (i + 1)) + ".png",
                    out -> BucklingPicture.of(caption(), buckling).writePng(out));
        }
    }

    private Caption caption() {
        return new Caption(result.recipe().name(), notes(), result.warnings());
    }

    private static PressedPiece pressed(FlatMap map, Buckled buckled) {
        int worst = (int) Math.max(0, buckled.worst()[1]);
        return new PressedPiece(map, buckled.pressed(map.form()), Spot.of(map, worst, 0), buckled.map().required(worst), buckled.map().critical(worst));
    }

    private static BucklingPiece buckling(String name, Piece piece, Buckled buckled) {
        List<BucklingPiece.Mark> marks = buckled.tucks().stream().map(t -> new BucklingPiece.Mark(t.vertex(), t.base(), t.depth())).toList();
        return new BucklingPiece(name, piece.map(), buckled.blank().modes().get(0).displacement(), marks,
                BucklingWords.of(buckled).stream().map(Sentence::text).toList());
    }

    private WorkMap workMap() {
        List<MapPiece> pieces = new ArrayList<>();
        for (int i = 0; i < result.pieces().size(); i++) {
            Piece piece = result.pieces().get(i);
            List<TapeLine> marks = new ArrayList<>(piece.stations().centreLine());
            marks.addAll(stationLines(piece));
            marks.addAll(tapes.on(i));
            pieces.add(new MapPiece(result.pieceName(i), piece.map(), piece.vertices(), piece.zones(), marks, seams(i)));
        }
        WorkMap map = WorkMap.of(caption(), ZoneOptions.DEFAULT.neutral(), pieces);
        OptionalDouble end = result.recipe().scales().work();
        return end.isPresent() ? map.withLimit(end.getAsDouble() / 100) : map;
    }

    /** Short facts for every sheet of paper. */
    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        result.recipe().hand().ifPresent(hand -> notes.add(hand.word() + " hand"));
        result.recipe().thickness().ifPresent(t -> notes.add("sheet " + Lengths.mm(t, 2) + " (" + Lengths.inches(t, 3) + ")"));
        result.recipe().metal().ifPresent(m -> notes.add(m.alloy().name()));
        return notes;
    }

    /** The form with its fields: stretches and logarithmic strains per triangle, curvature and the place on the blank per vertex. */
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
        piece.buckled().ifPresent(b -> {
            cells.put("compression_required", each(n, b.map()::required));
            cells.put("compression_over_critical", each(n, b.map()::ratio));
        });
        int[] before = piece.opened().vertexOf();
        piece.demand().ifPresent(demand -> {
            cells.put("limit_margin", each(n, demand::margin));
            cells.put("effective_strain", each(n, demand::effective));
        });
        Map<String, double[]> points = new LinkedHashMap<>();
        piece.buckled().filter(b -> !b.blank().modes().isEmpty()).ifPresent(b -> points.put("buckling_mode", b.blank().modes().get(0).displacement()));
        points.put("gaussian_curvature", each(before.length, v -> piece.curvature().gaussian(before[v])));
        double[] flat = new double[3 * piece.map().form().vertexCount()];
        for (int v = 0; v < flat.length / 3; v++) {
            flat[3 * v] = piece.map().u(v);
            flat[3 * v + 1] = piece.map().v(v);
        }
        points.put("flat", flat);
        piece.thickness().ifPresent(t -> points.put("thickness_mm", t.atVertices()));
        return new VtuWriter.Part(piece.map().form(), cells, points);
    }

    private static double[] each(int n, IntToDoubleFunction value) {
        double[] values = new double[n];
        for (int i = 0; i < n; i++) values[i] = value.applyAsDouble(i);
        return values;
    }
}
