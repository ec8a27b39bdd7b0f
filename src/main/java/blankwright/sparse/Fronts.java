package blankwright.sparse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The pattern of a factorization, found once: a tree of dense fronts and where each element and each child goes in them.
 *
 * <p>A front's list holds the nodes it touches, those eliminated latest first, its own (pivot) nodes last. Lists are in that one order
 * everywhere, so a child's list without its pivots is a subsequence of its parent's.
 */
final class Fronts {
    final int count;
    final int[] parent;         // front -> front, -1 at a root; children have lower numbers
    final int[] firstChild, nextSibling;
    final int[] pivots;         // front -> number of own nodes, the last ones of its list
    final int[][] list;         // front -> nodes, latest eliminated first
    final int[][] inParent;     // front -> index in the parent's list of each node of the list that is not a pivot
    final int[] firstElement;   // front -> its elements are element[firstElement[f] .. firstElement[f + 1] - 1]
    final int[] element;
    final int[] corner;         // 3 per entry of element: index of the node in the list of its front
    final long[] work;          // multiplications of the subtree for one unknown a node

    /** @param tri 3 nodes per element; nodes without an element are allowed */
    Fronts(int nodes, int[] tri, Dissection dissection) {
        List<Dissection.Part> parts = new ArrayList<>();
        List<int[]> children = new ArrayList<>();
        collect(dissection.root(), parts, children);
        count = parts.size();
        parent = new int[count];
        firstChild = new int[count];
        nextSibling = new int[count];
        Arrays.fill(parent, -1);
        Arrays.fill(firstChild, -1);
        Arrays.fill(nextSibling, -1);
        for (int f = 0; f < count; f++) {
            int[] below = children.get(f);
            for (int i = below.length - 1; i >= 0; i--) {
                parent[below[i]] = f;
                nextSibling[below[i]] = firstChild[f];
                firstChild[f] = below[i];
            }
        }
        int[] order = dissection.order();
        int[] position = new int[nodes];
        int[] front = new int[nodes];
        int at = 0;
        pivots = new int[count];
        for (int f = 0; f < count; f++) {
            Dissection.Part part = parts.get(f);
            pivots[f] = part.to - part.from;
            for (int i = part.from; i < part.to; i++) {
                position[order[i]] = at++;
                front[order[i]] = f;
            }
        }
        int[] eliminated = new int[nodes];
        for (int v = 0; v < nodes; v++) eliminated[position[v]] = v;

        int elements = tri.length / 3;
        firstElement = new int[count + 1];
        int[] home = new int[elements];
        for (int e = 0; e < elements; e++) {
            int a = tri[3 * e], b = tri[3 * e + 1], c = tri[3 * e + 2];
            int first = position[a] < position[b] ? a : b;
            if (position[c] < position[first]) first = c;
            home[e] = front[first];
            firstElement[home[e] + 1]++;
        }
        for (int f = 0; f < count; f++) firstElement[f + 1] += firstElement[f];
        element = new int[elements];
        int[] fill = Arrays.copyOf(firstElement, count);
        for (int e = 0; e < elements; e++) element[fill[home[e]]++] = e;

        list = new int[count][];
        inParent = new int[count][];
        corner = new int[3 * elements];
        work = new long[count];
        int[] seen = new int[nodes];
        int[] index = new int[nodes];
        Arrays.fill(seen, -1);
        int[] touched = new int[64];
        int first = 0;                             // position of the first pivot
        for (int f = 0; f < count; f++) {
            int last = first + pivots[f], n = 0;
            for (int p = firstElement[f]; p < firstElement[f + 1]; p++)
                for (int k = 0; k < 3; k++) {
                    int v = tri[3 * element[p] + k];
                    if (seen[v] == f || position[v] < last) continue;
                    seen[v] = f;
                    if (n == touched.length) touched = Arrays.copyOf(touched, 2 * n);
                    touched[n++] = position[v];
                }
            for (int c = firstChild[f]; c >= 0; c = nextSibling[c]) {
                int rest = list[c].length - pivots[c];
                for (int i = 0; i < rest; i++) {
                    int v = list[c][i];
                    if (seen[v] == f || position[v] < last) continue;
                    seen[v] = f;
                    if (n == touched.length) touched = Arrays.copyOf(touched, 2 * n);
                    touched[n++] = position[v];
                }
                work[f] += work[c];
            }
            Arrays.sort(touched, 0, n);
            int[] nodesOf = new int[n + pivots[f]];
            for (int i = 0; i < n; i++) nodesOf[i] = eliminated[touched[n - 1 - i]];
            for (int i = 0; i < pivots[f]; i++) nodesOf[n + i] = eliminated[last - 1 - i];
            list[f] = nodesOf;
            for (int i = 0; i < nodesOf.length; i++) index[nodesOf[i]] = i;
            for (int p = firstElement[f]; p < firstElement[f + 1]; p++)
                for (int k = 0; k < 3; k++) corner[3 * p + k] = index[tri[3 * element[p] + k]];
            for (int c = firstChild[f]; c >= 0; c = nextSibling[c]) {
                int rest = list[c].length - pivots[c];
                int[] map = new int[rest];
                for (int i = 0; i < rest; i++) map[i] = index[list[c][i]];
                inParent[c] = map;
            }
            for (long m = n + 1; m <= n + pivots[f]; m++) work[f] += m * m;
            first = last;
        }
    }

    /** Children before parents. A part without nodes hands its children up. */
    private static int[] collect(Dissection.Part part, List<Dissection.Part> parts, List<int[]> children) {
        int[] below = {};
        if (part.left != null) {
            int[] left = collect(part.left, parts, children), right = collect(part.right, parts, children);
            below = Arrays.copyOf(left, left.length + right.length);
            System.arraycopy(right, 0, below, left.length, right.length);
        }
        if (part.from == part.to) return below;
        parts.add(part);
        children.add(below);
        return new int[] {parts.size() - 1};
    }
}
