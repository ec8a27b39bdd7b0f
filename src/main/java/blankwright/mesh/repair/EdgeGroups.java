package blankwright.mesh.repair;

import java.util.Arrays;

/**
 * Half-edges that lie on the same two vertices, in whatever number and direction. Half-edge 3t+k runs from corner k to k+1.
 *
 * <p>Groups are ordered by lower vertex, then higher; halves within a group by number. O(n log d) with d the highest valence.
 */
final class EdgeGroups {
    private final long[] entry;     // higher vertex << 32 | half, in buckets of the lower vertex
    private final int[] bucket;     // lower vertex -> first entry
    private final int[] start;      // group -> first entry
    private final int count;

    EdgeGroups(int vertices, int[] tri, int corners) {
        bucket = new int[vertices + 1];
        for (int h = 0; h < corners; h++) bucket[Math.min(tri[h], tri[next(h)]) + 1]++;
        for (int v = 0; v < vertices; v++) bucket[v + 1] += bucket[v];
        entry = new long[corners];
        int[] at = Arrays.copyOf(bucket, vertices);
        for (int h = 0; h < corners; h++) {
            int a = tri[h], b = tri[next(h)];
            entry[at[Math.min(a, b)]++] = (long) Math.max(a, b) << 32 | h;
        }
        int[] first = new int[corners + 1];
        int groups = 0;
        for (int v = 0; v < vertices; v++) {
            Arrays.sort(entry, bucket[v], bucket[v + 1]);
            for (int i = bucket[v]; i < bucket[v + 1]; i++) {
                if (i == bucket[v] || entry[i] >> 32 != entry[i - 1] >> 32) first[groups++] = i;
            }
        }
        first[groups] = corners;
        start = Arrays.copyOf(first, groups + 1);
        count = groups;
    }

    static int next(int half) {
        return half % 3 == 2 ? half - 2 : half + 1;
    }

    int count() {
        return count;
    }

    int size(int group) {
        return start[group + 1] - start[group];
    }

    int half(int group, int i) {
        return (int) entry[start[group] + i];
    }

    /** The other half where v-w carries exactly two, else -1. */
    int only(int v, int w, int half) {
        int i = find(v, w);
        if (i < 0) return -1;
        int end = bucket[Math.min(v, w) + 1], high = Math.max(v, w), n = 0, other = -1;
        for (; i < end && entry[i] >> 32 == high; i++) {
            if (++n > 2) return -1;
            if ((int) entry[i] != half) other = (int) entry[i];
        }
        return n == 2 ? other : -1;
    }

    boolean has(int v, int w) {
        return find(v, w) >= 0;
    }

    /** Whether v-w carries exactly one triangle. */
    boolean isOpen(int v, int w) {
        int i = find(v, w);
        return i >= 0 && (i + 1 == bucket[Math.min(v, w) + 1] || entry[i + 1] >> 32 != entry[i] >> 32);
    }

    private int find(int v, int w) {
        int low = Math.min(v, w), i = bucket[low], j = bucket[low + 1], end = j;
        long wanted = (long) Math.max(v, w) << 32;
        while (i < j) {
            int mid = (i + j) >>> 1;
            if (entry[mid] < wanted) i = mid + 1;
            else j = mid;
        }
        return i < end && entry[i] >> 32 == Math.max(v, w) ? i : -1;
    }
}
