package blankwright.picture;

import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.strain.VertexStrain;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * The work at every point of one piece, ready to be drawn: of the two principal strains the one that is larger in size, with its sign.
 *
 * <p>The log strain is kept as a tensor at each vertex in the axes of the blank, [uu uv; uv vv], and taken linear over each triangle; the
 * larger principal strain of that tensor is m + r where m, half its trace, is positive or zero, and m - r where m is negative; the amount
 * is that as engineering strain. It jumps
 * across the line m = 0, from pulling one way to shrinking the other way. Triangles are therefore cut along that line, and the corners
 * there made double, one for each side; after that the amount is taken linear over each smaller triangle. Everywhere else the vertices
 * and triangles are those of the form, in their order.
 */
public final class WorkField {
    private final FlatMap map;
    private final double[] xyz, uv, amount;
    private final double[] tensor;      // vertex v of the form: uu, uv, vv
    private final int[] tri, from;      // triangle; triangle of the form it is part of
    private final int[] jump;           // two vertices for each piece of the line across which the sign changes at once

    private WorkField(FlatMap map, double[] tensor, double[] xyz, double[] uv, double[] amount, int[] tri, int[] from, int[] jump) {
        this.map = map;
        this.jump = jump;
        this.tensor = tensor;
        this.xyz = xyz;
        this.uv = uv;
        this.amount = amount;
        this.tri = tri;
        this.from = from;
    }

    /** @param neutral jumps between amounts smaller than this are not cut open: they are drawn in one colour */
    public static WorkField of(FlatMap map, VertexStrain strain, double neutral) {
        int n = map.form().vertexCount();
        double[] tensor = new double[3 * n];
        for (int v = 0; v < n; v++) {
            tensor[3 * v] = strain.strainUu(v);
            tensor[3 * v + 1] = strain.strainUv(v);
            tensor[3 * v + 2] = strain.strainVv(v);
        }
        return of(map, tensor, neutral);
    }

    /** @param tensor log strain blank to form at each vertex, axes u and v of the blank: uu, uv, vv */
    static WorkField of(FlatMap map, double[] tensor, double neutral) {
        TriMesh form = map.form();
        if (tensor.length != 3 * form.vertexCount())
            throw new IllegalArgumentException(tensor.length / 3 + " strains for " + form.vertexCount() + " vertices");
        return new Cutting(map, tensor.clone(), neutral).field();
    }

    public FlatMap map() {
        return map;
    }

    public int vertexCount() {
        return amount.length;
    }

    public int triangleCount() {
        return tri.length / 3;
    }

    public double x(int v) {
        return xyz[3 * v];
    }

    public double y(int v) {
        return xyz[3 * v + 1];
    }

    public double z(int v) {
        return xyz[3 * v + 2];
    }

    public double u(int v) {
        return uv[2 * v];
    }

    public double v(int v) {
        return uv[2 * v + 1];
    }

    /** A copy, place on the blank, two per vertex. */
    double[] flat() {
        return uv.clone();
    }

    /** Signed work at vertex v. */
    public double amount(int v) {
        return amount[v];
    }

    /** A copy, one per vertex. */
    public double[] amounts() {
        return amount.clone();
    }

    /** A copy, three per triangle. */
    public int[] corners() {
        return tri.clone();
    }

    /** Triangle of the form that triangle t is all or part of. */
    public int partOf(int t) {
        return from[t];
    }

    /** The array itself, two vertices for each piece of the line across which the sign changes at once; not to be written. */
    int[] jumps() {
        return jump;
    }

    /** {amount, direction} at the point of triangle t of the form with the given weights; direction in the blank, rad, -pi/2..pi/2. */
    double[] at(int t, double w0, double w1, double w2) {
        int a = 3 * map.form().corner(t, 0), b = 3 * map.form().corner(t, 1), c = 3 * map.form().corner(t, 2);
        double uu = w0 * tensor[a] + w1 * tensor[b] + w2 * tensor[c];
        double uvAt = w0 * tensor[a + 1] + w1 * tensor[b + 1] + w2 * tensor[c + 1];
        double vv = w0 * tensor[a + 2] + w1 * tensor[b + 2] + w2 * tensor[c + 2];
        double angle = Math.atan2(2 * uvAt, uu - vv) / 2;       // of the algebraically larger one
        double worked = larger(uu, uvAt, vv);
        if (worked < 0) angle += angle > 0 ? -Math.PI / 2 : Math.PI / 2;
        return new double[] {worked, angle};
    }

    private static double larger(double uu, double uv, double vv) {
        double m = (uu + vv) / 2, r = Math.hypot((uu - vv) / 2, uv);
        return Math.expm1(m >= 0 ? m + r : m - r);
    }

