package blankwright.job;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.cut.SeamPaths;
import blankwright.mesh.cut.ZoneSeam;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Seams that part what lies over each other on a blank, or let tools in, as a recipe would say them. */
final class PartingSeams {
    private final SeamPaths paths;

    /**
     * What a recipe must say.
     *
     * @param kept seams with which the part was opened, so that they stay where they are
     * @param across the new ones
     */
    record Parting(List<DrawnSeam> kept, List<DrawnSeam> across) { }

    /** @param whole all parts of the panel as they were given, mended */
    PartingSeams(TriMesh whole) {
        paths = SeamPaths.on(whole);
    }

    /** The fewest seams found that part all places where a layout covers itself, see {@link FewestSeams}; empty where no way across is found. */
    Optional<Parting> of(Part part, FlatMap map, List<double[]> places) {
        List<int[]> cuts = FewestSeams.of(map, places);
        return cuts.isEmpty() ? Optional.empty() : Optional.of(parting(part, cuts));
    }

    /** The seam through a zone of a piece that lies far from its edges; empty where there is none. */
    Optional<Parting> through(Part part, FlatMap map, int[] zone) {
        return ZoneSeam.through(map.form(), zone).map(path -> parting(part, List.of(path)));
    }

    private Parting parting(Part part, List<int[]> cuts) {
        List<DrawnSeam> kept = new ArrayList<>(), across = new ArrayList<>();
        for (Seam seam : part.opened().seams())
            if (seam.kind() == Seam.Kind.ADDED) kept.add(paths.drawn(Arrays.stream(seam.path()).map(part.component()::vertexOf).toArray()));
        for (int[] path : cuts) across.add(paths.drawn(Arrays.stream(path).map(part.opened()::inForm).map(part.component()::vertexOf).toArray()));
        return new Parting(kept, across);
    }
}
