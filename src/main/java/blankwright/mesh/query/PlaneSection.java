package blankwright.mesh.query;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The line in which a plane cuts the skin: a station. Its points are places on the skin, so that the line can be carried to the blank.
 *
 * <p>Chains run with the side the normal points to on the left hand, walking on the outer skin. No gap, no piece twice, also where the
 * plane passes through vertices or along edges: a vertex nearer to the plane than 1e-11 of the mesh's reach from it lies in it. Where the
 * plane only touches the skin in a point or a ridge it cuts nothing; a rim lying in it counts as cut; of a flat area lying in it the
 * border towards the lower side. Chains meeting in one point of the skin end there. Chains and their first points are ordered by
 * place, so that numbering does not matter.
 */
public final class PlaneSection {
    private final TriMesh mesh;
    private final List<Chain> chains;

    private PlaneSection(TriMesh mesh, List<Chain> chains) {
        this.mesh = mesh;
        this.chains = List.copyOf(chains);
    }

    /** A connected part of the section: straight pieces, one per triangle crossed. */
    public static final class Chain {
        private final boolean closed;
        private final List<SkinPoint> starts;   // piece i in its triangle: from starts i to ends i
        private final List<SkinPoint> ends;

        private Chain(boolean closed, List<SkinPoint> starts, List<SkinPoint> ends) {
            this.closed = closed;
            this.starts = List.copyOf(starts);
            this.ends = List.copyOf(ends);
        }

        /** True where the last point is the first again. */
        public boolean closed() {
            return closed;
        }

        /** In order, one more than there are pieces. */
        public List<SkinPoint> points() {
            List<SkinPoint> points = new ArrayList<>(starts);
            points.add(ends.get(ends.size() - 1));
            return points;
        }

        public int pieces() {
            return starts.size();
        }

        /** Start of piece i in the triangle the piece crosses. */
        public SkinPoint start(int i) {
            return starts.get(i);
        }

        /** End of piece i in the triangle the piece crosses. */
        public SkinPoint end(int i) {
            return ends.get(i);
        }

        /** Positions on the form, mm, 3 per point. */
        public double[] on(TriMesh mesh) {
            return points().stream().flatMapToDouble(p -> Arrays.stream(p.on(mesh))).toArray();
        }

        /** mm, on the form. */
        public double length(TriMesh mesh) {
            double[] p = on(mesh);
            double sum = 0;
            for (int i = 3; i < p.length; i += 3) sum += Math.hypot(Math.hypot(p[i] - p[i - 3], p[i + 1] - p[i - 2]), p[i + 2] - p[i - 1]);
            return sum;
        }
    }

