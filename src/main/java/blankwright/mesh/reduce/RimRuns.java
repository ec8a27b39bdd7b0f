package blankwright.mesh.reduce;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.RimLoops;
import blankwright.mesh.TriMesh;

/** The given rims, so that what a shorter rim leaves out can be held against it. */
final class RimRuns {
    private final int[][] loop;     // given vertices of each rim in order
    private final int[] rim;        // vertex -> its rim
    private final int[] place;      // vertex -> its place on that rim

    RimRuns(TriMesh mesh, EdgeTable edges) {
        RimLoops rims = RimLoops.of(mesh, edges);
        loop = new int[rims.count()][];
        rim = new int[mesh.vertexCount()];
        place = new int[mesh.vertexCount()];
        for (int i = 0; i < loop.length; i++) {
            loop[i] = rims.loop(i);
            for (int j = 0; j < loop[i].length; j++) {
                rim[loop[i][j]] = i;
                place[loop[i][j]] = j;
            }
        }
    }

    /** Whether all given rim vertices from {@code from} over {@code gone} to {@code to} lie within the distance of the straight line from first to last. */
    boolean keeps(int from, int gone, int to, TriMesh given, double within2) {
        int[] run = loop[rim[gone]];
        double x = given.x(to) - given.x(from), y = given.y(to) - given.y(from), z = given.z(to) - given.z(from), ee = x * x + y * y + z * z;
        for (int i = (place[from] + 1) % run.length; i != place[to]; i = (i + 1) % run.length) {
            double px = given.x(run[i]) - given.x(from), py = given.y(run[i]) - given.y(from), pz = given.z(run[i]) - given.z(from);
            if (!(Trial.side(px * px + py * py + pz * pz, px * x + py * y + pz * z, ee) <= within2)) return false;
        }
        return true;
    }
}
