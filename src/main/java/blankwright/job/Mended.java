package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import blankwright.mesh.io.Foreseen;
import blankwright.mesh.io.FormatException;
import blankwright.mesh.io.MeshReader;
import blankwright.mesh.io.RawMesh;
import blankwright.mesh.repair.Components;
import blankwright.mesh.repair.Repair;
import blankwright.mesh.repair.Repaired;
import blankwright.num.LengthUnit;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.num.Share;
import blankwright.project.Recipe;
import blankwright.project.Source;
import blankwright.shape.Fineness;
import blankwright.shape.UnfitValue;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The panel as given, mended and thinned out: what does not depend on how it is to be made.
 *
 * @param units of the input's numbers
 * @param whole mesh that is worked on from here, mm
 * @param readSeconds of reading alone
 * @param mendSeconds of the rest
 */
record Mended(LengthUnit units, Result.Input input, Optional<Result.Reduction> reduction, TriMesh whole, List<Finding> findings, double readSeconds,
        double mendSeconds) {
    Mended {
        findings = List.copyOf(findings);
    }

    /** @throws Refusal where the input is no panel, with the place and the remedy */
    static Mended of(Recipe recipe, Given given, MemoryGuard memory, Progress progress) throws Refusal {
        return new Making(recipe, given, memory, progress).run();
    }

    private record Mesh(double[] xyz, int[] triangles) { }

    private static final class Making {
        private final Recipe recipe;
        private final Given given;
        private final MemoryGuard memory;
        private final Progress progress;
        private final List<Finding> findings = new ArrayList<>();
        private LengthUnit units = LengthUnit.MM;
        private long vertices;
        private long triangles;
        private double readSeconds;

        Making(Recipe recipe, Given given, MemoryGuard memory, Progress progress) {
            this.recipe = recipe;
            this.given = given;
            this.memory = memory;
            this.progress = progress;
        }

        Mended run() throws Refusal {
            Stopwatch watch = new Stopwatch();
            Repaired mended = mended(watch);
            findings.addAll(mended.findings());
            if (mended.isEmpty())
                throw new Refusal(given.name() + ": nothing is left that could be a panel (" + said() + "); export the mesh again.");
            Components.Extent extent = Components.extent(mended.mesh());
            Result.Input input = new Result.Input(vertices, triangles, extent.area(), extent.dx(), extent.dy(), extent.dz());
            if (SizeQuestion.unusual(input.across()))
                findings.add(new Finding(Finding.Kind.UNUSUAL_SIZE, 1, Sentence.say(
                        "the panel is %s across, which is unusual; check the unit.", SizeQuestion.sized(input.across()))));
            int count = mended.mesh().triangleCount();
            if (Thinning.wanted(recipe, count)) memory.needs("thinned out", count, MemoryNeed.thinning(count));
            Thinning thinning = Thinning.of(recipe, mended.mesh(), new Share(progress, 0.2, 0.28));
            thinning.finding().ifPresent(findings::add);
            return new Mended(units, input, thinning.reduction(), thinning.mesh(), findings, readSeconds, watch.lap());
        }

        /** What was read is gone from the memory once this returns. */
        private Repaired mended(Stopwatch watch) throws Refusal {
            Mesh mesh = read();
            readSeconds = watch.lap();
            progress.at("mending", 0.1);
            memory.needs("mended", triangles, MemoryNeed.mending(triangles, vertices));
            return Repair.of(mesh.xyz(), mesh.triangles(), new Share(progress, 0.1, 0.2));
        }

        private Mesh read() throws Refusal {
            if (recipe.source() instanceof Source.OfMesh file) return readFile(file);
            progress.at("shaping " + recipe.name(), 0);
            try {
                TriMesh mesh = ((Source.OfPanel) recipe.source()).panel().mesh(Fineness.chord(recipe.chord()));
                vertices = mesh.vertexCount();
                triangles = mesh.triangleCount();
                return new Mesh(mesh.positions(), mesh.corners());
            } catch (UnfitValue e) {
                throw new Refusal(Sentence.say("%s: %s", given.name(), e.words()));
            }
        }

        private Mesh readFile(Source.OfMesh source) throws Refusal {
            RawMesh raw;
            Path path = relativeToHere(given.folder().resolve(source.file()));
            Optional<Foreseen> there = Foreseen.of(path);
            if (there.isPresent()) memory.needs("read and mended", there.get().triangles(), MemoryNeed.reading(there.get()));
            try {
                raw = MeshReader.read(path, new Share(progress, 0, 0.1));
            } catch (FormatException e) {
                throw new Refusal(e.getMessage());
            }
            findings.addAll(raw.findings());
            vertices = raw.vertexCount();
            triangles = raw.triangleCount();
            units = source.units().orElse(LengthUnit.MM);
            double[] xyz = raw.xyz();
            double across = across(xyz, raw.triangles());
            if (source.units().isEmpty() && across > 0) {
                Optional<String> question = SizeQuestion.ask(source.file(), across, units);
                if (question.isPresent()) throw new OddSize(question.get(), across);
            }
            for (int i = 0; i < xyz.length; i++) xyz[i] *= units.mm();
            return new Mesh(xyz, raw.triangles());
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
            List<String> all = Stream.concat(given.findings().stream(), findings.stream()).map(Finding::text).toList();
            return all.isEmpty() ? "no triangles" : String.join("; ", all);
        }
    }
}
