package blankwright.metal.buckling;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.TriMesh;
import java.util.stream.IntStream;

/**
 * Everywhere at once: the compressive strain a blank not worked would have to bear, against that at which a strip of it gives way.
 *
 * <p>Through each triangle that is compressed two straight lines are drawn on the form: across the compression, which gives the width b of
 * the compressed strip and what it meets at either side (calm metal, a free edge, a clamp), and along it, which gives its length a. The
 * strip gives way as a plate of that width with those edges ({@link PlateEdges}); where both sides are supported and the form is curved
 * across the compression with radius R, ε = ε_p/2·(1 + √(1 + (ε_c/ε_p)²)) with ε_c = t/(R √(3(1 - ν²))), which goes from the plate to half
 * the strain of the perfect cylinder or sphere (Stowell 1943, from memory, docs/sources.md [S43]; tests of real shells lie at 0.2 to 0.5,
 * NASA SP-8007, from memory [NASA07]).
 * <p>An estimate, as handbooks make it: uniform compression across the strip is assumed, which is safe where it fades. {@link
 * UnworkedBlank} computes.
 */
public final class CriticalStrain {
    private static final double COUNTS = 0.02;          // of the largest compressive strain: less is calm
    private static final double LEAST = 1e-6;           // strain below which nothing is compressed

    private final double[] required;
    private final double[] critical;
    private final double[] width;
    private final PlateEdges[] edges;

    private CriticalStrain(int n) {
        required = new double[n];
        critical = new double[n];
        width = new double[n];
        edges = new PlateEdges[n];
    }

    /**
     * @param force 3 per triangle: elastic membrane force of the unworked blank in the triangle's frame, N/mm ({@link UnworkedForce})
     * @param clamped per vertex
     */
    public static CriticalStrain of(TriMesh form, double[] force, Sheet sheet, boolean[] clamped) {
        int n = form.triangleCount();
        if (force.length != 3 * n) throw new IllegalArgumentException(force.length / 3 + " forces for " + n + " triangles");
        if (clamped.length != form.vertexCount())
            throw new IllegalArgumentException(clamped.length + " clamped or not, of " + form.vertexCount() + " vertices");
        CriticalStrain map = new CriticalStrain(n);
        double[] direction = new double[2 * n];
        double most = 0;
        for (int t = 0; t < n; t++) {
            double mean = (force[3 * t] + force[3 * t + 1]) / 2, half = (force[3 * t] - force[3 * t + 1]) / 2, shear = force[3 * t + 2];
            double r = Math.sqrt(half * half + shear * shear), turn = r > 0 ? Math.atan2(shear, half) / 2 + Math.PI / 2 : 0;
            direction[2 * t] = Math.cos(turn);                          // of the smaller principal force
            direction[2 * t + 1] = Math.sin(turn);
            map.required[t] = Math.max(0, (r - mean) / (sheet.youngs() * sheet.thickness()));
            most = Math.max(most, map.required[t]);
        }
        double counts = Math.max(LEAST, COUNTS * most);
        double longest = 0;
        for (double side : form.size()) longest += 2 * side;
        Lines lines = new Lines(form, map, direction, clamped, counts, longest, sheet);
        IntStream.range(0, n).parallel().forEach(lines::measure);
        return map;
    }

    /** Compressive strain triangle t would have to bear, 0 or above: the smaller principal force over E t. */
    public double required(int t) {
        return required[t];
    }

    /** Compressive strain at which its strip gives way; +∞ where it is not compressed. */
    public double critical(int t) {
        return critical[t];
    }

    /** required / critical: above 1 it buckles; 0 where it is not compressed. */
    public double ratio(int t) {
        return required[t] / critical[t];
    }

    /** Width of the compressed strip through t, mm; 0 where it is not compressed. */
    public double width(int t) {
        return width[t];
    }

    /** How that strip's sides are held; null where it is not compressed. */
    public PlateEdges edges(int t) {
        return edges[t];
    }

    public int triangleCount() {
        return required.length;
    }

    private static final class Lines {
        private final TriMesh form;
        private final CriticalStrain map;
        private final double[] direction;
        private final boolean[] clamped;
        private final double counts;
        private final double longest;
        private final Sheet sheet;
        private final Track track;
        private final double[] normal;

        Lines(TriMesh form, CriticalStrain map, double[] direction, boolean[] clamped, double counts, double longest, Sheet sheet) {
            this.form = form;
            this.map = map;
            this.direction = direction;
            this.clamped = clamped;
            this.counts = counts;
            this.longest = longest;
            this.sheet = sheet;
            track = new Track(form, EdgeTable.of(form));
            normal = VertexNormals.of(form);
        }

        void measure(int t) {
            map.critical[t] = Double.POSITIVE_INFINITY;
            Facet f = new Facet().of(form, t);
            if (f.empty || map.required[t] < counts || held(t)) return;
            double cx = (f.x[1] + f.x[2]) / 3, cy = f.y[2] / 3, dx = direction[2 * t], dy = direction[2 * t + 1];
            Track.End left = line(t, cx, cy, -dy, dx), right = line(t, cx, cy, dy, -dx);
            Track.End ahead = line(t, cx, cy, dx, dy), behind = line(t, cx, cy, -dx, -dy);
            double b = left.length() + right.length(), a = ahead.length() + behind.length();
            PlateEdges edges = PlateEdges.of(free(left), free(right), fixed(left), fixed(right));
            double strain = edges.strain(a, b, sheet);
            if (edges == PlateEdges.SUPPORTED || edges == PlateEdges.ONE_HELD || edges == PlateEdges.HELD) {
                double curved = Math.abs(curvature(f, t, -dy, dx)) * sheet.thickness()
                        / Math.sqrt(3 * (1 - sheet.poisson() * sheet.poisson()));
                strain = strain / 2 + Math.sqrt(strain * strain + curved * curved) / 2;
            }
            map.edges[t] = edges;
            map.width[t] = b;
            map.critical[t] = edges.strainBeyondYield(strain, sheet);
        }

        private Track.End line(int t, double x, double y, double dx, double dy) {
            return track.from(t, -1, x, y, dx, dy, longest, (s, k, along, length) -> map.required[s] >= counts && !held(s));
        }

        private boolean free(Track.End end) {
            return end.atRim() && !touchesClamp(end.triangle());
        }

        private boolean fixed(Track.End end) {
            return end.atRim() ? touchesClamp(end.triangle()) : held(end.triangle());
        }

        private boolean held(int t) {
            return clamped[form.corner(t, 0)] && clamped[form.corner(t, 1)] && clamped[form.corner(t, 2)];
        }

        private boolean touchesClamp(int t) {
            int n = 0;
            for (int k = 0; k < 3; k++) if (clamped[form.corner(t, k)]) n++;
            return n >= 2;
        }

        /** Of the form along (dx, dy), 1/mm: how the normals of the corners turn. */
        private double curvature(Facet f, int t, double dx, double dy) {
            double[] g = new double[6];
            f.gradients(g);
            double sum = 0;
            for (int k = 0; k < 3; k++) {
                int v = 3 * form.corner(t, k);
                double nx = f.axis[0] * normal[v] + f.axis[1] * normal[v + 1] + f.axis[2] * normal[v + 2];
                double ny = f.axis[3] * normal[v] + f.axis[4] * normal[v + 1] + f.axis[5] * normal[v + 2];
                sum += (dx * nx + dy * ny) * (dx * g[2 * k] + dy * g[2 * k + 1]);
            }
            return sum;
        }
    }
}
