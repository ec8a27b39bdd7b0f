package blankwright.job;

import blankwright.flatten.Covering;
import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.ChosenCut;
import blankwright.mesh.cut.PartingSeam;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.ShortestPath;
import blankwright.mesh.query.Wavefront;
import blankwright.mesh.repair.Component;
import blankwright.mesh.repair.Components;
import blankwright.outline.Overlap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The fewest cuts found after which no part of a layout lies over itself.
 *
 * <ol><li>For each place where the layout covers itself the shortest way across that parts its two stretches of rim. A stretch on a hole's
 * rim: the hole is opened to the outer rim first, by the shortest way that leaves the stretches whole.
 * <li>One of these ways, then two of them, ...; of as many the shortest together that leave no part over itself, in the layout as it is.
 * <li>Or, where no such set of that number does, cuts across into equal areas from one end to the other: a strip wound round and round.
 * <li>Where nothing does, the way across the largest place; laid flat anew, the parts may do, or be asked again.</ol>
 */
final class FewestSeams {
    private static final int MOST = 6;              // cuts
    private static final int PLACES = 5;            // the largest ones; 31 sets of them at most
    private static final double BAND = 0.1;         // of a share: where the cut between two of them may run

    private final FlatMap map;
    private final TriMesh form;
    private final EdgeTable edges;
    private final EdgeStars stars;
    private final RimLoops rims;
    private final int outer;

    private FewestSeams(FlatMap map) {
        this.map = map;
        form = map.form();
        edges = EdgeTable.of(form);
        stars = EdgeStars.of(form, edges);
        rims = RimLoops.of(form, edges);
        outer = rims.longest(form);
    }

    /**
     * @param places rings round the places where the layout covers itself, mm, the largest first
     * @return paths of vertices of the form; empty where no way across is found
     */
    static List<int[]> of(FlatMap map, List<double[]> places) {
        return new FewestSeams(map).cuts(places);
    }

    private List<int[]> cuts(List<double[]> places) {
        List<List<int[]>> ways = new ArrayList<>();
        for (Covering covering : Covering.of(map, rims, places.subList(0, Math.min(PLACES, places.size())))) {
            List<int[]> way = across(covering);
            if (!way.isEmpty() && ways.stream().noneMatch(w -> same(w, way))) ways.add(way);
        }
        double[] share = shares();
        for (int count = 1; count <= MOST; count++) {
            List<int[]> best = List.of();
            for (int set = 1; set < 1 << ways.size(); set++) {
                List<int[]> cuts = new ArrayList<>();
                for (int i = 0; i < ways.size(); i++) if ((set >> i & 1) > 0) cuts.addAll(ways.get(i));
                if (Integer.bitCount(set) == count && (best.isEmpty() || length(cuts) < length(best)) && parts(cuts)) best = cuts;
            }
            if (!best.isEmpty()) return best;
            List<int[]> equal = between(share, count + 1);
            if (!equal.isEmpty() && parts(equal)) return equal;
        }
        return ways.isEmpty() ? between(share, 2) : ways.get(0);
    }

    private List<int[]> across(Covering covering) {
        int[] first = covering.first(), second = covering.second();
        List<int[]> openings = new ArrayList<>();
        for (int loop : new int[] {covering.loop(), covering.otherLoop()}) {
            if (loop == outer || loop == covering.loop() && !openings.isEmpty()) continue;
            int[] opening = opening(loop, first, second);
            if (opening.length == 0) return List.of();
            openings.add(opening);
        }
        if (openings.isEmpty()) return PartingSeam.between(form, rims.loop(outer), first, second).orElse(List.of());
        TriMesh opened = cut(openings);
        int[] inForm = new int[opened.vertexCount()], there = new int[form.vertexCount()];
        for (int t = 0; t < form.triangleCount(); t++) for (int k = 0; k < 3; k++) {
            inForm[opened.corner(t, k)] = form.corner(t, k);
            there[form.corner(t, k)] = opened.corner(t, k);
        }
        RimLoops loops = RimLoops.of(opened, EdgeTable.of(opened));
        for (int i = 0; i < loops.count(); i++) {
            int[] loop = loops.loop(i);
            if (Arrays.stream(loop).noneMatch(v -> v == there[first[0]])) continue;
            List<int[]> cuts = PartingSeam.between(opened, loop, Arrays.stream(first).map(v -> there[v]).toArray(),
                    Arrays.stream(second).map(v -> there[v]).toArray()).orElse(List.of()).stream()
                    .map(path -> Arrays.stream(path).map(v -> inForm[v]).toArray()).toList();
            if (cuts.isEmpty() || parts(cuts)) return cuts;             // a piece of one rim is cut off: the hole may stay closed
            openings.addAll(cuts);
            return openings;
        }
        return List.of();
    }

