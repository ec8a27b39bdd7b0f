package blankwright.job;

import blankwright.flatten.Apart;
import blankwright.flatten.FlattenOptions;
import blankwright.flatten.Flattener;
import blankwright.flatten.Outcome;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.Finding;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.ChosenCut;
import blankwright.mesh.cut.CutToDisk;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.cut.SeamPaths;
import blankwright.mesh.cut.UnfitSeam;
import blankwright.mesh.io.FormatException;
import blankwright.mesh.io.MeshReader;
import blankwright.mesh.io.RawMesh;
import blankwright.mesh.repair.Component;
import blankwright.mesh.repair.Components;
import blankwright.mesh.repair.MidSurface;
import blankwright.mesh.repair.Repair;
import blankwright.mesh.repair.Repaired;
import blankwright.mesh.repair.TwoFaces;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.num.Share;
import blankwright.outline.Overlap;
import blankwright.project.Aim;
import blankwright.project.Face;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.shape.Fineness;
import blankwright.shape.UnfitValue;
import blankwright.shop.Demand;
import blankwright.shop.Layout;
import blankwright.shop.RolledArea;
import blankwright.shop.SheetThickness;
import blankwright.shop.Stations;
import blankwright.shop.VerdictBands;
import blankwright.shop.Zone;
import blankwright.shop.Zones;
import blankwright.strain.Curvature;
import blankwright.strain.Developability;
import blankwright.strain.RimChange;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;

/**
 * Lays the panel of a recipe flat.
 *
 * <ol><li>Read: the mesh file, or the triangles of a formula.
 * <li>Prepare: ask about an odd size; mend; part; thin out; move to the middle of the sheet; open what does not lie flat.
 * <li>Flatten each part; pull apart what covers itself, where that costs little.
 * <li>Judge: lay the pieces side by side; strain, zones, stations, overlap.
 * <li>Where a piece still covers itself: find the seams that part it, and lay the panel flat with them.</ol>
 *
 * <p>Depends on nothing but the recipe and its mesh: the same result on any number of threads, but for {@link Result#seconds}.
 */
public final class FlattenJob {
    /** Beyond this a seam or a filled slit is the usual way; trade practice, from memory. */
    private static final double MOST_STRETCH = 0.15, MOST_SHRINK = 0.20;
    /** Each proposes at most one seam a piece; a strip wound eight times needs three. */
    private static final int PARTINGS = 6;

    private final Recipe recipe;
    private final Given given;
    private final Progress progress;
    private final List<Finding> findings = new ArrayList<>();
    private long need;                      // bytes of the step in hand, as estimated
    private String step = "read";
    private long counted;                   // its triangles
    private byte[] reserve = new byte[1 << 20];
    private LengthUnit units = LengthUnit.MM;
    private boolean unitsStated = true;
    private long vertices;
    private long triangles;
    private Optional<Result.Reduction> reduction = Optional.empty();
    private TriMesh whole;                  // as given, mended, thinned out
    private final List<Part> parts = new ArrayList<>();
    private final List<Optional<WorkAim>> aims = new ArrayList<>();            // one for each part that was laid flat

    private FlattenJob(Recipe recipe, Given given, Progress progress) {
        this.recipe = recipe;
        this.given = given;
        this.progress = progress;
    }

    /**
     * @throws Refusal where the input cannot be laid flat, with the place and the remedy
     * @throws java.util.concurrent.CancellationException once the progress says it is no longer wanted
     */
    public static Result run(Recipe recipe, Given given, Progress progress) throws Refusal {
        FlattenJob job = new FlattenJob(recipe, given, new Share(progress, 0, Packet.BEGINS));
        try {
            return Patience.with(progress, job::run);
        } catch (OutOfMemoryError e) {
            throw job.tooLargeAfterAll();
        }
    }

    private Result run() throws Refusal {
        Result result = layFlat();
        return covered(result) ? proposal(result).map(result::withProposal).orElse(result) : result;
    }

    private static boolean covered(Result result) {
        return result.pieces().stream().anyMatch(Piece::overlaps);
    }

