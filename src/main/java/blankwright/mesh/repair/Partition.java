package blankwright.mesh.repair;

/** Which of 0..n-1 hang together; each group is known by its lowest member. */
final class Partition {
    private final int[] parent;

    Partition(int n) {
        parent = new int[n];
        for (int i = 0; i < n; i++) parent[i] = i;
    }

    void unite(int a, int b) {
        int p = lowest(a), q = lowest(b);
        if (p < q) parent[q] = p;
        else parent[p] = q;
    }

    int lowest(int a) {
        int i = a;
        while (parent[i] != i) {
            parent[i] = parent[parent[i]];
            i = parent[i];
        }
        return i;
    }
}
