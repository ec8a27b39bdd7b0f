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
 * An end of a seam in a hand: of one that was drawn, whose other places stay, or of one by which the program opened the form, which becomes a drawn
 * one when it is moved, from end to end the shortest way.
 */
public final class SeamGrip {
    private static final double FINGER = 12, BEHIND = 3;        // px; fingers deep

    private final List<DrawnSeam> seams;
    private final int number;               // among them, from 0; as many as they are for one that was added
    private final List<DrawnSeam.Point> path;       // from the end that stays to the one that is moved

    private SeamGrip(List<DrawnSeam> seams, int number, List<DrawnSeam.Point> path) {
        this.seams = seams;
        this.number = number;
        this.path = path;
    }

    /** Both ends of each seam of what is laid out, and of what was drawn since. */
    public static List<SeamGrip> all(Laid laid, Recipe recipe) {
        List<SeamGrip> ends = new ArrayList<>();
        for (int i = 0; i < recipe.seams().size(); i++) both(ends, recipe.seams(), i, recipe.seams().get(i).points());
        for (Skin skin : laid.skins())
            for (Seam seam : skin.piece().seams())
                if (seam.kind() == Seam.Kind.ADDED) both(ends, recipe.seams(), recipe.seams().size(), path(skin.map().form(), seam));
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

    private static void both(List<SeamGrip> ends, List<DrawnSeam> seams, int number, List<DrawnSeam.Point> path) {
        List<DrawnSeam.Point> back = new ArrayList<>(path);
        Collections.reverse(back);
        ends.add(new SeamGrip(seams, number, path));
        ends.add(new SeamGrip(seams, number, back));
    }

    private static List<DrawnSeam.Point> path(TriMesh form, Seam seam) {
        List<DrawnSeam.Point> path = new ArrayList<>();
        for (int i = 0; i <= seam.edgeCount(); i++) {
            int edge = Math.min(i, seam.edgeCount() - 1), end = i - edge;
            int v = seam.left(edge, end) >= 0 ? seam.left(edge, end) : seam.right(edge, end);
            path.add(point(form.x(v), form.y(v), form.z(v)));
        }
        return path;
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
        List<DrawnSeam.Point> points = new ArrayList<>(path.subList(0, added ? 1 : path.size() - 1));
        points.add(point(to[0], to[1], to[2]));
        if (points.stream().distinct().count() < 2) throw new IllegalArgumentException("A seam needs two places: where it begins and where it ends.");
        List<DrawnSeam> all = new ArrayList<>(seams);
        if (added) all.add(new DrawnSeam(points));
        else all.set(number, new DrawnSeam(points));
        return all;
    }
}