    private Result layFlat() throws Refusal {
        if (recipe.aim() == Aim.WORK && recipe.metal().isEmpty())
            throw new Refusal(given.name() + ": aim work needs to know the metal; write alloy: and its name, blankwright alloys lists them.");
        findings.addAll(given.findings());
        Stopwatch watch = new Stopwatch();
        Mesh mesh = read();
        double read = watch.lap();
        Result.Input input = prepare(mesh);
        double prepare = watch.lap();
        int most = parts.stream().mapToInt(part -> part.opened().mesh().triangleCount()).max().orElseThrow();
        needs("laid flat", most, MemoryNeed.layingFlat(most));
        List<Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) outcomes.add(flattened(i, share(0.3, 0.8, i, parts.size())));
        double flatten = watch.lap();
        List<Piece> pieces = judge(outcomes);
        largeStrain(pieces);
        clampedNothing(pieces);
        findings.addAll(MetalFindings.of(pieces, recipe.metal().map(Metal::bands).orElse(VerdictBands.USUAL)));
        findings.addAll(Warnings.findings(pieces));
        return new Result(recipe, given.name(), given.folder(), units, input, reduction, findings, pieces, new Result.Seconds(read, prepare + watch.lap(), flatten),
                Optional.empty());
    }

    private Outcome flattened(int i, Progress share) {
        TriMesh disk = parts.get(i).opened().mesh();
        aims.add(WorkAim.of(recipe, disk));
        if (aims.get(i).isPresent()) return Flattener.flatten(disk, aims.get(i).get().options(), share);
        Outcome even = Flattener.flatten(disk, FlattenOptions.DEFAULT, share);
        if (!(even instanceof Outcome.Converged) || places(even.map()).isEmpty()) return even;
        Optional<Outcome> apart = Apart.of(even, FlattenJob::places, share);
        if (apart.isEmpty()) return even;
        findings.add(new Finding(Finding.Kind.PULLED_APART, 1, String.format(Locale.ROOT, "%s covered itself and was pulled apart; its mean energy rose"
                + " from %.6f to %.6f", parts.size() == 1 ? "the blank" : "piece " + (i + 1), even.energy(), apart.get().energy())));
        return apart.get();
    }

    /** Rings round the places where a layout covers itself, mm, the largest first. */
    private static List<double[]> places(FlatMap map) {
        return Overlap.of(rims(map, RimLoops.of(map.form(), EdgeTable.of(map.form())))).places().stream().map(p -> p.edge().flattened(1)).toList();
    }

    private static List<double[]> rims(FlatMap map, RimLoops rims) {
        List<double[]> loops = new ArrayList<>();
        for (int i = 0; i < rims.count(); i++) loops.add(map.places(rims.loop(i)));
        return loops;
    }

    /** As many seams more as it takes that no piece covers itself; empty where none are found. */
    private Optional<Proposal> proposal(Result covered) throws Refusal {
        FlattenJob job = this;
        List<Integer> numbers = new ArrayList<>();
        for (int round = 0; round < PARTINGS; round++) {
            progress.at("looking for a seam", 0.8 + 0.2 * round / PARTINGS);
            PartingSeams parting = new PartingSeams(job.whole);
            List<DrawnSeam> seams = new ArrayList<>(job.recipe.seams());
            int known = seams.size();
            for (int i = 0; i < covered.pieces().size(); i++) {
                Piece piece = covered.pieces().get(i);
                if (!piece.overlaps() || piece.strain().turnedOverCount() > 0) continue;
                Optional<PartingSeams.Parting> found = parting.of(job.parts.get(i), piece.map(), places(piece.map()));
                if (found.isEmpty()) continue;
                seams.addAll(found.get().kept());
                for (DrawnSeam across : found.get().across()) {
                    seams.add(across);
                    numbers.add(seams.size());
                }
            }
            if (seams.size() == known) return Optional.empty();
            job = new FlattenJob(recipe.withSeams(seams), given, new Share(progress, 1, 1));
            covered = job.layFlat();
            if (!covered(covered)) return Optional.of(new Proposal(covered, numbers));
        }
        return Optional.empty();
    }

    private record Mesh(double[] xyz, int[] triangles) { }

    private Mesh read() throws Refusal {
        if (recipe.source() instanceof Source.OfMesh file) return readFile(file);
        progress.at("shaping " + recipe.name(), 0);
        try {
            TriMesh mesh = ((Source.OfPanel) recipe.source()).panel().mesh(Fineness.chord(recipe.chord()));
            vertices = mesh.vertexCount();
            triangles = mesh.triangleCount();
            return new Mesh(mesh.positions(), mesh.corners());
        } catch (UnfitValue e) {
            throw new Refusal(given.name() + ": " + e.getMessage());
        }
    }

    private Mesh readFile(Source.OfMesh source) throws Refusal {
        RawMesh raw;
        Path path = relativeToHere(given.folder().resolve(source.file()));
        OptionalLong loose = MeshReader.looseTriangles(path);
        if (loose.isPresent()) {
            long count = loose.getAsLong();
            needs("read and mended", count, MemoryNeed.mending(count, 3 * count));
        }
        try {
            raw = MeshReader.read(path, new Share(progress, 0, 0.1));
        } catch (FormatException e) {
            throw new Refusal(e.getMessage());
        }
        findings.addAll(raw.findings());
        vertices = raw.vertexCount();
        triangles = raw.triangleCount();
        unitsStated = source.units().isPresent();
        units = source.units().orElse(LengthUnit.MM);
        double[] xyz = raw.xyz();
        double across = across(xyz, raw.triangles());
        if (!unitsStated && across > 0) {
            Optional<String> question = SizeQuestion.ask(source.file(), across, units);
            if (question.isPresent()) throw new OddSize(question.get(), across);
        }
        for (int i = 0; i < xyz.length; i++) xyz[i] *= units.mm();
        return new Mesh(xyz, raw.triangles());
    }

    private Result.Input prepare(Mesh mesh) throws Refusal {
        progress.at("mending", 0.1);
        needs("mended", triangles, MemoryNeed.mending(triangles, vertices));
        Repaired mended = Repair.of(mesh.xyz(), mesh.triangles(), new Share(progress, 0.1, 0.2));
        findings.addAll(mended.findings());
        if (mended.isEmpty())
            throw new Refusal(given.name() + ": nothing is left that could be a panel (" + said() + "); export the mesh again.");
        double[] size = mended.mesh().size();
        Result.Input input = new Result.Input(vertices, triangles, mended.mesh().area(), size[0], size[1], size[2]);
        if (SizeQuestion.unusual(input.across()))
            findings.add(new Finding(Finding.Kind.UNUSUAL_SIZE, 1, "the panel is " + SizeQuestion.size(input.across())
                    + " across, which is unusual; check the unit."));
        int count = mended.mesh().triangleCount();
        if (Thinning.wanted(recipe, count)) needs("thinned out", count, MemoryNeed.thinning(count));
        Thinning thinning = Thinning.of(recipe, mended.mesh(), new Share(progress, 0.2, 0.28));
        thinning.finding().ifPresent(findings::add);
        reduction = thinning.reduction();
        whole = thinning.mesh();
        Components.Kept kept = Components.worthKeeping(Components.of(whole));
        findings.addAll(kept.findings());
        List<Component> components = kept.pieces();
        if (components.size() > 1)
            findings.add(new Finding(Finding.Kind.SEVERAL_COMPONENTS, components.size(),
                    components.size() + " separate parts; each becomes a piece of the blank."));
        TwoFaces.seen(components).ifPresent(findings::add);
        List<int[]> chosen = chosen(whole);
        List<Finding> seams = new ArrayList<>();
        for (int i = 0; i < components.size(); i++) {
            Component component = components.get(i);
            TriMesh middle = toMiddle(component.mesh());
            Progress share = share(0.28, 0.3, i, components.size());
            List<ChosenCut.Numbered> here = within(component, chosen);
            if (here.isEmpty()) {
                parts.add(new Part(component, CutToDisk.of(middle, share)));
                continue;
            }
            ChosenCut cut = ChosenCut.along(middle, here);
            seams.addAll(cut.findings());
            for (Component part : Components.of(cut.mesh()))
                parts.add(new Part(component, cut.part(CutToDisk.of(part.mesh(), share), part::vertexOf, part::triangleOf)));
        }
        findings.addAll(seams);
        for (int i = 0; i < chosen.size(); i++)
            if (chosen.get(i) != null) throw new Refusal(given.name() + ": seam " + (i + 1) + ": lies on a crumb that is left out; draw it on the panel.");
        if (!chosen.isEmpty()) parts.sort(Comparator.comparingDouble((Part part) -> part.opened().mesh().area()).reversed());
        for (Part part : parts) findings.addAll(part.opened().findings());
        return input;
    }

    /** The recipe's seams as paths on the form as it was given. */
    private List<int[]> chosen(TriMesh form) throws Refusal {
        if (recipe.seams().isEmpty()) return new ArrayList<>();
        try {
            return SeamPaths.on(form).of(recipe.seams());
        } catch (UnfitSeam e) {
            throw new Refusal(given.name() + ": " + e.getMessage() + ".");
        }
    }

    /** The paths that lie on this component, with its own numbers; each is taken out of the list, null in its place. */
    private static List<ChosenCut.Numbered> within(Component component, List<int[]> paths) {
        Map<Integer, Integer> here = new HashMap<>();
        if (!paths.isEmpty()) for (int v = 0; v < component.mesh().vertexCount(); v++) here.put(component.vertexOf(v), v);
        List<ChosenCut.Numbered> found = new ArrayList<>();
        for (int i = 0; i < paths.size(); i++) {
            if (paths.get(i) == null || !here.containsKey(paths.get(i)[0])) continue;
            found.add(new ChosenCut.Numbered(i + 1, Arrays.stream(paths.get(i)).map(here::get).toArray()));
            paths.set(i, null);
        }
        return found;
    }

    /** By half the thickness along the normals: an outside face goes in, an inside face out. */
    private TriMesh toMiddle(TriMesh mesh) {
        if (recipe.face() == Face.MIDDLE) return mesh;
        double half = recipe.thickness().orElseThrow() / 2;
        MidSurface.Moved moved = MidSurface.moved(mesh, recipe.face() == Face.OUTSIDE ? -half : half);
        findings.addAll(moved.findings());
        return moved.mesh();
    }

    private List<Piece> judge(List<Outcome> outcomes) throws Refusal {
        progress.at("measuring", 0.8);
        List<FlatMap> placed = Layout.of(outcomes.stream().map(Outcome::map).toList(), Layout.GAP + 2 * recipe.trim().orElse(0));
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < placed.size(); i++) {
            progress.at("measuring", 0.8 + 0.2 * i / placed.size());
            Piece piece = judge(parts.get(i).opened(), outcomes.get(i), aims.get(i), placed.get(i), share(0.8, 1, i, placed.size()));
            aims.get(i).ifPresent(a -> findings.addAll(a.findings(piece.strain(), placed.size() == 1 ? "" : "of piece " + (pieces.size() + 1))));
            pieces.add(piece);
        }
        return pieces;
    }

    private Piece judge(Opened part, Outcome outcome, Optional<WorkAim> aim, FlatMap map, Progress share) throws Refusal {
        StrainField strain = StrainField.of(map);
        RimLoops rims = RimLoops.of(map.form(), EdgeTable.of(map.form()));
        RimChange rim = RimChange.of(map, rims, RimChange.RUN);
        Stations stations;
        try {
            stations = Stations.of(map, recipe.stations());
        } catch (IllegalArgumentException e) {
            throw new Refusal(given.name() + ": " + e.getMessage() + "; say --stations with a larger spacing, or check --units.");
        }
        double outline = rim.loops().get(rims.longest(map.form())).blankLength();
        boolean overlaps = strain.turnedOverCount() > 0 || !Overlap.of(rims(map, rims)).isEmpty();
        VertexStrain vertices = VertexStrain.of(strain);
        Zones plain = Zones.of(strain);
        Optional<SheetThickness> thickness = recipe.thickness().isEmpty() ? Optional.empty()
                : Optional.of(SheetThickness.of(map, vertices, recipe.thickness().getAsDouble()));
        Optional<Demand> demand = recipe.metal().isEmpty() || thickness.isEmpty() ? Optional.empty()
                : Optional.of(Demand.of(strain, vertices, plain, recipe.metal().get().judge(recipe.thickness().getAsDouble())));
        Zones zones = demand.map(d -> d.judged(plain)).orElse(plain);
        List<RolledArea> rolled = overlaps ? List.of() : RolledArea.of(strain, RolledArea.SPACING);
        return new Piece(outcome, strain, vertices, Developability.of(strain, rim), rim, zones, stations, rolled, Curvature.of(part.sewn()), part,
                rims.count() - 1, outline, aim.flatMap(a -> a.tools(strain)), thickness, demand, overlaps, buckled(part, strain),
                sensitivity(part, outcome, aim, map, overlaps, share));
    }

    /** Where the recipe asks, and the piece is neither too large nor in a state that means nothing. */
    private Optional<Buckled> buckled(Opened part, StrainField strain) {
        if (recipe.clamps().isEmpty()) return Optional.empty();
        if (strain.triangleCount() > Buckled.MOST_TRIANGLES) {
            findings.add(new Finding(Finding.Kind.BUCKLING_LEFT_OUT, 1, String.format(Locale.ROOT, "buckling was not computed: %,d triangles are more"
                    + " than %,d; thin the mesh out with --detail.", strain.triangleCount(), Buckled.MOST_TRIANGLES)));
            return Optional.empty();
        }
        if (strain.turnedOverCount() > 0) {
            findings.add(new Finding(Finding.Kind.BUCKLING_LEFT_OUT, 1, "buckling was not computed: the blank is not laid out without turned-over triangles."));
            return Optional.empty();
        }
        progress.at("bending the blank unworked", 0.9);
        try {
            return Optional.of(Buckled.of(strain, part.sewn(), recipe.metal().orElseThrow().alloy(),
                    recipe.thickness().orElseThrow(), recipe.clamps().get(), progress));
        } catch (IllegalArgumentException e) {
            findings.add(new Finding(Finding.Kind.BUCKLING_LEFT_OUT, 1, "buckling was not computed: " + e.getMessage() + "."));
            return Optional.empty();
        }
    }

    /** Where the recipe asks, and the blank is one to be cut and leaves the memory for another. */
    private Optional<Sensitivity> sensitivity(Opened part, Outcome outcome, Optional<WorkAim> aim, FlatMap map, boolean overlaps,
            Progress share) {
        if (!recipe.sensitivity()) return Optional.empty();
        Optional<Sensitivity> found = Optional.empty();
        String why = "a blank that must not be cut as it is tells nothing.";
        if (outcome instanceof Outcome.Converged && !overlaps) {
            if (2 * MemoryNeed.layingFlat(map.form().triangleCount()) > Runtime.getRuntime().maxMemory()) {
                why = "it takes twice the memory of laying flat; give java more, or thin the mesh out with --detail.";
            } else {
                found = Sensitivity.of(part, map, aim, share);
                why = "the same panel does not come out a second time, so there is nothing to compare with.";
            }
        }
        if (found.isEmpty()) findings.add(new Finding(Finding.Kind.SENSITIVITY_LEFT_OUT, 1, "sensitivity was not computed: " + why));
        return found;
    }

    private void clampedNothing(List<Piece> pieces) {
        if (recipe.clamps().isEmpty() || recipe.clamps().get().spots().isEmpty()) return;
        for (Piece piece : pieces) if (Buckled.holdsAny(recipe.clamps().get().spots(), piece.map().form())) return;
        findings.add(new Finding(Finding.Kind.CLAMPED_NOTHING, recipe.clamps().get().spots().size(),
                "none of the places clamped lies on the form; buckling was found for a sheet held nowhere."));
    }

    private void largeStrain(List<Piece> pieces) {
        List<String> places = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            String piece = pieces.size() == 1 ? "" : " of piece " + (i + 1);
            for (Zone zone : pieces.get(i).zones().list()) {
                double strain = zone.largestStrain();
                if (strain > MOST_STRETCH || -strain > MOST_SHRINK)
                    places.add(String.format(Locale.ROOT, "%s zone %d%s by %.0f %%", zone.instruction().word(), zone.number(), piece,
                            100 * Math.abs(strain)));
            }
        }
        if (!places.isEmpty())
            findings.add(new Finding(Finding.Kind.LARGE_STRAIN, places.size(), "more than hand work usually does in one piece: "
                    + String.join(", ", places) + "; a seam there would ease it."));
    }

    private Progress share(double from, double to, int part, int parts) {
        double step = (to - from) / parts;
        return new Share(progress, from + part * step, from + (part + 1) * step);
    }

    /** As the user would name the file: the messages quote it. */
    private static Path relativeToHere(Path file) {
        Path here = Path.of("").toAbsolutePath();
        return file.startsWith(here) ? here.relativize(file) : file;
    }

    /** Longest side of the box round the vertices that triangles use, in the file's numbers. */
    private static double across(double[] xyz, int[] triangles) {
        double most = 0;
        for (int k = 0; k < 3; k++) {
            double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY;
            for (int v : triangles) {
                low = Math.min(low, xyz[3 * v + k]);
                high = Math.max(high, xyz[3 * v + k]);
            }
            most = Math.max(most, high - low);
        }
        return most;
    }

    private String said() {
        return findings.isEmpty() ? "no triangles" : String.join("; ", findings.stream().map(Finding::text).toList());
    }

    /** Says no before a long step whose need the memory given cannot meet. */
    private void needs(String what, long count, long bytes) throws Refusal {
        step = what;
        need = bytes;
        counted = count;
        if (bytes > Runtime.getRuntime().maxMemory()) throw tooLarge();
    }

    private Refusal tooLarge() {
        String coarser = recipe.source() instanceof Source.OfPanel ? "or say a larger chord in the recipe"
                : step.equals("laid flat") && reduction.isEmpty() ? "or thin it out with --detail 0.1mm" : "or give a coarser mesh";
        return MemoryNeed.refusal(given.name(), step, counted, need, coarser);
    }

    /** Other threads may still hold what filled the memory, and words need some too: waits for them, and gives up a reserve. */
    private Refusal tooLargeAfterAll() {
        reserve = null;
        ForkJoinPool.commonPool().awaitQuiescence(10, TimeUnit.SECONDS);
        need = Math.max(need, Runtime.getRuntime().maxMemory() / 2 * 3);
        return tooLarge();
    }
}
