package blankwright.mesh.repair;

import blankwright.mesh.Finding;
import blankwright.mesh.Finding.Kind;
import blankwright.mesh.TriMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The connected parts of a mesh: triangles that share vertices hang together. */
public final class Components {
    /** Of the whole area: what is smaller is a crumb of the scan, not a piece of the panel. */
    public static final double CRUMB = 1e-3;

    /** Parts large enough to be pieces, and what was left out. */
    public record Kept(List<Component> pieces, List<Finding> findings) { }

    private Components() { }

    /** Area, mm², and sides of the box, mm, of what is worth keeping of a mesh. */
    public record Extent(double area, double dx, double dy, double dz) { }

    /** Without the parts that {@link #worthKeeping} leaves out; all 0 for a mesh without triangles. */
    public static Extent extent(TriMesh mesh) {
        int[] of = partOf(mesh, joined(mesh), new int[mesh.vertexCount()]);
        double[] area = new double[Arrays.stream(of).max().orElse(-1) + 1];
        for (int t = 0; t < of.length; t++) area[of[t]] += mesh.area(t);
        double whole = Arrays.stream(area).sum(), largest = Arrays.stream(area).max().orElse(0), kept = 0;
        for (double part : area) if (isKept(part, whole, largest)) kept += part;
        double[] low = new double[3], high = new double[3];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int t = 0; t < of.length; t++) {
            if (!isKept(area[of[t]], whole, largest)) continue;
            for (int k = 0; k < 3; k++) {
                int v = mesh.corner(t, k);
                double[] at = {mesh.x(v), mesh.y(v), mesh.z(v)};
                for (int i = 0; i < 3; i++) {
                    low[i] = Math.min(low[i], at[i]);
                    high[i] = Math.max(high[i], at[i]);
                }
            }
        }
        return of.length == 0 ? new Extent(0, 0, 0, 0) : new Extent(kept, high[0] - low[0], high[1] - low[1], high[2] - low[2]);
    }

    private static boolean isKept(double area, double whole, double largest) {
        return area >= CRUMB * whole || area == largest;
    }

    private static Partition joined(TriMesh mesh) {
        Partition whole = new Partition(mesh.vertexCount());
        for (int t = 0; t < mesh.triangleCount(); t++) {
            whole.unite(mesh.corner(t, 0), mesh.corner(t, 1));
            whole.unite(mesh.corner(t, 1), mesh.corner(t, 2));
        }
        return whole;
    }

    /** Triangle -> its part; {@code part} is filled with the part of each root, -1 where a root has none. Parts count by lowest triangle. */
    private static int[] partOf(TriMesh mesh, Partition whole, int[] part) {
        Arrays.fill(part, -1);
        int[] of = new int[mesh.triangleCount()];
        int parts = 0;
        for (int t = 0; t < of.length; t++) {
            int r = whole.lowest(mesh.corner(t, 0));
            if (part[r] < 0) part[r] = parts++;
            of[t] = part[r];
        }
        return of;
    }

    /** Largest area first, of equals the one with the lowest triangle; vertices and triangles keep their order. */
    public static List<Component> of(TriMesh mesh) {
        int n = mesh.vertexCount(), m = mesh.triangleCount();
        Partition whole = joined(mesh);
        int[] part = new int[n];                // of a root: its part
        int[] of = partOf(mesh, whole, part);
        int parts = Arrays.stream(of).max().orElse(-1) + 1;
        int[] triangles = new int[parts + 1], vertices = new int[parts];
        for (int t = 0; t < m; t++) triangles[of[t] + 1]++;
        for (int p = 0; p < parts; p++) triangles[p + 1] += triangles[p];
        int[] here = new int[n];
        for (int v = 0; v < n; v++) {
            int p = part[whole.lowest(v)];
            here[v] = p < 0 ? -1 : vertices[p]++;
        }
        int[] order = new int[m];
        int[] at = Arrays.copyOf(triangles, parts);
        for (int t = 0; t < m; t++) order[at[of[t]]++] = t;
        int[][] vertexOf = new int[parts][];
        double[][] places = new double[parts][];
        for (int p = 0; p < parts; p++) {
            vertexOf[p] = new int[vertices[p]];
            places[p] = new double[3 * vertices[p]];
        }
        for (int v = 0; v < n; v++) {
            if (here[v] < 0) continue;
            int p = part[whole.lowest(v)];
            vertexOf[p][here[v]] = v;
            places[p][3 * here[v]] = mesh.x(v);
            places[p][3 * here[v] + 1] = mesh.y(v);
            places[p][3 * here[v] + 2] = mesh.z(v);
        }
        List<Component> all = new ArrayList<>(parts);
        for (int p = 0; p < parts; p++) {
            int[] triangleOf = Arrays.copyOfRange(order, triangles[p], triangles[p + 1]);
            int[] corner = new int[3 * triangleOf.length];
            for (int i = 0; i < corner.length; i++) corner[i] = here[mesh.corner(triangleOf[i / 3], i % 3)];
            all.add(new Component(TriMesh.of(places[p], corner), vertexOf[p], triangleOf));
        }
        all.sort(Comparator.comparingDouble(Component::area).reversed());      // stable
        return all;
    }

    /** Leaves out parts below {@value #CRUMB} of the area of all; the largest always stays. */
    public static Kept worthKeeping(List<Component> all) {
        double whole = 0;
        for (Component part : all) whole += part.area();
        List<Component> pieces = new ArrayList<>();
        int crumbs = 0, triangles = 0;
        double lost = 0;
        for (Component part : all) {
            if (pieces.isEmpty() || part.area() >= CRUMB * whole) {
                pieces.add(part);
            } else {
                crumbs++;
                triangles += part.mesh().triangleCount();
                lost += part.area();
            }
        }
        if (crumbs == 0) return new Kept(List.copyOf(pieces), List.of());
        String text = String.format(Locale.ROOT, "%d loose %s of together %d %s and %.3g mm2 %s below 1/1000 of the whole area; left out",
                crumbs, crumbs == 1 ? "part" : "parts", triangles, triangles == 1 ? "triangle" : "triangles", lost, crumbs == 1 ? "is" : "are each");
        return new Kept(List.copyOf(pieces), List.of(new Finding(Kind.SMALL_COMPONENTS, crumbs, text)));
    }
}
