package blankwright.sheet;

/**
 * The two edges of metal that one seam joins again, as vertices of one piece.
 *
 * <p>Edge i runs from vertex left[2i] to left[2i+1] with its metal on the left hand, and from right[2i] to right[2i+1] with it on the right;
 * i = 0, 1, ... follow each other along the seam.
 */
public final class SeamEdges {
    private final String name;
    private final int[] left, right;

    private SeamEdges(String name, int[] left, int[] right) {
        this.name = name;
        this.left = left;
        this.right = right;
    }

    /** Copies both arrays; IllegalArgumentException where they are empty, odd or of different length. */
    public static SeamEdges of(String name, int[] left, int[] right) {
        if (left.length == 0 || left.length % 2 != 0 || left.length != right.length)
            throw new IllegalArgumentException(left.length + " and " + right.length + " ends of seam edges: must be two for each edge on both sides");
        return new SeamEdges(name, left.clone(), right.clone());
    }

    public String name() {
        return name;
    }

    public int edgeCount() {
        return left.length / 2;
    }

    /** Vertex at the start (end = 0) or end (1) of edge i on one side. */
    int vertex(boolean onLeft, int i, int end) {
        return (onLeft ? left : right)[2 * i + end];
    }
}
