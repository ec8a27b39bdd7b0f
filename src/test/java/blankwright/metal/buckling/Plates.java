package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;
import blankwright.sparse.Eigenpairs;

/** Flat plates of triangles and how their edges are held. */
final class Plates {
    static final double E = 68_900;     // MPa, aluminium

    private Plates() { }

    /** a along x, b along y, mm; the diagonal of every other square runs the other way. */
    static TriMesh rectangle(double a, double b, int nx, int ny) {
        double[] xyz = new double[3 * (nx + 1) * (ny + 1)];
        for (int i = 0, p = 0; i <= nx; i++)
            for (int j = 0; j <= ny; j++) {
                xyz[p++] = a * i / nx;
                xyz[p++] = b * j / ny;
                p++;
            }
        int[] tri = new int[6 * nx * ny];
        for (int i = 0, p = 0; i < nx; i++)
            for (int j = 0; j < ny; j++) {
                int v = i * (ny + 1) + j, r = v + ny + 1;
                int[] square = (i + j) % 2 == 0 ? new int[] {v, r, r + 1, v, r + 1, v + 1} : new int[] {v, r, v + 1, r, r + 1, v + 1};
                for (int c : square) tri[p++] = c;
            }
        return TriMesh.of(xyz, tri);
    }

    /** Rings round a middle vertex, ring i of 6 i vertices. */
    static TriMesh disc(double radius, int rings) {
        double[] xyz = new double[3 * (1 + 3 * rings * (rings + 1))];
        int[] tri = new int[18 * rings * rings];
        int p = 0;
        for (int i = 1; i <= rings; i++) {
            int first = 1 + 3 * i * (i - 1), before = 1 + 3 * (i - 1) * (i - 2);
            for (int j = 0; j < 6 * i; j++) {
                double angle = 2 * Math.PI * j / (6 * i);
                xyz[3 * (first + j)] = radius * i / rings * Math.cos(angle);
                xyz[3 * (first + j) + 1] = radius * i / rings * Math.sin(angle);
            }
            for (int side = 0; side < 6; side++)
                for (int j = 0; j < i; j++) {
                    int outer = first + side * i + j, next = first + (side * i + j + 1) % (6 * i);
                    int inner = i == 1 ? 0 : before + (side * (i - 1) + j) % (6 * (i - 1));
                    tri[p++] = inner;
                    tri[p++] = outer;
                    tri[p++] = next;
                    if (j == i - 1) continue;
                    tri[p++] = inner;
                    tri[p++] = next;
                    tri[p++] = before + (side * (i - 1) + j + 1) % (6 * (i - 1));
                }
        }
        return TriMesh.of(xyz, tri);
    }

    /**
     * What is held of a plate that cannot move in its own plane: edges by letter, x low, x high, y low, y high: S supported, C clamped, F
     * free, Y as by a plane of symmetry.
     */
    static boolean[] held(TriMesh mesh, double a, double b, String edges) {
        boolean[] held = new boolean[6 * mesh.vertexCount()];
        for (int v = 0; v < mesh.vertexCount(); v++) {
            held[6 * v] = held[6 * v + 1] = held[6 * v + 5] = true;
            double[] off = {mesh.x(v), a - mesh.x(v), mesh.y(v), b - mesh.y(v)};
            for (int e = 0; e < 4; e++) {
                if (Math.abs(off[e]) > 1e-9 * a || edges.charAt(e) == 'F') continue;
                boolean mirrored = edges.charAt(e) == 'Y';
                if (!mirrored) held[6 * v + 2] = held[6 * v + (e < 2 ? 3 : 4)] = true;                      // no slope along the edge
                if (mirrored || edges.charAt(e) == 'C') held[6 * v + (e < 2 ? 4 : 3)] = true;               // none across it
            }
        }
        return held;
    }

    /** The same force in every triangle, given along x and y, N/mm. */
    static double[] force(TriMesh mesh, double nx, double ny, double nxy) {
        double[] force = new double[3 * mesh.triangleCount()];
        Facet f = new Facet();
        for (int t = 0; t < mesh.triangleCount(); t++) {
            f.of(mesh, t);
            double c = f.axis[0], s = f.axis[1];
            force[3 * t] = c * c * nx + s * s * ny + 2 * s * c * nxy;
            force[3 * t + 1] = s * s * nx + c * c * ny - 2 * s * c * nxy;
            force[3 * t + 2] = s * c * (ny - nx) + (c * c - s * s) * nxy;
        }
        return force;
    }

    /** k of a plate b wide: force at buckling over π² D / b². */
    static double k(double a, double b, int nx, int ny, String edges, double poisson, double compression, double shear) {
        TriMesh mesh = rectangle(a, b, nx, ny);
        Sheet sheet = Sheet.elastic(E, poisson, 1);
        double unit = Math.PI * Math.PI * sheet.bendingStiffness() / (b * b);
        Buckling buckling = Buckling.of(mesh, sheet, force(mesh, -compression * unit, 0, shear * unit), held(mesh, a, b, edges),
                Eigenpairs.Limits.DEFAULT.withWanted(1).withMultiple(false), () -> false);
        return buckling.modes().get(0).loadFactor();
    }
}
