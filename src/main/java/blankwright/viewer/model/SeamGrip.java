package blankwright.viewer.model;

import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.DrawnSeam;
import blankwright.mesh.cut.Seam;
import blankwright.project.Recipe;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * An end of a seam in a hand: of one that was drawn, or of one by which the program opened the form, which becomes a drawn one when it is moved.
 * What lies between follows in proportion, so that a seam across a panel stays one.
 */
public final class SeamGrip {
    private static final int STEPS = 6;                         // places along a seam that was not drawn through any
    private static final double FINGER = 12, BEHIND = 3;        // px; fingers deep

    private final Laid laid;
    private final List<DrawnSeam> seams;
    private final int number;               // among them, from 0; as many as they are for one that was added
    private final List<DrawnSeam.Point> path;       // from the end that stays to the one that is moved

    private SeamGrip(Laid laid, List<DrawnSeam> seams, int number, List<DrawnSeam.Point> path) {
        this.laid = laid;
        this.seams = seams;
        this.number = number;
        this.path = path;
    }

    /** Both ends of each seam of what is laid out, and of what was drawn since. */
    public static List<SeamGrip> all(Laid laid, Recipe recipe) {
        List<SeamGrip> ends = new ArrayList<>();
        for (int i = 0; i < recipe.seams().size(); i++) both(ends, laid, recipe.seams(), i, recipe.seams().get(i).points());
        for (Skin skin : laid.skins())
            for (Seam seam : skin.piece().seams())
                if (seam.kind() == Seam.Kind.ADDED && !way(skin.map().form(), seam).isEmpty())
                    both(ends, laid, recipe.seams(), recipe.seams().size(), way(skin.map().form(), seam));
        return ends;
    }

    /**
     * The one seen nearest to a point of the picture, within a finger's width; not one that lies far behind the skin seen there.
     *
     * @param x with y from the middle of the picture, px
     * @param height of the picture, px
     * @param skin the place of the form under that point, mm, where there is one: ends lie on rims, beside which there is none
     */
    public static Optional<SeamGrip> under(Laid laid, Recipe recipe, Orbit orbit, double x, double y, double height, Optional<double[]> skin) {
        SeamGrip best = null;
        double least = FINGER;
        for (SeamGrip grip : all(laid, recipe)) {
            double[] at = grip.at(), seen = orbit.seen(at[0], at[1], at[2], height);
            double off = Math.hypot(seen[0] - x, seen[1] - y);
            boolean hidden = skin.isPresent() && depth(orbit, at) - depth(orbit, skin.get()) > BEHIND * FINGER * orbit.span() / height;
            if (seen[2] <= 0 || off > least || hidden) continue;
            least = off;
            best = grip;
        }
        return Optional.ofNullable(best);
    }

    /** Away from the eye, mm, from some place. */
    private static double depth(Orbit orbit, double[] p) {
        double[] t = orbit.towards();
        return -(p[0] * t[0] + p[1] * t[1] + p[2] * t[2]);
    }

    private static void both(List<SeamGrip> ends, Laid laid, List<DrawnSeam> seams, int number, List<DrawnSeam.Point> path) {
        List<DrawnSeam.Point> back = new ArrayList<>(path);
        Collections.reverse(back);
        ends.add(new SeamGrip(laid, seams, number, path));
        ends.add(new SeamGrip(laid, seams, number, back));
    }

    /** A few places along a seam as it was laid out; fewer than two where it runs on along other pieces. */
    private static List<DrawnSeam.Point> way(TriMesh form, Seam seam) {
        List<DrawnSeam.Point> path = new ArrayList<>();
        int steps = Math.min(STEPS, seam.edgeCount());
        for (int k = 0; k <= steps; k++) {
            int i = k * seam.edgeCount() / steps, edge = Math.min(i, seam.edgeCount() - 1), end = i - edge;
            int v = seam.left(edge, end) >= 0 ? seam.left(edge, end) : seam.right(edge, end);
            if (v < 0) return List.of();
            path.add(point(form.x(v), form.y(v), form.z(v)));
        }
        return path;
    }

    /** From the end that stays; where only the ends were drawn, as the seam went between them. */
    private List<DrawnSeam.Point> places() {
        if (path.size() > 2) return path;
        for (Skin skin : laid.skins()) {
            for (Seam seam : skin.piece().seams()) {
                if (seam.kind() != Seam.Kind.CHOSEN || seam.number() != number + 1) continue;
                List<DrawnSeam.Point> way = way(skin.map().form(), seam);
                if (way.isEmpty()) continue;
                if (distance(way.get(0), path.get(0)) > distance(way.get(way.size() - 1), path.get(0))) Collections.reverse(way);
                return way;
            }
        }
        return path;
    }

    private static double distance(DrawnSeam.Point p, DrawnSeam.Point q) {
        return Math.hypot(Math.hypot(p.x() - q.x(), p.y() - q.y()), p.z() - q.z());
    }

    private static DrawnSeam.Point point(double x, double y, double z) {
        return new DrawnSeam.Point(Laid.tidy(x), Laid.tidy(y), Laid.tidy(z));
    }

    /** Where the end lies, mm on the form. */
    public double[] at() {
        DrawnSeam.Point end = path.get(path.size() - 1);
        return new double[] {end.x(), end.y(), end.z()};
    }

    /**
     * All seams of the recipe with this end elsewhere.
     *
     * @param to mm on the form
     * @throws IllegalArgumentException where nothing is left of the seam
     */
    List<DrawnSeam> moved(double[] to) {
        boolean added = number == seams.size();
        List<DrawnSeam.Point> was = places(), points = new ArrayList<>();
        double[] along = new double[was.size()], from = at();
        for (int i = 1; i < along.length; i++) along[i] = along[i - 1] + distance(was.get(i - 1), was.get(i));
        points.add(path.get(0));
        for (int i = 1; i < along.length - 1; i++) {
            double share = along[i] / along[along.length - 1];
            DrawnSeam.Point p = was.get(i);
            double[] on = laid.numbers(laid.onForm(p.x() + share * (to[0] - from[0]), p.y() + share * (to[1] - from[1]),
                    p.z() + share * (to[2] - from[2]))).form();
            points.add(point(on[0], on[1], on[2]));
        }
        points.add(point(to[0], to[1], to[2]));
        if (points.stream().distinct().count() < 2) throw new IllegalArgumentException("A seam needs two places: where it begins and where it ends.");
        List<DrawnSeam> all = new ArrayList<>(seams);
        if (added) all.add(new DrawnSeam(points));
        else all.set(number, new DrawnSeam(points));
        return all;
    }
}
