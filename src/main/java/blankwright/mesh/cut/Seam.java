package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;
import java.util.Arrays;
import java.util.function.IntUnaryOperator;

/**
 * A path of edges along which the form is made of two edges of metal to be joined again.
 *
 * <p>Edge i of the seam runs from vertex i to vertex i + 1 of the path on the form. On the opened mesh it is there twice: once with its
 * metal on the left hand walking along the path on the outer skin, once on the right. Where chosen seams part a form, the metal of one side
 * may belong to another part; this side is then missing here.
 */
public final class Seam {
    /** Who asked for it. */
    public enum Kind { ADDED, CHOSEN }

    private final Kind kind;
    private final int number;
    private final String reason;
    private final int[] path;
    private final double[] lengths; // edge i, mm
    private final int[] left;       // edge i: opened vertices left[2i], left[2i+1]; -1 where that side is missing
    private final int[] right;

    private Seam(Kind kind, int number, String reason, int[] path, double[] lengths, int[] left, int[] right) {
        this.kind = kind;
        this.number = number;
        this.reason = reason;
        this.path = path;
        this.lengths = lengths;
        this.left = left;
        this.right = right;
    }

    /** @param here per triangle of the form its number in the opened mesh, -1 where it is in another part; null where both number alike */
    static Seam of(Kind kind, int number, String reason, int[] path, TriMesh mesh, EdgeTable edges, EdgeStars stars, TriMesh opened, int[] here) {
        int[] left = new int[2 * (path.length - 1)], right = new int[left.length];
        double[] lengths = new double[path.length - 1];
        for (int i = 0; i + 1 < path.length; i++) {
            int e = stars.between(path[i], path[i + 1]);
            boolean along = edges.from(e) == path[i];
            int one = edges.left(e), other = edges.right(e);
            for (int end = 0; end < 2; end++) {
                left[2 * i + end] = sameCorner(mesh, opened, along ? one : other, path[i + end], here);
                right[2 * i + end] = sameCorner(mesh, opened, along ? other : one, path[i + end], here);
            }
            lengths[i] = mesh.distance(path[i], path[i + 1]);
        }
        return new Seam(kind, number, reason, path.clone(), lengths, left, right);
    }

    /** The same seam, the vertices of its path called otherwise. */
    Seam renamed(IntUnaryOperator vertex) {
        return new Seam(kind, number, reason, Arrays.stream(path).map(vertex).toArray(), lengths, left, right);
    }

    private static int sameCorner(TriMesh mesh, TriMesh opened, int t, int v, int[] here) {
        int there = here == null ? t : here[t];
        if (there < 0) return -1;
        for (int k = 0; k < 3; k++) if (mesh.corner(t, k) == v) return opened.corner(there, k);
        throw new AssertionError("vertex " + v + " is no corner of triangle " + t);
    }

    public Kind kind() {
        return kind;
    }

    /** Of a chosen seam its number among the chosen, from 1; 0 of an added one. */
    public int number() {
        return number;
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
        return Arrays.stream(lengths).sum();
    }

    /** Of edge i on the form, mm. */
    public double length(int i) {
        return lengths[i];
    }

    /** Whether any of its metal, on either side, belongs to this part. */
    boolean isHere() {
        for (int i = 0; i < left.length; i++) if (left[i] >= 0 || right[i] >= 0) return true;
        return false;
    }

    public int edgeCount() {
        return path.length - 1;
    }

    /** Vertex of the opened mesh at the start (end = 0) or end (1) of edge i, metal on the left; -1 where that belongs to another part. */
    public int left(int i, int end) {
        return left[2 * i + end];
    }

    /** Vertex of the opened mesh at the start (end = 0) or end (1) of edge i, metal on the right; -1 where that belongs to another part. */
    public int right(int i, int end) {
        return right[2 * i + end];
    }
}
