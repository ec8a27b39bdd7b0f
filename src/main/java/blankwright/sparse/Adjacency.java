package blankwright.sparse;

/** Which nodes share an element, in compressed rows; a neighbour may be named more than once. */
final class Adjacency {
    private Adjacency() { }

    /** Neighbours of node v stand at start[v] .. start[v+1]-1; length nodes + 1. */
    static int[] start(int nodes, int[] tri) {
        int[] start = new int[nodes + 1];
        for (int v : tri) start[v + 1] += 2;
        for (int v = 0; v < nodes; v++) start[v + 1] += start[v];
        return start;
    }

    static int[] of(int nodes, int[] tri) {
        int[] at = start(nodes, tri);
        int[] neighbour = new int[2 * tri.length];
        for (int e = 0; e < tri.length; e += 3)
            for (int k = 0; k < 3; k++) {
                int v = tri[e + k];
                neighbour[at[v]++] = tri[e + (k + 1) % 3];
                neighbour[at[v]++] = tri[e + (k + 2) % 3];
            }
        return neighbour;
    }
}
