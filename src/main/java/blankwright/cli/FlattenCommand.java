package blankwright.cli;

import blankwright.drawing.Paper;
import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.InputFile;
import blankwright.job.Output;
import blankwright.job.OutputFolder;
import blankwright.job.Packet;
import blankwright.job.Refusal;
import blankwright.job.Result;
import blankwright.mesh.Finding;
import blankwright.metal.Alloy;
import blankwright.metal.Gauge;
import blankwright.num.Explained;
import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.project.Aim;
import blankwright.project.Clamps;
import blankwright.project.Face;
import blankwright.project.Handwork;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.RecipeException;
import blankwright.project.Source;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code blankwright flatten}: a panel in, its packet out. */
@Command(name = "flatten", mixinStandardHelpOptions = true, versionProvider = Blankwright.OwnVersion.class, sortOptions = false,
        description = "Lays a panel flat and writes its blank, work map and lists.",
        footer = {"", "Lengths take a unit: 1.6mm, 0.063in, 1/16in; without one they are mm.",
            "Exit codes: 0 done, 1 the program failed, 2 wrong command line, 3 bad input, 4 done but do not cut."})
final class FlattenCommand implements Callable<Integer> {
    private final PrintStream out;
    private final PrintStream err;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "INPUT", arity = "1", description = "a mesh (STL, OBJ, PLY or OFF, also .gz) or a recipe (.yaml)")
    private Path input;

    @Option(names = "--units", paramLabel = "mm|cm|m|in|ft", description = "unit of the numbers in a mesh file; mm unless said")
    private String units;

    @Option(names = "--detail", paramLabel = "LENGTH", description = "thin a mesh out, straying no farther than this; none keeps every triangle;"
            + " unless said, only a mesh of over a million triangles is thinned out")
    private String detail;

    @Option(names = "--aim", paramLabel = "even|work", description = "what is made least: even spreads the work evenly, work looks for the least work in the metal and needs --alloy")
    private String aim;

    @Option(names = "--lean", paramLabel = "X", description = "with --aim work: -1 all shrinking, 0 whatever is less work, 1 all stretching")
    private String lean;

    @Option(names = "--tools", paramLabel = "FILE", description = "with --aim work: a list of the tools at hand and how far they reach")
    private Path tools;

    @Option(names = "--alloy", paramLabel = "NAME", description = "the metal and its temper, e.g. 3003-H14; blankwright alloys lists them")
    private String alloy;

    @Option(names = "--alloys", paramLabel = "FILE", description = "a table of your own alloys")
    private String alloys;

    @Option(names = "--thickness", paramLabel = "LENGTH", description = "of the sheet; a gauge number needs the metal: \"18 ga steel\", or 18ga with --alloy")
    private String thickness;

    @Option(names = "--clamped", paramLabel = "nowhere|rims|calm",
            description = "also find how the blank buckles if it is bent on unworked and held nowhere, at its rims, or (calm) wherever it"
                    + " is not pressed together; needs --alloy and --thickness")
    private String clamped;

    @Option(names = "--sensitivity", description = "also find how far outline and crown move when weld, metal or scan are a little off;"
            + " takes several times as long")
    private boolean sensitivity;

    @Option(names = "--face", paramLabel = "outside|middle|inside", description = "which side of the sheet the mesh is; middle unless said")
    private String face;

    @Option(names = "--out", paramLabel = "DIR", description = "folder for the files; named after the input unless said")
    private Path dir;

    @Option(names = "--formats", paramLabel = "LIST", description = "only these of dxf,svg,pdf,png,vtu,csv,obj,md; summary.json always")
    private String formats;

    @Option(names = "--stations", paramLabel = "LENGTH", description = "spacing of the station lines; 100mm unless said")
    private String stations;

    @Option(names = "--trim", paramLabel = "LENGTH", description = "metal left on outside the finished edge, or none; what a recipe says, else none")
    private String trim;

    @Option(names = "--paper", paramLabel = "a4|letter", description = "pages of blank.pdf; a4 unless said")
    private String paper;

    FlattenCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    @Override
    public Integer call() throws Refusal, IOException {
        try {
            return flattened();
        } catch (Refusal e) {
            throw new Refusal(e.words().text(spoken()));
        }
    }

    /** As the command line is written, else as the recipe is, else mm. */
    private Sentence.Units spoken() {
        String words = Stream.of(thickness, detail, stations, trim).filter(Objects::nonNull).collect(Collectors.joining(" "));
        if (units != null) words += " 1 " + units;
        Optional<Sentence.Units> said = Spoken.in(words);
        if (said.isPresent() || !InputFile.isRecipe(input)) return said.orElse(Sentence.FILES);
        try {
            return Spoken.in(Files.readString(input)).orElse(Sentence.FILES);
        } catch (IOException e) {
            return Sentence.FILES;                              // it could not be read before either, and that has been said
        }
    }

    private Integer flattened() throws Refusal, IOException {
        var asked = option("--formats", formats, Output::list, Output.ALL);
        Paper sheet = option("--paper", paper, p -> pick(p, Paper.values()), Paper.A4);
        Given[] given = {Given.file(input)};
        Recipe recipe = recipe(given);
        if (dir != null && dir.toString().isBlank()) throw wrong("--out: no folder is named; . is the one you are in");
        Path name = dir != null ? dir : folderFor(input);
        Result result;
        Packet.Written written;
        try (OutputFolder folder = open(name); TerminalProgress progress = new TerminalProgress(err)) {
            result = FlattenJob.run(recipe, given[0], progress);
            written = Packet.write(result, folder, asked, sheet, progress);
        }
        new BenchReport(result, name, written).print(out);
        return (result.warnings().isEmpty() ? ExitCode.DONE : ExitCode.UNSAFE_TO_CUT).number();
    }

    /** Before the work begins, so that nobody waits for a result that has no place. */
    private OutputFolder open(Path folder) {
        try {
            return OutputFolder.open(folder);
        } catch (IOException e) {
            throw wrong("--out: the folder " + folder + " cannot be used: " + InputFile.words(e));
        }
    }

    /** The recipe of the file, or one made for a mesh, with what the command line says in place of what it said. */
    private Recipe recipe(Given[] given) throws Refusal {
        Optional<LengthUnit> unit = Optional.ofNullable(option("--units", units,
                u -> LengthUnit.of(u).orElseThrow(() -> new IllegalArgumentException("\"" + u + "\" is none of " + LengthUnit.words())), null));
        Face side = option("--face", face, f -> pick(f, Face.values()), null);
        Aim goal = option("--aim", aim, a -> pick(a, Aim.values()), null);
        Double leant = option("--lean", lean, FlattenCommand::lean, null);
        OptionalDouble stray = "none".equals(detail) ? OptionalDouble.of(0) : length("--detail", detail);
        OptionalDouble spacing = length("--stations", stations);
        OptionalDouble allowance = "none".equals(trim) ? OptionalDouble.empty() : length("--trim", trim);
        Optional<Clamps> held = Optional.ofNullable(option("--clamped", clamped, FlattenCommand::clamps, null));
        Recipe recipe = InputFile.recipe(input, unit);
        if (unit.isPresent() && InputFile.isRecipe(input)) {
            if (!(recipe.source() instanceof Source.OfMesh mesh))
                throw wrong("--units: the recipe " + input + " gives its measures with their units; leave it out");
            recipe = recipe.withSource(new Source.OfMesh(mesh.file(), unit));
        }
        if (stray.isPresent() && !(recipe.source() instanceof Source.OfMesh))
            throw wrong("--detail: the recipe " + input + " gives a formula, whose triangles are as fine as its chord says; leave it out");
        if (alloy != null || alloys != null) recipe = recipe.withMetal(Optional.of(metal(recipe)));
        Optional<Alloy> known = recipe.metal().map(Metal::alloy);
        Double gauged = option("--thickness", thickness, t -> Gauge.sheet(t, known), null);
        try {
            OptionalDouble sheet = gauged == null ? recipe.thickness() : OptionalDouble.of(gauged);
            if (side == null) side = recipe.face();
            if (side != Face.MIDDLE && sheet.isEmpty()) {
                given[0] = given[0].withFindings(List.of(new Finding(Finding.Kind.NOT_MOVED, 1, "the mesh is the " + side.word()
                        + " of the sheet, but without --thickness it was not moved to the middle; the blank is that of the face itself.")));
                side = Face.MIDDLE;
            }
            if (goal != null) recipe = recipe.withAim(goal);
            recipe = recipe.withHandwork(handwork(recipe, leant));
            recipe = recipe.withSheet(sheet, side);
            if (stray.isPresent()) recipe = recipe.withDetail(stray);
            if (spacing.isPresent()) recipe = recipe.withStations(spacing.getAsDouble());
            if (trim != null) recipe = recipe.withTrim(allowance);
            if (held.isPresent()) recipe = recipe.withClamps(held);
            if (sensitivity) recipe = recipe.withSensitivity(true);
            return recipe;
        } catch (IllegalArgumentException e) {
            throw wrong("--" + Explained.words(e).text(spoken()));
        }
    }

    /** Between the two ends, so that a wrong sign or unit is seen. */
    private static double lean(String text) {
        double lean;
        try {
            lean = Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("\"" + text + "\" is no number");
        }
        return Handwork.ANY.withLean(lean).lean();
    }

    /** The recipe's lean and tools, with what is said here in place of what it said. */
    private Handwork handwork(Recipe recipe, Double leant) throws Refusal {
        if (recipe.aim() != Aim.WORK) {
            if (leant != null) throw wrong("--lean: goes with --aim work");
            if (tools != null) throw wrong("--tools: goes with --aim work");
        } else if (aim != null && recipe.metal().isEmpty()) {
            throw wrong("--aim work: say the metal with --alloy; blankwright alloys lists them");
        }
        Handwork hands = leant == null ? recipe.handwork() : recipe.handwork().withLean(leant);
        if (tools == null) return hands;
        try {
            return hands.withTools(tools.toString(), Path.of("").toAbsolutePath());
        } catch (RecipeException e) {
            throw new Refusal(e.getMessage());
        } catch (IOException e) {
            throw new Refusal(tools + ": the list of tools cannot be read: " + InputFile.words(e) + ".");
        }
    }

    /** The alloy named here or in the recipe, from the table named here or from the shipped one. */
    private Metal metal(Recipe recipe) throws Refusal {
        if (alloy == null && recipe.metal().isEmpty()) throw wrong("--alloys: say which of them with --alloy");
        String name = alloy != null ? alloy : recipe.metal().get().alloy().name();
        return new Options(spec).metal(name, alloys);
    }

    private OptionalDouble length(String name, String text) {
        Double mm = option(name, text, Lengths::parse, null);
        return mm == null ? OptionalDouble.empty() : OptionalDouble.of(mm);
    }

    private <T> T option(String name, String text, Function<String, T> reading, T unsaid) {
        return new Options(spec).read(name, text, reading, unsaid);
    }

    private static Clamps clamps(String text) {
        return Clamps.named(text.toLowerCase(Locale.ROOT))
                .orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is none of nowhere, rims, calm; a recipe can name places"));
    }

    private static <E extends Enum<E>> E pick(String text, E[] all) {
        for (E one : all) if (one.name().equalsIgnoreCase(text)) return one;
        throw new IllegalArgumentException("\"" + text + "\" is none of "
                + String.join(", ", java.util.Arrays.stream(all).map(e -> e.name().toLowerCase(Locale.ROOT)).toList()));
    }

    private ParameterException wrong(String sentence) {
        return new Options(spec).wrong(sentence);
    }

    /** A folder in the working directory named after the input; the name is never that of the input itself. */
    private static Path folderFor(Path file) {
        Path folder = Path.of(InputFile.stem(file));
        return Files.exists(folder) && !Files.isDirectory(folder) ? Path.of(InputFile.stem(file) + "-blank") : folder;
    }
}