    /** Cuts the triangles that the line m = 0 runs through. */
    private static final class Cutting {
        private final FlatMap map;
        private final TriMesh form;
        private final double[] tensor;
        private final double neutral;
        private final Map<Long, Integer> split = new HashMap<>();   // edge -> vertex on the shrinking side; the next one is its double
        private double[] xyz, uv, amount;
        private int vertices;
        private int[] tri, from;
        private int triangles;
        private int[] jump = new int[16];
        private int jumps;

        Cutting(FlatMap map, double[] tensor, double neutral) {
            this.map = map;
            this.form = map.form();
            this.tensor = tensor;
            this.neutral = neutral;
            this.xyz = form.positions();
            this.uv = map.positions();
            this.vertices = form.vertexCount();
            this.amount = new double[vertices];
            this.tri = new int[3 * form.triangleCount()];
            this.from = new int[form.triangleCount()];
        }

        WorkField field() {
            for (int v = 0; v < vertices; v++) amount[v] = larger(tensor[3 * v], tensor[3 * v + 1], tensor[3 * v + 2]);
            for (int t = 0; t < form.triangleCount(); t++) triangle(t);
            return new WorkField(map, tensor, Arrays.copyOf(xyz, 3 * vertices), Arrays.copyOf(uv, 2 * vertices),
                    Arrays.copyOf(amount, vertices), Arrays.copyOf(tri, 3 * triangles), Arrays.copyOf(from, triangles),
                    Arrays.copyOf(jump, jumps));
        }

        private void triangle(int t) {
            int a = form.corner(t, 0), b = form.corner(t, 1), c = form.corner(t, 2);
            boolean pa = amount[a] >= 0, pb = amount[b] >= 0, pc = amount[c] >= 0;
            if (pa == pb && pb == pc) {
                put(a, b, c, t);
            } else if (pb == pc) {
                cut(a, b, c, t);
            } else if (pc == pa) {
                cut(b, c, a, t);
            } else {
                cut(c, a, b, t);
            }
        }

        /** Corner a lies alone on its side. */
        private void cut(int a, int b, int c, int t) {
            int ab = splitOf(a, b), ac = splitOf(a, c);
            if (Math.abs(amount[ab]) < neutral && Math.abs(amount[ac]) < neutral) {
                put(a, b, c, t);
                return;
            }
            int mine = amount[a] >= 0 ? 1 : 0, theirs = 1 - mine;
            if (jumps == jump.length) jump = Arrays.copyOf(jump, 2 * jumps);
            jump[jumps++] = ab;
            jump[jumps++] = ac;
            put(a, ab + mine, ac + mine, t);
            put(ab + theirs, b, c, t);
            put(ab + theirs, c, ac + theirs, t);
        }

        private int splitOf(int a, int b) {
            int low = Math.min(a, b), high = Math.max(a, b);
            Integer known = split.get((long) low << 32 | high);
            if (known != null) return known;
            double ml = tensor[3 * low] + tensor[3 * low + 2], mh = tensor[3 * high] + tensor[3 * high + 2];
            double w = ml == mh ? 0.5 : Math.min(1, Math.max(0, ml / (ml - mh)));
            double[] there = new double[3];
            for (int k = 0; k < 3; k++) there[k] = (1 - w) * tensor[3 * low + k] + w * tensor[3 * high + k];
            double r = Math.hypot((there[0] - there[2]) / 2, there[1]);
            int made = vertices;
            for (int side = -1; side <= 1; side += 2) {
                if (vertices == amount.length) grow();
                for (int k = 0; k < 3; k++) xyz[3 * vertices + k] = (1 - w) * xyz[3 * low + k] + w * xyz[3 * high + k];
                for (int k = 0; k < 2; k++) uv[2 * vertices + k] = (1 - w) * uv[2 * low + k] + w * uv[2 * high + k];
                amount[vertices++] = Math.expm1(side * r);
            }
            split.put((long) low << 32 | high, made);
            return made;
        }

        private void put(int a, int b, int c, int t) {
            if (triangles == from.length) {
                from = Arrays.copyOf(from, 2 * triangles);
                tri = Arrays.copyOf(tri, 6 * triangles);
            }
            tri[3 * triangles] = a;
            tri[3 * triangles + 1] = b;
            tri[3 * triangles + 2] = c;
            from[triangles++] = t;
        }

        private void grow() {
            int room = vertices + vertices / 2 + 16;
            xyz = Arrays.copyOf(xyz, 3 * room);
            uv = Arrays.copyOf(uv, 2 * room);
            amount = Arrays.copyOf(amount, room);
        }
    }
}