    /**
     * @param point on the plane, 3, mm; @param normal across it, 3, any length
     * @throws IllegalArgumentException where the normal has no direction or a number is not finite
     */
    public static PlaneSection of(TriMesh mesh, EdgeTable edges, double[] point, double[] normal) {
        double length = Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]);
        if (!(length > 0) || !Double.isFinite(length + point[0] + point[1] + point[2]))
            throw new IllegalArgumentException("plane through " + Arrays.toString(point) + " across " + Arrays.toString(normal));
        double[] height = new double[mesh.vertexCount()];
        double reach = 0;
        for (int v = 0; v < height.length; v++) {
            double x = mesh.x(v) - point[0], y = mesh.y(v) - point[1], z = mesh.z(v) - point[2];
            height[v] = (x * normal[0] + y * normal[1] + z * normal[2]) / length;
            reach = Math.max(reach, Math.max(Math.abs(x), Math.max(Math.abs(y), Math.abs(z))));
        }
        for (int v = 0; v < height.length; v++) if (Math.abs(height[v]) <= 1e-11 * reach) height[v] = 0;
        return new PlaneSection(mesh, new Tracer(mesh, edges, height).chains());
    }

    public List<Chain> chains() {
        return chains;
    }

    /** mm, on the form, all chains. */
    public double length() {
        return chains.stream().mapToDouble(c -> c.length(mesh)).sum();
    }

    /**
     * The section on the blank: polylines, 2 per point, mm, chains in order.
     *
     * @param map of the same triangles in the same order, perhaps opened along seams: a chain that crosses a seam comes in two lines there
     */
    public List<double[]> carried(FlatMap map) {
        if (map.form().triangleCount() != mesh.triangleCount())
            throw new IllegalArgumentException("a blank of " + map.form().triangleCount() + " triangles for a form of " + mesh.triangleCount());
        List<double[]> lines = new ArrayList<>();
        for (Chain chain : chains) {
            double[] line = new double[2 * chain.pieces() + 2];
            int count = 0;
            for (int i = 0; i < chain.pieces(); i++) {
                if (i > 0 && !sameFooting(map.form(), chain.end(i - 1), chain.start(i))) {
                    lines.add(Arrays.copyOf(line, count));
                    count = 0;
                }
                if (count == 0) count = put(chain.start(i).on(map), line, count);
                count = put(chain.end(i).on(map), line, count);
            }
            lines.add(Arrays.copyOf(line, count));
        }
        return lines;
    }

    private static int put(double[] p, double[] line, int at) {
        line[at] = p[0];
        line[at + 1] = p[1];
        return at + 2;
    }

    /** Whether two places that are one on the closed form rest on the same vertices of this one. */
    private static boolean sameFooting(TriMesh form, SkinPoint p, SkinPoint q) {
        return rests(form, p, q) && rests(form, q, p);
    }

    private static boolean rests(TriMesh form, SkinPoint p, SkinPoint q) {
        double[] w = {p.a(), p.b(), p.c()};
        for (int k = 0; k < 3; k++) {
            if (w[k] == 0) continue;
            int v = form.corner(p.triangle(), k), t = q.triangle();
            if (v != form.corner(t, 0) && v != form.corner(t, 1) && v != form.corner(t, 2)) return false;
        }
        return true;
    }

    /** Finds the pieces triangle by triangle and strings them together at shared nodes: vertices in the plane and edges across it. */
    private static final class Tracer {
        private final TriMesh mesh;
        private final EdgeTable edges;
        private final double[] height;
        private final int n;
        private int[] tail = new int[64];       // piece -> node; node v = vertex, node n + e = edge
        private int[] head = new int[64];
        private int[] triangle = new int[64];
        private int count;

        Tracer(TriMesh mesh, EdgeTable edges, double[] height) {
            this.mesh = mesh;
            this.edges = edges;
            this.height = height;
            n = mesh.vertexCount();
        }

        List<Chain> chains() {
            for (int t = 0; t < mesh.triangleCount(); t++) crossing(t);
            for (int e = 0; e < edges.edgeCount(); e++) if (height[edges.from(e)] == 0 && height[edges.to(e)] == 0) lying(e);
            return strung();
        }

        /** A triangle with corners on both sides; the piece runs from where its border goes down to where it comes up. */
        private void crossing(int t) {
            boolean above = false, below = false;
            for (int k = 0; k < 3; k++) {
                double h = height[mesh.corner(t, k)];
                above |= h > 0;
                below |= h < 0;
            }
            if (!above || !below) return;
            int down = -1, up = -1;
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k), w = mesh.corner(t, (k + 1) % 3);
                double before = height[mesh.corner(t, (k + 2) % 3)], here = height[v], after = height[w];
                if (here == 0) {
                    if (before > 0) down = v;
                    else up = v;
                }
                if (here > 0 && after < 0) down = n + edges.edgeOf(t, k);
                if (here < 0 && after > 0) up = n + edges.edgeOf(t, k);
            }
            add(down, up, t);
        }

        private void lying(int e) {
            double left = opposite(edges.left(e), e), right = edges.right(e) < 0 ? 0 : opposite(edges.right(e), e);
            if (edges.right(e) < 0 ? left == 0 : left >= 0 == right >= 0) return;
            if (left >= 0) add(edges.from(e), edges.to(e), edges.left(e));
            else add(edges.to(e), edges.from(e), edges.left(e));
        }

        private double opposite(int t, int e) {
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                if (v != edges.from(e) && v != edges.to(e)) return height[v];
            }
            return 0;
        }

        private void add(int from, int to, int t) {
            if (count == tail.length) {
                tail = Arrays.copyOf(tail, 2 * count);
                head = Arrays.copyOf(head, 2 * count);
                triangle = Arrays.copyOf(triangle, 2 * count);
            }
            tail[count] = from;
            head[count] = to;
            triangle[count++] = t;
        }

        private List<Chain> strung() {
            int[] out = new int[n + edges.edgeCount()];     // pieces that start there
            int[] in = new int[out.length];
            int[] after = new int[out.length];              // one of them
            for (int p = 0; p < count; p++) {
                out[tail[p]]++;
                in[head[p]]++;
                after[tail[p]] = p;
            }
            boolean[] done = new boolean[count];
            List<Chain> chains = new ArrayList<>();
            for (int p = 0; p < count; p++) if (out[tail[p]] != 1 || in[tail[p]] != 1) chains.add(chain(p, out, in, after, done));
            for (int p = 0; p < count; p++) if (!done[p]) chains.add(chain(firstByPlace(p, after), out, in, after, done));
            chains.sort(Comparator.comparing((Chain c) -> c.start(0).on(mesh), Tracer::compared).thenComparing(c -> c.end(0).on(mesh), Tracer::compared));
            return chains;
        }

        private Chain chain(int first, int[] out, int[] in, int[] after, boolean[] done) {
            List<SkinPoint> starts = new ArrayList<>(), ends = new ArrayList<>();
            int p = first;
            while (true) {
                done[p] = true;
                starts.add(place(tail[p], triangle[p]));
                ends.add(place(head[p], triangle[p]));
                int node = head[p];
                if (out[node] != 1 || in[node] != 1 || after[node] == first) return new Chain(node == tail[first], starts, ends);
                p = after[node];
            }
        }

        private int firstByPlace(int start, int[] after) {
            int best = start;
            for (int p = after[head[start]]; p != start; p = after[head[p]])
                if (compared(place(tail[p], triangle[p]).on(mesh), place(tail[best], triangle[best]).on(mesh)) < 0) best = p;
            return best;
        }

        private static int compared(double[] p, double[] q) {
            return Arrays.compare(p, q);
        }

        private SkinPoint place(int node, int t) {
            double[] w = new double[3];
            if (node < n) {
                w[corner(t, node)] = 1;
            } else {
                int from = edges.from(node - n), to = edges.to(node - n);
                int a = Wavefront.ahead(mesh, from, to) ? from : to, b = from + to - a;     // same bits however vertices are numbered
                double share = height[a] / (height[a] - height[b]);
                w[corner(t, a)] = 1 - share;
                w[corner(t, b)] = share;
            }
            return new SkinPoint(t, w[0], w[1], w[2]);
        }

        private int corner(int t, int v) {
            for (int k = 0; k < 3; k++) if (mesh.corner(t, k) == v) return k;
            throw new AssertionError("vertex " + v + " is no corner of triangle " + t);
        }
    }
}
