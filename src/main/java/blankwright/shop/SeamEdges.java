package blankwright.shop;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.List;

/**
 * The two edges of metal that one seam joins again, as vertices of one piece.
 *
 * <p>Edge i runs from vertex left[2i] to left[2i+1] with its metal on the left hand, and from right[2i] to right[2i+1] with it on the right;
 * i = 0, 1, ... follow each other along the seam. Where a seam parts two pieces, each has its own side only; the vertices of the other are
 * -1. The marks are the same on all pieces.
 */
public final class SeamEdges {
    private static final double EVERY = 100;        // mm between marks on the form
    private static final int MOST_MARKS = 40;

    /**
     * A place on the seam marked on both of its edges, where they meet again.
     *
     * @param edge of the seam, from 0
     * @param share of that edge that lies before the mark, 0..1
     */
    public record Mark(String name, int edge, double share) { }

    private final String name;
    private final int[] left, right;
    private final double[] lengths;

    private SeamEdges(String name, int[] left, int[] right, double[] lengths) {
        this.name = name;
        this.left = left;
        this.right = right;
        this.lengths = lengths;
    }

    /**
     * Copies the arrays.
     *
     * @param lengths of the edges on the form, mm
     * @throws IllegalArgumentException where there is no edge, or not two ends for each on both sides
     */
    public static SeamEdges of(String name, int[] left, int[] right, double[] lengths) {
        if (lengths.length == 0 || left.length != 2 * lengths.length || right.length != 2 * lengths.length)
            throw new IllegalArgumentException(left.length + " and " + right.length + " ends of " + lengths.length
                    + " seam edges: must be two for each edge on both sides");
        return new SeamEdges(name, left.clone(), right.clone(), lengths.clone());
    }

    public String name() {
        return name;
    }

    public int edgeCount() {
        return left.length / 2;
    }

    /** Marks about every 100 mm of the form, at least two, at most 40, none on a seam without length; {@code A-1}, {@code A-2}, ... */
    public List<Mark> marks() {
        double length = 0;
        for (double part : lengths) length += part;
        List<Mark> marks = new ArrayList<>();
        if (!(length > 0)) return marks;
        int count = Math.max(2, Math.min(MOST_MARKS, (int) Math.round(length / EVERY)));
        double sum = 0;
        for (int i = 0; i < edgeCount(); i++) {
            double part = lengths[i];
            while (marks.size() < count && (marks.size() + 0.5) * length / count <= sum + part) {
                double share = part > 0 ? ((marks.size() + 0.5) * length / count - sum) / part : 0;
                marks.add(new Mark(name + "-" + (marks.size() + 1), i, share));
            }
            sum += part;
        }
        return marks;
    }

    /** Whether the metal on that side of a mark belongs to this piece. */
    public boolean has(Mark mark, boolean onLeft) {
        return vertex(onLeft, mark.edge(), 0) >= 0;
    }

    /**
     * {u, v, nu, nv}: where a mark stands on one side of the blank, mm, and the unit vector from there into the metal; that is 0, 0 on an edge
     * of no length.
     */
    public double[] onBlank(FlatMap map, Mark mark, boolean onLeft) {
        int a = vertex(onLeft, mark.edge(), 0), b = vertex(onLeft, mark.edge(), 1);
        double du = map.u(b) - map.u(a), dv = map.v(b) - map.v(a), part = Math.hypot(du, dv), side = onLeft ? 1 : -1;
        return new double[] {map.u(a) + mark.share() * du, map.v(a) + mark.share() * dv, part > 0 ? -side * dv / part : 0,
            part > 0 ? side * du / part : 0};
    }

    /** {x, y, z} of a mark on the form, mm; one of its sides must be here. */
    public double[] onForm(TriMesh form, Mark mark) {
        boolean onLeft = has(mark, true);
        int a = vertex(onLeft, mark.edge(), 0), b = vertex(onLeft, mark.edge(), 1);
        double f = mark.share(), g = 1 - f;
        return new double[] {g * form.x(a) + f * form.x(b), g * form.y(a) + f * form.y(b), g * form.z(a) + f * form.z(b)};
    }

    /** Vertex at the start (end = 0) or end (1) of edge i on one side. */
    int vertex(boolean onLeft, int i, int end) {
        return (onLeft ? left : right)[2 * i + end];
    }
}
