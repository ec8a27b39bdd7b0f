package blankwright.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The free edges of a surface as closed loops of vertices, the metal on the left hand walking along a loop on the outer skin.
 *
 * <p>Where two rims touch in one vertex the loops pass through it separately, turning round the metal.
 */
public final class RimLoops {
    private final List<int[]> loops;

    private RimLoops(List<int[]> loops) {
        this.loops = loops;
    }

    public static RimLoops of(TriMesh mesh, EdgeTable edges) {
        int halves = 3 * mesh.triangleCount();
        boolean[] seen = new boolean[halves];
        List<int[]> loops = new ArrayList<>();
        for (int h = 0; h < halves; h++) {
            if (edges.twin(h) >= 0 || seen[h]) continue;
            int[] loop = new int[16];
            int length = 0;
            for (int g = h; !seen[g]; g = following(edges, g)) {
                seen[g] = true;
                if (length == loop.length) loop = Arrays.copyOf(loop, 2 * length);
                loop[length++] = mesh.corner(g / 3, g % 3);
            }
            loops.add(Arrays.copyOf(loop, length));
        }
        return new RimLoops(loops);
    }

    public int count() {
        return loops.size();
    }

    /** A copy of the vertices of loop i in order; the loop closes from the last to the first. */
    public int[] loop(int i) {
        return loops.get(i).clone();
    }

    /** Length of loop i, mm. */
    public double length(TriMesh mesh, int i) {
        int[] loop = loops.get(i);
        double sum = 0;
        for (int j = 0; j < loop.length; j++) sum += mesh.distance(loop[j], loop[(j + 1) % loop.length]);
        return sum;
    }

    /** Index of the longest loop, the lowest of equals; -1 without loops. */
    public int longest(TriMesh mesh) {
        int best = -1;
        double most = -1;
        for (int i = 0; i < count(); i++) {
            double length = length(mesh, i);
            if (length > most) {
                most = length;
                best = i;
            }
        }
        return best;
    }

    /** The rim half-edge that starts where g ends: turn round that vertex inside the metal until a rim is met. */
    private static int following(EdgeTable edges, int g) {
        int h = nextInTriangle(g);
        while (edges.twin(h) >= 0) {
            int back = edges.twin(h);
            h = nextInTriangle(back);
        }
        return h;
    }

    private static int nextInTriangle(int h) {
        return h % 3 == 2 ? h - 2 : h + 1;
    }
}
