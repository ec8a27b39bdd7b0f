package blankwright.corpus;

import blankwright.mesh.TriMesh;
import blankwright.mesh.io.FormatException;
import blankwright.mesh.io.MeshReader;
import blankwright.mesh.io.RawMesh;
import blankwright.mesh.repair.Component;
import blankwright.mesh.repair.Components;
import blankwright.mesh.repair.Repair;
import blankwright.num.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Real meshes, where present: those beside the project, and hull forms, propeller, terrain and more of Debian's openfoam-examples package. */
final class MeshFiles {
    private static final Path CORPUS = Path.of("../shared/corpus");
    private static final Path EXAMPLES = Path.of("/usr/share/doc/openfoam-examples/examples");
    /** Larger parts are left out, for time; the page says how many. */
    static final int MOST_TRIANGLES = 60_000;

    /** One connected part of a file. */
    record Part(String name, TriMesh form) { }

    private MeshFiles() { }

    static List<Path> corpus() throws IOException {
        return meshes(CORPUS);
    }

    static List<Path> examples() throws IOException {
        return meshes(EXAMPLES);
    }

    /** Files of equal name and size are one: the examples share their geometry by copying. */
    private static List<Path> meshes(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) return List.of();
        try (Stream<Path> all = Files.walk(folder)) {
            Set<String> seen = new HashSet<>();
            List<Path> found = new ArrayList<>();
            for (Path p : all.filter(p -> p.toString().matches(".*\\.(obj|stl)(\\.gz)?")).sorted().toList())
                if (seen.add(p.getFileName() + " " + Files.size(p))) found.add(p);
            return found;
        }
    }

    /** The parts worth keeping, mended and parted as the program does; none where the file holds no surface or only points. */
    static List<Part> parts(Path file) {
        RawMesh raw;
        try {
            raw = MeshReader.read(file, Progress.NONE);
        } catch (FormatException onlyPoints) {
            return List.of();
        }
        var mended = Repair.of(raw.xyz(), raw.triangles(), Progress.NONE);
        List<Part> parts = new ArrayList<>();
        if (mended.isEmpty()) return parts;
        List<Component> kept = Components.worthKeeping(Components.of(mended.mesh())).pieces();
        for (int i = 0; i < kept.size(); i++)
            parts.add(new Part(file.getFileName() + (kept.size() == 1 ? "" : " part " + (i + 1)), kept.get(i).mesh()));
        return parts;
    }
}
