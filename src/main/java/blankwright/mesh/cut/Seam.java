package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;

/**
 * A path of edges along which the form is made of two edges of metal to be joined again.
 *
 * <p>Edge i of the seam runs from vertex i to vertex i + 1 of the path on the form. On the opened mesh it is there twice: once with its
 * metal on the left hand walking along the path on the outer skin, once on the right.
 */
public final class Seam {
    /** Who asked for it. */
    public enum Kind { ADDED, CHOSEN }

    private final Kind kind;
    private final String reason;
    private final int[] path;
    private final double length;
    private final int[] left;       // edge i: opened vertices left[2i], left[2i+1]
    private final int[] right;

    private Seam(Kind kind, String reason, int[] path, double length, int[] left, int[] right) {
        this.kind = kind;
        this.reason = reason;
        this.path = path;
        this.length = length;
        this.left = left;
        this.right = right;
    }

    static Seam of(Kind kind, String reason, int[] path, TriMesh mesh, EdgeTable edges, EdgeStars stars, TriMesh opened) {
        int[] left = new int[2 * (path.length - 1)], right = new int[left.length];
        double length = 0;
        for (int i = 0; i + 1 < path.length; i++) {
            int e = stars.between(path[i], path[i + 1]);
            boolean along = edges.from(e) == path[i];
            int one = edges.left(e), other = edges.right(e);
            for (int end = 0; end < 2; end++) {
                left[2 * i + end] = sameCorner(mesh, opened, along ? one : other, path[i + end]);
                right[2 * i + end] = sameCorner(mesh, opened, along ? other : one, path[i + end]);
            }
            length += mesh.distance(path[i], path[i + 1]);
        }
        return new Seam(kind, reason, path.clone(), length, left, right);
    }

    private static int sameCorner(TriMesh mesh, TriMesh opened, int t, int v) {
        for (int k = 0; k < 3; k++) if (mesh.corner(t, k) == v) return opened.corner(t, k);
        throw new AssertionError("vertex " + v + " is no corner of triangle " + t);
    }

    public Kind kind() {
        return kind;
    }

    /** Why it is there, a few words. */
    public String reason() {
        return reason;
    }

    /** Vertices on the form in order, two or more; a copy. */
    public int[] path() {
        return path.clone();
    }

    /** mm. */
    public double length() {
        return length;
    }

    public int edgeCount() {
        return path.length - 1;
    }

    /** Vertex of the opened mesh at the start (end = 0) or end (1) of edge i, metal on the left. */
    public int left(int i, int end) {
        return left[2 * i + end];
    }

    /** Vertex of the opened mesh at the start (end = 0) or end (1) of edge i, metal on the right. */
    public int right(int i, int end) {
        return right[2 * i + end];
    }
}
