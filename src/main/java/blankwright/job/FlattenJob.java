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
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.cut.Opened;
import blankwright.num.Explained;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.num.Share;
import blankwright.outline.Overlap;
import blankwright.project.Aim;
import blankwright.project.Recipe;
import blankwright.shop.Demand;
import blankwright.shop.Flange;
import blankwright.shop.Fold;
import blankwright.shop.Layout;
import blankwright.shop.RolledArea;
import blankwright.shop.SheetThickness;
import blankwright.shop.Stations;
import blankwright.shop.Zone;
import blankwright.shop.Zones;
import blankwright.strain.Curvature;
import blankwright.strain.Developability;
import blankwright.strain.RimChange;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Lays the panel of a recipe flat.
 *
 * <ol><li>Read: the mesh file, or the triangles of a formula.
 * <li>Prepare: ask about an odd size; mend; part; thin out; move to the middle of the sheet; open what does not lie flat.
 * <li>Flatten each part; pull apart what covers itself, where that costs little.
 * <li>Judge: lay the pieces side by side; strain, zones, stations, overlap.
 * <li>Where a piece still covers itself, or needs work out of reach of the tools: find the seams that cure it, and lay the panel flat with them.</ol>
 *
 * <p>Depends on nothing but the recipe and its mesh: the same result on any number of threads, but for {@link Result#seconds}.
 */
public final class FlattenJob {
    /** Beyond this a seam or a filled slit is the usual way; trade practice, from memory. */
    private static final double MOST_STRETCH = 0.15, MOST_SHRINK = 0.20;
    /** Rounds of proposals: one is enough unless parts laid flat anew lie over themselves where they did not. */
    private static final int PARTINGS = 6;
    private static final double PREPARED = 0.3;     // of the time a part takes: before its descents
    /** A seam is worth its welding where it leaves no more than this share of what was out of reach. */
    private static final double MUCH = 0.7;

    private final Recipe recipe;
    private final Given given;
    private final Kept kept;
    private final boolean follow;
    private final MemoryGuard memory;
    private final Progress progress;
    private final List<Finding> findings = new ArrayList<>();
    private TriMesh whole;                  // as given, mended, thinned out
    private List<Part> parts;

    private FlattenJob(Recipe recipe, Given given, Kept kept, boolean follow, Progress progress) {
        this.recipe = recipe;
        this.given = given;
        this.kept = kept;
        this.follow = follow;
        this.progress = progress;
        memory = new MemoryGuard(recipe, given.name());
    }

    /**
     * @throws Refusal where the input cannot be laid flat, with the place and the remedy
     * @throws java.util.concurrent.CancellationException once the progress says it is no longer wanted
     */
    public static Result run(Recipe recipe, Given given, Progress progress) throws Refusal {
        return run(recipe, given, new Kept(), false, progress);
    }

    /**
     * The same, taking over what earlier runs left.
     *
     * @param follow true leaves what is needed to follow a hand that drags
     */
    static Result run(Recipe recipe, Given given, Kept kept, boolean follow, Progress progress) throws Refusal {
        FlattenJob job = new FlattenJob(recipe, given, kept, follow, new Share(progress, 0, Packet.BEGINS));
        try {
            return Patience.with(progress, job::run);
        } catch (OutOfMemoryError e) {
            throw job.memory.tooLargeAfterAll();
        }
    }

    private Result run() throws Refusal {
        Result result = layFlat();
        return (covered(result) ? proposal(result) : letIn(result)).map(result::withProposal).orElse(result);
    }

    private static boolean covered(Result result) {
        return result.pieces().stream().anyMatch(Piece::overlaps);
    }

    private Result layFlat() throws Refusal {
        if (recipe.aim() == Aim.WORK && recipe.metal().isEmpty())
            throw new Refusal(given.name() + ": aim work needs to know the metal; write alloy: and its name, blankwright alloys lists them.");
        findings.addAll(given.findings());
        Mended mended = kept.mended(recipe, given, () -> Mended.of(recipe, given, memory, progress));
        findings.addAll(mended.findings());
        if (mended.reduction().isPresent()) memory.thinned();
        whole = mended.whole();
        Stopwatch watch = new Stopwatch();
        Parted parted = kept.parted(recipe, given, () -> Parted.of(whole, recipe, given, new Share(progress, 0.28, 0.3)));
        findings.addAll(parted.findings());
        parts = parted.parts();
        double part = watch.lap();
        int most = parts.stream().mapToInt(p -> p.opened().mesh().triangleCount()).max().orElseThrow();
        memory.needs("laid flat", most, MemoryNeed.layingFlat(most));
        List<LaidFlat> flat = kept.laidFlat(recipe, given, parted, this::laidFlat);
        for (LaidFlat one : flat) findings.addAll(one.findings());
        double flatten = watch.lap();
        List<Piece> pieces = judge(flat);
        largeStrain(pieces);
        clampedNothing(pieces);
        findings.addAll(MetalFindings.of(pieces, recipe));
        findings.addAll(Warnings.findings(pieces));
        return new Result(recipe, given.name(), given.folder(), mended.units(), mended.input(), mended.reduction(), findings, pieces,
                new Result.Seconds(mended.readSeconds(), mended.mendSeconds() + part + watch.lap(), flatten), Optional.empty());
    }

    private List<LaidFlat> laidFlat() {
        List<LaidFlat> flat = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) flat.add(flattened(i, share(0.3, 0.8, i, parts.size())));
        return flat;
    }

    private LaidFlat flattened(int i, Progress share) {
        TriMesh disk = parts.get(i).opened().mesh();
        Optional<WorkAim> aim = WorkAim.of(recipe, disk);
        FlattenOptions options = aim.map(WorkAim::options).orElse(FlattenOptions.DEFAULT);
        Flattener flattener = Flattener.of(disk, new Share(share, 0, PREPARED));
        Outcome outcome = flattener.flatten(options, new Share(share, PREPARED, 1));
        List<Finding> found = new ArrayList<>();
        if (aim.isEmpty() && outcome instanceof Outcome.Converged && !places(outcome.map()).isEmpty()) {
            Optional<Outcome> apart = Apart.of(outcome, FlattenJob::places, share);
            if (apart.isPresent()) {
                found.add(new Finding(Finding.Kind.PULLED_APART, 1, String.format(Locale.ROOT, "%s covered itself and was pulled apart; its mean energy"
                        + " rose from %.6f to %.6f", parts.size() == 1 ? "the blank" : "piece " + (i + 1), outcome.energy(), apart.get().energy())));
                outcome = apart.get();
            }
        }
        boolean followed = follow && outcome instanceof Outcome.Converged;
        return new LaidFlat(outcome, aim, found, followed ? Optional.of(flattener.follower(outcome.map(), options)) : Optional.empty());
    }

    /** Rings round the places where a layout covers itself, mm, the largest first. */
    private static List<double[]> places(FlatMap map) {
        return Overlap.of(rims(map, RimLoops.of(map.form(), EdgeTable.of(map.form())))).places().stream().map(p -> p.edge().flattened(1)).toList();
    }

    /** The rims of a layout, places in turn, mm. */
    static List<double[]> rims(FlatMap map, RimLoops rims) {
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
            job = new FlattenJob(recipe.withSeams(seams), given, kept.meshOnly(), false, new Share(progress, 1, 1));
            covered = job.layFlat();
            if (!covered(covered)) return Optional.of(new Proposal(covered, numbers, Proposal.Reason.COVERED));
        }
        return Optional.empty();
    }

    /** A seam through each zone that no tool gets to; empty where all is within reach or seams do not do much for it. */
    private Optional<Proposal> letIn(Result beyond) throws Refusal {
        if (beyond.beyondReach() == 0 || !beyond.warnings().isEmpty()) return Optional.empty();
        progress.at("looking for a seam that lets the tools in", 0.9);
        PartingSeams through = new PartingSeams(whole);
        List<DrawnSeam> seams = new ArrayList<>(recipe.seams());
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < beyond.pieces().size(); i++) {
            Piece piece = beyond.pieces().get(i);
            int[] zone = WorkAim.of(recipe, parts.get(i).opened().mesh()).map(aim -> aim.beyond(piece.strain())).orElse(new int[0]);
            Optional<PartingSeams.Parting> found = zone.length == 0 ? Optional.empty() : through.through(parts.get(i), piece.map(), zone);
            if (found.isEmpty()) continue;
            seams.addAll(found.get().kept());
            seams.addAll(found.get().across());
            numbers.add(seams.size());
        }
        if (numbers.isEmpty()) return Optional.empty();
        Result cut = new FlattenJob(recipe.withSeams(seams), given, kept.meshOnly(), false, new Share(progress, 1, 1)).layFlat();
        return !cut.warnings().isEmpty() || cut.beyondReach() > MUCH * beyond.beyondReach() ? Optional.empty()
                : Optional.of(new Proposal(cut, numbers, Proposal.Reason.REACH));
    }

    private List<Piece> judge(List<LaidFlat> flat) throws Refusal {
        progress.at("measuring", 0.8);
        List<FlatMap> placed = Layout.of(flat.stream().map(one -> one.outcome().map()).toList(), Layout.GAP + 2 * recipe.trim().orElse(0));
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < placed.size(); i++) {
            progress.at("measuring", 0.8 + 0.2 * i / placed.size());
            Optional<WorkAim> aim = flat.get(i).aim();
            Piece piece = judge(parts.get(i).opened(), flat.get(i).outcome(), aim, placed.get(i), share(0.8, 1, i, placed.size()));
            aim.ifPresent(a -> findings.addAll(a.findings(piece.strain(), placed.size() == 1 ? "" : "of piece " + (pieces.size() + 1))));
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
            throw new Refusal(Sentence.say("%s: %s; say --stations with a larger spacing, or check --units.", given.name(), Explained.words(e)));
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
        List<Flange> flanges = overlaps ? List.of() : Flange.of(map);
        List<Fold> folds = overlaps ? List.of() : Fold.of(map).stream().filter(fold -> flanges.stream().noneMatch(flange ->
                flange.holds((fold.u1() + fold.u2()) / 2, (fold.v1() + fold.v2()) / 2))).toList();
        return new Piece(outcome, strain, vertices, Developability.of(strain, rim), rim, zones, stations, rolled, flanges, folds, Curvature.of(part.sewn()),
                part, rims.count() - 1, outline, aim.flatMap(a -> a.tools(strain)), thickness, demand, overlaps, buckled(part, strain),
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
}
