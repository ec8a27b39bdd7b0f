package blankwright.job;

import blankwright.flatten.Covering;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.cut.PartingSeam;
import blankwright.mesh.cut.Seam;
import blankwright.mesh.cut.SeamPaths;
import blankwright.mesh.cut.ZoneSeam;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.Wavefront;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Seams that part what lies over each other on a blank, or let tools in, as a recipe would say them. */
final class PartingSeams {
    /** Of the way between the two places farthest apart: what counts as an end, so that no mere corner is cut off. */
    private static final double ENDS = 0.3;

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

    /**
     * The shortest seam that parts the largest place where a layout covers itself; several where it runs over holes. Where the layout covers
     * itself so wholly that no two stretches of rim can be told, the two ends of the rim farthest apart along the skin are parted.
     *
     * @return empty where no way across is found
     */
    Optional<Parting> of(Part part, FlatMap map, List<double[]> places) {
        TriMesh form = map.form();
        EdgeTable edges = EdgeTable.of(form);
        RimLoops rims = RimLoops.of(form, edges);
        int outer = rims.longest(form);
        int[] loop = rims.loop(outer), first, second;
        List<Covering> found = Covering.of(map, rims, places.subList(0, 1));
        if (found.isEmpty()) {
            EdgeStars stars = EdgeStars.of(form, edges);
            int one = farthest(loop, Wavefront.distances(form, edges, stars, loop[0]));
            double[] fromOne = Wavefront.distances(form, edges, stars, one);
            int other = farthest(loop, fromOne);
            double[] fromOther = Wavefront.distances(form, edges, stars, other);
            first = within(loop, fromOne, fromOne[other] * ENDS);
            second = within(loop, fromOther, fromOne[other] * ENDS);
        } else {
            Covering largest = found.get(0);
            if (largest.loop() != outer || largest.otherLoop() != outer) return Optional.empty();
            first = largest.first();
            second = largest.second();
        }
        List<int[]> across = PartingSeam.between(form, loop, first, second).orElse(List.of());
        if (across.isEmpty()) return Optional.empty();
        return Optional.of(parting(part, across));
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

    private static int farthest(int[] among, double[] distance) {
        int best = among[0];
        for (int v : among) if (distance[v] > distance[best]) best = v;
        return best;
    }

    private static int[] within(int[] among, double[] distance, double reach) {
        return Arrays.stream(among).filter(v -> distance[v] <= reach).toArray();
    }
}
