package blankwright.mesh.cut;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import blankwright.mesh.query.EdgeStars;
import blankwright.mesh.query.NearestPoint;
import blankwright.mesh.query.SkinPoint;
import blankwright.mesh.query.Wavefront;
import blankwright.num.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Makes paths of edges of drawn seams, and drawn seams of paths.
 *
 * <ol><li>Each point goes to the nearest place on the skin and from there to the nearest corner of that triangle; the first and the last
 * go to a corner on the rim where one lies within half the triangle's longest side, unless they lie on another corner.
 * <li>Neighbours are joined by the shortest path along edges inside the metal. To touch a rim on the way costs as much as the whole form is
 * long, so a seam runs along or over a rim only where there is no other way.</ol>
 */
public final class SeamPaths {
    /** Farther off the skin than this part of the form's size a point was meant for something else. */
    private static final double OFF = 0.02;

    private final TriMesh mesh;
    private final Wavefront front;
    private final NearestPoint nearest;
    private final boolean[] onRim;
    private final double size;

    private SeamPaths(TriMesh mesh) {
        this.mesh = mesh;
        EdgeTable edges = EdgeTable.of(mesh);
        onRim = new boolean[mesh.vertexCount()];
        for (int e = 0; e < edges.edgeCount(); e++) if (edges.right(e) < 0) onRim[edges.from(e)] = onRim[edges.to(e)] = true;
        double[] box = mesh.size();
        size = box[0] + box[1] + box[2];
        nearest = NearestPoint.on(mesh);
        front = new Wavefront(mesh, EdgeStars.of(mesh, edges), Wavefront.costs(edges.edgeCount(), e -> edges.right(e) < 0 ? Double.POSITIVE_INFINITY
                : edges.length(e) + (onRim[edges.from(e)] ? size : 0) + (onRim[edges.to(e)] ? size : 0)));
    }

    /** @param mesh manifold, oriented, with at least one triangle; several parts are allowed */
    public static SeamPaths on(TriMesh mesh) {
        return new SeamPaths(mesh);
    }

    /** @return per seam its vertices in order, two or more; throws {@link UnfitSeam} at the first that cannot be cut */
    public List<int[]> of(List<DrawnSeam> drawn) throws UnfitSeam {
        List<int[]> paths = new ArrayList<>();
        for (DrawnSeam seam : drawn) paths.add(path(seam, paths.size() + 1));
        return paths;
    }

    private int[] path(DrawnSeam seam, int number) throws UnfitSeam {
        int count = seam.points().size();
        int[] path = new int[0];
        for (int i = 0; i < count; i++) {
            int v = vertex(seam.points().get(i), i == 0 || i == count - 1, number, i + 1);
            if (path.length == 0) {
                path = new int[] {v};
                continue;
            }
            int[] more = between(path[path.length - 1], v);
            if (more == null) throw new UnfitSeam(number, "no way through the metal leads from point %d to point %d;"
                    + " give both on one part of the panel, not along its edge", i, i + 1);
            int known = path.length;
            path = Arrays.copyOf(path, known + more.length - 1);
            System.arraycopy(more, 1, path, known, more.length - 1);
        }
        if (path.length < 2) throw new UnfitSeam(number, "all its points fall on one corner of the triangles; take them farther apart, or a finer mesh");
        if (path.length == 2 && !onRim[path[0]] && !onRim[path[1]])
            throw new UnfitSeam(number, "a single edge inside the metal opens nothing; make it longer, or let it begin at an edge of the panel");
        return path;
    }

    private int vertex(DrawnSeam.Point p, boolean end, int number, int which) throws UnfitSeam {
        SkinPoint at = nearest.to(p.x(), p.y(), p.z());
        double[] q = at.on(mesh);
        double off = Math.sqrt((q[0] - p.x()) * (q[0] - p.x()) + (q[1] - p.y()) * (q[1] - p.y()) + (q[2] - p.z()) * (q[2] - p.z()));
        if (off > OFF * size)
            throw new UnfitSeam(number, "point %d %s lies %s off the panel, nearest is %s; give points on the form, in its own coordinates", which,
                    Sentence.place(1, p.x(), p.y(), p.z()), Sentence.length(off, 1), Sentence.place(1, q));
        int best = -1, rim = -1;
        double least = Double.POSITIVE_INFINITY, longest = 0;
        for (int k = 0; k < 3; k++) longest = Math.max(longest, mesh.distance(mesh.corner(at.triangle(), k), mesh.corner(at.triangle(), (k + 1) % 3)));
        double leastRim = longest / 2;
        for (int k = 0; k < 3; k++) {
            int v = mesh.corner(at.triangle(), k);
            double x = mesh.x(v) - q[0], y = mesh.y(v) - q[1], z = mesh.z(v) - q[2], away = Math.sqrt(x * x + y * y + z * z);
            if (away < least) {
                least = away;
                best = v;
            }
            if (end && onRim[v] && away <= leastRim) {
                leastRim = away;
                rim = v;
            }
        }
        return rim >= 0 && least > 0.02 * longest ? rim : best;
    }

    /** Vertices from v to w, or null where no way leads there. */
    private int[] between(int v, int w) {
        front.clear();
        front.start(v);
        for (int u = front.next(); u >= 0; u = front.next()) if (u == w) return front.pathTo(w);
        return null;
    }

    /** Few points, found by halving, that bring back this very path; to 0.001 mm. */
    public DrawnSeam drawn(int[] path) {
        List<DrawnSeam.Point> points = new ArrayList<>();
        points.add(point(path[0]));
        for (int i = 0; i < path.length - 1; ) {
            int j = path.length - 1;
            while (j > i + 1 && !Arrays.equals(between(path[i], path[j]), Arrays.copyOfRange(path, i, j + 1))) j = i + (j - i + 1) / 2;
            points.add(point(path[j]));
            i = j;
        }
        return new DrawnSeam(points);
    }

    private DrawnSeam.Point point(int v) {
        return new DrawnSeam.Point(Math.rint(1e3 * mesh.x(v)) / 1e3, Math.rint(1e3 * mesh.y(v)) / 1e3, Math.rint(1e3 * mesh.z(v)) / 1e3);
    }
}