    /** The shortest way from a hole to the outer rim that leaves the stretches whole; empty where there is none. */
    private int[] opening(int hole, int[] first, int[] second) {
        boolean[] held = new boolean[form.vertexCount()];
        for (int v : first) held[v] = true;
        for (int v : second) held[v] = true;
        int[] from = Arrays.stream(rims.loop(hole)).filter(v -> !held[v]).toArray();
        int[] to = Arrays.stream(rims.loop(outer)).filter(v -> !held[v]).toArray();
        if (from.length == 0 || to.length == 0) return new int[0];
        return ShortestPath.between(form, edges, e -> edges.right(e) < 0 || held[edges.from(e)] || held[edges.to(e)]
                ? Double.POSITIVE_INFINITY : edges.length(e), from, to).map(ShortestPath::vertices).orElse(new int[0]);
    }

    /**
     * For each vertex how much of the area, 0 to 1, lies nearer to one end of the outer rim than it does; the ends are farthest apart along
     * the skin.
     */
    private double[] shares() {
        int[] loop = rims.loop(outer);
        int one = farthest(loop, Wavefront.distances(form, edges, stars, loop[0]));
        double[] fromOne = Wavefront.distances(form, edges, stars, one);
        double[] fromOther = Wavefront.distances(form, edges, stars, farthest(loop, fromOne));
        double[] area = new double[fromOne.length], share = new double[fromOne.length];
        for (int t = 0; t < form.triangleCount(); t++) for (int k = 0; k < 3; k++) area[form.corner(t, k)] += form.area(t) / 3;
        double whole = form.area(), nearer = 0;
        int[] order = IntStream.range(0, area.length).boxed()
                .sorted(Comparator.comparingDouble(v -> fromOne[v] - fromOther[v])).mapToInt(v -> v).toArray();
        for (int v : order) {
            share[v] = (nearer + area[v] / 2) / whole;
            nearer += area[v];
        }
        return share;
    }

    private List<int[]> between(double[] share, int parts) {
        int[] loop = rims.loop(outer);
        List<int[]> cuts = new ArrayList<>();
        for (int i = 1; i < parts; i++) {
            double low = (i - BAND) / parts, high = (i + BAND) / parts;
            List<int[]> cut = PartingSeam.between(form, loop, Arrays.stream(loop).filter(v -> share[v] < low).toArray(),
                    Arrays.stream(loop).filter(v -> share[v] > high).toArray()).orElse(List.of());
            if (cut.isEmpty()) return List.of();
            cuts.addAll(cut);
        }
        return cuts;
    }

    /** Whether no part lies over itself once the layout is cut. */
    private boolean parts(List<int[]> cuts) {
        for (Component part : Components.of(cut(cuts))) {
            TriMesh mesh = part.mesh();
            double[] uv = new double[2 * mesh.vertexCount()];
            for (int t = 0; t < mesh.triangleCount(); t++) for (int k = 0; k < 3; k++) {
                int v = form.corner(part.triangleOf(t), k);
                uv[2 * mesh.corner(t, k)] = map.u(v);
                uv[2 * mesh.corner(t, k) + 1] = map.v(v);
            }
            FlatMap flat = FlatMap.of(mesh, uv);
            if (!Overlap.of(FlattenJob.rims(flat, RimLoops.of(mesh, EdgeTable.of(mesh)))).isEmpty()) return false;
        }
        return true;
    }

    private TriMesh cut(List<int[]> paths) {
        List<ChosenCut.Numbered> numbered = new ArrayList<>();
        for (int[] path : paths) numbered.add(new ChosenCut.Numbered(numbered.size() + 1, path));
        return ChosenCut.along(form, numbered).mesh();
    }

    private double length(List<int[]> paths) {
        double sum = 0;
        for (int[] path : paths) for (int i = 1; i < path.length; i++) sum += form.distance(path[i - 1], path[i]);
        return sum;
    }

    private static boolean same(List<int[]> one, List<int[]> other) {
        return Arrays.deepEquals(one.toArray(), other.toArray());
    }

    private static int farthest(int[] among, double[] distance) {
        int best = among[0];
        for (int v : among) if (distance[v] > distance[best]) best = v;
        return best;
    }
}
